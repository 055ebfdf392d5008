//! What is said of unlike readers at the two visits of a change.

use super::sentences::number;
use super::{NotTaken, Readers, SiteChange, Taken, Visit};
use crate::explain::confidence_value;
use crate::message::{Message, Value};

/// What unlike readers do to the change of canopy; nothing where they aren't unlike.
pub fn readers_words(change: &SiteChange) -> Vec<Message> {
    let measured = match &change.readers {
        None => return Vec::new(),
        Some(Readers::NotMeasured { earlier, later, not_taken }) => {
            let message = Message::new("readers-not-measured");
            let mut said = vec![message.with("earlier", earlier.as_str()).with("later", later.as_str())];
            said.extend(not_taken.map(|why| match why {
                NotTaken::OtherRules => Message::new("readers-logged-otherwise"),
                NotTaken::After => Message::new("readers-logged-after"),
                NotTaken::TooOld(days) => {
                    Message::new("readers-logged-too-old").with("days", u64::from(days))
                }
            }));
            return said;
        }
        Some(Readers::Measured(measured)) => measured,
    };
    let names = |lines: &[crate::line::LineResult]| {
        let mut names: Vec<String> = lines.iter().map(|line| line.reader.clone()).collect();
        names.sort();
        names.dedup();
        names
    };
    let Ok(interval) = measured.interval else { return Vec::new() };
    let code = match (measured.bias.value < 0.0, measured.is_by_a_third) {
        (false, false) => "readers-measured",
        (true, false) => "readers-measured-less",
        (false, true) => "readers-measured-by-a-third",
        (true, true) => "readers-measured-by-a-third-less",
    };
    let mut said = vec![
        Message::new(code)
            .with("earlier", names(&change.earlier))
            .with("later", names(&change.later))
            .with("bias", Value::Number(measured.bias.value.abs() * 100.0, 1))
            .with("lines", measured.bias.lines),
        Message::new("readers-taken-off")
            .with("change", number(measured.corrected.value))
            .with("low", number(interval.low))
            .with("high", number(interval.high))
            .with("confidence", confidence_value(change.confidence)),
    ];
    if !measured.taken.is_empty() {
        let taken = measured.taken.iter().map(taken_words).collect();
        said.push(Message::new("readers-from-the-log").with("taken", Value::List(taken)));
    }
    said.extend(measured.believed.map(|believed| {
        Message::new("readers-believed").with("believed", Value::Number(believed * 100.0, 1))
    }));
    said
}

/// A calibration that was taken, and how old it was.
fn taken_words(one: &Taken) -> Value {
    let code = match one.visit {
        Visit::Earlier => "taken-for-the-earlier",
        Visit::Later => "taken-for-the-later",
    };
    let message =
        Message::new(code).with("reader", one.reader.as_str()).with("against", one.against.as_str());
    message.with("date", one.date.to_string()).with("days", u64::from(one.days)).into()
}
