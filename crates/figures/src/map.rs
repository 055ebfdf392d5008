//! A map of a site: strata, what to keep out of, lines to scale in the order in which they are walked, north, scale, degrees.

mod names;

use crate::frame::Frame;
use crate::hatch::Hatch;
use crate::legend::{self, SWATCH, SWATCH_HEIGHT, Swatch};
use crate::palette::Colour;
use crate::svg::{Anchor, Area, Drawing, Lettering, Look, MARGIN};
use names::{ON_BORDER, ON_TAPE, ON_WAY, Placed, Sheet};

/// A place on the plane of the site: metres to the east and to the north.
pub type Place = (f64, f64);

/// A map.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Map {
    /// The strata, each with its name and its rings.
    pub strata: Vec<(String, Vec<Vec<Place>>)>,
    /// Areas to keep out of, and ways, each with the distance to stay away in metres.
    pub keep_out: Vec<(Vec<Place>, bool, f64)>,
    /// The lines.
    pub lines: Vec<Line>,
    /// The ways that are walked between lines.
    pub way: Vec<Vec<Place>>,
    /// Lines of latitude and longitude with what stands at them; those of latitude are marked on the left, those of longitude
    /// below.
    pub degrees: Vec<Degree>,
    /// The words around the map.
    pub words: Words,
}

/// A line on the map.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// Its name.
    pub name: String,
    /// Where the tape's zero is.
    pub from: Place,
    /// Where the tape ends.
    pub to: Place,
    /// Held in reserve.
    pub reserve: bool,
}

/// A line of latitude or longitude.
#[derive(Clone, Debug, PartialEq)]
pub struct Degree {
    /// What stands at it.
    pub label: String,
    /// Its way over the map.
    pub way: [Place; 2],
    /// It runs from west to east.
    pub latitude: bool,
}

/// The words around the map; an empty one is left out.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Words {
    /// The mark for north.
    pub north: String,
    /// A line.
    pub line: String,
    /// A line in reserve.
    pub reserve: String,
    /// What to keep out of.
    pub keep_out: String,
    /// The way between lines.
    pub way: String,
}

/// Places on the plane to places of the picture.
#[derive(Clone, Copy)]
struct View {
    west: f64,
    north: f64,
    scale: f64,
    left: f64,
    top: f64,
}

impl View {
    fn at(self, (east, north): Place) -> (f64, f64) {
        (self.left + (east - self.west) * self.scale, self.top + (self.north - north) * self.scale)
    }

    /// Places that lie somewhere, in their order.
    fn way(self, places: &[Place]) -> Vec<Place> {
        let somewhere = places.iter().filter(|place| place.0.is_finite() && place.1.is_finite());
        somewhere.map(|&place| self.at(place)).collect()
    }
}

/// No map is drawn higher than this many times its width.
const TALLEST: f64 = 1.25;

/// Draws the map, north up.
///
/// # Example
/// ```
/// use tautline_figures::{Frame, Palette, map::{self, Line, Map}};
/// let square = vec![(0.0, 0.0), (400.0, 0.0), (400.0, 400.0), (0.0, 400.0)];
/// let line = Line { name: "1".to_owned(), from: (50.0, 50.0), to: (100.0, 50.0), reserve: false };
/// let map = Map { strata: vec![("flat".to_owned(), vec![square])], lines: vec![line], ..Map::default() };
/// let svg = map::draw(&map, &Frame::new("map", 720, Palette::print()));
/// assert!(svg.contains(">flat</text>") && svg.contains(">100 m</text>"));
/// ```
pub fn draw(map: &Map, frame: &Frame) -> String {
    let mut drawing = Drawing::new(frame);
    let (left, right) = (drawing.left() + SIDE, drawing.right());
    let Some([west, south, east, north]) = bounds(map) else { return drawing.finish(2.0 * MARGIN) };
    let air = 0.03 * (east - west).max(north - south);
    let [west, south, east, north] = [west - air, south - air, east + air, north + air];
    let (wide, high) = (east - west, north - south);
    let scale = ((right - left) / wide).min((right - left) * TALLEST / high);
    let top = MARGIN + 26.0;
    let view = View { west, north, scale, left, top };
    let (edge, bottom) = (left + wide * scale, top + high * scale);
    let ground = Area { x: left, y: top, width: edge - left, height: bottom - top };
    drawing.area(ground, Look::fill(Colour::Ground).outlined(Colour::Rule, 1.0));
    degrees(&mut drawing, map, view, (left, bottom));
    let mut sheet = Sheet::new(ground);
    let strata: Vec<(&str, Vec<Vec<Place>>)> = map
        .strata
        .iter()
        .map(|(name, rings)| (name.as_str(), rings.iter().map(|ring| view.way(ring)).collect()))
        .collect();
    for ring in strata.iter().flat_map(|(_, rings)| rings) {
        drawing.corners(ring, Look::line(Colour::Ink, 1.6));
        sheet.ring(ring, ON_BORDER);
    }
    for (places, closed, _) in &map.keep_out {
        let way = view.way(places);
        if *closed {
            drawing.corners(&way, Look::hatch(Hatch::Unknown).outlined(Colour::Unknown, 1.0));
            sheet.ring(&way, ON_BORDER);
        } else {
            drawing.through(&way, Look::line(Colour::Unknown, 3.0));
            sheet.way(&way, ON_BORDER);
        }
    }
    let ways: Vec<Vec<Place>> = map.way.iter().map(|way| view.way(way)).collect();
    for way in &ways {
        sheet.way(way, ON_WAY);
    }
    drawing.strokes(ways, Look::line(Colour::Quiet, 0.9).dashed());
    for line in &map.lines {
        self::line(&mut drawing, &mut sheet, line, view);
    }
    // those that are read are named first: they have the best places
    let (reserve, read): (Vec<&Line>, Vec<&Line>) = map.lines.iter().partition(|line| line.reserve);
    for line in read.into_iter().chain(reserve) {
        name(&mut drawing, &mut sheet, line, view);
    }
    for (name, rings) in &strata {
        if let Some(at) = sheet.within(rings, Lettering::FIGURE, name) {
            drawing.text(at, Anchor::Middle, Lettering::FIGURE, name);
        }
    }
    compass(&mut drawing, &map.words.north, edge);
    let below = bar(&mut drawing, scale, (left, bottom + 22.0), edge - left) + 10.0;
    let reserve = if map.lines.iter().any(|line| line.reserve) { map.words.reserve.as_str() } else { "" };
    let keep_out = if map.keep_out.is_empty() { "" } else { map.words.keep_out.as_str() };
    let way = if map.way.is_empty() { "" } else { map.words.way.as_str() };
    let entries = [
        (Swatch::Marks(swatch_line), map.words.line.as_str()),
        (Swatch::Marks(swatch_reserve), reserve),
        (Swatch::Marks(swatch_way), way),
        (Swatch::Area(Look::fill(Colour::Unknown)), keep_out),
    ];
    let below = legend::draw(&mut drawing, below, &entries);
    drawing.finish(below + MARGIN)
}

/// Room to the left for degrees of latitude.
const SIDE: f64 = 58.0;

fn bounds(map: &Map) -> Option<[f64; 4]> {
    let rings = map.strata.iter().flat_map(|(_, rings)| rings.iter().flatten());
    let lines = map.lines.iter().flat_map(|line| [&line.from, &line.to]);
    let places = rings.chain(lines).filter(|place| place.0.is_finite() && place.1.is_finite());
    let all = places.fold(None, |frame: Option<[f64; 4]>, &(x, y)| {
        let [west, south, east, north] = frame.unwrap_or([x, y, x, y]);
        Some([west.min(x), south.min(y), east.max(x), north.max(y)])
    })?;
    (all[2] > all[0] || all[3] > all[1]).then_some(all)
}

fn degrees(drawing: &mut Drawing<'_>, map: &Map, view: View, (left, bottom): (f64, f64)) {
    let ways = map.degrees.iter().map(|degree| degree.way.map(|place| view.at(place)));
    drawing.strokes(ways, Look::line(Colour::Rule, 0.7));
    for degree in &map.degrees {
        let (x, y) = view.at(degree.way[0]);
        if degree.latitude {
            drawing.text((left - 4.0, y + 4.0), Anchor::End, Lettering::NUMBER, &degree.label);
        } else {
            drawing.text((x, bottom + 13.0), Anchor::Middle, Lettering::NUMBER, &degree.label);
        }
    }
}

/// The tape, and a mark at its zero.
fn line(drawing: &mut Drawing<'_>, sheet: &mut Sheet, line: &Line, view: View) {
    let tape = [view.at(line.from), view.at(line.to)];
    let look =
        if line.reserve { Look::line(Colour::Edge, 1.6).dashed() } else { Look::line(Colour::Canopy, 3.0) };
    drawing.through(&tape, look);
    sheet.way(&tape, ON_TAPE);
    let side = if line.reserve { 5.0 } else { 7.0 };
    let [from, _] = tape;
    let area = Area { x: from.0 - side / 2.0, y: from.1 - side / 2.0, width: side, height: side };
    drawing.area(area, Look::fill(Colour::Ink).outlined(Colour::Ground, 1.0));
    sheet.mark(area);
}

/// A line's name, at its zero.
fn name(drawing: &mut Drawing<'_>, sheet: &mut Sheet, line: &Line, view: View) {
    let (from, to) = (view.at(line.from), view.at(line.to));
    let lettering = if line.reserve { Lettering::NUMBER } else { Lettering::NAME };
    let Placed { at, anchor } = sheet.beside(from, (from.0 - to.0, from.1 - to.1), lettering, &line.name);
    drawing.text(at, anchor, lettering, &line.name);
}

fn compass(drawing: &mut Drawing<'_>, north: &str, edge: f64) {
    let (x, top) = (edge - 12.0, MARGIN);
    drawing.corners(
        &[(x, top), (x + 6.0, top + 20.0), (x, top + 15.0), (x - 6.0, top + 20.0)],
        Look::fill(Colour::Ink),
    );
    drawing.text((x - 12.0, top + 14.0), Anchor::End, Lettering::NAME, north);
}

/// A bar of one, two or five of a power of ten, about a third of the map; gives back where it ends.
fn bar(drawing: &mut Drawing<'_>, scale: f64, (left, top): (f64, f64), room: f64) -> f64 {
    const STEPS: [(f64, &str); 12] = [
        (10.0, "10 m"),
        (20.0, "20 m"),
        (50.0, "50 m"),
        (100.0, "100 m"),
        (200.0, "200 m"),
        (500.0, "500 m"),
        (1_000.0, "1 km"),
        (2_000.0, "2 km"),
        (5_000.0, "5 km"),
        (10_000.0, "10 km"),
        (20_000.0, "20 km"),
        (50_000.0, "50 km"),
    ];
    let fits = |step: &&(f64, &str)| step.0 * scale <= room / 3.0;
    let (metres, label) = STEPS.iter().rev().find(fits).copied().unwrap_or(STEPS[0]);
    let long = metres * scale;
    let half = Area { x: left, y: top, width: long / 2.0, height: 5.0 };
    drawing.area(half, Look::fill(Colour::Ink).outlined(Colour::Ink, 1.0));
    drawing
        .area(Area { x: left + long / 2.0, ..half }, Look::fill(Colour::Ground).outlined(Colour::Ink, 1.0));
    drawing.text((left + long + 6.0, top + 7.0), Anchor::Start, Lettering::LABEL, label);
    top + 12.0
}

fn swatch_line(drawing: &mut Drawing<'_>, (x, y): (f64, f64)) {
    swatch(drawing, (x, y), Look::line(Colour::Canopy, 3.0));
}

fn swatch_reserve(drawing: &mut Drawing<'_>, (x, y): (f64, f64)) {
    swatch(drawing, (x, y), Look::line(Colour::Edge, 1.6).dashed());
}

fn swatch_way(drawing: &mut Drawing<'_>, (x, y): (f64, f64)) {
    let middle = y + SWATCH_HEIGHT / 2.0;
    drawing.through(&[(x, middle), (x + SWATCH, middle)], Look::line(Colour::Quiet, 0.9).dashed());
}

fn swatch(drawing: &mut Drawing<'_>, (x, y): (f64, f64), look: Look) {
    let middle = y + SWATCH_HEIGHT / 2.0;
    drawing.through(&[(x, middle), (x + SWATCH, middle)], look);
    drawing.area(Area { x, y: middle - 3.0, width: 6.0, height: 6.0 }, Look::fill(Colour::Ink));
}
