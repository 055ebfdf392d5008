//! Reports of a site: one page that stands alone, for the screen and for paper.
//!
//! A page says the verdict in plain words first, then for a specialist, then shows the pictures and tables it rests
//! on, down to the readings. All its words come from the catalogue; nothing is computed here.
//!
//! | what | module |
//! | --- | --- |
//! | the first page of several sites | `front` |
//! | one site in one year | `site`, with `verdict`, `tables`, `pictures` |
//! | years side by side | `years` |
//! | what was found | `checks` |
//! | formulas and arithmetic | `work` |
//! | the methods paragraph | `methods` |
//! | every reading | `readings` |
//! | cautions, files, fingerprint | `foot` |
#![forbid(unsafe_code)]

mod checks;
mod foot;
mod front;
mod markup;
mod methods;
mod page;
mod pictures;
mod readings;
mod shown;
mod site;
mod tables;
mod verdict;
mod work;
mod years;

use core::cmp::Reverse;
use markup::{around, escape, text};
use page::{Page, site_id};
use tautline_survey::assess::{Assessment, Question, natural_order};
use tautline_survey::input::Input;
use tautline_survey::message::Message;
use tautline_words::Words;

const STYLE: &str = include_str!("page.css");

/// The page of one or more sites: site by site, the newest year first.
///
/// The page stands alone: no scripts, no other files, and the same page for the same input. `question` is what the
/// assessments answer; the methods paragraph is written from it. The input is one that was read and checked
/// ([`tautline_survey::check::check`], which reading does).
///
/// # Example
/// ```
/// use tautline_survey::{assess::Question, input::Input};
/// let words = tautline_words::Words::english();
/// let page = tautline_report::html(&Input::default(), &Question::default(), &[], &words);
/// assert!(page.starts_with("<!DOCTYPE html>"));
/// assert!(page.contains("nothing to report"));
/// ```
pub fn html(input: &Input, question: &Question, assessments: &[Assessment], words: &Words) -> String {
    let sorted = in_order(assessments);
    let page = Page::new(input, question, &sorted, words);
    let heading = page.word("report-title");
    let title = match sorted.as_slice() {
        [only] => shown::title(only, &page),
        _ => heading.clone(),
    };
    let mut body = text("h1", &heading) + &text("p class=\"about\"", &page.word("report-about"));
    if sorted.is_empty() {
        body += &text("p", &page.word("report-nothing"));
    }
    if sorted.len() > 1 {
        body += &front::contents(&sorted, &page);
    }
    for (number, assessment) in sorted.iter().enumerate() {
        body += &site::section(&site_id(number), assessment, &years_of(number, &sorted), &page);
    }
    body += &foot::found_on_reading(&sorted, &page);
    body += &readings::appendix(&sorted, &page);
    let skip = around("a class=\"skip\" href=\"#main\"", &escape(&page.word("report-skip")));
    let main = around("main id=\"main\"", &body);
    let foot = around("footer", &foot::foot(&page));
    let head = format!(
        "<meta charset=\"utf-8\"/>\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n{}{}",
        text("title", &title),
        around("style", &format!("{}{STYLE}{}", tautline_figures::STYLESHEET, sheet_foot(&title, &page))),
    );
    format!(
        "<!DOCTYPE html>\n<html lang=\"{}\">\n{}{}</html>\n",
        escape(words.language()),
        around("head", &head),
        around("body", &(skip + &main + &foot))
    )
}

/// Sites in the order of their names, and of their plots, the newest year of each first.
fn in_order(assessments: &[Assessment]) -> Vec<&Assessment> {
    let mut sorted: Vec<&Assessment> = assessments.iter().collect();
    sorted.sort_by(|a, b| {
        let plot = |one: &Assessment| one.plot.clone().unwrap_or_default();
        natural_order(&a.site, &b.site)
            .then_with(|| natural_order(&plot(a), &plot(b)))
            .then_with(|| Reverse(a.year).cmp(&Reverse(b.year)))
    });
    sorted
}

/// All years of a site (or plot) with their places on the page, for its newest year; nothing for the others.
fn years_of<'a>(number: usize, sorted: &[&'a Assessment]) -> Vec<(String, &'a Assessment)> {
    let same = |other: &Assessment| other.site == sorted[number].site && other.plot == sorted[number].plot;
    if number > 0 && same(sorted[number - 1]) {
        return Vec::new();
    }
    let all = sorted.iter().enumerate().skip(number).take_while(|(_, other)| same(other));
    all.map(|(at, &other)| (site_id(at), other)).collect()
}

/// What stands at the foot of every printed sheet: the title and the data's fingerprint, and the number of the sheet.
fn sheet_foot(title: &str, page: &Page) -> String {
    let left = match page.input.fingerprint() {
        Some(print) => page.say(
            &Message::new("report-sheet-foot")
                .with("title", title)
                .with("print", print.chars().take(12).collect::<String>()),
        ),
        None => title.to_owned(),
    };
    let [left, of] = [left, page.word("report-sheet-of")].map(|text| css_text(&text));
    format!(
        "@page{{@bottom-left{{content:{left}}}@bottom-right{{content:counter(page) {of} counter(pages)}}}}\n"
    )
}

/// A text as a string of a stylesheet: whatever isn't a plain letter, digit or space is written by its number.
fn css_text(text: &str) -> String {
    let safe: String = text
        .chars()
        .map(|c| {
            if c.is_ascii_alphanumeric() || c == ' ' {
                c.to_string()
            } else {
                format!("\\{:x} ", u32::from(c))
            }
        })
        .collect();
    format!("\"{safe}\"")
}

#[cfg(test)]
mod tests {
    use super::css_text;

    #[test]
    fn no_text_leaves_a_string_of_the_stylesheet() {
        assert_eq!(css_text("a\"}</style>é"), "\"a\\22 \\7d \\3c \\2f style\\3e \\e9 \"");
    }
}
