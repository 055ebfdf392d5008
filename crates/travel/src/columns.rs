//! Every table as a file of columns (Parquet), with the unit and description of each column in its own metadata.
//!
//! Written by hand: one row group, one plain page a column, nothing packed. The general-purpose library switches the
//! standard library's mathematics on in all that is built with it, and then phone and office no longer agree to the last bit.
//!
//! # Source
//! Apache Parquet format 2.10 (github.com/apache/parquet-format: README.md, Encodings.md, LogicalTypes.md, parquet.thrift)

mod compact;

use crate::table::{Cell, Column, Holds, Table};
use crate::{File, Whole, tables};
use compact::{Record, varint};
use tautline_words::Words;

const MAGIC: &[u8; 4] = b"PAR1";
const PLAIN: i32 = 0;
const RUNS: i32 = 3;

pub(crate) fn files(whole: &Whole, words: &Words) -> Vec<File> {
    let file = |table: &Table| File { name: format!("{}.parquet", table.name), bytes: written(table, words) };
    tables::all(whole).iter().map(file).collect()
}

/// A column as it stands in the file.
struct Chunk<'a> {
    column: &'a Column,
    offset: usize,
    length: usize,
}

fn written(table: &Table, words: &Words) -> Vec<u8> {
    let mut bytes = MAGIC.to_vec();
    let mut chunks = Vec::new();
    for (at, column) in table.columns.iter().enumerate() {
        let offset = bytes.len();
        let page = page(table, at);
        let values =
            Record::default().i32(1, count(table.rows.len())).i32(2, PLAIN).i32(3, RUNS).i32(4, RUNS);
        let size = count(page.len());
        bytes.extend(Record::default().i32(1, 0).i32(2, size).i32(3, size).record(5, values).bytes());
        bytes.extend(page);
        chunks.push(Chunk { column, offset, length: bytes.len() - offset });
    }
    let footer = footer(table, &chunks, words).bytes();
    let length = u32::try_from(footer.len()).unwrap_or(u32::MAX);
    bytes.extend(footer);
    bytes.extend(length.to_le_bytes());
    bytes.extend(MAGIC);
    bytes
}

/// What a page holds: which cells are there, then those that are.
fn page(table: &Table, at: usize) -> Vec<u8> {
    let mut bytes = Vec::new();
    let cells: Vec<&Cell> = table.rows.iter().map(|row| &row[at]).collect();
    if !table.columns[at].needed {
        let runs = runs(cells.iter().map(|cell| **cell != Cell::Empty));
        bytes.extend(u32::try_from(runs.len()).unwrap_or(u32::MAX).to_le_bytes());
        bytes.extend(runs);
    }
    let mut bits = Vec::new();
    for cell in cells {
        match cell {
            Cell::Empty => {}
            Cell::Text(text) => {
                bytes.extend(u32::try_from(text.len()).unwrap_or(u32::MAX).to_le_bytes());
                bytes.extend(text.as_bytes());
            }
            Cell::Whole(number) => bytes.extend(number.to_le_bytes()),
            Cell::Number(number) => bytes.extend(number.to_le_bytes()),
            Cell::Day(date) => bytes.extend(date.days_since_1970().to_le_bytes()),
            Cell::Yes(yes) => bits.push(*yes),
        }
    }
    // eight a byte, the first in the least significant bit
    bytes.extend(
        bits.chunks(8).map(|eight| eight.iter().rev().fold(0, |byte, &bit| (byte << 1) | u8::from(bit))),
    );
    bytes
}

/// There or not, as runs: twice the length, then the value.
fn runs(there: impl Iterator<Item = bool>) -> Vec<u8> {
    let mut runs: Vec<(u64, bool)> = Vec::new();
    for one in there {
        match runs.last_mut() {
            Some((length, value)) if *value == one => *length += 1,
            _ => runs.push((1, one)),
        }
    }
    let mut bytes = Vec::new();
    for (length, value) in runs {
        varint(&mut bytes, length << 1);
        bytes.push(u8::from(value));
    }
    bytes
}

fn footer(table: &Table, chunks: &[Chunk], words: &Words) -> Record {
    let root = Record::default().text(4, table.name).i32(5, count(table.columns.len()));
    let fields = table.columns.iter().map(field);
    let schema: Vec<Record> = std::iter::once(root).chain(fields).collect();
    let columns: Vec<Record> =
        chunks.iter().map(|chunk| chunk_record(chunk, table.rows.len(), words)).collect();
    let length: usize = chunks.iter().map(|chunk| chunk.length).sum();
    let group =
        Record::default().records(1, columns.into_iter()).i64(2, long(length)).i64(3, long(table.rows.len()));
    // a table without rows has no row group
    let groups: Vec<Record> = if table.rows.is_empty() { Vec::new() } else { vec![group] };
    let about = [("title", words.word(&table.words())), ("primary_key", table.key.join(","))];
    Record::default()
        .i32(1, 1)
        .records(2, schema.into_iter())
        .i64(3, long(table.rows.len()))
        .records(4, groups.into_iter())
        .records(5, about.iter().map(|(key, value)| pair(key, value)))
        .text(6, concat!("tautline version ", env!("CARGO_PKG_VERSION")))
}

/// Numbers of the types that are stored, and those of what texts and days are taken for.
const fn types(column: &Column) -> (i32, Option<(i32, i16)>) {
    match column.holds {
        Holds::Text | Holds::OneOf(_) => (6, Some((0, 1))),
        Holds::Whole => (2, None),
        Holds::Number | Holds::Amount => (5, None),
        Holds::Day => (1, Some((6, 6))),
        Holds::Yes => (0, None),
    }
}

fn field(column: &Column) -> Record {
    let (stored, meaning) = types(column);
    let field = Record::default().i32(1, stored).i32(3, i32::from(!column.needed)).text(4, column.name);
    match meaning {
        None => field,
        Some((converted, logical)) => {
            field.i32(6, converted).record(10, Record::default().record(logical, Record::default()))
        }
    }
}

fn chunk_record(chunk: &Chunk, rows: usize, words: &Words) -> Record {
    let about = [
        ("description", words.word(&chunk.column.words())),
        ("unit", chunk.column.unit.unwrap_or("").to_owned()),
    ];
    let about: Vec<Record> =
        about.iter().filter(|(_, value)| !value.is_empty()).map(|(key, value)| pair(key, value)).collect();
    let data = Record::default()
        .i32(1, types(chunk.column).0)
        .numbers(2, &[PLAIN, RUNS])
        .texts(3, &[chunk.column.name])
        .i32(4, 0)
        .i64(5, long(rows))
        .i64(6, long(chunk.length))
        .i64(7, long(chunk.length))
        .records(8, about.into_iter())
        .i64(9, long(chunk.offset));
    Record::default().i64(2, long(chunk.offset)).record(3, data)
}

fn pair(key: &str, value: &str) -> Record {
    Record::default().text(1, key).text(2, value)
}

fn count(number: usize) -> i32 {
    i32::try_from(number).unwrap_or(i32::MAX)
}

fn long(number: usize) -> i64 {
    i64::try_from(number).unwrap_or(i64::MAX)
}
