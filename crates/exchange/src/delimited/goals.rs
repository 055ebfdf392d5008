//! Goals: one a row, as a person writes them.

use super::cells::Row;
use super::{Read, Sheet};
use crate::headings::Column;
use tautline_engine::length::DecimalMark;
use tautline_survey::assess::SiteGoal;
use tautline_survey::finding::Finding;
use tautline_survey::goal::{self, Goal, GoalError};
use tautline_survey::message::Message;

pub(super) fn goals(sheet: &Sheet, read: &mut Read) {
    for row in sheet.rows() {
        match goal_of(&row, sheet.mark) {
            Ok(goal) => read.goals.push(SiteGoal { site: row.some(Column::Site), goal }),
            Err(finding) => read.input.findings.push(finding),
        }
    }
}

fn goal_of(row: &Row, mark: DecimalMark) -> Result<Goal, Finding> {
    let mut goal = goal::read(row.text(Column::Goal), mark)
        .map_err(|error| finding(&error).at(row.place(Column::Goal)))?;
    row.text(Column::Source).clone_into(&mut goal.source);
    let confidence = row.text(Column::Confidence);
    if !confidence.is_empty() {
        let read = goal::read_confidence(confidence, mark);
        goal.confidence_per_mille =
            Some(read.ok_or_else(|| row.about(Column::Confidence, "goal-confidence"))?);
    }
    Ok(goal)
}

/// The words' code for a goal that was not understood.
pub fn finding(error: &GoalError) -> Finding {
    Finding::must_settle(match error {
        GoalError::NoRelation(text) => Message::new("goal-no-relation").with("found", text.as_str()),
        GoalError::NotAPercentage(text) => Message::new("goal-not-a-percentage").with("found", text.as_str()),
        GoalError::NotALength(text, _) => Message::new("goal-not-a-length").with("found", text.as_str()),
        GoalError::LowAboveHigh(text) => Message::new("goal-low-above-high").with("found", text.as_str()),
    })
}
