//! Species that the plant list, or the site, hasn't seen before.

use super::records::{Reading, Records};
use crate::finding::{About, Finding};
use crate::message::Message;
use crate::near::nearest_codes;
use crate::visit::Intercept;
use std::collections::{BTreeMap, BTreeSet};

/// Codes that the plant list doesn't know, and species that were on none of their site's earlier visits.
pub(super) fn strangers(records: &Records) -> Vec<Finding> {
    let mut found = not_listed(records);
    found.extend(new_to_the_site(records));
    found
}

/// Codes that the plant list doesn't know, each once, with the listed codes that it may be meant for.
fn not_listed(records: &Records) -> Vec<Finding> {
    let listed: Vec<&str> = records.input.plants.plants.iter().map(|plant| plant.code.as_str()).collect();
    if listed.is_empty() {
        return Vec::new();
    }
    let mut strangers: BTreeMap<&str, (usize, &Reading, &Intercept)> = BTreeMap::new();
    for (reading, intercept) in rows(records) {
        let code = records.code(intercept);
        if !code.is_empty() && records.input.plants.find(code).is_none() {
            strangers.entry(code).or_insert((0, reading, intercept)).0 += 1;
        }
    }
    let say = |(code, (count, reading, first)): (_, (usize, &Reading, &Intercept))| {
        let near: Vec<String> = nearest_codes(code, &listed).into_iter().map(str::to_owned).collect();
        let message = if near.is_empty() {
            Message::new("species-not-listed")
        } else {
            Message::new("species-misspelt").with("near", near)
        };
        let message = message.with("species", code).with("count", count);
        reading.at(Finding::have_a_look(message), first.place.as_ref()).species(code)
    };
    strangers.into_iter().map(say).collect()
}

/// Species that appear at a site which was read in an earlier year without them.
fn new_to_the_site(records: &Records) -> Vec<Finding> {
    let listed = &records.input.plants;
    let mut seen: BTreeMap<&str, BTreeSet<&str>> = BTreeMap::new();
    let mut found = Vec::new();
    for ((site, year), readings) in records.rounds() {
        let Some(year) = year else { continue };
        let mut now: BTreeMap<&str, (&Reading, &Intercept)> = BTreeMap::new();
        for reading in readings {
            for intercept in &reading.visit.intercepts {
                let code = records.code(intercept);
                if !code.is_empty() && (listed.plants.is_empty() || listed.find(code).is_some()) {
                    now.entry(code).or_insert((reading, intercept));
                }
            }
        }
        if let Some(before) = seen.get(site) {
            for (code, (reading, first)) in now.iter().filter(|(code, _)| !before.contains(*code)) {
                let message = reading
                    .message("species-new-to-site")
                    .with("species", *code)
                    .with("year", year.to_string());
                let finding = Finding::have_a_look(message).at_place(first.place.as_ref());
                let about = About { site: site.to_owned(), date: reading.visit.date, ..About::default() };
                found.push(finding.about(about).species(code));
            }
        }
        seen.entry(site).or_default().extend(now.into_keys());
    }
    found
}

fn rows<'a>(records: &'a Records<'a>) -> impl Iterator<Item = (&'a Reading<'a>, &'a Intercept)> {
    records.readings.iter().flat_map(|reading| reading.visit.intercepts.iter().map(move |one| (reading, one)))
}
