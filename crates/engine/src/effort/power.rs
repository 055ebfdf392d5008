//! Power of a t test: the chance to see a difference, the units that takes, the smallest difference that is seen.

use crate::num::math::sqrt;
use crate::num::noncentral::noncentral_t_cdf;
use crate::num::quantile::t_quantile;
use crate::num::root::crossing;

/// What is compared.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Groups {
    /// One set of values against a fixed one; differences of the same lines read twice are such a set.
    One,
    /// Two sets of equally many values.
    Two,
}

/// Which differences count.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sides {
    /// Only those above.
    One,
    /// Those above and those below.
    Two,
}

/// A t test that is planned.
///
/// Differences are in standard deviations of one value (of one paired difference, where lines are read twice).
///
/// # Source
/// Owen, D.B. 1965. A special case of a bivariate non-central t-distribution. Biometrika 52:437–446; Cohen 1988,
/// ch. 2
///
/// # Example
/// Thirty in each of two groups, one standard deviation apart, two-sided 5 %: 0.967708258 (statsmodels tests).
/// ```
/// use tautline_engine::effort::power::{Groups, Sides, TTest};
/// let test = TTest { groups: Groups::Two, sides: Sides::Two, alpha: 0.05 };
/// assert!((test.power(1.0, 30.0) - 0.967_708_258_242_517).abs() < 1e-11);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TTest {
    /// What is compared.
    pub groups: Groups,
    /// Which differences count.
    pub sides: Sides,
    /// Chance to see a difference where there is none.
    pub alpha: f64,
}

impl TTest {
    /// Chance that the test sees a difference, with `units` in each group.
    ///
    /// P(T > t) + P(T < −t), T noncentral t with δ = d √n (one group) or d √(n/2) (two); one-sided the first part.
    ///
    /// # Range
    /// Two units or more in each group, whole or not.
    pub fn power(&self, difference: f64, units: f64) -> f64 {
        let (delta, df) = match self.groups {
            Groups::One => (difference * sqrt(units), units - 1.0),
            Groups::Two => (difference * sqrt(units / 2.0), 2.0 * units - 2.0),
        };
        self.power_at(delta, df)
    }

    /// The same for two groups of different size.
    ///
    /// δ = d √(n₁ n₂ / (n₁ + n₂)), n₁ + n₂ − 2 degrees of freedom.
    pub fn power_of_unlike_groups(&self, difference: f64, first: f64, second: f64) -> f64 {
        self.power_at(difference * sqrt(first * second / (first + second)), first + second - 2.0)
    }

    /// Chance with the noncentrality and the degrees of freedom as they are.
    pub(super) fn power_at(&self, delta: f64, df: f64) -> f64 {
        match self.sides {
            Sides::One => 1.0 - noncentral_t_cdf(t_quantile(1.0 - self.alpha, df), df, delta),
            Sides::Two => {
                let limit = t_quantile(1.0 - self.alpha / 2.0, df);
                1.0 - noncentral_t_cdf(limit, df, delta) + noncentral_t_cdf(-limit, df, delta)
            }
        }
    }

    /// Units in each group with which the chance is `power`, as a real number: round it up.
    ///
    /// # Range
    /// `None` where two units do already, or a million don't.
    pub fn units(&self, difference: f64, power: f64) -> Option<f64> {
        crossing(|units| self.power(difference, units) - power, 2.0, MOST_UNITS)
    }

    /// The smallest difference in standard errors that is seen with the chance `power`, for any design with so many
    /// degrees of freedom.
    ///
    /// # Range
    /// Degrees of freedom above zero, whole or not; `None` where the chance is below `alpha` or not below 1.
    pub fn noncentrality(&self, df: f64, power: f64) -> Option<f64> {
        smallest(|delta| self.power_at(delta, df) - power)
    }

    /// The smallest difference that is seen with the chance `power`.
    ///
    /// # Range
    /// Two units or more; `None` where the chance is below `alpha` or not below 1.
    pub fn detectable(&self, units: f64, power: f64) -> Option<f64> {
        smallest(|difference| self.power(difference, units) - power)
    }
}

/// The smallest size at which enough is seen.
fn smallest(seen: impl Fn(f64) -> f64) -> Option<f64> {
    let mut far = 1.0;
    while seen(far) < 0.0 && far < FARTHEST {
        far *= 2.0;
    }
    crossing(seen, 0.0, far)
}

const MOST_UNITS: f64 = 1e6;
const FARTHEST: f64 = 1e4;
