//! What was read: visits, what was noted of them, and every intercept with the text as typed.

use super::plan::TO_SITE;
use super::{measure, visit_number};
use crate::table::{Cell, Column, Holds, Link, Table};
use tautline_engine::num::decimal::shortest;
use tautline_survey::input::Input;
use tautline_survey::measure::{Measure, unit_words};
use tautline_survey::visit::{Extent, Outcome, State};

const VISIT: Column = Column::new("visit", Holds::Whole).needed();
const TO_VISIT: Link = Link { columns: &["visit"], table: "visits", there: &["visit"] };
const TO_LINE: Link = Link { columns: &["site", "line"], table: "lines", there: &["site", "line"] };

pub(super) fn visits(input: &Input) -> Table {
    let rows = input.visits.iter().enumerate().map(|(at, visit)| {
        let (outcome, read_to) = match &visit.outcome {
            Outcome::Read if visit.intercepts.is_empty() => ("nothing found", None),
            Outcome::Read => ("read", None),
            Outcome::PartlyRead(to) => ("partly read", Some(to)),
            Outcome::NotRead => ("not read", None),
        };
        vec![
            visit_number(at),
            Cell::text(&visit.site),
            Cell::text(&visit.line),
            visit.date.map_or(Cell::Empty, Cell::Day),
            Cell::text(&visit.reader),
            Cell::text(&visit.recorder),
            Cell::text(&visit.pass),
            Cell::text(if input.protocols.contains_key(&visit.protocol) { &visit.protocol } else { "" }),
            measure(visit.length.as_ref()),
            Cell::text(outcome),
            measure(read_to),
            Cell::Whole(i64::from(visit.set_aside)),
            Cell::Yes(input.held.contains(&at)),
        ]
    });
    Table {
        name: "visits",
        columns: vec![
            VISIT,
            Column::new("site", Holds::Text).needed(),
            Column::new("line", Holds::Text).needed(),
            Column::new("date", Holds::Day),
            Column::new("reader", Holds::Text),
            Column::new("recorder", Holds::Text),
            Column::new("pass", Holds::Text),
            Column::new("protocol", Holds::Text),
            Column::of("tape_m", "m"),
            Column::new("outcome", Holds::OneOf(&["read", "nothing found", "partly read", "not read"]))
                .needed(),
            Column::of("read_to_m", "m"),
            Column::new("rows_set_aside", Holds::Whole).needed(),
            Column::new("held_back", Holds::Yes).needed(),
        ],
        key: &["visit"],
        links: &[TO_SITE, TO_LINE, Link { columns: &["protocol"], table: "protocols", there: &["protocol"] }],
        rows: rows.collect(),
    }
}

pub(super) fn conditions(input: &Input) -> Table {
    let of_visit = input.visits.iter().enumerate();
    let rows = of_visit.flat_map(|(at, visit)| {
        (1..).zip(visit.told()).map(move |(number, (heading, value))| {
            vec![visit_number(at), Cell::Whole(number), Cell::text(heading), Cell::text(value)]
        })
    });
    Table {
        name: "conditions",
        columns: vec![
            VISIT,
            Column::new("number", Holds::Whole).needed(),
            Column::new("condition", Holds::Text),
            Column::new("value", Holds::Text),
        ],
        key: &["visit", "number"],
        links: &[TO_VISIT],
        rows: rows.collect(),
    }
}

pub(super) fn intercepts(input: &Input) -> Table {
    let of_visit = input.visits.iter().enumerate();
    let rows = of_visit.flat_map(|(at, visit)| {
        visit.intercepts.iter().map(move |intercept| {
            let (start, stop, length) = match &intercept.extent {
                Extent::Edges { start, stop } => (Some(start), Some(stop), stop.length() - start.length()),
                Extent::Length(length) => (None, None, length.length()),
            };
            let typed = match &intercept.extent {
                Extent::Edges { start, stop } => [as_typed(start), as_typed(stop)],
                Extent::Length(length) => [as_typed(length), String::new()],
            };
            vec![
                visit_number(at),
                Cell::Whole(i64::from(intercept.id)),
                Cell::text(&intercept.species),
                Cell::text(match intercept.state {
                    State::Live => "live",
                    State::Dead => "dead",
                }),
                measure(start),
                measure(stop),
                Cell::Number(super::metres(length)),
                Cell::text(typed.join("–").trim_end_matches('–')),
                Cell::text(intercept.plant.as_deref().unwrap_or("")),
                measure(intercept.height.as_ref()),
                measure(intercept.width.as_ref()),
                Cell::text(&intercept.note),
            ]
        })
    });
    Table {
        name: "intercepts",
        columns: vec![
            VISIT,
            Column::new("intercept", Holds::Whole).needed(),
            Column::new("species", Holds::Text),
            Column::new("state", Holds::OneOf(&["live", "dead"])).needed(),
            Column::of("start_m", "m"),
            Column::of("stop_m", "m"),
            Column::of("length_m", "m").needed(),
            Column::new("as_typed", Holds::Text),
            Column::new("plant", Holds::Text),
            Column::of("height_m", "m"),
            Column::of("width_m", "m"),
            Column::new("note", Holds::Text),
        ],
        key: &["visit", "intercept"],
        links: &[TO_VISIT],
        rows: rows.collect(),
    }
}

/// The text as it was typed, with what a bare number meant.
fn as_typed(measure: &Measure) -> String {
    let bare = measure.typed().chars().all(|c| !c.is_alphabetic() && c != '\'' && c != '"');
    match measure.unit() {
        Some(unit) if bare => format!("{} {}", measure.typed(), unit_words(unit)),
        _ if measure.typed().is_empty() => format!("{} m", shortest(super::metres(measure.length()))),
        _ => measure.typed().to_owned(),
    }
}
