//! The tape read from its far end, or laid the other way round than last time.

use super::records::{Reading, Records, Row};
use crate::finding::Finding;
use crate::input::Input;
use crate::message::Value;
use crate::visit::State;
use std::collections::{BTreeMap, BTreeSet};
use tautline_engine::length::Length;
use tautline_engine::stretch::{Stretch, total, union, without};

/// What a row is called on reading whose stop lies before its start.
const SWAPPED: &str = "stop-before-start";
/// What a reading is called without a usable row.
const NOTHING_USED: &str = "read-but-no-readings";
/// One slip is a slip; so many, and nothing else on the line, are a direction.
const ENOUGH_ROWS: usize = 3;

/// Readings on which every row has its stop before its start.
pub(super) fn every_row(records: &Records) -> Vec<Finding> {
    let mut swapped: BTreeMap<usize, (usize, &Finding)> = BTreeMap::new();
    for finding in records.input.findings.iter().filter(|one| one.message.code == SWAPPED) {
        for &visit in finding.about.iter().flat_map(|about| &about.visits) {
            swapped.entry(visit).or_insert((0, finding)).0 += finding.times();
        }
    }
    swapped
        .into_iter()
        .filter(|&(visit, (count, _))| {
            count >= ENOUGH_ROWS && records.input.visits[visit].intercepts.is_empty()
        })
        .map(|(index, (count, first))| {
            let visit = &records.input.visits[index];
            let message = crate::message::Message::new("tape-read-backwards")
                .with("site", visit.site.as_str())
                .with("line", visit.line.as_str())
                .with("count", count);
            Finding::must_settle(message).at_place(first.place.as_ref()).of(visit, index)
        })
        .collect()
}

/// What is said of the whole reading isn't said of each of its rows again.
pub(super) fn speak_once(input: &mut Input, found: &[Finding]) {
    let backwards: BTreeSet<usize> = found
        .iter()
        .filter(|one| one.message.code == "tape-read-backwards")
        .flat_map(|one| one.about.iter().flat_map(|about| about.visits.clone()))
        .collect();
    let of_these = |finding: &Finding| {
        finding.about.iter().flat_map(|about| &about.visits).any(|visit| backwards.contains(visit))
    };
    input.findings.retain(|one| ![SWAPPED, NOTHING_USED].contains(&one.message.code) || !of_these(one));
}

/// Mirrored canopy that agrees at least this well with the last visit's …
const AGREES: f64 = 0.4;
/// … and so many times better than it does as it was read.
const BETTER: f64 = 3.0;
/// Fewer stretches than this may agree by chance.
const ENOUGH_STRETCHES: usize = 3;

/// Lines on which the canopy lies as in the last visit's mirror image: the zero at the other stake.
///
/// Agreement is the tape under both canopies as a share of the tape under either (Jaccard 1901).
pub(super) fn against_the_last_visit(records: &Records) -> Vec<Finding> {
    let mut lines: BTreeMap<(&str, &str), Vec<&Reading>> = BTreeMap::new();
    for reading in records.readings.iter().filter(|reading| reading.visit.date.is_some()) {
        lines.entry((&reading.visit.site, &reading.visit.line)).or_default().push(reading);
    }
    let mut found = Vec::new();
    for mut readings in lines.into_values() {
        readings.sort_by_key(|reading| (reading.visit.date, reading.visit.identity()));
        for pair in readings.windows(2) {
            let (Some(tape), [before, now]) = (pair[1].tape, [canopy(pair[0]), canopy(pair[1])]) else {
                continue;
            };
            if before.len().min(now.len()) < ENOUGH_STRETCHES {
                continue;
            }
            let mirrored = agreement(&before, &mirror(&now, tape.length()));
            if mirrored >= AGREES && mirrored >= BETTER * agreement(&before, &now) {
                let message = pair[1]
                    .message("tape-laid-the-other-way")
                    .with("mirrored", Value::Share(mirrored, 0))
                    .with("read", Value::Share(agreement(&before, &now), 0))
                    .with("date", pair[0].visit.date.map_or(String::new(), |date| date.to_string()));
                found.push(pair[1].at(Finding::have_a_look(message), None));
            }
        }
    }
    found
}

fn canopy(reading: &Reading) -> Vec<Stretch> {
    union(reading.rows.iter().filter(|row| row.intercept.state == State::Live).map(Row::stretch))
}

fn mirror(canopy: &[Stretch], tape: Length) -> Vec<Stretch> {
    union(canopy.iter().filter_map(|one| Stretch::new(tape - one.stop(), tape - one.start())))
}

fn agreement(a: &[Stretch], b: &[Stretch]) -> f64 {
    let either = total(&union(a.iter().chain(b).copied()));
    let both = total(a) - total(&without(a, b));
    both.share_of(either)
}
