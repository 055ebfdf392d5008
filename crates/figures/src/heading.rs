//! The row above a drawing: its name on the left, its figure on the right.

use crate::svg::{Anchor, Drawing, Lettering};

/// The least room between a name and its figure.
const APART: f64 = 14.0;

/// Draws a name and its figure from `top` down: side by side where both fit, else one under the other; gives
/// back where they end.
pub(crate) fn draw(drawing: &mut Drawing<'_>, top: f64, name: &str, figure: &str) -> f64 {
    let (left, right) = (drawing.left(), drawing.right());
    let room = right - left;
    let beside = Lettering::NAME.width(name) + APART + Lettering::FIGURE.width(figure) <= room;
    let below = drawing.paragraph((left, top), Anchor::Start, Lettering::NAME, name, room);
    if beside {
        let figure_below = drawing.paragraph((right, top), Anchor::End, Lettering::FIGURE, figure, room);
        return below.max(figure_below);
    }
    drawing.paragraph((left, below), Anchor::Start, Lettering::FIGURE, figure, room)
}
