//! Slips and oddities of readings: one small module for each kind of check, one list of them all.
//!
//! [`check`] runs when all readings are in, whatever they came from. What must be settled holds its readings back:
//! they are shown and speak for no site. What is worth a look changes no figure. A person who looked and found a
//! finding to be fine says so in a [`Settlement`].

mod again;
mod backwards;
mod digits;
mod feet;
mod gaps;
mod kinds;
mod lengths;
mod missing;
mod order;
mod others;
mod overlap;
mod permission;
mod records;
mod settle;
mod species;
mod tape;
mod window;

pub use again::ENOUGH_POSITIONS;
pub use kinds::{KINDS, Kind, Way, kind};
pub use missing::line_length_missing;
pub use settle::Settlement;
pub(crate) use window::is_outside as is_outside_window;

use crate::finding::{About, Finding};
use crate::input::Input;
use records::Records;
use std::collections::{BTreeSet, HashMap};

/// Every check that looks at readings as they were handed in; each finds what it is named for and nothing else.
const CHECKS: [fn(&Records) -> Vec<Finding>; 20] = [
    tape::beyond,
    tape::past_the_mark,
    lengths::pass_the_line,
    missing::line_lengths,
    missing::dates,
    missing::observers,
    missing::records,
    again::line_read_twice,
    again::written_twice,
    backwards::every_row,
    backwards::against_the_last_visit,
    order::out_of_order,
    overlap::within_species,
    gaps::under_the_rule,
    feet::suspected,
    digits::heaped,
    species::strangers,
    window::outside,
    permission::missing,
    permission::ended,
];

/// Runs every check on readings that are all in: adds what it finds, marks what persons settled, and holds back the
/// readings that must be settled first. Running it again adds nothing.
pub fn check(input: &mut Input) {
    let records = Records::of(input);
    let found: Vec<Finding> = CHECKS.iter().flat_map(|look| look(&records)).collect();
    backwards::speak_once(input, &found);
    add(input, &found);
    settle::mark(input);
    input.held = held(input);
    // what must be settled first is no yardstick for its neighbours
    let far = others::far(&Records::of(input));
    add(input, &far);
    settle::mark(input);
    settle::name_what_settles_nothing(input);
}

/// Adds what was not found before.
fn add(input: &mut Input, found: &[Finding]) {
    let known: BTreeSet<_> = input.findings.iter().map(Finding::identity).collect();
    let new: Vec<Finding> = found.iter().filter(|one| !known.contains(&one.identity())).cloned().collect();
    input.findings.extend(new);
}

/// The visits that some finding holds back: the one it names, or every visit of its line.
fn held(input: &Input) -> BTreeSet<usize> {
    let holding: Vec<&About> =
        input.findings.iter().filter(|one| one.holds_back()).filter_map(|one| one.about.as_deref()).collect();
    if holding.is_empty() {
        return BTreeSet::new();
    }
    let mut of_line: HashMap<(&str, &str), Vec<usize>> = HashMap::new();
    for (index, visit) in input.visits.iter().enumerate() {
        of_line.entry((&visit.site, &visit.line)).or_default().push(index);
    }
    holding
        .into_iter()
        .flat_map(|about| {
            let line = (about.site.as_str(), about.line.as_str());
            if about.visits.is_empty() {
                of_line.get(&line).cloned().unwrap_or_default()
            } else {
                about.visits.clone()
            }
        })
        .collect()
}
