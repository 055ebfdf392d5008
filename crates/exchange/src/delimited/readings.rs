//! Readings and lines tables: rows become visits.

use super::cells::Row;
use super::{Kind, Options, Sheet};
use crate::headings::Column;
use crate::protocol;
use std::collections::HashMap;
use tautline_survey::date::Date;
use tautline_survey::finding::{Finding, Place};
use tautline_survey::input::Input;
use tautline_survey::measure::Measure;
use tautline_survey::message::{Message, Value};
use tautline_survey::plan::PlannedLine;
use tautline_survey::visit::{Extent, Intercept, Outcome, State, Visit};

/// What tells the visits of a file apart.
type Key = (String, String, String, String, String, String);

pub(super) fn readings(sheet: &Sheet, options: &Options, input: &mut Input) {
    let mut known: HashMap<Key, usize> = HashMap::new();
    let mut at_site: HashMap<(String, String), usize> = input
        .plan
        .iter()
        .enumerate()
        .map(|(at, line)| ((line.site.clone(), line.line.clone()), at))
        .collect();
    for row in sheet.rows() {
        let line = row.text(Column::Line);
        if line.is_empty() {
            input.findings.push(row.about(Column::Line, "cell-empty"));
            continue;
        }
        let Some(site) = row.some(Column::Site).or_else(|| options.site.clone()) else {
            input.findings.push(row.about(Column::Site, "site-missing"));
            continue;
        };
        plan(&row, &site, options, &mut at_site, input);
        let outcome = match outcome(&row, options) {
            Ok(outcome) => outcome,
            Err(finding) => {
                input.findings.push(finding);
                continue;
            }
        };
        let is_reading = sheet.kind == Kind::Readings;
        if !is_reading && outcome.is_none() {
            continue;
        }
        let Some(visit) = visit_of(&row, site, options, &mut known, input) else { continue };
        if let Some(outcome) = outcome {
            input.visits[visit].outcome = outcome;
        }
        let blank = [Column::Species, Column::Start, Column::Stop, Column::Length]
            .iter()
            .all(|&c| row.text(c).is_empty());
        if is_reading && !blank {
            match intercept(&row, options, &input.visits[visit]) {
                Ok(intercept) => {
                    notes(&row, &intercept, input);
                    input.visits[visit].intercepts.push(intercept);
                }
                Err(finding) => input.findings.push(finding),
            }
        } else if is_reading && row.text(Column::Outcome).is_empty() {
            input.findings.push(row.about(Column::Species, "row-says-nothing"));
        }
    }
}

/// What the row says about the plan: length, stratum, plot. The first that speaks is kept.
fn plan(
    row: &Row,
    site: &str,
    options: &Options,
    at_site: &mut HashMap<(String, String), usize>,
    input: &mut Input,
) {
    let line = row.text(Column::Line).to_owned();
    let at = *at_site.entry((site.to_owned(), line.clone())).or_insert_with(|| {
        input.plan.push(PlannedLine { site: site.to_owned(), line, length: None, stratum: None, plot: None });
        input.plan.len() - 1
    });
    let planned = &mut input.plan[at];
    planned.stratum = planned.stratum.take().or_else(|| row.some(Column::Stratum));
    planned.plot = planned.plot.take().or_else(|| row.some(Column::Plot));
    match row.length(Column::LineLength, options) {
        Ok(Some(length)) => match &planned.length {
            None => planned.length = Some(length),
            Some(first) if first.length() != length.length() => {
                let message = Message::new("line-length-differs")
                    .with("site", planned.site.as_str())
                    .with("line", planned.line.as_str())
                    .with("first", Value::Length(first.length(), first.notation()))
                    .with("found", Value::Length(length.length(), length.notation()));
                input.findings.push(Finding::must_settle(message).at(row.place(Column::LineLength)));
            }
            Some(_) => {}
        },
        Ok(None) => {}
        Err(finding) => input.findings.push(finding),
    }
}

/// How far the line was read, if the row says so.
fn outcome(row: &Row, options: &Options) -> Result<Option<Outcome>, Finding> {
    let words: String = row.text(Column::Outcome).to_lowercase();
    Ok(Some(match words.as_str() {
        "" => return Ok(None),
        "read" | "nothing found" | "read, nothing found" => Outcome::Read,
        "not read" => Outcome::NotRead,
        "partly read" => match row.length(Column::ReadTo, options)? {
            Some(to) => Outcome::PartlyRead(to),
            None => return Err(row.about(Column::ReadTo, "read-to-missing")),
        },
        _ => return Err(row.about(Column::Outcome, "outcome-not-known")),
    }))
}

/// The visit that a row belongs to, begun if it is new; `None` where the row can't say which.
fn visit_of(
    row: &Row,
    site: String,
    options: &Options,
    known: &mut HashMap<Key, usize>,
    input: &mut Input,
) -> Option<usize> {
    let text = |column| row.text(column).to_owned();
    let date = match (row.text(Column::Date), Date::read(row.text(Column::Date))) {
        ("", _) => None,
        (_, None) => {
            input.findings.push(row.about(Column::Date, "date-not-understood"));
            return None;
        }
        (_, date) => date,
    };
    let key = (
        site.clone(),
        text(Column::Line),
        date.map_or(String::new(), |date| date.to_string()),
        text(Column::Reader),
        text(Column::Recorder),
        text(Column::Pass),
    );
    if let Some(&visit) = known.get(&key) {
        return Some(visit);
    }
    let same = |visit: &Visit| {
        visit.site == site
            && visit.line == key.1
            && visit.date == date
            && (visit.reader == key.3 || key.3.is_empty() || visit.reader.is_empty())
            && (visit.pass == key.5)
            && visit.intercepts.is_empty()
    };
    if let Some(visit) = input.visits.iter().position(same) {
        // a lines table announced this visit; the readings now fill it
        known.insert(key.clone(), visit);
        input.visits[visit].reader = key.3;
        return Some(visit);
    }
    let protocol = protocol_of(row, options, input);
    let understood = |at: usize| row.sheet.headings.get(at).is_some_and(|heading| heading.column.is_some());
    let conditions = row
        .cells
        .iter()
        .enumerate()
        .filter(|(at, cell)| !understood(*at) && !cell.is_empty())
        .filter_map(|(at, cell)| {
            row.sheet.headings.get(at).map(|heading| (heading.text.clone(), cell.clone()))
        })
        .collect();
    input.visits.push(Visit {
        site,
        line: key.1.clone(),
        date,
        reader: key.3.clone(),
        recorder: key.4.clone(),
        pass: key.5.clone(),
        protocol,
        length: None,
        outcome: Outcome::Read,
        intercepts: Vec::new(),
        conditions,
        place: Some(row.sheet.place(row.number, None)),
    });
    known.insert(key, input.visits.len() - 1);
    Some(input.visits.len() - 1)
}

/// The protocol that a row names, else the one that was handed in, else none.
fn protocol_of(row: &Row, options: &Options, input: &mut Input) -> String {
    let name = row.text(Column::Protocol);
    if !name.is_empty() {
        let own = input.protocols.iter().find(|(_, own)| own.name.eq_ignore_ascii_case(name));
        if let Some((fingerprint, _)) = own {
            return fingerprint.clone();
        }
        if let Some(shipped) = protocol::find(name) {
            return input.add_protocol(shipped);
        }
        let finding = row.about(Column::Protocol, "protocol-not-known");
        if !input.findings.contains(&finding) {
            input.findings.push(finding);
        }
    }
    if let Some(given) = &options.protocol {
        return input.add_protocol(given.clone());
    }
    match input.protocols.keys().next() {
        Some(only) if input.protocols.len() == 1 => only.clone(),
        _ => String::new(),
    }
}

fn intercept(row: &Row, options: &Options, visit: &Visit) -> Result<Intercept, Finding> {
    let start = row.length(Column::Start, options)?;
    let stop = row.length(Column::Stop, options)?;
    let length = row.length(Column::Length, options)?;
    let extent = match (start, stop, length) {
        (Some(start), Some(stop), _) => {
            if stop.length() <= start.length() {
                let code = if stop.length() < start.length() { "stop-before-start" } else { "zero-length" };
                let message = Message::new(code)
                    .with("start", Value::Length(start.length(), start.notation()))
                    .with("stop", Value::Length(stop.length(), stop.notation()));
                return Err(Finding::must_settle(message).at(row.place(Column::Stop)));
            }
            Extent::Edges { start, stop }
        }
        (None, None, Some(length)) => Extent::Length(length),
        (Some(_), None, _) => return Err(row.about(Column::Stop, "stop-missing")),
        (None, Some(_), _) => return Err(row.about(Column::Start, "start-missing")),
        (None, None, None) => return Err(row.about(Column::Start, "start-and-stop-missing")),
    };
    let state = match row.text(Column::State).to_lowercase().as_str() {
        "" | "live" | "l" | "alive" => State::Live,
        "dead" | "d" => State::Dead,
        _ => return Err(row.about(Column::State, "state-not-known")),
    };
    Ok(Intercept {
        id: u32::try_from(visit.intercepts.len() + 1).unwrap_or(u32::MAX),
        species: row.text(Column::Species).to_owned(),
        extent,
        state,
        plant: row.some(Column::Plant),
        height: row.length(Column::Height, options)?,
        width: row.length(Column::Width, options)?,
        note: row.text(Column::Note).to_owned(),
        place: Some(Place { column: None, ..row.place(Column::Line) }),
    })
}

/// What should be said about a good row: a length that was rounded.
fn notes(row: &Row, intercept: &Intercept, input: &mut Input) {
    let measures: Vec<&Measure> = match &intercept.extent {
        Extent::Edges { start, stop } => vec![start, stop],
        Extent::Length(length) => vec![length],
    };
    for measure in measures.into_iter().filter(|measure| measure.was_rounded()) {
        let message = Message::new("length-rounded").with("text", measure.typed());
        input.findings.push(Finding::note(message).at(row.sheet.place(row.number, None)));
    }
}

/// When all files are in: lines that mix positions and lengths, species no list knows, lines without length.
pub(super) fn finish(options: &Options, input: &mut Input) {
    if let Some(length) = &options.line_length {
        for line in &mut input.plan {
            line.length.get_or_insert_with(|| length.clone());
        }
    }
    let mut unlisted: Vec<String> = Vec::new();
    for visit in &mut input.visits {
        let lengths = visit.intercepts.iter().filter(|i| matches!(i.extent, Extent::Length(_))).count();
        if lengths > 0 && lengths < visit.intercepts.len() {
            visit.outcome = Outcome::NotRead;
            let message = Message::new("positions-and-lengths-mixed")
                .with("site", visit.site.as_str())
                .with("line", visit.line.as_str());
            let finding = Finding::must_settle(message);
            input.findings.push(match &visit.place {
                Some(place) => finding.at(place.clone()),
                None => finding,
            });
        }
        for intercept in &visit.intercepts {
            let code = &intercept.species;
            if !code.is_empty() && !unlisted.contains(code) && input.plants.find(code).is_none() {
                unlisted.push(code.clone());
            }
        }
    }
    if !input.plants.plants.is_empty() {
        for code in unlisted {
            input
                .findings
                .push(Finding::have_a_look(Message::new("species-not-listed").with("species", code)));
        }
    }
}
