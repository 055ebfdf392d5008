//! What would make a mean surer, what is left of its error with it, and what that costs.

use super::sources::{Part, PartShare, Told, group, names};
use crate::line::LineResult;
use tautline_engine::effort::length::Cost;
use tautline_engine::length::Unit;
use tautline_engine::num::count;

/// Lines that each reader reads on a day of calibration where no cost says how many fit into one.
const LINES_OF_A_DAY: usize = 3;

/// Something that would make the mean surer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Buy {
    /// What.
    pub what: Bought,
    /// The standard error of the mean with it.
    pub se: f64,
    /// Minutes of a crew; none where no cost was given.
    pub minutes: Option<f64>,
}

impl Buy {
    /// How much surer the mean becomes: by hour where there is a cost.
    pub(super) fn gain(&self, before: f64) -> f64 {
        (before - self.se) / self.minutes.map_or(1.0, |minutes| minutes / 60.0)
    }
}

/// What can be bought.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bought {
    /// One more line.
    Line,
    /// One more site with as many lines as the others have.
    Site {
        /// Its lines.
        lines: usize,
    },
    /// A day on which every reader reads the same lines, and what they differ by is taken off.
    Day {
        /// Lines that each reads.
        lines: usize,
    },
}

impl Bought {
    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Line => "buy-line",
            Self::Site { .. } => "buy-site",
            Self::Day { .. } => "buy-day",
        }
    }
}

/// What things cost, in minutes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Prices {
    /// Of a line.
    pub line: Cost,
    /// To get to a further site.
    pub travel: f64,
    /// A day of one reader.
    pub day: f64,
}

/// A working day, in minutes.
const DAY: f64 = 480.0;

impl Prices {
    /// What was said of costs, in minutes: to walk to a line, to lay and take up its tape, to read a metre, to travel to a further
    /// site, a day of one reader (480). None where a line costs nothing, since then nothing was said.
    ///
    /// # Example
    /// ```
    /// use tautline_survey::agree::Prices;
    /// assert_eq!(Prices::said([None; 5]), None);
    /// assert_eq!(Prices::said([Some(10.0), None, None, None, None]).map(|prices| prices.day), Some(480.0));
    /// ```
    pub fn said([walk, lay, read_metre, travel, day]: [Option<f64>; 5]) -> Option<Self> {
        let said = |minutes: Option<f64>| minutes.unwrap_or_default();
        let line = Cost { walk: said(walk), lay: said(lay), per_metre: said(read_metre) };
        (line != Cost { walk: 0.0, lay: 0.0, per_metre: 0.0 }).then(|| Self {
            line,
            travel: said(travel),
            day: day.unwrap_or(DAY),
        })
    }
}

/// How many of everything a year's mean rests on.
#[derive(Clone, Copy, Debug)]
pub(super) struct Design {
    pub(super) sites: f64,
    pub(super) plots: f64,
    pub(super) lines: f64,
    pub(super) readers: f64,
}

impl Design {
    pub(super) fn of(latest: &[LineResult]) -> Self {
        let groups = |part: Part| count(names(latest, |line| group(line, part)).len());
        Self {
            sites: groups(Part::Site),
            plots: groups(Part::Plot),
            lines: groups(Part::Line),
            readers: groups(Part::Reader),
        }
    }

    /// What can be bought, with the error that it would leave.
    pub(super) fn buys(
        self,
        prices: Option<&Prices>,
        latest: &[LineResult],
        parts: &[PartShare],
        se: &dyn Fn(&Self, Option<usize>) -> f64,
    ) -> Vec<Buy> {
        let metres: f64 = latest.iter().map(|line| line.length.length().in_unit(Unit::Metre)).sum();
        let of_line = prices.map(|prices| prices.line.of_line(metres / count(latest.len())));
        let line = Self { lines: self.lines + 1.0, ..self };
        let mut buys = vec![Buy { what: Bought::Line, se: se(&line, None), minutes: of_line }];
        let told =
            |part: Part| parts.iter().any(|one| one.part == part && matches!(one.told, Told::Spread { .. }));
        if told(Part::Site) {
            let lines = (self.lines / self.sites).round().max(1.0);
            let site = Self {
                sites: self.sites + 1.0,
                plots: self.plots + (self.plots / self.sites).round().max(1.0),
                lines: self.lines + lines,
                ..self
            };
            let minutes = prices.zip(of_line).map(|(prices, line)| prices.travel + lines * line);
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a number of lines")]
            let lines = lines as usize;
            buys.push(Buy { what: Bought::Site { lines }, se: se(&site, None), minutes });
        }
        if told(Part::Reader) {
            let fit =
                prices.zip(of_line).map(|(prices, line)| (prices.day / line).floor().clamp(1.0, 1000.0));
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a number of lines")]
            let lines = fit.map_or(LINES_OF_A_DAY, |fit| fit as usize);
            let minutes = prices.map(|prices| prices.day * self.readers);
            buys.push(Buy { what: Bought::Day { lines }, se: se(&self, Some(lines)), minutes });
        }
        buys
    }
}
