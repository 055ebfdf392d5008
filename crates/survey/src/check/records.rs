//! The input with what several checks need, worked out once: each reading with its tape, its rule and its rows.

use crate::finding::{Finding, Place};
use crate::input::Input;
use crate::measure::Measure;
use crate::message::{Message, Value};
use crate::plan::PlannedLine;
use crate::protocol::Protocol;
use crate::visit::{Extent, Intercept, Outcome, Visit};
use std::collections::{BTreeMap, HashMap};
use tautline_engine::stretch::Stretch;

/// Everything that was handed in, ready to be checked.
pub(super) struct Records<'a> {
    pub(super) input: &'a Input,
    /// Every visit that was read, in full or in part.
    pub(super) readings: Vec<Reading<'a>>,
    /// The list's code for each code as written.
    codes: HashMap<&'a str, String>,
}

/// One visit that was read.
pub(super) struct Reading<'a> {
    /// Its place in the input.
    pub(super) index: usize,
    pub(super) visit: &'a Visit,
    /// The stratum it lies in.
    pub(super) stratum: Option<&'a str>,
    /// How long the tape is, where that is known.
    pub(super) tape: Option<&'a Measure>,
    /// The protocol, where it is known.
    pub(super) protocol: Option<&'a Protocol>,
    /// The rows with positions, in the order of the sheet.
    pub(super) rows: Vec<Row<'a>>,
}

/// A row with its positions.
#[derive(Clone, Copy)]
pub(super) struct Row<'a> {
    pub(super) intercept: &'a Intercept,
    pub(super) start: &'a Measure,
    pub(super) stop: &'a Measure,
}

impl<'a> Records<'a> {
    pub(super) fn of(input: &'a Input) -> Self {
        let plan: HashMap<(&str, &str), &PlannedLine> =
            input.plan.iter().map(|line| ((line.site.as_str(), line.line.as_str()), line)).collect();
        let readings = input
            .visits
            .iter()
            .enumerate()
            .filter(|(_, visit)| visit.outcome != Outcome::NotRead)
            .map(|(index, visit)| {
                let planned = plan.get(&(visit.site.as_str(), visit.line.as_str())).copied();
                Reading {
                    index,
                    visit,
                    stratum: planned.and_then(|line| line.stratum.as_deref()),
                    tape: visit.length.as_ref().or_else(|| planned.and_then(|line| line.length.as_ref())),
                    protocol: input.protocols.get(&visit.protocol),
                    rows: visit.intercepts.iter().filter_map(Row::of).collect(),
                }
            })
            .collect();
        let mut codes: HashMap<&str, String> = HashMap::new();
        for intercept in input.visits.iter().flat_map(|visit| &visit.intercepts) {
            codes.entry(&intercept.species).or_insert_with(|| input.plants.code(&intercept.species));
        }
        Self { input, readings, codes }
    }

    /// The readings of each site in each calendar year.
    pub(super) fn rounds(&self) -> BTreeMap<(&'a str, Option<u16>), Vec<&Reading<'a>>> {
        let mut rounds: BTreeMap<_, Vec<&Reading>> = BTreeMap::new();
        for reading in &self.readings {
            rounds.entry((reading.visit.site.as_str(), reading.year())).or_default().push(reading);
        }
        rounds
    }

    /// The list's code for what was written, or what was written in capitals.
    pub(super) fn code(&self, intercept: &Intercept) -> &str {
        self.codes.get(intercept.species.as_str()).map_or("", String::as_str)
    }
}

impl Reading<'_> {
    pub(super) fn year(&self) -> Option<u16> {
        self.visit.date.map(crate::date::Date::year)
    }

    /// A message about this line.
    pub(super) fn message(&self, code: &'static str) -> Message {
        Message::new(code).with("site", self.visit.site.as_str()).with("line", self.visit.line.as_str())
    }

    /// A finding about this reading, said to stand at a row of it.
    pub(super) fn at(&self, finding: Finding, place: Option<&Place>) -> Finding {
        finding.at_place(place.or(self.visit.place.as_ref())).of(self.visit, self.index)
    }
}

impl<'a> Row<'a> {
    fn of(intercept: &'a Intercept) -> Option<Self> {
        let Extent::Edges { start, stop } = &intercept.extent else { return None };
        (start.length() < stop.length()).then_some(Self { intercept, start, stop })
    }

    pub(super) fn stretch(&self) -> Stretch {
        Stretch::new(self.start.length(), self.stop.length())
            .expect("a row is made only where stop is beyond start")
    }
}

/// A length as the sheet wrote it.
pub(super) fn as_written(measure: &Measure) -> Value {
    Value::Length(measure.length(), measure.notation())
}
