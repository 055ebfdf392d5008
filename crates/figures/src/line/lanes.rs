//! The lanes over the tape: one species each, with its name beside or above.

use super::{Common, Lane, Total};
use crate::hatch::Hatch;
use crate::legend::{SWATCH, SWATCH_HEIGHT};
use crate::palette::Colour;
use crate::svg::{Anchor, Area, Drawing, Lettering, Look};
use tautline_engine::length::Length;
use tautline_engine::stretch::Stretch;

/// How high a bar is.
const BAR: f64 = 11.0;
/// The narrowest that a stretch is drawn.
const NARROWEST: f64 = 0.8;

pub(super) const fn live(colour: Colour) -> Look {
    Look::fill(colour)
}

pub(super) const fn closed(colour: Colour) -> Look {
    Look::hatch(Hatch::Closed(colour)).outlined(colour, 0.8)
}

pub(super) const fn dead() -> Look {
    Look::hatch(Hatch::Dead).outlined(Colour::Dead, 0.8)
}

pub(super) const fn unread() -> Look {
    Look::hatch(Hatch::Unknown)
}

/// A species whose stretches have their places; gives back where its lane ends.
pub(super) fn placed(
    drawing: &mut Drawing<'_>,
    common: &Common,
    line: Length,
    lane: &Lane,
    not_read: &[Stretch],
    top: f64,
) -> f64 {
    let colour = Colour::from(lane.tone);
    let (bar, below) = track(drawing, common, line, &lane.name, top);
    // live last: where dead wood stands under live canopy, the live shows
    for (stretches, look) in [
        (not_read, unread()),
        (&lane.dead, dead()),
        (&lane.closed, closed(colour)),
        (&lane.live, live(colour)),
    ] {
        drawing.areas(areas(common, stretches, bar, BAR), look);
    }
    below
}

/// A species of which only the total is known, as a measured length between two stops; gives back where its
/// lane ends.
pub(super) fn unplaced(
    drawing: &mut Drawing<'_>,
    common: &Common,
    line: Length,
    total: &Total,
    top: f64,
) -> f64 {
    let (bar, below) = track(drawing, common, line, &total.name, top);
    if total.length > Length::ZERO {
        let (from, to) = (common.scale.start(), common.scale.at_length(total.length));
        measured(drawing, (from, to), bar + BAR / 2.0, Colour::from(total.tone));
    }
    below
}

/// The note under a tape without places.
pub(super) fn note(drawing: &mut Drawing<'_>, common: &Common, note: &str, top: f64) -> f64 {
    let start = common.scale.start();
    let room = common.scale.end() - start;
    drawing.paragraph((start, top + 2.0), Anchor::Start, Lettering::CAPTION, note, room)
}

/// The name and the hairline of a lane: where its bar begins and where the lane ends.
fn track(drawing: &mut Drawing<'_>, common: &Common, line: Length, name: &str, top: f64) -> (f64, f64) {
    let left = drawing.left();
    let (bar, below) = if let Some(column) = common.names {
        let below = drawing.paragraph((left, top), Anchor::Start, Lettering::LABEL, name, column - 8.0);
        (top + 3.0, below.max(top + BAR + 3.0) + 3.0)
    } else {
        let room = drawing.right() - left;
        let below = drawing.paragraph((left, top), Anchor::Start, Lettering::LABEL, name, room);
        (below + 2.0, below + BAR + 8.0)
    };
    let (from, to) = (common.scale.start(), common.scale.at_length(line));
    drawing.through(&[(from, bar + BAR), (to, bar + BAR)], Look::line(Colour::Rule, 1.0));
    (bar, below)
}

/// The stretches as areas, `height` high.
pub(super) fn areas(common: &Common, stretches: &[Stretch], top: f64, height: f64) -> Vec<Area> {
    let area = |stretch: Stretch| {
        let x = common.scale.at_length(stretch.start());
        let width = (common.scale.at_length(stretch.stop()) - x).max(NARROWEST);
        Area { x, y: top, width, height }
    };
    stretches.iter().filter_map(|&stretch| common.on_scale(stretch)).map(area).collect()
}

fn measured(drawing: &mut Drawing<'_>, (from, to): (f64, f64), y: f64, colour: Colour) {
    let stop = |x: f64| [(x, y - 5.0), (x, y + 5.0)];
    drawing.strokes([stop(from), stop(to)], Look::line(colour, 1.6));
    drawing.through(&[(from, y), (to, y)], Look::line(colour, 3.0).dashed());
}

pub(super) fn unplaced_swatch(drawing: &mut Drawing<'_>, (x, y): (f64, f64)) {
    measured(drawing, (x + 1.0, x + SWATCH - 1.0), y + SWATCH_HEIGHT / 2.0, Colour::Ink);
}
