//! What a calibration came to, as a page to print: plain, and the office's own.

use crate::markup::{around, text};
use crate::practice::{page, style, table};
use tautline_survey::agree::{Calibration, Outcome};
use tautline_survey::input::Input;
use tautline_survey::message::{Message, Value};
use tautline_words::Words;

/// Each calibration of the input on a sheet of its own.
///
/// # Example
/// ```
/// use tautline_survey::input::Input;
/// let page = tautline_report::certificates(&Input::default(), &tautline_words::Words::english());
/// assert!(page.contains("The log of this notebook is empty"));
/// ```
pub fn certificates(input: &Input, words: &Words) -> String {
    page(&words.word("certificate-title"), &sheets(input, words), words)
}

/// The same without the page's head: for a screen that shows it among other things, under [`certificates_style`].
pub fn certificates_body(input: &Input, words: &Words) -> String {
    around("main id=\"main\"", &sheets(input, words))
}

/// The rules of the sheets.
pub fn certificates_style() -> String {
    style()
}

fn sheets(input: &Input, words: &Words) -> String {
    let sheets: String = input
        .calibrations
        .iter()
        .map(|one| around("section class=\"certificate\"", &certificate(one, input, words)))
        .collect();
    if sheets.is_empty() { text("p", &words.word("log-empty")) } else { sheets }
}

fn certificate(one: &Calibration, input: &Input, words: &Words) -> String {
    let points = |share: f64| Message::new("points").with("figure", Value::Number(share.abs() * 100.0, 1));
    let about = |code| {
        let message =
            Message::new(code).with("reader", one.reader.as_str()).with("against", one.against.as_str());
        message
            .with("lines", one.lines.len())
            .with("within", one.within())
            .with("site", one.site.as_str())
            .with("date", one.date.to_string())
            .with("tolerance", points(one.tolerance.share()))
            .with("bias", points(one.bias()))
            .with("protocol", protocols(one, input, words))
    };
    let came_to = match one.outcome {
        Outcome::Passed => "certificate-passed",
        Outcome::Repeat => "certificate-repeat",
    };
    let bias = if one.bias() < 0.0 { "certificate-bias-less" } else { "certificate-bias-more" };
    let mut sheet = text("h1", &words.word("certificate-title"));
    for code in ["certificate-about", came_to, bias] {
        sheet += &text("p", &words.say(&about(code)));
    }
    let columns = ["column-line", "column-difference"].map(|code| words.word(code));
    let rows = one.lines.iter().map(|line| {
        let sign = if line.difference > 0 { "+" } else { "" };
        vec![line.line.clone(), format!("{sign}{}", words.number(line.share() * 100.0, 1))]
    });
    sheet += &table(&words.word("certificate-lines"), &columns, rows.collect());
    sheet += &text("p class=\"quiet\"", &words.word("points-of-cover"));
    let judged = Message::new("certificate-judged").with("judge", one.judge.as_str());
    sheet += &text("p", &words.say(&judged));
    sheet += &text("p class=\"write\"", &words.word("certificate-day-and-hand"));
    sheet + &text("p class=\"quiet\"", &words.word("certificate-whose"))
}

/// The protocols by name, or by their fingerprints.
fn protocols(one: &Calibration, input: &Input, words: &Words) -> Vec<String> {
    let named = |print: &String| {
        let known = input.protocols.get(print).map(|protocol| protocol.name.clone());
        known.filter(|name| !name.is_empty()).unwrap_or_else(|| {
            let short: String = print.chars().take(8).collect();
            words.say(&Message::new("certificate-unnamed-protocol").with("fingerprint", short))
        })
    };
    one.protocols.iter().map(named).collect()
}
