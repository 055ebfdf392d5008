//! The arithmetic of a line as a person would do it on paper, said line by line.

use crate::goal::Subject;
use crate::input::Input;
use crate::line::{LineResult, Recording};
use crate::message::{Message, Value};
use crate::visit::{Extent, State};
use tautline_engine::length::write;
use tautline_engine::stretch::Stretch;
use tautline_engine::work::{Term, Worked, worked};

/// Decimals of the percentage.
const PLACES: u32 = 2;

/// What of a line is added up: its canopy cover, or the sum of its species where only lengths of several were written
/// down and their overlap can't be known.
pub fn subject(result: &LineResult) -> Subject {
    if result.canopy.is_known() { Subject::Canopy } else { Subject::Sum }
}

/// The arithmetic of a line's [`subject`]: joined stretches where positions were read, else the lengths as written.
pub fn arithmetic(input: &Input, result: &LineResult) -> Vec<Message> {
    let notation = result.notation(input);
    let line_notation = if result.is_partly_read() { notation } else { result.length.notation() };
    let work = worked(&terms(input, result), result.read, line_notation, PLACES);
    let mut said = worked_out(&work, &write(result.read, line_notation));
    if result.recording == Recording::Positions {
        said.push(Message::new("work-overlap"));
    }
    said
}

fn terms(input: &Input, result: &LineResult) -> Vec<Term> {
    if result.recording != Recording::LengthsOnly {
        let notation = result.notation(input);
        let joined: &[Stretch] = result.cover.as_ref().map_or(&[], |cover| &cover.canopy);
        let term = |stretch: &Stretch| Term {
            edges: Some((stretch.start(), stretch.stop())),
            length: stretch.length(),
            notation,
        };
        return joined.iter().map(term).collect();
    }
    let counted = |code: &str| {
        let known = input.plants.find(code).map_or(code.trim().to_uppercase(), |plant| plant.code.clone());
        result.species.iter().any(|species| species.counted && species.code == known)
    };
    input.visits[result.visit]
        .intercepts
        .iter()
        .filter(|intercept| intercept.state == State::Live && counted(&intercept.species))
        .filter_map(|intercept| match &intercept.extent {
            Extent::Length(measure) => {
                Some(Term { edges: None, length: measure.length(), notation: measure.notation() })
            }
            Extent::Edges { .. } => None,
        })
        .collect()
}

/// A working said line by line; `line` is the line as given.
pub fn worked_out(work: &Worked, line: &str) -> Vec<Message> {
    let mut said: Vec<Message> = work
        .groups
        .iter()
        .map(|group| {
            let terms: Vec<String> = group
                .terms
                .iter()
                .map(|term| match &term.given {
                    Some(given) => format!("({given} = {})", term.number),
                    None => term.number.clone(),
                })
                .collect();
            Message::new("work-group")
                .with("terms", figures(&terms.join(" + ")))
                .with("sum", figures(&group.sum))
        })
        .collect();
    if work.groups.len() > 1 {
        let sums: Vec<&str> = work.groups.iter().map(|group| group.sum.as_str()).collect();
        said.push(
            Message::new("work-total")
                .with("sums", figures(&sums.join(" + ")))
                .with("total", figures(&work.total))
                .with("unit", work.unit.symbol()),
        );
    }
    said.push(match &work.conversion {
        Some((given, factor, product)) => Message::new("work-conversion")
            .with("given", figures(given))
            .with("factor", figures(factor))
            .with("line", figures(product))
            .with("unit", work.unit.symbol()),
        None => Message::new("work-line").with("given", figures(line)),
    });
    said.push(
        Message::new("work-quotient")
            .with("total", figures(&work.total))
            .with("line", figures(&work.line))
            .with("quotient", figures(&work.quotient))
            .with("percent", Message::new("per-cent").with("figure", figures(&work.percent))),
    );
    said
}

fn figures(text: &str) -> Value {
    Value::Figures(text.to_owned())
}
