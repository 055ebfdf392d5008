//! `--json` and `--csv`: the same results as data.

use super::{lines_of, println};
use serde::Serialize;
use tautline_engine::num::decimal::shortest;
use tautline_exchange::table::row;
use tautline_survey::assess::{Assessment, Attribute, Question};
use tautline_survey::explain::figure_words;
use tautline_survey::input::Input;
use tautline_survey::message::{Message, Value};
use tautline_survey::output::{self, AssessOutput, CoverOutput, VERSION};
use tautline_words::Words;

pub(super) fn print(output: &impl Serialize) {
    match serde_json::to_string_pretty(output) {
        Ok(text) => println!("{text}"),
        Err(error) => super::refusal(&error.to_string()),
    }
}

/// Any result as JSON.
pub(crate) fn json(output: &impl Serialize) {
    print(output);
}

pub(crate) fn json_cover(input: &Input, question: &Question, words: &Words) {
    let (lines, mut found) = lines_of(input, question);
    found.extend(input.findings.iter().cloned());
    let say = |message: &Message| words.say(message);
    print(&CoverOutput {
        format: "tautline.cover",
        version: VERSION,
        files: input.files.clone(),
        protocols: output::protocols(input),
        lines: lines.iter().map(output::line).collect(),
        findings: output::findings(&found, &say),
    });
}

pub(crate) fn json_assess(input: &Input, assessments: &[Assessment], words: &Words) {
    let say = |message: &Message| words.say(message);
    print(&AssessOutput::of(input, assessments, &say));
}

/// One row a line and species, and one for the whole line; lengths in millimetres.
pub(crate) fn csv_cover(input: &Input, question: &Question) {
    let headings = [
        "site",
        "line",
        "date",
        "reader",
        "pass",
        "species",
        "counted",
        "line length (mm)",
        "live low (mm)",
        "live high (mm)",
        "dead low (mm)",
        "dead high (mm)",
        "cover low",
        "cover high",
    ];
    let mut text = row(&headings);
    for result in lines_of(input, question).0 {
        let line = output::line(&result);
        let millimetres = |nanometres: i64| {
            tautline_engine::work::exact_decimal(
                tautline_engine::length::Length::from_nanometres(nanometres),
                tautline_engine::length::Unit::Millimetre,
            )
        };
        let date = line.date.map_or(String::new(), |date| date.to_string());
        let mut write =
            |species: &str, counted: &str, live: &output::CoverRange, dead: &output::CoverRange| {
                text += &row(&[
                    line.site.as_str(),
                    &line.line,
                    &date,
                    &line.reader,
                    &line.pass,
                    species,
                    counted,
                    &millimetres(line.read_nm),
                    &millimetres(live.low_nm),
                    &millimetres(live.high_nm),
                    &millimetres(dead.low_nm),
                    &millimetres(dead.high_nm),
                    &shortest(live.low),
                    &shortest(live.high),
                ]);
            };
        write("", "", &line.canopy, &line.dead);
        for species in &line.species {
            write(&species.code, if species.counted { "yes" } else { "no" }, &species.live, &species.dead);
        }
    }
    super::print_all(&text);
}

/// One row a figure; shares, or metres for heights.
pub(crate) fn csv_assess(assessments: &[Assessment]) {
    let headings = [
        "site",
        "year",
        "plot",
        "attribute",
        "subject",
        "estimate",
        "SE",
        "df",
        "low",
        "high",
        "confidence",
        "lines",
        "units",
        "estimator",
        "method",
    ];
    let mut text = row(&headings);
    for assessment in assessments {
        let year = assessment.year.map_or(String::new(), |year| year.to_string());
        let data = output::assessment(assessment, &|message| message.code.to_owned());
        for (figure, source) in data.figures.iter().zip(&assessment.figures) {
            let number = |value: Option<f64>| value.map_or(String::new(), shortest);
            let words = figure_words(&source.subject, Attribute::Cover);
            let subject = words.values.first().map_or(words.code.to_owned(), |(_, value)| match value {
                Value::Text(text) => text.clone(),
                Value::Word(word) => (*word).to_owned(),
                _ => words.code.to_owned(),
            });
            text += &row(&[
                data.site.as_str(),
                &year,
                data.plot.as_deref().unwrap_or(""),
                figure.attribute,
                &subject,
                &shortest(figure.estimate.value),
                &number(figure.estimate.se),
                &number(figure.estimate.df),
                &number(figure.interval.map(|interval| interval.0)),
                &number(figure.interval.map(|interval| interval.1)),
                &shortest(data.confidence),
                &figure.estimate.lines.to_string(),
                &figure.estimate.units.to_string(),
                figure.estimate.estimator,
                figure.interval_method,
            ]);
        }
    }
    super::print_all(&text);
}
