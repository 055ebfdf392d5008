//! How much of what differs lies in the lines and how much in the readers: intraclass correlation.
//!
//! Reported, never pass or fail: lines that are alike force it down, however well the readers agree.

use crate::num::quantile::f_quantile;
use crate::num::{count, sum::sum};

/// Which readers the figure is about, as Shrout and Fleiss name the forms.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// ICC(1): each line was read by other readers.
    OneWay,
    /// ICC(2): all lines were read by the same readers, who stand for others; they must agree.
    Agreement,
    /// ICC(3): all lines were read by these readers and no others matter; it is enough that they rank lines alike.
    Consistency,
}

/// Whose readings the figure is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Of {
    /// One reader's.
    OneReader,
    /// The mean of all who read.
    Mean,
}

/// Mean squares of a table of lines by readers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeanSquares {
    /// Between lines.
    pub lines: f64,
    /// Within lines.
    pub within: f64,
    /// Between readers.
    pub readers: f64,
    /// What is left.
    pub left: f64,
    /// Number of lines.
    pub n: f64,
    /// Number of readers.
    pub k: f64,
}

/// Why there are no mean squares.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoTable {
    /// Fewer than two lines or two readers.
    TooSmall,
    /// A line wasn't read by every reader.
    Holes {
        /// Which line, counted from 0.
        line: usize,
    },
}

/// Takes a table apart: one row a line, one column a reader.
///
/// # Errors
/// Fewer than two of either, or a row of another length than the first.
///
/// # Source
/// Shrout and Fleiss 1979, Psychological Bulletin 86:420–428
///
/// # Example
/// Their table 2: six targets, four judges; ICC(2,1) = 0.29.
/// ```
/// use tautline_engine::agreement::reliability::{Form, Of, mean_squares};
/// let table = [
///     [9., 2., 5., 8.], [6., 1., 3., 2.], [8., 4., 6., 8.], [7., 1., 2., 6.], [10., 5., 6., 9.], [6., 2., 4., 7.],
/// ];
/// let squares = mean_squares(&table.map(Vec::from)).unwrap();
/// assert!((squares.reliability(Form::Agreement, Of::OneReader) - 0.29).abs() < 0.005);
/// ```
pub fn mean_squares(table: &[Vec<f64>]) -> Result<MeanSquares, NoTable> {
    let columns = table.first().map_or(0, Vec::len);
    if table.len() < 2 || columns < 2 {
        return Err(NoTable::TooSmall);
    }
    if let Some(line) = table.iter().position(|row| row.len() != columns) {
        return Err(NoTable::Holes { line });
    }
    let (n, k) = (count(table.len()), count(columns));
    let grand = sum(table.iter().flatten().copied()) / (n * k);
    let row_means: Vec<f64> = table.iter().map(|row| sum(row.iter().copied()) / k).collect();
    let column_means: Vec<f64> = (0..columns).map(|at| sum(table.iter().map(|row| row[at])) / n).collect();
    let square = |x: f64| x * x;
    let between_lines = k * sum(row_means.iter().map(|mean| square(mean - grand)));
    let between_readers = n * sum(column_means.iter().map(|mean| square(mean - grand)));
    let within = sum(table
        .iter()
        .zip(&row_means)
        .flat_map(|(row, mean)| row.iter().map(move |value| square(value - mean))));
    // worked out by itself, since within less readers loses digits
    let left = sum(table.iter().zip(&row_means).flat_map(|(row, mean)| {
        row.iter().zip(&column_means).map(move |(value, column)| square(value - mean - column + grand))
    }));
    Ok(MeanSquares {
        lines: between_lines / (n - 1.0),
        within: within / (n * (k - 1.0)),
        readers: between_readers / (k - 1.0),
        left: left / ((n - 1.0) * (k - 1.0)),
        n,
        k,
    })
}

impl MeanSquares {
    /// The intraclass correlation.
    ///
    /// With B, W, J, E the mean squares between lines, within them, between readers and left: ICC(1,1) = (B − W)/(B +
    /// (k−1)W); ICC(2,1) = (B − E)/(B + (k−1)E + k(J − E)/n); ICC(3,1) = (B − E)/(B + (k−1)E); of means (B − W)/B, (B −
    /// E)/(B + (J − E)/n), (B − E)/B.
    ///
    /// # Range
    /// At most 1; below zero where lines differ less than chance would have them; not a number where nothing differs.
    ///
    /// # Source
    /// Shrout and Fleiss 1979
    pub fn reliability(&self, form: Form, of: Of) -> f64 {
        let Self { lines, within, readers, left, n, k } = *self;
        match (form, of) {
            (Form::OneWay, Of::OneReader) => (lines - within) / (lines + (k - 1.0) * within),
            (Form::OneWay, Of::Mean) => (lines - within) / lines,
            (Form::Agreement, Of::OneReader) => {
                (lines - left) / (lines + (k - 1.0) * left + k * (readers - left) / n)
            }
            (Form::Agreement, Of::Mean) => (lines - left) / (lines + (readers - left) / n),
            (Form::Consistency, Of::OneReader) => (lines - left) / (lines + (k - 1.0) * left),
            (Form::Consistency, Of::Mean) => (lines - left) / lines,
        }
    }

    /// Its interval.
    ///
    /// # Range
    /// Not a number where nothing is left to compare with.
    ///
    /// # Source
    /// Shrout and Fleiss 1979; for means of agreement the ends of one reader stepped up by Spearman and Brown's formula
    pub fn interval(&self, form: Form, of: Of, confidence: f64) -> (f64, f64) {
        let Self { lines, within, left, n, k, .. } = *self;
        let below = f64::midpoint(1.0, confidence);
        let (low, high) = match form {
            Form::OneWay => self.by_ratio(lines / within, n * (k - 1.0), below),
            Form::Consistency => self.by_ratio(lines / left, (n - 1.0) * (k - 1.0), below),
            Form::Agreement => self.of_agreement(below),
        };
        let stepped_up = |one: f64| k * one / (1.0 + (k - 1.0) * one);
        match of {
            Of::OneReader => (low, high),
            Of::Mean => (stepped_up(low), stepped_up(high)),
        }
    }

    fn by_ratio(&self, ratio: f64, df: f64, below: f64) -> (f64, f64) {
        let lines = self.n - 1.0;
        let end = |f: f64| (f - 1.0) / (f + self.k - 1.0);
        (end(ratio / f_quantile(below, lines, df)), end(ratio * f_quantile(below, df, lines)))
    }

    fn of_agreement(&self, below: f64) -> (f64, f64) {
        let Self { lines: b, readers: j, left: e, n, k, .. } = *self;
        let rho = self.reliability(Form::Agreement, Of::OneReader);
        let f = j / e;
        let rest = n * (1.0 + (k - 1.0) * rho) - k * rho;
        let sum = k * rho * f + rest;
        let df = (k - 1.0) * (n - 1.0) * sum * sum / ((n - 1.0) * k * k * rho * rho * f * f + rest * rest);
        let (upper, lower) = (f_quantile(below, n - 1.0, df), f_quantile(below, df, n - 1.0));
        let others = k * j + (k * n - k - n) * e;
        (n * (b - upper * e) / (upper * others + n * b), n * (lower * b - e) / (others + n * lower * b))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Shrout and Fleiss 1979, table 2 to 4: mean squares, the six forms; intervals as the psych package prints them
    /// (0.95; mean squares and intervals from memory).
    #[test]
    fn six_targets_and_four_judges() {
        let table = [
            [9., 2., 5., 8.],
            [6., 1., 3., 2.],
            [8., 4., 6., 8.],
            [7., 1., 2., 6.],
            [10., 5., 6., 9.],
            [6., 2., 4., 7.],
        ];
        let squares = mean_squares(&table.map(Vec::from)).unwrap();
        for (found, printed) in
            [(squares.lines, 11.24), (squares.within, 6.26), (squares.readers, 32.49), (squares.left, 1.02)]
        {
            assert!((found - printed).abs() < 0.005, "{found} {printed}");
        }
        let printed = [
            (Form::OneWay, Of::OneReader, 0.17, -0.13, 0.72),
            (Form::Agreement, Of::OneReader, 0.29, 0.02, 0.76),
            (Form::Consistency, Of::OneReader, 0.71, 0.34, 0.95),
            (Form::OneWay, Of::Mean, 0.44, -0.88, 0.91),
            (Form::Agreement, Of::Mean, 0.62, 0.07, 0.93),
            (Form::Consistency, Of::Mean, 0.91, 0.68, 0.99),
        ];
        for (form, of, icc, low, high) in printed {
            let found = squares.reliability(form, of);
            let ends = squares.interval(form, of, 0.95);
            assert!((found - icc).abs() < 0.0051, "{form:?} {of:?} {found}");
            assert!(
                (ends.0 - low).abs() < 0.0051 && (ends.1 - high).abs() < 0.0051,
                "{form:?} {of:?} {ends:?}"
            );
        }
    }

    #[test]
    fn holes_are_named() {
        assert_eq!(mean_squares(&[vec![1.0, 2.0], vec![1.0]]), Err(NoTable::Holes { line: 1 }));
        assert_eq!(mean_squares(&[vec![1.0, 2.0]]), Err(NoTable::TooSmall));
    }
}
