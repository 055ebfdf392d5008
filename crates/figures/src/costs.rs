//! What designs of each length of line cost, and the cheapest.

use crate::axis::{self, PerCent};
use crate::frame::Frame;
use crate::legend::{self, SWATCH, SWATCH_HEIGHT, Swatch};
use crate::palette::Colour;
use crate::scale::{Measure, Scale};
use crate::svg::{Anchor, Area, Drawing, Lettering, Look, MARGIN};
use tautline_engine::length::{Length, Unit};

/// Costs against the length of a line.
#[derive(Clone, Debug, PartialEq)]
pub struct Costs {
    /// Each length and its cost; their order doesn't matter.
    pub designs: Vec<(Length, f64)>,
    /// The cheapest length, with what stands at its mark.
    pub cheapest: Option<(Length, String)>,
    /// Where the cheapest length likely lies.
    pub likely: Option<(Length, Length)>,
    /// The longest line that was seen; beyond it the curve is dashed.
    pub seen: Length,
    /// The unit of the axis of lengths.
    pub unit: Unit,
    /// The words around the curve.
    pub words: Words,
}

/// The words around the curve; an empty one is left out.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Words {
    /// What the axis of lengths counts, with its unit.
    pub length: String,
    /// What the axis of costs counts, with its unit.
    pub cost: String,
    /// The band of likely lengths.
    pub likely: String,
    /// The dashed part of the curve.
    pub beyond: String,
}

/// How high the field of the curve is.
const HEIGHT: f64 = 190.0;

/// Draws the curve.
///
/// # Example
/// ```
/// use tautline_engine::length::{Length, Unit};
/// use tautline_figures::{Frame, Palette, costs::{self, Costs, Words}};
/// let metres = |count| Length::from_units(count, Unit::Metre);
/// let costs = Costs {
///     designs: vec![(metres(10), 300.0), (metres(20), 240.0), (metres(40), 280.0)],
///     cheapest: Some((metres(20), "20 m: 240 minutes".to_owned())),
///     likely: Some((metres(15), metres(30))),
///     seen: metres(30),
///     unit: Unit::Metre,
///     words: Words { length: "length of a line, m".to_owned(), ..Words::default() },
/// };
/// let svg = costs::draw(&costs, &Frame::new("costs", 360, Palette::screen()));
/// assert!(svg.contains("20 m: 240 minutes"));
/// ```
pub fn draw(costs: &Costs, frame: &Frame) -> String {
    let mut drawing = Drawing::new(frame);
    let mut designs: Vec<(Length, f64)> =
        costs.designs.iter().copied().filter(|(_, cost)| cost.is_finite() && *cost >= 0.0).collect();
    designs.sort_by_key(|&(length, _)| length);
    let (left, right) = (drawing.left(), drawing.right());
    let caption = &costs.words.cost;
    let top =
        drawing.paragraph((left, MARGIN), Anchor::Start, Lettering::CAPTION, caption, right - left) + 8.0;
    let bottom = top + HEIGHT;
    let largest = designs.iter().map(|&(_, cost)| cost).fold(0.0, f64::max);
    // a plain number is written as a number of per cent is
    let axis = PerCent::reaching(largest.min(LARGEST) * 1.08, (bottom, top), frame.mark, |_| 30.0);
    let start = left + axis.number_width() + 8.0;
    let longest = designs.iter().map(|&(length, _)| length).fold(costs.seen, Ord::max);
    let lengths = Scale::of_lengths(start, right - 4.0, longest);
    let band = |(low, high): (Length, Length)| {
        let (low, high) = (lengths.at_length(low.min(high)), lengths.at_length(high.max(low)));
        Area { x: low, y: top, width: high - low, height: HEIGHT }
    };
    if let Some(likely) = costs.likely {
        drawing.area(band(likely), Look::fill(Colour::Met));
    }
    axis.level_grid(&mut drawing, start, lengths.end());
    let place = |&(length, cost): &(Length, f64)| (lengths.at_length(length), axis.scale.at(cost));
    let seen = designs.iter().filter(|(length, _)| *length <= costs.seen).count();
    let points: Vec<(f64, f64)> = designs.iter().map(place).collect();
    if seen > 1 {
        drawing.through(&points[..seen], Look::line(Colour::Canopy, 2.6));
    }
    let beyond = &points[seen.saturating_sub(1)..];
    if beyond.len() > 1 {
        drawing.through(beyond, Look::line(Colour::Canopy, 2.0).dashed());
    }
    if let Some((length, label)) = &costs.cheapest {
        let cost = designs.iter().find(|(one, _)| one == length).map_or(0.0, |&(_, cost)| cost);
        let (x, y) = place(&(*length, cost));
        let side = 9.0;
        let area = Area { x: x - side / 2.0, y: y - side / 2.0, width: side, height: side };
        drawing.area(area, Look::fill(Colour::Ink).outlined(Colour::Ground, 1.5));
        let middle = x < f64::midpoint(start, lengths.end());
        let (anchor, room) = if middle { (Anchor::Start, right - x) } else { (Anchor::End, x - left) };
        let high = Lettering::LABEL.height(label, room);
        let above = (y + 10.0).min(bottom - high - 2.0).max(top);
        drawing.paragraph((x, above), anchor, Lettering::LABEL, label, room);
    }
    let ticks = Measure::of(costs.unit).ticks(longest.nanometres(), lengths.end() - start, axis::spacing);
    let numbered: Vec<(f64, String)> = ticks
        .numbered
        .iter()
        .map(|&grains| {
            let place = lengths.at_length(Length::from_nanometres(grains));
            (place, Measure::of(costs.unit).number(grains, frame.mark))
        })
        .collect();
    let below = axis::below(&mut drawing, lengths, bottom, &numbered, &costs.words.length) + 8.0;
    let entries = [
        (Swatch::Area(Look::fill(Colour::Met)), costs.words.likely.as_str()),
        (Swatch::Marks(dashed), if beyond.len() > 1 { costs.words.beyond.as_str() } else { "" }),
    ];
    let below = legend::draw(&mut drawing, below, &entries);
    drawing.finish(below + MARGIN)
}

/// The axis counts no higher.
const LARGEST: f64 = 100_000.0;

fn dashed(drawing: &mut Drawing<'_>, (x, y): (f64, f64)) {
    let middle = y + SWATCH_HEIGHT / 2.0;
    drawing.through(&[(x, middle), (x + SWATCH, middle)], Look::line(Colour::Canopy, 2.0).dashed());
}
