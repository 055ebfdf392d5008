//! Where differences come from: how much of what varies lies in each of several groupings, crossed or nested, in any numbers.

mod patterns;

use crate::num::math::sqrt;
use crate::num::square::{Square, dot};
use crate::num::sum::mean;
use patterns::told_apart;

/// The most readings that are taken apart at once: the work grows with their cube.
pub const MOST_READINGS: usize = 400;

/// What is known of one grouping.
#[derive(Clone, Debug, PartialEq)]
pub enum Source {
    /// Its variance, in squared units of the values, and that figure's own standard error in large samples.
    Told {
        /// The variance.
        variance: f64,
        /// Its standard error; `None` where the variance lies at zero.
        se: Option<f64>,
    },
    /// All readings are of one group.
    OneGroup,
    /// It can't be told apart from these groupings (by number) together; `None` among them is what is left.
    Mixed(Vec<Option<usize>>),
}

/// A set of readings taken apart.
#[derive(Clone, Debug, PartialEq)]
pub struct Sources {
    /// The mean that all groupings swing about.
    pub mean: f64,
    /// One for each grouping, in the order they were given.
    pub of: Vec<Source>,
    /// The variance of what is left.
    pub left: f64,
}

/// Why readings aren't taken apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoSources {
    /// Fewer than three readings.
    TooFew,
    /// More than [`MOST_READINGS`].
    TooMany,
    /// The groupings leave nothing over, so that no error can be told.
    NothingLeft,
    /// The search for the variances came to no end.
    NoSummit,
}

impl NoSources {
    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::TooFew => "sources-too-few",
            Self::TooMany => "sources-too-many",
            Self::NothingLeft => "sources-nothing-left",
            Self::NoSummit => "sources-no-summit",
        }
    }
}

/// Takes readings apart: each grouping gives the number of each reading's group.
///
/// The variances are those of restricted likelihood, found by Fisher's scoring from the quadratic forms of the first step; none is
/// below zero. A grouping whose pattern of shared groups is a sum of those before it (and of what is left) can't be told apart from
/// them; its variance stands in theirs.
///
/// # Range
/// 3 to [`MOST_READINGS`] readings; every grouping as long as the readings
/// # Errors
/// [`NoSources`]
/// # Source
/// Patterson and Thompson 1971, Biometrika 58:545–554; Rao 1972, Journal of the American Statistical Association 67:112–115
/// # Example
/// Six batches of five (Davies 1947; the variances of restricted likelihood, 1764 and 2451, are Bates 2010, 1.3).
/// ```
/// use tautline_engine::agreement::sources::{Source, sources};
/// let yields = [
///     1545., 1440., 1440., 1520., 1580., 1540., 1555., 1490., 1560., 1495., 1595., 1550., 1605., 1510., 1560.,
///     1445., 1440., 1595., 1465., 1545., 1595., 1630., 1515., 1635., 1625., 1520., 1455., 1450., 1480., 1445.,
/// ];
/// let batch: Vec<usize> = (0..30).map(|one| one / 5).collect();
/// let found = sources(&yields, &[batch]).unwrap();
/// assert!((found.left - 2451.25).abs() < 0.01);
/// assert!(matches!(found.of[0], Source::Told { variance, .. } if (variance - 1764.05).abs() < 0.01));
/// ```
pub fn sources(values: &[f64], groupings: &[Vec<usize>]) -> Result<Sources, NoSources> {
    let mut taking = Taking::begin(values, groupings)?;
    loop {
        if let Some(found) = taking.step() {
            return found;
        }
    }
}

/// Readings being taken apart, one step of the search after the other: for whoever can't wait until it ends.
///
/// # Example
/// ```
/// use tautline_engine::agreement::sources::{Taking, sources};
/// let (values, line) = ([1.0, 2.0, 4.0, 4.5, 8.0, 7.0], vec![0, 0, 1, 1, 2, 2]);
/// let mut taking = Taking::begin(&values, &[line.clone()]).unwrap();
/// let found = loop {
///     if let Some(found) = taking.step() {
///         break found;
///     }
/// };
/// assert_eq!(found, sources(&values, &[line]));
/// ```
#[derive(Clone, Debug)]
pub struct Taking {
    values: Vec<f64>,
    groupings: Vec<Vec<usize>>,
    /// Those that can be told apart.
    told: Vec<usize>,
    of: Vec<Source>,
    /// Variances so far, that of what is left last.
    now: Vec<f64>,
    steps: usize,
}

impl Taking {
    /// Before the first step: which groupings can be told apart.
    ///
    /// # Errors
    /// as [`sources`]
    pub fn begin(values: &[f64], groupings: &[Vec<usize>]) -> Result<Self, NoSources> {
        let n = values.len();
        if n < 3 {
            return Err(NoSources::TooFew);
        }
        if n > MOST_READINGS {
            return Err(NoSources::TooMany);
        }
        let (told, of) = told_apart(n, groupings);
        let mut now = vec![0.0; told.len()];
        now.push(1.0);
        let (values, groupings) = (values.to_vec(), groupings.to_vec());
        Ok(Self { values, groupings, told, of, now, steps: 0 })
    }

    /// A further step; the answer after the last one.
    pub fn step(&mut self) -> Option<Result<Sources, NoSources>> {
        const STEPS: usize = 200;
        const NEAR: f64 = 1e-11;
        if self.steps == STEPS {
            return Some(Err(NoSources::NoSummit));
        }
        self.steps += 1;
        let own: Vec<&Vec<usize>> = self.told.iter().map(|&at| &self.groupings[at]).collect();
        let scored = step(&self.values, &own, &self.now).and_then(|(curve, right)| scored(&curve, &right));
        let Some((next, errors)) = scored else { return Some(Err(NoSources::NothingLeft)) };
        let whole: f64 = next.iter().sum();
        let moved = next.iter().zip(&self.now).map(|(a, b)| (a - b).abs()).fold(0.0, f64::max);
        self.now = next;
        (moved <= NEAR * whole).then(|| Ok(self.found(&errors)))
    }

    fn found(&self, errors: &[Option<f64>]) -> Sources {
        let mut of = self.of.clone();
        for ((&at, &variance), &se) in self.told.iter().zip(&self.now).zip(errors) {
            of[at] = Source::Told { variance, se };
        }
        Sources { mean: mean(&self.values), of, left: self.now[self.told.len()] }
    }
}

/// The quadratic forms of the readings and what they are expected to be, at variances: tr(P Vᵢ P Vⱼ) and y′P Vᵢ P y.
fn step(values: &[f64], groupings: &[&Vec<usize>], at: &[f64]) -> Option<(Square, Vec<f64>)> {
    let (n, k) = (values.len(), groupings.len());
    let mut v = Square::zero(n);
    for row in 0..n {
        for column in 0..n {
            let both = |(grouping, variance): (&&Vec<usize>, &f64)| {
                if grouping[row] == grouping[column] { *variance } else { 0.0 }
            };
            v.set(row, column, groupings.iter().zip(at).map(both).sum());
        }
        v.add(row, row, at[k]);
    }
    let mut p = v.factor()?.factor_inverse();
    let sums: Vec<f64> = (0..n).map(|row| p.row(row).iter().sum()).collect();
    let all: f64 = sums.iter().sum();
    for row in 0..n {
        for column in 0..n {
            p.add(row, column, -sums[row] * sums[column] / all);
        }
    }
    let py = p.apply(values);
    // the columns of P added up by group; what is left has each reading as a group
    let single: Vec<usize> = (0..n).collect();
    let all: Vec<&[usize]> = groupings.iter().map(|one| one.as_slice()).chain([single.as_slice()]).collect();
    let groups: Vec<usize> = all.iter().map(|one| one.iter().max().map_or(0, |most| most + 1)).collect();
    let mut curve = Square::zero(k + 1);
    for (i, by) in all.iter().enumerate() {
        let mut columns = vec![0.0; n * groups[i]];
        for row in 0..n {
            for (column, value) in p.row(row).iter().enumerate() {
                columns[row * groups[i] + by[column]] += value;
            }
        }
        for (j, other) in all.iter().enumerate().take(i + 1) {
            let mut cells = vec![0.0; groups[j] * groups[i]];
            for row in 0..n {
                let into = &mut cells[other[row] * groups[i]..(other[row] + 1) * groups[i]];
                for (cell, value) in into.iter_mut().zip(&columns[row * groups[i]..]) {
                    *cell += value;
                }
            }
            let square = dot(&cells, &cells);
            curve.set(i, j, square);
            curve.set(j, i, square);
        }
    }
    let right = all.iter().zip(&groups).map(|(by, groups)| {
        let mut sums = vec![0.0; *groups];
        for (value, group) in py.iter().zip(*by) {
            sums[*group] += value;
        }
        dot(&sums, &sums)
    });
    let right = right.collect();
    Some((curve, right))
}

/// Variances that give the forms their expectation, none below zero, with their standard errors; nothing where none is left over.
fn scored(curve: &Square, right: &[f64]) -> Option<(Vec<f64>, Vec<Option<f64>>)> {
    let k = right.len();
    let mut free: Vec<usize> = (0..k).collect();
    loop {
        let mut own = Square::zero(free.len());
        for (row, &i) in free.iter().enumerate() {
            for (column, &j) in free.iter().enumerate() {
                own.set(row, column, curve.at(i, j));
            }
        }
        let lower = own.factor()?;
        let wanted: Vec<f64> = free.iter().map(|&at| right[at]).collect();
        let found = lower.factor_solve(&wanted);
        // what is left is never taken out: without it there is no error
        let lowest = (0..free.len().checked_sub(1)?).min_by(|a, b| found[*a].total_cmp(&found[*b]));
        if let Some(at) = lowest.filter(|at| found[*at] < 0.0) {
            free.remove(at);
            continue;
        }
        if found.last().is_none_or(|left| left.is_nan() || *left <= 0.0) {
            return None;
        }
        let inverse = lower.factor_inverse();
        let (mut variances, mut errors) = (vec![0.0; k], vec![None; k]);
        for (place, &at) in free.iter().enumerate() {
            variances[at] = found[place];
            errors[at] = Some(sqrt(2.0 * inverse.at(place, place)));
        }
        return Some((variances, errors));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Two readers of four lines each, never on the same line: a line's reader is known by the line, and by no other grouping. With each
    /// line read once, lines can't be told from what is left. A third grouping has one group.
    #[test]
    fn what_cannot_be_told_apart_is_said() {
        let values = [1.0, 2.0, 3.0, 5.0, 2.0, 4.0, 4.0, 7.0];
        let line: Vec<usize> = (0..8).collect();
        let reader: Vec<usize> = (0..8).map(|one| one / 4).collect();
        let found = sources(&values, &[line, reader.clone(), vec![0; 8], reader]).expect("taken apart");
        assert_eq!(found.of[0], Source::Mixed(vec![None]));
        assert!(matches!(found.of[1], Source::Told { .. }));
        assert_eq!(found.of[2], Source::OneGroup);
        assert_eq!(found.of[3], Source::Mixed(vec![Some(1)]));
    }

    #[test]
    fn what_is_alike_leaves_nothing() {
        assert_eq!(sources(&[2.0; 6], &[vec![0, 0, 0, 1, 1, 1]]), Err(NoSources::NothingLeft));
        assert_eq!(sources(&[1.0, 2.0], &[]), Err(NoSources::TooFew));
    }
}
