//! What of a line belongs to a subject, and which subjects are worked out.

use super::By;
use crate::goal::{Goal, Subject, Wanted};
use crate::line::{Bounds, LineResult};
use crate::plants::GrowthForm;

/// The intercepted length of a subject on a line.
pub fn intercept(line: &LineResult, subject: &Subject) -> Bounds {
    let nothing = Bounds::default();
    match subject {
        Subject::Canopy => line.canopy,
        Subject::Sum => line.sum,
        Subject::Dead => line.dead,
        Subject::Species(code) => line
            .species
            .iter()
            .find(|species| species.code.eq_ignore_ascii_case(code))
            .map_or(nothing, |s| s.live),
        Subject::Form(form) => {
            line.forms.iter().find(|(own, _)| own == form).map_or(nothing, |(_, bounds)| *bounds)
        }
        Subject::Group(name) => line
            .groups
            .iter()
            .find(|(own, _)| own.eq_ignore_ascii_case(name))
            .map_or(nothing, |(_, bounds)| *bounds),
    }
}

/// Canopy, sum and dead, then what is asked for, then what a goal is about.
pub fn subjects(lines: &[LineResult], by: By, goals: &[&Goal]) -> Vec<Subject> {
    let mut subjects = vec![Subject::Canopy, Subject::Sum];
    if lines.iter().any(|line| line.dead != Bounds::default()) {
        subjects.push(Subject::Dead);
    }
    let mut asked = by_plants(lines, by);
    if by == By::Group {
        asked = lines[0].groups.iter().map(|(group, _)| Subject::Group(group.clone())).collect();
    }
    asked.extend(
        goals.iter().filter(|goal| matches!(goal.wanted, Wanted::Cover(_))).map(|goal| goal.subject.clone()),
    );
    for subject in asked {
        if !subjects.contains(&subject) {
            subjects.push(subject);
        }
    }
    subjects
}

/// The species or the growth forms met on any of the lines, where those are asked for.
pub(super) fn by_plants(lines: &[LineResult], by: By) -> Vec<Subject> {
    match by {
        By::Nothing | By::Group => Vec::new(),
        By::Species => species(lines).into_iter().map(Subject::Species).collect(),
        By::Form => {
            let met =
                |form: &GrowthForm| lines.iter().any(|line| line.forms.iter().any(|(own, _)| own == form));
            GrowthForm::ALL.into_iter().filter(met).map(Subject::Form).collect()
        }
    }
}

/// Codes met on any of the lines, sorted.
fn species(lines: &[LineResult]) -> Vec<String> {
    let mut codes: Vec<String> =
        lines.iter().flat_map(|line| line.species.iter().map(|s| s.code.clone())).collect();
    codes.sort_unstable();
    codes.dedup();
    codes
}
