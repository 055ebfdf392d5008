//! The model of lines and years of one site, and when its line would reach a goal.

use crate::assess::{Question, threshold};
use crate::goal::{Goal, Subject, Wanted};
use tautline_engine::num::count;
use tautline_engine::trend::forecast::{Within, crossing};
use tautline_engine::trend::mixed::{Combination, Fit, NoFit, PredictedLine, Reading, Terms, Variances, fit};
use tautline_engine::trend::robust::FEWEST_VISITS;
use tautline_engine::verdict;

/// Why there is no model.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoModel {
    /// One line has nothing beside it that would tell the year's swing from its own.
    OneLine,
    /// The readings don't hold it.
    Unfit(NoFit),
}

impl NoModel {
    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::OneLine => "fit-one-line",
            Self::Unfit(reason) => reason.code(),
        }
    }
}

/// Why the model's slope has no p.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoP {
    /// Fewer than four visits.
    TooFewVisits,
    /// What the years did to all lines alike can't be told from what is left, so the slope looks surer than it is.
    NoYears,
}

impl NoP {
    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::TooFewVisits => "too-few-visits",
            Self::NoYears => "no-years-in-the-model",
        }
    }
}

/// The level of all lines together in a year, as the model has it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// The year.
    pub year: i32,
    /// The level.
    pub level: f64,
    /// Its interval.
    pub interval: (f64, f64),
}

/// What the model says.
#[derive(Clone, Debug)]
pub struct Model {
    /// What is random beside lines' levels.
    pub terms: Terms,
    /// The slope a year, as a share of the line.
    pub slope: Combination,
    /// Its interval; none where the years aren't in the model.
    pub interval: Option<(f64, f64)>,
    /// Chance of a slope as far from zero where nothing changes, or why there is none.
    pub p: Result<f64, NoP>,
    /// The variances.
    pub variances: Variances,
    /// The level in each year from first to last; empty where the years aren't in the model.
    pub band: Vec<Band>,
    /// Each line as predicted, its level that at `origin`.
    pub lines: Vec<PredictedLine>,
    /// The year from which lines' levels count.
    pub origin: f64,
}

/// Years before the next steps of a band.
const FEWEST_OF_A_SLOPE: usize = 3;

/// A fit with the year it counts from and what is random in it.
pub struct Fitted {
    pub(super) fit: Fit,
    pub(super) origin: f64,
    pub(super) terms: Terms,
}

fn years_of(readings: &[Reading]) -> Vec<i32> {
    let mut years: Vec<i32> = readings.iter().map(|one| one.year).collect();
    years.sort_unstable();
    years.dedup();
    years
}

/// The richest model that the readings hold: lines with slopes and years; without the lines' slopes; without the years.
///
/// # Errors
/// Why the readings hold none of them.
pub fn fit_of(readings: &[Reading]) -> Result<Fitted, NoModel> {
    let years = years_of(readings);
    let lines = readings.iter().map(|one| one.line).max().map_or(0, |most| most + 1);
    if lines < 2 {
        return Err(NoModel::OneLine);
    }
    let origin = years.iter().map(|year| f64::from(*year)).sum::<f64>() / count(years.len());
    let often = (0..lines)
        .filter(|line| readings.iter().filter(|one| one.line == *line).count() >= FEWEST_OF_A_SLOPE)
        .count();
    let slope = often >= 2;
    let year = years.len() >= FEWEST_OF_A_SLOPE;
    let ways = [(slope, year), (false, year), (slope, false), (false, false)];
    let mut reason = NoFit::OneYear;
    for (slope, year) in ways {
        let terms = Terms { slope, year, site_year: false };
        match fit(readings, origin, terms) {
            Ok(fit) => return Ok(Fitted { fit, origin, terms }),
            Err(why) => reason = why,
        }
    }
    Err(NoModel::Unfit(reason))
}

impl Model {
    pub(super) fn new(fitted: &Fitted, readings: &[Reading], confidence: f64) -> Self {
        let Fitted { fit, origin, terms } = fitted;
        let slope = fit.slope();
        let years = years_of(readings);
        let p = if years.len() < FEWEST_VISITS {
            Err(NoP::TooFewVisits)
        } else if !terms.year {
            Err(NoP::NoYears)
        } else {
            Ok(slope.p())
        };
        let (first, last) =
            (years.first().copied().unwrap_or_default(), years.last().copied().unwrap_or_default());
        let band = |year: i32| {
            let level = fit.level(f64::from(year));
            Band { year, level: level.value, interval: level.interval(confidence) }
        };
        Self {
            terms: *terms,
            slope,
            interval: p.is_ok().then(|| slope.interval(confidence)),
            band: if p.is_ok() { (first..=last).map(band).collect() } else { Vec::new() },
            p,
            variances: fit.variances(),
            lines: fit.lines(),
            origin: *origin,
        }
    }
}

/// When the trend's line would reach one end of a goal.
#[derive(Clone, Debug, PartialEq)]
pub struct Forecast {
    /// The goal.
    pub goal: Goal,
    /// The end, as a share.
    pub value: f64,
    /// Cover is to stay at or above the end; else at or below.
    pub at_least: bool,
    /// Whether the line stood on the right side of it in the last year.
    pub stands: bool,
    /// What is to come.
    pub coming: Coming,
}

/// What is to come of a trend and a goal.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Coming {
    /// The line reaches it within as many years as were looked back on.
    Reached {
        /// The year in which the line does.
        year: f64,
        /// Not before this year.
        earliest: f64,
        /// By this year, unless it may never.
        latest: Option<f64>,
    },
    /// Not within as many years as were looked back on; this is the last of them.
    NotBy(f64),
    /// The slope isn't shown, so nothing is said.
    NotShown,
}

/// Forecasts for the goals of a site about a subject.
pub(super) fn forecasts(
    question: &Question,
    site: &str,
    subject: &Subject,
    fitted: &Fitted,
    readings: &[Reading],
) -> Vec<Forecast> {
    let years = years_of(readings);
    let (Some(first), Some(last)) = (years.first(), years.last()) else { return Vec::new() };
    let (first, last) = (f64::from(*first), f64::from(*last));
    let shown = fitted.terms.year && years.len() >= FEWEST_VISITS;
    let goals = question.goals_of(site).map(|goal| &goal.goal);
    let mut found = Vec::new();
    for goal in goals.filter(|goal| matches!(goal.wanted, Wanted::Cover(_)) && goal.subject == *subject) {
        let ends = match threshold(&goal.wanted) {
            verdict::Goal::AtLeast(low) => vec![(low, true)],
            verdict::Goal::AtMost(high) => vec![(high, false)],
            verdict::Goal::Between(low, high) => vec![(low, true), (high, false)],
        };
        let confidence =
            goal.confidence_per_mille.map_or(question.confidence(), |own| f64::from(own) / 1000.0);
        let slope = fitted.fit.slope();
        let sure = shown && slope.p() < 1.0 - confidence;
        for (value, at_least) in ends {
            let level = fitted.fit.level(last).value;
            let coming =
                if sure { coming(fitted, value, confidence, (first, last)) } else { Coming::NotShown };
            let stands = if at_least { level >= value } else { level <= value };
            found.push(Forecast { goal: goal.clone(), value, at_least, stands, coming });
        }
    }
    found
}

/// A trend speaks for no more years ahead than it looks back on (common practice, no source).
fn coming(fitted: &Fitted, value: f64, confidence: f64, (first, last): (f64, f64)) -> Coming {
    let horizon = last + (last - first);
    let Some(found) = crossing(&fitted.fit, fitted.origin, value, confidence) else {
        return Coming::NotShown;
    };
    if found.year <= last || found.year > horizon {
        return Coming::NotBy(horizon);
    }
    let (earliest, latest) = match found.within {
        Within::Between(low, high) => (low, Some(high)),
        Within::Outside(_, high) => (high, None),
        Within::Any => (last, None),
    };
    Coming::Reached { year: found.year, earliest: earliest.max(last), latest }
}
