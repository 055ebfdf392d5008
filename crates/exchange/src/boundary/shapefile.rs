//! Shapefiles: shapes, the table beside them, their reference.
//!
//! Our own reader, since what is read here may be damaged or made to do harm: no count in the file is believed.
//!
//! # Source
//! ESRI Shapefile Technical Description, July 1998; table: dBASE III's header of 32 bytes and fields of 32 bytes (from memory,
//! tried on files that GDAL wrote)

use super::bytes::Bytes;
use super::feature::Feature;
use super::reference;
use crate::encoding::windows_1252;
use crate::limits::MOST_NODES;
use crate::shown::short;
use tautline_survey::boundary::{Pair, Reference, Shape};
use tautline_survey::message::Message;

pub(super) fn features(
    shapes: &[u8],
    table: Option<&[u8]>,
    reference: Option<&[u8]>,
    asked: Option<Reference>,
) -> Result<Vec<Feature>, Message> {
    let (reference, reference_asked) = match (reference, asked) {
        (Some(text), _) => {
            let text = String::from_utf8_lossy(text);
            let unknown = || Message::new("boundary-reference").with("found", short(text.trim()));
            (reference::by_text(&text).ok_or_else(unknown)?, false)
        }
        (None, Some(asked)) => (asked, true),
        (None, None) => return Err(Message::new("boundary-no-reference")),
    };
    let mut rows = table.map(rows).transpose()?.into_iter().flatten();
    let mut features = Vec::new();
    let mut left = shapes.get(100..).ok_or_else(damaged)?;
    while !left.is_empty() {
        let mut head = Bytes::of(left, false);
        let number = features.len() + 1;
        let (_, words) = (head.whole().ok_or_else(damaged)?, head.whole().ok_or_else(damaged)?);
        let length =
            usize::try_from(words).ok().and_then(|words| words.checked_mul(2)).ok_or_else(damaged)?;
        let record = head.take(length).ok_or_else(damaged)?;
        left = &left[8 + length..];
        features.push(Feature {
            number,
            fields: rows.next().unwrap_or_default(),
            shapes: shape(record, number)?,
            reference,
            reference_asked,
            walked: false,
        });
    }
    Ok(features)
}

fn damaged() -> Message {
    Message::new("boundary-damaged")
}

/// The shapes of a record; none where it holds nothing, and several where a way has several pieces.
fn shape(record: &[u8], number: usize) -> Result<Vec<Shape>, Message> {
    let mut bytes = Bytes::of(record, true);
    let kind = bytes.whole().ok_or_else(damaged)?;
    // 1, 3, 5, 8 and the same with heights (11 …) and measures (21 …), which stand behind the pairs
    match (kind / 10, kind % 10) {
        (0, 0) => Ok(Vec::new()),
        (0..=2, 1) => Ok(vec![Shape::Way(bytes.pairs(1, 0).ok_or_else(damaged)?)]),
        (0..=2, 3) => Ok(pieces(&mut bytes).ok_or_else(damaged)?.into_iter().map(Shape::Way).collect()),
        (0..=2, 5) => Ok(vec![Shape::Rings(pieces(&mut bytes).ok_or_else(damaged)?)]),
        _ => Err(Message::new("geojson-shape").with("part", number).with("found", kind.to_string())),
    }
}

/// Rings of a polygon, or pieces of a way.
fn pieces(bytes: &mut Bytes) -> Option<Vec<Vec<Pair>>> {
    bytes.take(32)?;
    let parts = bytes.count(4)?;
    let points = usize::try_from(bytes.whole()?).ok()?;
    let mut starts = Vec::with_capacity(parts);
    for _ in 0..parts {
        starts.push(usize::try_from(bytes.whole()?).ok()?);
    }
    let pairs = bytes.take(points.checked_mul(16)?)?;
    let pairs = Bytes::of(pairs, true).pairs(points, 0)?;
    let ends = starts.iter().skip(1).copied().chain([points]);
    let piece = |(&start, end): (&usize, usize)| pairs.get(start..end).map(<[Pair]>::to_vec);
    let pieces: Option<Vec<Vec<Pair>>> = starts.iter().zip(ends).map(piece).collect();
    pieces.map(|pieces| pieces.into_iter().filter(|piece| !piece.is_empty()).collect())
}

/// One row of a table: its fields by name.
type Row = Vec<(String, String)>;

/// The rows of the table beside shapes.
fn rows(table: &[u8]) -> Result<Vec<Row>, Message> {
    let short = |at: usize| Some(usize::from(u16::from_le_bytes(table.get(at..at + 2)?.try_into().ok()?)));
    let (head, length) = (short(8).ok_or_else(damaged)?, short(10).ok_or_else(damaged)?);
    let fields = table.get(32..head).ok_or_else(damaged)?;
    let fields: Vec<(String, usize)> = fields
        .chunks_exact(32)
        .take_while(|field| field[0] != 0x0d)
        .map(|field| {
            (text(field[..11].split(|&byte| byte == 0).next().unwrap_or_default()), usize::from(field[16]))
        })
        .collect();
    if length == 0 {
        return Err(damaged());
    }
    // a cell takes eighty times the byte that it may be written with
    if table[head..].len() / length * (1 + fields.len()) > MOST_NODES as usize {
        return Err(Message::new("boundary-too-large"));
    }
    let row = |record: &[u8]| {
        let mut left = record.get(1..).unwrap_or_default();
        let cell = |(name, width): &(String, usize)| {
            let (cell, rest) = left.split_at_checked(*width).unwrap_or((left, &[]));
            left = rest;
            (name.clone(), text(cell).trim().to_owned())
        };
        fields.iter().map(cell).collect()
    };
    Ok(table[head..].chunks_exact(length).map(row).collect())
}

/// UTF-8, or what offices wrote before.
fn text(bytes: &[u8]) -> String {
    core::str::from_utf8(bytes).map_or_else(|_| windows_1252(bytes), str::to_owned)
}
