//! What is asked of a method, and who meets it.

use crate::table::Row;
use std::collections::BTreeMap;

/// At nominal 90 %, an interval is asked to hold the truth at least this often.
pub const LOWEST: f64 = 0.88;

/// And at most this often, for wider is not better.
pub const HIGHEST: f64 = 0.93;

/// The truth may lie beyond either end at most this often; nominal 5 %.
pub const TAIL: f64 = 0.07;

/// It is asked where a survey has this many lines or more …
pub const FEWEST_LINES: u32 = 8;

/// … and meets this many intercepts or more on average.
pub const FEWEST_INTERCEPTS: f64 = 25.0;

/// The method that the engine takes for cover unless asked for another.
pub const DEFAULT: &str = "logit-t-effective";

/// Whether the bar applies to a case.
pub fn applies(row: &Row) -> bool {
    row.lines >= FEWEST_LINES && row.intercepts >= FEWEST_INTERCEPTS
}

/// Whether a row keeps it.
pub fn keeps(row: &Row) -> bool {
    (LOWEST..=HIGHEST).contains(&row.coverage())
        && row.share(row.tally.below) <= TAIL
        && row.share(row.tally.above) <= TAIL
}

/// How one method did over many cases.
#[derive(Clone, Debug)]
pub struct Score<'a> {
    /// The method.
    pub method: &'a str,
    /// Its rows.
    pub rows: Vec<&'a Row>,
    /// Mean width as a multiple of the reference method's in the same case.
    pub width: f64,
}

impl Score<'_> {
    /// How many of its rows keep the bar.
    pub fn keeping(&self) -> usize {
        self.rows.iter().filter(|row| keeps(row)).count()
    }

    /// The row with the smallest of a figure.
    ///
    /// # Panics
    /// without any row, of which no score is made
    pub fn least(&self, of: impl Fn(&Row) -> f64) -> &Row {
        self.rows.iter().min_by(|a, b| of(a).total_cmp(&of(b))).expect("a score has rows")
    }

    /// The row with the largest of a figure.
    pub fn most(&self, of: impl Fn(&Row) -> f64) -> &Row {
        self.least(|row| -of(row))
    }

    /// The mean of a figure over its rows.
    pub fn mean(&self, of: impl Fn(&Row) -> f64) -> f64 {
        mean(self.rows.iter().map(|row| of(row)))
    }
}

fn mean(values: impl Iterator<Item = f64>) -> f64 {
    let (mut sum, mut n) = (0.0, 0.0);
    for value in values {
        sum += value;
        n += 1.0;
    }
    sum / n
}

/// The score of every method on the rows given, in the order in which the methods first stand there.
pub fn scores<'a>(rows: &[&'a Row], reference: &str) -> Vec<Score<'a>> {
    let key = |row: &Row| (row.set.clone(), row.clumping.clone(), row.cover, row.length.clone(), row.lines);
    let widths: BTreeMap<_, f64> =
        rows.iter().filter(|row| row.method == reference).map(|row| (key(row), row.width)).collect();
    let mut methods: Vec<&str> = Vec::new();
    for row in rows {
        if !methods.contains(&row.method.as_str()) {
            methods.push(&row.method);
        }
    }
    methods
        .into_iter()
        .map(|method| {
            let own: Vec<&Row> = rows.iter().copied().filter(|row| row.method == method).collect();
            let times = own.iter().filter_map(|row| {
                widths.get(&key(row)).filter(|&&width| width > 0.0).map(|width| row.width / width)
            });
            Score { method, width: mean(times), rows: own }
        })
        .collect()
}

/// Upper ends of the classes of intercepts, for surveys outside the bar; the last class is open.
pub const CLASSES: [f64; 4] = [3.0, 6.0, 12.0, 25.0];

/// Lowest and highest coverage of the default for so many lines and a class of expected intercepts; nothing where no
/// case falls there.
pub fn measured(rows: &[Row], lines: u32, class: usize) -> Option<(f64, f64)> {
    let from = if class == 0 { 0.0 } else { CLASSES[class - 1] };
    let below = CLASSES.get(class).copied().unwrap_or(f64::INFINITY);
    let found = rows.iter().filter(|row| {
        row.figure == "canopy"
            && row.method == DEFAULT
            && row.lines == lines
            && (from..below).contains(&row.intercepts)
    });
    let coverages: Vec<f64> = found.map(Row::coverage).collect();
    let least = coverages.iter().copied().reduce(f64::min)?;
    Some((least, coverages.iter().copied().fold(least, f64::max)))
}
