//! Practice in sentences and tables.

use super::table::Table;
use super::{line, println, title, wrapped};
use tautline_engine::practice::drill::Drill;
use tautline_engine::work::rounded_ratio;
use tautline_report::{PROTEST_COLUMNS, progress_sentences, protest_cells, sheet_sentences};
use tautline_survey::message::{Message, Value};
use tautline_survey::paper;
use tautline_survey::practice::{
    Class, DrillOutput, Exercise, Learner, Marked, Marking, protest_words, told,
};
use tautline_words::Words;

/// A practice line, with its key where it is wanted.
pub(crate) fn practice_line(exercise: &Exercise, with_key: bool, words: &Words) {
    title(&words.say(&Message::new("practice-title").with("line", exercise.name())));
    let length = |length| words.value(&Value::Length(length, exercise.tape.notation()));
    let about = Message::new("practice-line-about")
        .with("length", length(exercise.line.length))
        .with("level", exercise.level.number().to_string())
        .with("protocol", exercise.protocol.name.as_str());
    wrapped(&words.say(&about), 0);
    if exercise.line.slope > 0 {
        let slope = Message::new("practice-line-slope").with("slope", exercise.line.slope.to_string());
        wrapped(&words.say(&slope), 0);
    }
    wrapped(&words.word("practice-made-up"), 0);
    if !with_key {
        return;
    }
    title(&words.say(&Message::new("practice-key-title").with("line", exercise.name())));
    let headings =
        ["species", "start", "stop", "length"].map(|name| words.word(&format!("practice-column-{name}")));
    let mut table = Table::new(&headings);
    for row in exercise.key() {
        let lengths = [row.stretch.start(), row.stretch.stop(), row.stretch.length()].map(length);
        table.row([vec![Exercise::code(row.species).to_owned()], lengths.to_vec()].concat());
    }
    table.print();
    let (canopy, sum) = exercise.key_lengths();
    let whole = exercise.line.length.nanometres();
    let percent = |part: tautline_engine::length::Length| {
        let figure = rounded_ratio(part.nanometres().saturating_mul(100), whole, 1);
        Value::from(Message::new("per-cent").with("figure", figure))
    };
    let cover = Message::new("practice-key-cover").with("canopy", percent(canopy)).with("sum", percent(sum));
    wrapped(&words.say(&cover), 0);
}

/// Sheets beside the key, intercept by intercept.
pub(crate) fn practice_sheets(marked: &[Marked], marking: &Marking, words: &Words) {
    for one in marked {
        let heading = Message::new("practice-sheet-title").with("name", one.name.as_str());
        title(&words.say(&heading.with("line", one.line.as_str())));
        for said in sheet_sentences(one, marking) {
            wrapped(&words.say(&said), 0);
        }
        println!();
        for mark in one.graded.iter().flat_map(|graded| &graded.marks) {
            wrapped(&words.say(&told(mark, &one.codes, one.notation)), 2);
        }
    }
    example(marking, words);
}

fn example(marking: &Marking, words: &Words) {
    if marking.example {
        println!();
        wrapped(&words.word("practice-example-marks"), 0);
    }
}

/// Places, groups, and what cost marks.
pub(crate) fn practice_class(class: &Class, marking: &Marking, best: usize, words: &Words) {
    let number = |number: f64| words.number(number, 1);
    let place = |place: usize, tied: bool| {
        if tied { format!("{place} ({})", words.word("practice-tied")) } else { place.to_string() }
    };
    let column = |name: &str| words.word(&format!("practice-column-{name}"));
    title(&words.word("practice-class-title"));
    let mut table = Table::new(&["place", "name", "group", "lines", "marks"].map(column));
    for one in &class.learners {
        let lines: Vec<String> =
            one.lines.iter().map(|(line, marks)| format!("{line}: {}", number(*marks))).collect();
        let place = place(one.place, one.tied);
        table.row(vec![place, one.name.clone(), one.group.clone(), lines.join(", "), number(one.marks)]);
    }
    table.print();
    if !class.groups.is_empty() {
        title(&words.word("practice-groups-title"));
        let best = words.say(&Message::new("practice-column-best").with("best", best));
        let mut table = Table::new(&[column("place"), column("group"), best, column("all")]);
        for one in &class.groups {
            table.row(vec![place(one.place, one.tied), one.name.clone(), number(one.best), number(one.all)]);
        }
        table.print();
    }
    if !class.protests.is_empty() {
        title(&words.word("practice-set-protests"));
        for said in protest_words(class) {
            wrapped(&words.say(&said), 0);
        }
        let mut table = Table::new(&PROTEST_COLUMNS.map(|code| words.word(code)));
        for one in &class.protests {
            table.row(protest_cells(one, words).to_vec());
        }
        table.print();
    }
    if !class.mistakes.is_empty() {
        title(&words.word("practice-mistakes-title"));
        wrapped(&words.word("practice-mistakes-about"), 0);
        let mut table = Table::new(&["mistake", "sheets", "lost"].map(column));
        for (code, sheets, lost) in &class.mistakes {
            table.row(vec![words.word(code), sheets.to_string(), number(*lost)]);
        }
        table.print();
    }
    example(marking, words);
}

/// A drill, whether an answer is right, and the solution where it is wanted.
pub(crate) fn practice_drill(drill: &Drill, output: &DrillOutput, solution: bool, words: &Words) {
    let asked = Message::new(match drill.kind {
        tautline_engine::practice::drill::Kind::Add => "practice-drill-add",
        tautline_engine::practice::drill::Kind::FeetToInches => "practice-drill-feet-to-inches",
        tautline_engine::practice::drill::Kind::Subtract => "practice-drill-subtract",
        tautline_engine::practice::drill::Kind::Whole => "practice-drill-whole",
    });
    wrapped(&words.say(&asked.with("line", output.line.as_str())), 0);
    for given in &output.given {
        line(&format!("  {given}"));
    }
    if let Some(right) = output.right {
        wrapped(&words.word(if right { "practice-drill-right" } else { "practice-drill-wrong" }), 0);
    }
    if solution {
        title(&words.word("practice-solution"));
        for said in paper::worked_out(&drill.worked(), &output.line) {
            wrapped(&words.say(&said), 2);
        }
    }
}

/// Each learner's lessons, and what can be said of them.
pub(crate) fn practice_progress(learners: &[Learner], words: &Words) {
    let number = |number: f64| words.number(number, 1);
    for learner in learners {
        title(&learner.name);
        for said in progress_sentences(learner, words) {
            wrapped(&said, 0);
        }
        let columns = ["line", "day", "off", "right", "marks", "habit"];
        let mut table = Table::new(&columns.map(|name| words.word(&format!("lesson-column-{name}"))));
        for lesson in &learner.lessons {
            let off = lesson.error();
            let (right, all) = lesson.right;
            let right = Message::new("lesson-progress-right").with("right", right).with("all", all);
            table.row(vec![
                lesson.line.clone(),
                lesson.date.map_or_else(|| "–".to_owned(), |date| date.to_string()),
                if off > 0.0 { format!("+{}", number(off)) } else { number(off) },
                words.say(&right),
                number(lesson.marks.all()),
                lesson.habit.as_ref().map_or_else(|| "–".to_owned(), |habit| words.word(habit)),
            ]);
        }
        table.print();
    }
}
