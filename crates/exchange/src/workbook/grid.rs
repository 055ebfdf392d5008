//! Cells as a spreadsheet holds them, and room for no more of them than a table could need.

use super::Refusal;
use crate::limits::{LARGEST_FILE, MOST_CELLS, MOST_COLUMNS, MOST_UNPACKED};
use std::collections::BTreeMap;
use std::ops::RangeInclusive;

/// What a cell holds. A spreadsheet keeps numbers and days as such, whatever was typed and however they are shown.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) enum Held {
    /// Nothing.
    #[default]
    Empty,
    /// Text, a word for true or false, or an error's sign.
    Text(Box<str>),
    /// A number.
    Number(f64),
    /// A number that is shown in per cent: 0.08 is 8 %.
    Share(f64),
    /// A day: year, month, day.
    Day(u16, u8, u8),
}

/// Cells that were made one, rows counted from 1 and columns from 0.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Merged {
    pub(super) rows: RangeInclusive<u64>,
    pub(super) columns: RangeInclusive<usize>,
}

/// One sheet of a workbook.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Grid {
    pub(super) name: String,
    /// Rows that hold anything, counted from 1.
    pub(super) rows: BTreeMap<u64, Vec<Held>>,
    pub(super) merged: Vec<Merged>,
}

impl Grid {
    pub(super) fn new(name: &str) -> Self {
        Self { name: name.to_owned(), ..Self::default() }
    }

    /// Puts a cell in its place, the row counted from 1 and the column from 0.
    pub(super) fn put(
        &mut self,
        row: u64,
        column: usize,
        held: Held,
        room: &mut Room,
    ) -> Result<(), Refusal> {
        if held == Held::Empty {
            return Ok(());
        }
        if column > MOST_COLUMNS {
            return Err("workbook-too-wide");
        }
        let cells = self.rows.entry(row).or_default();
        let wider = (column + 1).saturating_sub(cells.len());
        room.take(wider, &held)?;
        if wider > 0 {
            cells.resize(column + 1, Held::Empty);
        }
        if let Some(cell) = cells.get_mut(column) {
            *cell = held;
        }
        Ok(())
    }

    /// What stands at the head of merged rows stands in each of them, in the first of the merged columns.
    pub(super) fn fill_merged_rows(&mut self, room: &mut Room) -> Result<(), Refusal> {
        for merged in std::mem::take(&mut self.merged) {
            let (first, column) = (*merged.rows.start(), *merged.columns.start());
            let held = self.rows.get(&first).and_then(|cells| cells.get(column)).cloned().unwrap_or_default();
            if first < *merged.rows.end() && held != Held::Empty {
                let below: Vec<u64> =
                    self.rows.range(first + 1..=*merged.rows.end()).map(|(row, _)| *row).collect();
                for row in below {
                    room.take(1, &held)?;
                    self.put(row, column, held.clone(), room)?;
                }
            }
            self.merged.push(merged);
        }
        Ok(())
    }
}

/// How much more a file may hold; counted over all its sheets, and over all that is packed in a folder.
pub(crate) struct Room {
    cells: u64,
    text: u64,
    /// Bytes, once unpacked.
    pub(super) unpacked: u64,
}

impl Room {
    /// All there is for one file.
    pub(crate) const fn new() -> Self {
        Self { cells: MOST_CELLS, text: LARGEST_FILE, unpacked: MOST_UNPACKED }
    }

    /// One text that stands in a thousand cells is a thousand texts.
    fn take(&mut self, cells: usize, held: &Held) -> Result<(), Refusal> {
        let text = if let Held::Text(text) = held { text.len() } else { 0 };
        let less = |left: u64, taken: usize| left.checked_sub(taken as u64).ok_or("packed-too-large");
        self.cells = less(self.cells, cells)?;
        self.text = less(self.text, text)?;
        Ok(())
    }
}

/// Text as it is read: white space at its ends aside; nothing where nothing is left.
pub(super) fn text(text: &str) -> Held {
    let text = text.trim();
    if text.is_empty() { Held::Empty } else { Held::Text(text.into()) }
}
