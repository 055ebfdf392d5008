//! Gaps under the rule that were written as breaks.

use super::records::{Reading, Records, Row, as_written};
use crate::finding::{About, Finding};
use crate::message::{Message, Value};
use crate::visit::State;
use std::collections::BTreeMap;
use tautline_engine::length::Length;

/// Site, year, reader and protocol.
type Habit<'a> = (&'a str, Option<u16>, &'a str, &'a str);

/// Gaps within a species that the protocol's rule reads as canopy. Cover closes them, so no figure moves; said once
/// for each site, year, reader and protocol, since it is a habit and not a slip.
pub(super) fn under_the_rule(records: &Records) -> Vec<Finding> {
    let mut habits: BTreeMap<Habit, Vec<(&Reading, usize)>> = BTreeMap::new();
    for reading in &records.readings {
        let count = breaks(records, reading);
        if count > 0 {
            let visit = reading.visit;
            let habit = (visit.site.as_str(), reading.year(), visit.reader.as_str(), visit.protocol.as_str());
            habits.entry(habit).or_default().push((reading, count));
        }
    }
    let say = |((site, year, reader, _), readings): (_, Vec<(&Reading, usize)>)| {
        let (first, _) = readings[0];
        let limit = first.protocol.and_then(|protocol| protocol.gap.limit.as_ref())?;
        let year: Option<u16> = year;
        let message = Message::new("gaps-under-the-rule")
            .with("site", site)
            .with("year", year.map_or(String::new(), |year| year.to_string()))
            .with("reader", named(reader))
            .with("count", readings.iter().map(|(_, count)| count).sum::<usize>())
            .with("lines", readings.len())
            .with("limit", as_written(limit));
        let site: &str = site;
        let about = About { site: site.to_owned(), date: first.visit.date, ..About::default() };
        Some(Finding::have_a_look(message).at_place(first.visit.place.as_ref()).about(about))
    };
    habits.into_iter().filter_map(say).collect()
}

fn named(reader: &str) -> Value {
    if reader.is_empty() { Value::Word("the-reader") } else { reader.into() }
}

/// How many gaps of a reading are shorter than its protocol's limit, with live canopy of one species, or of one
/// plant where the rule stops at the plant, on both sides.
fn breaks(records: &Records, reading: &Reading) -> usize {
    let Some(protocol) = reading.protocol else { return 0 };
    let Some(limit) = protocol.gap.limit.as_ref() else { return 0 };
    let mut rows: BTreeMap<(&str, Option<&str>), Vec<&Row>> = BTreeMap::new();
    for row in reading.rows.iter().filter(|row| row.intercept.state == State::Live) {
        let plant = row.intercept.plant.as_deref().filter(|_| protocol.stops_at_the_plant());
        rows.entry((records.code(row.intercept), plant)).or_default().push(row);
    }
    rows.into_values()
        .map(|mut rows| {
            rows.sort_by_key(|row| row.stretch());
            let mut reached = rows[0].stop.length();
            let mut count = 0;
            for row in &rows[1..] {
                let gap = row.start.length() - reached;
                count += usize::from(gap > Length::ZERO && gap < limit.length());
                reached = reached.max(row.stop.length());
            }
            count
        })
        .sum()
}
