//! Site boundaries in: GeoJSON, GPX, KML and KMZ, GeoPackage, shapefiles; told apart by what they hold, not by their names.
//!
//! | what | module |
//! | --- | --- |
//! | what a feature is, from its fields | `feature` |
//! | GeoJSON (RFC 7946) | `geojson` |
//! | GPX 1.1, KML 2.2 | `xml` |
//! | shapefiles (ESRI 1998) with their table and reference | `shapefile` |
//! | GeoPackage (OGC 12-128r19) | `geopackage` |
//! | lines that are read, as a table | `lines` |
//! | corners as people type them | `typed` |
//! | well-known binary and text (OGC 06-103r4) | `binary`, `reference` |
//! | numbers in bytes | `bytes` |
//!
//! What a feature is stands in its field `use`: nothing or `stratum` for ground on which lines may lie, `keep out` with
//! `buffer` in metres, `line` for a line that stays. The names stand in `stratum`, `line` and `site`. Coordinates stay as
//! they were handed in, with their reference.
//!
//! All but a GeoPackage is read in the app too; that takes the feature `databases`, and without it is named as a file for the command.

#[cfg(feature = "databases")]
mod binary;
mod bytes;
mod feature;
mod geojson;
#[cfg(feature = "databases")]
mod geopackage;
mod lines;
mod reference;
mod shapefile;
mod typed;
mod xml;

use crate::encoding::{utf_16, utf_16_mark};
use crate::limits::{LARGEST_BOUNDARY, MOST_CORNERS};
use crate::source::Source;
use crate::workbook::packed;
use feature::Feature;
pub use lines::OnWgs84;
pub(crate) use lines::{is_map, lines};
use std::borrow::Cow;
use tautline_survey::boundary::{Boundary, Reference, Shape};
use tautline_survey::message::Message;

/// What a feature is for where its own fields don't say.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Purpose {
    /// Ground on which lines may lie.
    Ground,
    /// To be kept out of.
    KeepOut {
        /// So many millimetres about it too.
        buffer: i64,
        /// Whether people walk across it between lines, where somebody says.
        crossed: Option<bool>,
    },
    /// Lines that are there already.
    There,
}

/// How a boundary is to be read.
#[derive(Clone, Debug)]
pub struct Asked {
    /// What features are for that don't say.
    pub purpose: Purpose,
    /// The field in which the name of a stratum stands.
    pub stratum: String,
    /// The reference of files that name none themselves.
    pub reference: Option<Reference>,
}

impl Asked {
    /// Everything as files say it themselves.
    pub fn of(purpose: Purpose) -> Self {
        Self { purpose, stratum: "stratum".into(), reference: None }
    }
}

/// A boundary, and whether the file left its reference to whoever hands it in.
#[derive(Clone, Debug, PartialEq)]
pub struct Found {
    /// What was read.
    pub boundary: Boundary,
    /// The reference that was asked for was used.
    pub asked_reference: bool,
}

/// Reads a boundary; `beside` holds the other files of a shapefile, of the same name with other endings.
///
/// # Errors
/// what was found, where, and what would do
/// # Example
/// ```
/// use tautline_exchange::{Source, boundary::{Asked, Purpose, read}};
/// let text = r#"{"type":"Polygon","coordinates":[[[0,0],[0.01,0],[0.01,0.01],[0,0]]]}"#;
/// let source = Source { name: "site.geojson".into(), bytes: text.into() };
/// assert_eq!(read(&source, &[], &Asked::of(Purpose::Ground)).unwrap().boundary.parts.len(), 1);
/// ```
pub fn read(source: &Source, beside: &[Source], asked: &Asked) -> Result<Found, Message> {
    put_together(features_of(source, beside, asked)?, asked)
}

/// The features of a file of any kind.
fn features_of(source: &Source, beside: &[Source], asked: &Asked) -> Result<Vec<Feature>, Message> {
    let bytes = source.bytes.as_slice();
    if bytes.len() as u64 > LARGEST_BOUNDARY {
        return Err(Message::new("boundary-too-large"));
    }
    match binary(source, beside, asked)? {
        Some(features) => Ok(features),
        None => of_text(bytes, asked),
    }
}

/// The features of a file that is text.
fn of_text(bytes: &[u8], asked: &Asked) -> Result<Vec<Feature>, Message> {
    let text = text(bytes)?;
    let text = text.trim_start_matches('\u{feff}');
    match text.trim_start().chars().next() {
        Some('<') => xml::features(text),
        Some('{' | '[') => geojson::features(text),
        Some(_) if typed::is_typed(text) => typed::features(text, asked),
        _ => Err(Message::new("boundary-unknown")),
    }
}

/// UTF-8, or UTF-16 behind its mark. Another encoding would give names that nobody wrote, so it is named and not guessed at.
fn text(bytes: &[u8]) -> Result<Cow<'_, str>, Message> {
    if let Some(order) = utf_16_mark(bytes) {
        let (text, damaged) = utf_16(bytes, order);
        return if damaged { Err(Message::new("boundary-damaged")) } else { Ok(text.into()) };
    }
    core::str::from_utf8(bytes).map(Cow::Borrowed).map_err(|error| {
        let before = &bytes[..error.valid_up_to()];
        let is_text = matches!(before.trim_ascii_start().first(), Some(b'<' | b'{' | b'['));
        let row = memchr::memchr_iter(b'\n', before).count() + 1;
        if is_text {
            Message::new("boundary-other-encoding").with("row", row)
        } else {
            Message::new("boundary-unknown")
        }
    })
}

/// How packed files, GeoPackages and shapefiles begin (ZIP, APPNOTE 4.3.7; SQLite 3; ESRI 1998: 9994, high byte first).
const PACKED: &[u8] = b"PK\x03\x04";
const DATABASE: &[u8] = b"SQLite format 3\0";
const SHAPES: &[u8] = &9994_u32.to_be_bytes();

/// The features of a file that is packed or binary; nothing where it is neither.
fn binary(source: &Source, beside: &[Source], asked: &Asked) -> Result<Option<Vec<Feature>>, Message> {
    let bytes = source.bytes.as_slice();
    let features = if bytes.starts_with(PACKED) {
        of_packed(source, asked)?
    } else if bytes.starts_with(DATABASE) {
        of_database(bytes)?
    } else if bytes.starts_with(SHAPES) {
        let with_ending = |ending: &str| {
            let fits = |one: &&Source| belongs(&one.name, &source.name, &[ending]);
            beside.iter().find(fits).map(|one| one.bytes.as_slice())
        };
        shapefile::features(bytes, with_ending("dbf"), with_ending("prj"), asked.reference)?
    } else {
        return Ok(None);
    };
    Ok(Some(features))
}

#[cfg(feature = "databases")]
fn of_database(bytes: &[u8]) -> Result<Vec<Feature>, Message> {
    geopackage::features(bytes)
}

/// Such a file is for the command.
#[cfg(not(feature = "databases"))]
fn of_database(_: &[u8]) -> Result<Vec<Feature>, Message> {
    Err(Message::new("boundary-for-the-command"))
}

/// Whether a file is of the same name as a shapefile, with another ending.
pub(crate) fn belongs(name: &str, shapes: &str, endings: &[&str]) -> bool {
    let stem = |name: &str| name.rsplit_once('.').map(|(stem, _)| stem.to_lowercase());
    let ending = name.rsplit_once('.').map_or("", |(_, ending)| ending);
    endings.iter().any(|known| ending.eq_ignore_ascii_case(known)) && stem(name) == stem(shapes)
}

/// Files that were handed in at once, each with what lies beside it: the table and the reference of a shapefile.
///
/// # Example
/// ```
/// use tautline_exchange::{Source, boundary::gathered};
/// // the number with which every shapefile begins (ESRI 1998)
/// let file = |name: &str| Source { name: name.into(), bytes: 9994_u32.to_be_bytes().into() };
/// let table = |name: &str| Source { name: name.into(), bytes: Vec::new() };
/// let all = gathered(vec![table("flats.dbf"), file("flats.shp"), table("flats.PRJ"), table("other.prj")]);
/// let names: Vec<_> = all.iter().map(|(one, beside)| (one.name.as_str(), beside.len())).collect();
/// assert_eq!(names, [("flats.shp", 2), ("other.prj", 0)]);
/// ```
pub fn gathered(files: Vec<Source>) -> Vec<(Source, Vec<Source>)> {
    let of_shapes = |one: &Source, shapes: &[(Source, Vec<Source>)]| {
        shapes.iter().position(|(shapes, _)| {
            is_shapes(&shapes.bytes) && belongs(&one.name, &shapes.name, &BESIDE_SHAPES)
        })
    };
    let (shapes, others): (Vec<Source>, Vec<Source>) = files
        .into_iter()
        .partition(|one| is_shapes(&one.bytes) && !belongs(&one.name, &one.name, &BESIDE_SHAPES));
    let mut all: Vec<(Source, Vec<Source>)> = shapes.into_iter().map(|one| (one, Vec::new())).collect();
    for one in others {
        match of_shapes(&one, &all) {
            Some(at) if belongs(&one.name, &all[at].0.name, &["dbf", "prj"]) => all[at].1.push(one),
            // an index says nothing that the shapes don't
            Some(_) => {}
            None => all.push((one, Vec::new())),
        }
    }
    all
}

/// What may lie beside a shapefile: its table and its reference are read, the rest is for other programs.
pub(crate) const BESIDE_SHAPES: [&str; 7] = ["dbf", "prj", "shx", "cpg", "qpj", "sbn", "sbx"];

/// Whether a file is the shapes of a shapefile.
pub(crate) fn is_shapes(bytes: &[u8]) -> bool {
    bytes.starts_with(SHAPES)
}

/// A packed file: one shapefile with what belongs to it, or a KML file.
fn of_packed(source: &Source, asked: &Asked) -> Result<Vec<Feature>, Message> {
    let refuse = |code| Message::new(code).with("file", source.name.as_str());
    let parts = packed::with_endings(&source.bytes, &["shp", "dbf", "prj", "kml"], LARGEST_BOUNDARY);
    let parts = parts.map_err(refuse)?;
    let ends = |name: &str, ending: &str| {
        name.rsplit_once('.').is_some_and(|(_, own)| own.eq_ignore_ascii_case(ending))
    };
    let shapes: Vec<_> = parts.iter().filter(|(name, _)| ends(name, "shp")).collect();
    match shapes.as_slice() {
        [(name, bytes)] => {
            let stem = name.rsplit_once('.').map_or("", |(stem, _)| stem);
            let part = |ending: &str| {
                let own = |(other, _): &&(String, Vec<u8>)| {
                    ends(other, ending)
                        && other.rsplit_once('.').is_some_and(|(other, _)| other.eq_ignore_ascii_case(stem))
                };
                parts.iter().find(own).map(|(_, bytes)| bytes.as_slice())
            };
            shapefile::features(bytes, part("dbf"), part("prj"), asked.reference)
        }
        [] => match parts.iter().find(|(name, _)| ends(name, "kml")) {
            Some((_, bytes)) => of_text(bytes, asked),
            None => Err(Message::new("boundary-packed-without")),
        },
        several => Err(Message::new("boundary-packed-several").with("files", several.len())),
    }
}

fn put_together(features: Vec<Feature>, asked: &Asked) -> Result<Found, Message> {
    let mut boundary = Boundary::default();
    let mut asked_reference = false;
    let mut corners = 0;
    for feature in features {
        corners += feature.shapes.iter().map(corners_of).sum::<usize>();
        if corners > MOST_CORNERS {
            return Err(Message::new("boundary-too-many-corners").with("most", MOST_CORNERS));
        }
        if feature.shapes.iter().any(|shape| longest_ring(shape) > MOST_OF_AN_OUTLINE) {
            let message = Message::new("boundary-outline-too-long").with("part", feature.number);
            return Err(message.with("most", MOST_OF_AN_OUTLINE));
        }
        asked_reference |= feature.reference_asked;
        boundary.join(feature.into_parts(asked)?);
    }
    if boundary.parts.is_empty() {
        return Err(Message::new("boundary-nothing"));
    }
    Ok(Found { boundary, asked_reference })
}

/// Every side of an outline is held against every other, so that this many take some seconds.
const MOST_OF_AN_OUTLINE: usize = 20_000;

fn longest_ring(shape: &Shape) -> usize {
    match shape {
        Shape::Areas(areas) => areas.iter().flatten().map(Vec::len).max().unwrap_or(0),
        Shape::Rings(rings) => rings.iter().map(Vec::len).max().unwrap_or(0),
        Shape::Way(_) => 0,
    }
}

fn corners_of(shape: &Shape) -> usize {
    match shape {
        Shape::Areas(areas) => areas.iter().flatten().map(Vec::len).sum(),
        Shape::Rings(rings) => rings.iter().map(Vec::len).sum(),
        Shape::Way(way) => way.len(),
    }
}
