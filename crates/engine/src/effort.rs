//! How many lines, how long, and what a given number can show.
//!
//! | question | module |
//! | --- | --- |
//! | lines that would settle a verdict | here |
//! | lines for a wanted half-width, with assurance | [`width`] |
//! | lines for a change, permanent or temporary | [`change`] |
//! | lines or years for a trend | [`trend`] |
//! | lines of each stratum | [`allot`] |
//! | length against number, with a cost | [`length`] |
//! | chances of t tests | [`power`] |
//! | a plan that may stop after any line | [`sequential`] |
//! | chances by drawing survey after survey, from any stand | [`simulated`] |
//! | the handbooks' formulas | [`size`] |

pub mod allot;
pub mod change;
pub mod length;
pub mod power;
mod search;
pub mod sequential;
pub mod simulated;
pub mod size;
pub mod trend;
pub mod width;

use crate::confidence::{Method, Scale};
use crate::num::math::sqrt;
use crate::num::noncentral::{chance_between, noncentral_t_cdf};
use crate::num::{count, quantile::t_quantile};
use crate::verdict::Goal;

/// What the lines so far say about the lines to come.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SoFar {
    /// The figure.
    pub value: f64,
    /// Its standard error.
    pub se: f64,
    /// Degrees of freedom of the standard error.
    pub df: f64,
    /// Sampling units read.
    pub units: usize,
    /// The interval method; a bootstrap is reckoned as Student's t.
    pub method: Method,
}

/// How many more units would settle it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MoreUnits {
    /// So many more than were read.
    More(usize),
    /// Not within the limit of what is practical.
    NoPracticalNumber,
}

/// Chance that a verdict is reached with `units` units in all, if the site is as it was estimated and the units to
/// come vary like those read.
///
/// On the scale of the interval method, with d the distance from figure to goal and σ = SE · √n: the t test against
/// the goal succeeds with probability P(T > t), T noncentral t with noncentrality d √n / σ; between two values,
/// both tests must succeed, or one must fail clearly. Of the ways to settle only the one on the figure's own side is
/// counted; the others are far rarer, so the chance is slightly low.
///
/// # Range
/// two units or more; 0 with fewer
/// # Source
/// power of the one-sample t test: Owen 1965, Biometrika 52:437; two one-sided tests: Schuirmann 1987
/// # Example
/// One-sample t test, one-sided 1 %, n = 8, two standard deviations off: 0.9835401 (EnvStats 3.1.0, `tTestPower`).
/// ```
/// use tautline_engine::{confidence::Method, effort::{SoFar, chance_to_settle}, verdict::Goal};
/// let eight = SoFar { value: 2.0, se: 1.0 / 8.0_f64.sqrt(), df: 7.0, units: 8, method: Method::StudentT };
/// assert!((chance_to_settle(&eight, Goal::AtLeast(0.0), 0.99, 8) - 0.983_540_1).abs() < 1e-6);
/// ```
pub fn chance_to_settle(so_far: &SoFar, goal: Goal, confidence: f64, units: usize) -> f64 {
    if units < 2 || so_far.units < 1 || so_far.se <= 0.0 {
        return 0.0;
    }
    let growth = count(units) / count(so_far.units);
    // strata and plots lose the same share of units to degrees of freedom, however many there are
    let lost = count(so_far.units) - so_far.df;
    let df = (count(units) - lost).max(1.0);
    let se = so_far.se / sqrt(growth);
    let scale = so_far.method.scale().unwrap_or(Scale::Plain);
    let df = so_far.method.df(so_far.value, se, df);
    let (at, se) = (scale.on(so_far.value), se / scale.step(so_far.value));
    let on_scale = |goal: f64| scale.on(goal);
    let t = t_quantile(confidence, df);
    let clearly = |distance: f64| beyond(t, df, distance / se);
    match goal {
        Goal::AtLeast(g) | Goal::AtMost(g) => clearly((at - on_scale(g)).abs()),
        Goal::Between(low, high) => {
            let (to_low, to_high) = (at - on_scale(low), on_scale(high) - at);
            if to_low < 0.0 {
                clearly(-to_low)
            } else if to_high < 0.0 {
                clearly(-to_high)
            } else if to_low.is_infinite() {
                clearly(to_high)
            } else if to_high.is_infinite() {
                clearly(to_low)
            } else {
                chance_between(t, df, to_low / se, to_high / se)
            }
        }
    }
}

/// Chance that a figure lies clearly beyond a goal, `distance` standard errors away: certain where the goal is at the
/// end of the scale (0 or 100 % on the logit), none where the figure itself is.
fn beyond(t: f64, df: f64, distance: f64) -> f64 {
    if distance.is_nan() {
        0.0
    } else if distance.is_infinite() {
        1.0
    } else {
        1.0 - noncentral_t_cdf(t, df, distance)
    }
}

/// The smallest number of further units with which the chance to settle reaches `chance`, up to `most` in all.
///
/// # Errors
/// none: where no number up to `most` does, [`MoreUnits::NoPracticalNumber`]
/// # Example
/// One-sided 5 % and power 0.90 at 0.2222222 standard deviations take 174.7796, so 175, in all
/// (pwr 1.3-0, vignette).
/// ```
/// use tautline_engine::{confidence::Method, effort::{MoreUnits, SoFar, more_units}, verdict::Goal};
/// let ten = SoFar { value: 0.222_222_2, se: 1.0 / 10.0_f64.sqrt(), df: 9.0, units: 10, method: Method::StudentT };
/// assert_eq!(more_units(&ten, Goal::AtLeast(0.0), 0.95, 0.9, 200), MoreUnits::More(165));
/// ```
pub fn more_units(so_far: &SoFar, goal: Goal, confidence: f64, chance: f64, most: usize) -> MoreUnits {
    ((so_far.units + 1)..=most)
        .find(|&units| chance_to_settle(so_far, goal, confidence, units) >= chance)
        .map_or(MoreUnits::NoPracticalNumber, |units| MoreUnits::More(units - so_far.units))
}

#[cfg(test)]
mod tests {
    use super::*;

    const TWENTY: SoFar = SoFar { value: 0.2, se: 0.04, df: 7.0, units: 10, method: Method::StudentT };

    /// Ten lines in three strata have 7 degrees of freedom, so twenty have 17; the error shrinks by √2.
    #[test]
    fn strata_keep_what_they_cost() {
        let expected = 1.0 - noncentral_t_cdf(t_quantile(0.9, 17.0), 17.0, 0.05 / 0.04 * sqrt(2.0));
        assert!((chance_to_settle(&TWENTY, Goal::AtLeast(0.15), 0.9, 20) - expected).abs() < 1e-12);
    }

    /// On the logit 0 % is endlessly far, so only the other end is left to be shown.
    #[test]
    fn from_nothing_to_a_quarter_is_at_most_a_quarter() {
        let logit = SoFar { method: Method::LogitT, ..TWENTY };
        let chance = |goal| chance_to_settle(&logit, goal, 0.9, 40);
        let one_sided = chance(Goal::AtMost(0.25));
        assert!((chance(Goal::Between(0.0, 0.25)) - one_sided).abs() < 1e-12);
        assert!(one_sided > 0.5 && one_sided < 1.0, "{one_sided}");
    }

    #[test]
    fn a_figure_at_the_end_of_the_scale_settles_nothing() {
        let full = SoFar { value: 1.0, method: Method::LogitT, ..TWENTY };
        assert_eq!(more_units(&full, Goal::AtLeast(0.15), 0.9, 0.8, 100), MoreUnits::NoPracticalNumber);
    }
}
