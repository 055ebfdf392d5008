//! The one door to transcendental functions: the same bits on every target.
//!
//! std's `f64::exp` and its kin call the platform and differ in the last bit between a native build and
//! WebAssembly; `libm` is plain Rust and doesn't. `clippy.toml` bans the std functions in this crate.

/// eˣ.
pub fn exp(x: f64) -> f64 {
    libm::exp(x)
}

/// eˣ − 1, accurate near zero.
pub fn exp_m1(x: f64) -> f64 {
    libm::expm1(x)
}

/// Natural logarithm.
pub fn ln(x: f64) -> f64 {
    libm::log(x)
}

/// ln(1 + x), accurate near zero.
pub fn ln_1p(x: f64) -> f64 {
    libm::log1p(x)
}

/// Square root.
pub fn sqrt(x: f64) -> f64 {
    libm::sqrt(x)
}

/// xʸ.
pub fn powf(x: f64, y: f64) -> f64 {
    libm::pow(x, y)
}

/// Length of the hypotenuse, √(x² + y²), without overflow.
pub fn hypot(x: f64, y: f64) -> f64 {
    libm::hypot(x, y)
}

/// Sine of an angle in radians.
pub fn sin(x: f64) -> f64 {
    libm::sin(x)
}

/// Cosine of an angle in radians.
pub fn cos(x: f64) -> f64 {
    libm::cos(x)
}

/// Angle of the point (x, y) in radians, from the x axis.
pub fn atan2(y: f64, x: f64) -> f64 {
    libm::atan2(y, x)
}

/// Complementary error function, 2/√π ∫ₓ^∞ e^(−t²) dt.
pub fn erfc(x: f64) -> f64 {
    libm::erfc(x)
}

/// Natural logarithm of the gamma function.
pub fn ln_gamma(x: f64) -> f64 {
    libm::lgamma(x)
}

/// Log odds of a share, ln(p / (1 − p)).
///
/// # Range
/// 0 < p < 1; infinite at the ends.
pub fn logit(p: f64) -> f64 {
    ln(p) - ln_1p(-p)
}

/// The share whose log odds are x, 1 / (1 + e⁻ˣ): undoes [`logit`].
pub fn expit(x: f64) -> f64 {
    if x < 0.0 {
        let odds = exp(x);
        odds / (1.0 + odds)
    } else {
        1.0 / (1.0 + exp(-x))
    }
}
