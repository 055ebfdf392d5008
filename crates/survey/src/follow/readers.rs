//! What unlike readers at the two visits do to a change, where lines that both read say how unlike they are.

use super::{ChangeQuestion, SiteChange, interval};
use crate::agree::agreements;
use crate::assess::Question;
use crate::goal::Subject;
use crate::input::Input;
use crate::line::LineResult;
use std::collections::BTreeMap;
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
    for ((earlier, later), share) in shares.iter().filter(|((earlier, later), _)| earlier != later) {
        let differences = differences(input, &question, earlier, later);
        if differences.len() < 2 {
            return Some(Readers::NotMeasured { earlier: earlier.clone(), later: later.clone() });
        }
        let own = share * share * variance(&differences) / count(differences.len());
        value += share * mean(&differences);
        squared += own;
        doubt += own * own / count(differences.len() - 1);
        lines += differences.len();
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

/// How much more the later reader sees than the earlier one, on each line that both read in one year.
fn differences(input: &Input, question: &Question, earlier: &str, later: &str) -> Vec<f64> {
    agreements(input, question, Some(earlier))
        .iter()
        .filter(|one| one.second == later)
        .flat_map(|one| one.lines.iter().filter_map(|pair| pair.difference))
        .collect()
}
