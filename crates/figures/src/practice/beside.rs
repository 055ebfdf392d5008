//! Plants beside a tape, each with its number: does its canopy reach over the edge?

use super::outline::{Place, blob};
use super::{ASIDE, Window, closed, colour, foliage, tape};
use crate::frame::Frame;
use crate::palette::Colour;
use crate::svg::{Anchor, Area, Drawing, Lettering, Look, MARGIN};
use core::ops::Range;
use tautline_engine::length::{Length, Notation, Unit};
use tautline_engine::num::math::sqrt;
use tautline_engine::practice::line::PracticeLine;
use tautline_engine::practice::place::Beside;

/// Plants to be drawn beside a tape.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BesideTape<'a> {
    /// The plants, in the order of their numbers from 1.
    pub plants: &'a [Beside],
    /// How the tape is numbered.
    pub tape: Notation,
    /// How much of the tape stands in one strip.
    pub each: Length,
}

/// Draws the tape strip by strip, the plants beside it to scale.
///
/// # Example
/// ```
/// use tautline_engine::length::{Length, Notation, Unit};
/// use tautline_engine::practice::place::in_or_out;
/// use tautline_figures::{Frame, Palette, practice::{BesideTape, draw_beside}};
/// let tape = Notation::decimals(Unit::Centimetre, 0);
/// let plants = in_or_out(tape, 6, 1);
/// let beside = BesideTape { plants: &plants, tape, each: Length::from_units(150, Unit::Centimetre) };
/// let svg = draw_beside(&beside, &Frame::new("beside", 720, Palette::print()));
/// assert!(svg.starts_with("<svg") && svg.contains(">6<"));
/// ```
pub fn draw_beside(beside: &BesideTape<'_>, frame: &Frame) -> String {
    draw_beside_part(beside, 0..beside.strips(), frame)
}

impl BesideTape<'_> {
    fn each(&self) -> Length {
        self.each.max(Length::from_units(10, Unit::Centimetre))
    }

    /// How far along the tape the last plant reaches; one strip at least.
    fn end(&self) -> Length {
        let ends = self.plants.iter().map(|plant| plant.along + plant.radius);
        ends.fold(self.each(), Length::max)
    }

    /// How many strips the drawing has.
    pub fn strips(&self) -> usize {
        let strips = (self.end().nanometres() - 1) / self.each().nanometres() + 1;
        usize::try_from(strips).unwrap_or_default()
    }
}

/// Some of its strips, for a sheet of paper that holds no more.
pub fn draw_beside_part(beside: &BesideTape<'_>, strips: Range<usize>, frame: &Frame) -> String {
    let mut drawing = Drawing::new(frame);
    let (left, right) = (drawing.left(), drawing.right());
    let each = beside.each();
    let scale = (right - left - 2.0) / each.in_unit(Unit::Metre);
    let end = beside.end();
    let bare = PracticeLine {
        length: end,
        tape: beside.tape,
        width: Length::ZERO,
        slope: 0,
        species: 1,
        shrubs: Vec::new(),
        others: Vec::new(),
    };
    let mut top = MARGIN;
    for strip in strips.take_while(|strip| *strip < beside.strips()) {
        let from: Length = core::iter::repeat_n(each, strip).sum();
        let to = from + each;
        let area = Area { x: left + 1.0, y: top, width: right - left - 2.0, height: 2.0 * ASIDE * scale };
        let window = Window { from: from.in_unit(Unit::Metre), scale, area };
        drawing.area(area, Look::line(Colour::Rule, 1.0));
        for (number, plant) in (1..).zip(beside.plants) {
            one(&mut drawing, number, plant, &window);
        }
        tape::draw(&mut drawing, &bare, &window, (from, to, to), frame.mark);
        top += area.height + 14.0;
    }
    drawing.finish(top + MARGIN)
}

fn one(drawing: &mut Drawing<'_>, number: u32, plant: &Beside, window: &Window) {
    let metres = |length: Length| length.in_unit(Unit::Metre);
    let (along, aside, radius) = (metres(plant.along), metres(plant.aside), metres(plant.radius));
    let half = sqrt((radius * radius - aside * aside).max(0.0));
    let outline = blob(&Place { along, aside, radius, half, number });
    let species = number / 3 % 4;
    closed(drawing, &outline, window, Look::hatch(foliage(species)));
    closed(drawing, &outline, window, Look::line(colour(species), 1.4));
    let (x, _) = window.at((along, 0.0));
    let (left, right) = (window.area.x, window.area.x + window.area.width);
    if (left..right).contains(&x) {
        let x = x.clamp(left + 10.0, right - 10.0);
        let base = if aside >= 0.0 { window.area.y + 16.0 } else { window.area.y + window.area.height - 6.0 };
        let (text, lettering) = (number.to_string(), Lettering::NAME);
        let width = lettering.width(&text) + 8.0;
        let ground = Area { x: x - width / 2.0, y: base - 13.0, width, height: 17.0 };
        drawing.area(ground, Look::fill(Colour::Ground));
        drawing.text((x, base), Anchor::Middle, lettering, &text);
    }
}
