//! A layout as a record, and a record as a layout again.

use crate::lay::end;
use crate::magnetic::{Declination, NoDeclination, declination};
use crate::position::Position;
use crate::site::{BoundaryError, Site, square_metres};
use crate::walk::Walking;
use tautline_engine::num::count;
use tautline_engine::place::plane::Point;
use tautline_engine::place::region::Shape;
use tautline_survey::date::Date;
use tautline_survey::drawn::{DrawnLayout, DrawnLine, Ground, KeptOut};
use tautline_survey::layout::{End, LaidLine, LayoutOutput, StratumOutput};
use tautline_survey::output::VERSION;
use tautline_survey::place;

/// A layout as it is kept; why so many lines, and what their names begin with, are handed in.
pub fn record(
    site: &Site,
    layout: &LayoutOutput,
    names: &str,
    reason: &str,
    date: Option<Date>,
) -> DrawnLayout {
    let ring = |ring: &Vec<Point>| ring.iter().map(|&point| kept(site.local.back(point))).collect::<Vec<_>>();
    let ground = site.strata.iter().zip(&layout.strata).map(|((stratum, region), told)| Ground {
        stratum: stratum.clone(),
        area: u64::try_from(region.area()).unwrap_or(u64::MAX),
        wanted: whole(told.wanted),
        placed: whole(told.placed),
        polygons: region.polygons.iter().map(|one| one.rings.iter().map(ring).collect()).collect(),
    });
    let keep_out = site.keep_out.iter().map(|one| {
        let (area, rings) = match &one.shape {
            Shape::Area(polygon) => (true, polygon.rings.iter().map(ring).collect()),
            Shape::Way(way) => (false, vec![ring(way)]),
        };
        // what goes without saying isn't written
        let crossed = Some(one.crossed).filter(|&crossed| crossed == area);
        KeptOut { buffer: one.buffer, area, crossed, rings }
    });
    let lines = layout.lines.iter().map(|line| DrawnLine {
        line: line.line.clone(),
        stratum: line.stratum.clone(),
        plot: line.plot.clone(),
        start: billionths(&line.start),
        end: billionths(&line.end),
        bearing: line.true_bearing,
        reserve: line.reserve,
        draw: whole(line.draw),
        turned: line.turned,
        staked: line.staked,
    });
    DrawnLayout {
        site: layout.site.clone(),
        names: names.to_owned(),
        date,
        reason: reason.to_owned(),
        seed: layout.seed.to_string(),
        design: layout.design.clone(),
        edge: layout.edge.clone(),
        length: layout.line_length.clone(),
        length_mm: layout.line_length_mm,
        apart_mm: layout.apart_mm,
        judged: layout.judged.clone(),
        position_error_m: layout.position_error_m,
        ground: ground.collect(),
        keep_out: keep_out.collect(),
        lines: lines.collect(),
        walk: layout.walk.clone(),
        from: begins(layout).map(billionths),
        given_up: [layout.given_up_at_the_edge, layout.given_up_kept_out, layout.given_up_too_near]
            .map(whole),
    }
}

/// Where a walk begins that comes to its first line from elsewhere.
fn begins(layout: &LayoutOutput) -> Option<&End> {
    layout.legs.first().filter(|leg| leg.from.is_none())?.points.first()
}

/// The site and the layout of a record; compass bearings are those of a date and a height in metres.
///
/// # Errors
/// a record whose ground is none, or no declination for the date or height
pub fn layout(record: &DrawnLayout, compass: Option<(Date, f64)>) -> Result<(Site, LayoutOutput), NoLayout> {
    let site = Site::of(&record.boundary()).map_err(NoLayout::Boundary)?;
    let compass = compass
        .map(|(date, height)| Ok((date, declination(site.middle, height, date)?)))
        .transpose()
        .map_err(NoLayout::NoDeclination)?;
    let [edge, kept_out, near] = record.given_up.map(|count| count as usize);
    let strata = record.ground.iter().zip(&site.strata).map(|(ground, (_, region))| StratumOutput {
        name: ground.stratum.clone(),
        area_m2: square_metres(region),
        wanted: ground.wanted as usize,
        placed: ground.placed as usize,
        points_per_hectare: (record.design != "baseline")
            .then(|| count(ground.placed as usize) / (square_metres(region) / 10_000.0)),
    });
    let lines: Vec<LaidLine> = record.lines.iter().map(|line| laid(&site, line, compass)).collect();
    let from = record.from.map(place::Position::degrees);
    let from = from.and_then(|[latitude, longitude]| Position::new(latitude, longitude));
    let legs = Walking::of(&site).legs(&lines, &record.walk, from);
    let output = LayoutOutput {
        format: "tautline.plan-lines",
        version: VERSION,
        site: record.site.clone(),
        seed: record.seed.parse().unwrap_or(0),
        design: record.design.clone(),
        edge: record.edge.clone(),
        judged: record.judged.clone(),
        line_length: record.length.clone(),
        line_length_mm: record.length_mm,
        apart_mm: record.apart_mm,
        strata: strata.collect(),
        position_error_m: record.position_error_m,
        declination: compass.map(|(date, found)| found.output(date)),
        lines,
        walk: record.walk.clone(),
        legs,
        given_up_at_the_edge: edge,
        given_up_kept_out: kept_out,
        given_up_too_near: near,
    };
    Ok((site, output))
}

/// Why a record gives no layout.
#[derive(Clone, Debug, PartialEq)]
pub enum NoLayout {
    /// Its ground is none.
    Boundary(BoundaryError),
    /// No declination for the date or height.
    NoDeclination(NoDeclination),
}

fn laid(site: &Site, line: &DrawnLine, compass: Option<(Date, Declination)>) -> LaidLine {
    let place = |at: place::Position| {
        let [latitude, longitude] = at.degrees();
        end(Position::new(latitude, longitude).unwrap_or(site.middle))
    };
    LaidLine {
        line: line.line.clone(),
        stratum: line.stratum.clone(),
        plot: line.plot.clone(),
        reserve: line.reserve,
        start: place(line.start),
        end: place(line.end),
        true_bearing: line.bearing,
        magnetic_bearing: compass.map(|(_, found)| found.to_a_tenth(f64::from(line.bearing))),
        draw: line.draw as usize,
        turned: line.turned,
        staked: line.staked,
    }
}

fn whole(count: usize) -> u32 {
    u32::try_from(count).unwrap_or(u32::MAX)
}

fn billionths(end: &End) -> place::Position {
    kept_degrees(end.latitude, end.longitude)
}

/// A position as records hold it.
pub fn kept(position: Position) -> place::Position {
    kept_degrees(position.latitude(), position.longitude())
}

fn kept_degrees(latitude: f64, longitude: f64) -> place::Position {
    #[expect(clippy::cast_possible_truncation, reason = "180 degrees are 1.8e11")]
    let billionths = |degrees: f64| (degrees * 1e9).round() as i64;
    place::Position { latitude: billionths(latitude), longitude: billionths(longitude) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lay::{Wanted, lay, tests};

    /// A layout kept and brought back is the same, to the last digit of each end; bearings for another date follow that date.
    #[test]
    fn kept_and_brought_back() {
        let (site, wanted) = (tests::site(), tests::wanted(8));
        let drawn = lay(&site, &wanted).unwrap();
        let kept = record(&site, &drawn, "", "half-width of 4 %", Date::new(2026, 3, 1));
        assert!(tautline_survey::canonical::bytes(&serde_json::to_value(&kept).unwrap()).is_some());
        let (again, back) = layout(&kept, wanted.compass).unwrap();
        assert_eq!(serde_json::to_value(&back.lines).unwrap(), serde_json::to_value(&drawn.lines).unwrap());
        assert_eq!(back.walk, drawn.walk);
        assert!((again.area() / site.area() - 1.0).abs() < 1e-8);
        // the way to the first line comes back too, from where the walk begins
        let from = Position::new(42.302, -113.71);
        let walked = lay(&site, &Wanted { from, ..wanted.clone() }).unwrap();
        let walked_again = layout(&record(&site, &walked, "", "", None), None).unwrap().1;
        let [first, again] = [&walked, &walked_again].map(|layout| &layout.legs[0]);
        assert!(first.from.is_none() && again.from.is_none() && again.to == first.to);
        assert!((again.metres - first.metres).abs() < 0.11 && kept.from.is_none(), "{again:?}");
        let plain = layout(&kept, None).unwrap().1;
        assert!(
            plain.declination.is_none() && plain.lines.iter().all(|line| line.magnetic_bearing.is_none())
        );
        let far = layout(&kept, Some((Date::new(2040, 1, 1).unwrap(), 0.0)));
        assert!(matches!(far, Err(NoLayout::NoDeclination(NoDeclination::OutsideTheModel))));
    }
}
