//! Incomplete beta and gamma functions, both tails, to near machine precision over the range that
//! sampling needs.
//!
//! The leading factor is built from deviances instead of differences of large log-gammas, so it keeps its
//! digits at hundreds of thousands of degrees of freedom; each tail is computed directly where it is the
//! small one, never as one minus the other.

use super::math::{exp, ln, ln_gamma, sqrt};
use std::f64::consts::PI;

/// The two parts into which a point cuts a distribution.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tails {
    /// Probability at or below the point.
    pub lower: f64,
    /// Probability above the point.
    pub upper: f64,
}

impl Tails {
    const ALL_ABOVE: Self = Self { lower: 0.0, upper: 1.0 };
    const ALL_BELOW: Self = Self { lower: 1.0, upper: 0.0 };
    const NOT_A_NUMBER: Self = Self { lower: f64::NAN, upper: f64::NAN };

    fn from_lower(lower: f64) -> Self {
        Self { lower, upper: 1.0 - lower }
    }

    fn from_upper(upper: f64) -> Self {
        Self { lower: 1.0 - upper, upper }
    }
}

/// Regularised incomplete beta function I_x(a, b) and its complement, with y = 1 − x given apart so that
/// neither loses digits near its end.
///
/// # Range
/// a, b > 0, x and y from 0 to 1 with x + y = 1; not a number outside.
///
/// # Source
/// Continued fraction: NIST Digital Library of Mathematical Functions 8.17.22. Leading factor: Loader, C. 2000.
/// Fast and accurate computation of binomial probabilities.
pub fn incomplete_beta(a: f64, b: f64, x: f64, y: f64) -> Tails {
    if !(a > 0.0 && b > 0.0 && (0.0..=1.0).contains(&x) && (0.0..=1.0).contains(&y)) {
        return Tails::NOT_A_NUMBER;
    }
    if x == 0.0 {
        return Tails::ALL_ABOVE;
    }
    if y == 0.0 {
        return Tails::ALL_BELOW;
    }
    let factor = beta_factor(a, b, x, y);
    // The fraction converges fast on the near side of the mean; the far side is the mirrored problem.
    if x <= (a + 1.0) / (a + b + 2.0) {
        Tails::from_lower(factor * beta_fraction(a, b, x) / a)
    } else {
        Tails::from_upper(factor * beta_fraction(b, a, y) / b)
    }
}

/// Regularised incomplete gamma functions P(a, x) and Q(a, x).
///
/// # Range
/// a > 0, x ≥ 0; not a number outside.
///
/// # Source
/// NIST Digital Library of Mathematical Functions 8.11.4 (series) and 8.9.2 (continued fraction). Leading
/// factor: Loader 2000, as for [`incomplete_beta`].
pub fn incomplete_gamma(a: f64, x: f64) -> Tails {
    if !(a > 0.0 && x >= 0.0) {
        return Tails::NOT_A_NUMBER;
    }
    if x == 0.0 {
        return Tails::ALL_ABOVE;
    }
    if x.is_infinite() {
        return Tails::ALL_BELOW;
    }
    let factor = gamma_factor(a, x);
    if x < a + 1.0 {
        Tails::from_lower(factor * gamma_series(a, x))
    } else {
        Tails::from_upper(factor * a * gamma_fraction(a, x))
    }
}

/// xᵃ yᵇ / B(a, b).
#[expect(clippy::many_single_char_names, reason = "the letters of the formula")]
fn beta_factor(a: f64, b: f64, x: f64, y: f64) -> f64 {
    let n = a + b;
    let exponent =
        stirling_error(n) - stirling_error(a) - stirling_error(b) - deviance(a, n * x) - deviance(b, n * y);
    sqrt(a * b / (2.0 * PI * n)) * exp(exponent)
}

/// xᵃ e⁻ˣ / Γ(a + 1).
pub(super) fn gamma_factor(a: f64, x: f64) -> f64 {
    exp(-stirling_error(a) - deviance(a, x)) / sqrt(2.0 * PI * a)
}

/// What Stirling's formula misses: ln Γ(z + 1) − (z + ½) ln z + z − ½ ln 2π.
fn stirling_error(z: f64) -> f64 {
    const HALF_LN_TWO_PI: f64 = 0.918_938_533_204_672_8;
    if z < 12.0 {
        return ln_gamma(z + 1.0) - (z + 0.5) * ln(z) + z - HALF_LN_TWO_PI;
    }
    let zz = z * z;
    (1.0 / 12.0
        - (1.0 / 360.0
            - (1.0 / 1260.0 - (1.0 / 1680.0 - (1.0 / 1188.0 - 691.0 / 360_360.0 / zz) / zz) / zz) / zz)
            / zz)
        / z
}

/// Deviance of observing a where m was expected: a ln(a / m) + m − a, without losing digits when they are near.
fn deviance(a: f64, m: f64) -> f64 {
    let difference = a - m;
    if difference.abs() >= 0.1 * (a + m) {
        return a * ln(a / m) - difference;
    }
    let v = difference / (a + m);
    let vv = v * v;
    let mut total = difference * v;
    let mut power = 2.0 * a * v;
    let mut odd = 3.0;
    loop {
        power *= vv;
        let next = total + power / odd;
        if next.to_bits() == total.to_bits() {
            return next;
        }
        total = next;
        odd += 2.0;
    }
}

/// The continued fraction of I_x(a, b), by Lentz's method.
fn beta_fraction(a: f64, b: f64, x: f64) -> f64 {
    let mut fraction = Lentz::new(1.0);
    fraction.add(-(a + b) * x / (a + 1.0), 1.0);
    let mut k = 1.0;
    while k < MOST_TERMS {
        fraction.add(k * (b - k) * x / ((a + 2.0 * k - 1.0) * (a + 2.0 * k)), 1.0);
        if fraction.add(-(a + k) * (a + b + k) * x / ((a + 2.0 * k) * (a + 2.0 * k + 1.0)), 1.0) {
            break;
        }
        k += 1.0;
    }
    1.0 / fraction.value
}

/// Σ xᵏ / ((a + 1) … (a + k)), k from 0: P(a, x) without its leading factor.
fn gamma_series(a: f64, x: f64) -> f64 {
    let mut term = 1.0;
    let mut total = 1.0;
    let mut k = 1.0;
    while term > total * f64::EPSILON / 4.0 {
        term *= x / (a + k);
        total += term;
        k += 1.0;
    }
    total
}

/// The continued fraction of Γ(a, x) eˣ x⁻ᵃ.
fn gamma_fraction(a: f64, x: f64) -> f64 {
    let mut fraction = Lentz::new(x + 1.0 - a);
    let mut k = 1.0;
    while k < MOST_TERMS {
        if fraction.add(-k * (k - a), x + 2.0 * k + 1.0 - a) {
            break;
        }
        k += 1.0;
    }
    1.0 / fraction.value
}

// The fractions need terms of the order of the root of the larger parameter: enough for parameters of 1e10.
const MOST_TERMS: f64 = 1e6;

/// A continued fraction b₀ + a₁/(b₁ + a₂/(b₂ + …)), built from the front (modified Lentz: Thompson & Barnett 1986).
struct Lentz {
    value: f64,
    c: f64,
    d: f64,
}

impl Lentz {
    fn new(b0: f64) -> Self {
        let value = off_zero(b0);
        Self { value, c: value, d: 0.0 }
    }

    /// Takes in the next pair; true when it no longer changes the value.
    fn add(&mut self, a: f64, b: f64) -> bool {
        self.d = 1.0 / off_zero(b + a * self.d);
        self.c = off_zero(b + a / self.c);
        let change = self.c * self.d;
        self.value *= change;
        (change - 1.0).abs() <= f64::EPSILON
    }
}

fn off_zero(x: f64) -> f64 {
    if x.abs() < 1e-300 { 1e-300 } else { x }
}
