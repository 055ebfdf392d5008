//! Where things stand, against figures worked out by hand.

use crate::reader::{Element, sound};
use tautline_engine::length::{DecimalMark, Length, Unit};
use tautline_engine::stretch::Stretch;
use tautline_figures::change;
use tautline_figures::cover::{self, Bounds, Cover, Estimate, Row};
use tautline_figures::curve::{self, Curve, Recorded, Step};
use tautline_figures::gaps::{self, Class, Gaps};
use tautline_figures::line::{self, Lane, Line, Lines, Reading, Total, Words};
use tautline_figures::{Frame, Goal, Palette, Relation, Share, Tone};

fn frame(width: u16) -> Frame {
    Frame::new("test", width, Palette::screen())
}

fn ft(feet: i64) -> Length {
    Length::from_units(feet, Unit::Foot)
}

fn cm(centimetres: i64) -> Length {
    Length::from_units(centimetres, Unit::Centimetre)
}

fn feet(start: i64, stop: i64) -> Stretch {
    Stretch::new(ft(start), ft(stop)).expect("the stretches of the tests have a length")
}

fn share(value: f64) -> Share {
    Share::new(value).expect("the shares of the tests are finite")
}

fn with_class<'a>(elements: &'a [Element], class: &'a str) -> impl Iterator<Item = &'a Element> {
    elements.iter().filter(move |element| !element.defined && element.has_class(class))
}

fn number_at(elements: &[Element], number: &str) -> f64 {
    let found = elements.iter().rfind(|element| element.name == "text" && element.text == number);
    found.unwrap_or_else(|| panic!("no {number} in the picture")).number("x")
}

#[track_caller]
fn close(found: f64, expected: f64) {
    // coordinates are rounded to a hundredth, and an axis read off between 0 and 10 triples that further out
    assert!((found - expected).abs() <= 0.04, "{found} instead of {expected}");
}

fn line_of(length: Length, lane: Lane, canopy: Vec<Stretch>) -> Line {
    let reading = Reading::Placed { lanes: vec![lane], canopy, unread: vec![] };
    Line { name: String::new(), cover: String::new(), length, reading }
}

fn lines(lines: Vec<Line>, unit: Unit) -> Lines {
    Lines { lines, unit, words: Words::default() }
}

/// At 720 wide the tape lies between its margins of 10: 700 pixels for 65 ft. Ten feet are 107.69 of them, five
/// feet 53.85.
#[test]
fn a_stretch_of_five_feet_on_a_line_of_65() {
    let lane = Lane { live: vec![feet(10, 15)], ..Lane::default() };
    let drawn = lines(vec![line_of(ft(65), lane, vec![feet(10, 15)])], Unit::Foot);
    let elements = sound(&line::draw(&drawn, &frame(720)));
    let tape = with_class(&elements, "figure-fill-tape").next().unwrap();
    close(tape.number("x"), 10.0);
    close(tape.number("width"), 700.0);
    for class in ["figure-fill-tone-1", "figure-fill-canopy"] {
        let [left, _, right, _] = with_class(&elements, class).next().unwrap().extents()[0];
        close(left, 117.69);
        close(right, 171.54);
    }
}

/// What was lost stands at the earlier visit only, what was gained at the later only, on the scale of the tape below.
#[test]
fn lost_stands_above_and_gained_below() {
    let changed = change::Lines {
        lines: vec![change::Line {
            name: "Line 1".to_owned(),
            told: String::new(),
            length: ft(100),
            years: ["2022".to_owned(), "2026".to_owned()],
            kept: vec![feet(10, 20)],
            lost: vec![feet(50, 60)],
            gained: vec![feet(80, 90)],
        }],
        unit: Unit::Foot,
        words: change::Words::default(),
    };
    let elements = sound(&change::draw(&changed, &frame(720)));
    let tape = with_class(&elements, "figure-fill-tape").next().unwrap();
    let (from, foot) = (tape.number("x"), tape.number("width") / 100.0);
    let kept: Vec<_> = with_class(&elements, "figure-fill-canopy").map(|one| one.extents()[0]).collect();
    assert_eq!(kept.len(), 2);
    for [left, _, right, _] in &kept {
        close(*left, from + 10.0 * foot);
        close(*right, from + 20.0 * foot);
    }
    let gained = with_class(&elements, "figure-fill-tone-3").next().unwrap().extents()[0];
    close(gained[0], from + 80.0 * foot);
    close(gained[1], kept[1][1]);
    let lost = with_class(&elements, "figure-line-goal").next().unwrap().extents()[0];
    close(lost[0], from + 50.0 * foot);
    close(lost[1], kept[0][1]);
}

/// On a common scale 40 ft are 40/65 of 65 ft, and the same foot stands at the same place on both tapes.
#[test]
fn lines_of_different_length_keep_one_scale() {
    let lane = |tone| Lane { live: vec![feet(20, 21)], tone: Tone(tone), ..Lane::default() };
    let drawn = lines(vec![line_of(ft(65), lane(0), vec![]), line_of(ft(40), lane(1), vec![])], Unit::Foot);
    let elements = sound(&line::draw(&drawn, &frame(720)));
    let tapes: Vec<f64> =
        with_class(&elements, "figure-fill-tape").map(|tape| tape.number("width")).collect();
    close(tapes[0], 700.0);
    close(tapes[1], 430.77);
    let left = |class| with_class(&elements, class).next().unwrap().extents()[0][0];
    close(left("figure-fill-tone-1"), 10.0 + 700.0 * 20.0 / 65.0);
    close(left("figure-fill-tone-2"), 10.0 + 700.0 * 20.0 / 65.0);
}

/// Live canopy is solid, a closed gap hatched in the species' colour, dead canopy hatched in its own way.
#[test]
fn live_closed_and_dead_differ_by_more_than_colour() {
    let lane = Lane {
        live: vec![feet(0, 4), feet(5, 8)],
        closed: vec![feet(4, 5)],
        dead: vec![feet(8, 9)],
        ..Lane::default()
    };
    let elements = sound(&line::draw(&lines(vec![line_of(ft(10), lane, vec![])], Unit::Foot), &frame(720)));
    let hatched: Vec<(&str, f64)> = elements
        .iter()
        .filter(|element| element.name == "path")
        .filter_map(|element| {
            let fill = element.attribute("fill")?.strip_prefix("url(#test-")?.split('-').next()?;
            Some((fill.trim_end_matches(')'), element.extents()[0][0]))
        })
        .collect();
    let [(dead, dead_at), (closed, closed_at)] = hatched[..] else { panic!("{hatched:?}") };
    assert_eq!((dead, closed), ("dead", "closed"));
    close(dead_at, 10.0 + 70.0 * 8.0);
    close(closed_at, 10.0 + 70.0 * 4.0);
    assert_eq!(elements.iter().filter(|element| element.name == "pattern").count(), 2);
}

/// A length without a place is a measure from the stake on: 13 ft of 65 are a fifth of the tape.
#[test]
fn lengths_without_places_are_measured_against_the_line_and_say_so() {
    let total = Total { name: "winterfat".to_owned(), tone: Tone(0), length: ft(13) };
    let reading = Reading::Unplaced { totals: vec![total], note: "not placed".to_owned() };
    let line = Line { name: String::new(), cover: String::new(), length: ft(65), reading };
    let elements = sound(&line::draw(&lines(vec![line], Unit::Foot), &frame(360)));
    let measure = with_class(&elements, "figure-line-tone-1")
        .find(|element| element.attribute("stroke-dasharray").is_some());
    let [left, _, right, _] = measure.unwrap().extents()[0];
    close(left, 10.0);
    close(right, 10.0 + 340.0 / 5.0);
    assert!(elements.iter().any(|element| element.text == "not placed"));
    assert_eq!(with_class(&elements, "figure-fill-canopy").count(), 0);
}

/// A millimetre of 100 m on 700 pixels would be 0.007 pixels wide.
#[test]
fn the_narrowest_stretch_is_still_seen() {
    let metre = |count| Length::from_units(count, Unit::Metre);
    let narrow = Stretch::new(metre(50), metre(50) + Length::from_units(1, Unit::Millimetre)).unwrap();
    let lane = Lane { live: vec![narrow], ..Lane::default() };
    let elements =
        sound(&line::draw(&lines(vec![line_of(metre(100), lane, vec![])], Unit::Metre), &frame(720)));
    let [left, _, right, _] = with_class(&elements, "figure-fill-tone-1").next().unwrap().extents()[0];
    close(left, 360.0);
    close(right, 360.8);
}

fn row(estimate: f64, bounds: Bounds, goal: Relation) -> Cover {
    let goal = Goal { relation: goal, label: "the goal".to_owned() };
    let row = Row {
        name: "all shrubs".to_owned(),
        figure: String::new(),
        tone: None,
        lines: vec![share(0.10), share(0.30)],
        estimate: Some(Estimate::Figure(share(estimate))),
        bounds,
        goal: Some(goal),
    };
    Cover { rows: vec![row], words: cover::Words::default() }
}

/// Read off the axis of the picture itself: one per cent is a tenth of the way from 0 to 10.
fn per_cent(elements: &[Element]) -> impl Fn(f64) -> f64 {
    let (zero, ten) = (number_at(elements, "0"), number_at(elements, "10"));
    move |value| zero + (ten - zero) * value / 10.0
}

#[test]
fn estimate_bound_lines_and_goal_stand_where_the_axis_says() {
    let chart = row(0.198, Bounds::AtLeast(share(0.164)), Relation::AtLeast(share(0.15)));
    let elements = sound(&cover::draw(&chart, &frame(360)));
    let at = per_cent(&elements);
    let met = with_class(&elements, "figure-fill-met").next().unwrap().extents()[0];
    close(met[0], at(15.0));
    let threshold = with_class(&elements, "figure-line-goal").next().unwrap().extents()[0];
    close(threshold[0], at(15.0));
    let single = with_class(&elements, "figure-line-ink").next().unwrap().extents();
    close(single[0][0], at(10.0));
    close(single[1][0], at(30.0));
    let filled: Vec<_> = with_class(&elements, "figure-fill-ink")
        .filter(|element| element.name != "text")
        .map(|element| element.extents()[0])
        .collect();
    let [bar, arrow, diamond] = filled[..] else { panic!("{filled:?}") };
    close(bar[0], at(16.4));
    close(bar[2], at(19.8));
    close(arrow[0], at(16.4));
    assert!(arrow[2] > arrow[0], "the arrow points to what is allowed, upward");
    close(f64::midpoint(diamond[0], diamond[2]), at(19.8));
}

#[test]
fn a_bound_from_above_points_down_and_a_goal_from_above_is_met_below() {
    let chart = row(0.05, Bounds::AtMost(share(0.07)), Relation::AtMost(share(0.08)));
    let elements = sound(&cover::draw(&chart, &frame(720)));
    let at = per_cent(&elements);
    let met = with_class(&elements, "figure-fill-met").next().unwrap().extents()[0];
    close(met[0], at(0.0));
    close(met[2], at(8.0));
    let filled: Vec<_> = with_class(&elements, "figure-fill-ink")
        .filter(|element| element.name != "text")
        .map(|element| element.extents()[0])
        .collect();
    close(filled[0][0], at(5.0));
    close(filled[0][2], at(7.0));
    close(filled[1][2], at(7.0));
}

#[test]
fn two_bounds_have_a_bar_each_and_no_arrow() {
    let bounds = Bounds::Between(share(0.12), share(0.28));
    let chart = row(0.20, bounds, Relation::Between(share(0.15), share(0.25)));
    let elements = sound(&cover::draw(&chart, &frame(720)));
    let at = per_cent(&elements);
    let filled: Vec<_> = with_class(&elements, "figure-fill-ink")
        .filter(|element| element.name != "text")
        .map(|element| element.extents()[0])
        .collect();
    let [lower, upper, _diamond] = filled[..] else { panic!("{filled:?}") };
    close(lower[0], at(12.0));
    close(upper[2], at(28.0));
    let met = with_class(&elements, "figure-fill-met").next().unwrap().extents()[0];
    close(met[0], at(15.0));
    close(met[2], at(25.0));
}

/// The toy line of the trade: pieces of 24, 23, 25 and 22 cm with gaps of 4, 9 and 45 cm. Read under 3 cm it has
/// 94 cm of canopy, 98 under 5 cm, 107 under 10 cm; here on a line of 5 m.
#[test]
fn the_curve_steps_where_a_gap_closes_and_begins_at_the_recorded_rule() {
    let step = |limit, canopy: f64| Step { limit: cm(limit), cover: share(canopy / 500.0) };
    let curve = Curve {
        steps: vec![step(10, 107.0), step(0, 94.0), step(5, 98.0)],
        recorded: Recorded { limit: cm(3), label: "as read".to_owned() },
        longest: cm(15),
        unit: Unit::Centimetre,
        words: curve::Words { unknown: "not known".to_owned(), ..curve::Words::default() },
    };
    let elements = sound(&curve::draw(&curve, &frame(360)));
    let way = with_class(&elements, "figure-line-canopy").next().unwrap().attribute("d").unwrap();
    let corners: Vec<[f64; 2]> = way
        .split(['M', 'L'])
        .skip(1)
        .map(|corner| {
            let (x, y) = corner.split_once(' ').unwrap();
            [x.parse().unwrap(), y.parse().unwrap()]
        })
        .collect();
    assert_eq!(corners.len(), 6);
    // the axis at the bottom, left to right: the last 0 and the last 10 written are those of the gap rules
    let (zero, ten) = (number_at(&elements, "0"), number_at(&elements, "10"));
    let limit = |cm: f64| zero + (ten - zero) * cm / 10.0;
    for (corner, expected) in corners.iter().zip([3.0, 5.0, 5.0, 10.0, 10.0, 15.0]) {
        close(corner[0], limit(expected));
    }
    // up the picture as 98 - 94 is to 107 - 94
    let rise = |to: usize| corners[0][1] - corners[to][1];
    assert!((rise(2) / rise(4) - 4.0 / 13.0).abs() < 0.001);
    let unknown = elements.iter().find(|element| element.attribute("fill") == Some("url(#test-unknown)"));
    let [left, _, right, _] = unknown.unwrap().extents()[0];
    close(left, limit(0.0));
    close(right, limit(3.0));
}

#[test]
fn a_reading_without_a_gap_rule_has_no_unknown_region() {
    let curve = Curve {
        steps: vec![Step { limit: Length::ZERO, cover: share(0.2) }],
        recorded: Recorded { limit: Length::ZERO, label: String::new() },
        longest: cm(15),
        unit: Unit::Centimetre,
        words: curve::Words { unknown: "not known".to_owned(), ..curve::Words::default() },
    };
    let elements = sound(&curve::draw(&curve, &frame(360)));
    assert!(elements.iter().all(|element| element.name != "pattern" && element.text != "not known"));
}

#[test]
fn bars_of_gaps_are_as_long_as_the_axis_says() {
    let class = |value| Class { name: "class".to_owned(), share: share(value), figure: String::new() };
    let chart = Gaps { classes: [0.06, 0.145, 0.31, 0.0].map(class).to_vec(), axis: String::new() };
    let comma = Frame { mark: DecimalMark::Comma, ..frame(360) };
    let elements = sound(&gaps::draw(&chart, &comma));
    let ends: Vec<f64> = with_class(&elements, "figure-fill-canopy").map(|bar| bar.extents()[0][2]).collect();
    // the axis begins at the margin of 8; a number at its very edge may be moved inward, 10 and 30 are not
    let (ten, thirty) = (number_at(&elements, "10"), number_at(&elements, "30"));
    close(ten - 8.0, (thirty - 8.0) / 3.0);
    assert_eq!(ends.len(), 3, "nothing is drawn for nothing");
    for (end, expected) in ends.into_iter().zip([6.0, 14.5, 31.0]) {
        close(end, 8.0 + (ten - 8.0) * expected / 10.0);
    }
}
