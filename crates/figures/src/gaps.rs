//! How much of the line lies in gaps of each class: one bar for each class.

use crate::axis::{self, PerCent};
use crate::frame::Frame;
use crate::heading;
use crate::palette::Colour;
use crate::share::Share;
use crate::svg::{Area, Drawing, Look, MARGIN};

/// The bars of one chart, in the order they are drawn.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Gaps {
    /// The classes, usually from narrow to wide.
    pub classes: Vec<Class>,
    /// What the axis counts, with its unit.
    pub axis: String,
}

/// One class of gaps.
#[derive(Clone, Debug, PartialEq)]
pub struct Class {
    /// The class in words.
    pub name: String,
    /// The share of the line that lies in its gaps.
    pub share: Share,
    /// The share as a reader is to see it.
    pub figure: String,
}

/// Draws the chart.
///
/// # Example
/// ```
/// use tautline_figures::{Frame, Palette, Share, gaps::{self, Class, Gaps}};
/// let class = |name: &str, share, figure: &str| Class {
///     name: name.to_owned(),
///     share: Share::new(share).unwrap(),
///     figure: figure.to_owned(),
/// };
/// let chart = Gaps {
///     classes: vec![class("25 to 50 cm", 0.12, "12 %"), class("51 to 100 cm", 0.31, "31 %")],
///     axis: "share of the line, %".to_owned(),
/// };
/// let svg = gaps::draw(&chart, &Frame::new("gaps", 360, Palette::screen()));
/// assert!(svg.contains("25 to 50 cm") && svg.contains("31 %"));
/// ```
pub fn draw(chart: &Gaps, frame: &Frame) -> String {
    const BAR: f64 = 14.0;
    let mut drawing = Drawing::new(frame);
    let largest = chart.classes.iter().map(|class| class.share.per_cent()).fold(0.0, f64::max);
    let ends = (drawing.left(), drawing.right());
    let axis = PerCent::reaching(largest, ends, frame.mark, axis::spacing);
    let mut y = MARGIN;
    for class in &chart.classes {
        let top = heading::draw(&mut drawing, y, &class.name, &class.figure) + 2.0;
        axis.upright_grid(&mut drawing, top, top + BAR + 4.0);
        let width = axis.scale.at(class.share.per_cent()) - axis.scale.start();
        let bar = Area { x: axis.scale.start(), y: top + 2.0, width, height: BAR };
        if class.share.per_cent() > 0.0 {
            drawing.area(bar, Look::fill(Colour::Canopy));
        }
        y = top + BAR + 10.0;
    }
    let bottom = axis.below(&mut drawing, y, &chart.axis);
    drawing.finish(bottom + MARGIN)
}
