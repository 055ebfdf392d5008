//! `tautline practice grade` and `class`: sheets beside the key of a practice line, or of a real line that experts read.

use super::{Refusal, flag, laid, marking, option, whole, with_marks, with_tape, write_page};
use crate::call::{Done, files, status, unwritable};
use crate::exit::Exit;
use crate::{inputs, show};
use clap::{Arg, ArgMatches, Command};
use tautline_exchange::practice::{protests, sheets};
use tautline_survey::finding::Finding;
use tautline_survey::message::Message;
use tautline_survey::practice::{
    ExpertKey, LearnerSheet, Marked, Marking, class_output, grade_output, key_findings,
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
        .arg(option(words, "protests", "FILE", "help-practice-protests"))
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
    let (marked, mut findings) = marked(asked, &marking, words)?;
    let mut class = tautline_survey::practice::class(&marked, &marking, best);
    let raised = asked.get_one::<String>("protests");
    if let Some(file) = raised {
        for (name, text) in texts(core::slice::from_ref(file), words)? {
            let (own, mut found) = protests(&name, &text);
            class.protests.extend(own);
            findings.append(&mut found);
        }
    }
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
        for file in files(asked).into_iter().chain(raised.cloned()) {
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
    for (name, text) in texts(names, words)? {
        let (sheets, mut found) = sheets(&name, &text);
        all.extend(sheets);
        findings.append(&mut found);
    }
    all.sort_by_key(|sheet| sheet.date);
    Ok(all)
}

/// The texts of files, each with its name.
fn texts(names: &[String], words: &Words) -> Result<Vec<(String, String)>, Refusal> {
    let read = |source: tautline_exchange::Source| {
        let decoded = tautline_exchange::text::decode(&source.bytes).map_err(|_| {
            let message = Message::new("file-not-text").with("file", source.name.as_str());
            (words.say(&message), Exit::NotUnderstood)
        })?;
        Ok((source.name, decoded.text))
    };
    inputs::sources(names, words)?.into_iter().map(read).collect()
}

/// Every sheet marked, by day where days were written, and what was found.
fn marked(
    asked: &ArgMatches,
    marking: &Marking,
    words: &Words,
) -> Result<(Vec<Marked>, Vec<Finding>), Refusal> {
    let mut findings = Vec::new();
    let laid = laid(asked, words)?;
    let sheets = read(&files(asked), &mut findings, words)?;
    let mut keys = |name: &str| -> Result<Vec<ExpertKey>, Refusal> {
        let Some(file) = asked.get_one::<String>(name) else { return Ok(Vec::new()) };
        Ok(laid.agreed(&read(core::slice::from_ref(file), &mut findings, words)?))
    };
    let (keys, again) = (keys("experts")?, keys("again")?);
    findings.extend(key_findings(&keys, &again, marking));
    let (marked, found) = laid.marked(&sheets, &keys, marking);
    findings.extend(found);
    Ok((marked, findings))
}
