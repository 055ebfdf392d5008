//! The goal as a picture shows it: a threshold or two, and the side that meets it.

use crate::legend::{SWATCH, SWATCH_HEIGHT};
use crate::palette::Colour;
use crate::scale::Scale;
use crate::share::Share;
use crate::svg::{Area, Drawing, Look};

/// What a goal asks of cover.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Relation {
    /// This much or more.
    AtLeast(Share),
    /// This much or less.
    AtMost(Share),
    /// From the first to the second.
    Between(Share, Share),
}

/// A goal and the words that stand at its threshold.
///
/// # Example
/// ```
/// use tautline_figures::{Goal, Relation, Share};
/// let goal = Goal {
///     relation: Relation::AtLeast(Share::new(0.15).unwrap()),
///     label: "goal: at least 15 %".to_owned(),
/// };
/// assert!(goal.label.contains("15"));
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Goal {
    /// What is asked.
    pub relation: Relation,
    /// The goal in words; empty for none.
    pub label: String,
}

impl Relation {
    /// The largest share that the goal names.
    pub(crate) fn largest(self) -> f64 {
        match self {
            Self::AtLeast(share) | Self::AtMost(share) => share.per_cent(),
            Self::Between(low, high) => low.per_cent().max(high.per_cent()),
        }
    }

    /// From where to where on the scale the goal is met.
    pub(crate) fn met(self, scale: Scale) -> (f64, f64) {
        match self {
            Self::AtLeast(share) => (scale.at(share.per_cent()), scale.end()),
            Self::AtMost(share) => (scale.start(), scale.at(share.per_cent())),
            Self::Between(low, high) => (scale.at(low.per_cent()), scale.at(high.per_cent())),
        }
    }

    /// The thresholds, each with the direction (1 or -1) in which the goal is met.
    fn thresholds(self, scale: Scale) -> Vec<(f64, f64)> {
        let (from, to) = self.met(scale);
        match self {
            Self::AtLeast(_) => vec![(from, 1.0)],
            Self::AtMost(_) => vec![(to, -1.0)],
            Self::Between(..) => vec![(from, 1.0), (to, -1.0)],
        }
    }
}

/// Shades the side that meets the goal.
pub(crate) fn shade(drawing: &mut Drawing<'_>, relation: Relation, scale: Scale, top: f64, height: f64) {
    let (from, to) = relation.met(scale);
    if to > from {
        drawing.area(Area { x: from, y: top, width: to - from, height }, Look::fill(Colour::Met));
    }
}

/// The legend's picture of a goal: its shaded side and the threshold before it.
pub(crate) fn swatch(drawing: &mut Drawing<'_>, (x, y): (f64, f64)) {
    let all = Scale::new(x + 1.0, x + SWATCH, 1.0);
    let goal = Relation::AtLeast(Share::ZERO);
    shade(drawing, goal, all, y, SWATCH_HEIGHT);
    thresholds(drawing, goal, all, y, SWATCH_HEIGHT);
}

/// Draws the thresholds, with barbs that point to the side that meets the goal.
pub(crate) fn thresholds(drawing: &mut Drawing<'_>, relation: Relation, scale: Scale, top: f64, height: f64) {
    const BARB: f64 = 5.0;
    for (x, towards) in relation.thresholds(scale) {
        let tip = (x + towards * BARB).clamp(scale.start(), scale.end());
        let barb = |y: f64| [(x, y), (tip, y)];
        let lines = [[(x, top), (x, top + height)], barb(top + 0.8), barb(top + height - 0.8)];
        drawing.strokes(lines, Look::line(Colour::Goal, 1.6));
    }
}
