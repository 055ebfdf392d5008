//! A class: who stands where, ties, groups, and which mistakes cost how many marks.

use super::exercise::Exercise;
use super::marking::{Marked, Marking, mark};
use super::protest::Protest;
use super::sheet::{LearnerRow, LearnerSheet};
use crate::measure::Measure;
use std::collections::BTreeMap;
use tautline_engine::length::{DecimalMark, write};
use tautline_engine::practice::mistake::Mistake;
use tautline_engine::practice::recognise::Recogniser;

/// One learner's place.
#[derive(Clone, Debug, PartialEq)]
pub struct Standing {
    /// The place; learners with the same marks share it.
    pub place: usize,
    /// Who.
    pub name: String,
    /// Of which group.
    pub group: String,
    /// Marks, line by line in the order they were handed in.
    pub lines: Vec<(String, f64)>,
    /// All of them.
    pub marks: f64,
    /// Whether somebody else has the same.
    pub tied: bool,
}

/// One group's place.
#[derive(Clone, Debug, PartialEq)]
pub struct Group {
    /// The place.
    pub place: usize,
    /// Its name.
    pub name: String,
    /// Marks of its best learners.
    pub best: f64,
    /// Marks of all of them, which decides between equal ones.
    pub all: f64,
    /// Whether another group has the same in both.
    pub tied: bool,
}

/// A class.
#[derive(Clone, Debug, PartialEq)]
pub struct Class {
    /// Learners, best first.
    pub learners: Vec<Standing>,
    /// Groups, best first.
    pub groups: Vec<Group>,
    /// Mistakes that were named: by code, how many sheets, and the marks that those sheets lost in all.
    pub mistakes: Vec<(&'static str, usize, f64)>,
    /// Protests of the day, for whoever puts the class in order to fill in.
    pub protests: Vec<Protest>,
}

/// Marks that differ by less are the same: they are sums of parts.
const SAME: f64 = 1e-9;

/// Puts a class in order. A group counts its `best` learners; all of them decide between equal groups.
pub fn class(marked: &[Marked], marking: &Marking, best: usize) -> Class {
    let mut learners: BTreeMap<(String, String), Standing> = BTreeMap::new();
    for one in marked {
        let fresh = || Standing {
            place: 0,
            name: one.name.clone(),
            group: one.group.clone(),
            lines: Vec::new(),
            marks: 0.0,
            tied: false,
        };
        let learner = learners.entry((one.group.clone(), one.name.clone())).or_insert_with(fresh);
        learner.lines.push((one.line.clone(), one.parts.all()));
        learner.marks += one.parts.all();
    }
    let mut learners: Vec<Standing> = learners.into_values().collect();
    learners.sort_by(|a, b| b.marks.total_cmp(&a.marks).then_with(|| a.name.cmp(&b.name)));
    let marks: Vec<f64> = learners.iter().map(|one| one.marks).collect();
    for (at, learner) in learners.iter_mut().enumerate() {
        learner.place = 1 + marks.iter().filter(|&&other| other > marks[at] + SAME).count();
        learner.tied = marks.iter().filter(|&&other| (other - marks[at]).abs() <= SAME).count() > 1;
    }
    let mut mistakes: BTreeMap<&'static str, (usize, f64)> = BTreeMap::new();
    for one in marked {
        if let Some(named) = &one.named {
            let entry = mistakes.entry(named.mistake.code()).or_default();
            entry.0 += 1;
            entry.1 += marking.most() - one.parts.all();
        }
    }
    let mut mistakes: Vec<(&'static str, usize, f64)> =
        mistakes.into_iter().map(|(code, (sheets, lost))| (code, sheets, lost)).collect();
    mistakes.sort_by(|a, b| b.2.total_cmp(&a.2));
    Class { groups: groups(&learners, best), learners, mistakes, protests: Vec::new() }
}

fn groups(learners: &[Standing], best: usize) -> Vec<Group> {
    let mut of: BTreeMap<&str, Vec<f64>> = BTreeMap::new();
    // learners stand best first, and so do the marks of each group
    for learner in learners.iter().filter(|learner| !learner.group.is_empty()) {
        of.entry(&learner.group).or_default().push(learner.marks);
    }
    let mut groups: Vec<Group> = of
        .into_iter()
        .map(|(name, marks)| Group {
            place: 0,
            name: name.to_owned(),
            best: marks.iter().take(best).sum(),
            all: marks.iter().sum(),
            tied: false,
        })
        .collect();
    groups.sort_by(|a, b| b.best.total_cmp(&a.best).then_with(|| b.all.total_cmp(&a.all)));
    let ahead = |a: &Group, b: &Group| {
        a.best > b.best + SAME || ((a.best - b.best).abs() <= SAME && a.all > b.all + SAME)
    };
    let before = groups.clone();
    for group in &mut groups {
        group.place = 1 + before.iter().filter(|other| ahead(other, group)).count();
        group.tied = before.iter().filter(|other| !ahead(other, group) && !ahead(group, other)).count() > 1;
    }
    groups
}

/// What each mistake would cost on an exercise: the marks that an otherwise careful reader loses, dearest first.
pub fn cost_of_mistakes(exercise: &Exercise, marking: &Marking, mistakes: &[Mistake]) -> Vec<(Mistake, f64)> {
    let nobody = Recogniser::new(&[], &exercise.protocol.rule().0);
    let marks = |rows| mark(&typed(exercise, rows), exercise, marking, &nobody).parts.all();
    let careful = marks(exercise.key());
    let mut costs: Vec<(Mistake, f64)> = mistakes
        .iter()
        .map(|&mistake| (mistake, careful - marks(exercise.with_mistake(mistake))))
        .filter(|(_, lost)| *lost > SAME)
        .collect();
    costs.sort_by(|a, b| b.1.total_cmp(&a.1));
    costs
}

/// Rows as a sheet.
fn typed(exercise: &Exercise, rows: Vec<tautline_engine::practice::mistake::Row>) -> LearnerSheet {
    let notation = exercise.tape.notation();
    let measure = |length| Measure::read(&write(length, notation), None, DecimalMark::Point).ok();
    let row = |row: tautline_engine::practice::mistake::Row| {
        Some(LearnerRow {
            species: Exercise::code(row.species.or(Some(0))).to_owned(),
            edges: Some((measure(row.stretch.start())?, measure(row.stretch.stop())?)),
            length: None,
        })
    };
    LearnerSheet {
        line: exercise.name(),
        rows: rows.into_iter().filter_map(row).collect(),
        ..LearnerSheet::default()
    }
}
