//! What a typed sheet says as rows of the table of readings, each cell with its place on the sheet.

use crate::headings::Column;
use tautline_survey::finding::Finding;

/// A cell, and the row and character where it begins, both counted from 1.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Cell {
    pub(crate) text: String,
    pub(crate) row: u64,
    pub(crate) character: u32,
}

/// What a row of the sheet is about, beside its cells.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Says {
    /// An intercept.
    Reading,
    /// The line and how it was read, without an intercept.
    Line,
    /// A line that was laid out and not yet read.
    Plan,
    /// Something that could not be read; the line waits until it is settled.
    Fault(Box<Finding>),
    /// The same, where it has been said already.
    Broken,
}

/// A row of the table.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct TypedRow {
    pub(crate) number: u64,
    pub(crate) cells: Vec<(Column, Cell)>,
    pub(crate) says: Says,
    /// What was noted beside the readings, such as the wind.
    pub(crate) conditions: Vec<(String, String)>,
}

impl TypedRow {
    pub(super) const fn new(number: u64, cells: Vec<(Column, Cell)>, says: Says) -> Self {
        Self { number, cells, says, conditions: Vec::new() }
    }

    pub(crate) fn cell(&self, column: Column) -> Option<&Cell> {
        self.cells.iter().find(|(own, _)| *own == column).map(|(_, cell)| cell)
    }
}
