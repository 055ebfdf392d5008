//! What is wanted of a layout, as typed: read here, with a word where a field can't be; laid out by `tautline_ground`.

use super::fields::{number_of, share};
use super::sitting::Sitting;
use tautline_engine::effort::allot::{Allotment, Stratum, allot};
use tautline_engine::length::DecimalMark;
use tautline_engine::place::baseline::{Sides, Starts};
use tautline_engine::place::layout::{Ask, Bearing, Edge, Shape};
use tautline_engine::place::points::Design;
use tautline_ground::baseline::Walked;
use tautline_ground::lay::Wanted;
use tautline_ground::position::Position;
use tautline_ground::site::{Site, square_metres};
use tautline_ground::typed;
use tautline_survey::boundary::Reference;
use tautline_survey::date::Date;
use tautline_survey::measure::Measure;
use tautline_survey::message::{Message, Value};

/// More lines than anybody reads at one site, and a tape longer than any, in millimetres.
const MOST_LINES: usize = 1000;
const LONGEST: i64 = 10_000_000;

/// Where nobody says it: how far from a plot's centre its spokes begin, and how far apart lines of a baseline are.
const OFFSET: i64 = 5_000;
const ALONG_A_BASELINE: i64 = 5_000;

/// The layout as typed.
///
/// `deviation` is how far lines vary on the whole site, where anything says it.
pub(super) fn wanted(
    all: &Sitting,
    site: &Site,
    name: Option<String>,
    deviation: Option<f64>,
) -> Result<Wanted, Message> {
    let typed = &all.layout;
    let lines = whole(&all.number.lines, "many-lines")?.filter(|&lines| lines > 0);
    let lines = lines.ok_or_else(|| Message::new("where-no-number"))?;
    let length = millimetres(&typed.length, "where-length")?.filter(|&length| length > 0);
    let length = length.ok_or_else(|| wrong(&typed.length, "where-length"))?;
    let is_baseline = typed.shape == "baseline";
    let apart = if is_baseline { ALONG_A_BASELINE } else { length };
    let own_name = all.site.trim();
    Ok(Wanted {
        name: if own_name.is_empty() { name.unwrap_or_default() } else { own_name.to_owned() },
        names: typed.names.trim().to_owned(),
        ask: Ask {
            design: match typed.design.as_str() {
                "random" => Design::Random,
                "systematic" => Design::Systematic,
                _ => Design::Balanced,
            },
            wanted: lines,
            reserve: whole(&typed.reserve, "where-reserve")?.unwrap_or(lines.div_ceil(2)),
            shape: if typed.shape == "spokes" { spokes(all)? } else { Shape::Line },
            length,
            bearing: bearing(&typed.bearing)?,
            edge: if typed.edge == "redraw" { Edge::Redraw } else { Edge::Turn },
            apart: millimetres(&typed.apart, "where-apart")?.unwrap_or(apart),
        },
        shares: if typed.shares == "spread" { by_spread(all, site, lines, deviation)? } else { Vec::new() },
        bearings: bearings(all, site)?,
        line_length: typed.length.trim().to_owned(),
        seed: typed.seed.trim().parse().map_err(|_| wrong(&typed.seed, "where-seed"))?,
        compass: Date::read(&all.packet.date)
            .map(|date| (date, number_of(&all.packet.elevation).unwrap_or(0.0))),
        batch: whole(&typed.batch, "where-batch")?.filter(|&batch| batch > 0),
        from: Some(typed.from.trim())
            .filter(|from| !from.is_empty())
            .map(|from| place(from, "where-from"))
            .transpose()?,
        baseline: is_baseline.then(|| baseline(all)).transpose()?,
        take_in: true,
        judged: Some(typed.judged.trim().to_owned()).filter(|why| !why.is_empty()),
    })
}

fn bearing(text: &str) -> Result<Bearing, Message> {
    Bearing::read(text).ok_or_else(|| Message::new("option-bearing").with("found", text))
}

/// Bearings of strata that have their own; what was said of ground that is gone waits until it is back.
fn bearings(all: &Sitting, site: &Site) -> Result<Vec<(String, Bearing)>, Message> {
    let names = site.strata.iter().map(|(name, _)| name.clone().unwrap_or_default());
    let own = names.filter_map(|name| {
        let typed = all.layout.bearings.get(&name).filter(|typed| !typed.trim().is_empty())?;
        Some(bearing(typed).map(|own| (name, own)))
    });
    own.collect()
}

fn spokes(all: &Sitting) -> Result<Shape, Message> {
    let typed = &all.layout;
    let lines = whole(&typed.spokes, "where-spokes")?.and_then(|spokes| u16::try_from(spokes).ok());
    let lines = lines.filter(|spokes| (1..=36).contains(spokes));
    Ok(Shape::Spokes {
        lines: lines.ok_or_else(|| wrong(&typed.spokes, "where-spokes"))?,
        offset: millimetres(&typed.offset, "where-offset")?.unwrap_or(OFFSET),
    })
}

fn baseline(all: &Sitting) -> Result<Walked, Message> {
    let typed = &all.layout;
    let bearing = typed.baseline_bearing.trim().trim_end_matches('°').parse().ok();
    let bearing = bearing.filter(|&degrees: &u16| degrees <= 360);
    let length = millimetres(&typed.baseline_length, "where-baseline-length")?.filter(|&length| length > 0);
    Ok(Walked {
        from: place(&typed.baseline_from, "where-baseline-from")?,
        bearing: bearing.ok_or_else(|| wrong(&typed.baseline_bearing, "where-baseline-bearing"))? % 360,
        length: length.ok_or_else(|| wrong(&typed.baseline_length, "where-baseline-length"))?,
        starts: if typed.starts == "systematic" { Starts::Systematic } else { Starts::Random },
        sides: match typed.sides.as_str() {
            "left" => Sides::Left,
            "right" => Sides::Right,
            _ => Sides::Either,
        },
    })
}

/// Lines of each stratum by area and by the spread that was said of it on the step before, or of the whole site.
fn by_spread(
    all: &Sitting,
    site: &Site,
    lines: usize,
    deviation: Option<f64>,
) -> Result<Vec<(String, usize)>, Message> {
    let names: Vec<String> = site.strata.iter().map(|(name, _)| name.clone().unwrap_or_default()).collect();
    if names.len() < 2 {
        return Ok(Vec::new());
    }
    let own = |name: &String| all.number.spreads.get(name).and_then(|text| share(text));
    let spread = |name: &String| own(name).filter(|&own| own > 0.0).or(deviation);
    let spreads: Option<Vec<f64>> = names.iter().map(spread).collect();
    let spreads = spreads.ok_or_else(|| Message::new("where-no-spread").with("strata", names.clone()))?;
    let strata: Vec<Stratum> = site
        .strata
        .iter()
        .zip(spreads)
        .map(|((_, region), deviation)| Stratum {
            area: square_metres(region),
            deviation,
            cost: 1.0,
            least: 2,
        })
        .collect();
    let shares = allot(&strata, lines, Allotment::Neyman);
    let shares = shares.ok_or_else(|| Message::new("layout-too-few").with("least", 2 * names.len()))?;
    Ok(names.into_iter().zip(shares).collect())
}

fn wrong(found: &str, what: &'static str) -> Message {
    Message::new("where-not-read").with("found", found).with("what", Value::Word(what))
}

fn whole(text: &str, what: &'static str) -> Result<Option<usize>, Message> {
    let text = text.trim();
    let read = || text.parse().ok().filter(|&count| count <= MOST_LINES).ok_or_else(|| wrong(text, what));
    if text.is_empty() { Ok(None) } else { read().map(Some) }
}

fn millimetres(text: &str, what: &'static str) -> Result<Option<i64>, Message> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    let length = Measure::read(text, None, DecimalMark::Point).map_err(|_| wrong(text, what))?;
    let millimetres = (length.length().nanometres() + 500_000) / 1_000_000;
    if (0..=LONGEST).contains(&millimetres) { Ok(Some(millimetres)) } else { Err(wrong(text, what)) }
}

pub(super) fn place(text: &str, what: &'static str) -> Result<Position, Message> {
    typed::read(text.trim(), Reference::default()).ok_or_else(|| wrong(text, what))
}
