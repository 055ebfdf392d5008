//! What the checks found: for people, as JSON, and as a table that can be signed and read back.

use super::{LOOK, QUIET, SETTLE, STRONG, findings, println, wrapped};
use anstyle::Style;
use std::collections::BTreeMap;
use tautline_exchange::table::row;
use tautline_survey::assess::natural_order;
use tautline_survey::check::KINDS;
use tautline_survey::finding::{Finding, Weight, few};
use tautline_survey::input::Input;
use tautline_survey::message::Message;
use tautline_survey::output::checked;
use tautline_words::Words;

const HEADINGS: [(Weight, &str, Style); 3] = [
    (Weight::MustSettle, "heading-must-settle", SETTLE),
    (Weight::HaveALook, "heading-have-a-look", LOOK),
    (Weight::Note, "heading-note", QUIET),
];

/// The findings: how many, the worst first and kind by kind, what was settled, and what to do next.
pub(crate) fn check(input: &Input, words: &Words) {
    let open: Vec<&Finding> = input.findings.iter().filter(|one| one.settled.is_none()).collect();
    let settled: Vec<&Finding> = input.findings.iter().filter(|one| one.settled.is_some()).collect();
    let count = |weight| open.iter().filter(|one| one.weight == weight).map(|one| one.times()).sum();
    let (must, look): (usize, usize) = (count(Weight::MustSettle), count(Weight::HaveALook));
    if input.visits.is_empty() {
        wrapped(&words.word("check-nothing-read"), 0);
    }
    let counts = Message::new("check-counts");
    let counts = counts
        .with("must", must)
        .with("look", look)
        .with("settled", settled.iter().map(|one| one.times()).sum::<usize>());
    println!("{STRONG}{}{STRONG:#}", words.say(&counts));
    for (weight, heading, style) in HEADINGS {
        let mut own: Vec<&Finding> = open.iter().filter(|one| one.weight == weight).copied().collect();
        if own.is_empty() {
            continue;
        }
        println!("\n{style}{}{style:#}", words.word(heading));
        own.sort_by_key(|finding| (order(finding.message.code), &finding.place));
        let mut last = "";
        for finding in few(own) {
            if finding.message.code != last {
                last = finding.message.code;
                println!("  {QUIET}{last}{QUIET:#}");
            }
            wrapped(&words.say(&finding.words()), 4);
            for row in finding.excerpt.iter().flat_map(|excerpt| tautline_words::picture(excerpt)) {
                println!("      {row}");
            }
        }
    }
    if !settled.is_empty() {
        println!("\n{}", words.word("heading-settled"));
        for said in few(settled).iter().filter_map(|finding| finding.settled_words()) {
            wrapped(&words.say(&said), 2);
        }
    }
    next(input, must, look, words);
}

/// Kinds in the order of their list; cells and files that can't be read come first.
fn order(code: &str) -> usize {
    KINDS.iter().position(|kind| kind.code == code).map_or(0, |at| at + 1)
}

/// How many lines of a site are named among those that wait; the data names all of them.
const MOST_LINES: usize = 100;

fn next(input: &Input, must: usize, look: usize, words: &Words) {
    if must + look == 0 {
        return;
    }
    println!("\n{STRONG}{}{STRONG:#}", words.word("heading-next"));
    let mut sites: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    for visit in input.held.iter().map(|&visit| &input.visits[visit]) {
        sites.entry(&visit.site).or_default().push(&visit.line);
    }
    let held = sites.into_iter().map(|(site, mut lines)| {
        lines.sort_by(|a, b| natural_order(a, b));
        lines.dedup();
        let further = lines.len().saturating_sub(MOST_LINES);
        lines.truncate(MOST_LINES);
        let message = Message::new("held-lines").with("site", site).with("lines", lines.join(", "));
        words.say(&message.with("further", further))
    });
    let held: Vec<String> = held.collect();
    if !held.is_empty() {
        wrapped(&words.say(&Message::new("check-next-settle").with("lines", held.join("; "))), 2);
    } else if must > 0 {
        wrapped(&words.word("check-next-files"), 2);
    }
    wrapped(&words.word("check-next-look"), 2);
}

/// What `cover` and `assess` say of the input: what must be settled, notes, and where to read the rest.
pub(super) fn of_input(input: &Input, also: Vec<Finding>, words: &Words) {
    let is_said = |finding: &&Finding| finding.settled.is_none() && finding.weight != Weight::HaveALook;
    let said: Vec<Finding> = also.into_iter().chain(input.findings.iter().filter(is_said).cloned()).collect();
    findings(&said, words);
    let look = input.findings.iter().filter(|one| one.settled.is_none() && one.weight == Weight::HaveALook);
    let look: usize = look.map(Finding::times).sum();
    if look > 0 {
        println!();
        wrapped(&words.say(&Message::new("check-pointer").with("count", look)), 0);
    }
}

/// `--json`.
pub(crate) fn json_check(input: &Input, words: &Words) {
    super::data::print(&checked(input, &|message| words.say(message)));
}

/// `--csv`: one finding a row, with the columns in which a person signs.
pub(crate) fn csv_check(input: &Input, words: &Words) {
    let mut text = row(&[
        "finding",
        "weight",
        "site",
        "line",
        "date",
        "species",
        "file",
        "row",
        "column",
        "text",
        "settled by",
        "settled on",
        "reason",
    ]);
    for finding in &checked(input, &|message| words.say(message)).findings {
        let about = finding.about.clone().unwrap_or_default();
        let place = finding.place.as_ref();
        let date =
            |date: Option<tautline_survey::date::Date>| date.map_or(String::new(), |date| date.to_string());
        let settled = finding.settled.as_ref();
        text += &row(&[
            finding.message.code.to_owned(),
            weight(finding.weight).to_owned(),
            about.site,
            about.line,
            date(about.date),
            about.species,
            place.map_or(String::new(), |place| place.file.clone()),
            place.map_or(String::new(), |place| place.row.to_string()),
            place.and_then(|place| place.column.clone()).unwrap_or_default(),
            finding.text.clone(),
            settled.map_or(String::new(), |settled| settled.by.clone()),
            settled.map_or(String::new(), |settled| date(settled.on)),
            settled.map_or(String::new(), |settled| settled.reason.clone()),
        ]);
    }
    super::print_all(&text);
}

const fn weight(weight: Weight) -> &'static str {
    match weight {
        Weight::MustSettle => "must-settle",
        Weight::HaveALook => "have-a-look",
        Weight::Note => "note",
    }
}
