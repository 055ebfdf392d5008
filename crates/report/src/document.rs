//! The report as data: what it says, in which order, in words and pictures that are finished.
//!
//! The page, the plain text and the typeset report are three ways to show one [`Report`], so none can say what another
//! doesn't. As JSON it is what a template of an office gets (`docs/print.md`).

mod photos;

pub use photos::Shot;

use serde::Serialize;

/// The name and the number of the data's format. A field may be added within a number, none changed or taken away.
pub const FORMAT: &str = "tautline.report";
/// See [`FORMAT`].
pub const VERSION: u32 = 1;

/// A whole report.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Report {
    /// [`FORMAT`].
    pub format: &'static str,
    /// [`VERSION`].
    pub version: u32,
    /// The language of the words, such as `en`.
    pub language: String,
    /// For whom it was written: `specialist`, `landowner`, `board`, `class`.
    pub reader: &'static str,
    /// The version of the software.
    pub software: &'static str,
    /// The heading of the whole.
    pub heading: String,
    /// The one site, or the heading: what the file is called.
    pub title: String,
    /// What was done, for somebody who never saw it done.
    pub about: String,
    /// That there is nothing to report, if so.
    pub nothing: Option<String>,
    /// All sites with their verdicts, where there are several.
    pub contents: Option<Contents>,
    /// Site by site, the newest year first.
    pub sites: Vec<Site>,
    /// What was found beside the sites, and every reading.
    pub closing: Vec<Section>,
    /// Cautions, and the files that were read.
    pub foot: Vec<Section>,
    /// How to know the data again; nothing where it came from no file.
    pub fingerprint: Option<Fingerprint>,
    /// How to know the readings of each site and year again, whatever file or notebook they come from.
    pub prints: Vec<Print>,
    /// What stands at the foot of a sheet.
    pub sheet: Sheet,
}

/// How to know the readings of a site in a year again.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Print {
    /// The site and the year.
    pub title: String,
    /// `readings:` and 64 hexadecimal digits.
    pub print: String,
}

/// The first page of several sites.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Contents {
    /// Its heading.
    pub heading: String,
    /// Each site with figure and verdict.
    pub table: Option<Table>,
    /// What comes after the sites: the headings with their ids.
    pub after: Vec<Item>,
}

/// One site in one year.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Site {
    /// The beginning of its ids.
    pub id: String,
    /// Name, year and plot.
    pub title: String,
    /// How many lines its figures stand on, and when they were read: what stands beside every caption on paper.
    pub basis: String,
    /// When, by whom, under which rules, and what was noted.
    pub facts: Vec<Term>,
    /// One for each goal; one without a verdict where nobody set a goal; none where no line could be worked out.
    pub answers: Vec<Answer>,
    /// What changed since the visit before, as far as it can be said.
    pub changed: Option<Said>,
    /// What to do at or before the next visit.
    pub next: Option<Said>,
    /// The way to what the words mean.
    pub meanings: Option<Item>,
    /// What weighs on the figure.
    pub beside: Option<Beside>,
    /// What the answers rest on.
    pub parts: Vec<Section>,
    /// The name of the list of parts.
    pub parts_label: String,
}

/// What was asked, and the answer to it.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// The goal; nothing where nobody set one.
    pub asked: Option<String>,
    /// Where the goal comes from, or that there is none.
    pub note: Option<String>,
    /// `met`, `not-met`, `not-yet-shown`; nothing without a goal.
    pub verdict: Option<&'static str>,
    /// The answer in one sentence.
    pub sentence: Option<String>,
    /// The figure against the goal.
    pub picture: Option<Picture>,
    /// What the readings show and how sure that is.
    pub plainly: Vec<String>,
    /// The same for a specialist.
    pub specialist: Option<String>,
}

/// Sentences under a heading.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Said {
    /// The heading.
    pub heading: String,
    /// The sentences.
    pub sentences: Vec<String>,
}

/// What weighs on a figure, for the place beside it.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Beside {
    /// What it is.
    pub label: String,
    /// Kinds of findings, each with its own.
    pub kinds: Vec<Kind>,
}

/// Findings of one weight.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Kind {
    /// The weight in words.
    pub label: String,
    /// What was found.
    pub items: Vec<Item>,
}

/// A heading and what stands under it.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Section {
    /// The last part of its id: `lines`, `methods`.
    pub key: &'static str,
    /// The heading.
    pub heading: String,
    /// What stands under it.
    pub blocks: Vec<Block>,
}

/// How to know the data again.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Fingerprint {
    /// 64 hexadecimal digits.
    pub print: String,
    /// What it is, in a sentence.
    pub said: String,
}

/// What stands at the foot of a sheet: on the left, and between its number and how many there are.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Sheet {
    /// The title and the beginning of the fingerprint.
    pub left: String,
    /// “of”, with the spaces around it.
    pub of: String,
}

/// One piece of a section.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
#[non_exhaustive]
pub enum Block {
    /// A heading within the section; 3 stands under a site's own, which is 2.
    Heading {
        /// 3 or 4.
        level: u8,
        /// Its words.
        text: String,
    },
    /// A paragraph.
    Paragraph {
        /// Its words.
        text: String,
        /// Said aside.
        quiet: bool,
    },
    /// A list.
    List {
        /// What it is a list of.
        of: ListOf,
        /// Its items.
        items: Vec<Item>,
    },
    /// A table.
    Table(Table),
    /// A picture.
    Picture(Picture),
    /// Photos side by side.
    Photos {
        /// The photos, in the order of their days.
        shots: Vec<Shot>,
    },
    /// The way to another place of the report.
    Jump(Item),
    /// What a word of the report means.
    Meaning(Meaning),
    /// The readings of one site and year, small and side by side.
    Readings {
        /// A table for each line, or a paragraph where it has no row.
        tables: Vec<Reading>,
    },
}

/// What a word of the report means, with a small picture.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Meaning {
    /// The word.
    pub term: String,
    /// What it is, and what it isn't.
    pub said: Vec<String>,
    /// Where the method handbook says more.
    pub more: String,
    /// The name of that page.
    pub page: &'static str,
    /// The picture, drawn once for a screen of any width.
    pub picture: Picture,
}

/// The readings of one line.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
#[non_exhaustive]
pub enum Reading {
    /// Row by row.
    Table(Table),
    /// No row was written down.
    Empty {
        /// Where a link leads.
        id: String,
        /// Line, day, people.
        text: String,
    },
}

/// What a list holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
#[non_exhaustive]
pub enum ListOf {
    /// Sentences.
    Sentences,
    /// From a figure down to what it came from, by depth.
    Chain,
    /// Arithmetic as on paper.
    Arithmetic,
    /// Files.
    Files,
}

/// One item of a list.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Item {
    /// Its words.
    pub text: String,
    /// How deep it stands in a chain.
    pub depth: usize,
    /// The id of the place it leads to.
    pub to: Option<String>,
    /// The row that is meant, and a mark below it.
    pub excerpt: Option<Excerpt>,
}

impl Item {
    /// An item that is said and leads nowhere.
    pub(crate) fn said(text: String) -> Self {
        Self { text, ..Self::default() }
    }

    /// An item that leads to another place.
    pub(crate) fn leading_to(id: String, text: String) -> Self {
        Self { text, to: Some(id), ..Self::default() }
    }
}

/// A row as a person typed it.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Excerpt {
    /// What it is.
    pub label: String,
    /// The row, and the mark.
    pub rows: [String; 2],
}

/// A term and what is said of it.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Term {
    /// The term.
    pub term: String,
    /// What is said of it.
    pub said: String,
}

/// A picture, drawn for the medium: on a screen twice, wide and narrow, in print once, in plain text not at all.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Picture {
    /// Its name.
    pub title: String,
    /// What it shows, in words.
    pub description: String,
    /// The drawings, as SVG.
    pub drawings: Vec<String>,
}

/// A table whose first column names its rows.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Table {
    /// What it shows.
    pub caption: String,
    /// Where links lead.
    pub id: Option<String>,
    /// Its columns.
    pub columns: Vec<Heading>,
    /// Its rows.
    pub rows: Vec<Row>,
}

/// The heading of a column.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Heading {
    /// Its words.
    pub text: String,
    /// What the column's cells hold.
    pub holds: Column,
}

/// What the cells of a column hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Column {
    /// Words, which may be broken over rows.
    Text,
    /// A name, a date: kept in one row.
    Name,
    /// A figure: kept in one row, to the right.
    Figure,
    /// An interval, or the words for why there is none: to the right, broken where there are words.
    Interval,
}

/// A row of a table.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Row {
    /// The id of the place that its name leads to.
    pub to: Option<String>,
    /// Its cells, one for each column.
    pub cells: Vec<String>,
}

/// A paragraph.
pub(crate) fn paragraph(text: String) -> Block {
    Block::Paragraph { text, quiet: false }
}

/// A paragraph said aside.
pub(crate) fn quiet(text: String) -> Block {
    Block::Paragraph { text, quiet: true }
}

/// A heading within a section.
pub(crate) fn heading(level: u8, text: String) -> Block {
    Block::Heading { level, text }
}

/// A list of sentences; nothing where there are none.
pub(crate) fn sentences(said: impl IntoIterator<Item = String>) -> Option<Block> {
    list(ListOf::Sentences, said.into_iter().map(Item::said).collect())
}

/// A list; nothing where it holds nothing.
pub(crate) fn list(of: ListOf, items: Vec<Item>) -> Option<Block> {
    (!items.is_empty()).then_some(Block::List { of, items })
}

/// Terms of which something is said.
pub(crate) fn terms(pairs: impl IntoIterator<Item = (String, String)>) -> Vec<Term> {
    let pairs = pairs.into_iter().map(|(term, said)| Term { term, said });
    pairs.filter(|one| !one.said.is_empty()).collect()
}
