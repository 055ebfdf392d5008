//! A practice line piece by piece, for one long picture that is walked along; and what its marks mean, apart.

use super::{ASIDE, Window, Words, entries, strip, tape};
use crate::frame::Frame;
use crate::legend;
use crate::svg::{Anchor, Area, Drawing, Lettering, MARGIN};
use tautline_engine::length::{Length, Unit};
use tautline_engine::practice::line::PracticeLine;

/// How high a piece is drawn, as a share of its width: as far as a strip reaches to either side of so much tape.
///
/// # Example
/// ```
/// use tautline_engine::length::{Length, Unit};
/// use tautline_figures::practice::piece_height;
/// assert!((piece_height(Length::from_units(150, Unit::Centimetre)) - 0.4).abs() < 1e-12);
/// ```
pub fn piece_height(each: Length) -> f64 {
    2.0 * ASIDE / each.in_unit(Unit::Metre).max(0.1)
}

/// How far a piece is drawn beyond what is seen of it.
const BEYOND: f64 = 4.0;

/// Draws the tape between two places without a margin, so that the next piece goes on where this one ends.
///
/// # Example
/// ```
/// use tautline_engine::length::{Length, Notation, Unit};
/// use tautline_engine::practice::level::{Level, Wanted, draw};
/// use tautline_figures::{Frame, Palette, practice::draw_piece};
/// let cm = |n| Length::from_units(n, Unit::Centimetre);
/// let tape = Notation::decimals(Unit::Centimetre, 0);
/// let line = draw(&Wanted { level: Level::Two, length: cm(600), tape, gap: Length::ZERO, seed: 1 });
/// let svg = draw_piece(&line, (cm(150), cm(300)), &Frame::new("piece", 600, Palette::screen()));
/// assert!(svg.contains("viewBox=\"0 0 600 240\""));
/// ```
pub fn draw_piece(line: &PracticeLine, (from, to): (Length, Length), frame: &Frame) -> String {
    let mut drawing = Drawing::new(frame);
    let width = drawing.width();
    let each = (to - from).max(Length::from_units(1, Unit::Millimetre));
    let height = width * piece_height(each);
    // what crosses a joint is drawn on beyond it, so that no outline runs along the joint
    let area = Area { x: -BEYOND, y: 0.0, width: width + 2.0 * BEYOND, height };
    let scale = width / each.in_unit(Unit::Metre);
    let window = Window { from: from.in_unit(Unit::Metre) - BEYOND / scale, scale, area };
    strip(&mut drawing, line, &window);
    let to = from + each;
    // the number at the joint is the next piece's
    let numbered = to - Length::from_nanometres(1);
    tape::draw(&mut drawing, line, &window, (from, to, numbered), frame.mark);
    drawing.finish(height)
}

/// Draws what the marks of a line mean.
pub fn draw_meaning(line: &PracticeLine, words: &Words, frame: &Frame) -> String {
    let mut drawing = Drawing::new(frame);
    let (left, right) = (drawing.left(), drawing.right());
    let top =
        drawing.paragraph((left, MARGIN), Anchor::Start, Lettering::CAPTION, &words.edge, right - left) + 6.0;
    let below = legend::draw(&mut drawing, top, &entries(line, words));
    drawing.finish(below + MARGIN)
}
