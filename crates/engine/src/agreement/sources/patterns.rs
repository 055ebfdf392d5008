//! Which groupings of readings can be told apart: from how many readings their groups have in common.

use super::Source;
use crate::num::count;
use crate::num::square::{Square, dot};
use std::collections::BTreeMap;

/// Which groupings can be told apart, and what is known of the others. Their patterns are made independent one after another, what is
/// left first (Gram and Schmidt), all about the mean.
pub(super) fn told_apart(n: usize, groupings: &[Vec<usize>]) -> (Vec<usize>, Vec<Source>) {
    const TRIFLE: f64 = 1e-9;
    let single: Vec<usize> = (0..n).collect();
    let mut kept: Vec<(Option<usize>, &Vec<usize>)> = vec![(None, &single)];
    let mut of = Vec::new();
    let mut told = Vec::new();
    for (at, grouping) in groupings.iter().enumerate() {
        let size = together(grouping, grouping);
        if size <= TRIFLE {
            of.push(Source::OneGroup);
            continue;
        }
        // the sum of kept patterns that lies nearest
        let k = kept.len();
        let mut products = Square::zero(k);
        for row in 0..k {
            for column in 0..k {
                products.set(row, column, together(kept[row].1, kept[column].1));
            }
        }
        let right: Vec<f64> = kept.iter().map(|(_, one)| together(one, grouping)).collect();
        let weights = products.factor().map_or_else(|| vec![0.0; k], |lower| lower.factor_solve(&right));
        let left = size - dot(&weights, &right);
        if left <= TRIFLE * size {
            let part = |weight: f64, one: &[usize]| weight * weight * together(one, one) > 1e-6 * size;
            let with = weights.iter().zip(&kept).filter(|(weight, (_, one))| part(**weight, one));
            of.push(Source::Mixed(with.map(|(_, (own, _))| *own).collect()));
            continue;
        }
        told.push(at);
        of.push(Source::Mixed(Vec::new())); // what was told stands there at the end
        kept.push((Some(at), grouping));
    }
    (told, of)
}

/// tr(C A C B) of two patterns with ones where two readings share a group, and C = I − 11′/n, which takes the mean off: from how many
/// readings each group, and each pair of groups, has.
fn together(one: &[usize], other: &[usize]) -> f64 {
    let mut groups: [BTreeMap<usize, u32>; 2] = [BTreeMap::new(), BTreeMap::new()];
    let mut cells: BTreeMap<(usize, usize), u32> = BTreeMap::new();
    for (&one, &other) in one.iter().zip(other) {
        *groups[0].entry(one).or_default() += 1;
        *groups[1].entry(other).or_default() += 1;
        *cells.entry((one, other)).or_default() += 1;
    }
    let size = |which: usize, group: usize| f64::from(groups[which][&group]);
    let rows =
        |which: usize, grouping: &[usize]| grouping.iter().map(|&group| size(which, group)).sum::<f64>();
    let shared: f64 = cells.values().map(|&cell| f64::from(cell) * f64::from(cell)).sum();
    let crossed: f64 = one.iter().zip(other).map(|(&one, &other)| size(0, one) * size(1, other)).sum();
    let n = count(one.len());
    shared - 2.0 * crossed / n + rows(0, one) * rows(1, other) / (n * n)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Four readings, groups {1, 2} and {3, 4} against {1, 3} and {2, 4}: crossed evenly, their patterns have nothing in common about the
    /// mean. With itself: the pattern about the mean is ±½ everywhere, so 16 quarters. By hand.
    #[test]
    fn patterns_together_by_hand() {
        let [rows, columns] = [[0, 0, 1, 1], [0, 1, 0, 1]];
        let near = |found: f64, by_hand: f64| assert!((found - by_hand).abs() < 1e-12, "{found}");
        near(together(&rows, &columns), 0.0);
        near(together(&rows, &rows), 4.0);
        // one less a quarter on the diagonal, less a quarter beside it: 4 × 9/16 + 12 × 1/16
        near(together(&[0, 1, 2, 3], &[0, 1, 2, 3]), 3.0);
    }
}
