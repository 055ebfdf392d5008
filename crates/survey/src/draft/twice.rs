//! One sheet typed by two persons, row beside row: where they differ one of them slipped.

use crate::plants::PlantList;
use crate::visit::{Extent, Intercept, Visit};

/// What differs in a pair of rows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Differs {
    /// The species.
    Species,
    /// Where it starts.
    Start,
    /// Where it stops.
    Stop,
    /// The length, or one has positions and the other only a length.
    Length,
    /// Live or dead.
    State,
    /// Plant, height or width.
    Plant,
}

/// Two rows side by side; one is missing where only the other has it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pair {
    /// The row of the first typing, by its place on the sheet.
    pub first: Option<usize>,
    /// The row of the second typing.
    pub second: Option<usize>,
    /// What differs; empty where both are alike.
    pub differs: Vec<Differs>,
}

impl Pair {
    /// Whether both typings say the same.
    pub fn alike(&self) -> bool {
        self.differs.is_empty() && self.first.is_some() && self.second.is_some()
    }
}

/// A row that only one has costs as much as so many figures that differ: more than that and they are other rows.
const ALONE: usize = 2;

/// Both typings row by row, in an order that makes the fewest differences.
///
/// # Source
/// common practice in keying data twice; the order by dynamic programming (Needleman and Wunsch 1970)
pub fn side_by_side(first: &Visit, second: &Visit, plants: &PlantList) -> Vec<Pair> {
    let (a, b) = (&first.intercepts, &second.intercepts);
    let cost = |i: usize, j: usize| differing(&a[i], &b[j], plants).len();
    // least[i][j]: the fewest differences between what is left from i and from j on
    let mut least = vec![vec![0_usize; b.len() + 1]; a.len() + 1];
    for i in (0..=a.len()).rev() {
        for j in (0..=b.len()).rev() {
            least[i][j] = match (i < a.len(), j < b.len()) {
                (false, false) => 0,
                (true, false) => least[i + 1][j] + ALONE,
                (false, true) => least[i][j + 1] + ALONE,
                (true, true) => (least[i + 1][j + 1] + cost(i, j))
                    .min(least[i + 1][j] + ALONE)
                    .min(least[i][j + 1] + ALONE),
            };
        }
    }
    let (mut i, mut j) = (0, 0);
    let mut pairs = Vec::new();
    while i < a.len() || j < b.len() {
        let both = i < a.len() && j < b.len();
        if both && least[i][j] == least[i + 1][j + 1] + cost(i, j) {
            let differs = differing(&a[i], &b[j], plants);
            pairs.push(Pair { first: Some(i), second: Some(j), differs });
            (i, j) = (i + 1, j + 1);
        } else if i < a.len() && least[i][j] == least[i + 1][j] + ALONE {
            pairs.push(Pair { first: Some(i), second: None, differs: Vec::new() });
            i += 1;
        } else {
            pairs.push(Pair { first: None, second: Some(j), differs: Vec::new() });
            j += 1;
        }
    }
    pairs
}

fn differing(a: &Intercept, b: &Intercept, plants: &PlantList) -> Vec<Differs> {
    let mut differs = Vec::new();
    let mut note = |unlike: bool, what| differs.extend(unlike.then_some(what));
    note(plants.code(&a.species) != plants.code(&b.species), Differs::Species);
    match (&a.extent, &b.extent) {
        (Extent::Edges { start, stop }, Extent::Edges { start: other_start, stop: other_stop }) => {
            note(start.length() != other_start.length(), Differs::Start);
            note(stop.length() != other_stop.length(), Differs::Stop);
        }
        (Extent::Length(one), Extent::Length(other)) => {
            note(one.length() != other.length(), Differs::Length);
        }
        _ => note(true, Differs::Length),
    }
    note(a.state != b.state, Differs::State);
    let length =
        |measure: &Option<crate::measure::Measure>| measure.as_ref().map(crate::measure::Measure::length);
    let trait_of = |one: &Intercept| (one.plant.clone(), length(&one.height), length(&one.width));
    note(trait_of(a) != trait_of(b), Differs::Plant);
    differs
}
