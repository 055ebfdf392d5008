//! Readers set side by side, and the trend of sites: sentences, tables, data.

use super::table::Table;
use super::{STRONG, findings, site_title, title, wrapped};
use anstream::println;
use tautline_engine::stretch::Stretch;
use tautline_survey::agree::{self, Agreement, LinePair, sentences};
use tautline_survey::explain::{confidence_value, subject_words};
use tautline_survey::input::Input;
use tautline_survey::message::{Message, Value};
use tautline_survey::trend::{self, SiteTrend, TrendFigure};
use tautline_words::Words;

fn points(difference: f64, words: &Words) -> String {
    let number = words.number(difference * 100.0, 1);
    if difference > 0.0 { format!("+{number}") } else { number }
}

/// The agreement of every pair of readers.
pub(crate) fn agreements(input: &Input, agreements: &[Agreement], words: &Words) {
    findings(&input.findings, words);
    for agreement in agreements {
        title(&site_title(&agreement.site, agreement.year, None, words));
        println!();
        for (number, message) in sentences(agreement).iter().enumerate() {
            let text = words.say(message);
            if number == 0 {
                println!("{STRONG}{text}{STRONG:#}");
            } else {
                wrapped(&text, 2);
            }
        }
        println!();
        lines(agreement, words);
        species(agreement, words);
        wrapped(&words.word("points-of-cover"), 0);
        findings(&agreement.findings, words);
    }
    if agreements.is_empty() {
        wrapped(&words.word("agree-nobody"), 0);
    }
}

fn lines(agreement: &Agreement, words: &Words) {
    let mut table = Table::new(&[
        words.word("column-line"),
        agreement.first.clone(),
        agreement.second.clone(),
        words.word("column-difference"),
        words.word("column-both-have"),
        words.word("column-missed"),
        words.word("column-added"),
    ]);
    for pair in &agreement.lines {
        table.row(line(pair, words));
    }
    table.print();
}

fn line(pair: &LinePair, words: &Words) -> Vec<String> {
    let cover = |one| super::cover_words(one, one.canopy, words);
    let patches = pair.patches.as_ref();
    let number = |count: usize| count.to_string();
    let those = |of: &[Stretch]| number(of.len());
    vec![
        pair.first.line.clone(),
        cover(&pair.first),
        cover(&pair.second),
        pair.difference.map_or_else(String::new, |difference| points(difference, words)),
        patches.map_or_else(String::new, |found| number(found.both.len())),
        patches.map_or_else(String::new, |found| those(&found.missed)),
        patches.map_or_else(String::new, |found| those(&found.added)),
    ]
}

fn species(agreement: &Agreement, words: &Words) {
    if agreement.species.is_empty() {
        return;
    }
    println!();
    let mut table = Table::new(&[words.word("column-what"), words.word("column-mean-difference")]);
    for (code, difference) in &agreement.species {
        table.row(vec![
            words.say(&Message::new("cover-of").with("what", code.as_str())),
            points(*difference, words),
        ]);
    }
    table.print();
}

pub(crate) fn json_agree(input: &Input, agreements: &[Agreement], words: &Words) {
    super::data::print(&agree::output(input, agreements, &|message| words.say(message)));
}

/// The trend of every site.
pub(crate) fn trends(input: &Input, trends: &[SiteTrend], words: &Words) {
    findings(&input.findings, words);
    for trend in trends {
        title(&words.say(&Message::new("title-site").with("site", trend.site.as_str())));
        println!();
        if let Some(figure) = trend.figures.first() {
            println!("{STRONG}{}{STRONG:#}", sentence(figure, trend.confidence, words));
            println!();
        }
        trend_table(trend, words);
        wrapped(&words.word("points-of-cover"), 0);
        findings(&trend.findings, words);
    }
    if trends.iter().all(|trend| trend.figures.is_empty()) {
        wrapped(&words.word("trend-one-year"), 0);
    }
}

/// What is said of a trend: which way, or why nothing is said.
fn sentence(figure: &TrendFigure, confidence: f64, words: &Words) -> String {
    let slope = figure.slope.unwrap_or_default();
    let code = match figure.kendall.p {
        Err(_) => "trend-too-few-visits",
        Ok(p) if p >= 1.0 - confidence => "trend-not-shown",
        Ok(_) if slope >= 0.0 => "trend-rises",
        Ok(_) => "trend-falls",
    };
    let visits = figure.years.len();
    let about = Message { code, values: Vec::new() }
        .with("what", subject_words(&figure.subject))
        .with("slope", Value::Number(slope.abs() * 100.0, 2))
        .with("visits", visits)
        .with("confidence", confidence_value(confidence));
    super::follow::capital(&words.say(&about))
}

fn trend_table(trend: &SiteTrend, words: &Words) {
    let interval = Message::new("column-interval").with("confidence", confidence_value(trend.confidence));
    let years: Vec<String> = trend
        .figures
        .first()
        .map(|figure| figure.years.iter().map(|(year, _)| year.to_string()).collect())
        .unwrap_or_default();
    let mut headings = vec![words.word("column-what")];
    headings.extend(years);
    headings.extend([words.word("column-slope"), words.say(&interval), words.word("column-p")]);
    let mut table = Table::new(&headings);
    for figure in &trend.figures {
        let mut row = vec![words.say(&subject_words(&figure.subject))];
        row.extend(figure.years.iter().map(|(_, level)| words.percent(level.value, 1)));
        let two = |value: f64| words.number(value * 100.0, 2);
        row.push(figure.slope.map_or_else(|| "–".to_owned(), two));
        row.push(figure.interval.map_or_else(
            || "–".to_owned(),
            |(low, high)| {
                words.say(&Message::new("between-ends").with("low", two(low)).with("high", two(high)))
            },
        ));
        row.push(figure.kendall.p.map_or_else(|_| "–".to_owned(), |p| words.number(p, 3)));
        table.row(row);
    }
    table.print();
}

pub(crate) fn json_trend(input: &Input, trends: &[SiteTrend], words: &Words) {
    super::data::print(&trend::output(input, trends, &|message| words.say(message)));
}
