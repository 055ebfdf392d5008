//! Two readings of each staked line above each other: what was kept, lost and gained.

use super::{Common, lanes, tape};
use crate::frame::Frame;
use crate::hatch::Hatch;
use crate::heading;
use crate::legend::{self, Swatch};
use crate::palette::Colour;
use crate::svg::{Anchor, Drawing, Lettering, Look, MARGIN};
use tautline_engine::length::{Length, Unit};
use tautline_engine::stretch::Stretch;

/// Lines under each other on one common scale.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lines {
    /// The lines, in the order they are drawn.
    pub lines: Vec<Line>,
    /// The unit that the tapes are numbered in.
    pub unit: Unit,
    /// What the marks mean.
    pub words: Words,
}

/// One line at two visits.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// Its name.
    pub name: String,
    /// What is told beside the name.
    pub told: String,
    /// How long the tape is that both readings cover.
    pub length: Length,
    /// The earlier and the later visit, as a reader is to see them.
    pub years: [String; 2],
    /// Canopy at both visits.
    pub kept: Vec<Stretch>,
    /// Canopy at the earlier visit alone.
    pub lost: Vec<Stretch>,
    /// Canopy at the later visit alone.
    pub gained: Vec<Stretch>,
}

/// What the marks mean.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Words {
    /// Canopy at both visits.
    pub kept: String,
    /// Canopy at the earlier visit alone.
    pub lost: String,
    /// Canopy at the later visit alone.
    pub gained: String,
}

/// How high the canopy of a visit is drawn.
const BAR: f64 = 14.0;

const KEPT: Look = Look::fill(Colour::Canopy);
const GAINED: Look = Look::fill(Colour::Tone3);

fn lost() -> Look {
    Look::hatch(Hatch::Closed(Colour::Goal)).outlined(Colour::Goal, 0.8)
}

/// Draws the lines: the earlier reading above, the later below, the tape under both.
///
/// # Range
/// a stretch that would be narrower than 0.8 pixels is drawn that wide, so that none is lost from sight
/// # Example
/// ```
/// use tautline_engine::{length::{Length, Unit}, stretch::Stretch};
/// use tautline_figures::{Frame, Palette, change::{self, Line, Lines, Words}};
/// let ft = |count| Length::from_units(count, Unit::Foot);
/// let shrub = |from, to| Stretch::new(ft(from), ft(to)).unwrap();
/// let lines = Lines {
///     lines: vec![Line {
///         name: "Line 1".to_owned(),
///         told: "lost 2.0 %".to_owned(),
///         length: ft(100),
///         years: ["2022".to_owned(), "2026".to_owned()],
///         kept: vec![shrub(10, 15)],
///         lost: vec![shrub(15, 17)],
///         gained: vec![],
///     }],
///     unit: Unit::Foot,
///     words: Words::default(),
/// };
/// let svg = change::draw(&lines, &Frame::new("change", 720, Palette::print()));
/// assert!(svg.contains("2022") && svg.contains("Line 1"));
/// ```
pub fn draw(lines: &Lines, frame: &Frame) -> String {
    let mut drawing = Drawing::new(frame);
    let years = lines.lines.iter().flat_map(|line| &line.years);
    let widest = years.map(|year| Lettering::LABEL.width(year)).fold(0.0, f64::max);
    let column = (widest + 10.0).min(drawing.width() / 4.0);
    let full = lines.lines.iter().map(|line| line.length).max().unwrap_or_default();
    let common = Common::new(Some(column), full, lines.unit, frame, &drawing);
    let mut y = MARGIN;
    for line in &lines.lines {
        y = heading::draw(&mut drawing, y, &line.name, &line.told) + 4.0;
        y = visit(&mut drawing, &common, line, &line.years[0], (&line.lost, lost()), y);
        y = visit(&mut drawing, &common, line, &line.years[1], (&line.gained, GAINED), y);
        y = tape::draw(&mut drawing, &common, line.length, (&[], &[]), y + 2.0) + 18.0;
    }
    let entries = [
        (Swatch::Area(KEPT), lines.words.kept.as_str()),
        (Swatch::Area(lost()), lines.words.lost.as_str()),
        (Swatch::Area(GAINED), lines.words.gained.as_str()),
    ];
    y = legend::draw(&mut drawing, y - 4.0, &entries);
    drawing.finish(y + MARGIN)
}

/// One visit: what both have in one look, what it has alone in its own; gives back where it ends.
fn visit(
    drawing: &mut Drawing<'_>,
    common: &Common,
    line: &Line,
    year: &str,
    (alone, look): (&[Stretch], Look),
    top: f64,
) -> f64 {
    let room = common.names.unwrap_or_default() - 8.0;
    let below = drawing.paragraph((drawing.left(), top), Anchor::Start, Lettering::LABEL, year, room);
    let (from, to) = (common.scale.start(), common.scale.at_length(line.length));
    drawing.through(&[(from, top + BAR), (to, top + BAR)], Look::line(Colour::Rule, 1.0));
    drawing.areas(lanes::areas(common, alone, top, BAR), look);
    drawing.areas(lanes::areas(common, &line.kept, top, BAR), KEPT);
    below.max(top + BAR) + 4.0
}
