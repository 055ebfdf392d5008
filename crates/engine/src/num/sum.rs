//! Sums in the order given, compensated: the same bits on every target, and next to none lost.

use super::count;

/// Sum of the values, compensated for rounding.
///
/// The order of additions is the order given, so threads or iterators can't change a figure. Values in
/// another order agree to about one unit in the last place.
///
/// # Source
/// Neumaier, A. 1974. Rundungsfehleranalyse einiger Verfahren zur Summation endlicher Summen. ZAMM 54:39–51.
///
/// # Example
/// ```
/// use tautline_engine::num::sum::sum;
/// assert_eq!(sum([1.0, 1e100, 1.0, -1e100]), 2.0);
/// ```
pub fn sum(values: impl IntoIterator<Item = f64>) -> f64 {
    let mut total = 0.0_f64;
    let mut lost = 0.0_f64;
    for value in values {
        let next = total + value;
        lost += if total.abs() >= value.abs() { (total - next) + value } else { (value - next) + total };
        total = next;
    }
    total + lost
}

/// Mean of the values, Σ x / n; not a number for none.
pub fn mean(values: &[f64]) -> f64 {
    sum(values.iter().copied()) / count(values.len())
}

/// Sample variance, Σ (x − x̄)² / (n − 1); not a number for fewer than two values.
pub fn variance(values: &[f64]) -> f64 {
    let centre = mean(values);
    sum(values.iter().map(|x| (x - centre) * (x - centre))) / (count(values.len()) - 1.0)
}

/// The median; the mean of the middle two for an even number.
///
/// # Range
/// `None` for no values.
pub fn median(values: &[f64]) -> Option<f64> {
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    let middle = sorted.len() / 2;
    match sorted.len() {
        0 => None,
        odd if odd % 2 == 1 => Some(sorted[middle]),
        _ => Some(f64::midpoint(sorted[middle - 1], sorted[middle])),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_sums_to_zero() {
        assert_eq!(sum([]).to_bits(), 0.0_f64.to_bits());
    }

    #[test]
    fn ten_tenths_are_one() {
        assert_eq!(sum([0.1; 10]).to_bits(), 1.0_f64.to_bits());
    }

    #[test]
    fn variance_of_two_is_half_the_squared_difference() {
        assert_eq!(variance(&[1.0, 4.0]).to_bits(), 4.5_f64.to_bits());
    }
}
