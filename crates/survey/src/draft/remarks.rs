//! What is said at once, while the person still stands on the line. Nothing is refused: it is marked, with a way out.
//!
//! The kinds are those of [`mod@crate::check`], so that what is said on the line is what would be said in the office.

use super::LineDraft;
use super::close::{Usable, usable};
use super::key::Key;
use super::sheet::Row;
use crate::check::check;
use crate::finding::Finding;
use crate::input::Input;
use crate::measure::Measure;
use crate::message::{Message, Value};
use crate::near::nearest_codes;
use crate::plan::PlannedLine;
use crate::plants::PlantList;
use crate::protocol::Protocol;
use crate::visit::{Extent, State};
use tautline_engine::cover::{Closure, Intercept, Life, line_cover};
use tautline_engine::length::Length;
use tautline_engine::stretch::Stretch;

/// What a line is read by.
#[derive(Clone, Copy, Debug)]
pub struct Rules<'a> {
    /// The protocol, where it is known.
    pub protocol: Option<&'a Protocol>,
    /// The plant list; empty where there is none.
    pub plants: &'a PlantList,
    /// The plan of the line.
    pub planned: Option<&'a PlannedLine>,
}

/// One thing said of a row.
#[derive(Clone, Debug, PartialEq)]
pub struct Remark {
    /// Its kind, as in the list of checks where that has it.
    pub kind: &'static str,
    /// The row.
    pub row: u32,
    /// The words.
    pub message: Message,
    /// Keys that would mend it.
    pub offers: Vec<Key>,
}

/// A row with its exact edges.
#[derive(Clone)]
struct Read<'a> {
    row: &'a Row,
    code: String,
    start: Measure,
    stop: Measure,
}

/// Everything to be said of the rows that stand, in the order of the sheet; what a person left so is not said again.
pub fn remarks(draft: &LineDraft, rules: Rules) -> Vec<Remark> {
    let setup = draft.setup();
    let tape = tape(draft, rules);
    let mut found = Vec::new();
    let mut read: Vec<Read> = Vec::new();
    for row in draft.sheet().standing() {
        species(row, rules, &mut found);
        let (start, stop) = (setup.measure(&row.start).ok(), setup.measure(&row.stop).ok());
        match usable(row, setup) {
            Usable::Backwards => {
                let message = edges("remark-stop-before-start", start.as_ref(), stop.as_ref());
                found.push(remark("stop-before-start", row, message, vec![Key::Swap(row.id)]));
            }
            Usable::Empty => {
                let (kind, message) = if row.length.is_empty() {
                    ("zero-length", edges("remark-zero-length", start.as_ref(), stop.as_ref()))
                } else {
                    ("length-zero", Message::new("remark-length-zero"))
                };
                found.push(remark(kind, row, message, vec![Key::Remove(row.id)]));
            }
            Usable::Yes(Extent::Length(length)) => finer(row, &[&length], rules, &mut found),
            Usable::Yes(Extent::Edges { start, stop }) => {
                finer(row, &[&start, &stop], rules, &mut found);
                beyond(row, &start, &stop, tape.as_ref(), &mut found);
                let now = Read { row, code: rules.plants.code(&row.species), start, stop };
                overlap(&now, &read, &mut found);
                read.push(now);
            }
        }
    }
    found.extend(gaps(&read, rules, tape.map(|tape| tape.length())));
    found.retain(|one| {
        draft.sheet().row(one.row).is_some_and(|row| !row.left_so.iter().any(|left| left == one.kind))
    });
    let order = |id: u32| draft.sheet().rows.iter().position(|row| row.id == id);
    found.sort_by_key(|one| order(one.row));
    found
}

/// What the office's checks would say of the line as it stands, beyond what [`remarks`] says row by row.
pub fn before_closing(draft: &LineDraft, rules: Rules) -> Vec<Finding> {
    let visit = draft.visit();
    let mut input = Input {
        plan: rules.planned.cloned().into_iter().collect(),
        plants: rules.plants.clone(),
        visits: vec![visit],
        ..Input::default()
    };
    if let Some(protocol) = rules.protocol {
        input.protocols.insert(draft.setup().protocol.clone(), protocol.clone());
    }
    check(&mut input);
    let said: Vec<&str> = remarks(draft, rules).iter().map(|one| one.kind).collect();
    // gaps under the rule are a habit of a season; on the line each is said by itself
    let by_row = |code: &str| {
        said.contains(&code)
            || ["gaps-under-the-rule", "overlap-within-species", "row-written-twice"].contains(&code)
    };
    input.findings.into_iter().filter(|one| !by_row(one.message.code)).collect()
}

/// How long the tape is: as set up for the visit, else as planned.
fn tape(draft: &LineDraft, rules: Rules) -> Option<Measure> {
    let planned = || rules.planned.and_then(|line| line.length.clone());
    draft.setup().length.clone().or_else(planned)
}

fn remark(kind: &'static str, row: &Row, message: Message, offers: Vec<Key>) -> Remark {
    Remark { kind, row: row.id, message, offers }
}

fn as_written(measure: &Measure) -> Value {
    Value::Length(measure.length(), measure.notation())
}

fn edges(code: &'static str, start: Option<&Measure>, stop: Option<&Measure>) -> Message {
    let value = |measure: Option<&Measure>| measure.map_or_else(|| Value::from(""), as_written);
    Message::new(code).with("start", value(start)).with("stop", value(stop))
}

fn species(row: &Row, rules: Rules, found: &mut Vec<Remark>) {
    let name = row.species.as_str();
    if name.is_empty() {
        found.push(remark("species-not-named", row, Message::new("remark-species-not-named"), Vec::new()));
        return;
    }
    if rules.plants.plants.is_empty() || rules.plants.find(name).is_some() {
        return;
    }
    let codes: Vec<&str> = rules.plants.plants.iter().map(|plant| plant.code.as_str()).collect();
    let near = nearest_codes(&name.to_uppercase(), &codes);
    let offers = near.iter().map(|&code| Key::CorrectSpecies(row.id, code.to_owned())).collect();
    let message = Message::new("remark-species-not-listed").with("species", name);
    found.push(remark("species-not-listed", row, message, offers));
}

/// Edges on no division that the protocol writes down.
fn finer(row: &Row, measures: &[&Measure], rules: Rules, found: &mut Vec<Remark>) {
    let Some(finest) = rules.protocol.and_then(|protocol| protocol.finest_division.as_ref()) else { return };
    let step = finest.length().nanometres();
    let off = |measure: &&&Measure| {
        measure.notation().step() < finest.length() && step > 0 && measure.length().nanometres() % step != 0
    };
    if let Some(measure) = measures.iter().find(off) {
        let message = Message::new("remark-finer-than-the-division")
            .with("edge", as_written(measure))
            .with("finest", as_written(finest));
        found.push(remark("finer-than-the-division", row, message, Vec::new()));
    }
}

fn beyond(row: &Row, start: &Measure, stop: &Measure, tape: Option<&Measure>, found: &mut Vec<Remark>) {
    let Some(tape) = tape.filter(|tape| stop.length() >= tape.length() + stop.notation().step()) else {
        return;
    };
    let (kind, code) = if start.length() >= tape.length() {
        ("wholly-beyond-the-tape", "remark-wholly-beyond")
    } else {
        ("beyond-the-tape", "remark-beyond")
    };
    let message = Message::new(code).with("stop", as_written(stop)).with("length", as_written(tape));
    found.push(remark(kind, row, message, Vec::new()));
}

/// The row shares tape with an earlier one of its species and state; where crown widths are read plants may overlap.
fn overlap(now: &Read, before: &[Read], found: &mut Vec<Remark>) {
    let by_plant = |other: &Read| !now.row.width.is_empty() && !other.row.width.is_empty();
    let meets = |other: &&Read| {
        let same = other.code == now.code && other.row.state == now.row.state;
        let shares = now.start.length() < other.stop.length() && other.start.length() < now.stop.length();
        same && shares && !by_plant(other)
    };
    let Some(other) = before.iter().find(meets) else { return };
    let later = if other.start.length() > now.start.length() { &other.start } else { &now.start };
    let sooner = if other.stop.length() < now.stop.length() { &other.stop } else { &now.stop };
    let twice = other.start.length() == now.start.length() && other.stop.length() == now.stop.length();
    let (kind, code) = if twice {
        ("row-written-twice", "remark-written-twice")
    } else {
        ("overlap-within-species", "remark-overlap")
    };
    let message = Message::new(code)
        .with("species", now.code.as_str())
        .with("start", as_written(later))
        .with("stop", as_written(sooner));
    let offer = if twice { Key::Remove(now.row.id) } else { Key::Join(other.row.id, now.row.id) };
    found.push(remark(kind, now.row, message, vec![offer]));
}

/// What the protocol's rule closes, each gap by itself: the engine decides, so that what is said is what is counted.
fn gaps(read: &[Read], rules: Rules, tape: Option<Length>) -> Vec<Remark> {
    let Some(protocol) = rules.protocol else { return Vec::new() };
    let Some(limit) = protocol.gap.limit.as_ref() else { return Vec::new() };
    let counts = protocol.counts_or_woody();
    let counted: Vec<&Read> =
        read.iter().filter(|one| counts.includes(&one.code, rules.plants.find(&one.code))).collect();
    let farthest = counted.iter().map(|one| one.stop.length()).max().unwrap_or(Length::ZERO);
    let cover = line_cover(tape.unwrap_or(farthest), &for_the_engine(&counted), &protocol.rule().0);
    let of_species = cover.species.iter().flat_map(|species| &species.closed);
    of_species
        .chain(&cover.between)
        .filter_map(|closed| {
            let (from, to) = (closed.stretch.start(), closed.stretch.stop());
            let begins = |at: Length| counted.iter().rev().find(|one| one.start.length() == at);
            let (kind, code, one) = match closed.closure {
                Closure::Gap => ("gap-joined", "remark-gap-joined", begins(to)?),
                Closure::BetweenSpecies => ("gap-joined", "remark-gap-joined-species", begins(to)?),
                Closure::DeadJoined => ("dead-joined", "remark-dead-joined", begins(from)?),
                Closure::LineEnd => {
                    let last = counted.iter().find(|one| one.stop.length() == from)?;
                    ("gap-joined", "remark-gap-joined-end", last)
                }
            };
            let notation = one.start.notation().finer(one.stop.notation());
            let message = Message::new(code)
                .with("gap", Value::Length(closed.stretch.length(), notation))
                .with("limit", as_written(limit));
            Some(remark(kind, one.row, message, Vec::new()))
        })
        .collect()
}

fn for_the_engine(counted: &[&Read]) -> Vec<Intercept> {
    let number = |at: Option<usize>| at.and_then(|at| u32::try_from(at).ok());
    counted
        .iter()
        .filter_map(|one| {
            let plant =
                |mark: &String| counted.iter().position(|other| other.row.plant.as_ref() == Some(mark));
            Some(Intercept {
                stretch: Stretch::new(one.start.length(), one.stop.length())?,
                species: number(counted.iter().position(|other| other.code == one.code))?,
                plant: number(one.row.plant.as_ref().and_then(plant)),
                life: if one.row.state == State::Live { Life::Live } else { Life::Dead },
            })
        })
        .collect()
}
