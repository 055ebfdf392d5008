//! `tautline practice progress`: each learner's lessons in their order, from graded results.

use super::{Refusal, option, write_page};
use crate::call::{Done, files, status};
use crate::exit::Exit;
use crate::{inputs, show};
use clap::{Arg, ArgAction, ArgMatches, Command};
use std::path::Path;
use tautline_exchange::practice::results;
use tautline_survey::message::Message;
use tautline_survey::practice::{Learner, Marking, progress as by_learner, progress_output};
use tautline_words::Words;

pub(super) fn command(words: &Words) -> Command {
    let files = Arg::new("files")
        .value_name("FILES")
        .help(words.word("help-practice-results"))
        .num_args(1..)
        .required(true);
    Command::new("progress")
        .about(words.word("help-practice-progress"))
        .arg(files)
        .arg(option(words, "name", "NAME", "help-practice-learner"))
        .arg(option(words, "within", "POINTS", "help-practice-within"))
        .arg(option(words, "page", "FILE", "help-practice-page"))
        .arg(Arg::new("json").long("json").help(words.word("help-json")).action(ArgAction::SetTrue))
}

pub(super) fn progress(asked: &ArgMatches, words: &Words) -> Done {
    let within = within(asked, words)?;
    let (mut lessons, mut findings) = (Vec::new(), Vec::new());
    for name in &names(&files(asked), words)? {
        let source = inputs::file(name, words)?;
        let text = String::from_utf8_lossy(&source.bytes);
        let (mut read, mut found) = results(name, text.trim_start_matches('\u{feff}'));
        lessons.append(&mut read);
        findings.append(&mut found);
    }
    let mut learners = by_learner(lessons);
    if let Some(wanted) = asked.get_one::<String>("name") {
        learners.retain(|learner: &Learner| learner.name == *wanted);
    }
    if let Some(file) = asked.get_one::<String>("page") {
        write_page(file, &tautline_report::practice_progress(&learners, within, words), words)?;
    }
    if asked.get_flag("json") {
        show::json(&progress_output(&learners));
    } else {
        show::practice_progress(&learners, words);
    }
    show::findings_aside(&findings, words);
    if learners.is_empty() {
        show::aside(&words.word("practice-no-results"));
    }
    Ok(status(&findings, learners.is_empty()))
}

/// The band of the picture, as a share of the line.
fn within(asked: &ArgMatches, words: &Words) -> Result<f64, Refusal> {
    let Some(found) = asked.get_one::<String>("within") else { return Ok(Marking::example().narrowest()) };
    let points = found.trim().parse::<f64>().ok().filter(|points| (0.0..=100.0).contains(points));
    let message = || Message::new("practice-option-within").with("found", found.as_str());
    points.map(|points| points / 100.0).ok_or_else(|| (words.say(&message()), Exit::NotUnderstood))
}

/// Every file named, and the results of every folder named, by the names of their files.
fn names(given: &[String], words: &Words) -> Result<Vec<String>, Refusal> {
    let mut names = Vec::new();
    for name in given {
        if !Path::new(name).is_dir() {
            names.push(name.clone());
            continue;
        }
        let entries = std::fs::read_dir(name).map_err(|error| inputs::unreadable(name, &error, words))?;
        let paths = entries.filter_map(|entry| Some(entry.ok()?.path()));
        let mut own: Vec<String> = paths
            .filter(|path| path.is_file() && path.extension().is_some_and(|ending| ending == "json"))
            .map(|path| path.display().to_string())
            .collect();
        own.sort();
        names.append(&mut own);
    }
    Ok(names)
}
