//! Small drawings that say what a word means: nothing in them is anybody's data.

use crate::frame::Frame;
use crate::goal::{Relation, shade, thresholds};
use crate::hatch::Hatch;
use crate::palette::{Colour, Tone};
use crate::scale::Scale;
use crate::share::Share;
use crate::svg::{Anchor, Area, Drawing, Lettering, Look, MARGIN};

/// A word that is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Meaning {
    /// Canopy pushed together against the whole line.
    Cover,
    /// A gap shorter than the rule is closed, a longer one isn't.
    GapRule,
    /// Overlap counted once, and twice.
    SumOfSpecies,
    /// Ten surveys of one site, nine of whose intervals hold its cover.
    Interval,
    /// Beyond the goal, short of it, or across it.
    Verdict,
    /// Around no change, what would mostly be missed.
    SmallestChange,
    /// Years that swing about a straight line.
    Trend,
}

impl Meaning {
    /// All that are drawn, in the order in which they are told.
    pub const ALL: [Self; 7] = [
        Self::Cover,
        Self::GapRule,
        Self::SumOfSpecies,
        Self::Interval,
        Self::Verdict,
        Self::SmallestChange,
        Self::Trend,
    ];

    /// A stable word for it, which ids and the catalogue use.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Cover => "cover",
            Self::GapRule => "gap-rule",
            Self::SumOfSpecies => "sum-of-species",
            Self::Interval => "interval",
            Self::Verdict => "verdict",
            Self::SmallestChange => "smallest-change",
            Self::Trend => "trend",
        }
    }

    /// The labels that the drawing has, in order; the catalogue's codes end with them.
    pub const fn labels(self) -> &'static [&'static str] {
        match self {
            Self::Cover => &["on-the-tape", "together"],
            Self::GapRule => &["rule", "seen", "written"],
            Self::SumOfSpecies => &["one", "other", "once", "twice"],
            Self::Interval => &["own", "surveys"],
            Self::Verdict => &["goal", "met", "open", "not-met"],
            Self::SmallestChange => &["none", "missed", "shown"],
            Self::Trend => &["years", "line"],
        }
    }
}

/// Draws what a word means, with its labels in the order of [`Meaning::labels`].
///
/// # Example
/// ```
/// use tautline_figures::meaning::{Meaning, draw};
/// use tautline_figures::{Frame, Palette};
/// let labels = ["on the tape", "pushed together"].map(str::to_owned);
/// let picture = draw(Meaning::Cover, &labels, &Frame::new("cover", 340, Palette::screen()));
/// assert!(picture.contains("pushed together"));
/// ```
pub fn draw(meaning: Meaning, labels: &[String], frame: &Frame) -> String {
    let mut sheet = Sheet { drawing: Drawing::new(frame), y: MARGIN };
    let label = |at: usize| labels.get(at).map_or("", String::as_str);
    match meaning {
        Meaning::Cover => cover(&mut sheet, label),
        Meaning::GapRule => gap_rule(&mut sheet, label),
        Meaning::SumOfSpecies => sum_of_species(&mut sheet, label),
        Meaning::Interval => interval(&mut sheet, label),
        Meaning::Verdict => verdict(&mut sheet, label),
        Meaning::SmallestChange => smallest_change(&mut sheet, label),
        Meaning::Trend => trend(&mut sheet, label),
    }
    let Sheet { drawing, y } = sheet;
    drawing.finish(y)
}

/// A drawing that grows downwards; along it everything is told in hundredths of the line.
struct Sheet<'a> {
    drawing: Drawing<'a>,
    y: f64,
}

const BAR: f64 = 11.0;
const STRIP: f64 = 7.0;

impl Sheet<'_> {
    fn x(&self, hundredths: f64) -> f64 {
        let (left, right) = (self.drawing.left(), self.drawing.right());
        left + (right - left) * hundredths / 100.0
    }

    fn say(&mut self, words: &str) {
        let (left, room) = (self.drawing.left(), self.drawing.right() - self.drawing.left());
        self.y = self.drawing.paragraph((left, self.y), Anchor::Start, Lettering::LABEL, words, room) + 3.0;
    }

    fn bar(&mut self, (from, to): (f64, f64), look: Look) {
        let area = Area { x: self.x(from), y: self.y, width: self.x(to) - self.x(from), height: BAR };
        self.drawing.area(area, look);
    }

    /// The tape below whatever stands over it.
    fn tape(&mut self) {
        let (x, y) = (self.x(0.0), self.y + BAR);
        let width = self.x(100.0) - x;
        self.drawing.area(Area { x, y, width, height: STRIP }, Look::fill(Colour::Tape));
        let edge = [[(x, y), (x + width, y)]];
        self.drawing.strokes(edge, Look::line(Colour::Ink, 1.6));
        self.y += BAR + STRIP + 9.0;
    }

    /// A swatch drawn by `draw` and words behind it.
    fn legend(&mut self, words: &str, draw: impl FnOnce(&mut Drawing<'_>, f64, f64)) {
        const SWATCH: f64 = 26.0;
        let left = self.drawing.left();
        draw(&mut self.drawing, left, self.y + Lettering::LABEL.size * 0.6);
        let at = (left + SWATCH, self.y);
        let room = self.drawing.right() - left - SWATCH;
        self.y = self.drawing.paragraph(at, Anchor::Start, Lettering::LABEL, words, room) + 3.0;
    }
}

fn crown(tone: u8) -> Look {
    let colour = Colour::from(Tone(tone));
    Look::hatch(Hatch::Closed(colour)).outlined(colour, 1.5)
}

fn cover<'l>(sheet: &mut Sheet<'_>, label: impl Fn(usize) -> &'l str) {
    const CROWNS: [(f64, f64); 3] = [(8.0, 30.0), (22.0, 40.0), (62.0, 74.0)];
    sheet.say(label(0));
    for ends in CROWNS {
        sheet.bar(ends, crown(0));
    }
    sheet.tape();
    sheet.say(label(1));
    // 8 to 40 and 62 to 74, the overlap once
    sheet.bar((0.0, 44.0), Look::fill(Colour::Canopy));
    sheet.tape();
}

fn gap_rule<'l>(sheet: &mut Sheet<'_>, label: impl Fn(usize) -> &'l str) {
    const RULE: f64 = 9.0;
    sheet.legend(label(0), |drawing, x, y| {
        drawing.strokes([[(x, y), (x + 20.0, y)]], Look::line(Colour::Goal, 3.0));
    });
    sheet.say(label(1));
    for ends in [(8.0, 30.0), (35.0, 52.0), (70.0, 92.0)] {
        sheet.bar(ends, crown(0));
    }
    for gap in [30.0, 52.0] {
        let (from, to, y) = (sheet.x(gap), sheet.x(gap + RULE), sheet.y + BAR / 2.0);
        sheet.drawing.strokes([[(from, y), (to, y)]], Look::line(Colour::Goal, 3.0));
    }
    sheet.tape();
    sheet.say(label(2));
    sheet.bar((8.0, 52.0), Look::fill(Colour::Canopy));
    sheet.bar((70.0, 92.0), Look::fill(Colour::Canopy));
    sheet.tape();
}

fn sum_of_species<'l>(sheet: &mut Sheet<'_>, label: impl Fn(usize) -> &'l str) {
    sheet.say(label(0));
    sheet.bar((10.0, 50.0), crown(0));
    sheet.tape();
    sheet.say(label(1));
    sheet.bar((35.0, 75.0), crown(1));
    sheet.tape();
    sheet.say(label(2));
    sheet.bar((0.0, 65.0), Look::fill(Colour::Canopy));
    sheet.tape();
    sheet.say(label(3));
    sheet.bar((0.0, 40.0), crown(0));
    sheet.bar((40.0, 80.0), crown(1));
    sheet.tape();
}

/// A figure with its two ends, at the height of the sheet.
fn whisker(sheet: &mut Sheet<'_>, [low, middle, high]: [f64; 3], look: Look, colour: Colour) {
    let y = sheet.y;
    let [low, middle, high] = [low, middle, high].map(|at| sheet.x(at));
    let end = |x: f64| [(x, y - 3.5), (x, y + 3.5)];
    sheet.drawing.strokes([[(low, y), (high, y)], end(low), end(high)], look);
    let dot = Area { x: middle - 2.5, y: y - 2.5, width: 5.0, height: 5.0 };
    sheet.drawing.area(dot, Look::fill(colour));
}

fn interval<'l>(sheet: &mut Sheet<'_>, label: impl Fn(usize) -> &'l str) {
    /// Middle and reach of each survey, about a cover at 50; the seventh lies beyond.
    const SURVEYS: [(f64, f64); 10] = [
        (44.0, 17.0),
        (53.0, 19.0),
        (59.0, 16.0),
        (38.0, 20.0),
        (51.0, 18.0),
        (47.0, 17.0),
        (73.0, 15.0),
        (55.0, 18.0),
        (42.0, 16.0),
        (61.0, 19.0),
    ];
    sheet.legend(label(0), |drawing, x, y| {
        drawing.strokes([[(x + 10.0, y - 6.0), (x + 10.0, y + 6.0)]], Look::line(Colour::Goal, 1.8));
    });
    let (x, top) = (sheet.x(50.0), sheet.y);
    for (middle, reach) in SURVEYS {
        sheet.y += 10.0;
        let holds = (middle - 50.0_f64).abs() <= reach;
        let look = Look::line(if holds { Colour::Ink } else { Colour::Goal }, 1.5);
        let look = if holds { look } else { look.dashed() };
        let colour = if holds { Colour::Ink } else { Colour::Goal };
        whisker(sheet, [middle - reach, middle, middle + reach], look, colour);
    }
    sheet.y += 10.0;
    sheet.drawing.strokes([[(x, top), (x, sheet.y)]], Look::line(Colour::Goal, 1.8));
    sheet.y += 4.0;
    sheet.say(label(1));
}

fn verdict<'l>(sheet: &mut Sheet<'_>, label: impl Fn(usize) -> &'l str) {
    const ROWS: [(usize, [f64; 3]); 3] =
        [(1, [58.0, 71.0, 86.0]), (2, [41.0, 54.0, 69.0]), (3, [16.0, 28.0, 42.0])];
    let goal = Relation::AtLeast(Share::new(0.5).unwrap_or(Share::ZERO));
    let scale = Scale::new(sheet.drawing.left(), sheet.drawing.right(), 100.0);
    sheet.legend(label(0), |drawing, x, y| {
        let own = Scale::new(x, x + 20.0, 100.0);
        shade(drawing, goal, own, y - 6.0, 12.0);
        thresholds(drawing, goal, own, y - 6.0, 12.0);
    });
    for (at, ends) in ROWS {
        sheet.say(label(at));
        let top = sheet.y - 1.0;
        shade(&mut sheet.drawing, goal, scale, top, 16.0);
        thresholds(&mut sheet.drawing, goal, scale, top, 16.0);
        sheet.y += 7.0;
        whisker(sheet, ends, Look::line(Colour::Ink, 1.5), Colour::Ink);
        sheet.y += 14.0;
    }
}

fn smallest_change<'l>(sheet: &mut Sheet<'_>, label: impl Fn(usize) -> &'l str) {
    let (low, high) = (sheet.x(28.0), sheet.x(72.0));
    sheet.y += 4.0;
    let area = Area { x: low, y: sheet.y, width: high - low, height: 18.0 };
    sheet.drawing.area(area, Look::hatch(Hatch::Unknown).outlined(Colour::Unknown, 1.2));
    let (y, middle) = (sheet.y + 9.0, sheet.x(50.0));
    let (left, right) = (sheet.drawing.left(), sheet.drawing.right());
    let beyond = [[(left, y), (low, y)], [(high, y), (right, y)]];
    sheet.drawing.strokes(beyond, Look::line(Colour::Canopy, 5.0));
    sheet
        .drawing
        .strokes([[(middle, sheet.y - 4.0), (middle, sheet.y + 22.0)]], Look::line(Colour::Ink, 1.8));
    sheet.y += 30.0;
    sheet.legend(label(0), |drawing, x, y| {
        drawing.strokes([[(x + 10.0, y - 6.0), (x + 10.0, y + 6.0)]], Look::line(Colour::Ink, 1.8));
    });
    sheet.legend(label(1), |drawing, x, y| {
        let swatch = Area { x, y: y - 5.0, width: 20.0, height: 10.0 };
        drawing.area(swatch, Look::hatch(Hatch::Unknown).outlined(Colour::Unknown, 1.2));
    });
    sheet.legend(label(2), |drawing, x, y| {
        drawing.strokes([[(x, y), (x + 20.0, y)]], Look::line(Colour::Canopy, 5.0));
    });
}

fn trend<'l>(sheet: &mut Sheet<'_>, label: impl Fn(usize) -> &'l str) {
    /// How high each year stands, in hundredths of the picture.
    const YEARS: [f64; 7] = [22.0, 48.0, 30.0, 38.0, 66.0, 52.0, 74.0];
    const HIGH: f64 = 76.0;
    let (top, floor) = (sheet.y, sheet.y + HIGH);
    let height = |hundredths: f64| floor - HIGH * hundredths / 100.0;
    let dot = |drawing: &mut Drawing<'_>, x: f64, y: f64| {
        drawing.area(Area { x: x - 3.0, y: y - 3.0, width: 6.0, height: 6.0 }, Look::fill(Colour::Ink));
    };
    let (left, right) = (sheet.x(0.0), sheet.x(100.0));
    sheet.drawing.strokes(
        [[(left, floor), (right, floor)], [(left, top), (left, floor)]],
        Look::line(Colour::Rule, 1.0),
    );
    // the line of least squares through the years, by hand: mean 47.14, slope 7.14, so 25.7 at the first and 68.6 at the last
    let ends = [(sheet.x(8.0), height(25.7)), (sheet.x(92.0), height(68.6))];
    sheet.drawing.through(&ends, Look::line(Colour::Canopy, 2.5));
    for (year, high) in (0_u8..).zip(YEARS) {
        let x = sheet.x(8.0 + 14.0 * f64::from(year));
        dot(&mut sheet.drawing, x, height(high));
    }
    sheet.y = floor + 7.0;
    sheet.legend(label(0), |drawing, x, y| dot(drawing, x + 10.0, y));
    sheet.legend(label(1), |drawing, x, y| {
        drawing.strokes([[(x, y), (x + 20.0, y)]], Look::line(Colour::Canopy, 2.5));
    });
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::palette::Palette;

    #[test]
    fn every_label_stands_in_its_drawing_and_nothing_leaves_it() {
        for meaning in Meaning::ALL {
            let labels: Vec<String> = meaning.labels().iter().map(|label| format!("label-{label}")).collect();
            for palette in [Palette::screen(), Palette::print()] {
                let drawn = draw(meaning, &labels, &Frame::new("m", 340, palette));
                for label in &labels {
                    assert_eq!(drawn.matches(&format!(">{label}<")).count(), 1, "{meaning:?} {label}");
                }
                assert!(!drawn.contains("NaN") && !drawn.contains("\"-"), "{meaning:?}");
            }
        }
    }

    #[test]
    fn nine_of_ten_intervals_hold_the_cover() {
        let labels = ["own", "ten"].map(str::to_owned);
        let drawn = draw(Meaning::Interval, &labels, &Frame::new("m", 340, Palette::print()));
        assert_eq!(drawn.matches("stroke-dasharray").count(), 1);
    }
}
