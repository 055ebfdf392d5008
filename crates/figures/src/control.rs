//! One reader's differences over a season, as a control chart.

use crate::axis;
use crate::frame::Frame;
use crate::legend::{self, SWATCH, SWATCH_HEIGHT, Swatch};
use crate::palette::Colour;
use crate::scale::Scale;
use crate::svg::{Anchor, Area, Drawing, Lettering, Look, MARGIN};

/// A control chart.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Control {
    /// The differences in the order of time.
    pub points: Vec<Point>,
    /// The middle line.
    pub middle: f64,
    /// From the middle to the warning lines.
    pub warning: f64,
    /// From the middle to the action lines.
    pub action: f64,
    /// The words around the chart.
    pub words: Words,
}

/// One difference.
#[derive(Clone, Debug, PartialEq)]
pub struct Point {
    /// When, in words for the axis.
    pub when: String,
    /// The difference, in percentage points.
    pub value: f64,
    /// A rule is broken here.
    pub flagged: bool,
}

/// The words around the chart; an empty one is left out.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Words {
    /// What the level axis counts.
    pub difference: String,
    /// What the axis of time counts.
    pub when: String,
    /// The mark of the warning lines.
    pub warning: String,
    /// The mark of the action lines.
    pub action: String,
    /// The mark of a point at which a rule is broken.
    pub flagged: String,
}

const HEIGHT: f64 = 190.0;

/// Draws the chart.
///
/// # Example
/// ```
/// use tautline_figures::control::{self, Control, Point};
/// use tautline_figures::{Frame, Palette};
/// let point = |value| Point { when: "1 June".to_owned(), value, flagged: false };
/// let chart = Control { points: vec![point(0.4), point(-1.2)], warning: 2.0, action: 3.0, ..Control::default() };
/// assert!(control::draw(&chart, &Frame::new("control", 360, Palette::screen())).contains("1 June"));
/// ```
pub fn draw(chart: &Control, frame: &Frame) -> String {
    let mut drawing = Drawing::new(frame);
    let (left, right) = (drawing.left(), drawing.right());
    let top = drawing.paragraph(
        (left, MARGIN),
        Anchor::Start,
        Lettering::CAPTION,
        &chart.words.difference,
        right - left,
    ) + 8.0;
    let bottom = top + HEIGHT;
    let reach = chart.reach();
    let levels = Scale::new(bottom, top, 2.0 * reach);
    let at = |value: f64| levels.at(value + reach);
    let ticks = ticks(reach);
    let number = |value: f64| if value > 0.0 { format!("+{value}") } else { value.to_string() };
    let widest = ticks.iter().map(|value| Lettering::NUMBER.width(&number(*value))).fold(0.0, f64::max);
    let start = left + widest + 8.0;
    let end = right - 4.0;
    let level = |value: f64| [(start, at(value)), (end, at(value))];
    drawing.strokes(ticks.iter().map(|value| level(*value)), Look::line(Colour::Rule, 0.8));
    for value in &ticks {
        drawing.text((start - 6.0, at(*value) + 4.0), Anchor::End, Lettering::NUMBER, &number(*value));
    }
    drawing.strokes([level(chart.middle)], Look::line(Colour::Quiet, 1.2));
    if chart.warning > 0.0 {
        let ends = [chart.middle - chart.warning, chart.middle + chart.warning];
        drawing.strokes(ends.map(level), Look::line(Colour::Edge, 1.2).dashed());
    }
    if chart.action > 0.0 {
        let ends = [chart.middle - chart.action, chart.middle + chart.action];
        drawing.strokes(ends.map(level), Look::line(Colour::Goal, 1.6));
    }
    #[expect(clippy::cast_precision_loss, reason = "a season holds few calibrations")]
    let across = Scale::new(start, end, chart.points.len() as f64);
    #[expect(clippy::cast_precision_loss, reason = "a season holds few calibrations")]
    let place = |number: usize| across.at(number as f64 + 0.5);
    let way: Vec<(f64, f64)> =
        chart.points.iter().enumerate().map(|(number, point)| (place(number), at(point.value))).collect();
    drawing.through(&way, Look::line(Colour::Canopy, 1.4));
    for (point, (x, y)) in chart.points.iter().zip(&way) {
        mark(&mut drawing, (*x, *y), point.flagged);
    }
    let below =
        axis::below(&mut drawing, across, bottom, &chart.numbered(&place, end - start), &chart.words.when);
    let flagged =
        if chart.points.iter().any(|point| point.flagged) { chart.words.flagged.as_str() } else { "" };
    let entries = [
        (Swatch::Marks(warning_swatch), chart.words.warning.as_str()),
        (Swatch::Marks(action_swatch), chart.words.action.as_str()),
        (Swatch::Marks(flagged_swatch), flagged),
    ];
    let below = legend::draw(&mut drawing, below + 8.0, &entries);
    drawing.finish(below + MARGIN)
}

impl Control {
    /// How far the axis reaches either way; a point that isn't finite counts for nothing.
    fn reach(&self) -> f64 {
        let values = self.points.iter().map(|point| point.value.abs());
        let most = values
            .chain([self.middle.abs() + self.action, self.middle.abs() + self.warning])
            .filter(|value| value.is_finite())
            .fold(0.0, f64::max);
        if most > 0.0 { most.min(1000.0) * 1.1 } else { 1.0 }
    }

    /// As many dates as fit.
    fn numbered(&self, place: &dyn Fn(usize) -> f64, room: f64) -> Vec<(f64, String)> {
        let widest = self.points.iter().map(|point| axis::spacing(&point.when)).fold(36.0, f64::max);
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            clippy::cast_precision_loss,
            reason = "a small count"
        )]
        let step = ((self.points.len() as f64 * widest / room.max(1.0)).ceil() as usize).max(1);
        let shown = self.points.iter().enumerate().step_by(step);
        shown.map(|(number, point)| (place(number), point.when.clone())).collect()
    }
}

/// Whole steps either side of zero, at most four a side.
fn ticks(reach: f64) -> Vec<f64> {
    let steps = [0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0];
    let step = steps.into_iter().find(|step| reach / step <= 4.0).unwrap_or(1000.0);
    #[expect(clippy::cast_possible_truncation, reason = "at most four")]
    let most = (reach / step).floor() as i32;
    // tenths are counted in whole numbers, so that no digit is made up
    (-most..=most).map(|number| (f64::from(number) * step * 10.0).round() / 10.0 + 0.0).collect()
}

fn mark(drawing: &mut Drawing<'_>, (x, y): (f64, f64), flagged: bool) {
    let side = if flagged { 11.0 } else { 7.0 };
    let area = Area { x: x - side / 2.0, y: y - side / 2.0, width: side, height: side };
    let look = if flagged {
        Look::fill(Colour::Ground).outlined(Colour::Goal, 2.4)
    } else {
        Look::fill(Colour::Ink).outlined(Colour::Ground, 1.2)
    };
    drawing.area(area, look);
}

fn warning_swatch(drawing: &mut Drawing<'_>, (x, y): (f64, f64)) {
    let middle = y + SWATCH_HEIGHT / 2.0;
    drawing.through(&[(x, middle), (x + SWATCH, middle)], Look::line(Colour::Edge, 1.2).dashed());
}

fn action_swatch(drawing: &mut Drawing<'_>, (x, y): (f64, f64)) {
    let middle = y + SWATCH_HEIGHT / 2.0;
    drawing.through(&[(x, middle), (x + SWATCH, middle)], Look::line(Colour::Goal, 1.6));
}

fn flagged_swatch(drawing: &mut Drawing<'_>, (x, y): (f64, f64)) {
    mark(drawing, (x + SWATCH / 2.0, y + SWATCH_HEIGHT / 2.0), true);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ticks_are_even_about_zero() {
        assert_eq!(ticks(3.3), [-3.0, -2.0, -1.0, 0.0, 1.0, 2.0, 3.0]);
        assert_eq!(ticks(0.35), [-0.3, -0.2, -0.1, 0.0, 0.1, 0.2, 0.3]);
    }
}
