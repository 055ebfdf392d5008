//! How far two readers' covers of the same line lie apart.

use crate::num::quantile::{normal_quantile, t_quantile};
use crate::num::{
    count,
    math::sqrt,
    sum::{self, sum},
};

/// Limits of agreement between two readers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// Lines that both read.
    pub lines: usize,
    /// Mean difference: what one reads more than the other.
    pub bias: f64,
    /// Standard deviation of the differences.
    pub sd: f64,
    /// Most differences lie above this.
    pub lower: f64,
    /// Most differences lie below this.
    pub upper: f64,
}

/// Limits between which the given share of differences lies, if they spread like a bell curve.
///
/// d̄ ± z s, z the normal quantile of the share.
///
/// # Units
/// Those of the differences.
///
/// # Range
/// `None` for fewer than two lines.
///
/// # Source
/// Bland and Altman 1986, Lancet 327:307–310
///
/// # Example
/// Four lines (invented) on which the second reader has 1, 3, 2 and 2 points more.
/// ```
/// use tautline_engine::agreement::limits;
/// let found = limits(&[0.01, 0.03, 0.02, 0.02], 0.95).unwrap();
/// assert!((found.bias - 0.02).abs() < 1e-15 && (found.upper - 0.036_002_9).abs() < 1e-6);
/// ```
pub fn limits(differences: &[f64], share: f64) -> Option<Limits> {
    if differences.len() < 2 {
        return None;
    }
    let (bias, sd) = (sum::mean(differences), sqrt(sum::variance(differences)));
    let reach = normal_quantile(f64::midpoint(1.0, share)) * sd;
    Some(Limits { lines: differences.len(), bias, sd, lower: bias - reach, upper: bias + reach })
}

impl Limits {
    /// Interval of the bias: d̄ ± t s/√n.
    ///
    /// # Source
    /// Bland and Altman 1986
    pub fn bias_interval(&self, confidence: f64) -> (f64, f64) {
        self.around(self.bias, self.sd / sqrt(count(self.lines)), confidence)
    }

    /// Interval of either limit: limit ± t √(3 s²/n), as the source has it.
    ///
    /// # Source
    /// Bland and Altman 1986
    pub fn limit_interval(&self, limit: f64, confidence: f64) -> (f64, f64) {
        self.around(limit, sqrt(3.0 / count(self.lines)) * self.sd, confidence)
    }

    fn around(&self, figure: f64, se: f64, confidence: f64) -> (f64, f64) {
        let reach = t_quantile(f64::midpoint(1.0, confidence), count(self.lines - 1)) * se;
        (figure - reach, figure + reach)
    }
}

/// Standard deviation of one reader's repeated readings of the same line, from pairs of readings.
///
/// √(Σ d² / 2n).
///
/// # Units
/// Those of the readings.
///
/// # Range
/// `None` for no pairs.
///
/// # Source
/// Bland and Altman 1986
pub fn within_reader(repeats: &[(f64, f64)]) -> Option<f64> {
    let squares = sum(repeats.iter().map(|(first, second)| (first - second) * (first - second)));
    (!repeats.is_empty()).then(|| sqrt(squares / (2.0 * count(repeats.len()))))
}

/// Two readings of one reader differ by less than this, in the given share of cases.
///
/// z √2 s.
///
/// # Source
/// Bland and Altman 1986, with z = 2 for 95 %
pub fn repeatability(within: f64, share: f64) -> f64 {
    normal_quantile(f64::midpoint(1.0, share)) * sqrt(2.0) * within
}

#[cfg(test)]
mod tests {
    use super::*;

    const LARGE: [[f64; 17]; 2] = [
        [
            494., 395., 516., 434., 476., 557., 413., 442., 650., 433., 417., 656., 267., 478., 178., 423.,
            427.,
        ],
        [
            490., 397., 512., 401., 470., 611., 415., 431., 638., 429., 420., 633., 275., 492., 165., 372.,
            421.,
        ],
    ];
    const MINI: [[f64; 17]; 2] = [
        [
            512., 430., 520., 428., 500., 600., 364., 380., 658., 445., 432., 626., 260., 477., 259., 350.,
            451.,
        ],
        [
            525., 415., 508., 444., 500., 625., 460., 390., 642., 432., 420., 605., 227., 467., 268., 370.,
            443.,
        ],
    ];

    fn pairs(a: &[f64], b: &[f64]) -> Vec<(f64, f64)> {
        a.iter().copied().zip(b.iter().copied()).collect()
    }

    /// Bland and Altman 1986, first readings by two meters: mean −2.1, SD 38.8, interval of the bias −22.0 to 17.8,
    /// of the lower limit −114.3 to −45.1 (results from memory; they rounded before they went on, and took two standard
    /// deviations).
    #[test]
    fn two_meters() {
        let differences: Vec<f64> = pairs(&LARGE[0], &MINI[0]).into_iter().map(|(a, b)| a - b).collect();
        let found = limits(&differences, 0.95).unwrap();
        assert!((found.bias + 2.1).abs() < 0.05 && (found.sd - 38.8).abs() < 0.05);
        // with 1.96 instead of their 2, worked out from their data by another program
        assert!((found.lower + 78.097_302).abs() < 0.002 && (found.upper - 73.862_007).abs() < 0.002);
        let (low, high) = found.bias_interval(0.95);
        assert!((low + 22.0).abs() < 0.1 && (high - 17.8).abs() < 0.1, "{low} {high}");
        let (low, high) = found.limit_interval(found.bias - 2.0 * found.sd, 0.95);
        assert!((low + 114.3).abs() < 0.15 && (high + 45.1).abs() < 0.15, "{low} {high}");
    }

    /// Bland and Altman 1986: coefficients of repeatability 43.2 and 56.4, from rounded figures and z = 2; unrounded
    /// 43.294 and 56.316.
    #[test]
    fn each_meter_twice() {
        for (meter, expected) in [(&LARGE, 43.294), (&MINI, 56.316)] {
            let within = within_reader(&pairs(&meter[0], &meter[1])).unwrap();
            assert!((2.0 * sqrt(2.0) * within - expected).abs() < 5e-4, "{within}");
            let ratio = repeatability(within, 0.95) / (2.0 * sqrt(2.0) * within);
            assert!((ratio - 1.959_964 / 2.0).abs() < 1e-6);
        }
    }

    #[test]
    fn one_line_has_no_limits() {
        assert_eq!(limits(&[0.1], 0.95), None);
        assert_eq!(within_reader(&[]), None);
    }
}
