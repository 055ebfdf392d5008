//! Lines out of a map, as they come from receivers and map programs. All of them are invented.

use crate::source;
use tautline_engine::length::DecimalMark;
use tautline_exchange::{Options, Source};
use tautline_survey::boundary::{Pair, Reference};
use tautline_survey::input::Input;
use tautline_survey::place::{LinePlace, Position};

const FLAT: &str = "Hollow Flat (invented)";
const RIM: &str = "Rim Draw (invented)";

/// A line's place as it would be typed.
fn place(site: &str, line: &str, start: (&str, &str), end: Option<(&str, &str)>) -> LinePlace {
    let read = |(north, east)| Position::read(north, east, DecimalMark::Point);
    let (start, end) = (read(start).unwrap(), end.and_then(read));
    LinePlace { site: site.to_owned(), line: line.to_owned(), start, end }
}

fn read(source: Source, site: Option<&str>) -> Input {
    let options = Options { site: site.map(str::to_owned), ..Options::default() };
    tautline_exchange::read(&[source], &options).input
}

fn codes(input: &Input) -> Vec<&str> {
    input.findings.iter().map(|one| one.message.code).collect()
}

/// A route, marks at both ends and a mark at the zero alone; their site stands in their names, or somebody says it.
#[test]
fn stakes_of_a_receiver() {
    let text = format!(
        r#"<gpx><wpt lat="42.31" lon="-113.69"><name>{FLAT} B1 0</name></wpt>
        <wpt lat="42.311" lon="-113.69"><name>{FLAT} B1 end</name></wpt>
        <wpt lat="42.32" lon="-113.7"><name>B2</name></wpt>
        <rte><name>{FLAT} B3</name><rtept lat="42.33" lon="-113.7"/><rtept lat="42.331" lon="-113.7"/></rte></gpx>"#
    );
    let stakes = || Source { name: "stakes.gpx".into(), bytes: text.clone().into() };
    let input = read(stakes(), Some(FLAT));
    let expected = [
        place(FLAT, "B1", ("42.31", "-113.69"), Some(("42.311", "-113.69"))),
        place(FLAT, "B2", ("42.32", "-113.7"), None),
        place(FLAT, "B3", ("42.33", "-113.7"), Some(("42.331", "-113.7"))),
    ];
    assert_eq!((input.places.as_slice(), codes(&input)), (expected.as_slice(), vec![]));
    assert_eq!(codes(&read(stakes(), None)), ["boundary-refused"]);
}

/// A place that was moved to the middle of a square, or that isn't told (RFC 7946, 3.2), is no place of a line; ground is none.
#[test]
fn lines_of_a_map_program() {
    let line = |line: &str, place: &str, geometry: &str| {
        format!(
            r#"{{"type":"Feature","properties":{{"use":"line","site":"{RIM}","line":"{line}","place":"{place}"}},"geometry":{geometry}}}"#
        )
    };
    let features = [
        line("1", "exact", r#"{"type":"LineString","coordinates":[[-113.1,38.1],[-113.1,38.2]]}"#),
        line("2", "blurred", r#"{"type":"Point","coordinates":[-113.1,38.1]}"#),
        line("3", "withheld", "null"),
        r#"{"type":"Feature","properties":{"stratum":"draw"},"geometry":{"type":"Polygon","coordinates":[[[0,0],[1,0],[1,1],[0,0]]]}}"#.to_owned(),
    ];
    let text = format!(r#"{{"type":"FeatureCollection","features":[{}]}}"#, features.join(","));
    let input = read(Source { name: "lines.geojson".into(), bytes: text.into() }, None);
    assert_eq!(input.places, [place(RIM, "1", ("38.1", "-113.1"), Some(("38.2", "-113.1")))]);
    assert_eq!(codes(&input), ["map-no-lines", "map-kept-back"]);
    // opened as any file is: text is read to its end, and so is a map in a database
    let whole = source("site.gpkg").bytes;
    let input = read(Source::open("site.gpkg", whole.as_slice()).unwrap(), None);
    assert_eq!(input.places.iter().map(|one| one.line.as_str()).collect::<Vec<_>>(), ["K1"]);
}

/// As boundaries are read: a shapefile with its table and its reference beside it, and packed. K1 lies from 42.302° to 42.30245° N
/// (`make.py`); the road is none of the lines.
#[test]
fn lines_of_a_shapefile() {
    let parts = || ["roads.shp", "roads.dbf", "roads.prj", "roads.shx", "roads.cpg"].map(source);
    let expected = [place(FLAT, "K1", ("42.302", "-113.685"), Some(("42.30245", "-113.685")))];
    let options = |site: &str| Options { site: Some(site.to_owned()), ..Options::default() };
    let input = tautline_exchange::read(&parts(), &options(FLAT)).input;
    assert_eq!((input.places.as_slice(), codes(&input)), (expected.as_slice(), vec!["map-no-lines"]));
    let packed = packed(&parts());
    let input = read(Source { name: "lines.zip".into(), bytes: packed }, Some(FLAT));
    assert_eq!((input.places.as_slice(), codes(&input)), (expected.as_slice(), vec!["map-no-lines"]));
    // alone it doesn't say where on earth it is
    assert_eq!(codes(&read(source("roads.shp"), Some(FLAT))), ["boundary-refused"]);
    // a table that stands alone is none of ours
    assert_eq!(codes(&read(source("roads.dbf"), Some(FLAT))), ["file-not-text"]);
}

/// On another reference where lines are read: by whoever knows datums, else refused.
#[test]
fn lines_on_another_datum() {
    // the strata's reference beside the roads' shapes: numbers that are none of its own, which is told by who reads them
    let mut parts = ["roads.shp", "roads.dbf", "strata-utm83.prj"].map(source);
    parts[2].name = "roads.prj".into();
    let options = |on_wgs84| Options { site: Some(FLAT.to_owned()), on_wgs84, ..Options::default() };
    assert_eq!(codes(&tautline_exchange::read(&parts, &options(None)).input), ["boundary-refused"]);
    let over = |reference: Reference, [x, y]: Pair| {
        assert_eq!(reference.to_string(), "NAD83 UTM 12 N");
        Some(([x + 1.0, y + 2.0], 3))
    };
    let input = tautline_exchange::read(&parts, &options(Some(over))).input;
    assert_eq!(input.places, [place(FLAT, "K1", ("44.302", "-112.685"), Some(("44.30245", "-112.685")))]);
    assert_eq!(codes(&input), ["map-no-lines", "map-brought-over"]);
}

/// Files packed as a map program packs them.
fn packed(files: &[Source]) -> Vec<u8> {
    let mut packed = zip::ZipWriter::new(std::io::Cursor::new(Vec::new()));
    for file in files {
        let options = zip::write::SimpleFileOptions::default();
        packed.start_file(format!("lines/{}", file.name), options).unwrap();
        std::io::Write::write_all(&mut packed, &file.bytes).unwrap();
    }
    packed.finish().unwrap().into_inner()
}
