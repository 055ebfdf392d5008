//! The work shown: from the lines to the site by formula, and from the readings to each line as on paper.

use crate::markup::{around, link, list, text};
use crate::page::{Page, readings_id};
use tautline_survey::assess::Assessment;
use tautline_survey::explain::{self, Step, subject_words};
use tautline_survey::goal::Subject;
use tautline_survey::line::LineResult;
use tautline_survey::message::Message;
use tautline_survey::paper;

/// The whole section.
pub(crate) fn section(assessment: &Assessment, page: &Page) -> String {
    let mut markup = text("h4", &page.word("report-work-site"));
    let mut chains: Vec<Vec<Step>> = assessment
        .judgements
        .iter()
        .map(|judgement| explain::verdict(page.input, assessment, judgement))
        .collect();
    if chains.is_empty() {
        let canopy = assessment.figure(&Subject::Canopy);
        chains.extend(canopy.map(|figure| explain::figure(page.input, assessment, figure)));
    }
    for chain in chains {
        let steps = chain.iter().filter(|step| !is_of_a_reading(step));
        let items: String = steps
            .map(|step| text(&format!("li class=\"depth-{}\"", step.depth.min(3)), &page.say(&step.message)))
            .collect();
        markup += &around("ul class=\"chain\"", &items);
    }
    if assessment.lines.iter().any(|line| line.cover.is_some()) {
        markup += &text("p class=\"quiet\"", &page.word("report-work-overlap"));
    }
    for line in &assessment.lines {
        markup += &of_line(line, page);
    }
    markup
}

/// What stands with each line below, and not a second time in the chain of the site.
fn is_of_a_reading(step: &Step) -> bool {
    ["explain-reading", "explain-closed"].contains(&step.message.code)
}

/// One line: the gaps that the rule closed, the arithmetic, and where its readings stand.
fn of_line(line: &LineResult, page: &Page) -> String {
    let subject = paper::subject(line);
    let title =
        Message::new("work-title").with("line", line.line.as_str()).with("what", subject_words(&subject));
    let closed: Vec<String> = explain::line(page.input, line, &subject)
        .iter()
        .filter(|step| step.message.code == "explain-closed")
        .map(|step| page.say(&step.message))
        .collect();
    let arithmetic: String = paper::arithmetic(page.input, line)
        .iter()
        .filter(|said| said.code != "work-overlap") // said once, above all lines
        .map(|said| text("li", &page.say(said)))
        .collect();
    let readings = link(&readings_id(line.visit), &page.word("report-work-readings"));
    text("h4", &page.say(&title))
        + &list(&closed)
        + &around("ul class=\"paper\"", &arithmetic)
        + &around("p class=\"quiet jump\"", &readings)
}
