//! A table of readings as it would be handed in, read and assessed like any other file.

use super::{Answer, unknown};
use crate::example::Example;
use crate::printed::Found;
use tautline_exchange::{Options, Source, read};
use tautline_survey::assess::{Assessment, By, Kind, Question, assess, kinds};
use tautline_survey::check::check;
use tautline_survey::goal::Subject;

/// The site's covers, compositions and heights.
pub(super) fn out(example: &Example) -> Answer<'_> {
    let source = Source { name: "readings.csv".to_owned(), bytes: example.raw.clone().into_bytes() };
    let mut found = read(&[source], &Options::default());
    check(&mut found.input);
    assert!(
        !found.input.findings.iter().any(tautline_survey::finding::Finding::holds_back),
        "{:?}",
        found.input.findings
    );
    let question = Question::default();
    let mut assessments = assess(&found.input, &question);
    assert_eq!(assessments.len(), 1, "an example is about one site and year");
    let assessment = assessments.remove(0);
    let species = kinds(&found.input, &question, &assessment, By::Species);
    Box::new(move |key| of(key, &assessment, &species))
}

fn of(key: &str, assessment: &Assessment, species: &[Kind]) -> Result<Found, String> {
    let whole = |subject: &Subject| {
        assessment
            .figure(subject)
            .map(|figure| Found::from(figure.estimate.value))
            .ok_or_else(|| "no figure".to_owned())
    };
    let kind = |prefix: &str| {
        let code = key.strip_prefix(prefix)?;
        species.iter().find(|kind| kind.cover.subject == Subject::Species(code.to_owned()))
    };
    if let Some(kind) = kind("composition of ") {
        return kind.composition.map(Found::from).ok_or_else(|| "it has no composition".to_owned());
    }
    if let Some(kind) = kind("cover of ") {
        return Ok(kind.cover.estimate.value.into());
    }
    if let Some(kind) = kind("height of ") {
        return kind
            .height
            .as_ref()
            .map(|figure| figure.estimate.value.into())
            .ok_or_else(|| "it has no height".to_owned());
    }
    if let Some(kind) = kind("error of the height of ") {
        let error = kind.height.as_ref().map(|figure| figure.estimate.error);
        return match error {
            Some(tautline_engine::estimate::SamplingError::Known { se, .. }) => Ok(se.into()),
            _ => Err("it has no error".to_owned()),
        };
    }
    if let Some(kind) = kind("interval of the height of ") {
        let interval = kind.height.as_ref().and_then(|figure| figure.interval.ok());
        return interval
            .map(|ends| Found::Range(ends.low, ends.high))
            .ok_or_else(|| "it has no interval".to_owned());
    }
    match key {
        "canopy cover" => whole(&Subject::Canopy),
        "sum of species" => whole(&Subject::Sum),
        other => unknown(other),
    }
}
