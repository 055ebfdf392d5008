//! How many lines, how long: what a pilot or foreseen figures say about each question a plan can ask.

mod lengths;
pub mod looks;
pub mod sequential;
pub mod shares;
pub mod simulated;

pub use lengths::{Comparing, DesignOutput, LengthsOutput, lengths, lengths_to_try, paid_for};

use crate::assess::{Assessment, Attribute, threshold};
use crate::goal::{Subject, Wanted};
use crate::limits;
use crate::output::VERSION;
use serde::Serialize;
use tautline_engine::confidence::Method;
use tautline_engine::effort::change::{Change, Lines};
use tautline_engine::effort::length::PilotLine;
use tautline_engine::effort::power::Sides;
use tautline_engine::effort::trend::{JudgedBy, Trend, scatter_of_permanent_lines};
use tautline_engine::effort::width::Width;
use tautline_engine::effort::{MoreUnits, SoFar, chance_to_settle, more_units};
use tautline_engine::estimate::SamplingError;
use tautline_engine::num::count;
use tautline_engine::num::math::sqrt;

/// What is foreseen of the lines to come.
#[derive(Clone, Debug, PartialEq)]
pub struct Foreseen {
    /// Which plants.
    pub subject: Subject,
    /// Their cover as a share.
    pub cover: f64,
    /// Standard deviation of the cover of lines.
    pub deviation: f64,
    /// Lines it was learned from; none where a person foresees it.
    pub pilot: Option<usize>,
    /// The pilot's lines, where their positions are known.
    pub lines: Vec<PilotLine>,
}

impl Foreseen {
    /// From the canopy cover of a site: its standard error times √n, so that strata and plots are as they were.
    ///
    /// # Range
    /// `None` where the cover has no error
    pub fn of(assessment: &Assessment) -> Option<Self> {
        Self::of_subject(assessment, &Subject::Canopy)
    }

    /// The same of one species, growth form or group; the lines' positions are those of all canopy, so they say nothing of it.
    ///
    /// # Range
    /// `None` where the figure wasn't asked for or has no error
    pub fn of_subject(assessment: &Assessment, subject: &Subject) -> Option<Self> {
        let figure = assessment
            .figures
            .iter()
            .find(|figure| figure.subject == *subject && figure.attribute == Attribute::Cover)?;
        let SamplingError::Known { se, .. } = figure.estimate.error else { return None };
        let lines = assessment
            .lines
            .iter()
            .filter(|_| *subject == Subject::Canopy)
            .filter_map(|line| {
                let cover = line.cover.as_ref()?;
                Some(PilotLine { canopy: cover.canopy.clone(), length: line.read })
            })
            .collect();
        Some(Self {
            subject: subject.clone(),
            cover: figure.estimate.value,
            deviation: se * sqrt(count(figure.estimate.units)),
            pilot: Some(figure.estimate.units),
            lines,
        })
    }
}

/// Where nobody says how alike a line's two readings are; a half is neither kind nor harsh (common practice, no source).
pub const CORRELATION: f64 = 0.5;

/// What a plan asks.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Ask {
    /// Goals to be judged.
    pub goals: Vec<Wanted>,
    /// An interval no wider than this to either side.
    pub half_width: Option<f64>,
    /// A change between two visits.
    pub change: Option<f64>,
    /// A trend a year, and the number of yearly visits.
    pub trend: Option<(f64, usize)>,
    /// Correlation of permanent lines between visits.
    pub correlation: f64,
    /// How far good and poor years move all lines.
    pub between_years: f64,
    /// Confidence as a share; a false alarm has what is left.
    pub confidence: f64,
    /// Chance with which the plan should succeed.
    pub power: f64,
    /// What so many lines would show.
    pub lines: Option<usize>,
    /// Lines that the area would hold side by side.
    pub population: Option<f64>,
}

/// What `tautline plan effort --json` prints.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EffortOutput {
    /// `tautline.plan-effort`
    pub format: &'static str,
    /// The version of the format.
    pub version: u32,
    /// The site the pilot comes from.
    pub site: Option<String>,
    /// Which plants the plan is for.
    pub subject: Subject,
    /// Their cover that is foreseen, as a share.
    pub cover: f64,
    /// Standard deviation of lines that is foreseen.
    pub deviation: f64,
    /// Lines of the pilot.
    pub pilot_lines: Option<usize>,
    /// Two-sided confidence of intervals, one-sided of verdicts.
    pub confidence: f64,
    /// Chance with which the plan should succeed.
    pub power: f64,
    /// Correlation of permanent lines between visits.
    pub correlation: f64,
    /// The answers.
    pub answers: Vec<Answer>,
    /// Length against number, where a cost was given.
    pub lengths: Option<LengthsOutput>,
    /// What surveys drawn one by one say, where that was asked.
    pub simulated: Vec<simulated::SimulatedOutput>,
    /// Lines of each stratum, where strata were given.
    pub strata: Option<shares::SharesOutput>,
}

impl EffortOutput {
    /// The answers alone; lengths, strata and simulated surveys are added where they were asked.
    pub fn of(site: Option<String>, foreseen: &Foreseen, ask: &Ask, answers: Vec<Answer>) -> Self {
        Self {
            format: "tautline.plan-effort",
            version: VERSION,
            site,
            subject: foreseen.subject.clone(),
            cover: foreseen.cover,
            deviation: foreseen.deviation,
            pilot_lines: foreseen.pilot,
            confidence: ask.confidence,
            power: ask.power,
            correlation: ask.correlation,
            answers,
            lengths: None,
            simulated: Vec::new(),
            strata: None,
        }
    }
}

/// One answer.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Answer {
    /// half-width, verdict, change-permanent, change-temporary, trend.
    pub question: &'static str,
    /// What is wanted, as a share; none for a verdict.
    pub wanted: Option<f64>,
    /// The goal's place in the call, for a verdict.
    pub goal: Option<usize>,
    /// Lines that this takes, for changes and trends on each visit; none where no practical number does.
    pub lines: Option<usize>,
    /// With the number of lines in the call: the half-width or the change that they show, as a share.
    pub shows: Option<f64>,
    /// With the number of lines in the call: the chance of success.
    pub chance: Option<f64>,
}

/// Every answer to what is asked.
pub fn answers(foreseen: &Foreseen, ask: &Ask) -> Vec<Answer> {
    let mut answers = Vec::new();
    let width = width(ask, foreseen.deviation);
    if ask.half_width.is_some() || ask.lines.is_some() {
        answers.push(Answer {
            question: "half-width",
            wanted: ask.half_width,
            goal: None,
            lines: ask.half_width.and_then(|wanted| practical(width.units(wanted, ask.power))),
            shows: ask.lines.map(|lines| width.half_width(lines, ask.power)),
            chance: ask.lines.zip(ask.half_width).map(|(lines, wanted)| width.chance(wanted, lines)),
        });
    }
    for (at, wanted) in ask.goals.iter().enumerate().filter(|(_, goal)| matches!(goal, Wanted::Cover(_))) {
        let so_far = so_far(foreseen.cover, foreseen.deviation);
        let goal = threshold(wanted);
        let most = limits::MOST_PRACTICAL_LINES;
        let lines = match more_units(&so_far, goal, ask.confidence, ask.power, most) {
            MoreUnits::More(more) => Some(more + so_far.units),
            MoreUnits::NoPracticalNumber => None,
        };
        let chance = ask.lines.map(|lines| chance_to_settle(&so_far, goal, ask.confidence, lines));
        answers.push(Answer {
            question: "verdict",
            wanted: None,
            goal: Some(at),
            lines,
            shows: None,
            chance,
        });
    }
    let kinds = [
        ("change-permanent", Lines::Permanent { correlation: ask.correlation }),
        ("change-temporary", Lines::Temporary),
    ];
    for (question, lines) in kinds {
        if ask.change.is_none() && ask.lines.is_none() {
            continue;
        }
        let plan = Change {
            lines,
            deviation: foreseen.deviation,
            sides: Sides::Two,
            alpha: 1.0 - ask.confidence,
            population: ask.population,
        };
        answers.push(Answer {
            question,
            wanted: ask.change,
            goal: None,
            lines: ask.change.and_then(|change| practical(plan.units(change, ask.power))),
            shows: ask.lines.and_then(|lines| plan.detectable(lines, ask.power)),
            chance: ask.lines.zip(ask.change).map(|(lines, change)| plan.chance(change, lines)),
        });
    }
    if let Some((slope, visits)) = ask.trend {
        let plan = Trend {
            years: (0..visits).map(count).collect(),
            judged_by: JudgedBy::YearMeans,
            deviation: scatter_of_permanent_lines(foreseen.deviation, ask.correlation),
            between_years: ask.between_years,
            between_slopes: 0.0,
            sides: Sides::Two,
            alpha: 1.0 - ask.confidence,
        };
        answers.push(Answer {
            question: "trend",
            wanted: Some(slope),
            goal: None,
            lines: practical(plan.units(slope, ask.power)),
            shows: None,
            chance: ask.lines.map(|lines| plan.chance(slope, lines)),
        });
    }
    answers
}

fn width(ask: &Ask, deviation: f64) -> Width {
    Width { confidence: ask.confidence, deviation, population: ask.population }
}

/// Lines as foreseen, as if two had been read.
fn so_far(value: f64, deviation: f64) -> SoFar {
    SoFar { value, se: deviation / sqrt(2.0), df: 1.0, units: 2, method: Method::LogitEffective }
}

fn practical(lines: Option<usize>) -> Option<usize> {
    lines.filter(|&lines| lines <= limits::MOST_PRACTICAL_LINES)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::goal::{Percent, Relation};

    /// Cover 25 %, deviation 7 %, ± 5 % at 95 % with assurance 90 %: 14 lines; 15 where the plain 7.5 is rounded up
    /// before it is corrected (Elzinga, Salzer and Willoughby 1998, appendix 7, from memory).
    #[test]
    fn the_handbook_s_example() {
        let foreseen = Foreseen {
            subject: Subject::Canopy,
            cover: 0.25,
            deviation: 0.07,
            pilot: None,
            lines: Vec::new(),
        };
        let ask = Ask {
            half_width: Some(0.05),
            change: Some(0.035),
            correlation: 0.5,
            confidence: 0.95,
            power: 0.9,
            ..Ask::default()
        };
        let found = answers(&foreseen, &ask);
        let lines = |question| found.iter().find(|one| one.question == question).unwrap().lines;
        assert_eq!(lines("half-width"), Some(14));
        let permanent = lines("change-permanent").unwrap();
        assert!(permanent < lines("change-temporary").unwrap());
        let again = answers(&foreseen, &Ask { lines: Some(permanent), ..ask });
        let chance = again.iter().find(|one| one.question == "change-permanent").unwrap().chance.unwrap();
        assert!((0.9..0.93).contains(&chance), "{chance}");
    }

    #[test]
    fn a_goal_at_the_figure_itself_takes_no_practical_number() {
        let foreseen = Foreseen {
            subject: Subject::Canopy,
            cover: 0.15,
            deviation: 0.07,
            pilot: None,
            lines: Vec::new(),
        };
        let goals = vec![Wanted::Cover(Relation::AtLeast(Percent(150_000)))];
        let ask = Ask { goals, confidence: 0.9, power: 0.8, ..Ask::default() };
        assert_eq!(answers(&foreseen, &ask)[0].lines, None);
        let farther = Foreseen { cover: 0.20, ..foreseen };
        assert!(answers(&farther, &ask)[0].lines.is_some_and(|lines| (5..40).contains(&lines)));
    }
}
