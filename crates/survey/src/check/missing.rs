//! What is missing: line lengths, dates, observers, and records of planned lines.

use super::records::Records;
use crate::finding::{About, Finding};
use crate::message::Message;
use crate::plan::PlannedLine;
use crate::visit::Visit;
use std::collections::{BTreeMap, BTreeSet};
use tautline_engine::length::Length;

/// That the length of a visit's line isn't known.
pub fn line_length_missing(visit: &Visit, index: usize) -> Finding {
    let message = Message::new("line-length-missing");
    let message = message.with("site", visit.site.as_str()).with("line", visit.line.as_str());
    Finding::must_settle(message).of(visit, index)
}

/// Lines that were read and whose length nobody stated.
pub(super) fn line_lengths(records: &Records) -> Vec<Finding> {
    let without =
        |tape: Option<&crate::measure::Measure>| tape.is_none_or(|tape| tape.length() <= Length::ZERO);
    let readings = records.readings.iter().filter(|reading| without(reading.tape));
    readings.map(|reading| line_length_missing(reading.visit, reading.index)).collect()
}

/// Readings without a date, said once for each file.
pub(super) fn dates(records: &Records) -> Vec<Finding> {
    by_file(records, "date-missing", |visit| visit.date.is_none())
}

/// Readings without an observer, said once for each file.
pub(super) fn observers(records: &Records) -> Vec<Finding> {
    by_file(records, "observer-missing", |visit| visit.reader.is_empty())
}

fn by_file(records: &Records, code: &'static str, lacks: fn(&Visit) -> bool) -> Vec<Finding> {
    let mut files: BTreeMap<&str, Vec<&Visit>> = BTreeMap::new();
    for reading in records.readings.iter().filter(|reading| lacks(reading.visit)) {
        let file = reading.visit.place.as_ref().map_or("", |place| &place.file);
        files.entry(file).or_default().push(reading.visit);
    }
    files
        .into_values()
        .map(|visits| {
            let lines: BTreeSet<&str> = visits.iter().map(|visit| visit.line.as_str()).collect();
            let message = Message::new(code)
                .with("site", visits[0].site.as_str())
                .with("count", visits.len())
                .with("lines", lines.into_iter().map(str::to_owned).collect::<Vec<String>>());
            let about = About { site: visits[0].site.clone(), ..About::default() };
            Finding::have_a_look(message).at_place(visits[0].place.as_ref()).about(about)
        })
        .collect()
}

/// Planned lines without a record in a year in which their site was visited. One that never was read may have been
/// planned only after the last of those years, so it is asked about once.
pub(super) fn records(records: &Records) -> Vec<Finding> {
    let mut rounds: BTreeMap<(&str, Option<u16>), BTreeSet<&str>> = BTreeMap::new();
    for visit in &records.input.visits {
        let year = visit.date.map(crate::date::Date::year);
        rounds.entry((&visit.site, year)).or_default().insert(&visit.line);
    }
    // a line of which a row couldn't be read is said to be so already
    let unread: BTreeSet<(&str, &str)> = records
        .input
        .findings
        .iter()
        .filter(|finding| finding.holds_back())
        .filter_map(|finding| finding.about.as_deref())
        .map(|about| (about.site.as_str(), about.line.as_str()))
        .collect();
    let mut planned: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    let known = |line: &&PlannedLine| !unread.contains(&(line.site.as_str(), line.line.as_str()));
    for line in records.input.plan.iter().filter(known) {
        planned.entry(&line.site).or_default().push(&line.line);
    }
    let ever: BTreeSet<(&str, &str)> =
        rounds.iter().flat_map(|((site, _), read)| read.iter().map(|line| (*site, *line))).collect();
    let newest: BTreeMap<&str, Option<u16>> = rounds.keys().copied().collect();
    let mut found = Vec::new();
    for ((site, year), read) in rounds {
        let asked = |line: &&&str| ever.contains(&(site, **line)) || newest[site] == year;
        let lines = planned.get(site).into_iter().flatten();
        for line in lines.filter(|line| !read.contains(*line)).filter(asked) {
            let message = Message::new("line-planned-without-record")
                .with("site", site)
                .with("line", *line)
                .with("year", year.map_or(String::new(), |year| year.to_string()));
            let about = About { site: site.to_owned(), line: (*line).to_owned(), ..About::default() };
            found.push(Finding::have_a_look(message).about(about));
        }
    }
    found
}
