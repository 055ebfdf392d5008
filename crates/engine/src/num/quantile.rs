//! Normal, Student's t, chi-square and beta distributions: probability below a point, and the point below
//! which a probability lies.
//!
//! Every function returns "not a number" outside its range. Quantiles are solved on the smaller tail, so the
//! point for 0.999 999 is as good as the one for 0.000 001.

use super::math::{erfc, exp, ln, powf, sqrt};
use super::root::crossing;
use super::special::{Tails, incomplete_beta, incomplete_gamma};
use std::cell::Cell;
use std::f64::consts::{PI, SQRT_2};

/// Normal distribution: probability at or below x.
///
/// # Example
/// ```
/// use tautline_engine::num::quantile::normal_cdf;
/// assert!((normal_cdf(1.959963984540054) - 0.975).abs() < 1e-15);
/// ```
pub fn normal_cdf(x: f64) -> f64 {
    0.5 * erfc(-x / SQRT_2)
}

/// Normal distribution: the point with probability p below it.
///
/// # Range
/// 0 ≤ p ≤ 1; infinite at the ends.
///
/// # Source
/// First guess: Abramowitz & Stegun 1964, 26.2.23; then Halley's iteration on [`normal_cdf`].
///
/// # Example
/// ```
/// use tautline_engine::num::quantile::normal_quantile;
/// assert!((normal_quantile(0.9) - 1.2815515655446004).abs() < 1e-15);
/// ```
pub fn normal_quantile(p: f64) -> f64 {
    if p > 0.5 {
        return -normal_quantile(1.0 - p);
    }
    if p == 0.0 {
        return f64::NEG_INFINITY;
    }
    if p.is_nan() || p < 0.0 {
        return f64::NAN;
    }
    let t = sqrt(-2.0 * ln(p));
    let guess = (2.515_517 + t * (0.802_853 + t * 0.010_328))
        / (1.0 + t * (1.432_788 + t * (0.189_269 + t * 0.001_308)));
    let mut x = guess - t;
    for _ in 0..3 {
        let miss = (normal_cdf(x) - p) * sqrt(2.0 * PI) * exp(x * x / 2.0);
        x -= miss / (1.0 + x * miss / 2.0);
    }
    x
}

/// Student's t: probability at or below t.
///
/// # Range
/// Degrees of freedom above zero, whole or not; infinite ones give the normal distribution.
///
/// # Source
/// Abramowitz & Stegun 1964, 26.7.1 and 26.5.27; above 1e9 degrees of freedom 26.7.8.
pub fn t_cdf(t: f64, df: f64) -> f64 {
    if t < 0.0 { t_tail(-t, df) } else { 1.0 - t_tail(t, df) }
}

/// Student's t: the point with probability p below it.
///
/// # Range
/// 0 ≤ p ≤ 1, degrees of freedom above zero, whole or not; infinite ones give the normal distribution.
///
/// # Source
/// Solved on [`t_cdf`]; above 1e9 degrees of freedom Abramowitz & Stegun 1964, 26.7.5.
///
/// # Example
/// With 9 degrees of freedom 95 % lie within ±2.262, as R prints:
/// ```
/// use tautline_engine::num::quantile::t_quantile;
/// assert!((t_quantile(0.975, 9.0) - 2.262157).abs() < 5e-7);
/// ```
pub fn t_quantile(p: f64, df: f64) -> f64 {
    if !((0.0..=1.0).contains(&p) && df > 0.0) {
        return f64::NAN;
    }
    let (q, sign) = if p < 0.5 { (p, -1.0) } else { (1.0 - p, 1.0) };
    sign * remembered(q, df, t_upper_quantile)
}

/// How many points are remembered, each in the one place that its probability and degrees of freedom give it.
const PLACES: usize = 1024;

thread_local! {
    /// Thousands of sites ask for the same few points. What is remembered is what would be worked out again.
    static POINTS: [Cell<(u64, u64, f64)>; PLACES] = const { [const { Cell::new((0, 0, 0.0)) }; PLACES] };
}

fn remembered(q: f64, df: f64, point: impl FnOnce(f64, f64) -> f64) -> f64 {
    let key = (q.to_bits(), df.to_bits());
    let spread = (key.0.rotate_left(32) ^ key.1).wrapping_mul(0x9e37_79b9_7f4a_7c15) >> 54;
    let place = usize::try_from(spread).unwrap_or_default() % PLACES;
    POINTS.with(|points| {
        let (own_q, own_df, own) = points[place].get();
        // degrees of freedom are above zero, so an empty place has nobody's key
        if (own_q, own_df) == key {
            return own;
        }
        let found = point(q, df);
        points[place].set((key.0, key.1, found));
        found
    })
}

/// Chi-square: probability at or below x.
///
/// # Range
/// x ≥ 0, degrees of freedom above zero.
pub fn chi_square_cdf(x: f64, df: f64) -> f64 {
    incomplete_gamma(df / 2.0, x / 2.0).lower
}

/// Chi-square: the point with probability p below it.
///
/// # Range
/// 0 ≤ p ≤ 1, degrees of freedom above zero.
///
/// # Example
/// ```
/// use tautline_engine::num::quantile::chi_square_quantile;
/// assert!((chi_square_quantile(0.95, 4.0) - 9.48773).abs() < 5e-6);
/// ```
pub fn chi_square_quantile(p: f64, df: f64) -> f64 {
    if !((0.0..=1.0).contains(&p) && df > 0.0) {
        return f64::NAN;
    }
    if p == 0.0 {
        return 0.0;
    }
    if p >= 1.0 {
        return f64::INFINITY;
    }
    let above = |x: f64| excess(incomplete_gamma(df / 2.0, x / 2.0), p);
    let mut high = df + 10.0;
    while above(high) < 0.0 {
        high *= 2.0;
    }
    crossing(above, 0.0, high).unwrap_or(f64::NAN)
}

/// Beta distribution: probability at or below x.
///
/// # Range
/// a, b > 0 and 0 ≤ x ≤ 1.
pub fn beta_cdf(x: f64, a: f64, b: f64) -> f64 {
    incomplete_beta(a, b, x, 1.0 - x).lower
}

/// Beta distribution: the point with probability p below it.
///
/// # Range
/// 0 ≤ p ≤ 1 and a, b > 0.
///
/// # Example
/// With a = 1 the distribution is 1 − (1 − x)ᵇ, so its quantile can be written down:
/// ```
/// use tautline_engine::num::quantile::beta_quantile;
/// assert!((beta_quantile(0.75, 1.0, 2.0) - 0.5).abs() < 1e-15);
/// ```
pub fn beta_quantile(p: f64, a: f64, b: f64) -> f64 {
    if !((0.0..=1.0).contains(&p) && a > 0.0 && b > 0.0) {
        return f64::NAN;
    }
    crossing(|x| excess(incomplete_beta(a, b, x, 1.0 - x), p), 0.0, 1.0).unwrap_or(f64::NAN)
}

/// F distribution: the point with probability p below it.
///
/// # Range
/// 0 ≤ p ≤ 1, degrees of freedom above zero, whole or not.
///
/// # Source
/// By the beta distribution: Abramowitz & Stegun 1964, 26.6.2
///
/// # Example
/// With 1 and ν degrees of freedom F is the square of Student's t: 2.262157² with 9.
/// ```
/// use tautline_engine::num::quantile::f_quantile;
/// assert!((f_quantile(0.95, 1.0, 9.0) - 2.262157_f64.powi(2)).abs() < 5e-6);
/// ```
pub fn f_quantile(p: f64, df1: f64, df2: f64) -> f64 {
    // the share and its complement, each solved for, so that neither loses its digits near 1
    let (share, rest) =
        (beta_quantile(p, df1 / 2.0, df2 / 2.0), beta_quantile(1.0 - p, df2 / 2.0, df1 / 2.0));
    df2 * share / (df1 * rest)
}

/// How far the probability below a point passes p, told on the smaller tail.
fn excess(tails: Tails, p: f64) -> f64 {
    if p <= 0.5 { tails.lower - p } else { (1.0 - p) - tails.upper }
}

// Beyond this the first correction to the normal distribution is exact to the last digit.
const NEARLY_NORMAL: f64 = 1e9;

/// Probability above t ≥ 0.
fn t_tail(t: f64, df: f64) -> f64 {
    if df.is_nan() || df <= 0.0 || t.is_nan() {
        return f64::NAN;
    }
    if df > NEARLY_NORMAL {
        let quarter = 1.0 / (4.0 * df);
        return normal_cdf(-t * (1.0 - quarter) / sqrt(1.0 + 2.0 * quarter * t * t));
    }
    if t.is_infinite() {
        return 0.0;
    }
    let tt = t * t;
    0.5 * incomplete_beta(df / 2.0, 0.5, df / (df + tt), tt / (df + tt)).lower
}

/// The point with the small probability q ≤ ½ above it.
fn t_upper_quantile(q: f64, df: f64) -> f64 {
    if q >= 0.5 {
        return 0.0;
    }
    if q == 0.0 {
        return f64::INFINITY;
    }
    let z = -normal_quantile(q);
    if df > NEARLY_NORMAL {
        return z + (powf(z, 3.0) + z) / (4.0 * df);
    }
    // t is wider than the normal, so z is below the answer.
    let mut high = 2.0 * z + 1.0;
    while t_tail(high, df) > q {
        high *= 2.0;
    }
    crossing(|t| q - t_tail(t, df), 0.0, high).unwrap_or(f64::NAN)
}
