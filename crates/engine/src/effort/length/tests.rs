use super::*;
use crate::length::Unit;

fn line(metres: i64, canopy: &[(i64, i64)]) -> PilotLine {
    let at = |metre| Length::from_units(metre, Unit::Metre);
    let canopy = canopy.iter().map(|&(from, to)| Stretch::new(at(from), at(to)).unwrap()).collect();
    PilotLine { canopy, length: at(metres) }
}

/// By hand: pieces 1 0 0 0 and 1 1 0 0. A piece of one line and a piece of the other differ in 8 of the 16 pairs, so the
/// variance of a piece is half of a half.
#[test]
fn the_spread_of_pieces_by_hand() {
    let pilot = [line(4, &[(0, 1)]), line(4, &[(0, 2)])];
    let quarter = spread(&pilot, 4).unwrap();
    assert!((quarter.variance - 0.25).abs() < 1e-15, "{quarter:?}");
    assert!((quarter.length - 1.0).abs() < 1e-15);
    let whole = spread(&pilot, 1).unwrap();
    assert!((whole.variance - 0.031_25).abs() < 1e-15 && whole.along.abs() < 1e-15);
}

#[test]
fn lines_of_unlike_length_or_a_single_one_say_nothing() {
    assert_eq!(spread(&[line(4, &[(0, 1)])], 2), None);
    assert_eq!(spread(&[line(4, &[(0, 1)]), line(5, &[(0, 1)])], 2), None);
    assert_eq!(Law::of_pilot(&[line(4, &[]), line(4, &[])]), None);
}

/// Each metre drawn for itself, so the variance falls as 1/L.
fn fresh_metres() -> Vec<PilotLine> {
    let mut random = Seed::from_purpose("test pilot", &[]).stream();
    (0..80)
        .map(|_| {
            let covered: Vec<(i64, i64)> =
                (0..60).filter(|_| random.below(4) == 0).map(|metre| (metre, metre + 1)).collect();
            line(60, &covered)
        })
        .collect()
}

#[test]
fn metres_drawn_for_themselves_fall_as_one_over_the_length() {
    let law = Law::of_pilot(&fresh_metres()).unwrap();
    assert!(law.fall > 0.9, "{law:?}");
    // a metre that is covered or not, p = 1/4: the variance of one metre is 3/16
    assert!((law.of_one_metre / 0.1875 - 1.0).abs() < 0.35, "{law:?}");
}

/// By hand: with v = L^(−1/2) and a cost of c + m L, the cost c L^(−1/2) + m L^(1/2) is least at L = c/m.
#[test]
fn the_cheapest_length_is_where_calculus_has_it() {
    let law = Law { of_one_metre: 1.0, fall: 0.5 };
    let cost = Cost { walk: 9.0, lay: 6.0, per_metre: 0.5 };
    let lengths: Vec<f64> = (10..=100).step_by(5).map(f64::from).collect();
    let does = |deviation: f64, units| deviation * deviation / count(units) <= 1e-5;
    let designs = designs(law, &lengths, cost, does);
    assert_eq!(designs.len(), lengths.len());
    let best = cheapest(&designs).unwrap();
    assert!((best.length - 30.0).abs() < 1e-9, "{best:?}");
    assert!((best.minutes - count(best.units) * 30.0).abs() < 1e-9);
}

/// Lines that are the same all along gain nothing by length.
#[test]
fn where_lines_are_the_same_all_along_the_shortest_is_cheapest() {
    let pilot: Vec<PilotLine> = (0..8)
        .map(|at| line(60, &(0..12).map(|five| (5 * five, 5 * five + 1 + at % 4)).collect::<Vec<_>>()))
        .collect();
    let law = Law::of_pilot(&pilot).unwrap();
    assert!(law.fall < 0.05, "{law:?}");
    let cost = Cost { walk: 10.0, lay: 5.0, per_metre: 1.0 };
    let does = |deviation: f64, units| deviation * deviation / count(units) <= 0.001;
    let lengths = [20.0, 40.0, 60.0];
    let best = cheapest(&designs(law, &lengths, cost, does)).unwrap();
    assert!((best.length - 20.0).abs() < 1e-9);
    let sure =
        sureness(&pilot, 1.0, &lengths, cost, 20.0, does, Seed::from_purpose("test redrawn", &[])).unwrap();
    assert!(sure.nearly_cheapest > 0.95 && sure.high < 21.0 && sure.redrawn > 150, "{sure:?}");
}
