//! The marks of a row: estimate, bounds, single lines.

use super::{Bounds, Estimate, Row};
use crate::legend::{SWATCH, SWATCH_HEIGHT};
use crate::palette::Colour;
use crate::scale::Scale;
use crate::svg::{Area, Drawing, Look};

/// Half the width of an estimate's mark.
pub(super) const HALF: f64 = 7.0;
/// Half the height of the stop at a bound.
const STOP: f64 = 8.0;

/// A short upright stroke for each single line, standing on `bottom`.
pub(super) fn lines(
    drawing: &mut Drawing<'_>,
    places: impl Iterator<Item = f64>,
    bottom: f64,
    colour: Colour,
) {
    let strokes = places.map(|x| [(x, bottom - 9.0), (x, bottom)]);
    drawing.strokes(strokes, Look::line(colour, 1.4));
}

/// The bar from the estimate to each bound, with a stop at the bound. The stop of a one-sided bound carries an
/// arrow head towards the values it allows.
pub(super) fn bounds(drawing: &mut Drawing<'_>, row: &Row, scale: Scale, y: f64) {
    let at = |share: crate::share::Share| scale.at(share.per_cent());
    let (low, high) = match row.estimate {
        Some(Estimate::Figure(share)) => (Some(at(share)), Some(at(share))),
        Some(Estimate::Between(low, high)) => (Some(at(low)), Some(at(high))),
        None => (None, None),
    };
    let colour = row.colour();
    match row.bounds {
        Bounds::Unknown => {}
        Bounds::AtLeast(bound) => one_sided(drawing, (at(bound), low), 1.0, y, colour),
        Bounds::AtMost(bound) => one_sided(drawing, (at(bound), high), -1.0, y, colour),
        Bounds::Between(lower, upper) => {
            let (lower, upper) = (at(lower), at(upper));
            bar(drawing, lower, low.unwrap_or(upper), y, colour);
            bar(drawing, high.unwrap_or(lower), upper, y, colour);
            stop(drawing, lower, y, colour);
            stop(drawing, upper, y, colour);
        }
    }
}

fn one_sided(
    drawing: &mut Drawing<'_>,
    (bound, estimate): (f64, Option<f64>),
    towards: f64,
    y: f64,
    colour: Colour,
) {
    bar(drawing, bound, estimate.unwrap_or(bound), y, colour);
    stop(drawing, bound, y, colour);
    let tip = bound + towards * 9.0;
    drawing.corners(&[(bound, y - 6.5), (tip, y), (bound, y + 6.5)], Look::fill(colour));
}

fn bar(drawing: &mut Drawing<'_>, from: f64, to: f64, y: f64, colour: Colour) {
    let (from, to) = (from.min(to), from.max(to));
    if to > from {
        let area = Area { x: from, y: y - 1.75, width: to - from, height: 3.5 };
        drawing.area(area, Look::fill(colour));
    }
}

fn stop(drawing: &mut Drawing<'_>, x: f64, y: f64, colour: Colour) {
    drawing.through(&[(x, y - STOP), (x, y + STOP)], Look::line(colour, 2.2));
}

/// A full diamond for one figure; two open half diamonds joined by an open bar for a figure between two.
pub(super) fn estimate(drawing: &mut Drawing<'_>, row: &Row, scale: Scale, y: f64) {
    match row.estimate {
        None => {}
        Some(Estimate::Figure(share)) => diamond(drawing, scale.at(share.per_cent()), y, row.colour()),
        Some(Estimate::Between(low, high)) => {
            between(drawing, scale.at(low.per_cent()), scale.at(high.per_cent()), y, row.colour());
        }
    }
}

fn diamond(drawing: &mut Drawing<'_>, x: f64, y: f64, colour: Colour) {
    let corners = [(x - HALF, y), (x, y - HALF), (x + HALF, y), (x, y + HALF)];
    drawing.corners(&corners, Look::fill(colour).outlined(Colour::Ground, 1.5));
}

fn between(drawing: &mut Drawing<'_>, low: f64, high: f64, y: f64, colour: Colour) {
    let corners = [
        (low - HALF, y),
        (low, y - HALF),
        (high, y - HALF),
        (high + HALF, y),
        (high, y + HALF),
        (low, y + HALF),
    ];
    drawing.corners(&corners, Look::fill(Colour::Ground).outlined(colour, 1.8));
    let ends = [low, high].map(|x| [(x, y - HALF), (x, y + HALF)]);
    drawing.strokes(ends, Look::line(colour, 1.8));
}

pub(super) fn figure_swatch(drawing: &mut Drawing<'_>, (x, y): (f64, f64)) {
    diamond(drawing, x + SWATCH / 2.0, y + SWATCH_HEIGHT / 2.0, Colour::Ink);
}

pub(super) fn between_swatch(drawing: &mut Drawing<'_>, (x, y): (f64, f64)) {
    between(drawing, x + HALF, x + SWATCH - HALF, y + SWATCH_HEIGHT / 2.0, Colour::Ink);
}

pub(super) fn one_sided_swatch(drawing: &mut Drawing<'_>, (x, y): (f64, f64)) {
    one_sided(drawing, (x + 2.0, Some(x + SWATCH)), 1.0, y + SWATCH_HEIGHT / 2.0, Colour::Ink);
}

pub(super) fn two_sided_swatch(drawing: &mut Drawing<'_>, (x, y): (f64, f64)) {
    let (from, to, y) = (x + 2.0, x + SWATCH - 2.0, y + SWATCH_HEIGHT / 2.0);
    bar(drawing, from, to, y, Colour::Ink);
    stop(drawing, from, y, Colour::Ink);
    stop(drawing, to, y, Colour::Ink);
}

pub(super) fn lines_swatch(drawing: &mut Drawing<'_>, (x, y): (f64, f64)) {
    lines(drawing, [4.0, 9.0, 18.0].into_iter().map(|step| x + step), y + SWATCH_HEIGHT - 1.0, Colour::Ink);
}
