//! `tautline practice`: lines with a key, sheets beside it, drills, paper for a class, progress.

mod class;
mod drill;
mod line;
mod progress;

use crate::call::{not_a_number, unwritable};
use crate::exit::Exit;
use crate::show;
use clap::{Arg, ArgAction, ArgMatches, Command};
use tautline_engine::length::DecimalMark;
use tautline_engine::practice::level::Level;
use tautline_report::PracticePage;
use tautline_survey::measure::Measure;
use tautline_survey::message::Message;
use tautline_survey::practice::{Laid, Marking, TapeKind};
use tautline_words::Words;

type Refusal = (String, Exit);

/// The command.
pub(crate) fn command(words: &Words) -> Command {
    Command::new("practice")
        .about(words.word("help-practice"))
        .subcommand_required(true)
        .arg_required_else_help(true)
        .subcommand(line::command(words))
        .subcommand(line::set_command(words))
        .subcommand(class::grade_command(words))
        .subcommand(class::class_command(words))
        .subcommand(drill::command(words))
        .subcommand(progress::command(words))
}

/// Does what was asked.
pub(crate) fn run(asked: &ArgMatches, words: &Words) -> crate::call::Done {
    match asked.subcommand() {
        Some(("line", asked)) => line::line(asked, words),
        Some(("set", asked)) => line::set(asked, words),
        Some(("grade", asked)) => class::grade(asked, words),
        Some(("class", asked)) => class::class(asked, words),
        Some(("progress", asked)) => progress::progress(asked, words),
        Some((_, asked)) => drill::drill(asked, words),
        None => Ok(Exit::NotUnderstood),
    }
}

fn option(words: &Words, name: &'static str, value: &'static str, help: &str) -> Arg {
    Arg::new(name).long(name).value_name(value).help(words.word(help))
}

fn flag(words: &Words, name: &'static str, help: &str) -> Arg {
    Arg::new(name).long(name).help(words.word(help)).action(ArgAction::SetTrue)
}

/// What says which line is meant, apart from its level and number.
fn with_tape(command: Command, words: &Words) -> Command {
    command
        .arg(option(words, "length", "LENGTH", "help-practice-length"))
        .arg(option(words, "tape", "HOW", "help-practice-tape").value_parser([
            "ft-in",
            "decimal-ft",
            "metric",
        ]))
        .arg(option(words, "protocol", "FILE|NAME", "help-protocol"))
}

/// The year's marks.
fn with_marks(command: Command, words: &Words) -> Command {
    command
        .arg(option(words, "tolerance", "LENGTH", "help-practice-tolerance"))
        .arg(option(words, "bands", "BANDS", "help-practice-bands"))
        .arg(option(words, "marks", "NUMBERS", "help-practice-marks"))
}

/// How lines are drawn and read.
fn laid(asked: &ArgMatches, words: &Words) -> Result<Laid, Refusal> {
    let text = |name: &str| asked.get_one::<String>(name).map(String::as_str);
    let tape = text("tape").and_then(TapeKind::from_word).unwrap_or(TapeKind::FeetAndInches);
    let length = match text("length") {
        None => tape.usual_length(),
        Some(found) => Measure::read(found, None, DecimalMark::Point)
            .map(|measure| measure.length())
            .ok()
            .filter(|length| *length > tape.notation().step() && *length <= Laid::LONGEST)
            .ok_or_else(|| not_a_number(found, "--length", words))?,
    };
    let name = text("protocol").unwrap_or(Laid::USUAL_PROTOCOL);
    Ok(Laid { length, tape, protocol: crate::call::protocol_named(name, words)? })
}

fn whole(asked: &ArgMatches, name: &'static str, usual: u64, words: &Words) -> Result<u64, Refusal> {
    asked.get_one::<String>(name).map_or(Ok(usual), |found| {
        found.trim().parse().map_err(|_| not_a_number(found, &format!("--{name}"), words))
    })
}

fn level(asked: &ArgMatches, words: &Words) -> Result<Level, Refusal> {
    let Some(found) = asked.get_one::<String>("level") else { return Ok(Level::One) };
    let level = found.trim().parse().ok().and_then(Level::from_number);
    let refused = || Message::new("practice-option-level").with("found", found.as_str());
    level.ok_or_else(|| (words.say(&refused()), Exit::NotUnderstood))
}

/// The marks as typed, or the example's.
fn marking(asked: &ArgMatches, words: &Words) -> Result<Marking, Refusal> {
    let text = |name: &str| asked.get_one::<String>(name).map(String::as_str);
    let refused =
        |code, found: &str| (words.say(&Message::new(code).with("found", found)), Exit::NotUnderstood);
    let mut marking = Marking::example();
    if let Some(found) = text("bands") {
        marking.bands = Marking::read_bands(found).ok_or_else(|| refused("practice-option-bands", found))?;
    }
    if let Some(found) = text("marks") {
        let read = Marking::read_marks(found);
        let [edges, species, arithmetic] = read.ok_or_else(|| refused("practice-option-marks", found))?;
        (marking.edges, marking.species, marking.arithmetic) = (edges, species, arithmetic);
    }
    if let Some(found) = text("tolerance") {
        let read = Measure::read(found, None, DecimalMark::Point);
        marking.tolerance = Some(read.map_err(|_| not_a_number(found, "--tolerance", words))?.length());
    }
    // whoever typed the bands has their year's rules
    marking.example = text("bands").is_none();
    Ok(marking)
}

fn write_page(file: &str, page: &PracticePage, words: &Words) -> Result<(), Refusal> {
    std::fs::write(file, page.page(words)).map_err(|error| unwritable(file, &error, words))?;
    show::aside(&words.say(&Message::new("practice-written").with("file", file)));
    Ok(())
}
