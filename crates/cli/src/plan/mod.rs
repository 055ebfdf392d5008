//! `tautline plan`: how many lines, and where.

mod benchmarks;
mod boundary;
mod effort;
mod lines;
mod numbers;
mod packet;
mod replace;
mod sequential;
mod strata;

use crate::call::Done;
use crate::here::Here;
use clap::{Arg, ArgAction, ArgMatches, Command};
use tautline_words::Words;

/// The command; `effort` comes with what every command that reads files shares.
pub(crate) fn command(words: &Words, effort: Command) -> Command {
    Command::new("plan")
        .about(words.word("help-plan"))
        .subcommand_required(true)
        .arg_required_else_help(true)
        .subcommand(effort::command(words, effort))
        .subcommand(lines::command(words))
        .subcommand(packet::command(words))
        .subcommand(replace::command(words))
        .subcommand(benchmarks::command(words))
        .subcommand(sequential::command(words))
}

/// Does what was asked.
pub(crate) fn run(asked: &ArgMatches, words: &Words, here: &mut Here) -> Done {
    match asked.subcommand() {
        Some(("effort", asked)) => effort::run(asked, words),
        Some(("benchmarks", asked)) => benchmarks::run(asked, words),
        Some(("packet", asked)) => packet::run(asked, words, here),
        Some(("replace", asked)) => crate::notebook::replace(asked, words, here),
        Some(("sequential", asked)) => sequential::run(asked, words),
        Some((_, asked)) => lines::run(asked, words, here),
        None => Ok(crate::exit::Exit::NotUnderstood),
    }
}

fn option(words: &Words, name: &'static str, value: &'static str, help: &str) -> Arg {
    Arg::new(name).long(name).value_name(value).help(words.word(help)).allow_negative_numbers(true)
}

fn flag(words: &Words, name: &'static str, help: &str) -> Arg {
    Arg::new(name).long(name).help(words.word(help)).action(ArgAction::SetTrue)
}
