//! The log of calibrations: a table, who is due, and every line as data.

use super::table::Table;
use super::{title, wrapped};
use tautline_engine::num::decimal::shortest;
use tautline_exchange::table::row;
use tautline_survey::agree::{Reminder, reminder_sentences};
use tautline_survey::input::Input;
use tautline_survey::message::Message;
use tautline_words::Words;

/// The calibrations, and where each reader stands.
pub(crate) fn log(input: &Input, reminders: &[Reminder], words: &Words) {
    if input.calibrations.is_empty() {
        wrapped(&words.word("log-empty"), 0);
    } else {
        title(&words.word("title-log"));
        let headings = ["date", "reader", "against", "site", "within", "tolerance", "mean-difference"];
        let mut columns: Vec<String> =
            headings.iter().map(|name| words.word(&format!("column-{name}"))).collect();
        columns.extend(["outcome", "judge"].map(|name| words.word(&format!("column-{name}"))));
        let mut table = Table::new(&columns);
        let points = |share: f64| words.number(share * 100.0, 1);
        for one in &input.calibrations {
            let within = Message::new("so-many-of").with("some", one.within()).with("all", one.lines.len());
            let sign = if one.bias() > 0.0 { "+" } else { "" };
            table.row(vec![
                one.date.to_string(),
                one.reader.clone(),
                one.against.clone(),
                one.site.clone(),
                words.say(&within),
                points(one.tolerance.share()),
                format!("{sign}{}", points(one.bias())),
                words.word(one.outcome.code()),
                one.judge.clone(),
            ]);
        }
        table.print();
        wrapped(&words.word("points-of-cover"), 0);
    }
    if !reminders.is_empty() {
        title(&words.word("title-due"));
        for message in reminders.iter().flat_map(reminder_sentences) {
            wrapped(&words.say(&message), 2);
        }
    }
}

/// One row a line; differences and tolerances are shares of the line.
pub(crate) fn csv_log(input: &Input) {
    let headings = [
        "date",
        "site",
        "reader",
        "against",
        "line",
        "difference",
        "tolerance",
        "outcome",
        "judge",
        "protocol",
    ];
    let mut text = row(&headings);
    for one in &input.calibrations {
        for line in &one.lines {
            text += &row(&[
                one.date.to_string().as_str(),
                &one.site,
                &one.reader,
                &one.against,
                &line.line,
                &shortest(line.share()),
                &shortest(one.tolerance.share()),
                one.outcome.code(),
                &one.judge,
                &one.protocols.join(" "),
            ]);
        }
    }
    super::print_all(&text);
}
