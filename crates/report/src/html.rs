//! The report as a page: one file for screen and paper, which needs no script, no other file and no network.

use crate::document::{
    Answer, Beside, Block, Contents, Item, ListOf, Meaning, Reading, Report, Said, Section, Sheet, Shot, Site,
};
use crate::markup::{around, escape, link, picture, table, terms, text};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;

const STYLE: &str = include_str!("page.css");

/// The rules of the page and of its figures.
pub(crate) fn style() -> String {
    format!("{}{STYLE}", tautline_figures::STYLESHEET)
}

/// The whole page.
pub(crate) fn page(report: &Report, skip: &str) -> String {
    let skip = around("a class=\"skip\" href=\"#main\"", &escape(skip));
    let head = format!(
        "<meta charset=\"utf-8\"/>\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n{}{}",
        text("title", &report.title),
        around("style", &(style() + &sheet_foot(&report.sheet))),
    );
    format!(
        "<!DOCTYPE html>\n<html lang=\"{}\">\n{}{}</html>\n",
        escape(&report.language),
        around("head", &head),
        around("body", &(skip + &body(report)))
    )
}

/// What stands on the page.
pub(crate) fn body(report: &Report) -> String {
    let mut body = text("h1", &report.heading) + &text("p class=\"about\"", &report.about);
    body += &report.nothing.iter().map(|said| text("p", said)).collect::<String>();
    body += &report.contents.iter().map(contents).collect::<String>();
    body += &report.sites.iter().map(site).collect::<String>();
    body += &report.closing.iter().map(closing).collect::<String>();
    let mut foot: String = report.foot.iter().map(closing).collect();
    foot += &report.fingerprint.iter().map(|one| text("p class=\"print\"", &one.said)).collect::<String>();
    around("main id=\"main\"", &body) + &around("footer", &foot)
}

/// Every site with its verdicts, and what comes after the sites.
fn contents(contents: &Contents) -> String {
    let after: String = contents.after.iter().map(item).collect();
    let shown: String = contents.table.iter().map(table).collect();
    let inner = text("h2 id=\"contents\"", &contents.heading) + &shown + &around("ul", &after);
    around("nav class=\"contents\" aria-labelledby=\"contents\"", &inner)
}

fn site(site: &Site) -> String {
    let mut inner = text(&format!("h2 id=\"{}\"", site.id), &site.title) + &terms(&site.facts);
    inner += &site.answers.iter().map(answer).collect::<String>();
    inner += &site.meanings.iter().map(jump).collect::<String>();
    inner += &site.beside.iter().map(beside).collect::<String>();
    inner += &site.changed.iter().chain(&site.next).map(said).collect::<String>();
    if site.parts.len() > 1 {
        let to = |part: &Section| Item::leading_to(format!("{}-{}", site.id, part.key), part.heading.clone());
        let links: String = site.parts.iter().map(|part| item(&to(part))).collect();
        let nav = format!("nav class=\"parts\" aria-label=\"{}\"", escape(&site.parts_label));
        inner += &around(&nav, &around("ul", &links));
    }
    for part in &site.parts {
        inner += &text(&format!("h3 id=\"{}-{}\"", site.id, part.key), &part.heading);
        inner += &part.blocks.iter().map(block).collect::<String>();
    }
    around("section", &inner)
}

fn answer(answer: &Answer) -> String {
    let note = if answer.asked.is_some() { "p class=\"quiet\"" } else { "p" };
    let class = answer.verdict.map_or_else(String::new, |code| format!(" {code}"));
    let mut inner: String = answer.asked.iter().map(|asked| text("h3", asked)).collect();
    inner += &answer.note.iter().map(|said| text(note, said)).collect::<String>();
    let sentence = format!("p class=\"verdict{class}\"");
    inner += &answer.sentence.iter().map(|said| text(&sentence, said)).collect::<String>();
    inner += &answer.picture.iter().map(picture).collect::<String>();
    inner += &answer.plainly.iter().map(|said| text("p", said)).collect::<String>();
    inner + &answer.specialist.iter().map(|said| text("p class=\"specialist\"", said)).collect::<String>()
}

fn said(said: &Said) -> String {
    text("h3", &said.heading) + &said.sentences.iter().map(|one| text("p", one)).collect::<String>()
}

fn beside(beside: &Beside) -> String {
    let kinds = beside.kinds.iter().map(|kind| {
        let items: String = kind.items.iter().map(item).collect();
        text("p class=\"label\"", &kind.label) + &around("ul", &items)
    });
    let tag = format!("div class=\"cautions\" role=\"note\" aria-label=\"{}\"", escape(&beside.label));
    around(&tag, &kinds.collect::<String>())
}

/// A section beside the sites.
fn closing(section: &Section) -> String {
    let blocks: String = section.blocks.iter().map(block).collect();
    text(&format!("h2 id=\"{}\"", section.key), &section.heading) + &blocks
}

fn block(block: &Block) -> String {
    match block {
        Block::Heading { level, text: words } => text(&format!("h{level}"), words),
        Block::Paragraph { text: words, quiet } => {
            text(if *quiet { "p class=\"quiet\"" } else { "p" }, words)
        }
        Block::List { of, items } => list(*of, items),
        Block::Table(own) => table(own),
        Block::Picture(own) => picture(own),
        Block::Photos { shots } => {
            around("div class=\"photos\"", &shots.iter().map(shot).collect::<String>())
        }
        Block::Jump(to) => jump(to),
        Block::Meaning(own) => meaning(own),
        Block::Readings { tables } => {
            around("div class=\"readings\"", &tables.iter().map(reading).collect::<String>())
        }
    }
}

/// A photo within the page itself, with what stands below it.
fn shot(shot: &Shot) -> String {
    let picture = shot.file.as_ref().map(|_| {
        format!(
            "<img src=\"data:{};base64,{}\" alt=\"{}\" width=\"{}\" height=\"{}\"/>\n",
            shot.media,
            STANDARD.encode(&shot.bytes),
            escape(&shot.description),
            shot.width,
            shot.height
        )
    });
    around("figure", &(picture.unwrap_or_default() + &text("figcaption", &shot.caption)))
}

fn jump(to: &Item) -> String {
    around("p class=\"quiet jump\"", &words_of(to))
}

/// What a word means, to be unfolded; the app makes a link of where the handbook says more.
fn meaning(meaning: &Meaning) -> String {
    let said = meaning.said.iter().map(|said| text("p", said)).collect::<String>();
    let more = text(&format!("p class=\"quiet more\" data-page=\"{}\"", meaning.page), &meaning.more);
    let inner = picture(&meaning.picture) + &around("div class=\"said\"", &(said + &more));
    around("details class=\"meaning\"", &(text("summary", &meaning.term) + &inner))
}

fn reading(reading: &Reading) -> String {
    match reading {
        Reading::Table(own) => table(own),
        Reading::Empty { id, text: words } => text(&format!("p id=\"{id}\" class=\"reading\""), words),
    }
}

fn list(of: ListOf, items: &[Item]) -> String {
    let items: String = match of {
        ListOf::Chain => {
            let step = |one: &Item| text(&format!("li class=\"depth-{}\"", one.depth.min(3)), &one.text);
            items.iter().map(step).collect()
        }
        _ => items.iter().map(item).collect(),
    };
    match of {
        ListOf::Sentences => around("ul", &items),
        ListOf::Chain => around("ul class=\"chain\"", &items),
        ListOf::Arithmetic => around("ul class=\"paper\"", &items),
        ListOf::Files => around("div class=\"files\"", &around("ul", &items)),
    }
}

fn item(item: &Item) -> String {
    let excerpt = item.excerpt.iter().map(|excerpt| {
        let label = escape(&excerpt.label);
        text(&format!("pre tabindex=\"0\" role=\"group\" aria-label=\"{label}\""), &excerpt.rows.join("\n"))
    });
    around("li", &(words_of(item) + &excerpt.collect::<String>()))
}

fn words_of(item: &Item) -> String {
    item.to.as_ref().map_or_else(|| escape(&item.text), |id| link(id, &item.text))
}

/// What stands at the foot of every printed sheet: the title and the data's fingerprint, and the number of the sheet.
fn sheet_foot(sheet: &Sheet) -> String {
    let [left, of] = [&sheet.left, &sheet.of].map(|text| css_text(text));
    format!(
        "@page{{@bottom-left{{content:{left}}}@bottom-right{{content:counter(page) {of} counter(pages)}}}}\n"
    )
}

/// A text as a string of a stylesheet: whatever isn't a plain letter, digit or space is written by its number.
fn css_text(text: &str) -> String {
    let safe: String = text
        .chars()
        .map(|c| {
            if c.is_ascii_alphanumeric() || c == ' ' {
                c.to_string()
            } else {
                format!("\\{:x} ", u32::from(c))
            }
        })
        .collect();
    format!("\"{safe}\"")
}

#[cfg(test)]
mod tests {
    use super::css_text;

    #[test]
    fn no_text_leaves_a_string_of_the_stylesheet() {
        assert_eq!(css_text("a\"}</style>é"), "\"a\\22 \\7d \\3c \\2f style\\3e \\e9 \"");
    }
}
