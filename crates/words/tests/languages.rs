//! Every language says what English says: the same codes, each once, with the same values in them.

#![expect(clippy::unwrap_used, reason = "a test that can't read the catalogue has failed")]

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;
use tautline_survey::message::{Message, Value};
use tautline_words::Words;

/// The codes of a language's files and their variants, each with the file it stands in and the values that it names.
fn codes(language: &str) -> BTreeMap<String, (String, BTreeSet<String>)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("messages").join(language);
    let mut found: BTreeMap<String, (String, BTreeSet<String>)> = BTreeMap::new();
    let mut paths: Vec<_> = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    for path in paths {
        let file = path.file_name().unwrap().to_string_lossy().into_owned();
        let mut open: Option<String> = None;
        for line in fs::read_to_string(&path).unwrap().lines() {
            let begins = line.starts_with(|c: char| c.is_ascii_lowercase()).then(|| line.split_once(" ="));
            let variant = line.strip_prefix("    .").and_then(|line| line.split_once(" ="));
            let whose = || open.iter().find_map(|open| open.split('.').next()).unwrap_or_default();
            let code = begins.flatten().map(|(code, _)| code.to_owned());
            if let Some(code) = code.or_else(|| Some(format!("{}.{}", whose(), variant?.0))) {
                let before = found.insert(code.clone(), (file.clone(), BTreeSet::new()));
                assert!(before.is_none(), "{language}/{file}: “{code}” stands twice, also in {before:?}");
                open = Some(code);
            }
            let Some((_, values)) = open.as_ref().and_then(|code| found.get_mut(code)) else { continue };
            for rest in line.split('$').skip(1) {
                let name = |c: char| c.is_ascii_alphanumeric() || c == '-' || c == '_';
                values.insert(rest.chars().take_while(|&c| name(c)).collect());
            }
        }
    }
    found
}

#[test]
fn spanish_has_every_code_that_english_has() {
    let (english, spanish) = (codes("en"), codes("es"));
    let missing: Vec<String> = english
        .iter()
        .filter(|(code, _)| !spanish.contains_key(*code))
        .map(|(code, (file, _))| format!("{code} (messages/es/{file})"))
        .collect();
    assert!(missing.is_empty(), "no Spanish words for: {}", missing.join(", "));
    let left: Vec<&String> = spanish.keys().filter(|code| !english.contains_key(*code)).collect();
    assert!(left.is_empty(), "Spanish words for what nothing says any more: {left:?}");
    for (code, (file, values)) in &spanish {
        assert_eq!(&english[code].0, file, "{code} stands in another file than in English");
        assert_eq!(&english[code].1, values, "{code} names other values than in English");
    }
    assert!(spanish.len() > 700, "only {}", spanish.len());
}

/// The catalogue's own reader takes every message of each file as the files' writers meant it.
#[test]
fn every_code_is_understood_in_each_language() {
    for language in Words::LANGUAGES {
        let words = Words::in_language(language).unwrap();
        let not_understood: Vec<String> =
            codes(language).into_keys().filter(|code| !code.contains('.') && !words.has(code)).collect();
        assert!(not_understood.is_empty(), "{language}: {not_understood:?}");
    }
}

/// A range whose ends are rounded to one number is said as one number.
#[test]
fn ends_that_print_alike_are_one_number() {
    let ends = |low, high| {
        Message::new("agree-limits")
            .with("share", Value::Share(0.95, 0))
            .with("low", Value::Number(low, 1))
            .with("high", Value::Number(high, 1))
    };
    let words = Words::english();
    assert!(words.say(&ends(2.36, 2.44)).contains("would differ by 2.4 points, to the digits shown,"));
    assert!(words.say(&ends(2.34, 2.44)).contains("would differ by 2.3 to 2.4 points,"));
    let spanish = Words::in_language("es").unwrap();
    assert!(spanish.say(&ends(2.36, 2.44)).contains("diferirían en 2,4 puntos, según las cifras mostradas"));
    assert!(spanish.say(&ends(2.34, 2.44)).contains("de 2,3 a 2,4 puntos"));
}

/// Unicode CLDR writes `9,4 %` in `es`, `9.4 %` in `es-MX` (from memory).
#[test]
fn a_figure_is_marked_as_where_it_is_read() {
    let said = |language: &str| {
        let words = Words::in_language(language).unwrap();
        let goal = Message::new("at-least").with("value", Value::Share(0.155, 1));
        words.say(&goal).replace('\u{a0}', " ")
    };
    assert_eq!(said("es"), "al menos 15,5 %");
    assert_eq!(said("es-AR"), "al menos 15,5 %");
    assert_eq!(said("es_MX.UTF-8"), "al menos 15.5 %");
    assert_eq!(said("es-US"), "al menos 15.5 %");
    assert_eq!(said("en-US"), "at least 15.5 %");
}

/// What is worked out on paper, too: 4.97 of 30.48 m.
#[test]
fn a_sum_on_paper_is_marked_as_where_it_is_read() {
    let figures = |text: &str| Value::Figures(text.to_owned());
    let group = Message::new("work-group").with("terms", figures("(2.45 − 2.16 = 0.29) + 4.68"));
    let group = group.with("sum", figures("4.97"));
    let said = |tag: &str| Words::in_language(tag).unwrap().say(&group);
    assert_eq!(said("en"), "(2.45 − 2.16 = 0.29) + 4.68 = 4.97");
    assert_eq!(said("es"), "(2,45 − 2,16 = 0,29) + 4,68 = 4,97");
    assert_eq!(said("es-MX"), said("en"));
}

/// A code that a language lacks is said in English; one that nobody has comes back as it is.
#[test]
fn what_is_missing_is_no_panic() {
    let words = Words::in_language("es").unwrap();
    assert_eq!(words.word("no-such-code-anywhere"), "no-such-code-anywhere");
    assert_eq!(words.word("met"), "cumplida");
}
