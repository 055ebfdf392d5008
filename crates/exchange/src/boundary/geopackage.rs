//! GeoPackage: every table of features, read in memory; nothing of it is run or written.
//!
//! # Source
//! OGC 12-128r19, GeoPackage Encoding Standard 1.4, §2.1

use super::binary;
use super::feature::Feature;
use super::reference;
use crate::limits::MOST_NODES;
use crate::shown::short;
use rusqlite::config::DbConfig;
use rusqlite::types::ValueRef;
use rusqlite::{Connection, MAIN_DB};
use tautline_survey::boundary::Reference;
use tautline_survey::message::Message;

/// More tables of features than any site has.
const MOST_TABLES: usize = 100;

pub(super) fn features(bytes: &[u8]) -> Result<Vec<Feature>, Message> {
    let (mut features, mut room) = (Vec::new(), MOST_NODES as usize);
    let mut connection = Connection::open_in_memory().map_err(|_| damaged())?;
    connection.deserialize_read_exact(MAIN_DB, bytes, bytes.len(), true).map_err(|_| damaged())?;
    connection.set_db_config(DbConfig::SQLITE_DBCONFIG_TRUSTED_SCHEMA, false).map_err(|_| damaged())?;
    connection.set_db_config(DbConfig::SQLITE_DBCONFIG_ENABLE_VIEW, false).map_err(|_| damaged())?;
    for (table, column, number) in tables(&connection).map_err(|_| Message::new("boundary-not-geopackage"))? {
        let reference = reference_of(&connection, number)?;
        rows(&connection, &table, &column, reference, (&mut features, &mut room))?;
    }
    Ok(features)
}

fn damaged() -> Message {
    Message::new("boundary-damaged")
}

/// Table, column of shapes and number of the reference; real tables alone.
fn tables(connection: &Connection) -> rusqlite::Result<Vec<(String, String, i64)>> {
    let mut asked = connection.prepare(
        "select g.table_name, g.column_name, g.srs_id from gpkg_geometry_columns g \
         join sqlite_master m on lower(m.name) = lower(g.table_name) and m.type = 'table' \
         order by g.table_name limit ?1",
    )?;
    let most = i64::try_from(MOST_TABLES).unwrap_or(i64::MAX);
    asked.query_map([most], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)))?.collect()
}

fn reference_of(connection: &Connection, number: i64) -> Result<Reference, Message> {
    let described = connection.query_row(
        "select organization, organization_coordsys_id, definition from gpkg_spatial_ref_sys where srs_id = ?1",
        [number],
        |row| Ok((row.get::<_, String>(0)?, row.get::<_, i64>(1)?, row.get::<_, String>(2)?)),
    );
    let (register, number, text) = described.map_err(|_| Message::new("boundary-not-geopackage"))?;
    let registered = if register.eq_ignore_ascii_case("epsg") { reference::by_number(number) } else { None };
    registered.or_else(|| reference::by_text(&text)).ok_or_else(|| {
        Message::new("boundary-reference").with("found", short(&format!("{register} {number}")))
    })
}

fn rows(
    connection: &Connection,
    table: &str,
    column: &str,
    reference: Reference,
    (features, room): (&mut Vec<Feature>, &mut usize),
) -> Result<(), Message> {
    let quoted = table.replace('"', "\"\"");
    let mut asked = connection.prepare(&format!("select * from \"{quoted}\"")).map_err(|_| damaged())?;
    let names: Vec<String> = asked.column_names().map(str::to_owned).collect();
    let mut rows = asked.query([]).map_err(|_| damaged())?;
    while let Some(row) = rows.next().map_err(|_| damaged())? {
        // a row of nothings takes hardly a byte in the file
        *room = room.checked_sub(1 + names.len()).ok_or(Message::new("boundary-too-large"))?;
        let number = features.len() + 1;
        let mut feature = Feature { number, reference, ..Feature::default() };
        for (at, name) in names.iter().enumerate() {
            match row.get_ref(at).map_err(|_| damaged())? {
                ValueRef::Blob(shape) if name.eq_ignore_ascii_case(column) => {
                    let unknown =
                        || Message::new("geojson-shape").with("part", number).with("found", short(table));
                    feature.shapes = shapes(shape).ok_or_else(unknown)?;
                }
                ValueRef::Text(text) => {
                    feature.fields.push((name.clone(), String::from_utf8_lossy(text).into_owned()));
                }
                ValueRef::Integer(whole) => feature.fields.push((name.clone(), whole.to_string())),
                ValueRef::Real(number) => feature.fields.push((name.clone(), number.to_string())),
                ValueRef::Blob(_) | ValueRef::Null => {}
            }
        }
        features.push(feature);
    }
    Ok(())
}

/// A shape behind its head: `GP`, version, flags, reference, an envelope of a kind that the flags name.
fn shapes(blob: &[u8]) -> Option<Vec<tautline_survey::boundary::Shape>> {
    let flags = *blob.get(3)?;
    if !blob.starts_with(b"GP") || flags >> 5 & 1 == 1 {
        return None;
    }
    if flags >> 4 & 1 == 1 {
        return Some(Vec::new());
    }
    let envelope = match flags >> 1 & 7 {
        0 => 0,
        1 => 32,
        2 | 3 => 48,
        4 => 64,
        _ => return None,
    };
    binary::shapes(blob.get(8 + envelope..)?)
}
