//! The end of the page: what was found on reading the files, cautions, the files, and how to know the data again.

use crate::checks;
use crate::markup::{around, list, text};
use crate::page::Page;
use tautline_survey::assess::Assessment;
use tautline_survey::message::Message;

/// What was found on reading the files that speaks of no site on the page; nothing where nothing was.
pub(crate) fn found_on_reading(assessments: &[&Assessment], page: &Page) -> String {
    let found = checks::of_nothing_here(assessments, page);
    if found.is_empty() {
        return String::new();
    }
    text("h2 id=\"found\"", &page.word("report-reading-findings")) + &found.in_full("h3", page)
}

/// Cautions, files, fingerprint.
pub(crate) fn foot(page: &Page) -> String {
    let cautions = page.each(&["report-caution-advice", "report-caution-rule", "report-caution-local"]);
    let mut markup = text("h2 id=\"cautions\"", &page.word("report-cautions")) + &list(&cautions);
    let Some(print) = page.input.fingerprint() else { return markup };
    let files: Vec<String> = page
        .input
        .files
        .iter()
        .map(|file| {
            let sha: String = file.sha256.chars().take(12).collect();
            page.say(&Message::new("report-file").with("name", file.name.as_str()).with("sha", sha))
        })
        .collect();
    markup += &text("h2 id=\"files\"", &page.word("report-files"));
    markup += &around("div class=\"files\"", &list(&files));
    markup + &text("p class=\"print\"", &page.say(&Message::new("report-fingerprint").with("print", print)))
}
