//! `tautline plan packet`: lines laid out, and the page that a crew carries.

use super::{lines, option};
use crate::call::{Done, protocol_named, unwritable};
use crate::exit::Exit;
use crate::here::Here;
use crate::{inputs, notebook, show};
use clap::{ArgAction, ArgMatches, Command};
use std::path::Path;
use tautline_engine::length::{Bare, Unit};
use tautline_report::packet::{Packet, Paper, html};
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
        .arg(
            clap::Arg::new("full")
                .long("full")
                .action(ArgAction::SetTrue)
                .help(words.word("help-packet-full")),
        )
        .arg(option("tape-unit", "UNIT", "help-packet-unit"))
        .arg(option("cautions", "FILE", "help-cautions"))
        .arg(option("paper", "SIZE", "help-paper").value_parser(["a4", "letter"]))
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
    let cautions = match text("cautions") {
        Some(file) => {
            let read = std::fs::read_to_string(file).map_err(|error| {
                let message = Message::new("file-unreadable").with("file", file);
                (words.say(&message.with("why", error.to_string())), Exit::File)
            })?;
            read.lines().map(str::trim).filter(|line| !line.is_empty()).map(str::to_owned).collect()
        }
        None => Vec::new(),
    };
    let (site, layout) = lines::laid(asked, words)?;
    notebook::keep_layout(asked, &site, &layout, words, here)?;
    let folder = text("into").unwrap_or_default();
    lines::write(folder, &layout, words)?;
    let openness = read.input.openness(&layout.site);
    let packet = Packet {
        layout: &layout,
        map: &tautline_ground::map::map(&site, &layout),
        protocol: protocol.as_ref(),
        plants: &read.input.plants.plants,
        known: &read.input.plan,
        unit,
        paper: if text("paper") == Some("letter") { Paper::Letter } else { Paper::A4 },
        openness: if asked.get_flag("full") { Openness::Exact } else { openness },
        kept_back: openness != Openness::Exact,
        cautions: &cautions,
    };
    let file = Path::new(folder).join("packet.html").display().to_string();
    std::fs::write(&file, html(&packet, words)).map_err(|error| unwritable(&file, &error, words))?;
    show::layout(&layout, words);
    show::aside(&words.say(&Message::new("packet-written").with("file", file)));
    Ok(lines::status(&layout))
}
