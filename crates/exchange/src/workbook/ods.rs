//! OpenDocument spreadsheets, read cell by cell: a cell may say that it stands a million times, so that what it stands for
//! is counted before it is written out.
//!
//! # Source
//! ISO/IEC 26300-1:2015 (OpenDocument 1.2), 9.1 tables and 19.385 `office:value-type`

use super::Refusal;
use super::grid::{self, Grid, Held, Merged, Room};
use super::packed::{self, Archive};
use quick_xml::events::{BytesStart, Event};
use quick_xml::{Reader, XmlVersion};
use std::borrow::Cow;
use tautline_survey::date::Date;

/// The sheets of a workbook.
pub(super) fn grids(archive: &mut Archive, room: &mut Room) -> Result<Vec<Grid>, Refusal> {
    let content = String::from_utf8(packed::part(archive, "content.xml")?).map_err(|_| "workbook-damaged")?;
    let mut walk = Walk::new(room);
    let mut reader = Reader::from_str(&content);
    loop {
        match reader.read_event().map_err(|_| "workbook-damaged")? {
            // a document type is where entities are made up, and no spreadsheet writes one
            Event::DocType(_) => return Err("workbook-damaged"),
            Event::Start(element) => walk.begin(&element)?,
            Event::Empty(element) => {
                walk.begin(&element)?;
                walk.end(element.name().as_ref())?;
            }
            Event::End(element) => walk.end(element.name().as_ref())?,
            Event::Text(text) => walk.say(&text.xml10_content()),
            Event::CData(text) => walk.say(&text.xml10_content()),
            Event::GeneralRef(reference) => walk.say(&entity(&reference)?),
            Event::Eof => break,
            _ => {}
        }
    }
    // a whole document ends outside of every table
    if walk.grid.is_some() { Err("workbook-damaged") } else { Ok(walk.grids) }
}

/// One character by its number, or one of the five that XML names (XML 1.0, 4.6).
fn entity(reference: &quick_xml::events::BytesRef) -> Result<String, Refusal> {
    if let Some(character) = reference.resolve_char_ref().map_err(|_| "workbook-damaged")? {
        return Ok(character.to_string());
    }
    let named = quick_xml::escape::resolve_predefined_entity(reference.as_ref());
    named.map(str::to_owned).ok_or("workbook-damaged")
}

/// Where in the document the reading stands.
struct Walk<'a> {
    grids: Vec<Grid>,
    grid: Option<Grid>,
    room: &'a mut Room,
    row: u64,
    row_repeated: u64,
    column: usize,
    /// The cells of this row that hold anything, each with its first column and how often it stands.
    cells: Vec<(usize, usize, Held)>,
    cell: Option<Cell>,
    /// Within a remark beside a cell, which is no part of what the cell says.
    remarks: u32,
}

/// A cell that is being read.
struct Cell {
    value: Held,
    text: String,
    paragraphs: u32,
    repeated: usize,
}

impl<'a> Walk<'a> {
    const fn new(room: &'a mut Room) -> Self {
        Self {
            grids: Vec::new(),
            grid: None,
            room,
            row: 0,
            row_repeated: 1,
            column: 0,
            cells: Vec::new(),
            cell: None,
            remarks: 0,
        }
    }

    fn begin(&mut self, element: &BytesStart) -> Result<(), Refusal> {
        match element.name().as_ref() {
            "table:table" if self.grid.is_none() => {
                self.grid = Some(Grid::new(&attribute(element, "table:name")?.unwrap_or_default()));
                self.row = 0;
            }
            "table:table-row" => {
                self.row_repeated = count(element, "table:number-rows-repeated")?;
                self.row += 1;
                self.column = 0;
                self.cells.clear();
            }
            "table:table-cell" | "table:covered-table-cell" => self.begin_cell(element)?,
            "office:annotation" => self.remarks += 1,
            "text:p" if self.remarks == 0 => {
                if let Some(cell) = &mut self.cell {
                    if cell.paragraphs > 0 {
                        cell.text.push('\n');
                    }
                    cell.paragraphs += 1;
                }
            }
            "text:s" => self.say(" "),
            "text:tab" => self.say("\t"),
            "text:line-break" => self.say("\n"),
            _ => {}
        }
        Ok(())
    }

    fn begin_cell(&mut self, element: &BytesStart) -> Result<(), Refusal> {
        let span = |name| count(element, name).map(|many| many - 1);
        let (rows, columns) = (span("table:number-rows-spanned")?, span("table:number-columns-spanned")?);
        if let Some(grid) = self.grid.as_mut().filter(|_| rows > 0 || columns > 0) {
            let last = self.column.saturating_add(usize::try_from(columns).unwrap_or(usize::MAX));
            grid.merged
                .push(Merged { rows: self.row..=self.row.saturating_add(rows), columns: self.column..=last });
        }
        let repeated = count(element, "table:number-columns-repeated")?;
        self.cell = Some(Cell {
            value: value(element)?,
            text: String::new(),
            paragraphs: 0,
            repeated: usize::try_from(repeated).unwrap_or(usize::MAX),
        });
        Ok(())
    }

    fn say(&mut self, text: &str) {
        if let Some(cell) = self.cell.as_mut().filter(|cell| cell.paragraphs > 0 && self.remarks == 0) {
            cell.text.push_str(text);
        }
    }

    fn end(&mut self, name: &str) -> Result<(), Refusal> {
        match name {
            "table:table" => self.grids.extend(match self.grid.take() {
                Some(mut grid) => {
                    grid.fill_merged_rows(self.room)?;
                    Some(grid)
                }
                None => None,
            }),
            "table:table-row" => self.end_row()?,
            "table:table-cell" | "table:covered-table-cell" => self.end_cell(),
            "office:annotation" => self.remarks = self.remarks.saturating_sub(1),
            _ => {}
        }
        Ok(())
    }

    fn end_cell(&mut self) {
        let Some(cell) = self.cell.take() else { return };
        let held = if cell.value == Held::Empty { grid::text(&cell.text) } else { cell.value };
        if held != Held::Empty {
            self.cells.push((self.column, cell.repeated, held));
        }
        self.column = self.column.saturating_add(cell.repeated);
    }

    fn end_row(&mut self) -> Result<(), Refusal> {
        if let Some(grid) = self.grid.as_mut().filter(|_| !self.cells.is_empty()) {
            for row in self.row..self.row.saturating_add(self.row_repeated) {
                for (first, repeated, held) in &self.cells {
                    for column in *first..first.saturating_add(*repeated) {
                        grid.put(row, column, held.clone(), self.room)?;
                    }
                }
            }
        }
        self.row = self.row.saturating_add(self.row_repeated - 1);
        Ok(())
    }
}

/// How often something stands there: once where nothing is said.
fn count(element: &BytesStart, name: &str) -> Result<u64, Refusal> {
    let said = attribute(element, name)?.map(|text| text.parse::<u64>().map_err(|_| "workbook-damaged"));
    Ok(said.transpose()?.unwrap_or(1).max(1))
}

fn attribute(element: &BytesStart, name: &str) -> Result<Option<String>, Refusal> {
    let found = element.try_get_attribute(name).map_err(|_| "workbook-damaged")?;
    let text = found.map(|one| one.normalized_value(XmlVersion::Explicit1_0).map(Cow::into_owned));
    text.transpose().map_err(|_| "workbook-damaged")
}

/// What a cell's own value says; its text speaks where it has none.
fn value(element: &BytesStart) -> Result<Held, Refusal> {
    let number = || -> Result<Option<f64>, Refusal> {
        Ok(attribute(element, "office:value")?.and_then(|text| text.parse::<f64>().ok()))
    };
    Ok(match attribute(element, "office:value-type")?.as_deref() {
        Some("float" | "currency") => number()?.map_or(Held::Empty, Held::Number),
        Some("percentage") => number()?.map_or(Held::Empty, Held::Share),
        Some("date") => {
            let text = attribute(element, "office:date-value")?.unwrap_or_default();
            let day = text.split('T').next().and_then(Date::read);
            day.map_or(Held::Empty, |day| Held::Day(day.year(), day.month(), day.day()))
        }
        Some("boolean") => grid::text(&attribute(element, "office:boolean-value")?.unwrap_or_default()),
        _ => Held::Empty,
    })
}
