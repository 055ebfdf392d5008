//! Which habit would explain how one reader's sheets differ from another's.
//!
//! A habit is named only where it is shown; several may be, and more than one may explain the same edges.

mod edges;
mod pieces;
#[cfg(test)]
mod tests;

use crate::length::Length;
use crate::stretch::{Stretch, any_overlaps, total, union, without};

/// What two readers wrote of one line, edges as written.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Sheets {
    /// Live canopy of the first reader.
    pub first: Vec<Stretch>,
    /// Live canopy of the second reader.
    pub second: Vec<Stretch>,
    /// What the first reader wrote as dead.
    pub first_dead: Vec<Stretch>,
    /// What the first reader wrote of plants that don't count, such as grass.
    pub first_other: Vec<Stretch>,
}

/// A habit of the second reader, seen from the first.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Habit {
    /// Gaps that the first reader wrote are read as canopy, up to about this long.
    ClosesGaps {
        /// The longest gap that was closed.
        closed: Length,
        /// The shortest gap beyond it that stayed open, if any did.
        open: Option<Length>,
        /// How many were closed.
        gaps: usize,
    },
    /// Gaps are written that the first reader read as canopy.
    OpensGaps {
        /// The longest gap that the first reader read as canopy.
        opened: Length,
        /// How many were opened.
        gaps: usize,
    },
    /// Every edge is read further out, by this much at each.
    Wider(Length),
    /// Every edge is read further in, by this much at each.
    Narrower(Length),
    /// Everything lies further along the tape (or back, below zero) by this much.
    TapeOff(Length),
    /// Everything lies further along the further it lies from zero: this share of the way.
    TapeStretched(f64),
    /// Edges lie off either way, by about this much: the other edge of the tape was read, or edges are read loosely.
    OtherEdge(Length),
    /// What the first reader wrote as dead is written as live: this share of it.
    DeadAsLive(f64),
    /// What the first reader wrote of plants that don't count, such as grass, is written as canopy: this share of it.
    OtherAsCanopy(f64),
    /// Plants no longer than this are left out.
    LeavesOutSmall {
        /// The longest plant that was missed.
        up_to: Length,
        /// How many were missed.
        plants: usize,
    },
    /// Plants no longer than this are written that the first reader left out.
    AddsSmall {
        /// The longest plant that was added.
        up_to: Length,
        /// How many were added.
        plants: usize,
    },
}

impl Habit {
    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::ClosesGaps { .. } => "habit-closes-gaps",
            Self::OpensGaps { .. } => "habit-opens-gaps",
            Self::Wider(_) => "habit-wider",
            Self::Narrower(_) => "habit-narrower",
            Self::TapeOff(_) => "habit-tape-off",
            Self::TapeStretched(_) => "habit-tape-stretched",
            Self::OtherEdge(_) => "habit-other-edge",
            Self::DeadAsLive(_) => "habit-dead-as-live",
            Self::OtherAsCanopy(_) => "habit-other-as-canopy",
            Self::LeavesOutSmall { .. } => "habit-leaves-out-small",
            Self::AddsSmall { .. } => "habit-adds-small",
        }
    }
}

/// Fewer cases than this are no habit.
const FEWEST: usize = 2;

/// The habits that the sheets show, of the lines that both readers read.
///
/// The finest division is the largest length that all edges are multiples of; what one division can do either way is no habit.
/// Gaps and small plants: a length that tells those closed, opened, left out or added from the others in nine of ten cases, with at
/// least two on its far side. Edges: the median way outwards, the median way along the tape and its growth along it, of plants that
/// both have and that no closed gap, dead wood or other plant touches. Dead wood, plants that don't count: half or more of it written
/// as canopy.
///
/// # Units
/// Whole nanometres.
///
/// # Source
/// Our own; the medians' intervals as in [`crate::change::ranks`]. How often they are right: `docs/agree.md`
///
/// # Example
/// Invented: eight plants, each read 2 cm wider at either edge.
/// ```
/// use tautline_engine::agreement::habits::{Habit, Sheets, habits};
/// use tautline_engine::length::{Length, Unit};
/// use tautline_engine::stretch::Stretch;
/// let at = |cm| Length::from_units(cm, Unit::Centimetre);
/// let plant = |from, to| Stretch::new(at(from), at(to)).unwrap();
/// let first = (1..=8).map(|n| plant(100 * n, 100 * n + 40)).collect();
/// let second = (1..=8).map(|n| plant(100 * n - 2, 100 * n + 42)).collect();
/// let sheets = Sheets { first, second, ..Sheets::default() };
/// assert_eq!(habits(&[sheets]), [Habit::Wider(at(2))]);
/// ```
pub fn habits(lines: &[Sheets]) -> Vec<Habit> {
    let division = division(lines);
    let lines: Vec<Sheets> = lines.iter().map(in_order).collect();
    let edges = edges::habits(&lines, division);
    // two divisions go by chance; edges read further out close small gaps by themselves, further in they lose small plants
    let by_chance = divisions(division, 2);
    let way = |own: &Habit| match own {
        Habit::Wider(way) => (2 * way.nanometres(), 0),
        Habit::Narrower(way) => (0, 2 * way.nanometres()),
        _ => (0, 0),
    };
    let (closed, lost) = edges.iter().map(way).fold((0, 0), |sum, one| (sum.0 + one.0, sum.1 + one.1));
    let mut found = Vec::new();
    found.extend(pieces::closes_gaps(&lines, by_chance + closed));
    found.extend(pieces::opens_gaps(&lines, by_chance + lost));
    found.extend(edges);
    let dead = written_as_live(&lines, |line| &line.first_dead);
    found.extend(dead.map(Habit::DeadAsLive));
    let other = written_as_live(&lines, |line| &line.first_other);
    found.extend(other.map(Habit::OtherAsCanopy));
    found.extend(pieces::leaves_out_small(&lines, by_chance + lost));
    found.extend(pieces::adds_small(&lines, by_chance + closed));
    found
}

fn in_order(line: &Sheets) -> Sheets {
    let of = |stretches: &[Stretch]| union(stretches.iter().copied());
    Sheets {
        first: of(&line.first),
        second: of(&line.second),
        first_dead: of(&line.first_dead),
        first_other: of(&line.first_other),
    }
}

/// The largest length that every edge is a multiple of; zero without edges.
fn division(lines: &[Sheets]) -> Length {
    let stretches = lines.iter().flat_map(|line| line.first.iter().chain(&line.second));
    let edges = stretches.flat_map(|stretch| [stretch.start().nanometres(), stretch.stop().nanometres()]);
    Length::from_nanometres(edges.fold(0, greatest_common_divisor))
}

fn greatest_common_divisor(a: i64, b: i64) -> i64 {
    let (mut a, mut b) = (a.abs(), b.abs());
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}

/// So many divisions as nanometres.
fn divisions(division: Length, number: i64) -> i64 {
    number.saturating_mul(division.nanometres())
}

/// The share of what the first reader wrote otherwise that the second wrote as live, where it is half or more in places enough.
fn written_as_live(lines: &[Sheets], otherwise: impl Fn(&Sheets) -> &Vec<Stretch>) -> Option<f64> {
    let mut all = Length::ZERO;
    let mut live = Length::ZERO;
    let mut places = 0;
    for line in lines {
        // only where the first reader has no live canopy over it
        let alone = without(otherwise(line), &line.first);
        let left = without(&alone, &line.second);
        all = all + total(&alone);
        live = live + total(&alone) - total(&left);
        places += alone.iter().filter(|&&stretch| any_overlaps(&line.second, stretch)).count();
    }
    let share = if all > Length::ZERO { live.share_of(all) } else { 0.0 };
    (places >= FEWEST && share >= 0.5).then_some(share)
}
