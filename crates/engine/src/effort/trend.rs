//! How many lines, or how many years, show a trend.

use super::power::{Sides, TTest};
use super::search::{MOST_UNITS, smallest};
use crate::num::count;
use crate::num::math::sqrt;
use crate::num::sum::{mean, sum};

/// What the trend is judged by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum JudgedBy {
    /// The means of the years about their straight line, with years − 2 degrees of freedom. Good and poor years, which
    /// all lines share, are part of the error.
    YearMeans,
    /// The lines' own slopes, with lines − 1 degrees of freedom. Says what happened over just these years: what all
    /// lines share in a year passes for trend.
    LineSlopes,
}

/// A trend over years that is to be seen, with the same number of lines in each year.
///
/// The slope by least squares has the variance (τ² + σ²/n) / Sxx for the means of years, and (β² + σ²/Sxx) / n for the
/// lines' own slopes, with Sxx = Σ (year − mean)².
///
/// # Source
/// Larsen, D.P., T.M. Kincaid, S.E. Jacobs and N.S. Urquhart 2001. Designs for evaluating local and regional scale
/// trends. BioScience 51:1069–1078; power by the noncentral t instead of the normal
#[derive(Clone, Debug, PartialEq)]
pub struct Trend {
    /// Years of the visits, in order, at least three.
    pub years: Vec<f64>,
    /// What is judged.
    pub judged_by: JudgedBy,
    /// σ: scatter of a line about its own straight line; for lines laid anew each year, the whole deviation of lines.
    pub deviation: f64,
    /// τ: how far good and poor years move all lines together.
    pub between_years: f64,
    /// β: how much the lines' slopes differ, a year; counts only for [`JudgedBy::LineSlopes`].
    pub between_slopes: f64,
    /// Which trends count.
    pub sides: Sides,
    /// Chance of a false alarm.
    pub alpha: f64,
}

/// Scatter of a permanent line about its own level, from the deviation of lines and the correlation between visits:
/// σ √(1 − r).
pub fn scatter_of_permanent_lines(deviation: f64, correlation: f64) -> f64 {
    deviation * sqrt(1.0 - correlation)
}

impl Trend {
    /// Chance that `units` lines in each year show a trend of `slope` a year.
    ///
    /// # Range
    /// two lines and three years or more; 0 with fewer
    /// # Example
    /// Ten yearly visits to 12 permanent lines, σ = 0.04, τ = 0.01, 0.4 % a year, two-sided 10 %: by hand Sxx = 82.5,
    /// SE = √((0.0001 + 0.0016/12) / 82.5) = 0.00168175, δ = 2.378475, 8 degrees of freedom; 0.7006824 by SciPy.
    /// ```
    /// use tautline_engine::effort::{power::Sides, trend::{JudgedBy, Trend}};
    /// let plan = Trend { years: (2026..2036).map(f64::from).collect(), judged_by: JudgedBy::YearMeans,
    ///     deviation: 0.04, between_years: 0.01, between_slopes: 0.0, sides: Sides::Two, alpha: 0.1 };
    /// assert!((plan.chance(0.004, 12) - 0.700_682_4).abs() < 1e-6);
    /// ```
    pub fn chance(&self, slope: f64, units: usize) -> f64 {
        let years = self.years.len();
        if units < 2 || years < 3 {
            return 0.0;
        }
        let n = count(units);
        let scatter = self.deviation * self.deviation;
        let (variance, df) = match self.judged_by {
            JudgedBy::YearMeans => {
                let common = self.between_years * self.between_years;
                ((common + scatter / n) / self.leverage(), count(years) - 2.0)
            }
            JudgedBy::LineSlopes => {
                let own = self.between_slopes * self.between_slopes;
                ((own + scatter / self.leverage()) / n, n - 1.0)
            }
        };
        let test = TTest { groups: super::power::Groups::One, sides: self.sides, alpha: self.alpha };
        test.power_at(slope.abs() / sqrt(variance), df)
    }

    /// The fewest lines in each year that show the trend with the chance `power`.
    ///
    /// # Range
    /// `None` where a million lines don't, as where good and poor years hide it
    pub fn units(&self, slope: f64, power: f64) -> Option<usize> {
        smallest(2, MOST_UNITS, |units| self.chance(slope, units) >= power)
    }

    /// Years of yearly visits, from the first, after which `units` lines show the trend with the chance `power`.
    ///
    /// # Range
    /// `None` where a hundred years don't
    pub fn yearly_visits(&self, slope: f64, units: usize, power: f64) -> Option<usize> {
        smallest(3, 100, |visits| {
            let years = (0..visits).map(count).collect();
            Self { years, ..self.clone() }.chance(slope, units) >= power
        })
    }

    fn leverage(&self) -> f64 {
        let middle = mean(&self.years);
        sum(self.years.iter().map(|year| (year - middle) * (year - middle)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn plan(judged_by: JudgedBy) -> Trend {
        Trend {
            years: (0..6).map(f64::from).collect(),
            judged_by,
            deviation: 0.05,
            between_years: 0.02,
            between_slopes: 0.004,
            sides: Sides::One,
            alpha: 0.1,
        }
    }

    /// By hand: Sxx of six years is 17.5; year means of 10 lines have the variance (0.0004 + 0.00025) / 17.5; slopes of
    /// 10 lines (0.000016 + 0.0025/17.5) / 10.
    #[test]
    fn both_variances_by_hand() {
        let test = TTest { groups: super::super::power::Groups::One, sides: Sides::One, alpha: 0.1 };
        let means = test.power_at(0.01 / sqrt(0.000_65 / 17.5), 4.0);
        assert!((plan(JudgedBy::YearMeans).chance(0.01, 10) - means).abs() < 1e-12);
        let slopes = test.power_at(0.01 / sqrt((0.000_016 + 0.002_5 / 17.5) / 10.0), 9.0);
        assert!((plan(JudgedBy::LineSlopes).chance(-0.01, 10) - slopes).abs() < 1e-12);
    }

    #[test]
    fn good_and_poor_years_can_hide_it_from_any_number_of_lines() {
        let mut hidden = plan(JudgedBy::YearMeans);
        hidden.between_years = 0.2;
        assert_eq!(hidden.units(0.005, 0.8), None);
        let years = hidden.yearly_visits(0.005, 12, 0.8).unwrap();
        assert!(years > 20, "but years do: {years}");
    }
}
