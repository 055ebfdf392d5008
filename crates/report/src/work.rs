//! The work shown: from the lines to the site by formula, and from the readings to each line as on paper.

use crate::document::{Block, Item, ListOf, heading, list, quiet, sentences};
use crate::page::{Page, readings_id};
use tautline_survey::assess::Assessment;
use tautline_survey::explain::{self, Step, subject_words};
use tautline_survey::goal::Subject;
use tautline_survey::line::LineResult;
use tautline_survey::message::Message;
use tautline_survey::paper;

/// The whole section.
pub(crate) fn section(assessment: &Assessment, page: &Page) -> Vec<Block> {
    let mut blocks = vec![heading(4, page.word("report-work-site"))];
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
        let items = steps.map(|step| Item { depth: step.depth, ..Item::said(page.say(&step.message)) });
        blocks.extend(list(ListOf::Chain, items.collect()));
    }
    if assessment.lines.iter().any(|line| line.cover.is_some()) {
        blocks.push(quiet(page.word("report-work-overlap")));
    }
    for line in &assessment.lines {
        blocks.extend(of_line(line, page));
    }
    blocks
}

/// What stands with each line below, and not a second time in the chain of the site.
fn is_of_a_reading(step: &Step) -> bool {
    ["explain-reading", "explain-closed"].contains(&step.message.code)
}

/// One line: the gaps that the rule closed, the arithmetic, and where its readings stand.
fn of_line(line: &LineResult, page: &Page) -> Vec<Block> {
    let subject = paper::subject(line);
    let title =
        Message::new("work-title").with("line", line.line.as_str()).with("what", subject_words(&subject));
    let closed: Vec<String> = explain::line(page.input, line, &subject)
        .iter()
        .filter(|step| step.message.code == "explain-closed")
        .map(|step| page.say(&step.message))
        .collect();
    let arithmetic = paper::arithmetic(page.input, line)
        .iter()
        .filter(|said| said.code != "work-overlap") // said once, above all lines
        .map(|said| Item::said(page.say(said)))
        .collect();
    let readings = Item::leading_to(readings_id(line.visit), page.word("report-work-readings"));
    let mut blocks = vec![heading(4, page.say(&title))];
    blocks.extend(sentences(closed));
    blocks.extend(list(ListOf::Arithmetic, arithmetic));
    if page.reader.reads_readings() {
        blocks.push(Block::Jump(readings));
    }
    blocks
}
