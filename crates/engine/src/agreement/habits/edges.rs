//! How the edges of plants that both readers have differ: outwards, along the tape, or either way.

use super::{Habit, Sheets, divisions};
use crate::agreement::patches::matched;
use crate::change::ranks::median_interval;
use crate::length::Length;
use crate::num::count;
use crate::num::sum::median;
use crate::stretch::{Stretch, any_overlaps, without};
use crate::trend::robust::{slope_interval, theil_sen};

/// How sure an edge difference must be before it is a habit.
const SURE: f64 = 0.975;
/// With so few edges no interval is that sure; a way of two divisions that nearly all go is shown all the same.
const FEWEST_EDGES: usize = 6;
/// Nearly all.
const NEARLY_ALL: f64 = 0.8;

/// One plant as both have it, in nanometres.
struct Edges {
    place: f64,
    start: f64,
    stop: f64,
}

impl Edges {
    fn outward(&self) -> f64 {
        f64::midpoint(-self.start, self.stop)
    }

    fn along(&self) -> f64 {
        f64::midpoint(self.start, self.stop)
    }
}

fn nanometres(length: Length) -> f64 {
    whole(length.nanometres())
}

#[expect(clippy::cast_precision_loss, reason = "differences of edges on one line")]
fn whole(nanometres: i64) -> f64 {
    nanometres as f64
}

#[expect(clippy::cast_possible_truncation, reason = "differences of edges on one line")]
fn length(nanometres: f64) -> Length {
    Length::from_nanometres(nanometres.round() as i64)
}

/// Plants that stand one to one, and whose second reading reaches into nothing that the first wrote otherwise.
fn compared(lines: &[Sheets]) -> Vec<Edges> {
    let mut compared = Vec::new();
    for line in lines {
        let alone =
            |of: Stretch, among: &[Stretch]| among.iter().filter(|other| other.overlaps(of)).count() == 1;
        for (a, b) in matched(&line.first, &line.second).both {
            let beyond = without(&[b], &[a]);
            let otherwise = beyond
                .iter()
                .any(|&part| any_overlaps(&line.first_dead, part) || any_overlaps(&line.first_other, part));
            if alone(a, &line.second) && alone(b, &line.first) && !otherwise {
                compared.push(Edges {
                    place: nanometres(a.start()),
                    start: nanometres(b.start() - a.start()),
                    stop: nanometres(b.stop() - a.stop()),
                });
            }
        }
    }
    compared
}

pub(super) fn habits(lines: &[Sheets], division: Length) -> Vec<Habit> {
    let edges = compared(lines);
    let one = whole(divisions(division, 1));
    let mut found = Vec::new();
    let outward: Vec<f64> = edges.iter().map(Edges::outward).collect();
    if let Some(way) = shown(&outward, one) {
        found.push(if way > 0.0 { Habit::Wider(length(way)) } else { Habit::Narrower(length(-way)) });
    }
    let stretched = stretched(&edges, one);
    let along: Vec<f64> =
        edges.iter().map(|edge| edge.along() - stretched.unwrap_or_default() * edge.place).collect();
    found.extend(stretched.map(Habit::TapeStretched));
    found.extend(shown(&along, one).map(|way| Habit::TapeOff(length(way))));
    if found.is_empty() {
        found.extend(either_way(&edges, one));
    }
    found
}

/// The median way, where it is a division or more and its interval leaves zero out, or where it is two or more and nearly all go it.
fn shown(ways: &[f64], division: f64) -> Option<f64> {
    let middle = median(ways)?;
    let leaves_zero_out =
        || median_interval(ways, SURE).is_some_and(|(low, high, _)| low > 0.0 || high < 0.0);
    let same_way = ways.iter().filter(|way| **way * middle > 0.0).count();
    let nearly_all = ways.len() >= FEWEST_EDGES && count(same_way) >= NEARLY_ALL * count(ways.len());
    let is_shown = middle.abs() >= division && leaves_zero_out()
        || division > 0.0 && middle.abs() >= 2.0 * division && nearly_all;
    is_shown.then_some(middle)
}

/// How much further along each length of tape lies, where that is shown and comes to two divisions over the plants.
fn stretched(edges: &[Edges], division: f64) -> Option<f64> {
    let points: Vec<(f64, f64)> = edges.iter().map(|edge| (edge.place, edge.along())).collect();
    let slope = theil_sen(&points)?;
    let (first, last) = edges
        .iter()
        .fold((f64::INFINITY, 0.0_f64), |(first, last), edge| (first.min(edge.place), last.max(edge.place)));
    let enough = edges.len() >= FEWEST_EDGES && (slope * (last - first)).abs() >= (2.0 * division).max(1.0);
    let sure = || slope_interval(&points, 0.99).is_some_and(|(low, high)| low > 0.0 || high < 0.0);
    (enough && sure()).then_some(slope)
}

/// How far edges lie off either way, where half of them do so by more than two divisions.
fn either_way(edges: &[Edges], division: f64) -> Option<Habit> {
    let off: Vec<f64> = edges.iter().flat_map(|edge| [edge.start.abs(), edge.stop.abs()]).collect();
    let far = off.iter().filter(|off| **off > 2.0 * division).count();
    let enough = division > 0.0 && edges.len() >= FEWEST_EDGES && 2 * far >= off.len();
    enough.then(|| median(&off).map(|off| Habit::OtherEdge(length(off)))).flatten()
}
