//! What can be asked on the command line, and what each call does.

use crate::exit::Exit;
use crate::progress::Progress;
use crate::{demo, explain, export, follow, here::Here, inputs, notebook, plan, practice, report, show};
use clap::{Arg, ArgAction, ArgMatches, Command};
use std::path::Path;
use tautline_engine::confidence::Method;
use tautline_engine::effort::sequential::Design;
use tautline_engine::length::{Bare, DecimalMark, Length};
use tautline_exchange::headings::heading;
use tautline_exchange::{Options, Read, delimited::goals, protocol};
use tautline_survey::assess::{By, Claim, Question, SiteGoal, assess, assess_and_tell};
use tautline_survey::check::check;
use tautline_survey::effort::sequential;
use tautline_survey::finding::Finding;
use tautline_survey::goal;
use tautline_survey::measure::Measure;
use tautline_survey::message::Message;
use tautline_survey::plants::GrowthForm;
use tautline_survey::protocol::{Counts, Protocol};
use tautline_words::Words;

/// The whole command, its help from the catalogue.
pub(crate) fn command(words: &Words) -> Command {
    let sub = |name: &'static str, help| Command::new(name).about(words.word(help));
    let flag = |name: &'static str, help| {
        Arg::new(name).long(name).help(words.word(help)).action(ArgAction::SetTrue)
    };
    let option = |name: &'static str, value: &'static str, help| {
        Arg::new(name).long(name).value_name(value).help(words.word(help))
    };
    let common = |command: Command| {
        command
            .arg(
                Arg::new("files")
                    .value_name("FILES")
                    .help(words.word("help-files"))
                    .num_args(1..)
                    .required(true),
            )
            .arg(flag("json", "help-json").conflicts_with("csv"))
            .arg(flag("csv", "help-csv"))
            .arg(option("protocol", "FILE|NAME", "help-protocol"))
            .arg(option("gap-rule", "LENGTH", "help-gap-rule"))
            .arg(option("count", "WHAT", "help-count"))
            .arg(option("line-length", "LENGTH", "help-line-length"))
            .arg(option("unit", "UNIT", "help-unit"))
            .arg(option("decimal", "MARK", "help-decimal").value_parser(["point", "comma"]))
            .arg(option("site", "NAME", "help-site"))
            .arg(notebook::headings(words))
            .arg(option("year", "YEAR", "help-year"))
            .arg(option("confidence", "PERCENT", "help-confidence"))
            .arg(option("method", "METHOD", "help-method").value_parser([
                "logit-t-effective",
                "logit-t",
                "student-t",
                "bca",
            ]))
            .arg(flag("use-partly-read", "help-use-partly-read"))
            .arg(flag("on-the-level", "help-on-the-level"))
    };
    let or_notebook = |command: Command| {
        common(command)
            .mut_arg("files", |files| files.required(false).required_unless_present("notebook"))
            .arg(notebook::in_place_of_files(words))
    };
    let shared = |command: Command| {
        or_notebook(command)
            .arg(flag("explain", "help-explain"))
            .arg(option("gap-classes", "LENGTHS", "help-gap-classes"))
            .arg(option("by", "WHAT", "help-by").value_parser(["species", "form", "group"]))
    };
    let sequential = option("sequential", "“5 to 30”", "help-sequential");
    let assess = judging(shared(sub("assess", "help-assess")), words)
        .args([option("report", "FILE", "help-report"), sequential]);
    let sites = or_notebook(sub("sites", "help-sites")).args([goal(words), where_present(words)]);
    let reading = |command| notebook::reading(command, words);
    let files = Arg::new("files")
        .value_name("FILES")
        .help(words.word("help-files"))
        .num_args(1..)
        .required_unless_present("notebook");
    let sheet =
        reading(sub("sheet", "help-sheet").arg(files.clone()).arg(notebook::in_place_of_files(words)));
    let check = reading(
        sub("check", "help-check")
            .arg(files)
            .arg(notebook::in_place_of_files(words))
            .arg(flag("json", "help-json").conflicts_with("csv"))
            .arg(flag("csv", "help-check-csv")),
    );
    let demo = sub("demo", "help-demo")
        .arg(Arg::new("folder").value_name("DIR").help(words.word("help-demo-folder")).default_value("demo"))
        .arg(option("seed", "NUMBER", "help-seed"));
    let shells = ["bash", "elvish", "fish", "powershell", "zsh"];
    let completions = sub("completions", "help-completions")
        .arg(Arg::new("shell").help(words.word("help-shell")).required(true).value_parser(shells));
    let whole = Command::new("tautline")
        .version(env!("CARGO_PKG_VERSION"))
        .about(words.word("help-tautline"))
        .after_help(words.word("help-exit"))
        .term_width(100)
        .arg(option("language", "LANGUAGE", "help-language").global(true))
        .subcommand_required(true)
        .arg_required_else_help(true)
        .subcommand(
            shared(sub("cover", "help-cover")).arg(flag("work", "help-work")).arg(flag("gaps", "help-gaps")),
        )
        .subcommand(report::command(judging(shared(sub("report", "help-report-of")), words), words))
        .subcommand(assess)
        .subcommand(sites)
        .subcommand(follow::change_command(shared(sub("change", "help-change")), words))
        .subcommand(follow::trend_command(shared(sub("trend", "help-trend")), words).arg(goal(words)))
        .subcommand(follow::agree_command(&|name, help| shared(sub(name, help)), words))
        .subcommands([check, sheet])
        .subcommands(notebook::commands(words))
        .subcommands([demo, export::command(words)])
        .subcommand(plan::command(words, shared(sub("effort", "help-plan-effort"))))
        .subcommand(practice::command(words))
        .subcommand(explain::command(words))
        .subcommand(sub("protocols", "help-protocols"))
        .subcommand(completions)
        .subcommand(sub("man", "help-man"));
    with_server(whole, words)
}

#[cfg(feature = "serve")]
fn with_server(whole: Command, words: &Words) -> Command {
    whole.subcommand(crate::serve::command(words))
}

#[cfg(not(feature = "serve"))]
fn with_server(whole: Command, _: &Words) -> Command {
    whole
}

fn goal(words: &Words) -> Arg {
    Arg::new("goal").long("goal").value_name("GOAL").help(words.word("help-goal")).action(ArgAction::Append)
}

fn where_present(words: &Words) -> Arg {
    Arg::new("where-present")
        .long("where-present")
        .value_name("PERCENT")
        .help(words.word("help-where-present"))
}

/// The options of a call that judges sites.
fn judging(command: Command, words: &Words) -> Command {
    let claim = Arg::new("claim").long("claim").value_name("WHAT").help(words.word("help-claim"));
    command.args([goal(words), claim.value_parser(["site", "plot"]), where_present(words)])
}

/// Does what was asked.
pub(crate) fn run(matches: &ArgMatches, words: &Words) -> Exit {
    let done = match matches.subcommand() {
        Some(("cover", asked)) => cover(asked, words),
        Some(("assess", asked)) => assess_sites(asked, words),
        Some(("report", asked)) => report::report(asked, words),
        Some(("sites", asked)) => crate::sites::sites(asked, words),
        Some(("change", asked)) => follow::change(asked, words),
        Some(("trend", asked)) => follow::trend(asked, words),
        Some(("agree", asked)) => follow::agree(asked, words, &mut Here::real()),
        Some(("check", asked)) => check_readings(asked, words),
        Some(("sheet", asked)) => sheet(asked, words),
        Some(("demo", asked)) => write_demo(asked, words),
        Some(("export", asked)) => export::run(asked, words),
        Some(("plan", asked)) => plan::run(asked, words, &mut Here::real()),
        Some(("practice", asked)) => practice::run(asked, words),
        Some(("explain", asked)) => explain::run(asked, words),
        Some(("protocols", _)) => {
            show::protocols(words);
            Ok(Exit::Well)
        }
        Some(("completions", asked)) => Ok(completions(asked, words)),
        #[cfg(feature = "serve")]
        Some(("serve", asked)) => crate::serve::serve(asked, words),
        Some((name, asked)) if name != "man" => notebook::run(name, asked, words, &mut Here::real()),
        _ => man(words),
    };
    done.unwrap_or_else(|(text, exit)| {
        show::refusal(&text);
        exit
    })
}

/// How a call ended, or why it came to nothing.
pub(crate) type Done = Result<Exit, (String, Exit)>;

fn cover(asked: &ArgMatches, words: &Words) -> Done {
    let (read, question) = readings(asked, words)?;
    if asked.get_flag("json") {
        show::json_cover(&read.input, &question, words);
    } else if asked.get_flag("csv") {
        show::csv_cover(&read.input, &question);
    } else {
        let asked = |flag| asked.get_flag(flag);
        let beside = show::Beside { gaps: asked("gaps"), work: asked("work"), explain: asked("explain") };
        show::cover(&read.input, &question, words, &beside);
    }
    Ok(status(&read.input.findings, read.input.visits.is_empty()))
}

fn assess_sites(asked: &ArgMatches, words: &Words) -> Done {
    let (read, question) = readings(asked, words)?;
    let progress = Progress::new("progress-working", words);
    let assessments = assess_and_tell(&read.input, &question, |done, of| progress.tell(done, of));
    drop(progress);
    if asked.get_flag("json") {
        show::json_assess(&read.input, &assessments, words);
    } else if asked.get_flag("csv") {
        show::csv_assess(&assessments);
    } else {
        show::assess(&read.input, &assessments, words, asked.get_flag("explain"));
    }
    if let Some(file) = asked.get_one::<String>("report") {
        report::write_beside(file, asked, &read.input, &question, &assessments, words)?;
        show::aside(&words.say(&Message::new("report-written").with("file", file.as_str())));
    }
    let findings: Vec<Finding> =
        read.input.findings.iter().chain(assessments.iter().flat_map(|one| &one.findings)).cloned().collect();
    Ok(status(&findings, assessments.iter().all(|one| one.figures.is_empty())))
}

/// A finding that is only worth a look may be right, so that it ends well.
fn check_readings(asked: &ArgMatches, words: &Words) -> Done {
    let for_a_program = asked.get_flag("json") || asked.get_flag("csv");
    let input = files_read_as(asked, words, |options| options.every_finding = for_a_program)?.input;
    if asked.get_flag("json") {
        show::json_check(&input, words);
    } else if asked.get_flag("csv") {
        show::csv_check(&input, words);
    } else {
        show::check(&input, words);
    }
    Ok(status(&input.findings, input.visits.is_empty()))
}

/// What was read, as a typed sheet.
fn sheet(asked: &ArgMatches, words: &Words) -> Done {
    let input = files_read(asked, words)?.input;
    let printed = tautline_exchange::sheet::print(&input);
    show::print_all(&printed.text);
    let nothing = input.visits.is_empty() && input.plan.is_empty();
    let findings: Vec<Finding> = input.findings.into_iter().chain(printed.left_out).collect();
    show::findings_aside(&findings, words);
    Ok(status(&findings, nothing))
}

/// The exit status that findings come to.
pub(crate) fn status(findings: &[Finding], nothing: bool) -> Exit {
    if nothing {
        Exit::Nothing
    } else if findings.iter().any(Finding::holds_back) {
        Exit::MustSettle
    } else {
        Exit::Well
    }
}

/// Why a file was not written.
pub(crate) fn unwritable(file: &str, error: &std::io::Error, words: &Words) -> (String, Exit) {
    let message = Message::new("file-unwritable").with("file", file).with("why", error.to_string());
    (words.say(&message), Exit::File)
}

fn write_demo(asked: &ArgMatches, words: &Words) -> Done {
    let folder = asked.get_one::<String>("folder").map_or("demo", String::as_str);
    let seed = match asked.get_one::<String>("seed") {
        Some(text) => text.parse().map_err(|_| not_a_number(text, "--seed", words))?,
        None => tautline_demo::SEED,
    };
    let drawn = tautline_demo::draw(seed);
    demo::write(Path::new(folder), &drawn).map_err(|error| unwritable(folder, &error, words))?;
    let within = |name: &str| Path::new(folder).join(name).display().to_string();
    let readme = within(&drawn.readme.name);
    show::line(&words.say(&Message::new("demo-written").with("folder", folder).with("readme", readme)));
    let read = tautline_exchange::read(&inputs::sources(&[folder.to_owned()], words)?, &Options::default());
    show::truth(&assess(&read.input, &Question::default()), drawn.site, &drawn.known, words);
    show::line(&words.say(&Message::new("truth-is-in").with("file", within(tautline_demo::TRUTH))));
    Ok(Exit::Well)
}

fn completions(asked: &ArgMatches, words: &Words) -> Exit {
    let shell = asked.get_one::<String>("shell").and_then(|name| name.parse::<clap_complete::Shell>().ok());
    let shell = shell.unwrap_or(clap_complete::Shell::Bash);
    clap_complete::generate(shell, &mut command(words), "tautline", &mut std::io::stdout());
    Exit::Well
}

fn man(words: &Words) -> Done {
    let page = clap_mangen::Man::new(command(words));
    page.render(&mut std::io::stdout()).map_err(|error| unwritable("-", &error, words))?;
    Ok(Exit::Well)
}

/// What bare numbers mean and how decimals are marked, as far as the call says it.
fn writing(asked: &ArgMatches, words: &Words) -> Result<(Option<Bare>, Option<DecimalMark>), (String, Exit)> {
    let text = |name: &str| asked.get_one::<String>(name).map(String::as_str);
    let mark =
        text("decimal").map(|mark| if mark == "comma" { DecimalMark::Comma } else { DecimalMark::Point });
    let unit = text("unit").map(|found| {
        Bare::from_words(found).ok_or_else(|| {
            (words.say(&Message::new("option-not-a-unit").with("found", found)), Exit::NotUnderstood)
        })
    });
    Ok((unit.transpose()?, mark))
}

/// A length given as an option.
pub(crate) fn length_option(
    asked: &ArgMatches,
    name: &str,
    words: &Words,
) -> Result<Option<Measure>, (String, Exit)> {
    let (unit, mark) = writing(asked, words)?;
    let read = |found: &String| {
        Measure::read(found, unit, mark.unwrap_or_default()).map_err(|_| not_a_number(found, name, words))
    };
    asked.get_one::<String>(name).map(read).transpose()
}

/// The files as they were named.
pub(crate) fn files(asked: &ArgMatches) -> Vec<String> {
    asked.get_many::<String>("files").into_iter().flatten().cloned().collect()
}

/// What an office writes over its columns, as the call says it.
fn headings(asked: &ArgMatches, words: &Words) -> Result<Vec<(String, String)>, (String, Exit)> {
    let said = asked.get_many::<String>("heading").into_iter().flatten();
    let pair = |found: &String| match found.split_once('=') {
        Some((theirs, ours)) if !theirs.trim().is_empty() && heading(ours).column.is_some() => {
            Ok((theirs.trim().to_owned(), ours.trim().to_owned()))
        }
        _ => {
            let message = Message::new("option-heading").with("found", found.as_str());
            Err((words.say(&message), Exit::NotUnderstood))
        }
    };
    said.map(pair).collect()
}

/// How the files are to be read.
pub(crate) fn reading(asked: &ArgMatches, words: &Words) -> Result<Options, (String, Exit)> {
    let text = |name: &str| asked.get_one::<String>(name).map(String::as_str);
    let (unit, mark) = writing(asked, words)?;
    Ok(Options {
        unit,
        mark,
        site: text("site").map(str::to_owned),
        line_length: length_option(asked, "line-length", words)?,
        protocol: text("protocol").map(|name| protocol_named(name, words)).transpose()?,
        known_protocols: Vec::new(),
        headings: headings(asked, words)?,
        every_finding: false,
        on_wgs84: Some(tautline_ground::datum::pair_on_wgs84),
    })
}

/// The files or the notebook, read and looked through.
pub(crate) fn files_read(asked: &ArgMatches, words: &Words) -> Result<Read, (String, Exit)> {
    files_read_as(asked, words, |_| ())
}

/// The same, with more to be said of how files are to be read.
fn files_read_as(
    asked: &ArgMatches,
    words: &Words,
    also: impl FnOnce(&mut Options),
) -> Result<Read, (String, Exit)> {
    let mut read = if let Some(file) = asked.get_one::<String>("notebook") {
        notebook::read(file, words)?
    } else {
        let mut options = reading(asked, words)?;
        also(&mut options);
        tautline_exchange::read(&inputs::sources(&files(asked), words)?, &options)
    };
    check(&mut read.input);
    Ok(read)
}

/// The files, read and looked through, and everything asked of them.
pub(crate) fn readings(asked: &ArgMatches, words: &Words) -> Result<(Read, Question), (String, Exit)> {
    let mut read = files_read(asked, words)?;
    let mut question = question(asked, words)?;
    if question.year.is_some() {
        read.input.findings.retain(|finding| finding.year().is_none_or(|year| Some(year) == question.year));
    }
    if question.goals.is_empty() {
        question.goals = core::mem::take(&mut read.goals);
    }
    Ok((read, question))
}

/// Everything asked of the readings; goals that stand in the files are not among it yet.
pub(crate) fn question(asked: &ArgMatches, words: &Words) -> Result<Question, (String, Exit)> {
    // not every call has every option
    let text = |name: &str| asked.try_get_one::<String>(name).ok().flatten().map(String::as_str);
    let (unit, mark) = writing(asked, words)?;
    let length = |name| length_option(asked, name, words);
    let mut question = Question::default();
    question.choice.gap_limit = length("gap-rule")?.map(|measure| measure.length());
    question.choice.gap_breaks = text("gap-classes")
        .map(|found| {
            gap_breaks(found, unit, mark.unwrap_or_default())
                .ok_or_else(|| not_a_number(found, "--gap-classes", words))
        })
        .transpose()?;
    question.choice.counts = text("count").map(counts);
    question.choice.on_the_level = asked.get_flag("on-the-level");
    question.use_partly_read = asked.get_flag("use-partly-read");
    question.year =
        text("year").map(|year| year.parse().map_err(|_| not_a_number(year, "--year", words))).transpose()?;
    if let Some(found) = text("confidence") {
        question.confidence_per_mille =
            goal::read_confidence(found, mark.unwrap_or_default()).ok_or_else(|| {
                (words.say(&Message::new("option-confidence").with("found", found)), Exit::NotUnderstood)
            })?;
    }
    question.method = text("method").map(|method| match method {
        "student-t" => Method::StudentT,
        "bca" => Method::Bca,
        "logit-t" => Method::LogitT,
        _ => Method::LogitEffective,
    });
    question.by = match text("by") {
        Some("species") => By::Species,
        Some("form") => By::Form,
        Some("group") => By::Group,
        _ => By::Nothing,
    };
    // `cover` has no goals and no claim
    if asked.try_contains_id("goal").is_ok() {
        for text in asked.get_many::<String>("goal").into_iter().flatten() {
            let goal = goal::read(text, mark.unwrap_or_default())
                .map_err(|error| (words.say(&goals::finding(&error).message), Exit::NotUnderstood))?;
            question.goals.push(SiteGoal { site: None, goal });
        }
        if text("claim") == Some("plot") {
            question.claim = Claim::Plot;
        }
        if let Some(found) = text("sequential") {
            let read = sequential::read(found, 1.0 - question.confidence());
            let design = read.and_then(Design::of).ok_or_else(|| {
                (words.say(&Message::new("option-sequential").with("found", found)), Exit::NotUnderstood)
            })?;
            question.sequential = Some(design);
        }
        question.cover_where_present = text("where-present")
            .map(|found| {
                percent(found).map(|p| p / 100.0).ok_or_else(|| not_a_number(found, "--where-present", words))
            })
            .transpose()?;
    }
    Ok(question)
}

pub(crate) fn percent(text: &str) -> Option<f64> {
    text.trim_end_matches('%').trim().parse().ok().filter(|number: &f64| (0.0..=100.0).contains(number))
}

pub(crate) fn not_a_number(found: &str, option: &str, words: &Words) -> (String, Exit) {
    let message = Message::new("option-not-a-number").with("found", found).with("option", option);
    (words.say(&message), Exit::NotUnderstood)
}

/// A number of days.
pub(crate) fn days_option(
    asked: &ArgMatches,
    name: &'static str,
    words: &Words,
) -> Result<Option<u32>, (String, Exit)> {
    let read =
        |found: &String| found.trim().parse().map_err(|_| not_a_number(found, &format!("--{name}"), words));
    asked.get_one::<String>(name).map(read).transpose()
}

/// Lengths with semicolons or commas, rising; the last one's unit is also that of those without.
fn gap_breaks(text: &str, unit: Option<Bare>, mark: DecimalMark) -> Option<Vec<Length>> {
    let parts: Vec<&str> = text.split([';', ',']).map(str::trim).collect();
    let last = parts.last()?.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.').trim();
    let unit = Bare::from_words(last).or(unit);
    let breaks: Option<Vec<Length>> = parts
        .iter()
        .map(|part| Measure::read(part, unit, mark).ok().map(|measure| measure.length()))
        .collect();
    breaks.filter(|breaks| breaks.windows(2).all(|pair| pair[0] < pair[1]))
}

/// Growth forms and plant codes, with commas; `woody` for the woody forms.
fn counts(text: &str) -> Counts {
    let mut counts = Counts::default();
    for word in text.split(',').map(str::trim).filter(|word| !word.is_empty()) {
        if word.eq_ignore_ascii_case("woody") {
            counts.forms.extend(Counts::woody().forms);
        } else if let Some(form) = GrowthForm::from_word(word) {
            counts.forms.push(form);
        } else {
            counts.also.push(word.to_uppercase());
        }
    }
    counts
}

/// A protocol file, or a shipped protocol by name.
pub(crate) fn protocol_named(name: &str, words: &Words) -> Result<Protocol, (String, Exit)> {
    if let Some(shipped) = protocol::find(name) {
        return Ok(shipped);
    }
    let source = inputs::file(name, words)?;
    let decoded = tautline_exchange::text::decode(&source.bytes)
        .map_err(|_| (words.say(&Message::new("file-not-text").with("file", name)), Exit::NotUnderstood))?;
    let (protocol, findings) = protocol::read(name, &decoded.text);
    match findings.first() {
        None => Ok(protocol),
        Some(finding) => Err((words.say(&finding.words()), Exit::NotUnderstood)),
    }
}
