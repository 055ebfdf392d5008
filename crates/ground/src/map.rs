//! A site and its lines as a map: metres to the east and to the north of the middle, and the degrees around it.

use crate::local::Local;
use crate::position::Position;
use crate::site::Site;
use tautline_engine::place::plane::Point;
use tautline_engine::place::region::Shape;
use tautline_survey::layout::{End, LayoutOutput, MapDegree, MapKeepOut, MapLine, MapOutput, MapStratum};
use tautline_survey::place::LinePlace;

/// The map of a layout.
pub fn map(site: &Site, layout: &LayoutOutput) -> MapOutput {
    let place = |end: &End| {
        let position = Position::new(end.latitude, end.longitude).unwrap_or(site.middle);
        metres(site.local.onto(position))
    };
    let lines = layout.lines.iter().map(|line| MapLine {
        line: line.line.clone(),
        from: place(&line.start),
        to: place(&line.end),
        reserve: line.reserve,
    });
    let (strata, keep_out) = ground(site);
    let degrees = degrees(site.local, site.middle, &corners(&strata, &[]));
    let way = layout.legs.iter().map(|leg| leg.points.iter().map(place).collect()).collect();
    MapOutput { strata, keep_out, lines: lines.collect(), way, degrees }
}

/// The strata of a site and what to keep out of.
fn ground(site: &Site) -> (Vec<MapStratum>, Vec<MapKeepOut>) {
    let ring = |points: &[Point]| -> Vec<[f64; 2]> { points.iter().map(|&point| metres(point)).collect() };
    let strata = site.strata.iter().map(|(name, region)| MapStratum {
        name: name.clone().unwrap_or_default(),
        rings: region.polygons.iter().flat_map(|polygon| &polygon.rings).map(|one| ring(one)).collect(),
    });
    let keep_out = site.keep_out.iter().flat_map(|kept| {
        let shapes = match &kept.shape {
            Shape::Area(polygon) => polygon.rings.iter().map(|one| (ring(one), true)).collect::<Vec<_>>(),
            Shape::Way(way) => vec![(ring(way), false)],
        };
        shapes.into_iter().map(|(places, closed)| MapKeepOut { places, closed, buffer_mm: kept.buffer })
    });
    (strata.collect(), keep_out.collect())
}

/// Every corner of strata and every end of lines.
fn corners(strata: &[MapStratum], lines: &[MapLine]) -> Vec<[f64; 2]> {
    let rings = strata.iter().flat_map(|stratum| stratum.rings.iter().flatten().copied());
    rings.chain(lines.iter().flat_map(|line| [line.from, line.to])).collect()
}

/// The map of lines whose places are known: on their ground, where its boundary is known too, else on a plane about the first
/// line's zero, and nothing where all lie in one point.
///
/// # Example
/// Invented: two lines of Hollow Flat, the second 100 m north of the first by the meridian's length at 38.5 degrees
/// (110 998 m a degree; Snyder 1987, USGS Professional Paper 1395, table 3, from memory).
/// ```
/// use tautline_survey::place::{LinePlace, Position};
/// let place = |line: &str, latitude| LinePlace {
///     site: "Hollow Flat (invented)".into(),
///     line: line.into(),
///     start: Position { latitude, longitude: -113_250_000_000 },
///     end: None,
/// };
/// let map = tautline_ground::map::of_places(&[place("1", 38_500_000_000), place("2", 38_500_900_917)], None).unwrap();
/// assert!((map.lines[1].from[1] - 100.0).abs() < 0.01 && map.lines[1].from == map.lines[1].to);
/// ```
pub fn of_places<'a>(
    places: impl IntoIterator<Item = &'a LinePlace>,
    site: Option<&Site>,
) -> Option<MapOutput> {
    let known = |place: tautline_survey::place::Position| {
        let [latitude, longitude] = place.degrees();
        Position::new(latitude, longitude)
    };
    let ends =
        |place: &'a LinePlace| Some((place, known(place.start)?, known(place.end.unwrap_or(place.start))?));
    let found: Vec<(&LinePlace, Position, Position)> = places.into_iter().filter_map(ends).collect();
    let &(_, first, _) = found.first()?;
    if site.is_none() && found.iter().all(|&(_, start, end)| start == first && end == first) {
        return None;
    }
    let (local, middle) = site.map_or_else(|| (Local::about(first), first), |site| (site.local, site.middle));
    let line = |(place, start, end): &(&LinePlace, Position, Position)| MapLine {
        line: place.line.clone(),
        from: metres(local.onto(*start)),
        to: metres(local.onto(*end)),
        reserve: false,
    };
    let lines: Vec<MapLine> = found.iter().map(line).collect();
    let (strata, keep_out) = site.map(ground).unwrap_or_default();
    let degrees = degrees(local, middle, &corners(&strata, &lines));
    Some(MapOutput { strata, keep_out, lines, way: Vec::new(), degrees })
}

fn metres(point: Point) -> [f64; 2] {
    #[expect(clippy::cast_precision_loss, reason = "a site is far smaller than 2^53 mm")]
    let metres = |millimetres: i64| millimetres as f64 / 1000.0;
    [metres(point.x), metres(point.y)]
}

/// Two to five lines each of latitude and longitude, at whole steps of a degree; none near the poles, where they crowd.
fn degrees(local: Local, middle: Position, places: &[[f64; 2]]) -> Vec<MapDegree> {
    let widest = |axis: usize| {
        let places = || places.iter();
        let low = places().map(|place| place[axis]).fold(f64::INFINITY, f64::min);
        let high = places().map(|place| place[axis]).fold(f64::NEG_INFINITY, f64::max);
        (low, high)
    };
    let ((west, east), (south, north)) = (widest(0), widest(1));
    if !(west < east && south < north) || middle.latitude().abs() > 85.0 {
        return Vec::new();
    }
    let back = |x: f64, y: f64| {
        #[expect(clippy::cast_possible_truncation, reason = "a site is far smaller than 2^63 mm")]
        let point = Point { x: (x * 1000.0).round() as i64, y: (y * 1000.0).round() as i64 };
        local.back(point)
    };
    let (corner, other) = (back(west, south), back(east, north));
    let mut found = Vec::new();
    for latitude in [true, false] {
        let of = |position: Position| if latitude { position.latitude() } else { position.longitude() };
        let (low, high) = (of(corner), of(other));
        let Some(step) = step(high - low) else { continue };
        let mut at = (low / step).ceil();
        while at * step <= high {
            let degree = at * step;
            let ends = if latitude {
                [Position::new(degree, corner.longitude()), Position::new(degree, other.longitude())]
            } else {
                [Position::new(corner.latitude(), degree), Position::new(other.latitude(), degree)]
            };
            if let [Some(from), Some(to)] = ends {
                let way = [from, to].map(|end| metres(local.onto(end)));
                found.push(MapDegree { degree: (degree * 1e6).round() / 1e6, way, latitude });
            }
            at += 1.0;
        }
    }
    found
}

/// The finest of one, two and five thousandths (and their tens) that gives five lines at most.
fn step(span: f64) -> Option<f64> {
    const STEPS: [f64; 12] = [0.0005, 0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0];
    STEPS.into_iter().find(|step| span > 0.0 && span / step <= 4.0)
}
