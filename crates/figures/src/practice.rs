//! A practice line as it is seen from straight above, strip by strip along the tape, to scale.

mod beside;
mod clip;
mod outline;
mod piece;
mod sight;
mod tape;

pub use beside::{BesideTape, draw_beside, draw_beside_part};
pub use piece::{draw_meaning, draw_piece, piece_height};
pub use sight::{Sight, draw_sight};

use crate::frame::Frame;
use crate::hatch::Hatch;
use crate::legend::{self, Swatch};
use crate::palette::{Colour, Tone};
use crate::svg::{Anchor, Area, Drawing, Lettering, Look, MARGIN};
use outline::{Place, blob, petals, rock, stalks, stems, sticks, tuft};
use tautline_engine::length::{Length, Unit};
use tautline_engine::practice::line::{Other, PracticeLine, Shrub};

/// A practice line and how it is cut into strips.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Strips<'a> {
    /// The line.
    pub line: &'a PracticeLine,
    /// Where the first strip begins.
    pub from: Length,
    /// Where the last strip ends.
    pub to: Length,
    /// How much of the tape stands in one strip.
    pub each: Length,
    /// What the marks are called.
    pub words: Words,
}

/// What the marks are called; an empty one is left out of the legend, and so is one whose mark isn't on the line.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Words {
    /// The species, in the order of their numbers.
    pub species: Vec<String>,
    /// Dead parts and dead shrubs.
    pub dead: String,
    /// Grass, flowers, flower stalks, litter, rock: in the order of [`Other::ALL`].
    pub others: [String; 5],
    /// The edge of the tape that is read.
    pub edge: String,
}

/// How far a strip reaches to either side of the tape.
const ASIDE: f64 = 0.3;

/// The part of the ground that one strip shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Window {
    /// Where the strip begins, in metres along the tape.
    from: f64,
    /// Pixels to a metre.
    scale: f64,
    /// The rectangle on the drawing.
    area: Area,
}

impl Window {
    /// A place on the ground, on the drawing: to the left of the tape is up.
    fn at(&self, (along, aside): (f64, f64)) -> (f64, f64) {
        let middle = self.area.y + self.area.height / 2.0;
        (self.area.x + (along - self.from) * self.scale, middle - aside * self.scale)
    }
}

/// Draws the strips below each other, and what the marks mean.
///
/// Every outline crosses the tape's edge exactly where the line has it.
///
/// # Example
/// ```
/// use tautline_engine::length::{Length, Notation, Unit};
/// use tautline_engine::practice::level::{Level, Wanted, draw};
/// use tautline_figures::{Frame, Palette, practice::{Strips, Words, draw_line}};
/// let (length, tape) = (Length::from_units(6, Unit::Metre), Notation::decimals(Unit::Centimetre, 0));
/// let line = draw(&Wanted { level: Level::Two, length, tape, gap: Length::ZERO, seed: 1 });
/// let each = Length::from_units(150, Unit::Centimetre);
/// let strips = Strips { line: &line, from: Length::ZERO, to: length, each, words: Words::default() };
/// let svg = draw_line(&strips, &Frame::new("practice", 720, Palette::print()));
/// assert!(svg.starts_with("<svg") && svg.contains(">100<"));
/// ```
pub fn draw_line(strips: &Strips<'_>, frame: &Frame) -> String {
    let mut drawing = Drawing::new(frame);
    let (left, right) = (drawing.left(), drawing.right());
    let each = strips.each.in_unit(Unit::Metre).max(0.1);
    let scale = (right - left - 2.0) / each;
    let mut top = MARGIN;
    let mut from = strips.from;
    while from < strips.to {
        let to = (from + strips.each).min(strips.to).max(from + Length::from_nanometres(1));
        let width = (to - from).in_unit(Unit::Metre) * scale;
        let area = Area { x: left + 1.0, y: top, width, height: 2.0 * ASIDE * scale };
        let window = Window { from: from.in_unit(Unit::Metre), scale, area };
        drawing.area(area, Look::line(Colour::Rule, 1.0));
        strip(&mut drawing, strips.line, &window);
        tape::draw(&mut drawing, strips.line, &window, (from, to, to), frame.mark);
        top += area.height + 14.0;
        from = to;
    }
    if !strips.words.edge.is_empty() {
        let room = right - left;
        top =
            drawing.paragraph((left, top), Anchor::Start, Lettering::CAPTION, &strips.words.edge, room) + 6.0;
    }
    let below = legend::draw(&mut drawing, top, &entries(strips.line, &strips.words));
    drawing.finish(below + MARGIN)
}

/// How a species looks: its own leaves and its own colour.
fn foliage(species: u32) -> Hatch {
    let number = u8::try_from(species).unwrap_or(u8::MAX);
    Hatch::Foliage(Colour::from(Tone(number)), number)
}

fn colour(species: u32) -> Colour {
    Colour::from(Tone(u8::try_from(species).unwrap_or(u8::MAX)))
}

/// What stands in one strip, the lowest first.
fn strip(drawing: &mut Drawing<'_>, line: &PracticeLine, window: &Window) {
    for (number, (other, round)) in (0..).zip(&line.others) {
        lying(drawing, *other, &Place::of(round, 1000 + number), window);
    }
    let mut shrubs: Vec<(u32, &Shrub)> = (0..).zip(&line.shrubs).collect();
    shrubs.sort_by_key(|(number, shrub)| (shrub.height, *number));
    for &(number, shrub) in &shrubs {
        let openings = openings(shrub, number);
        let holes: Vec<_> =
            openings.iter().map(|one| inside(one, window)).filter(|one| one.len() > 2).collect();
        // through an opening one sees what grows and lies below it
        drawing.but_for(&holes, window.area, |drawing| canopy(drawing, shrub, number, window));
        for opening in &openings {
            closed(drawing, opening, window, Look::line(colour(shrub.species), 1.2));
        }
    }
    // outlines last, so that one under another crown shows, dashed where it doesn't lie on top
    for &(number, shrub) in &shrubs {
        let crown = blob(&Place::of(&shrub.crown, number));
        let mine = shrub.crown.cut;
        let under =
            shrubs.iter().any(|(_, other)| other.height > shrub.height && other.crown.cut.overlaps(mine));
        let ink = if shrub.alive { colour(shrub.species) } else { Colour::Dead };
        let line = |width| if under { Look::line(ink, width).dashed() } else { Look::line(ink, width) };
        closed(drawing, &crown, window, line(1.4));
        for opening in openings(shrub, number).iter().filter(|_| under) {
            closed(drawing, opening, window, line(1.2));
        }
    }
}

/// The outlines of a crown's openings.
fn openings(shrub: &Shrub, number: u32) -> Vec<Vec<(f64, f64)>> {
    (0..).zip(&shrub.openings).map(|(part, one)| blob(&Place::of(one, number * 5 + part))).collect()
}

/// A crown with its stems and its dead parts, as if it had no openings.
fn canopy(drawing: &mut Drawing<'_>, shrub: &Shrub, number: u32, window: &Window) {
    let crown = blob(&Place::of(&shrub.crown, number));
    let look = if shrub.alive { Look::hatch(foliage(shrub.species)) } else { Look::hatch(Hatch::Dead) };
    closed(drawing, &crown, window, look);
    open(drawing, &stems(&Place::of(&shrub.crown, number)), window, Look::line(Colour::Dead, 1.5));
    for (part, dead) in (0..).zip(&shrub.dead) {
        let look = Look::hatch(Hatch::Dead).outlined(Colour::Dead, 1.0);
        closed(drawing, &blob(&Place::of(dead, number * 7 + part)), window, look);
    }
}

fn closed(drawing: &mut Drawing<'_>, points: &[(f64, f64)], window: &Window, look: Look) {
    let inside = inside(points, window);
    if inside.len() > 2 {
        drawing.corners(&inside, look);
    }
}

/// The part of a closed shape on the ground that a strip shows, on the drawing.
fn inside(points: &[(f64, f64)], window: &Window) -> Vec<(f64, f64)> {
    let drawn: Vec<(f64, f64)> = points.iter().map(|&point| window.at(point)).collect();
    clip::polygon(&drawn, window.area)
}

fn open(drawing: &mut Drawing<'_>, lines: &[[(f64, f64); 2]], window: &Window, look: Look) {
    let drawn = lines.iter().map(|line| line.map(|point| window.at(point)));
    let inside: Vec<[(f64, f64); 2]> = drawn.filter_map(|line| clip::line(line, window.area)).collect();
    drawing.strokes(inside, look);
}

/// What is no canopy of a shrub.
fn lying(drawing: &mut Drawing<'_>, other: Other, place: &Place, window: &Window) {
    match other {
        Other::Grass => open(drawing, &tuft(place), window, Look::line(Colour::Quiet, 1.0)),
        Other::Litter => open(drawing, &sticks(place), window, Look::line(Colour::Unknown, 1.4)),
        Other::Stalks => open(drawing, &stalks(place), window, Look::line(Colour::Quiet, 1.1)),
        Other::Rock => {
            closed(drawing, &rock(place), window, Look::fill(Colour::Rule).outlined(Colour::Quiet, 1.2));
        }
        Other::Flower => {
            closed(drawing, &petals(place), window, Look::fill(Colour::Ground).outlined(Colour::Goal, 1.2));
            open(drawing, &tuft(&place.smaller()), window, Look::line(Colour::Goal, 1.0));
        }
    }
}

/// What the marks that are on the line mean.
fn entries<'w>(line: &PracticeLine, words: &'w Words) -> Vec<(Swatch, &'w str)> {
    let mut entries: Vec<(Swatch, &str)> = (0..line.species)
        .zip(&words.species)
        .map(|(species, name)| {
            let look = Look::hatch(foliage(species)).outlined(colour(species), 1.4);
            (Swatch::Area(look), name.as_str())
        })
        .collect();
    if line.shrubs.iter().any(|shrub| !shrub.alive || !shrub.dead.is_empty()) {
        let look = Look::hatch(Hatch::Dead).outlined(Colour::Dead, 1.0);
        entries.push((Swatch::Area(look), words.dead.as_str()));
    }
    for (other, name) in Other::ALL.into_iter().zip(&words.others) {
        if line.others.iter().any(|(what, _)| *what == other) {
            let marks: fn(&mut Drawing<'_>, (f64, f64)) = match other {
                Other::Grass => |drawing, at| swatch(drawing, Other::Grass, at),
                Other::Flower => |drawing, at| swatch(drawing, Other::Flower, at),
                Other::Stalks => |drawing, at| swatch(drawing, Other::Stalks, at),
                Other::Litter => |drawing, at| swatch(drawing, Other::Litter, at),
                Other::Rock => |drawing, at| swatch(drawing, Other::Rock, at),
            };
            entries.push((Swatch::Marks(marks), name.as_str()));
        }
    }
    entries
}

fn swatch(drawing: &mut Drawing<'_>, other: Other, (x, y): (f64, f64)) {
    let area = Area { x, y, width: legend::SWATCH, height: legend::SWATCH_HEIGHT };
    let window = Window { from: 0.0, scale: 1.0, area };
    let place = Place { along: legend::SWATCH / 2.0, aside: 0.0, radius: 6.0, half: 6.0, number: 3 };
    lying(drawing, other, &place, &window);
}
