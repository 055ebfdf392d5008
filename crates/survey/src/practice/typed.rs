//! A sheet as it is typed on a screen, cell by cell: kept as it stands, read when it is whole.

use super::sheet::{LearnerRow, LearnerSheet};
use crate::date::Date;
use crate::finding::Finding;
use crate::measure::Measure;
use crate::message::{Message, Value};
use serde::{Deserialize, Serialize};
use tautline_engine::length::{Bare, DecimalMark, Notation, write};

/// One row of cells.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct TypedRow {
    /// The species.
    pub species: String,
    /// The start, or the length where only lengths are written.
    pub start: String,
    /// The stop; empty where only lengths are written.
    pub stop: String,
}

impl TypedRow {
    /// Whether nothing stands in it.
    pub fn is_empty(&self) -> bool {
        [&self.species, &self.start, &self.stop].iter().all(|cell| cell.trim().is_empty())
    }

    /// The intercept; nothing for an empty row; or what is wrong with it.
    ///
    /// # Errors
    /// a cell that is no length, or a stop that doesn't lie beyond its start
    pub fn read(&self, unit: Bare, lengths_only: bool) -> Result<Option<LearnerRow>, Message> {
        if self.is_empty() {
            return Ok(None);
        }
        let measure = |cell: &str| {
            let refused = |_| Message::new("practice-cell-length").with("found", cell.trim());
            Measure::read(cell, Some(unit), DecimalMark::Point).map_err(refused)
        };
        let species = self.species.trim().to_owned();
        if lengths_only {
            let length = Some(measure(&self.start)?);
            return Ok(Some(LearnerRow { species, edges: None, length }));
        }
        let edges = Some((measure(&self.start)?, measure(&self.stop)?));
        let row = LearnerRow { species, edges, length: None };
        if row.stretch().is_none() { Err(Message::new("practice-cell-edges")) } else { Ok(Some(row)) }
    }
}

/// A sheet as it is typed.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct TypedSheet {
    /// The name that the learner chose.
    pub name: String,
    /// The team or class.
    pub group: String,
    /// The line's name.
    pub line: String,
    /// The day, as `2026-06-01`; may be empty.
    pub date: String,
    /// The per cent that was worked out; may be empty.
    pub percent: String,
    /// Whether only lengths were written.
    pub lengths_only: bool,
    /// The rows.
    pub rows: Vec<TypedRow>,
}

impl TypedSheet {
    /// The sheet, and what of it could not be read: the good rows are kept.
    ///
    /// # Example
    /// ```
    /// use tautline_engine::length::{Bare, Unit};
    /// use tautline_survey::practice::{TypedRow, TypedSheet};
    /// let row = |start: &str, stop: &str| TypedRow { species: "FOUR".into(), start: start.into(), stop: stop.into() };
    /// let sheet = TypedSheet { name: "Ada".into(), rows: vec![row("12", "40 1/2"), row("50", "5o")], ..TypedSheet::default() };
    /// let (read, findings) = sheet.read(Bare::Unit(Unit::Inch));
    /// assert_eq!((read.rows.len(), findings.len()), (1, 1));
    /// ```
    pub fn read(&self, unit: Bare) -> (LearnerSheet, Vec<Finding>) {
        let mut findings = Vec::new();
        let mut left = |row: usize, why: Message| {
            findings.push(Finding::must_settle(
                Message::new("lesson-row-left")
                    .with("name", self.name.trim())
                    .with("line", self.line.trim())
                    .with("row", row)
                    .with("why", why),
            ));
        };
        let date = Date::read(&self.date);
        if date.is_none() && !self.date.trim().is_empty() {
            left(0, Message::new("practice-cell-date").with("found", self.date.trim()));
        }
        let mut rows = Vec::new();
        for (number, row) in (1..).zip(&self.rows) {
            match row.read(unit, self.lengths_only) {
                Ok(row) => rows.extend(row),
                Err(why) => left(number, why),
            }
        }
        let percent = Some(self.percent.trim().to_owned()).filter(|percent| !percent.is_empty());
        let text = |text: &str| text.trim().to_owned();
        let sheet = LearnerSheet {
            name: text(&self.name),
            group: text(&self.group),
            line: text(&self.line),
            date,
            rows,
            percent,
            place: None,
        };
        (sheet, findings)
    }

    /// The cells of a sheet that was read elsewhere, lengths written as a tape has them.
    pub fn of(sheet: &LearnerSheet, notation: Notation) -> Self {
        let shown = |measure: &Measure| write(measure.length(), notation);
        let row = |row: &LearnerRow| {
            let species = row.species.clone();
            match (&row.edges, &row.length) {
                (Some((start, stop)), _) => TypedRow { species, start: shown(start), stop: shown(stop) },
                (None, Some(length)) => TypedRow { species, start: shown(length), stop: String::new() },
                (None, None) => TypedRow { species, ..TypedRow::default() },
            }
        };
        Self {
            name: sheet.name.clone(),
            group: sheet.group.clone(),
            line: sheet.line.clone(),
            date: sheet.date.map_or_else(String::new, |date| date.to_string()),
            percent: sheet.percent.clone().unwrap_or_default(),
            lengths_only: !sheet.has_edges(),
            rows: sheet.rows.iter().map(row).collect(),
        }
    }
}

/// Where an expert alone, or one more, would be needed, and how far those who read a line lie apart.
pub fn spread_words(key: &super::ExpertKey) -> Message {
    Message::new("lesson-key-spread")
        .with("line", key.line.as_str())
        .with("readers", key.readers.clone())
        .with("cover", Value::Share(key.cover(), 1))
        .with("spread", Value::Number(key.spread() * 100.0, 1))
}
