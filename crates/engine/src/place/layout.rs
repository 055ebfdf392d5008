//! Lines, or plots of lines, at drawn points: edge rule, bearing, distance apart, a reserve in order.

use super::plane::{Point, Segment};
use super::points::{Design, candidates};
use super::region::{KeepOut, Region};
use crate::seed::{Random, Seed};

/// What is laid at a point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shape {
    /// One line that starts at the point.
    Line,
    /// One line whose middle is the point.
    Middle,
    /// A plot: lines away from its centre at equal angles. The plot is the sampling unit.
    Spokes {
        /// Lines of a plot.
        lines: u16,
        /// How far from the centre each starts, in millimetres.
        offset: i64,
    },
}

/// Which way lines run: whole degrees clockwise from north, as a compass is set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bearing {
    /// Any, each as likely.
    Random,
    /// This one.
    Fixed(u16),
    /// At right angles to this one, to either side by chance: across a slope, across rows.
    Across(u16),
}

impl Bearing {
    /// Reads `random`, whole degrees, or `across` degrees.
    ///
    /// # Example
    /// ```
    /// use tautline_engine::place::layout::Bearing;
    /// assert_eq!(Bearing::read("across 40°"), Some(Bearing::Across(40)));
    /// assert_eq!(Bearing::read("400"), None);
    /// ```
    pub fn read(text: &str) -> Option<Self> {
        let text = text.trim().to_lowercase();
        let degrees = |text: &str| text.trim().trim_end_matches('°').parse().ok().filter(|&d: &u16| d <= 360);
        match text.strip_prefix("across") {
            Some(rest) => degrees(rest).map(Self::Across),
            None if text == "random" => Some(Self::Random),
            None => degrees(&text).map(Self::Fixed),
        }
    }
}

/// What happens where a line would leave its region.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Edge {
    /// Point and bearing are given up together and the next are drawn. Ground within a line's length of the edge is
    /// read less often than the rest.
    Redraw,
    /// The line turns at its start, first right round, then to either side (a fixed bearing only right round), and only
    /// where none of these fits is the point given up.
    Turn,
}

/// What is to be laid out in one region.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ask {
    /// How points are drawn.
    pub design: Design,
    /// Lines, or plots, wanted.
    pub wanted: usize,
    /// More of them in order, for those that have to be given up in the field.
    pub reserve: usize,
    /// What is laid at a point.
    pub shape: Shape,
    /// Length of each line in millimetres.
    pub length: i64,
    /// Which way lines run.
    pub bearing: Bearing,
    /// What happens at the edge.
    pub edge: Edge,
    /// How far lines of different points stay apart, in millimetres.
    pub apart: i64,
}

/// What was laid at one point.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Placed {
    /// The drawn point.
    pub point: Point,
    /// The point's place in the order in which points were tried, from 1: what was skipped can be seen.
    pub draw: usize,
    /// Lines with their bearings.
    pub lines: Vec<(Segment, u16)>,
    /// Whether the edge rule turned it.
    pub turned: bool,
}

/// Why points were given up.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct GivenUp {
    /// A line would leave the region.
    pub edge: usize,
    /// A line would come into what is kept out of.
    pub kept_out: usize,
    /// A line would come too near to another.
    pub too_near: usize,
}

/// The lines of one region.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Layout {
    /// As many as were wanted, or as many as found room, in the order of drawing.
    pub placed: Vec<Placed>,
    /// The reserve, to be taken in this order.
    pub reserve: Vec<Placed>,
    /// Why points between them were given up.
    pub given_up: GivenUp,
}

/// Lays out one region, away from `keep_out` and from lines that are there already.
///
/// # Example
/// ```
/// use tautline_engine::place::{layout::{Ask, Bearing, Edge, Shape, lay_out}, plane::Point, points::Design,
///     region::{Polygon, Region}};
/// use tautline_engine::seed::Seed;
/// let ring = [(0, 0), (400_000, 0), (400_000, 300_000), (0, 300_000)].map(|(x, y)| Point { x, y });
/// let site = Region { polygons: vec![Polygon { rings: vec![ring.to_vec()] }] };
/// let ask = Ask { design: Design::Balanced, wanted: 6, reserve: 2, shape: Shape::Line, length: 50_000,
///     bearing: Bearing::Random, edge: Edge::Turn, apart: 20_000 };
/// let layout = lay_out(&site, &[], &[], &ask, Seed::from_purpose("example", &[]));
/// assert_eq!((layout.placed.len(), layout.reserve.len()), (6, 2));
/// assert!(layout.placed.iter().all(|one| site.contains_all_of(one.lines[0].0)));
/// ```
pub fn lay_out(region: &Region, keep_out: &[KeepOut], there: &[Segment], ask: &Ask, seed: Seed) -> Layout {
    let mut random = seed.stream();
    // bearings come from a stream of their own, so that a point given up moves no later point
    let mut bearings = Seed::from_purpose("bearings", &[random.bits()]).stream();
    let all = ask.wanted + ask.reserve;
    let mut taken: Vec<Segment> = there.to_vec();
    let mut layout = Layout::default();
    let mut finer = all;
    while layout.placed.len() + layout.reserve.len() < all {
        let last_round = ask.design != Design::Systematic || finer > FINEST * all;
        if ask.design == Design::Systematic {
            // a grid whose corners don't all fit is drawn anew, finer, so that its corners stay as likely as each other
            layout = Layout::default();
            taken.truncate(there.len());
        }
        for (at, point) in candidates(ask.design, region, finer, &mut random).enumerate() {
            if layout.placed.len() + layout.reserve.len() == all {
                break;
            }
            let bearing = draw_bearing(ask.bearing, &mut bearings);
            match fit(region, keep_out, &taken, ask, point, bearing) {
                Ok((lines, turned)) => {
                    taken.extend(lines.iter().map(|(segment, _)| *segment));
                    let placed = Placed { point, draw: at + 1, lines, turned };
                    if layout.placed.len() < ask.wanted {
                        layout.placed.push(placed);
                    } else {
                        layout.reserve.push(placed);
                    }
                }
                Err(reason) => *counter(&mut layout.given_up, reason) += 1,
            }
        }
        if last_round {
            break;
        }
        finer += 1 + finer / 10;
    }
    layout
}

/// A grid is made finer until it has this many times the wanted number of corners.
const FINEST: usize = 30;

fn draw_bearing(bearing: Bearing, random: &mut Random) -> u16 {
    let below = |limit, random: &mut Random| u16::try_from(random.below(limit)).unwrap_or(0);
    match bearing {
        Bearing::Random => below(360, random),
        Bearing::Fixed(degrees) => degrees % 360,
        Bearing::Across(degrees) => (degrees + 90 + 180 * below(2, random)) % 360,
    }
}

#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Reason {
    Edge,
    KeptOut,
    TooNear,
}

fn counter(given_up: &mut GivenUp, reason: Reason) -> &mut usize {
    match reason {
        Reason::Edge => &mut given_up.edge,
        Reason::KeptOut => &mut given_up.kept_out,
        Reason::TooNear => &mut given_up.too_near,
    }
}

type Fitting = (Vec<(Segment, u16)>, bool);

/// The lines at a point, if they fit; otherwise why the last way tried didn't.
fn fit(
    region: &Region,
    keep_out: &[KeepOut],
    taken: &[Segment],
    ask: &Ask,
    point: Point,
    bearing: u16,
) -> Result<Fitting, Reason> {
    let turns: &[u16] = match (ask.edge, ask.bearing) {
        (Edge::Redraw, _) => &[0],
        (Edge::Turn, Bearing::Random) => &[0, 180, 90, 270],
        (Edge::Turn, _) => &[0, 180],
    };
    let mut why = Reason::Edge;
    for &turn in turns {
        let lines = lines_at(ask, point, (bearing + turn) % 360);
        let segments = || lines.iter().map(|(segment, _)| *segment);
        let too_near = |line: Segment| taken.iter().any(|other| other.nearer(line, ask.apart.max(1)));
        if !segments().all(|line| region.contains_all_of(line)) {
            why = Reason::Edge;
        } else if segments().any(|line| keep_out.iter().any(|place| place.bars(line))) {
            why = Reason::KeptOut;
        } else if segments().any(too_near) {
            why = Reason::TooNear;
        } else {
            return Ok((lines, turn != 0));
        }
    }
    Err(why)
}

fn lines_at(ask: &Ask, point: Point, bearing: u16) -> Vec<(Segment, u16)> {
    let from_to = |from: Point, bearing: u16| (Segment { from, to: from.on(bearing, ask.length) }, bearing);
    match ask.shape {
        Shape::Line => vec![from_to(point, bearing)],
        Shape::Middle => vec![from_to(point.on((bearing + 180) % 360, ask.length / 2), bearing)],
        Shape::Spokes { lines, offset } => (0..lines.max(1))
            .map(|spoke| {
                // in steps of a whole degree, as even as the circle allows
                let turn = 360 * u32::from(spoke) / u32::from(lines.max(1));
                let bearing = u16::try_from((u32::from(bearing) + turn) % 360).unwrap_or(0);
                from_to(point.on(bearing, offset), bearing)
            })
            .collect(),
    }
}
