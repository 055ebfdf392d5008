//! Where lines lie and which way they run.

use super::{Answer, unknown};
use crate::example::Example;
use crate::printed::{Found, length, number};
use tautline_engine::length::Unit;
use tautline_engine::num::count;
use tautline_engine::place::baseline::{Baseline, Sides, Starts};
use tautline_engine::place::plane::Point;
use tautline_engine::seed::Seed;
use tautline_ground::magnetic::Declination;

/// So many layouts are drawn to count how often a shrub is met: the chance is then sure to about a sixth of a point.
const LAYOUTS: u64 = 60_000;

/// How often lines from random starts along a baseline meet a shrub of some width.
pub(super) fn baseline(example: &Example) -> Answer<'_> {
    let millimetres = |key: &str| length(example.needed(key)).nanometres() / Unit::Millimetre.nanometres();
    let (long, width) = (millimetres("baseline"), millimetres("shrub as wide as"));
    let lines: u16 = example.needed("lines").parse().expect("a number of lines");
    let drawn = Baseline {
        from: Point { x: 0, y: 0 },
        bearing: 90,
        length: long,
        lines,
        line_length: 50_000,
        apart: 0,
        starts: Starts::Random,
        sides: Sides::Left,
    };
    // a shrub in the middle, far from either end
    let shrub = (long - width) / 2..i64::midpoint(long, width);
    let mut met_by_first = 0_u32;
    let mut met = 0_u32;
    for layout in 0..LAYOUTS {
        let starts = drawn.lines(Seed::from_purpose("handbook baseline", &[layout])).expect("room enough");
        let hits = starts.iter().filter(|(start, ..)| shrub.contains(start)).count();
        met_by_first += u32::try_from(hits).unwrap_or(0);
        met += u32::from(hits > 0);
    }
    let all = count(usize::try_from(LAYOUTS).expect("few layouts"));
    Box::new(move |key| {
        Ok(match key {
            "met by one line" => Found::Number(f64::from(met_by_first) / all / f64::from(lines)),
            "met by some line" => Found::Number(f64::from(met) / all),
            other => return unknown(other),
        })
    })
}

/// A bearing on the compass, and where a line ends.
pub(super) fn bearing(example: &Example) -> Answer<'_> {
    let true_bearing = number(example.needed("true bearing"));
    let (degrees, way) = example.needed("declination").split_once("° ").expect("degrees and a side");
    let degrees = number(degrees) * if way == "west" { -1.0 } else { 1.0 };
    let metres = example.given("line").map(|line| length(line).nanometres() / Unit::Millimetre.nanometres());
    let compass = Declination { degrees, yearly: 0.0, uncertainty: 0.0, weak: false }.compass(true_bearing);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a bearing is 0 to 359")]
    let end = metres.map(|metres| Point { x: 0, y: 0 }.on(true_bearing as u16, metres));
    let in_metres = |millimetres: i64| {
        tautline_engine::length::Length::from_units(millimetres, Unit::Millimetre).in_unit(Unit::Metre)
    };
    Box::new(move |key| match (key, end) {
        ("bearing to set", _) => Ok(compass.into()),
        ("end, to the east", Some(end)) => Ok(in_metres(end.x).into()),
        ("end, to the north", Some(end)) => Ok(in_metres(end.y).into()),
        _ => unknown(key),
    })
}
