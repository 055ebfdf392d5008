//! Office Open XML spreadsheets.
//!
//! # Source
//! ECMA-376 Part 1, 5th edition (2016), 18: SpreadsheetML

use super::Refusal;
use super::grid::{Grid, Held, Merged, Room};
use calamine::{Data, DataRef, Reader as _, SheetType, Xlsx};
use std::io::Cursor;

/// The sheets of a workbook.
pub(super) fn grids(bytes: &[u8], room: &mut Room) -> Result<Vec<Grid>, Refusal> {
    let damaged = |_| "workbook-damaged";
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
