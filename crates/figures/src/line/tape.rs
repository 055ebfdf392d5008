//! The tape itself: a numbered strip between two stakes, with the canopy as a band along its edge.

use super::{Common, lanes};
use crate::legend::{SWATCH, SWATCH_HEIGHT};
use crate::palette::Colour;
use crate::scale::Measure;
use crate::svg::{Anchor, Area, Drawing, Lettering, Look};
use tautline_engine::length::Length;
use tautline_engine::stretch::Stretch;

/// How high the strip is.
const STRIP: f64 = 31.0;
/// How high the band of canopy along its upper edge is.
const BAND: f64 = 9.0;

/// Draws the tape from `top` down; gives back where it ends.
pub(super) fn draw(
    drawing: &mut Drawing<'_>,
    common: &Common,
    length: Length,
    (canopy, unread): (&[Stretch], &[Stretch]),
    top: f64,
) -> f64 {
    let length = length.clamp(Length::ZERO, common.full);
    let (start, end) = (common.scale.start(), common.scale.at_length(length));
    let strip = Area { x: start, y: top, width: end - start, height: STRIP };
    drawing.area(strip, Look::fill(Colour::Tape));
    drawing.areas(lanes::areas(common, unread, top, BAND), lanes::unread());
    drawing.areas(lanes::areas(common, canopy, top, BAND), Look::fill(Colour::Canopy));
    ticks(drawing, common, length, top + BAND);
    let edges = [top, top + STRIP].map(|y| [(start, y), (end, y)]);
    drawing.strokes(edges, Look::line(Colour::Edge, 1.0));
    let stakes = [start, end].map(|x| [(x, top - 3.0), (x, top + STRIP + 3.0)]);
    drawing.strokes(stakes, Look::line(Colour::Edge, 2.5));
    top + STRIP + 4.0
}

/// Ticks from `top` down, and the numbers that fit on the tape.
fn ticks(drawing: &mut Drawing<'_>, common: &Common, length: Length, top: f64) {
    let on_tape = |grains: &&i64| **grains <= length.nanometres();
    let place = |grains: &i64| common.scale.at_length(Length::from_nanometres(*grains));
    let stroke = |height: f64| move |x: f64| [(x, top), (x, top + height)];
    let short = common.ticks.between.iter().filter(on_tape).map(place).map(stroke(4.0));
    drawing.strokes(short, Look::line(Colour::Edge, 0.8));
    let long = common.ticks.numbered.iter().filter(on_tape).map(place).map(stroke(8.0));
    drawing.strokes(long, Look::line(Colour::Ink, 1.0));

    let (start, end) = (common.scale.start() + 4.0, common.scale.at_length(length) - 4.0);
    let mut free_from = start;
    for grains in common.ticks.numbered.iter().filter(on_tape) {
        let mut number = Measure::of(common.unit).number(*grains, common.mark);
        if *grains == 0 {
            // the unit once, at the zero
            number = format!("{number}\u{a0}{}", common.unit.symbol());
        }
        let width = Lettering::ON_TAPE.width(&number);
        let from = (place(grains) - width / 2.0).min(end - width).max(start);
        if from >= free_from && from + width <= end {
            drawing.text((from + width / 2.0, top + 19.0), Anchor::Middle, Lettering::ON_TAPE, &number);
            free_from = from + width + 5.0;
        }
    }
}

pub(super) fn canopy_swatch(drawing: &mut Drawing<'_>, (x, y): (f64, f64)) {
    let strip = Area { x, y, width: SWATCH, height: SWATCH_HEIGHT };
    drawing.area(strip, Look::fill(Colour::Tape));
    let band = Area { x: x + 4.0, y, width: SWATCH - 8.0, height: SWATCH_HEIGHT / 2.0 };
    drawing.area(band, Look::fill(Colour::Canopy));
    drawing.strokes([y, y + SWATCH_HEIGHT].map(|y| [(x, y), (x + SWATCH, y)]), Look::line(Colour::Edge, 1.0));
}
