//! How many lines show a change between two visits, and what change a given number shows.

use super::power::{Groups, Sides, TTest};
use super::search::{MOST_UNITS, smallest};
use super::size::deviation_of_differences;
use crate::num::count;
use crate::num::math::sqrt;
use crate::num::root::crossing;

/// Whether the same lines are read again.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Lines {
    /// Staked lines, read on both visits, whose two readings correlate so much.
    Permanent {
        /// Correlation between the readings of the two visits, below 1.
        correlation: f64,
    },
    /// New lines at each visit.
    Temporary,
}

/// A change between two visits that is to be seen.
///
/// Permanent lines are a paired t test on differences with the deviation σ √(2 (1 − r)); temporary ones a t test of two
/// groups.
///
/// # Source
/// Elzinga, Salzer and Willoughby 1998, BLM Technical Reference 1730-1, appendix 7, equations 2 and 3 (from memory),
/// with the noncentral t in place of the normal; the share not drawn: Cochran 1977, §2.6
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Change {
    /// Whether the same lines are read again.
    pub lines: Lines,
    /// Standard deviation of the lines on one visit, in the figure's unit.
    pub deviation: f64,
    /// Which changes count.
    pub sides: Sides,
    /// Chance of a false alarm: to see a change where there is none.
    pub alpha: f64,
    /// Lines that the area would hold side by side, where it is small.
    pub population: Option<f64>,
}

impl Change {
    /// Chance that `units` lines on each visit show the change.
    ///
    /// # Range
    /// two lines or more; 0 with fewer
    pub fn chance(&self, change: f64, units: usize) -> f64 {
        if units < 2 {
            return 0.0;
        }
        let n = count(units);
        let not_drawn = self.population.map_or(1.0, |all| (1.0 - n / all).max(0.0));
        let (groups, deviation) = match self.lines {
            Lines::Permanent { correlation } => {
                (Groups::One, deviation_of_differences(self.deviation, correlation))
            }
            Lines::Temporary => (Groups::Two, self.deviation),
        };
        let test = TTest { groups, sides: self.sides, alpha: self.alpha };
        test.power(change.abs() / (deviation * sqrt(not_drawn)), n)
    }

    /// The fewest lines on each visit that show the change with the chance `power`.
    ///
    /// # Range
    /// `None` where a million lines, or fewer than the area holds, don't
    /// # Example
    /// Temporary lines half a standard deviation apart take 64 in each group at 5 % two-sided and power 0.8 (Cohen
    /// 1988, table 2.4.1, from memory).
    /// ```
    /// use tautline_engine::effort::{change::{Change, Lines}, power::Sides};
    /// let plan = Change { lines: Lines::Temporary, deviation: 8.0, sides: Sides::Two, alpha: 0.05, population: None };
    /// assert_eq!(plan.units(4.0, 0.8), Some(64));
    /// ```
    pub fn units(&self, change: f64, power: f64) -> Option<usize> {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to a million")]
        let most = self.population.map_or(MOST_UNITS, |lines| (lines - 1.0).clamp(2.0, 1e6) as usize);
        smallest(2, most, |units| self.chance(change, units) >= power)
    }

    /// The smallest change that `units` lines on each visit show with the chance `power`.
    ///
    /// # Range
    /// two lines or more; `None` where `power` is below the chance of a false alarm or not below 1
    pub fn detectable(&self, units: usize, power: f64) -> Option<f64> {
        let seen = |change: f64| self.chance(change, units) - power;
        let mut far = self.deviation;
        while seen(far) < 0.0 && far < self.deviation * FARTHEST {
            far *= 2.0;
        }
        crossing(seen, 0.0, far)
    }
}

/// Farther than this many standard deviations nothing is sought.
const FARTHEST: f64 = 1e4;

#[cfg(test)]
mod tests {
    use super::*;

    /// Cohen 1988, p. 50: d = 8 / (16 √(2 (1 − 0.6))), n = 40 pairs, two-sided 5 %: 0.9315248 (exercise cited in the
    /// help of R's `pwr.t.test`).
    #[test]
    fn cohens_pairs() {
        let lines = Lines::Permanent { correlation: 0.6 };
        let plan = Change { lines, deviation: 16.0, sides: Sides::Two, alpha: 0.05, population: None };
        assert!((plan.chance(8.0, 40) - 0.931_524_8).abs() < 1e-6);
        let seen = plan.detectable(40, 0.931_524_8).unwrap();
        assert!((seen - 8.0).abs() < 1e-5, "{seen}");
    }

    /// Half a standard deviation of differences, power 0.8, 5 %: 27 pairs one-sided, 34 two-sided (StatsToDo, sample
    /// size for paired differences).
    #[test]
    fn pairs_needed() {
        let lines = Lines::Permanent { correlation: 0.5 };
        for (sides, pairs) in [(Sides::One, 27), (Sides::Two, 34)] {
            let plan = Change { lines, deviation: 1.0, sides, alpha: 0.05, population: None };
            assert_eq!(plan.units(0.5, 0.8), Some(pairs));
        }
    }

    #[test]
    fn a_small_area_shows_more() {
        let endless = Change {
            lines: Lines::Temporary,
            deviation: 0.1,
            sides: Sides::Two,
            alpha: 0.1,
            population: None,
        };
        let small = Change { population: Some(50.0), ..endless };
        assert!(small.chance(0.08, 20) > endless.chance(0.08, 20));
        assert!(
            small.units(0.01, 0.8).is_some_and(|units| units < 50),
            "nearly all of it shows nearly anything"
        );
    }
}
