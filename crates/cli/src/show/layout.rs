//! A layout in sentences and tables.

use super::table::Table;
use super::{line, println, title, wrapped};
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
    if let Some(why) = &layout.judged {
        let message = Message::new("area-chosen-by-judgement").with("site", layout.site.as_str());
        wrapped(&say(message.with("why", why.as_str())), 0);
    }
    let drawn = Message::new("layout-drawn")
        .with(
            "design",
            words.word(match layout.design.as_str() {
                "random" => "design-random",
                "systematic" => "design-systematic",
                "baseline" => "design-baseline",
                _ => "design-balanced",
            }),
        )
        .with("seed", layout.seed)
        .with("apart", metres(layout.apart_mm));
    wrapped(&say(drawn), 0);
    wrapped(
        &words.word(match layout.edge.as_str() {
            _ if layout.design == "baseline" => "layout-edge-baseline",
            "turn" => "layout-edge-turn",
            _ => "layout-edge-redraw",
        }),
        0,
    );
    let code = if layout.design == "baseline" { "layout-drawings-given-up" } else { "layout-given-up" };
    let given_up = Message::new(code)
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
    for caution in tautline_report::packet::CAUTIONS {
        wrapped(&words.word(caution), 2);
    }
}
