//! The log of calibrations: written from readers set side by side, and looked through.

use super::{Notebook, Refused, file, text};
use crate::call::{Done, status, unwritable};
use crate::exit::Exit;
use crate::here::Here;
use crate::show;
use clap::ArgMatches;
use tautline_survey::agree::{Agreement, Entered, enter, reminders};
use tautline_survey::date::Date;
use tautline_survey::finding::Finding;
use tautline_survey::input::Input;
use tautline_survey::message::Message;
use tautline_words::Words;

/// Writes what readers came to into the notebook that `--log` names; nothing where none is named.
pub(crate) fn log(
    asked: &ArgMatches,
    words: &Words,
    here: &mut Here,
    input: &Input,
    found: &[Agreement],
    tolerance: Option<f64>,
) -> Result<Vec<Finding>, Refused> {
    let Some(file) = text(asked, "log") else { return Ok(Vec::new()) };
    let tolerance = tolerance.ok_or_else(|| (words.word("log-needs-tolerance"), Exit::NotUnderstood))?;
    if let Some(author) = text(asked, "author") {
        author.clone_into(&mut here.author);
    }
    let judge = text(asked, "judge").unwrap_or(&here.author).to_owned();
    let mut notebook = Notebook::open_or_begin(file, words)?;
    let Entered { drafts, calibrations, findings } =
        enter(&notebook.current()?, input, found, tolerance, &judge);
    if drafts.is_empty() {
        show::aside(&words.say(&Message::new("logged-known").with("file", file)));
    } else {
        notebook.write("log", drafts, "", here)?;
        show::aside(&words.say(&Message::new("logged").with("records", calibrations).with("file", file)));
    }
    show::findings_aside(&findings, words);
    Ok(findings)
}

/// The log of a notebook: what was judged, who is due, and certificates to print.
pub(crate) fn show_log(asked: &ArgMatches, words: &Words, here: &Here) -> Done {
    let (mut input, _) = Notebook::open(file(asked), words)?.current()?.into_input();
    let on = match text(asked, "on") {
        None => here.today,
        Some(found) => Date::read(found).ok_or_else(|| {
            let message = Message::new("option-not-a-day").with("found", found);
            (words.say(&message), Exit::NotUnderstood)
        })?,
    };
    let span = crate::call::days_option(asked, "span", words)?;
    if let Some(reader) = text(asked, "reader") {
        input.calibrations.retain(|one| one.reader == reader);
        input.visits.retain(|visit| visit.reader == reader);
    }
    let reminders = reminders(&input, on, span);
    if asked.get_flag("json") {
        show::json(&tautline_survey::agree::log_output(&input, on, &reminders));
    } else if asked.get_flag("csv") {
        show::csv_log(&input);
    } else {
        show::log(&input, &reminders, words);
    }
    if let Some(page) = text(asked, "certificate") {
        std::fs::write(page, tautline_report::certificates(&input, words))
            .map_err(|error| unwritable(page, &error, words))?;
        show::aside(&words.say(&Message::new("page-written").with("file", page)));
    }
    Ok(status(&input.findings, input.calibrations.is_empty()))
}
