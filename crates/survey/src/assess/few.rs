//! Few lines, few intercepts or none: how often such an interval is right, as measured, and what nothing found bounds.

use super::{Assessment, Figure, Question};
use crate::finding::Finding;
use crate::goal::{Goal, Subject};
use crate::line::LineResult;
use crate::message::{Message, Value};
use tautline_engine::confidence::measured::{Measured, coverage_where_few};
use tautline_engine::confidence::{Method, NoBound, zeros};

/// What a figure stands on where that is little, and what was measured for the like.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Few {
    /// Lines (or plots), less one for every stratum after the first.
    pub units: usize,
    /// Intercepts on them.
    pub intercepts: usize,
    /// How often a 90 % interval held the truth in simulated surveys with as few.
    pub measured: Measured,
}

impl Figure {
    /// Whether the figure's interval stands on few lines or intercepts; only for the method that was measured.
    ///
    /// `intercepts`: how many the lines meet, as [`intercepts_met`] counts them.
    pub fn few(&self, intercepts: Option<usize>) -> Option<Few> {
        let is_measured = self.is_cover() && self.method == Method::LogitEffective && self.interval.is_ok();
        let intercepts = intercepts.filter(|_| is_measured)?;
        let units = self.estimate.units.saturating_sub(self.parts.len().saturating_sub(1));
        let measured = coverage_where_few(units, intercepts)?;
        Some(Few { units, intercepts, measured })
    }
}

/// How many intercepts of a subject lines meet; nothing where that can't be told of one of them.
pub fn intercepts_met(lines: &[LineResult], subject: &Subject) -> Option<usize> {
    lines.iter().map(|line| intercepts_of(line, subject)).sum()
}

fn intercepts_of(line: &LineResult, subject: &Subject) -> Option<usize> {
    let written = |of: &dyn Fn(&crate::line::SpeciesResult) -> bool| {
        line.species.iter().filter(|one| of(one)).map(|one| one.intercepts.len()).sum()
    };
    match subject {
        Subject::Canopy => {
            Some(line.cover.as_ref().map_or_else(|| written(&|one| one.counted), |cover| cover.canopy.len()))
        }
        Subject::Dead => line.cover.as_ref().map(|cover| cover.dead.len()),
        Subject::Species(code) => Some(written(&|one| one.code.eq_ignore_ascii_case(code))),
        Subject::Form(form) => Some(written(&|one| one.form == Some(*form))),
        Subject::Sum | Subject::Group(_) => None,
    }
}

/// What should be said beside the canopy, and beside what a goal is about, where little or nothing was found.
pub(super) fn cautions(question: &Question, assessment: &Assessment, goals: &[&Goal]) -> Vec<Finding> {
    let with_goal = |figure: &Figure| goals.iter().any(|goal| goal.subject == figure.subject);
    let mut said = Vec::new();
    for figure in assessment.figures.iter().filter(|figure| figure.is_cover()) {
        let canopy = figure.subject == Subject::Canopy;
        if canopy || with_goal(figure) {
            said.extend(few_words(assessment, figure));
        }
        // with a goal the verdict says it
        if canopy && !with_goal(figure) && figure.interval == Err(NoBound::NothingFound) {
            said.push(Finding::have_a_look(nothing_words(question, assessment, figure)));
        }
    }
    said
}

/// Whether a finding is a caution about few lines, few intercepts or none.
pub fn is_caution(finding: &Finding) -> bool {
    matches!(
        finding.message.code,
        "few-lines-or-intercepts" | "nothing-found-bounds" | "nothing-found-and-stated"
    )
}

fn few_words(assessment: &Assessment, figure: &Figure) -> Option<Finding> {
    let few = figure.few(intercepts_met(&assessment.lines, &figure.subject))?;
    let message = Message::new("few-lines-or-intercepts")
        .with("site", assessment.site.as_str())
        .with("what", crate::explain::figure_words(&figure.subject, figure.attribute))
        .with("lines", few.units)
        .with("intercepts", few.intercepts)
        .with("lowest", Value::Number(100.0 * few.measured.lowest, 0))
        .with("highest", Value::Number(100.0 * few.measured.highest, 0));
    Some(Finding::have_a_look(message))
}

/// What lines without anything bound: the share of lines that meet any, and cover with a stated cover on those.
fn nothing_words(question: &Question, assessment: &Assessment, figure: &Figure) -> Message {
    let (lines, confidence) = (figure.estimate.units, question.confidence());
    let share = zeros::share_of_lines_at_most(lines, confidence);
    let stated = question.cover_where_present;
    let code = if stated.is_some() { "nothing-found-and-stated" } else { "nothing-found-bounds" };
    let message = Message::new(code)
        .with("site", assessment.site.as_str())
        .with("lines", lines)
        .with("confidence", crate::explain::confidence_value(confidence))
        .with("share", Value::Share(share, 1));
    match stated {
        Some(cover) => {
            let upper = zeros::cover_at_most(lines, confidence, cover);
            message.with("upper", Value::Share(upper, 1)).with("stated", Value::Share(cover, 1))
        }
        None => message,
    }
}

#[cfg(test)]
mod tests {
    use super::super::tests::site;
    use super::*;
    use crate::assess::assess;

    fn codes(lines: &[(&str, &str, u32)], question: &Question) -> Vec<&'static str> {
        let assessment = assess(&site(lines), question).remove(0);
        assessment.findings.iter().map(|finding| finding.message.code).collect()
    }

    #[test]
    fn few_intercepts_are_said_with_what_was_measured() {
        let lines: Vec<(&str, &str, u32)> = (0..9).map(|at| ("10", "", 100 + 10 * at)).collect();
        let assessment = assess(&site(&lines), &Question::default()).remove(0);
        let few = assessment.figures[0].few(intercepts_met(&assessment.lines, &Subject::Canopy)).unwrap();
        assert_eq!((few.units, few.intercepts), (9, 9));
        assert_eq!(Some(few.measured), coverage_where_few(9, 9));
        assert_eq!(codes(&lines, &Question::default()), ["few-lines-or-intercepts"]);
        // another method was not measured so
        let student = Question { method: Some(Method::StudentT), ..Question::default() };
        assert!(codes(&lines, &student).is_empty());
    }

    #[test]
    fn strata_cost_a_line_each() {
        let lines: Vec<(&str, &str, u32)> =
            (0..9).map(|at| ("10", if at < 5 { "bench" } else { "swale" }, 100 + 10 * at)).collect();
        let mut input = site(&lines);
        for name in ["bench", "swale"] {
            let site = "Invented".to_owned();
            input.strata.push(crate::plan::Stratum { site, name: name.to_owned(), area: 10 });
        }
        let assessment = assess(&input, &Question::default()).remove(0);
        assert_eq!(
            assessment.figures[0].few(intercepts_met(&assessment.lines, &Subject::Canopy)).unwrap().units,
            8
        );
    }

    /// By hand: three lines without any, 1 − 0.1^(1/3) = 53.6 % of lines; with 10 % stated, 5.4 % of the ground.
    #[test]
    fn nothing_found_bounds_the_share_of_lines_and_cover_only_as_stated() {
        let bare = [("10", "", 0), ("10", "", 0), ("10", "", 0)];
        assert_eq!(codes(&bare, &Question::default()), ["nothing-found-bounds"]);
        let stated = Question { cover_where_present: Some(0.1), ..Question::default() };
        let assessment = assess(&site(&bare), &stated).remove(0);
        let message = &assessment.findings[0].message;
        assert_eq!(message.code, "nothing-found-and-stated");
        let share = |name| match message.values.iter().find(|(own, _)| *own == name) {
            Some((_, Value::Share(share, _))) => *share,
            other => panic!("no share: {other:?}"),
        };
        assert!((share("share") - 0.535_841).abs() < 1e-6 && (share("upper") - 0.053_584).abs() < 1e-6);
    }
}
