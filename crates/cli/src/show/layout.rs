//! A layout in sentences and tables.

use super::table::Table;
use super::{line, println, title, wrapped};
use tautline_report::packet::said;
use tautline_survey::layout::LayoutOutput;
use tautline_survey::message::{Message, Value};
use tautline_words::Words;

/// The lines of a layout, what to know about them, and the cautions of the trade.
pub(crate) fn layout(layout: &LayoutOutput, words: &Words) {
    let say = |message: Message| words.say(&message);
    title(&say(Message::new("title-layout").with("site", layout.site.as_str())));
    for message in said::strata(layout, &words.word("the-site")) {
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
    for message in said::drawing(layout).into_iter().chain(said::walk(layout)) {
        wrapped(&say(message), 0);
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
    for caution in tautline_report::packet::CAUTIONS {
        wrapped(&words.word(caution), 2);
    }
}
