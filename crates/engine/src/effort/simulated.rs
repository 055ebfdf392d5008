//! The chance that a change is seen, by drawing survey after survey and testing each.
//!
//! The closed form ([`super::change`]) holds where lines are normally spread. Lines with many zeros and a few dense
//! patches are not; here they are drawn from such a stand (`stand`), or from a person's own lines.

mod stand;

pub use stand::{Foreseen, Making, Readings, Shape};

use super::power::Sides;
use crate::num::math::sqrt;
use crate::num::{count, quantile::t_quantile};
use crate::seed::{Normals, Random, Seed};

/// Draws a line: what it reads on the earlier visit and on the later.
pub trait DrawLine {
    /// The next line's two readings.
    fn line(&mut self) -> (f64, f64);
}

/// Lines that are normally spread on both visits.
#[derive(Clone, Debug)]
pub struct NormalLines {
    earlier: f64,
    later: f64,
    deviation: f64,
    /// Share of the earlier reading's difference from its mean that the later one keeps, and what is drawn anew.
    kept: f64,
    anew: f64,
    normals: Normals,
}

impl NormalLines {
    /// Lines with these means on the two visits, this standard deviation on either, and this correlation between them.
    ///
    /// # Range
    /// correlation from −1 to 1
    pub fn new(means: (f64, f64), deviation: f64, correlation: f64, seed: Seed) -> Self {
        Self {
            earlier: means.0,
            later: means.1,
            deviation,
            kept: deviation * correlation,
            anew: deviation * sqrt((1.0 - correlation * correlation).max(0.0)),
            normals: seed.normals(),
        }
    }
}

impl DrawLine for NormalLines {
    #[inline]
    fn line(&mut self) -> (f64, f64) {
        let (first, second) = (self.normals.draw(), self.normals.draw());
        (self.earlier + self.deviation * first, self.later + self.kept * first + self.anew * second)
    }
}

/// Lines drawn from known ones, each as likely at every draw.
#[derive(Clone, Debug)]
pub struct KnownLines<'a> {
    readings: &'a [(f64, f64)],
    random: Random,
}

impl<'a> KnownLines<'a> {
    /// # Range
    /// `None` without any line to draw from
    pub fn new(readings: &'a [(f64, f64)], seed: Seed) -> Option<Self> {
        (!readings.is_empty()).then(|| Self { readings, random: seed.stream() })
    }
}

impl DrawLine for KnownLines<'_> {
    fn line(&mut self) -> (f64, f64) {
        let at = self.random.below(self.readings.len() as u64);
        usize::try_from(at).ok().and_then(|at| self.readings.get(at)).copied().unwrap_or_default()
    }
}

/// Surveys of so many staked lines, read on two visits and judged by the paired t test.
///
/// A simulation is run in as many pieces as suits whoever waits for it: the draws go on where they stopped, so the
/// pieces don't change the answer.
///
/// # Source
/// power by simulation: common practice, no source; its check against the noncentral t stands in the tests
/// # Example
/// Forty pairs, d = 8 of a deviation of 16, r = 0.6, two-sided 5 %: 0.9315 (Cohen 1988, p. 50).
/// ```
/// use tautline_engine::{effort::{power::Sides, simulated::{NormalLines, Simulation}}, seed::Seed};
/// let lines = NormalLines::new((30.0, 22.0), 16.0, 0.6, Seed::from_purpose("example", &[]));
/// let mut simulation = Simulation::new(lines, 40, Sides::Two, 0.05);
/// simulation.run(10_000);
/// let chance = simulation.chance();
/// assert!((chance.value - 0.931_5).abs() < 4.0 * chance.error);
/// ```
#[derive(Clone, Debug)]
pub struct Simulation<L> {
    lines: L,
    units: usize,
    sides: Sides,
    /// The square of the t quantile that a change must pass.
    limit: f64,
    surveys: u64,
    seen: u64,
}

/// A share of simulated surveys.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Share {
    /// The share.
    pub value: f64,
    /// Its Monte-Carlo standard error.
    pub error: f64,
    /// Surveys drawn.
    pub surveys: u64,
}

impl Share {
    /// So many of all; the error takes two more of either kind, so that it isn't 0 where all or none were.
    ///
    /// # Source
    /// Agresti and Coull 1998, The American Statistician 52:119
    pub fn of(seen: u64, surveys: u64) -> Self {
        #[expect(clippy::cast_precision_loss, reason = "far fewer than 2^53 surveys are drawn")]
        let (seen, all) = (seen as f64, surveys as f64);
        let near = (seen + 2.0) / (all + 4.0);
        Self { value: seen / all, error: sqrt(near * (1.0 - near) / (all + 4.0)), surveys }
    }
}

impl<L: DrawLine> Simulation<L> {
    /// No survey drawn yet.
    ///
    /// # Range
    /// two lines or more; fewer never show anything. `Sides::One` counts increases alone
    pub fn new(lines: L, units: usize, sides: Sides, alpha: f64) -> Self {
        let tail = match sides {
            Sides::One => alpha,
            Sides::Two => alpha / 2.0,
        };
        let limit = if units < 2 { f64::INFINITY } else { t_quantile(1.0 - tail, count(units) - 1.0) };
        Self { lines, units, sides, limit: limit * limit, surveys: 0, seen: 0 }
    }

    /// Draws and tests so many more surveys.
    pub fn run(&mut self, surveys: u64) {
        for _ in 0..surveys {
            self.seen += u64::from(self.shows());
        }
        self.surveys += surveys;
    }

    /// Draws one survey, line by line: whether its t = d̄ / √(s² / n) passes.
    #[inline]
    fn shows(&mut self) -> bool {
        let mut difference = || {
            let (earlier, later) = self.lines.line();
            later - earlier
        };
        // sums about the first line's difference, so that nothing cancels
        let about = difference();
        let (mut sum, mut squares) = (0.0, 0.0);
        for _ in 1..self.units {
            let away = difference() - about;
            sum += away;
            squares += away * away;
        }
        let n = count(self.units);
        let total = sum + n * about;
        // t² > limit, both sides times n (n − 1) s²
        let passes = total * total * (n - 1.0) > self.limit * (n * squares - sum * sum);
        passes && (self.sides == Sides::Two || total > 0.0)
    }

    /// The share of surveys that show the change; without a survey not a number.
    pub fn chance(&self) -> Share {
        Share::of(self.seen, self.surveys)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::effort::change::{Change, Lines};

    fn normal(units: usize, sides: Sides, change: f64) -> Simulation<NormalLines> {
        let seed = Seed::from_purpose("test power", &[units as u64]);
        Simulation::new(NormalLines::new((20.0, 20.0 + change), 8.0, 0.6, seed), units, sides, 0.05)
    }

    /// Closed form and simulation agree within Monte-Carlo error, from 3 lines to 40, one-sided and two-sided.
    #[test]
    fn agrees_with_the_noncentral_t() {
        for (sides, change) in [(Sides::Two, -4.0), (Sides::One, 4.0)] {
            let lines = Lines::Permanent { correlation: 0.6 };
            let exact = Change { lines, deviation: 8.0, sides, alpha: 0.05, population: None };
            let mut apart = Vec::new();
            for units in 3..=40 {
                let mut simulation = normal(units, sides, change);
                simulation.run(4_000);
                let chance = simulation.chance();
                apart.push((chance.value - exact.chance(change, units)) / chance.error);
            }
            let n = count(apart.len());
            let mean = apart.iter().sum::<f64>() / n;
            let spread = sqrt(apart.iter().map(|z| (z - mean) * (z - mean)).sum::<f64>() / n);
            assert!(apart.iter().all(|z| z.abs() < 4.0), "{apart:?}");
            assert!(mean.abs() < 0.65 && (0.6..1.5).contains(&spread), "{mean} {spread}");
        }
    }

    /// No change: as many false alarms as allowed.
    #[test]
    fn false_alarms() {
        let mut simulation = normal(8, Sides::Two, 0.0);
        simulation.run(20_000);
        let chance = simulation.chance();
        assert!((chance.value - 0.05).abs() < 4.0 * chance.error);
    }

    #[test]
    fn pieces_change_nothing() {
        let (mut whole, mut pieces) = (normal(7, Sides::Two, -4.0), normal(7, Sides::Two, -4.0));
        whole.run(900);
        for _ in 0..9 {
            pieces.run(100);
        }
        assert_eq!(whole.chance(), pieces.chance());
    }

    /// All lines alike and alike again show nothing; all risen by the same show it.
    #[test]
    fn lines_without_spread() {
        for (later, shows) in [(5.0, 0.0), (6.0, 1.0)] {
            let known = [(5.0, later); 3];
            let lines = KnownLines::new(&known, Seed::from_purpose("test", &[])).unwrap();
            let mut simulation = Simulation::new(lines, 4, Sides::Two, 0.1);
            simulation.run(50);
            assert!((simulation.chance().value - shows).abs() < 1e-12);
        }
        assert!(KnownLines::new(&[], Seed::from_purpose("test", &[])).is_none());
    }
}
