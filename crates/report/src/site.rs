//! One site in one year: verdicts first, then what they rest on.

use crate::markup::{around, text};
use crate::pictures::{self, Tones};
use crate::{curve, notes, shown, tables, verdict};
use tautline_survey::assess::{Assessment, Judgement};
use tautline_survey::explain::{figure_words, goal_words};
use tautline_survey::input::Input;
use tautline_survey::message::Message;
use tautline_words::Words;

pub(crate) fn section(
    number: usize,
    input: &Input,
    assessment: &Assessment,
    tones: &Tones,
    words: &Words,
) -> String {
    let id = format!("site-{number}");
    let mut inner = text(&format!("h2 id=\"{id}\""), &shown::title(assessment, words));
    if assessment.lines.is_empty() {
        inner += &text("p", &words.word("report-no-lines"));
        inner += &notes::findings("h3", &assessment.findings, words);
        return around("section", &inner);
    }
    if assessment.judgements.is_empty() {
        inner += &text("p", &words.word("report-no-goal"));
        inner += &notes::chain(input, assessment, None, words);
    }
    for (at, judgement) in assessment.judgements.iter().enumerate() {
        inner += &judged(&format!("{id}-goal-{}", at + 1), input, assessment, judgement, words);
    }
    inner += &text("h3", &words.word("report-figures"));
    inner += &pictures::figures(&format!("{id}-figures"), input, assessment, words);
    inner += &tables::figures(input, assessment, words);
    inner += &text("h3", &words.word("report-lines"));
    inner += &tables::lines(input, assessment, words);
    inner += &pictures::lines(&format!("{id}-line"), input, assessment, tones, words);
    for (heading, table) in [
        ("report-species", tables::species(input, assessment, words)),
        ("report-gaps", tables::gaps(assessment, words)),
    ] {
        if !table.is_empty() {
            inner += &text("h3", &words.word(heading));
            inner += &table;
        }
    }
    inner += &curve::section(&format!("{id}-curve"), input, assessment, words);
    inner += &notes::findings("h3", &assessment.findings, words);
    inner += &notes::rules(input, assessment, words);
    around("section", &inner)
}

/// One goal: the verdict for anybody, for a specialist, the picture, and where it came from.
fn judged(id: &str, input: &Input, assessment: &Assessment, judgement: &Judgement, words: &Words) -> String {
    let goal = Message::new("report-goal")
        .with("what", figure_words(&judgement.goal.subject, judgement.attribute))
        .with("goal", goal_words(&judgement.goal.wanted));
    let mut inner = text("h3", &words.say(&goal));
    let class = format!("p class=\"verdict {}\"", judgement.verdict.code());
    inner += &text(&class, &verdict::sentence(judgement, words));
    for said in verdict::plainly(assessment, judgement, words) {
        inner += &text("p", &said);
    }
    if let Some(said) = verdict::for_a_specialist(assessment, judgement, words) {
        inner += &text("p class=\"specialist\"", &said);
    }
    if !judgement.goal.source.is_empty() {
        let source = Message::new("report-goal-source").with("source", judgement.goal.source.as_str());
        inner += &text("p class=\"quiet\"", &words.say(&source));
    }
    inner += &pictures::against_goal(id, input, assessment, judgement, words);
    inner += &notes::chain(input, assessment, Some(judgement), words);
    inner
}
