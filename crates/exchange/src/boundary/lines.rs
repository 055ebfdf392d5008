//! Lines out of a map program or a GPS receiver: where those lie that are read, as a table of lines.
//!
//! A line is a way, or a mark at its zero, and one at its end where there is one: `B1`, or `B1 0` and `B1 end` as receivers get
//! them from us. Areas, and what says that it is a stratum or to be kept out of, are left for a boundary.

use super::feature::Feature;
use super::{Asked, Purpose, features_of};
use crate::source::Source;
use crate::table::row;
use tautline_engine::num::decimal::shortest;
use tautline_survey::boundary::{Pair, Reference, Shape};
use tautline_survey::message::Message;

/// What a map says of lines.
#[derive(Debug, Default)]
pub(crate) struct Lines {
    /// A table of them, as it would be typed.
    pub(crate) table: String,
    /// Lines in the table.
    pub(crate) count: usize,
    /// Shapes that are no line.
    pub(crate) others: usize,
    /// Lines whose place is blurred or withheld: their middle of a square is no place to go to.
    pub(crate) kept_back: usize,
    /// The reference that places were brought over from, and how many metres they may be off by that.
    pub(crate) brought: Option<(Reference, u32)>,
}

/// A line's two ends, as far as they are known.
struct Found {
    site: String,
    line: String,
    start: Option<Pair>,
    end: Option<Pair>,
    /// By a way, which says more than two marks.
    by_way: bool,
}

/// Brings a pair of another reference to degrees on WGS 84, longitude first, and says how many metres it may be off. Which room knows
/// datums, hands it in.
pub type OnWgs84 = fn(Reference, Pair) -> Option<(Pair, u32)>;

/// Whether a file is a map: GeoJSON, GPX, KML, a GeoPackage or a shapefile.
pub(crate) fn is_map(bytes: &[u8]) -> bool {
    if bytes.starts_with(super::SHAPES) {
        return true;
    }
    if bytes.starts_with(super::DATABASE) {
        // a notebook is a database too; a GeoPackage says so of itself (OGC 12-128r19, requirement 2; `GP10` and `GP11` before)
        return bytes.get(68..70) == Some(b"GP");
    }
    let start = bytes.strip_prefix("\u{feff}".as_bytes()).unwrap_or(bytes).trim_ascii_start();
    let start = &start[..start.len().min(4096)];
    let holds = |text: &[u8]| start.windows(text.len()).any(|part| part == text);
    start.starts_with(b"{") && holds(b"\"type\"")
        || start.starts_with(b"<") && (holds(b"<gpx") || holds(b"<kml"))
}

/// The lines of a map; `site` is theirs where the map names none. What belongs to a shapefile is `beside` it.
pub(crate) fn lines(
    source: &Source,
    beside: &[Source],
    site: Option<&str>,
    on_wgs84: Option<OnWgs84>,
) -> Result<Lines, Message> {
    let features = features_of(source, beside, &Asked::of(Purpose::There))?;
    // the site that somebody says, or the only one that the map names anywhere
    let mut named: Vec<&str> = features.iter().filter_map(|feature| feature.field("site")).collect();
    named.dedup();
    let site = site.or(if let [only] = named[..] { Some(only) } else { None });
    let (mut read, mut found) = (Lines::default(), Vec::new());
    for feature in &features {
        let is_line = feature.field("use").is_none_or(|what| what.eq_ignore_ascii_case("line"));
        let ways: Vec<&Vec<Pair>> = feature
            .shapes
            .iter()
            .filter_map(|shape| if let Shape::Way(way) = shape { Some(way) } else { None })
            .collect();
        if feature.field("place").is_some_and(|place| !place.eq_ignore_ascii_case("exact")) {
            read.kept_back += 1;
        } else if let (true, [way]) = (is_line, ways.as_slice()) {
            let way = brought(way, feature.reference, on_wgs84, &mut read.brought)?;
            read.others += usize::from(!join(&mut found, feature, &way, site)?);
        } else {
            read.others += 1;
        }
    }
    read.table = row(&["site", "line", "start latitude", "start longitude", "end latitude", "end longitude"]);
    for one in &found {
        // an end whose zero nobody marked is half a line
        let Some(start) = one.start else {
            read.others += 1;
            continue;
        };
        let [start, end] = [Some(start), one.end].map(|place| match place {
            Some([longitude, latitude]) => [shortest(to_ninth(latitude)), shortest(to_ninth(longitude))],
            None => [String::new(), String::new()],
        });
        read.table += &row(&[&one.site, &one.line, &start[0], &start[1], &end[0], &end[1]]);
        read.count += 1;
    }
    Ok(read)
}

/// The two ends of a way on WGS 84.
fn brought(
    way: &[Pair],
    reference: Reference,
    on_wgs84: Option<OnWgs84>,
    from: &mut Option<(Reference, u32)>,
) -> Result<Vec<Pair>, Message> {
    let ends = [way.first(), way.last().filter(|_| way.len() > 1)].into_iter().flatten().copied();
    if reference == Reference::default() {
        return Ok(ends.collect());
    }
    let other = || Message::new("map-other-datum").with("found", reference.to_string());
    let over = on_wgs84.ok_or_else(other)?;
    ends.map(|end| {
        let (end, error) = over(reference, end).ok_or_else(other)?;
        let known = from.map_or(0, |(_, error)| error);
        *from = Some((reference, known.max(error)));
        Ok(end)
    })
    .collect()
}

/// Joins a way or a mark with what is known of its line; not where it has no name.
fn join(
    found: &mut Vec<Found>,
    feature: &Feature,
    way: &[Pair],
    site: Option<&str>,
) -> Result<bool, Message> {
    let (Some(name), Some(&first)) = (feature.field("line").or(feature.field("name")), way.first()) else {
        return Ok(false);
    };
    let own_site = feature.field("site").or(site).ok_or(Message::new("map-no-site"))?;
    let mark = way.len() == 1;
    // receivers know no site but in the name
    let name = name.strip_prefix(own_site).map_or(name, str::trim_start);
    let (name, is_end) = match name.rsplit_once(' ') {
        Some((line, "0")) if mark => (line, false),
        Some((line, "end")) if mark => (line, true),
        _ => (name, false),
    };
    if name.is_empty() {
        return Ok(false);
    }
    let at = found.iter().position(|one| one.site == own_site && one.line == name).unwrap_or(found.len());
    if at == found.len() {
        let (site, line) = (own_site.to_owned(), name.to_owned());
        found.push(Found { site, line, start: None, end: None, by_way: false });
    }
    let one = &mut found[at];
    match (mark, is_end) {
        (false, _) if !one.by_way => {
            (one.start, one.end, one.by_way) = (Some(first), way.last().copied(), true);
        }
        (true, false) if !one.by_way => one.start = one.start.or(Some(first)),
        (true, true) if !one.by_way => one.end = one.end.or(Some(first)),
        _ => {}
    }
    Ok(true)
}

/// To a billionth of a degree, a tenth of a millimetre: what is kept of a place.
fn to_ninth(degrees: f64) -> f64 {
    (degrees * 1e9).round() / 1e9
}
