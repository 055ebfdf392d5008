//! Which plants two readers of one line both have, and how their edges differ.

use crate::length::Length;
use crate::stretch::{Stretch, union};

/// Two readings of one line, patch by patch.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Matched {
    /// Patches that both have: the first reader's and the second's.
    pub both: Vec<(Stretch, Stretch)>,
    /// Only the first reader has them.
    pub missed: Vec<Stretch>,
    /// Only the second reader has them.
    pub added: Vec<Stretch>,
}

/// Matches the patches of two readings so that matched ones share as much tape as possible.
///
/// Patches of one reading lie apart and in order, so the best assignment never crosses and is found step by step.
///
/// # Units
/// Whole nanometres.
///
/// # Source
/// Common practice, no source: best assignment in order, by dynamic programming (Needleman and Wunsch 1970)
///
/// # Example
/// Invented: the second reader sees one plant wider, misses one and has one of their own.
/// ```
/// use tautline_engine::agreement::patches::matched;
/// use tautline_engine::length::{Length, Unit};
/// use tautline_engine::stretch::Stretch;
/// let at = |cm| Length::from_units(cm, Unit::Centimetre);
/// let plant = |from, to| Stretch::new(at(from), at(to)).unwrap();
/// let found = matched(&[plant(10, 40), plant(90, 100)], &[plant(8, 43), plant(200, 210)]);
/// assert_eq!(found.both, [(plant(10, 40), plant(8, 43))]);
/// assert_eq!((found.missed, found.added), (vec![plant(90, 100)], vec![plant(200, 210)]));
/// ```
pub fn matched(first: &[Stretch], second: &[Stretch]) -> Matched {
    let (first, second) = (union(first.iter().copied()), union(second.iter().copied()));
    let shared = |a: usize, b: usize| first[a].within(second[b]).map_or(Length::ZERO, Stretch::length);
    // most[a][b]: the most tape that the first a and b patches can share
    let mut most = vec![vec![Length::ZERO; second.len() + 1]; first.len() + 1];
    for a in 0..first.len() {
        for b in 0..second.len() {
            most[a + 1][b + 1] = most[a][b + 1].max(most[a + 1][b]).max(most[a][b] + shared(a, b));
        }
    }
    let mut found = Matched::default();
    let (mut a, mut b) = (first.len(), second.len());
    while a > 0 || b > 0 {
        let pair = a > 0
            && b > 0
            && shared(a - 1, b - 1) > Length::ZERO
            && most[a][b] == most[a - 1][b - 1] + shared(a - 1, b - 1);
        if pair {
            (a, b) = (a - 1, b - 1);
            found.both.push((first[a], second[b]));
        } else if a > 0 && (b == 0 || most[a][b] == most[a - 1][b]) {
            a -= 1;
            found.missed.push(first[a]);
        } else {
            b -= 1;
            found.added.push(second[b]);
        }
    }
    found.both.reverse();
    found.missed.reverse();
    found.added.reverse();
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::stretch::tests::cm;

    #[test]
    fn a_patch_that_was_split_goes_to_its_larger_half() {
        let found = matched(&[cm(0, 100)], &[cm(0, 30), cm(40, 100)]);
        assert_eq!(found.both, [(cm(0, 100), cm(40, 100))]);
        assert_eq!(found.added, [cm(0, 30)]);
    }

    #[test]
    fn readers_swapped_swap_missed_and_added() {
        let (one, other) = ([cm(0, 10), cm(20, 30), cm(50, 60)], [cm(5, 22), cm(70, 80)]);
        let (there, back) = (matched(&one, &other), matched(&other, &one));
        assert_eq!(there.missed.len(), back.added.len());
        assert_eq!(there.added.len(), back.missed.len());
        assert_eq!(there.both.len(), back.both.len());
    }
}
