//! The readings of a site in a year as a fingerprint, so that a report can be held against a notebook years later.

use crate::canonical;
use crate::date::Date;
use crate::input::Input;
use crate::visit::Visit;
use serde::Serialize;
use serde_json::Value;

/// What a fingerprint covers; a change of it changes every one.
const MEANING: u32 = 1;

/// What stands before a fingerprint of readings, so that it is known among others.
pub const MARK: &str = "readings:";

/// SHA-256 of the readings, the planned lines and the strata of a site in a year, as canonical JSON (RFC 8785).
///
/// It doesn't matter in which files, rows or order they were handed in, nor what other sites and years there are. A
/// corrected reading gives another.
///
/// # Example
/// ```
/// use tautline_survey::{imprint::of_readings, input::Input};
/// let none = of_readings(&Input::default(), "Hollow Flat", Some(2026));
/// assert_eq!(none.len(), 64);
/// assert_ne!(none, of_readings(&Input::default(), "Hollow Flat", Some(2024)));
/// ```
pub fn of_readings(input: &Input, site: &str, year: Option<u16>) -> String {
    let own = input.visits.iter().filter(|one| one.site == site && one.date.map(Date::year) == year);
    let visits = sorted(own.map(|visit| record(&bare(visit))));
    let plan = sorted(input.plan.iter().filter(|line| line.site == site).map(record));
    let strata = sorted(input.strata.iter().filter(|stratum| stratum.site == site).map(record));
    let all = serde_json::json!({
        "meaning": MEANING, "site": site, "year": year, "visits": visits, "plan": plan, "strata": strata
    });
    // records hold no floats, so that each has canonical bytes
    canonical::sha256_hex(&canonical::bytes(&all).unwrap_or_default())
}

/// A visit without what depends on the file it came from.
fn bare(visit: &Visit) -> Visit {
    let mut visit = visit.clone();
    visit.place = None;
    for intercept in &mut visit.intercepts {
        (intercept.place, intercept.id) = (None, 0);
    }
    visit
}

fn record(record: &impl Serialize) -> Value {
    serde_json::to_value(record).unwrap_or_default()
}

fn sorted(records: impl Iterator<Item = Value>) -> Vec<Value> {
    let mut records: Vec<Value> = records.collect();
    records.sort_by_cached_key(|record| canonical::bytes(record).unwrap_or_default());
    records
}

/// Every fingerprint of readings in a text or a file, each once, in their order.
///
/// # Example
/// ```
/// let print = "ab".repeat(32);
/// let text = format!("of readings:{print} and readings:{print}, readings:short");
/// assert_eq!(tautline_survey::imprint::found_in(text.as_bytes()), [print]);
/// ```
pub fn found_in(bytes: &[u8]) -> Vec<String> {
    let mut found: Vec<String> = Vec::new();
    for at in 0..bytes.len().saturating_sub(MARK.len() + 63) {
        let rest = &bytes[at..];
        if !rest.starts_with(MARK.as_bytes()) {
            continue;
        }
        let print = &rest[MARK.len()..MARK.len() + 64];
        if print.iter().all(|byte| byte.is_ascii_digit() || (b'a'..=b'f').contains(byte)) {
            let print = String::from_utf8_lossy(print).into_owned();
            if !found.contains(&print) {
                found.push(print);
            }
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Measure;
    use crate::visit::{Extent, Intercept, Outcome, State};
    use tautline_engine::length::{Bare, DecimalMark, Unit};

    fn cm(text: &str) -> Measure {
        Measure::read(text, Some(Bare::Unit(Unit::Centimetre)), DecimalMark::Point).unwrap()
    }

    fn visit(line: &str, stop: &str) -> Visit {
        let extent = Extent::Edges { start: cm("10"), stop: cm(stop) };
        let intercept = Intercept {
            id: 1,
            species: "ATCA".into(),
            extent,
            state: State::Live,
            plant: None,
            height: None,
            width: None,
            note: String::new(),
            place: None,
        };
        Visit {
            site: "Rim Draw (invented)".into(),
            line: line.into(),
            date: Date::new(2026, 6, 3),
            reader: "R. Ash".into(),
            recorder: String::new(),
            pass: String::new(),
            protocol: "p".into(),
            length: Some(cm("1000")),
            outcome: Outcome::Read,
            intercepts: vec![intercept],
            set_aside: 0,
            conditions: Vec::new(),
            place: None,
        }
    }

    fn print(visits: Vec<Visit>) -> String {
        of_readings(&Input { visits, ..Input::default() }, "Rim Draw (invented)", Some(2026))
    }

    #[test]
    fn files_and_order_don_t_matter_and_a_corrected_edge_does() {
        let two = print(vec![visit("1", "52"), visit("2", "40")]);
        let mut moved = visit("2", "40");
        moved.intercepts[0].id = 7;
        moved.place =
            Some(crate::finding::Place { file: "other.csv".into(), row: 9, column: None, character: None });
        assert_eq!(two, print(vec![moved, visit("1", "52")]));
        assert_ne!(two, print(vec![visit("1", "53"), visit("2", "40")]));
        let mut elsewhere = visit("3", "40");
        elsewhere.site = "Hollow Flat (invented)".into();
        assert_eq!(two, print(vec![visit("1", "52"), visit("2", "40"), elsewhere]));
    }
}
