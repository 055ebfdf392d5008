//! The verdict in sentences: for anybody, then for a specialist.

use tautline_engine::confidence::{NoBound, zeros};
use tautline_engine::estimate::SamplingError;
use tautline_survey::assess::{Assessment, Judgement, NoVerdict};
use tautline_survey::explain::{
    confidence_value, figure_value, figure_words, more_words, no_bound_words, standing_words, verdict_words,
};
use tautline_survey::message::{Message, Value};
use tautline_survey::output::estimator;
use tautline_words::Words;

/// A figure, or the two ends it is known between.
fn ends([low, high]: [f64; 2], show: impl Fn(f64) -> String, words: &Words) -> String {
    super::between(low, high, low.to_bits() == high.to_bits(), show, words)
}

/// The sentences of a verdict, the plain one first.
pub(super) fn verdict(assessment: &Assessment, judgement: &Judgement, words: &Words) -> Vec<String> {
    let what = figure_words(&judgement.goal.subject, judgement.attribute);
    let confidence = confidence_value(judgement.confidence);
    let mut said = vec![words.say(&verdict_words(&judgement.goal, judgement.verdict.code()))];
    let Some(figure) = judgement.figure.map(|at| &assessment.figures[at]) else {
        said.push(words.say(&Message::new("verdict-no-figure").with("what", what)));
        return said;
    };
    let show = |figure: f64| words.value(&figure_value(figure, judgement.attribute));
    let lines = figure.estimate.units;
    let share_of_lines = || Value::Share(zeros::share_of_lines_at_most(lines, judgement.confidence), 1);
    match judgement.bounds {
        Ok(bounds) if judgement.from_zeros => said.push(
            words.say(
                &Message::new("verdict-bounds-zeros")
                    .with("lines", lines)
                    .with("confidence", confidence)
                    .with("share", share_of_lines())
                    .with("upper", show(bounds.upper)),
            ),
        ),
        Ok(bounds) => {
            said.push(
                words.say(
                    &Message::new("verdict-why-at-least")
                        .with("confidence", confidence.clone())
                        .with("lower", show(bounds.lower))
                        .with("upper", show(bounds.upper)),
                ),
            );
            if let SamplingError::Known { se, df } = figure.estimate.error {
                said.push(
                    words.say(
                        &Message::new("verdict-specialist")
                            .with("value", ends(figure.ends().map(|end| end.value), show, words))
                            .with("se", show(se))
                            .with("df", Value::Number(df, 1))
                            .with("estimator", Value::Word(estimator(&figure.estimate.method)))
                            .with("method", Value::Word(figure.method.code()))
                            .with("confidence", confidence)
                            .with("lower", show(bounds.lower))
                            .with("upper", show(bounds.upper)),
                    ),
                );
            }
        }
        Err(reason) => {
            said.extend(no_bound_words(assessment, judgement).map(|message| words.say(&message)));
            if reason == NoVerdict::NoBound(NoBound::NothingFound) {
                said.push(words.word("verdict-zeros-option"));
            }
        }
    }
    said.extend(more_words(judgement, figure).map(|message| words.say(&message)));
    said.extend(standing_words(judgement).map(|message| words.say(&message)));
    said
}
