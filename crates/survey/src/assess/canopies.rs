//! A site of which each line's canopy is known and nothing else is asked.

use super::figure::{Attribute, Figure, Part, PartKind, interval_method};
use super::{Assessment, By, Claim, Question, judge};
use crate::goal::{Subject, Wanted};
use tautline_engine::confidence::NoBound;
use tautline_engine::estimate::{Line, of_lines};

/// Whether a question asks for nothing but canopy cover of whole sites, so that [`of_canopies`] answers it.
pub fn asks_canopy_alone(question: &Question) -> bool {
    question.claim == Claim::Site
        && question.by == By::Nothing
        && question.choice.rule.is_none()
        && question.choice.dead_counts.is_none()
        && question.without.is_empty()
        && !question.choice.on_the_level
        && question
            .goals
            .iter()
            .all(|goal| goal.goal.subject == Subject::Canopy && matches!(goal.goal.wanted, Wanted::Cover(_)))
}

/// The assessment of lines that were laid anywhere on a site: what [`assess`](super::assess()) says of canopy, from
/// the lines' canopies alone, in the order of the lines. `None` without a line.
pub fn of_canopies(
    site: &str,
    year: Option<u16>,
    lines: Vec<Line>,
    question: &Question,
) -> Option<Assessment> {
    let estimate = of_lines(&lines, None).ok()?;
    let method = interval_method(question, &Subject::Canopy);
    let part = Part {
        kind: PartKind::Whole,
        name: String::new(),
        weight: 1.0,
        estimate: estimate.clone(),
        lines: (0..lines.len()).collect(),
        effective: None,
    };
    let mut figure = Figure {
        subject: Subject::Canopy,
        attribute: Attribute::Cover,
        interval: Err(NoBound::NeedsTheLines),
        estimate,
        high: None,
        parts: vec![part],
        method,
        findings: Vec::new(),
        values: Vec::new(),
    };
    let groups = super::figure::sample(&[], &lines, &figure.parts);
    figure.interval = judge::interval(&figure.estimate, &groups, method, question.confidence());
    figure.values = lines.into_iter().enumerate().collect();
    let mut assessment = Assessment {
        site: site.to_owned(),
        year,
        plot: None,
        confidence: question.confidence(),
        lines: Vec::new(),
        assumed: Vec::new(),
        findings: Vec::new(),
        figures: vec![figure],
        judgements: Vec::new(),
        promises: Vec::new(),
    };
    for goal in question.goals_of(site) {
        let judgement = judge::judge(question, &assessment, &goal.goal);
        assessment.judgements.push(judgement);
    }
    Some(assessment)
}
