//! Data that travels: what was read and what it comes to, for other programs.
//!
//! A room of its own for its weight, which the app and the engine's users are spared. Everything is told first as tables
//! ([`tables`]); each form is one way to write them down, and none works anything out.
//!
//! | what | module |
//! | --- | --- |
//! | tables with types, units and keys | [`table`] |
//! | readings, plan and results as such tables | [`tables`] |
//! | tidy text with its description (Frictionless Data Package) | [`package`] |
//! | tables as a spreadsheet with live formulas, with the feature `workbook` | `workbook` |
//! | lines that lie somewhere, on a map and for a receiver | `placed`, `geojson`, `gpx` |
//! | lines and tables in one database file, with the feature `geopackage` | `geopackage` |
//! | tables as files of columns (Parquet) | `columns` |
//! | events and occurrences (Darwin Core) | `darwin_core` |
//! | plant list and protocols alone | `lists` |
#![forbid(unsafe_code)]

mod columns;
mod darwin_core;
mod geojson;
#[cfg(feature = "geopackage")]
mod geopackage;
mod gpx;
mod lists;
pub mod package;
mod placed;
mod readme;
pub mod table;
pub mod tables;
#[cfg(feature = "workbook")]
mod workbook;

use tautline_survey::assess::{Assessment, SiteGoal};
use tautline_survey::input::Input;
use tautline_survey::message::Message;
use tautline_words::Words;

/// A file that was written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct File {
    /// Its name; folders in it are parted by `/`.
    pub name: String,
    /// What it holds.
    pub bytes: Vec<u8>,
}

impl File {
    pub(crate) fn text(name: &str, text: String) -> Self {
        Self { name: name.to_owned(), bytes: text.into_bytes() }
    }
}

/// Everything there is to tell.
#[derive(Clone, Copy, Debug)]
pub struct Whole<'a> {
    /// What was read.
    pub input: &'a Input,
    /// The goals.
    pub goals: &'a [SiteGoal],
    /// What it comes to.
    pub assessments: &'a [Assessment],
    /// All places as they are, whatever the sites' own settings say.
    pub full: bool,
    /// Who gives the data out, where somebody says so.
    pub publisher: Option<&'a str>,
}

/// The forms that can be written; those that weigh much, with the features that bring them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// Tidy text with its description.
    Package,
    /// A spreadsheet with formulas that can be followed.
    #[cfg(feature = "workbook")]
    Workbook,
    /// Lines on a map.
    GeoJson,
    /// Lines for a GPS receiver.
    Gpx,
    /// Lines on a map and every table, in one database file.
    #[cfg(feature = "geopackage")]
    GeoPackage,
    /// Every table as a file of columns.
    Parquet,
    /// An archive of events and occurrences.
    DarwinCore,
    /// The plant list alone.
    Plants,
    /// The protocols alone.
    Protocols,
}

impl Form {
    /// Every form.
    pub const ALL: &[Self] = &[
        Self::Package,
        #[cfg(feature = "workbook")]
        Self::Workbook,
        Self::GeoJson,
        Self::Gpx,
        #[cfg(feature = "geopackage")]
        Self::GeoPackage,
        Self::Parquet,
        Self::DarwinCore,
        Self::Plants,
        Self::Protocols,
    ];

    /// The word that an option names it with.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Package => "package",
            #[cfg(feature = "workbook")]
            Self::Workbook => "workbook",
            Self::GeoJson => "geojson",
            Self::Gpx => "gpx",
            #[cfg(feature = "geopackage")]
            Self::GeoPackage => "geopackage",
            Self::Parquet => "parquet",
            Self::DarwinCore => "darwin-core",
            Self::Plants => "plants",
            Self::Protocols => "protocols",
        }
    }

    /// The form of a word.
    pub fn from_word(word: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|form| form.word() == word)
    }

    /// The code of what it can't carry.
    pub const fn lacks(self) -> &'static str {
        match self {
            Self::Package => "readme-lacks-package",
            #[cfg(feature = "workbook")]
            Self::Workbook => "readme-lacks-workbook",
            Self::GeoJson => "readme-lacks-geojson",
            Self::Gpx => "readme-lacks-gpx",
            #[cfg(feature = "geopackage")]
            Self::GeoPackage => "readme-lacks-geopackage",
            Self::Parquet => "readme-lacks-parquet",
            Self::DarwinCore => "readme-lacks-darwin-core",
            Self::Plants => "readme-lacks-plants",
            Self::Protocols => "readme-lacks-protocols",
        }
    }
}

/// Writes everything in a form, with a readme beside it.
///
/// # Errors
/// why there is nothing to write
pub fn write(form: Form, whole: &Whole, words: &Words) -> Result<Vec<File>, Message> {
    let mut files = match form {
        Form::Package => Ok(package::files(whole, words)),
        #[cfg(feature = "workbook")]
        Form::Workbook => workbook::files(whole, words),
        Form::GeoJson => geojson::files(whole),
        Form::Gpx => gpx::files(whole),
        #[cfg(feature = "geopackage")]
        Form::GeoPackage => geopackage::files(whole, words),
        Form::Parquet => Ok(columns::files(whole, words)),
        Form::DarwinCore => darwin_core::files(whole, words),
        Form::Plants => lists::plants(whole),
        Form::Protocols => lists::protocols(whole),
    }?;
    files.push(readme::file(form, whole, words));
    Ok(files)
}

/// What a person should hear of what was just written.
pub fn said(whole: &Whole) -> Vec<Message> {
    let [exact, blurred, withheld, unknown] = readme::counted(whole);
    let kept = blurred + withheld;
    let mut said = Vec::new();
    if whole.full {
        said.push(Message::new("export-full-said"));
    } else if kept > 0 {
        said.push(
            Message::new("export-places-kept").with("kept", kept).with("lines", exact + kept + unknown),
        );
    }
    if whole.input.visits.iter().any(|visit| !visit.reader.is_empty() || !visit.recorder.is_empty()) {
        said.push(Message::new("export-names-said"));
    }
    said
}
