//! The report as plain text, for a letter, a screen of letters or a reader of Braille.

use crate::document::{Answer, Block, Column, Item, ListOf, Reading, Report, Section, Site, Table};

/// The width of a row, in characters.
const WIDTH: usize = 96;

/// The whole text.
pub(crate) fn text(report: &Report) -> String {
    let mut text = Text::default();
    text.heading(&report.heading, '=');
    text.paragraph(&report.about);
    text.each(&report.nothing);
    if let Some(contents) = &report.contents {
        text.heading(&contents.heading, '-');
        contents.table.iter().for_each(|table| text.table(table));
    }
    report.sites.iter().for_each(|site| text.site(site));
    report.closing.iter().chain(&report.foot).for_each(|section| text.section(section, '='));
    text.each(report.fingerprint.iter().map(|one| &one.said));
    text.0
}

#[derive(Default)]
struct Text(String);

impl Text {
    /// A row, in which nothing steers a screen.
    fn line(&mut self, line: &str) {
        self.0.push_str(&tautline_words::visible(line.trim_end()));
        self.0.push('\n');
    }

    /// A heading, underlined, after an empty row.
    fn heading(&mut self, heading: &str, under: char) {
        if !self.0.is_empty() {
            self.line("");
        }
        self.line(heading);
        self.line(&under.to_string().repeat(heading.chars().count()));
    }

    /// Words in rows that begin with these signs, and go on under the first letter.
    fn wrapped(&mut self, first: &str, words: &str) {
        let indent = " ".repeat(first.chars().count());
        let mut line = first.to_owned();
        let mut bare = true; // nothing but the sign stands in the row
        for word in words.split(' ').filter(|word| !word.is_empty()) {
            if !bare && line.chars().count() + 1 + word.chars().count() > WIDTH {
                self.line(&line);
                line.clone_from(&indent);
                bare = true;
            }
            if !bare {
                line.push(' ');
            }
            line.push_str(word);
            bare = false;
        }
        self.line(&line);
    }

    fn paragraph(&mut self, words: &str) {
        self.line("");
        self.wrapped("", words);
    }

    fn each<'a>(&mut self, said: impl IntoIterator<Item = &'a String>) {
        said.into_iter().for_each(|said| self.paragraph(said));
    }

    fn items(&mut self, of: ListOf, items: &[Item]) {
        self.line("");
        for item in items {
            let sign = match of {
                ListOf::Chain => "  ".repeat(item.depth),
                ListOf::Arithmetic => String::new(),
                ListOf::Sentences | ListOf::Files => "- ".to_owned(),
            };
            self.wrapped(&sign, &item.text);
            let rows = item.excerpt.iter().flat_map(|excerpt| &excerpt.rows);
            rows.for_each(|row| self.line(&format!("      {row}")));
        }
    }

    fn site(&mut self, site: &Site) {
        self.heading(&site.title, '=');
        if !site.facts.is_empty() {
            self.line("");
        }
        for fact in &site.facts {
            self.wrapped("", &format!("{}: {}", fact.term, fact.said));
        }
        site.answers.iter().for_each(|answer| self.answer(answer));
        for kind in site.beside.iter().flat_map(|beside| &beside.kinds) {
            self.paragraph(&kind.label);
            self.items(ListOf::Sentences, &kind.items);
        }
        for said in site.changed.iter().chain(&site.next) {
            self.heading(&said.heading, '-');
            self.each(&said.sentences);
        }
        site.parts.iter().for_each(|part| self.section(part, '-'));
    }

    fn answer(&mut self, answer: &Answer) {
        answer.asked.iter().for_each(|asked| self.heading(asked, '-'));
        self.each(
            answer.note.iter().chain(&answer.sentence).chain(&answer.plainly).chain(&answer.specialist),
        );
    }

    fn section(&mut self, section: &Section, under: char) {
        self.heading(&section.heading, under);
        section.blocks.iter().for_each(|block| self.block(block));
    }

    fn block(&mut self, block: &Block) {
        match block {
            Block::Heading { text, .. } => self.heading(text, '.'),
            Block::Paragraph { text, .. } => self.paragraph(text),
            Block::List { of, items } => self.items(*of, items),
            Block::Table(table) => self.table(table),
            Block::Picture(picture) => {
                self.paragraph(&format!("[{}] {}", picture.title, picture.description));
            }
            Block::Photos { shots } => {
                self.each(
                    &shots
                        .iter()
                        .map(|one| format!("[{}] {}", one.description, one.caption))
                        .collect::<Vec<_>>(),
                );
            }
            Block::Jump(_) => {}
            Block::Meaning(meaning) => {
                self.heading(&meaning.term, '.');
                self.each(meaning.said.iter().chain([&meaning.more]));
            }
            Block::Readings { tables } => {
                for reading in tables {
                    match reading {
                        Reading::Table(table) => self.table(table),
                        Reading::Empty { text, .. } => self.paragraph(text),
                    }
                }
            }
        }
    }

    /// A table in columns as wide as their widest cell, figures to the right.
    fn table(&mut self, table: &Table) {
        self.paragraph(&table.caption);
        self.line("");
        let heads: Vec<&String> = table.columns.iter().map(|column| &column.text).collect();
        let rows =
            || std::iter::once(heads.clone()).chain(table.rows.iter().map(|row| row.cells.iter().collect()));
        let width = |at: usize| rows().map(|row| row[at].chars().count()).max().unwrap_or_default();
        let widths: Vec<usize> = (0..heads.len()).map(width).collect();
        for row in rows() {
            let cells = row.iter().zip(&widths).zip(&table.columns).map(|((cell, &width), column)| {
                match column.holds {
                    Column::Text | Column::Name => format!("{cell:<width$}"),
                    Column::Figure | Column::Interval => format!("{cell:>width$}"),
                }
            });
            self.line(&cells.collect::<Vec<_>>().join("  "));
        }
    }
}
