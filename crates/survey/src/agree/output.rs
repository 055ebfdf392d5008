//! What `tautline agree --json` prints.

use super::{Agreement, LinePair, Season, seasons, standing};
use crate::input::{Input, SourceFile};
use crate::message::Message;
use crate::output::{FindingOutput, ProtocolOutput, VERSION, findings, protocols};
use serde::Serialize;
use tautline_engine::agreement::habits::Habit;
use tautline_engine::length::Length;
use tautline_engine::stretch::Stretch;

/// What `tautline agree --json` prints.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct AgreeOutput {
    /// `tautline.agree`
    pub format: &'static str,
    /// The version of the format.
    pub version: u32,
    /// The files that were read.
    pub files: Vec<SourceFile>,
    /// The protocols the lines were read under.
    pub protocols: Vec<ProtocolOutput>,
    /// One for each pair of readers of a site in a year.
    pub agreements: Vec<AgreementOutput>,
    /// One for each pair of readers over a year, all sites together.
    pub seasons: Vec<SeasonOutput>,
    /// What was found on reading.
    pub findings: Vec<FindingOutput>,
}

/// Two readers; differences are shares of the line, the second reader's less the first's.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct AgreementOutput {
    /// The site.
    pub site: String,
    /// The year.
    pub year: Option<u16>,
    /// The reader that the other is set beside.
    pub first: String,
    /// The other reader.
    pub second: String,
    /// Mean difference of canopy cover; absent for one line.
    pub bias: Option<f64>,
    /// Standard deviation of the differences.
    pub sd: Option<f64>,
    /// 95 % of differences lie between these, if they spread like a bell curve.
    pub limits: Option<(f64, f64)>,
    /// Mean difference of each species.
    pub species: Vec<(String, f64)>,
    /// Habits that would explain the differences.
    pub habits: Vec<HabitOutput>,
    /// ICC(2,1) of all who read the same lines, and its interval.
    pub reliability: Option<(f64, f64, f64)>,
    /// The lines.
    pub lines: Vec<LinePairOutput>,
    /// Whether the second reader is ready, where a tolerance was given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub standing: Option<StandingOutput>,
    /// What should be said.
    pub findings: Vec<FindingOutput>,
}

/// Whether a reader is ready by the office's tolerance.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct StandingOutput {
    /// The tolerance, as a share of the line.
    pub tolerance: f64,
    /// Lines within it.
    pub within: usize,
    /// Lines that were compared.
    pub lines: usize,
    /// `ready`, `practise` or `too-few-lines-read`.
    pub ready: &'static str,
}

/// One reader over a season; differences are shares of the line.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SeasonOutput {
    /// The year.
    pub year: u16,
    /// The reader that the other is set beside.
    pub first: String,
    /// The reader it is about.
    pub second: String,
    /// Day, site, line, difference.
    pub points: Vec<(String, String, String, f64)>,
    /// Standard deviation from one line to the next; absent for too few lines.
    pub sd: Option<f64>,
    /// Where a rule is broken: the place of the point from 0, and the rule.
    pub broken: Vec<(usize, &'static str)>,
}

/// One habit.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct HabitOutput {
    /// `habit-closes-gaps`, `habit-opens-gaps`, `habit-wider`, `habit-narrower`, `habit-tape-off`, `habit-tape-stretched`,
    /// `habit-other-edge`, `habit-dead-as-live`, `habit-other-as-canopy`, `habit-leaves-out-small` or `habit-adds-small`.
    pub habit: &'static str,
    /// The length that goes with it, in nanometres.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub length_nm: Option<i64>,
    /// The share that goes with it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub share: Option<f64>,
    /// How many gaps or plants show it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub count: Option<usize>,
}

/// One line as both saw it.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LinePairOutput {
    /// The line.
    pub line: String,
    /// Difference of canopy cover.
    pub difference: Option<f64>,
    /// Patches that both have, as written under the rule: start and stop of the first reader's, then of the second's.
    pub both_nm: Vec<(i64, i64, i64, i64)>,
    /// Patches that only the first reader has.
    pub missed_nm: Vec<(i64, i64)>,
    /// Patches that only the second reader has.
    pub added_nm: Vec<(i64, i64)>,
}

/// All agreements as data.
pub fn output(
    input: &Input,
    agreements: &[Agreement],
    tolerance: Option<f64>,
    say: &dyn Fn(&Message) -> String,
) -> AgreeOutput {
    AgreeOutput {
        format: "tautline.agree",
        version: VERSION,
        files: input.files.clone(),
        protocols: protocols(input),
        agreements: agreements.iter().map(|one| agreement(one, tolerance, say)).collect(),
        seasons: seasons(agreements).iter().map(season).collect(),
        findings: findings(&input.findings, say),
    }
}

fn agreement(one: &Agreement, tolerance: Option<f64>, say: &dyn Fn(&Message) -> String) -> AgreementOutput {
    AgreementOutput {
        site: one.site.clone(),
        year: one.year,
        first: one.first.clone(),
        second: one.second.clone(),
        bias: one.limits.map(|limits| limits.bias),
        sd: one.limits.map(|limits| limits.sd),
        limits: one.limits.map(|limits| (limits.lower, limits.upper)),
        species: one.species.clone(),
        habits: one.habits.iter().map(habit).collect(),
        reliability: one.reliability.map(|icc| (icc.value, icc.interval.0, icc.interval.1)),
        lines: one.lines.iter().map(line).collect(),
        standing: tolerance.map(|tolerance| standing_output(one, tolerance)),
        findings: findings(&one.findings, say),
    }
}

fn standing_output(one: &Agreement, tolerance: f64) -> StandingOutput {
    let standing = standing(one, tolerance);
    StandingOutput {
        tolerance: standing.tolerance,
        within: standing.within,
        lines: standing.lines,
        ready: standing.ready.code(),
    }
}

fn season(one: &Season) -> SeasonOutput {
    let points = one
        .points
        .iter()
        .map(|point| (point.day.to_string(), point.site.clone(), point.line.clone(), point.difference));
    let broken = one.chart.iter().flat_map(|chart| &chart.broken);
    SeasonOutput {
        year: one.year,
        first: one.first.clone(),
        second: one.second.clone(),
        points: points.collect(),
        sd: one.chart.as_ref().map(|chart| chart.sd),
        broken: broken.map(|(at, rule)| (*at, rule.code())).collect(),
    }
}

fn habit(habit: &Habit) -> HabitOutput {
    let (length, share, count) = match *habit {
        Habit::ClosesGaps { closed, gaps, .. } => (Some(closed), None, Some(gaps)),
        Habit::OpensGaps { opened, gaps } => (Some(opened), None, Some(gaps)),
        Habit::Wider(way) | Habit::Narrower(way) | Habit::TapeOff(way) | Habit::OtherEdge(way) => {
            (Some(way), None, None)
        }
        Habit::DeadAsLive(share) | Habit::OtherAsCanopy(share) | Habit::TapeStretched(share) => {
            (None, Some(share), None)
        }
        Habit::LeavesOutSmall { up_to, plants } | Habit::AddsSmall { up_to, plants } => {
            (Some(up_to), None, Some(plants))
        }
    };
    HabitOutput { habit: habit.code(), length_nm: length.map(Length::nanometres), share, count }
}

fn line(pair: &LinePair) -> LinePairOutput {
    let ends = |one: &Stretch| (one.start().nanometres(), one.stop().nanometres());
    let patches = pair.patches.clone().unwrap_or_default();
    let both = patches.both.iter().map(|(a, b)| {
        let ((start, stop), (other_start, other_stop)) = (ends(a), ends(b));
        (start, stop, other_start, other_stop)
    });
    LinePairOutput {
        line: pair.first.line.clone(),
        difference: pair.difference,
        both_nm: both.collect(),
        missed_nm: patches.missed.iter().map(ends).collect(),
        added_nm: patches.added.iter().map(ends).collect(),
    }
}
