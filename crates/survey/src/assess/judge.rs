//! The verdict on a goal: the bounds that decide, and how many more lines would settle it.

use super::figure::{Attribute, Figure, sample};
use super::{Assessment, Question};
use crate::goal::{Goal, Relation, Subject, Wanted};
use crate::limits;
use crate::measure::Measure;
use tautline_engine::confidence::bootstrap::{Group, Resampled};
use tautline_engine::confidence::{Bounds, Interval, Method, NoBound, Tail, ends, zeros};
use tautline_engine::effort::sequential::{Design, Standing};
use tautline_engine::effort::{MoreUnits, SoFar, more_units};
use tautline_engine::estimate::{Estimate, Line, SamplingError};
use tautline_engine::length::Unit;
use tautline_engine::verdict::{self, Verdict, decide};

/// The goal in the figure's own unit: a share, or metres.
pub type Threshold = verdict::Goal;

/// Why there is no verdict at all.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NoVerdict {
    /// Nobody recorded what the goal is about.
    NoFigure,
    /// The figure has no bound, with the reason.
    NoBound(NoBound),
}

/// What the readings say about one goal.
#[derive(Clone, Debug)]
pub struct Judgement {
    /// The goal.
    pub goal: Goal,
    /// The goal in the figure's unit.
    pub threshold: Threshold,
    /// How sure the verdict is to be, as a share: the goal's own confidence, else the question's.
    pub confidence: f64,
    /// The answer.
    pub verdict: Verdict,
    /// The one-sided bounds that decided, or why there are none. Where the figure is known only between two ends,
    /// the lower bound of the low end and the upper bound of the high end.
    pub bounds: Result<Bounds, NoVerdict>,
    /// The bounds come from a stated cover where shrubs are present, since nothing was found.
    pub from_zeros: bool,
    /// How many more lines (or plots) would settle it; asked only while it is not yet shown.
    pub more: Option<MoreUnits>,
    /// What of the subject it is about.
    pub attribute: Attribute,
    /// The figure it is about, by its place in the assessment.
    pub figure: Option<usize>,
    /// Where the visit stands under a sequential plan, where it was read under one that can judge it.
    pub standing: Option<Standing>,
}

/// The two ends of a figure, with `tail` beyond each.
fn tails(
    estimate: &Estimate,
    groups: &[(f64, Vec<Line>)],
    method: Method,
    tail: Tail,
) -> Result<(f64, f64), NoBound> {
    if method != Method::Bca {
        return ends(estimate, method, tail);
    }
    // what leaves Student's t without a bound leaves a bootstrap without one too
    ends(estimate, Method::StudentT, tail)?;
    if groups.is_empty() {
        return Err(NoBound::NeedsTheLines);
    }
    let groups: Vec<Group> =
        groups.iter().map(|(weight, units)| Group { weight: *weight, units: units.clone() }).collect();
    Ok(Resampled::of(&groups, limits::RESAMPLES)?.ends(tail))
}

/// The two-sided interval of a figure.
pub(super) fn interval(
    estimate: &Estimate,
    groups: &[(f64, Vec<Line>)],
    method: Method,
    confidence: f64,
) -> Result<Interval, NoBound> {
    tails(estimate, groups, method, Tail::of_interval(confidence)).map(|(low, high)| Interval { low, high })
}

pub(super) fn judge(question: &Question, assessment: &Assessment, goal: &Goal) -> Judgement {
    let attribute = Attribute::of(&goal.wanted);
    let threshold = threshold(&goal.wanted);
    let figure = assessment
        .figures
        .iter()
        .position(|figure| figure.attribute == attribute && same_subject(&figure.subject, &goal.subject));
    let confidence = goal.confidence_per_mille.map_or(question.confidence(), |own| f64::from(own) / 1000.0);
    let mut judgement = Judgement {
        goal: goal.clone(),
        threshold,
        confidence,
        verdict: Verdict::NotYetShown,
        bounds: Err(NoVerdict::NoFigure),
        from_zeros: false,
        more: None,
        attribute,
        figure,
        standing: None,
    };
    let Some(figure) = figure.map(|at| &assessment.figures[at]) else { return judgement };
    judgement.standing = question.sequential.and_then(|design| standing(design, figure, threshold));
    let [low, high] = end_bounds(confidence, assessment, figure);
    judgement.bounds = match (low, high) {
        (Ok(low), Ok(high)) => {
            judgement.verdict = decide(threshold, low).and(decide(threshold, high));
            Ok(Bounds { lower: low.lower.min(high.lower), upper: low.upper.max(high.upper) })
        }
        (Err(reason), _) | (_, Err(reason)) => Err(NoVerdict::NoBound(reason)),
    };
    if let (Err(NoVerdict::NoBound(NoBound::NothingFound)), Some(where_present)) =
        (&judgement.bounds, question.cover_where_present)
    {
        let upper = zeros::cover_at_most(figure.estimate.units, confidence, where_present);
        let bounds = Bounds { lower: 0.0, upper };
        judgement.from_zeros = true;
        judgement.verdict = decide(threshold, bounds);
        judgement.bounds = Ok(bounds);
    }
    if judgement.verdict == Verdict::NotYetShown && figure.high.is_none() {
        judgement.more = settle(confidence, figure, threshold);
    }
    judgement
}

/// One-sided bounds of the low end and of the high end of a figure.
fn end_bounds(confidence: f64, assessment: &Assessment, figure: &Figure) -> [Result<Bounds, NoBound>; 2] {
    let tail = Tail::of_bound(confidence);
    let of = |estimate: &Estimate, values: &[Line]| {
        let groups = sample(&assessment.lines, values, &figure.parts);
        tails(estimate, &groups, figure.method, tail).map(|(lower, upper)| Bounds { lower, upper })
    };
    let low_values: Vec<Line> = figure.values.iter().map(|(_, line)| *line).collect();
    let low = of(&figure.estimate, &low_values);
    let high = figure.high.as_ref().map_or(low, |high| {
        let values: Vec<Line> = assessment
            .lines
            .iter()
            .map(|line| {
                let high = super::intercept(line, &figure.subject).high;
                Line::new(high.in_unit(Unit::Millimetre), line.read.in_unit(Unit::Millimetre))
            })
            .collect();
        of(high, &values)
    });
    [low, high]
}

/// Where the lines, in the order of their names, stand under a plan made for lines of one stratum.
fn standing(design: Design, figure: &Figure, threshold: Threshold) -> Option<Standing> {
    let alone = figure.is_cover() && figure.high.is_none() && figure.parts.len() <= 1;
    let by_lines = alone && !figure.estimate.method.counts_plots() && figure.method != Method::Bca;
    let lines: Vec<Line> = figure.values.iter().map(|(_, line)| *line).collect();
    by_lines.then(|| design.standing(&lines, threshold, figure.method))
}

fn settle(confidence: f64, figure: &Figure, threshold: Threshold) -> Option<MoreUnits> {
    let SamplingError::Known { se, df } = figure.estimate.error else { return None };
    if se <= 0.0 {
        return None;
    }
    let so_far =
        SoFar { value: figure.estimate.value, se, df, units: figure.estimate.units, method: figure.method };
    let chance = f64::from(limits::CHANCE_TO_SETTLE_PER_MILLE) / 1000.0;
    Some(more_units(&so_far, threshold, confidence, chance, limits::MOST_PRACTICAL_LINES))
}

/// A goal's values as shares or metres.
pub fn threshold(wanted: &Wanted) -> Threshold {
    let metres = |measure: &Measure| measure.length().in_unit(Unit::Metre);
    match wanted {
        Wanted::Cover(Relation::AtLeast(value)) => Threshold::AtLeast(value.share()),
        Wanted::Cover(Relation::AtMost(value)) => Threshold::AtMost(value.share()),
        Wanted::Cover(Relation::Between(low, high)) => Threshold::Between(low.share(), high.share()),
        Wanted::Height(Relation::AtLeast(value)) => Threshold::AtLeast(metres(value)),
        Wanted::Height(Relation::AtMost(value)) => Threshold::AtMost(metres(value)),
        Wanted::Height(Relation::Between(low, high)) => Threshold::Between(metres(low), metres(high)),
    }
}

fn same_subject(a: &Subject, b: &Subject) -> bool {
    match (a, b) {
        (Subject::Species(a), Subject::Species(b)) | (Subject::Group(a), Subject::Group(b)) => {
            a.eq_ignore_ascii_case(b)
        }
        _ => a == b,
    }
}
