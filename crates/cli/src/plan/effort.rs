//! `tautline plan effort`: how many lines, and how long.

use super::numbers::{Numbers, Refusal};
use super::{flag, option, strata};
use crate::call::{Done, length_option, not_a_number, readings, unwritable};
use crate::exit::Exit;
use crate::show;
use clap::{ArgAction, ArgMatches, Command};
use tautline_engine::effort::length::Cost;
use tautline_engine::length::DecimalMark;
use tautline_exchange::delimited::goals;
use tautline_report::effort::lengths_picture;
use tautline_report::{EffortTold, effort_page};
use tautline_survey::assess::{Question, assess};
use tautline_survey::effort::shares::shares;
use tautline_survey::effort::simulated::simulate;
use tautline_survey::effort::{
    Ask, CORRELATION, EffortOutput, Foreseen, answers, lengths, lengths_to_try, paid_for,
};
use tautline_survey::explain::subject_words;
use tautline_survey::goal::{self, Goal, Subject, Wanted};
use tautline_survey::message::Message;
use tautline_words::Words;

pub(super) fn command(words: &Words, shared: Command) -> Command {
    let option = |name, value, help| option(words, name, value, help);
    let command = shared
        .mut_arg("files", |files| files.required_unless_present_any(["cover"]).help(words.word("help-pilot")))
        .mut_arg("confidence", |confidence| confidence.help(words.word("help-plan-confidence")))
        .arg(option("cover", "PERCENT", "help-cover-foreseen"))
        .arg(option("spread", "PERCENT", "help-spread"))
        .arg(option("goal", "GOAL", "help-goal").action(ArgAction::Append))
        .arg(option("half-width", "PERCENT", "help-half-width"))
        .arg(option("change", "PERCENT", "help-effort-change"))
        .arg(option("trend", "PERCENT", "help-effort-trend"))
        .arg(option("visits", "NUMBER", "help-visits"))
        .arg(option("correlation", "NUMBER", "help-correlation"))
        .arg(option("between-years", "PERCENT", "help-between-years"))
        .arg(option("power", "PERCENT", "help-effort-power"))
        .arg(option("lines", "NUMBER", "help-effort-lines"))
        .arg(option("room", "NUMBER", "help-room"))
        .arg(option("walk", "MINUTES", "help-walk"))
        .arg(option("lay", "MINUTES", "help-lay"))
        .arg(option("read", "MINUTES", "help-read"))
        .arg(option("budget", "MINUTES", "help-budget"))
        .arg(option("figure", "FILE", "help-lengths-figure"))
        .arg(option("report", "FILE", "help-effort-report"))
        .arg(flag(words, "simulate", "help-simulate"))
        .arg(option("stratum", "NAME: HECTARES, PERCENT", "help-stratum").action(ArgAction::Append))
        .arg(option("least", "NUMBER", "help-least"));
    // what a plan from a pilot doesn't ask
    ["csv", "explain", "gap-classes", "by", "method", "on-the-level", "year"]
        .into_iter()
        .fold(command, |command, name| command.mut_arg(name, |option| option.hide(true)))
}

pub(super) fn run(asked: &ArgMatches, words: &Words) -> Done {
    let numbers = Numbers { asked, words };
    let refuse = |code| (words.say(&Message::new(code)), Exit::NotUnderstood);
    let goals = goals(asked, words)?;
    let confidence = match asked.get_one::<String>("confidence") {
        Some(found) => goal::read_confidence(found, DecimalMark::Point).ok_or_else(|| {
            (words.say(&Message::new("option-confidence").with("found", found.as_str())), Exit::NotUnderstood)
        })?,
        None => Question::default().confidence_per_mille,
    };
    let subject = subject(&goals, words)?;
    let goals = goals.into_iter().map(|goal| goal.wanted).collect();
    let (site, foreseen) = foreseen(asked, &subject, words)?;
    let visits = numbers.whole("visits")?.unwrap_or(5);
    let correlation = numbers.number("correlation")?.unwrap_or(CORRELATION);
    if !(-1.0..1.0).contains(&correlation) {
        return Err(not_a_number(&correlation.to_string(), "--correlation", words));
    }
    let power = numbers.share("power")?.unwrap_or(0.8);
    if !(0.5..1.0).contains(&power) {
        return Err(refuse("effort-power"));
    }
    let mut ask = Ask {
        goals,
        half_width: numbers.positive("half-width")?,
        change: numbers.positive("change")?,
        trend: numbers.positive("trend")?.map(|slope| (slope, visits)),
        correlation,
        between_years: numbers.share("between-years")?.unwrap_or(0.0),
        confidence: f64::from(confidence) / 1000.0,
        power,
        lines: numbers.whole("lines")?.filter(|&lines| lines > 1),
        population: numbers.number("room")?,
    };
    let cost: Option<Cost> = match (numbers.number("walk")?, numbers.number("lay")?, numbers.number("read")?)
    {
        (None, None, None) => None,
        (walk, lay, read) => {
            Some(Cost { walk: walk.unwrap_or(0.0), lay: lay.unwrap_or(0.0), per_metre: read.unwrap_or(0.0) })
        }
    };
    let length_m = line_length(asked, &foreseen, words)?;
    ask.lines = within_budget(&numbers, cost, length_m, ask.lines)?;
    let answers = answers(&foreseen, &ask);
    let simulated = if asked.get_flag("simulate") {
        let permanent = answers.iter().find(|answer| answer.question == "change-permanent");
        let lines = ask.lines.or_else(|| permanent?.lines).ok_or_else(|| refuse("effort-simulate"))?;
        simulate(&foreseen, &ask, lines, length_m)
    } else {
        Vec::new()
    };
    if asked.get_flag("simulate") && simulated.is_empty() {
        return Err(refuse("effort-simulate"));
    }
    let strata = strata::read(asked, words)?;
    let output = EffortOutput {
        simulated,
        strata: shares(&strata, ask.lines, ask.half_width, ask.confidence),
        lengths: cost.and_then(|cost| lengths(&foreseen, &ask, &lengths_to_try(&foreseen), cost)),
        ..EffortOutput::of(site, &foreseen, &ask, answers)
    };
    if output.answers.is_empty() {
        return Err(refuse("effort-nothing-asked"));
    }
    if !strata.is_empty() && output.strata.is_none() {
        return Err(refuse("effort-strata"));
    }
    if let Some(file) = numbers.text("figure") {
        let picture = output.lengths.as_ref().and_then(|lengths| lengths_picture(lengths, words));
        let picture = picture.ok_or_else(|| refuse("lengths-unknown"))?;
        std::fs::write(file, picture).map_err(|error| unwritable(file, &error, words))?;
    }
    let told = EffortTold { output: &output, goals: &ask.goals, visits, cost: cost.is_some() };
    if let Some(file) = numbers.text("report") {
        std::fs::write(file, effort_page(&told, words)).map_err(|error| unwritable(file, &error, words))?;
    }
    if asked.get_flag("json") {
        show::json(&output);
    } else {
        show::effort(&told, words);
    }
    Ok(Exit::Well)
}

/// The goals about cover; another is refused.
fn goals(asked: &ArgMatches, words: &Words) -> Result<Vec<Goal>, Refusal> {
    let mut goals: Vec<Goal> = Vec::new();
    for text in asked.get_many::<String>("goal").into_iter().flatten() {
        let read = goal::read(text, DecimalMark::Point)
            .map_err(|error| (words.say(&goals::finding(&error).message), Exit::NotUnderstood))?;
        // of a sum of species no share of the ground is left over, so that the verdict's scale would not hold
        if !matches!(read.wanted, Wanted::Cover(_)) || !read.subject.is_bounded() {
            return Err((
                words.say(&Message::new("effort-goal").with("goal", text.as_str())),
                Exit::NotUnderstood,
            ));
        }
        goals.push(read);
    }
    Ok(goals)
}

/// The one kind of plants that all goals are about; all canopy where there is none.
fn subject(goals: &[Goal], words: &Words) -> Result<Subject, Refusal> {
    let first = goals.first().map_or(Subject::Canopy, |goal| goal.subject.clone());
    if goals.iter().any(|goal| goal.subject != first) {
        return Err((words.word("effort-goals-apart"), Exit::NotUnderstood));
    }
    Ok(first)
}

/// The site of the pilot, where there is one, and what is foreseen of its lines; figures in the call come first.
fn foreseen(
    asked: &ArgMatches,
    subject: &Subject,
    words: &Words,
) -> Result<(Option<String>, Foreseen), Refusal> {
    let numbers = Numbers { asked, words };
    let refuse = |code| (words.say(&Message::new(code)), Exit::NotUnderstood);
    let (cover, spread) = (numbers.share("cover")?, numbers.share("spread")?);
    let (site, mut foreseen) = if asked.contains_id("files") || asked.contains_id("notebook") {
        let (site, foreseen) = pilot(asked, subject, words)?;
        (Some(site), foreseen)
    } else {
        let (Some(cover), Some(deviation)) = (cover, spread) else {
            return Err(refuse("effort-nothing-foreseen"));
        };
        (None, Foreseen { subject: subject.clone(), cover, deviation, pilot: None, lines: Vec::new() })
    };
    foreseen.cover = cover.unwrap_or(foreseen.cover);
    foreseen.deviation = spread.unwrap_or(foreseen.deviation);
    if foreseen.deviation <= 0.0 {
        return Err(refuse("effort-no-spread"));
    }
    Ok((site, foreseen))
}

/// The lines that a budget of minutes pays for, or those in the call where they are fewer.
fn within_budget(
    numbers: &Numbers,
    cost: Option<Cost>,
    length_m: f64,
    lines: Option<usize>,
) -> Result<Option<usize>, Refusal> {
    let refuse = |code| (numbers.words.say(&Message::new(code)), Exit::NotUnderstood);
    let Some(budget) = numbers.number("budget")? else { return Ok(lines) };
    let each = cost.ok_or_else(|| refuse("effort-budget-cost"))?;
    let paid = paid_for(budget, each, length_m).ok_or_else(|| refuse("effort-budget"))?;
    Ok(Some(lines.map_or(paid, |own| own.min(paid))))
}

/// Length of a line in metres: as asked, else the pilot's, else 30.
fn line_length(asked: &ArgMatches, foreseen: &Foreseen, words: &Words) -> Result<f64, Refusal> {
    let own = length_option(asked, "line-length", words)?.map(|measure| measure.length());
    let length = own.or_else(|| foreseen.lines.first().map(|line| line.length));
    Ok(length.map_or(30.0, |length| length.in_unit(tautline_engine::length::Unit::Metre)))
}

/// The latest round of the one site in the files, or of the one named.
fn pilot(asked: &ArgMatches, subject: &Subject, words: &Words) -> Result<(String, Foreseen), Refusal> {
    let (read, question) = readings(asked, words)?;
    let mut assessments = assess(&read.input, &question);
    if let Some(named) = asked.get_one::<String>("site") {
        assessments.retain(|one| one.site == *named);
    }
    let site = assessments.first().map(|one| one.site.clone()).unwrap_or_default();
    if assessments.iter().any(|one| one.site != site) {
        return Err((words.word("effort-several-sites"), Exit::NotUnderstood));
    }
    let latest = assessments.iter().max_by_key(|one| one.year);
    let foreseen = latest.and_then(|latest| Foreseen::of_subject(latest, subject));
    foreseen.map(|foreseen| (site, foreseen)).ok_or_else(|| {
        let message = match subject {
            Subject::Canopy => Message::new("effort-no-pilot"),
            other => Message::new("effort-no-pilot-of").with("what", subject_words(other)),
        };
        (words.say(&message), Exit::Nothing)
    })
}
