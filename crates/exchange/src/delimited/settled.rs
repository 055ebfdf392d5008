//! What persons looked at and found to be fine: one finding a row, by whom, and why.

use super::Sheet;
use super::cells::Row;
use crate::headings::Column;
use tautline_survey::check::{Settlement, kind};
use tautline_survey::date::Date;
use tautline_survey::finding::{Finding, Settled};
use tautline_survey::input::Input;

/// Takes in a table of settled findings. Rows that nobody has signed yet settle nothing.
pub(super) fn settled(sheet: &Sheet, input: &mut Input) {
    for row in sheet.rows().filter(|row| !row.text(Column::SettledBy).is_empty()) {
        match settlement(&row) {
            Ok(settlement) => input.settlements.push(settlement),
            Err(finding) => input.findings.push(finding),
        }
    }
}

fn settlement(row: &Row) -> Result<Settlement, Finding> {
    if kind(row.text(Column::Finding)).is_none() {
        return Err(row.about(Column::Finding, "finding-not-known"));
    }
    if row.text(Column::Reason).is_empty() {
        return Err(row.about(Column::Reason, "reason-missing"));
    }
    if [Column::Site, Column::Line, Column::File].iter().all(|&column| row.text(column).is_empty()) {
        return Err(row.about(Column::Finding, "settled-where"));
    }
    let date = |column| match row.text(column) {
        "" => Ok(None),
        text => Date::read(text).map(Some).ok_or_else(|| row.about(column, "date-not-understood")),
    };
    let number = match row.text(Column::Row) {
        "" => None,
        text => Some(text.parse().map_err(|_| row.about(Column::Row, "row-not-a-number"))?),
    };
    let text = |column| row.text(column).to_owned();
    Ok(Settlement {
        code: text(Column::Finding),
        site: text(Column::Site),
        line: text(Column::Line),
        date: date(Column::Date)?,
        species: text(Column::Species).to_uppercase(),
        file: text(Column::File),
        row: number,
        settled: Settled {
            by: text(Column::SettledBy),
            on: date(Column::SettledOn)?,
            reason: text(Column::Reason),
        },
        place: row.sheet.place(row.number, None),
    })
}
