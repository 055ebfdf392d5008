//! The end of the page: what was found on reading the files, cautions, the files, and how to know the data again.

use crate::checks;
use crate::document::{Fingerprint, Item, ListOf, Print, Section, list, sentences};
use crate::page::Page;
use crate::shown;
use crate::telling::Reader;
use std::collections::BTreeSet;
use tautline_survey::assess::Assessment;
use tautline_survey::imprint::{MARK, of_readings};
use tautline_survey::message::Message;

/// What was found on reading the files that speaks of no site on the page; nothing where nothing was.
pub(crate) fn found_on_reading(assessments: &[&Assessment], page: &Page) -> Option<Section> {
    let found = checks::of_nothing_here(assessments, page);
    (!found.is_empty()).then(|| Section {
        key: "found",
        heading: page.word("report-reading-findings"),
        blocks: found.in_full(3, page),
    })
}

/// The readings of each site and year on the page, to be known again; and what the report is made of, where that is wanted.
pub(crate) fn prints(assessments: &[&Assessment], page: &Page) -> Vec<Print> {
    // the plots of a site share its readings
    let mut seen = BTreeSet::new();
    let rounds = assessments.iter().filter(|one| seen.insert((one.site.as_str(), one.year)));
    let print = |one: &&Assessment| Print {
        title: shown::title(&Assessment { plot: None, ..(*one).clone() }, page),
        print: format!("{MARK}{}", of_readings(page.input, &one.site, one.year)),
    };
    let made = page.made.map(|made| Print { title: page.word("report-made"), print: made.to_owned() });
    rounds.map(print).chain(made).collect()
}

/// Cautions, files, and how to know the readings again.
pub(crate) fn sections(assessments: &[&Assessment], page: &Page) -> Vec<Section> {
    let cautions = page.each(&["report-caution-advice", "report-caution-rule", "report-caution-local"]);
    let files: Vec<Item> = page
        .input
        .files
        .iter()
        .map(|file| {
            let sha: String = file.sha256.chars().take(12).collect();
            let said = Message::new("report-file").with("name", file.name.as_str()).with("sha", sha);
            Item::said(page.say(&said))
        })
        .collect();
    let part = |key, heading: &str, block| Section { key, heading: page.word(heading), blocks: vec![block] };
    let cautions = sentences(cautions).map(|list| part("cautions", "report-cautions", list));
    // a landowner has one page: the fingerprint below it stands for the files
    let files = if page.reader == Reader::Landowner { None } else { list(ListOf::Files, files) };
    let files = files.map(|list| part("files", "report-files", list));
    let prints = prints(assessments, page).into_iter().map(|one| {
        let said = Message::new("report-print").with("title", one.title).with("print", one.print);
        Item::said(page.say(&said))
    });
    let prints = list(ListOf::Files, prints.collect()).map(|list| part("prints", "report-prints", list));
    cautions.into_iter().chain(files).chain(prints).collect()
}

/// How to know the data again.
pub(crate) fn fingerprint(page: &Page) -> Option<Fingerprint> {
    let print = page.input.fingerprint()?;
    let said = page.say(&Message::new("report-fingerprint").with("print", print.as_str()));
    Some(Fingerprint { print, said })
}
