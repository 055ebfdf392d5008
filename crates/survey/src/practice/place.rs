//! Exercises apart from edges: where lines start, and what is in or out; their answers, and their output.

use crate::measure::Measure;
use crate::output::VERSION;
use serde::Serialize;
use tautline_engine::length::{DecimalMark, Length, Notation, write};
use tautline_engine::practice::place::{Beside, Starts};

/// What `tautline practice drill --json` prints of line starts, and of plants in or out.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PlaceOutput {
    /// `tautline.practice-place`
    pub format: &'static str,
    /// The version of the format.
    pub version: u32,
    /// What is practised: `line-starts`, `in-or-out`.
    pub kind: &'static str,
    /// How long the baseline is, in nanometres.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub baseline_nm: Option<i64>,
    /// How many lines start on it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lines: Option<u32>,
    /// The random start that was drawn, in nanometres.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub first_nm: Option<i64>,
    /// The plants: middle along the tape, middle to the left of the edge, radius of the canopy, in nanometres.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub plants_nm: Vec<(i64, i64, i64)>,
    /// The answers, where they were asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub answers: Option<Vec<String>>,
    /// Which of the learner's answers are right, where there are any.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub right: Option<Vec<bool>>,
}

/// Where lines start, as data.
pub fn starts_output(
    starts: &Starts,
    tape: Notation,
    solution: bool,
    right: Option<Vec<bool>>,
) -> PlaceOutput {
    PlaceOutput {
        format: "tautline.practice-place",
        version: VERSION,
        kind: "line-starts",
        baseline_nm: Some(starts.baseline.nanometres()),
        lines: Some(starts.lines),
        first_nm: Some(starts.first.nanometres()),
        plants_nm: Vec::new(),
        answers: solution.then(|| starts.key().into_iter().map(|at| write(at, tape)).collect()),
        right,
    }
}

/// Plants in or out, as data.
pub fn in_or_out_output(plants: &[Beside], solution: bool, right: Option<Vec<bool>>) -> PlaceOutput {
    let nm = |length: Length| length.nanometres();
    let word = |plant: &Beside| if plant.is_in() { "in" } else { "out" }.to_owned();
    PlaceOutput {
        format: "tautline.practice-place",
        version: VERSION,
        kind: "in-or-out",
        baseline_nm: None,
        lines: None,
        first_nm: None,
        plants_nm: plants.iter().map(|one| (nm(one.along), nm(one.aside), nm(one.radius))).collect(),
        answers: solution.then(|| plants.iter().map(word).collect()),
        right,
    }
}

/// Which starts a learner has right: lengths with commas or semicolons, within a division of the tape. `None` where one is no length.
///
/// # Example
/// ```
/// use tautline_engine::{length::{Length, Notation, Unit}, practice::place::Starts};
/// use tautline_survey::practice::starts_right;
/// let m = |n| Length::from_units(n, Unit::Metre);
/// let starts = Starts { baseline: m(100), lines: 4, first: m(13) };
/// let tape = Notation::decimals(Unit::Metre, 2);
/// assert_eq!(starts_right(&starts, tape, "13 m; 38 m; 60 m; 88 m").unwrap(), [true, true, false, true]);
/// ```
pub fn starts_right(starts: &Starts, tape: Notation, answer: &str) -> Option<Vec<bool>> {
    let marks: Option<Vec<Length>> = answer
        .split([',', ';'])
        .map(str::trim)
        .filter(|part| !part.is_empty())
        .map(|part| Measure::read(part, None, DecimalMark::Point).ok().map(|measure| measure.length()))
        .collect();
    Some(starts.right(&marks?, tape.step()))
}

/// Which plants a learner has right: `in` and `out` with commas, in the order of their numbers; one that is missing is wrong. `None` where
/// something else stands.
///
/// # Example
/// ```
/// use tautline_engine::{length::{Length, Unit}, practice::place::Beside};
/// use tautline_survey::practice::in_or_out_right;
/// let cm = |n| Length::from_units(n, Unit::Centimetre);
/// let plants = [20, 21, 19].map(|radius| Beside { along: cm(50), aside: cm(20), radius: cm(radius) });
/// assert_eq!(in_or_out_right(&plants, "out, in").unwrap(), [true, true, false]);
/// ```
pub fn in_or_out_right(plants: &[Beside], answer: &str) -> Option<Vec<bool>> {
    let words: Option<Vec<bool>> = answer
        .split([',', ';', ' '])
        .map(str::trim)
        .filter(|part| !part.is_empty())
        .map(|part| match part.to_lowercase().as_str() {
            "in" => Some(true),
            "out" => Some(false),
            _ => None,
        })
        .collect();
    let words = words?;
    let right = plants.iter().enumerate().map(|(at, plant)| words.get(at) == Some(&plant.is_in()));
    Some(right.collect())
}
