//! Do readers agree: the same lines read in the same year by several, set side by side.

mod buy;
mod enter;
mod log;
mod log_output;
mod output;
mod season;
mod sentences;
mod sources;
mod sources_output;
mod sources_sentences;
pub mod tailgate;

pub use buy::{Bought, Buy, Prices};
pub use enter::{Entered, enter};
pub use log::{Calibration, CalibrationLine, Outcome, Reminder, calibrations, reminders};
pub use log_output::{AgreeLogOutput, log_output};
pub use output::{AgreeOutput, output};
pub use season::{Point, Ready, Season, Standing, seasons, standing};
pub use sentences::{reminder_sentences, season_sentences, sentences, standing_sentences};
pub use sources::{Doubt, Part, PartShare, Taking, Told, doubt};
pub use sources_output::{AgreeSourcesOutput, sources_output};
pub use sources_sentences::{bought, doubt_sentences};

use crate::assess::{Question, dedupe, natural_order, round, usable_lines};
use crate::compare::common_ground;
use crate::finding::Finding;
use crate::input::Input;
use crate::line::LineResult;
use std::collections::BTreeSet;
use tautline_engine::agreement::habits::{Habit, Sheets, habits};
use tautline_engine::agreement::patches::{Matched, matched};
use tautline_engine::agreement::reliability::{Form, Of, mean_squares};
use tautline_engine::agreement::{Limits, limits};
use tautline_engine::cover::{Intercept, Life};
use tautline_engine::length::Notation;

/// Share of the differences that limits of agreement enclose.
pub const SHARE_WITHIN: f64 = 0.95;

/// Two readers of a site in one year.
#[derive(Clone, Debug)]
pub struct Agreement {
    /// The site.
    pub site: String,
    /// The year, where the visits are dated.
    pub year: Option<u16>,
    /// Confidence of the intervals.
    pub confidence: f64,
    /// The reader that the other is set beside.
    pub first: String,
    /// The other reader.
    pub second: String,
    /// The lines that both read.
    pub lines: Vec<LinePair>,
    /// How the first reader's lengths were written.
    pub written: Option<Notation>,
    /// Limits between which differences of canopy cover lie; none for one line.
    pub limits: Option<Limits>,
    /// How far the readers differ in each species, on average over the lines: code, difference as a share.
    pub species: Vec<(String, f64)>,
    /// Habits that would explain the differences.
    pub habits: Vec<Habit>,
    /// Agreement of all who read the same lines, where three lines or more were read by all of them.
    pub reliability: Option<Reliability>,
    /// What should be said.
    pub findings: Vec<Finding>,
}

/// One line as two readers saw it.
#[derive(Clone, Debug)]
pub struct LinePair {
    /// The first reader's line.
    pub first: LineResult,
    /// The second reader's.
    pub second: LineResult,
    /// Canopy cover of the second less that of the first; unknown where one knows it only between two ends.
    pub difference: Option<f64>,
    /// Plants that both have and that one has, where positions were read.
    pub patches: Option<Matched>,
}

/// How much of what differs lies in the lines: ICC(2,1).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reliability {
    /// How many readers read all of the lines.
    pub readers: usize,
    /// How many lines.
    pub lines: usize,
    /// The intraclass correlation.
    pub value: f64,
    /// Its interval.
    pub interval: (f64, f64),
}

/// Sets every reader beside the first of each site and year, or beside `against`.
pub fn agreements(input: &Input, question: &Question, against: Option<&str>) -> Vec<Agreement> {
    each(input, question, against).flatten().collect()
}

/// The same, one site and year after the other, for whoever can't wait until all are worked out.
pub fn each(
    input: &Input,
    question: &Question,
    against: Option<&str>,
) -> impl Iterator<Item = Vec<Agreement>> {
    round::rounds(input, question.year).into_iter().map(move |round| {
        let visits = round.readings();
        let again: Vec<usize> =
            visits.iter().copied().filter(|&visit| is_read_again(input, &visits, visit)).collect();
        if again.is_empty() {
            return Vec::new();
        }
        let ground = common_ground(input, &again, &question.choice);
        let mut findings = ground.findings;
        if ground.apart {
            return Vec::new();
        }
        let lines = usable_lines(input, question, &again, &ground.choice, &mut findings);
        dedupe(&mut findings);
        let mut agreements = of_round(&round, question, &lines, &findings, against);
        for one in &mut agreements {
            one.written = one.lines.first().map(|pair| pair.first.notation(input));
        }
        agreements
    })
}

/// Whether another reader read the same line in the same year.
fn is_read_again(input: &Input, visits: &[usize], visit: usize) -> bool {
    let own = &input.visits[visit];
    let another = |&other: &usize| {
        let other = &input.visits[other];
        other.line == own.line && other.reader != own.reader && !other.reader.is_empty()
    };
    !own.reader.is_empty() && visits.iter().any(another)
}

fn of_round(
    round: &round::Round,
    question: &Question,
    lines: &[LineResult],
    findings: &[Finding],
    against: Option<&str>,
) -> Vec<Agreement> {
    let readers = readers(lines);
    let Some(first) = against.map(str::to_owned).or_else(|| readers.first().cloned()) else {
        return Vec::new();
    };
    let reliability = reliability(lines, &readers, question.confidence());
    readers
        .iter()
        .filter(|reader| **reader != first)
        .filter_map(|second| {
            let pairs = pairs(lines, &first, second);
            if pairs.is_empty() {
                return None;
            }
            let differences: Vec<f64> = pairs.iter().filter_map(|pair| pair.difference).collect();
            Some(Agreement {
                written: None,
                site: round.site.clone(),
                year: round.year,
                confidence: question.confidence(),
                first: first.clone(),
                second: second.clone(),
                limits: limits(&differences, SHARE_WITHIN),
                species: species(&pairs),
                habits: habits(&pairs.iter().map(sheets).collect::<Vec<_>>()),
                reliability,
                findings: findings.to_vec(),
                lines: pairs,
            })
        })
        .collect()
}

/// The readers in the order of their passes.
fn readers(lines: &[LineResult]) -> Vec<String> {
    let mut by_pass: Vec<&LineResult> = lines.iter().collect();
    by_pass.sort_by(|a, b| natural_order(&a.pass, &b.pass).then_with(|| a.reader.cmp(&b.reader)));
    let mut readers: Vec<String> = Vec::new();
    for line in by_pass {
        if !readers.contains(&line.reader) {
            readers.push(line.reader.clone());
        }
    }
    readers
}

/// A reader's first reading of a line.
fn reading<'a>(lines: &'a [LineResult], line: &str, reader: &str) -> Option<&'a LineResult> {
    let own = lines.iter().filter(|one| one.line == line && one.reader == reader);
    own.min_by(|a, b| natural_order(&a.pass, &b.pass))
}

fn names(lines: &[LineResult]) -> Vec<&str> {
    let mut names: Vec<&str> = lines.iter().map(|line| line.line.as_str()).collect();
    names.sort_by(|a, b| natural_order(a, b));
    names.dedup();
    names
}

fn pairs(lines: &[LineResult], first: &str, second: &str) -> Vec<LinePair> {
    names(lines)
        .into_iter()
        .filter_map(|name| {
            let (first, second) = (reading(lines, name, first)?, reading(lines, name, second)?);
            let known = first.canopy.is_known() && second.canopy.is_known();
            let canopy = |line: &LineResult| line.share(line.canopy.low);
            let patches = first.cover.as_ref().zip(second.cover.as_ref());
            Some(LinePair {
                difference: known.then(|| canopy(second) - canopy(first)),
                patches: patches.map(|(a, b)| matched(&a.canopy, &b.canopy)),
                first: first.clone(),
                second: second.clone(),
            })
        })
        .collect()
}

/// Mean difference of each species over the lines, from known lengths; a species that one didn't meet is zero there.
fn species(pairs: &[LinePair]) -> Vec<(String, f64)> {
    let lines = || pairs.iter().flat_map(|pair| [&pair.first, &pair.second]);
    let codes: BTreeSet<&String> =
        lines().flat_map(|line| line.species.iter().filter(|one| one.counted).map(|one| &one.code)).collect();
    let share = |line: &LineResult, code: &str| {
        line.species.iter().find(|one| one.code == code).map_or(0.0, |one| line.share(one.live.low))
    };
    #[expect(clippy::cast_precision_loss, reason = "lines are few")]
    let number = pairs.len() as f64;
    codes
        .into_iter()
        .map(|code| {
            let sum: f64 =
                pairs.iter().map(|pair| share(&pair.second, code) - share(&pair.first, code)).sum();
            (code.clone(), sum / number)
        })
        .collect()
}

/// What both wrote, edges as written.
fn sheets(pair: &LinePair) -> Sheets {
    let written = |line: &LineResult, life: Life| {
        let own = line.counted.iter().filter(|one: &&Intercept| one.life == life);
        own.map(|one| one.stretch).collect()
    };
    Sheets {
        first: written(&pair.first, Life::Live),
        second: written(&pair.second, Life::Live),
        first_dead: written(&pair.first, Life::Dead),
        first_other: pair.first.others.iter().map(|one| one.stretch).collect(),
    }
}

/// ICC(2,1) of the lines that all readers read.
fn reliability(lines: &[LineResult], readers: &[String], confidence: f64) -> Option<Reliability> {
    const FEWEST_LINES: usize = 3;
    let table: Vec<Vec<f64>> = names(lines)
        .into_iter()
        .filter_map(|name| {
            let row = readers.iter().map(|reader| {
                let line = reading(lines, name, reader).filter(|line| line.canopy.is_known())?;
                Some(line.share(line.canopy.low))
            });
            row.collect()
        })
        .collect();
    let squares = mean_squares(&table).ok().filter(|_| table.len() >= FEWEST_LINES)?;
    let value = squares.reliability(Form::Agreement, Of::OneReader);
    let interval = squares.interval(Form::Agreement, Of::OneReader, confidence);
    (value.is_finite() && interval.0.is_finite() && interval.1.is_finite()).then_some(Reliability {
        readers: readers.len(),
        lines: table.len(),
        value,
        interval,
    })
}
