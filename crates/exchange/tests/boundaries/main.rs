//! One invented site in every format, as GDAL 3.12 wrote it (`testdata/boundaries/make.py`), and files that would do harm.

#![expect(clippy::unwrap_used, reason = "a test that can't read its own files has failed")]

mod hostile;
mod lines;

use std::path::Path;
use tautline_exchange::Source;
use tautline_exchange::boundary::{Asked, Found, Purpose, read};
use tautline_survey::boundary::{Boundary, Pair, Reference, Role, Shape};
use tautline_survey::message::Message;

fn source(name: &str) -> Source {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../testdata/boundaries").join(name);
    Source { name: name.to_owned(), bytes: std::fs::read(file).expect("the file is in testdata") }
}

fn found(name: &str, purpose: Purpose) -> Result<Found, Message> {
    let (stem, ending) = name.rsplit_once('.').unwrap();
    let beside = if ending == "shp" {
        vec![source(&format!("{stem}.dbf")), source(&format!("{stem}.prj"))]
    } else {
        Vec::new()
    };
    read(&source(name), &beside, &Asked::of(purpose))
}

fn site(name: &str) -> Boundary {
    found(name, Purpose::Ground).expect("it is read").boundary
}

const FLAT: [Pair; 5] =
    [[-113.70, 42.30], [-113.68, 42.30], [-113.68, 42.31], [-113.70, 42.31], [-113.70, 42.30]];

/// Ground of two strata, the flat with a hole; whichever way its rings wind and where they begin.
fn flat(boundary: &Boundary) -> Vec<Vec<Pair>> {
    assert_eq!(boundary.site.as_deref(), Some("Hollow Flat (invented)"));
    let of = |name: &str| {
        let role = Role::Stratum(Some(name.to_owned()));
        boundary
            .parts
            .iter()
            .find(|part| part.role == role)
            .map(|part| part.shape.clone())
            .expect("it is there")
    };
    let rings = |shape| match shape {
        Shape::Areas(mut areas) => areas.swap_remove(0),
        Shape::Rings(rings) => rings,
        Shape::Way(_) => panic!("an area"),
    };
    assert_eq!(rings(of("draw")).len(), 1);
    rings(of("flat"))
}

#[test]
fn every_format_says_the_same() {
    for name in ["site.gpkg", "site.kml", "strata.shp", "strata.zip"] {
        let site = site(name);
        let rings = flat(&site);
        let corners = |ring: &[Pair]| {
            let mut ring = ring.to_vec();
            ring.sort_by(|a, b| a.partial_cmp(b).unwrap());
            ring.dedup();
            ring
        };
        assert_eq!((rings.len(), corners(&rings[0])), (2, corners(&FLAT)), "{name}");
        assert!(site.parts.iter().all(|part| part.reference == Reference::default()), "{name}");
    }
}

#[test]
fn roads_with_their_buffer_and_lines_that_stay() {
    let roads = found("roads.shp", Purpose::KeepOut { buffer: 0, crossed: None }).unwrap().boundary;
    for boundary in [roads, site("site.gpkg"), site("site.kml")] {
        let role =
            |wanted: Role| boundary.parts.iter().find(|part| part.role == wanted).unwrap().shape.clone();
        let road = role(Role::KeepOut { buffer: 12_500, crossed: None });
        assert_eq!(road, Shape::Way(vec![[-113.70, 42.308], [-113.675, 42.3085]]));
        assert!(matches!(role(Role::Line("K1".into())), Shape::Way(way) if way.len() == 2));
    }
}

/// A walk round the site is ground; the same file handed in as roads is a road.
#[test]
fn a_way_that_was_walked() {
    let walked = site("walked.gpx");
    assert_eq!(walked.parts[0].shape, Shape::Rings(vec![FLAT[..4].to_vec()]));
    let road =
        found("walked.gpx", Purpose::KeepOut { buffer: 5_000, crossed: Some(false) }).unwrap().boundary;
    assert_eq!(road.parts[0].role, Role::KeepOut { buffer: 5_000, crossed: Some(false) });
    assert_eq!(road.parts[0].shape, Shape::Way(FLAT[..4].to_vec()));
}

#[test]
fn grids_and_datums_are_kept_as_they_are_said() {
    for (name, said) in [("site-utm.gpkg", "WGS84 UTM 12 N"), ("strata-utm83.shp", "NAD83 UTM 12 N")] {
        assert!(site(name).parts.iter().all(|part| part.reference.to_string() == said), "{name}");
    }
    // nothing says: refused, unless somebody says it
    let shapes = source("strata.shp");
    let refused = read(&shapes, &[], &Asked::of(Purpose::Ground)).unwrap_err();
    assert_eq!(refused.code, "boundary-no-reference");
    let old = Reference::read("NAD27").unwrap();
    let asked = Asked { reference: Some(old), ..Asked::of(Purpose::Ground) };
    let found = read(&shapes, &[], &asked).unwrap();
    assert!(found.asked_reference && found.boundary.parts.iter().all(|part| part.reference == old));
}

/// Broken off anywhere, or a byte another: read or refused, never a panic; and every prefix of a shapefile that is cut inside of a
/// record is refused.
#[test]
fn damaged_files_are_refused_or_read() {
    for name in ["site.gpkg", "site.kml", "strata.shp", "strata.zip", "walked.gpx"] {
        let whole = source(name);
        let step = whole.bytes.len() / 150 + 1;
        for at in (0..whole.bytes.len()).step_by(step) {
            let mut cut = Source { name: name.to_owned(), bytes: whole.bytes[..at].to_vec() };
            let asked = Asked { reference: Some(Reference::default()), ..Asked::of(Purpose::Ground) };
            let _ = read(&cut, &[], &asked);
            cut.bytes = whole.bytes.clone();
            cut.bytes[at] ^= 0xff;
            let _ = read(&cut, &[], &asked);
        }
    }
    let whole = source("strata.shp").bytes;
    let cut = Source { name: "a.shp".into(), bytes: whole[..whole.len() - 8].to_vec() };
    let asked = Asked { reference: Some(Reference::default()), ..Asked::of(Purpose::Ground) };
    assert_eq!(read(&cut, &[], &asked).unwrap_err().code, "boundary-damaged");
}

#[test]
fn what_would_do_harm() {
    let code = |bytes: Vec<u8>| {
        let source = Source { name: "a".into(), bytes };
        let asked = Asked { reference: Some(Reference::default()), ..Asked::of(Purpose::Ground) };
        read(&source, &[], &asked).unwrap_err().code
    };
    // counts without bytes for them
    let mut shapes = vec![0_u8; 100];
    shapes[..4].copy_from_slice(&9994_u32.to_be_bytes());
    let record =
        [&5_u32.to_le_bytes()[..], &[0; 32], &u32::MAX.to_le_bytes(), &u32::MAX.to_le_bytes()].concat();
    shapes.extend(1_u32.to_be_bytes());
    shapes.extend(u32::try_from(record.len() / 2).unwrap().to_be_bytes());
    shapes.extend(&record);
    assert_eq!(code(shapes), "boundary-damaged");
    // names that stand for themselves a thousandfold
    let laughs =
        r#"<?xml version="1.0"?><!DOCTYPE kml [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;&a;">]><kml>&b;</kml>"#;
    assert_eq!(code(laughs.into()), "boundary-not-xml");
    assert_eq!(code(format!("<kml>{}", "<a>".repeat(200_000)).into()), "boundary-too-deep");
    assert_eq!(code("[".repeat(200_000).into()), "geojson-not-json");
    assert_eq!(code("<html></html>".into()), "boundary-other-xml");
    assert_eq!(code(b"SQLite format 3\0and nothing".to_vec()), "boundary-not-geopackage");
    assert_eq!(code(b"site,line\n".to_vec()), "boundary-unknown");
    let pairs = "0,0 ".repeat(500_001);
    let kml = format!(
        "<kml><Placemark><LineString><coordinates>{pairs}</coordinates></LineString></Placemark></kml>"
    );
    assert_eq!(code(kml.into()), "boundary-too-many-corners");
    let ring = format!(r#"{{"type":"Polygon","coordinates":[[{}[0,0]]]}}"#, "[0,0],".repeat(20_001));
    assert_eq!(code(ring.into()), "boundary-outline-too-long");
}

#[test]
fn what_is_not_understood_is_named() {
    let gpx = r#"<gpx><trk><trkseg><trkpt lat="42.3" lon="east"/></trkseg></trk></gpx>"#;
    let source = Source { name: "a.gpx".into(), bytes: gpx.into() };
    let refused = read(&source, &[], &Asked::of(Purpose::Ground)).unwrap_err();
    assert_eq!(refused.code, "boundary-no-number");
    let pins =
        r"<kml><Placemark><name>gate</name><Point><coordinates>0,0</coordinates></Point></Placemark></kml>";
    let source = Source { name: "a.kml".into(), bytes: pins.into() };
    assert_eq!(read(&source, &[], &Asked::of(Purpose::Ground)).unwrap_err().code, "boundary-nothing");
}
