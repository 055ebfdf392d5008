//! Trend without a model: Mann and Kendall's test, Theil and Sen's slope.

use crate::num::quantile::{normal_cdf, normal_quantile};
use crate::num::{count, math::sqrt, sum::median};

/// Fewer visits than this give no p: even a steady rise over three visits comes about by chance once in six times.
pub const FEWEST_VISITS: usize = 4;

/// Series without equal values up to this long are judged by the exact distribution.
const MOST_EXACT: usize = 60;

/// What Mann and Kendall's test says about a series in the order of time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Kendall {
    /// Pairs of visits that rise less pairs that fall.
    pub s: f64,
    /// Variance of S where nothing changes.
    pub variance: f64,
    /// S with one taken off towards zero, in standard deviations; 0 where all values are alike.
    pub z: f64,
    /// Chance of an S as far from zero either way where nothing changes, or why there is none.
    pub p: Result<f64, NoTrend>,
    /// The chance is exact, not that of a normal distribution.
    pub exact: bool,
}

/// Why there is no chance to tell.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoTrend {
    /// Fewer than [`FEWEST_VISITS`].
    TooFewVisits {
        /// How many there are.
        visits: usize,
    },
}

impl NoTrend {
    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::TooFewVisits { .. } => "too-few-visits",
        }
    }
}

/// Mann and Kendall's test of a series in the order of time.
///
/// S = Σ sign(xⱼ − xᵢ) over i < j; Var S = (n(n−1)(2n+5) − Σ t(t−1)(2t+5)) / 18 with t the sizes of groups of equal
/// values; Z = (S ∓ 1)/√Var S. Without equal values p is exact.
///
/// # Range
/// Fewer than four visits give no p. Visits that hang together from year to year make p too small: nothing is corrected
/// for that here.
///
/// # Source
/// Mann 1945, Econometrica 13:245–259; Kendall 1975, *Rank Correlation Methods*; ties as in Gilbert 1987, §16.4
///
/// # Example
/// EPA QA/G-9S 2006, p. 109: S = 22, Var S = 155.33, Z = 1.685.
/// ```
/// use tautline_engine::trend::robust::mann_kendall;
/// let test = mann_kendall(&[10., 10., 10., 5., 10., 20., 18., 17., 15., 24., 15.]);
/// assert_eq!(test.s, 22.0);
/// assert!((test.variance - 155.33).abs() < 0.005 && (test.z - 1.685).abs() < 5e-4);
/// ```
pub fn mann_kendall(values: &[f64]) -> Kendall {
    let n = values.len();
    let signs = values.iter().enumerate().flat_map(|(at, earlier)| {
        values[at + 1..].iter().map(move |later| match later.partial_cmp(earlier) {
            Some(core::cmp::Ordering::Greater) => 1.0,
            Some(core::cmp::Ordering::Less) => -1.0,
            _ => 0.0,
        })
    });
    let s: f64 = signs.sum();
    let groups = groups_of_equals(values);
    let part = |t: f64| t * (t - 1.0) * (2.0 * t + 5.0);
    let variance = (part(count(n)) - groups.iter().map(|&t| part(count(t))).sum::<f64>()) / 18.0;
    let z = if s == 0.0 || variance <= 0.0 { 0.0 } else { (s.abs() - 1.0) / sqrt(variance) * s.signum() };
    let exact = groups.iter().all(|&t| t == 1) && n <= MOST_EXACT;
    let p = if n < FEWEST_VISITS {
        Err(NoTrend::TooFewVisits { visits: n })
    } else if exact {
        Ok((2.0 * upper_tail(n, s.abs())).min(1.0))
    } else {
        Ok((2.0 * normal_cdf(-z.abs())).min(1.0))
    };
    Kendall { s, variance, z, p, exact }
}

/// Sizes of the groups of equal values, of one each where all differ.
fn groups_of_equals(values: &[f64]) -> Vec<usize> {
    // a zero is a zero, whatever its sign
    let mut sorted: Vec<f64> = values.iter().map(|value| value + 0.0).collect();
    sorted.sort_by(f64::total_cmp);
    sorted.chunk_by(|a, b| a.total_cmp(b).is_eq()).map(<[f64]>::len).collect()
}

/// Chance of so many pairs out of order among n values in random order, for each number of pairs.
fn out_of_order(n: usize) -> Vec<f64> {
    let mut chances = vec![1.0];
    for size in 2..=n {
        // the next value falls behind 0 to size − 1 of those before it, each as likely
        let mut next = vec![0.0; chances.len() + size - 1];
        for (pairs, chance) in chances.iter().enumerate() {
            for more in 0..size {
                next[pairs + more] += chance / count(size);
            }
        }
        chances = next;
    }
    chances
}

/// Exact chance of S ≥ s where nothing changes and no values are equal.
///
/// # Source
/// Kendall 1975; the recursion is that of the number of inversions
///
/// # Example
/// Five visits with S = 6: 0.117 (EPA QA/G-9, small example; Gilbert 1987, table A18; both from memory).
/// ```
/// use tautline_engine::trend::robust::upper_tail;
/// assert!((upper_tail(5, 6.0) - 0.117).abs() < 5e-4);
/// ```
pub fn upper_tail(n: usize, s: f64) -> f64 {
    let chances = out_of_order(n);
    let all = count(chances.len() - 1);
    // S = all pairs less twice those out of order
    chances.iter().enumerate().take_while(|(pairs, _)| all - 2.0 * count(*pairs) >= s).map(|(_, p)| p).sum()
}

/// Slopes between all pairs of points with unlike times, sorted.
fn slopes(points: &[(f64, f64)]) -> Vec<f64> {
    let mut slopes: Vec<f64> = points
        .iter()
        .enumerate()
        .flat_map(|(at, (t1, y1))| points[at + 1..].iter().map(move |(t2, y2)| (t2 - t1, y2 - y1)))
        .filter(|(time, _)| *time != 0.0)
        .map(|(time, rise)| rise / time)
        .collect();
    slopes.sort_by(f64::total_cmp);
    slopes
}

/// Theil and Sen's slope: the median of the slopes between all pairs of points.
///
/// # Units
/// Those of the values over those of time.
///
/// # Range
/// `None` where no two times differ.
///
/// # Source
/// Theil 1950; Sen 1968, Journal of the American Statistical Association 63:1379–1389
///
/// # Example
/// A steady 2 % a year with one bad visit (invented).
/// ```
/// use tautline_engine::trend::robust::theil_sen;
/// let visits = [(2018.0, 0.10), (2020.0, 0.14), (2022.0, 0.55), (2024.0, 0.22), (2026.0, 0.26)];
/// assert!((theil_sen(&visits).unwrap() - 0.02).abs() < 1e-15);
/// ```
pub fn theil_sen(points: &[(f64, f64)]) -> Option<f64> {
    median(&slopes(points))
}

/// The interval of Theil and Sen's slope that belongs to Mann and Kendall's test.
///
/// With N slopes sorted, from the ((N − C)/2)-th to the ((N + C)/2 + 1)-th; C from the exact distribution of S, or
/// z √Var S where values are equal, rounded so that the interval is no less sure than asked.
///
/// # Units
/// Those of the values over those of time.
///
/// # Range
/// `None` with fewer than four visits or too few to be that sure. One value for each time.
///
/// # Source
/// Sen 1968; Hollander and Wolfe 1973, §9.3; Gilbert 1987, §16.5
///
/// # Example
/// Four visits can be no surer than 1 − 2/24 of a slope: 90 % is within reach, 95 % isn't.
/// ```
/// use tautline_engine::trend::robust::slope_interval;
/// let visits = [(0.0, 1.0), (1.0, 3.0), (2.0, 4.0), (3.0, 9.0)];
/// assert_eq!(slope_interval(&visits, 0.90), Some((1.0, 5.0)));
/// assert_eq!(slope_interval(&visits, 0.95), None);
/// ```
pub fn slope_interval(points: &[(f64, f64)], confidence: f64) -> Option<(f64, f64)> {
    if points.len() < FEWEST_VISITS {
        return None;
    }
    let slopes = slopes(points);
    let mut in_time: Vec<(f64, f64)> = points.to_vec();
    in_time.sort_by(|a, b| a.0.total_cmp(&b.0));
    let values: Vec<f64> = in_time.iter().map(|(_, value)| *value).collect();
    let test = mann_kendall(&values);
    let tail = (1.0 - confidence) / 2.0;
    let all = slopes.len();
    // how many slopes are left out at each end
    let out = if test.exact {
        let mut below = 0.0;
        out_of_order(points.len())
            .iter()
            .take_while(|chance| {
                below += **chance;
                below <= tail
            })
            .count()
    } else {
        let wide = normal_quantile(1.0 - tail) * sqrt(test.variance);
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "between 0 and their number"
        )]
        let out = ((count(all) - wide) / 2.0).floor().max(0.0) as usize;
        out
    };
    (out > 0).then(|| (slopes[out - 1], slopes[all - out]))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Gilbert 1987, table A18 (from memory), recomputed from the permutation distribution.
    #[test]
    fn exact_upper_tails() {
        let printed = [
            (4, 2.0, 0.375),
            (4, 4.0, 0.167),
            (4, 6.0, 0.042),
            (5, 8.0, 0.042),
            (6, 9.0, 0.068),
            (7, 13.0, 0.035),
            (8, 14.0, 0.054),
            (10, 21.0, 0.036),
            (10, 25.0, 0.014),
        ];
        for (n, s, p) in printed {
            assert!((upper_tail(n, s) - p).abs() < 5e-4, "{n} {s}: {}", upper_tail(n, s));
        }
    }

    /// Hollander and Wolfe 1973, p. 187, as in R's cor.test: one-sided exact p = 0.05972.
    #[test]
    fn exact_chance_of_a_printed_series() {
        let test = mann_kendall(&[2.5, 4.0, 2.6, 3.6, 2.8, 3.1, 5.2, 5.0, 3.8]);
        assert!((test.s - 16.0).abs() < 1e-12);
        assert!((test.p.unwrap() / 2.0 - 0.05972).abs() < 5e-6);
    }

    /// A flat series gives S = 0, no variance, z = 0 and p = 1 (pymannkendall's tests).
    #[test]
    fn a_flat_series_shows_nothing() {
        let test = mann_kendall(&[0.2; 5]);
        assert_eq!((test.s, test.variance, test.z, test.p), (0.0, 0.0, 0.0, Ok(1.0)));
    }

    #[test]
    fn three_visits_give_no_chance() {
        assert_eq!(mann_kendall(&[1.0, 2.0, 3.0]).p, Err(NoTrend::TooFewVisits { visits: 3 }));
        assert_eq!(theil_sen(&[(1.0, 2.0), (1.0, 3.0)]), None);
    }

    #[test]
    fn time_turned_round_turns_the_sign() {
        let values = [0.1, 0.3, 0.25, 0.4, 0.2, 0.6];
        let mut back = values;
        back.reverse();
        let (there, back) = (mann_kendall(&values), mann_kendall(&back));
        assert_eq!((there.s, there.p), (-back.s, back.p));
    }
}
