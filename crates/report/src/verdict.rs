//! A verdict in sentences: for anybody first, then for a specialist.

use crate::page::Page;
use crate::shown;
use tautline_engine::confidence::{Bounds, zeros};
use tautline_engine::estimate::SamplingError;
use tautline_engine::verdict::Verdict;
use tautline_survey::assess::{Assessment, Figure, Judgement, Threshold};
use tautline_survey::explain::{
    confidence_value, figure_words, goal_words, more_words, no_bound_words, verdict_words,
};
use tautline_survey::message::{Message, Value};
use tautline_survey::output::estimator;

/// Which of the two bounds decided.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Deciding {
    /// What is sure to be there is enough, or too much.
    Lower,
    /// What can be there at most is little enough, or too little.
    Upper,
    /// Both were needed.
    Both,
}

/// The bound that decided, or that a goal of this kind waits for.
pub(crate) fn deciding(judgement: &Judgement, bounds: Bounds) -> Deciding {
    match (judgement.verdict, judgement.threshold) {
        (Verdict::Met, Threshold::AtLeast(_)) | (Verdict::NotMet, Threshold::AtMost(_)) => Deciding::Lower,
        (Verdict::NotMet, Threshold::Between(_, high)) if bounds.lower > high => Deciding::Lower,
        (Verdict::Met, Threshold::AtMost(_))
        | (Verdict::NotMet, Threshold::AtLeast(_) | Threshold::Between(..)) => Deciding::Upper,
        _ => Deciding::Both,
    }
}

/// What the goal is about, and the verdict on it.
pub(crate) fn in_short(judgement: &Judgement, page: &Page) -> String {
    let message = Message::new("report-short")
        .with("what", figure_words(&judgement.goal.subject, judgement.attribute))
        .with("goal", goal_words(&judgement.goal.wanted))
        .with("verdict", Value::Word(judgement.verdict.code()));
    page.say(&message)
}

/// The verdict itself, in one sentence.
pub(crate) fn sentence(judgement: &Judgement, page: &Page) -> String {
    page.say(&verdict_words(&judgement.goal, judgement.verdict.code()))
}

/// What the readings show, in plain words.
pub(crate) fn plainly(assessment: &Assessment, judgement: &Judgement, page: &Page) -> Vec<String> {
    let what = figure_words(&judgement.goal.subject, judgement.attribute);
    let Some(figure) = judgement.figure.map(|at| &assessment.figures[at]) else {
        return vec![page.say(&Message::new("verdict-no-figure").with("what", what))];
    };
    let said = [Some(comes_to(figure, page)), sure_of(assessment, judgement, figure, page)];
    let said = said.into_iter().chain([more_words(judgement, figure)]).flatten();
    said.map(|message| page.say(&message)).collect()
}

/// What a figure comes to on the lines that were read.
pub(crate) fn comes_to(figure: &Figure, page: &Page) -> Message {
    let what = figure_words(&figure.subject, figure.attribute);
    let [low, high] = figure.ends().map(|end| shown::value(end.value, figure.attribute, page));
    if figure.high.is_some() {
        Message::new("report-comes-between").with("what", what).with("low", low).with("high", high)
    } else {
        Message::new("report-comes-to").with("what", what).with("value", low)
    }
}

/// What can be said of other lines than those read.
fn sure_of(assessment: &Assessment, judgement: &Judgement, figure: &Figure, page: &Page) -> Option<Message> {
    let Ok(bounds) = judgement.bounds else { return no_bound_words(assessment, judgement) };
    let [lower, upper] =
        [bounds.lower, bounds.upper].map(|bound| shown::value(bound, judgement.attribute, page));
    let lines = figure.estimate.units;
    let message = if judgement.from_zeros {
        let share = Value::Share(zeros::share_of_lines_at_most(lines, judgement.confidence), 1);
        Message::new("verdict-bounds-zeros").with("lines", lines).with("share", share)
    } else if judgement.verdict == Verdict::NotYetShown {
        Message::new("report-may-be-either")
    } else {
        match deciding(judgement, bounds) {
            Deciding::Lower => Message::new("report-is-or-more"),
            Deciding::Upper => Message::new("report-is-or-less"),
            Deciding::Both => Message::new("report-is-within"),
        }
    };
    let confidence = confidence_value(judgement.confidence);
    Some(message.with("lower", lower).with("upper", upper).with("confidence", confidence))
}

/// The same for a specialist; nothing where there is no error.
pub(crate) fn for_a_specialist(
    assessment: &Assessment,
    judgement: &Judgement,
    page: &Page,
) -> Option<String> {
    let figure = judgement.figure.map(|at| &assessment.figures[at])?;
    let SamplingError::Known { se, df } = figure.estimate.error else { return None };
    let bounds = judgement.bounds.ok().filter(|_| !judgement.from_zeros)?;
    let show = |number: f64| shown::value(number, judgement.attribute, page);
    let stated = match deciding(judgement, bounds) {
        Deciding::Lower => Message::new("report-lower-bound"),
        Deciding::Upper => Message::new("report-upper-bound"),
        Deciding::Both => Message::new("report-both-bounds"),
    }
    .with("confidence", confidence_value(judgement.confidence))
    .with("lower", show(bounds.lower))
    .with("upper", show(bounds.upper));
    let message = Message::new("report-specialist")
        .with("value", shown::estimate(figure, page))
        .with("se", show(se))
        .with("df", Value::Number(df, 1))
        .with("estimator", Value::Word(estimator(&figure.estimate.method)))
        .with("source", Value::Word(figure.estimate.method.source().code()))
        .with("method", Value::Word(figure.method.code()))
        .with("bounds", stated);
    Some(page.say(&message))
}
