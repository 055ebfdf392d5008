//! Goals: one a row, as a person writes them.

use super::{Read, Sheet};
use crate::headings::Column;
use tautline_survey::assess::SiteGoal;
use tautline_survey::finding::Finding;
use tautline_survey::goal::{self, GoalError};
use tautline_survey::message::Message;

pub(super) fn goals(sheet: &Sheet, read: &mut Read) {
    for row in sheet.rows() {
        match goal::read(row.text(Column::Goal), sheet.mark) {
            Ok(mut goal) => {
                row.text(Column::Source).clone_into(&mut goal.source);
                read.goals.push(SiteGoal { site: row.some(Column::Site), goal });
            }
            Err(error) => read.input.findings.push(finding(&error).at(row.place(Column::Goal))),
        }
    }
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
