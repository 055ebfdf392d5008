//! Lengths without positions that can't all be on the line.

use super::records::Records;
use crate::finding::Finding;
use crate::message::Value;
use crate::visit::{Extent, Outcome, State};
use std::collections::BTreeMap;
use tautline_engine::length::Length;

/// A species whose live, or dead, lengths add up to more than what was read of the line.
pub(super) fn pass_the_line(records: &Records) -> Vec<Finding> {
    let mut found = Vec::new();
    for reading in &records.readings {
        let Some(tape) = reading.tape.filter(|tape| tape.length() > Length::ZERO) else { continue };
        let read = match &reading.visit.outcome {
            Outcome::PartlyRead(mark) => mark.length().min(tape.length()),
            _ => tape.length(),
        };
        let mut sums: BTreeMap<(&str, bool), (Length, &crate::visit::Intercept, &crate::measure::Measure)> =
            BTreeMap::new();
        for intercept in &reading.visit.intercepts {
            if let Extent::Length(length) = &intercept.extent {
                let key = (records.code(intercept), intercept.state == State::Dead);
                let sum = sums.entry(key).or_insert((Length::ZERO, intercept, length));
                sum.0 = sum.0 + length.length();
            }
        }
        for ((species, _), (sum, first, like)) in sums {
            if sum > read {
                let message = reading
                    .message("lengths-pass-the-line")
                    .with("species", species)
                    .with("sum", Value::Length(sum, like.notation()))
                    .with("read", Value::Length(read, tape.notation()));
                found.push(reading.at(Finding::must_settle(message), first.place.as_ref()).species(species));
            }
        }
    }
    found
}
