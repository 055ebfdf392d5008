//! Following a site: what can be asked about change, and what each call does.

use crate::call::{Done, not_a_number, percent, readings, status, unwritable};
use crate::exit::Exit;
use crate::here::Here;
use crate::{notebook, show};
use clap::{Arg, ArgAction, ArgMatches, Command};
use tautline_figures::{Frame, Palette};
use tautline_survey::agree::Prices;
use tautline_survey::finding::Finding;
use tautline_survey::follow::{self, ChangeQuestion};
use tautline_survey::message::Message;
use tautline_words::Words;

/// Options of a single visit, which mean nothing to a change.
const OF_ONE_VISIT: [&str; 4] = ["year", "method", "gap-classes", "on-the-level"];

/// How wide a picture is drawn.
const WIDTH: u16 = 900;

/// The options of `tautline change` beside those that all share.
pub(crate) fn change_command(shared: Command, words: &Words) -> Command {
    let option = |name: &'static str, value: &'static str| {
        Arg::new(name).long(name).value_name(value).help(words.word(&format!("help-{name}")))
    };
    without(shared, &OF_ONE_VISIT)
        .arg(option("from", "YEAR").required(true))
        .arg(option("to", "YEAR").required(true))
        .arg(option("matters", "POINTS"))
        .arg(option("power", "PERCENT"))
        .arg(
            Arg::new("temporary")
                .long("temporary")
                .help(words.word("help-temporary"))
                .action(ArgAction::SetTrue),
        )
        .arg(option("untreated", "SITE"))
        .arg(option("span", "DAYS"))
        .arg(option("picture", "FILE"))
        .arg(report_option("help-change-report", words))
}

/// The page, as a file.
fn report_option(help: &'static str, words: &Words) -> Arg {
    Arg::new("report").long("report").value_name("FILE").help(words.word(help))
}

/// Writes the page where one is asked for.
fn write_page(
    asked: &ArgMatches,
    words: &Words,
    page: impl FnOnce() -> String,
) -> Result<(), (String, Exit)> {
    let Some(file) = asked.get_one::<String>("report") else { return Ok(()) };
    std::fs::write(file, page()).map_err(|error| unwritable(file, &error, words))?;
    show::aside(&words.say(&Message::new("page-written").with("file", file.as_str())));
    Ok(())
}

/// A share from points of cover, such as “5 %”.
fn points_option(
    asked: &ArgMatches,
    name: &'static str,
    words: &Words,
) -> Result<Option<f64>, (String, Exit)> {
    let read = |found: &String| {
        let share = percent(found).map(|percent| percent / 100.0).filter(|share| *share > 0.0);
        share.ok_or_else(|| not_a_number(found, &format!("--{name}"), words))
    };
    asked.get_one::<String>(name).map(read).transpose()
}

/// Takes away options that all calls share but this one has no use for.
pub(crate) fn without(command: Command, options: &'static [&'static str]) -> Command {
    command.mut_args(|option| {
        let unused = options.contains(&option.get_id().as_str());
        option.hide(unused)
    })
}

/// Refuses an option that was taken away.
pub(crate) fn refuse(asked: &ArgMatches, options: &[&str], words: &Words) -> Result<(), (String, Exit)> {
    let given = |name: &&&str| asked.value_source(name) == Some(clap::parser::ValueSource::CommandLine);
    match options.iter().find(given) {
        None => Ok(()),
        Some(name) => {
            let message = Message::new("option-not-here").with("option", format!("--{name}"));
            Err((words.say(&message), Exit::NotUnderstood))
        }
    }
}

pub(crate) fn change(asked: &ArgMatches, words: &Words) -> Done {
    refuse(asked, &OF_ONE_VISIT, words)?;
    let (mut read, question) = readings(asked, words)?;
    let text = |name: &str| asked.get_one::<String>(name).map(String::as_str);
    let year = |name: &'static str| -> Result<u16, (String, Exit)> {
        let found = text(name).unwrap_or_default();
        found.parse().map_err(|_| not_a_number(found, &format!("--{name}"), words))
    };
    let default = f64::from(tautline_survey::limits::CHANCE_TO_SETTLE_PER_MILLE) / 1000.0;
    let question = ChangeQuestion {
        question,
        from: year("from")?,
        to: year("to")?,
        matters: points_option(asked, "matters", words)?,
        power: points_option(asked, "power", words)?.filter(|power| *power < 1.0).unwrap_or(default),
        temporary: asked.get_flag("temporary"),
        untreated: text("untreated").map(str::to_owned),
        span: crate::call::days_option(asked, "span", words)?,
    };
    if question.from >= question.to {
        return Err((words.word("option-years"), Exit::NotUnderstood));
    }
    let is_asked = |year: u16| year == question.from || year == question.to;
    read.input.findings.retain(|finding| finding.year().is_none_or(is_asked));
    let changes = follow::change(&read.input, &question);
    if asked.get_flag("json") {
        show::json_change(&read.input, &changes, words);
    } else if asked.get_flag("csv") {
        show::csv_change(&changes);
    } else {
        show::change(&read.input, &question, &changes, words, asked.get_flag("explain"));
    }
    if let Some(file) = text("picture") {
        let frame = Frame {
            title: words.word("picture-of-change"),
            description: changes.iter().map(|change| show::picture_told(change, words)).collect(),
            ..Frame::new("change", WIDTH, Palette::print())
        };
        let picture = tautline_figures::change::draw(&show::picture_of(&changes, words), &frame);
        std::fs::write(file, picture).map_err(|error| unwritable(file, &error, words))?;
        show::aside(&words.say(&Message::new("picture-written").with("file", file)));
    }
    write_page(asked, words, || tautline_report::changes(&read.input, &changes, words).page())?;
    let findings: Vec<Finding> =
        read.input.findings.iter().chain(changes.iter().flat_map(|one| &one.findings)).cloned().collect();
    Ok(status(&findings, changes.iter().all(|one| one.figures.is_empty())))
}

/// Options that mean nothing where only the readers or the years are set side by side.
const NOT_OF_READERS: [&str; 5] = ["csv", "explain", "method", "gap-classes", "on-the-level"];
const NOT_OF_SOURCES: [&str; 6] = ["csv", "explain", "method", "gap-classes", "on-the-level", "by"];
const NOT_OF_TRENDS: [&str; 6] = ["csv", "explain", "year", "method", "gap-classes", "on-the-level"];

/// The options of `tautline agree` beside those that all share.
pub(crate) fn agree_command(
    shared: &dyn Fn(&'static str, &'static str) -> Command,
    words: &Words,
) -> Command {
    without(shared("agree", "help-agree"), &NOT_OF_READERS)
        .arg(Arg::new("against").long("against").value_name("READER").help(words.word("help-against")))
        .arg(Arg::new("tolerance").long("tolerance").value_name("POINTS").help(words.word("help-tolerance")))
        .arg(report_option("help-agree-report", words))
        .arg(
            Arg::new("log")
                .long("log")
                .value_name("NOTEBOOK")
                .help(words.word("help-log"))
                .conflicts_with_all(["gap-rule", "count"]),
        )
        .args([
            Arg::new("judge").long("judge").value_name("NAME").help(words.word("help-judge")).requires("log"),
            Arg::new("author")
                .long("author")
                .value_name("NAME")
                .help(words.word("help-author"))
                .requires("log"),
        ])
        .subcommand(notebook::log_command(words))
        .subcommand(sources_command(shared("sources", "help-agree-sources"), words))
        .subcommand_negates_reqs(true)
        .args_conflicts_with_subcommands(true)
}

pub(crate) fn agree(asked: &ArgMatches, words: &Words, here: &mut Here) -> Done {
    match asked.subcommand() {
        Some(("log", asked)) => return notebook::show_log(asked, words, here),
        Some(("sources", asked)) => return sources(asked, words),
        _ => {}
    }
    refuse(asked, &NOT_OF_READERS, words)?;
    let (read, question) = readings(asked, words)?;
    let against = asked.get_one::<String>("against").map(String::as_str);
    let found = tautline_survey::agree::agreements(&read.input, &question, against);
    let tolerance = points_option(asked, "tolerance", words)?;
    if asked.get_flag("json") {
        show::json_agree(&read.input, &found, tolerance, words);
    } else {
        show::agreements(&read.input, &found, tolerance, words);
    }
    write_page(asked, words, || tautline_report::agreement(&read.input, &found, tolerance, words).page())?;
    let logged = notebook::log(asked, words, here, &read.input, &found, tolerance)?;
    let own = found.iter().map(|one| &one.findings).chain([&logged]);
    Ok(status(&findings_of(&read.input.findings, own), found.is_empty()))
}

/// The options of `tautline agree sources`.
fn sources_command(shared: Command, words: &Words) -> Command {
    let price = |name: &'static str| {
        Arg::new(name).long(name).value_name("MINUTES").help(words.word(&format!("help-{name}")))
    };
    without(shared, &NOT_OF_SOURCES).args(PRICES.map(price)).arg(report_option("help-sources-report", words))
}

/// What things cost.
const PRICES: [&str; 5] = ["walk", "lay", "read", "travel", "day"];

fn sources(asked: &ArgMatches, words: &Words) -> Done {
    refuse(asked, &NOT_OF_SOURCES, words)?;
    let mut given = [None; 5];
    for (given, name) in given.iter_mut().zip(PRICES) {
        let read = |found: &String| {
            let minutes = found.parse().ok().filter(|minutes: &f64| (0.0..=1e6).contains(minutes));
            minutes.ok_or_else(|| not_a_number(found, &format!("--{name}"), words))
        };
        *given = asked.get_one::<String>(name).map(read).transpose()?;
    }
    let prices = Prices::said(given);
    let (read, question) = readings(asked, words)?;
    let (doubt, found) = tautline_survey::agree::doubt(&read.input, &question, prices.as_ref());
    if asked.get_flag("json") {
        let say = |message: &Message| words.say(message);
        show::json(&tautline_survey::agree::sources_output(
            &read.input,
            doubt.as_ref().map_err(|why| *why),
            &found,
            &say,
        ));
    } else {
        show::doubt(&read.input, doubt.as_ref().map_err(|why| *why), &found, words);
    }
    write_page(asked, words, || {
        tautline_report::sources(&read.input, doubt.as_ref().map_err(|why| *why), &found, words).page()
    })?;
    Ok(status(&findings_of(&read.input.findings, [&found].into_iter()), doubt.is_err()))
}

/// The options of `tautline trend`.
pub(crate) fn trend_command(shared: Command, words: &Words) -> Command {
    without(shared, &NOT_OF_TRENDS).arg(report_option("help-trend-report", words))
}

pub(crate) fn trend(asked: &ArgMatches, words: &Words) -> Done {
    refuse(asked, &NOT_OF_TRENDS, words)?;
    let (read, question) = readings(asked, words)?;
    let found = tautline_survey::trend::trends(&read.input, &question);
    let region = tautline_survey::trend::region(&read.input, &found);
    if asked.get_flag("json") {
        show::json_trend(&read.input, &found, region.as_ref(), words);
    } else {
        show::trends(&read.input, &found, region.as_ref(), words);
    }
    write_page(asked, words, || tautline_report::trends(&read.input, &found, region.as_ref(), words).page())?;
    let nothing = found.iter().all(|one| one.figures.is_empty());
    Ok(status(&findings_of(&read.input.findings, found.iter().map(|one| &one.findings)), nothing))
}

fn findings_of<'a>(read: &'a [Finding], own: impl Iterator<Item = &'a Vec<Finding>>) -> Vec<Finding> {
    read.iter().chain(own.flatten()).cloned().collect()
}
