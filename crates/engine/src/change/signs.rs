//! A check on the t test that asks for no bell curve: if nothing changed, each difference could as well have the other
//! sign.

use crate::seed::Random;

/// How the chance was counted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Counted {
    /// All 2ⁿ ways to give the signs.
    All,
    /// So many random ways.
    Draws(usize),
}

/// Differences up to this many are counted out in full: 2²⁰ ways.
pub const MOST_IN_FULL: usize = 20;

/// Chance of a sum of differences at least this far from zero, where every sign is as likely as the other.
///
/// In full: the share of the 2ⁿ ways with |Σ ± dᵢ| ≥ |Σ dᵢ|. By draws: (1 + ways as far out) / (1 + draws), so that it is
/// never zero.
///
/// # Range
/// No differences, or none but zeros, give 1.
///
/// # Source
/// Fisher 1935, *The Design of Experiments*, §21; for draws Davison and Hinkley 1997, §4.3, eq. 4.11 (from memory)
///
/// # Example
/// Darwin's maize, crossed less self-fertilised, in eighths of an inch: 1726 of 32 768 ways are as far out (Fisher
/// 1935, §21).
/// ```
/// use tautline_engine::change::signs::{Counted, p_value};
/// use tautline_engine::seed::Seed;
/// let eighths = [49., -67., 8., 16., 6., 23., 28., 41., 14., 29., 56., 24., 75., 60., -48.];
/// let (p, counted) = p_value(&eighths, 9_999, &mut Seed::from_purpose("signs", &[]).stream());
/// assert_eq!((p, counted), (1726.0 / 32_768.0, Counted::All));
/// ```
pub fn p_value(differences: &[f64], draws: usize, random: &mut Random) -> (f64, Counted) {
    let reached: f64 = differences.iter().sum();
    // sums of the same numbers in another order differ in the last digits and are still ties
    let size: f64 = differences.iter().map(|d| d.abs()).sum();
    let limit = reached.abs() - 1e-12 * size;
    if differences.len() <= MOST_IN_FULL {
        let ways = as_far_out(differences, 0.0, limit);
        let of = 1_u64 << differences.len();
        #[expect(clippy::cast_precision_loss, reason = "at most 2^20")]
        let p = ways as f64 / of as f64;
        return (p, Counted::All);
    }
    let mut as_far = 1_usize;
    for _ in 0..draws {
        let mut bits = 0;
        let mut sum = 0.0;
        for (number, difference) in differences.iter().enumerate() {
            if number % 64 == 0 {
                bits = random.bits();
            }
            sum += if bits & 1 == 0 { *difference } else { -*difference };
            bits >>= 1;
        }
        as_far += usize::from(sum.abs() >= limit);
    }
    (crate::num::count(as_far) / crate::num::count(draws + 1), Counted::Draws(draws))
}

/// Ways to give the signs of what is left so that the whole sum lies at the limit or beyond.
fn as_far_out(left: &[f64], sum: f64, limit: f64) -> u64 {
    match left.split_first() {
        None => u64::from(sum.abs() >= limit),
        Some((first, rest)) => as_far_out(rest, sum + first, limit) + as_far_out(rest, sum - first, limit),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::seed::Seed;

    #[test]
    fn draws_come_near_the_full_count() {
        let differences: Vec<f64> = (0..21).map(|n| f64::from(n % 7) - 2.0).collect();
        let mut random = Seed::from_purpose("test signs", &[]).stream();
        let (drawn, counted) = p_value(&differences, 9_999, &mut random);
        assert_eq!(counted, Counted::Draws(9_999));
        let in_full = as_far_out(&differences, 0.0, differences.iter().sum::<f64>().abs() - 1e-9);
        #[expect(clippy::cast_precision_loss, reason = "2^21 at most")]
        let exact = in_full as f64 / f64::from(1 << 21);
        // five standard deviations of a share out of 9 999
        assert!(
            (drawn - exact).abs() < 5.0 * crate::num::math::sqrt(exact * (1.0 - exact) / 9_999.0),
            "{drawn} {exact}"
        );
    }

    #[test]
    fn nothing_that_changed_is_no_change() {
        let mut random = Seed::from_purpose("test signs", &[]).stream();
        assert_eq!(p_value(&[], 9, &mut random), (1.0, Counted::All));
        assert_eq!(p_value(&[0.0, 0.0], 9, &mut random), (1.0, Counted::All));
    }
}
