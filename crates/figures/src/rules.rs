//! Small drawings of reading rules, seen from above: the tape, the crowns that cross it or don't, and below it what
//! is written down. One drawing serves the screen and a packet on paper.

use crate::frame::Frame;
use crate::hatch::Hatch;
use crate::palette::{Colour, Tone};
use crate::svg::{Area, Drawing, Look, MARGIN};
use core::f64::consts::FRAC_1_SQRT_2;

/// A rule that is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Case {
    /// A gap under the rule is read as canopy.
    GapJoined,
    /// A gap of the rule or more ends the canopy.
    GapBreaks,
    /// A dead part that is written by itself.
    DeadApart,
    /// A dead part that is left out.
    DeadLeftOut,
    /// A dead part that is read as live.
    DeadJoined,
    /// A crown that hangs over the tape is read, wherever it is rooted.
    Overhang,
    /// A plant rooted under the tape whose crown isn't over it is not read.
    UnderTheLine,
    /// Where two species overlap each is written in full.
    TwoSpecies,
    /// Where two species overlap the tape is written once.
    TwoSpeciesOnce,
}

impl Case {
    /// All that are drawn.
    pub const ALL: [Self; 9] = [
        Self::GapJoined,
        Self::GapBreaks,
        Self::DeadApart,
        Self::DeadLeftOut,
        Self::DeadJoined,
        Self::Overhang,
        Self::UnderTheLine,
        Self::TwoSpecies,
        Self::TwoSpeciesOnce,
    ];

    /// A stable word for it, which ids and the catalogue end with.
    pub const fn code(self) -> &'static str {
        match self {
            Self::GapJoined => "gap-joined",
            Self::GapBreaks => "gap-breaks",
            Self::DeadApart => "dead-apart",
            Self::DeadLeftOut => "dead-left-out",
            Self::DeadJoined => "dead-joined",
            Self::Overhang => "overhang",
            Self::UnderTheLine => "under-the-line",
            Self::TwoSpecies => "two-species",
            Self::TwoSpeciesOnce => "two-species-once",
        }
    }
}

/// A crown from above, on a ground 100 wide and 50 high.
#[derive(Clone, Copy)]
struct Crown {
    centre: (f64, f64),
    half: (f64, f64),
    kind: Kind,
    root: (f64, f64),
}

#[derive(Clone, Copy, PartialEq)]
enum Kind {
    Live(u8),
    Dead,
}

/// What is written: from where to where, in which row, as what.
type Written = (f64, f64, u8, Kind);

/// The edge of the tape that is read, and the other one.
const EDGE: f64 = 29.0;
const STRIP: f64 = 5.0;
/// Where the first row of what is written stands.
const ROW: f64 = 38.0;
const ROW_HEIGHT: f64 = 4.0;
const HIGH: f64 = 48.0;

/// A live crown whose middle lies on the edge that is read.
const fn across(from: f64, to: f64, tone: u8) -> Crown {
    crown(from, to, Kind::Live(tone))
}

const fn crown(from: f64, to: f64, kind: Kind) -> Crown {
    let middle = f64::midpoint(from, to);
    Crown { centre: (middle, EDGE), half: ((to - from) / 2.0, 13.0), kind, root: (middle, EDGE - 4.0) }
}

fn scene(case: Case) -> (Vec<Crown>, Vec<Written>) {
    let live = |from, to| (from, to, 0, Kind::Live(0));
    let with_dead_part = || vec![across(8.0, 42.0, 0), crown(38.0, 60.0, Kind::Dead), across(56.0, 90.0, 0)];
    match case {
        Case::GapJoined => (vec![across(8.0, 46.0, 0), across(50.0, 90.0, 0)], vec![live(8.0, 90.0)]),
        Case::GapBreaks => {
            (vec![across(8.0, 38.0, 0), across(58.0, 90.0, 0)], vec![live(8.0, 38.0), live(58.0, 90.0)])
        }
        Case::DeadApart => {
            (with_dead_part(), vec![live(8.0, 42.0), (42.0, 56.0, 1, Kind::Dead), live(56.0, 90.0)])
        }
        Case::DeadLeftOut => (with_dead_part(), vec![live(8.0, 42.0), live(56.0, 90.0)]),
        Case::DeadJoined => (with_dead_part(), vec![live(8.0, 90.0)]),
        Case::Overhang => {
            // at the edge the crown is eight tenths as wide as in its middle: a 3, 4, 5 triangle
            let crown = Crown {
                centre: (50.0, EDGE - 12.0),
                half: (30.0, 20.0),
                kind: Kind::Live(0),
                root: (50.0, EDGE - 16.0),
            };
            (vec![crown], vec![live(26.0, 74.0)])
        }
        Case::UnderTheLine => {
            let crown = Crown {
                centre: (56.0, 11.0),
                half: (28.0, 11.0),
                kind: Kind::Live(0),
                root: (40.0, EDGE + STRIP / 2.0),
            };
            (vec![crown], Vec::new())
        }
        Case::TwoSpecies => (
            vec![across(8.0, 60.0, 0), across(42.0, 90.0, 1)],
            vec![live(8.0, 60.0), (42.0, 90.0, 1, Kind::Live(1))],
        ),
        Case::TwoSpeciesOnce => (
            vec![across(8.0, 60.0, 0), across(42.0, 90.0, 1)],
            vec![live(8.0, 60.0), (60.0, 90.0, 0, Kind::Live(1))],
        ),
    }
}

/// Draws a rule. What it shows is said by the frame's title and description.
///
/// # Example
/// ```
/// use tautline_figures::rules::{Case, draw};
/// use tautline_figures::{Frame, Palette};
/// let frame = Frame { title: "Gap under the rule".into(), ..Frame::new("gap", 240, Palette::screen()) };
/// assert!(draw(Case::GapJoined, &frame).contains("Gap under the rule"));
/// ```
pub fn draw(case: Case, frame: &Frame) -> String {
    let mut drawing = Drawing::new(frame);
    let (left, right) = (drawing.left(), drawing.right());
    let scale = (right - left) / 100.0;
    let at = |(x, y): (f64, f64)| (left + x * scale, MARGIN + y * scale);
    let (crowns, written) = scene(case);
    let (x, y) = at((0.0, EDGE));
    drawing.area(Area { x, y, width: right - left, height: STRIP * scale }, Look::fill(Colour::Tape));
    for one in &crowns {
        let outline: Vec<(f64, f64)> = CIRCLE
            .iter()
            .map(|&(x, y)| at((one.centre.0 + x * one.half.0, one.centre.1 + y * one.half.1)))
            .collect();
        drawing.corners(&outline, look(one.kind));
        let root = at(one.root);
        let middle = at(one.centre);
        drawing.strokes([[root, middle]], Look::line(Colour::Ink, 1.5));
        let dot = Area { x: root.0 - 2.5, y: root.1 - 2.5, width: 5.0, height: 5.0 };
        drawing.area(dot, Look::fill(Colour::Ink));
    }
    // the edge that is read lies over the crowns, so that one sees where they cross it
    drawing.strokes([[at((0.0, EDGE)), at((100.0, EDGE))]], Look::line(Colour::Ink, 2.0));
    drawing.strokes([[at((0.0, EDGE + STRIP)), at((100.0, EDGE + STRIP))]], Look::line(Colour::Edge, 1.0));
    for (from, to, row, kind) in written {
        let top = ROW + f64::from(row) * (ROW_HEIGHT + 1.0);
        let (x, y) = at((from, top));
        let bar = Area { x, y, width: (to - from) * scale, height: ROW_HEIGHT * scale };
        drawing.area(bar, look(kind));
        let ends = [from, to].map(|x| [at((x, EDGE)), at((x, top + ROW_HEIGHT))]);
        drawing.strokes(ends, Look::line(Colour::Ink, 1.0).dashed());
    }
    drawing.finish(2.0 * MARGIN + HIGH * scale)
}

fn look(kind: Kind) -> Look {
    match kind {
        Kind::Live(tone) => {
            let colour = Colour::from(Tone(tone));
            Look::hatch(Hatch::Closed(colour)).outlined(colour, 1.5)
        }
        Kind::Dead => Look::hatch(Hatch::Dead).outlined(Colour::Dead, 1.5),
    }
}

/// Sixteen points of a circle about zero with a radius of one, to four decimals.
const CIRCLE: [(f64, f64); 16] = [
    (1.0, 0.0),
    (0.9239, 0.3827),
    (FRAC_1_SQRT_2, FRAC_1_SQRT_2),
    (0.3827, 0.9239),
    (0.0, 1.0),
    (-0.3827, 0.9239),
    (-FRAC_1_SQRT_2, FRAC_1_SQRT_2),
    (-0.9239, 0.3827),
    (-1.0, 0.0),
    (-0.9239, -0.3827),
    (-FRAC_1_SQRT_2, -FRAC_1_SQRT_2),
    (-0.3827, -0.9239),
    (0.0, -1.0),
    (0.3827, -0.9239),
    (FRAC_1_SQRT_2, -FRAC_1_SQRT_2),
    (0.9239, -0.3827),
];

#[cfg(test)]
mod tests {
    use super::*;

    /// What is written lies where some crown crosses the edge that is read; a gap of what is written has no crown.
    #[test]
    fn what_is_written_is_what_crosses_the_edge() {
        for case in Case::ALL {
            let (crowns, written) = scene(case);
            let over = |x: f64, live: bool| {
                crowns.iter().filter(|one| !live || one.kind != Kind::Dead).any(|one| {
                    let [across, up] = [(x - one.centre.0) / one.half.0, (EDGE - one.centre.1) / one.half.1];
                    across * across + up * up <= 1.0
                })
            };
            for at in 0..100 {
                let x = f64::from(at) + 0.5;
                let is_written = written.iter().any(|(from, to, ..)| (*from..*to).contains(&x));
                match case {
                    Case::GapJoined => assert!(!over(x, true) || is_written, "{case:?} at {x}"),
                    Case::DeadLeftOut => assert_eq!(over(x, true), is_written, "{case:?} at {x}"),
                    _ => assert_eq!(over(x, false), is_written, "{case:?} at {x}"),
                }
            }
        }
    }
}
