//! The line is closed: what was typed becomes the visit that a typed sheet or a table of the same readings gives.

use super::LineDraft;
use super::setup::Setup;
use super::sheet::{Expects, Row, Told};
use crate::finding::Place;
use crate::notebook::payload::Payload;
use crate::plan::PlannedLine;
use crate::visit::{Extent, Intercept, NOT_READ_WHY, Outcome, Visit};

/// Under which heading a row is kept that can't be used until it is settled.
const SET_ASIDE: &str = "row set aside";
/// Under which heading a row is kept that was taken out.
const TAKEN_OUT: &str = "row taken out";

/// Why a line can't be closed yet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotClosed {
    /// An intercept or a figure is under way: finish it or leave it.
    UnderWay,
    /// No row, and nobody said that nothing was there: a zero is only what somebody wrote down as one.
    NothingWritten,
}

/// What a row comes to.
pub(super) enum Usable {
    /// An intercept.
    Yes(Extent),
    /// Stop lies before start: the reading isn't whole until that is settled.
    Backwards,
    /// Nothing between start and stop.
    Empty,
}

/// What a row comes to; every number on it was read when it was typed.
pub(super) fn usable(row: &Row, setup: &Setup) -> Usable {
    let read = |text: &str| setup.measure(text).ok();
    if !row.length.is_empty() {
        return match read(&row.length) {
            Some(length) if length.length().nanometres() > 0 => Usable::Yes(Extent::Length(length)),
            _ => Usable::Empty,
        };
    }
    match (read(&row.start), read(&row.stop)) {
        (Some(start), Some(stop)) if stop.length() > start.length() => {
            Usable::Yes(Extent::Edges { start, stop })
        }
        (Some(start), Some(stop)) if stop.length() == start.length() => Usable::Empty,
        _ => Usable::Backwards,
    }
}

impl LineDraft {
    /// The visit as it stands, each intercept with the number of its row for its place.
    pub fn visit(&self) -> Visit {
        let (setup, sheet) = (self.setup(), self.sheet());
        let mut visit = Visit {
            site: setup.site.clone(),
            line: setup.line.clone(),
            date: setup.date,
            reader: setup.reader.clone(),
            recorder: setup.recorder.clone(),
            pass: setup.pass.clone(),
            protocol: setup.protocol.clone(),
            length: setup.length.clone(),
            outcome: Outcome::Read,
            intercepts: Vec::new(),
            set_aside: 0,
            conditions: sheet.conditions.clone(),
            place: None,
        };
        let mut keep = |heading: &str, what: String| visit.conditions.push((heading.to_owned(), what));
        visit.outcome = match &sheet.told {
            Told::Whole | Told::Nothing => Outcome::Read,
            Told::To(mark) => setup.measure(mark).map_or(Outcome::Read, Outcome::PartlyRead),
            Told::NotRead(why) => {
                if !why.is_empty() {
                    keep(NOT_READ_WHY, why.clone());
                }
                Outcome::NotRead
            }
        };
        for row in &sheet.rows {
            match usable(row, setup) {
                _ if row.removed => keep(TAKEN_OUT, as_typed(row)),
                Usable::Yes(extent) => {
                    let id = u32::try_from(visit.intercepts.len() + 1).unwrap_or(u32::MAX);
                    visit.intercepts.push(intercept(row, id, extent, setup));
                }
                Usable::Backwards => {
                    keep(SET_ASIDE, as_typed(row));
                    visit.set_aside += 1;
                }
                Usable::Empty => keep(SET_ASIDE, as_typed(row)),
            }
        }
        visit
    }

    /// Closes the line: its visit, and the plan of the line where the notebook has none or not its length.
    ///
    /// # Errors
    /// [`NotClosed`]
    pub fn close(&self, planned: Option<&PlannedLine>) -> Result<Vec<Payload>, NotClosed> {
        let entry = &self.sheet().entry;
        if entry.expects != Expects::Species || !entry.letters.is_empty() {
            return Err(NotClosed::UnderWay);
        }
        if self.sheet().standing().next().is_none() && self.sheet().told == Told::Whole {
            return Err(NotClosed::NothingWritten);
        }
        let mut visit = self.visit();
        for intercept in &mut visit.intercepts {
            intercept.place = None;
        }
        let own = visit.length.take();
        let known = planned.and_then(|line| line.length.as_ref());
        let plan = PlannedLine {
            length: known.or(own.as_ref()).cloned(),
            ..planned.cloned().unwrap_or_else(|| unplanned(&visit))
        };
        // a tape of another length than planned is the visit's own
        visit.length = own.filter(|own| known.is_some_and(|known| known.length() != own.length()));
        let plan = (planned != Some(&plan)).then_some(Payload::Line(plan));
        Ok(plan.into_iter().chain([Payload::Visit(Box::new(visit))]).collect())
    }
}

fn unplanned(visit: &Visit) -> PlannedLine {
    PlannedLine {
        site: visit.site.clone(),
        line: visit.line.clone(),
        length: None,
        stratum: None,
        plot: None,
        judgement: None,
        slope: None,
        permission: None,
    }
}

fn intercept(row: &Row, id: u32, extent: Extent, setup: &Setup) -> Intercept {
    let measured = |text: &str| setup.measure(text).ok();
    Intercept {
        id,
        species: row.species.clone(),
        extent,
        state: row.state,
        plant: row.plant.clone(),
        height: measured(&row.height),
        width: measured(&row.width),
        note: row.note.clone(),
        place: Some(Place { file: String::new(), row: row.id.into(), column: None, character: None }),
    }
}

fn as_typed(row: &Row) -> String {
    let numbers = if row.length.is_empty() {
        [&row.start, &row.stop].map(String::as_str).join("-")
    } else {
        row.length.clone()
    };
    format!("{} {numbers}", row.species).trim_start().to_owned()
}
