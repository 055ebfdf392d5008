//! One figure of a site: its estimate from the lines, in strata or plots where they were laid so, and how sure it is.

use super::{Claim, Question, intercept, subject};
use crate::finding::Finding;
use crate::goal::{Goal, Subject, Wanted};
use crate::input::Input;
use crate::line::{Bounds, LineResult, SpeciesResult};
use crate::message::Message;
use tautline_engine::confidence::{Interval, Method, NoBound};
use tautline_engine::estimate::{
    EffectiveLines, Estimate, Line, Stratum, effective_lines, mean_of, of_lines, plots, strata,
};
use tautline_engine::length::{Length, Unit};

/// What a part of an estimate is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PartKind {
    /// All lines of the site together.
    Whole,
    /// One stratum.
    Stratum,
}

/// The estimate of one stratum, or of the whole where there are none.
#[derive(Clone, Debug)]
pub struct Part {
    /// What it is.
    pub kind: PartKind,
    /// The stratum's name.
    pub name: String,
    /// Its share of the site's area.
    pub weight: f64,
    /// Its own estimate.
    pub estimate: Estimate,
    /// Its lines, by their place in the assessment.
    pub lines: Vec<usize>,
    /// What lines bunched in plots are worth.
    pub effective: Option<EffectiveLines>,
}

/// What of a subject a figure is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Attribute {
    /// Its cover, as a share.
    Cover,
    /// Its mean height in metres.
    Height,
    /// Its plants per square metre.
    Density,
}

impl Attribute {
    /// What a goal asks about.
    pub const fn of(wanted: &Wanted) -> Self {
        match wanted {
            Wanted::Cover(_) => Self::Cover,
            Wanted::Height(_) => Self::Height,
        }
    }
}

impl Attribute {
    /// A stable key for data.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Cover => "cover",
            Self::Height => "height",
            Self::Density => "density",
        }
    }
}

/// One figure of a site.
#[derive(Clone, Debug)]
pub struct Figure {
    /// What it is about.
    pub subject: Subject,
    /// What of it.
    pub attribute: Attribute,
    /// The estimate; where the lines are known only between bounds, from their low ends.
    pub estimate: Estimate,
    /// The estimate from the high ends, where they differ.
    pub high: Option<Estimate>,
    /// The parts it was put together from.
    pub parts: Vec<Part>,
    /// The interval method.
    pub method: Method,
    /// The two-sided interval at the question's confidence, or why there is none.
    pub interval: Result<Interval, NoBound>,
    /// What should be said about it.
    pub findings: Vec<Finding>,
    /// The values that went in, line by line: intercepted length in millimetres, height in metres over 1, plants per
    /// metre of width over metres of line. A line without the value (a height) is absent.
    pub values: Vec<(usize, Line)>,
}

impl Figure {
    /// Whether it is a cover.
    pub fn is_cover(&self) -> bool {
        self.attribute == Attribute::Cover
    }

    /// Estimate from the low ends and from the high ends; twice the same where all is known.
    pub fn ends(&self) -> [&Estimate; 2] {
        [&self.estimate, self.high.as_ref().unwrap_or(&self.estimate)]
    }
}

/// Lines of a subject as the estimators take them, in millimetres.
fn engine_lines(lines: &[LineResult], subject: &Subject, end: impl Fn(Bounds) -> Length) -> Vec<Line> {
    lines
        .iter()
        .map(|line| {
            let intercepted = end(intercept(line, subject));
            Line::new(intercepted.in_unit(Unit::Millimetre), line.read.in_unit(Unit::Millimetre))
        })
        .collect()
}

pub(super) fn cover_figure(
    input: &Input,
    question: &Question,
    lines: &[LineResult],
    subject: Subject,
) -> Figure {
    let low = engine_lines(lines, &subject, |bounds| bounds.low);
    let high = engine_lines(lines, &subject, |bounds| bounds.high);
    let (low_estimate, parts, findings) = estimate(input, question.claim, lines, &low);
    let high_estimate = (low != high).then(|| estimate(input, question.claim, lines, &high).0);
    let method = interval_method(question, &subject);
    let groups = sample(lines, &low, &parts);
    let low_interval = super::judge::interval(&low_estimate, &groups, method, question.confidence());
    let interval = match &high_estimate {
        None => low_interval,
        Some(estimate) => {
            let groups = sample(lines, &high, &parts);
            around(low_interval, super::judge::interval(estimate, &groups, method, question.confidence()))
        }
    };
    Figure {
        subject,
        attribute: Attribute::Cover,
        estimate: low_estimate,
        high: high_estimate,
        parts,
        method,
        interval,
        findings,
        values: low.into_iter().enumerate().collect(),
    }
}

/// The interval method of a subject's cover: the one asked for, else the default, as far as it fits the subject.
pub(super) fn interval_method(question: &Question, subject: &Subject) -> Method {
    let method = question.method.unwrap_or(Method::LogitEffective);
    if subject.is_bounded() { method } else { method.without_a_top() }
}

/// The interval of a figure known only between two ends: from the low end's to the high end's.
fn around(low: Result<Interval, NoBound>, high: Result<Interval, NoBound>) -> Result<Interval, NoBound> {
    match (low, high) {
        (Ok(low), Ok(high)) => Ok(Interval { low: low.low.min(high.low), high: low.high.max(high.high) }),
        // nothing at the low end: the figure may be zero
        (Err(NoBound::NothingFound), Ok(high)) => Ok(Interval { low: 0.0, ..high }),
        (Err(reason), _) | (_, Err(reason)) => Err(reason),
    }
}

/// The method for a figure that can't fall below zero and may pass any bound: log-t, or Student's t if asked for.
fn without_a_top(question: &Question) -> Method {
    if question.method == Some(Method::StudentT) { Method::StudentT } else { Method::LogT }
}

/// Mean of line means of the heights: of the species or growth forms that are asked for, and of a goal's.
pub(super) fn height_figures(question: &Question, lines: &[LineResult], goals: &[&Goal]) -> Vec<Figure> {
    let mut asked = subject::by_plants(lines, question.by);
    for goal in goals.iter().filter(|goal| matches!(goal.wanted, Wanted::Height(_))) {
        if !asked.contains(&goal.subject) {
            asked.push(goal.subject.clone());
        }
    }
    let method = without_a_top(question);
    asked
        .into_iter()
        .filter_map(|subject| {
            let values: Vec<(usize, Line)> = lines
                .iter()
                .enumerate()
                .filter_map(|(at, line)| line_height(line, &subject).map(|mean| (at, Line::new(mean, 1.0))))
                .collect();
            let means: Vec<f64> = values.iter().map(|(_, line)| line.intercept).collect();
            let estimate = mean_of(&means, None).ok()?;
            let interval = super::judge::interval(&estimate, &[], method, question.confidence());
            Some(Figure {
                subject,
                attribute: Attribute::Height,
                estimate,
                high: None,
                parts: Vec::new(),
                method,
                interval,
                findings: Vec::new(),
                values,
            })
        })
        .collect()
}

/// Plants per area of the species or growth forms that are asked for: Σ 1/W over the length of all lines.
///
/// Worked out where the width of every live plant was read on every line; where some were and some weren't, a finding
/// says which lines lack them.
pub(super) fn density_figures(
    input: &Input,
    question: &Question,
    lines: &[LineResult],
) -> (Vec<Figure>, Vec<Finding>) {
    let (mut figures, mut findings) = (Vec::new(), Vec::new());
    for subject in subject::by_plants(lines, question.by) {
        let densities: Vec<Option<f64>> = lines.iter().map(|line| line_density(line, &subject)).collect();
        if !densities.iter().flatten().any(|&plants| plants > 0.0) {
            continue;
        }
        let without = lines.iter().zip(&densities).filter(|(_, density)| density.is_none());
        let without: Vec<String> = without.map(|(line, _)| line.line.clone()).collect();
        if !without.is_empty() {
            let message = Message::new("widths-missing")
                .with("site", lines[0].site.as_str())
                .with("what", crate::explain::plants_words(&subject))
                .with("lines", without);
            findings.push(Finding::have_a_look(message));
            continue;
        }
        let values: Vec<Line> = lines
            .iter()
            .zip(densities.into_iter().flatten())
            .map(|(line, density)| {
                let metres = line.ground().in_unit(Unit::Metre);
                Line::new(density * metres, metres)
            })
            .collect();
        let (estimate, parts, _) = estimate(input, question.claim, lines, &values);
        let method = without_a_top(question);
        let groups = sample(lines, &values, &parts);
        let interval = super::judge::interval(&estimate, &groups, method, question.confidence());
        figures.push(Figure {
            subject,
            attribute: Attribute::Density,
            estimate,
            high: None,
            parts,
            method,
            interval,
            findings: Vec::new(),
            values: values.into_iter().enumerate().collect(),
        });
    }
    (figures, findings)
}

/// The species of a line that belong to a species or growth form.
fn members<'a>(line: &'a LineResult, subject: &'a Subject) -> impl Iterator<Item = &'a SpeciesResult> {
    line.species.iter().filter(move |species| match subject {
        Subject::Species(code) => species.code.eq_ignore_ascii_case(code),
        Subject::Form(form) => species.form == Some(*form),
        _ => false,
    })
}

/// Plants per square metre on a line, zero where none were met; none where a live plant's width is missing.
fn line_density(line: &LineResult, subject: &Subject) -> Option<f64> {
    members(line, subject)
        .filter(|species| species.live.high > Length::ZERO)
        .map(|species| species.density)
        .sum()
}

/// Mean height on a line, each height counted once.
fn line_height(line: &LineResult, subject: &Subject) -> Option<f64> {
    let heights = members(line, subject).filter_map(|species| species.height);
    #[expect(clippy::cast_precision_loss, reason = "heights on one line are few")]
    let (sum, count) =
        heights.fold((0.0, 0.0), |(sum, count), h| (sum + h.mean_m * h.count as f64, count + h.count as f64));
    (count > 0.0).then(|| sum / count)
}

/// The summed live cover of some species, estimated as the site's figures are, from the low ends.
pub(super) fn summed(
    input: &Input,
    claim: Claim,
    lines: &[LineResult],
    wanted: impl Fn(&SpeciesResult) -> bool,
) -> f64 {
    let values: Vec<Line> = lines
        .iter()
        .map(|line| {
            let own: Length = line.species.iter().filter(|one| wanted(one)).map(|one| one.live.low).sum();
            Line::new(own.in_unit(Unit::Millimetre), line.read.in_unit(Unit::Millimetre))
        })
        .collect();
    estimate(input, claim, lines, &values).0.value
}

/// The estimate from lines laid anywhere, in strata of known area, or in plots; there must be a line.
pub(crate) fn estimate(
    input: &Input,
    claim: Claim,
    lines: &[LineResult],
    values: &[Line],
) -> (Estimate, Vec<Part>, Vec<Finding>) {
    let mut findings = Vec::new();
    let names = stratum_names(lines);
    let site = &lines[0].site;
    let area = |name: &String| {
        let own = input.strata.iter().filter(|s| s.name == *name && (s.site == *site || s.site.is_empty()));
        own.map(|stratum| stratum.area).find(|&area| area > 0)
    };
    let areas: Option<Vec<u64>> = names.iter().map(area).collect();
    let stratified = claim == Claim::Site && names.len() > 1;
    if stratified && areas.is_none() {
        let without: Vec<String> = names.iter().filter(|name| area(name).is_none()).cloned().collect();
        findings.push(Finding::have_a_look(
            Message::new("strata-without-area").with("site", site.as_str()).with("strata", without),
        ));
    }
    let unread: Vec<String> = input
        .strata
        .iter()
        .filter(|stratum| stratum.site == *site && !names.contains(&stratum.name))
        .map(|stratum| stratum.name.clone())
        .collect();
    if claim == Claim::Site && !unread.is_empty() {
        findings.push(Finding::have_a_look(
            Message::new("stratum-not-read").with("site", site.as_str()).with("strata", unread),
        ));
    }
    let everything: Vec<usize> = (0..lines.len()).collect();
    let Some(areas) = areas.filter(|_| stratified) else {
        let (estimate, effective) = in_plots(claim, lines, values, &everything);
        let part = Part {
            kind: PartKind::Whole,
            name: String::new(),
            weight: 1.0,
            estimate: estimate.clone(),
            lines: everything,
            effective,
        };
        return (estimate, vec![part], findings);
    };
    let whole: u64 = areas.iter().sum();
    #[expect(clippy::cast_precision_loss, reason = "areas stay below 2^53 square millimetres")]
    let share = |area: u64| area as f64 / whole as f64;
    let parts: Vec<Part> = names
        .into_iter()
        .zip(areas)
        .map(|(name, area)| {
            let own: Vec<usize> =
                everything.iter().copied().filter(|&at| lines[at].stratum.as_ref() == Some(&name)).collect();
            let (estimate, effective) = in_plots(claim, lines, values, &own);
            Part { kind: PartKind::Stratum, name, weight: share(area), estimate, lines: own, effective }
        })
        .collect();
    let weighted: Vec<Stratum> =
        parts.iter().map(|part| Stratum { weight: part.weight, estimate: part.estimate.clone() }).collect();
    let estimate = strata(&weighted).expect("there are strata and their areas are above zero");
    (estimate, parts, findings)
}

/// The strata that lines name, sorted; none unless every line names one.
fn stratum_names(lines: &[LineResult]) -> Vec<String> {
    let mut names: Vec<String> = lines.iter().filter_map(|line| line.stratum.clone()).collect();
    if names.len() < lines.len() {
        return Vec::new();
    }
    names.sort_unstable();
    names.dedup();
    names
}

/// The plots of some lines, each with its lines; a line without a plot is a plot of its own.
fn plots_of(lines: &[LineResult], own: &[usize]) -> Vec<Vec<usize>> {
    let mut names: Vec<&String> = own.iter().filter_map(|&at| lines[at].plot.as_ref()).collect();
    names.sort_unstable();
    names.dedup();
    let in_plots = names.into_iter().map(|name| {
        own.iter().copied().filter(|&at| lines[at].plot.as_ref() == Some(name)).collect::<Vec<_>>()
    });
    let alone = own.iter().filter(|&&at| lines[at].plot.is_none()).map(|&at| vec![at]);
    in_plots.chain(alone).collect()
}

fn in_plots(
    claim: Claim,
    lines: &[LineResult],
    values: &[Line],
    own: &[usize],
) -> (Estimate, Option<EffectiveLines>) {
    const SOUND: &str = "lines have a length above zero and an intercept of zero or more, and there is one";
    let of = |at: &[usize]| -> Vec<Line> { at.iter().map(|&at| values[at]).collect() };
    let bunched = plots_of(lines, own);
    if claim == Claim::Site && bunched.len() < own.len() {
        let grouped: Vec<Vec<Line>> = bunched.iter().map(|plot| of(plot)).collect();
        let effective = effective_lines(&grouped).ok().flatten();
        return (plots(&grouped, None).expect(SOUND), effective);
    }
    (of_lines(&of(own), None).expect(SOUND), None)
}

/// The sampling units of each part with its weight, as a bootstrap resamples them: lines, or plots as one long line.
pub(super) fn sample(lines: &[LineResult], values: &[Line], parts: &[Part]) -> Vec<(f64, Vec<Line>)> {
    parts
        .iter()
        .map(|part| {
            let counts_plots = part.estimate.method.counts_plots();
            let units = if counts_plots {
                plots_of(lines, &part.lines)
                    .iter()
                    .map(|plot| {
                        plot.iter().fold(Line::new(0.0, 0.0), |sum, &at| {
                            Line::new(sum.intercept + values[at].intercept, sum.length + values[at].length)
                        })
                    })
                    .collect()
            } else {
                part.lines.iter().map(|&at| values[at]).collect()
            };
            (part.weight, units)
        })
        .collect()
}
