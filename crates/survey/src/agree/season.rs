//! One reader over a season, and whether they are ready by the office's own tolerance.

use super::Agreement;
use crate::date::Date;
use std::collections::BTreeMap;
use tautline_engine::agreement::control::{Chart, chart};
use tautline_engine::num::count;

/// Of the lines read by both, so many must lie within the tolerance (a share and a tolerance together, as forest inventories judge
/// their crews).
const SHARE_READY: f64 = 0.9;

/// Fewer lines than this make nobody ready.
const FEWEST_LINES: usize = 3;

/// Whether a reader is ready.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ready {
    /// Nine of ten lines or more lie within the tolerance.
    Ready,
    /// They don't.
    Practise,
    /// Too few lines were read by both to say.
    TooFew,
}

impl Ready {
    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Ready => "ready",
            Self::Practise => "practise",
            Self::TooFew => "too-few-lines-read",
        }
    }
}

/// The verdict on one reader, by a tolerance that the office set.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Standing {
    /// The tolerance, as a share of the line.
    pub tolerance: f64,
    /// Lines whose covers lie within it.
    pub within: usize,
    /// Lines that were compared.
    pub lines: usize,
    /// The verdict.
    pub ready: Ready,
}

/// The verdict on the second reader.
pub fn standing(agreement: &Agreement, tolerance: f64) -> Standing {
    let differences: Vec<f64> = agreement.lines.iter().filter_map(|pair| pair.difference).collect();
    let lines = differences.len();
    // what is read to a division is compared to one: a difference of just the tolerance lies within it
    let within = differences.iter().filter(|difference| difference.abs() <= tolerance + 1e-12).count();
    let ready = if lines < FEWEST_LINES {
        Ready::TooFew
    } else if count(within) >= SHARE_READY * count(lines) {
        Ready::Ready
    } else {
        Ready::Practise
    };
    Standing { tolerance, within, lines, ready }
}

/// One line read by both.
#[derive(Clone, Debug, PartialEq)]
pub struct Point {
    /// The day on which the second reader read it.
    pub day: Date,
    /// The site.
    pub site: String,
    /// The line.
    pub line: String,
    /// What the second reader has more, as a share of the line.
    pub difference: f64,
}

/// One reader's differences from another over a season.
#[derive(Clone, Debug)]
pub struct Season {
    /// The reader that the other is set beside.
    pub first: String,
    /// The reader it is about.
    pub second: String,
    /// The year.
    pub year: u16,
    /// The lines, in the order of time.
    pub points: Vec<Point>,
    /// The chart about agreement; none for too few lines.
    pub chart: Option<Chart>,
}

/// Each pair of readers over each year, from all sites; those with dated lines only.
pub fn seasons(agreements: &[Agreement]) -> Vec<Season> {
    let mut by_pair: BTreeMap<(u16, &str, &str), Vec<Point>> = BTreeMap::new();
    for one in agreements {
        for pair in &one.lines {
            if let (Some(day), Some(year), Some(difference)) = (pair.second.date, one.year, pair.difference) {
                let points = by_pair.entry((year, &one.first, &one.second)).or_default();
                let (site, line) = (one.site.clone(), pair.first.line.clone());
                points.push(Point { day, site, line, difference });
            }
        }
    }
    by_pair
        .into_iter()
        .map(|((year, first, second), mut points)| {
            points.sort_by_key(|point| point.day);
            let values: Vec<f64> = points.iter().map(|point| point.difference).collect();
            Season {
                first: first.to_owned(),
                second: second.to_owned(),
                year,
                chart: chart(&values, Some(0.0)),
                points,
            }
        })
        .collect()
}
