//! The catalogue has words for every code, and no other room has sentences of its own.

#![expect(clippy::unwrap_used, reason = "a test that can't read the sources has failed")]

use std::fs;
use std::path::{Path, PathBuf};
use tautline_words::Words;

/// Every Rust file that ships, without the catalogue itself, tests and examples.
fn sources() -> Vec<(PathBuf, String)> {
    let crates =
        Path::new(env!("CARGO_MANIFEST_DIR")).parent().expect("the room stands in crates/").to_owned();
    let mut folders: Vec<PathBuf> = [
        "engine", "survey", "ground", "exchange", "figures", "report", "store", "travel", "server",
        "handbook", "cli", "app",
    ]
    .iter()
    .map(|room| crates.join(room).join("src"))
    .collect();
    let mut files = Vec::new();
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(&folder).unwrap_or_else(|error| panic!("{}: {error}", folder.display())) {
            let path = entry.unwrap().path();
            let name = path.file_name().unwrap().to_string_lossy().into_owned();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|ending| ending == "rs") && !name.ends_with("tests.rs") {
                let text = fs::read_to_string(&path).unwrap();
                let shipped = text.split("#[cfg(test)]\nmod tests {").next().unwrap_or_default().to_owned();
                files.push((path, shipped));
            }
        }
    }
    files.sort();
    assert!(files.len() > 50, "only {} files were found", files.len());
    files
}

/// The quoted texts of a line of code, comments left out.
fn literals(line: &str) -> Vec<String> {
    let mut found = Vec::new();
    let mut current: Option<String> = None;
    let mut chars = line.chars().peekable();
    while let Some(c) = chars.next() {
        match (&mut current, c) {
            (None, '/') if chars.peek() == Some(&'/') => break,
            (None, '\'')
                // a character such as '"'
                if chars.peek() == Some(&'"') => {
                    chars.next();
                }
            (None, '"') => current = Some(String::new()),
            (Some(_), '\\') => {
                chars.next();
            }
            (Some(text), '"') => {
                found.push(core::mem::take(text));
                current = None;
            }
            (Some(text), c) => text.push(c),
            _ => {}
        }
    }
    found
}

#[test]
fn every_code_has_words() {
    let words = Words::english();
    let mut checked = 0;
    for (file, text) in sources() {
        for (number, line) in text.lines().enumerate() {
            let direct = ["Message::new(\"", "Value::Word(\"", "words.word(\"", "about(\""];
            for call in direct {
                for rest in line.split(call).skip(1) {
                    let code = rest.split('"').next().unwrap_or_default();
                    checked += 1;
                    assert!(words.has(code), "{}:{}: no words for “{code}”", file.display(), number + 1);
                }
            }
            let about_cell = line.split(".about(Column::").skip(1).filter_map(|rest| rest.split('"').nth(1));
            for code in about_cell {
                checked += 1;
                assert!(words.has(code), "{}:{}: no words for “{code}”", file.display(), number + 1);
            }
        }
    }
    assert!(checked > 100, "only {checked} codes were found");
}

/// Codes that the engine and the protocol make without naming them in a message.
#[test]
fn codes_of_types_have_words() {
    use tautline_engine::confidence::{Method, NoBound};
    use tautline_engine::estimate::{self, NoError};
    use tautline_engine::verdict::Verdict;
    use tautline_survey::plants::GrowthForm;
    use tautline_survey::protocol::Protocol;
    let words = Words::english();
    let mut codes: Vec<String> = Vec::new();
    let intervals = [
        Method::StudentT,
        Method::LogT,
        Method::LogitT,
        Method::LogEffective,
        Method::LogitEffective,
        Method::Bca,
    ]
    .map(Method::code);
    codes.extend(intervals.map(str::to_owned));
    codes.extend(intervals.map(|code| format!("interval-by-{code}")));
    codes.extend(GrowthForm::ALL.map(|form| form.word().to_owned()));
    codes.extend([Verdict::Met, Verdict::NotMet, Verdict::NotYetShown].map(|v| v.code().to_owned()));
    codes.extend(
        [
            NoBound::NoError(NoError::OneLine),
            NoBound::NoError(NoError::OnePlot),
            NoBound::NoError(NoError::OneUnitInStratum { stratum: 0 }),
            NoBound::NothingFound,
            NoBound::FullCover,
            NoBound::NoSpread,
            NoBound::MayPassWhole,
            NoBound::NeedsTheLines,
            NoBound::WeightsNotWhole { whole: 0.5 },
            NoBound::TooFewUnits { units: 2 },
        ]
        .map(|reason| reason.code().to_owned()),
    );
    let methods = [
        estimate::Method::MeanOfLines,
        estimate::Method::RatioOfSums,
        estimate::Method::MeanOfPlots,
        estimate::Method::RatioOfPlots,
        estimate::Method::Strata(Vec::new()),
        estimate::Method::CombinedRatio,
        estimate::Method::MeanOfValues,
        estimate::Method::PairedDifference,
        estimate::Method::UnpairedDifference,
        estimate::Method::PairedAndUnpaired,
    ];
    codes.extend(methods.iter().map(|method| tautline_survey::output::estimator(method).to_owned()));
    codes.extend(methods.iter().map(|method| method.source().code().to_owned()));
    for limit in [None, Some("2 in")] {
        let mut protocol = Protocol::default();
        protocol.gap.limit = limit.map(|text| {
            tautline_survey::measure::Measure::read(text, None, tautline_engine::length::DecimalMark::Point)
                .unwrap()
        });
        for assumption in protocol.rule().1 {
            codes.push(format!("rule-{}", assumption.rule));
            codes.push(format!("taken-{}", assumption.taken));
        }
    }
    codes.extend(tautline_survey::check::KINDS.map(|kind| kind.code.to_owned()));
    let missing: Vec<&String> = codes.iter().filter(|code| !words.has(code)).collect();
    assert!(missing.is_empty(), "no words for {missing:?}");
}

/// A literal of four words or more is a sentence, and sentences stand in the catalogue. Reasons of lints, invariants
/// behind an `expect`, purposes of seeds, and the interface's description of itself are read by programmers.
#[test]
fn no_sentence_stands_outside_the_catalogue() {
    let for_programmers = [
        "expect(",
        "reason",
        "SOUND",
        "panic!",
        "assert",
        "unreachable!",
        "from_purpose",
        "description = ",
        "#[",
        "debug_assert",
    ];
    let mut outside = Vec::new();
    for (file, text) in sources() {
        let lines: Vec<&str> = text.lines().collect();
        for (number, line) in lines.iter().enumerate() {
            let before = number.checked_sub(1).map_or("", |before| lines[before]);
            if for_programmers.iter().any(|word| line.contains(word) || before.trim_end().ends_with(word)) {
                continue;
            }
            for literal in literals(line) {
                let is_word = |word: &&str| {
                    word.len() > 1 && word.chars().all(|c| c.is_alphabetic() || c == ',' || c == '.')
                };
                let is_sql = ["SELECT ", "INSERT "].iter().any(|verb| literal.starts_with(verb));
                if !is_sql
                    && literal.split(' ').filter(is_word).count() >= 4
                    && !literal.contains(['<', '{', '='])
                {
                    outside.push(format!("{}:{}: {literal}", file.display(), number + 1));
                }
            }
        }
    }
    assert!(outside.is_empty(), "{}", outside.join("\n"));
}

/// One more line is “one more line”, not “1 more lines”.
#[test]
fn what_is_counted_agrees_with_its_number() {
    use tautline_survey::message::{Message, Value};
    let words = Words::english();
    let more = |code, more: usize| {
        words.say(&Message::new(code).with("more", more).with("chance", Value::Share(0.8, 0)))
    };
    assert!(more("verdict-more-lines", 1).starts_with("About one more line of this length"));
    assert!(more("verdict-more-lines", 12).starts_with("About 12 more lines of this length"));
    assert!(more("verdict-more-plots", 1).starts_with("About one more plot of these lines"));
    assert!(more("verdict-more-plots", 3).starts_with("About 3 more plots of these lines"));
}

/// A key that stands twice would say in one place what was meant for another.
#[test]
fn every_code_stands_once() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("messages/en");
    let mut seen: Vec<(String, PathBuf)> = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let text = fs::read_to_string(&path).unwrap();
        let begins = |line: &&str| line.starts_with(|first: char| first.is_ascii_lowercase());
        for code in text.lines().filter(begins).filter_map(|line| line.split_once(" =")) {
            let first = seen.iter().find(|(known, _)| known == code.0);
            assert!(
                first.is_none(),
                "{} stands in {} and {}",
                code.0,
                path.display(),
                first.unwrap().1.display()
            );
            seen.push((code.0.to_owned(), path.clone()));
        }
    }
    assert!(seen.len() > 500, "only {} codes were found", seen.len());
}
