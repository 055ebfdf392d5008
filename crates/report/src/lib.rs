//! Reports of sites: the verdict in plain words first, then what it rests on, down to the readings.
//!
//! What a report says is one [`document::Report`]; the page, the plain text and the typeset report (feature `pdf`) show
//! it. All its words come from the catalogue; nothing is computed here.
//!
//! | what | module |
//! | --- | --- |
//! | what is told, and for whom | `telling` |
//! | the report as data | [`document`] |
//! | the first page of several sites | `front` |
//! | one site in one year | `site`, with `verdict`, `tables`, `pictures`, `onward` |
//! | years side by side | `years` |
//! | photos year by year, and where the lines lie | `photos`, `map` |
//! | what was found | `checks` |
//! | formulas and arithmetic | `work` |
//! | the methods paragraph | `methods` |
//! | every reading | `readings` |
//! | the coach's paper, a class's marks, a learner's progress | `practice` |
//! | cautions, files, fingerprint | `foot` |
//! | what the words mean | `meaning` |
//! | what a crew carries, as data before it is a page or sheets | [`packet`] |
//! | trends, changes, readers side by side | `follow` |
//! | how many lines, how long | [`effort`] |
//! | shown as a page, as text, as PDF | `html`, `plain`, `print` |
#![forbid(unsafe_code)]

mod checks;
pub mod document;
pub mod effort;
mod follow;
mod foot;
mod front;
mod html;
mod map;
mod markup;
mod meaning;
mod methods;
mod onward;
pub mod packet;
mod page;
mod paper;
mod photos;
mod pictures;
mod plain;
mod practice;
#[cfg(feature = "pdf")]
pub mod print;
mod readings;
mod shown;
mod site;
mod tables;
mod telling;
mod verdict;
mod work;
mod years;

pub use effort::{EffortTold, effort_body, effort_page};
pub use follow::{
    Followed, agreement, certificates, certificates_body, certificates_style, changes, sources, trends,
};
pub use photos::{Bytes, Photograph, worth_showing};
pub use practice::{
    PROTEST_COLUMNS, PracticePage, PracticeSet, practice_class, practice_line, practice_progress,
    practice_set, practice_sheets, progress_sentences, protest_cells, sheet_sentences, starts_words,
};
pub use telling::{Reader, Telling};

use core::cmp::Reverse;
use document::{Report, Sheet};
use page::{Medium, Page, site_id};
use tautline_survey::assess::{Assessment, Question, natural_order};
use tautline_survey::canonical::sha256_hex;
use tautline_survey::input::Input;
use tautline_survey::message::Message;
use tautline_survey::place::Openness;
use tautline_words::Words;

/// The page of one or more sites for a specialist: site by site, the newest year first.
///
/// The page stands alone: no scripts, no other files, and the same page for the same input. `question` is what the
/// assessments answer; the methods paragraph is written from it. The input is one that was read and checked
/// ([`tautline_survey::check::check`], which reading does).
///
/// # Example
/// ```
/// use tautline_survey::{assess::Question, input::Input};
/// let words = tautline_words::Words::english();
/// let page = tautline_report::html(&Input::default(), &Question::default(), &[], &words);
/// assert!(page.starts_with("<!DOCTYPE html>"));
/// assert!(page.contains("nothing to report"));
/// ```
pub fn html(input: &Input, question: &Question, assessments: &[Assessment], words: &Words) -> String {
    page_of(&Telling::new(input, question, assessments, words))
}

/// The page for any reader; see [`html`].
pub fn page_of(telling: &Telling) -> String {
    html::page(&report(telling, Medium::Screen), &telling.words.word("report-skip"))
}

/// What stands on the page, without its head: for a screen that shows it among other things, under [`style`].
///
/// # Example
/// ```
/// use tautline_report::{Telling, body_of};
/// use tautline_survey::{assess::Question, input::Input};
/// let words = tautline_words::Words::english();
/// let body = body_of(&Telling::new(&Input::default(), &Question::default(), &[], &words));
/// assert!(body.starts_with("<main"));
/// ```
pub fn body_of(telling: &Telling) -> String {
    html::body(&report(telling, Medium::Screen))
}

/// The rules of the page and of its figures.
pub fn style() -> String {
    html::style()
}

/// The report as plain text, in rows of at most 100 characters where no cell of a table is longer.
///
/// # Example
/// ```
/// use tautline_report::{Telling, text_of};
/// use tautline_survey::{assess::Question, input::Input};
/// let words = tautline_words::Words::english();
/// let text = text_of(&Telling::new(&Input::default(), &Question::default(), &[], &words));
/// assert!(text.contains("nothing to report"));
/// ```
pub fn text_of(telling: &Telling) -> String {
    plain::text(&report(telling, Medium::Plain))
}

/// What a report is made of, as a text by which it is known again: readings, photos, places as far as they are told, what was
/// asked, for whom, in which words, and the version. Not the files that readings came in, nor how it is shown.
///
/// # Example
/// ```
/// use tautline_report::{Reader, Telling, made_of};
/// use tautline_survey::{assess::Question, input::Input};
/// let (input, question, words) = (Input::default(), Question::default(), tautline_words::Words::english());
/// let telling = Telling::new(&input, &question, &[], &words);
/// assert!(made_of(&telling).starts_with("made:"));
/// assert_ne!(made_of(&telling), made_of(&telling.to(Reader::Board)));
/// ```
pub fn made_of(telling: &Telling) -> String {
    let input = Input { files: Vec::new(), ..telling.input.clone() };
    let telling = Telling { input: &input, made: None, ..*telling };
    let report = report(&telling, Medium::Plain);
    let prints: Vec<&str> = report.prints.iter().map(|one| one.print.as_str()).collect();
    let said = (&report.language, report.reader, report.software, &report.about, &report.sites, &report.foot);
    let page = Page::new(&telling, Medium::Plain);
    let is_told = |site: &str| page.openness(site) == Openness::Exact;
    let maps: Vec<_> = telling.maps.into_iter().flatten().filter(|(site, _)| is_told(site)).collect();
    // a report is words, and so is its data; photos stand in it by the hashes of their bytes
    let said = serde_json::to_vec(&(said, prints, maps)).unwrap_or_default();
    format!("made:{}", sha256_hex(&said))
}

/// What a report says, for one way to show it.
fn report(telling: &Telling, medium: Medium) -> Report {
    let page = Page::new(telling, medium);
    let sorted = in_order(telling.assessments);
    let heading = page.word("report-title");
    let title = match sorted.as_slice() {
        [only] => shown::title(only, &page),
        _ => heading.clone(),
    };
    let sites = sorted.iter().enumerate();
    let sites: Vec<document::Site> =
        sites.map(|(at, one)| site::told(&site_id(at), one, &years_of(at, &sorted), &page)).collect();
    let told = sites.iter().any(|site| !site.answers.is_empty());
    let meanings = if told { meaning::of_sites(&page) } else { Vec::new() };
    let readings = page.reader.reads_readings().then(|| readings::appendix(&sorted, &page)).flatten();
    Report {
        format: document::FORMAT,
        version: document::VERSION,
        language: telling.words.language().to_owned(),
        reader: telling.reader.name(),
        software: env!("CARGO_PKG_VERSION"),
        heading,
        about: about(&page),
        nothing: sorted.is_empty().then(|| page.word("report-nothing")),
        contents: (sorted.len() > 1).then(|| front::contents(&sorted, &page)),
        sites,
        closing: foot::found_on_reading(&sorted, &page).into_iter().chain(readings).collect(),
        foot: meaning::section(&meanings, &page).into_iter().chain(foot::sections(&sorted, &page)).collect(),
        prints: foot::prints(&sorted, &page),
        fingerprint: foot::fingerprint(&page),
        sheet: sheet(&title, &page),
        title,
    }
}

/// What was done, and that the report isn't for handing on where it tells what a site's setting keeps back.
fn about(page: &Page) -> String {
    let mut said = vec![page.word("report-about")];
    let kept_back = page.input.sites.iter().any(|site| site.openness() != Openness::Exact);
    if page.full && kept_back {
        said.push(page.word("holds-exact-places"));
    }
    said.join(" ")
}

/// Sites in the order of their names, and of their plots, the newest year of each first.
fn in_order(assessments: &[Assessment]) -> Vec<&Assessment> {
    let mut sorted: Vec<&Assessment> = assessments.iter().collect();
    sorted.sort_by(|a, b| {
        let plot = |one: &Assessment| one.plot.clone().unwrap_or_default();
        natural_order(&a.site, &b.site)
            .then_with(|| natural_order(&plot(a), &plot(b)))
            .then_with(|| Reverse(a.year).cmp(&Reverse(b.year)))
    });
    sorted
}

/// All years of a site (or plot) with their places on the page, for its newest year; nothing for the others.
fn years_of<'a>(number: usize, sorted: &[&'a Assessment]) -> Vec<(String, &'a Assessment)> {
    let same = |other: &Assessment| other.site == sorted[number].site && other.plot == sorted[number].plot;
    if number > 0 && same(sorted[number - 1]) {
        return Vec::new();
    }
    let all = sorted.iter().enumerate().skip(number).take_while(|(_, other)| same(other));
    all.map(|(at, &other)| (site_id(at), other)).collect()
}

/// What stands at the foot of every printed sheet: the title, the data's fingerprint, and what its number is of.
fn sheet(title: &str, page: &Page) -> Sheet {
    let left = match page.input.fingerprint() {
        Some(print) => page.say(
            &Message::new("report-sheet-foot")
                .with("title", title)
                .with("print", print.chars().take(12).collect::<String>()),
        ),
        None => title.to_owned(),
    };
    Sheet { left, of: page.word("report-sheet-of") }
}
