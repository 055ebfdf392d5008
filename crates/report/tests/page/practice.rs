//! The coach's paper: well formed, ids of their own, keys apart and by the year's marks; and certificates of readers.

use crate::reader::{all, column, says, table, tree, words};
use std::collections::BTreeSet;
use tautline_engine::length::{Length, Unit};
use tautline_engine::practice::level::Level;
use tautline_engine::practice::mistake::Mistake;
use tautline_report::{certificates, practice_line, practice_progress, practice_set, practice_sheets};
use tautline_survey::agree::{Calibration, CalibrationLine, Outcome};
use tautline_survey::date::Date;
use tautline_survey::goal::Percent;
use tautline_survey::input::Input;
use tautline_survey::practice::{
    Exercise, Lesson, Marking, Parts, Reading, TapeKind, mark, progress, recogniser,
};
use tautline_survey::protocol::Protocol;
use tautline_words::Words;

fn exercises() -> Vec<Exercise> {
    let ten = Length::from_units(10, Unit::Metre);
    (1..=2)
        .map(|number| Exercise::draw(Level::Four, number, ten, TapeKind::Metric, Protocol::default()))
        .collect()
}

fn set(marking: &Marking) -> String {
    practice_set(&exercises(), marking, &Words::english()).page(&Words::english())
}

#[test]
fn the_set_is_well_formed_and_its_ids_are_its_own() {
    let page = set(&Marking::example());
    let tree = tree(&page);
    let ids: Vec<&str> = tree.descendants().filter_map(|node| node.attribute("id")).collect();
    let unlike: BTreeSet<&str> = ids.iter().copied().collect();
    assert_eq!(ids.len(), unlike.len(), "no id stands twice");
    let used = tree.descendants().flat_map(|node| node.attributes().map(|own| own.value().to_owned()));
    for value in used.filter(|value| value.starts_with("url(#")) {
        let id = value.trim_start_matches("url(#").trim_end_matches(')');
        assert!(unlike.contains(id), "{id}");
    }
    assert!(!words(tree.root()).contains("practice-"), "every code has its words");
}

/// What is to be cut off stands last: no edge of a key before the heading that says to keep them apart.
#[test]
fn keys_stand_apart_and_last() {
    let page = set(&Marking::example());
    let (before, after) = page.split_once("Keys: keep apart").unwrap();
    let key = exercises()[0].key();
    assert!(!key.is_empty());
    assert!(!before.contains("Key of line") && after.contains("Key of line 4-1"));
    assert!(!before.contains("The lines start at") && after.contains("The lines start at"));
    assert_eq!(table(&page, "Key of line 4-1").len(), key.len());
}

/// One row for each lesson, by day, with what it was off worked out by hand; ids are the page's own, and a name never becomes markup.
#[test]
fn progress_has_a_row_for_each_lesson_in_its_order() {
    let words = Words::english();
    let lesson = |name: &str, day: u8, handed_in: f64, habit: Option<&str>| Lesson {
        name: name.to_owned(),
        date: Date::new(2026, 6, day),
        line: "2-7".to_owned(),
        key: 0.25,
        handed_in,
        marks: Parts { edges: 15.0, species: 10.0, cover: 4.0, arithmetic: 0.0 },
        most: Some(Marking::example().parts()),
        right: (5, 7),
        habit: habit.map(str::to_owned),
    };
    let lessons = vec![
        lesson("Ada <b>", 9, 0.24, None),
        lesson("Ada <b>", 2, 0.29, Some("mistake-counts-dead")),
        lesson("Bea", 2, 0.25, None),
    ];
    let page = practice_progress(&progress(lessons), 0.02, &words).page(&words);
    assert_eq!(column(&page, "Lessons of Ada <b>", "day"), ["2026-06-02", "2026-06-09"]);
    assert_eq!(column(&page, "Lessons of Ada <b>", "points off"), ["+4.0", "-1.0"]);
    assert_eq!(column(&page, "Lessons of Ada <b>", "marks"), ["29.0 / 50.0", "29.0 / 50.0"]);
    let tree = tree(&page);
    let said = self::words(tree.root());
    assert!(said.contains("4.0 percentage points from the key in the first lesson, 1.0 in the last"));
    assert!(said.contains("Named in 1, not in the last lesson: dead wood was counted as live"));
    assert!(!said.contains("lesson-") && !page.contains("<b>"));
    let ids: Vec<&str> = tree.descendants().filter_map(|node| node.attribute("id")).collect();
    assert_eq!(ids.len(), ids.iter().collect::<BTreeSet<_>>().len(), "no id stands twice");
}

/// Whoever read from the far end is told which habit that is, and what to do next time; the careful reader is told that all is right.
#[test]
fn a_habit_is_named_with_what_to_do_about_it() {
    let words = Words::english();
    let exercise = &exercises()[0];
    let step = exercise.line.step().nanometres();
    let told = |rows: Vec<tautline_engine::practice::mistake::Row>| {
        let mut reading = Reading::of(exercise);
        for row in rows {
            reading.choose(row.species.unwrap());
            for edge in [row.stretch.start(), row.stretch.stop()] {
                reading.go(edge.nanometres() / step);
                reading.set();
            }
        }
        let marking = Marking::example();
        let marked = mark(&reading.sheet(exercise), exercise, &marking, &recogniser(exercise));
        practice_sheets(&[marked], &marking, &words).page(&words)
    };
    says(&told(exercise.with_mistake(Mistake::FromFarEnd)), &["read from its far end", "find zero"]);
    says(&told(exercise.key()), &[&format!("All {} intercepts are right.", exercise.key().len())]);
}

/// By hand: marks for edges three times as many lose three times as much where edges alone are lost.
#[test]
fn what_mistakes_cost_is_by_the_marks_that_are_given() {
    let words = Words::english();
    let exercise = &exercises()[0];
    let lost = |edges: f64| -> Vec<f64> {
        let marking = Marking {
            edges,
            species: 0.0,
            arithmetic: 0.0,
            bands: Vec::new(),
            example: false,
            ..Marking::example()
        };
        let page = practice_line(exercise, Some(&marking), &words).page(&words);
        assert!(!page.contains("are an example"), "these are the year's");
        column(&page, "What each habit would cost on this line", "marks lost")
            .iter()
            .map(|cell| cell.parse().unwrap())
            .collect()
    };
    let (once, thrice) = (lost(20.0), lost(60.0));
    assert!(!once.is_empty() && once.len() == thrice.len());
    for (once, thrice) in once.iter().zip(&thrice) {
        // each is rounded to a tenth
        assert!((3.0 * once - thrice).abs() <= 0.2 + 1e-9, "{once} {thrice}");
    }
    assert!(practice_set(&exercises(), &Marking::example(), &words).body.contains("are an example"));
    assert!(!practice_line(exercise, None, &words).body.contains("Key of line"));
}

/// 1, 2 and 3 points more: 2.0 on average, all within 3 points. What people wrote stays text.
#[test]
fn a_certificate_says_what_came_of_it() {
    let line = |(line, difference): (&str, i32)| CalibrationLine { line: line.into(), difference };
    let calibration = Calibration {
        site: "Rim Draw".into(),
        reader: "Bea <b>".into(),
        against: "Coach".into(),
        date: Date::read("2026-06-01").unwrap(),
        protocols: vec!["0123456789abcdef".into()],
        tolerance: Percent(30_000),
        lines: [("C1", 10_000), ("C2", 20_000), ("C3", 30_000)].map(line).to_vec(),
        outcome: Outcome::Passed,
        judge: "Coach".into(),
    };
    let input = Input { calibrations: vec![calibration], ..Input::default() };
    let page = certificates(&input, &Words::english());
    says(
        &page,
        &[
            "Bea <b> was set beside Coach on 3 lines at Rim Draw",
            "a protocol without a name (01234567)",
            "Passed on 2026-06-01: on 3 of 3 lines the covers lie within 3.0 points of each other",
            "Bea <b> has 2.0 points more canopy than Coach",
            "it is no one else's certificate",
        ],
    );
    assert_eq!(column(&page, "Line by line", "difference"), ["+1.0", "+2.0", "+3.0"]);
    assert_eq!(all(&tree(&page), "b").count(), 0);
}
