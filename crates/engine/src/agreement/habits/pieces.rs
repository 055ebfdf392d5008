//! Gaps and plants that one reader has and the other hasn't.

use super::{FEWEST, Habit, Sheets};
use crate::length::Length;
use crate::stretch::{Stretch, any_overlaps, without};

/// A rule is named when it tells so large a share of the gaps or plants apart.
const TOLD_APART: f64 = 0.9;

/// The length that best tells cases below from cases above, if it does so well enough: how many are below and so.
fn told_apart(mut cases: Vec<(Length, bool)>) -> Option<(Length, Option<Length>, usize)> {
    cases.sort_unstable();
    let all_so = cases.iter().filter(|(_, so)| *so).count();
    let mut best: Option<(usize, usize)> = None;
    let mut so_below = 0;
    for (number, (_, so)) in cases.iter().enumerate() {
        so_below += usize::from(*so);
        let below = number + 1;
        // right: so below, not so above
        let right = so_below + (cases.len() - below) - (all_so - so_below);
        if *so && best.is_none_or(|(most, _)| right >= most) {
            best = Some((right, below));
        }
    }
    let (right, below) = best?;
    let so = cases[..below].iter().filter(|(_, so)| *so).count();
    let enough = so >= FEWEST && crate::num::count(right) >= TOLD_APART * crate::num::count(cases.len());
    enough.then(|| (cases[below - 1].0, cases.get(below).map(|case| case.0), so))
}

/// The gaps between neighbouring patches of one reader that the other has both of, and whether the other closes them. One no
/// longer than `least` nanometres counts for nothing.
fn gaps<'a>(
    own: &'a [Stretch],
    other: &'a [Stretch],
    least: i64,
) -> impl Iterator<Item = (Length, bool)> + 'a {
    own.windows(2)
        .filter(|pair| pair.iter().all(|&patch| any_overlaps(other, patch)))
        .filter_map(|pair| Stretch::new(pair[0].stop(), pair[1].start()))
        .filter(move |gap| gap.length().nanometres() > least)
        .map(|gap| (gap.length(), without(&[gap], other).is_empty()))
}

pub(super) fn closes_gaps(lines: &[Sheets], least: i64) -> Option<Habit> {
    let cases = lines.iter().flat_map(|line| gaps(&line.first, &line.second, least)).collect();
    let (closed, open, gaps) = told_apart(cases)?;
    Some(Habit::ClosesGaps { closed, open, gaps })
}

pub(super) fn opens_gaps(lines: &[Sheets], least: i64) -> Option<Habit> {
    let cases = lines.iter().flat_map(|line| gaps(&line.second, &line.first, least)).collect();
    let (opened, _, gaps) = told_apart(cases)?;
    Some(Habit::OpensGaps { opened, gaps })
}

/// The plants of one reader and whether the other misses them. One no longer than `least` nanometres counts for
/// nothing.
fn missed<'a>(
    own: &'a [Stretch],
    other: &'a [Stretch],
    least: i64,
) -> impl Iterator<Item = (Length, bool)> + 'a {
    own.iter()
        .filter(move |plant| plant.length().nanometres() > least)
        .map(|&plant| (plant.length(), !any_overlaps(other, plant)))
}

pub(super) fn leaves_out_small(lines: &[Sheets], least: i64) -> Option<Habit> {
    let plants = lines.iter().flat_map(|line| missed(&line.first, &line.second, least));
    let (up_to, _, plants) = told_apart(plants.collect())?;
    Some(Habit::LeavesOutSmall { up_to, plants })
}

/// Plants of the second reader alone that stand where the first wrote nothing at all.
pub(super) fn adds_small(lines: &[Sheets], least: i64) -> Option<Habit> {
    let of_line = |line: &Sheets| -> Vec<(Length, bool)> {
        let otherwise =
            |plant: Stretch| any_overlaps(&line.first_dead, plant) || any_overlaps(&line.first_other, plant);
        let plants: Vec<Stretch> = line.second.iter().copied().filter(|&plant| !otherwise(plant)).collect();
        missed(&plants, &line.first, least).collect()
    };
    let (up_to, _, plants) = told_apart(lines.iter().flat_map(of_line).collect())?;
    Some(Habit::AddsSmall { up_to, plants })
}
