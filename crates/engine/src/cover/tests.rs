use super::*;
use crate::length::Unit;
use crate::rule::GapRule;
use crate::stretch::tests::cm;

fn at(cm: i64) -> Length {
    Length::from_units(cm, Unit::Centimetre)
}

fn live(species: u32, start: i64, stop: i64) -> Intercept {
    Intercept { stretch: cm(start, stop), species, plant: None, life: Life::Live }
}

fn dead(species: u32, start: i64, stop: i64) -> Intercept {
    Intercept { life: Life::Dead, ..live(species, start, stop) }
}

fn of_plant(plant: u32, intercept: Intercept) -> Intercept {
    Intercept { plant: Some(plant), ..intercept }
}

fn rule(limit: i64, change: impl FnOnce(&mut GapRule)) -> ReadingRule {
    let mut rule = ReadingRule::AS_WRITTEN.with_limit(at(limit));
    change(&mut rule.gap);
    rule
}

fn canopy(intercepts: &[Intercept], rule: &ReadingRule) -> i64 {
    line_cover(at(1000), intercepts, rule).canopy_length().nanometres() / Unit::Centimetre.nanometres()
}

/// Pieces of 24, 23, 25 and 22 cm with gaps of 4, 9 and 45 cm between them, worked out by hand:
/// 94 cm as written, 98 under 5 cm, 107 under 10 or 15 cm.
#[test]
fn a_plant_under_four_rules() {
    let plant = [live(0, 100, 124), live(0, 128, 151), live(0, 160, 185), live(0, 230, 252)];
    for (limit, expected) in [(0, 94), (3, 94), (5, 98), (10, 107), (15, 107)] {
        assert_eq!(canopy(&plant, &rule(limit, |_| ())), expected, "limit {limit} cm");
    }
}

/// Common practice, no source: gaps of 6 in and 3.5 in inside one plant break it under a rule of 2.5 in,
/// gaps of about 1 in don't.
#[test]
fn two_and_a_half_inch_rule() {
    let half = |n: i64| Length::from_nanometres(n * Unit::Inch.nanometres() / 2);
    let piece = |from, to| Intercept {
        stretch: Stretch::new(half(from), half(to)).unwrap(),
        species: 0,
        plant: None,
        life: Life::Live,
    };
    let rule = ReadingRule::AS_WRITTEN.with_limit(half(5));
    // gaps: 6 in, 3.5 in, 1 in
    let cover = line_cover(half(200), &[piece(0, 10), piece(22, 30), piece(37, 40), piece(42, 50)], &rule);
    assert_eq!(cover.species[0].live.len(), 3);
    assert_eq!(cover.species[0].closed.len(), 1);
    assert_eq!(cover.canopy_length(), half(10 + 8 + 13));
}

#[test]
fn a_gap_of_exactly_the_limit_does_as_the_rule_says() {
    let pair = [live(0, 0, 10), live(0, 15, 20)];
    assert_eq!(canopy(&pair, &rule(5, |gap| gap.equal = Bridging::Breaks)), 15);
    assert_eq!(canopy(&pair, &rule(5, |gap| gap.equal = Bridging::Bridged)), 20);
}

#[test]
fn the_rule_may_stop_at_the_plant() {
    let two = [of_plant(1, live(0, 0, 10)), of_plant(2, live(0, 12, 20)), of_plant(2, live(0, 22, 30))];
    assert_eq!(canopy(&two, &rule(5, |gap| gap.two_plants = Bridging::Breaks)), 28);
    assert_eq!(canopy(&two, &rule(5, |_| ())), 30);
    // without marks each intercept is a plant of its own
    let unmarked = [live(0, 0, 10), live(0, 12, 20)];
    assert_eq!(canopy(&unmarked, &rule(5, |gap| gap.two_plants = Bridging::Breaks)), 18);
}

#[test]
fn another_species_in_the_gap() {
    let around = [live(0, 0, 10), live(1, 11, 12), live(0, 13, 20)];
    let bridged = line_cover(at(100), &around, &rule(5, |_| ()));
    assert_eq!((bridged.canopy_length(), bridged.sum_length()), (at(20), at(21)));
    let breaks = line_cover(at(100), &around, &rule(5, |gap| gap.across_species = Bridging::Breaks));
    assert_eq!((breaks.canopy_length(), breaks.sum_length()), (at(18), at(18)));
}

#[test]
fn between_species_what_closes_belongs_to_none() {
    let neighbours = [live(0, 0, 10), live(1, 12, 20)];
    let cover = line_cover(at(100), &neighbours, &rule(5, |gap| gap.between_species = Bridging::Bridged));
    assert_eq!(cover.canopy_length(), at(20));
    assert_eq!(cover.sum_length(), at(18));
    assert_eq!(cover.between, [Closed { stretch: cm(10, 12), closure: Closure::BetweenSpecies }]);
}

#[test]
fn dead_wood_in_a_gap() {
    let plant = [live(0, 0, 10), dead(0, 11, 13), live(0, 14, 20)];
    let over = line_cover(at(100), &plant, &rule(5, |_| ()));
    assert_eq!((over.canopy_length(), over.dead_length()), (at(20), at(0)));
    let stops = line_cover(at(100), &plant, &rule(5, |gap| gap.across_dead = Bridging::Breaks));
    assert_eq!(stops.canopy_length(), at(16));
    // live and dead together stay one canopy of 20 cm
    assert_eq!(stops.dead_length(), at(4));
}

/// Boyd, Bates and Miller 2007: a dead stretch shorter than the gap that touches live canopy is read as live.
#[test]
fn short_dead_stretches_join_live_ones() {
    let plant = [live(0, 0, 10), dead(0, 10, 14), dead(0, 30, 34), live(0, 50, 60), dead(0, 60, 72)];
    let joins = ReadingRule { dead: DeadRule::ShortJoinsLive, ..rule(5, |_| ()) };
    let cover = line_cover(at(100), &plant, &joins);
    assert_eq!(cover.canopy_length(), at(24));
    assert_eq!(cover.dead_length(), at(16));
    assert_eq!(cover.species[0].closed, [Closed { stretch: cm(10, 14), closure: Closure::DeadJoined }]);
    let apart = line_cover(at(100), &plant, &rule(5, |_| ()));
    assert_eq!((apart.canopy_length(), apart.dead_length()), (at(20), at(20)));
    let left_out = line_cover(at(100), &plant, &ReadingRule { dead: DeadRule::LeftOut, ..joins });
    assert_eq!((left_out.canopy_length(), left_out.dead_length()), (at(20), at(0)));
    let counts = line_cover(at(100), &plant, &ReadingRule { dead: DeadRule::CountsAsLive, ..joins });
    assert_eq!((counts.canopy_length(), counts.dead_length()), (at(40), at(0)));
}

#[test]
fn the_lines_end() {
    let edge = [live(0, 3, 10), live(0, 980, 998)];
    assert_eq!(canopy(&edge, &rule(5, |_| ())), 25);
    assert_eq!(canopy(&edge, &rule(5, |gap| gap.line_end = Bridging::Bridged)), 30);
    // an empty line stays empty
    assert_eq!(canopy(&[], &rule(5, |gap| gap.line_end = Bridging::Bridged)), 0);
}

#[test]
fn beyond_the_line_is_clipped() {
    assert_eq!(canopy(&[live(0, 990, 1040)], &rule(0, |_| ())), 10);
}

#[test]
fn too_short_is_judged_after_closing() {
    let pieces = [live(0, 0, 2), live(0, 3, 5), live(0, 50, 52)];
    let shortest = ReadingRule { shortest: at(4), ..rule(2, |_| ()) };
    let cover = line_cover(at(100), &pieces, &shortest);
    assert_eq!(cover.canopy_length(), at(5));
    assert_eq!(cover.species[0].too_short, [2]);
}

#[test]
fn every_piece_names_its_intercepts() {
    let cover = line_cover(at(100), &[live(0, 20, 30), live(0, 0, 10), live(0, 5, 15)], &rule(6, |_| ()));
    assert_eq!(cover.species[0].live, [Piece { stretch: cm(0, 30), from: vec![0, 1, 2] }]);
}

/// Live canopy of two species 4 cm apart closes under a rule of 5 cm, and still does under a rule so wide that it
/// reaches dead wood standing 60 cm away.
#[test]
fn a_wider_rule_never_opens_a_gap_between_species() {
    let row = [live(0, 0, 10), live(1, 14, 20), dead(0, 70, 72)];
    let both = |limit| {
        rule(limit, |gap| {
            gap.between_species = Bridging::Bridged;
            gap.across_dead = Bridging::Breaks;
        })
    };
    assert_eq!((canopy(&row, &both(5)), canopy(&row, &both(65))), (20, 20));
}
