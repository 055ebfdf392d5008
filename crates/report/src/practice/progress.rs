//! Progress: each learner's lessons, drawn and in a table.

use super::{PracticePage, table};
use crate::markup::{around, text};
use tautline_figures::control::{self, Control, Point};
use tautline_figures::{Frame, Palette};
use tautline_survey::message::{Message, Value};
use tautline_survey::practice::{Learner, Lesson, Parts};
use tautline_words::Words;

/// Every learner's lessons: what can be said of them, how far each lay from the key, and the marks by part.
///
/// `within` is the band, as a share of the line, outside which a lesson is marked on the picture.
///
/// # Example
/// ```
/// use tautline_survey::practice::{Lesson, Parts, progress};
/// let lesson = Lesson {
///     name: "Ada".to_owned(), date: None, line: "2-1".to_owned(), key: 0.20, handed_in: 0.235,
///     marks: Parts::default(), most: None, right: (7, 9), habit: None,
/// };
/// let words = tautline_words::Words::english();
/// let page = tautline_report::practice_progress(&progress(vec![lesson]), 0.01, &words);
/// assert!(page.body.contains("+3.5") && page.body.contains("7 of 9"));
/// ```
pub fn practice_progress(learners: &[Learner], within: f64, words: &Words) -> PracticePage {
    let title = words.word("lesson-progress-title");
    let mut body = text("h1", &title) + &text("p class=\"about\"", &words.word("lesson-progress-about"));
    if learners.is_empty() {
        body += &text("p", &words.word("lesson-progress-none"));
    }
    for (number, learner) in learners.iter().enumerate() {
        let mut inner = text("h2", &learner.name);
        inner += &progress_sentences(learner, words).iter().map(|said| text("p", said)).collect::<String>();
        if learner.lessons.len() > 1 {
            inner += &picture(number, learner, within, words);
        }
        body += &around("section", &(inner + &lessons(learner, words)));
    }
    PracticePage { title, body }
}

/// What is said of a learner: how many lessons, how far from the key at first and lately, which habits and how long ago.
pub fn progress_sentences(learner: &Learner, words: &Words) -> Vec<String> {
    let points = |points: f64| Value::Number(points, 1);
    let days: Vec<String> = learner.lessons.iter().filter_map(|one| Some(one.date?.to_string())).collect();
    let counted = match (days.first(), days.last()) {
        (Some(first), Some(last)) if first != last => Message::new("lesson-progress-lessons-from")
            .with("from", first.as_str())
            .with("to", last.as_str()),
        _ => Message::new("lesson-progress-lessons"),
    };
    let mut said = vec![words.say(&counted.with("lessons", learner.lessons.len()))];
    if let Some((number, first, last)) = learner.first_and_last() {
        let message = Message::new("lesson-progress-ends").with("number", number);
        said.push(words.say(&message.with("first", points(first)).with("last", points(last))));
        let level = |lessons: &[Lesson]| lessons.iter().filter_map(Lesson::level).max();
        let (all, from) = (&learner.lessons, learner.lessons.len() - number);
        if level(&all[..number]) != level(&all[from..]) {
            said.push(words.word("lesson-progress-levels"));
        }
    }
    for habit in learner.habits() {
        let code = if habit.since == 0 { "lesson-progress-habit" } else { "lesson-progress-habit-gone" };
        let message = Message::new(code).with("habit", words.word(&habit.code));
        said.push(words.say(&message.with("lessons", habit.lessons).with("since", habit.since)));
    }
    said
}

fn picture(number: usize, learner: &Learner, within: f64, words: &Words) -> String {
    let point = |(at, lesson): (usize, &Lesson)| Point {
        when: lesson.level().map_or_else(|| (at + 1).to_string(), |_| lesson.line.clone()),
        value: lesson.error(),
        flagged: lesson.error().abs() > within * 100.0 + 1e-9,
    };
    let data = Control {
        points: learner.lessons.iter().enumerate().map(point).collect(),
        middle: 0.0,
        warning: within * 100.0,
        action: 0.0,
        words: control::Words {
            difference: words.word("lesson-progress-axis"),
            when: words.word("lesson-progress-when"),
            warning: words.word("lesson-progress-band"),
            action: String::new(),
            flagged: words.word("lesson-progress-outside"),
        },
    };
    let drawn = [(720, "wide"), (360, "narrow")].map(|(width, name)| {
        let frame = Frame {
            title: words.say(&Message::new("lesson-progress-picture").with("name", learner.name.as_str())),
            description: progress_sentences(learner, words).join(" "),
            ..Frame::new(&format!("progress-{number}-{name}"), width, Palette::screen())
        };
        around(&format!("div class=\"{name}\""), &control::draw(&data, &frame))
    });
    around("figure", &drawn.concat())
}

fn lessons(learner: &Learner, words: &Words) -> String {
    let number = |number: f64| words.number(number, 1);
    let part = |lesson: &Lesson, of: fn(&Parts) -> f64| {
        let most = lesson.most.map_or_else(String::new, |most| format!(" / {}", number(of(&most))));
        number(of(&lesson.marks)) + &most
    };
    let rows = learner.lessons.iter().map(|lesson| {
        let (right, all) = lesson.right;
        let off = lesson.error();
        let right = Message::new("lesson-progress-right").with("right", right).with("all", all);
        vec![
            lesson.line.clone(),
            lesson.date.map_or_else(|| "–".to_owned(), |date| date.to_string()),
            if off > 0.0 { format!("+{}", number(off)) } else { number(off) },
            words.say(&right),
            part(lesson, |parts| parts.edges),
            part(lesson, |parts| parts.species),
            part(lesson, |parts| parts.cover),
            part(lesson, |parts| parts.arithmetic),
            part(lesson, Parts::all),
            lesson.habit.as_ref().map_or_else(|| "–".to_owned(), |habit| words.word(habit)),
        ]
    });
    let columns =
        ["line", "day", "off", "right", "edges", "species", "cover", "arithmetic", "marks", "habit"]
            .map(|name| words.word(&format!("lesson-column-{name}")));
    let title = words.say(&Message::new("lesson-progress-table").with("name", learner.name.as_str()));
    table(&title, &columns, rows.collect())
}
