//! Every reading as it was typed, with its file and row: the end of every chain.

use crate::document::{Block, Reading, Section, heading, paragraph};
use crate::markup::{Column, Table};
use crate::page::{Page, readings_id};
use crate::shown;
use std::collections::{BTreeMap, BTreeSet};
use tautline_engine::length::Bare;
use tautline_survey::assess::{Assessment, natural_order};
use tautline_survey::date::Date;
use tautline_survey::measure::{Measure, unit_words};
use tautline_survey::message::{Message, Value};
use tautline_survey::visit::{Extent, Intercept, Outcome, State, Visit};

/// The readings of every site and year on the page, those that went into no figure too.
pub(crate) fn appendix(assessments: &[&Assessment], page: &Page) -> Option<Section> {
    // the plots of a site stand apart above, and their lines together here
    let mut seen = BTreeSet::new();
    let rounds = assessments.iter().filter(|one| seen.insert((one.site.as_str(), one.year)));
    let mut visits: BTreeMap<(&str, Option<u16>), Vec<usize>> = BTreeMap::new();
    for (at, visit) in page.input.visits.iter().enumerate() {
        visits.entry((&visit.site, visit.date.map(Date::year))).or_default().push(at);
    }
    let own =
        |round: &Assessment| visits.get(&(round.site.as_str(), round.year)).cloned().unwrap_or_default();
    let rounds: Vec<Block> = rounds.flat_map(|round| of_round(round, own(round), page)).collect();
    (!rounds.is_empty()).then(|| Section {
        key: "readings",
        heading: page.word("report-readings"),
        blocks: [paragraph(page.word("report-readings-about"))].into_iter().chain(rounds).collect(),
    })
}

fn of_round(round: &Assessment, mut visits: Vec<usize>, page: &Page) -> [Block; 2] {
    visits.sort_by(|&a, &b| {
        let (a, b) = (&page.input.visits[a], &page.input.visits[b]);
        natural_order(&a.line, &b.line).then_with(|| natural_order(&a.pass, &b.pass))
    });
    let whole = Assessment { plot: None, ..round.clone() };
    let tables = visits.into_iter().map(|at| of_visit(at, &page.input.visits[at], page)).collect();
    [heading(3, shown::title(&whole, page)), Block::Readings { tables }]
}

/// One reading of one line: who, when, how far, and every row.
fn of_visit(at: usize, visit: &Visit, page: &Page) -> Reading {
    let unit = |of: fn(&Intercept) -> Option<&Measure>| shared_unit(visit, of);
    let measures = [
        ("report-column-start", unit(start), start as fn(&Intercept) -> Option<&Measure>),
        ("report-column-stop", unit(stop), stop),
        ("column-length", unit(only_length), only_length),
        ("report-column-height", unit(height), height),
        ("report-column-width", unit(width), width),
    ];
    let mut columns = vec![
        (Column::Figure, page.word("report-column-row")),
        (Column::Name, page.word("report-column-species")),
    ];
    let headed = |code: &str, unit: Option<Bare>| {
        let heading = page.word(code);
        unit.map_or(heading.clone(), |unit| {
            format!("{heading} ({})", unit_words(unit).replace(' ', "\u{a0}"))
        })
    };
    columns.extend(measures.iter().map(|(code, unit, _)| (Column::Figure, headed(code, *unit))));
    let rest =
        ["report-column-state", "report-column-plant", "report-column-note"].map(|code| page.word(code));
    columns.extend([Column::Name, Column::Name, Column::Text].into_iter().zip(rest));
    let mut table = Table::new(caption(visit, page), columns).with_id(readings_id(at));
    // a remark may say in words where it was written
    let kept_back = page.keeps_back(Some(&visit.site));
    for intercept in &visit.intercepts {
        let mut row = vec![place(visit, intercept), intercept.species.clone()];
        row.extend(
            measures.iter().map(|(_, unit, of)| of(intercept).map_or(String::new(), |m| typed(m, *unit))),
        );
        row.push(page.word(if intercept.state == State::Live { "live" } else { "dead" }));
        row.push(intercept.plant.clone().unwrap_or_default());
        row.push(if kept_back { String::new() } else { intercept.note.clone() });
        table.row(row);
    }
    let empty = || Reading::Empty { id: readings_id(at), text: caption(visit, page) };
    table.finished().map_or_else(empty, Reading::Table)
}

/// Line, day, people, file, how far it was read, and what was noted of the day.
fn caption(visit: &Visit, page: &Page) -> String {
    let mut said = vec![page.say(&Message::new("report-line-name").with("line", visit.line.as_str()))];
    said.extend(visit.date.map(|date| date.to_string()));
    said.extend([&visit.reader, &visit.recorder].into_iter().filter(|name| !name.is_empty()).cloned());
    if !visit.pass.is_empty() {
        said.push(page.say(&Message::new("report-pass").with("pass", visit.pass.as_str())));
    }
    said.push(outcome(visit, page));
    said.extend(page.noted(visit).map(|(heading, noted)| format!("{heading}: {noted}")));
    said.extend(visit.place.as_ref().map(|place| place.file.clone()));
    said.retain(|one| !one.is_empty());
    said.join(" · ")
}

fn outcome(visit: &Visit, page: &Page) -> String {
    let planned = page.input.planned(&visit.site, &visit.line).and_then(|line| line.length.as_ref());
    let length = visit.length.as_ref().or(planned);
    let whole = length.map(|length| Value::Length(length.length(), length.notation()));
    match (&visit.outcome, whole) {
        (Outcome::NotRead, _) => page.word("report-not-read"),
        (Outcome::Read, whole) if visit.intercepts.is_empty() && visit.set_aside == 0 => {
            let said = page.word("nothing-found-on-line");
            whole.map_or(said.clone(), |length| {
                let length = page.say(&Message::new("explain-length").with("length", length));
                format!("{length}, {said}")
            })
        }
        (Outcome::Read, whole) => whole
            .map_or(String::new(), |length| page.say(&Message::new("explain-length").with("length", length))),
        (Outcome::PartlyRead(to), whole) => {
            let read = Value::Length(to.length(), to.notation());
            match whole {
                Some(length) => {
                    page.say(&Message::new("report-of-length").with("read", read).with("length", length))
                }
                None => page.say(&Message::new("explain-length").with("length", read)),
            }
        }
    }
}

/// The row, and the file where it isn't the visit's own.
fn place(visit: &Visit, intercept: &Intercept) -> String {
    let Some(place) = &intercept.place else { return String::new() };
    let own = visit.place.as_ref().is_some_and(|visit| visit.file == place.file);
    if own { place.row.to_string() } else { format!("{}:{}", place.file, place.row) }
}

/// The text as typed, with its unit where the heading doesn't name it.
fn typed(measure: &Measure, heading: Option<Bare>) -> String {
    match measure.unit() {
        Some(unit) if heading.is_none() => format!("{} {}", measure.typed(), unit_words(unit)),
        _ => measure.typed().to_owned(),
    }
}

/// The unit that every measure of a column stands in, if it is one.
fn shared_unit(visit: &Visit, of: fn(&Intercept) -> Option<&Measure>) -> Option<Bare> {
    let mut units = visit.intercepts.iter().filter_map(of).map(Measure::unit);
    let first = units.next()??;
    units.all(|unit| unit == Some(first)).then_some(first)
}

fn start(intercept: &Intercept) -> Option<&Measure> {
    match &intercept.extent {
        Extent::Edges { start, .. } => Some(start),
        Extent::Length(_) => None,
    }
}

fn stop(intercept: &Intercept) -> Option<&Measure> {
    match &intercept.extent {
        Extent::Edges { stop, .. } => Some(stop),
        Extent::Length(_) => None,
    }
}

fn only_length(intercept: &Intercept) -> Option<&Measure> {
    match &intercept.extent {
        Extent::Length(length) => Some(length),
        Extent::Edges { .. } => None,
    }
}

fn height(intercept: &Intercept) -> Option<&Measure> {
    intercept.height.as_ref()
}

fn width(intercept: &Intercept) -> Option<&Measure> {
    intercept.width.as_ref()
}
