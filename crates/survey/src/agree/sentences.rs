//! What two readers should hear about each other's sheets.

use super::{Agreement, Outcome, Ready, Reminder, SHARE_WITHIN, Season, standing};
use crate::explain::confidence_value;
use crate::measure::short;
use crate::message::{Message, Value};
use tautline_engine::agreement::habits::Habit;
use tautline_engine::length::{Length, Notation, Unit};

fn points(difference: f64) -> Value {
    Message::new("points").with("figure", Value::Number(difference.abs() * 100.0, 1)).into()
}

/// What a stretched tape is said over: ten metres, or thirty feet.
const fn stretch(tape: Notation) -> (Length, Notation) {
    match tape.unit {
        Unit::Foot | Unit::Inch => (Length::from_units(30, Unit::Foot), Notation::decimals(Unit::Foot, 0)),
        _ => (Length::from_units(10, Unit::Metre), Notation::decimals(Unit::Metre, 0)),
    }
}

/// So great a share of a length.
fn part(share: f64, of: Length) -> Length {
    #[expect(clippy::cast_possible_truncation, reason = "a small share of a short length")]
    let nanometres = (share.abs() * of.in_unit(Unit::Metre) * 1e9).round() as i64;
    Length::from_nanometres(nanometres)
}

/// What is said of the second reader's standing by the office's tolerance.
pub fn standing_sentences(agreement: &Agreement, tolerance: f64) -> Vec<Message> {
    let standing = standing(agreement, tolerance);
    let code = match standing.ready {
        Ready::Ready => "standing-ready",
        Ready::Practise => "standing-practise",
        Ready::TooFew => "standing-too-few",
    };
    let mut days: Vec<String> =
        agreement.lines.iter().filter_map(|pair| pair.second.date.map(|day| day.to_string())).collect();
    days.sort();
    days.dedup();
    let mut said = vec![
        Message::new(code)
            .with("tolerance", points(tolerance))
            .with("within", standing.within)
            .with("lines", standing.lines),
    ];
    if !days.is_empty() {
        said.push(Message::new("standing-days").with("second", agreement.second.as_str()).with("days", days));
    }
    said.push(Message::new("standing-whose"));
    said
}

/// Where a reader stands with calibrations on a day.
pub fn reminder_sentences(one: &Reminder) -> Vec<Message> {
    let about = |code| Message::new(code).with("reader", one.reader.as_str());
    let mut said = Vec::new();
    match (&one.passed, one.span) {
        (None, _) => said.push(about("reminder-never")),
        (Some((passed, days)), span) => {
            let code = match span {
                None => "reminder-last",
                Some(span) if *days > span => "reminder-over",
                Some(_) => "reminder-within",
            };
            let mut message = about(code)
                .with("days", u64::from(*days))
                .with("date", passed.date.to_string())
                .with("against", passed.against.as_str());
            if let Some(span) = span {
                message = message.with("span", u64::from(span));
            }
            said.push(message);
        }
    }
    if let Some(latest) = one.latest.filter(|latest| latest.outcome == Outcome::Repeat) {
        said.push(about("reminder-repeat").with("date", latest.date.to_string()));
    }
    if one.uncovered > 0 {
        let code = if one.span.is_some() { "reminder-uncovered-span" } else { "reminder-uncovered" };
        said.push(about(code).with("lines", one.lines).with("uncovered", one.uncovered));
    }
    said
}

/// What is said of one reader over a season.
pub fn season_sentences(season: &Season) -> Vec<Message> {
    let about = |code: &'static str| {
        Message::new(code)
            .with("first", season.first.as_str())
            .with("second", season.second.as_str())
            .with("year", season.year.to_string())
            .with("lines", season.points.len())
    };
    let Some(chart) = &season.chart else { return vec![about("control-too-few")] };
    if chart.broken.is_empty() {
        return vec![about("control-quiet")];
    }
    let broken = chart.broken.iter().filter_map(|(at, rule)| {
        let day = season.points.get(*at)?.day;
        Some(about("control-broken").with("what", Value::Word(rule.code())).with("day", day.to_string()))
    });
    // one broken rule is enough to ask for a look
    broken.take(1).collect()
}

/// The sentences, the plain one first, then what to talk about.
pub fn sentences(agreement: &Agreement) -> Vec<Message> {
    let about = |code| {
        Message::new(code)
            .with("first", agreement.first.as_str())
            .with("second", agreement.second.as_str())
            .with("lines", agreement.lines.len())
    };
    let tape = agreement.written.unwrap_or(Notation::decimals(Unit::Metre, 0));
    let said_short = |length| Value::Length(length, short(tape, 1));
    let differences: Vec<f64> = agreement.lines.iter().filter_map(|pair| pair.difference).collect();
    let mut said = Vec::new();
    if let [only] = differences[..] {
        let code = if only >= 0.0 { "agree-one-line-more" } else { "agree-one-line-less" };
        said.push(about(code).with("difference", points(only)));
    }
    if let Some(limits) = agreement.limits {
        let code = if limits.bias >= 0.0 { "agree-more" } else { "agree-less" };
        said.push(about(code).with("difference", points(limits.bias)));
        let number = |value: f64| Value::Number(value * 100.0, 1);
        said.push(
            Message::new("agree-limits")
                .with("share", Value::Share(SHARE_WITHIN, 0))
                .with("low", number(limits.lower))
                .with("high", number(limits.upper)),
        );
        let (low, high) = limits.bias_interval(agreement.confidence);
        said.push(
            Message::new("agree-bias")
                .with("low", number(low))
                .with("high", number(high))
                .with("confidence", confidence_value(agreement.confidence)),
        );
    }
    said.extend(agreement.habits.iter().map(|habit| match *habit {
        Habit::ClosesGaps { closed, gaps, .. } => {
            about("habit-closes-gaps").with("closed", said_short(closed)).with("gaps", gaps)
        }
        Habit::Wider(way) => about("habit-wider").with("way", said_short(way)),
        Habit::Narrower(way) => about("habit-narrower").with("way", said_short(way)),
        Habit::TapeOff(way) if way < Length::ZERO => {
            about("habit-tape-back").with("way", said_short(Length::ZERO - way))
        }
        Habit::TapeOff(way) => about("habit-tape-off").with("way", said_short(way)),
        Habit::OpensGaps { opened, gaps } => {
            about("habit-opens-gaps").with("length", said_short(opened)).with("gaps", gaps)
        }
        Habit::TapeStretched(share) => {
            let over = stretch(tape);
            let code = if share > 0.0 { "habit-tape-stretched" } else { "habit-tape-shrunk" };
            about(code)
                .with("way", said_short(part(share, over.0)))
                .with("over", Value::Length(over.0, over.1))
        }
        Habit::OtherEdge(way) => about("habit-other-edge").with("way", said_short(way)),
        Habit::OtherAsCanopy(share) => about("habit-other-as-canopy").with("share", Value::Share(share, 0)),
        Habit::AddsSmall { up_to, plants } => {
            about("habit-adds-small").with("length", said_short(up_to)).with("plants", plants)
        }
        Habit::DeadAsLive(share) => about("habit-dead-as-live").with("share", Value::Share(share, 0)),
        Habit::LeavesOutSmall { up_to, plants } => {
            about("habit-leaves-out-small").with("length", said_short(up_to)).with("plants", plants)
        }
    }));
    if agreement.habits.is_empty() && !said.is_empty() {
        said.push(about("habit-none"));
    }
    said.extend(agreement.reliability.map(|one| {
        Message::new("agree-reliability")
            .with("value", Value::Number(one.value, 2))
            .with("low", Value::Number(one.interval.0, 2))
            .with("high", Value::Number(one.interval.1, 2))
            .with("confidence", confidence_value(agreement.confidence))
            .with("readers", one.readers)
            .with("lines", one.lines)
    }));
    said
}
