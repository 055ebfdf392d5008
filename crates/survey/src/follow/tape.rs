//! Where on its tape each staked line changed, and whether it still is the same line.

use crate::input::Input;
use crate::line::LineResult;
use crate::measure::short;
use tautline_engine::change::align::{Alignment, align, found_again};
use tautline_engine::change::tape::{Turnover, turnover};
use tautline_engine::length::{Length, Notation};

/// A line that was read at both visits.
#[derive(Clone, Debug)]
pub struct LineChange {
    /// The line.
    pub line: String,
    /// Its reading at the earlier visit, by its place among the lines of that year.
    pub earlier: usize,
    /// Its reading at the later visit, by its place among the lines of that year.
    pub later: usize,
    /// Where it changed, where both readings have positions.
    pub tape: Option<TapeChange>,
}

/// Where a line changed.
#[derive(Clone, Debug)]
pub struct TapeChange {
    /// Canopy gained, lost and kept, on the tape that both readings cover.
    pub turnover: Turnover,
    /// The length that both readings cover.
    pub read: Length,
    /// How the readings lie to each other.
    pub alignment: Alignment,
    /// How the shift is said beside the tape that was read.
    pub notation: Notation,
    /// Share of the earlier canopy that is under canopy again, the shift undone.
    pub found_again: Option<f64>,
}

/// The farthest that a tape is looked for from where it lay: half a metre, less on a short line.
fn reach(line: Length) -> Length {
    Length::from_nanometres((line.nanometres() / 60).min(500_000_000))
}

/// The lines of the same name at both visits.
pub(super) fn lines(input: &Input, earlier: &[LineResult], later: &[LineResult]) -> Vec<LineChange> {
    earlier
        .iter()
        .enumerate()
        .filter_map(|(at, before)| {
            let other = later.iter().position(|line| line.line == before.line)?;
            let tape = tape(input, before, &later[other]);
            Some(LineChange { line: before.line.clone(), earlier: at, later: other, tape })
        })
        .collect()
}

fn tape(input: &Input, earlier: &LineResult, later: &LineResult) -> Option<TapeChange> {
    let read = earlier.read.min(later.read);
    let canopy = |line: &LineResult| {
        let whole = tautline_engine::stretch::Stretch::new(Length::ZERO, read)?;
        let canopy = &line.cover.as_ref()?.canopy;
        Some(canopy.iter().filter_map(|stretch| stretch.within(whole)).collect::<Vec<_>>())
    };
    let (before, after) = (canopy(earlier)?, canopy(later)?);
    let alignment = align(&before, &after, read, reach(read));
    Some(TapeChange {
        turnover: turnover(&before, &after),
        notation: short(later.notation(input), 0),
        read,
        found_again: found_again(
            &before,
            &after,
            if alignment.shift_shown { alignment.shift } else { Length::ZERO },
        ),
        alignment,
    })
}
