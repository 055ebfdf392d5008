//! Positions that don't rise as the reader walks along the tape.

use super::records::Records;
use crate::finding::Finding;
use crate::visit::State;
use std::collections::HashMap;

/// Fewer rows than this may fall by chance.
const ENOUGH: usize = 4;

/// Readings whose every row starts before the one above it, and rows that start before an earlier row of their
/// species. A crew may read one species at a time, and live before dead.
pub(super) fn out_of_order(records: &Records) -> Vec<Finding> {
    let mut found = Vec::new();
    for reading in &records.readings {
        let falls = reading.rows.windows(2).all(|pair| pair[1].start.length() < pair[0].start.length());
        if falls && reading.rows.len() >= ENOUGH {
            found.push(reading.at(Finding::have_a_look(reading.message("positions-fall")), None));
            continue;
        }
        let mut reached: HashMap<(&str, State), _> = HashMap::new();
        let mut back = Vec::new();
        for row in &reading.rows {
            let reached = reached
                .entry((records.code(row.intercept), row.intercept.state))
                .or_insert(row.start.length());
            if row.start.length() < *reached {
                back.push(row);
            }
            *reached = row.start.length().max(*reached);
        }
        if let Some(first) = back.first() {
            let species = records.code(first.intercept);
            let message = reading
                .message("positions-out-of-order")
                .with("species", species)
                .with("start", super::records::as_written(first.start))
                .with("count", back.len());
            found.push(
                reading.at(Finding::have_a_look(message), first.intercept.place.as_ref()).species(species),
            );
        }
    }
    found
}
