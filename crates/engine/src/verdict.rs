//! Met, not met, or not yet shown.

use crate::confidence::Bounds;

/// What is asked of a figure.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Goal {
    /// This much or more.
    AtLeast(f64),
    /// This much or less.
    AtMost(f64),
    /// From this much to that much.
    Between(f64, f64),
}

/// The answer at a stated confidence.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Verdict {
    /// The goal is met.
    Met,
    /// The goal is not met.
    NotMet,
    /// The readings don't show it either way.
    NotYetShown,
}

impl Verdict {
    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Met => "met",
            Self::NotMet => "not-met",
            Self::NotYetShown => "not-yet-shown",
        }
    }

    /// What two verdicts say together, where the figure lies between two ends: the same, or nothing.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        if self == other { self } else { Self::NotYetShown }
    }
}

/// Decides a goal by one-sided bounds, each at the confidence that was asked for.
///
/// At least g: met where the lower bound reaches g, not met where the upper bound stays below it. At most g is its
/// mirror image. Between two values: both one-sided tests must succeed for met; one bound beyond either value is
/// not met.
///
/// # Source
/// one-sided limit against a standard: Elzinga, Salzer and Willoughby 1998, ch. 11 (from memory); two one-sided
/// tests: Schuirmann 1987, Journal of Pharmacokinetics and Biopharmaceutics 15:657
/// # Example
/// ```
/// use tautline_engine::{confidence::Bounds, verdict::{Goal, Verdict, decide}};
/// let bounds = Bounds { lower: 0.16, upper: 0.22 };
/// assert_eq!(decide(Goal::AtLeast(0.15), bounds), Verdict::Met);
/// assert_eq!(decide(Goal::AtLeast(0.20), bounds), Verdict::NotYetShown);
/// assert_eq!(decide(Goal::AtMost(0.15), bounds), Verdict::NotMet);
/// assert_eq!(decide(Goal::Between(0.15, 0.25), bounds), Verdict::Met);
/// ```
pub fn decide(goal: Goal, bounds: Bounds) -> Verdict {
    let (met, not_met) = match goal {
        Goal::AtLeast(g) => (bounds.lower >= g, bounds.upper < g),
        Goal::AtMost(g) => (bounds.upper <= g, bounds.lower > g),
        Goal::Between(low, high) => {
            (bounds.lower >= low && bounds.upper <= high, bounds.upper < low || bounds.lower > high)
        }
    };
    match (met, not_met) {
        (true, _) => Verdict::Met,
        (_, true) => Verdict::NotMet,
        _ => Verdict::NotYetShown,
    }
}
