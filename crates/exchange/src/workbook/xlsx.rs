//! Office Open XML spreadsheets.
//!
//! # Source
//! ECMA-376 Part 1, 5th edition (2016), 18: SpreadsheetML

use super::Refusal;
use super::grid::{Grid, Held, Merged, Room};
use super::packed::{self, Archive};
use calamine::{Data, DataRef, Reader as _, SheetType, Xlsx};
use quick_xml::Reader;
use quick_xml::events::Event;
use std::io::{BufReader, Cursor, Read};

/// The letters and digits of the last cell that a sheet can have, XFD1048576 (ECMA-376 Part 1, 18.18.7).
const LONGEST_REFERENCE: (usize, usize) = (3, 7);

/// The sheets of a workbook.
pub(super) fn grids(bytes: &[u8], archive: &mut Archive, room: &mut Room) -> Result<Vec<Grid>, Refusal> {
    let damaged = |_| "workbook-damaged";
    packed::each(archive, |part| cells_are_named_soundly(part))?;
    let mut book: Xlsx<_> = Xlsx::new(Cursor::new(bytes)).map_err(damaged)?;
    let sheets: Vec<String> = book
        .sheets_metadata()
        .iter()
        .filter(|sheet| sheet.typ == SheetType::WorkSheet)
        .map(|sheet| sheet.name.clone())
        .collect();
    let mut grids = Vec::new();
    for name in sheets {
        let mut grid = Grid::new(&name);
        let merged = book.merge_cells_by_sheet_name(&name).map_err(damaged)?;
        grid.merged = merged
            .into_iter()
            .map(|area| Merged {
                rows: u64::from(area.start.0) + 1..=u64::from(area.end.0) + 1,
                columns: area.start.1 as usize..=area.end.1 as usize,
            })
            .collect();
        let mut cells = book.worksheet_cells_reader(&name).map_err(damaged)?;
        let in_per_cent: Vec<bool> = cells.styles().iter().map(is_in_per_cent).collect();
        while let Some((cell, style)) = cells.next_cell_with_style_id().map_err(damaged)? {
            let (row, column) = cell.get_position();
            let share = in_per_cent.get(style).copied().unwrap_or_default();
            grid.put(u64::from(row) + 1, column as usize, held(cell.get_value(), share), room)?;
        }
        grid.fill_merged_rows(room)?;
        grids.push(grid);
    }
    Ok(grids)
}

/// Refuses a part with cells outside of any sheet: the library works out their places without looking for numbers that are
/// too large, so that such a cell would stand somewhere else. What is no XML ends there, as it does for the library.
fn cells_are_named_soundly(part: impl Read) -> Result<(), Refusal> {
    let mut reader = Reader::from_reader(BufReader::new(part));
    reader.config_mut().check_end_names = false;
    let mut buffer = Vec::new();
    loop {
        buffer.clear();
        match reader.read_event_into(&mut buffer) {
            Ok(Event::Start(element) | Event::Empty(element)) => {
                let name = match element.local_name().as_ref() {
                    "c" | "row" => "r",
                    "mergeCell" | "dimension" => "ref",
                    _ => continue,
                };
                for attribute in element.attributes().with_checks(false) {
                    let attribute = attribute.map_err(|_| "workbook-damaged")?;
                    if attribute.key.as_ref() == name && !is_sound(&attribute.value) {
                        return Err("workbook-damaged");
                    }
                }
            }
            Ok(Event::Eof) | Err(_) => return Ok(()),
            Ok(_) => {}
        }
    }
}

/// Whether a reference names a cell, a row or a range that a sheet can have, the first of a range before its last.
fn is_sound(reference: &str) -> bool {
    let ends: Option<Vec<(u32, u32)>> = reference.split(':').map(place).collect();
    match ends.as_deref() {
        Some([_]) => true,
        Some([first, last]) => first.0 <= last.0 && first.1 <= last.1,
        _ => false,
    }
}

/// Row and column of a reference such as `B12`; the column is nought where a row alone is named.
fn place(reference: &str) -> Option<(u32, u32)> {
    let digits = reference.trim_start_matches(|c: char| c.is_ascii_alphabetic());
    let letters = &reference[..reference.len() - digits.len()];
    if letters.len() > LONGEST_REFERENCE.0 || digits.len() > LONGEST_REFERENCE.1 {
        return None;
    }
    let column =
        letters.bytes().fold(0, |sum, one| sum * 26 + u32::from(one.to_ascii_uppercase() - b'A') + 1);
    Some((digits.parse().ok()?, column))
}

/// Whether a style shows numbers in per cent (ECMA-376 Part 1, 18.8.31).
fn is_in_per_cent(style: &calamine::Style) -> bool {
    style.number_format.as_ref().is_some_and(|format| format.format_code.contains('%'))
}

fn held(value: &DataRef, share: bool) -> Held {
    match value {
        DataRef::Int(number) => Held::Text(number.to_string().into()),
        DataRef::Float(number) if share => Held::Share(*number),
        DataRef::Float(number) => Held::Number(*number),
        DataRef::String(text) => super::grid::text(text),
        DataRef::SharedString(text) => super::grid::text(text),
        DataRef::Bool(truth) => Held::Text(truth.to_string().into()),
        DataRef::DateTime(moment) if moment.is_datetime() => {
            let (year, month, day, ..) = moment.to_ymd_hms_milli();
            Held::Day(year, month, day)
        }
        DataRef::Empty => Held::Empty,
        other => Held::Text(Data::from(other.clone()).to_string().into()),
    }
}
