//! Pages of what is followed over the years, and of readers side by side.
//!
//! They are reports like those of sites, shown by the same page; only what stands in them is another.

mod agree;
mod certificate;
mod change;
mod checks;
mod sources;
mod trend;

pub use agree::agreement;
pub use certificate::{certificates, certificates_body, certificates_style};
pub use change::changes;
pub use sources::sources;
pub use trend::trends;

use crate::document::{
    self, Answer, Block, Item, ListOf, Picture, Report, Section, Sheet, Site, list, paragraph,
};
use crate::markup::{Column, Table};
use crate::page::{Medium, Page};
use crate::{Telling, foot, html, meaning};
use tautline_figures::meaning::Meaning;
use tautline_survey::assess::Question;
use tautline_survey::finding::{Finding, Weight};
use tautline_survey::follow::Noted;
use tautline_survey::input::Input;
use tautline_survey::message::Message;
use tautline_words::Words;

/// What is followed over the years, or of readers side by side: a page of its own, or a part of a screen.
#[derive(Clone, Debug)]
pub struct Followed {
    report: Report,
    skip: String,
}

impl Followed {
    /// The page: one file for screen and paper.
    pub fn page(&self) -> String {
        html::page(&self.report, &self.skip)
    }

    /// What stands on the page, without its head: for a screen that shows it among other things, under
    /// [`style`](crate::style).
    pub fn body(&self) -> String {
        html::body(&self.report)
    }
}

/// Tells what is worked out by `told`.
pub(crate) fn followed(
    input: &Input,
    words: &Words,
    codes: [&'static str; 3],
    meanings: &[Meaning],
    told: impl Fn(&Page) -> (Vec<Site>, Vec<Section>),
) -> Followed {
    let question = Question::default();
    let telling = Telling::new(input, &question, &[], words);
    let page = Page::new(&telling, Medium::Screen);
    let (mut sites, closing) = told(&page);
    let meanings = meaning::section(meanings, &page).filter(|_| !sites.is_empty());
    for site in sites.iter_mut().filter(|_| meanings.is_some()) {
        site.meanings = Some(meaning::jump(&page));
    }
    let [title, about, nothing] = codes.map(|code| page.word(code));
    let report = Report {
        format: document::FORMAT,
        version: document::VERSION,
        language: words.language().to_owned(),
        reader: page.reader.name(),
        software: env!("CARGO_PKG_VERSION"),
        heading: title.clone(),
        about,
        nothing: (sites.is_empty() && closing.is_empty()).then_some(nothing),
        contents: None,
        closing,
        foot: meanings.into_iter().chain(foot::sections(&[], &page)).collect(),
        prints: Vec::new(),
        fingerprint: foot::fingerprint(&page),
        sheet: Sheet { left: title.clone(), of: page.word("report-sheet-of") },
        title,
        sites,
    };
    Followed { report, skip: words.word("report-skip") }
}

/// A part of a page: its answer first, then what it rests on.
pub(crate) fn site(number: usize, title: String, answer: Answer, parts: Vec<Section>, page: &Page) -> Site {
    let parts_label = page.say(&Message::new("follow-parts-of").with("title", title.as_str()));
    Site {
        id: crate::page::site_id(number),
        title,
        basis: String::new(),
        facts: Vec::new(),
        answers: vec![answer],
        changed: None,
        next: None,
        meanings: None,
        beside: None,
        parts,
        parts_label,
    }
}

/// The first sentence as the answer, the others below it.
pub(crate) fn answer(said: &[Message], picture: Option<Picture>, page: &Page) -> Answer {
    let mut sentences = said.iter().map(|message| capital(&page.say(message)));
    Answer {
        asked: None,
        note: None,
        verdict: None,
        sentence: sentences.next(),
        picture,
        plainly: sentences.collect(),
        specialist: None,
    }
}

/// A sentence that begins with what it is about begins with a capital letter.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or(String::new(), |first| first.to_uppercase().chain(letters).collect())
}

/// What was found, the weightier first.
fn findings(found: &[Finding], page: &Page) -> Option<Section> {
    let mut items = Vec::new();
    for weight in [Weight::MustSettle, Weight::HaveALook, Weight::Note] {
        let own = found.iter().filter(|finding| finding.weight == weight);
        items.extend(own.map(|finding| Item::said(page.say(&finding.message))));
    }
    section("beside", "follow-beside", list(ListOf::Sentences, items).into_iter().collect(), page)
}

/// What was noted beside the readings at each visit.
fn noted(noted: &[Noted], years: impl Iterator<Item = String>, page: &Page) -> Option<Section> {
    let mut columns = vec![(Column::Text, page.word("column-noted"))];
    columns.extend(years.map(|year| (Column::Text, year)));
    let mut table = Table::new(page.word("title-noted"), columns);
    for one in noted {
        let cells = one
            .visits
            .iter()
            .map(|values| if values.is_empty() { page.word("report-none") } else { values.join(", ") });
        table.row([one.heading.clone()].into_iter().chain(cells).collect());
    }
    let said = if noted.iter().any(Noted::moves_cover) { "noted-about" } else { "noted-none" };
    let blocks = table.finished().map(Block::Table).into_iter().chain([paragraph(page.word(said))]);
    section("noted", "title-noted", blocks.collect(), page)
}

/// A section; nothing where nothing stands in it.
pub(crate) fn section(key: &'static str, heading: &str, blocks: Vec<Block>, page: &Page) -> Option<Section> {
    (!blocks.is_empty()).then(|| Section { key, heading: page.word(heading), blocks })
}

/// Percentage points with their sign.
fn points(difference: f64, places: u32, page: &Page) -> String {
    let number = page.words.number(difference * 100.0, places);
    if difference > 0.0 { format!("+{number}") } else { number }
}

fn ends(low: String, high: String, page: &Page) -> String {
    page.say(&Message::new("between-ends").with("low", low).with("high", high))
}

fn chance(p: Option<f64>, page: &Page) -> String {
    match p {
        None => page.word("report-none"),
        Some(p) if p < 0.0005 => "<0.001".to_owned(),
        Some(p) => page.words.number(p, 3),
    }
}

fn points_said(page: &Page) -> Block {
    paragraph(page.word("points-of-cover"))
}
