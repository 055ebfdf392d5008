//! Mann and Kendall's test where visits hang together from one to the next.

use super::robust::{FEWEST_VISITS, Kendall, NoTrend, mann_kendall, theil_sen};
use crate::num::quantile::{normal_cdf, normal_quantile};
use crate::num::{count, math::sqrt, sum::sum};

/// A lag counts where its correlation lies outside what 95 of 100 series without any would show.
const SURE: f64 = 0.975;

/// Mann and Kendall's test with the variance that the series' own correlation asks for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Corrected {
    /// The variance of S is taken this many times that of visits that don't hang together.
    pub times: f64,
    /// The same as published, which may fall below one.
    pub published: f64,
    /// S with one taken off towards zero, in standard deviations so corrected.
    pub z: f64,
    /// Chance of an S as far from zero either way where nothing changes, or why there is none.
    pub p: Result<f64, NoTrend>,
}

/// Corrects the variance of S by the correlations of the ranks that are left when Theil and Sen's slope is taken out.
///
/// Var*(S) = Var(S) (1 + 2 Σ (n−i)(n−i−1)(n−i−2) ρᵢ / (n(n−1)(n−2))), over those lags i whose |ρᵢ| is above 1.96/√n. Where no lag
/// is, times = 1 and p is that of the normal distribution. Visits that swing back and forth would make the variance smaller, in short
/// series by a lot and by chance; that isn't taken, so times is never below one (our own).
///
/// # Range
/// For visits at even steps; with fewer than about ten no lag can be told from none, and the p of years that do hang together stays
/// too small. Fewer than four visits give no p.
///
/// # Source
/// Hamed and Rao 1998, Journal of Hydrology 204:182–196
///
/// # Example
/// A series that goes up and down slowly (invented) rises less surely than its visits would have it.
/// ```
/// use tautline_engine::trend::serial::corrected;
/// let waves = [1., 2., 3., 4., 5., 6., 7., 8., 7., 6., 5., 4., 5., 6., 7., 8., 9., 10., 11., 12.];
/// let test = corrected(&waves);
/// assert!(test.times > 1.0);
/// ```
pub fn corrected(values: &[f64]) -> Corrected {
    let Kendall { s, variance, .. } = mann_kendall(values);
    let n = values.len();
    let number = count(n);
    let published = if n < FEWEST_VISITS {
        1.0
    } else {
        1.0 + 2.0 * hang_together(values) / (number * (number - 1.0) * (number - 2.0))
    };
    let times = published.max(1.0);
    let variance = variance * times;
    let z = if s == 0.0 || variance <= 0.0 { 0.0 } else { (s.abs() - 1.0) / sqrt(variance) * s.signum() };
    let p = if n < FEWEST_VISITS {
        Err(NoTrend::TooFewVisits { visits: n })
    } else {
        Ok((2.0 * normal_cdf(-z.abs())).min(1.0))
    };
    Corrected { times, published, z, p }
}

/// Σ (n−i)(n−i−1)(n−i−2) ρᵢ over the lags that count.
fn hang_together(values: &[f64]) -> f64 {
    let points: Vec<(f64, f64)> = values.iter().enumerate().map(|(at, value)| (count(at), *value)).collect();
    let slope = theil_sen(&points).unwrap_or_default();
    let left = ranks(&points.iter().map(|(time, value)| value - slope * time).collect::<Vec<_>>());
    let n = left.len();
    let middle = crate::num::sum::mean(&left);
    let whole = sum(left.iter().map(|rank| (rank - middle) * (rank - middle)));
    if whole <= 0.0 {
        return 0.0;
    }
    let least = normal_quantile(SURE) / sqrt(count(n));
    let parts = (1..n).map(|lag| {
        let both = left.iter().zip(&left[lag..]);
        let correlation = sum(both.map(|(a, b)| (a - middle) * (b - middle))) / whole;
        let weight = (count(n - lag)) * (count(n - lag) - 1.0) * (count(n - lag) - 2.0);
        if correlation.abs() > least { weight * correlation } else { 0.0 }
    });
    sum(parts)
}

/// Ranks from one; equal values share the middle of theirs.
fn ranks(values: &[f64]) -> Vec<f64> {
    values
        .iter()
        .map(|own| {
            let below = values.iter().filter(|other| *other < own).count();
            let equal = values.iter().filter(|other| other.total_cmp(own).is_eq()).count();
            count(below) + f64::midpoint(count(equal), 1.0)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_short_series_is_left_as_it_is() {
        let test = corrected(&[1.0, 3.0, 2.0, 5.0]);
        assert!((test.times - 1.0).abs() < 1e-15);
        assert_eq!(corrected(&[1.0, 2.0, 3.0]).p, Err(NoTrend::TooFewVisits { visits: 3 }));
    }

    /// By hand: 2, 5, 5 and 9 have ranks 1, 2½, 2½ and 4.
    #[test]
    fn equal_values_share_their_ranks() {
        assert_eq!(ranks(&[5.0, 2.0, 9.0, 5.0]), [2.5, 1.0, 4.0, 2.5]);
    }
}
