//! How many lines, in sentences and tables.

use super::table::Table;
use super::{println, title, wrapped};
use tautline_survey::effort::sequential::SequentialOutput;
use tautline_survey::effort::shares::SharesOutput;
use tautline_survey::effort::simulated::SimulatedOutput;
use tautline_survey::effort::{Answer, EffortOutput, LengthsOutput};
use tautline_survey::explain::{confidence_value, goal_words};
use tautline_survey::goal::Wanted;
use tautline_survey::message::{Message, Value};
use tautline_words::Words;

/// Numbers of lines.
pub(crate) fn effort(output: &EffortOutput, goals: &[Wanted], visits: usize, cost: bool, words: &Words) {
    let say = |message: Message| words.say(&message);
    title(&words.word("title-effort"));
    let foreseen =
        Message::new(if output.pilot_lines.is_some() { "effort-from-pilot" } else { "effort-foreseen" })
            .with("site", output.site.clone().unwrap_or_default())
            .with("lines", output.pilot_lines.unwrap_or(0))
            .with("cover", Value::Share(output.cover, 1))
            .with("spread", Value::Share(output.deviation, 1));
    wrapped(&say(foreseen), 0);
    let sure = Message::new("effort-sure")
        .with("confidence", confidence_value(output.confidence))
        .with("power", Value::Share(output.power, 0));
    wrapped(&say(sure), 0);
    println!();
    let headings =
        ["question", "lines-needed", "shows", "chance"].map(|name| words.word(&format!("column-{name}")));
    let mut table = Table::new(&headings);
    for answer in &output.answers {
        let share =
            |share: Option<f64>, places| share.map_or(String::new(), |share| words.percent(share, places));
        let asked = answer.wanted.is_some() || answer.goal.is_some();
        table.row(vec![
            question(answer, goals, output, visits, words),
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
    wrapped(&words.word("effort-normal"), 0);
    if output.pilot_lines.is_some() {
        wrapped(&words.word("effort-pilot-unsure"), 0);
    }
    if output.answers.iter().any(|answer| answer.question == "trend") {
        wrapped(&words.word("effort-trend"), 0);
    }
    simulated(&output.simulated, words);
    if let Some(shares) = &output.strata {
        strata(shares, words);
    }
    match &output.lengths {
        Some(lengths) => self::lengths(lengths, words),
        None if cost => wrapped(&words.word("lengths-unknown"), 0),
        None => {}
    }
}

fn question(
    answer: &Answer,
    goals: &[Wanted],
    output: &EffortOutput,
    visits: usize,
    words: &Words,
) -> String {
    let wanted = answer.wanted.map_or(Value::Text(String::new()), |share| Value::Share(share, 1));
    let message = match (answer.question, answer.goal.and_then(|at| goals.get(at))) {
        ("verdict", Some(goal)) => Message::new("question-verdict").with("goal", goal_words(goal)),
        ("half-width", _) if answer.wanted.is_none() => Message::new("question-width-alone"),
        ("half-width", _) => Message::new("question-half-width").with("wanted", wanted),
        ("change-permanent", _) if answer.wanted.is_none() => {
            Message::new("question-permanent-alone").with("correlation", Value::Number(output.correlation, 2))
        }
        ("change-permanent", _) => Message::new("question-permanent")
            .with("wanted", wanted)
            .with("correlation", Value::Number(output.correlation, 2)),
        ("change-temporary", _) if answer.wanted.is_none() => Message::new("question-temporary-alone"),
        ("change-temporary", _) => Message::new("question-temporary").with("wanted", wanted),
        _ => Message::new("question-trend").with("wanted", wanted).with("visits", visits),
    };
    words.say(&message)
}

fn lengths(lengths: &LengthsOutput, words: &Words) {
    let say = |message: Message| words.say(&message);
    let metres = |metres: f64| words.number(metres, 1);
    title(&words.word("title-lengths"));
    let headings =
        ["length-m", "lines-needed", "minutes", "remark"].map(|name| words.word(&format!("column-{name}")));
    let mut table = Table::new(&headings);
    for design in &lengths.designs {
        let cheapest =
            lengths.cheapest.is_some_and(|best| best.length_m.to_bits() == design.length_m.to_bits());
        let remark = match (cheapest, design.beyond_pilot) {
            (true, false) => "cheapest",
            (true, true) => "cheapest-beyond-pilot",
            (false, true) => "beyond-pilot",
            (false, false) => "",
        };
        table.row(vec![
            metres(design.length_m),
            design.lines.to_string(),
            words.number(design.minutes, 0),
            if remark.is_empty() { String::new() } else { words.word(remark) },
        ]);
    }
    table.print();
    if let (Some((low, high)), Some(nearly)) = (lengths.likely_m, lengths.nearly_cheapest) {
        let message = Message::new("lengths-sure")
            .with("low", metres(low))
            .with("high", metres(high))
            .with("nearly", Value::Share(nearly, 0));
        wrapped(&say(message), 0);
    }
    wrapped(&say(Message::new("lengths-fall").with("fall", Value::Number(lengths.fall, 2))), 0);
}

fn simulated(found: &[SimulatedOutput], words: &Words) {
    if !found.is_empty() {
        title(&words.word("title-simulated"));
    }
    for one in found {
        let message = Message::new(if one.stand.is_some() { "simulated-stand" } else { "simulated-normal" })
            .with("surveys", usize::try_from(one.surveys).unwrap_or(usize::MAX))
            .with("lines", one.lines)
            .with("chance", Value::Share(one.chance, 1))
            .with("error", Value::Share(one.error, 1))
            .with("closed", Value::Share(one.closed_form, 1));
        let message = match one.stand {
            Some(stand) => message
                .with("clump", Value::Number(stand.clump, 0))
                .with("length", Value::Number(stand.length_m, 1))
                .with("cover", Value::Share(stand.cover, 1))
                .with("deviation", Value::Share(stand.deviation, 1))
                .with("bare", Value::Share(stand.bare, 0))
                .with("change", Value::Share(stand.change, 1))
                .with("differences", Value::Share(stand.deviation_of_differences, 1)),
            None => message,
        };
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
