//! What the command prints: tables that fit 100 columns, findings, chains, and data.

mod benchmarks;
mod chain;
mod check;
mod data;
mod doubt;
mod follow;
mod layout;
mod log;
mod notebook;
mod openings;
mod paper;
mod place;
mod plan;
mod practice;
mod promised;
mod readers;
mod sentences;
mod sites;
mod table;
mod trend;

pub(crate) use benchmarks::benchmarks;
pub(crate) use check::{check, csv_check, json_check};
pub(crate) use data::{csv_assess, csv_cover, json, json_assess, json_cover};
pub(crate) use doubt::doubt;
pub(crate) use follow::{change, csv_change, json_change, picture_of, picture_told};
pub(crate) use layout::layout;
pub(crate) use log::{csv_log, log};
pub(crate) use notebook::{
    actions, conflicts, devices, findings_too, imported, joined, photo, photos, record_history, records,
    would_join,
};
pub(crate) use place::{practice_plants, practice_sight, practice_starts};
pub(crate) use plan::{effort, sequential};
pub(crate) use practice::{
    practice_class, practice_drill, practice_line, practice_progress, practice_sheets,
};
pub(crate) use promised::{open_parts, promised};
pub(crate) use readers::{agreements, json_agree};
pub(crate) use sites::{csv_sites, json_sites, sites};
pub(crate) use trend::{json_trend, trends};

use anstream::{eprintln, println};
use anstyle::{AnsiColor, Style};
use sentences::verdict;
use table::Table;
use tautline_engine::estimate::SamplingError;
use tautline_engine::length::{Notation, Unit, write};
use tautline_survey::assess::{Assessment, Figure, Question};
use tautline_survey::explain::{confidence_value, figure_value, figure_words};
use tautline_survey::finding::{Finding, Weight, few};
use tautline_survey::input::Input;
use tautline_survey::line::{Bounds, LineResult, Recording, line_result};
use tautline_survey::message::{Message, Value};
use tautline_words::{Words, visible};

const STRONG: Style = Style::new().bold();
const QUIET: Style = Style::new().dimmed();
const SETTLE: Style = AnsiColor::Red.on_default().bold();
const LOOK: Style = AnsiColor::Yellow.on_default();

/// One line of output.
pub(crate) fn line(text: &str) {
    println!("{text}");
}

/// A whole text that ends its own lines.
pub(crate) fn print_all(text: &str) {
    use std::io::{IsTerminal, Write};
    let mut out = std::io::stdout().lock();
    let shown = if out.is_terminal() { visible(text) } else { text.into() };
    // a reader that closes early, such as head, has what it wanted
    let _ = out.write_all(shown.as_bytes());
}

/// Something beside the result: to standard error.
pub(crate) fn aside(text: &str) {
    eprintln!("{text}");
}

/// Why nothing was done.
pub(crate) fn refusal(text: &str) {
    eprintln!("{SETTLE}{text}{SETTLE:#}");
}

fn title(text: &str) {
    println!("\n{STRONG}{}{STRONG:#}", visible(text));
}

/// A text broken at spaces so that it fits, later rows indented.
fn wrapped(text: &str, indent: usize) {
    for row in table::wrap(&visible(text), table::WIDTH - indent) {
        println!("{:indent$}{row}", "");
    }
}

fn findings(findings: &[Finding], words: &Words) {
    for row in finding_rows(findings, words) {
        println!("{row}");
    }
}

/// Findings beside a result that another program may read: to standard error.
pub(crate) fn findings_aside(findings: &[Finding], words: &Words) {
    for row in finding_rows(findings, words) {
        eprintln!("{row}");
    }
}

/// Findings by weight, each with its place, and with its row where a character of it is meant.
fn finding_rows(findings: &[Finding], words: &Words) -> Vec<String> {
    let kinds = [
        (Weight::MustSettle, "heading-must-settle", SETTLE),
        (Weight::HaveALook, "heading-have-a-look", LOOK),
        (Weight::Note, "heading-note", QUIET),
    ];
    let mut rows = Vec::new();
    for (weight, heading, style) in kinds {
        let own = few(findings.iter().filter(|finding| finding.weight == weight));
        if !own.is_empty() {
            rows.push(format!("\n{style}{}{style:#}", words.word(heading)));
        }
        for finding in own {
            let said = table::wrap(&words.say(&finding.words()), table::WIDTH - 2);
            rows.extend(said.iter().map(|row| format!("  {row}")));
            let picture = finding.excerpt.iter().flat_map(|excerpt| tautline_words::picture(excerpt));
            rows.extend(picture.map(|row| format!("    {row}")));
        }
    }
    rows
}

/// The shipped protocols.
pub(crate) fn protocols(words: &Words) {
    for (key, protocol) in tautline_exchange::protocol::shipped() {
        title(key);
        wrapped(&protocol.name, 2);
        wrapped(&protocol.source, 2);
        if protocol.from_memory {
            wrapped(&words.word("from-memory"), 2);
        }
    }
}

fn protocol_notes(input: &Input, lines: &[LineResult], words: &Words) {
    let mut prints: Vec<&str> = lines.iter().map(|line| line.protocol.as_str()).collect();
    prints.sort_unstable();
    prints.dedup();
    for print in prints {
        println!();
        wrapped(&words.say(&tautline_survey::explain::protocol_words(input, print)), 0);
        let Some(first) = lines.iter().find(|line| line.protocol == print) else { continue };
        if !first.assumed.is_empty() {
            let taken: Vec<String> = first.assumed.iter().map(|one| words.assumption(one)).collect();
            wrapped(&format!("{} {}", words.word("title-assumed"), taken.join("; ")), 2);
        }
    }
}

/// What is printed of each line beside its cover.
pub(crate) struct Beside {
    /// Its gaps.
    pub(crate) gaps: bool,
    /// The arithmetic on paper.
    pub(crate) work: bool,
    /// The chain down to the readings.
    pub(crate) explain: bool,
}

/// Cover of each line.
pub(crate) fn cover(input: &Input, question: &Question, words: &Words, beside: &Beside) {
    let (lines, found) = lines_of(input, question);
    let mut last: Option<(&str, Option<u16>)> = None;
    let mut rows: Option<Table> = None;
    for result in &lines {
        let round = (result.site.as_str(), result.date.map(tautline_survey::date::Date::year));
        if last != Some(round) {
            if let Some(table) = rows.take() {
                table.print();
            }
            title(&site_title(round.0, round.1, None, words));
            rows = Some(Table::new(&headings(words)));
            last = Some(round);
        }
        if let Some(table) = &mut rows {
            table.row(line_row(result, input, words));
            for (name, bounds, composition) in parts(result, question, words) {
                let of_sum = composition.map(|share| {
                    words.say(&Message::new("of-the-sum").with("share", Value::Share(share, 0)))
                });
                let cover = cover_words(result, bounds, words);
                table.row(vec![format!("  {name}"), String::new(), cover, of_sum.unwrap_or_default()]);
            }
        }
    }
    if let Some(table) = rows {
        table.print();
    }
    protocol_notes(input, &lines, words);
    check::of_input(input, found, words);
    for result in &lines {
        if beside.gaps {
            openings::gaps(input, result, words);
        }
        if beside.work {
            paper::work(input, result, words);
        }
        if beside.explain {
            chain::line(input, result, words);
        }
    }
    if lines.is_empty() {
        wrapped(&words.word("no-lines"), 0);
    }
}

/// Every visit worked out, sorted by site, year and line, and what is to be said.
fn lines_of(input: &Input, question: &Question) -> (Vec<LineResult>, Vec<Finding>) {
    let mut lines = Vec::new();
    let mut found = Vec::new();
    for index in 0..input.visits.len() {
        let year = input.visits[index].date.map(tautline_survey::date::Date::year);
        if question.year.is_some() && year != question.year {
            continue;
        }
        match line_result(input, index, &question.choice) {
            Ok(mut result) => {
                found.append(&mut result.findings);
                lines.push(result);
            }
            // what the checks have said already isn't said again
            Err(finding) if input.findings.contains(&finding) => {}
            Err(finding) => found.push(finding),
        }
    }
    lines.sort_by(|a, b| {
        let year = |line: &LineResult| line.date.map(tautline_survey::date::Date::year);
        a.site
            .cmp(&b.site)
            .then_with(|| year(a).cmp(&year(b)))
            .then_with(|| tautline_survey::assess::natural_order(&a.line, &b.line))
            .then_with(|| a.pass.cmp(&b.pass))
    });
    (lines, found)
}

fn headings(words: &Words) -> Vec<String> {
    ["line", "length", "canopy", "sum", "dead", "closed", "recorded", "reader"]
        .iter()
        .map(|name| words.word(&format!("column-{name}")))
        .collect()
}

fn line_row(result: &LineResult, input: &Input, words: &Words) -> Vec<String> {
    let (count, closed) = result.closed();
    let closed = if count == 0 {
        String::new()
    } else {
        let shown = Value::Length(closed, coarse(result.notation(input)));
        words.say(&Message::new("closed-count").with("count", count).with("length", shown))
    };
    let recorded = match result.recording {
        Recording::Positions => "positions",
        Recording::LengthsOnly => "lengths-only",
        Recording::NothingFound => "nothing-found-on-line",
    };
    let reader = [result.reader.as_str(), result.pass.as_str()];
    let reader: Vec<&str> = reader.into_iter().filter(|part| !part.is_empty()).collect();
    vec![
        result.line.clone(),
        write(result.length.length(), result.length.notation()),
        cover_words(result, result.canopy, words),
        cover_words(result, result.sum, words),
        if result.dead == Bounds::default() {
            String::new()
        } else {
            cover_words(result, result.dead, words)
        },
        closed,
        if result.unsettled {
            words.say(&Message::new("to-settle").with("recorded", words.word(recorded)))
        } else {
            words.word(recorded)
        },
        reader.join(", "),
    ]
}

/// What `--by` asks for on a line; species with their composition by cover.
fn parts(result: &LineResult, question: &Question, words: &Words) -> Vec<(String, Bounds, Option<f64>)> {
    use tautline_survey::assess::By;
    match question.by {
        By::Nothing => Vec::new(),
        By::Species => {
            result.species.iter().map(|one| (one.code.clone(), one.live, one.composition)).collect()
        }
        By::Form => {
            result.forms.iter().map(|(form, bounds)| (words.word(form.word()), *bounds, None)).collect()
        }
        By::Group => result.groups.iter().map(|(group, bounds)| (group.clone(), *bounds, None)).collect(),
    }
}

fn cover_words(result: &LineResult, bounds: Bounds, words: &Words) -> String {
    between(
        result.share(bounds.low),
        result.share(bounds.high),
        bounds.is_known(),
        |share| words.percent(share, 1),
        words,
    )
}

fn between(low: f64, high: f64, known: bool, show: impl Fn(f64) -> String, words: &Words) -> String {
    if known {
        return show(low);
    }
    words.say(&Message::new("between-ends").with("low", show(low)).with("high", show(high)))
}

/// A notation for sums in a narrow column: whole millimetres become centimetres.
fn coarse(notation: Notation) -> Notation {
    match notation.unit {
        Unit::Metre | Unit::Decimetre => Notation::decimals(Unit::Centimetre, 0),
        Unit::Foot => Notation::decimals(Unit::Foot, 2),
        _ => notation,
    }
}

fn site_title(site: &str, year: Option<u16>, plot: Option<&str>, words: &Words) -> String {
    let site = match year {
        Some(year) => {
            words.say(&Message::new("title-site-year").with("site", site).with("year", year.to_string()))
        }
        None => words.say(&Message::new("title-site").with("site", site)),
    };
    match plot {
        Some(plot) => words.say(&Message::new("title-site-plot").with("site", site).with("plot", plot)),
        None => site,
    }
}

/// Estimates and verdicts of each site.
pub(crate) fn assess(input: &Input, assessments: &[Assessment], words: &Words, explain: bool) {
    check::of_input(input, Vec::new(), words);
    for assessment in assessments {
        title(&site_title(&assessment.site, assessment.year, assessment.plot.as_deref(), words));
        for judgement in &assessment.judgements {
            let said = verdict(assessment, judgement, words);
            println!();
            for (number, text) in said.iter().enumerate() {
                if number == 0 {
                    println!("{STRONG}{text}{STRONG:#}");
                } else {
                    wrapped(text, 2);
                }
            }
        }
        promised::answers(&assessment.promises, words);
        println!();
        let mut table = Table::new(&figure_headings(assessment, words));
        for figure in &assessment.figures {
            let composition = assessment.composition(figure).map(|share| words.percent(share, 0));
            let mut row = figure_row(figure, words);
            row.push(composition.unwrap_or_default());
            table.row(row);
        }
        table.print();
        for figure in assessment.figures.iter().take(1) {
            for part in
                figure.parts.iter().filter_map(|part| part.effective.as_ref().map(|worth| (part, worth)))
            {
                let message = Message::new("worth-effective")
                    .with("lines", part.0.estimate.lines)
                    .with("plots", part.0.estimate.units)
                    .with("effective", Value::Number(part.1.effective, 1));
                wrapped(&words.say(&message), 0);
            }
        }
        protocol_notes(input, &assessment.lines, words);
        findings(&assessment.findings, words);
        if explain {
            chain::site(input, assessment, words);
        }
    }
    if assessments.iter().all(|assessment| assessment.figures.is_empty()) {
        wrapped(&words.word("nothing-worked-out"), 0);
    }
}

/// What the readings of a demo say beside what is known to grow there.
pub(crate) fn truth(assessments: &[Assessment], site: &str, known: &[(u16, f64)], words: &Words) {
    let headings = ["column-year", "column-canopy", "column-se", "column-truth", "column-caught"];
    let mut headings: Vec<String> = headings.iter().map(|code| words.word(code)).collect();
    let Some(first) = assessments.first() else { return };
    let confidence = confidence_value(first.confidence);
    headings.insert(3, words.say(&Message::new("column-interval").with("confidence", confidence)));
    let mut table = Table::new(&headings);
    for &(year, truth) in known {
        let own = assessments.iter().find(|one| one.site == site && one.year == Some(year));
        let Some(figure) = own.and_then(|one| one.figures.first()) else { continue };
        let caught = figure.interval.is_ok_and(|both| both.low <= truth && truth <= both.high);
        let mut row = figure_row(figure, words);
        row[0] = year.to_string();
        row.truncate(4);
        row.extend([words.percent(truth, 1), words.word(if caught { "caught" } else { "missed" })]);
        table.row(row);
    }
    title(&words.say(&Message::new("title-truth").with("site", site)));
    table.print();
    println!();
}

fn figure_headings(assessment: &Assessment, words: &Words) -> Vec<String> {
    let interval =
        Message::new("column-interval").with("confidence", confidence_value(assessment.confidence));
    vec![
        words.word("column-what"),
        words.word("column-cover"),
        words.word("column-se"),
        words.say(&interval),
        words.word("column-n"),
        words.word("column-composition"),
    ]
}

fn figure_row(figure: &Figure, words: &Words) -> Vec<String> {
    let show = |value: f64| words.value(&figure_value(value, figure.attribute));
    let [low, high] = figure.ends();
    let se = match figure.estimate.error {
        SamplingError::Known { se, .. } => show(se),
        SamplingError::Unknown(_) => "–".to_owned(),
    };
    let interval = match figure.interval {
        Ok(interval) => between(interval.low, interval.high, false, show, words),
        Err(reason) => words.word(reason.code()),
    };
    let n = if figure.estimate.method.counts_plots() { "units-plots" } else { "units-lines" };
    let n = Message::new(n).with("lines", figure.estimate.lines).with("units", figure.estimate.units);
    vec![
        words.say(&figure_words(&figure.subject, figure.attribute)),
        between(low.value, high.value, figure.high.is_none(), show, words),
        se,
        interval,
        words.say(&n),
    ]
}
