//! How often a planted mistake is recognised, and how often a competent reading is blamed.

use super::*;
use crate::length::Unit;
use crate::seed::{Random, Seed};
use crate::stretch::tests::cm;
use std::fmt::Write;

fn at(n: i64) -> Length {
    Length::from_units(n, Unit::Centimetre)
}

fn between(random: &mut Random, least: i64, below: i64) -> i64 {
    least + i64::try_from(random.below(u64::try_from(below - least).unwrap())).unwrap()
}

/// A line of 30 m read to the centimetre: plants of 8 to 67 cm, small gaps of 4 to 29 cm and larger ones up to 180 cm.
fn key(random: &mut Random) -> Vec<Stretch> {
    let mut patches = Vec::new();
    let mut from = between(random, 10, 60);
    while from < 2900 {
        let to = from + between(random, 8, 68);
        patches.push(cm(from, to));
        from =
            to + if between(random, 0, 3) == 0 { between(random, 4, 30) } else { between(random, 30, 180) };
    }
    patches
}

/// The same read again, each edge off by a division either way or not at all, each as likely.
fn again(patches: &[Stretch], random: &mut Random) -> Vec<Stretch> {
    patches.iter().map(|s| moved(*s, between(random, -1, 2), between(random, -1, 2))).collect()
}

fn moved(s: Stretch, start: i64, stop: i64) -> Stretch {
    Stretch::new(s.start() + at(start), s.stop() + at(stop)).unwrap()
}

/// The learner's patches with every gap of at most `limit` read as canopy.
fn closed(patches: &[Stretch], limit: Length) -> Vec<Stretch> {
    let mut kept: Vec<Stretch> = Vec::new();
    for &next in patches {
        match kept.last_mut() {
            Some(last) if next.start() - last.stop() <= limit => {
                *last = Stretch::new(last.start(), next.stop()).unwrap();
            }
            _ => kept.push(next),
        }
    }
    kept
}

/// The sixth smallest of some lengths.
fn sixth(mut lengths: Vec<Length>) -> Length {
    lengths.sort_unstable();
    lengths[5]
}

fn gaps_of(patches: &[Stretch]) -> Vec<Length> {
    patches.windows(2).map(|pair| pair[1].start() - pair[0].stop()).collect()
}

/// Small stretches in the large gaps: grass, or dead wood away from live canopy.
fn beside(patches: &[Stretch]) -> Vec<Stretch> {
    let wide = patches.windows(2).filter(|pair| pair[1].start() - pair[0].stop() > at(40));
    wide.take(8).map(|pair| Stretch::new(pair[0].stop() + at(12), pair[0].stop() + at(30)).unwrap()).collect()
}

struct Planted {
    name: &'static str,
    /// What may be named: the mistake, and what looks like it.
    named: &'static [&'static str],
    plant: fn(&mut Random) -> Sheets,
}

/// Several lines of one mistake, at least three divisions large, that affects six intercepts or more.
const PLANTED: [Planted; 11] = [
    Planted {
        name: "closes gaps",
        named: &["habit-closes-gaps"],
        plant: |random| {
            let first = key(random);
            let limit = sixth(gaps_of(&first)).max(at(5));
            let second = again(&closed(&first, limit), random);
            Sheets { first, second, ..Sheets::default() }
        },
    },
    Planted {
        name: "opens gaps",
        named: &["habit-opens-gaps"],
        plant: |random| {
            let second = key(random);
            let limit = sixth(gaps_of(&second)).max(at(5));
            let first = again(&closed(&second, limit), random);
            Sheets { first, second, ..Sheets::default() }
        },
    },
    Planted { name: "wider", named: &["habit-wider"], plant: |random| shifted(random, -3, 3) },
    Planted { name: "narrower", named: &["habit-narrower"], plant: |random| shifted(random, 3, -3) },
    Planted { name: "zero off", named: &["habit-tape-off"], plant: |random| shifted(random, 3, 3) },
    Planted { name: "zero off, back", named: &["habit-tape-off"], plant: |random| shifted(random, -3, -3) },
    Planted {
        // two in a thousand: six divisions at the far end
        name: "tape slack",
        named: &["habit-tape-stretched", "habit-tape-off"],
        plant: |random| {
            let first = key(random);
            let second = again(&first, random)
                .into_iter()
                .map(|s| {
                    let further = |edge: Length| edge.nanometres() / 10_000_000 / 500;
                    moved(s, further(s.start()), further(s.stop()))
                })
                .collect();
            Sheets { first, second, ..Sheets::default() }
        },
    },
    Planted {
        name: "other edge of the tape",
        named: &["habit-other-edge", "habit-closes-gaps"],
        plant: |random| {
            let first = key(random);
            let second = first
                .iter()
                .map(|s| {
                    let mut off = || between(random, 3, 6) * if random.below(2) == 0 { 1 } else { -1 };
                    let (start, stop) = (off(), off());
                    // a small plant doesn't turn inside out
                    if s.length() > at(12) {
                        moved(*s, start, stop)
                    } else {
                        moved(*s, -start.abs(), stop.abs())
                    }
                })
                .collect();
            Sheets { first, second, ..Sheets::default() }
        },
    },
    Planted {
        name: "dead as live",
        named: &["habit-dead-as-live"],
        plant: |random| {
            let first = key(random);
            let first_dead = beside(&first);
            let all: Vec<Stretch> = first.iter().chain(&first_dead).copied().collect();
            let second = again(&union(all), random);
            Sheets { first, second, first_dead, ..Sheets::default() }
        },
    },
    Planted {
        name: "grass as canopy",
        named: &["habit-other-as-canopy"],
        plant: |random| {
            let first = key(random);
            let first_other = beside(&first);
            let all: Vec<Stretch> = first.iter().chain(&first_other).copied().collect();
            let second = again(&union(all), random);
            Sheets { first, second, first_other, ..Sheets::default() }
        },
    },
    Planted {
        name: "leaves out small plants",
        named: &["habit-leaves-out-small"],
        plant: |random| {
            let first = key(random);
            let limit = sixth(first.iter().map(|s| s.length()).collect());
            let left: Vec<Stretch> = first.iter().copied().filter(|s| s.length() > limit).collect();
            let second = again(&left, random);
            Sheets { first, second, ..Sheets::default() }
        },
    },
];

fn shifted(random: &mut Random, start: i64, stop: i64) -> Sheets {
    let first = key(random);
    let second = again(&first, random)
        .into_iter()
        .filter_map(|s| Stretch::new(s.start() + at(start), s.stop() + at(stop)))
        .collect();
    Sheets { first, second, ..Sheets::default() }
}

const LEARNERS: u64 = 400;

/// At least 95 of 100 learners with one mistake get it named, and nothing but what looks like it.
#[test]
fn a_planted_mistake_is_recognised() {
    let mut told = String::new();
    let mut few = Vec::new();
    for planted in &PLANTED {
        let right = (0..LEARNERS).filter(|&learner| {
            let mut random = Seed::from_purpose(planted.name, &[learner]).stream();
            let found = habits(&[(planted.plant)(&mut random)]);
            let named = |code| found.iter().any(|habit: &Habit| habit.code() == code);
            named(planted.named[0]) && found.iter().all(|habit| planted.named.contains(&habit.code()))
                || planted.named[1..].iter().any(|code| named(code))
                    && found.iter().all(|habit| planted.named.contains(&habit.code()))
        });
        let share =
            100.0 * crate::num::count(right.count()) / crate::num::count(usize::try_from(LEARNERS).unwrap());
        write!(told, "{} {share:.1}; ", planted.name).unwrap();
        if share < 95.0 {
            few.push(planted.name);
        }
    }
    assert!(few.is_empty(), "fewer than 95 of 100: {few:?} of {told}");
}

/// At most 5 of 100 competent readings get anything named.
#[test]
fn competent_readers_are_left_in_peace() {
    let blamed = (0..LEARNERS).filter(|&learner| {
        let mut random = Seed::from_purpose("competent", &[learner]).stream();
        let first = key(&mut random);
        let second = again(&first, &mut random);
        let (first_dead, first_other) = (Vec::new(), beside(&first));
        !habits(&[Sheets { first, second, first_dead, first_other }]).is_empty()
    });
    let blamed =
        100.0 * crate::num::count(blamed.count()) / crate::num::count(usize::try_from(LEARNERS).unwrap());
    assert!(blamed <= 5.0, "{blamed} of 100");
}

#[test]
fn dead_written_as_live_and_small_plants_left_out() {
    let sheets = Sheets {
        first: vec![cm(0, 50), cm(100, 104), cm(150, 153), cm(200, 260), cm(300, 380)],
        second: vec![cm(0, 60), cm(200, 275), cm(300, 380)],
        first_dead: vec![cm(50, 60), cm(260, 275)],
        ..Sheets::default()
    };
    let found = habits(&[sheets]);
    assert!(found.contains(&Habit::DeadAsLive(1.0)), "{found:?}");
    assert!(found.contains(&Habit::LeavesOutSmall { up_to: at(4), plants: 2 }), "{found:?}");
}

/// Six plants are too few for an interval of 97.5 %, but all of them three divisions wider are no chance.
#[test]
fn six_plants_are_enough() {
    let first: Vec<Stretch> = (1..=6).map(|n| cm(100 * n + n, 100 * n + 40)).collect();
    let second = first.iter().map(|s| moved(*s, -3, 3)).collect();
    let found = habits(&[Sheets { first, second, ..Sheets::default() }]);
    assert_eq!(found, [Habit::Wider(at(3))]);
}

#[test]
fn nothing_read_shows_nothing() {
    assert_eq!(habits(&[]), []);
    assert_eq!(habits(&[Sheets::default()]), []);
}
