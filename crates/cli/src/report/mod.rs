//! `tautline report`: one report of all sites, or one for each, as a page, text or PDF; and whether the readings behind
//! one still stand.

mod album;
mod each;
pub(crate) mod shape;
mod verify;

use crate::call::{Done, readings, status};
use crate::exit::Exit;
use crate::follow::{refuse, without};
use crate::progress::Progress;
use crate::show;
use album::Album;
use clap::{Arg, ArgAction, ArgMatches, Command};
use shape::{Press, Shape};
use std::path::Path;
use tautline_report::{Reader, Telling};
use tautline_survey::assess::{Assessment, Question, assess_and_tell};
use tautline_survey::finding::Finding;
use tautline_survey::input::Input;
use tautline_survey::message::Message;
use tautline_words::Words;

/// What is printed on a screen of letters; a report has all of it.
const NOT_OF_REPORTS: [&str; 4] = ["json", "csv", "explain", "by"];

/// What the call looks like; `shared` has the options of all calls that read.
pub(crate) fn command(shared: Command, words: &Words) -> Command {
    let option = |name: &'static str, value: &'static str, help: &str| {
        Arg::new(name).long(name).value_name(value).help(words.word(help))
    };
    let flag = |name: &'static str, help: &str| {
        Arg::new(name).long(name).help(words.word(help)).action(ArgAction::SetTrue)
    };
    let readers: Vec<&str> = Reader::ALL.iter().map(|(name, _)| *name).collect();
    without(shared, &NOT_OF_REPORTS)
        .arg(option("into", "FILE|FOLDER", "help-report-into").required_unless_present("verify"))
        .arg(option("as", "SHAPE", "help-report-as").value_parser(["html", "text", "pdf"]))
        .arg(option("for", "READER", "help-report-for").value_parser(readers))
        .arg(option("template", "FOLDER", "help-report-template"))
        .arg(option("paper", "SIZE", "help-report-paper").value_parser(["a4", "letter"]))
        .arg(option("day", "YYYY-MM-DD", "help-report-day"))
        .arg(flag("archival", "help-report-archival"))
        .arg(flag("resume", "help-report-resume"))
        .arg(flag("full", "help-report-full"))
        .arg(option("verify", "FILE", "help-report-verify").conflicts_with("into"))
}

/// Writes the report that was asked for beside figures on the screen, for a specialist.
pub(crate) fn write_beside(
    file: &str,
    asked: &ArgMatches,
    input: &Input,
    question: &Question,
    assessments: &[Assessment],
    words: &Words,
) -> Result<(), (String, Exit)> {
    let album = Album::of(asked, words)?;
    let (photos, maps) = (album.photos(input, words)?, album.maps(input));
    let telling = Telling::new(input, question, assessments, words);
    write_as_named(file, asked, &Telling { photos: &photos, maps: Some(&maps), ..telling })
}

/// Writes a report in the shape that its file's name asks for; a page where the name says nothing.
fn write_as_named(file: &str, asked: &ArgMatches, telling: &Telling) -> Result<(), (String, Exit)> {
    let words = telling.words;
    let press = Press::asked(asked, Shape::of_file(file).unwrap_or(Shape::Page), words)?;
    shape::write(Path::new(file), &press.made(telling)?.bytes, words)
}

/// Writes what was asked for, or holds a report against the readings.
pub(crate) fn report(asked: &ArgMatches, words: &Words) -> Done {
    refuse(asked, &NOT_OF_REPORTS, words)?;
    let (read, question) = readings(asked, words)?;
    if let Some(file) = asked.get_one::<String>("verify") {
        return verify::verify(file, &read.input, words);
    }
    let into = asked.get_one::<String>("into").map_or("", String::as_str);
    let named = asked.get_one::<String>("as").map(String::as_str);
    let reader = asked.get_one::<String>("for").and_then(|name| Reader::named(name)).unwrap_or_default();
    let full = asked.get_flag("full");
    let album = Album::of(asked, words)?;
    if Shape::of_file(into).is_some() {
        let progress = Progress::new("progress-working", words);
        let assessments = assess_and_tell(&read.input, &question, |done, of| progress.tell(done, of));
        drop(progress);
        let (photos, maps) = (album.photos(&read.input, words)?, album.maps(&read.input));
        let telling = Telling::new(&read.input, &question, &assessments, words).to(reader);
        let telling = Telling { photos: &photos, maps: Some(&maps), full, ..telling };
        write_as_named(into, asked, &telling)?;
        show::aside(&words.say(&Message::new("report-written").with("file", into)));
        let findings: Vec<Finding> = read
            .input
            .findings
            .iter()
            .chain(assessments.iter().flat_map(|one| &one.findings))
            .cloned()
            .collect();
        return Ok(status(&findings, assessments.iter().all(|one| one.figures.is_empty())));
    }
    let press = Press::asked(asked, named.and_then(Shape::named).unwrap_or(Shape::Page), words)?;
    let batch = each::Batch {
        folder: Path::new(into),
        press: &press,
        reader,
        question: &question,
        words,
        album,
        full,
    };
    each::write(&batch, &read.input, asked.get_flag("resume"))
}
