//! Cover with the bound that decides, against the goal: one row for each subject.

mod marks;

use crate::axis::{self, PerCent};
use crate::frame::Frame;
use crate::goal::{self, Goal, Relation};
use crate::heading;
use crate::legend::{self, Swatch};
use crate::palette::{Colour, Tone};
use crate::share::Share;
use crate::svg::{Anchor, Drawing, Lettering, MARGIN};

/// A chart of cover.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Cover {
    /// The subjects, such as all shrubs together and then species by species.
    pub rows: Vec<Row>,
    /// The words around the rows.
    pub words: Words,
}

/// One subject.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// What it is.
    pub name: String,
    /// Its cover as a reader is to see it, with its error or the reason why there is none.
    pub figure: String,
    /// Its species colour; `None` for a group.
    pub tone: Option<Tone>,
    /// The cover of each single line.
    pub lines: Vec<Share>,
    /// The cover of the site; `None` where none can be given.
    pub estimate: Option<Estimate>,
    /// How far the estimate may be off.
    pub bounds: Bounds,
    /// The goal; `None` where there is none for this subject.
    pub goal: Option<Goal>,
}

/// What is known of a cover.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Estimate {
    /// One figure.
    Figure(Share),
    /// Only that it lies between two figures, as when only lengths were written down.
    Between(Share, Share),
}

/// How far an estimate may be off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Bounds {
    /// Not known.
    Unknown,
    /// One-sided: cover is this or more.
    AtLeast(Share),
    /// One-sided: cover is this or less.
    AtMost(Share),
    /// Two-sided.
    Between(Share, Share),
}

/// The words around the rows; an empty one is left out, and so is one whose mark is not in the picture.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Words {
    /// What the axis counts, with its unit.
    pub axis: String,
    /// The mark of an estimate.
    pub estimate: String,
    /// The marks of an estimate that is only known between two figures.
    pub between: String,
    /// The marks of the single lines.
    pub lines: String,
    /// The mark of a bound on one side.
    pub one_sided: String,
    /// The marks of a bound on both sides.
    pub two_sided: String,
    /// The shaded side of the goal.
    pub met: String,
}

impl Row {
    /// The largest value that the row shows.
    fn largest(&self) -> f64 {
        let estimate = match self.estimate {
            None => 0.0,
            Some(Estimate::Figure(share)) => share.per_cent(),
            Some(Estimate::Between(low, high)) => low.per_cent().max(high.per_cent()),
        };
        let bound = match self.bounds {
            Bounds::Unknown => 0.0,
            Bounds::AtLeast(share) | Bounds::AtMost(share) => share.per_cent(),
            Bounds::Between(low, high) => low.per_cent().max(high.per_cent()),
        };
        let goal = self.goal.as_ref().map_or(0.0, |goal| goal.relation.largest());
        self.lines.iter().map(|share| share.per_cent()).fold(estimate.max(bound).max(goal), f64::max)
    }

    fn colour(&self) -> Colour {
        self.tone.map_or(Colour::Ink, Colour::from)
    }
}

/// How high the part of a row under its heading is.
const STRIP: f64 = 38.0;

/// Draws the chart.
///
/// # Example
/// ```
/// use tautline_figures::{Frame, Goal, Palette, Relation, Share, cover::{self, Bounds, Cover, Estimate, Row, Words}};
/// let share = |value| Share::new(value).unwrap();
/// let chart = Cover {
///     rows: vec![Row {
///         name: "All shrubs".to_owned(),
///         figure: "17.6 %, at least 15.2 %".to_owned(),
///         tone: None,
///         lines: [0.14, 0.18, 0.21].map(share).to_vec(),
///         estimate: Some(Estimate::Figure(share(0.176))),
///         bounds: Bounds::AtLeast(share(0.152)),
///         goal: Some(Goal {
///             relation: Relation::AtLeast(share(0.15)),
///             label: "goal: at least 15 %".to_owned(),
///         }),
///     }],
///     words: Words { axis: "live canopy, % of the line".to_owned(), ..Words::default() },
/// };
/// let svg = cover::draw(&chart, &Frame::new("cover", 360, Palette::screen()));
/// assert!(svg.contains("goal: at least 15 %"));
/// ```
pub fn draw(chart: &Cover, frame: &Frame) -> String {
    let mut drawing = Drawing::new(frame);
    let largest = chart.rows.iter().map(Row::largest).fold(0.0, f64::max);
    // the estimate's mark may stand at either end and needs half its width there
    let ends = (drawing.left() + marks::HALF, drawing.right() - marks::HALF);
    let reach = if largest < 97.0 { largest * 1.03 } else { largest };
    let axis = PerCent::reaching(reach, ends, frame.mark, axis::spacing);
    let mut y = MARGIN;
    let mut goal_before: Option<&Goal> = None;
    for row in &chart.rows {
        y = draw_row(&mut drawing, &axis, row, goal_before, y);
        goal_before = row.goal.as_ref();
    }
    y = axis.below(&mut drawing, y, &chart.words.axis) + 8.0;
    y = legend::draw(&mut drawing, y, &entries(chart));
    drawing.finish(y + MARGIN)
}

fn draw_row(
    drawing: &mut Drawing<'_>,
    axis: &PerCent,
    row: &Row,
    goal_before: Option<&Goal>,
    top: f64,
) -> f64 {
    let mut y = heading::draw(drawing, top, &row.name, &row.figure) + 2.0;
    if let Some(goal) = row.goal.as_ref().filter(|&goal| goal_before != Some(goal)) {
        y = goal_label(drawing, axis, goal, y);
    }
    if let Some(goal) = &row.goal {
        goal::shade(drawing, goal.relation, axis.scale, y, STRIP);
    }
    axis.upright_grid(drawing, y, y + STRIP);
    if let Some(goal) = &row.goal {
        goal::thresholds(drawing, goal.relation, axis.scale, y, STRIP);
    }
    let lines = row.lines.iter().map(|share| axis.scale.at(share.per_cent()));
    marks::lines(drawing, lines, y + STRIP - 4.0, row.colour());
    marks::bounds(drawing, row, axis.scale, y + 13.0);
    marks::estimate(drawing, row, axis.scale, y + 13.0);
    y + STRIP + 8.0
}

/// The goal in words, over its threshold as far as the edges allow.
fn goal_label(drawing: &mut Drawing<'_>, axis: &PerCent, goal: &Goal, top: f64) -> f64 {
    let lettering = Lettering { colour: Colour::Goal, ..Lettering::LABEL };
    let (left, right) = (drawing.left(), drawing.right());
    let (from, to) = goal.relation.met(axis.scale);
    let wanted = lettering.width(&goal.label);
    let place = match goal.relation {
        Relation::AtLeast(_) | Relation::Between(..) => from,
        Relation::AtMost(_) => to - wanted,
    };
    let x = place.min(right - wanted).max(left);
    drawing.paragraph((x, top), Anchor::Start, lettering, &goal.label, right - x) + 2.0
}

/// The legend: only what is in the picture.
fn entries(chart: &Cover) -> Vec<(Swatch, &str)> {
    let words = &chart.words;
    let any = |found: fn(&Row) -> bool| chart.rows.iter().any(found);
    let all = [
        (
            any(|row| matches!(row.estimate, Some(Estimate::Figure(_)))),
            Swatch::Marks(marks::figure_swatch),
            &words.estimate,
        ),
        (
            any(|row| matches!(row.estimate, Some(Estimate::Between(..)))),
            Swatch::Marks(marks::between_swatch),
            &words.between,
        ),
        (
            any(|row| matches!(row.bounds, Bounds::AtLeast(_) | Bounds::AtMost(_))),
            Swatch::Marks(marks::one_sided_swatch),
            &words.one_sided,
        ),
        (
            any(|row| matches!(row.bounds, Bounds::Between(..))),
            Swatch::Marks(marks::two_sided_swatch),
            &words.two_sided,
        ),
        (any(|row| !row.lines.is_empty()), Swatch::Marks(marks::lines_swatch), &words.lines),
        (any(|row| row.goal.is_some()), Swatch::Marks(goal::swatch), &words.met),
    ];
    all.into_iter().filter(|(shown, ..)| *shown).map(|(_, swatch, words)| (swatch, words.as_str())).collect()
}
