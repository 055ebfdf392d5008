//! The end of the page: what was found on reading the files, cautions, the files, and how to know the data again.

use crate::checks;
use crate::document::{Fingerprint, Item, ListOf, Section, list, sentences};
use crate::page::Page;
use tautline_survey::assess::Assessment;
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

/// Cautions and files.
pub(crate) fn sections(page: &Page) -> Vec<Section> {
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
    let files = list(ListOf::Files, files).map(|list| part("files", "report-files", list));
    cautions.into_iter().chain(files).collect()
}

/// How to know the data again.
pub(crate) fn fingerprint(page: &Page) -> Option<Fingerprint> {
    let print = page.input.fingerprint()?;
    let said = page.say(&Message::new("report-fingerprint").with("print", print.as_str()));
    Some(Fingerprint { print, said })
}
