//! Sheets of a workbook as tables: what cells said before a spreadsheet changed them.
//!
//! A spreadsheet takes `1/2` for a day, `MAR4` too, and keeps only the day. A fraction of a tape's divisions can be told
//! from it, in whichever order the office writes its days, since only one order makes less than a whole. A name can't, nor can
//! what may have been feet and inches (`5-8`) or a whole number with its fraction (`2-1/2`).

use super::grid::{Grid, Held};
use super::headings::{self, Headings};
use crate::delimited::{Kind, ONE_SITE, Options, Sheet, decimal_mark};
use crate::headings::{Column, Heading, heading};
use crate::shown::short;
use tautline_engine::length::{Bare, DecimalMark, Unit};
use tautline_survey::finding::{About, Finding, Place};
use tautline_survey::message::Message;

/// The parts into which a tape is divided between whole units.
const DIVISIONS: [u8; 4] = [2, 4, 8, 16];

/// The years that a spreadsheet makes of `/2`, `/4`, `/8` and `/16` behind a whole number: `2-1/2` is 1 February 2002, or
/// 2 January. From memory of how spreadsheets read two-figure years; whoever is wrong here is asked to look, not misread.
const YEARS_OF_MIXED_NUMBERS: [u16; 4] = [2002, 2004, 2008, 2016];

/// Texts above the headings that are shown.
const MOST_SHOWN: usize = 6;

/// Columns that hold lengths, in which a day can only be a fraction that was changed.
const LENGTHS: [Column; 7] = [
    Column::Start,
    Column::Stop,
    Column::Length,
    Column::LineLength,
    Column::ReadTo,
    Column::Height,
    Column::Width,
];

/// Columns that hold names and codes, in which a day is something else that was changed.
const NAMES: [Column; 13] = [
    Column::Site,
    Column::Line,
    Column::Stratum,
    Column::Plot,
    Column::Pass,
    Column::Species,
    Column::Plant,
    Column::Protocol,
    Column::Code,
    Column::Name,
    Column::CommonName,
    Column::Groups,
    Column::KeyFeatures,
];

/// The sheets of a workbook as tables. Sheets of another kind are named, and so is a workbook that has no other.
pub(crate) fn all(
    file: &str,
    grids: Vec<Grid>,
    options: &Options,
    findings: &mut Vec<Finding>,
) -> Vec<Sheet> {
    let mut sheets = Vec::new();
    let mut others = Vec::new();
    for grid in grids.into_iter().filter(|grid| !grid.rows.is_empty()) {
        match headings::find(&grid, options) {
            Some(found) => {
                sheets.push(table(format!("{file}: {}", grid.name), grid, found, options, findings));
            }
            None => others.push(short(&grid.name)),
        }
    }
    if sheets.is_empty() {
        findings.push(Finding::must_settle(
            Message::new("workbook-not-understood").with("file", file).with("found", others),
        ));
    } else if !others.is_empty() {
        findings
            .push(Finding::note(Message::new("sheets-left-out").with("file", file).with("found", others)));
    }
    sheets
}

/// One sheet below its headings.
fn table(
    name: String,
    mut grid: Grid,
    found: Headings,
    options: &Options,
    findings: &mut Vec<Finding>,
) -> Sheet {
    let Headings { row, all: mut headings, kind, above } = found;
    name_what_stands_above(&name, &grid, &above, findings);
    let below = grid.rows.split_off(&(row + 1));
    head_every_column(&mut headings, below.values());
    let texts = below
        .values()
        .flatten()
        .filter_map(|held| if let Held::Text(text) = held { Some(&**text) } else { None });
    let mark = options.mark.unwrap_or_else(|| decimal_mark(';', &texts));
    let mut rows = Vec::new();
    for (number, cells) in below {
        let unit = row_unit(&headings, &cells);
        let mut reading = Reading {
            name: &name,
            number,
            headings: &headings,
            unit,
            options,
            changed: Vec::new(),
            lost: false,
        };
        let cells: Vec<String> =
            cells.into_iter().enumerate().map(|(at, held)| reading.text(at, held, mark)).collect();
        let (changed, lost) = (reading.changed, reading.lost);
        let of_a_line = matches!(kind, Kind::Readings | Kind::Lines);
        let about = of_a_line.then(|| about(&headings, &cells, options));
        findings.extend(changed.into_iter().map(|finding| match &about {
            Some(about) => finding.about(about.clone()),
            None => finding,
        }));
        if !lost {
            rows.push((number, cells));
        }
    }
    Sheet::under(name, kind, (row, headings), rows, mark)
}

fn name_what_stands_above(name: &str, grid: &Grid, above: &[u64], findings: &mut Vec<Finding>) {
    let cells = above.iter().filter_map(|row| grid.rows.get(row)).flatten();
    let texts = cells.filter_map(|held| if let Held::Text(text) = held { Some(short(text)) } else { None });
    let found: Vec<String> = texts.take(MOST_SHOWN).collect();
    if let Some(&row) = above.first().filter(|_| !found.is_empty()) {
        let place = Place { file: name.to_owned(), row, column: None, character: None };
        findings.push(Finding::note(Message::new("rows-above-headings").with("found", found)).at(place));
    }
}

/// A column without a heading that holds anything goes by its letter.
fn head_every_column<'a>(headings: &mut Vec<Heading>, rows: impl Iterator<Item = &'a Vec<Held>>) {
    let widest = rows.map(Vec::len).max().unwrap_or_default();
    if headings.len() < widest {
        headings.resize_with(widest, || heading(""));
    }
    for (at, one) in headings.iter_mut().enumerate().filter(|(_, one)| one.text.is_empty()) {
        one.text = letters(at);
    }
}

/// The letters over a column: A to Z, AA and on.
fn letters(at: usize) -> String {
    let last = char::from(b'A' + u8::try_from(at % 26).unwrap_or_default());
    let before = if at < 26 { String::new() } else { letters(at / 26 - 1) };
    before + &last.to_string()
}

/// What the row's own `unit` says of its bare numbers.
fn row_unit(headings: &[Heading], cells: &[Held]) -> Option<Bare> {
    let at = headings.iter().position(|heading| heading.column == Some(Column::Unit))?;
    match cells.get(at)? {
        Held::Text(text) => Bare::from_words(text),
        _ => None,
    }
}

/// Which line a row is about, by its cells alone.
fn about(headings: &[Heading], cells: &[String], options: &Options) -> About {
    let text = |column| {
        let at = headings.iter().position(|heading| heading.column == Some(column));
        at.and_then(|at| cells.get(at)).filter(|text| !text.is_empty()).cloned()
    };
    let site = text(Column::Site).or_else(|| options.site.clone()).unwrap_or_else(|| ONE_SITE.to_owned());
    About { site, line: text(Column::Line).unwrap_or_default(), ..About::default() }
}

/// A row whose cells become text.
struct Reading<'a> {
    name: &'a str,
    number: u64,
    headings: &'a [Heading],
    unit: Option<Bare>,
    options: &'a Options,
    /// What is said of cells that a spreadsheet changed.
    changed: Vec<Finding>,
    /// Whether a name was lost, so that nobody knows what the row is about.
    lost: bool,
}

impl Reading<'_> {
    fn text(&mut self, at: usize, held: Held, mark: DecimalMark) -> String {
        match held {
            Held::Empty => String::new(),
            Held::Text(text) => text.into(),
            Held::Number(number) => decimal(number, mark),
            Held::Share(share) => format!("{} %", decimal(share * 100.0, mark)),
            Held::Day(year, month, day) => self.day(at, year, month, day),
        }
    }

    fn day(&mut self, at: usize, year: u16, month: u8, day: u8) -> String {
        let written = format!("{year:04}-{month:02}-{day:02}");
        let column = self.headings.get(at).and_then(|heading| heading.column);
        let is_of = |columns: &[Column]| column.is_some_and(|column| columns.contains(&column));
        if is_of(&LENGTHS) {
            let (part, whole) = (month.min(day), month.max(day));
            let is_mixed = YEARS_OF_MIXED_NUMBERS.contains(&year);
            if part < whole && DIVISIONS.contains(&whole) && !is_mixed && self.has_no_feet(at) {
                let fraction = format!("{part}/{whole}");
                let message =
                    Message::new("day-was-a-fraction").with("found", written).with("read", fraction.as_str());
                self.say(at, Finding::have_a_look(message));
                return fraction;
            }
            // the day is left where it stands, and the row refused where its lengths are read
            self.say(at, Finding::note(Message::new("day-not-a-length").with("found", written.as_str())));
        } else if is_of(&NAMES) {
            self.lost = true;
            self.say(
                at,
                Finding::must_settle(Message::new("day-was-a-name").with("found", written.as_str())),
            );
        }
        written
    }

    /// Whether bare numbers of the column are of a unit in which nobody writes feet and inches with a line between them.
    fn has_no_feet(&self, at: usize) -> bool {
        let own = self.headings.get(at).and_then(Heading::bare);
        let unit = own.or(self.unit).or(self.options.unit);
        unit.is_some_and(|unit| {
            !matches!(unit, Bare::Unit(Unit::Foot) | Bare::DecimalFeet | Bare::FeetAndInches)
        })
    }

    fn say(&mut self, at: usize, finding: Finding) {
        let column = self.headings.get(at).map(|heading| heading.text.clone());
        let place = Place { file: self.name.to_owned(), row: self.number, column, character: None };
        self.changed.push(finding.at(place));
    }
}

/// A number with at most fifteen digits that count, as a spreadsheet shows it: sums of tenths are kept with an error behind
/// them.
fn decimal(number: f64, mark: DecimalMark) -> String {
    let shown: f64 = format!("{number:.14e}").parse().unwrap_or(number);
    let text = shown.to_string();
    match mark {
        DecimalMark::Comma => text.replace('.', ","),
        DecimalMark::Point => text,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_as_a_spreadsheet_shows_them() {
        assert_eq!(decimal(0.1 + 0.2, DecimalMark::Point), "0.3");
        assert_eq!(decimal(12.5, DecimalMark::Comma), "12,5");
        assert_eq!(decimal(4.0, DecimalMark::Point), "4");
        assert_eq!(decimal(0.000_012_5, DecimalMark::Point), "0.0000125");
    }

    #[test]
    fn columns_by_letter() {
        let found: Vec<String> = [0, 25, 26, 27, 701, 702].into_iter().map(letters).collect();
        assert_eq!(found, ["A", "Z", "AA", "AB", "ZZ", "AAA"]);
    }
}
