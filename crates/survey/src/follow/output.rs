//! What `tautline change --json` prints.

use super::{ChangeFigure, LineChange, Noted, Readers, SiteChange, Taken, Visit};
use crate::finding::Finding;
use crate::goal::Subject;
use crate::input::{Input, SourceFile};
use crate::message::Message;
use crate::output::{EstimateOutput, FindingOutput, ProtocolOutput, VERSION, estimate, findings, protocols};
use serde::Serialize;
use tautline_engine::change::Answer;
use tautline_engine::change::align::Pairing;
use tautline_engine::change::signs::Counted;
use tautline_engine::confidence::NoBound;
use tautline_engine::stretch::Stretch;

/// What `tautline change --json` prints.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ChangeOutput {
    /// `tautline.change`
    pub format: &'static str,
    /// The version of the format.
    pub version: u32,
    /// The files that were read.
    pub files: Vec<SourceFile>,
    /// The protocols the lines were read under.
    pub protocols: Vec<ProtocolOutput>,
    /// One for each site that was read in both years.
    pub changes: Vec<SiteOutput>,
    /// What was found on reading.
    pub findings: Vec<FindingOutput>,
}

/// The change of one site.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SiteOutput {
    /// The site.
    pub site: String,
    /// The earlier year.
    pub from: u16,
    /// The later year.
    pub to: u16,
    /// Confidence of intervals and answers.
    pub confidence: f64,
    /// The chance with which a change should be seen.
    pub power: f64,
    /// The change that matters, as a share.
    pub matters: Option<f64>,
    /// The figures.
    pub figures: Vec<ChangeFigureOutput>,
    /// Lines read at both visits, where they are staked.
    pub lines: Vec<LineChangeOutput>,
    /// The change of canopy beyond that of the untreated neighbour.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub beyond: Option<BeyondOutput>,
    /// The change of canopy with unlike readers' difference taken off, where lines that both read measured it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub readers: Option<ReadersOutput>,
    /// What was noted beside the readings, at the earlier visit and at the later one.
    pub noted: Vec<NotedOutput>,
    /// What should be said.
    pub findings: Vec<FindingOutput>,
}

/// What was noted under one heading.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct NotedOutput {
    /// The heading.
    pub heading: String,
    /// What stood under it at each visit, in the order of time.
    pub visits: Vec<Vec<String>>,
}

impl NotedOutput {
    pub(crate) fn of(noted: &Noted) -> Self {
        Self { heading: noted.heading.clone(), visits: noted.visits.clone() }
    }
}

/// What unlike readers do to a change; shares of the line.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ReadersOutput {
    /// What the later readers see more.
    pub bias: f64,
    /// Lines that both read.
    pub lines: usize,
    /// The change less that.
    pub corrected: f64,
    /// Its interval.
    pub interval: Option<(f64, f64)>,
    /// A smaller change may be lines and readers alone.
    pub believed: Option<f64>,
    /// What of the log of calibrations it rests on; empty where the lines that both read are at hand.
    pub taken: Vec<TakenOutput>,
}

/// A calibration that was taken, and how old it was.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TakenOutput {
    /// Who was set beside another.
    pub reader: String,
    /// Beside whom.
    pub against: String,
    /// Its day.
    pub date: String,
    /// Days before the visit that it speaks for.
    pub days: u32,
    /// That visit: the `earlier` or the `later`.
    pub visit: &'static str,
}

impl TakenOutput {
    fn of(one: &Taken) -> Self {
        Self {
            reader: one.reader.clone(),
            against: one.against.clone(),
            date: one.date.to_string(),
            days: one.days,
            visit: match one.visit {
                Visit::Earlier => "earlier",
                Visit::Later => "later",
            },
        }
    }
}

/// The change of one subject; differences are shares of the line, later less earlier.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ChangeFigureOutput {
    /// What it is about.
    pub subject: Subject,
    /// The level at the earlier visit, from all lines read then.
    pub earlier: EstimateOutput,
    /// The level at the later visit, from all lines read then.
    pub later: EstimateOutput,
    /// The difference.
    pub change: EstimateOutput,
    /// Low and high end of the two-sided interval.
    pub interval: Option<(f64, f64)>,
    /// Chance of a difference as far from zero where nothing changed.
    pub p: Option<f64>,
    /// `change-rose`, `change-fell`, `change-not-shown` or `change-none-that-matters`.
    pub answer: Option<&'static str>,
    /// Why there is no answer.
    pub no_answer: Option<&'static str>,
    /// No change larger than this, at the confidence.
    pub hidden: Option<f64>,
    /// The smallest change these lines would have shown with the chance `power`.
    pub smallest_seen: Option<f64>,
    /// Lines at each visit that would show the change that matters.
    pub lines_to_see: Option<usize>,
    /// Times as many lines it would take if they weren't the same.
    pub pairing_worth: Option<f64>,
    /// The standard error if lines of one name, taken as new ones, were the same lines.
    pub se_if_same_lines: Option<f64>,
    /// `design-paired`, `design-paired-and-unpaired` or `design-unpaired`.
    pub design: &'static str,
    /// Units read at both visits.
    pub pairs: usize,
    /// Units read at the earlier visit only.
    pub only_earlier: usize,
    /// Units read at the later visit only.
    pub only_later: usize,
    /// The strata: name, share of the area, own change.
    pub strata: Vec<(String, f64, EstimateOutput)>,
    /// Checks by signs and ranks.
    pub checks: Option<ChecksOutput>,
}

/// Checks that ask for no bell curve.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ChecksOutput {
    /// Chance of a change as far from zero when signs are dealt out anew.
    pub signs_p: f64,
    /// Random ways that were tried; absent where all were counted.
    pub signs_draws: Option<usize>,
    /// Chance by Wilcoxon's signed ranks of the lines.
    pub signed_rank_p: Option<f64>,
    /// Hodges and Lehmann's median change of the lines.
    pub median: Option<f64>,
    /// Its interval.
    pub median_interval: Option<(f64, f64)>,
    /// The confidence that the interval really has.
    pub median_confidence: Option<f64>,
}

/// One line read at both visits.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LineChangeOutput {
    /// The line.
    pub line: String,
    /// Where it changed, where both readings have positions.
    pub tape: Option<TapeOutput>,
}

/// Where a line changed; stretches are start and stop in nanometres.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TapeOutput {
    /// The tape that both readings cover, in nanometres.
    pub read_nm: i64,
    /// Under canopy at the later visit alone.
    pub gained_nm: Vec<(i64, i64)>,
    /// Under canopy at the earlier visit alone.
    pub lost_nm: Vec<(i64, i64)>,
    /// Under canopy at both.
    pub kept_nm: Vec<(i64, i64)>,
    /// Gained less lost, in nanometres.
    pub net_nm: i64,
    /// How far the later reading lies beyond the earlier one.
    pub shift_nm: i64,
    /// Whether that is more than the plants' own coming and going would give.
    pub shift_shown: bool,
    /// How much longer the later tape reads, as a share.
    pub stretch: f64,
    /// Share of the earlier canopy found again.
    pub found_again: Option<f64>,
    /// `pairing-holds`, `pairing-doubtful` or `pairing-cant-tell`.
    pub pairing: &'static str,
    /// Chance of an overlap as large elsewhere along the tape.
    pub pairing_p: Option<f64>,
}

/// What a site did beyond its untreated neighbour.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BeyondOutput {
    /// The neighbour.
    pub untreated: String,
    /// The difference of the two changes.
    pub difference: EstimateOutput,
    /// Its interval.
    pub interval: Option<(f64, f64)>,
    /// `change-rose` (more than the neighbour), `change-fell` or `change-not-shown`.
    pub answer: Option<&'static str>,
}

/// All changes as data.
pub fn output(input: &Input, changes: &[SiteChange], say: &dyn Fn(&Message) -> String) -> ChangeOutput {
    ChangeOutput {
        format: "tautline.change",
        version: VERSION,
        files: input.files.clone(),
        protocols: protocols(input),
        changes: changes.iter().map(|change| site(change, say)).collect(),
        findings: findings(&input.findings, say),
    }
}

fn site(change: &SiteChange, say: &dyn Fn(&Message) -> String) -> SiteOutput {
    let found: &[Finding] = &change.findings;
    SiteOutput {
        site: change.site.clone(),
        from: change.from,
        to: change.to,
        confidence: change.confidence,
        power: change.power,
        matters: change.matters,
        figures: change.figures.iter().map(figure).collect(),
        lines: change.lines.iter().map(line).collect(),
        beyond: change.beyond.as_ref().map(|beyond| BeyondOutput {
            untreated: beyond.untreated.clone(),
            difference: estimate(&beyond.difference),
            interval: beyond.interval.ok().map(|both| (both.low, both.high)),
            answer: beyond.answer.ok().map(Answer::code),
        }),
        readers: match &change.readers {
            Some(Readers::Measured(measured)) => Some(ReadersOutput {
                bias: measured.bias.value,
                lines: measured.bias.lines,
                corrected: measured.corrected.value,
                interval: measured.interval.ok().map(|both| (both.low, both.high)),
                believed: measured.believed,
                taken: measured.taken.iter().map(TakenOutput::of).collect(),
            }),
            _ => None,
        },
        noted: change.noted.iter().map(NotedOutput::of).collect(),
        findings: findings(found, say),
    }
}

fn figure(figure: &ChangeFigure) -> ChangeFigureOutput {
    let (only_earlier, only_later) = figure.once();
    let strata = figure.parts.iter().filter(|part| !part.name.is_empty());
    ChangeFigureOutput {
        subject: figure.subject.clone(),
        earlier: estimate(&figure.earlier),
        later: estimate(&figure.later),
        change: estimate(&figure.change),
        interval: figure.interval.ok().map(|both| (both.low, both.high)),
        p: figure.p.ok(),
        answer: figure.answer.ok().map(Answer::code),
        no_answer: figure.answer.err().map(NoBound::code),
        hidden: figure.hidden.ok(),
        smallest_seen: figure.seen,
        lines_to_see: figure.lines_to_see,
        pairing_worth: figure.worth.or(figure.lost.and_then(|lost| lost.times)),
        se_if_same_lines: figure.lost.map(|lost| lost.se),
        design: figure.design().code(),
        pairs: figure.pairs(),
        only_earlier,
        only_later,
        strata: strata.map(|part| (part.name.clone(), part.weight, estimate(&part.change))).collect(),
        checks: figure.checks.map(|checks| {
            let interval = checks.median_interval;
            ChecksOutput {
                signs_p: checks.signs,
                signs_draws: match checks.counted {
                    Counted::All => None,
                    Counted::Draws(draws) => Some(draws),
                },
                signed_rank_p: checks.ranks.map(|ranks| ranks.two_sided),
                median: checks.median,
                median_interval: interval.map(|(low, high, _)| (low, high)),
                median_confidence: interval.map(|(_, _, confidence)| confidence),
            }
        }),
    }
}

fn line(line: &LineChange) -> LineChangeOutput {
    let places = |stretches: &[Stretch]| {
        stretches.iter().map(|one| (one.start().nanometres(), one.stop().nanometres())).collect()
    };
    LineChangeOutput {
        line: line.line.clone(),
        tape: line.tape.as_ref().map(|tape| TapeOutput {
            read_nm: tape.read.nanometres(),
            gained_nm: places(&tape.turnover.gained),
            lost_nm: places(&tape.turnover.lost),
            kept_nm: places(&tape.turnover.kept),
            net_nm: tape.turnover.net().nanometres(),
            shift_nm: tape.alignment.shift.nanometres(),
            shift_shown: tape.alignment.shift_shown,
            stretch: tape.alignment.stretch,
            found_again: tape.found_again,
            pairing: tape.alignment.pairing.code(),
            pairing_p: match tape.alignment.pairing {
                Pairing::Holds { p } | Pairing::Doubtful { p } => Some(p),
                Pairing::CantTell => None,
            },
        }),
    }
}
