//! Which visit a row belongs to: found again by what tells visits apart, or begun.

use super::Options;
use super::cells::Row;
use crate::headings::Column;
use crate::protocol;
use std::collections::{BTreeMap, HashMap, HashSet};
use tautline_survey::date::Date;
use tautline_survey::finding::{About, Finding, Place};
use tautline_survey::input::Input;
use tautline_survey::message::Message;
use tautline_survey::visit::{Extent, Outcome, Visit};

/// What tells the visits of all files apart.
#[derive(Clone, PartialEq, Eq, Hash)]
struct Key {
    site: String,
    line: String,
    date: Option<Date>,
    reader: String,
    recorder: String,
    pass: String,
    protocol: String,
}

/// What a lines table knows of a visit before its readings are in: site, line and pass.
type Announced = (String, String, String);

/// The visits so far, found by hash so that a hundred thousand lines cost no more each than ten.
#[derive(Default)]
pub(super) struct Visits {
    known: HashMap<Key, usize>,
    announced: HashMap<Announced, Vec<usize>>,
    protocols: HashMap<String, String>,
    /// Names of protocols that nobody knows: site by site what is found of each, and the visits that it holds back.
    unknown: BTreeMap<String, BTreeMap<String, (Finding, Vec<usize>)>>,
    conditions: HashSet<(usize, String, String)>,
    nothing_found: HashSet<usize>,
    outcomes: HashMap<usize, Outcome>,
    told_twice: HashSet<(usize, String)>,
}

impl Visits {
    /// The visit that a row belongs to, begun if it is new.
    ///
    /// A visit that a lines table announced with an outcome is filled by the readings of that line and date.
    pub(super) fn of(
        &mut self,
        row: &Row,
        site: &str,
        options: &Options,
        input: &mut Input,
    ) -> Result<usize, Finding> {
        let date = match row.text(Column::Date) {
            "" => None,
            _ => Some(row.date().ok_or_else(|| row.about(Column::Date, "date-not-understood"))?),
        };
        let text = |column| row.text(column).to_owned();
        let key = Key {
            site: site.to_owned(),
            line: text(Column::Line),
            date,
            reader: text(Column::Reader),
            recorder: text(Column::Recorder),
            pass: text(Column::Pass),
            protocol: text(Column::Protocol),
        };
        if let Some(&visit) = self.known.get(&key) {
            return Ok(visit);
        }
        let protocol = self.protocol(row, options, input);
        let visit = if let Some(visit) = self.claim(&key, input) {
            let filled = &mut input.visits[visit];
            for (empty, read) in [(&mut filled.reader, &key.reader), (&mut filled.recorder, &key.recorder)] {
                if empty.is_empty() {
                    empty.clone_from(read);
                }
            }
            filled.date = filled.date.or(key.date);
            if !key.protocol.is_empty() {
                filled.protocol = protocol;
            }
            visit
        } else {
            let place = Some(row.sheet.place(row.number, None));
            input.visits.push(begun(&key, protocol, place));
            input.visits.len() - 1
        };
        if let Some(sites) = self.unknown.get_mut(&key.protocol) {
            let first = || (row.about(Column::Protocol, "protocol-not-known"), Vec::new());
            sites.entry(site.to_owned()).or_insert_with(first).1.push(visit);
        }
        self.known.insert(key, visit);
        Ok(visit)
    }

    /// Marks a visit as announced by a lines table, so that readings can claim it.
    pub(super) fn announce(&mut self, at: usize, visit: &Visit) {
        let key = (visit.site.clone(), visit.line.clone(), visit.pass.clone());
        let same = self.announced.entry(key).or_default();
        if !same.contains(&at) {
            same.push(at);
        }
    }

    /// Whether a row's outcome agrees with what other rows said of the same visit.
    pub(super) fn agrees_on(&mut self, at: usize, outcome: &Outcome) -> bool {
        self.outcomes.entry(at).or_insert_with(|| outcome.clone()) == outcome
    }

    /// Marks a visit as read with nothing found.
    pub(super) fn found_nothing(&mut self, at: usize) {
        self.nothing_found.insert(at);
    }

    /// Whether a row said that nothing was found on this visit.
    pub(super) fn says_nothing_found(&self, at: usize) -> bool {
        self.nothing_found.contains(&at)
    }

    /// Whether this is the first time that a second file brings readings of this visit.
    pub(super) fn first_time_in(&mut self, at: usize, file: &str) -> bool {
        self.told_twice.insert((at, file.to_owned()))
    }

    /// Keeps what stands in columns that aren't understood, each value once a visit.
    pub(super) fn keep_conditions(&mut self, row: &Row, at: usize, visit: &mut Visit) {
        let cells = row.sheet.headings.iter().zip(row.cells);
        let cells = cells.filter(|(heading, cell)| is_condition(heading.column) && !cell.is_empty());
        let typed = row.typed.iter().flat_map(|typed| &typed.conditions).cloned();
        for condition in cells.map(|(heading, cell)| (heading.text.clone(), cell.clone())).chain(typed) {
            if self.conditions.insert((at, condition.0.clone(), condition.1.clone())) {
                visit.conditions.push(condition);
            }
        }
    }

    fn claim(&mut self, key: &Key, input: &Input) -> Option<usize> {
        let same = (key.site.clone(), key.line.clone(), key.pass.clone());
        let announced = self.announced.get_mut(&same)?;
        let agrees = |ours: &str, theirs: &str| ours.is_empty() || theirs.is_empty() || ours == theirs;
        let position = announced.iter().position(|&at| {
            let visit = &input.visits[at];
            (visit.date == key.date || visit.date.is_none() || key.date.is_none())
                && agrees(&visit.reader, &key.reader)
                && agrees(&visit.recorder, &key.recorder)
        })?;
        Some(announced.remove(position))
    }

    /// The protocol that a row names, else the one that was handed in, else none.
    fn protocol(&mut self, row: &Row, options: &Options, input: &mut Input) -> String {
        let name = row.text(Column::Protocol);
        if let Some(fingerprint) = self.protocols.get(name) {
            return fingerprint.clone();
        }
        let own = input.protocols.iter().find(|(_, own)| own.name.eq_ignore_ascii_case(name));
        let known = || options.known_protocols.iter().find(|known| known.name.eq_ignore_ascii_case(name));
        let fingerprint = if let Some((fingerprint, _)) = own.filter(|_| !name.is_empty()) {
            fingerprint.clone()
        } else if let Some(known) = known().filter(|_| !name.is_empty()) {
            input.add_protocol(known.clone())
        } else if let Some(shipped) = protocol::find(name) {
            input.add_protocol(shipped)
        } else {
            if !name.is_empty() {
                self.unknown.entry(name.to_owned()).or_default();
            }
            // a name that nobody knows is some other protocol than the one at hand
            if name.is_empty() { unnamed_protocol(options, input) } else { String::new() }
        };
        self.protocols.insert(name.to_owned(), fingerprint.clone());
        fingerprint
    }
}

/// The protocol of visits that name none: the one handed in beside the files, else the only one among them.
pub(crate) fn unnamed_protocol(options: &Options, input: &mut Input) -> String {
    match (&options.protocol, input.protocols.len(), options.known_protocols.as_slice()) {
        (Some(given), ..) => input.add_protocol(given.clone()),
        (None, 1, _) => input.protocols.keys().next().cloned().unwrap_or_default(),
        (None, 0, [only]) => input.add_protocol(only.clone()),
        _ => String::new(),
    }
}

/// What isn't understood is kept as a condition, and so is what is said of the site with each reading.
const fn is_condition(column: Option<Column>) -> bool {
    matches!(column, None | Some(Column::Ownership | Column::Nest))
}

fn begun(key: &Key, protocol: String, place: Option<Place>) -> Visit {
    Visit {
        site: key.site.clone(),
        line: key.line.clone(),
        date: key.date,
        reader: key.reader.clone(),
        recorder: key.recorder.clone(),
        pass: key.pass.clone(),
        protocol,
        length: None,
        outcome: Outcome::Read,
        intercepts: Vec::new(),
        set_aside: 0,
        conditions: Vec::new(),
        place,
    }
}

/// When all files are in: visits that contradict themselves are set aside and named.
pub(super) fn settle(visits: &Visits, input: &mut Input) {
    for (at, visit) in input.visits.iter_mut().enumerate() {
        let lengths = visit.intercepts.iter().filter(|i| matches!(i.extent, Extent::Length(_))).count();
        let code = if visit.intercepts.is_empty() {
            // a zero is only what somebody wrote down as one
            if visit.outcome != Outcome::Read || visits.says_nothing_found(at) {
                continue;
            }
            "read-but-no-readings"
        } else if visit.outcome == Outcome::NotRead {
            "not-read-but-readings"
        } else if visits.says_nothing_found(at) {
            "nothing-found-but-readings"
        } else if lengths > 0 && lengths < visit.intercepts.len() {
            "positions-and-lengths-mixed"
        } else {
            continue;
        };
        visit.outcome = Outcome::NotRead;
        let message = Message::new(code).with("site", visit.site.as_str()).with("line", visit.line.as_str());
        input.findings.push(Finding::must_settle(message).of(visit, at));
    }
    // said once at a site, and every line that was read under it waits
    for (finding, held) in visits.unknown.values().flat_map(BTreeMap::values) {
        let Some(first) = held.first().map(|&at| &input.visits[at]) else { continue };
        let about = About {
            site: first.site.clone(),
            line: first.line.clone(),
            visits: held.clone(),
            ..About::default()
        };
        input.findings.push(finding.clone().about(about));
    }
}
