//! What unlike readers at the two visits do to a change, where lines that both read say how unlike they are.

use super::logged::{self, NotTaken, Taken, logged};
use super::{ChangeQuestion, SiteChange, interval};
use crate::agree::{Calibration, agreements};
use crate::assess::Question;
use crate::date::Date;
use crate::goal::Subject;
use crate::input::Input;
use crate::line::LineResult;
use std::collections::{BTreeMap, BTreeSet};
use tautline_engine::change::{Answer, answer, unpaired};
use tautline_engine::confidence::{Interval, NoBound};
use tautline_engine::estimate::{Estimate, Method, SamplingError};
use tautline_engine::num::count;
use tautline_engine::num::math::sqrt;
use tautline_engine::num::quantile::t_quantile;
use tautline_engine::num::sum::{mean, variance};

/// A change of canopy with the readers' difference taken off.
#[derive(Clone, Debug)]
pub struct ReaderBias {
    /// What the later readers see more than the earlier ones, on the lines that both read.
    pub bias: Estimate,
    /// The change less that, its error with the calibration's own.
    pub corrected: Estimate,
    /// Its interval, or why there is none.
    pub interval: Result<Interval, NoBound>,
    /// What is said of it.
    pub answer: Result<Answer, NoBound>,
    /// A smaller change than this may be lines and readers alone.
    pub believed: Option<f64>,
    /// What of the log of calibrations it rests on; nothing where the lines that both read are at hand.
    pub taken: Vec<Taken>,
    /// Each was set beside a third in its own time, not on lines that both read.
    pub is_by_a_third: bool,
}

/// What is known of unlike readers.
#[derive(Clone, Debug)]
pub enum Readers {
    /// The later ones were measured against the earlier ones.
    Measured(Box<ReaderBias>),
    /// These two, the earlier and the later one, have not read two lines in common.
    NotMeasured {
        /// Who read earlier.
        earlier: String,
        /// Who read later.
        later: String,
        /// Why the log of calibrations, which has both, doesn't say either.
        not_taken: Option<NotTaken>,
    },
}

/// What unlike readers do to the change of canopy; nothing where each line's readers are the same, or aren't named.
pub(super) fn readers(input: &Input, change: &SiteChange, asked: &ChangeQuestion) -> Option<Readers> {
    let figure = change.figures.iter().find(|figure| figure.subject == Subject::Canopy)?;
    let shares = shares(change);
    if shares.is_empty() || shares.keys().all(|(earlier, later)| earlier == later) {
        return None;
    }
    // lines read by both count in whatever year they were read
    let question = Question { year: None, ..asked.question.clone() };
    let (mut value, mut squared, mut doubt, mut lines) = (0.0, 0.0, 0.0, 0);
    let (mut taken, mut is_by_a_third) = (BTreeSet::new(), false);
    for ((earlier, later), share) in shares.iter().filter(|((earlier, later), _)| earlier != later) {
        let way = match way(input, &question, change, asked.span, (earlier, later)) {
            Ok(way) => way,
            Err(not_taken) => {
                let (earlier, later) = (earlier.clone(), later.clone());
                return Some(Readers::NotMeasured { earlier, later, not_taken });
            }
        };
        value += share * way.value;
        is_by_a_third |= way.errors.len() > 1;
        for (own, df) in way.errors {
            let own = share * share * own;
            squared += own;
            doubt += own * own / df;
        }
        lines += way.lines;
        taken.extend(way.taken);
    }
    let df = if doubt > 0.0 { squared * squared / doubt } else { count(lines - 1) };
    let bias = Estimate {
        value,
        error: SamplingError::Known { se: sqrt(squared), df },
        lines,
        units: lines,
        method: Method::PairedDifference,
    };
    let corrected = unpaired(&bias, &figure.change);
    let believed = match corrected.error {
        SamplingError::Known { se, df } => Some(t_quantile(f64::midpoint(1.0, change.confidence), df) * se),
        SamplingError::Unknown(_) => None,
    };
    Some(Readers::Measured(Box::new(ReaderBias {
        interval: interval(&corrected, change.confidence),
        answer: answer(&corrected, change.confidence, change.matters),
        believed,
        taken: taken.into_iter().collect(),
        is_by_a_third,
        bias,
        corrected,
    })))
}

/// Which reader of the earlier visit stands against which of the later one, by shares: line by line where lines were read twice.
fn shares(change: &SiteChange) -> BTreeMap<(String, String), f64> {
    let mut shares = BTreeMap::new();
    let mut add = |earlier: &LineResult, later: &LineResult, share: f64| {
        *shares.entry((earlier.reader.clone(), later.reader.clone())).or_insert(0.0) += share;
    };
    if change.lines.is_empty() {
        let each = 1.0 / (count(change.earlier.len()) * count(change.later.len()));
        for earlier in &change.earlier {
            for later in &change.later {
                add(earlier, later, each);
            }
        }
    } else {
        for line in &change.lines {
            add(&change.earlier[line.earlier], &change.later[line.later], 1.0 / count(change.lines.len()));
        }
    }
    let unnamed = |(earlier, later): &(String, String)| earlier.is_empty() || later.is_empty();
    if shares.keys().any(unnamed) { BTreeMap::new() } else { shares }
}

/// How much more one reader sees than another.
pub(super) struct Way {
    value: f64,
    /// Variances of the means that it is made of, with their degrees of freedom.
    errors: Vec<(f64, f64)>,
    lines: usize,
    taken: Vec<Taken>,
}

impl Way {
    /// The mean of differences on two lines or more.
    pub(super) fn of(differences: &[f64], taken: Vec<Taken>) -> Self {
        let lines = differences.len();
        let error = (variance(differences) / count(lines), count(lines - 1));
        Self { value: mean(differences), errors: vec![error], lines, taken }
    }

    /// From one reader to a third, and from the third to the other.
    pub(super) fn then(self, later: Self, taken: Vec<Taken>) -> Self {
        Self {
            value: later.value - self.value,
            errors: [self.errors, later.errors].concat(),
            lines: self.lines + later.lines,
            taken,
        }
    }
}

/// How much more the later reader sees than the earlier one: from the lines that both read in one year where they are at hand, else
/// from the log, by what was nearest before the visits.
fn way(
    input: &Input,
    question: &Question,
    change: &SiteChange,
    span: Option<u32>,
    (earlier, later): (&str, &str),
) -> Result<Way, Option<NotTaken>> {
    let pairs = agreements(input, question, Some(earlier)).into_iter().filter(|one| one.second == later);
    let differences: Vec<f64> = pairs.flat_map(|one| one.lines).filter_map(|pair| pair.difference).collect();
    if differences.len() > 1 {
        return Ok(Way::of(&differences, Vec::new()));
    }
    let lines = change.earlier.iter().chain(&change.later);
    let own: BTreeSet<&String> = lines.map(|line| &input.visits[line.visit].protocol).collect();
    // what was logged was worked out by the protocol's own rules
    let as_written = question.choice.gap_limit.is_none() && question.choice.counts.is_none();
    let same_rules = |one: &Calibration| as_written && one.protocols.iter().collect::<BTreeSet<_>>() == own;
    let asked = logged::Asked {
        earlier: (earlier, last_day(&change.earlier, earlier)),
        later: (later, last_day(&change.later, later)),
        span,
    };
    match logged(&input.calibrations, &asked, &same_rules) {
        Some(found) => found.map_err(Some),
        None => Err(None),
    }
}

/// The last day on which a reader read lines of a visit.
fn last_day(lines: &[LineResult], reader: &str) -> Option<Date> {
    lines.iter().filter(|line| line.reader == reader).filter_map(|line| line.date).max()
}
