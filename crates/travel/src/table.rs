//! A table that says of each column what it holds, in which unit, and what it hangs on.

use tautline_engine::num::decimal::shortest;
use tautline_survey::date::Date;

/// What the cells of a column hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Holds {
    /// Text.
    Text,
    /// One of these words.
    OneOf(&'static [&'static str]),
    /// A whole number.
    Whole,
    /// A number.
    Number,
    /// A number from nought.
    Amount,
    /// A day.
    Day,
    /// Yes or no.
    Yes,
}

/// One column.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Column {
    /// Its name.
    pub name: &'static str,
    /// What its cells hold.
    pub holds: Holds,
    /// The unit of its numbers, as the Unified Code for Units of Measure writes it; `1` for a share.
    pub unit: Option<&'static str>,
    /// Every row has it.
    pub needed: bool,
}

impl Column {
    pub(crate) const fn new(name: &'static str, holds: Holds) -> Self {
        Self { name, holds, unit: None, needed: false }
    }

    /// A number of a unit.
    pub(crate) const fn of(name: &'static str, unit: &'static str) -> Self {
        Self { name, holds: Holds::Amount, unit: Some(unit), needed: false }
    }

    /// The same, standing in every row.
    pub(crate) const fn needed(self) -> Self {
        Self { needed: true, ..self }
    }

    /// The key of its words in the catalogue.
    pub fn words(&self) -> String {
        format!("export-column-{}", self.name.replace('_', "-"))
    }
}

/// What stands in a cell.
#[derive(Clone, Debug, PartialEq)]
pub enum Cell {
    /// Nothing.
    Empty,
    /// Text.
    Text(String),
    /// A whole number.
    Whole(i64),
    /// A number.
    Number(f64),
    /// A day.
    Day(Date),
    /// Yes or no.
    Yes(bool),
}

impl Cell {
    /// Text, or nothing where it is empty.
    pub(crate) fn text(text: &str) -> Self {
        if text.is_empty() { Self::Empty } else { Self::Text(text.to_owned()) }
    }

    /// A count.
    pub(crate) fn count(count: usize) -> Self {
        Self::Whole(i64::try_from(count).unwrap_or(i64::MAX))
    }

    pub(crate) fn number(number: Option<f64>) -> Self {
        number.filter(|number| number.is_finite()).map_or(Self::Empty, Self::Number)
    }

    /// As it stands in text; numbers so that they read back to the same.
    pub fn written(&self) -> String {
        match self {
            Self::Empty => String::new(),
            Self::Text(text) => text.clone(),
            Self::Whole(number) => number.to_string(),
            Self::Number(number) => shortest(*number),
            Self::Day(date) => date.to_string(),
            Self::Yes(yes) => yes.to_string(),
        }
    }
}

/// Columns whose values stand in another table's columns.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Link {
    /// Here.
    pub columns: &'static [&'static str],
    /// The other table.
    pub table: &'static str,
    /// There.
    pub there: &'static [&'static str],
}

/// One table.
#[derive(Clone, Debug, PartialEq)]
pub struct Table {
    /// Its name, and that of its file without the ending.
    pub name: &'static str,
    /// Its columns.
    pub columns: Vec<Column>,
    /// What tells its rows apart.
    pub key: &'static [&'static str],
    /// What its rows hang on.
    pub links: &'static [Link],
    /// Its rows, each as long as the columns.
    pub rows: Vec<Vec<Cell>>,
}

impl Table {
    /// The key of its words in the catalogue.
    pub fn words(&self) -> String {
        format!("export-table-{}", self.name.replace('_', "-"))
    }
}
