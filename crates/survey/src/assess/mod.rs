//! A site's assessment: which readings speak for it, what they come to, how sure, and the verdict.

mod canopies;
mod curve;
mod few;
pub(crate) mod figure;
mod judge;
mod kinds;
mod promised;
pub(crate) mod round;
mod subject;

pub use canopies::{asks_canopy_alone, of_canopies};
pub use curve::{CurveStep, curve};
pub use few::{Few, intercepts_met, is_caution};
pub use figure::{Attribute, Figure, Part, PartKind};
pub use judge::{Judgement, NoVerdict, Threshold, threshold};
pub use kinds::{Kind, kinds};
pub use promised::Promised;
pub use subject::{intercept, subjects};

use crate::compare::common_ground;
use crate::finding::Finding;
use crate::goal::{Goal, Subject};
use crate::input::Input;
use crate::limits;
use crate::line::{Choice, LineResult};
use crate::message::{Message, Value};
use crate::protocol::Assumption;
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;
use tautline_engine::confidence::Method;
use tautline_engine::effort::sequential::Design;

/// What the claim is about; the sampling unit follows from it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Claim {
    /// The whole site: lines are the units, or the plots they are bunched in.
    #[default]
    Site,
    /// Each plot by itself: its lines are the units.
    Plot,
}

/// Which figures are wanted beside the canopy.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum By {
    /// None.
    #[default]
    Nothing,
    /// Each species.
    Species,
    /// Each growth form.
    Form,
    /// Each group of the plant list.
    Group,
}

/// A goal and the site it is set for; for every site where none is named.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SiteGoal {
    /// The site.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub site: Option<String>,
    /// The goal.
    pub goal: Goal,
}

impl SiteGoal {
    /// Whether two ask the same of the same site, wherever their numbers come from.
    pub fn asks_the_same(&self, other: &Self) -> bool {
        self.site == other.site
            && self.goal.subject == other.goal.subject
            && self.goal.wanted == other.goal.wanted
            && self.goal.confidence_per_mille == other.goal.confidence_per_mille
    }
}

/// Everything that is asked of the readings.
#[derive(Clone, Debug)]
pub struct Question {
    /// Another rule than the recorded one.
    pub choice: Choice,
    /// Which figures.
    pub by: By,
    /// The goals.
    pub goals: Vec<SiteGoal>,
    /// Confidence in per mille.
    pub confidence_per_mille: u16,
    /// The interval method; the default for each kind of figure where none is asked for.
    pub method: Option<Method>,
    /// What the claim is about.
    pub claim: Claim,
    /// Take the part of a line that was read.
    pub use_partly_read: bool,
    /// Lines that shall not speak, by name.
    pub without: BTreeSet<String>,
    /// One year only.
    pub year: Option<u16>,
    /// Cover where shrubs are present, for lines on which nothing was found.
    pub cover_where_present: Option<f64>,
    /// The plan under which lines were read until they settled it.
    pub sequential: Option<Design>,
}

impl Default for Question {
    fn default() -> Self {
        Self {
            choice: Choice::default(),
            by: By::Nothing,
            goals: Vec::new(),
            confidence_per_mille: limits::DEFAULT_CONFIDENCE_PER_MILLE,
            method: None,
            claim: Claim::Site,
            use_partly_read: false,
            without: BTreeSet::new(),
            year: None,
            cover_where_present: None,
            sequential: None,
        }
    }
}

impl Question {
    /// The confidence as a share.
    pub fn confidence(&self) -> f64 {
        f64::from(self.confidence_per_mille) / 1000.0
    }

    /// The goals of a site: its own and those set for every site.
    pub fn goals_of(&self, site: &str) -> impl Iterator<Item = &SiteGoal> {
        self.goals.iter().filter(move |goal| goal.site.as_deref().is_none_or(|own| own == site))
    }
}

/// What the readings of one site in one year come to.
#[derive(Clone, Debug)]
pub struct Assessment {
    /// The site.
    pub site: String,
    /// The year, where the visits are dated.
    pub year: Option<u16>,
    /// The plot, where the claim is about one.
    pub plot: Option<String>,
    /// Confidence as a share.
    pub confidence: f64,
    /// The lines behind the figures.
    pub lines: Vec<LineResult>,
    /// What was taken one way because the protocol is silent.
    pub assumed: Vec<Assumption>,
    /// Everything that should be said: lines left out, unlike protocols, lines without a record.
    pub findings: Vec<Finding>,
    /// The figures: canopy, sum and dead first, then those asked for.
    pub figures: Vec<Figure>,
    /// One for each goal of the site.
    pub judgements: Vec<Judgement>,
    /// What was promised at which number, one for each trigger of the site.
    pub promises: Vec<Promised>,
}

impl Assessment {
    /// Share of a counted species in the summed cover of all counted species, from unrounded figures.
    pub fn composition(&self, figure: &Figure) -> Option<f64> {
        let Subject::Species(code) = &figure.subject else { return None };
        let counted = |line: &LineResult| line.species.iter().any(|one| one.counted && one.code == *code);
        let sum = self.figure(&Subject::Sum)?;
        let known = sum.high.is_none() && figure.high.is_none() && sum.estimate.value > 0.0;
        (known && figure.is_cover() && self.lines.iter().any(counted))
            .then(|| figure.estimate.value / sum.estimate.value)
    }

    /// The figure about a subject's cover.
    pub fn figure(&self, subject: &Subject) -> Option<&Figure> {
        self.figures.iter().find(|figure| figure.subject == *subject && figure.is_cover())
    }
}

/// Assesses every site and year of the input.
pub fn assess(input: &Input, question: &Question) -> Vec<Assessment> {
    assess_and_tell(input, question, |_, _| {})
}

/// The same, telling after each site and year how many are done, of how many.
pub fn assess_and_tell(
    input: &Input,
    question: &Question,
    mut tell: impl FnMut(usize, usize),
) -> Vec<Assessment> {
    let rounds = round::rounds(input, question.year);
    let mut assessments = Vec::with_capacity(rounds.len());
    for (done, round) in rounds.iter().enumerate() {
        match question.claim {
            Claim::Site => assessments.push(assess_round(input, question, round, None)),
            Claim::Plot => {
                let plots = round.plots(input);
                assessments.extend(plots.into_iter().map(|plot| assess_round(input, question, round, plot)));
            }
        }
        tell(done + 1, rounds.len());
    }
    assessments
}

fn assess_round(
    input: &Input,
    question: &Question,
    round: &round::Round,
    plot: Option<String>,
) -> Assessment {
    let mut findings = round.findings(input);
    let visits: Vec<usize> = match question.claim {
        Claim::Site => round.visits.clone(),
        Claim::Plot => {
            round.visits.iter().copied().filter(|&visit| round::plot_of(input, visit) == plot).collect()
        }
    };
    let ground = common_ground(input, &visits, &question.choice);
    findings.extend(ground.findings);
    let lines = if ground.apart {
        Vec::new()
    } else {
        usable_lines(input, question, &visits, &ground.choice, &mut findings)
    };
    let mut assessment = Assessment {
        site: round.site.clone(),
        year: round.year,
        plot,
        confidence: question.confidence(),
        assumed: ground.assumed,
        figures: Vec::new(),
        judgements: Vec::new(),
        promises: Vec::new(),
        findings,
        lines,
    };
    if assessment.lines.is_empty() {
        return assessment;
    }
    let goals: Vec<&Goal> = question.goals_of(&assessment.site).map(|goal| &goal.goal).collect();
    let promised = promised::triggers(input, &assessment.site, assessment.year);
    let mut asked = goals.clone();
    asked.extend(promised.filter_map(|trigger| trigger.at.as_ref()));
    for subject in subjects(&assessment.lines, question.by, &asked) {
        let figure = figure::cover_figure(input, question, &assessment.lines, subject);
        assessment.findings.extend(figure.findings.iter().cloned());
        assessment.figures.push(figure);
    }
    assessment.figures.extend(figure::height_figures(question, &assessment.lines, &asked));
    let (densities, findings) = figure::density_figures(input, question, &assessment.lines);
    assessment.figures.extend(densities);
    let cautions = few::cautions(question, &assessment, &goals);
    assessment.findings.extend(cautions);
    assessment.findings.extend(findings);
    dedupe(&mut assessment.findings);
    for goal in goals {
        let judgement = judge::judge(question, &assessment, goal);
        if question.sequential.is_some() && judgement.standing.is_none() {
            assessment.findings.push(Finding::have_a_look(Message::new("standing-none")));
        }
        assessment.judgements.push(judgement);
    }
    // a promise about a site is no promise about each of its plots
    if assessment.plot.is_none() {
        assessment.promises = promised::promised(input, question, &assessment);
    }
    assessment
}

/// That a line speaks for no site until what was said of it is settled.
fn left_out(input: &Input, visit: usize) -> Finding {
    let about = &input.visits[visit];
    let message = Message::new("line-left-out").with("site", about.site.as_str());
    Finding::must_settle(message.with("line", about.line.as_str()))
}

/// The lines that speak for a site, in order; what keeps the others from it goes to the findings.
pub(crate) fn usable_lines(
    input: &Input,
    question: &Question,
    visits: &[usize],
    choice: &Choice,
    findings: &mut Vec<Finding>,
) -> Vec<LineResult> {
    let mut lines = Vec::new();
    for &visit in visits {
        let about = &input.visits[visit];
        if question.without.contains(&about.line) {
            let message = Message::new("line-not-wanted").with("site", about.site.as_str());
            findings.push(Finding::have_a_look(message.with("line", about.line.as_str())));
            continue;
        }
        match crate::line::line_result(input, visit, choice) {
            Ok(line) if line.is_partly_read() && !question.use_partly_read => {
                findings.push(Finding::have_a_look(
                    Message::new("line-partly-read")
                        .with("site", line.site.as_str())
                        .with("line", line.line.as_str())
                        .with("to", Value::Length(line.read, line.length.notation()))
                        .with("length", Value::Length(line.length.length(), line.length.notation())),
                ));
            }
            Ok(mut line) => {
                findings.append(&mut line.findings);
                if line.unsettled {
                    findings.push(left_out(input, visit));
                } else {
                    lines.push(line);
                }
            }
            Err(_) if input.held.contains(&visit) => findings.push(left_out(input, visit)),
            Err(finding) => findings.push(finding),
        }
    }
    lines.sort_by(|a, b| natural_order(&a.line, &b.line));
    lines
}

/// Each finding once, in the order first said.
pub(crate) fn dedupe(findings: &mut Vec<Finding>) {
    let mut kept: Vec<Finding> = Vec::with_capacity(findings.len());
    for finding in findings.drain(..) {
        if !kept.contains(&finding) {
            kept.push(finding);
        }
    }
    *findings = kept;
}

/// Line 2 before line 10: runs of digits compare as numbers.
pub fn natural_order(a: &str, b: &str) -> core::cmp::Ordering {
    natural_key(a).cmp(&natural_key(b)).then_with(|| a.cmp(b))
}

/// What stands before the first digits, their number, and what stands behind them.
fn natural_key(text: &str) -> (&str, u64, &str) {
    let (letters, rest) = text.split_at(text.find(|c: char| c.is_ascii_digit()).unwrap_or(text.len()));
    let (digits, rest) = rest.split_at(rest.find(|c: char| !c.is_ascii_digit()).unwrap_or(rest.len()));
    (letters, digits.parse().unwrap_or(0), rest)
}

#[cfg(test)]
pub(crate) mod tests;
