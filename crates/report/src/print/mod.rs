//! Reports and packets typeset, as PDF: by templates that an office can replace, from the same data as their pages.
//!
//! Nothing is fetched and nothing outside the template folder is read; the date comes from outside; the same report and
//! the same template give the same bytes.

mod packet;
mod template;
mod world;

pub use crate::paper::Paper;
pub use template::{Template, TemplateError};

use crate::document::{Block, Report, Shot};
use crate::page::Medium;
use crate::{Telling, report};
use std::collections::BTreeMap;
use std::sync::Arc;
use tautline_survey::canonical::sha256_hex;
use tautline_survey::date::Date;
use typst::diag::SourceDiagnostic;
use typst::ecow::EcoVec;
use typst::foundations::{Bytes, Datetime, Smart};
use typst::text::FontBook;
use typst::utils::LazyHash;
use typst::visualize::{ExchangeFormat, RasterImage};
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards, Timestamp};
use world::{Desk, Given};

/// How long results of typesetting are kept for the next report, in reports: what the template comes to is used again by each.
const KEPT_FOR: usize = 1;

/// How a report is set.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Setting {
    /// The sheet.
    pub paper: Paper,
    /// The day that the file gives as its own; the day of the newest reading where none is given.
    pub day: Option<Date>,
    /// For keeping: PDF/A-2a (ISO 19005-2), which holds everything that is needed to show it.
    pub archival: bool,
}

/// A typeset report.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Printed {
    /// The file.
    pub bytes: Vec<u8>,
    /// How many sheets it has.
    pub pages: usize,
}

/// Typesets reports and packets with one template, from any number of threads.
///
/// # Example
/// ```
/// use tautline_report::print::{Press, Setting, Template};
/// use tautline_report::Telling;
/// use tautline_survey::{assess::Question, input::Input};
/// let (words, input, question) = (tautline_words::Words::english(), Input::default(), Question::default());
/// let press = Press::new(Template::shipped());
/// let printed = press.print(&Telling::new(&input, &question, &[], &words), &Setting::default()).unwrap();
/// assert!(printed.bytes.starts_with(b"%PDF-1.7") && printed.pages == 1);
/// ```
pub struct Press {
    template: Template,
    book: LazyHash<FontBook>,
}

impl Press {
    /// A press for this template.
    pub fn new(template: Template) -> Self {
        let book = LazyHash::new(FontBook::from_fonts(template.fonts()));
        Self { template, book }
    }

    /// Typesets a report.
    ///
    /// # Errors
    /// what is wrong with the template, and where
    pub fn print(&self, telling: &Telling, setting: &Setting) -> Result<Printed, TemplateError> {
        let mut report = report(telling, Medium::Print);
        let photos = photos(&mut report, &telling.words.word("report-photo-damaged"));
        let visits = telling.assessments.iter().flat_map(|one| &one.lines);
        let day = setting.day.or_else(|| visits.filter_map(|line| line.date).max());
        let given = Given {
            main: "report.typ",
            name: "report.json",
            data: serde_json::to_vec(&report).map_err(|error| TemplateError::of_data(&error))?,
            photos,
            ident: format!("{} {}", report.title, report.sheet.left),
            // by these a printed file is held against a notebook later
            keywords: report.prints.into_iter().map(|one| one.print).collect(),
            language: report.language,
        };
        self.set(given, *setting, day)
    }

    /// What a report is typeset by, as a few characters: the template's files and the setting.
    pub fn mark(&self, setting: &Setting) -> String {
        let Setting { paper, day, archival } = *setting;
        let all = format!("{} {paper:?} {day:?} {archival}", self.template.print());
        sha256_hex(all.as_bytes()).chars().take(16).collect()
    }

    /// Typesets what was given, as one file.
    fn set(&self, given: Given, setting: Setting, day: Option<Date>) -> Result<Printed, TemplateError> {
        let ident = given.ident.clone();
        let desk = Desk::new(&self.template, &self.book, given, setting.paper, day);
        let fault = |found: EcoVec<SourceDiagnostic>| desk.fault(&found);
        let document: PagedDocument = typst::compile(&desk).output.map_err(fault)?;
        let standards = if setting.archival { vec![PdfStandard::A_2a] } else { Vec::new() };
        let standards = PdfStandards::new(&standards).unwrap_or_default(); // one standard agrees with itself
        let options = PdfOptions {
            ident: Smart::Custom(ident),
            creator: Smart::Custom(Some(concat!("tautline ", env!("CARGO_PKG_VERSION")).to_owned())),
            timestamp: day.and_then(midnight).map(Timestamp::new_utc),
            standards,
            ..PdfOptions::default()
        };
        let bytes = typst_pdf::pdf(&document, &options).map_err(fault)?;
        typst::comemo::evict(KEPT_FOR);
        Ok(Printed { bytes, pages: document.pages().len() })
    }
}

/// The photos of a report by the names that a template knows them by. One that is damaged is said, not shown: it would
/// keep the whole report from being typeset.
fn photos(report: &mut Report, damaged: &str) -> BTreeMap<String, Bytes> {
    let mut photos = BTreeMap::new();
    let parts = report.sites.iter_mut().flat_map(|site| &mut site.parts);
    for block in parts.flat_map(|part| &mut part.blocks) {
        let Block::Photos { shots } = block else { continue };
        for shot in shots {
            let Some(file) = shot.file.clone() else { continue };
            let bytes = Bytes::new(Arc::clone(&shot.bytes));
            if format(shot).is_some_and(|format| RasterImage::plain(bytes.clone(), format).is_ok()) {
                photos.insert(file, bytes);
            } else {
                shot.file = None;
                shot.caption = format!("{} · {damaged}", shot.caption);
            }
        }
    }
    photos
}

fn format(shot: &Shot) -> Option<ExchangeFormat> {
    match shot.media {
        "image/jpeg" => Some(ExchangeFormat::Jpg),
        "image/png" => Some(ExchangeFormat::Png),
        "image/webp" => Some(ExchangeFormat::Webp),
        _ => None,
    }
}

/// The beginning of a day.
fn midnight(day: Date) -> Option<Datetime> {
    Datetime::from_ymd_hms(i32::from(day.year()), day.month(), day.day(), 0, 0, 0)
}
