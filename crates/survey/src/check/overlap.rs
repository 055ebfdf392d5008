//! Stretches of one species that lie over each other, and rows written twice.

use super::records::{Reading, Records, Row, as_written};
use crate::finding::Finding;
use crate::visit::State;
use std::collections::BTreeMap;
use tautline_engine::length::Length;

/// Rows of one species, live or dead, that share tape with a row before them on the tape. Cover counts such tape
/// once, so nothing is lost but perhaps a slip. Where crown widths are read, each plant has its own row, and rows
/// may overlap.
pub(super) fn within_species(records: &Records) -> Vec<Finding> {
    let mut found = Vec::new();
    for reading in &records.readings {
        let mut by_species: BTreeMap<(&str, bool), Vec<&Row>> = BTreeMap::new();
        for row in &reading.rows {
            let key = (records.code(row.intercept), row.intercept.state == State::Dead);
            by_species.entry(key).or_default().push(row);
        }
        for ((species, _), mut rows) in by_species {
            rows.sort_by_key(|row| (row.stretch(), &row.intercept.place));
            overlapping(reading, species, &rows, &mut found);
        }
    }
    found
}

fn overlapping(reading: &Reading, species: &str, rows: &[&Row], found: &mut Vec<Finding>) {
    let mut reached: Option<&Row> = None;
    for (at, row) in rows.iter().enumerate() {
        let by_plant = |other: &Row| row.intercept.width.is_some() && other.intercept.width.is_some();
        let over = reached.filter(|other| row.start.length() < other.stop.length() && !by_plant(other));
        if let Some(over) = over {
            let twice = at > 0 && rows[at - 1].stretch() == row.stretch();
            let message = reading
                .message(if twice { "row-written-twice" } else { "overlap-within-species" })
                .with("species", species)
                .with("start", as_written(row.start))
                .with("stop", as_written(row.stop))
                .with("reached", as_written(over.stop));
            found.push(
                reading.at(Finding::have_a_look(message), row.intercept.place.as_ref()).species(species),
            );
        }
        if reached.map_or(Length::ZERO, |other| other.stop.length()) < row.stop.length() {
            reached = Some(row);
        }
    }
}
