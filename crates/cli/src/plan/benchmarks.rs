//! `tautline plan benchmarks`: published numbers beside the user's own way to read.

use super::{flag, option};
use crate::call::{Done, protocol_named};
use crate::exit::Exit;
use crate::show;
use clap::{Arg, ArgAction, ArgMatches, Command};
use tautline_exchange::benchmarks;
use tautline_survey::benchmark::{BenchmarksOutput, Scale, compare};
use tautline_survey::message::Message;
use tautline_words::Words;

pub(super) fn command(words: &Words) -> Command {
    let option = |name, value, help| option(words, name, value, help);
    Command::new("benchmarks")
        .about(words.word("help-plan-benchmarks"))
        .arg(Arg::new("key").value_name("NAME").help(words.word("help-benchmark-key")))
        .arg(option("protocol", "FILE|NAME", "help-benchmark-protocol"))
        .arg(option("scale", "SCALE", "help-benchmark-scale").value_parser(["stand", "nest", "landscape"]))
        .arg(option("own", "FILE", "help-benchmark-own").action(ArgAction::Append))
        .arg(flag(words, "json", "help-json"))
}

pub(super) fn run(asked: &ArgMatches, words: &Words) -> Done {
    let text = |name: &str| asked.get_one::<String>(name).map(String::as_str);
    let protocol = text("protocol").map(|name| protocol_named(name, words)).transpose()?;
    let scale = text("scale").and_then(Scale::from_word).unwrap_or(Scale::Stand);
    let mut all = benchmarks::published();
    for file in asked.get_many::<String>("own").into_iter().flatten() {
        let read = std::fs::read_to_string(file).map_err(|error| {
            let message = Message::new("file-unreadable").with("file", file.as_str());
            (words.say(&message.with("why", error.to_string())), Exit::File)
        })?;
        let own = benchmarks::read(&read).map_err(|why| {
            let about = Message::new("benchmarks-of").with("file", file.as_str()).with("why", why);
            (words.say(&about), Exit::NotUnderstood)
        })?;
        all.extend(own);
    }
    if let Some(key) = text("key") {
        let wanted = key.to_lowercase();
        let fits = |text: &str| text.to_lowercase().contains(&wanted);
        all.retain(|one| fits(&one.key) || fits(&one.name) || fits(&one.plants));
    }
    if all.is_empty() {
        let message = Message::new("benchmark-none").with("found", text("key").unwrap_or_default());
        return Err((words.say(&message), Exit::Nothing));
    }
    let output = BenchmarksOutput {
        format: "tautline.plan-benchmarks",
        version: tautline_survey::output::VERSION,
        benchmarks: all.iter().map(|one| compare(one, scale, protocol.as_ref())).collect(),
    };
    if asked.get_flag("json") {
        show::json(&output);
    } else {
        show::benchmarks(&output, words);
    }
    Ok(Exit::Well)
}
