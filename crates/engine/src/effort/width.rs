//! How many lines keep an interval within a wanted width, with a stated assurance; and how wide a given number leaves it.

use super::search::{MOST_UNITS, smallest};
use crate::num::count;
use crate::num::math::sqrt;
use crate::num::quantile::{chi_square_cdf, chi_square_quantile, t_quantile};

/// A Student interval of a mean that is planned: x̄ ± t s √((1 − n/N) / n).
///
/// The interval's width depends on the spread that the lines to come will show, so a plan states the chance with which
/// it stays within what is wanted. s² (n − 1) / σ² is chi-square with n − 1 degrees of freedom, which makes that chance
/// exact for normal lines.
///
/// # Source
/// Kupper, L.L. and K.B. Hafner 1989. How appropriate are popular sample size formulas? The American Statistician
/// 43:101–105; the share not drawn: Cochran 1977, §2.6
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Width {
    /// Two-sided confidence of the interval.
    pub confidence: f64,
    /// Standard deviation of the lines, in the figure's unit.
    pub deviation: f64,
    /// Lines that the area would hold side by side, where it is small.
    pub population: Option<f64>,
}

impl Width {
    /// Chance that the interval of `units` lines reaches no farther than `half_width` to either side.
    ///
    /// P(χ² ≤ (n − 1) B² n / (t² σ² (1 − n/N))), χ² and t with n − 1 degrees of freedom.
    ///
    /// # Range
    /// two lines or more; 0 with fewer
    pub fn chance(&self, half_width: f64, units: usize) -> f64 {
        if units < 2 {
            return 0.0;
        }
        let df = count(units) - 1.0;
        let reach = self.reach(units);
        if reach <= 0.0 {
            return 1.0;
        }
        let ratio = half_width / reach;
        chi_square_cdf(df * ratio * ratio, df)
    }

    /// The fewest lines whose interval stays within ± `half_width` with the chance `assurance`.
    ///
    /// # Range
    /// `None` where a million lines, or as many as the area holds, don't.
    /// # Example
    /// A standard deviation of 7 and a wanted half-width of 5 at 95 %: the plain formula gives 7.5; rounded up to 8, the
    /// printed correction gives 15 (Elzinga, Salzer and Willoughby 1998, appendix 7, from memory); unrounded it is 14.
    /// ```
    /// use tautline_engine::effort::width::Width;
    /// let width = Width { confidence: 0.95, deviation: 7.0, population: None };
    /// assert_eq!(width.units(5.0, 0.9), Some(14));
    /// assert_eq!(width.units(1.96 * 7.0 / 8.0_f64.sqrt(), 0.9), Some(15));
    /// ```
    pub fn units(&self, half_width: f64, assurance: f64) -> Option<usize> {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to a million")]
        let most = self.population.map_or(MOST_UNITS, |lines| lines.clamp(2.0, 1e6) as usize);
        smallest(2, most, |units| self.chance(half_width, units) >= assurance)
    }

    /// The half-width within which the interval of `units` lines stays with the chance `assurance`.
    ///
    /// B = t σ √((1 − n/N) / n) √(χ²(assurance) / (n − 1)).
    ///
    /// # Range
    /// two lines or more
    pub fn half_width(&self, units: usize, assurance: f64) -> f64 {
        let df = count(units) - 1.0;
        self.reach(units) * sqrt(chi_square_quantile(assurance, df) / df)
    }

    /// Half-width if the lines to come vary exactly as foreseen.
    fn reach(&self, units: usize) -> f64 {
        let n = count(units);
        let not_drawn = self.population.map_or(1.0, |all| (1.0 - n / all).max(0.0));
        t_quantile(1.0 - (1.0 - self.confidence) / 2.0, n - 1.0) * self.deviation * sqrt(not_drawn / n)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::num::quantile::normal_quantile;

    /// Kupper and Hafner's correction (tolerance probability 0.90) of whole numbers n from the plain formula, where
    /// B = z σ / √n exactly: n = 5, 10, 20, 50, 100 at 80, 90, 95 and 99 %.
    #[test]
    fn the_correction_table() {
        let rows = [
            (5, [10, 11, 11, 12]),
            (10, [17, 17, 18, 19]),
            (20, [29, 29, 30, 31]),
            (50, [64, 64, 65, 66]),
            (100, [119, 119, 120, 121]),
        ];
        for (plain, corrected) in rows {
            for (confidence, units) in [0.8, 0.9, 0.95, 0.99].into_iter().zip(corrected) {
                let width = Width { confidence, deviation: 1.0, population: None };
                let wanted = normal_quantile(1.0 - (1.0 - confidence) / 2.0) / sqrt(count(plain));
                assert_eq!(width.units(wanted, 0.9), Some(units), "{plain} at {confidence}");
            }
        }
    }

    /// The reverse leads back, and a small area needs fewer.
    #[test]
    fn back_and_a_small_area() {
        let width = Width { confidence: 0.9, deviation: 0.08, population: None };
        let half = width.half_width(14, 0.8);
        assert!((width.chance(half, 14) - 0.8).abs() < 1e-12);
        let small = Width { population: Some(40.0), ..width };
        assert!(small.units(half, 0.8) < width.units(half, 0.8));
        assert_eq!(
            Width { population: Some(10.0), ..width }.units(0.000_1, 0.8),
            Some(10),
            "all of it is certain"
        );
    }
}
