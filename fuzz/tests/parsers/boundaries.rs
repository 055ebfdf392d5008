//! Files of map programs that no map program would write.

use crate::EACH;
use crate::text::text;
use bolero::check;
use tautline_exchange::Source;
use tautline_exchange::boundary::{Asked, Purpose, read};

/// What stands in GeoJSON, KML and GPX.
const PIECES: &[&str] = &[
    "{\"type\":\"Polygon\",\"coordinates\":",
    "{\"type\":\"MultiPolygon\",\"coordinates\":",
    "{\"type\":\"LineString\",\"coordinates\":",
    "{\"type\":\"Feature\",\"properties\":{\"use\":\"keep out\",\"buffer\":1e99},\"geometry\":",
    "{\"type\":\"FeatureCollection\",\"features\":[",
    "{\"type\":\"GeometryCollection\",\"geometries\":[",
    "[[[0,0],[0.01,0],[0.01,0.01],[0,0]]]",
    "[[0,0],[0.01,0]]",
    "[",
    "]",
    "{",
    "}",
    ",",
    "null",
    "1e999",
    "-181",
    "\"\\ud800\"",
    "<kml xmlns=\"http://www.opengis.net/kml/2.2\">",
    "</kml>",
    "<Placemark>",
    "</Placemark>",
    "<Polygon><outerBoundaryIs><LinearRing><coordinates>",
    "</coordinates></LinearRing></outerBoundaryIs></Polygon>",
    "<LineString><coordinates>",
    "</coordinates></LineString>",
    "<name>",
    "</name>",
    "<gpx xmlns=\"http://www.topografix.com/GPX/1/1\" version=\"1.1\" creator=\"x\">",
    "</gpx>",
    "<trk><trkseg>",
    "</trkseg></trk>",
    "<rte>",
    "</rte>",
    "<trkpt lat=\"42\" lon=\"-110\"/>",
    "<trkpt lat=\"NaN\" lon=\"1e999\"/>",
    "<rtept lat=\"42\" lon=\"-110\"/>",
    "<wpt lat=\"42\"/>",
    "<!DOCTYPE kml [<!ENTITY a \"b\">]>",
    "&a;",
    "0,0 0.01,0 0.01,0.01 0,0",
    "-110.5,42.5,0",
    " ",
];

/// The head of a shapefile of polygons (ESRI 1998, p. 4): its mark, its length in words of 16 bits, its version and its kind.
fn shapefile(records: &[u8]) -> Vec<u8> {
    let mut file = 9994_i32.to_be_bytes().to_vec();
    file.extend([0; 20]);
    file.extend(u32::try_from((100 + records.len()) / 2).unwrap_or(u32::MAX).to_be_bytes());
    file.extend(1000_i32.to_le_bytes());
    file.extend(5_i32.to_le_bytes());
    file.extend([0; 64]);
    file.extend(records);
    file
}

#[test]
fn boundary() {
    check!(name = "boundary").with_test_time(EACH).for_each(|bytes: &[u8]| {
        let beside = |ending: &str| Source { name: format!("a.{ending}"), bytes: bytes.to_vec() };
        let package = [b"SQLite format 3\0", bytes].concat();
        for bytes in [text(bytes, PIECES), shapefile(bytes), package] {
            let source = Source { name: "a".into(), bytes };
            for purpose in
                [Purpose::Ground, Purpose::KeepOut { buffer: 1_000, crossed: Some(false) }, Purpose::There]
            {
                let once = read(&source, &[beside("dbf"), beside("prj")], &Asked::of(purpose));
                // what is found is found again
                let again = read(&source, &[beside("dbf"), beside("prj")], &Asked::of(purpose));
                assert_eq!(format!("{once:?}"), format!("{again:?}"));
            }
        }
    });
}
