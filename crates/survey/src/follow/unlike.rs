//! What was unlike at the two visits, beside what grew or died.

use super::{ChangeQuestion, Design, Readers, SiteChange};
use crate::date::Date;
use crate::finding::Finding;
use crate::input::Input;
use crate::line::LineResult;
use crate::message::{Message, Value};
use std::collections::BTreeSet;
use tautline_engine::change::align::Pairing;
use tautline_engine::length::{Length, Notation, Unit};

/// Visits farther apart in the year than this many days may differ by the season alone (common practice, no source).
const SAME_SEASON_DAYS: u16 = 21;

/// A tape that lies farther off than this is said.
const SHIFT_WORTH_SAYING: Length = Length::from_nanometres(100_000_000);

pub(super) fn findings(input: &Input, change: &SiteChange, asked: &ChangeQuestion) -> Vec<Finding> {
    let mut findings = Vec::new();
    findings.extend(season(change));
    // where lines that both read measured them, the change says so itself
    if !matches!(change.readers, Some(Readers::Measured(_))) {
        findings.extend(readers(change));
    }
    findings.extend(conditions(input, change));
    findings.extend(lines_read_once(change));
    findings.extend(pairing(change, asked));
    findings
}

/// A message that names the two years.
fn between(change: &SiteChange, code: &'static str) -> Message {
    Message::new(code).with("from", change.from.to_string()).with("to", change.to.to_string())
}

/// The middle day of the year on which lines were read.
fn middle_day(lines: &[LineResult]) -> Option<u16> {
    let mut days: Vec<u16> = lines.iter().filter_map(|line| line.date).map(Date::day_of_year).collect();
    days.sort_unstable();
    days.get(days.len() / 2).copied()
}

fn season(change: &SiteChange) -> Option<Finding> {
    let apart = middle_day(&change.earlier)?.abs_diff(middle_day(&change.later)?);
    let apart = apart.min(365 - apart.min(365));
    (apart > SAME_SEASON_DAYS)
        .then(|| Finding::have_a_look(between(change, "unlike-season").with("days", u64::from(apart))))
}

fn readers(change: &SiteChange) -> Option<Finding> {
    let of = |lines: &[LineResult]| -> BTreeSet<String> {
        lines.iter().map(|line| line.reader.clone()).filter(|reader| !reader.is_empty()).collect()
    };
    let (before, after) = (of(&change.earlier), of(&change.later));
    (!before.is_empty() && !after.is_empty() && before != after).then(|| {
        let names = |readers: BTreeSet<String>| readers.into_iter().collect::<Vec<_>>();
        Finding::have_a_look(
            between(change, "unlike-readers").with("before", names(before)).with("after", names(after)),
        )
    })
}

/// Growth stage, grazing, fire and the like, where the two years differ in them.
fn conditions(input: &Input, change: &SiteChange) -> Vec<Finding> {
    let of = |lines: &[LineResult], heading: &str| -> BTreeSet<String> {
        let visits = lines.iter().map(|line| &input.visits[line.visit]);
        let noted = visits.flat_map(|visit| &visit.conditions).filter(|(own, _)| own == heading);
        noted.map(|(_, value)| value.trim().to_owned()).filter(|value| !value.is_empty()).collect()
    };
    let lines = change.earlier.iter().chain(&change.later);
    let headings: BTreeSet<&String> =
        lines.flat_map(|line| &input.visits[line.visit].conditions).map(|(heading, _)| heading).collect();
    headings
        .into_iter()
        .filter_map(|heading| {
            let (before, after) = (of(&change.earlier, heading), of(&change.later, heading));
            (before != after).then(|| {
                let words = |values: BTreeSet<String>| match values.len() {
                    0 => Value::Word("nothing-noted"),
                    _ => Value::from(values.into_iter().collect::<Vec<_>>()),
                };
                Finding::note(
                    between(change, "unlike-condition")
                        .with("heading", heading.as_str())
                        .with("before", words(before))
                        .with("after", words(after)),
                )
            })
        })
        .collect()
}

/// Lines without their partner, and what became of them.
fn lines_read_once(change: &SiteChange) -> Option<Finding> {
    let figure = change.figures.first()?;
    let (before, after) = figure.once();
    if change.lines.is_empty() || (before == 0 && after == 0) {
        return None;
    }
    let only = |lines: &[LineResult], others: &[LineResult]| -> Vec<String> {
        let alone = lines.iter().filter(|line| !others.iter().any(|other| other.line == line.line));
        alone.map(|line| line.line.clone()).collect()
    };
    let names: Vec<String> = only(&change.earlier, &change.later)
        .into_iter()
        .chain(only(&change.later, &change.earlier))
        .collect();
    let message = match figure.design() {
        Design::Paired => between(change, "read-once-left-out"),
        _ => between(change, "read-once-used"),
    };
    Some(Finding::note(message.with("lines", names)))
}

/// Whether staked lines still are the same lines.
fn pairing(change: &SiteChange, asked: &ChangeQuestion) -> Vec<Finding> {
    if asked.temporary {
        return Vec::new();
    }
    let mut findings = Vec::new();
    let tapes = || change.lines.iter().filter_map(|line| line.tape.as_ref().map(|tape| (&line.line, tape)));
    let doubtful: Vec<String> = tapes()
        .filter(|(_, tape)| matches!(tape.alignment.pairing, Pairing::Doubtful { .. }))
        .map(|(line, _)| line.clone())
        .collect();
    if !doubtful.is_empty() {
        let worth = change.figures.first().and_then(|figure| figure.worth).unwrap_or(1.0);
        findings.push(Finding::have_a_look(
            between(change, "pairing-in-doubt")
                .with("lines", doubtful)
                .with("times", Value::Number(worth, 1)),
        ));
    }
    let holds = |pairing: Pairing| matches!(pairing, Pairing::Holds { .. });
    for (line, tape) in tapes().filter(|(_, tape)| holds(tape.alignment.pairing)) {
        let shift = tape.alignment.shift;
        if tape.alignment.shift_shown && shift.nanometres().abs() > SHIFT_WORTH_SAYING.nanometres() {
            let centimetres = Value::Length(shift, Notation::decimals(Unit::Centimetre, 0));
            findings.push(Finding::note(
                between(change, "tape-lies-off").with("line", line.as_str()).with("shift", centimetres),
            ));
        }
    }
    findings
}
