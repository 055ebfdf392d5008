//! `tautline practice drill`: arithmetic by hand, where lines start, what is in or out, an eye that leans.

use super::{Refusal, flag, option, whole};
use crate::call::Done;
use crate::exit::Exit;
use crate::show;
use clap::{ArgMatches, Command};
use tautline_engine::practice::drill::{Drill, Kind};
use tautline_engine::practice::place::{Starts, in_or_out};
use tautline_survey::message::Message;
use tautline_survey::practice::{
    SightDrill, TapeKind, drill_output, in_or_out_output, in_or_out_right, sight_output, starts_output,
    starts_right,
};
use tautline_words::Words;

const STARTS: &str = "line-starts";
const IN_OR_OUT: &str = "in-or-out";
const SIGHT: &str = "sight";

pub(super) fn command(words: &Words) -> Command {
    let kinds = Kind::ALL.map(Kind::code).into_iter().chain([STARTS, IN_OR_OUT, SIGHT]);
    let tapes = ["ft-in", "decimal-ft", "metric"];
    Command::new("drill")
        .about(words.word("help-practice-drill"))
        .arg(option(words, "kind", "KIND", "help-practice-kind").value_parser(kinds.collect::<Vec<_>>()))
        .arg(option(words, "number", "NUMBER", "help-practice-number"))
        .arg(option(words, "tape", "HOW", "help-practice-tape").value_parser(tapes))
        .arg(option(words, "answer", "ANSWER", "help-practice-answer"))
        .arg(flag(words, "solution", "help-practice-solution"))
        .arg(flag(words, "json", "help-json"))
}

pub(super) fn drill(asked: &ArgMatches, words: &Words) -> Done {
    let number = whole(asked, "number", 1, words)?;
    let kind = asked.get_one::<String>("kind").map_or("", String::as_str);
    match kind {
        STARTS => line_starts(asked, number, words),
        IN_OR_OUT => plants(asked, number, words),
        SIGHT => sight(asked, number, words),
        _ => Ok(arithmetic(asked, Kind::from_code(kind).unwrap_or(Kind::Whole), number, words)),
    }
}

fn arithmetic(asked: &ArgMatches, kind: Kind, number: u64, words: &Words) -> Exit {
    let drill = Drill::draw(kind, number);
    let output = drill_output(&drill, asked.get_flag("solution"), answer(asked));
    if asked.get_flag("json") {
        show::json(&output);
    } else {
        show::practice_drill(&drill, &output, asked.get_flag("solution"), words);
    }
    Exit::Well
}

fn answer(asked: &ArgMatches) -> Option<&str> {
    asked.get_one::<String>("answer").map(String::as_str)
}

fn tape(asked: &ArgMatches) -> TapeKind {
    let word = asked.get_one::<String>("tape").and_then(|word| TapeKind::from_word(word));
    word.unwrap_or(TapeKind::FeetAndInches)
}

/// Which answers are right, or that they can't be read.
fn right(
    asked: &ArgMatches,
    code: &'static str,
    words: &Words,
    of: impl Fn(&str) -> Option<Vec<bool>>,
) -> Result<Option<Vec<bool>>, Refusal> {
    let read = |found| {
        of(found).ok_or_else(|| (words.say(&Message::new(code).with("found", found)), Exit::NotUnderstood))
    };
    answer(asked).map(read).transpose()
}

fn line_starts(asked: &ArgMatches, number: u64, words: &Words) -> Done {
    let tape = tape(asked).notation();
    let starts = Starts::draw(tape, number);
    let right = right(asked, "practice-answer-starts", words, |found| starts_right(&starts, tape, found))?;
    let solution = asked.get_flag("solution");
    if asked.get_flag("json") {
        show::json(&starts_output(&starts, tape, solution, right));
    } else {
        show::practice_starts(&starts, tape, right.as_deref(), solution, words);
    }
    Ok(Exit::Well)
}

/// Plants of one exercise.
const PLANTS: usize = 12;

fn plants(asked: &ArgMatches, number: u64, words: &Words) -> Done {
    let tape = tape(asked).notation();
    let plants = in_or_out(tape, PLANTS, number);
    let right = right(asked, "practice-answer-in-or-out", words, |found| in_or_out_right(&plants, found))?;
    let solution = asked.get_flag("solution");
    if asked.get_flag("json") {
        show::json(&in_or_out_output(&plants, solution, right));
    } else {
        show::practice_plants(&plants, tape, right.as_deref(), solution, words);
    }
    Ok(Exit::Well)
}

fn sight(asked: &ArgMatches, number: u64, words: &Words) -> Done {
    let drill = SightDrill::draw(tape(asked), number);
    let read = |found: &str| {
        let refused = || Message::new("practice-cell-length").with("found", found);
        drill.is_right(found).ok_or_else(|| (words.say(&refused()), Exit::NotUnderstood))
    };
    let right = answer(asked).map(read).transpose()?;
    let solution = asked.get_flag("solution");
    if asked.get_flag("json") {
        show::json(&sight_output(&drill, solution, right));
    } else {
        show::practice_sight(&drill, right, solution, words);
    }
    Ok(Exit::Well)
}
