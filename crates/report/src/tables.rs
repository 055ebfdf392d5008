//! The tables of a site: its figures, lines, species and growth forms, gaps and heights.

use crate::document::Block;
use crate::markup::{Column, Table};
use crate::page::Page;
use crate::pictures::gaps::ClassShare;
use crate::shown;
use tautline_engine::gaps::GapClass;
use tautline_engine::length::Length;
use tautline_survey::assess::{Assessment, Attribute, Figure, Kind};
use tautline_survey::explain::confidence_value;
use tautline_survey::goal::Subject;
use tautline_survey::line::{Bounds, LineResult, Recording};
use tautline_survey::measure::alike;
use tautline_survey::message::{Message, Value};

/// Columns from their kinds and the codes of their headings, of which one names the confidence.
pub(crate) fn columns(page: &Page, kinds: &[(Column, &'static str)]) -> Vec<(Column, String)> {
    let confidence = confidence_value(page.question.confidence());
    let heading = |code| page.say(&Message::new(code).with("confidence", confidence.clone()));
    kinds.iter().map(|&(kind, code)| (kind, heading(code))).collect()
}

/// Each line: what it is, what it came to, what the rule closed.
pub(crate) fn lines(assessment: &Assessment, page: &Page) -> Option<Block> {
    let headings = [
        (Column::Name, "column-line"),
        (Column::Name, "column-stratum"),
        (Column::Name, "report-column-plot"),
        (Column::Name, "column-date"),
        (Column::Figure, "column-length"),
        (Column::Figure, "column-canopy"),
        (Column::Figure, "column-sum"),
        (Column::Figure, "column-dead"),
        (Column::Figure, "report-column-closed"),
        (Column::Name, "column-recorded"),
        (Column::Name, "column-reader"),
    ];
    let mut table = Table::new(page.word("report-lines-table"), columns(page, &headings));
    // one reader of all lines stands above already
    let one_reader = assessment.lines.iter().all(|line| line.reader == assessment.lines[0].reader);
    for line in &assessment.lines {
        let (count, closed) = line.closed();
        let closed = Message::new("closed-count")
            .with("count", count)
            .with("length", Value::Length(closed, line.notation(page.input)));
        let dead = line.dead != Bounds::default();
        table.row(vec![
            line.line.clone(),
            line.stratum.clone().unwrap_or_default(),
            line.plot.clone().unwrap_or_default(),
            line.date.map(|date| date.to_string()).unwrap_or_default(),
            read_of(line, page),
            shown::of_line(line, line.canopy, page),
            shown::of_line(line, line.sum, page),
            if dead { shown::of_line(line, line.dead, page) } else { String::new() },
            if count > 0 { page.say(&closed) } else { String::new() },
            recorded(line).map_or_else(String::new, |code| page.word(code)),
            if one_reader { String::new() } else { line.reader.clone() },
        ]);
    }
    table.finished().map(Block::Table)
}

/// The length of a line, or how much of it was read.
fn read_of(line: &LineResult, page: &Page) -> String {
    let whole = shown::length(line.length.length(), line.length.notation(), page);
    if !line.is_partly_read() {
        return whole;
    }
    let read = shown::length(line.read, line.notation(page.input), page);
    page.say(&Message::new("report-of-length").with("read", read).with("length", whole))
}

/// How a line was written down, where it wasn't by positions.
fn recorded(line: &LineResult) -> Option<&'static str> {
    match line.recording {
        Recording::Positions => None,
        Recording::LengthsOnly => Some("lengths-only"),
        Recording::NothingFound => Some("nothing-found-on-line"),
    }
}

/// Each figure with its error and interval.
pub(crate) fn figures(assessment: &Assessment, page: &Page) -> Option<Block> {
    let headings = [
        (Column::Text, "column-what"),
        (Column::Figure, "column-cover"),
        (Column::Figure, "column-se"),
        (Column::Figure, "report-column-df"),
        (Column::Interval, "column-interval"),
        (Column::Figure, "column-n"),
    ];
    let mut table = Table::new(page.word("report-figures-table"), columns(page, &headings));
    for figure in &assessment.figures {
        let [se, df] = shown::error(&figure.estimate, figure.attribute, page);
        table.row(vec![
            shown::name(figure, page),
            shown::estimate(figure, page),
            se,
            df,
            shown::interval(&figure.interval, figure.attribute, page),
            shown::units(&figure.estimate, page),
        ]);
    }
    table.finished().map(Block::Table)
}

/// Species, growth forms or groups, each with its error, its interval and its share of the whole.
pub(crate) fn kinds(caption: &str, kinds: &[Kind], page: &Page) -> Option<Block> {
    let headings = [
        (Column::Text, "column-what"),
        (Column::Figure, "report-column-cover"),
        (Column::Figure, "column-se"),
        (Column::Interval, "column-interval"),
        (Column::Figure, "report-column-composition"),
        (Column::Figure, "report-column-met-on"),
    ];
    let mut table = Table::new(page.word(caption), columns(page, &headings));
    for kind in kinds {
        let figure = &kind.cover;
        let name = shown::bare_name(figure, page);
        let [se, _] = shown::error(&figure.estimate, Attribute::Cover, page);
        let on = Message::new("report-lines-of").with("lines", kind.lines()).with("all", figure.values.len());
        table.row(vec![
            if kind.counted { name } else { not_counted(name, page) },
            shown::estimate(figure, page),
            se,
            shown::interval(&figure.interval, Attribute::Cover, page),
            kind.composition.map_or_else(|| page.word("report-none"), |share| page.words.percent(share, 1)),
            page.say(&on),
        ]);
    }
    table.finished().map(Block::Table)
}

fn not_counted(name: String, page: &Page) -> String {
    page.say(&Message::new("report-not-counted").with("species", name))
}

/// More species than this side by side would pass the width of a sheet.
const MOST_SIDE_BY_SIDE: usize = 8;

/// Live cover of each species on each line, in the order of the kinds; empty where no species was found.
pub(crate) fn species_by_line(assessment: &Assessment, species: &[Kind], page: &Page) -> Vec<Block> {
    let tables = species.chunks(MOST_SIDE_BY_SIDE).filter_map(|some| {
        let mut headings = vec![(Column::Name, page.word("column-line"))];
        headings.extend(some.iter().map(|kind| {
            let name = shown::bare_name(&kind.cover, page);
            (Column::Figure, if kind.counted { name } else { not_counted(name, page) })
        }));
        let mut table = Table::new(page.word("report-species-by-line"), headings);
        for line in &assessment.lines {
            let on_line = |kind: &Kind| {
                let own =
                    line.species.iter().find(|own| kind.cover.subject == Subject::Species(own.code.clone()));
                own.map_or_else(|| page.word("report-none"), |own| shown::of_line(line, own.live, page))
            };
            let cells = [line.line.clone()].into_iter().chain(some.iter().map(on_line));
            table.row(cells.collect());
        }
        table.finished().map(Block::Table)
    });
    tables.collect()
}

/// Heights or plants per area of each species or growth form that was measured.
pub(crate) fn measured(
    caption: &str,
    column: &'static str,
    figures: &[&Figure],
    page: &Page,
) -> Option<Block> {
    let headings = [
        (Column::Text, "column-what"),
        (Column::Figure, column),
        (Column::Figure, "column-se"),
        (Column::Interval, "column-interval"),
        (Column::Figure, "column-n"),
    ];
    let mut table = Table::new(page.word(caption), columns(page, &headings));
    for figure in figures {
        let [se, _] = shown::error(&figure.estimate, figure.attribute, page);
        table.row(vec![
            shown::bare_name(figure, page),
            shown::estimate(figure, page),
            se,
            shown::interval(&figure.interval, figure.attribute, page),
            shown::units(&figure.estimate, page),
        ]);
    }
    table.finished().map(Block::Table)
}

/// Gaps between the counted shrubs by class, with the shares for the picture; nothing where no line has positions or
/// the classes differ.
pub(crate) fn gaps(assessment: &Assessment, page: &Page) -> Option<(Option<Block>, Vec<ClassShare>)> {
    let placed: Vec<_> = assessment.lines.iter().filter(|line| !line.gap_classes.is_empty()).collect();
    let breaks =
        |classes: &[GapClass]| classes.iter().map(|class| (class.above, class.up_to)).collect::<Vec<_>>();
    let first = placed.first()?;
    if placed.iter().any(|line| breaks(&line.gap_classes) != breaks(&first.gap_classes)) {
        return None;
    }
    let read: Length = placed.iter().map(|line| line.read).sum();
    let headings = [
        (Column::Name, "report-column-class"),
        (Column::Figure, "report-column-count"),
        (Column::Figure, "report-column-cut-off"),
        (Column::Figure, "report-column-share"),
    ];
    let mut table = Table::new(page.word("report-gaps-table"), columns(page, &headings));
    let mut shares = Vec::new();
    let breaks = alike(&first.gap_classes.iter().map(|class| class.above).collect::<Vec<_>>());
    let in_breaks = |length| Value::Length(length, breaks);
    for (at, class) in first.gap_classes.iter().enumerate() {
        let same = || placed.iter().map(|line| &line.gap_classes[at]);
        let name = match class.up_to {
            Some(up_to) => Message::new("report-from-to")
                .with("low", in_breaks(class.above))
                .with("high", in_breaks(up_to)),
            None => Message::new("report-over").with("low", in_breaks(class.above)),
        };
        let name = page.say(&name);
        let length: Length = same().map(|class| class.length).sum();
        let share = length.share_of(read);
        let shown = page.words.percent(share, 1);
        shares.push((name.clone(), share, shown.clone()));
        let count = same().map(|class| class.count).sum::<usize>().to_string();
        let cut_off = same().map(|class| class.cut_off).sum::<usize>().to_string();
        table.row(vec![name, count, cut_off, shown]);
    }
    Some((table.finished().map(Block::Table), shares))
}
