//! Lengths along sloping ground brought to the level.
//!
//! Cover in per cent needs none of this: line and intercepts shrink alike. Gap lengths and plants per area do.

use crate::length::Length;
use crate::num::math::{cos, sqrt};

/// Cosine of the ground's angle from its grade (rise over run): 1/√(1 + g²).
///
/// # Units
/// grade as a share: 0.12 for 12 %
/// # Source
/// plane trigonometry
/// # Example
/// Four along and three up is five along the ground.
/// ```
/// assert!((tautline_engine::slope::cosine_of_grade(0.75) - 0.8).abs() < 1e-15);
/// ```
pub fn cosine_of_grade(grade: f64) -> f64 {
    1.0 / sqrt(1.0 + grade * grade)
}

/// Cosine of the ground's angle in degrees.
///
/// # Range
/// below 90 either way
/// # Example
/// ```
/// assert!((tautline_engine::slope::cosine_of_degrees(60.0) - 0.5).abs() < 1e-15);
/// ```
pub fn cosine_of_degrees(degrees: f64) -> f64 {
    cos(degrees.to_radians())
}

/// A length along the ground as it is on a map: ℓ · cos, to the nearest nanometre.
///
/// # Example
/// ```
/// use tautline_engine::{length::{Length, Unit}, slope::{cosine_of_grade, level}};
/// let along = Length::from_units(5, Unit::Metre);
/// assert_eq!(level(along, cosine_of_grade(0.75)), Length::from_units(4, Unit::Metre));
/// ```
pub fn level(length: Length, cosine: f64) -> Length {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_precision_loss,
        reason = "lengths on a tape stay below 2^53 nanometres, which is nine thousand kilometres"
    )]
    let nanometres = (length.nanometres() as f64 * cosine).round() as i64;
    Length::from_nanometres(nanometres)
}
