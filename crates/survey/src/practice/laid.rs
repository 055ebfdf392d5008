//! How a day's lines are laid and read, and every sheet of the day beside its key.

use super::exercise::{Exercise, TapeKind};
use super::experts::{ExpertKey, agreed};
use super::marking::{Marked, Marking, mark, mark_real};
use super::sheet::LearnerSheet;
use crate::finding::Finding;
use crate::message::{Message, Value};
use crate::protocol::Protocol;
use std::collections::BTreeMap;
use tautline_engine::length::Length;
use tautline_engine::practice::grade::Measure;
use tautline_engine::practice::level::Level;
use tautline_engine::practice::recognise::Recogniser;

/// What says which line is meant, apart from its level and number.
#[derive(Clone, Debug)]
pub struct Laid {
    /// How long each line is.
    pub length: Length,
    /// How the tape is numbered.
    pub tape: TapeKind,
    /// The rules.
    pub protocol: Protocol,
}

impl Laid {
    /// The shipped protocol that practice is read under where nobody says.
    pub const USUAL_PROTOCOL: &'static str = "live-canopy-2.5in";

    /// A practice line is no longer than this: a kilometre would fill a book.
    pub const LONGEST: Length = Length::from_nanometres(200_000_000_000);

    /// The line of a level and number.
    pub fn exercise(&self, level: Level, number: u64) -> Exercise {
        Exercise::draw(level, number, self.length, self.tape, self.protocol.clone())
    }

    /// The keys of real lines, from what experts read.
    pub fn agreed(&self, sheets: &[LearnerSheet]) -> Vec<ExpertKey> {
        agreed(sheets, self.length, self.tape.notation())
    }

    /// Every sheet marked, those of real lines by the keys that experts agreed on, and those that name no line.
    ///
    /// # Example
    /// ```
    /// use tautline_survey::{practice::{Laid, LearnerSheet, Marking, TapeKind}, protocol::Protocol};
    /// let tape = TapeKind::Metric;
    /// let laid = Laid { length: tape.usual_length(), tape, protocol: Protocol::default() };
    /// let sheet = |line: &str| LearnerSheet { line: line.to_owned(), ..LearnerSheet::default() };
    /// let (marked, findings) = laid.marked(&[sheet("1-4"), sheet("L4")], &[], &Marking::example());
    /// assert_eq!((marked.len(), findings[0].message.code), (1, "practice-line-unknown"));
    /// ```
    pub fn marked(
        &self,
        sheets: &[LearnerSheet],
        keys: &[ExpertKey],
        marking: &Marking,
    ) -> (Vec<Marked>, Vec<Finding>) {
        let mut marker = self.marker(keys, marking);
        let (mut marked, mut findings) = (Vec::new(), Vec::new());
        for sheet in sheets {
            match marker.mark(sheet) {
                Ok(one) => marked.push(one),
                Err(finding) => findings.push(*finding),
            }
        }
        (marked, findings)
    }

    /// What marks one sheet after the other.
    pub fn marker<'a>(&'a self, keys: &'a [ExpertKey], marking: &'a Marking) -> Marker<'a> {
        Marker { laid: self, keys, marking, known: BTreeMap::new() }
    }
}

/// Marks one sheet after the other; each line is drawn, and its mistakes made, once.
pub struct Marker<'a> {
    laid: &'a Laid,
    keys: &'a [ExpertKey],
    marking: &'a Marking,
    known: BTreeMap<(u8, u64), (Exercise, Recogniser)>,
}

impl Marker<'_> {
    /// One sheet beside its key.
    ///
    /// # Errors
    /// what the sheet calls its line, where that is no line
    pub fn mark(&mut self, sheet: &LearnerSheet) -> Result<Marked, Box<Finding>> {
        let Self { laid, keys, marking, known } = self;
        if let Some(key) = keys.iter().find(|key| key.line == sheet.line) {
            let step = laid.tape.notation().step();
            let tolerance = marking.tolerance.unwrap_or(step + step);
            let measure = Measure { tolerance, gap: laid.protocol.rule().0.gap };
            return Ok(mark_real(sheet, key, marking, measure));
        }
        let Some((level, number)) = Exercise::level_and_number(&sheet.line) else {
            let message = Message::new("practice-line-unknown").with("found", sheet.line.as_str());
            return Err(Box::new(Finding::must_settle(message).at_place(sheet.place.as_ref())));
        };
        let (exercise, recogniser) = known.entry((level.number(), number)).or_insert_with(|| {
            let exercise = laid.exercise(level, number);
            let recogniser = recogniser(&exercise);
            (exercise, recogniser)
        });
        Ok(mark(sheet, exercise, marking, recogniser))
    }
}

/// What finds the mistake that explains a sheet of an exercise.
pub fn recogniser(exercise: &Exercise) -> Recogniser {
    Recogniser::new(core::slice::from_ref(&exercise.line), &exercise.protocol.rule().0)
}

/// What a marker should know of the keys of real lines, and where a later reading of the same line says that it moved.
pub fn key_findings(keys: &[ExpertKey], again: &[ExpertKey], marking: &Marking) -> Vec<Finding> {
    let narrowest = marking.narrowest();
    let mut findings: Vec<Finding> = keys.iter().flat_map(|key| key.findings(narrowest)).collect();
    for later in again {
        let Some(key) = keys.iter().find(|key| key.line == later.line) else { continue };
        let moved = key.moved(later);
        if moved.abs() > key.spread().max(narrowest / 2.0) {
            let message = Message::new("practice-key-moved").with("line", key.line.as_str());
            findings.push(Finding::have_a_look(message.with("off", Value::Number(moved * 100.0, 1))));
        }
    }
    findings
}
