//! `tautline practice grade` and `class`: sheets beside the key of a practice line, or of a real line that experts read.

use super::{Laid, Refusal, flag, marking, option, whole, with_marks, with_tape, write_page};
use crate::call::{Done, files, status, unwritable};
use crate::exit::Exit;
use crate::{inputs, show};
use clap::{Arg, ArgMatches, Command};
use std::collections::BTreeMap;
use tautline_engine::practice::grade::Measure;
use tautline_engine::practice::recognise::Recogniser;
use tautline_exchange::practice::sheets;
use tautline_survey::finding::Finding;
use tautline_survey::message::{Message, Value};
use tautline_survey::practice::{
    Exercise, ExpertKey, LearnerSheet, Marked, Marking, agreed, class_output, grade_output, mark, mark_real,
};
use tautline_words::Words;

fn shared(command: Command, words: &Words) -> Command {
    let files = Arg::new("files")
        .value_name("FILES")
        .help(words.word("help-practice-sheets"))
        .num_args(1..)
        .required(true);
    with_marks(with_tape(command.arg(files), words), words)
        .arg(option(words, "experts", "FILE", "help-practice-real"))
        .arg(option(words, "again", "FILE", "help-practice-again").requires("experts"))
        .arg(flag(words, "json", "help-json"))
}

pub(super) fn grade_command(words: &Words) -> Command {
    shared(Command::new("grade").about(words.word("help-practice-grade")), words)
}

pub(super) fn class_command(words: &Words) -> Command {
    shared(Command::new("class").about(words.word("help-practice-class")), words)
        .arg(option(words, "best", "NUMBER", "help-practice-best"))
        .arg(option(words, "page", "FILE", "help-practice-page"))
        .arg(flag(words, "forget", "help-practice-forget"))
}

pub(super) fn grade(asked: &ArgMatches, words: &Words) -> Done {
    let marking = marking(asked, words)?;
    let (marked, findings) = marked(asked, &marking, words)?;
    if asked.get_flag("json") {
        show::json(&grade_output(&marked, &marking, &|message| words.say(message)));
    } else {
        show::practice_sheets(&marked, &marking, words);
    }
    Ok(ended(&marked, &findings, words))
}

pub(super) fn class(asked: &ArgMatches, words: &Words) -> Done {
    let marking = marking(asked, words)?;
    let best = usize::try_from(whole(asked, "best", 3, words)?).unwrap_or(usize::MAX);
    let (marked, findings) = marked(asked, &marking, words)?;
    let class = tautline_survey::practice::class(&marked, &marking, best);
    if let Some(file) = asked.get_one::<String>("page") {
        write_page(file, &tautline_report::practice_class(&class, &marked, &marking, best, words), words)?;
    }
    if asked.get_flag("json") {
        show::json(&class_output(&class));
    } else {
        show::practice_class(&class, &marking, best, words);
    }
    if asked.get_flag("forget") && !findings.is_empty() {
        // what was not read stands on these sheets alone
        show::aside(&words.word("practice-not-forgotten"));
    } else if asked.get_flag("forget") {
        for file in files(asked) {
            std::fs::remove_file(&file).map_err(|error| unwritable(&file, &error, words))?;
            show::aside(&words.say(&Message::new("practice-forgotten").with("file", file.as_str())));
        }
    }
    Ok(ended(&marked, &findings, words))
}

fn ended(marked: &[Marked], findings: &[Finding], words: &Words) -> Exit {
    show::findings_aside(findings, words);
    if marked.is_empty() {
        show::aside(&words.word("practice-no-sheets"));
    }
    status(findings, marked.is_empty())
}

fn read(names: &[String], findings: &mut Vec<Finding>, words: &Words) -> Result<Vec<LearnerSheet>, Refusal> {
    let mut all = Vec::new();
    for source in inputs::sources(names, words)? {
        let decoded = tautline_exchange::text::decode(&source.bytes).map_err(|_| {
            (
                words.say(&Message::new("file-not-text").with("file", source.name.as_str())),
                Exit::NotUnderstood,
            )
        })?;
        let (sheets, mut found) = sheets(&source.name, &decoded.text);
        all.extend(sheets);
        findings.append(&mut found);
    }
    all.sort_by_key(|sheet| sheet.date);
    Ok(all)
}

/// Every sheet marked, by day where days were written, and what was found.
fn marked(
    asked: &ArgMatches,
    marking: &Marking,
    words: &Words,
) -> Result<(Vec<Marked>, Vec<Finding>), Refusal> {
    let mut findings = Vec::new();
    let laid = Laid::of(asked, words)?;
    let sheets = read(&files(asked), &mut findings, words)?;
    let keys = experts(asked, &laid, marking, &mut findings, words)?;
    let mut known: BTreeMap<(u8, u64), (Exercise, Recogniser)> = BTreeMap::new();
    let mut marked = Vec::new();
    for sheet in &sheets {
        if let Some(key) = keys.iter().find(|key| key.line == sheet.line) {
            let step = laid.tape.notation().step();
            let tolerance = marking.tolerance.unwrap_or(step + step);
            let measure = Measure { tolerance, gap: laid.protocol.rule().0.gap };
            marked.push(mark_real(sheet, key, marking, measure));
            continue;
        }
        let Some((level, number)) = Exercise::level_and_number(&sheet.line) else {
            let message = Message::new("practice-line-unknown").with("found", sheet.line.as_str());
            findings.push(Finding::must_settle(message).at_place(sheet.place.as_ref()));
            continue;
        };
        let (exercise, recogniser) = known.entry((level.number(), number)).or_insert_with(|| {
            let exercise = laid.exercise(level, number);
            let recogniser = Recogniser::new(core::slice::from_ref(&exercise.line), &laid.protocol.rule().0);
            (exercise, recogniser)
        });
        marked.push(mark(sheet, exercise, marking, recogniser));
    }
    Ok((marked, findings))
}

/// The keys of real lines, with what a marker should know about them.
fn experts(
    asked: &ArgMatches,
    laid: &Laid,
    marking: &Marking,
    findings: &mut Vec<Finding>,
    words: &Words,
) -> Result<Vec<ExpertKey>, Refusal> {
    let Some(file) = asked.get_one::<String>("experts") else { return Ok(Vec::new()) };
    let of = |file: &String, findings: &mut Vec<Finding>| -> Result<Vec<ExpertKey>, Refusal> {
        let sheets = read(core::slice::from_ref(file), findings, words)?;
        Ok(agreed(&sheets, laid.length, laid.tape.notation()))
    };
    let keys = of(file, findings)?;
    let narrowest = marking.bands.first().map_or(0.0, |band| band.within);
    findings.extend(keys.iter().flat_map(|key| key.findings(narrowest)));
    if let Some(file) = asked.get_one::<String>("again") {
        for again in of(file, findings)? {
            let Some(key) = keys.iter().find(|key| key.line == again.line) else { continue };
            let moved = key.moved(&again);
            if moved.abs() > key.spread().max(narrowest / 2.0) {
                let message = Message::new("practice-key-moved").with("line", key.line.as_str());
                findings.push(Finding::have_a_look(message.with("off", Value::Number(moved * 100.0, 1))));
            }
        }
    }
    Ok(keys)
}
