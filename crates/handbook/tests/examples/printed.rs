//! Numbers as pages print them: read exactly, and written again to as many digits.

use tautline_engine::length::{Bare, DecimalMark, Length, Unit, read};
use tautline_engine::num::decimal::decimal;

/// What a calculation came to.
#[derive(Clone, Debug)]
pub(crate) enum Found {
    /// A share, a length in metres, or a plain number.
    Number(f64),
    /// From one to another.
    Range(f64, f64),
    /// A word.
    Word(String),
}

impl From<f64> for Found {
    fn from(number: f64) -> Self {
        Self::Number(number)
    }
}

impl From<Length> for Found {
    fn from(length: Length) -> Self {
        Self::Number(length.in_unit(Unit::Metre))
    }
}

impl From<&str> for Found {
    fn from(word: &str) -> Self {
        Self::Word(word.to_owned())
    }
}

impl From<usize> for Found {
    fn from(count: usize) -> Self {
        Self::Number(tautline_engine::num::count(count))
    }
}

impl Found {
    /// Written like something that a page prints: its unit, its decimals.
    pub(crate) fn like(&self, printed: &str) -> String {
        match self {
            Self::Word(word) => word.clone(),
            Self::Number(number) => one_like(*number, printed),
            Self::Range(low, high) => match printed.split_once(" to ") {
                Some((first, second)) => {
                    format!("{} to {}", one_like(*low, first), one_like(*high, second))
                }
                None => format!("{low} to {high}"),
            },
        }
    }
}

/// How many of a unit make one of what the engine counts in.
fn in_unit(number: f64, unit: &str) -> f64 {
    match unit {
        "%" | "points" | "points a year" | "cm" => number * 100.0,
        "per hectare" => number * 10_000.0,
        _ => number,
    }
}

fn one_like(number: f64, printed: &str) -> String {
    let (digits, unit) = printed.split_once(' ').unwrap_or((printed, ""));
    let places = digits.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    let places = u32::try_from(places).expect("a page prints few digits");
    let written = decimal(in_unit(number, unit), places).replace('-', "−");
    // a sign that is printed to say that it rose
    let sign = if digits.starts_with('+') && number > 0.0 { "+" } else { "" };
    if unit.is_empty() { format!("{sign}{written}") } else { format!("{sign}{written} {unit}") }
}

/// A number with its unit: shares for per cent and points, metres for lengths.
pub(crate) fn number(text: &str) -> f64 {
    let text = text.trim().replace('−', "-");
    let (digits, unit) = text.split_once(' ').unwrap_or((&text, ""));
    let digits: f64 =
        digits.trim_start_matches('+').parse().unwrap_or_else(|_| panic!("“{text}” is no number"));
    digits / in_unit(1.0, unit)
}

/// Numbers with commas; the unit may stand behind the last alone.
pub(crate) fn numbers(text: &str) -> Vec<f64> {
    let unit = text.trim().rsplit_once(' ').map_or("", |(_, unit)| unit);
    let bare = |one: &str| !one.trim().contains(' ') && !unit.chars().any(|c| c.is_ascii_digit());
    text.split(',')
        .map(|one| if bare(one) { number(&format!("{} {unit}", one.trim())) } else { number(one) })
        .collect()
}

/// An exact length, as a tape shows it.
pub(crate) fn length(text: &str) -> Length {
    read(text.trim(), None::<Bare>, DecimalMark::Point)
        .unwrap_or_else(|why| panic!("“{text}”: {why:?}"))
        .length
}

/// From one length to another.
pub(crate) fn stretch(text: &str) -> tautline_engine::stretch::Stretch {
    let (from, to) = text.split_once(" to ").unwrap_or_else(|| panic!("“{text}” has no “ to ”"));
    let unit = to.rsplit_once(' ').map_or("", |(_, unit)| unit);
    let from = if from.contains(' ') { from.to_owned() } else { format!("{from} {unit}") };
    tautline_engine::stretch::Stretch::new(length(&from), length(to)).expect("it ends behind where it starts")
}

/// “at least 15 %”.
pub(crate) fn goal(text: &str) -> tautline_engine::verdict::Goal {
    use tautline_engine::verdict::Goal;
    let after = |word: &str| text.strip_prefix(word).map(number);
    if let Some(least) = after("at least ") {
        return Goal::AtLeast(least);
    }
    if let Some(most) = after("at most ") {
        return Goal::AtMost(most);
    }
    let (low, high) = text
        .strip_prefix("between ")
        .and_then(|ends| ends.split_once(" and "))
        .unwrap_or_else(|| panic!("“{text}” is no goal"));
    let low = if low.ends_with('%') { low.to_owned() } else { format!("{low} %") };
    Goal::Between(number(&low), number(high))
}
