//! What the marks of a picture mean: a swatch and its words, as many in a row as fit.

use crate::svg::{Anchor, Area, Drawing, Lettering, Look};

/// How wide a swatch is.
pub(crate) const SWATCH: f64 = 22.0;
/// How high a swatch is.
pub(crate) const SWATCH_HEIGHT: f64 = 12.0;

/// What is shown before the words.
pub(crate) enum Swatch {
    /// A filled area of this look.
    Area(Look),
    /// Marks drawn into the swatch whose upper left corner is given.
    Marks(fn(&mut Drawing<'_>, (f64, f64))),
}

/// Draws the entries from `top` down, leaving out those without words; gives back where they end.
pub(crate) fn draw(drawing: &mut Drawing<'_>, top: f64, entries: &[(Swatch, &str)]) -> f64 {
    const INNER: f64 = 6.0;
    const BETWEEN: f64 = 18.0;
    let lettering = Lettering::CAPTION;
    let (left, right) = (drawing.left(), drawing.right());
    let (mut x, mut y, mut below) = (left, top, top);
    for (swatch, words) in entries.iter().filter(|(_, words)| !words.trim().is_empty()) {
        let wanted = SWATCH + INNER + lettering.width(words);
        if x > left && x + wanted > right {
            (x, y) = (left, below + 4.0);
        }
        match swatch {
            Swatch::Area(look) => {
                let area = Area { x: x + 0.5, y: y + 2.0, width: SWATCH - 1.0, height: SWATCH_HEIGHT - 1.0 };
                drawing.area(area, *look);
            }
            Swatch::Marks(marks) => marks(drawing, (x, y + 1.5)),
        }
        let start = x + SWATCH + INNER;
        let words_below = drawing.paragraph((start, y), Anchor::Start, lettering, words, right - start);
        below = below.max(words_below).max(y + SWATCH_HEIGHT + 3.0);
        x += wanted + BETWEEN;
    }
    below
}
