//! Typed sheets in and out: a short text that a person types from a paper sheet as fast as they can read it.
//!
//! ```text
//! Site: Invented Flat
//! Date: 2026-06-09
//! Reader: Reader A
//! Unit: in
//!
//! Line 1, 65 ft
//! ATCA 12-40 1/2 48-55 d
//! KRLA 55-63 h 14
//!
//! Line 2, 65 ft
//! nothing
//! ```
//!
//! A sheet becomes rows of the same table that delimited text fills, so both are read by the same rules. The format is
//! described in `docs/typed-sheet.md`.

mod even;
mod excerpt;
mod head;
mod line;
mod print;
mod read;
mod row;
mod scan;
mod table;
#[cfg(test)]
mod tests;

pub use print::{Printed, print};
pub(crate) use table::{Says, TypedRow};

use crate::headings::{Column, heading};
use even::even;
use head::{Key, key_row};
use tautline_engine::length::{Bare, DecimalMark};
use tautline_survey::finding::Finding;

/// A sheet as rows of the table of readings, with what could not be read.
#[derive(Clone, Debug)]
pub(crate) struct TypedSheet {
    /// The rows as they were typed.
    text: Vec<String>,
    pub(crate) mark: DecimalMark,
    pub(crate) rows: Vec<TypedRow>,
    pub(crate) findings: Vec<Finding>,
    names_sites: bool,
}

impl TypedSheet {
    /// Reads a sheet; what the command was told about units and decimal mark holds where the sheet is silent.
    pub(crate) fn read(file: &str, text: &str, unit: Option<Bare>, mark: Option<DecimalMark>) -> Self {
        let rows: Vec<String> = text.lines().map(str::to_owned).collect();
        let mark = rows.iter().find_map(|row| own_mark(row)).or(mark).unwrap_or_default();
        let mut reader = read::Reader::new(file, mark, unit);
        for (number, row) in (1..).zip(&rows) {
            reader.row(number, row);
        }
        reader.finish();
        let names_sites = reader.rows.iter().any(|row| row.cell(Column::Site).is_some());
        Self { names_sites, mark, rows: reader.rows, findings: reader.findings, text: rows }
    }

    /// Whether a head names a site.
    pub(crate) const fn names_sites(&self) -> bool {
        self.names_sites
    }

    /// Shows the row of each finding that names a character of this sheet.
    pub(crate) fn show(&self, findings: &mut [Finding]) {
        for finding in findings {
            let Some(place) = &finding.place else { continue };
            let row = usize::try_from(place.row).ok().and_then(|row| self.text.get(row.wrapping_sub(1)));
            if let (Some(row), Some(character)) = (row, place.character) {
                finding.excerpt = Some(Box::new(excerpt::excerpt(row, character)));
            }
        }
    }
}

/// The decimal mark that a row states.
fn own_mark(row: &str) -> Option<DecimalMark> {
    // no other row begins with a d that soon
    let begins = row.trim_start().chars().next().is_some_and(|c| matches!(c, 'd' | 'D' | 'Ｄ' | 'ｄ'));
    if !begins {
        return None;
    }
    let even = even(&row.chars().collect::<Vec<_>>());
    let found = key_row(&even).filter(|found| found.key == Key::Decimal)?;
    read::decimal_mark(&even[found.value.0..found.value.1].iter().collect::<String>())
}

/// How many rows of a text are looked at to tell whether it is a sheet.
const ROWS_LOOKED_AT: usize = 30;

/// Whether a file is a typed sheet: by the ending `.sheet`, else by a head row or the row of a line among its first
/// rows, under no row of headings.
pub(crate) fn is_sheet(name: &str, text: &str) -> bool {
    let by_name = std::path::Path::new(name).extension().is_some_and(|e| e.eq_ignore_ascii_case("sheet"));
    let rows: Vec<String> = text
        .lines()
        .map(|row| row.chars().take(500).collect::<String>())
        .filter(|row| !row.trim().is_empty() && !row.trim_start().starts_with('#'))
        .take(ROWS_LOOKED_AT)
        .collect();
    let is_table = rows.iter().any(|row| {
        let cells: Vec<&str> = row.split([',', ';', '\t']).collect();
        let known = cells.iter().filter(|cell| !cell.contains(':') && heading(cell).column.is_some()).count();
        cells.len() > 1 && known > 0
    });
    by_name || (!is_table && rows.iter().any(|row| begins_sheet(row)))
}

fn begins_sheet(row: &str) -> bool {
    let even = even(&row.chars().collect::<Vec<_>>());
    key_row(&even).is_some_and(|found| matches!(found.key, Key::Of(_) | Key::Line | Key::Decimal))
}
