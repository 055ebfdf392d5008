//! Every table as a sheet of one spreadsheet. What a person can follow is a formula, with our own figure as its value.

mod formulas;

use crate::table::{Cell, Column, Holds, Table};
use crate::{File, Whole, tables};
use formulas::Formulas;
use rust_xlsxwriter::{DocProperties, ExcelDateTime, Format, Formula, Workbook, Worksheet, XlsxError};
use tautline_engine::num::decimal::shortest;
use tautline_survey::message::Message;
use tautline_words::Words;

/// What a cell of a spreadsheet holds at most; a longer text is cut, and ends with three points.
const LONGEST_TEXT: usize = 32_767;

pub(crate) fn files(whole: &Whole, words: &Words) -> Result<Vec<File>, Message> {
    let made = made(whole, words);
    let bytes = made.map_err(|error| Message::new("export-not-made").with("why", error.to_string()))?;
    Ok(vec![File { name: "tautline.xlsx".to_owned(), bytes }])
}

fn made(whole: &Whole, words: &Words) -> Result<Vec<u8>, XlsxError> {
    let mut book = Workbook::new();
    // the same readings make the same file: no clock is read
    let day = whole.input.visits.iter().filter_map(|visit| visit.date).max();
    let day = day.and_then(|date| ExcelDateTime::parse_from_str(&date.to_string()).ok());
    if let Some(day) = day.map_or_else(|| ExcelDateTime::from_ymd(2000, 1, 1), Ok).ok().as_ref() {
        let about = DocProperties::new().set_title(words.word("package-title")).set_creation_datetime(day);
        book.set_properties(&about);
    }
    let mut all = tables::all(whole);
    formulas::add_t_interval(&mut all, whole);
    all.push(described(&all, words));
    let formulas = Formulas::of(&all, whole);
    for table in &all {
        sheet(book.add_worksheet(), table, &formulas)?;
    }
    book.save_to_buffer()
}

/// A sheet that says what each column holds.
fn described(tables: &[Table], words: &Words) -> Table {
    let rows = tables.iter().flat_map(|table| {
        table.columns.iter().map(|column| {
            vec![
                Cell::text(table.name),
                Cell::text(column.name),
                Cell::text(column.unit.unwrap_or("")),
                Cell::text(&words.word(&column.words())),
            ]
        })
    });
    let rows = rows.collect();
    let columns = ["table", "column", "unit", "description"].map(|name| Column::new(name, Holds::Text));
    Table { name: "columns", columns: columns.to_vec(), key: &["table", "column"], links: &[], rows }
}

#[expect(
    clippy::cast_precision_loss,
    reason = "a spreadsheet's numbers are doubles; our counts are far below 2^53"
)]
fn sheet(sheet: &mut Worksheet, table: &Table, formulas: &Formulas) -> Result<(), XlsxError> {
    let (bold, day) = (Format::new().set_bold(), Format::new().set_num_format("yyyy-mm-dd"));
    sheet.set_name(table.name)?;
    sheet.set_freeze_panes(1, 0)?;
    for (at, column) in (0..).zip(&table.columns) {
        sheet.write_string_with_format(0, at, column.name, &bold)?;
        let width = u8::try_from(column.name.len() + 2).unwrap_or(u8::MAX);
        sheet.set_column_width(at, f64::from(width.clamp(10, 28)))?;
    }
    for (row, cells) in (1..).zip(&table.rows) {
        for ((at, column), cell) in (0..).zip(&table.columns).zip(cells) {
            if let (Cell::Number(number), Some(formula)) = (cell, formulas.at(table, row, column.name)) {
                sheet.write_formula(row, at, Formula::new(formula).set_result(shortest(*number)))?;
                continue;
            }
            match cell {
                Cell::Empty => {}
                Cell::Text(text) => {
                    sheet.write_string(row, at, cut(text))?;
                }
                Cell::Whole(number) => {
                    sheet.write_number(row, at, *number as f64)?;
                }
                Cell::Number(number) => {
                    sheet.write_number(row, at, *number)?;
                }
                Cell::Yes(yes) => {
                    sheet.write_boolean(row, at, *yes)?;
                }
                // a spreadsheet's days begin in 1900
                Cell::Day(date) => match ExcelDateTime::parse_from_str(&date.to_string()) {
                    Ok(date) => {
                        sheet.write_datetime_with_format(row, at, &date, &day)?;
                    }
                    Err(_) => {
                        sheet.write_string(row, at, date.to_string())?;
                    }
                },
            }
        }
    }
    Ok(())
}

fn cut(text: &str) -> String {
    if text.encode_utf16().count() <= LONGEST_TEXT {
        return text.to_owned();
    }
    // a character is two units at most
    text.chars().take(LONGEST_TEXT / 2 - 1).chain(['…']).collect()
}
