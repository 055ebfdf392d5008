//! Where each line is and how it runs, in the order of the walk; then those in reserve in theirs.

use super::booklet::{Grid, Part};
use super::walked;
use tautline_survey::layout::{LaidLine, LayoutOutput};
use tautline_survey::message::{Message, Value};
use tautline_words::Words;

/// The lines of a layout.
pub(super) fn part(layout: &LayoutOutput, words: &Words) -> Part {
    let table = |caption: &str, lines: Vec<&LaidLine>| {
        let headings = ["line", "stratum", "start", "start-utm", "end", "true", "compass"];
        (!lines.is_empty()).then(|| Grid {
            caption: words.word(caption),
            columns: headings.map(|name| words.word(&format!("column-{name}"))).to_vec(),
            rows: lines.into_iter().map(|line| row(line, words)).collect(),
        })
    };
    let reserve = layout.lines.iter().filter(|line| line.reserve).collect();
    Part {
        heading: words.word("packet-lines"),
        said: [bearings(layout, words), words.word("packet-slope")]
            .into_iter()
            .chain(super::said::walk(layout).iter().map(|message| words.say(message)))
            .collect(),
        tables: [table("heading-walk", walked(layout).collect()), table("heading-reserve", reserve)]
            .into_iter()
            .flatten()
            .collect(),
    }
}

/// What a compass points to, and how that changes.
fn bearings(layout: &LayoutOutput, words: &Words) -> String {
    let Some(found) = layout.declination else { return words.word("declination-no-date") };
    words.say(
        &Message::new("declination")
            .with("date", found.date.to_string())
            .with("degrees", Value::Number(found.degrees.abs(), 1))
            .with("side", words.word(if found.degrees < 0.0 { "west" } else { "east" }))
            .with("yearly", Value::Number(found.yearly, 2))
            .with("uncertainty", Value::Number(found.uncertainty, 1)),
    )
}

fn row(line: &LaidLine, words: &Words) -> Vec<Option<String>> {
    let place = |latitude: f64, longitude: f64| {
        format!("{} {}", words.number(latitude, 6), words.number(longitude, 6))
    };
    let cells = [
        line.line.clone(),
        line.stratum.clone().unwrap_or_default(),
        place(line.start.latitude, line.start.longitude),
        line.start.utm.clone(),
        place(line.end.latitude, line.end.longitude),
        format!("{}°", line.true_bearing),
        line.magnetic_bearing.map_or(String::new(), |bearing| format!("{}°", words.number(bearing, 1))),
    ];
    cells.map(Some).to_vec()
}
