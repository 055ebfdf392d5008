//! Readings that don't fit the tape: beyond its end, past the mark up to which it was read, or in another unit.

use super::records::{Reading, Records, Row, as_written};
use crate::finding::Finding;
use crate::measure::Measure;
use crate::message::Value;
use crate::visit::Outcome;
use tautline_engine::length::{Length, Unit};

/// Units that sheets are written in, the larger first.
const OF_SHEETS: [Unit; 5] = [Unit::Metre, Unit::Foot, Unit::Inch, Unit::Centimetre, Unit::Millimetre];

/// Rows that reach beyond the tape. Where half of them or more lie wholly beyond it and the numbers of the line fit in
/// another unit, that is said once for the line instead.
pub(super) fn beyond(records: &Records) -> Vec<Finding> {
    let mut found = Vec::new();
    for reading in &records.readings {
        let Some(tape) = reading.tape.filter(|tape| tape.length() > Length::ZERO) else { continue };
        // a tape of 30 m ends at 98.43 ft as well as at 98.42 ft: less than the last place written is rounding
        let end = |row: &Row| tape.length() + row.stop.notation().step();
        let beyond = || reading.rows.iter().filter(|row| row.stop.length() >= end(row));
        let wholly = |row: &&Row| row.start.length() >= tape.length();
        if let Some(first) = beyond().find(wholly)
            && 2 * beyond().filter(wholly).count() >= reading.rows.len()
            && let Some((written, fits)) = another_unit(reading, tape.length())
        {
            let message = reading
                .message("fits-another-unit")
                .with("stop", as_written(first.stop))
                .with("length", as_written(tape))
                .with("written", written.symbol())
                .with("fits", fits.symbol());
            found.push(reading.at(Finding::must_settle(message), first.intercept.place.as_ref()));
            continue;
        }
        for row in beyond() {
            let code = if wholly(&row) { "wholly-beyond-the-tape" } else { "beyond-the-tape" };
            let message =
                reading.message(code).with("stop", as_written(row.stop)).with("length", as_written(tape));
            let finding =
                if wholly(&row) { Finding::must_settle(message) } else { Finding::have_a_look(message) };
            found
                .push(reading.at(finding, row.intercept.place.as_ref()).species(records.code(row.intercept)));
        }
    }
    found
}

/// The unit that all rows are written in, and the largest smaller one in which the same numbers lie on the tape.
fn another_unit(reading: &Reading, tape: Length) -> Option<(Unit, Unit)> {
    let measures = || reading.rows.iter().flat_map(|row| [row.start, row.stop]).map(Measure::notation);
    let written = measures().next().filter(|first| !first.feet_and_inches)?.unit;
    if measures().any(|notation| notation.unit != written || notation.feet_and_inches) {
        return None;
    }
    let farthest = reading.rows.iter().map(|row| row.stop.length().nanometres()).max()?;
    let fits = |unit: &Unit| {
        let there = i128::from(farthest) * i128::from(unit.nanometres()) / i128::from(written.nanometres());
        *unit < written && there <= i128::from(tape.nanometres())
    };
    OF_SHEETS.into_iter().find(fits).map(|unit| (written, unit))
}

/// Rows past the mark up to which a line was read in part, and a mark beyond the tape.
pub(super) fn past_the_mark(records: &Records) -> Vec<Finding> {
    let mut found = Vec::new();
    for reading in &records.readings {
        let Outcome::PartlyRead(mark) = &reading.visit.outcome else { continue };
        if let Some(tape) = reading.tape.filter(|tape| tape.length() < mark.length()) {
            let message = reading.message("mark-beyond-the-tape");
            let message = message.with("mark", as_written(mark)).with("length", as_written(tape));
            found.push(reading.at(Finding::must_settle(message), None));
        }
        let on_tape = |row: &&Row| reading.tape.is_none_or(|tape| row.start.length() < tape.length());
        for row in reading.rows.iter().filter(|row| row.stop.length() > mark.length()).filter(on_tape) {
            let values: [(&'static str, Value); 3] = [
                ("start", as_written(row.start)),
                ("stop", as_written(row.stop)),
                ("mark", as_written(mark)),
            ];
            let wholly = row.start.length() >= mark.length();
            let message = reading.message(if wholly { "wholly-past-the-mark" } else { "past-the-mark" });
            let message =
                values.into_iter().fold(message, |message, (name, value)| message.with(name, value));
            let finding = if wholly { Finding::must_settle(message) } else { Finding::have_a_look(message) };
            found
                .push(reading.at(finding, row.intercept.place.as_ref()).species(records.code(row.intercept)));
        }
    }
    found
}
