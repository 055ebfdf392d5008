//! Signed ranks: a second check for few or skewed lines, with the median change that belongs to it.

use crate::num::{count, sum::median};

/// Wilcoxon's signed-rank test.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SignedRank {
    /// Sum of the ranks of the differences above zero; equal ones share their ranks.
    pub above: f64,
    /// Differences that aren't zero.
    pub differences: usize,
    /// Chance of a sum as far from its middle, either way, where both signs are as likely.
    pub two_sided: f64,
    /// Chance of a sum as high.
    pub rise: f64,
    /// Chance of a sum as low.
    pub fall: f64,
}

/// Tests whether the differences lie to one side of zero, by the exact distribution of their signed ranks.
///
/// Zeros are left out; equal sizes share the mean of their ranks, and the distribution is that of the shared ranks.
///
/// # Range
/// `None` where all differences are zero; counting grows with the cube of their number.
///
/// # Source
/// Wilcoxon 1945, Biometrics Bulletin 1:80–83; Hollander and Wolfe 1973, *Nonparametric Statistical Methods*, §3.1
///
/// # Example
/// Nine patients before and under treatment (Hollander and Wolfe 1973, p. 29; R, wilcox.test, example): V = 40, one-sided
/// p = 0.01953.
/// ```
/// use tautline_engine::change::ranks::signed_rank;
/// let before = [1.83, 0.50, 1.62, 2.48, 1.68, 1.88, 1.55, 3.06, 1.30];
/// let under = [0.878, 0.647, 0.598, 2.05, 1.06, 1.29, 1.06, 3.14, 1.29];
/// let less: Vec<f64> = before.iter().zip(under).map(|(b, u)| b - u).collect();
/// let test = signed_rank(&less).unwrap();
/// assert_eq!(test.above, 40.0);
/// assert!((test.rise - 0.01953).abs() < 5e-6);
/// ```
pub fn signed_rank(differences: &[f64]) -> Option<SignedRank> {
    let mut sizes: Vec<f64> = differences.iter().copied().filter(|d| *d != 0.0).collect();
    if sizes.is_empty() {
        return None;
    }
    sizes.sort_by(|a, b| a.abs().total_cmp(&b.abs()));
    // twice the ranks, so that shared ones are whole
    let doubled = doubled_ranks(&sizes);
    let above: usize =
        sizes.iter().zip(&doubled).filter(|(size, _)| **size > 0.0).map(|(_, rank)| rank).sum();
    let chances = distribution(&doubled);
    let rise: f64 = chances[above..].iter().sum();
    let fall: f64 = chances[..=above].iter().sum();
    Some(SignedRank {
        above: count(above) / 2.0,
        differences: sizes.len(),
        two_sided: (2.0 * rise.min(fall)).min(1.0),
        rise,
        fall,
    })
}

/// Twice the rank of each size, equal sizes sharing the mean of theirs; the sizes are sorted.
///
/// Sizes that differ only in what subtraction lost are equal.
fn doubled_ranks(sorted: &[f64]) -> Vec<usize> {
    let mut ranks = Vec::with_capacity(sorted.len());
    while ranks.len() < sorted.len() {
        let first = ranks.len();
        let size = sorted[first].abs();
        let alike = sorted[first..].iter().take_while(|other| other.abs() - size <= 1e-12 * size).count();
        ranks.extend(core::iter::repeat_n(2 * first + alike + 1, alike));
    }
    ranks
}

/// Chance of every sum of doubled ranks, each taken or not with even odds.
fn distribution(doubled: &[usize]) -> Vec<f64> {
    let mut chances = vec![1.0];
    for &rank in doubled {
        let mut next = vec![0.0; chances.len() + rank];
        for (sum, chance) in chances.iter().enumerate() {
            next[sum] += chance / 2.0;
            next[sum + rank] += chance / 2.0;
        }
        chances = next;
    }
    chances
}

/// The median change: Hodges and Lehmann's estimate, the median of the means of all pairs of differences.
///
/// # Units
/// Those of the differences.
///
/// # Range
/// `None` for no differences.
///
/// # Source
/// Hodges and Lehmann 1963, Annals of Mathematical Statistics 34:598–611; Hollander and Wolfe 1973, §3.2
///
/// # Example
/// The same nine patients, under treatment less before: −0.46 (Hollander and Wolfe 1973, §3.2).
/// ```
/// use tautline_engine::change::ranks::median_change;
/// let before = [1.83, 0.50, 1.62, 2.48, 1.68, 1.88, 1.55, 3.06, 1.30];
/// let under = [0.878, 0.647, 0.598, 2.05, 1.06, 1.29, 1.06, 3.14, 1.29];
/// let more: Vec<f64> = before.iter().zip(under).map(|(b, u)| u - b).collect();
/// assert!((median_change(&more).unwrap() + 0.46).abs() < 1e-12);
/// ```
pub fn median_change(differences: &[f64]) -> Option<f64> {
    median(&means_of_pairs(differences))
}

/// Means of all pairs of differences, each with itself too, sorted.
fn means_of_pairs(differences: &[f64]) -> Vec<f64> {
    let mut means: Vec<f64> = differences
        .iter()
        .enumerate()
        .flat_map(|(at, a)| differences[at..].iter().map(move |b| (a + b) / 2.0))
        .collect();
    means.sort_by(f64::total_cmp);
    means
}

/// The interval of the median change that belongs to the signed-rank test, and the confidence it really has.
///
/// From the c-th smallest to the c-th largest mean of pairs, c the largest with 2 P(V < c) ≤ 1 − confidence.
///
/// # Units
/// Those of the differences.
///
/// # Range
/// `None` where there are too few differences to be that sure: under five for 90 %.
///
/// # Source
/// Tukey 1949; Hollander and Wolfe 1973, §3.3
///
/// # Example
/// The nine patients again: from −0.786 to −0.010 at 96.1 % (Hollander and Wolfe 1973, §3.3).
/// ```
/// use tautline_engine::change::ranks::median_interval;
/// let before = [1.83, 0.50, 1.62, 2.48, 1.68, 1.88, 1.55, 3.06, 1.30];
/// let under = [0.878, 0.647, 0.598, 2.05, 1.06, 1.29, 1.06, 3.14, 1.29];
/// let more: Vec<f64> = before.iter().zip(under).map(|(b, u)| u - b).collect();
/// let (low, high, confidence) = median_interval(&more, 0.95).unwrap();
/// assert!((low + 0.786).abs() < 1e-12 && (high + 0.010).abs() < 1e-12);
/// assert!((confidence - 0.961).abs() < 5e-4);
/// ```
pub fn median_interval(differences: &[f64], confidence: f64) -> Option<(f64, f64, f64)> {
    let ranks: Vec<usize> = (1..=differences.len()).collect();
    let chances = distribution(&ranks);
    let most = (1.0 - confidence) / 2.0;
    let mut below = 0.0;
    let mut left_out = 0;
    for chance in &chances {
        if below + chance > most {
            break;
        }
        below += chance;
        left_out += 1;
    }
    let means = means_of_pairs(differences);
    let from_the_end = means.len().checked_sub(left_out)?;
    (left_out > 0).then(|| (means[left_out - 1], means[from_the_end], 1.0 - 2.0 * below))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Student's sleep data: one zero is left out and all others are above it, so 2/2⁹ (counted by hand).
    #[test]
    fn zeros_are_left_out_and_equal_sizes_share_their_ranks() {
        let test = signed_rank(&[1.2, 2.4, 1.3, 1.3, 0.0, 1.0, 1.8, 0.8, 4.6, 1.4]).unwrap();
        assert_eq!((test.differences, test.above), (9, 45.0));
        assert!((test.two_sided - 2.0 / 512.0).abs() < 1e-15);
    }

    #[test]
    fn turned_signs_turn_the_test() {
        let differences = [0.3, -0.1, 0.7, 0.2, -0.4, 0.9];
        let turned: Vec<f64> = differences.iter().map(|d| -d).collect();
        let (test, turned) = (signed_rank(&differences).unwrap(), signed_rank(&turned).unwrap());
        assert!((test.rise - turned.fall).abs() < 1e-15 && (test.two_sided - turned.two_sided).abs() < 1e-15);
    }

    #[test]
    fn four_differences_are_too_few_to_be_sure_of_their_middle() {
        assert_eq!(median_interval(&[1.0, 2.0, 3.0, 4.0], 0.9), None);
        let (low, high, confidence) = median_interval(&[1.0, 2.0, 3.0, 4.0, 5.0], 0.9).unwrap();
        assert_eq!((low, high), (1.0, 5.0));
        assert!((confidence - (1.0 - 2.0 / 32.0)).abs() < 1e-15);
        assert_eq!(signed_rank(&[0.0]), None);
    }
}
