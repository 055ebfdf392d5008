//! `tautline plan sequential`: a plan that may stop after any line.

use super::numbers::Numbers;
use super::option;
use crate::call::Done;
use crate::exit::Exit;
use crate::show;
use clap::{ArgMatches, Command};
use tautline_engine::length::DecimalMark;
use tautline_engine::verdict::Goal;
use tautline_exchange::delimited::goals;
use tautline_survey::assess::{Question, threshold};
use tautline_survey::effort::sequential;
use tautline_survey::goal::{self, Wanted};
use tautline_survey::message::Message;
use tautline_words::Words;

pub(super) fn command(words: &Words) -> Command {
    let option = |name, value, help| option(words, name, value, help);
    Command::new("sequential")
        .about(words.word("help-plan-sequential"))
        .arg(option("lines", "“5 to 30”", "help-sequential-lines").required(true))
        .arg(option("confidence", "PERCENT", "help-sequential-confidence"))
        .arg(option("goal", "GOAL", "help-goal"))
        .arg(option("cover", "PERCENT", "help-cover-foreseen"))
        .arg(option("spread", "PERCENT", "help-spread"))
        .arg(super::flag(words, "json", "help-json"))
}

pub(super) fn run(asked: &ArgMatches, words: &Words) -> Done {
    let numbers = Numbers { asked, words };
    let refuse = |message: Message| (words.say(&message), Exit::NotUnderstood);
    let per_mille = match numbers.text("confidence") {
        Some(found) => goal::read_confidence(found, DecimalMark::Point)
            .ok_or_else(|| refuse(Message::new("option-confidence").with("found", found)))?,
        None => Question::default().confidence_per_mille,
    };
    let found = numbers.text("lines").unwrap_or_default();
    let plan = sequential::read(found, 1.0 - f64::from(per_mille) / 1000.0)
        .ok_or_else(|| refuse(Message::new("option-sequential").with("found", found)))?;
    let wanted = numbers
        .text("goal")
        .map(|text| {
            goal::read(text, DecimalMark::Point).map_err(|error| refuse(goals::finding(&error).message))
        })
        .transpose()?;
    if wanted.as_ref().is_some_and(|one| !matches!(one.wanted, Wanted::Cover(_)) || !one.subject.is_bounded())
    {
        return Err(refuse(Message::new("effort-goal").with("goal", numbers.text("goal").unwrap_or(""))));
    }
    let goal = wanted.as_ref().map(|one| threshold(&one.wanted));
    let foreseen = goal.zip(numbers.positive("spread")?);
    let mut covers: Vec<f64> = goal.map(edges).unwrap_or_default();
    covers.extend(numbers.share("cover")?);
    let output = sequential::plan(plan, foreseen, &covers)
        .ok_or_else(|| refuse(Message::new("option-sequential").with("found", found)))?;
    if asked.get_flag("json") {
        show::json(&output);
    } else {
        show::sequential(&output, found, words);
    }
    Ok(Exit::Well)
}

/// The covers at which a verdict is hardest.
fn edges(goal: Goal) -> Vec<f64> {
    match goal {
        Goal::AtLeast(at) | Goal::AtMost(at) => vec![at],
        Goal::Between(low, high) => vec![low, high],
    }
}
