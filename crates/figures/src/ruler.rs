//! The tape as one walks along it: a window of it that runs with the reader, what has been read there, where they stand.

use crate::frame::Frame;
use crate::hatch::Hatch;
use crate::palette::{Colour, Tone};
use crate::scale::{Measure, Scale};
use crate::svg::{Anchor, Area, Drawing, Lettering, Look, MARGIN};
use tautline_engine::length::{DecimalMark, Length, Unit};
use tautline_engine::stretch::Stretch;

/// What is drawn.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ruler {
    /// Where the window begins and ends.
    pub window: (Length, Length),
    /// Where the tape ends, where that is known.
    pub end: Option<Length>,
    /// The unit that the tape is numbered in.
    pub unit: Unit,
    /// What has been read.
    pub read: Vec<Read>,
    /// From where the intercept under way starts.
    pub since: Option<Length>,
    /// Where the reader stands.
    pub at: Length,
}

/// One stretch that has been read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Read {
    /// From where to where.
    pub stretch: Stretch,
    /// The colour of its species.
    pub tone: Tone,
    /// Dead.
    pub dead: bool,
}

/// The window about a place of the tape: so much of it that single inches or centimetres can be told apart, with what
/// lies behind on two thirds of it.
///
/// # Units
/// ten feet, or three metres where the unit is metric; the whole tape where that is shorter
pub fn window(at: Length, end: Option<Length>, unit: Unit) -> (Length, Length) {
    let span = match unit {
        Unit::Inch | Unit::Foot => Length::from_units(10, Unit::Foot),
        _ => Length::from_units(3, Unit::Metre),
    };
    let whole = end.filter(|&end| end > Length::ZERO).unwrap_or(at.max(Length::ZERO) + span);
    let span = span.min(whole).nanometres();
    let from = (at.nanometres() - span / 3 * 2).clamp(0, whole.nanometres() - span);
    (Length::from_nanometres(from), Length::from_nanometres(from + span))
}

/// How high the lane over the tape is, and the tape.
const LANE: f64 = 18.0;
const STRIP: f64 = 30.0;
/// Room for the mark of where the reader stands.
const MARK: f64 = 10.0;

/// Draws the window.
///
/// # Example
/// ```
/// use tautline_engine::length::{Length, Unit};
/// use tautline_figures::ruler::{Ruler, draw, window};
/// use tautline_figures::{Frame, Palette};
/// let at = Length::from_units(20, Unit::Foot);
/// let end = Some(Length::from_units(65, Unit::Foot));
/// let ruler =
///     Ruler { window: window(at, end, Unit::Foot), end, unit: Unit::Foot, read: Vec::new(), since: None, at };
/// assert!(draw(&ruler, &Frame::new("tape", 360, Palette::screen())).contains(">20<"));
/// ```
pub fn draw(ruler: &Ruler, frame: &Frame) -> String {
    let mut drawing = Drawing::new(frame);
    let (from, to) = ruler.window;
    let span = to - from;
    let scale = Scale::of_lengths(drawing.left(), drawing.right(), span);
    let place = |length: Length| scale.at_length(length - from);
    let top = MARGIN + MARK + LANE;
    let end = ruler.end.unwrap_or(to).min(to);
    let strip = Area { x: scale.start(), y: top, width: place(end) - scale.start(), height: STRIP };
    drawing.area(strip, Look::fill(Colour::Tape));
    for one in &ruler.read {
        bar(&mut drawing, (place(one.stretch.start()), place(one.stretch.stop())), top - LANE, one);
    }
    if let Some(since) = ruler.since {
        let (start, stop) = (place(since), place(ruler.at).max(place(since) + 2.0));
        let open = Area { x: start, y: top - LANE, width: stop - start, height: LANE };
        drawing.area(open, Look::hatch(Hatch::Closed(Colour::Canopy)).outlined(Colour::Canopy, 1.0));
    }
    ticks(&mut drawing, ruler, scale, top, frame.mark);
    let edges = [top, top + STRIP].map(|y| [(scale.start(), y), (place(end), y)]);
    drawing.strokes(edges, Look::line(Colour::Edge, 1.0));
    let stake = |x: f64| [(x, top - LANE), (x, top + STRIP + 3.0)];
    let stakes = [(from == Length::ZERO).then_some(Length::ZERO), ruler.end.filter(|&end| end <= to)];
    drawing.strokes(stakes.into_iter().flatten().map(place).map(stake), Look::line(Colour::Edge, 3.0));
    let here = place(ruler.at);
    drawing.strokes([[(here, MARGIN + MARK), (here, top + STRIP)]], Look::line(Colour::Ink, 2.0));
    let mark = [(here - 6.0, MARGIN), (here + 6.0, MARGIN), (here, MARGIN + MARK)];
    drawing.corners(&mark, Look::fill(Colour::Ink));
    drawing.finish(top + STRIP + MARGIN)
}

fn bar(drawing: &mut Drawing<'_>, (start, stop): (f64, f64), top: f64, one: &Read) {
    if stop <= start {
        return; // outside the window
    }
    let colour = Colour::from(one.tone);
    let look = if one.dead {
        Look::hatch(Hatch::Dead).outlined(Colour::Dead, 1.0)
    } else {
        Look::fill(colour).outlined(Colour::Ground, 0.8)
    };
    drawing.area(Area { x: start, y: top, width: stop - start, height: LANE }, look);
}

/// Ticks along the upper edge of the tape, and numbers at those that have room for one.
fn ticks(drawing: &mut Drawing<'_>, ruler: &Ruler, scale: Scale, top: f64, mark: DecimalMark) {
    let (from, to) = ruler.window;
    let measure = Measure::of(ruler.unit);
    let number = |grains: i64| measure.number(grains, mark);
    let widest = Lettering::ON_TAPE.width(&number(to.nanometres())) + 12.0;
    let steps = measure.ticks((to - from).nanometres(), scale.end() - scale.start(), |_| widest);
    let end = ruler.end.unwrap_or(to).min(to).nanometres();
    let every = |step: i64| {
        let first = (from.nanometres() + step - 1) / step;
        (first..=end / step).map(move |at| at * step)
    };
    let place = |grains: i64| scale.at_length(Length::from_nanometres(grains) - from);
    let fine = steps.between.iter().copied().find(|&grains| grains > 0);
    let short = fine.into_iter().flat_map(every).map(&place);
    drawing.strokes(short.map(|x| [(x, top), (x, top + 5.0)]), Look::line(Colour::Edge, 0.8));
    let long = every(steps.step).map(&place);
    drawing.strokes(long.map(|x| [(x, top), (x, top + 10.0)]), Look::line(Colour::Ink, 1.2));
    for grains in every(steps.step) {
        let text = number(grains);
        let half = Lettering::ON_TAPE.width(&text) / 2.0;
        let x = place(grains).clamp(scale.start() + half + 3.0, scale.end() - half - 3.0);
        drawing.text((x, top + 23.0), Anchor::Middle, Lettering::ON_TAPE, &text);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn feet(count: i64) -> Length {
        Length::from_units(count, Unit::Foot)
    }

    #[test]
    fn the_window_runs_with_the_reader_and_never_leaves_the_tape() {
        let end = Some(feet(65));
        assert_eq!(window(feet(0), end, Unit::Inch), (feet(0), feet(10)));
        assert_eq!(window(feet(65), end, Unit::Inch), (feet(55), feet(65)));
        let (from, to) = window(feet(30), end, Unit::Foot);
        assert!(to - from == feet(10) && from < feet(30) && feet(30) < to);
        // a shorter tape is shown whole
        assert_eq!(window(feet(2), Some(feet(6)), Unit::Foot), (feet(0), feet(6)));
        // of a tape whose end nobody knows, so much as lies ahead
        assert_eq!(window(feet(40), None, Unit::Foot).1 - window(feet(40), None, Unit::Foot).0, feet(10));
    }

    #[test]
    fn a_stretch_stands_where_it_was_read() {
        let at = feet(8);
        let stretch = Stretch::new(feet(2), feet(4)).unwrap();
        let read = vec![Read { stretch, tone: Tone(0), dead: false }];
        let ruler = Ruler {
            window: (feet(0), feet(10)),
            end: Some(feet(10)),
            unit: Unit::Foot,
            read,
            since: None,
            at,
        };
        let svg = draw(&ruler, &Frame::new("t", 416, crate::Palette::screen()));
        // 400 px between the margins: two of ten feet begin at 8 + 80 and are 80 wide
        let bar = svg.lines().find(|line| line.contains("figure-fill-tone-1")).unwrap();
        assert!(bar.contains("x=\"88\"") && bar.contains("width=\"80\""), "{bar}");
    }
}
