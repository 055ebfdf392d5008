//! A change in sentences: for anybody first, then for a specialist, then the whole chain.

use super::{Beyond, ChangeFigure, ChangePart, Design, LostPairing, SiteChange};
use crate::explain::{Step, confidence_value, subject_words};
use crate::message::{Message, Value};
use crate::output::estimator;
use tautline_engine::change::Answer;
use tautline_engine::change::signs::Counted;
use tautline_engine::confidence::NoBound;
use tautline_engine::estimate::{Estimate, SamplingError};
use tautline_engine::num::quantile::t_quantile;

/// A difference of two covers, in percentage points without its sign.
fn size(difference: f64) -> Value {
    Message::new("points").with("figure", Value::Number(difference.abs() * 100.0, 1)).into()
}

/// The same with its sign.
fn signed(difference: f64) -> Value {
    let code = if difference > 0.0 { "points-up" } else { "points" };
    Message::new(code).with("figure", Value::Number(difference * 100.0, 1)).into()
}

/// The number alone with its sign, for between two ends.
pub(super) fn number(difference: f64) -> Value {
    let figure = Value::Number(difference * 100.0, 1);
    if difference > 0.0 { Message::new("plus").with("figure", figure).into() } else { figure }
}

fn about(change: &SiteChange, figure: &ChangeFigure, code: &'static str) -> Message {
    Message::new(code)
        .with("what", subject_words(&figure.subject))
        .with("from", change.from.to_string())
        .with("to", change.to.to_string())
        .with("before", Value::Share(figure.earlier.value, 1))
        .with("after", Value::Share(figure.later.value, 1))
        .with("change", size(figure.change.value))
}

/// What is said about a figure, the plain sentence first.
pub fn sentences(change: &SiteChange, figure: &ChangeFigure) -> Vec<Message> {
    let confidence = || confidence_value(change.confidence);
    let mut said = Vec::new();
    let matters = change.matters.unwrap_or_default();
    match figure.answer {
        Ok(Answer::Rose) => said.push(about(change, figure, "change-rose")),
        Ok(Answer::Fell) => said.push(about(change, figure, "change-fell")),
        Ok(Answer::NoneThatMatters) => {
            said.push(about(change, figure, "change-none-that-matters").with("matters", size(matters)));
        }
        Ok(Answer::NotShown) => said.push(about(change, figure, "change-not-shown")),
        Err(reason) => {
            said.push(about(change, figure, "change-untold").with("reason", Value::Word(reason.code())));
            return said;
        }
    }
    if let Ok(interval) = figure.interval {
        said.push(
            Message::new("change-from-to")
                .with("low", number(interval.low))
                .with("high", number(interval.high))
                .with("confidence", confidence()),
        );
        said.extend(beside_what_matters(change, figure, interval.low, interval.high));
    }
    if figure.answer == Ok(Answer::NotShown)
        && let Ok(hidden) = figure.hidden
    {
        said.push(
            Message::new("change-hidden").with("hidden", size(hidden)).with("confidence", confidence()),
        );
        said.extend(figure.lines_to_see.map(|lines| {
            Message::new("change-lines-to-see")
                .with("lines", lines)
                .with("matters", size(matters))
                .with("chance", Value::Share(change.power, 0))
        }));
    }
    said.extend(figure.seen.map(|seen| {
        Message::new("change-seen").with("seen", size(seen)).with("chance", Value::Share(change.power, 0))
    }));
    if let (Ok(p), SamplingError::Known { se, df }) = (figure.p, figure.change.error) {
        said.push(
            Message::new("change-specialist")
                .with("value", signed(figure.change.value))
                .with("se", size(se))
                .with("df", Value::Number(df, 1))
                .with("p", chance(p))
                .with("design", Value::Word(figure.design().code()))
                .with("pairs", figure.pairs()),
        );
    }
    said.extend(worth(figure));
    said.extend(lost(figure));
    said
}

/// How a change that is shown stands to the one that matters.
fn beside_what_matters(change: &SiteChange, figure: &ChangeFigure, low: f64, high: f64) -> Option<Message> {
    let matters = change.matters?;
    let shown = matches!(figure.answer, Ok(Answer::Rose | Answer::Fell));
    let (least, most) = (low.abs().min(high.abs()), low.abs().max(high.abs()));
    let message = if !shown {
        return None;
    } else if least >= matters {
        Message::new("change-matters")
    } else if most < matters {
        Message::new("change-too-small-to-matter")
    } else {
        Message::new("change-may-matter")
    };
    Some(message.with("matters", size(matters)))
}

/// A probability for people: three decimals, or less than a thousandth.
fn chance(p: f64) -> Value {
    if p < 0.0005 { Value::Word("under-a-thousandth") } else { Value::Number(p, 3) }
}

fn worth(figure: &ChangeFigure) -> Option<Message> {
    let times = figure.worth?;
    let code = if times > 1.0 { "pairing-is-worth" } else { "pairing-is-worth-nothing" };
    Some(Message::new(code).with("times", Value::Number(times, 1)))
}

/// What it cost to take lines of one name as new ones.
fn lost(figure: &ChangeFigure) -> Option<Message> {
    let LostPairing { se, times } = figure.lost?;
    let SamplingError::Known { se: own, .. } = figure.change.error else { return None };
    let costs = times.filter(|times| *times > 1.0);
    let code = if costs.is_some() { "pairing-lost" } else { "pairing-lost-nothing" };
    let message = Message::new(code).with("own", size(own)).with("same", size(se));
    Some(message.with("times", Value::Number(costs.unwrap_or(1.0), 1)))
}

/// What a site did beyond its untreated neighbour.
pub fn untreated_words(change: &SiteChange, beyond: &Beyond) -> Vec<Message> {
    let code = match beyond.answer {
        Ok(Answer::Rose) => "beyond-more",
        Ok(Answer::Fell) => "beyond-less",
        _ => "beyond-not-shown",
    };
    let mut said = vec![
        Message::new(code)
            .with("site", change.site.as_str())
            .with("untreated", beyond.untreated.as_str())
            .with("difference", size(beyond.difference.value)),
    ];
    if let Ok(interval) = beyond.interval {
        said.push(
            Message::new("change-from-to")
                .with("low", number(interval.low))
                .with("high", number(interval.high))
                .with("confidence", confidence_value(change.confidence)),
        );
    }
    said.push(Message::new("beyond-one-of-each"));
    said
}

/// The chain of a change: estimate, strata, error, interval, checks, then each line.
pub fn chain(change: &SiteChange, figure: &ChangeFigure) -> Vec<Step> {
    let mut steps =
        vec![step(0, about(change, figure, "explain-change").with("value", signed(figure.change.value)))];
    for part in &figure.parts {
        steps.extend(part_steps(part));
    }
    if figure.parts.len() > 1 {
        steps.push(step(1, error(&figure.change)));
    }
    if let (SamplingError::Known { df, .. }, Ok(interval)) = (figure.change.error, figure.interval) {
        let below = f64::midpoint(1.0, change.confidence);
        let how = Message::new("explain-student-t")
            .with("t", Value::Number(t_quantile(below, df), 4))
            .with("probability", Value::Number(below, 3))
            .with("df", Value::Number(df, 2));
        steps.push(step(
            1,
            Message::new("explain-two-sided")
                .with("confidence", confidence_value(change.confidence))
                .with("how", how)
                .with("low", signed(interval.low))
                .with("high", signed(interval.high)),
        ));
    }
    if let (Ok(hidden), Ok(p)) = (figure.hidden, figure.p) {
        steps.push(step(1, Message::new("explain-change-p").with("p", chance(p))));
        steps.push(step(1, Message::new("explain-change-hidden").with("hidden", size(hidden))));
    }
    steps.extend(checks(figure));
    for line in &change.lines {
        let [before, after] = [&change.earlier[line.earlier], &change.later[line.later]];
        let cover = |one: &crate::line::LineResult| {
            Value::Share(one.share(crate::assess::intercept(one, &figure.subject).low), 2)
        };
        steps.push(step(
            2,
            Message::new("explain-change-line")
                .with("line", line.line.as_str())
                .with("before", cover(before))
                .with("after", cover(after)),
        ));
    }
    steps
}

fn step(depth: usize, message: Message) -> Step {
    Step { depth, message }
}

fn part_steps(part: &ChangePart) -> Vec<Step> {
    let mut steps = Vec::new();
    let depth = if part.name.is_empty() {
        1
    } else {
        steps.push(step(
            1,
            Message::new("explain-stratum")
                .with("stratum", part.name.as_str())
                .with("weight", Value::Share(part.weight, 2))
                .with("value", signed(part.change.value)),
        ));
        2
    };
    steps.push(step(
        depth,
        Message::new("explain-change-design")
            .with("design", Value::Word(part.design.code()))
            .with("pairs", part.pairs)
            .with("before", part.once.0)
            .with("after", part.once.1)
            .with("estimator", Value::Word(estimator(&part.change.method)))
            .with("source", Value::Word(part.change.method.source().code())),
    ));
    steps.push(step(depth, error(&part.change)));
    steps
}

fn error(estimate: &Estimate) -> Message {
    match estimate.error {
        SamplingError::Known { se, df } => {
            Message::new("explain-error").with("se", size(se)).with("df", Value::Number(df, 2))
        }
        SamplingError::Unknown(reason) => {
            Message::new("explain-no-error").with("reason", Value::Word(NoBound::NoError(reason).code()))
        }
    }
}

fn checks(figure: &ChangeFigure) -> Vec<Step> {
    let Some(checks) = figure.checks else { return Vec::new() };
    let mut steps = vec![step(
        1,
        Message::new(match checks.counted {
            Counted::All => "explain-signs",
            Counted::Draws(_) => "explain-signs-drawn",
        })
        .with("p", chance(checks.signs)),
    )];
    steps.extend(checks.ranks.map(|ranks| {
        step(
            1,
            Message::new("explain-ranks")
                .with("above", Value::Number(ranks.above, 1))
                .with("lines", ranks.differences)
                .with("p", chance(ranks.two_sided)),
        )
    }));
    if let (Some(middle), Some((low, high, confidence))) = (checks.median, checks.median_interval) {
        steps.push(step(
            1,
            Message::new("explain-median-change")
                .with("value", signed(middle))
                .with("low", signed(low))
                .with("high", signed(high))
                .with("confidence", Value::Share(confidence, 1)),
        ));
    }
    debug_assert!(figure.design() == Design::Paired, "checks are of lines read twice");
    steps
}
