//! What is told, to whom, and in which words: the one thing that every way to show a report begins with.

use crate::photos::Photograph;
use std::collections::BTreeMap;
use tautline_survey::assess::{Assessment, Question};
use tautline_survey::input::Input;
use tautline_survey::layout::MapOutput;
use tautline_words::Words;

/// For whom a report is written. The numbers are the same; what differs is how far down it goes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Reader {
    /// Everything, down to the readings.
    #[default]
    Specialist,
    /// One page a site: the answer, how sure it is, what changed, what comes next.
    Landowner,
    /// All sites at a glance, then a page for each with its table of figures and its checks.
    Board,
    /// Everything that shows how the figures come about: lines, arithmetic, methods, readings.
    Class,
}

impl Reader {
    /// All of them, as they are named.
    pub const ALL: [(&'static str, Self); 4] = [
        ("specialist", Self::Specialist),
        ("landowner", Self::Landowner),
        ("board", Self::Board),
        ("class", Self::Class),
    ];

    /// The reader of this name.
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.iter().find(|(own, _)| *own == name).map(|(_, reader)| *reader)
    }

    /// The name: `specialist`.
    pub fn name(self) -> &'static str {
        Self::ALL.iter().find(|(_, reader)| *reader == self).map_or("", |(name, _)| *name)
    }

    /// Whether a part of a site is for this reader.
    pub(crate) fn reads(self, part: &str) -> bool {
        match self {
            Self::Specialist => true,
            Self::Landowner => part == "photos",
            Self::Board => ["figures", "years", "photos", "map", "checks"].contains(&part),
            Self::Class => !["curve", "years"].contains(&part),
        }
    }

    /// Whether the sentences of a specialist are for this reader.
    pub(crate) fn reads_statistics(self) -> bool {
        matches!(self, Self::Specialist | Self::Class)
    }

    /// Whether the readings as they were typed are for this reader.
    pub(crate) fn reads_readings(self) -> bool {
        self.reads_statistics()
    }
}

/// What is told, to whom, and in which words.
#[derive(Clone, Copy)]
pub struct Telling<'a> {
    /// What was read, and checked ([`tautline_survey::check::check`], which reading does).
    pub input: &'a Input,
    /// What the assessments answer; the methods paragraph is written from it.
    pub question: &'a Question,
    /// The sites that the report is about.
    pub assessments: &'a [Assessment],
    /// The words.
    pub words: &'a Words,
    /// For whom it is.
    pub reader: Reader,
    /// Photos of the sites, as a notebook holds them; files have none.
    pub photos: &'a [Photograph],
    /// The lines of each site on a plane, where their places are known.
    pub maps: Option<&'a BTreeMap<String, MapOutput>>,
    /// What the report is made of ([`made_of`](crate::made_of)) where it is to be known again by that.
    pub made: Option<&'a str>,
    /// Every place is told as it is, whatever the sites' settings keep back; the report says so of itself.
    pub full: bool,
}

impl<'a> Telling<'a> {
    /// For a specialist, who reads everything.
    pub fn new(
        input: &'a Input,
        question: &'a Question,
        assessments: &'a [Assessment],
        words: &'a Words,
    ) -> Self {
        let (reader, photos) = (Reader::default(), &[]);
        Self { input, question, assessments, words, reader, photos, maps: None, made: None, full: false }
    }

    /// The same for another reader.
    #[must_use]
    pub fn to(self, reader: Reader) -> Self {
        Self { reader, ..self }
    }
}
