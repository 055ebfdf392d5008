//! Boundaries that would do harm: each is refused in words, within bounded memory.

use crate::{site, source};
use std::io::{Cursor, Write as _};
use tautline_exchange::Source;
use tautline_exchange::boundary::{Asked, Purpose, read};
use tautline_exchange::limits::LARGEST_BOUNDARY;
use tautline_survey::boundary::Reference;
use tautline_survey::message::{Message, Value};
use zip::write::SimpleFileOptions;

/// Why a file is refused; whatever it is called, it is told by what it holds.
fn refusal(bytes: Vec<u8>) -> Message {
    let source = Source { name: "a".into(), bytes };
    let asked = Asked { reference: Some(Reference::default()), ..Asked::of(Purpose::Ground) };
    read(&source, &[], &asked).expect_err("it is refused")
}

fn packed(parts: &[(&str, &[u8])]) -> Vec<u8> {
    let mut out = zip::ZipWriter::new(Cursor::new(Vec::new()));
    let deflated = SimpleFileOptions::default().compression_method(zip::CompressionMethod::Deflated);
    for (name, bytes) in parts {
        out.start_file(*name, deflated).unwrap();
        out.write_all(bytes).unwrap();
    }
    out.finish().unwrap().into_inner()
}

/// A packed boundary that is broken off, or that unpacks to more than a boundary ever is: in one part, or in all of them.
#[test]
fn packed_boundaries_broken_off_and_without_end() {
    let whole = source("strata.zip").bytes;
    for end in (4..whole.len()).step_by(29) {
        assert_eq!(refusal(whole[..end].to_vec()).code, "packed-damaged", "{end} of {}", whole.len());
    }
    let spaces = vec![b' '; usize::try_from(LARGEST_BOUNDARY).unwrap() + 1];
    let one = packed(&[("doc.kml", &spaces)]);
    assert!(one.len() < 1 << 17, "{}", one.len());
    assert_eq!(refusal(one).code, "packed-too-large");
    let half = &spaces[..=spaces.len() / 2];
    assert_eq!(refusal(packed(&[("a.kml", half), ("b.kml", half)])).code, "packed-too-large");
    assert_eq!(refusal(packed(&[("../../doc.txt", b"<kml/>")])).code, "boundary-packed-without");
}

/// In GPX as in KML: names that stand for themselves a thousandfold (W3C XML 1.0, 4.4) and one that stands for a file.
#[test]
fn no_entity_is_followed() {
    for root in ["gpx", "kml"] {
        for entity in [r#""ha""#, r#"SYSTEM "file:///etc/passwd""#] {
            let text = format!("<!DOCTYPE x [<!ENTITY a {entity}>]><{root}><name>&a;</name></{root}>");
            let refused = refusal(text.into());
            assert_eq!(refused.code, "boundary-not-xml", "{root}: {entity}");
            assert!(
                refused.values.iter().all(|(name, _)| ["row", "character"].contains(name)),
                "{refused:?}"
            );
        }
    }
}

/// Text of another encoding is read where it says so itself, and named where it doesn't.
#[test]
fn boundaries_in_other_encodings() {
    for name in ["site.kml", "walked.gpx"] {
        let known = site(name);
        let text = String::from_utf8(source(name).bytes).unwrap();
        for units in [u16::to_le_bytes, u16::to_be_bytes] {
            let bytes: Vec<u8> = format!("\u{feff}{text}").encode_utf16().flat_map(units).collect();
            let cut = bytes[..bytes.len() - 1].to_vec();
            let wide = Source { name: name.into(), bytes };
            assert_eq!(read(&wide, &[], &Asked::of(Purpose::Ground)).unwrap().boundary, known, "{name}");
            assert_eq!(refusal(cut).code, "boundary-damaged");
        }
    }
    for text in ["<kml>\n<name>Pi\u{f1}on</name></kml>", "{\"type\":\n\"Pi\u{f1}on\"}"] {
        let latin: Vec<u8> = text.chars().map(|c| u8::try_from(u32::from(c)).unwrap()).collect();
        let refused = refusal(latin);
        assert_eq!(
            (refused.code, refused.values),
            ("boundary-other-encoding", vec![("row", Value::from(2_u64))])
        );
    }
}

/// Few bytes that would be much in memory: rows of nothing, cells of a letter each, lists of noughts.
#[test]
fn tables_and_lists_without_end() {
    let mut shapes = vec![0_u8; 100];
    shapes[..4].copy_from_slice(&9994_u32.to_be_bytes());
    let mut table = vec![0_u8; 32 + 32 + 1];
    table[8..10].copy_from_slice(&65_u16.to_le_bytes()); // the head's own length
    table[10..12].copy_from_slice(&2_u16.to_le_bytes()); // a record's
    (table[32], table[48], table[64]) = (b'N', 1, 0x0d);
    table.extend(b" x".repeat(2_000_001));
    let asked = Asked { reference: Some(Reference::default()), ..Asked::of(Purpose::Ground) };
    let beside = [Source { name: "a.dbf".into(), bytes: table }];
    let refused = read(&Source { name: "a.shp".into(), bytes: shapes }, &beside, &asked).unwrap_err();
    assert_eq!(refused.code, "boundary-too-large");

    let list = format!(r#"{{"type":"Polygon","coordinates":[{}0]}}"#, "0,".repeat(4_000_001));
    assert_eq!(refusal(list.into()).code, "boundary-too-large");
    assert_eq!(refusal(br#"{"type":"Polygon","coordinates":[[[0,0],[1,"#.to_vec()).code, "geojson-not-json");

    let columns: Vec<String> = (0..1_900).map(|at| format!("c{at}")).collect();
    let rows = "with recursive n(i) as (select 1 union all select i + 1 from n where i < 2200)";
    let wide = geopackage(&format!(
        "create table t (geom blob, {}); insert into t (c0) {rows} select null from n;",
        columns.join(",")
    ));
    assert!(wide.len() < 10 << 20, "{}", wide.len());
    assert_eq!(refusal(wide).code, "boundary-too-large");
}

/// A database in whose schema a question without end waits: it isn't asked.
#[test]
fn a_view_without_end_is_not_looked_at() {
    let endless = "with recursive n(i) as (select 1 union all select i + 1 from n) select i as geom from n";
    let refused = refusal(geopackage(&format!("create view t as {endless};")));
    assert_eq!(refused.code, "boundary-nothing", "no table of features is there");
    let instead = "drop table gpkg_geometry_columns; create view gpkg_geometry_columns as ";
    let columns = "select i as table_name, i as column_name, i as srs_id from";
    let endless = format!("{instead} {columns} ({});", endless.replace("i as geom", "i"));
    assert_eq!(refusal(geopackage(&endless)).code, "boundary-not-geopackage");
}

/// A GeoPackage whose one table of features, `t`, is made by these commands; OGC 12-128r19, annex C, as far as it is read.
fn geopackage(commands: &str) -> Vec<u8> {
    let mut database = rusqlite::Connection::open_in_memory().unwrap();
    let tables = "create table gpkg_spatial_ref_sys (srs_id, organization text, organization_coordsys_id integer, definition text);
        insert into gpkg_spatial_ref_sys values (4326, 'EPSG', 4326, '');
        create table gpkg_geometry_columns (table_name text, column_name text, srs_id integer);
        insert into gpkg_geometry_columns values ('t', 'geom', 4326);";
    database.execute_batch(&format!("{tables}{commands}")).unwrap();
    database.serialize(rusqlite::MAIN_DB).unwrap().to_vec()
}
