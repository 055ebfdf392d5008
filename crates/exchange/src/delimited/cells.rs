//! Cells of a row by column, and what they hold.

use super::{Options, Sheet};
use crate::headings::{Column, Heading};
use crate::sheet::TypedRow;
use tautline_engine::length::{Bare, LengthError, Problem};
use tautline_survey::date::Date;
use tautline_survey::finding::{Finding, Place};
use tautline_survey::measure::{Measure, unit_words};
use tautline_survey::message::Message;
use tautline_survey::plan::{Permission, Slope};

/// The name of the site where no file and no option names one.
pub(crate) const ONE_SITE: &str = "site";

/// One row of a sheet.
#[derive(Clone, Copy)]
pub(super) struct Row<'a> {
    pub(super) sheet: &'a Sheet,
    pub(super) number: u64,
    pub(super) cells: &'a [String],
    /// The row of a typed sheet, whose cells know their own places.
    pub(super) typed: Option<&'a TypedRow>,
}

/// A day whose parts stand in an order that somebody said; the year in four digits.
fn in_order(text: &str, order: &str) -> Option<Date> {
    let mut letters: Vec<char> = order.to_lowercase().chars().filter(char::is_ascii_alphabetic).collect();
    letters.dedup();
    let parts: Vec<&str> = text.split(['/', '.', '-']).map(str::trim).collect();
    let part = |letter| parts.get(letters.iter().position(|own| *own == letter)?).copied();
    let year = part('y').filter(|year| year.len() == 4 && letters.len() == 3 && parts.len() == 3)?;
    Date::new(year.parse().ok()?, part('m')?.parse().ok()?, part('d')?.parse().ok()?)
}

impl<'a> Row<'a> {
    /// What stands in a column; empty where the column or the cell is missing.
    pub(super) fn text(&self, column: Column) -> &'a str {
        if let Some(typed) = self.typed {
            return typed.cell(column).map_or("", |cell| cell.text.as_str());
        }
        let at = self.sheet.headings.iter().position(|heading| heading.column == Some(column));
        at.and_then(|at| self.cells.get(at)).map_or("", String::as_str)
    }

    pub(super) fn some(&self, column: Column) -> Option<String> {
        let text = self.text(column);
        (!text.is_empty()).then(|| text.to_owned())
    }

    /// The site: the cell, else the option, else, where the file knows no sites at all, the one word for it.
    pub(super) fn site(&self, options: &Options) -> Option<String> {
        let has_column = self.sheet.names_sites();
        self.some(Column::Site)
            .or_else(|| options.site.clone())
            .or_else(|| (!has_column).then(|| ONE_SITE.to_owned()))
    }

    pub(super) fn place(&self, column: Column) -> Place {
        let Some(typed) = self.typed else { return self.sheet.place(self.number, Some(column)) };
        let column_text = Some(column.heading().to_owned());
        match typed.cell(column) {
            Some(cell) => Place {
                row: cell.row,
                column: column_text,
                character: Some(cell.character),
                ..self.sheet.place(cell.row, None)
            },
            None => Place { column: column_text, ..self.sheet.place(self.number, None) },
        }
    }

    /// Where the row itself stands, or the stretch on it where there are several.
    pub(super) fn own_place(&self) -> Place {
        let place = self.sheet.place(self.number, None);
        let stretch = [Column::Start, Column::Length].into_iter().find_map(|column| self.typed?.cell(column));
        Place { character: stretch.map(|cell| cell.character), ..place }
    }

    /// A finding about a cell, with what was found in it.
    pub(super) fn about(&self, column: Column, code: &'static str) -> Finding {
        let message = Message::new(code).with("found", self.text(column)).with("column", column.heading());
        Finding::must_settle(message).at(self.place(column))
    }

    /// The day of the reading: year, month and day, or the parts in the order that the heading names, such as “date (m/d/y)”.
    pub(super) fn date(&self) -> Option<Date> {
        let text = self.text(Column::Date);
        let heading = self.sheet.headings.iter().find(|heading| heading.column == Some(Column::Date));
        let order = heading.and_then(|heading| heading.unit.as_deref());
        Date::read(text).or_else(|| in_order(text, order?))
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

    /// Permission to enter: `Ok(None)` where both cells are empty. The word `needed` says that nobody has given it.
    pub(super) fn permission(&self) -> Result<Option<Permission>, Finding> {
        let until = match self.text(Column::PermissionUntil) {
            "" => None,
            text => {
                let found = Message::new("permission-until-not-understood").with("found", text);
                let look = || Finding::have_a_look(found).at(self.place(Column::PermissionUntil));
                Some(Date::read(text).ok_or_else(look)?)
            }
        };
        match self.text(Column::PermissionFrom) {
            "" if until.is_some() => {
                let message = Message::new("permission-from-missing");
                Err(Finding::have_a_look(message).at(self.place(Column::PermissionFrom)))
            }
            "" => Ok(None),
            needed if needed.eq_ignore_ascii_case("needed") => {
                Ok(Some(Permission { from: String::new(), until: None }))
            }
            from => Ok(Some(Permission { from: from.to_owned(), until })),
        }
    }

    /// A length: `Ok(None)` for an empty cell.
    pub(super) fn length(&self, column: Column, options: &Options) -> Result<Option<Measure>, Finding> {
        let text = self.text(column);
        if text.is_empty() {
            return Ok(None);
        }
        let heading = self.sheet.headings.iter().find(|heading| heading.column == Some(column));
        let own = heading.and_then(Heading::bare);
        let units: &[Column] = match column {
            // a `unit` column speaks of the intercepts, not of the tape
            Column::LineLength => &[],
            Column::Height | Column::Width => &[Column::HeightUnit, Column::Unit],
            _ => &[Column::Unit],
        };
        let of_row = match units.iter().find(|&&unit| !self.text(unit).is_empty()) {
            None => None,
            Some(&unit) => {
                let words = Bare::from_words(self.text(unit));
                Some(words.ok_or_else(|| self.about(unit, "unit-not-known"))?)
            }
        };
        let bare = own.or(of_row).or(options.unit);
        Measure::read(text, bare, self.sheet.mark).map(Some).map_err(|error| {
            if self.typed.is_some() {
                return self.typed_length_finding(&error, text, column);
            }
            length_finding(&error, text, bare, column).at(self.place(column))
        })
    }

    /// The same on a typed sheet, at the character and with what can be done there.
    fn typed_length_finding(&self, error: &LengthError, text: &str, column: Column) -> Finding {
        let mut place = self.place(column);
        let behind = u32::try_from(error.at.saturating_sub(1)).unwrap_or(u32::MAX);
        let at = place.character.map(|begin| begin.saturating_add(behind));
        place.character = at;
        let code = match error.problem {
            Problem::NoUnit if column == Column::LineLength => "sheet-tape-no-unit",
            Problem::NoUnit => "sheet-no-unit",
            Problem::FeetOrInches => "sheet-feet-or-inches",
            Problem::OtherDecimalMark => "sheet-decimal-mark",
            ref other => length_code(other),
        };
        let error = LengthError { at: at.map_or(error.at, |at| at as usize), ..error.clone() };
        let general = length_finding(&error, text, None, column);
        Finding::must_settle(Message { code, ..general.message }).at(place)
    }
}

/// The words' code for what is wrong with a length.
fn length_code(problem: &Problem) -> &'static str {
    match problem {
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
    }
}

/// The words for a length that could not be read.
pub(super) fn length_finding(error: &LengthError, text: &str, bare: Option<Bare>, column: Column) -> Finding {
    Finding::must_settle(
        Message::new(length_code(&error.problem))
            .with("text", text)
            .with("at", error.at)
            .with("found", error.found.as_str())
            .with("column", column.heading())
            .with("unit", bare.map_or("", unit_words)),
    )
}
