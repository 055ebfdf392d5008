//! Marks, classes and experts' keys, worked by hand on invented sheets.

use super::*;
use crate::measure::Measure;
use crate::protocol::Protocol;
use tautline_engine::length::{DecimalMark, Length, Notation, Unit, write};
use tautline_engine::practice::level::Level;
use tautline_engine::practice::mistake::{Mistake, Row};
use tautline_engine::practice::recognise::Recogniser;

fn measure(text: &str) -> Measure {
    Measure::read(text, None, DecimalMark::Point).unwrap()
}

fn row(species: &str, start: &str, stop: &str) -> LearnerRow {
    LearnerRow { species: species.to_owned(), edges: Some((measure(start), measure(stop))), length: None }
}

fn sheet(name: &str, rows: Vec<LearnerRow>, percent: Option<&str>) -> LearnerSheet {
    LearnerSheet {
        name: name.to_owned(),
        line: "A".to_owned(),
        rows,
        percent: percent.map(str::to_owned),
        ..LearnerSheet::default()
    }
}

fn by(tolerance: i64) -> tautline_engine::practice::grade::Measure {
    let gap = tautline_engine::rule::ReadingRule::AS_WRITTEN.gap;
    tautline_engine::practice::grade::Measure {
        tolerance: Length::from_units(tolerance, Unit::Centimetre),
        gap,
    }
}

/// A 10 m line; experts read 200 cm and 210 cm of it: 20 % and 21 %, key 20.5 %.
fn experts() -> ExpertKey {
    let first = sheet("first", vec![row("FOUR", "1 m", "2 m"), row("SHAD", "5 m", "6 m")], None);
    let second = sheet("second", vec![row("FOUR", "1 m", "2.05 m"), row("SHAD", "4.95 m", "6 m")], None);
    let ten = Length::from_units(10, Unit::Metre);
    agreed(&[first, second], ten, Notation::decimals(Unit::Metre, 2)).remove(0)
}

#[test]
fn experts_spread_is_shown_and_a_narrower_band_is_said() {
    let key = experts();
    assert!((key.cover() - 0.205).abs() < 1e-12 && (key.spread() - 0.01).abs() < 1e-12);
    assert_eq!(key.findings(0.02), []);
    assert_eq!(key.findings(0.005)[0].message.code, "practice-band-narrow");
}

/// By hand: stop of one of two intercepts off by 8 cm, so 3 of 4 edges; species both right; the rows come to
/// 208 cm of 1000, 20.8 %, 0.3 points off; and that was written, so the arithmetic is right.
#[test]
fn part_marks_are_what_a_marker_adds_up_by_hand() {
    let learner =
        sheet("learner", vec![row("FOUR", "1 m", "2.08 m"), row("shad", "5 m", "6 m")], Some("20.8"));
    let marked = mark_real(&learner, &experts(), &Marking::example(), by(2));
    let parts = marked.parts;
    assert!((parts.edges - 15.0).abs() < 1e-12 && (parts.species - 10.0).abs() < 1e-12);
    assert!((parts.cover - 10.0).abs() < 1e-12 && (parts.arithmetic - 10.0).abs() < 1e-12);
    // right arithmetic on wrong rows keeps its own marks
    let wrong = sheet("wrong", vec![row("FOUR", "3 m", "3.50 m")], Some("5 %"));
    let marked = mark_real(&wrong, &experts(), &Marking::example(), by(2));
    assert!(marked.parts.edges == 0.0 && (marked.parts.arithmetic - 10.0).abs() < 1e-12);
    let slip = sheet("slip", vec![row("FOUR", "3 m", "3.50 m")], Some("50"));
    assert_eq!(mark_real(&slip, &experts(), &Marking::example(), by(2)).sums_up, Some(false));
}

/// Lengths only stand beside the sum of species.
#[test]
fn lengths_only_are_marked() {
    let only = |species: &str, length: &str| LearnerRow {
        species: species.to_owned(),
        edges: None,
        length: Some(measure(length)),
    };
    let learner = sheet("learner", vec![only("FOUR", "1.03 m"), only("SHAD", "80 cm")], None);
    let marked = mark_real(&learner, &experts(), &Marking::example(), by(2));
    assert!((marked.rows - 0.183).abs() < 1e-12 && (marked.parts.edges - 10.0).abs() < 1e-12);
}

fn marked(name: &str, group: &str, marks: f64) -> Marked {
    let mut one = mark_real(&sheet(name, Vec::new(), None), &experts(), &Marking::example(), by(2));
    group.clone_into(&mut one.group);
    one.parts = Parts { edges: marks, ..Parts::default() };
    one
}

/// Best two of three count; equal groups are told apart by all three, and truly equal learners share a place.
#[test]
fn ties_are_settled_as_the_rules_say_or_shared() {
    let all = [
        marked("a", "Rim", 30.0),
        marked("b", "Rim", 20.0),
        marked("c", "Rim", 5.0),
        marked("d", "Draw", 25.0),
        marked("e", "Draw", 25.0),
        marked("f", "Draw", 10.0),
    ];
    let class = class(&all, &Marking::example(), 2);
    let places: Vec<(usize, &str, bool)> =
        class.learners.iter().map(|one| (one.place, one.name.as_str(), one.tied)).collect();
    assert_eq!(places[..3], [(1, "a", false), (2, "d", true), (2, "e", true)]);
    assert_eq!(places[3], (4, "b", false));
    let groups: Vec<(usize, &str, bool)> =
        class.groups.iter().map(|one| (one.place, one.name.as_str(), one.tied)).collect();
    assert_eq!(groups, [(1, "Draw", false), (2, "Rim", false)]);
}

fn exercise(level: Level, seed: u64) -> Exercise {
    let protocol = Protocol {
        gap: crate::protocol::Gap { limit: Some(measure("2.5 in")), ..Default::default() },
        ..Protocol::default()
    };
    Exercise::draw(level, seed, Length::from_units(100, Unit::Foot), TapeKind::FeetAndInches, protocol)
}

fn typed(rows: &[Row]) -> Vec<LearnerRow> {
    let text = |length| write(length, TapeKind::FeetAndInches.notation());
    let one =
        |one: &Row| row(Exercise::code(one.species), &text(one.stretch.start()), &text(one.stretch.stop()));
    rows.iter().map(one).collect()
}

#[test]
fn a_careful_sheet_has_all_marks_and_a_mistake_is_named() {
    for (level, seed) in [(Level::One, 1), (Level::Three, 4), (Level::Five, 2)] {
        let exercise = exercise(level, seed);
        let recogniser = Recogniser::new(core::slice::from_ref(&exercise.line), &exercise.protocol.rule().0);
        let marking = Marking::example();
        let careful = mark(&sheet("careful", typed(&exercise.key()), None), &exercise, &marking, &recogniser);
        // nothing was worked out, so no marks for that
        assert!((careful.parts.all() - (marking.most() - marking.arithmetic)).abs() < 1e-9, "{careful:?}");
        assert!(careful.named.is_none());
        let mirrored = typed(&exercise.with_mistake(Mistake::FromFarEnd));
        let named = mark(&sheet("mirrored", mirrored, None), &exercise, &marking, &recogniser).named.unwrap();
        assert_eq!(named.mistake, Mistake::FromFarEnd);
    }
}

#[test]
fn what_a_mistake_costs_is_what_its_sheet_loses() {
    let exercise = exercise(Level::Three, 4);
    let costs = cost_of_mistakes(&exercise, &Marking::example(), &[Mistake::CountsDead, Mistake::FromFarEnd]);
    assert_eq!(costs.len(), 2);
    assert_eq!(costs[0].0, Mistake::FromFarEnd, "{costs:?}");
}

/// What is set on the picture is the sheet that somebody who types the same edges hands in.
#[test]
fn edges_set_on_the_picture_are_the_sheet() {
    for tape in [TapeKind::FeetAndInches, TapeKind::DecimalFeet, TapeKind::Metric] {
        let exercise =
            Exercise::draw(Level::Three, 4, tape.usual_length(), tape, exercise(Level::One, 1).protocol);
        let mut reading = Reading::of(&exercise);
        let step = exercise.line.step().nanometres();
        for row in exercise.key() {
            reading.choose(row.species.unwrap());
            for edge in [row.stretch.start(), row.stretch.stop()] {
                reading.go(edge.nanometres() / step);
                reading.set();
            }
        }
        let marking = Marking::example();
        let marked = mark(&reading.sheet(&exercise), &exercise, &marking, &recogniser(&exercise));
        // all but the arithmetic, which was not handed in
        assert!((marked.parts.all() - (marking.most() - marking.arithmetic)).abs() < 1e-9, "{marked:?}");
    }
}

/// An edge that is taken up moves alone; each step can be taken back.
#[test]
fn an_edge_is_moved_and_the_step_taken_back() {
    let mut reading = Reading::of(&exercise(Level::One, 1));
    for at in [10, 30, 50, 60] {
        reading.go(at);
        reading.set();
    }
    let before = reading.rows().to_vec();
    reading.take_up(1, Edge::Stop);
    assert_eq!(reading.at(), 60);
    reading.go(50);
    assert_eq!(reading.set(), Came::NoLength);
    reading.step(5);
    assert_eq!(reading.set(), Came::Moved);
    assert_eq!((reading.rows()[1].start, reading.rows()[1].stop), (50, 55));
    reading.undo();
    assert_eq!(reading.rows(), before);
    reading.remove(0);
    assert_eq!(reading.rows(), &before[1..]);
    reading.go(i64::MAX);
    assert_eq!(reading.at(), reading.end());
}
