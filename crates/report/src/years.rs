//! The years of one site side by side, each under its own protocol; no change is claimed.

use crate::document::{Block, paragraph, sentences};
use crate::markup::{Column, Table};
use crate::page::Page;
use crate::tables::columns;
use crate::{shown, verdict};
use tautline_survey::assess::{Assessment, Attribute};
use tautline_survey::compare::differences;
use tautline_survey::goal::Subject;
use tautline_survey::message::Message;
use tautline_survey::protocol::Protocol;

/// The years with their place on the page, the newest first.
pub(crate) fn section(years: &[(String, &Assessment)], page: &Page) -> Vec<Block> {
    let headings = [
        (Column::Name, "report-column-year"),
        (Column::Text, "report-column-protocol"),
        (Column::Figure, "column-n"),
        (Column::Figure, "column-canopy"),
        (Column::Interval, "column-interval"),
        (Column::Text, "report-column-verdict"),
    ];
    let mut table = Table::new(page.word("report-years-table"), columns(page, &headings));
    for (id, assessment) in years {
        let year = assessment.year.map_or_else(|| page.word("report-undated"), |year| year.to_string());
        let figure = assessment.figure(&Subject::Canopy);
        let verdicts: Vec<String> =
            assessment.judgements.iter().map(|judgement| verdict::in_short(judgement, page)).collect();
        table.row_leading_to(
            id.clone(),
            vec![
                year,
                protocols(assessment, page),
                figure.map_or_else(String::new, |figure| shown::units(&figure.estimate, page)),
                figure.map_or_else(|| page.word("report-none"), |figure| shown::estimate(figure, page)),
                figure.map_or_else(String::new, |figure| {
                    shown::interval(&figure.interval, Attribute::Cover, page)
                }),
                verdicts.join("; "),
            ],
        );
    }
    let table = table.finished().map(Block::Table);
    let no_claim = paragraph(page.word("report-years-no-claim"));
    table.into_iter().chain([no_claim]).chain(sentences(unlike(years, page))).collect()
}

/// The protocols of a year by name and the beginning of their fingerprint.
fn protocols(assessment: &Assessment, page: &Page) -> String {
    shown::once_each(assessment.lines.iter().map(|line| {
        match page.input.protocols.get(&line.protocol) {
            Some(protocol) => page.say(
                &Message::new("report-protocol-short")
                    .with("name", protocol.name.as_str())
                    .with("fingerprint", line.protocol.chars().take(12).collect::<String>()),
            ),
            None => page.word("report-none"),
        }
    }))
}

/// The rules on which the years' protocols differ, if they do.
fn unlike(years: &[(String, &Assessment)], page: &Page) -> Vec<String> {
    let silent = Protocol::default();
    let lines = years.iter().flat_map(|(_, assessment)| &assessment.lines);
    let mut prints: Vec<&str> = lines.map(|line| line.protocol.as_str()).collect();
    prints.sort_unstable();
    prints.dedup();
    let protocols: Vec<&Protocol> =
        prints.iter().map(|print| page.input.protocols.get(*print).unwrap_or(&silent)).collect();
    let rules: Vec<String> = differences(&protocols).into_iter().map(|difference| difference.rule).collect();
    if rules.is_empty() {
        return Vec::new();
    }
    vec![page.say(&Message::new("report-years-unlike").with("rules", rules))]
}
