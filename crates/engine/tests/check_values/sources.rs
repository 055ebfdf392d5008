//! How much of what varies lies in each grouping, as lme4 works it out: testdata/reference.

use crate::tables::{Misses, number, numbers, rows};
use tautline_engine::agreement::sources::{Source, sources};

/// As exactly as the other program's search ends.
const VARIANCES: f64 = 1e-4;

/// lme4 1.1; two sets of Davies and Goldsmith 1972 (of the second, 0.7169, 3.7309 and 0.3024 are printed in Bates 2010, 2.1; figures of
/// the book from memory), one invented, with readings missed.
#[test]
fn groupings() {
    let data = rows(include_str!("../../../../testdata/reference/groupings.txt"), 3);
    let mut misses = Misses::default();
    for row in rows(include_str!("../../../../testdata/reference/sources.txt"), 3) {
        let own = data.iter().find(|own| own[0] == row[1]).expect("its readings");
        let cells: Vec<Vec<&str>> = own[2].split(',').map(|cell| cell.split_whitespace().collect()).collect();
        let values: Vec<f64> = cells.iter().map(|cell| number(cell[0])).collect();
        let groupings: Vec<Vec<usize>> = (1..cells[0].len())
            .map(|at| cells.iter().map(|cell| cell[at].parse().expect("a group")).collect())
            .collect();
        let found = sources(&values, &groupings).expect("taken apart");
        let expected = numbers(row[2]);
        assert_eq!(expected.len(), groupings.len() + 1);
        for (source, expected) in found.of.iter().zip(&expected) {
            let Source::Told { variance, .. } = source else { panic!("{row:?}: {source:?}") };
            misses.within(VARIANCES, *expected, *variance, &row);
        }
        misses.within(VARIANCES, expected[groupings.len()], found.left, &row);
    }
    misses.none();
}
