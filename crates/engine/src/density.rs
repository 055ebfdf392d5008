//! Plants per area from the widths of the plants that a line crossed.

use crate::length::{Length, Unit};

/// Plants per square metre: the sum of 1/W over the crossed plants, divided by the length of all lines.
///
/// W is the greatest width of the whole plant at right angles to the line, each plant taken once. A wide plant is
/// crossed more often than a narrow one, and 1/W takes that back. The lengths along the tape can't stand in for W.
///
/// # Units
/// plants per square metre
/// # Range
/// `None` where a width or the line length is zero
/// # Source
/// Lucas and Seber 1977, Biometrika 64:618 (from memory); the form Σ(1/W)/L as taught in plotless-sampling courses
/// # Example
/// ```
/// use tautline_engine::{density::plants_per_square_metre, length::{Length, Unit}};
/// let widths = [50, 100, 200].map(|cm| Length::from_units(cm, Unit::Centimetre));
/// let density = plants_per_square_metre(&widths, Length::from_units(100, Unit::Metre)).unwrap();
/// assert!((density - 0.035).abs() < 1e-12); // 350 per hectare
/// ```
pub fn plants_per_square_metre(widths: &[Length], length_of_lines: Length) -> Option<f64> {
    if length_of_lines <= Length::ZERO || widths.iter().any(|&width| width <= Length::ZERO) {
        return None;
    }
    let per_metre: f64 = widths.iter().map(|width| 1.0 / width.in_unit(Unit::Metre)).sum();
    Some(per_metre / length_of_lines.in_unit(Unit::Metre))
}
