//! What was unlike at the two visits, beside what grew or died.

use super::noted::{SAME_SEASON_DAYS, days_apart, middle_day, outside_window};
use super::{ChangeQuestion, Design, Readers, SiteChange};
use crate::finding::Finding;
use crate::input::Input;
use crate::line::LineResult;
use crate::message::{Message, Value};
use std::collections::BTreeSet;
use tautline_engine::change::align::Pairing;
use tautline_engine::length::Length;

/// A tape that lies farther off than this is said.
const SHIFT_WORTH_SAYING: Length = Length::from_nanometres(100_000_000);

pub(super) fn findings(input: &Input, change: &SiteChange, asked: &ChangeQuestion) -> Vec<Finding> {
    let mut findings = Vec::new();
    findings.extend(season(change));
    findings.extend(window(input, change));
    findings.extend(stage(change));
    // where lines that both read measured them, the change says so itself
    if !matches!(change.readers, Some(Readers::Measured(_))) {
        findings.extend(readers(change));
    }
    findings.extend(lines_read_once(change));
    findings.extend(pairing(change, asked));
    findings
}

/// A message that names the two years.
fn between(change: &SiteChange, code: &'static str) -> Message {
    Message::new(code).with("from", change.from.to_string()).with("to", change.to.to_string())
}

fn season(change: &SiteChange) -> Option<Finding> {
    let apart = days_apart(middle_day(&change.earlier)?, middle_day(&change.later)?);
    (apart > SAME_SEASON_DAYS)
        .then(|| Finding::have_a_look(between(change, "unlike-season").with("days", u64::from(apart))))
}

/// Lines of either visit that were read outside their protocol's window.
fn window(input: &Input, change: &SiteChange) -> Vec<Finding> {
    [(change.from, &change.earlier), (change.to, &change.later)]
        .into_iter()
        .flat_map(|(year, lines)| outside_window(input, year, lines))
        .collect()
}

/// Stages of growth that differ: part of the change is leaf that had yet to come, or had gone.
fn stage(change: &SiteChange) -> Vec<Finding> {
    let unlike = change.noted.iter().filter(|noted| noted.is_growth_stage() && noted.is_unlike());
    unlike
        .map(|noted| {
            let words = |values: &[String]| match values {
                [] => Value::Word("nothing-noted"),
                _ => Value::from(values.to_vec()),
            };
            Finding::have_a_look(
                between(change, "unlike-growth-stage")
                    .with("before", words(&noted.visits[0]))
                    .with("after", words(&noted.visits[1])),
            )
        })
        .collect()
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
            let shift = Value::Length(shift, tape.notation);
            findings.push(Finding::note(
                between(change, "tape-lies-off").with("line", line.as_str()).with("shift", shift),
            ));
        }
    }
    findings
}
