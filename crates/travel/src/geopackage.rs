//! Lines on a map and every table, in one database file.
//!
//! # Source
//! OGC GeoPackage Encoding Standard 1.3.1 (OGC 12-128r18, 2021): §1.1.1 (the file's own ids), §2.1 (features, and how a
//! geometry is stored), §2.4 (attributes), annex F.9 (columns described)

use crate::placed::{Placed, all};
use crate::table::{Cell, Column, Holds, Table};
use crate::{File, Whole, tables};
use rusqlite::{Connection, params_from_iter, types::Value};
use tautline_survey::message::Message;
use tautline_survey::place::{Position, Told};
use tautline_words::Words;

/// “GPKG”.
const APPLICATION_ID: i32 = 0x4750_4B47;
/// Version 1.3.
const VERSION: i32 = 10_300;
/// WGS 84 by its number in the EPSG register.
const WGS_84: i32 = 4326;

pub(crate) fn files(whole: &Whole, words: &Words) -> Result<Vec<File>, Message> {
    let made = made(whole, words);
    let bytes = made.map_err(|error| Message::new("export-not-made").with("why", error.to_string()))?;
    Ok(vec![File { name: "tautline.gpkg".to_owned(), bytes }])
}

fn made(whole: &Whole, words: &Words) -> rusqlite::Result<Vec<u8>> {
    let mut database = Connection::open_in_memory()?;
    let writing = database.transaction()?;
    writing.pragma_update(None, "application_id", APPLICATION_ID)?;
    writing.pragma_update(None, "user_version", VERSION)?;
    writing.execute_batch(HOUSE)?;
    // a day that the readings name, so that the same readings make the same file
    let latest = whole.input.visits.iter().filter_map(|visit| visit.date).max();
    let changed =
        format!("{}T00:00:00.000Z", latest.map_or("1970-01-01".to_owned(), |date| date.to_string()));
    for table in tables::all(whole) {
        attributes(&writing, &table, &changed, words)?;
    }
    let placed = all(whole);
    features(&writing, "lines_drawn", "LINESTRING", &placed, &changed, words)?;
    features(&writing, "points_drawn", "POINT", &placed, &changed, words)?;
    writing.commit()?;
    Ok(database.serialize("main")?.to_vec())
}

/// The tables that every such file has, and the extension that describes columns.
const HOUSE: &str = r#"
CREATE TABLE gpkg_spatial_ref_sys (srs_name TEXT NOT NULL, srs_id INTEGER PRIMARY KEY, organization TEXT NOT NULL,
  organization_coordsys_id INTEGER NOT NULL, definition TEXT NOT NULL, description TEXT);
INSERT INTO gpkg_spatial_ref_sys VALUES
  ('WGS 84 geodetic', 4326, 'EPSG', 4326, 'GEOGCS["WGS 84",DATUM["WGS_1984",SPHEROID["WGS 84",6378137,298.257223563,AUTHORITY["EPSG","7030"]],AUTHORITY["EPSG","6326"]],PRIMEM["Greenwich",0,AUTHORITY["EPSG","8901"]],UNIT["degree",0.0174532925199433,AUTHORITY["EPSG","9122"]],AUTHORITY["EPSG","4326"]]', NULL),
  ('Undefined cartesian SRS', -1, 'NONE', -1, 'undefined', NULL),
  ('Undefined geographic SRS', 0, 'NONE', 0, 'undefined', NULL);
CREATE TABLE gpkg_contents (table_name TEXT NOT NULL PRIMARY KEY, data_type TEXT NOT NULL, identifier TEXT UNIQUE,
  description TEXT DEFAULT '', last_change DATETIME NOT NULL DEFAULT (strftime('%Y-%m-%dT%H:%M:%fZ','now')),
  min_x DOUBLE, min_y DOUBLE, max_x DOUBLE, max_y DOUBLE, srs_id INTEGER,
  CONSTRAINT fk_gc_r_srs_id FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys(srs_id));
CREATE TABLE gpkg_geometry_columns (table_name TEXT NOT NULL, column_name TEXT NOT NULL, geometry_type_name TEXT NOT NULL,
  srs_id INTEGER NOT NULL, z TINYINT NOT NULL, m TINYINT NOT NULL,
  CONSTRAINT pk_geom_cols PRIMARY KEY (table_name, column_name), CONSTRAINT uk_gc_table_name UNIQUE (table_name),
  CONSTRAINT fk_gc_tn FOREIGN KEY (table_name) REFERENCES gpkg_contents(table_name),
  CONSTRAINT fk_gc_srs FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys (srs_id));
CREATE TABLE gpkg_extensions (table_name TEXT, column_name TEXT, extension_name TEXT NOT NULL, definition TEXT NOT NULL,
  scope TEXT NOT NULL, CONSTRAINT ge_tce UNIQUE (table_name, column_name, extension_name));
INSERT INTO gpkg_extensions VALUES
  ('gpkg_data_columns', NULL, 'gpkg_schema', 'http://www.geopackage.org/spec131/#extension_schema', 'read-write'),
  ('gpkg_data_column_constraints', NULL, 'gpkg_schema', 'http://www.geopackage.org/spec131/#extension_schema', 'read-write');
CREATE TABLE gpkg_data_columns (table_name TEXT NOT NULL, column_name TEXT NOT NULL, name TEXT, title TEXT, description TEXT,
  mime_type TEXT, constraint_name TEXT, CONSTRAINT pk_gdc PRIMARY KEY (table_name, column_name),
  CONSTRAINT gdc_tn UNIQUE (table_name, name));
CREATE TABLE gpkg_data_column_constraints (constraint_name TEXT NOT NULL, constraint_type TEXT NOT NULL, value TEXT,
  min NUMERIC, min_is_inclusive BOOLEAN, max NUMERIC, max_is_inclusive BOOLEAN, description TEXT,
  CONSTRAINT gdcc_ntv UNIQUE (constraint_name, constraint_type, value));
"#;

/// A table without places. Names of tables and columns are our own and plain, so that none needs quoting but by habit.
fn attributes(database: &Connection, table: &Table, changed: &str, words: &Words) -> rusqlite::Result<()> {
    begin(database, table.name, "", &table.columns)?;
    let title = words.word(&table.words());
    database.execute(
        "INSERT INTO gpkg_contents (table_name, data_type, identifier, description, last_change) VALUES (?1, 'attributes', ?1, ?2, ?3)",
        [table.name, &title, changed],
    )?;
    describe(database, table.name, &table.columns, words)?;
    let marks = vec!["?"; table.columns.len()].join(", ");
    let names = names(&table.columns);
    let mut insert =
        database.prepare(&format!("INSERT INTO \"{}\" ({names}) VALUES ({marks})", table.name))?;
    for row in &table.rows {
        insert.execute(params_from_iter(row.iter().map(value)))?;
    }
    Ok(())
}

fn begin(database: &Connection, name: &str, geometry: &str, columns: &[Column]) -> rusqlite::Result<()> {
    let columns: Vec<String> = columns
        .iter()
        .map(|column| {
            let kind = match column.holds {
                Holds::Text | Holds::OneOf(_) => "TEXT",
                Holds::Whole => "INTEGER",
                Holds::Number | Holds::Amount => "DOUBLE",
                Holds::Day => "DATE",
                Holds::Yes => "BOOLEAN",
            };
            format!("\"{}\" {kind}{}", column.name, if column.needed { " NOT NULL" } else { "" })
        })
        .collect();
    database.execute_batch(&format!(
        "CREATE TABLE \"{name}\" (fid INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL, {geometry}{})",
        columns.join(", ")
    ))
}

fn names(columns: &[Column]) -> String {
    columns.iter().map(|column| format!("\"{}\"", column.name)).collect::<Vec<_>>().join(", ")
}

fn describe(database: &Connection, table: &str, columns: &[Column], words: &Words) -> rusqlite::Result<()> {
    let mut insert = database.prepare(
        "INSERT INTO gpkg_data_columns (table_name, column_name, name, title, description) VALUES (?1, ?2, ?2, ?3, ?4)",
    )?;
    for column in columns {
        let title = column.unit.map_or(column.name.to_owned(), |unit| format!("{} [{unit}]", column.name));
        insert.execute([table, column.name, &title, &words.word(&column.words())])?;
    }
    Ok(())
}

fn value(cell: &Cell) -> Value {
    match cell {
        Cell::Empty => Value::Null,
        Cell::Text(text) => Value::Text(text.clone()),
        Cell::Whole(number) => Value::Integer(*number),
        Cell::Number(number) => Value::Real(*number),
        Cell::Day(date) => Value::Text(date.to_string()),
        Cell::Yes(yes) => Value::Integer(i64::from(*yes)),
    }
}

/// The lines of one shape: both ends known, or one point.
fn features(
    database: &Connection,
    name: &str,
    shape: &str,
    placed: &[Placed],
    changed: &str,
    words: &Words,
) -> rusqlite::Result<()> {
    let columns = [
        Column::new("site", Holds::Text).needed(),
        Column::new("line", Holds::Text).needed(),
        Column::new("stratum", Holds::Text),
        Column::new("plot", Holds::Text),
        Column::new("date", Holds::Day),
        Column::of("canopy_cover", "1"),
        Column::new("place", Holds::Text).needed(),
        Column::of("place_uncertainty_m", "m"),
    ];
    begin(database, name, &format!("geom {shape}, "), &columns)?;
    let title = words.word(if shape == "POINT" { "export-points-drawn" } else { "export-lines-drawn" });
    let drawn: Vec<(&Placed, Vec<Position>)> =
        placed.iter().filter_map(|one| Some((one, corners(one.told, shape)?))).collect();
    let all = || drawn.iter().flat_map(|(_, corners)| corners).map(|corner| corner.degrees());
    let most = |at: usize, better: fn(f64, f64) -> f64| all().map(|corner| corner[at]).reduce(better);
    database.execute(
        "INSERT INTO gpkg_contents VALUES (?1, 'features', ?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)",
        rusqlite::params![
            name,
            title,
            changed,
            most(1, f64::min),
            most(0, f64::min),
            most(1, f64::max),
            most(0, f64::max),
            WGS_84
        ],
    )?;
    database.execute(
        "INSERT INTO gpkg_geometry_columns VALUES (?1, 'geom', ?2, ?3, 0, 0)",
        rusqlite::params![name, shape, WGS_84],
    )?;
    describe(database, name, &columns, words)?;
    let names = names(&columns);
    let mut insert = database
        .prepare(&format!("INSERT INTO \"{name}\" (geom, {names}) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)"))?;
    for (one, corners) in &drawn {
        let (what, off) = match one.told {
            Told::Blurred(_, metres) => ("blurred", Some(f64::from(metres))),
            _ => ("exact", None),
        };
        insert.execute(rusqlite::params![
            geometry(corners),
            one.site,
            one.line,
            one.stratum,
            one.plot,
            one.date.map(|date| date.to_string()),
            one.cover,
            what,
            off
        ])?;
    }
    Ok(())
}

/// The corners of a place, if it is of this shape.
fn corners(told: Told, shape: &str) -> Option<Vec<Position>> {
    match (told, shape) {
        (Told::Exact(start, Some(end)), "LINESTRING") => Some(vec![start, end]),
        (Told::Exact(point, None) | Told::Blurred(point, _), "POINT") => Some(vec![point]),
        _ => None,
    }
}

/// A geometry as it is stored: the head, without an envelope, and well-known binary, all least significant byte first.
fn geometry(corners: &[Position]) -> Vec<u8> {
    const LITTLE_ENDIAN: u8 = 1;
    const POINT: u32 = 1;
    const LINE_STRING: u32 = 2;
    let mut bytes = vec![b'G', b'P', 0, LITTLE_ENDIAN];
    bytes.extend(WGS_84.to_le_bytes());
    bytes.push(LITTLE_ENDIAN);
    if let [point] = corners {
        bytes.extend(POINT.to_le_bytes());
        bytes.extend(ordinates(*point));
    } else {
        bytes.extend(LINE_STRING.to_le_bytes());
        bytes.extend(u32::try_from(corners.len()).unwrap_or(u32::MAX).to_le_bytes());
        bytes.extend(corners.iter().flat_map(|corner| ordinates(*corner)));
    }
    bytes
}

/// Longitude, then latitude.
fn ordinates(position: Position) -> impl Iterator<Item = u8> {
    let [latitude, longitude] = position.degrees();
    longitude.to_le_bytes().into_iter().chain(latitude.to_le_bytes())
}
