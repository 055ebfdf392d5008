//! Noncentral t: how likely a t statistic is to pass a limit when the true difference isn't zero.

use super::math::{powf, sqrt};
use super::quantile::normal_cdf;
use super::special::gamma_factor;
use super::sum::sum;

/// Noncentral t: probability that (Z + δ) / √(χ²/ν) is at or below t.
///
/// F(t) = ∫ Φ(t s − δ) f(s) ds, where s = √(χ²/ν) is the ratio of the estimated to the true standard deviation.
///
/// # Range
/// Degrees of freedom ν of at least 1, any finite noncentrality δ; absolute error below 1e-13. Not a number
/// outside.
///
/// # Source
/// Johnson, Kotz & Balakrishnan 1995, Continuous Univariate Distributions 2, ch. 31 (the definition).
///
/// # Example
/// Power of a two-sided one-sample t test, n = 20, a difference of 0.2 standard deviations, α = 0.05:
/// ```
/// use tautline_engine::num::{noncentral::noncentral_t_cdf, quantile::t_quantile};
/// let (limit, delta) = (t_quantile(0.975, 19.0), 0.2 * 20.0_f64.sqrt());
/// let power = 1.0 - noncentral_t_cdf(limit, 19.0, delta) + noncentral_t_cdf(-limit, 19.0, delta);
/// assert!((power - 0.1359562887679666).abs() < 1e-12);
/// ```
pub fn noncentral_t_cdf(t: f64, df: f64, delta: f64) -> f64 {
    if !(df >= 1.0 && t.is_finite() && delta.is_finite()) {
        return f64::NAN;
    }
    let widest = if t == 0.0 { f64::INFINITY } else { 9.0 / t.abs() };
    let turn = if t == 0.0 { 0.0 } else { delta / t };
    average_over_spread(df, [turn - widest, turn + widest], |s| normal_cdf(t * s - delta)).clamp(0.0, 1.0)
}

/// Chance that a mean lies clearly between two limits: that both (mean − low)/se ≥ t and (high − mean)/se ≥ t,
/// where the true distances to the limits are `to_low` and `to_high` true standard errors.
///
/// P = ∫ max(0, Φ(to_high − t s) − Φ(t s − to_low)) f(s) ds.
///
/// # Range
/// Degrees of freedom of at least 1 and t > 0; not a number outside.
///
/// # Source
/// Schuirmann, D.J. 1987. A comparison of the two one-sided tests procedure. J. Pharmacokin. Biopharm.
/// 15:657–680 (the integral in the form of Owen 1965).
pub fn chance_between(t: f64, df: f64, to_low: f64, to_high: f64) -> f64 {
    if !(df >= 1.0 && t > 0.0 && t.is_finite() && to_low.is_finite() && to_high.is_finite()) {
        return f64::NAN;
    }
    // Beyond this spread the two tests can't succeed together.
    let too_wide = (to_low + to_high) / (2.0 * t);
    let chance = |s: f64| {
        if s >= too_wide { 0.0 } else { normal_cdf(to_high - t * s) - normal_cdf(t * s - to_low) }
    };
    average_over_spread(df, [too_wide - 9.0 / t, too_wide], chance).clamp(0.0, 1.0)
}

/// Mean of g(s) over s = √(χ²/ν); g may bend sharply between the two `bends` and is smooth outside.
fn average_over_spread(df: f64, bends: [f64; 2], g: impl Fn(f64) -> f64) -> f64 {
    // Twelve standard deviations of s hold all but 1e-30 of it.
    let width = 12.0 / sqrt(2.0 * df);
    let (low, high) = ((1.0 - width).max(0.0), 1.0 + width);
    let [first, second] = bends.map(|b| b.clamp(low, high));
    sum([(low, first), (first, second), (second, high)].map(|(from, to)| {
        // In s = v⁴ the density has no corner at zero, even with few and uneven degrees of freedom.
        let (from, to) = (sqrt(sqrt(from)), sqrt(sqrt(to)));
        integral(from, to, |v| {
            let s = powf(v, 4.0);
            4.0 * powf(v, 3.0) * spread_density(s, df) * g(s)
        })
    }))
}

/// Density of s = √(χ²/ν): 2 ν^(ν/2) s^(ν−1) e^(−ν s²/2) / (2^(ν/2) Γ(ν/2)).
fn spread_density(s: f64, df: f64) -> f64 {
    if s <= 0.0 {
        return 0.0;
    }
    let half = df / 2.0;
    df * gamma_factor(half, half * s * s) / s
}

/// ∫ f from `from` to `to` by Gauss–Legendre with ten points on each of 24 panels.
fn integral(from: f64, to: f64, f: impl Fn(f64) -> f64) -> f64 {
    if from >= to {
        return 0.0;
    }
    let panel = (to - from) / f64::from(PANELS);
    let half = panel / 2.0;
    half * sum((0..PANELS).flat_map(|k| {
        let middle = from + (f64::from(k) + 0.5) * panel;
        GAUSS_LEGENDRE.map(|(x, w)| w * (f(middle - half * x) + f(middle + half * x)))
    }))
}

const PANELS: u32 = 24;

/// Nodes and weights for ten points (Abramowitz & Stegun 1964, table 25.4), the positive half.
const GAUSS_LEGENDRE: [(f64, f64); 5] = [
    (0.148_874_338_981_631_2, 0.295_524_224_714_752_9),
    (0.433_395_394_129_247_2, 0.269_266_719_309_996_35),
    (0.679_409_568_299_024_4, 0.219_086_362_515_982_05),
    (0.865_063_366_688_984_5, 0.149_451_349_150_580_6),
    (0.973_906_528_517_171_7, 0.066_671_344_308_688_14),
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::num::quantile::t_cdf;

    #[test]
    fn without_a_difference_it_is_students_t() {
        for df in [1.0, 1.3, 2.0, 4.5, 19.0, 300.0] {
            for t in [-3.0, -0.5, 0.0, 1.7, 12.0] {
                let miss = noncentral_t_cdf(t, df, 0.0) - t_cdf(t, df);
                assert!(miss.abs() < 1e-12, "df {df} t {t}: {miss:e}");
            }
        }
    }

    #[test]
    fn turning_the_scale_round_swaps_the_tails() {
        let miss = noncentral_t_cdf(1.2, 7.0, 2.5) + noncentral_t_cdf(-1.2, 7.0, -2.5) - 1.0;
        assert!(miss.abs() < 1e-13, "{miss:e}");
    }

    #[test]
    fn a_far_upper_limit_leaves_a_one_sided_test() {
        let (t, df) = (1.383, 9.0);
        let one_sided = 1.0 - noncentral_t_cdf(t, df, 2.0);
        assert!((chance_between(t, df, 2.0, 200.0) - one_sided).abs() < 1e-12);
    }
}
