//! `tautline export`: what was read and what it comes to, for other programs.

use crate::call::{Done, files_read, unwritable};
use crate::exit::Exit;
use crate::{notebook, show};
use clap::{Arg, ArgAction, ArgMatches, Command};
use std::path::Path;
use tautline_survey::assess::{By, Question, assess};
use tautline_survey::message::Message;
use tautline_travel::{File, Form, Whole, write};
use tautline_words::Words;

pub(crate) fn command(words: &Words) -> Command {
    let option = |name: &'static str, value: &'static str, help| {
        Arg::new(name).long(name).value_name(value).help(words.word(help))
    };
    let files = Arg::new("files").value_name("FILES").help(words.word("help-files")).num_args(1..);
    let command = Command::new("export").about(words.word("help-export"));
    let full = Arg::new("full").long("full").alias("json").action(ArgAction::SetTrue);
    notebook::reading(command.arg(files.required_unless_present("notebook")), words)
        .arg(notebook::in_place_of_files(words))
        .arg(
            option("as", "FORM", "help-export-as")
                .value_parser(Form::ALL.iter().map(|form| form.word()).collect::<Vec<_>>()),
        )
        .arg(option("to", "FOLDER", "help-export-to"))
        .arg(option("publisher", "NAME", "help-export-publisher"))
        .arg(full.help(words.word("help-export-full")))
}

pub(crate) fn run(asked: &ArgMatches, words: &Words) -> Done {
    let text = |name: &str| asked.get_one::<String>(name).map(String::as_str);
    let refuse = |code| Err((words.word(code), Exit::NotUnderstood));
    let full = asked.get_flag("full");
    let Some(form) = text("as").and_then(Form::from_word) else {
        return match (full, text("notebook")) {
            (true, Some(_)) => notebook::full_copy(asked, words),
            (true, None) => refuse("export-full-of-notebook"),
            (false, _) => refuse("export-as-or-full"),
        };
    };
    let Some(folder) = text("to") else { return refuse("export-to-missing") };
    let read = files_read(asked, words)?;
    let question = Question { by: By::Species, ..Question::default() };
    let assessments = assess(&read.input, &question);
    let publisher = text("publisher").map(str::trim).filter(|name| !name.is_empty());
    let whole = Whole { input: &read.input, goals: &read.goals, assessments: &assessments, full, publisher };
    let files = write(form, &whole, words).map_err(|message| (words.say(&message), Exit::Nothing))?;
    keep(Path::new(folder), &files, words)?;
    show::findings_aside(&read.input.findings, words);
    for message in tautline_travel::said(&whole) {
        show::aside(&words.say(&message));
    }
    Ok(crate::call::status(&read.input.findings, false))
}

/// All files or none: nothing is written over.
fn keep(folder: &Path, files: &[File], words: &Words) -> Result<(), (String, Exit)> {
    for file in files {
        let to = folder.join(&file.name);
        if to.exists() {
            let message = Message::new("export-taken").with("file", to.display().to_string());
            return Err((words.say(&message), Exit::File));
        }
    }
    for file in files {
        let to = folder.join(&file.name);
        let name = to.display().to_string();
        let folder = to.parent().unwrap_or(folder);
        std::fs::create_dir_all(folder)
            .and_then(|()| std::fs::write(&to, &file.bytes))
            .map_err(|error| unwritable(&name, &error, words))?;
        show::line(&words.say(&Message::new("export-file-written").with("file", name)));
    }
    Ok(())
}
