//! A line far from its site's others.

use super::records::{Reading, Records};
use crate::assess::natural_order;
use crate::finding::Finding;
use crate::message::Value;
use crate::protocol::{Counts, Protocol};
use crate::visit::{Extent, Outcome, State};
use std::collections::BTreeMap;
use tautline_engine::length::Length;
use tautline_engine::num::math::{atan2, sqrt};
use tautline_engine::outlying::{distances, far_from};
use tautline_engine::stretch::{total, union};

/// Less than this share of the line, however far it is from a few lines that happen to agree, is worth nobody's look:
/// the accuracy that handbooks ask of a site's mean (Miller et al. 2003).
const MATTERS: f64 = 0.05;

/// Lines whose live cover lies farther from the median of their site, stratum and year than one site in a hundred
/// shows of itself: the distance in median absolute deviations, on the arcsine-root scale, with a limit for the
/// number of lines ([`far_from`]). Fewer than five lines say nothing of each other, and a
/// difference of less than five points is left alone.
pub(super) fn far(records: &Records) -> Vec<Finding> {
    let mut found = Vec::new();
    for readings in records.rounds().into_values() {
        let mut strata: BTreeMap<Option<&str>, Vec<&Reading>> = BTreeMap::new();
        for reading in first_of_each_line(readings) {
            strata.entry(reading.stratum).or_default().push(reading);
        }
        for lines in strata.into_values() {
            let covers: Vec<(&Reading, f64)> =
                lines.into_iter().filter_map(|one| cover(records, one).map(|share| (one, share))).collect();
            found.extend(far_among(&covers));
        }
    }
    found
}

fn far_among(covers: &[(&Reading, f64)]) -> Vec<Finding> {
    let even: Vec<f64> = covers.iter().map(|&(_, share)| atan2(sqrt(share), sqrt(1.0 - share))).collect();
    let (Some(limit), Some(distances)) = (far_from(even.len()), distances(&even)) else { return Vec::new() };
    let mut shares: Vec<f64> = covers.iter().map(|&(_, share)| share).collect();
    shares.sort_by(f64::total_cmp);
    let median = f64::midpoint(shares[(shares.len() - 1) / 2], shares[shares.len() / 2]);
    covers
        .iter()
        .zip(distances)
        .filter(|&(&(_, share), distance)| distance > limit && (share - median).abs() >= MATTERS)
        .map(|(&(reading, share), distance)| {
            let message = reading
                .message("line-far-from-others")
                .with("cover", Value::Share(share, 1))
                .with("median", Value::Share(median, 1))
                .with("lines", covers.len())
                .with("distance", Value::Number(distance, 1))
                .with("limit", Value::Number(limit, 1));
            reading.at(Finding::have_a_look(message), None)
        })
        .collect()
}

/// A line that was read more than once goes in with its first pass.
fn first_of_each_line<'a>(readings: Vec<&'a Reading<'a>>) -> Vec<&'a Reading<'a>> {
    let mut lines: BTreeMap<&str, &Reading> = BTreeMap::new();
    for reading in readings {
        let kept = lines.entry(&reading.visit.line).or_insert(reading);
        let (pass, date) = (&reading.visit.pass, reading.visit.date);
        if natural_order(pass, &kept.visit.pass).then_with(|| date.cmp(&kept.visit.date)).is_lt() {
            *kept = reading;
        }
    }
    lines.into_values().collect()
}

/// Live cover of what counts, every edge as written; `None` for a line that wasn't read to its end, or that must be settled first.
fn cover(records: &Records, reading: &Reading) -> Option<f64> {
    let tape = reading.tape.filter(|tape| tape.length() > Length::ZERO)?.length();
    if reading.visit.outcome != Outcome::Read || records.input.held.contains(&reading.index) {
        return None;
    }
    let counts = reading.protocol.map_or_else(Counts::woody, Protocol::counts_or_woody);
    let live = reading.visit.intercepts.iter().filter(|one| {
        let code = records.code(one);
        one.state == State::Live && counts.includes(code, records.input.plants.find(code))
    });
    let (mut stretches, mut lengths) = (Vec::new(), Length::ZERO);
    for intercept in live {
        match &intercept.extent {
            Extent::Edges { start, stop } => {
                stretches
                    .extend(tautline_engine::stretch::Stretch::new(start.length(), stop.length().min(tape)));
            }
            Extent::Length(length) => lengths = lengths + length.length(),
        }
    }
    Some((total(&union(stretches)) + lengths).min(tape).share_of(tape))
}
