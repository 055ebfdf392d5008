//! Tables of check values as the tests read them: cells between bars, `#` before what explains them.

use std::fmt::Debug;

/// The rows of a table, each as its cells; panics where a row has another number of cells than `cells`.
pub(crate) fn rows(table: &str, cells: usize) -> Vec<Vec<&str>> {
    let rows: Vec<Vec<&str>> = table
        .lines()
        .filter(|line| !line.starts_with('#'))
        .map(|line| line.split('|').map(str::trim).collect::<Vec<_>>())
        .collect();
    assert!(!rows.is_empty(), "the table has no rows");
    for row in &rows {
        assert_eq!(row.len(), cells, "{row:?}");
    }
    rows
}

/// A number; "inf" is one too.
pub(crate) fn number(cell: &str) -> f64 {
    cell.trim().parse().unwrap_or_else(|_| panic!("not a number: {cell:?}"))
}

/// Numbers between blanks.
pub(crate) fn numbers(cell: &str) -> Vec<f64> {
    cell.split_whitespace().map(number).collect()
}

/// A count, or none where "-" stands.
pub(crate) fn count_or_none(cell: &str) -> Option<u64> {
    match cell.trim() {
        "-" => None,
        count => Some(count.parse().unwrap_or_else(|_| panic!("not a count: {count:?}"))),
    }
}

/// All rows that don't hold, at once.
#[derive(Default)]
pub(crate) struct Misses(Vec<String>);

impl Misses {
    /// The value must round to what is printed: within half a unit of the last printed digit. An exclamation mark
    /// after the printed figure says that its last digit is known to be wrong: then it must be one off.
    pub(crate) fn printed(&mut self, printed: &str, value: f64, row: &impl Debug) {
        let (printed, last_digit_wrong) = match printed.strip_suffix('!') {
            Some(printed) => (printed, true),
            None => (printed, false),
        };
        let places = printed.split_once('.').map_or(0, |(_, fraction)| fraction.len());
        let unit: f64 = format!("1e-{places}").parse().expect("a power of ten");
        // a little more than half, since the printed digits have no exact binary form
        let miss = (value - number(printed)).abs() - 1e-12 * number(printed).abs();
        let holds =
            if last_digit_wrong { 0.5 * unit < miss && miss < 1.5 * unit } else { miss <= 0.5 * unit };
        if !holds {
            self.0.push(format!("printed {printed}, worked out {value}: {row:?}"));
        }
    }

    /// The value must agree with another program's within a share of it.
    pub(crate) fn within(&mut self, relative: f64, expected: f64, value: f64, row: &impl Debug) {
        let miss = (value - expected).abs();
        self.holds(
            miss <= relative * expected.abs(),
            &format!("expected {expected}, worked out {value}: {row:?}"),
        );
    }

    /// What was looked at must hold.
    pub(crate) fn holds(&mut self, holds: bool, row: &impl Debug) {
        if !holds {
            self.0.push(format!("{row:?}"));
        }
    }

    /// Panics with every row that didn't hold.
    pub(crate) fn none(self) {
        assert!(self.0.is_empty(), "{} rows don't hold:\n{}", self.0.len(), self.0.join("\n"));
    }
}
