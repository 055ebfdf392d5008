//! Cover with its error: against a goal, and of everything that was worked out.

use super::{drawn, share};
use crate::document::Picture;
use crate::page::Page;
use crate::shown;
use crate::verdict::{Deciding, deciding};
use tautline_engine::verdict::Verdict;
use tautline_figures::cover::{self, Bounds, Cover, Estimate, Row};
use tautline_figures::{Goal, Relation, Share, Tone};
use tautline_survey::assess::{Assessment, Figure, Judgement, NoVerdict, Threshold};
use tautline_survey::explain::{confidence_value, goal_words};
use tautline_survey::goal::Subject;
use tautline_survey::message::{Message, Value};

/// Cover against one goal; nothing for a goal of height.
pub(crate) fn against_goal(
    id: &str,
    assessment: &Assessment,
    judgement: &Judgement,
    page: &Page,
) -> Option<Picture> {
    let figure = judgement.figure.map(|at| &assessment.figures[at]).filter(|figure| figure.is_cover())?;
    let goal = page.say(&goal_words(&judgement.goal.wanted));
    let (bounds, told) = goal_bounds(judgement, figure, page);
    let relation = match judgement.threshold {
        Threshold::AtLeast(value) => Relation::AtLeast(share(value)),
        Threshold::AtMost(value) => Relation::AtMost(share(value)),
        Threshold::Between(low, high) => Relation::Between(share(low), share(high)),
    };
    let label = page.say(&Message::new("report-goal-mark").with("goal", goal.as_str()));
    let row =
        Row { bounds, figure: told.clone(), goal: Some(Goal { relation, label }), ..row(figure, None, page) };
    let chart =
        Cover { rows: vec![row], words: chart_words(judgement.confidence, "report-mark-bounds", page) };
    let title = Message::new("report-picture-goal").with("what", shown::name(figure, page));
    let said = Message::new("report-picture-goal-said")
        .with("figure", told)
        .with("goal", goal)
        .with("verdict", Value::Word(judgement.verdict.code()));
    Some(drawn(id, &page.say(&title), &page.say(&said), page, |frame| cover::draw(&chart, frame)))
}

/// The bound that decides, or that the goal waits for, as a mark and in words.
fn goal_bounds(judgement: &Judgement, figure: &Figure, page: &Page) -> (Bounds, String) {
    let value = shown::estimate(figure, page);
    let bounds = match judgement.bounds {
        Ok(bounds) => bounds,
        Err(NoVerdict::NoBound(reason)) => {
            let message = Message::new("report-row-no-bound").with("value", value);
            return (Bounds::Unknown, page.say(&message.with("reason", Value::Word(reason.code()))));
        }
        Err(NoVerdict::NoFigure) => return (Bounds::Unknown, value),
    };
    // while nothing is shown yet, a goal on one side waits for its own bound
    let waiting = judgement.verdict == Verdict::NotYetShown;
    let side = match (waiting, judgement.threshold) {
        (true, Threshold::AtLeast(_)) => Deciding::Lower,
        (true, Threshold::AtMost(_)) => Deciding::Upper,
        _ => deciding(judgement, bounds),
    };
    let show = |bound| page.words.percent(bound, 1);
    let (mark, message) = match side {
        Deciding::Lower => (
            Bounds::AtLeast(share(bounds.lower)),
            Message::new("report-row-at-least").with("bound", show(bounds.lower)),
        ),
        Deciding::Upper => (
            Bounds::AtMost(share(bounds.upper)),
            Message::new("report-row-at-most").with("bound", show(bounds.upper)),
        ),
        Deciding::Both => (
            Bounds::Between(share(bounds.lower), share(bounds.upper)),
            Message::new("report-row-between")
                .with("low", show(bounds.lower))
                .with("high", show(bounds.upper)),
        ),
    };
    (mark, page.say(&message.with("value", value)))
}

/// Cover of some figures, with two-sided intervals; species in their colours.
pub(crate) fn of_figures(id: &str, assessment: &Assessment, figures: &[&Figure], page: &Page) -> Picture {
    let tone = |figure: &Figure| match &figure.subject {
        Subject::Species(code) => Some(page.tones.tone(code)),
        _ => None,
    };
    let rows: Vec<Row> = figures.iter().map(|figure| row(figure, tone(figure), page)).collect();
    let described: Vec<String> = rows.iter().map(|row| format!("{}: {}", row.name, row.figure)).collect();
    let chart = Cover { rows, words: chart_words(assessment.confidence, "report-mark-interval", page) };
    let title = page.word("report-picture-figures");
    drawn(id, &title, &described.join("; "), page, |frame| cover::draw(&chart, frame))
}

/// A figure with its two-sided interval.
fn row(figure: &Figure, tone: Option<Tone>, page: &Page) -> Row {
    let value = shown::estimate(figure, page);
    let [low, high] = figure.ends().map(|end| share(end.value));
    let (bounds, told) = match figure.interval {
        Ok(interval) => (
            Bounds::Between(share(interval.low), share(interval.high)),
            Message::new("report-row-between")
                .with("low", page.words.percent(interval.low, 1))
                .with("high", page.words.percent(interval.high, 1)),
        ),
        Err(reason) => {
            (Bounds::Unknown, Message::new("report-row-no-bound").with("reason", Value::Word(reason.code())))
        }
    };
    let known = figure.high.is_none();
    Row {
        name: shown::name(figure, page),
        figure: page.say(&told.with("value", value)),
        tone,
        lines: figure.values.iter().filter_map(|(_, line)| Share::new(line.share())).collect(),
        estimate: Some(if known { Estimate::Figure(low) } else { Estimate::Between(low, high) }),
        bounds,
        goal: None,
    }
}

fn chart_words(confidence: f64, two_sided: &'static str, page: &Page) -> cover::Words {
    let sure = |code| page.say(&Message::new(code).with("confidence", confidence_value(confidence)));
    cover::Words {
        axis: page.word("report-axis"),
        estimate: page.word("report-mark-estimate"),
        between: page.word("report-mark-between"),
        lines: page.word("report-mark-lines"),
        one_sided: sure("report-mark-one-sided"),
        two_sided: sure(two_sided),
        met: page.word("report-mark-met"),
    }
}
