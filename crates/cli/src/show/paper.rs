//! `--work`: the arithmetic of a line as a person would do it on paper.

use super::{title, wrapped};
use tautline_engine::length::{Length, write};
use tautline_engine::stretch::Stretch;
use tautline_engine::work::{Term, Worked, worked};
use tautline_survey::input::Input;
use tautline_survey::line::{LineResult, Recording};
use tautline_survey::message::Message;
use tautline_survey::visit::{Extent, State};
use tautline_words::Words;

/// Canopy cover of a line on paper: joined stretches where positions were read, else the lengths as written.
pub(super) fn work(input: &Input, result: &LineResult, words: &Words) {
    let notation = result.notation(input);
    let counted = |code: &str| {
        let known = input.plants.find(code).map_or(code.trim().to_uppercase(), |plant| plant.code.clone());
        result.species.iter().any(|species| species.counted && species.code == known)
    };
    let terms: Vec<Term> = if result.recording == Recording::LengthsOnly {
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
    } else {
        let joined: &[Stretch] = result.cover.as_ref().map_or(&[], |cover| &cover.canopy);
        let term = |stretch: &Stretch| Term {
            edges: Some((stretch.start(), stretch.stop())),
            length: stretch.length(),
            notation,
        };
        joined.iter().map(term).collect()
    };
    let read: Length = result.read;
    let line_notation = if result.is_partly_read() { notation } else { result.length.notation() };
    let work = worked(&terms, read, line_notation, 2);
    let message = Message::new("work-title").with("line", result.line.as_str());
    title(&words.say(&message.with("what", Message::new("canopy-cover"))));
    show(&work, &write(read, line_notation), words);
    if result.recording == Recording::Positions {
        wrapped(&words.word("work-overlap"), 2);
    }
}

fn show(work: &Worked, line: &str, words: &Words) {
    for group in &work.groups {
        let terms: Vec<String> = group
            .terms
            .iter()
            .map(|term| {
                term.given
                    .as_ref()
                    .map_or(term.number.clone(), |given| format!("({given} = {})", term.number))
            })
            .collect();
        let message =
            Message::new("work-group").with("terms", terms.join(" + ")).with("sum", group.sum.as_str());
        wrapped(&words.say(&message), 2);
    }
    if work.groups.len() > 1 {
        let sums: Vec<&str> = work.groups.iter().map(|group| group.sum.as_str()).collect();
        let message = Message::new("work-total")
            .with("sums", sums.join(" + "))
            .with("total", work.total.as_str())
            .with("unit", work.unit.symbol());
        wrapped(&words.say(&message), 2);
    }
    let message = match &work.conversion {
        Some((given, factor, product)) => Message::new("work-conversion")
            .with("given", given.as_str())
            .with("factor", factor.as_str())
            .with("line", product.as_str())
            .with("unit", work.unit.symbol()),
        None => Message::new("work-line").with("given", line),
    };
    wrapped(&words.say(&message), 2);
    let percent = words.say(&Message::new("per-cent").with("figure", work.percent.as_str()));
    let message = Message::new("work-quotient")
        .with("total", work.total.as_str())
        .with("line", work.line.as_str())
        .with("quotient", work.quotient.as_str())
        .with("percent", percent);
    wrapped(&words.say(&message), 2);
}
