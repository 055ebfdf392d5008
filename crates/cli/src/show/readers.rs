//! Readers set side by side: sentences, tables, data.

use super::table::Table;
use super::{STRONG, findings, site_title, title, wrapped};
use anstream::println;
use tautline_engine::stretch::Stretch;
use tautline_survey::agree::{
    self, Agreement, LinePair, season_sentences, seasons, sentences, standing_sentences,
};
use tautline_survey::input::Input;
use tautline_survey::message::Message;
use tautline_words::Words;

fn points(difference: f64, words: &Words) -> String {
    let number = words.number(difference * 100.0, 1);
    if difference > 0.0 { format!("+{number}") } else { number }
}

/// The agreement of every pair of readers.
pub(crate) fn agreements(input: &Input, agreements: &[Agreement], tolerance: Option<f64>, words: &Words) {
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
        for message in tolerance.iter().flat_map(|tolerance| standing_sentences(agreement, *tolerance)) {
            wrapped(&words.say(&message), 2);
        }
        println!();
        lines(agreement, words);
        species(agreement, words);
        wrapped(&words.word("points-of-cover"), 0);
        findings(&agreement.findings, words);
    }
    let seasons = seasons(agreements);
    if !seasons.is_empty() {
        title(&words.word("title-season"));
        for message in seasons.iter().flat_map(season_sentences) {
            wrapped(&words.say(&message), 2);
        }
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

pub(crate) fn json_agree(input: &Input, agreements: &[Agreement], tolerance: Option<f64>, words: &Words) {
    super::data::print(&agree::output(input, agreements, tolerance, &|message| words.say(message)));
}
