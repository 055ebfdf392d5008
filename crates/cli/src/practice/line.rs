//! `tautline practice line` and `set`: a line to read, and many on paper.

use super::{flag, laid, level, marking, option, whole, with_marks, with_tape, write_page};
use crate::call::Done;
use crate::exit::Exit;
use crate::show;
use clap::{ArgMatches, Command};
use tautline_survey::practice::{Exercise, line_output};
use tautline_words::Words;

pub(super) fn command(words: &Words) -> Command {
    let command = Command::new("line")
        .about(words.word("help-practice-line"))
        .arg(option(words, "level", "LEVEL", "help-practice-level"))
        .arg(option(words, "number", "NUMBER", "help-practice-number"));
    with_marks(with_tape(command, words), words)
        .arg(flag(words, "key", "help-practice-key"))
        .arg(option(words, "page", "FILE", "help-practice-drawing"))
        .arg(flag(words, "json", "help-json"))
}

pub(super) fn set_command(words: &Words) -> Command {
    let command = Command::new("set")
        .about(words.word("help-practice-set"))
        .arg(option(words, "level", "LEVEL", "help-practice-level"))
        .arg(option(words, "number", "NUMBER", "help-practice-number"))
        .arg(option(words, "lines", "NUMBER", "help-practice-lines"));
    with_marks(with_tape(command, words), words)
        .arg(option(words, "page", "FILE", "help-practice-page").required(true))
}

pub(super) fn line(asked: &ArgMatches, words: &Words) -> Done {
    let exercise = laid(asked, words)?.exercise(level(asked, words)?, whole(asked, "number", 1, words)?);
    let with_key = asked.get_flag("key");
    let marking = marking(asked, words)?;
    if let Some(file) = asked.get_one::<String>("page") {
        write_page(
            file,
            &tautline_report::practice_line(&exercise, with_key.then_some(&marking), words),
            words,
        )?;
    }
    if asked.get_flag("json") {
        show::json(&line_output(&exercise, with_key));
    } else {
        show::practice_line(&exercise, with_key, words);
    }
    Ok(Exit::Well)
}

pub(super) fn set(asked: &ArgMatches, words: &Words) -> Done {
    /// More would be no set but a library.
    const MOST: u64 = 60;
    let laid = laid(asked, words)?;
    let marking = marking(asked, words)?;
    let level = level(asked, words)?;
    let first = whole(asked, "number", 1, words)?;
    let lines = whole(asked, "lines", 6, words)?.clamp(1, MOST);
    let exercises: Vec<Exercise> =
        (first..first.saturating_add(lines)).map(|number| laid.exercise(level, number)).collect();
    if let Some(file) = asked.get_one::<String>("page") {
        write_page(file, &tautline_report::practice_set(&exercises, &marking, words), words)?;
    }
    Ok(Exit::Well)
}
