//! Cells of a row by column, and what they hold.

use super::{Options, Sheet};
use crate::headings::{Column, Heading};
use tautline_engine::length::{Bare, LengthError, Problem};
use tautline_survey::finding::{Finding, Place};
use tautline_survey::measure::{Measure, unit_words};
use tautline_survey::message::Message;
use tautline_survey::plan::Slope;

/// The name of the site where no file and no option names one.
const ONE_SITE: &str = "site";

/// One row of a sheet.
#[derive(Clone, Copy)]
pub(super) struct Row<'a> {
    pub(super) sheet: &'a Sheet,
    pub(super) number: u64,
    pub(super) cells: &'a [String],
}

impl<'a> Row<'a> {
    /// What stands in a column; empty where the column or the cell is missing.
    pub(super) fn text(&self, column: Column) -> &'a str {
        let at = self.sheet.headings.iter().position(|heading| heading.column == Some(column));
        at.and_then(|at| self.cells.get(at)).map_or("", String::as_str)
    }

    pub(super) fn some(&self, column: Column) -> Option<String> {
        let text = self.text(column);
        (!text.is_empty()).then(|| text.to_owned())
    }

    /// The site: the cell, else the option, else, where the file knows no sites at all, the one word for it.
    pub(super) fn site(&self, options: &Options) -> Option<String> {
        let has_column = self.sheet.headings.iter().any(|heading| heading.column == Some(Column::Site));
        self.some(Column::Site)
            .or_else(|| options.site.clone())
            .or_else(|| (!has_column).then(|| ONE_SITE.to_owned()))
    }

    pub(super) fn place(&self, column: Column) -> Place {
        self.sheet.place(self.number, Some(column))
    }

    /// A finding about a cell, with what was found in it.
    pub(super) fn about(&self, column: Column, code: &'static str) -> Finding {
        let message = Message::new(code).with("found", self.text(column)).with("column", column.heading());
        Finding::must_settle(message).at(self.place(column))
    }

    /// A slope: `Ok(None)` for an empty cell.
    pub(super) fn slope(&self) -> Result<Option<Slope>, Finding> {
        let text = self.text(Column::Slope);
        if text.is_empty() {
            return Ok(None);
        }
        let heading = self.sheet.headings.iter().find(|heading| heading.column == Some(Column::Slope));
        let unit = heading.and_then(|heading| heading.unit.as_deref());
        Slope::read(text, unit, self.sheet.mark)
            .map(Some)
            .ok_or_else(|| self.about(Column::Slope, "slope-not-understood"))
    }

    /// A length: `Ok(None)` for an empty cell.
    pub(super) fn length(&self, column: Column, options: &Options) -> Result<Option<Measure>, Finding> {
        let text = self.text(column);
        if text.is_empty() {
            return Ok(None);
        }
        let heading = self.sheet.headings.iter().find(|heading| heading.column == Some(column));
        let own = heading.and_then(Heading::bare);
        // a `unit` column speaks of the intercepts, not of the tape
        let of_row = match self.text(Column::Unit) {
            _ if column == Column::LineLength => None,
            "" => None,
            words => Some(Bare::from_words(words).ok_or_else(|| self.about(Column::Unit, "unit-not-known"))?),
        };
        let bare = own.or(of_row).or(options.unit);
        Measure::read(text, bare, self.sheet.mark)
            .map(Some)
            .map_err(|error| length_finding(&error, text, bare, column).at(self.place(column)))
    }
}

/// The words' code for a length that could not be read.
pub(super) fn length_finding(error: &LengthError, text: &str, bare: Option<Bare>, column: Column) -> Finding {
    let code = match error.problem {
        Problem::Empty => "length-empty",
        Problem::NotANumber => "length-not-a-number",
        Problem::UnknownUnit => "length-unknown-unit",
        Problem::NoUnit => "length-no-unit",
        Problem::Negative => "length-negative",
        Problem::FeetOrInches => "length-feet-or-inches",
        Problem::WhichOfFeetAndInches => "length-which-of-feet-and-inches",
        Problem::UnitsOutOfOrder => "length-units-out-of-order",
        Problem::PartTooLarge => "length-part-too-large",
        Problem::BadFraction => "length-bad-fraction",
        Problem::OtherDecimalMark => "length-other-decimal-mark",
        Problem::TooLong => "length-too-long",
    };
    Finding::must_settle(
        Message::new(code)
            .with("text", text)
            .with("at", error.at)
            .with("found", error.found.as_str())
            .with("column", column.heading())
            .with("unit", bare.map_or("", unit_words)),
    )
}
