//! Where the doubt of a mean comes from: sentences, the parts, what would make it surer.

use super::follow::capital;
use super::table::Table;
use super::{STRONG, findings, title, wrapped};
use anstream::println;
use tautline_survey::agree::{Doubt, Told, bought, doubt_sentences};
use tautline_survey::finding::Finding;
use tautline_survey::input::Input;
use tautline_words::Words;

/// The parts of what varies, and what would help.
pub(crate) fn doubt(input: &Input, doubt: Result<&Doubt, &'static str>, found: &[Finding], words: &Words) {
    findings(&input.findings, words);
    match doubt {
        Err(code) => wrapped(&words.word(code), 0),
        Ok(doubt) => told(doubt, words),
    }
    findings(found, words);
}

fn told(doubt: &Doubt, words: &Words) {
    title(&words.word("title-sources"));
    println!();
    for (number, message) in doubt_sentences(doubt).iter().enumerate() {
        let text = words.say(message);
        if number == 0 {
            println!("{STRONG}{text}{STRONG:#}");
        } else {
            wrapped(&text, 2);
        }
    }
    println!();
    let headings = ["what", "groups", "sd-points", "of-variance"];
    let mut table = Table::new(&headings.map(|name| words.word(&format!("column-{name}"))));
    for one in &doubt.parts {
        let (sd, share) = match one.told {
            Told::Spread { sd, share } => (words.number(sd * 100.0, 1), words.percent(share, 0)),
            _ => ("–".to_owned(), "–".to_owned()),
        };
        table.row(vec![words.word(one.part.code()), one.groups.to_string(), sd, share]);
    }
    table.print();
    title(&words.word("title-buys"));
    let headings = ["what", "se-after", "minutes"];
    let mut table = Table::new(&headings.map(|name| words.word(&format!("column-{name}"))));
    for buy in &doubt.buys {
        let minutes = buy.minutes.map_or_else(|| "–".to_owned(), |minutes| words.number(minutes, 0));
        table.row(vec![capital(&words.say(&bought(buy))), words.number(buy.se * 100.0, 2), minutes]);
    }
    table.print();
    wrapped(&words.word("points-of-cover"), 0);
}
