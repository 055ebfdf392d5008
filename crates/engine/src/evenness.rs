//! Whether counts are as even as chance gives, and how to judge several such tests together.

use crate::num::sum::sum;
use crate::num::{count, special::incomplete_gamma};

/// The chi-square test of counts against what was expected of them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Evenness {
    /// Σ (observed − expected)² / expected.
    pub statistic: f64,
    /// One less than the number of classes.
    pub df: f64,
    /// The chance of so large a statistic, or a larger one, if the expectation is right.
    pub p: f64,
}

/// Tests whether counts are as expected: X² = Σ (O − E)² / E against chi-square with k − 1 degrees of freedom.
///
/// # Units
/// counts of independent observations; `expected` in the same units, adding up to the same total
/// # Range
/// two classes or more, every expectation above zero, else `None`; fair from an expectation of about five a class
/// # Source
/// Pearson 1900, Philosophical Magazine 50:157–175
/// # Example
/// ```
/// use tautline_engine::evenness::goodness_of_fit;
/// // 144 throws of two dice, Knuth 1997, The Art of Computer Programming 2, 3.3.1 (from memory): V = 7 7/48
/// let observed = [2, 4, 10, 12, 22, 29, 21, 15, 14, 9, 6];
/// let expected = [4.0, 8.0, 12.0, 16.0, 20.0, 24.0, 20.0, 16.0, 12.0, 8.0, 4.0];
/// let test = goodness_of_fit(&observed, &expected).unwrap();
/// assert!((test.statistic - (7.0 + 7.0 / 48.0)).abs() < 1e-12);
/// ```
pub fn goodness_of_fit(observed: &[u64], expected: &[f64]) -> Option<Evenness> {
    if observed.len() < 2 || observed.len() != expected.len() || !expected.iter().all(|&one| one > 0.0) {
        return None;
    }
    let statistic = sum(observed.iter().zip(expected).map(|(&observed, &expected)| {
        let off = real(observed) - expected;
        off * off / expected
    }));
    let df = count(observed.len() - 1);
    Some(Evenness { statistic, df, p: incomplete_gamma(df / 2.0, statistic / 2.0).upper })
}

/// Tests whether all classes are alike.
///
/// # Range
/// two classes or more and at least one observation, else `None`
/// # Source
/// as [`goodness_of_fit`]
pub fn evenness(observed: &[u64]) -> Option<Evenness> {
    let each = real(observed.iter().sum()) / count(observed.len().max(1));
    goodness_of_fit(observed, &vec![each; observed.len()])
}

#[expect(clippy::cast_precision_loss, reason = "counts of edges stay far below 2^53")]
const fn real(observed: u64) -> f64 {
    observed as f64
}

/// Probabilities of several tests, raised so that each may be compared with the chance of any false alarm at all:
/// the i-th smallest of m times m − i + 1, never below the one before it, at most 1; in the order they were given.
///
/// # Units
/// probabilities
/// # Source
/// Holm 1979, Scandinavian Journal of Statistics 6:65–70
/// # Example
/// ```
/// use tautline_engine::evenness::holm;
/// // at 5 % the first and the last are rejected and the other two are not (common textbook case, from memory)
/// let raised = holm(&[0.01, 0.04, 0.03, 0.005]);
/// for (raised, known) in raised.iter().zip([0.03, 0.06, 0.06, 0.02]) {
///     assert!((raised - known).abs() < 1e-12);
/// }
/// ```
pub fn holm(probabilities: &[f64]) -> Vec<f64> {
    let mut order: Vec<usize> = (0..probabilities.len()).collect();
    order.sort_by(|&a, &b| probabilities[a].total_cmp(&probabilities[b]));
    let mut raised = vec![1.0; probabilities.len()];
    let mut least = 0.0_f64;
    for (rank, &at) in order.iter().enumerate() {
        least = least.max(probabilities[at] * count(probabilities.len() - rank)).min(1.0);
        raised[at] = least;
    }
    raised
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The 95 % and 99 % points of chi-square with 9 degrees of freedom, 16.919 and 21.666 (any table), are reached
    /// by these counts of ten digits only from above.
    #[test]
    fn tables_of_chi_square() {
        let p = |statistic| incomplete_gamma(4.5, statistic / 2.0).upper;
        assert!((p(16.919) - 0.05).abs() < 1e-5 && (p(21.666) - 0.01).abs() < 1e-5);
        let heaped = evenness(&[20, 5, 5, 5, 5, 15, 5, 5, 5, 5]).unwrap();
        // by hand: 75 in all, 7.5 each; (12.5² + 7.5² + 8 · 2.5²) / 7.5 = 262.5 / 7.5 = 35
        assert!((heaped.statistic - 35.0).abs() < 1e-12 && heaped.p < 0.001);
        assert!(evenness(&[7; 10]).unwrap().p > 0.999_999);
        assert_eq!((evenness(&[]), evenness(&[3]), evenness(&[0, 0])), (None, None, None));
    }
}
