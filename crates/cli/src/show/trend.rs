//! The trend of sites, and of all together: sentences, tables, data.

use super::follow::{capital, noted};
use super::table::Table;
use super::{STRONG, findings, title, wrapped};
use anstream::println;
use tautline_survey::explain::{confidence_value, subject_words};
use tautline_survey::input::Input;
use tautline_survey::message::Message;
use tautline_survey::trend::{self, RegionTrend, SiteTrend, TrendFigure, region_sentences, sentences};
use tautline_words::Words;

/// The trend of every site, then of all together.
pub(crate) fn trends(input: &Input, trends: &[SiteTrend], region: Option<&RegionTrend>, words: &Words) {
    findings(&input.findings, words);
    for trend in trends {
        title(&words.say(&Message::new("title-site").with("site", trend.site.as_str())));
        println!();
        if let Some(figure) = trend.figures.first() {
            said(&sentences(trend, figure), words);
            println!();
        }
        levels(trend, words);
        println!();
        slopes(trend, words);
        wrapped(&words.word("points-of-cover"), 0);
        if !trend.figures.is_empty() {
            let years: Vec<String> = trend.noted_years.iter().map(u16::to_string).collect();
            noted(&trend.noted, &years, words);
        }
        findings(&trend.findings, words);
    }
    if let Some(region) = region {
        title(&words.word("title-region"));
        println!();
        said(&region_sentences(region), words);
        println!();
        sites(region, words);
    }
    if trends.iter().all(|trend| trend.figures.is_empty()) {
        wrapped(&words.word("trend-one-year"), 0);
    }
}

/// Sentences, the first one strong.
fn said(messages: &[Message], words: &Words) {
    for (number, message) in messages.iter().enumerate() {
        let text = capital(&words.say(message));
        if number == 0 {
            println!("{STRONG}{text}{STRONG:#}");
        } else {
            wrapped(&text, 2);
        }
    }
}

fn two(value: f64, words: &Words) -> String {
    words.number(value * 100.0, 2)
}

fn ends((low, high): (f64, f64), words: &Words) -> String {
    words.say(&Message::new("between-ends").with("low", two(low, words)).with("high", two(high, words)))
}

fn none() -> String {
    "–".to_owned()
}

/// The level of each year.
fn levels(trend: &SiteTrend, words: &Words) {
    let Some(first) = trend.figures.first() else { return };
    let mut headings = vec![words.word("column-what")];
    headings.extend(first.years.iter().map(|(year, _)| year.to_string()));
    let mut table = Table::new(&headings);
    for figure in &trend.figures {
        let mut row = vec![words.say(&subject_words(&figure.subject))];
        row.extend(figure.years.iter().map(|(_, level)| words.percent(level.value, 1)));
        table.row(row);
    }
    table.print();
}

/// The slopes, by the model and without one.
fn slopes(trend: &SiteTrend, words: &Words) {
    if trend.figures.is_empty() {
        return;
    }
    let interval = Message::new("column-interval").with("confidence", confidence_value(trend.confidence));
    let mut table = Table::new(&[
        words.word("column-what"),
        words.word("column-method"),
        words.word("column-slope"),
        words.say(&interval),
        words.word("column-p"),
    ]);
    for figure in &trend.figures {
        for row in slope_rows(figure, words) {
            table.row(row);
        }
    }
    table.print();
}

fn slope_rows(figure: &TrendFigure, words: &Words) -> Vec<Vec<String>> {
    let what = words.say(&subject_words(&figure.subject));
    let p = |p: Option<f64>| {
        p.map_or_else(none, |p| if p < 0.0005 { "<0.001".to_owned() } else { words.number(p, 3) })
    };
    let mut rows = Vec::new();
    if let Ok(model) = &figure.model {
        rows.push(vec![
            what.clone(),
            words.word("method-model"),
            two(model.slope.value, words),
            model.interval.map_or_else(none, |both| ends(both, words)),
            p(model.p.ok()),
        ]);
    }
    rows.push(vec![
        if rows.is_empty() { what } else { String::new() },
        words.word("method-without"),
        figure.slope.map_or_else(none, |slope| two(slope, words)),
        figure.interval.map_or_else(none, |both| ends(both, words)),
        p(figure.kendall.p.ok()),
    ]);
    if (figure.corrected.times - 1.0).abs() > 1e-12 {
        let hanging = words.word("method-hanging");
        rows.push(vec![String::new(), hanging, String::new(), String::new(), p(figure.corrected.p.ok())]);
    }
    rows
}

/// The sites of a region: their share, their own slope, and the one drawn towards the others.
fn sites(region: &RegionTrend, words: &Words) {
    let headings = ["site", "site-share", "own-slope", "se", "drawn", "se"];
    let headings: Vec<String> = headings.iter().map(|name| words.word(&format!("column-{name}"))).collect();
    let mut table = Table::new(&headings);
    for site in &region.sites {
        table.row(vec![
            site.site.clone(),
            words.percent(site.share, 0),
            two(site.slope, words),
            two(site.se, words),
            site.drawn.map_or_else(none, |drawn| two(drawn.slope, words)),
            site.drawn.map_or_else(none, |drawn| two(drawn.se, words)),
        ]);
    }
    table.print();
}

pub(crate) fn json_trend(input: &Input, trends: &[SiteTrend], region: Option<&RegionTrend>, words: &Words) {
    super::data::print(&trend::output(input, trends, region, &|message| words.say(message)));
}
