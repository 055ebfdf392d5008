//! How often a method was right in one case.

use tautline_engine::confidence::{Bounds, Tail};
use tautline_engine::verdict::{Goal, Verdict, decide};

/// Confidence of intervals and of one-sided bounds.
pub const CONFIDENCE: f64 = 0.9;

/// The goals on which verdicts are tried: cover of at least this many times the truth. A goal below the truth is met
/// on the ground, one above it isn't.
pub const GOALS: [f64; 4] = [0.7, 0.9, 1.1, 1.3];

/// The two tails that are asked of a method: one end of the interval, and the one-sided bound.
pub fn tails() -> [Tail; 2] {
    [Tail::of_interval(CONFIDENCE), Tail::of_bound(CONFIDENCE)]
}

/// Counts over the surveys of one case.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Tally {
    /// Surveys.
    pub surveys: u32,
    /// Surveys that allowed no interval: nothing found, or all lines alike. They count as misses.
    pub none: u32,
    /// The truth lay below the interval.
    pub below: u32,
    /// The truth lay above it.
    pub above: u32,
    /// Widths of the intervals added up, cut to what is possible.
    pub widths: f64,
    /// The truth lay below the lower one-sided bound.
    pub below_bound: u32,
    /// The truth lay above the upper one.
    pub above_bound: u32,
    /// Verdicts of met, for each of [`GOALS`].
    pub met: [u32; 4],
    /// Verdicts of not met.
    pub not_met: [u32; 4],
}

impl Tally {
    /// Counts one survey: the interval's ends and the one-sided bounds, or none.
    pub fn add(&mut self, truth: f64, most: f64, ends: Option<[(f64, f64); 2]>) {
        self.surveys += 1;
        let Some([(low, high), (lower, upper)]) = ends else {
            self.none += 1;
            return;
        };
        self.below += u32::from(truth < low);
        self.above += u32::from(truth > high);
        self.widths += high.min(most) - low.max(0.0);
        self.below_bound += u32::from(truth < lower);
        self.above_bound += u32::from(truth > upper);
        for (goal, (met, not_met)) in GOALS.iter().zip(self.met.iter_mut().zip(&mut self.not_met)) {
            match decide(Goal::AtLeast(goal * truth), Bounds { lower, upper }) {
                Verdict::Met => *met += 1,
                Verdict::NotMet => *not_met += 1,
                Verdict::NotYetShown => {}
            }
        }
    }

    /// Mean width of the intervals that there were; 0 where there was none.
    pub fn width(&self) -> f64 {
        if self.none == self.surveys { 0.0 } else { self.widths / f64::from(self.surveys - self.none) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_counted() {
        let mut tally = Tally::default();
        tally.add(0.2, 1.0, Some([(0.1, 0.4), (0.15, 0.3)]));
        tally.add(0.2, 1.0, Some([(0.25, 0.5), (0.27, 0.4)]));
        tally.add(0.2, 1.0, None);
        assert_eq!((tally.surveys, tally.none, tally.below, tally.above), (3, 1, 1, 0));
        assert_eq!((tally.below_bound, tally.above_bound), (1, 0));
        // goals 0.14, 0.18, 0.22, 0.26: the first survey shows the lowest; the second shows all of them, two wrongly
        assert_eq!((tally.met, tally.not_met), ([2, 1, 1, 1], [0; 4]));
        assert!((tally.width() - 0.275).abs() < 1e-12);
    }
}
