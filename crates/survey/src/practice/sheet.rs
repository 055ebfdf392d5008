//! A learner's sheet, as typed.

use crate::date::Date;
use crate::finding::Place;
use crate::measure::Measure;
use tautline_engine::length::Length;
use tautline_engine::practice::mistake::Row;
use tautline_engine::stretch::Stretch;

/// What one learner wrote of one line.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct LearnerSheet {
    /// The name that the learner chose.
    pub name: String,
    /// The team or class, where there is one.
    pub group: String,
    /// The line's name.
    pub line: String,
    /// The day, where it was written.
    pub date: Option<Date>,
    /// The intercepts.
    pub rows: Vec<LearnerRow>,
    /// The cover in per cent as the learner worked it out.
    pub percent: Option<String>,
    /// Where the sheet begins.
    pub place: Option<Place>,
}

/// One intercept as a learner wrote it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LearnerRow {
    /// The species as written.
    pub species: String,
    /// Start and stop, where they were written.
    pub edges: Option<(Measure, Measure)>,
    /// The length, where only that was written.
    pub length: Option<Measure>,
}

impl LearnerRow {
    /// How long it is.
    pub fn length(&self) -> Length {
        match (&self.edges, &self.length) {
            (Some((start, stop)), _) => stop.length() - start.length(),
            (None, Some(length)) => length.length(),
            (None, None) => Length::ZERO,
        }
    }

    /// Its stretch of tape, where it has one.
    pub fn stretch(&self) -> Option<Stretch> {
        let (start, stop) = self.edges.as_ref()?;
        Stretch::new(start.length(), stop.length())
    }
}

impl LearnerSheet {
    /// Whether every row has its place on the tape.
    pub fn has_edges(&self) -> bool {
        self.rows.iter().all(|row| row.edges.is_some())
    }

    /// The rows with their places, along the tape; `species` gives each code its number.
    pub fn placed(&self, species: impl Fn(&str) -> u32) -> Vec<Row> {
        let mut rows: Vec<Row> = self
            .rows
            .iter()
            .filter_map(|row| Some(Row { species: Some(species(&row.species)), stretch: row.stretch()? }))
            .collect();
        rows.sort_unstable_by_key(|row| (row.stretch, row.species));
        rows
    }

    /// The lengths in the order they were written.
    pub fn lengths(&self, species: impl Fn(&str) -> u32) -> Vec<(Option<u32>, Length)> {
        self.rows.iter().map(|row| (Some(species(&row.species)), row.length())).collect()
    }

    /// All lengths added up.
    pub fn sum(&self) -> Length {
        self.rows.iter().map(LearnerRow::length).sum()
    }
}
