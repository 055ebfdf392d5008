//! How many units a wanted precision takes, by the handbooks' formulas.

use crate::num::math::sqrt;
use crate::num::quantile::{chi_square_cdf, t_quantile};
use crate::num::{count, root::crossing};

/// Units for a mean within ± `half_width`, with a fixed point of the normal distribution: z² s² / B².
///
/// # Source
/// Elzinga, Salzer and Willoughby 1998, BLM Technical Reference 1730-1, appendix 7, equation 1 (from memory)
pub fn for_half_width(z: f64, deviation: f64, half_width: f64) -> f64 {
    square(z * deviation / half_width)
}

/// Units on each of two occasions, drawn anew, to see a change: 2 s² (zα + zβ)² / MDC².
///
/// # Source
/// Elzinga, Salzer and Willoughby 1998, appendix 7, equation 2 (from memory)
pub fn for_change_of_new_units(z_alpha: f64, z_beta: f64, deviation: f64, change: f64) -> f64 {
    2.0 * for_change_of_same_units(z_alpha, z_beta, deviation, change)
}

/// Units read twice to see a change: s² (zα + zβ)² / MDC², s that of the differences.
///
/// # Source
/// Elzinga, Salzer and Willoughby 1998, appendix 7, equation 3 (from memory)
pub fn for_change_of_same_units(z_alpha: f64, z_beta: f64, deviation: f64, change: f64) -> f64 {
    square((z_alpha + z_beta) * deviation / change)
}

/// Standard deviation of differences of units read twice, from that of one year and their correlation: s √(2 (1 − r)).
pub fn deviation_of_differences(deviation: f64, correlation: f64) -> f64 {
    deviation * sqrt(2.0 * (1.0 - correlation))
}

/// Units where only `population` could be drawn: n / (1 + n/N).
pub fn of_population(units: f64, population: f64) -> f64 {
    units / (1.0 + units / population)
}

/// Units for a mean within a share of itself, t² s² / (d x̄)², with t from the units read so far.
///
/// # Source
/// the adequacy formula of revegetation reports; Cochran 1977, §4.7
/// # Example
/// Mean 48.83, variance 188.06, one-sided 90 % t with 71 degrees of freedom, a tenth of the mean: 13.20 (Colorado
/// public record 1250747, table 5A).
/// ```
/// use tautline_engine::{effort::size::for_share_of_mean, num::quantile::t_quantile};
/// assert!((for_share_of_mean(t_quantile(0.9, 71.0), 188.06, 0.1 * 48.83) - 13.20).abs() < 0.005);
/// ```
pub fn for_share_of_mean(t: f64, variance: f64, half_width: f64) -> f64 {
    t * t * variance / square(half_width)
}

/// Units for an interval of ± `half_width` at a two-sided confidence: the n with n = (t s / B)², t with n − 1 degrees
/// of freedom, as a real number: round it up.
///
/// # Range
/// `None` where fewer than about one and a half units or more than a million are needed.
/// # Source
/// Cochran 1977, §4.6, iterated to the end
pub fn for_interval(confidence: f64, deviation: f64, half_width: f64) -> Option<f64> {
    let t = |units: f64| t_quantile(1.0 - (1.0 - confidence) / 2.0, units - 1.0);
    crossing(|units| t(units) * deviation / sqrt(units) - half_width, 1.5, 1e6)
}

/// The units that keep an interval within its wanted width with the chance `assurance`, where the plain formula gives
/// `uncorrected` for the point `z`.
///
/// The smallest m with P(χ² ≤ (m − 1) m z² / (n t²)) ≥ assurance; χ² and t with m − 1 degrees of freedom.
///
/// # Source
/// Kupper, L.L. and K.B. Hafner 1989. How appropriate are popular sample size formulas? The American Statistician
/// 43:101–105
/// # Example
/// ```
/// use tautline_engine::effort::size::corrected;
/// assert_eq!(corrected(8, 0.95, 0.9), 15);
/// ```
pub fn corrected(uncorrected: usize, confidence: f64, assurance: f64) -> usize {
    let tail = (1.0 - confidence) / 2.0;
    let z = t_quantile(1.0 - tail, f64::INFINITY);
    let kept = |m: usize| {
        let df = count(m - 1);
        let t = t_quantile(1.0 - tail, df);
        chi_square_cdf(df * count(m) * z * z / (count(uncorrected) * t * t), df)
    };
    let mut units = 2;
    while kept(units) < assurance {
        units += 1;
    }
    units
}

fn square(x: f64) -> f64 {
    x * x
}
