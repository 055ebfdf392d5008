//! Change between two years: sentences, tables, data, and what a picture of it holds.

use super::table::Table;
use super::{STRONG, findings, protocol_notes, title, wrapped};
use anstream::println;
use tautline_engine::estimate::SamplingError;
use tautline_engine::length::{Length, Unit};
use tautline_engine::num::decimal::shortest;
use tautline_engine::stretch::{Stretch, total};
use tautline_exchange::table::row;
use tautline_figures::change::{Line, Lines, Words as Marks};
use tautline_survey::explain::{confidence_value, subject_words};
use tautline_survey::follow::{
    ChangeFigure, ChangeQuestion, Design, Noted, SiteChange, TapeChange, chain, output, readers_words,
    sentences, untreated_words,
};
use tautline_survey::goal::Subject;
use tautline_survey::input::Input;
use tautline_survey::line::LineResult;
use tautline_survey::message::{Message, Value};
use tautline_words::Words;

/// The change of every site.
pub(crate) fn change(
    input: &Input,
    question: &ChangeQuestion,
    changes: &[SiteChange],
    words: &Words,
    explain: bool,
) {
    findings(&input.findings, words);
    for change in changes {
        title(&words.say(&site_years("title-change", change)));
        println!();
        if let Some(figure) = change.figures.first() {
            for (number, message) in sentences(change, figure).iter().enumerate() {
                let text = capital(&words.say(message));
                if number == 0 {
                    println!("{STRONG}{text}{STRONG:#}");
                } else {
                    wrapped(&text, 2);
                }
            }
        }
        for message in readers_words(change) {
            wrapped(&words.say(&message), 2);
        }
        for message in change.beyond.iter().flat_map(|beyond| untreated_words(change, beyond)) {
            wrapped(&words.say(&message), 2);
        }
        println!();
        figures(change, words);
        wrapped(&words.word("points-of-cover"), 0);
        strata(change, words);
        on_the_tape(change, words);
        let years = [change.from, change.to].map(|year| year.to_string());
        noted(&change.noted, &years, words);
        let lines: Vec<LineResult> = change.earlier.iter().chain(&change.later).cloned().collect();
        protocol_notes(input, &lines, words);
        findings(&change.findings, words);
        if explain {
            for figure in &change.figures {
                println!();
                for step in chain(change, figure) {
                    wrapped(&words.say(&step.message), 2 * step.depth);
                }
            }
        }
    }
    if changes.is_empty() {
        wrapped(
            &words.say(
                &Message::new("no-pair-of-years")
                    .with("from", question.from.to_string())
                    .with("to", question.to.to_string()),
            ),
            0,
        );
    }
}

fn site_years(code: &'static str, change: &SiteChange) -> Message {
    // the codes are those of this page's titles
    Message { code, values: Vec::new() }
        .with("site", change.site.as_str())
        .with("from", change.from.to_string())
        .with("to", change.to.to_string())
}

/// A sentence that begins with what it is about begins with a capital letter.
pub(super) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or(String::new(), |first| first.to_uppercase().chain(letters).collect())
}

fn points(difference: f64, words: &Words) -> String {
    let number = words.number(difference * 100.0, 1);
    if difference > 0.0 { format!("+{number}") } else { number }
}

fn figures(change: &SiteChange, words: &Words) {
    let interval = Message::new("column-interval").with("confidence", confidence_value(change.confidence));
    let mut table = Table::new(&[
        words.word("column-what"),
        change.from.to_string(),
        change.to.to_string(),
        words.word("column-change"),
        words.word("column-se"),
        words.say(&interval),
        words.word("column-p"),
        words.word("column-n"),
    ]);
    for figure in &change.figures {
        table.row(figure_row(change, figure, words));
    }
    table.print();
}

fn figure_row(change: &SiteChange, figure: &ChangeFigure, words: &Words) -> Vec<String> {
    let interval = match figure.interval {
        Ok(interval) => words.say(
            &Message::new("between-ends")
                .with("low", points(interval.low, words))
                .with("high", points(interval.high, words)),
        ),
        Err(reason) => words.word(reason.code()),
    };
    let se = match figure.change.error {
        SamplingError::Known { se, .. } => words.number(se * 100.0, 1),
        SamplingError::Unknown(_) => "–".to_owned(),
    };
    let plots = figure.earlier.method.counts_plots();
    let n = if plots { "units-plots" } else { "units-lines" };
    // a plot read twice is one unit, and its lines are what was read
    let lines = match figure.design() {
        Design::Paired if plots => change.lines.len(),
        _ if plots => figure.earlier.lines + figure.later.lines,
        _ => figure.change.lines,
    };
    vec![
        words.say(&subject_words(&figure.subject)),
        words.percent(figure.earlier.value, 1),
        words.percent(figure.later.value, 1),
        points(figure.change.value, words),
        se,
        interval,
        figure.p.map_or_else(
            |_| "–".to_owned(),
            |p| if p < 0.0005 { "<0.001".to_owned() } else { words.number(p, 3) },
        ),
        words.say(
            &Message { code: n, values: Vec::new() }.with("lines", lines).with("units", figure.change.units),
        ),
    ]
}

/// The change of each stratum, where there are several.
fn strata(change: &SiteChange, words: &Words) {
    let Some(figure) = change.figures.first().filter(|figure| figure.parts.len() > 1) else { return };
    title(&words.word("title-strata-change"));
    let headings = ["stratum", "of-area", "change", "se", "n"];
    let mut table = Table::new(&headings.map(|name| words.word(&format!("column-{name}"))));
    for part in &figure.parts {
        table.row(vec![
            part.name.clone(),
            words.percent(part.weight, 0),
            points(part.change.value, words),
            match part.change.error {
                SamplingError::Known { se, .. } => words.number(se * 100.0, 1),
                SamplingError::Unknown(_) => "–".to_owned(),
            },
            part.change.lines.to_string(),
        ]);
    }
    table.print();
}

/// What was noted at each visit.
pub(super) fn noted(noted: &[Noted], years: &[String], words: &Words) {
    let about = if noted.iter().any(Noted::moves_cover) { "noted-about" } else { "noted-none" };
    if noted.is_empty() {
        println!();
        wrapped(&words.word(about), 0);
        return;
    }
    title(&words.word("title-noted"));
    let mut headings = vec![words.word("column-noted")];
    headings.extend(years.iter().cloned());
    let mut table = Table::new(&headings);
    for one in noted {
        let cells = one
            .visits
            .iter()
            .map(|values| if values.is_empty() { "–".to_owned() } else { values.join(", ") });
        table.row([one.heading.clone()].into_iter().chain(cells).collect());
    }
    table.print();
    wrapped(&words.word(about), 0);
}

/// Gained, lost and kept of each staked line, and of all together.
fn on_the_tape(change: &SiteChange, words: &Words) {
    let tapes: Vec<(&str, &TapeChange)> =
        change.lines.iter().filter_map(|line| Some((line.line.as_str(), line.tape.as_ref()?))).collect();
    if tapes.is_empty() {
        return;
    }
    title(&words.word("title-on-the-tape"));
    let headings = ["line", "kept", "lost", "gained", "change", "found-again", "tape-shift", "same-line"];
    let headings: Vec<String> = headings.iter().map(|name| words.word(&format!("column-{name}"))).collect();
    let mut table = Table::new(&headings);
    for (line, tape) in &tapes {
        let share = |stretches: &[Stretch]| words.percent(total(stretches).share_of(tape.read), 1);
        table.row(vec![
            (*line).to_owned(),
            share(&tape.turnover.kept),
            share(&tape.turnover.lost),
            share(&tape.turnover.gained),
            points(tape.turnover.net().share_of(tape.read), words),
            tape.found_again.map_or_else(String::new, |share| words.percent(share, 0)),
            if tape.alignment.shift_shown {
                words.value(&Value::Length(tape.alignment.shift, tape.notation))
            } else {
                "–".to_owned()
            },
            words.word(tape.alignment.pairing.code()),
        ]);
    }
    let all =
        |of: fn(&TapeChange) -> &[Stretch]| -> Length { tapes.iter().map(|(_, tape)| total(of(tape))).sum() };
    let read: Length = tapes.iter().map(|(_, tape)| tape.read).sum();
    let kept = all(|tape| &tape.turnover.kept);
    let (lost, gained) = (all(|tape| &tape.turnover.lost), all(|tape| &tape.turnover.gained));
    let share = |length: Length| words.percent(length.share_of(read), 1);
    table.row(vec![
        words.word("all-lines-together"),
        share(kept),
        share(lost),
        share(gained),
        points((gained - lost).share_of(read), words),
    ]);
    table.print();
}

/// The lines of both years for a picture, those of several sites with the site's name.
pub(crate) fn picture_of(changes: &[SiteChange], words: &Words) -> Lines {
    let several = changes.len() > 1;
    let mut lines = Vec::new();
    let mut unit = Unit::Metre;
    for change in changes {
        for line in &change.lines {
            let Some(tape) = &line.tape else { continue };
            let later = &change.later[line.later];
            unit = later.length.notation().unit;
            let share = |stretches: &[Stretch]| words.percent(total(stretches).share_of(tape.read), 1);
            let told = [
                format!("{} {}", words.word("column-lost"), share(&tape.turnover.lost)),
                format!("{} {}", words.word("column-gained"), share(&tape.turnover.gained)),
                format!(
                    "{} {}",
                    words.word("column-change"),
                    points(tape.turnover.net().share_of(tape.read), words)
                ),
            ];
            lines.push(Line {
                name: if several { format!("{}, {}", change.site, line.line) } else { line.line.clone() },
                told: told.join(" · "),
                length: tape.read,
                years: [change.from.to_string(), change.to.to_string()],
                kept: tape.turnover.kept.clone(),
                lost: tape.turnover.lost.clone(),
                gained: tape.turnover.gained.clone(),
            });
        }
    }
    let marks = Marks {
        kept: words.word("column-kept"),
        lost: words.word("column-lost"),
        gained: words.word("column-gained"),
    };
    Lines { lines, unit, words: marks }
}

/// What the picture shows, for those who hear it.
pub(crate) fn picture_told(change: &SiteChange, words: &Words) -> String {
    words.say(&site_years("picture-of-change-told", change))
}

pub(crate) fn json_change(input: &Input, changes: &[SiteChange], words: &Words) {
    super::data::print(&output(input, changes, &|message| words.say(message)));
}

/// One row a figure; shares of the line.
pub(crate) fn csv_change(changes: &[SiteChange]) {
    let headings = [
        "site",
        "from",
        "to",
        "subject",
        "earlier",
        "later",
        "change",
        "SE",
        "df",
        "low",
        "high",
        "confidence",
        "p",
        "answer",
        "design",
        "pairs",
    ];
    let mut text = row(&headings);
    for change in changes {
        for figure in &change.figures {
            let (se, df) = match figure.change.error {
                SamplingError::Known { se, df } => (shortest(se), shortest(df)),
                SamplingError::Unknown(_) => (String::new(), String::new()),
            };
            let ends = figure.interval.ok().map(|both| (shortest(both.low), shortest(both.high)));
            let (low, high) = ends.unwrap_or_default();
            text += &row(&[
                change.site.as_str(),
                &change.from.to_string(),
                &change.to.to_string(),
                &subject(&figure.subject),
                &shortest(figure.earlier.value),
                &shortest(figure.later.value),
                &shortest(figure.change.value),
                &se,
                &df,
                &low,
                &high,
                &shortest(change.confidence),
                &figure.p.map_or_else(|_| String::new(), shortest),
                figure.answer.map_or("", tautline_engine::change::Answer::code),
                figure.design().code(),
                &figure.pairs().to_string(),
            ]);
        }
    }
    super::print_all(&text);
}

/// A subject as a table of data names it: the code itself where it has one.
fn subject(subject: &Subject) -> String {
    let words = subject_words(subject);
    words.values.first().map_or(words.code.to_owned(), |(_, value)| match value {
        Value::Text(text) => text.clone(),
        Value::Word(word) => (*word).to_owned(),
        _ => words.code.to_owned(),
    })
}
