//! The tables of a site: its lines, figures, species and gaps.

use crate::markup::Table;
use crate::pictures::{name, plant_name};
use crate::shown;
use tautline_engine::estimate::SamplingError;
use tautline_engine::gaps::GapClass;
use tautline_engine::length::{Length, Notation, Unit};
use tautline_survey::assess::Assessment;
use tautline_survey::input::Input;
use tautline_survey::line::{Bounds, Recording};
use tautline_survey::message::{Message, Value};
use tautline_words::Words;

/// Each line: what it is, what it came to, what the rule closed.
pub(crate) fn lines(input: &Input, assessment: &Assessment, words: &Words) -> String {
    let headings = [
        "column-line",
        "column-stratum",
        "column-date",
        "column-length",
        "column-canopy",
        "column-sum",
        "column-dead",
        "report-column-closed",
        "column-recorded",
        "column-reader",
    ];
    let headings = headings.iter().map(|code| words.word(code)).collect();
    let mut table = Table::new(words.word("report-lines-table"), headings);
    for line in &assessment.lines {
        let (count, closed) = line.closed();
        let closed = Message::new("closed-count")
            .with("count", count)
            .with("length", Value::Length(closed, line.notation(input)));
        let recorded = match line.recording {
            Recording::Positions => "positions",
            Recording::LengthsOnly => "lengths-only",
            Recording::NothingFound => "nothing-found-on-line",
        };
        let dead = line.dead != Bounds::default();
        table.row(vec![
            line.line.clone(),
            line.stratum.clone().unwrap_or_default(),
            line.date.map(|date| date.to_string()).unwrap_or_default(),
            length(line.length.length(), line.length.notation(), words),
            shown::of_line(line, line.canopy, words),
            shown::of_line(line, line.sum, words),
            if dead { shown::of_line(line, line.dead, words) } else { String::new() },
            if count > 0 { words.say(&closed) } else { String::new() },
            words.word(recorded),
            line.reader.clone(),
        ]);
    }
    table.markup()
}

fn length(length: Length, notation: Notation, words: &Words) -> String {
    words.say(&Message::new("explain-length").with("length", Value::Length(length, notation)))
}

/// Each figure with its error and interval.
pub(crate) fn figures(input: &Input, assessment: &Assessment, words: &Words) -> String {
    let interval = Message::new("column-interval").with("confidence", shown::confidence(assessment));
    let headings = vec![
        words.word("column-what"),
        words.word("column-cover"),
        words.word("column-se"),
        words.word("report-column-df"),
        words.say(&interval),
        words.word("column-n"),
    ];
    let mut table = Table::new(words.word("report-figures-table"), headings);
    for figure in &assessment.figures {
        let show = |number| shown::value(number, figure.attribute, words);
        let (se, df) = match figure.estimate.error {
            SamplingError::Known { se, df } => (show(se), words.number(df, 1)),
            SamplingError::Unknown(_) => (words.word("report-none"), words.word("report-none")),
        };
        let interval = match figure.interval {
            Ok(interval) => shown::between(show(interval.low), show(interval.high), words),
            Err(reason) => words.word(reason.code()),
        };
        let units = if figure.estimate.method.counts_plots() {
            Message::new("units-plots")
        } else {
            Message::new("units-lines")
        };
        let units = units.with("lines", figure.estimate.lines).with("units", figure.estimate.units);
        let estimate = shown::estimate(figure, words);
        table.row(vec![name(figure, input, words), estimate, se, df, interval, words.say(&units)]);
    }
    table.markup()
}

/// Live cover of each species on each line; empty where no species was found.
pub(crate) fn species(input: &Input, assessment: &Assessment, words: &Words) -> String {
    let mut codes: Vec<(bool, &str)> = Vec::new();
    for species in assessment.lines.iter().flat_map(|line| &line.species) {
        if !codes.contains(&(species.counted, species.code.as_str())) {
            codes.push((species.counted, &species.code));
        }
    }
    codes.sort_unstable_by(|a, b| b.0.cmp(&a.0).then_with(|| a.1.cmp(b.1)));
    if codes.is_empty() {
        return String::new();
    }
    let mut headings = vec![words.word("column-line")];
    headings.extend(codes.iter().map(|&(counted, code)| {
        let name = if code.is_empty() { words.word("unnamed-plants") } else { plant_name(code, input) };
        if counted { name } else { words.say(&Message::new("report-not-counted").with("species", name)) }
    }));
    let mut table = Table::new(words.word("report-species-table"), headings);
    for line in &assessment.lines {
        let mut row = vec![line.line.clone()];
        row.extend(codes.iter().map(|&(counted, code)| {
            let own = line.species.iter().find(|species| species.code == code && species.counted == counted);
            own.map_or_else(|| words.word("report-none"), |species| shown::of_line(line, species.live, words))
        }));
        table.row(row);
    }
    table.markup()
}

/// Gaps between the counted shrubs by class; empty where no line has positions or the classes differ.
pub(crate) fn gaps(assessment: &Assessment, words: &Words) -> String {
    let placed: Vec<_> = assessment.lines.iter().filter(|line| !line.gap_classes.is_empty()).collect();
    let breaks =
        |classes: &[GapClass]| classes.iter().map(|class| (class.above, class.up_to)).collect::<Vec<_>>();
    let Some(first) = placed.first() else { return String::new() };
    if placed.iter().any(|line| breaks(&line.gap_classes) != breaks(&first.gap_classes)) {
        return String::new();
    }
    let read: Length = placed.iter().map(|line| line.read).sum();
    let codes =
        ["report-column-class", "report-column-count", "report-column-cut-off", "report-column-share"];
    let headings = codes.iter().map(|code| words.word(code)).collect();
    let mut table = Table::new(words.word("report-gaps-table"), headings);
    let in_cm = |length| Value::Length(length, Notation::decimals(Unit::Centimetre, 0));
    for (at, class) in first.gap_classes.iter().enumerate() {
        let same = || placed.iter().map(|line| &line.gap_classes[at]);
        let name = match class.up_to {
            Some(up_to) => {
                Message::new("report-from-to").with("low", in_cm(class.above)).with("high", in_cm(up_to))
            }
            None => Message::new("report-over").with("low", in_cm(class.above)),
        };
        let length: Length = same().map(|class| class.length).sum();
        table.row(vec![
            words.say(&name),
            same().map(|class| class.count).sum::<usize>().to_string(),
            same().map(|class| class.cut_off).sum::<usize>().to_string(),
            words.percent(length.share_of(read), 1),
        ]);
    }
    table.markup()
}
