//! The same thing twice: one line read twice with nothing to tell which reading speaks, one reading under two names.

use super::records::{Reading, Records};
use crate::finding::Finding;
use crate::message::Value;
use crate::visit::{Extent, State};
use std::collections::BTreeMap;

/// Readings of one line on one day, or without a day, and under one pass.
pub(super) fn line_read_twice(records: &Records) -> Vec<Finding> {
    let mut same: BTreeMap<_, Vec<&Reading>> = BTreeMap::new();
    for reading in &records.readings {
        let visit = reading.visit;
        same.entry((&visit.site, &visit.line, visit.date, &visit.pass)).or_default().push(reading);
    }
    let twice = same.into_values().filter(|readings| readings.len() > 1);
    twice
        .map(|readings| {
            let mut readers: Vec<String> =
                readings.iter().map(|reading| reading.visit.reader.clone()).collect();
            readers.sort_unstable();
            readers.iter_mut().filter(|reader| reader.is_empty()).for_each(|reader| "?".clone_into(reader));
            let last = readings[readings.len() - 1];
            let message = last.message("line-read-twice").with("readers", readers);
            all(&readings, last.at(Finding::must_settle(message), None))
        })
        .collect()
}

/// One row of a reading, as far as two readings can agree on it: species, where it lies, live or dead.
type Written<'a> = (&'a str, i64, Option<i64>, bool);

/// Positions agree by chance on no three rows …
pub const ENOUGH_POSITIONS: usize = 3;
/// … lengths, which are few, on hardly six.
const ENOUGH_LENGTHS: usize = 6;

/// Readings of two lines, or of two days, that agree in every row: no tape is ever read alike to the last digit.
pub(super) fn written_twice(records: &Records) -> Vec<Finding> {
    let mut same: BTreeMap<Vec<Written>, Vec<&Reading>> = BTreeMap::new();
    for reading in &records.readings {
        let intercepts = &reading.visit.intercepts;
        let enough = if reading.rows.is_empty() { ENOUGH_LENGTHS } else { ENOUGH_POSITIONS };
        if intercepts.len() >= enough {
            let mut rows: Vec<Written> = intercepts
                .iter()
                .map(|intercept| {
                    let (from, to) = match &intercept.extent {
                        Extent::Edges { start, stop } => (start, Some(stop.length().nanometres())),
                        Extent::Length(length) => (length, None),
                    };
                    let dead = intercept.state == State::Dead;
                    (records.code(intercept), from.length().nanometres(), to, dead)
                })
                .collect();
            rows.sort_unstable();
            same.entry(rows).or_default().push(reading);
        }
    }
    let twice = same.into_values().filter(|readings| readings.len() > 1);
    twice
        .map(|mut readings| {
            readings.sort_by_key(|reading| reading.visit.identity());
            let others: Vec<Value> = readings[..readings.len() - 1].iter().map(|one| named(one)).collect();
            let last = readings[readings.len() - 1];
            let message = last.message("reading-written-twice").with("others", Value::List(others));
            all(&readings, last.at(Finding::must_settle(message), None))
        })
        .collect()
}

fn named(reading: &Reading) -> Value {
    let date = reading.visit.date.map_or(String::new(), |date| date.to_string());
    reading.message(if date.is_empty() { "a-line" } else { "a-line-on" }).with("date", date).into()
}

/// The same finding, about all of the readings.
fn all(readings: &[&Reading], mut finding: Finding) -> Finding {
    finding.about.get_or_insert_default().visits = readings.iter().map(|reading| reading.index).collect();
    finding
}
