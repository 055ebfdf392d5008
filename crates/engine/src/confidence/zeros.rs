//! Lines on which nothing was found: what n zeros say, and what they don't.

use crate::num::{count, math::powf};

/// The largest share of lines with shrubs that `lines` lines without any leave plausible: 1 − (1 − c)^(1/n).
///
/// It bounds how often a line meets a shrub. It bounds cover only together with a stated cover on such lines.
///
/// # Range
/// one line or more
/// # Source
/// exact binomial (Clopper and Pearson 1934, Biometrika 26:404) for zero of n
/// # Example
/// Ten empty lines at 90 %: 1 − 0.1^0.1 = 20.6 %.
/// ```
/// let share = tautline_engine::confidence::zeros::share_of_lines_at_most(10, 0.9);
/// assert!((share - 0.205_671_77).abs() < 1e-8);
/// ```
pub fn share_of_lines_at_most(lines: usize, confidence: f64) -> f64 {
    1.0 - powf(1.0 - confidence, 1.0 / count(lines))
}

/// Cover at most, where a line that meets shrubs is stated to have this cover.
pub fn cover_at_most(lines: usize, confidence: f64, cover_where_present: f64) -> f64 {
    share_of_lines_at_most(lines, confidence) * cover_where_present
}
