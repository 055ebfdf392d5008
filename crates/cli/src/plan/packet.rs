//! `tautline plan packet`: lines laid out, and what a crew carries, as a page or as PDF.

use super::{flag, lines, option};
use crate::call::{Done, protocol_named};
use crate::exit::Exit;
use crate::here::Here;
use crate::report::shape::{self, Press, Shape};
use crate::{inputs, notebook, show};
use clap::{ArgAction, ArgMatches, Command};
use std::path::Path;
use tautline_engine::length::{Bare, Unit};
use tautline_report::packet::{Packet, Paper};
use tautline_survey::message::Message;
use tautline_survey::place::Openness;
use tautline_words::Words;

pub(super) fn command(words: &Words) -> Command {
    let option = |name, value, help| option(words, name, value, help);
    lines::options(Command::new("packet").about(words.word("help-plan-packet")), words)
        .mut_arg("into", |into| into.required(true))
        .arg(option("protocol", "FILE|NAME", "help-packet-protocol"))
        .arg(option("plants", "FILE", "help-packet-plants").action(ArgAction::Append))
        .arg(option("permissions", "FILE", "help-packet-permissions").action(ArgAction::Append))
        .arg(option("sites", "FILE", "help-packet-sites").action(ArgAction::Append))
        .arg(option("tape-unit", "UNIT", "help-packet-unit"))
        .arg(option("cautions", "FILE", "help-cautions"))
        .arg(option("calls", "FILE", "help-packet-calls"))
        .arg(option("paper", "SIZE", "help-paper").value_parser(["a4", "letter"]))
        .arg(option("as", "SHAPE", "help-packet-as").value_parser(["html", "pdf"]))
        .arg(option("template", "FOLDER", "help-report-template"))
        .arg(option("day", "YYYY-MM-DD", "help-packet-day"))
        .arg(flag(words, "archival", "help-report-archival"))
        .arg(flag(words, "full", "help-packet-full"))
}

pub(super) fn run(asked: &ArgMatches, words: &Words, here: &mut Here) -> Done {
    let text = |name: &str| asked.get_one::<String>(name).map(String::as_str);
    let unit = match text("tape-unit") {
        Some(found) => match Bare::from_words(found) {
            Some(Bare::Unit(unit)) => unit,
            Some(Bare::DecimalFeet) => Unit::Foot,
            _ => {
                let message = Message::new("packet-unit").with("found", found);
                return Err((words.say(&message), Exit::NotUnderstood));
            }
        },
        None => Unit::Metre,
    };
    let protocol = text("protocol").map(|name| protocol_named(name, words)).transpose()?;
    let named = |name: &str| asked.get_many::<String>(name).into_iter().flatten().cloned();
    let files: Vec<String> = named("plants").chain(named("permissions")).chain(named("sites")).collect();
    let read =
        tautline_exchange::read(&inputs::sources(&files, words)?, &tautline_exchange::Options::default());
    let rows = |name: &str| text(name).map_or(Ok(Vec::new()), |file| rows_of(file, words));
    let (cautions, calls) = (rows("cautions")?, rows("calls")?);
    // a template that can't be read is heard of before anything is drawn or written
    let shape = text("as").and_then(Shape::named).unwrap_or(Shape::Page);
    let press = Press::asked(asked, shape, words)?;
    let (site, layout) = lines::laid(asked, words)?;
    let openness = read.input.openness(&layout.site);
    let packet = Packet {
        layout: &layout,
        map: &tautline_ground::map::map(&site, &layout),
        protocol: protocol.as_ref(),
        plants: &read.input.plants.plants,
        known: &read.input.plan,
        unit,
        paper: Paper::named(text("paper")),
        openness: if asked.get_flag("full") { Openness::Exact } else { openness },
        kept_back: openness != Openness::Exact,
        cautions: &cautions,
        calls: &calls,
    };
    // nothing is kept or written before the template did its part
    let made = press.packed(&packet, words)?;
    notebook::keep_layout(asked, &site, &layout, words, here)?;
    let folder = text("into").unwrap_or_default();
    lines::write(folder, &layout, words)?;
    let file = Path::new(folder).join("packet").with_extension(press.shape.ending());
    shape::write(&file, &made.bytes, words)?;
    show::layout(&layout, words);
    let said = Message::new(if press.shape == Shape::Pdf { "packet-pdf-written" } else { "packet-written" });
    show::aside(&words.say(&said.with("file", file.display().to_string()).with("pages", made.pages)));
    Ok(lines::status(&layout))
}

/// What an office wrote, one a row.
fn rows_of(file: &str, words: &Words) -> Result<Vec<String>, (String, Exit)> {
    let read = std::fs::read_to_string(file).map_err(|error| {
        let message = Message::new("file-unreadable").with("file", file);
        (words.say(&message.with("why", error.to_string())), Exit::File)
    })?;
    Ok(read.lines().map(str::trim).filter(|line| !line.is_empty()).map(str::to_owned).collect())
}
