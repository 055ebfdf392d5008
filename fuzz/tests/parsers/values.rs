//! Lengths, dates, slopes and goals.

use crate::EACH;
use crate::text::{LENGTHS, VALUES, text};
use bolero::check;
use tautline_engine::length::{Bare, DecimalMark, Division, Length, Notation, Unit, read, write};
use tautline_survey::date::Date;
use tautline_survey::goal::{self, Goal};
use tautline_survey::input::Input;
use tautline_survey::measure::Measure;
use tautline_survey::place::{LinePlace, Openness, Position, Told};
use tautline_survey::plan::Slope;

const UNITS: [Option<Bare>; 5] = [
    None,
    Some(Bare::Unit(Unit::Inch)),
    Some(Bare::Unit(Unit::Foot)),
    Some(Bare::DecimalFeet),
    Some(Bare::FeetAndInches),
];

#[test]
fn length() {
    check!(name = "length").with_test_time(EACH).for_each(|bytes: &[u8]| {
        let bytes = text(bytes, LENGTHS);
        let text = String::from_utf8_lossy(&bytes);
        for unit in UNITS {
            for mark in [DecimalMark::Point, DecimalMark::Comma] {
                match read(&text, unit, mark) {
                    Ok(written) => {
                        assert!((Length::ZERO..=Length::LONGEST).contains(&written.length));
                        let measure = Measure::read(&text, unit, mark).expect("it was read before");
                        assert_eq!(measure.length(), written.length);
                        if !written.rounded && is_on_a_tape(written.notation) {
                            let printed = write(written.length, written.notation);
                            let again = read(&printed, None, DecimalMark::Point)
                                .expect("what was printed is a length");
                            assert_eq!(again.length, written.length, "{printed}");
                        }
                    }
                    Err(error) => {
                        assert!((1..=text.chars().count() + 1).contains(&error.at), "{error:?}");
                    }
                }
            }
        }
    });
}

#[test]
fn place() {
    check!(name = "place").with_test_time(EACH).for_each(|bytes: &[u8]| {
        let bytes = text(bytes, VALUES);
        let text = String::from_utf8_lossy(&bytes);
        if let Some(openness) = Openness::read(&text) {
            assert_eq!(Openness::read(&openness.to_string()), Some(openness));
        }
        let (north, east) = text.split_once(' ').unwrap_or((&text, "0"));
        for mark in [DecimalMark::Point, DecimalMark::Comma] {
            let Some(start) = Position::read(north, east, mark) else { continue };
            let [latitude, longitude] = start.degrees();
            assert!((-90.0..=90.0).contains(&latitude) && (-180.0..=180.0).contains(&longitude));
            let place = LinePlace { site: String::new(), line: String::new(), start, end: None };
            for width in [1, 100] {
                let Told::Blurred(middle, metres) =
                    Input::default().told_of(&place, Openness::Blurred(width))
                else {
                    panic!("a blurred place is told")
                };
                let [latitude, longitude] = middle.degrees();
                assert!(
                    (-90.0..=90.0).contains(&latitude) && (-180.0..=180.0).contains(&longitude),
                    "{middle:?}"
                );
                assert!(metres >= 700 * u32::from(width));
            }
        }
    });
}

#[test]
fn date_and_slope() {
    check!(name = "date").with_test_time(EACH).for_each(|bytes: &[u8]| {
        let bytes = text(bytes, VALUES);
        let text = String::from_utf8_lossy(&bytes);
        if let Some(date) = Date::read(&text) {
            assert_eq!(Date::read(&date.to_string()), Some(date));
            assert_eq!(date.to_string(), text.trim());
        }
        for unit in [None, Some("%"), Some("deg")] {
            if let Some(slope) = Slope::read(&text, unit, DecimalMark::Point) {
                let level = slope.cosine();
                assert!(level > 0.0 && level <= 1.0, "{slope:?}");
            }
        }
    });
}

#[test]
fn goal() {
    check!(name = "goal").with_test_time(EACH).for_each(|bytes: &[u8]| {
        let bytes = text(bytes, VALUES);
        let text = String::from_utf8_lossy(&bytes);
        for mark in [DecimalMark::Point, DecimalMark::Comma] {
            let _ = goal::read_confidence(&text, mark);
            let Ok(goal) = goal::read(&text, mark) else { continue };
            let record = serde_json::to_string(&goal).expect("a goal is a record");
            assert_eq!(serde_json::from_str::<Goal>(&record).expect("a record is read"), goal, "{record}");
        }
    });
}

/// Whether the division is one that feet and inches are printed in without rounding; finer ones are kept as typed.
fn is_on_a_tape(notation: Notation) -> bool {
    let whole = match notation.division {
        Division::Decimals(places) => places <= 4,
        Division::Fraction(parts) => Unit::Inch.nanometres() % i64::from(parts) == 0,
    };
    !notation.feet_and_inches || whole
}
