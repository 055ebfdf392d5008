//! Laws of change, each stated so that it is true, tried on random readings.

use proptest::prelude::*;
use tautline_engine::change::{Pair, largest_hidden, p_value, paired, signs, tape::turnover};
use tautline_engine::confidence::Tail;
use tautline_engine::estimate::{Line, SamplingError};
use tautline_engine::length::Length;
use tautline_engine::seed::Seed;
use tautline_engine::stretch::{Stretch, any_overlaps, total, union};
use tautline_engine::trend::robust::{mann_kendall, theil_sen};

/// A line of 300 tenths of a foot.
const LINE: i64 = 300;
const TENTH: i64 = 30_480_000;

fn at(tenths: i64) -> Length {
    Length::from_nanometres(tenths * TENTH)
}

fn reading() -> impl Strategy<Value = Vec<Stretch>> {
    let patch = (0..LINE - 1, 1_i64..50).prop_map(|(start, length)| {
        Stretch::new(at(start), at((start + length).min(LINE))).expect("start lies before the line's end")
    });
    prop::collection::vec(patch, 0..14)
}

fn mirrored(reading: &[Stretch]) -> Vec<Stretch> {
    let end = at(LINE);
    reading.iter().filter_map(|s| Stretch::new(end - s.stop(), end - s.start())).collect()
}

fn pairs() -> impl Strategy<Value = Vec<Pair>> {
    prop::collection::vec((10_u32..60, 0_u32..100, 0_u32..100), 3..14).prop_map(|lines| {
        lines
            .into_iter()
            .map(|(length, earlier, later)| {
                let length = f64::from(length);
                let line = |percent| Line::new(length * f64::from(percent) / 100.0, length);
                Pair { earlier: line(earlier), later: line(later) }
            })
            .collect()
    })
}

proptest! {
    /// Gained less lost is the net change, to the nanometre; kept and lost make the earlier reading, kept and gained
    /// the later one; no two of them share any tape.
    #[test]
    fn the_tape_adds_up(earlier in reading(), later in reading()) {
        let change = turnover(&earlier, &later);
        let (before, after) = (total(&union(earlier)), total(&union(later)));
        prop_assert_eq!(change.net(), after - before);
        prop_assert_eq!(total(&change.kept) + total(&change.lost), before);
        prop_assert_eq!(total(&change.kept) + total(&change.gained), after);
        let apart = |a: &[Stretch], b: &[Stretch]| b.iter().all(|&stretch| !any_overlaps(a, stretch));
        prop_assert!(apart(&change.gained, &change.lost));
        prop_assert!(apart(&change.kept, &change.gained) && apart(&change.kept, &change.lost));
    }

    /// Time turned round turns gained into lost; the tape read from its other end changes no length.
    #[test]
    fn order_of_visits_and_direction_of_the_tape(earlier in reading(), later in reading()) {
        let there = turnover(&earlier, &later);
        let back = turnover(&later, &earlier);
        prop_assert_eq!(&there.gained, &back.lost);
        prop_assert_eq!(&there.kept, &back.kept);
        let mirror = turnover(&mirrored(&earlier), &mirrored(&later));
        prop_assert_eq!(total(&there.gained), total(&mirror.gained));
        prop_assert_eq!(there.turned_over(), mirror.turned_over());
    }

    /// Visits swapped turn the sign and leave the error; another unit leaves both; more confidence hides more.
    #[test]
    fn change_of_the_same_lines(pairs in pairs()) {
        let there = paired(&pairs).expect("usable lines");
        let swapped: Vec<Pair> =
            pairs.iter().map(|pair| Pair { earlier: pair.later, later: pair.earlier }).collect();
        let back = paired(&swapped).expect("usable lines");
        prop_assert!((there.value + back.value).abs() < 1e-12);
        let in_feet = |line: Line| Line::new(line.intercept / 0.3048, line.length / 0.3048);
        let feet: Vec<Pair> = pairs
            .iter()
            .map(|pair| Pair { earlier: in_feet(pair.earlier), later: in_feet(pair.later) })
            .collect();
        let feet = paired(&feet).expect("usable lines");
        prop_assert!((there.value - feet.value).abs() < 1e-12);
        let se = |estimate: &tautline_engine::estimate::Estimate| match estimate.error {
            SamplingError::Known { se, .. } => se,
            SamplingError::Unknown(_) => unreachable!("three pairs or more"),
        };
        prop_assert!((se(&there) - se(&back)).abs() < 1e-12 && (se(&there) - se(&feet)).abs() < 1e-12);
        if se(&there) > 1e-9 {
            let hidden = |confidence| largest_hidden(&there, Tail::of_bound(confidence)).expect("has a spread");
            prop_assert!(hidden(0.95) > hidden(0.9) && hidden(0.9) >= there.value.abs());
            prop_assert!((0.0..=1.0).contains(&p_value(&there).expect("has a spread")));
        }
    }

    /// The count of signs doesn't care for the order of lines or the unit, and half of it is never below 1/2^n.
    #[test]
    fn signs_are_counted_alike_in_any_order(differences in prop::collection::vec(-50_i32..50, 1..10)) {
        let p = |scale: f64, reversed: bool| {
            let mut values: Vec<f64> = differences.iter().map(|&d| f64::from(d) * scale).collect();
            if reversed {
                values.reverse();
            }
            signs::p_value(&values, 0, &mut Seed::from_purpose("laws of signs", &[]).stream()).0
        };
        prop_assert!((p(1.0, false) - p(1.0, true)).abs() < 1e-12);
        prop_assert!((p(1.0, false) - p(0.003_048, false)).abs() < 1e-12);
        prop_assert!(p(1.0, false) >= 1.0 / f64::from(1_u32 << differences.len()));
    }

    /// A slope of a straight line is that line's; years counted from elsewhere change nothing.
    #[test]
    fn slopes(slope in -5_i32..5, years in prop::collection::btree_set(2000_u16..2040, 2..10)) {
        let visits = |from: f64| -> Vec<(f64, f64)> {
            years.iter().map(|&year| (f64::from(year) - from, f64::from(slope) * f64::from(year))).collect()
        };
        prop_assert_eq!(theil_sen(&visits(0.0)), Some(f64::from(slope)));
        prop_assert_eq!(theil_sen(&visits(0.0)), theil_sen(&visits(2000.0)));
        let values: Vec<f64> = visits(0.0).into_iter().map(|(_, value)| value).collect();
        let pairs = years.len() * (years.len() - 1) / 2;
        let s = f64::from(slope.signum()) * f64::from(u32::try_from(pairs).expect("few pairs"));
        prop_assert!((mann_kendall(&values).s - s).abs() < 1e-12);
    }
}
