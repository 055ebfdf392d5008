//! What unlike readers at the two visits do to a change, where lines that both read say how unlike they are.

use super::{ChangeQuestion, SiteChange, interval};
use crate::agree::{Calibration, agreements};
use crate::assess::Question;
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
        /// The log of calibrations has both, but under other rules.
        logged_otherwise: bool,
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
        let ways = differences(input, &question, change, (earlier, later));
        let differences: Vec<f64> = ways.read.into_values().collect();
        if differences.len() < 2 {
            let (earlier, later) = (earlier.clone(), later.clone());
            return Some(Readers::NotMeasured { earlier, later, logged_otherwise: ways.logged_otherwise });
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

/// A line in a year: what two readers are set beside each other on.
type Place = (String, String, Option<u16>);

/// How two readers differ, line by line.
struct Ways {
    read: BTreeMap<Place, f64>,
    logged_otherwise: bool,
}

/// How much more the later reader sees than the earlier one, on each line that both read in one year: from the readings where they
/// are at hand, else from the log.
fn differences(
    input: &Input,
    question: &Question,
    change: &SiteChange,
    (earlier, later): (&str, &str),
) -> Ways {
    let lines = change.earlier.iter().chain(&change.later);
    let own: BTreeSet<&String> = lines.map(|line| &input.visits[line.visit].protocol).collect();
    // what was logged was worked out by the protocol's own rules
    let as_written = question.choice.gap_limit.is_none() && question.choice.counts.is_none();
    let same_rules = |one: &Calibration| as_written && one.protocols.iter().collect::<BTreeSet<_>>() == own;
    let mut read = logged(input, (earlier, later), &same_rules);
    let logged_otherwise = read.is_empty() && !logged(input, (earlier, later), &|_| true).is_empty();
    for one in agreements(input, question, Some(earlier)).iter().filter(|one| one.second == later) {
        for pair in &one.lines {
            if let Some(difference) = pair.difference {
                read.insert((one.site.clone(), pair.first.line.clone(), one.year), difference);
            }
        }
    }
    Ways { read, logged_otherwise }
}

/// The same from the log of calibrations: of each other, or of both beside a third on the same line in the same year.
fn logged(
    input: &Input,
    (earlier, later): (&str, &str),
    counts: &dyn Fn(&Calibration) -> bool,
) -> BTreeMap<Place, f64> {
    let more = |reader: &str, against: &str| -> BTreeMap<Place, f64> {
        let own = input.calibrations.iter().filter(|one| counts(one));
        own.filter(|one| one.reader == reader && one.against == against).flat_map(places).collect()
    };
    let mut read = BTreeMap::new();
    let thirds: BTreeSet<&str> = input.calibrations.iter().map(|one| one.against.as_str()).collect();
    for third in thirds {
        let before = more(earlier, third);
        for (place, after) in more(later, third) {
            read.extend(before.get(&place).map(|before| (place.clone(), after - before)));
        }
    }
    read.extend(more(earlier, later).into_iter().map(|(place, less)| (place, -less)));
    read.extend(more(later, earlier));
    read
}

fn places(one: &Calibration) -> impl Iterator<Item = (Place, f64)> + '_ {
    one.lines.iter().map(|line| ((one.site.clone(), line.line.clone(), Some(one.date.year())), line.share()))
}
