//! Readings of lines that nobody had permission to enter, as far as the plan says. Only a reminder, and only at sites
//! where permission was ever written down: where nobody keeps it here, nothing is said.

use super::records::{Reading, Records};
use crate::date::Date;
use crate::finding::{About, Finding};
use crate::message::Message;
use crate::plan::{Permission, PlannedLine};
use std::collections::{BTreeMap, BTreeSet, HashMap};

/// Readings of lines without permission, at sites where some line has one or says that it is needed; once for each site and
/// year.
pub(super) fn missing(records: &Records) -> Vec<Finding> {
    let minded: BTreeSet<&str> = records
        .input
        .plan
        .iter()
        .filter(|line| line.permission.is_some())
        .map(|line| line.site.as_str())
        .collect();
    let permissions = permissions(records);
    let without = |reading: &Reading| {
        let line = (reading.visit.site.as_str(), reading.visit.line.as_str());
        minded.contains(line.0) && !permissions.get(&line).is_some_and(|one| one.is_given())
    };
    by_round(records, without, "permission-missing", |message, _| message)
}

/// Readings after the last day of their line's permission; once for each site and year.
pub(super) fn ended(records: &Records) -> Vec<Finding> {
    let permissions = permissions(records);
    let until = |reading: &Reading| -> Option<Date> {
        let line = (reading.visit.site.as_str(), reading.visit.line.as_str());
        let permission = permissions.get(&line)?;
        permission.until.filter(|_| reading.visit.date.is_some_and(|day| permission.had_ended_by(day)))
    };
    by_round(
        records,
        |reading| until(reading).is_some(),
        "permission-ended",
        |message, readings| {
            let first = readings.iter().filter_map(|reading| until(reading)).min();
            message.with("until", first.map_or_else(String::new, |day| day.to_string()))
        },
    )
}

fn permissions<'a>(records: &Records<'a>) -> HashMap<(&'a str, &'a str), &'a Permission> {
    let of_line = |line: &'a PlannedLine| {
        line.permission.as_ref().map(|permission| ((line.site.as_str(), line.line.as_str()), permission))
    };
    records.input.plan.iter().filter_map(of_line).collect()
}

/// One finding for each site and year that has such readings.
fn by_round(
    records: &Records,
    such: impl Fn(&Reading) -> bool,
    code: &'static str,
    more: impl Fn(Message, &[&Reading]) -> Message,
) -> Vec<Finding> {
    let mut rounds: BTreeMap<(&str, Option<u16>), Vec<&Reading>> = BTreeMap::new();
    for reading in records.readings.iter().filter(|reading| such(reading)) {
        rounds.entry((&reading.visit.site, reading.year())).or_default().push(reading);
    }
    rounds
        .into_iter()
        .map(|((site, _), readings)| {
            let first = readings[0].visit;
            let mut lines: Vec<String> = readings.iter().map(|reading| reading.visit.line.clone()).collect();
            lines.sort_by(|a, b| crate::assess::natural_order(a, b));
            lines.dedup();
            let message = Message::new(code)
                .with("site", site)
                .with("lines", lines)
                .with("date", first.date.map_or_else(String::new, |date| date.to_string()));
            let about = About { site: site.to_owned(), date: first.date, ..About::default() };
            Finding::have_a_look(more(message, &readings)).at_place(first.place.as_ref()).about(about)
        })
        .collect()
}
