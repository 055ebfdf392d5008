//! A site and what is wanted in, lines with both ends and bearings out.

use crate::baseline::{self, BaselineError, Walked};
use crate::magnetic::{Declination, NoDeclination, declination};
use crate::position::Position;
use crate::site::{Site, There, square_metres};
use crate::utm::utm;
use crate::walk::Walking;
use tautline_engine::effort::allot::{Allotment, Stratum, allot};
use tautline_engine::num::count;
use tautline_engine::place::layout::{Ask, Bearing, Edge, Layout, Placed, Shape, lay_out};
use tautline_engine::place::plane::Segment;
use tautline_engine::place::points::Design;
use tautline_engine::place::region::Region;
use tautline_engine::seed::Seed;
use tautline_survey::date::Date;
use tautline_survey::layout::{End, LaidLine, LayoutOutput, StratumOutput};
use tautline_survey::output::VERSION;

#[cfg(test)]
pub(crate) mod tests;

/// What is wanted on a site.
#[derive(Clone, Debug)]
pub struct Wanted {
    /// The site's name.
    pub name: String,
    /// What the names of lines begin with, so that a later layout of a site takes no earlier line's name; often nothing.
    pub names: String,
    /// How points are drawn, what is laid at them, and the rules; lines and reserve are for the whole site.
    pub ask: Ask,
    /// Lines of each stratum by its name; shared out by area where nobody says.
    pub shares: Vec<(String, usize)>,
    /// Which way lines of a stratum run, by its name, where that isn't what the others do: each slope has a way down of its own.
    pub bearings: Vec<(String, Bearing)>,
    /// Length of a line as typed.
    pub line_length: String,
    /// Anyone can draw the layout again with it.
    pub seed: u64,
    /// The date for which a compass is set, and the height in metres.
    pub compass: Option<(Date, f64)>,
    /// Lines read before the next look of a sequential plan: only among those is their order free.
    pub batch: Option<usize>,
    /// Where the walk begins; the first line's zero where nobody says.
    pub from: Option<Position>,
    /// Lines at right angles to a baseline, in place of drawn points.
    pub baseline: Option<Walked>,
    /// Take the lines that are there already in.
    pub take_in: bool,
    /// Why the area was chosen by judgement.
    pub judged: Option<String>,
}

/// Why nothing could be laid out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LayError {
    /// Fewer lines than two in each stratum: how many that would take.
    TooFewForStrata(usize),
    /// Lines were said for other strata than these.
    Shares(Vec<String>),
    /// A bearing was said for another stratum than these.
    Bearings(Vec<String>),
    /// No declination for this date or height.
    NoDeclination(NoDeclination),
    /// A baseline that gives no lines.
    Baseline(BaselineError),
    /// Two lines of one name.
    NameTaken(String),
}

/// Lays lines out on a site; strata share them as was said, or by area, with two at least in each.
///
/// # Errors
/// [`LayError`]; where there is no room for all, the layout holds those that fit
pub fn lay(site: &Site, wanted: &Wanted) -> Result<LayoutOutput, LayError> {
    let compass = match wanted.compass {
        Some((date, height)) => {
            Some((date, declination(site.middle, height, date).map_err(LayError::NoDeclination)?))
        }
        None => None,
    };
    if let Some(walked) = wanted.baseline {
        return from_a_baseline(site, wanted, walked, compass);
    }
    let ask = &wanted.ask;
    let bearings = bearings(site, wanted)?;
    let by_area = |units: usize, least: usize| {
        let strata: Vec<Stratum> = site
            .strata
            .iter()
            .map(|(_, region)| Stratum { area: square_metres(region), deviation: 1.0, cost: 1.0, least })
            .collect();
        allot(&strata, units, Allotment::Proportional)
    };
    let least = if site.strata.len() > 1 { 2 } else { 1 };
    let lines = match wanted.shares.as_slice() {
        [] => by_area(ask.wanted, least),
        own => Some(said(site, own)?).filter(|lines| lines.iter().all(|&lines| lines >= least)),
    };
    let lines = lines.ok_or(LayError::TooFewForStrata(least * site.strata.len()))?;
    let reserves = match by_area(ask.reserve.max(site.strata.len()), 1) {
        Some(reserves) if ask.reserve > 0 => reserves,
        _ => vec![0; site.strata.len()],
    };
    let mut taken: Vec<Segment> = site.there.iter().map(|line| line.segment).collect();
    let mut output = LayoutOutput { position_error_m: site.error, ..empty(wanted, compass) };
    let mut reserve = Vec::new();
    let mut number = 0;
    for (at, (name, region)) in site.strata.iter().enumerate() {
        let own = Ask { wanted: lines[at], reserve: reserves[at], bearing: bearings[at], ..ask.clone() };
        let seed = Seed::from_purpose("plan lines", &[wanted.seed, at as u64]);
        let layout = lay_out(region, &site.keep_out, &taken, &own, seed);
        taken.extend(
            layout.placed.iter().chain(&layout.reserve).flat_map(|one| &one.lines).map(|line| line.0),
        );
        output.strata.push(StratumOutput {
            name: name.clone(),
            area_m2: square_metres(region),
            wanted: lines[at],
            placed: layout.placed.len(),
            points_per_hectare: Some(per_hectare(layout.placed.len(), region)),
        });
        count_given_up(&mut output, &layout);
        for placed in &layout.placed {
            number += 1;
            output.lines.extend(laid(
                site,
                wanted,
                name.as_deref(),
                &format!("{}{number}", wanted.names),
                placed,
                false,
                compass,
            ));
        }
        reserve.extend(layout.reserve.into_iter().map(|placed| (name.clone(), placed)));
    }
    for (number, (stratum, placed)) in (1..).zip(&reserve) {
        let name = format!("{}R{number}", wanted.names);
        output.lines.extend(laid(site, wanted, stratum.as_deref(), &name, placed, true, compass));
    }
    finished(site, wanted, output, compass)
}

/// The names of the strata in their order.
fn names(site: &Site) -> Vec<String> {
    site.strata.iter().map(|(name, _)| name.clone().unwrap_or_default()).collect()
}

/// Lines of each stratum in the order of the strata, each said once.
fn said(site: &Site, shares: &[(String, usize)]) -> Result<Vec<usize>, LayError> {
    let names = names(site);
    let of = |name: &String| shares.iter().find(|(own, _)| own == name).map(|(_, lines)| *lines);
    let lines: Option<Vec<usize>> = names.iter().map(of).collect();
    lines.filter(|lines| lines.len() == shares.len()).ok_or(LayError::Shares(names))
}

/// The bearing of each stratum in the order of the strata: its own where one is said, else that of all.
fn bearings(site: &Site, wanted: &Wanted) -> Result<Vec<Bearing>, LayError> {
    let names = names(site);
    let own = |name: &String| wanted.bearings.iter().find(|(of, _)| of == name);
    if wanted.bearings.iter().any(|(name, _)| !names.contains(name)) {
        return Err(LayError::Bearings(names));
    }
    Ok(names.iter().map(|name| own(name).map_or(wanted.ask.bearing, |(_, own)| *own)).collect())
}

/// Lines from a baseline, numbered as they are met.
fn from_a_baseline(
    site: &Site,
    wanted: &Wanted,
    walked: Walked,
    compass: Option<(Date, Declination)>,
) -> Result<LayoutOutput, LayError> {
    let (lines, given_up) =
        baseline::placed(site, walked, &wanted.ask, wanted.seed).map_err(LayError::Baseline)?;
    let mut output = LayoutOutput {
        position_error_m: site.error,
        given_up_at_the_edge: given_up,
        design: "baseline".to_owned(),
        ..empty(wanted, compass)
    };
    for (at, (name, region)) in site.strata.iter().enumerate() {
        let placed = lines.iter().filter(|(own, _)| *own == at).count();
        let area_m2 = square_metres(region);
        let name = name.clone();
        output.strata.push(StratumOutput { name, area_m2, wanted: placed, placed, points_per_hectare: None });
    }
    for (number, (at, placed)) in (1..).zip(&lines) {
        let stratum = site.strata[*at].0.as_deref();
        output.lines.extend(laid(
            site,
            wanted,
            stratum,
            &format!("{}{number}", wanted.names),
            placed,
            false,
            compass,
        ));
    }
    finished(site, wanted, output, compass)
}

/// The layout with the lines that are there already, where they are wanted, and the walk.
fn finished(
    site: &Site,
    wanted: &Wanted,
    mut output: LayoutOutput,
    compass: Option<(Date, Declination)>,
) -> Result<LayoutOutput, LayError> {
    if wanted.take_in {
        let reserve = output.lines.iter().position(|line| line.reserve).unwrap_or(output.lines.len());
        let staked = site.there.iter().map(|line| staked(site, line, compass));
        output.lines.splice(reserve..reserve, staked);
    }
    if let Some(twice) = twice(&output.lines) {
        return Err(LayError::NameTaken(twice));
    }
    let walking = Walking::of(site);
    let read: Vec<&LaidLine> = output.lines.iter().filter(|line| !line.reserve).collect();
    output.walk = walking.order(&read, wanted.batch.unwrap_or(read.len()), wanted.from);
    output.legs = walking.legs(&output.lines, &output.walk, wanted.from);
    Ok(output)
}

fn twice(lines: &[LaidLine]) -> Option<String> {
    let mut names: Vec<&String> = lines.iter().map(|line| &line.line).collect();
    names.sort_unstable();
    names.windows(2).find(|pair| pair[0] == pair[1]).map(|pair| pair[0].clone())
}

fn per_hectare(points: usize, region: &Region) -> f64 {
    count(points) / (square_metres(region) / 10_000.0)
}

/// A line that is there already, between its old coordinates.
fn staked(site: &Site, line: &There, compass: Option<(Date, Declination)>) -> LaidLine {
    let [start, stop] = line.ends;
    let (_, bearing) = start.to(stop);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to 360")]
    let whole = bearing.round() as u16 % 360;
    let stratum = site.strata.iter().find(|(_, region)| region.contains(line.segment.from));
    LaidLine {
        line: line.name.clone(),
        stratum: stratum.and_then(|(name, _)| name.clone()),
        plot: None,
        reserve: false,
        start: end(start),
        end: end(stop),
        true_bearing: whole,
        magnetic_bearing: compass.map(|(_, found)| found.to_a_tenth(bearing)),
        draw: 0,
        turned: false,
        staked: true,
    }
}

fn empty(wanted: &Wanted, compass: Option<(Date, Declination)>) -> LayoutOutput {
    let design = match wanted.ask.design {
        Design::Balanced => "balanced",
        Design::Random => "random",
        Design::Systematic => "systematic",
    };
    let edge = match wanted.ask.edge {
        Edge::Redraw => "redraw",
        Edge::Turn => "turn",
    };
    LayoutOutput {
        format: "tautline.plan-lines",
        version: VERSION,
        site: wanted.name.clone(),
        seed: wanted.seed,
        design: design.to_owned(),
        edge: edge.to_owned(),
        judged: wanted.judged.clone(),
        line_length: wanted.line_length.clone(),
        line_length_mm: wanted.ask.length,
        apart_mm: wanted.ask.apart,
        strata: Vec::new(),
        position_error_m: 0,
        declination: compass.map(|(date, found)| found.output(date)),
        lines: Vec::new(),
        walk: Vec::new(),
        legs: Vec::new(),
        given_up_at_the_edge: 0,
        given_up_kept_out: 0,
        given_up_too_near: 0,
    }
}

fn count_given_up(output: &mut LayoutOutput, layout: &Layout) {
    output.given_up_at_the_edge += layout.given_up.edge;
    output.given_up_kept_out += layout.given_up.kept_out;
    output.given_up_too_near += layout.given_up.too_near;
}

/// The lines of one point. The start comes from the plane; the end is laid from it by length and true bearing, as a crew
/// lays it.
fn laid(
    site: &Site,
    wanted: &Wanted,
    stratum: Option<&str>,
    name: &str,
    placed: &Placed,
    reserve: bool,
    compass: Option<(Date, Declination)>,
) -> Vec<LaidLine> {
    let plot = matches!(wanted.ask.shape, Shape::Spokes { .. }).then(|| name.to_owned());
    let metres = {
        #[expect(clippy::cast_precision_loss, reason = "a tape is far shorter than 2^53 mm")]
        let millimetres = wanted.ask.length as f64;
        millimetres / 1000.0
    };
    let lines = (1..).zip(&placed.lines).map(|(spoke, (segment, bearing))| {
        let start = site.local.back(segment.from);
        LaidLine {
            line: if plot.is_some() { format!("{name}-{spoke}") } else { name.to_owned() },
            stratum: stratum.map(str::to_owned),
            plot: plot.clone(),
            reserve,
            start: end(start),
            end: end(start.on(f64::from(*bearing), metres)),
            true_bearing: *bearing,
            magnetic_bearing: compass.map(|(_, found)| found.to_a_tenth(f64::from(*bearing))),
            draw: placed.draw,
            turned: placed.turned,
            staked: false,
        }
    });
    lines.collect()
}

pub(crate) fn end(position: Position) -> End {
    let grid = utm(position).map_or(String::new(), |place| {
        let half = if place.north { 'N' } else { 'S' };
        format!("{} {half} {:.0} {:.0}", place.zone, place.easting, place.northing)
    });
    End { latitude: position.latitude(), longitude: position.longitude(), utm: grid }
}
