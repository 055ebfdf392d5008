//! Feet and inches written under decimal feet: 6 inches as “.06”, 11 as “.11”, and never a twelve.

use super::records::{Reading, Records, as_written};
use crate::finding::Finding;
use crate::measure::Measure;
use crate::message::{Message, Value};
use std::collections::BTreeMap;
use tautline_engine::length::{Division, Length, Unit};
use tautline_engine::num::math::powf;

/// The chance that hundredths of a foot lie within .00 and .11, if all hundredths are alike.
const CHANCE_UP_TO_11: f64 = 0.12;
/// How improbable it must be, times the readings looked at, before it is said.
const IMPROBABLE: f64 = 0.001;

/// Readings in hundredths of a foot whose decimals never pass .11: all `k` of them by chance, 0.12^k.
///
/// Said where 0.12^k times the number of readings looked at is below 0.001, and at least two different inches stand
/// there that aren't tenths; once for each file and reader.
pub(super) fn suspected(records: &Records) -> Vec<Finding> {
    let looked_at: Vec<(&Reading, Vec<i64>)> = records
        .readings
        .iter()
        .map(|reading| (reading, hundredths(reading)))
        .filter(|(_, edges)| !edges.is_empty())
        .collect();
    let readings = tautline_engine::num::count(looked_at.len());
    let mut suspects: BTreeMap<(&str, &str), Vec<(&Reading, usize)>> = BTreeMap::new();
    for (reading, edges) in &looked_at {
        if chance(edges.len()) * readings < IMPROBABLE && look_like_inches(edges) {
            let file = reading.visit.place.as_ref().map_or("", |place| &place.file);
            suspects.entry((file, &reading.visit.reader)).or_default().push((reading, edges.len()));
        }
    }
    suspects
        .into_values()
        .map(|suspects| {
            let (first, _) = suspects[0];
            let edges: usize = suspects.iter().map(|(_, edges)| edges).sum();
            let lines: Vec<String> = suspects.iter().map(|(reading, _)| reading.visit.line.clone()).collect();
            let message = Message::new("feet-and-inches-suspected")
                .with("site", first.visit.site.as_str())
                .with("lines", lines)
                .with("edges", edges)
                .with("odds", odds(edges))
                .with("example", as_written(first.rows[0].stop));
            let mut finding = first.at(Finding::must_settle(message), None);
            finding.about.get_or_insert_default().visits =
                suspects.iter().map(|(reading, _)| reading.index).collect();
            finding
        })
        .collect()
}

fn chance(edges: usize) -> f64 {
    powf(CHANCE_UP_TO_11, tautline_engine::num::count(edges))
}

/// One chance in so many, up to a million; beyond that nobody asks for more.
fn odds(edges: usize) -> Value {
    Value::Number((1.0 / chance(edges)).min(1e6), 0)
}

/// The hundredths of every edge that is written in them, each place on the line once, the line's ends apart.
fn hundredths(reading: &Reading) -> Vec<i64> {
    let end = reading.tape.map(Measure::length);
    let mut edges: Vec<Length> = reading
        .rows
        .iter()
        .flat_map(|row| [row.start, row.stop])
        .filter(|edge| {
            let notation = edge.notation();
            notation.unit == Unit::Foot
                && !notation.feet_and_inches
                && notation.division == Division::Decimals(2)
        })
        .map(Measure::length)
        .filter(|&edge| edge != Length::ZERO && Some(edge) != end)
        .collect();
    edges.sort_unstable();
    edges.dedup();
    edges.into_iter().map(|edge| edge.nanometres() / (Unit::Foot.nanometres() / 100) % 100).collect()
}

fn look_like_inches(edges: &[i64]) -> bool {
    let mut inches: Vec<i64> = edges.iter().copied().filter(|hundredths| hundredths % 10 != 0).collect();
    inches.sort_unstable();
    inches.dedup();
    inches.len() >= 2 && edges.iter().all(|&hundredths| hundredths < 12)
}
