//! Markdown as plain text, for a terminal and for whoever looks for a word.

use crate::markdown::{label, parser};
use pulldown_cmark::{CodeBlockKind, Event, HeadingLevel, Tag, TagEnd};

/// What stands below the title, in rows for a terminal.
pub(crate) fn plain(source: &str) -> String {
    let mut out = Plain::default();
    let mut events = parser(source);
    // the title stands apart
    while events.next().is_some_and(|event| event != Event::End(TagEnd::Heading(HeadingLevel::H1))) {}
    events.for_each(|event| out.take(event));
    out.text.trim().to_owned()
}

/// Plain text in the making.
#[derive(Default)]
struct Plain {
    text: String,
    row: String,
    rows: Vec<Vec<String>>,
    verbatim: bool,
}

/// No row is longer, where its words allow it.
const WIDTH: usize = 96;

impl Plain {
    fn take(&mut self, event: Event) {
        match event {
            Event::Start(Tag::Item) => self.row.push_str("- "),
            Event::Start(Tag::CodeBlock(kind)) => {
                self.verbatim = true;
                if let CodeBlockKind::Fenced(kind) = kind {
                    self.row = format!("  [{}]\n", label(&kind));
                }
            }
            Event::Text(text) if self.verbatim => {
                text.lines().for_each(|line| self.row += &["  ", line, "\n"].concat());
            }
            Event::Text(text) | Event::Code(text) | Event::Html(text) | Event::InlineHtml(text) => {
                self.row.push_str(&text);
            }
            Event::SoftBreak | Event::HardBreak => self.row.push(' '),
            Event::End(TagEnd::Heading(_)) => {
                let heading = core::mem::take(&mut self.row);
                let line = "-".repeat(heading.chars().count());
                self.text += &[&heading, "\n", &line, "\n\n"].concat();
            }
            Event::End(TagEnd::CodeBlock) => {
                self.verbatim = false;
                self.text += &core::mem::take(&mut self.row);
                self.text.push('\n');
            }
            Event::End(TagEnd::Paragraph | TagEnd::Item) => self.paragraph(),
            Event::End(TagEnd::List(_)) => self.text.push('\n'),
            Event::Start(Tag::TableHead | Tag::TableRow) => self.rows.push(Vec::new()),
            Event::End(TagEnd::TableCell) => {
                let cell = core::mem::take(&mut self.row);
                self.rows.last_mut().into_iter().for_each(|row| row.push(cell.clone()));
            }
            Event::End(TagEnd::Table) => self.table(),
            _ => {}
        }
    }

    /// Words in rows; those of a list go on under the first letter.
    fn paragraph(&mut self) {
        let words = core::mem::take(&mut self.row);
        if words.is_empty() {
            return;
        }
        let (indent, end) = if words.starts_with("- ") { ("  ", "\n") } else { ("", "\n\n") };
        let mut wide = 0;
        for (at, word) in words.split_whitespace().enumerate() {
            let width = word.chars().count();
            if at > 0 && wide + 1 + width > WIDTH {
                self.text += "\n";
                self.text += indent;
                wide = indent.len();
            } else if at > 0 {
                self.text.push(' ');
                wide += 1;
            }
            self.text += word;
            wide += width;
        }
        self.text += end;
    }

    fn table(&mut self) {
        let rows = core::mem::take(&mut self.rows);
        let columns = rows.iter().map(Vec::len).max().unwrap_or_default();
        let width = |at: usize| {
            rows.iter()
                .filter_map(|row| row.get(at))
                .map(|cell| cell.chars().count())
                .max()
                .unwrap_or_default()
        };
        let widths: Vec<usize> = (0..columns).map(width).collect();
        for row in &rows {
            let cells = row.iter().zip(&widths).map(|(cell, &width)| format!("{cell:<width$}"));
            self.text += cells.collect::<Vec<_>>().join("  ").trim_end();
            self.text.push('\n');
        }
        self.text.push('\n');
    }
}
