//! Reports of a site: one page that stands alone, for the screen and for paper.
//!
//! A page says the verdict in plain words first, then for a specialist, then shows the pictures and tables it rests
//! on, down to the readings. All its words come from the catalogue; nothing is computed here.
#![forbid(unsafe_code)]

mod curve;
mod markup;
mod notes;
mod pictures;
mod shown;
mod site;
mod tables;
mod verdict;

use core::cmp::Reverse;
use markup::{around, escape, text};
use tautline_survey::assess::{Assessment, natural_order};
use tautline_survey::input::Input;
use tautline_words::Words;

const STYLE: &str = include_str!("page.css");

/// The page of one or more sites: site by site, the newest year first.
///
/// The page stands alone: no scripts, no other files, and the same page for the same input.
///
/// # Example
/// ```
/// use tautline_survey::input::Input;
/// let page = tautline_report::html(&Input::default(), &[], &tautline_words::Words::english());
/// assert!(page.starts_with("<!doctype html>"));
/// assert!(page.contains("nothing to report"));
/// ```
pub fn html(input: &Input, assessments: &[Assessment], words: &Words) -> String {
    let sorted = in_order(assessments);
    let title = match sorted.as_slice() {
        [only] => shown::title(only, words),
        _ => words.word("report-title"),
    };
    let mut body = text("h1", &words.word("report-title"));
    body += &text("p class=\"about\"", &words.word("report-about"));
    if sorted.is_empty() {
        body += &text("p", &words.word("report-nothing"));
    }
    if sorted.len() > 1 {
        body += &contents(&sorted, words);
    }
    let tones = pictures::Tones::of(&sorted);
    for (number, assessment) in sorted.iter().enumerate() {
        body += &site::section(number + 1, input, assessment, &tones, words);
    }
    body += &notes::foot(input, words);
    let head = format!(
        "<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n{}{}",
        text("title", &title),
        around("style", &format!("{}{STYLE}", tautline_figures::STYLESHEET)),
    );
    format!(
        "<!doctype html>\n<html lang=\"en\">\n{}{}</html>\n",
        around("head", &head),
        around("body", &around("main", &body))
    )
}

/// Sites in the order of their names, the newest year of each first.
fn in_order(assessments: &[Assessment]) -> Vec<&Assessment> {
    let mut sorted: Vec<&Assessment> = assessments.iter().collect();
    sorted.sort_by(|a, b| {
        let plot = |one: &Assessment| one.plot.clone().unwrap_or_default();
        natural_order(&a.site, &b.site)
            .then_with(|| Reverse(a.year).cmp(&Reverse(b.year)))
            .then_with(|| natural_order(&plot(a), &plot(b)))
    });
    sorted
}

/// Links to the sites, each with its verdicts.
fn contents(sorted: &[&Assessment], words: &Words) -> String {
    let items: String = sorted
        .iter()
        .enumerate()
        .map(|(number, assessment)| {
            let link = around(
                &format!("a href=\"#site-{}\"", number + 1),
                escape(&shown::title(assessment, words)).as_str(),
            );
            let verdicts: Vec<String> =
                assessment.judgements.iter().map(|one| verdict::in_short(one, words)).collect();
            around("li", &(link + &markup::list(&verdicts)))
        })
        .collect();
    around("nav", &(text("h2", &words.word("report-sites")) + &around("ul", &items)))
}
