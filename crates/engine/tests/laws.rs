//! Laws of reading a line, each stated so that it is true, tried on random readings.

use proptest::prelude::*;
use tautline_engine::cover::{Canopy, CanopyLength, Intercept, Life, LineCover, line_cover};
use tautline_engine::curve::curve;
use tautline_engine::length::{Bare, DecimalMark, Length, Unit, read, write};
use tautline_engine::rule::{Bridging, DeadRule, GapRule, ReadingRule};
use tautline_engine::stretch::Stretch;

/// A line of 200 quarter inches.
const LINE: i64 = 200;
const QUARTER: i64 = 6_350_000;

fn at(quarters: i64) -> Length {
    Length::from_nanometres(quarters * QUARTER)
}

fn intercept() -> impl Strategy<Value = Intercept> {
    (0..LINE - 1, 1_i64..40, 0_u32..3, proptest::option::of(0_u32..3), prop::bool::weighted(0.25)).prop_map(
        |(start, length, species, plant, dead)| Intercept {
            stretch: Stretch::new(at(start), at((start + length).min(LINE)))
                .expect("start lies before the line's end"),
            species,
            plant,
            life: if dead { Life::Dead } else { Life::Live },
        },
    )
}

fn reading() -> impl Strategy<Value = Vec<Intercept>> {
    prop::collection::vec(intercept(), 0..14)
}

fn bridging() -> impl Strategy<Value = Bridging> {
    prop::bool::ANY.prop_map(|yes| if yes { Bridging::Bridged } else { Bridging::Breaks })
}

fn rule() -> impl Strategy<Value = ReadingRule> {
    let dead = prop_oneof![
        Just(DeadRule::LeftOut),
        Just(DeadRule::Apart),
        Just(DeadRule::ShortJoinsLive),
        Just(DeadRule::CountsAsLive)
    ];
    let bridges = (bridging(), bridging(), bridging(), bridging(), bridging(), bridging());
    (0_i64..30, bridges, dead, 0_i64..6).prop_map(|(limit, (a, b, c, d, e, f), dead, shortest)| ReadingRule {
        gap: GapRule {
            limit: at(limit),
            equal: a,
            two_plants: b,
            across_species: c,
            between_species: d,
            across_dead: e,
            line_end: f,
        },
        dead,
        shortest: at(shortest),
    })
}

fn cover(intercepts: &[Intercept], rule: &ReadingRule) -> LineCover {
    line_cover(at(LINE), intercepts, rule)
}

/// What a line comes to, without the numbers of its rows.
fn figures(cover: &LineCover) -> (Length, Length, Length, Vec<(u32, Length, Length)>) {
    let species = cover.species.iter().map(|s| (s.species, s.live_length(), s.dead_length())).collect();
    (cover.canopy_length(), cover.sum_length(), cover.dead_length(), species)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    /// Under any rule, and under the common ones, in which a gap is only asked how long it is.
    #[test]
    fn the_canopy_alone_is_the_canopy(mut rows in reading(), rule in rule()) {
        let mut common = rule;
        common.gap.two_plants = Bridging::Bridged;
        common.gap.across_species = Bridging::Bridged;
        common.gap.between_species = Bridging::Breaks;
        common.gap.across_dead = Bridging::Bridged;
        common.shortest = Length::ZERO;
        for rule in [rule, common] {
            let whole = cover(&rows, &rule);
            let whole = Canopy { length: whole.canopy_length(), stretches: whole.canopy.len() };
            prop_assert_eq!(CanopyLength::under(rule).of_line(at(LINE), &mut rows), whole);
        }
    }

    #[test]
    fn order_of_rows_does_not_matter(rows in reading(), rule in rule(), turn in 0_usize..14) {
        let mut turned = rows.clone();
        if !turned.is_empty() {
            let by = turn % turned.len();
            turned.rotate_left(by);
            turned.reverse();
        }
        prop_assert_eq!(figures(&cover(&rows, &rule)), figures(&cover(&turned, &rule)));
    }

    #[test]
    fn the_union_stays_within_the_line_and_within_the_sum(rows in reading(), rule in rule()) {
        let found = cover(&rows, &rule);
        prop_assert!(found.canopy_length() <= at(LINE));
        prop_assert!(found.canopy_length() + found.dead_length() <= at(LINE));
        // what closed between species belongs to none of them
        prop_assert!(found.canopy_length() - found.between_length() <= found.sum_length());
    }

    #[test]
    fn live_and_total_never_fall_as_the_gap_limit_grows(rows in reading(), rule in rule(), more in 1_i64..30) {
        let wider = rule.with_limit(rule.gap.limit + at(more));
        let (narrow, wide) = (cover(&rows, &rule), cover(&rows, &wider));
        prop_assert!(narrow.canopy_length() <= wide.canopy_length());
        prop_assert!(narrow.sum_length() <= wide.sum_length());
        let total = |cover: &LineCover| cover.canopy_length() + cover.dead_length();
        prop_assert!(total(&narrow) <= total(&wide));
    }

    #[test]
    fn splitting_an_intercept_into_touching_pieces_does_not_matter(
        rows in reading(), rule in rule(), which in 0_usize..14, part in 1_i64..39,
    ) {
        // not where the rule stops at unmarked plants or leaves short pieces out: there a split is a new plant or piece
        let mut rule = rule;
        rule.shortest = Length::ZERO;
        rule.gap.two_plants = Bridging::Bridged;
        prop_assume!(!rows.is_empty());
        let which = which % rows.len();
        let whole = rows[which];
        let middle = whole.stretch.start() + at(part);
        prop_assume!(middle < whole.stretch.stop());
        let piece = |start, stop| Intercept { stretch: Stretch::new(start, stop).unwrap(), ..whole };
        let mut split = rows.clone();
        split[which] = piece(whole.stretch.start(), middle);
        split.push(piece(middle, whole.stretch.stop()));
        prop_assert_eq!(figures(&cover(&rows, &rule)), figures(&cover(&split, &rule)));
    }

    #[test]
    fn reversing_the_tape_does_not_matter(rows in reading(), rule in rule()) {
        let mirrored: Vec<Intercept> = rows
            .iter()
            .map(|row| Intercept {
                stretch: Stretch::new(at(LINE) - row.stretch.stop(), at(LINE) - row.stretch.start()).unwrap(),
                ..*row
            })
            .collect();
        prop_assert_eq!(figures(&cover(&rows, &rule)), figures(&cover(&mirrored, &rule)));
    }

    #[test]
    fn the_unit_does_not_matter_for_values_exact_in_both(quarters in 0_i64..4000) {
        // a quarter inch is 0.635 cm and 6.35 mm, exactly
        let millimetres = format!("{}.{:02} mm", quarters * 635 / 100, quarters * 635 % 100);
        let inches = format!("{}.{:02} in", quarters / 4, quarters % 4 * 25);
        let read = |text: &str| read(text, None, DecimalMark::Point).unwrap().length;
        prop_assert_eq!(read(&millimetres), read(&inches));
    }

    #[test]
    fn what_is_written_reads_back(eighths in 0_i64..20_000, notation in 0_usize..3) {
        let text = ["0.125 in", "1/8 in", "1'0 1/8\""][notation];
        let notation = read(text, None, DecimalMark::Point).unwrap().notation;
        let length = Length::from_nanometres(eighths * Unit::Inch.nanometres() / 8);
        let back = read(&write(length, notation), Some(Bare::Unit(Unit::Inch)), DecimalMark::Point).unwrap();
        prop_assert_eq!(back.length, length);
    }

    #[test]
    fn the_curve_is_the_cover_under_each_rule(rows in reading(), rule in rule(), limit in 0_i64..60) {
        let asked = rule.gap.limit + at(limit);
        let steps = curve(at(LINE), &rows, &rule, at(100));
        let step = steps.iter().rev().find(|step| step.limit <= asked).unwrap();
        let found = cover(&rows, &rule.with_limit(asked));
        prop_assert_eq!((step.canopy, step.sum, step.dead), (found.canopy_length(), found.sum_length(), found.dead_length()));
    }

    #[test]
    fn any_text_is_read_or_refused_with_a_place(text in ".{0,24}") {
        if let Err(error) = read(&text, Some(Bare::FeetAndInches), DecimalMark::Comma) {
            prop_assert!(error.at >= 1 && error.at <= text.chars().count() + 1);
        }
    }
}
