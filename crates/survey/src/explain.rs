//! How a figure came about: from the verdict through the formulas, with their sources, down to the readings.

use crate::assess::{Assessment, Attribute, Figure, Judgement, NoVerdict, Part, PartKind, intercept};
use crate::goal::{Goal, Relation, Subject, Wanted};
use crate::input::Input;
use crate::limits;
use crate::line::LineResult;
use crate::message::{Message, Value};
use crate::output::estimator;
use crate::visit::{Extent, State};
use tautline_engine::confidence::{Method, NoBound, Tail, zeros};
use tautline_engine::cover::Closure;
use tautline_engine::effort::MoreUnits;
use tautline_engine::effort::sequential::Step as Look;
use tautline_engine::estimate::{Estimate, SamplingError};
use tautline_engine::length::Length;
use tautline_engine::num::quantile::t_quantile;

/// One link of the chain: how deep it stands, and what it says.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// 0 for the figure itself, deeper for what it came from.
    pub depth: usize,
    /// What it says.
    pub message: Message,
}

fn step(depth: usize, message: Message) -> Step {
    Step { depth, message }
}

/// A figure with its unit, for people: per cent with one decimal, metres with two, plants per hectare.
pub fn figure_value(value: f64, attribute: Attribute) -> Value {
    in_unit(value, attribute, [1, 2, 0])
}

/// The same with two decimals more, for a chain that is followed.
fn shown(value: f64, attribute: Attribute) -> Value {
    in_unit(value, attribute, [3, 4, 2])
}

fn in_unit(value: f64, attribute: Attribute, [share, metres, plants]: [u32; 3]) -> Value {
    const SQUARE_METRES: f64 = 10_000.0; // in a hectare
    match attribute {
        Attribute::Cover => Value::Share(value, share),
        Attribute::Height => Message::new("metres").with("figure", Value::Number(value, metres)).into(),
        Attribute::Density => {
            Message::new("per-hectare").with("figure", Value::Number(value * SQUARE_METRES, plants)).into()
        }
    }
}

/// A confidence for people: `90 %`, `97.5 %`.
pub fn confidence_value(confidence: f64) -> Value {
    let whole = (confidence * 100.0).round() / 100.0;
    Value::Share(confidence, u32::from((confidence - whole).abs() > 1e-9))
}

/// The words for a subject.
pub fn subject_words(subject: &Subject) -> Message {
    match subject {
        Subject::Canopy => Message::new("canopy-cover"),
        Subject::Sum => Message::new("sum-of-species"),
        Subject::Dead => Message::new("dead-canopy"),
        Subject::Species(code) if code.is_empty() => Message::new("unnamed-plants"),
        Subject::Species(code) => Message::new("cover-of").with("what", code.as_str()),
        Subject::Form(form) => Message::new("cover-of").with("what", Value::Word(form.word())),
        Subject::Group(group) => Message::new("cover-of").with("what", group.as_str()),
    }
}

/// The plants that a figure is about.
pub fn plants_words(subject: &Subject) -> Value {
    match subject {
        Subject::Species(code) if code.is_empty() => Value::Word("unnamed-plants"),
        Subject::Species(code) => Value::from(code.as_str()),
        Subject::Form(form) => Value::Word(form.word()),
        Subject::Group(group) => Value::from(group.as_str()),
        _ => Value::Word("plants"),
    }
}

/// The words for what a figure is: cover, mean height or plants per area of a subject.
pub fn figure_words(subject: &Subject, attribute: Attribute) -> Message {
    match attribute {
        Attribute::Cover => subject_words(subject),
        Attribute::Height => Message::new("height-of").with("what", plants_words(subject)),
        Attribute::Density => Message::new("density-of").with("what", plants_words(subject)),
    }
}

/// The words for how many more lines or plots would settle a verdict; nothing where it needs none.
pub fn more_words(judgement: &Judgement, figure: &Figure) -> Option<Message> {
    let message = match judgement.more? {
        MoreUnits::More(more) => {
            let counts_plots = figure.estimate.method.counts_plots();
            Message::new(if counts_plots { "verdict-more-plots" } else { "verdict-more-lines" })
                .with("more", more)
        }
        MoreUnits::NoPracticalNumber => {
            Message::new("verdict-no-practical-number").with("most", limits::MOST_PRACTICAL_LINES)
        }
    };
    let chance = f64::from(limits::CHANCE_TO_SETTLE_PER_MILLE) / 1000.0;
    Some(message.with("chance", Value::Share(chance, 0)))
}

/// The words for where a visit stands under a sequential plan; nothing where it was read under none.
pub fn standing_words(judgement: &Judgement) -> Option<Message> {
    let standing = judgement.standing?;
    let code = match standing.step {
        Look::NoLook => "standing-no-look",
        Look::GoOn => "standing-go-on",
        Look::Met => "standing-met",
        Look::NotMet => "standing-not-met",
        Look::End => "standing-end",
    };
    Some(Message::new(code).with("lines", standing.lines))
}

/// The words for why a verdict has no bounds; nothing where it has some.
pub fn no_bound_words(assessment: &Assessment, judgement: &Judgement) -> Option<Message> {
    let reason = match judgement.bounds.err()? {
        NoVerdict::NoBound(reason) => reason,
        NoVerdict::NoFigure => {
            let what = figure_words(&judgement.goal.subject, judgement.attribute);
            return Some(Message::new("verdict-no-figure").with("what", what));
        }
    };
    let units = judgement.figure.map_or(0, |at| assessment.figures[at].estimate.units);
    Some(match reason {
        NoBound::NothingFound => Message::new("verdict-zeros")
            .with("lines", units)
            .with("confidence", confidence_value(judgement.confidence))
            .with("share", Value::Share(zeros::share_of_lines_at_most(units, judgement.confidence), 1)),
        reason => Message::new("verdict-no-bound").with("reason", Value::Word(reason.code())),
    })
}

/// The words for the protocol with this fingerprint, or for there being none.
pub fn protocol_words(input: &Input, fingerprint: &str) -> Message {
    match input.protocols.get(fingerprint) {
        Some(protocol) => Message::new("title-protocol")
            .with("name", protocol.name.as_str())
            .with("fingerprint", fingerprint.chars().take(12).collect::<String>()),
        None => Message::new("title-no-protocol"),
    }
}

/// The verdict on a goal, by its code, in one sentence.
pub fn verdict_words(goal: &Goal, verdict: &str) -> Message {
    let code = match verdict {
        "met" => "verdict-met",
        "not-met" => "verdict-not-met",
        _ => "verdict-not-yet-shown",
    };
    let what = figure_words(&goal.subject, Attribute::of(&goal.wanted));
    Message::new(code).with("goal", goal_words(&goal.wanted)).with("what", what)
}

/// The words for what a goal asks: `at least 15 %`.
pub fn goal_words(wanted: &Wanted) -> Message {
    let length = |measure: &crate::measure::Measure| Value::Length(measure.length(), measure.notation());
    let percent = |percent: &crate::goal::Percent| {
        let places = [(10_000, 0), (1_000, 1), (100, 2), (10, 3)]
            .into_iter()
            .find(|(step, _)| percent.0.is_multiple_of(*step));
        Value::Share(percent.share(), places.map_or(4, |(_, places)| places))
    };
    match wanted {
        Wanted::Cover(relation) => relation_words(relation, percent),
        Wanted::Height(relation) => relation_words(relation, length),
    }
}

fn relation_words<T>(relation: &Relation<T>, value: impl Fn(&T) -> Value) -> Message {
    match relation {
        Relation::AtLeast(at) => Message::new("at-least").with("value", value(at)),
        Relation::AtMost(at) => Message::new("at-most").with("value", value(at)),
        Relation::Between(low, high) => {
            Message::new("between").with("low", value(low)).with("high", value(high))
        }
    }
}

/// The chain of a verdict: goal, bound, then the figure it rests on.
pub fn verdict(input: &Input, assessment: &Assessment, judgement: &Judgement) -> Vec<Step> {
    let mut steps = vec![step(
        0,
        Message::new("explain-verdict")
            .with("goal", goal_words(&judgement.goal.wanted))
            .with("what", figure_words(&judgement.goal.subject, judgement.attribute))
            .with("verdict", Value::Word(judgement.verdict.code())),
    )];
    let Some(figure) = judgement.figure.map(|at| &assessment.figures[at]) else { return steps };
    match judgement.bounds {
        Ok(bounds) => steps.push(step(
            1,
            Message::new(if judgement.from_zeros { "explain-bounds-zeros" } else { "explain-bounds" })
                .with("confidence", confidence_value(judgement.confidence))
                .with("lower", shown(bounds.lower, judgement.attribute))
                .with("upper", shown(bounds.upper, judgement.attribute)),
        )),
        Err(_) => steps.push(step(1, Message::new("explain-no-bounds"))),
    }
    for end in figure.ends().into_iter().take(if figure.high.is_some() { 2 } else { 1 }) {
        steps.extend(limits(
            figure,
            end,
            Tail::of_bound(judgement.confidence),
            judgement.confidence,
            "explain-one-sided",
        ));
    }
    steps.extend(self::figure(input, assessment, figure).into_iter().map(|s| step(s.depth + 1, s.message)));
    steps
}

/// The chain of a figure: estimate, strata, interval, then each line down to its readings.
pub fn figure(input: &Input, assessment: &Assessment, figure: &Figure) -> Vec<Step> {
    let mut steps = vec![step(
        0,
        Message::new("explain-figure")
            .with("what", figure_words(&figure.subject, figure.attribute))
            .with("value", shown(figure.estimate.value, figure.attribute)),
    )];
    if let Some(high) = &figure.high {
        steps.push(step(
            1,
            Message::new("explain-high-end").with("value", shown(high.value, figure.attribute)),
        ));
    }
    steps.push(step(1, formula(figure, &figure.estimate, &(0..figure.values.len()).collect::<Vec<_>>())));
    steps.push(step(1, error(&figure.estimate, figure.attribute)));
    for part in figure.parts.iter().filter(|part| part.kind == PartKind::Stratum) {
        steps.extend(stratum(figure, part));
    }
    steps.extend(limits(
        figure,
        &figure.estimate,
        Tail::of_interval(assessment.confidence),
        assessment.confidence,
        "explain-two-sided",
    ));
    for &(at, _) in &figure.values {
        steps.extend(
            line(input, &assessment.lines[at], &figure.subject)
                .into_iter()
                .map(|s| step(s.depth + 1, s.message)),
        );
    }
    steps
}

fn stratum(figure: &Figure, part: &Part) -> Vec<Step> {
    vec![
        step(
            2,
            Message::new("explain-stratum")
                .with("stratum", part.name.as_str())
                .with("weight", Value::Share(part.weight, 2))
                .with("value", shown(part.estimate.value, figure.attribute)),
        ),
        step(3, formula(figure, &part.estimate, &part.lines)),
        step(3, error(&part.estimate, figure.attribute)),
    ]
}

/// The estimator with what went into it.
fn formula(figure: &Figure, estimate: &Estimate, own: &[usize]) -> Message {
    let lines = own.iter().map(|&at| figure.values[at].1);
    let (y, x) = lines.fold((0.0, 0.0), |(y, x), line| (y + line.intercept, x + line.length));
    let shares = own.iter().map(|&at| Value::Share(figure.values[at].1.share(), 3)).collect();
    let code: &'static str = match estimator(&estimate.method) {
        "mean-of-lines" => "explain-mean-of-lines",
        "ratio-of-sums" => "explain-ratio-of-sums",
        "mean-of-plots" => "explain-mean-of-plots",
        "ratio-of-plots" => "explain-ratio-of-plots",
        "mean-of-values" => "explain-mean-of-values",
        _ => "explain-strata-by-area",
    };
    let metres = |millimetres: f64| Value::Number(millimetres / 1000.0, 4);
    Message::new(code)
        .with("n", estimate.lines)
        .with("units", estimate.units)
        .with("shares", Value::List(shares))
        .with("intercept", metres(y))
        .with("length", metres(x))
        .with("value", shown(estimate.value, figure.attribute))
        .with("source", Value::Word(estimate.method.source().code()))
}

fn error(estimate: &Estimate, attribute: Attribute) -> Message {
    match estimate.error {
        SamplingError::Known { se, df } => {
            Message::new("explain-error").with("se", shown(se, attribute)).with("df", Value::Number(df, 2))
        }
        SamplingError::Unknown(reason) => {
            Message::new("explain-no-error").with("reason", Value::Word(NoBound::NoError(reason).code()))
        }
    }
}

/// The two limits of an estimate with this tail beyond each, and how they were made.
fn limits(
    figure: &Figure,
    estimate: &Estimate,
    tail: Tail,
    confidence: f64,
    kind: &'static str,
) -> Option<Step> {
    let SamplingError::Known { se, df: own } = estimate.error else { return None };
    let df = figure.method.df(estimate.value, se, own);
    let method = match figure.method {
        Method::StudentT => "explain-student-t",
        Method::LogT => "explain-log-t",
        Method::LogitT => "explain-logit-t",
        Method::LogEffective => "explain-log-t-effective",
        Method::LogitEffective => "explain-logit-t-effective",
        Method::Bca => "explain-bca",
    };
    let how = Message::new(method)
        .with("t", Value::Number(t_quantile(1.0 - tail.probability(), df), 4))
        .with("probability", Value::Number(1.0 - tail.probability(), 3))
        .with("df", Value::Number(df, 2))
        .with("own", Value::Number(own, 2));
    // the bootstrap's own bounds stand in the verdict; its interval stands with the figure
    let (low, high) = match figure.method {
        Method::Bca if kind == "explain-two-sided" => {
            figure.interval.map(|both| (both.low, both.high)).ok()?
        }
        Method::Bca => return None,
        method => tautline_engine::confidence::ends(estimate, method, tail).ok()?,
    };
    let message = Message::new(kind)
        .with("confidence", confidence_value(confidence))
        .with("how", how)
        .with("low", shown(low, figure.attribute))
        .with("high", shown(high, figure.attribute));
    Some(step(1, message))
}

/// The chain of one line: its cover, what the rule closed, and every reading.
pub fn line(input: &Input, result: &LineResult, subject: &Subject) -> Vec<Step> {
    let visit = &input.visits[result.visit];
    let notation = result.notation(input);
    let show = |length: Length| Value::Length(length, notation);
    let bounds = intercept(result, subject);
    let mut steps = vec![step(
        0,
        Message::new(if bounds.is_known() { "explain-line" } else { "explain-line-between" })
            .with("line", result.line.as_str())
            .with("intercept", show(bounds.low))
            .with("high", show(bounds.high))
            .with("length", Value::Length(result.read, notation))
            .with("cover", Value::Share(result.share(bounds.low), 3))
            .with("high-cover", Value::Share(result.share(bounds.high), 3)),
    )];
    let closed = result.cover.iter().flat_map(|cover| {
        let own = cover.species.iter().flat_map(|species| {
            species.closed.iter().map(|closed| (result.codes[species.species as usize].as_str(), closed))
        });
        own.chain(cover.between.iter().map(|closed| ("", closed)))
    });
    for (code, closed) in closed {
        let why = match closed.closure {
            Closure::Gap => "closed-gap",
            Closure::DeadJoined => "closed-dead",
            Closure::LineEnd => "closed-line-end",
            Closure::BetweenSpecies => "closed-between",
        };
        steps.push(step(
            1,
            Message::new("explain-closed")
                .with("species", code)
                .with("why", Value::Word(why))
                .with("start", show(closed.stretch.start()))
                .with("stop", show(closed.stretch.stop()))
                .with("gap", show(closed.stretch.length())),
        ));
    }
    for intercept in &visit.intercepts {
        let place = intercept.place.as_ref();
        let edges = match &intercept.extent {
            Extent::Edges { start, stop } => Message::new("explain-edges")
                .with("start", Value::Length(start.length(), start.notation()))
                .with("stop", Value::Length(stop.length(), stop.notation()))
                .with("length", show(stop.length() - start.length())),
            Extent::Length(length) => Message::new("explain-length")
                .with("length", Value::Length(length.length(), length.notation())),
        };
        steps.push(step(
            1,
            Message::new("explain-reading")
                .with("file", place.map_or("", |place| place.file.as_str()))
                .with("row", place.map_or(0, |place| place.row))
                .with("species", intercept.species.as_str())
                .with("state", Value::Word(if intercept.state == State::Live { "live" } else { "dead" }))
                .with("reading", edges),
        ));
    }
    steps
}
