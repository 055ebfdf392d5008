//! Readers side by side, and a sheet beside the key.

use super::{Answer, unknown};
use crate::example::Example;
use crate::printed::{Found, length, number, numbers, stretch};
use tautline_engine::agreement::habits::{Habit, Sheets, habits};
use tautline_engine::agreement::limits;
use tautline_engine::agreement::reliability::{Form, Of, mean_squares};
use tautline_engine::length::Unit;
use tautline_engine::practice::grade::{Measure, grade};
use tautline_engine::practice::line::Facts;
use tautline_engine::practice::mistake::Row;
use tautline_engine::rule::ReadingRule;
use tautline_engine::stretch::Stretch;

/// Differences of the second reader from the first.
pub(super) fn two(example: &Example) -> Answer<'_> {
    let differences = numbers(example.needed("second less first"));
    let share = number(example.needed("share of lines within"));
    let confidence = example.given("confidence").map(number);
    let found = limits(&differences, share).expect("two lines or more");
    Box::new(move |key| {
        Ok(match key {
            "lines" => found.lines.into(),
            "average difference" => found.bias.into(),
            "standard deviation" => found.sd.into(),
            "limits" => Found::Range(found.lower, found.upper),
            "interval of the average" => {
                let (low, high) = found.bias_interval(confidence.ok_or("it has no confidence")?);
                Found::Range(low, high)
            }
            other => return unknown(other),
        })
    })
}

/// Covers of lines that all readers read.
pub(super) fn table(example: &Example) -> Answer<'_> {
    let rows: Vec<Vec<f64>> = example.all("line").map(|(_, covers)| numbers(covers)).collect();
    let squares = mean_squares(&rows).expect("a full table");
    Box::new(move |key| {
        Ok(match key {
            "mean square of lines" => squares.lines.into(),
            "mean square of readers" => squares.readers.into(),
            "mean square left" => squares.left.into(),
            "one reader, agreement" => squares.reliability(Form::Agreement, Of::OneReader).into(),
            "one reader, consistency" => squares.reliability(Form::Consistency, Of::OneReader).into(),
            "mean of all readers, agreement" => squares.reliability(Form::Agreement, Of::Mean).into(),
            other => return unknown(other),
        })
    })
}

fn stretches(text: &str) -> Vec<Stretch> {
    text.split(',').map(|one| stretch(one.trim())).collect()
}

/// What explains how one sheet differs from another.
pub(super) fn habit(example: &Example) -> Answer<'_> {
    let first = stretches(example.needed("first reader"));
    let second = stretches(example.needed("second reader"));
    let found = habits(&[Sheets { first, second, ..Sheets::default() }]);
    Box::new(move |key| match (key, found.as_slice()) {
        ("habits", all) => Ok(all.len().into()),
        ("habit", [one]) => Ok(match one.code() {
            "habit-wider" => "sees edges further out",
            "habit-narrower" => "sees edges further in",
            "habit-closes-gaps" => "closes gaps",
            "habit-opens-gaps" => "opens gaps",
            other => return unknown(other),
        }
        .into()),
        ("at each edge", [Habit::Wider(by) | Habit::Narrower(by)]) => Ok((*by).into()),
        ("longest gap closed", [Habit::ClosesGaps { closed, .. }]) => Ok((*closed).into()),
        ("gaps closed", [Habit::ClosesGaps { gaps, .. }]) => Ok((*gaps).into()),
        _ => Err(format!("nothing works out “{key}” of {found:?}")),
    })
}

/// A sheet beside the key.
pub(super) fn graded(example: &Example) -> Answer<'_> {
    let mut species: Vec<String> = Vec::new();
    let mut rows = |word: &str| -> Vec<Row> {
        example
            .all(word)
            .map(|(code, edges)| {
                let number = species.iter().position(|own| own == code).unwrap_or_else(|| {
                    species.push(code.to_owned());
                    species.len() - 1
                });
                Row { species: u32::try_from(number).ok(), stretch: stretch(edges) }
            })
            .collect()
    };
    let (key_rows, sheet) = (rows("key"), rows("sheet"));
    let tolerance = length(example.needed("tolerance"));
    let gap = ReadingRule::AS_WRITTEN.gap;
    let found = grade(&key_rows, &sheet, &Facts::default(), &Measure { tolerance, gap });
    Box::new(move |key| {
        Ok(match key {
            "edges right" => found.edges.into(),
            "edges that could be right" => found.edges_of.into(),
            "species right" => found.species.into(),
            "species that could be right" => found.species_of.into(),
            "tolerance in metres" => tolerance.in_unit(Unit::Metre).into(),
            other => match other.strip_prefix("intercept ").and_then(|at| at.parse::<usize>().ok()) {
                Some(at) if (1..=found.marks.len()).contains(&at) => found.marks[at - 1]
                    .found
                    .code()
                    .trim_start_matches("practice-")
                    .replace('-', " ")
                    .as_str()
                    .into(),
                _ => return unknown(other),
            },
        })
    })
}
