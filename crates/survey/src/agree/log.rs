//! The log of calibrations: who was set beside whom, when, on which lines, by which tolerance, and what came of it.

use super::{Agreement, Ready, standing};
use crate::date::Date;
use crate::goal::Percent;
use crate::input::Input;
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

/// One reader set beside another on lines that both read, and what came of it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Calibration {
    /// The site.
    pub site: String,
    /// Who was set beside another.
    pub reader: String,
    /// Beside whom.
    pub against: String,
    /// The last day on which the reader read one of the lines.
    pub date: Date,
    /// The fingerprints of the protocols that the lines were read under; one, where all is well.
    pub protocols: Vec<String>,
    /// The office's tolerance.
    pub tolerance: Percent,
    /// The lines.
    pub lines: Vec<CalibrationLine>,
    /// What came of it.
    pub outcome: Outcome,
    /// Who judged it.
    pub judge: String,
}

/// How far a reader was off on one line.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CalibrationLine {
    /// The line.
    pub line: String,
    /// What the reader had more canopy cover than the other: whole ten-thousandths of a per cent of the line.
    pub difference: i32,
}

impl CalibrationLine {
    /// As a share of the line.
    pub fn share(&self) -> f64 {
        f64::from(self.difference) / 1_000_000.0
    }
}

/// What came of a calibration.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Outcome {
    /// Nine of ten lines or more lay within the tolerance.
    Passed,
    /// They didn't: to be read again.
    Repeat,
}

impl Outcome {
    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Passed => "calibration-passed",
            Self::Repeat => "calibration-repeat",
        }
    }
}

impl Calibration {
    /// How many lines lie within the tolerance.
    pub fn within(&self) -> usize {
        let tolerance = self.tolerance.0;
        self.lines.iter().filter(|line| line.difference.unsigned_abs() <= tolerance).count()
    }

    /// The mean of what the reader had more, as a share of the line; zero without lines.
    pub fn bias(&self) -> f64 {
        let shares: Vec<f64> = self.lines.iter().map(CalibrationLine::share).collect();
        if shares.is_empty() { 0.0 } else { tautline_engine::num::sum::mean(&shares) }
    }
}

/// Whole ten-thousandths of a per cent, from a share of the line.
fn ten_thousandths(share: f64) -> i32 {
    #[expect(clippy::cast_possible_truncation, reason = "held within a million either way")]
    let parts = (share * 1_000_000.0).round().clamp(-1e6, 1e6) as i32;
    parts
}

/// What of the agreements belongs into the log by a tolerance, judged by somebody. Too few lines, and lines without a day, come to
/// nothing.
pub fn calibrations(
    input: &Input,
    agreements: &[Agreement],
    tolerance: f64,
    judge: &str,
) -> Vec<Calibration> {
    agreements.iter().filter_map(|one| calibration(input, one, tolerance, judge)).collect()
}

fn calibration(input: &Input, one: &Agreement, tolerance: f64, judge: &str) -> Option<Calibration> {
    let outcome = match standing(one, tolerance).ready {
        Ready::Ready => Outcome::Passed,
        Ready::Practise => Outcome::Repeat,
        Ready::TooFew => return None,
    };
    let date = one.lines.iter().filter_map(|pair| pair.second.date).max()?;
    let protocols: BTreeSet<String> = one
        .lines
        .iter()
        .flat_map(|pair| [&pair.first, &pair.second])
        .map(|line| input.visits[line.visit].protocol.clone())
        .collect();
    let lines = one.lines.iter().filter_map(|pair| {
        let difference = ten_thousandths(pair.difference?);
        Some(CalibrationLine { line: pair.first.line.clone(), difference })
    });
    Some(Calibration {
        site: one.site.clone(),
        reader: one.second.clone(),
        against: one.first.clone(),
        date,
        protocols: protocols.into_iter().collect(),
        tolerance: Percent(ten_thousandths(tolerance).unsigned_abs()),
        lines: lines.collect(),
        outcome,
        judge: judge.to_owned(),
    })
}

/// When a reader was last calibrated, and what was read without.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reminder<'a> {
    /// The reader.
    pub reader: String,
    /// The latest calibration, passed or not.
    pub latest: Option<&'a Calibration>,
    /// The latest that was passed, and how many days ago.
    pub passed: Option<(&'a Calibration, u32)>,
    /// Days that a calibration lasts in this office; none where none was given.
    pub span: Option<u32>,
    /// Lines read for no calibration, before a first one was passed or after the last one's span.
    pub uncovered: usize,
    /// All lines read, calibrations aside.
    pub lines: usize,
}

impl Reminder<'_> {
    /// Whether a calibration is due: none was passed, the latest was to be repeated, or the span is over.
    pub fn is_due(&self) -> bool {
        let repeat = self.latest.is_some_and(|latest| latest.outcome == Outcome::Repeat);
        repeat || self.passed.is_none_or(|(_, days)| self.span.is_some_and(|span| days > span))
    }
}

/// Where each reader stands on a day. Those who read something in the year before it, or stand in the log; whoever was only set
/// beside stands for the office's way of reading and is left out.
pub fn reminders(input: &Input, on: Date, span: Option<u32>) -> Vec<Reminder<'_>> {
    const RECENT_DAYS: u32 = 365;
    let log = || input.calibrations.iter().filter(move |one| one.date <= on);
    let yardsticks: BTreeSet<&str> = log().map(|one| one.against.as_str()).collect();
    let read = || {
        let dated = input.visits.iter().filter_map(|visit| Some((visit, visit.date?)));
        dated.filter(move |(visit, day)| {
            !visit.reader.is_empty() && *day <= on && on.days_since(*day) <= RECENT_DAYS
        })
    };
    let mut readers: BTreeSet<&str> = read().map(|(visit, _)| visit.reader.as_str()).collect();
    readers.retain(|reader| !yardsticks.contains(reader));
    readers.extend(log().map(|one| one.reader.as_str()));
    readers
        .into_iter()
        .map(|reader| {
            let own = || log().filter(move |one| one.reader == reader);
            let passed_by = |day: Date| {
                let passed = own().filter(move |one| one.outcome == Outcome::Passed && one.date <= day);
                passed.max_by_key(|one| one.date)
            };
            let covered = |day: Date| {
                passed_by(day)
                    .is_some_and(|passed| span.is_none_or(|span| day.days_since(passed.date) <= span))
            };
            let of_a_calibration = |site: &str, line: &str, day: Date| {
                own().any(|one| {
                    one.site == site
                        && one.date.year() == day.year()
                        && one.lines.iter().any(|own| own.line == line)
                })
            };
            let lines: Vec<Date> = read()
                .filter(|(visit, day)| {
                    visit.reader == reader && !of_a_calibration(&visit.site, &visit.line, *day)
                })
                .map(|(_, day)| day)
                .collect();
            Reminder {
                reader: reader.to_owned(),
                latest: own().max_by_key(|one| one.date),
                passed: passed_by(on).map(|passed| (passed, on.days_since(passed.date))),
                span,
                uncovered: lines.iter().filter(|day| !covered(**day)).count(),
                lines: lines.len(),
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn calibration(reader: &str, day: &str, outcome: Outcome) -> Calibration {
        Calibration {
            site: "Rim Draw".into(),
            reader: reader.into(),
            against: "Coach".into(),
            date: Date::read(day).expect("a day"),
            protocols: vec!["print".into()],
            tolerance: Percent(30_000),
            lines: [10_000, -30_000, 30_001]
                .map(|difference| CalibrationLine { line: "1".into(), difference })
                .to_vec(),
            outcome,
            judge: "Coach".into(),
        }
    }

    /// By hand: 1, −3 and 3.0001 points; a tolerance of 3 encloses two of them, and their mean is a third of 1.0001.
    #[test]
    fn within_and_bias_by_hand() {
        let one = calibration("Bea", "2026-06-01", Outcome::Repeat);
        assert_eq!(one.within(), 2);
        assert!((one.bias() - 0.010_001 / 3.0).abs() < 1e-15);
    }

    /// From 1 June to 1 August are 61 days (the calendar).
    #[test]
    fn a_span_runs_out_and_a_failure_undoes_a_pass() {
        let day = |text| Date::read(text).expect("a day");
        let mut input = Input {
            calibrations: vec![calibration("Bea", "2026-06-01", Outcome::Passed)],
            ..Input::default()
        };
        let on = day("2026-08-01");
        let one = &reminders(&input, on, Some(30))[0];
        assert_eq!((one.reader.as_str(), one.passed.map(|(_, days)| days)), ("Bea", Some(61)));
        assert!(one.is_due() && !reminders(&input, on, Some(61))[0].is_due());
        assert!(!reminders(&input, on, None)[0].is_due(), "no span is built in");
        assert_eq!(reminders(&input, on, None).len(), 1, "the coach is the yardstick");
        input.calibrations.push(calibration("Bea", "2026-07-31", Outcome::Repeat));
        assert!(reminders(&input, on, Some(61))[0].is_due());
        assert!(
            !reminders(&input, day("2026-07-01"), Some(61))[0].is_due(),
            "what is to come is not known yet"
        );
    }
}
