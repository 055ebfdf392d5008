//! `tautline practice drill`: arithmetic by hand.

use super::{flag, option, whole};
use crate::call::Done;
use crate::exit::Exit;
use crate::show;
use clap::{ArgMatches, Command};
use tautline_engine::practice::drill::{Drill, Kind};
use tautline_survey::practice::drill_output;
use tautline_words::Words;

pub(super) fn command(words: &Words) -> Command {
    let kinds = Kind::ALL.map(Kind::code);
    Command::new("drill")
        .about(words.word("help-practice-drill"))
        .arg(option(words, "kind", "KIND", "help-practice-kind").value_parser(kinds))
        .arg(option(words, "number", "NUMBER", "help-practice-number"))
        .arg(option(words, "answer", "NUMBER", "help-practice-answer"))
        .arg(flag(words, "solution", "help-practice-solution"))
        .arg(flag(words, "json", "help-json"))
}

pub(super) fn drill(asked: &ArgMatches, words: &Words) -> Done {
    let kind = asked.get_one::<String>("kind").and_then(|code| Kind::from_code(code)).unwrap_or(Kind::Whole);
    let drill = Drill::draw(kind, whole(asked, "number", 1, words)?);
    let answer = asked.get_one::<String>("answer").map(String::as_str);
    let output = drill_output(&drill, asked.get_flag("solution"), answer);
    if asked.get_flag("json") {
        show::json(&output);
    } else {
        show::practice_drill(&drill, &output, asked.get_flag("solution"), words);
    }
    Ok(Exit::Well)
}
