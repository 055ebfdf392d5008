//! What `tautline practice … --json` prints.

use super::class::Class;
use super::exercise::Exercise;
use super::marking::{Marked, told};
use super::protest::Protest;
use crate::message::Message;
use crate::output::VERSION;
use serde::Serialize;
use tautline_engine::practice::drill::Drill;
use tautline_engine::practice::mistake::{Mistake, Row};

/// What `tautline practice line --json` prints.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PracticeLineOutput {
    /// `tautline.practice-line`
    pub format: &'static str,
    /// The version of the format.
    pub version: u32,
    /// Level and number.
    pub line: String,
    /// How long it is, in nanometres.
    pub length_nm: i64,
    /// The tape's finest division, in nanometres.
    pub division_nm: i64,
    /// The grade of the ground, in per cent.
    pub slope_percent: u8,
    /// The fingerprint of the protocol.
    pub protocol: String,
    /// The intercepts of the key, where the key was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub key: Option<Vec<PracticeRowOutput>>,
    /// The key's canopy cover as a share of the line, where the key was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub canopy: Option<f64>,
    /// The key's sum of species as a share of the line, where the key was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sum: Option<f64>,
}

/// One intercept.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PracticeRowOutput {
    /// The species' code.
    pub species: &'static str,
    /// Where it starts, in nanometres.
    pub start_nm: i64,
    /// Where it stops, in nanometres.
    pub stop_nm: i64,
}

/// What `tautline practice grade --json` prints.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PracticeGradeOutput {
    /// `tautline.practice-grade`
    pub format: &'static str,
    /// The version of the format.
    pub version: u32,
    /// Whether the marks are the example's and nobody's rules.
    pub example_marks: bool,
    /// All marks there are on a sheet.
    pub most: f64,
    /// What there is for each part.
    pub parts: PartsOutput,
    /// The sheets.
    pub sheets: Vec<MarkedOutput>,
}

/// Marks for each part.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PartsOutput {
    /// For edges or lengths.
    pub edges: f64,
    /// For species.
    pub species: f64,
    /// For cover.
    pub cover: f64,
    /// For arithmetic.
    pub arithmetic: f64,
}

/// One sheet.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct MarkedOutput {
    /// Who.
    pub name: String,
    /// Of which group.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub group: String,
    /// The line.
    pub line: String,
    /// The day, where it was written.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub date: Option<String>,
    /// The key's cover as a share of the line.
    pub key: f64,
    /// The sheet's cover by its rows.
    pub rows: f64,
    /// The per cent that the learner worked out, as typed.
    pub stated: Option<String>,
    /// Whether the rows come to that.
    pub sums_up: Option<bool>,
    /// Marks for edges or lengths.
    pub edges: f64,
    /// Marks for species.
    pub species: f64,
    /// Marks for cover.
    pub cover: f64,
    /// Marks for arithmetic.
    pub arithmetic: f64,
    /// All marks.
    pub marks: f64,
    /// Intercept by intercept: how it was read, in a code and in words.
    pub intercepts: Vec<InterceptOutput>,
    /// The mistake that explains the sheet.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mistake: Option<MistakeOutput>,
}

/// One intercept beside the key.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct InterceptOutput {
    /// How it was read: `practice-right`, `practice-start-off`, `practice-missed`, …
    pub found: &'static str,
    /// What explains it: `practice-because-dead`, …
    #[serde(skip_serializing_if = "Option::is_none")]
    pub because: Option<&'static str>,
    /// The words.
    pub text: String,
}

/// A mistake.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct MistakeOutput {
    /// Which: `mistake-counts-dead`, …
    pub mistake: &'static str,
    /// The length that goes with it, in nanometres.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub length_nm: Option<i64>,
    /// The angle that goes with it, in degrees from straight down.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub degrees: Option<i8>,
    /// Others that the sheet can't tell from it.
    pub alike: Vec<&'static str>,
    /// Rows that disagree with a careful reading.
    pub faults: usize,
    /// Rows that still do once the mistake is allowed for.
    pub left: usize,
}

/// What `tautline practice class --json` prints.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PracticeClassOutput {
    /// `tautline.practice-class`
    pub format: &'static str,
    /// The version of the format.
    pub version: u32,
    /// Learners, best first.
    pub learners: Vec<StandingOutput>,
    /// Groups, best first.
    pub groups: Vec<GroupOutput>,
    /// Mistakes that were named: which, on how many sheets, marks that those sheets lost.
    pub mistakes: Vec<(&'static str, usize, f64)>,
    /// Protests of the day.
    pub protests: Vec<Protest>,
}

/// One learner.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct StandingOutput {
    /// The place, shared by those who are equal.
    pub place: usize,
    /// Who.
    pub name: String,
    /// Of which group.
    pub group: String,
    /// Marks line by line.
    pub lines: Vec<(String, f64)>,
    /// All marks.
    pub marks: f64,
    /// Whether the place is shared.
    pub tied: bool,
}

/// One group.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct GroupOutput {
    /// The place, shared by those who are equal.
    pub place: usize,
    /// Its name.
    pub name: String,
    /// Marks of its best learners.
    pub best: f64,
    /// Marks of all.
    pub all: f64,
    /// Whether the place is shared.
    pub tied: bool,
}

/// What `tautline practice drill --json` prints.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct DrillOutput {
    /// `tautline.practice-drill`
    pub format: &'static str,
    /// The version of the format.
    pub version: u32,
    /// What is practised: `add`, `feet-to-inches`, `subtract`, `whole`.
    pub kind: &'static str,
    /// The intercepts as given.
    pub given: Vec<String>,
    /// The line as given.
    pub line: String,
    /// The answer, where it was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub answer: Option<String>,
    /// Whether the learner's answer is right, where there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub right: Option<bool>,
}

fn row(row: &Row) -> PracticeRowOutput {
    PracticeRowOutput {
        species: Exercise::code(row.species),
        start_nm: row.stretch.start().nanometres(),
        stop_nm: row.stretch.stop().nanometres(),
    }
}

/// A practice line as data, with or without its key.
pub fn line_output(exercise: &Exercise, with_key: bool) -> PracticeLineOutput {
    let (canopy, sum) = exercise.key_lengths();
    let share = |length: tautline_engine::length::Length| length.share_of(exercise.line.length);
    PracticeLineOutput {
        format: "tautline.practice-line",
        version: VERSION,
        line: exercise.name(),
        length_nm: exercise.line.length.nanometres(),
        division_nm: exercise.line.step().nanometres(),
        slope_percent: exercise.line.slope,
        protocol: exercise.protocol.fingerprint(),
        key: with_key.then(|| exercise.key().iter().map(row).collect()),
        canopy: with_key.then(|| share(canopy)),
        sum: with_key.then(|| share(sum)),
    }
}

fn mistake(mistake: Mistake, named: &tautline_engine::practice::recognise::Named) -> MistakeOutput {
    MistakeOutput {
        mistake: mistake.code(),
        length_nm: mistake.length().map(tautline_engine::length::Length::nanometres),
        degrees: mistake.degrees(),
        alike: named.alike.iter().map(|one| one.code()).collect(),
        faults: named.faults,
        left: named.left,
    }
}

/// Marked sheets as data.
pub fn grade_output(
    marked: &[Marked],
    marking: &super::Marking,
    say: &dyn Fn(&Message) -> String,
) -> PracticeGradeOutput {
    let sheet = |one: &Marked| MarkedOutput {
        name: one.name.clone(),
        group: one.group.clone(),
        line: one.line.clone(),
        date: one.date.map(|date| date.to_string()),
        key: one.key,
        rows: one.rows,
        stated: one.stated.clone(),
        sums_up: one.sums_up,
        edges: one.parts.edges,
        species: one.parts.species,
        cover: one.parts.cover,
        arithmetic: one.parts.arithmetic,
        marks: one.parts.all(),
        intercepts: one
            .graded
            .iter()
            .flat_map(|graded| &graded.marks)
            .map(|mark| InterceptOutput {
                found: mark.found.code(),
                because: mark.because.map(tautline_engine::practice::grade::Because::code),
                text: say(&told(mark, &one.codes, one.notation)),
            })
            .collect(),
        mistake: one.named.as_ref().map(|named| mistake(named.mistake, named)),
    };
    let most = marking.parts();
    PracticeGradeOutput {
        format: "tautline.practice-grade",
        version: VERSION,
        example_marks: marking.example,
        most: marking.most(),
        parts: PartsOutput {
            edges: most.edges,
            species: most.species,
            cover: most.cover,
            arithmetic: most.arithmetic,
        },
        sheets: marked.iter().map(sheet).collect(),
    }
}

/// A class as data.
pub fn class_output(class: &Class) -> PracticeClassOutput {
    PracticeClassOutput {
        format: "tautline.practice-class",
        version: VERSION,
        learners: class
            .learners
            .iter()
            .map(|one| StandingOutput {
                place: one.place,
                name: one.name.clone(),
                group: one.group.clone(),
                lines: one.lines.clone(),
                marks: one.marks,
                tied: one.tied,
            })
            .collect(),
        groups: class
            .groups
            .iter()
            .map(|one| GroupOutput {
                place: one.place,
                name: one.name.clone(),
                best: one.best,
                all: one.all,
                tied: one.tied,
            })
            .collect(),
        mistakes: class.mistakes.clone(),
        protests: class.protests.clone(),
    }
}

/// A drill as data; the answer only where it was asked for or a learner's stands beside it.
pub fn drill_output(drill: &Drill, solution: bool, answer: Option<&str>) -> DrillOutput {
    let given = drill
        .terms
        .iter()
        .map(|term| {
            let write = |length| tautline_engine::length::write(length, term.notation);
            term.edges.map_or_else(
                || write(term.length),
                |(start, stop)| format!("{}–{}", write(start), write(stop)),
            )
        })
        .collect();
    DrillOutput {
        format: "tautline.practice-drill",
        version: VERSION,
        kind: drill.kind.code(),
        given,
        line: tautline_engine::length::write(drill.line, drill.line_notation),
        answer: solution.then(|| drill.answer()),
        right: answer.map(|answer| drill.is_right(answer)),
    }
}
