//! Readings and lines tables: rows become visits.

use super::cells::Row;
use super::places;
use super::unplaced::Neighbours;
use super::visits::{Visits, settle};
use super::{Alike, Kind, Options, Sheet, sums_up};
use crate::headings::{Column, Heading};
use crate::sheet::Says;
use crate::shown::shorten;
use std::collections::HashMap;
use tautline_engine::length::Length;
use tautline_survey::finding::{About, Finding, Weight};
use tautline_survey::input::Input;
use tautline_survey::measure::Measure;
use tautline_survey::message::{Message, Value};
use tautline_survey::plan::PlannedLine;
use tautline_survey::visit::{Extent, Intercept, Outcome, State, Visit};

/// What the files so far have said about lines and visits.
#[derive(Default)]
pub(super) struct SoFar {
    planned: HashMap<(String, String), usize>,
    visits: Visits,
    neighbours: Neighbours,
}

pub(super) fn readings(
    sheet: &Sheet,
    options: &Options,
    so_far: &mut SoFar,
    alike: &mut Alike,
    input: &mut Input,
) {
    let first = input.findings.len();
    so_far.neighbours = Neighbours::default();
    if let Some(typed) = &sheet.typed {
        input.findings.extend(typed.findings.iter().cloned());
    }
    // a sheet without unit would say so at each of its numbers
    let mut unit_is_said =
        input.findings[first..].iter().any(|finding| finding.message.code == "unit-not-known");
    let mut misshapen = sheet.misshapen.iter().peekable();
    for row in sheet.rows() {
        while misshapen.next_if(|&&number| number < row.number).is_some() {
            so_far.neighbours.misshapen(input);
        }
        let before = input.findings.len();
        if let Err(finding) = reading(&row, options, so_far, input) {
            let no_unit = finding.message.code == "sheet-no-unit";
            if !(no_unit && unit_is_said) {
                input.findings.push(finding);
            }
            unit_is_said |= no_unit;
        }
        shorten(&mut input.findings[before..]);
        for finding in &mut input.findings[before..] {
            say_what_about(&row, options, finding);
        }
        alike.look_through(before, &mut input.findings);
    }
    for _ in misshapen {
        so_far.neighbours.misshapen(input);
    }
    if let Some(typed) = &sheet.typed {
        let own = &mut input.findings[first..];
        own.sort_by_key(|finding| finding.place.as_ref().map(|place| (place.row, place.character)));
        typed.show(own);
    }
}

/// What is said of a row is about its line, and about its visit where that is known.
fn say_what_about(row: &Row, options: &Options, finding: &mut Finding) {
    let about = finding.about.get_or_insert_with(|| {
        Box::new(About {
            site: row.site(options).unwrap_or_default(),
            line: row.text(Column::Line).to_owned(),
            date: row.date(),
            ..About::default()
        })
    });
    if !about.visits.is_empty() {
        about.species = row.text(Column::Species).to_uppercase();
    }
}

/// One row: what it says of the plan, of the visit and of an intercept.
fn reading(row: &Row, options: &Options, so_far: &mut SoFar, input: &mut Input) -> Result<(), Finding> {
    if row.typed.is_none() && is_a_total(row) {
        return Err(Finding::note(Message::new("row-of-totals")).at(row.own_place()));
    }
    let site = match (row.text(Column::Line), row.site(options)) {
        ("", _) => return Err(unplaced(row, Column::Line, "cell-empty", options, so_far, input)),
        (_, None) => return Err(unplaced(row, Column::Site, "site-missing", options, so_far, input)),
        (_, Some(site)) => site,
    };
    plan(row, &site, options, &mut so_far.planned, input);
    places::site(row, &site, input);
    places::line(row, &site, row.text(Column::Line), input);
    let says = row.typed.map(|typed| &typed.says);
    if says == Some(&Says::Plan) {
        return Ok(());
    }
    let is_reading = row.sheet.kind == Kind::Readings;
    let outcome = outcome(row, options)?;
    if !is_reading && outcome.is_none() {
        return Ok(());
    }
    let at = so_far.visits.of(row, &site, options, input)?;
    if is_reading {
        so_far.neighbours.placed(at, input);
    }
    so_far.visits.keep_conditions(row, at, &mut input.visits[at]);
    if let Some(Says::Fault(_) | Says::Broken) = says {
        input.visits[at].set_aside += 1;
    }
    if let Some(Says::Fault(finding)) = says {
        return Err(finding.as_ref().clone());
    }
    let says_outcome = outcome.is_some();
    if let Some(outcome) = outcome {
        if !so_far.visits.agrees_on(at, &outcome) {
            return Err(row.about(Column::Outcome, "outcomes-differ"));
        }
        input.visits[at].outcome = outcome;
        if row.text(Column::Outcome).to_lowercase().contains("nothing") {
            so_far.visits.found_nothing(at);
        }
    }
    if !is_reading {
        so_far.visits.announce(at, &input.visits[at]);
        return Ok(());
    }
    if says.is_some_and(|says| *says != Says::Reading) {
        return Ok(());
    }
    if !speaks_of_an_intercept(row) {
        return if says_outcome { Ok(()) } else { Err(row.about(Column::Species, "row-says-nothing")) };
    }
    // the same visit in another file is most likely the sheet exported again; adding it up would count it twice
    let first = input.visits[at].intercepts.first().and_then(|first| first.place.as_ref());
    if let Some(first) = first.filter(|first| first.file != row.sheet.name) {
        if !so_far.visits.first_time_in(at, &row.sheet.name) {
            return Ok(());
        }
        let message = Message::new("visit-in-two-files")
            .with("site", site)
            .with("line", row.text(Column::Line))
            .with("first", first.file.as_str());
        return Err(Finding::must_settle(message).at(row.place(Column::Line)));
    }
    let intercept = match intercept(row, options, &input.visits[at]) {
        Ok(intercept) => intercept,
        Err(finding) => {
            input.visits[at].set_aside += u32::from(finding.weight == Weight::MustSettle);
            return Err(finding.of(&input.visits[at], at));
        }
    };
    notes(row, &intercept, at, options, input);
    input.visits[at].intercepts.push(intercept);
    Ok(())
}

/// What is said of a row that doesn't say where it belongs; a neighbour that may be short of it is held back.
fn unplaced(
    row: &Row,
    column: Column,
    code: &'static str,
    options: &Options,
    so_far: &mut SoFar,
    input: &mut Input,
) -> Finding {
    let finding = row.about(column, code);
    if row.sheet.kind != Kind::Readings || !speaks_of_an_intercept(row) {
        return finding;
    }
    match so_far.neighbours.unplaced(row, options, input) {
        Some(at) => finding.of(&input.visits[at], at),
        None => finding,
    }
}

fn speaks_of_an_intercept(row: &Row) -> bool {
    let of_intercept = [Column::Species, Column::Start, Column::Stop, Column::Length];
    of_intercept.iter().any(|&column| !row.text(column).is_empty())
}

/// Whether the row sums up others: its species says so, or its site or line and there is no species.
fn is_a_total(row: &Row) -> bool {
    let species = row.text(Column::Species);
    sums_up(species)
        || (species.is_empty()
            && [Column::Site, Column::Line].iter().any(|&column| sums_up(row.text(column))))
}

/// What the row says about the plan: length, stratum, plot, judgement. The first that speaks is kept.
fn plan(
    row: &Row,
    site: &str,
    options: &Options,
    at_site: &mut HashMap<(String, String), usize>,
    input: &mut Input,
) {
    let line = row.text(Column::Line).to_owned();
    let at = *at_site.entry((site.to_owned(), line.clone())).or_insert_with(|| {
        input.plan.push(PlannedLine {
            site: site.to_owned(),
            line,
            length: None,
            stratum: None,
            plot: None,
            judgement: None,
            slope: None,
            permission: None,
        });
        input.plan.len() - 1
    });
    let planned = &mut input.plan[at];
    let kept = [
        (&mut planned.stratum, Column::Stratum),
        (&mut planned.plot, Column::Plot),
        (&mut planned.judgement, Column::Judgement),
    ];
    for (kept, column) in kept {
        match (&kept, row.some(column)) {
            (None, found) => *kept = found,
            (Some(first), Some(found)) if *first != found => {
                let message = Message::new("plan-differs")
                    .with("site", site)
                    .with("line", planned.line.as_str())
                    .with("first", first.as_str())
                    .with("found", found);
                input.findings.push(Finding::must_settle(message).at(row.place(column)));
            }
            _ => {}
        }
    }
    match (planned.slope, row.slope()) {
        (None, Ok(found)) => planned.slope = found,
        (Some(first), Ok(Some(found))) if first != found => {
            let message = Message::new("slope-differs")
                .with("site", site)
                .with("line", planned.line.as_str())
                .with("found", row.text(Column::Slope));
            input.findings.push(Finding::must_settle(message).at(row.place(Column::Slope)));
        }
        (_, Ok(_)) => {}
        (_, Err(finding)) => input.findings.push(finding),
    }
    match (&planned.permission, row.permission()) {
        (None, Ok(found)) => planned.permission = found,
        (Some(first), Ok(Some(found))) if *first != found => {
            let message = Message::new("permission-differs")
                .with("site", site)
                .with("line", planned.line.as_str())
                .with("found", row.text(Column::PermissionFrom));
            input.findings.push(Finding::have_a_look(message).at(row.place(Column::PermissionFrom)));
        }
        (_, Ok(_)) => {}
        (_, Err(finding)) => input.findings.push(finding),
    }
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

fn intercept(row: &Row, options: &Options, visit: &Visit) -> Result<Intercept, Finding> {
    let start = row.length(Column::Start, options)?;
    let stop = row.length(Column::Stop, options)?;
    let length = row.length(Column::Length, options)?;
    let extent = match (start, stop, length) {
        (Some(start), Some(stop), _) => {
            if stop.length() <= start.length() {
                let (code, weigh): (_, fn(Message) -> Finding) = if stop.length() < start.length() {
                    ("stop-before-start", Finding::must_settle)
                } else {
                    ("zero-length", Finding::have_a_look)
                };
                let message = Message::new(code)
                    .with("start", Value::Length(start.length(), start.notation()))
                    .with("stop", Value::Length(stop.length(), stop.notation()));
                return Err(weigh(message).at(row.place(Column::Stop)));
            }
            Extent::Edges { start, stop }
        }
        (None, None, Some(length)) if length.length() == Length::ZERO => {
            return Err(Finding::have_a_look(Message::new("length-zero")).at(row.place(Column::Length)));
        }
        (None, None, Some(length)) => Extent::Length(length),
        (Some(_), None, _) => return Err(row.about(Column::Stop, "stop-missing")),
        (None, Some(_), _) => return Err(row.about(Column::Start, "start-missing")),
        (None, None, None) => return Err(row.about(Column::Start, "start-and-stop-missing")),
    };
    let heading = row.sheet.headings.iter().find(|heading| heading.column == Some(Column::State));
    let state =
        state(row.text(Column::State), heading).ok_or_else(|| row.about(Column::State, "state-not-known"))?;
    Ok(Intercept {
        id: u32::try_from(visit.intercepts.len() + 1).unwrap_or(u32::MAX),
        species: row.text(Column::Species).to_owned(),
        extent,
        state,
        plant: row.some(Column::Plant),
        height: row.length(Column::Height, options)?,
        width: row.length(Column::Width, options)?,
        note: row.text(Column::Note).to_owned(),
        place: Some(row.own_place()),
    })
}

/// Live or dead, as the words of a cell say; under a heading that asks “live?”, yes or no.
pub(crate) fn state(words: &str, heading: Option<&Heading>) -> Option<State> {
    let asks = heading.is_some_and(|heading| {
        ["live", "alive"]
            .iter()
            .any(|asks| heading.text.trim_end_matches('?').trim().eq_ignore_ascii_case(asks))
    });
    Some(match words.to_lowercase().as_str() {
        "" | "live" | "l" | "alive" => State::Live,
        "dead" | "d" => State::Dead,
        "yes" | "y" | "true" if asks => State::Live,
        "no" | "n" | "false" if asks => State::Dead,
        _ => return None,
    })
}

/// What should be said about a row that is kept: a length that was rounded, or that start and stop don't make.
fn notes(row: &Row, intercept: &Intercept, at: usize, options: &Options, input: &mut Input) {
    let measures: Vec<&Measure> = match &intercept.extent {
        Extent::Edges { start, stop } => vec![start, stop],
        Extent::Length(length) => vec![length],
    };
    for measure in measures.into_iter().filter(|measure| measure.was_rounded()) {
        let message = Message::new("length-rounded").with("text", measure.typed());
        input.findings.push(Finding::note(message).at(row.sheet.place(row.number, None)));
    }
    if let (Extent::Edges { start, stop }, Ok(Some(length))) =
        (&intercept.extent, row.length(Column::Length, options))
    {
        let between = stop.length() - start.length();
        if !may_round_to(between, &length) {
            let message = Message::new("start-stop-length-disagree")
                .with("between", Value::Length(between, stop.notation().finer(start.notation())))
                .with("length", Value::Length(length.length(), length.notation()));
            let finding = Finding::must_settle(message).at(row.place(Column::Length));
            input.findings.push(finding.of(&input.visits[at], at));
        }
    }
}

/// Whether a length could have been written so: it lies within half of the last place written, or division shown.
fn may_round_to(exact: Length, written: &Measure) -> bool {
    let step = written.notation().step().nanometres();
    2 * (exact - written.length()).nanometres().abs() <= step
}

/// When all files are in: lengths that an option gives, and visits that contradict themselves.
pub(super) fn finish(options: &Options, so_far: &SoFar, input: &mut Input) {
    if let Some(length) = &options.line_length {
        for line in &mut input.plan {
            line.length.get_or_insert_with(|| length.clone());
        }
    }
    settle(&so_far.visits, input);
}
