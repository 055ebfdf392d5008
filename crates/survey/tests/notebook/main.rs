//! A notebook: what revisions come to, whoever wrote them and in which order they came.
//!
//! Sites, people and readings are invented.

#![expect(clippy::unwrap_used, reason = "a test that can't build its own records has failed")]

mod corrected;
mod joined;
mod looks;
mod sight;
mod written;

use tautline_engine::length::Unit;
use tautline_survey::date::Date;
use tautline_survey::finding::Place;
use tautline_survey::input::{Input, SourceFile};
use tautline_survey::measure::Measure;
use tautline_survey::notebook::current::Current;
use tautline_survey::notebook::gather::gather;
use tautline_survey::notebook::hand::{Draft, Hand};
use tautline_survey::plan::PlannedLine;
use tautline_survey::record::Records;
use tautline_survey::revision::{DeviceId, Revision, Stamp};
use tautline_survey::visit::{Extent, Intercept, Outcome, State, Visit};

/// An invented device that writes.
pub(crate) struct Device {
    number: u64,
    drawn: u64,
    counter: u64,
}

impl Device {
    pub(crate) fn new(number: u64) -> Self {
        Self { number, drawn: 0, counter: 0 }
    }

    pub(crate) fn write(&mut self, what: &str, drafts: Vec<Draft>) -> Vec<Revision> {
        let (number, drawn) = (self.number, &mut self.drawn);
        let mut random = |bytes: &mut [u8]| {
            *drawn += 1;
            let own = (number << 32 | *drawn).wrapping_mul(0x9E37_79B9_7F4A_7C15).to_be_bytes();
            bytes.iter_mut().zip(own.iter().cycle()).for_each(|(byte, own)| *byte = *own);
        };
        let mut hand = Hand {
            author: format!("invented {number}"),
            reason: String::new(),
            device: DeviceId::made(0, [u8::try_from(number).unwrap(); 10]),
            device_name: "tablet".to_owned(),
            time: Stamp::new("2026-06-09T20:03:07Z", -360).unwrap(),
            milliseconds: 1_781_000_000_000,
            counter: self.counter,
            random: &mut random,
        };
        let made = hand.write(what, drafts).unwrap();
        self.counter = hand.counter;
        made
    }

    pub(crate) fn import(&mut self, records: &mut Records, input: &Input) -> usize {
        let current = standing(records);
        let drafts = gather(&current, input, &[]).drafts;
        let made = self.write("import", drafts);
        let number = made.len();
        add_all(records, made);
        number
    }
}

pub(crate) fn add_all(records: &mut Records, made: Vec<Revision>) {
    for revision in made {
        records.add(revision);
    }
}

pub(crate) fn standing(records: &Records) -> Current {
    Current::of(records.heads().into_iter().cloned().collect())
}

pub(crate) fn feet(count: u32) -> Measure {
    Measure::whole(count, Unit::Foot)
}

pub(crate) fn visit(line: &str, stop: u32) -> Visit {
    let extent = Extent::Edges { start: feet(3), stop: feet(stop) };
    Visit {
        site: "Invented Flat".into(),
        line: line.into(),
        date: Date::new(2026, 6, 9),
        reader: "reader A".into(),
        recorder: String::new(),
        pass: String::new(),
        protocol: String::new(),
        length: Some(feet(100)),
        outcome: Outcome::Read,
        intercepts: vec![Intercept {
            id: 1,
            species: "ATCA".into(),
            extent,
            state: State::Live,
            plant: None,
            height: None,
            width: None,
            note: String::new(),
            place: Some(Place { file: "sheet.csv".into(), row: 2, column: None, character: None }),
        }],
        set_aside: 0,
        conditions: Vec::new(),
        place: None,
    }
}

pub(crate) fn sheet(name: &str, visits: Vec<Visit>) -> Input {
    Input {
        files: vec![SourceFile { name: name.into(), sha256: name.into() }],
        plan: vec![PlannedLine {
            site: "Invented Flat".into(),
            line: "1".into(),
            length: Some(feet(100)),
            stratum: None,
            plot: None,
            judgement: None,
            slope: None,
            permission: None,
        }],
        visits,
        ..Input::default()
    }
}
