//! The key of a real line: what two or more experts read, and how far they lie apart.

use super::sheet::LearnerSheet;
use crate::finding::Finding;
use crate::message::{Message, Value};
use tautline_engine::length::{Length, Notation};
use tautline_engine::practice::mistake::Row;
use tautline_engine::stretch::{total, union};

/// The key of a real line.
#[derive(Clone, Debug)]
pub struct ExpertKey {
    /// The line.
    pub line: String,
    /// Its length.
    pub length: Length,
    /// Who read it.
    pub readers: Vec<String>,
    /// The intercepts of the first of them, which the others were set beside.
    pub rows: Vec<Row>,
    /// The codes that occur, by their numbers.
    pub codes: Vec<String>,
    /// Canopy, the mean of the experts'.
    pub canopy: Length,
    /// Sum of species, the mean of the experts'.
    pub sum: Length,
    /// Each expert's cover as a share of the line, in the order of the readers.
    pub covers: Vec<f64>,
    /// How lengths are shown.
    pub notation: Notation,
}

impl ExpertKey {
    /// The number of a code; one that no expert wrote gets a number of its own.
    pub fn species(&self, code: &str) -> u32 {
        let wanted = code.trim().to_uppercase();
        self.codes
            .iter()
            .position(|one| *one == wanted)
            .and_then(|at| u32::try_from(at).ok())
            .unwrap_or(u32::MAX)
    }

    /// The largest cover less the smallest: how far experts lie apart.
    pub fn spread(&self) -> f64 {
        let (low, high) =
            self.covers.iter().fold((f64::MAX, f64::MIN), |(low, high), &c| (low.min(c), high.max(c)));
        if self.covers.is_empty() { 0.0 } else { high - low }
    }

    /// The key's cover, the mean of the experts'.
    pub fn cover(&self) -> f64 {
        self.canopy.share_of(self.length)
    }

    /// What a marker should know: one expert alone, or a band narrower than what the experts differ by.
    pub fn findings(&self, within: f64) -> Vec<Finding> {
        let mut found = Vec::new();
        if self.covers.len() < 2 {
            found.push(Finding::have_a_look(
                Message::new("practice-one-expert").with("line", self.line.as_str()),
            ));
        }
        if self.spread() > within {
            found.push(Finding::have_a_look(
                Message::new("practice-band-narrow")
                    .with("line", self.line.as_str())
                    .with("band", Value::Number(within * 100.0, 1))
                    .with("spread", Value::Number(self.spread() * 100.0, 1)),
            ));
        }
        found
    }

    /// How far a later reading of the same line, at midday or after the last group, lies from the key's cover.
    pub fn moved(&self, again: &Self) -> f64 {
        again.cover() - self.cover()
    }
}

/// The keys that experts' sheets make, one for each line, in the order they were handed in.
pub fn agreed(sheets: &[LearnerSheet], length: Length, notation: Notation) -> Vec<ExpertKey> {
    let mut lines: Vec<&str> = Vec::new();
    for sheet in sheets {
        if !lines.contains(&sheet.line.as_str()) {
            lines.push(&sheet.line);
        }
    }
    lines.into_iter().map(|line| of_line(line, sheets, length, notation)).collect()
}

fn of_line(line: &str, sheets: &[LearnerSheet], length: Length, notation: Notation) -> ExpertKey {
    let own: Vec<&LearnerSheet> = sheets.iter().filter(|sheet| sheet.line == line).collect();
    let mut codes: Vec<String> =
        own.iter().flat_map(|sheet| sheet.rows.iter().map(|row| row.species.trim().to_uppercase())).collect();
    codes.sort();
    codes.dedup();
    let number = |code: &str| {
        let wanted = code.trim().to_uppercase();
        codes.iter().position(|one| *one == wanted).and_then(|at| u32::try_from(at).ok()).unwrap_or(u32::MAX)
    };
    let rows: Vec<Vec<Row>> = own.iter().map(|sheet| sheet.placed(number)).collect();
    let canopies: Vec<Length> =
        rows.iter().map(|rows| total(&union(rows.iter().map(|row| row.stretch)))).collect();
    let sums: Vec<Length> = own.iter().map(|sheet| sheet.sum()).collect();
    let covers = canopies.iter().map(|canopy| canopy.share_of(length)).collect();
    ExpertKey {
        line: line.to_owned(),
        length,
        readers: own.iter().map(|sheet| sheet.name.clone()).collect(),
        rows: rows.into_iter().next().unwrap_or_default(),
        canopy: mean(&canopies),
        sum: mean(&sums),
        covers,
        codes,
        notation,
    }
}

fn mean(lengths: &[Length]) -> Length {
    let sum: Length = lengths.iter().copied().sum();
    let number = i64::try_from(lengths.len()).unwrap_or(i64::MAX).max(1);
    Length::from_nanometres(sum.nanometres() / number)
}
