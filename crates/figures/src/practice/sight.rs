//! Why the reading depends on where you stand: an eye straight above a canopy's edge, and one beside it.

use crate::frame::Frame;
use crate::palette::{Colour, Tone};
use crate::svg::{Anchor, Area, Drawing, Lettering, Look, MARGIN};
use tautline_engine::length::{Length, Unit};
use tautline_engine::num::math::{cos, sin};
use tautline_engine::practice::line::parallax;

/// A canopy's edge at a height, seen at an angle.
#[derive(Clone, Debug, PartialEq)]
pub struct Sight {
    /// How high the edge stands over the tape.
    pub height: Length,
    /// How far from straight down the eye looks, in degrees.
    pub degrees: f64,
    /// Beside the height.
    pub height_words: String,
    /// Beside the angle.
    pub angle_words: String,
    /// Under the tape: how far off the reading is.
    pub off_words: String,
    /// At the eye that looks straight down.
    pub right_words: String,
}

/// Draws both sights from the side.
///
/// # Range
/// angles from 1° to 60°
/// # Example
/// ```
/// use tautline_engine::length::{Length, Unit};
/// use tautline_figures::{Frame, Palette, practice::{Sight, draw_sight}};
/// let words = |text: &str| text.to_owned();
/// let sight = Sight {
///     height: Length::from_units(60, Unit::Centimetre), degrees: 20.0,
///     height_words: words("60 cm"), angle_words: words("20°"),
///     off_words: words("22 cm off"), right_words: words("straight above"),
/// };
/// assert!(draw_sight(&sight, &Frame::new("sight", 480, Palette::print())).contains("22 cm off"));
/// ```
pub fn draw_sight(sight: &Sight, frame: &Frame) -> String {
    let mut drawing = Drawing::new(frame);
    let (left, right) = (drawing.left(), drawing.right());
    let degrees = sight.degrees.clamp(1.0, 60.0);
    let height = sight.height.in_unit(Unit::Metre).max(0.01);
    let off = parallax(sight.height, degrees);
    // the eye stands twice as high as the canopy; everything fits the width
    let width = right - left;
    let tall = 110.0_f64.min(width * 0.42 * height / off.max(height * 0.3));
    let scale = tall / height;
    let ground = MARGIN + 22.0 + 2.0 * tall;
    let edge = left + width * 0.5;
    let seen = edge + off * scale;
    let canopy = ground - tall;
    let slope = sin(degrees.to_radians()) / cos(degrees.to_radians());
    let eye = (edge - tall * 0.9 * slope, canopy - tall * 0.9);
    let crown = Area { x: left + 4.0, y: canopy - 10.0, width: edge - left - 4.0, height: 20.0 };
    drawing.area(
        crown,
        Look::hatch(crate::hatch::Hatch::Foliage(Colour::from(Tone(0)), 0))
            .outlined(Colour::from(Tone(0)), 1.2),
    );
    drawing.area(
        Area { x: left, y: ground, width, height: 8.0 },
        Look::fill(Colour::Tape).outlined(Colour::Edge, 1.0),
    );
    drawing.strokes([[(edge, canopy - tall * 0.9), (edge, ground)]], Look::line(Colour::Ink, 1.2));
    drawing.strokes([[eye, (seen, ground)]], Look::line(Colour::Goal, 1.4).dashed());
    drawing.strokes([[(edge, ground - 5.0), (seen, ground - 5.0)]], Look::line(Colour::Goal, 3.0));
    let label = |drawing: &mut Drawing<'_>, at, anchor, words: &str| {
        drawing.text(at, anchor, Lettering::LABEL, words);
    };
    label(&mut drawing, (edge + 5.0, canopy - tall * 0.8), Anchor::Start, &sight.right_words);
    label(&mut drawing, (eye.0 - 4.0, canopy - tall * 0.55), Anchor::End, &sight.angle_words);
    label(&mut drawing, (edge - 6.0, f64::midpoint(canopy, ground) + 12.0), Anchor::End, &sight.height_words);
    let below =
        drawing.paragraph((left, ground + 14.0), Anchor::Start, Lettering::LABEL, &sight.off_words, width);
    drawing.finish(below + MARGIN)
}
