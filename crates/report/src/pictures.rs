//! The pictures of a page, each drawn for a wide page and for a narrow one.

use crate::markup::picture;
use crate::shown;
use crate::verdict::{Deciding, deciding};
use std::collections::BTreeMap;
use tautline_engine::stretch::{Stretch, without};
use tautline_engine::verdict::Verdict;
use tautline_figures::cover::{self, Bounds, Cover, Estimate, Row};
use tautline_figures::line::{self, Lane, Line, Lines, Reading, Total};
use tautline_figures::{Frame, Goal, Palette, Relation, Share, Tone};
use tautline_survey::assess::{Assessment, Attribute, Figure, Judgement, Threshold};
use tautline_survey::explain::{confidence_value, figure_words, goal_words};
use tautline_survey::goal::Subject;
use tautline_survey::input::Input;
use tautline_survey::line::{LineResult, Recording};
use tautline_survey::message::{Message, Value};
use tautline_words::Words;

/// The colour of each species, the same through the whole page.
pub(crate) struct Tones(BTreeMap<String, Tone>);

impl Tones {
    /// Colours in the order of the codes.
    pub(crate) fn of(assessments: &[&Assessment]) -> Self {
        let lines = assessments.iter().flat_map(|assessment| &assessment.lines);
        let codes = lines.flat_map(|line| line.species.iter().map(|species| species.code.clone()));
        let mut tones: BTreeMap<String, Tone> = codes.map(|code| (code, Tone(0))).collect();
        for (number, tone) in (0..=u8::MAX).cycle().zip(tones.values_mut()) {
            *tone = Tone(number % 6);
        }
        Self(tones)
    }

    fn tone(&self, code: &str) -> Tone {
        self.0.get(code).copied().unwrap_or_default()
    }
}

/// Draws one picture at both widths.
pub(crate) fn twice(id: &str, title: &str, description: &str, draw: impl Fn(&Frame) -> String) -> String {
    let frame = |name: &str, width| Frame {
        title: title.to_owned(),
        description: description.to_owned(),
        ..Frame::new(&format!("{id}-{name}"), width, Palette::screen())
    };
    picture(&draw(&frame("wide", 704)), &draw(&frame("narrow", 358)))
}

/// What a figure is about; a species by its plant's name.
pub(crate) fn name(figure: &Figure, input: &Input, words: &Words) -> String {
    match &figure.subject {
        Subject::Species(code) if !code.is_empty() => {
            let plant = plant_name(code, input);
            match figure.attribute {
                Attribute::Cover => plant,
                Attribute::Height => words.say(&Message::new("height-of").with("what", plant)),
                Attribute::Density => words.say(&Message::new("density-of").with("what", plant)),
            }
        }
        subject => words.say(&figure_words(subject, figure.attribute)),
    }
}

/// A plant's common name where the list has one, then its botanical name, else its code.
pub(crate) fn plant_name(code: &str, input: &Input) -> String {
    let plant = input.plants.find(code);
    let names = plant.into_iter().flat_map(|plant| [&plant.common, &plant.name]);
    names.into_iter().find(|name| !name.is_empty()).map_or_else(|| code.to_owned(), Clone::clone)
}

/// Cover against one goal; nothing for a goal of height.
pub(crate) fn against_goal(
    id: &str,
    input: &Input,
    assessment: &Assessment,
    judgement: &Judgement,
    words: &Words,
) -> String {
    let Some(figure) = judgement.figure.map(|at| &assessment.figures[at]).filter(|figure| figure.is_cover())
    else {
        return String::new();
    };
    let goal = words.say(&goal_words(&judgement.goal.wanted));
    let mark = words.say(&Message::new("report-goal-mark").with("goal", goal.as_str()));
    let (bounds, told) = goal_bounds(judgement, figure, words);
    let share = |value| Share::new(value).unwrap_or(Share::ZERO);
    let relation = match judgement.threshold {
        Threshold::AtLeast(value) => Relation::AtLeast(share(value)),
        Threshold::AtMost(value) => Relation::AtMost(share(value)),
        Threshold::Between(low, high) => Relation::Between(share(low), share(high)),
    };
    let row = Row {
        bounds,
        figure: told.clone(),
        goal: Some(Goal { relation, label: mark }),
        ..row(figure, input, words)
    };
    let chart =
        Cover { rows: vec![row], words: chart_words(judgement.confidence, "report-mark-bounds", words) };
    let title = words.say(&Message::new("report-picture-goal").with("what", name(figure, input, words)));
    let said = Message::new("report-picture-goal-said")
        .with("figure", told)
        .with("goal", goal)
        .with("verdict", Value::Word(judgement.verdict.code()));
    twice(id, &title, &words.say(&said), |frame| cover::draw(&chart, frame))
}

/// The bound that decides, or that the goal waits for, as a mark and in words.
fn goal_bounds(judgement: &Judgement, figure: &Figure, words: &Words) -> (Bounds, String) {
    let value = shown::estimate(figure, words);
    let bounds = match judgement.bounds {
        Ok(bounds) => bounds,
        Err(tautline_survey::assess::NoVerdict::NoBound(reason)) => {
            let message = Message::new("report-row-no-bound").with("value", value);
            return (Bounds::Unknown, words.say(&message.with("reason", Value::Word(reason.code()))));
        }
        Err(tautline_survey::assess::NoVerdict::NoFigure) => return (Bounds::Unknown, value),
    };
    let share = |value| Share::new(value).unwrap_or(Share::ZERO);
    // while nothing is shown yet, a goal on one side waits for its own bound
    let waiting = judgement.verdict == Verdict::NotYetShown;
    let side = match (waiting, judgement.threshold) {
        (true, Threshold::AtLeast(_)) => Deciding::Lower,
        (true, Threshold::AtMost(_)) => Deciding::Upper,
        _ => deciding(judgement, bounds),
    };
    let show = |bound| words.percent(bound, 1);
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
    (mark, words.say(&message.with("value", value)))
}

/// Cover of everything that was worked out, with two-sided intervals.
pub(crate) fn figures(id: &str, input: &Input, assessment: &Assessment, words: &Words) -> String {
    let rows: Vec<Row> = assessment
        .figures
        .iter()
        .filter(|figure| figure.is_cover())
        .map(|figure| row(figure, input, words))
        .collect();
    let described: Vec<String> = rows.iter().map(|row| format!("{}: {}", row.name, row.figure)).collect();
    let chart = Cover { rows, words: chart_words(assessment.confidence, "report-mark-interval", words) };
    let title = words.word("report-picture-figures");
    twice(id, &title, &described.join("; "), |frame| cover::draw(&chart, frame))
}

/// A figure with its two-sided interval.
fn row(figure: &Figure, input: &Input, words: &Words) -> Row {
    let share = |value| Share::new(value).unwrap_or(Share::ZERO);
    let value = shown::estimate(figure, words);
    let [low, high] = figure.ends().map(|end| share(end.value));
    let (bounds, told) = match figure.interval {
        Ok(interval) => (
            Bounds::Between(share(interval.low), share(interval.high)),
            Message::new("report-row-between")
                .with("low", words.percent(interval.low, 1))
                .with("high", words.percent(interval.high, 1)),
        ),
        Err(reason) => {
            (Bounds::Unknown, Message::new("report-row-no-bound").with("reason", Value::Word(reason.code())))
        }
    };
    Row {
        name: name(figure, input, words),
        figure: words.say(&told.with("value", value)),
        tone: None,
        lines: figure.values.iter().filter_map(|(_, line)| Share::new(line.share())).collect(),
        estimate: Some(if figure.high.is_none() {
            Estimate::Figure(low)
        } else {
            Estimate::Between(low, high)
        }),
        bounds,
        goal: None,
    }
}

fn chart_words(confidence: f64, two_sided: &'static str, words: &Words) -> cover::Words {
    let sure = |code| words.say(&Message::new(code).with("confidence", confidence_value(confidence)));
    cover::Words {
        axis: words.word("report-axis"),
        estimate: words.word("report-mark-estimate"),
        between: words.word("report-mark-between"),
        lines: words.word("report-mark-lines"),
        one_sided: sure("report-mark-one-sided"),
        two_sided: sure(two_sided),
        met: words.word("report-mark-met"),
    }
}

/// The lines of a site as tapes, each in a picture of its own so that none is torn by the end of a sheet.
pub(crate) fn lines(
    id: &str,
    input: &Input,
    assessment: &Assessment,
    tones: &Tones,
    words: &Words,
) -> String {
    let marks = line::Words {
        live: words.word("report-mark-live"),
        closed: words.word("report-mark-closed"),
        dead: words.word("report-mark-dead"),
        canopy: words.word("report-mark-canopy"),
        unread: words.word("report-mark-unread"),
        unplaced: words.word("report-mark-unplaced"),
    };
    let drawn = assessment.lines.iter().enumerate().map(|(number, result)| {
        let cover = shown::of_line(result, result.canopy, words);
        let named = |code| Message::new(code).with("line", result.line.as_str());
        let picture = Lines {
            lines: vec![Line {
                name: words.say(&named("report-line-name")),
                cover: cover.clone(),
                length: result.length.length(),
                reading: reading(input, result, tones, words),
            }],
            unit: result.length.notation().unit,
            words: marks.clone(),
        };
        let said = named("report-picture-line-said")
            .with("length", Value::Length(result.length.length(), result.length.notation()))
            .with("cover", cover);
        let title = words.say(&named("report-picture-line"));
        twice(&format!("{id}-{}", number + 1), &title, &words.say(&said), |frame| line::draw(&picture, frame))
    });
    drawn.collect()
}

fn reading(input: &Input, result: &LineResult, tones: &Tones, words: &Words) -> Reading {
    let named = |code: &str| {
        if code.is_empty() { words.word("unnamed-plants") } else { plant_name(code, input) }
    };
    let Some(taken) = result.cover.as_ref().filter(|_| result.recording != Recording::LengthsOnly) else {
        let total = |species: &tautline_survey::line::SpeciesResult| Total {
            name: named(&species.code),
            tone: tones.tone(&species.code),
            length: species.live.low,
        };
        return Reading::Unplaced {
            totals: result.species.iter().filter(|species| species.counted).map(total).collect(),
            note: words.word("report-lengths-only"),
        };
    };
    let stretches = |closed: &[tautline_engine::cover::Closed]| -> Vec<Stretch> {
        closed.iter().map(|one| one.stretch).collect()
    };
    let mut lanes: Vec<Lane> = taken
        .species
        .iter()
        .map(|species| {
            let code = result.codes.get(species.species as usize).map_or("", String::as_str);
            let closed = stretches(&species.closed);
            let live: Vec<Stretch> = species.live.iter().map(|piece| piece.stretch).collect();
            Lane {
                name: named(code),
                tone: tones.tone(code),
                live: without(&live, &closed),
                dead: species.dead.iter().map(|piece| piece.stretch).collect(),
                closed,
            }
        })
        .collect();
    if !taken.between.is_empty() {
        let name = words.word("report-between-species");
        lanes.push(Lane { name, closed: stretches(&taken.between), ..Lane::default() });
    }
    let unread = Stretch::new(result.read, result.length.length()).into_iter().collect();
    Reading::Placed { lanes, canopy: taken.canopy.clone(), unread }
}
