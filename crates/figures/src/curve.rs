//! Cover under every gap rule that the reading can answer, as a curve of steps.

use crate::axis::{self, PerCent};
use crate::frame::Frame;
use crate::hatch::Hatch;
use crate::legend::{self, SWATCH, SWATCH_HEIGHT, Swatch};
use crate::palette::Colour;
use crate::scale::{Measure, Scale};
use crate::share::Share;
use crate::svg::{Anchor, Area, Drawing, Lettering, Look, MARGIN};
use tautline_engine::length::{Length, Unit};

/// A curve of cover against the gap rule.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// The steps; their order doesn't matter.
    pub steps: Vec<Step>,
    /// The rule the line was read under, below which cover cannot be known.
    pub recorded: Recorded,
    /// How far the axis of gap rules reaches.
    pub longest: Length,
    /// The unit of the axis of gap rules.
    pub unit: Unit,
    /// The words around the curve.
    pub words: Words,
}

/// From this gap rule on, up to the next step, cover is this.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// The gap rule.
    pub limit: Length,
    /// The cover under it.
    pub cover: Share,
}

/// The rule that the line was read under.
#[derive(Clone, Debug, PartialEq)]
pub struct Recorded {
    /// The rule.
    pub limit: Length,
    /// What stands at its mark, such as the cover under it.
    pub label: String,
}

/// The words around the curve; an empty one is left out.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Words {
    /// What the axis of gap rules counts, with its unit.
    pub limit: String,
    /// What the axis of cover counts, with its unit.
    pub cover: String,
    /// The mark of the recorded rule.
    pub recorded: String,
    /// The region finer than the recorded rule.
    pub unknown: String,
}

impl Curve {
    /// The steps that the reading can answer, in order, beginning at the recorded rule.
    fn known(&self) -> Vec<Step> {
        let mut steps = self.steps.clone();
        steps.sort_by_key(|step| step.limit);
        let recorded = self.recorded.limit;
        let begins = steps.iter().rev().find(|step| step.limit <= recorded).copied();
        let first = begins.map(|step| Step { limit: recorded, ..step });
        let rest = steps.into_iter().filter(|step| recorded < step.limit && step.limit <= self.longest);
        first.into_iter().chain(rest).collect()
    }
}

/// How high the field of the curve is.
const HEIGHT: f64 = 190.0;

/// Draws the curve.
///
/// # Example
/// The published toy line: pieces of 24, 23, 25 and 22 cm with gaps of 4, 9 and 45 cm between them, on 5 m.
/// ```
/// use tautline_engine::length::{Length, Unit};
/// use tautline_figures::{Frame, Palette, Share, curve::{self, Curve, Recorded, Step, Words}};
/// let cm = |count| Length::from_units(count, Unit::Centimetre);
/// let step = |limit, canopy: f64| Step { limit: cm(limit), cover: Share::new(canopy / 500.0).unwrap() };
/// let curve = Curve {
///     steps: vec![step(0, 94.0), step(5, 98.0), step(10, 107.0)],
///     recorded: Recorded { limit: cm(3), label: "18.8 %".to_owned() },
///     longest: cm(15),
///     unit: Unit::Centimetre,
///     words: Words { limit: "gap rule, cm".to_owned(), ..Words::default() },
/// };
/// let svg = curve::draw(&curve, &Frame::new("rule", 360, Palette::screen()));
/// assert!(svg.contains("gap rule, cm"));
/// ```
pub fn draw(curve: &Curve, frame: &Frame) -> String {
    let mut drawing = Drawing::new(frame);
    let known = curve.known();
    let (left, right) = (drawing.left(), drawing.right());
    let top = drawing.paragraph(
        (left, MARGIN),
        Anchor::Start,
        Lettering::CAPTION,
        &curve.words.cover,
        right - left,
    ) + 8.0;
    let bottom = top + HEIGHT;
    let largest = known.iter().map(|step| step.cover.per_cent()).fold(0.0, f64::max);
    // a little air above the highest step, so that its label has room
    let cover = PerCent::reaching(largest * 1.08, (bottom, top), frame.mark, |_| 30.0);
    let start = left + cover.number_width() + 8.0;
    let limits = Scale::of_lengths(start, right - 4.0, curve.longest);
    let recorded = limits.at_length(curve.recorded.limit);

    if recorded > start {
        let area = Area { x: start, y: top, width: recorded - start, height: HEIGHT };
        drawing.area(area, Look::hatch(Hatch::Unknown));
    }
    cover.level_grid(&mut drawing, start, limits.end());
    drawing.through(&[(recorded, top), (recorded, bottom)], Look::line(Colour::Goal, 1.4).dashed());
    drawing.through(&steps(&known, limits, cover.scale), Look::line(Colour::Canopy, 2.6));
    if let Some(first) = known.first() {
        mark(&mut drawing, (recorded, cover.scale.at(first.cover.per_cent())));
    }
    label(&mut drawing, curve, recorded, &known, cover.scale);

    let ticks =
        Measure::of(curve.unit).ticks(curve.longest.nanometres(), limits.end() - start, axis::spacing);
    let numbered: Vec<(f64, String)> = ticks
        .numbered
        .iter()
        .map(|&grains| {
            let place = limits.at_length(Length::from_nanometres(grains));
            (place, Measure::of(curve.unit).number(grains, frame.mark))
        })
        .collect();
    let below = axis::below(&mut drawing, limits, bottom, &numbered, &curve.words.limit) + 8.0;
    let unknown = if recorded > start { curve.words.unknown.as_str() } else { "" };
    let entries = [
        (Swatch::Marks(recorded_swatch), curve.words.recorded.as_str()),
        (Swatch::Area(Look::hatch(Hatch::Unknown)), unknown),
    ];
    let below = legend::draw(&mut drawing, below, &entries);
    drawing.finish(below + MARGIN)
}

/// The corners of the curve: level from each step to the next, then up or down to it.
fn steps(known: &[Step], limits: Scale, cover: Scale) -> Vec<(f64, f64)> {
    let ends = known.iter().skip(1).map(|next| limits.at_length(next.limit)).chain([limits.end()]);
    known
        .iter()
        .zip(ends)
        .flat_map(|(step, end)| {
            let y = cover.at(step.cover.per_cent());
            [(limits.at_length(step.limit), y), (end, y)]
        })
        .collect()
}

/// The words at the recorded rule, on the side of its line where they fit.
fn label(drawing: &mut Drawing<'_>, curve: &Curve, recorded: f64, known: &[Step], cover: Scale) {
    const APART: f64 = 8.0;
    let lettering = Lettering::LABEL;
    let (left, right) = (drawing.left(), drawing.right());
    let (to_the_right, to_the_left) = (right - recorded - APART, recorded - left - APART);
    let (x, anchor, room) =
        if lettering.width(&curve.recorded.label) <= to_the_right || to_the_right >= to_the_left {
            (recorded + APART, Anchor::Start, to_the_right)
        } else {
            (recorded - APART, Anchor::End, to_the_left)
        };
    let y = known.first().map_or(cover.start(), |step| cover.at(step.cover.per_cent()));
    // under the curve, which mostly rises from here
    let height = lettering.height(&curve.recorded.label, room);
    let top = (y + 8.0).min(cover.start() - height - 2.0);
    // ground behind the words, so that no grid line strikes them through
    let width = lettering.width(&curve.recorded.label).min(room);
    let from = if anchor == Anchor::End { x - width } else { x };
    drawing.area(Area { x: from, y: top, width, height }, Look::fill(Colour::Ground));
    drawing.paragraph((x, top), anchor, lettering, &curve.recorded.label, room);
}

fn mark(drawing: &mut Drawing<'_>, (x, y): (f64, f64)) {
    let side = 9.0;
    let area = Area { x: x - side / 2.0, y: y - side / 2.0, width: side, height: side };
    drawing.area(area, Look::fill(Colour::Ink).outlined(Colour::Ground, 1.5));
}

fn recorded_swatch(drawing: &mut Drawing<'_>, (x, y): (f64, f64)) {
    let middle = x + SWATCH / 2.0;
    drawing.through(&[(middle, y), (middle, y + SWATCH_HEIGHT)], Look::line(Colour::Goal, 1.4).dashed());
    mark(drawing, (middle, y + SWATCH_HEIGHT / 2.0));
}
