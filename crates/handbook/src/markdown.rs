//! Markdown into a page: its title and first sentence apart, the rest as markup and as plain text.

use crate::Page;
use crate::plain::plain;
use pulldown_cmark::{
    CodeBlockKind, CowStr, Event, HeadingLevel, LinkType, Options, Parser, Tag, TagEnd, html,
};

pub(crate) fn parser(source: &str) -> Parser<'_> {
    Parser::new_ext(source, Options::ENABLE_TABLES)
}

/// A page from its source, which begins with a title and one paragraph that says what it is about.
pub(crate) fn page(name: &str, part: String, source: &str) -> Page {
    let mut title = String::new();
    let mut about = String::new();
    let mut into: Option<&mut String> = None;
    let mut events = parser(source);
    for event in events.by_ref() {
        match event {
            Event::Start(Tag::Heading { level: HeadingLevel::H1, .. }) => into = Some(&mut title),
            Event::Start(Tag::Paragraph) => into = Some(&mut about),
            Event::Text(text) | Event::Code(text) => into.iter_mut().for_each(|into| into.push_str(&text)),
            Event::SoftBreak => into.iter_mut().for_each(|into| into.push(' ')),
            Event::End(TagEnd::Paragraph) => break,
            _ => {}
        }
    }
    let mut markup = String::new();
    html::push_html(&mut markup, events.flat_map(safe));
    Page { name: name.to_owned(), part, title, text: plain(source), about, html: markup }
}

/// Markup as it may be shown: what a page quotes as markup is text, links to pages lead to pages, and a block says what it is.
fn safe(event: Event) -> impl Iterator<Item = Event> {
    let (before, own) = match event {
        Event::Html(text) | Event::InlineHtml(text) => (None, Event::Text(text)),
        Event::Start(Tag::Link { link_type, dest_url, title, id }) => {
            let dest_url = address(link_type, dest_url);
            (None, Event::Start(Tag::Link { link_type, dest_url, title, id }))
        }
        Event::Start(Tag::CodeBlock(CodeBlockKind::Fenced(kind))) => {
            let mut said = String::new();
            html::push_html(&mut said, core::iter::once(Event::Text(label(&kind).into())));
            let said = Event::Html(format!("<p class=\"kind\">{said}</p>\n").into());
            (Some(said), Event::Start(Tag::CodeBlock(CodeBlockKind::Indented)))
        }
        other => (None, other),
    };
    before.into_iter().chain([own])
}

/// What a block is: `example: line`, `by hand`.
pub(crate) fn label(kind: &str) -> String {
    kind.replacen("example ", "example: ", 1)
}

fn address(kind: LinkType, to: CowStr<'_>) -> CowStr<'_> {
    match to.strip_suffix(".md") {
        Some(page) if !page.contains(['/', ':']) => format!("#/handbook/{page}").into(),
        _ if kind == LinkType::Email || to.starts_with("https://") => to,
        _ => CowStr::Borrowed("#/handbook"),
    }
}

/// Each page that the contents name, with the heading it stands under.
pub(crate) fn parts(contents: &str) -> Vec<(String, String)> {
    let mut found = Vec::new();
    let (mut part, mut in_heading) = (String::new(), false);
    for event in parser(contents) {
        match event {
            Event::Start(Tag::Heading { level: HeadingLevel::H2, .. }) => {
                part.clear();
                in_heading = true;
            }
            Event::End(TagEnd::Heading(_)) => in_heading = false,
            Event::Text(text) if in_heading => part.push_str(&text),
            Event::Start(Tag::Link { dest_url, .. }) if !part.is_empty() => {
                found.extend(dest_url.strip_suffix(".md").map(|page| (page.to_owned(), part.clone())));
            }
            _ => {}
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn markup_in_a_page_is_text_and_links_stay_in_the_handbook() {
        let source = "# A <b>\n\nWhat it is.\n\n<script>x</script>\n\nSee [cover](canopy-cover.md), [out](javascript:x), \
                      [far](https://example.org/a) and <i>so</i>.\n";
        let page = page("a", "P".into(), source);
        assert_eq!((page.title.as_str(), page.about.as_str()), ("A ", "What it is."));
        assert!(
            !page.html.contains("<script") && !page.html.contains("<i>") && !page.html.contains("javascript")
        );
        assert!(page.html.contains("href=\"#/handbook/canopy-cover\""), "{}", page.html);
        assert!(page.html.contains("href=\"https://example.org/a\""), "{}", page.html);
    }

    #[test]
    fn a_table_and_an_example_stay_in_columns() {
        let source =
            "# T\n\nIt.\n\n| a | long |\n| --- | --- |\n| longer | b |\n\n```example line\nline: 10 m\n```\n";
        assert_eq!(
            page("t", String::new(), source).text,
            "It.\n\na       long\nlonger  b\n\n  [example: line]\n  line: 10 m"
        );
    }
}
