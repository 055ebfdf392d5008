//! Practice: exercises with a key, learners' sheets, marks, classes, and keys that experts agreed on.
//!
//! Learners stand outside the record: nothing here becomes a revision.

mod class;
mod exercise;
mod experts;
mod laid;
mod marking;
mod output;
mod place;
mod progress;
mod protest;
mod reading;
mod sheet;
mod sight;
mod typed;

pub use class::{Class, Group, Standing, class, cost_of_mistakes};
pub use exercise::{Exercise, SPECIES, TapeKind};
pub use experts::{ExpertKey, agreed};
pub use laid::{Laid, Marker, key_findings, recogniser};
pub use marking::{Band, Marked, Marking, Parts, mark, mark_real, told};
pub use output::{
    DrillOutput, PracticeClassOutput, PracticeGradeOutput, PracticeLineOutput, class_output, drill_output,
    grade_output, line_output,
};
pub use place::{PlaceOutput, in_or_out_output, in_or_out_right, starts_output, starts_right};
pub use progress::{Habit, Learner, Lesson, PracticeProgressOutput, progress, progress_output};
pub use protest::{Decision, Protest, protest_words};
pub use reading::{Came, Edge, Placed, Reading, length};
pub use sheet::{LearnerRow, LearnerSheet};
pub use sight::{SightDrill, SightOutput, sight_output};
pub use typed::{TypedRow, TypedSheet, spread_words};

#[cfg(test)]
mod tests;
