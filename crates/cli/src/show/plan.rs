//! How many lines, in sentences and tables.

use super::table::Table;
use super::{println, title, wrapped};
use tautline_report::EffortTold;
use tautline_report::effort::{lengths_said, remark, simulated_said};
use tautline_survey::effort::LengthsOutput;
use tautline_survey::effort::sequential::SequentialOutput;
use tautline_survey::effort::shares::SharesOutput;
use tautline_survey::message::{Message, Value};
use tautline_words::Words;

/// Numbers of lines.
pub(crate) fn effort(told: &EffortTold, words: &Words) {
    let output = told.output;
    title(&words.word("title-effort"));
    for message in told.foreseen() {
        wrapped(&words.say(&message), 0);
    }
    println!();
    let headings =
        ["question", "lines-needed", "shows", "chance"].map(|name| words.word(&format!("column-{name}")));
    let mut table = Table::new(&headings);
    for answer in &output.answers {
        let share =
            |share: Option<f64>, places| share.map_or(String::new(), |share| words.percent(share, places));
        let asked = answer.wanted.is_some() || answer.goal.is_some();
        table.row(vec![
            words.say(&told.question(answer)),
            match answer.lines {
                Some(lines) => lines.to_string(),
                None if asked => words.word("no-practical-number"),
                None => String::new(),
            },
            share(answer.shows, 1),
            share(answer.chance, 0),
        ]);
    }
    table.print();
    println!();
    for code in told.cautions() {
        wrapped(&words.word(code), 0);
    }
    if !output.simulated.is_empty() {
        title(&words.word("title-simulated"));
    }
    for one in &output.simulated {
        wrapped(&words.say(&simulated_said(one)), 0);
    }
    if let Some(shares) = &output.strata {
        strata(shares, words);
    }
    match &output.lengths {
        Some(lengths) => self::lengths(lengths, words),
        None if told.cost => wrapped(&words.word("lengths-unknown"), 0),
        None => {}
    }
}

fn lengths(lengths: &LengthsOutput, words: &Words) {
    title(&words.word("title-lengths"));
    let headings =
        ["length-m", "lines-needed", "minutes", "remark"].map(|name| words.word(&format!("column-{name}")));
    let mut table = Table::new(&headings);
    for design in &lengths.designs {
        table.row(vec![
            words.number(design.length_m, 1),
            design.lines.to_string(),
            words.number(design.minutes, 0),
            remark(lengths, design).map_or_else(String::new, |code| words.word(code)),
        ]);
    }
    table.print();
    for message in lengths_said(lengths) {
        wrapped(&words.say(&message), 0);
    }
}

fn strata(found: &SharesOutput, words: &Words) {
    title(&words.word("title-strata"));
    let headings = ["stratum-name", "by-area", "by-spread"].map(|name| words.word(&format!("column-{name}")));
    let mut table = Table::new(&headings);
    for (at, name) in found.names.iter().enumerate() {
        let mut row = vec![name.clone()];
        row.extend(found.shares.iter().map(|share| share.lines[at].to_string()));
        table.row(row);
    }
    table.print();
    let [area, spread] = found.shares.as_slice() else { return };
    let message = Message::new("strata-error").with("area", Value::Share(area.error, 2));
    wrapped(&words.say(&message.with("spread", Value::Share(spread.error, 2))), 0);
}

/// A sequential plan, as written in the call.
pub(crate) fn sequential(plan: &SequentialOutput, written: &str, words: &Words) {
    let headings = |names: &[&str]| -> Vec<String> {
        names.iter().map(|name| words.word(&format!("column-{name}"))).collect()
    };
    title(&words.word("title-sequential"));
    let level = Message::new("sequential-level").with("level", Value::Share(1.0 - plan.level, 1));
    wrapped(&words.say(&level.with("error", Value::Share(plan.error, 1))), 0);
    wrapped(&words.word("sequential-beforehand"), 0);
    println!();
    let mut looks = Table::new(&headings(&["lines", "times"]));
    for look in &plan.looks {
        looks.row(vec![look.lines.to_string(), words.number(look.times, 2)]);
    }
    looks.print();
    println!();
    wrapped(&words.word("sequential-how"), 0);
    if !plan.courses.is_empty() {
        println!();
        let mut courses =
            Table::new(&headings(&["true-cover", "met", "not-met", "neither", "lines-on-average"]));
        for course in &plan.courses {
            let mut row: Vec<String> = [course.cover, course.met, course.not_met, course.neither]
                .map(|share| words.percent(share, 1))
                .to_vec();
            row.push(words.number(course.lines, 1));
            courses.row(row);
        }
        courses.print();
        wrapped(&words.word("sequential-normal"), 0);
    }
    println!();
    wrapped(&words.say(&Message::new("sequential-after").with("plan", written)), 0);
}
