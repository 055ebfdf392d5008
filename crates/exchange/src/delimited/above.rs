//! What stands above the headings of a table: titles and remarks, as spreadsheets write them out.

use super::{Kind, Options};
use crate::headings::heading_under;
use crate::limits::{MOST_COLUMNS, ROWS_ABOVE_HEADINGS};
use crate::shown::short;
use crate::text;

/// Texts above the headings that are named.
const MOST_SHOWN: usize = 6;

/// A text cut apart above its headings.
pub(super) struct Above<'a> {
    /// What is said there, the first of it.
    pub(super) texts: Vec<String>,
    /// How many lines that is.
    pub(super) lines: usize,
    /// The headings and what is below them.
    pub(super) table: &'a str,
}

/// Cuts a text apart above the first line that heads a table that is known; nowhere, where none of the first does.
pub(super) fn above<'a>(text: &'a str, options: &Options) -> Above<'a> {
    let heads = |line: &str| {
        let cells = text::rows(line).rows.pop().map(|(_, cells)| cells).unwrap_or_default();
        let headings =
            cells.iter().take(MOST_COLUMNS).map(|cell| heading_under(&short(cell), &options.headings));
        Kind::of(&headings.collect::<Vec<_>>(), options) != Kind::Unknown
    };
    let lines = text.lines().take(ROWS_ABOVE_HEADINGS).position(heads).unwrap_or(0);
    let (above, table) = text.split_at(text.split_inclusive('\n').take(lines).map(str::len).sum());
    let cells = text::rows(above).rows.into_iter().flat_map(|(_, cells)| cells);
    let texts = cells.filter(|cell| !cell.is_empty()).take(MOST_SHOWN).map(|cell| short(&cell)).collect();
    Above { texts, lines, table }
}
