//! Lines drawn to scale as the tapes they were read on, with the canopy over them.

pub mod change;
mod lanes;
mod tape;

use crate::frame::Frame;
use crate::hatch::Hatch;
use crate::heading;
use crate::legend::{self, Swatch};
use crate::palette::{Colour, Tone};
use crate::scale::{Measure, Scale, Ticks};
use crate::svg::{Drawing, Lettering, Look, MARGIN};
use tautline_engine::length::{DecimalMark, Length, Unit};
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

/// One line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// Its name.
    pub name: String,
    /// Its cover as a reader is to see it.
    pub cover: String,
    /// How long the tape is.
    pub length: Length,
    /// What was written down along it.
    pub reading: Reading,
}

/// What was written down along a line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Reading {
    /// Starts and stops, so that every stretch has its place.
    Placed {
        /// The species, in the order they are drawn.
        lanes: Vec<Lane>,
        /// The tape under canopy that counts, overlap once.
        canopy: Vec<Stretch>,
        /// The tape that was not read.
        unread: Vec<Stretch>,
    },
    /// Only lengths, which have no place on the tape.
    Unplaced {
        /// The species, in the order they are drawn.
        totals: Vec<Total>,
        /// Says so, under the tape.
        note: String,
    },
}

/// One species along a line.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Lane {
    /// Its name.
    pub name: String,
    /// Its colour.
    pub tone: Tone,
    /// Live canopy.
    pub live: Vec<Stretch>,
    /// Gaps that the gap rule reads as canopy.
    pub closed: Vec<Stretch>,
    /// Dead canopy.
    pub dead: Vec<Stretch>,
}

/// The summed lengths of one species on a line without places.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Total {
    /// Its name.
    pub name: String,
    /// Its colour.
    pub tone: Tone,
    /// The sum.
    pub length: Length,
}

/// What the marks mean; an empty one is left out, and so is one whose mark is not in the picture.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Words {
    /// Live canopy.
    pub live: String,
    /// Gaps that the gap rule reads as canopy.
    pub closed: String,
    /// Dead canopy.
    pub dead: String,
    /// The band on the tape.
    pub canopy: String,
    /// Tape that was not read.
    pub unread: String,
    /// A length without a place.
    pub unplaced: String,
}

/// What all lines of a picture share.
struct Common {
    scale: Scale,
    /// The longest length that the scale holds.
    full: Length,
    ticks: Ticks,
    unit: Unit,
    mark: DecimalMark,
    /// How wide the column of names beside the lanes is; `None` where names stand above them.
    names: Option<f64>,
}

/// Draws the lines.
///
/// # Range
/// a stretch that would be narrower than 0.8 pixels is drawn that wide, so that none is lost from sight
/// # Example
/// ```
/// use tautline_engine::{length::{Length, Unit}, stretch::Stretch};
/// use tautline_figures::{Frame, Palette, Tone, line::{self, Lane, Line, Lines, Reading, Words}};
/// let ft = |count| Length::from_units(count, Unit::Foot);
/// let shrub = Stretch::new(ft(10), ft(15)).unwrap();
/// let lines = Lines {
///     lines: vec![Line {
///         name: "Line 1".to_owned(),
///         cover: "7.7 %".to_owned(),
///         length: ft(65),
///         reading: Reading::Placed {
///             lanes: vec![Lane {
///                 name: "fourwing saltbush".to_owned(),
///                 tone: Tone(0),
///                 live: vec![shrub],
///                 ..Lane::default()
///             }],
///             canopy: vec![shrub],
///             unread: vec![],
///         },
///     }],
///     unit: Unit::Foot,
///     words: Words { live: "live canopy".to_owned(), ..Words::default() },
/// };
/// let svg = line::draw(&lines, &Frame::new("line-1", 720, Palette::print()));
/// assert!(svg.contains("fourwing saltbush"));
/// ```
pub fn draw(lines: &Lines, frame: &Frame) -> String {
    let mut drawing = Drawing::new(frame);
    let common = Common::of(lines, frame, &drawing);
    let mut y = MARGIN;
    for line in &lines.lines {
        y = draw_line(&mut drawing, &common, line, y) + 18.0;
    }
    y = legend::draw(&mut drawing, y - 4.0, &entries(lines));
    drawing.finish(y + MARGIN)
}

/// Draws each line as a picture of its own, all on one scale and under one column of names, and then the legend
/// of them all; so a page may break between them.
///
/// `frame` gives the frame of the picture with this number; the last one is the legend's.
///
/// # Example
/// ```
/// use tautline_engine::length::{Length, Unit};
/// use tautline_figures::{Frame, Palette, line::{self, Line, Lines, Reading, Words}};
/// let tape = |name: &str, feet| Line {
///     name: name.to_owned(),
///     cover: "0.0 %".to_owned(),
///     length: Length::from_units(feet, Unit::Foot),
///     reading: Reading::Placed { lanes: vec![], canopy: vec![], unread: vec![] },
/// };
/// let lines =
///     Lines { lines: vec![tape("1", 65), tape("2", 40)], unit: Unit::Foot, words: Words::default() };
/// let drawn = line::draw_each(&lines, |number| Frame::new(&format!("line-{number}"), 720, Palette::screen()));
/// assert_eq!(drawn.len(), 3);
/// ```
pub fn draw_each(lines: &Lines, frame: impl Fn(usize) -> Frame) -> Vec<String> {
    let mut drawn: Vec<String> = lines
        .lines
        .iter()
        .enumerate()
        .map(|(number, line)| {
            let frame = frame(number);
            let mut drawing = Drawing::new(&frame);
            let common = Common::of(lines, &frame, &drawing);
            let below = draw_line(&mut drawing, &common, line, MARGIN);
            drawing.finish(below + MARGIN)
        })
        .collect();
    let frame = frame(drawn.len());
    let mut drawing = Drawing::new(&frame);
    let below = legend::draw(&mut drawing, MARGIN, &entries(lines));
    drawn.push(drawing.finish(below + MARGIN));
    drawn
}

fn draw_line(drawing: &mut Drawing<'_>, common: &Common, line: &Line, top: f64) -> f64 {
    let mut y = heading::draw(drawing, top, &line.name, &line.cover) + 3.0;
    match &line.reading {
        Reading::Placed { lanes, canopy, unread } => {
            for lane in lanes {
                y = lanes::placed(drawing, common, line.length, lane, unread, y);
            }
            tape::draw(drawing, common, line.length, (canopy, unread), y + 4.0)
        }
        Reading::Unplaced { totals, note } => {
            for total in totals {
                y = lanes::unplaced(drawing, common, line.length, total, y);
            }
            let below = tape::draw(drawing, common, line.length, (&[], &[]), y + 4.0);
            lanes::note(drawing, common, note, below)
        }
    }
}

impl Common {
    fn of(lines: &Lines, frame: &Frame, drawing: &Drawing<'_>) -> Self {
        let names = (drawing.width() >= 560.0).then(|| name_column(lines, drawing.width()));
        let full = lines.lines.iter().map(longest).max().unwrap_or_default();
        Self::new(names, full, lines.unit, frame, drawing)
    }

    fn new(names: Option<f64>, full: Length, unit: Unit, frame: &Frame, drawing: &Drawing<'_>) -> Self {
        // a stake stands at either end, and the narrowest stretch may begin at the very end
        let start = drawing.left() + names.unwrap_or(0.0) + 2.0;
        let end = drawing.right() - 2.0;
        let full = full.clamp(Length::ZERO, Length::LONGEST);
        let ticks = Measure::of(unit).ticks(full.nanometres(), end - start, |number| {
            (Lettering::ON_TAPE.width(number) + 16.0).max(46.0)
        });
        let scale = Scale::of_lengths(start, end, full);
        Self { scale, full, ticks, unit, mark: frame.mark, names }
    }

    /// The part of a stretch that lies on the scale.
    fn on_scale(&self, stretch: Stretch) -> Option<Stretch> {
        stretch.within(Stretch::new(Length::ZERO, self.full)?)
    }
}

/// The longest length that a line needs of the scale.
fn longest(line: &Line) -> Length {
    let others: Vec<Length> = match &line.reading {
        Reading::Placed { lanes, canopy, unread } => {
            let stops = |stretches: &[Stretch]| stretches.iter().map(|stretch| stretch.stop()).max();
            let of_lanes = lanes.iter().flat_map(|lane| [&lane.live, &lane.closed, &lane.dead]);
            of_lanes.chain([canopy, unread]).filter_map(|stretches| stops(stretches)).collect()
        }
        Reading::Unplaced { totals, .. } => totals.iter().map(|total| total.length).collect(),
    };
    others.into_iter().fold(line.length, Length::max)
}

/// The column that the names of species need beside their lanes, at most a quarter of the width.
fn name_column(lines: &Lines, width: f64) -> f64 {
    let names = lines.lines.iter().flat_map(|line| match &line.reading {
        Reading::Placed { lanes, .. } => lanes.iter().map(|lane| &lane.name).collect::<Vec<_>>(),
        Reading::Unplaced { totals, .. } => totals.iter().map(|total| &total.name).collect(),
    });
    let widest = names.map(|name| Lettering::LABEL.width(name)).fold(0.0, f64::max);
    if widest > 0.0 { (widest + 10.0).min(width / 4.0) } else { 0.0 }
}

/// The legend: only what is in the picture.
fn entries(lines: &Lines) -> Vec<(Swatch, &str)> {
    let words = &lines.words;
    let mut shown = [false; 6];
    for line in &lines.lines {
        match &line.reading {
            Reading::Placed { lanes, canopy, unread } => {
                shown[0] |= lanes.iter().any(|lane| !lane.live.is_empty());
                shown[1] |= lanes.iter().any(|lane| !lane.closed.is_empty());
                shown[2] |= lanes.iter().any(|lane| !lane.dead.is_empty());
                shown[3] |= !canopy.is_empty();
                shown[4] |= !unread.is_empty();
            }
            Reading::Unplaced { totals, .. } => shown[5] |= !totals.is_empty(),
        }
    }
    let swatches = [
        (Swatch::Area(lanes::live(Colour::Ink)), &words.live),
        (Swatch::Area(lanes::closed(Colour::Ink)), &words.closed),
        (Swatch::Area(lanes::dead()), &words.dead),
        (Swatch::Marks(tape::canopy_swatch), &words.canopy),
        (Swatch::Area(Look::hatch(Hatch::Unknown).outlined(Colour::Unknown, 1.0)), &words.unread),
        (Swatch::Marks(lanes::unplaced_swatch), &words.unplaced),
    ];
    let all = swatches.into_iter().zip(shown);
    all.filter(|(_, shown)| *shown).map(|((swatch, words), _)| (swatch, words.as_str())).collect()
}
