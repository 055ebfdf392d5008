//! What two readers should hear about each other's sheets.

use super::{Agreement, SHARE_WITHIN};
use crate::explain::confidence_value;
use crate::message::{Message, Value};
use tautline_engine::agreement::habits::Habit;
use tautline_engine::length::{Length, Notation, Unit};

fn points(difference: f64) -> Value {
    Message::new("points").with("figure", Value::Number(difference.abs() * 100.0, 1)).into()
}

fn centimetres(length: Length) -> Value {
    Value::Length(length, Notation::decimals(Unit::Centimetre, 1))
}

/// The sentences, the plain one first, then what to talk about.
pub fn sentences(agreement: &Agreement) -> Vec<Message> {
    let about = |code| {
        Message::new(code)
            .with("first", agreement.first.as_str())
            .with("second", agreement.second.as_str())
            .with("lines", agreement.lines.len())
    };
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
            about("habit-closes-gaps").with("closed", centimetres(closed)).with("gaps", gaps)
        }
        Habit::Wider(way) => about("habit-wider").with("way", centimetres(way)),
        Habit::Narrower(way) => about("habit-narrower").with("way", centimetres(way)),
        Habit::TapeOff(way) if way < Length::ZERO => {
            about("habit-tape-back").with("way", centimetres(Length::ZERO - way))
        }
        Habit::TapeOff(way) => about("habit-tape-off").with("way", centimetres(way)),
        Habit::DeadAsLive(share) => about("habit-dead-as-live").with("share", Value::Share(share, 0)),
        Habit::LeavesOutSmall { up_to, plants } => {
            about("habit-leaves-out-small").with("length", centimetres(up_to)).with("plants", plants)
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
