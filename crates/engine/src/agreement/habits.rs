//! Which habit would explain how one reader's sheets differ from another's.
//!
//! A habit is named only where it is shown; several may be, and more than one may explain the same edges.

use super::patches::matched;
use crate::change::ranks::median_interval;
use crate::length::Length;
use crate::num::sum::median;
use crate::stretch::{Stretch, any_overlaps, total, union, without};

/// What two readers wrote of one line, edges as written.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Sheets {
    /// Live canopy of the first reader.
    pub first: Vec<Stretch>,
    /// Live canopy of the second reader.
    pub second: Vec<Stretch>,
    /// What the first reader wrote as dead.
    pub first_dead: Vec<Stretch>,
}

/// A habit of the second reader, seen from the first.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Habit {
    /// Gaps that the first reader wrote are read as canopy, up to about this long.
    ClosesGaps {
        /// The longest gap that was closed.
        closed: Length,
        /// The shortest gap beyond it that stayed open, if any did.
        open: Option<Length>,
        /// How many were closed.
        gaps: usize,
    },
    /// Every edge is read further out, by this much at each.
    Wider(Length),
    /// Every edge is read further in, by this much at each.
    Narrower(Length),
    /// Everything lies further along the tape (or back, below zero) by this much.
    TapeOff(Length),
    /// What the first reader wrote as dead is written as live: this share of it.
    DeadAsLive(f64),
    /// Plants no longer than this are left out.
    LeavesOutSmall {
        /// The longest plant that was missed.
        up_to: Length,
        /// How many were missed.
        plants: usize,
    },
}

impl Habit {
    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::ClosesGaps { .. } => "habit-closes-gaps",
            Self::Wider(_) => "habit-wider",
            Self::Narrower(_) => "habit-narrower",
            Self::TapeOff(_) => "habit-tape-off",
            Self::DeadAsLive(_) => "habit-dead-as-live",
            Self::LeavesOutSmall { .. } => "habit-leaves-out-small",
        }
    }
}

/// How sure an edge difference must be before it is a habit: two are looked at, so that together they name a habit of
/// a reader without one in 5 of 100 cases.
const SURE: f64 = 0.975;
/// A rule is named when it tells so large a share of the gaps or plants apart.
const TOLD_APART: f64 = 0.9;
/// Fewer cases than this are no habit.
const FEWEST: usize = 2;

/// The habits that the sheets show, of the lines that both readers read.
///
/// Gaps and small plants: a length that tells those closed (left out) from those kept in nine of ten cases, with at
/// least two on its far side. Edges: the median way outwards, and the median way along the tape, of plants that both have
/// and that no closed gap touches, each where its 97.5 % interval leaves zero out. Dead: half or more of it written as live.
///
/// # Units
/// Whole nanometres.
///
/// # Source
/// Our own; the medians' intervals as in [`crate::change::ranks`]
///
/// # Example
/// Invented: eight plants, each read 2 cm wider at either edge.
/// ```
/// use tautline_engine::agreement::habits::{Habit, Sheets, habits};
/// use tautline_engine::length::{Length, Unit};
/// use tautline_engine::stretch::Stretch;
/// let at = |cm| Length::from_units(cm, Unit::Centimetre);
/// let plant = |from, to| Stretch::new(at(from), at(to)).unwrap();
/// let first = (1..=8).map(|n| plant(100 * n, 100 * n + 40)).collect();
/// let second = (1..=8).map(|n| plant(100 * n - 2, 100 * n + 42)).collect();
/// let sheets = Sheets { first, second, ..Sheets::default() };
/// assert_eq!(habits(&[sheets]), [Habit::Wider(at(2))]);
/// ```
pub fn habits(lines: &[Sheets]) -> Vec<Habit> {
    let lines: Vec<Sheets> = lines.iter().map(in_order).collect();
    let mut found = Vec::new();
    found.extend(closes_gaps(&lines));
    found.extend(edges(&lines));
    found.extend(dead_as_live(&lines));
    found.extend(leaves_out_small(&lines));
    found
}

fn in_order(line: &Sheets) -> Sheets {
    let live = |stretches: &[Stretch]| union(stretches.iter().copied());
    Sheets { first: live(&line.first), second: live(&line.second), first_dead: live(&line.first_dead) }
}

/// The gaps between the first reader's neighbouring patches that the second reader has both of, and whether they are
/// closed there.
fn gaps(line: &Sheets) -> Vec<(Stretch, bool)> {
    line.first
        .windows(2)
        .filter(|pair| pair.iter().all(|&patch| any_overlaps(&line.second, patch)))
        .filter_map(|pair| Stretch::new(pair[0].stop(), pair[1].start()))
        .map(|gap| (gap, without(&[gap], &line.second).is_empty()))
        .collect()
}

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

fn closes_gaps(lines: &[Sheets]) -> Option<Habit> {
    let cases = lines.iter().flat_map(gaps).map(|(gap, closed)| (gap.length(), closed)).collect();
    let (closed, open, gaps) = told_apart(cases)?;
    Some(Habit::ClosesGaps { closed, open, gaps })
}

fn leaves_out_small(lines: &[Sheets]) -> Option<Habit> {
    let plants = lines.iter().flat_map(|line| {
        line.first.iter().map(|&plant| (plant.length(), !any_overlaps(&line.second, plant)))
    });
    let (up_to, _, plants) = told_apart(plants.collect())?;
    Some(Habit::LeavesOutSmall { up_to, plants })
}

fn edges(lines: &[Sheets]) -> Vec<Habit> {
    let mut outward = Vec::new();
    let mut along = Vec::new();
    for line in lines {
        let one_to_one = |a: Stretch, b: Stretch| {
            let alone =
                |of: Stretch, among: &[Stretch]| among.iter().filter(|other| other.overlaps(of)).count() == 1;
            alone(a, &line.second) && alone(b, &line.first)
        };
        for (a, b) in matched(&line.first, &line.second).both {
            if one_to_one(a, b) {
                let (start, stop) =
                    ((b.start() - a.start()).nanometres(), (b.stop() - a.stop()).nanometres());
                outward.push(half(stop - start));
                along.push(half(start + stop));
            }
        }
    }
    let mut found = Vec::new();
    if let Some(way) = shown(&outward) {
        found.push(if way > Length::ZERO { Habit::Wider(way) } else { Habit::Narrower(Length::ZERO - way) });
    }
    found.extend(shown(&along).map(Habit::TapeOff));
    found
}

fn half(nanometres: i64) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "differences of edges on one line")]
    let half = nanometres as f64 / 2.0;
    half
}

/// The median, where its interval leaves zero out.
fn shown(ways: &[f64]) -> Option<Length> {
    let (low, high, _) = median_interval(ways, SURE)?;
    let middle = median(ways).filter(|_| low > 0.0 || high < 0.0)?;
    #[expect(clippy::cast_possible_truncation, reason = "differences of edges on one line")]
    let whole = middle.round() as i64;
    Some(Length::from_nanometres(whole))
}

fn dead_as_live(lines: &[Sheets]) -> Option<Habit> {
    let mut dead = Length::ZERO;
    let mut written_live = Length::ZERO;
    let mut places = 0;
    for line in lines {
        // only where the first reader has no live canopy over it
        let only_dead = without(&line.first_dead, &line.first);
        let left = without(&only_dead, &line.second);
        dead = dead + total(&only_dead);
        written_live = written_live + total(&only_dead) - total(&left);
        places += only_dead.iter().filter(|&&stretch| any_overlaps(&line.second, stretch)).count();
    }
    let share = if dead > Length::ZERO { written_live.share_of(dead) } else { 0.0 };
    (places >= FEWEST && share >= 0.5).then_some(Habit::DeadAsLive(share))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::length::Unit;
    use crate::seed::{Random, Seed};
    use crate::stretch::tests::cm;

    fn at(n: i64) -> Length {
        Length::from_units(n, Unit::Centimetre)
    }

    /// Patches on a 30 m line with gaps from 2 cm up, in centimetres.
    fn line(random: &mut Random) -> Vec<Stretch> {
        let mut place = |least: i64, most: u64| least + i64::try_from(random.below(most)).unwrap();
        let mut patches = Vec::new();
        let mut from = place(10, 50);
        while from < 2900 {
            let to = from + place(8, 60);
            patches.push(cm(from, to));
            from = to + if place(0, 3) == 0 { place(2, 30) } else { place(30, 150) };
        }
        patches
    }

    /// The same read again with edges off by up to one centimetre either way, each as likely.
    fn again(patches: &[Stretch], random: &mut Random) -> Vec<Stretch> {
        let mut off = || at(i64::try_from(random.below(3)).unwrap() - 1);
        patches.iter().filter_map(|s| Stretch::new(s.start() + off(), s.stop() + off())).collect()
    }

    fn has(found: &[Habit], code: &str) -> bool {
        found.iter().any(|habit| habit.code() == code)
    }

    /// Competent readings get a habit named in at most 5 of 100 cases, and each planted habit is named in at least 95.
    #[test]
    fn planted_habits_are_found_and_competent_readers_left_in_peace() {
        let mut named = 0;
        let mut missed = [0; 4];
        for seed in 0..100 {
            let mut random = Seed::from_purpose("test habits", &[seed]).stream();
            let first = line(&mut random);
            let second = again(&first, &mut random);
            let read = |second: Vec<Stretch>| {
                habits(&[Sheets { first: first.clone(), second, ..Sheets::default() }])
            };
            named += usize::from(!read(second.clone()).is_empty());
            let closed: Vec<Stretch> =
                second.iter().copied().fold(Vec::new(), |mut kept: Vec<Stretch>, next| {
                    match kept.last_mut() {
                        Some(last) if (next.start() - last.stop()).nanometres() < at(10).nanometres() => {
                            *last = Stretch::new(last.start(), next.stop()).unwrap();
                        }
                        _ => kept.push(next),
                    }
                    kept
                });
            let can_be_seen = first.windows(2).filter(|p| p[1].start() - p[0].stop() < at(9)).count() >= 2;
            missed[0] += usize::from(can_be_seen && !has(&read(closed), "habit-closes-gaps"));
            let moved = |start: i64, stop: i64| -> Vec<Stretch> {
                second
                    .iter()
                    .filter_map(|s| Stretch::new(s.start() + at(start), s.stop() + at(stop)))
                    .collect()
            };
            missed[1] += usize::from(!has(&read(moved(-3, 3)), "habit-wider"));
            missed[2] += usize::from(!has(&read(moved(3, -3)), "habit-narrower"));
            missed[3] += usize::from(!has(&read(moved(3, 3)), "habit-tape-off"));
        }
        assert!(named <= 5, "named in {named} of 100");
        assert!(missed.iter().all(|&missed| missed <= 5), "{missed:?}");
    }

    #[test]
    fn dead_written_as_live_and_small_plants_left_out() {
        let sheets = Sheets {
            first: vec![cm(0, 50), cm(100, 104), cm(150, 153), cm(200, 260), cm(300, 380)],
            second: vec![cm(0, 60), cm(200, 275), cm(300, 380)],
            first_dead: vec![cm(50, 60), cm(260, 275)],
        };
        let found = habits(&[sheets]);
        assert!(found.contains(&Habit::DeadAsLive(1.0)), "{found:?}");
        assert!(found.contains(&Habit::LeavesOutSmall { up_to: at(4), plants: 2 }), "{found:?}");
    }

    #[test]
    fn nothing_read_shows_nothing() {
        assert_eq!(habits(&[]), []);
        assert_eq!(habits(&[Sheets::default()]), []);
    }
}
