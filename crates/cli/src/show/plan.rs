//! A plan in sentences and tables.

use super::table::Table;
use super::{line, println, title, wrapped};
use tautline_survey::effort::{Answer, EffortOutput, LengthsOutput};
use tautline_survey::explain::{confidence_value, goal_words};
use tautline_survey::goal::Wanted;
use tautline_survey::layout::LayoutOutput;
use tautline_survey::message::{Message, Value};
use tautline_words::Words;

/// The lines of a layout, what to know about them, and the cautions of the trade.
pub(crate) fn layout(layout: &LayoutOutput, words: &Words) {
    let say = |message: Message| words.say(&message);
    title(&say(Message::new("title-layout").with("site", layout.site.as_str())));
    for stratum in &layout.strata {
        let name = stratum.name.clone().unwrap_or_else(|| words.word("the-site"));
        let message = Message::new("layout-stratum")
            .with("name", name)
            .with("hectares", Value::Number(stratum.area_m2 / 10_000.0, 2))
            .with("placed", stratum.placed)
            .with("wanted", stratum.wanted);
        wrapped(&say(message), 0);
    }
    println!();
    let headings = ["line", "stratum", "start", "end", "true", "compass"]
        .map(|name| words.word(&format!("column-{name}")));
    for (reserve, heading) in [(false, "heading-lines"), (true, "heading-reserve")] {
        let mut rows = layout.lines.iter().filter(|line| line.reserve == reserve).peekable();
        if rows.peek().is_none() {
            continue;
        }
        line(&words.word(heading));
        let mut table = Table::new(&headings);
        for one in rows {
            let degrees = |end: &tautline_survey::layout::End| {
                format!("{} {}", words.number(end.latitude, 6), words.number(end.longitude, 6))
            };
            table.row(vec![
                one.line.clone(),
                one.stratum.clone().unwrap_or_default(),
                degrees(&one.start),
                degrees(&one.end),
                format!("{}°", one.true_bearing),
                one.magnetic_bearing
                    .map_or(String::new(), |bearing| format!("{}°", words.number(bearing, 1))),
            ]);
        }
        table.print();
        println!();
    }
    let metres = |millimetres: i64| {
        #[expect(clippy::cast_precision_loss, reason = "lengths on the ground")]
        let metres = millimetres as f64 / 1000.0;
        Value::Number(metres, 1)
    };
    let drawn = Message::new("layout-drawn")
        .with(
            "design",
            words.word(match layout.design.as_str() {
                "random" => "design-random",
                "systematic" => "design-systematic",
                _ => "design-balanced",
            }),
        )
        .with("seed", layout.seed)
        .with("apart", metres(layout.apart_mm));
    wrapped(&say(drawn), 0);
    wrapped(&words.word(if layout.edge == "turn" { "layout-edge-turn" } else { "layout-edge-redraw" }), 0);
    let given_up = Message::new("layout-given-up")
        .with("edge", layout.given_up_at_the_edge)
        .with("kept", layout.given_up_kept_out)
        .with("near", layout.given_up_too_near);
    wrapped(&say(given_up), 0);
    if layout.strata.iter().any(|stratum| stratum.placed < stratum.wanted) {
        wrapped(&words.word("layout-no-room"), 0);
    }
    match layout.declination {
        Some(found) => {
            let side = if found.degrees < 0.0 { "west" } else { "east" };
            let message = Message::new("declination")
                .with("date", found.date.to_string())
                .with("degrees", Value::Number(found.degrees.abs(), 1))
                .with("side", words.word(side))
                .with("yearly", Value::Number(found.yearly, 2))
                .with("uncertainty", Value::Number(found.uncertainty, 1));
            wrapped(&say(message), 0);
            if found.weak_field {
                wrapped(&words.word("declination-weak"), 0);
            }
        }
        None => wrapped(&words.word("declination-no-date"), 0),
    }
    println!();
    line(&words.word("heading-cautions"));
    for caution in CAUTIONS {
        wrapped(&words.word(caution), 2);
    }
}

const CAUTIONS: [&str; 6] = [
    "caution-permission",
    "caution-stakes",
    "caution-weather",
    "caution-alone",
    "caution-animals",
    "caution-line",
];

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
