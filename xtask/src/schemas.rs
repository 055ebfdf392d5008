//! The JSON schemas of what we write: generated from the types, committed, and compared.

use std::fs;
use std::path::PathBuf;

use schemars::{Schema, schema_for};
use tautline_survey::agree::{AgreeLogOutput, AgreeOutput, AgreeSourcesOutput};
use tautline_survey::benchmark::BenchmarksOutput;
use tautline_survey::effort::EffortOutput;
use tautline_survey::effort::sequential::SequentialOutput;
use tautline_survey::follow::ChangeOutput;
use tautline_survey::layout::LayoutOutput;
use tautline_survey::notebook::payload::Kinds;
use tautline_survey::output::{AssessOutput, CheckOutput, CoverOutput};
use tautline_survey::practice::{
    DrillOutput, PlaceOutput, PracticeClassOutput, PracticeGradeOutput, PracticeLineOutput,
    PracticeProgressOutput, SightOutput,
};
use tautline_survey::revision::{Line, PhotoLine};
use tautline_survey::sites::SitesOutput;
use tautline_survey::sync::{Answer, Ask, State};
use tautline_survey::trend::TrendOutput;

use crate::Outcome;
use crate::cargo::root;

/// Every schema by the name of its file: one line for each kind of document that others read.
fn all() -> Vec<(&'static str, Schema)> {
    vec![
        ("cover", schema_for!(CoverOutput)),
        ("assess", schema_for!(AssessOutput)),
        ("check", schema_for!(CheckOutput)),
        ("sites", schema_for!(SitesOutput)),
        ("change", schema_for!(ChangeOutput)),
        ("notebook-line", schema_for!(Line)),
        ("notebook-photo-line", schema_for!(PhotoLine)),
        ("notebook-records", schema_for!(Kinds)),
        ("sync-ask", schema_for!(Ask)),
        ("sync-answer", schema_for!(Answer)),
        ("sync-state", schema_for!(State)),
        ("agree", schema_for!(AgreeOutput)),
        ("agree-log", schema_for!(AgreeLogOutput)),
        ("agree-sources", schema_for!(AgreeSourcesOutput)),
        ("trend", schema_for!(TrendOutput)),
        ("plan-benchmarks", schema_for!(BenchmarksOutput)),
        ("plan-effort", schema_for!(EffortOutput)),
        ("plan-sequential", schema_for!(SequentialOutput)),
        ("plan-lines", schema_for!(LayoutOutput)),
        ("practice-line", schema_for!(PracticeLineOutput)),
        ("practice-grade", schema_for!(PracticeGradeOutput)),
        ("practice-class", schema_for!(PracticeClassOutput)),
        ("practice-drill", schema_for!(DrillOutput)),
        ("practice-place", schema_for!(PlaceOutput)),
        ("practice-sight", schema_for!(SightOutput)),
        ("practice-progress", schema_for!(PracticeProgressOutput)),
    ]
}

/// Writes every schema.
pub(crate) fn write() -> Outcome {
    let texts = texts()?;
    fs::create_dir_all(folder()).map_err(|trouble| trouble.to_string())?;
    for (path, text) in &texts {
        fs::write(path, text).map_err(|trouble| format!("{}: {trouble}", path.display()))?;
    }
    Ok(format!("{} schemas written to docs/schema", texts.len()))
}

/// Fails with every schema that is missing, out of date, or left over from a type that is gone.
pub(crate) fn check() -> Outcome {
    let texts = texts()?;
    let mut wrong: Vec<String> = texts
        .iter()
        .filter(|(path, text)| fs::read_to_string(path).ok().as_ref() != Some(text))
        .map(|(path, _)| format!("{} is not what the types say", path.display()))
        .collect();
    wrong.extend(
        kept()
            .into_iter()
            .filter(|path| !texts.iter().any(|(known, _)| known == path))
            .map(|path| format!("{} belongs to no type", path.display())),
    );
    if wrong.is_empty() {
        return Ok(format!("{} schemas, all as the types have them", texts.len()));
    }
    wrong.push("Regenerate with: cargo run -p xtask -- schemas".to_owned());
    Err(wrong.join("\n"))
}

fn texts() -> Result<Vec<(PathBuf, String)>, String> {
    all()
        .into_iter()
        .map(|(name, schema)| {
            let text = serde_json::to_string_pretty(&schema).map_err(|trouble| trouble.to_string())?;
            Ok((folder().join(format!("{name}.schema.json")), text + "\n"))
        })
        .collect()
}

fn kept() -> Vec<PathBuf> {
    fs::read_dir(folder())
        .into_iter()
        .flatten()
        .filter_map(|entry| Some(entry.ok()?.path()))
        .filter(|path| path.extension().is_some_and(|extension| extension == "json"))
        .collect()
}

fn folder() -> PathBuf {
    root().join("docs/schema")
}
