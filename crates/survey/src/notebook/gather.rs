//! Files brought into a notebook: what is new begins a record, what differs follows the record that stands, what is
//! there already adds nothing.

use super::current::{Current, Standing};
use super::hand::Draft;
use super::payload::{Key, Payload, VERSION};
use crate::assess::SiteGoal;
use crate::finding::{Finding, Weight};
use crate::input::Input;
use crate::message::Message;
use crate::plants::PlantList;
use crate::revision::{Content, Revision};
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};

/// How many records of a kind an import brought.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tally {
    /// New ones.
    pub new: usize,
    /// Such as differ from what stood.
    pub changed: usize,
    /// Such as were there.
    pub known: usize,
}

/// What an import comes to.
#[derive(Clone, Debug, Default)]
pub struct Gathered {
    /// The revisions to make.
    pub drafts: Vec<Draft>,
    /// How many records of each kind.
    pub tally: BTreeMap<&'static str, Tally>,
    /// What stood before, and what stands now, of each record that changed.
    pub changed: Vec<(Payload, Payload)>,
    /// What was left out, and why.
    pub findings: Vec<Finding>,
}

/// Holds what was read from files against what stands.
pub fn gather(current: &Current, input: &Input, goals: &[SiteGoal]) -> Gathered {
    let mut gathered = Gathered::default();
    let disputed: BTreeSet<&Key> = current.conflicts.iter().flat_map(|conflict| &conflict.keys).collect();
    for (key, mut payload) in gathered.payloads(current, input, goals) {
        if disputed.contains(&key) {
            let message = Message::new("import-disputed").with("what", payload.called());
            gathered.findings.push(Finding::must_settle(message));
            continue;
        }
        let tally = gathered.tally.entry(key.kind).or_default();
        if let Some(standing) = current.standing.get(&key) {
            keep_what_is_not_said(&mut payload, &standing.payload);
        }
        match current.standing.get(&key) {
            None => {
                tally.new += 1;
                gathered.drafts.push(Draft::beginning(&payload));
            }
            Some(standing) if standing.payload.without_places() == payload.without_places() => {
                tally.known += 1;
            }
            Some(standing) => {
                tally.changed += 1;
                gathered.drafts.extend(follow(standing, &payload));
                gathered.changed.push((standing.payload.clone(), payload));
            }
        }
    }
    // an import that brought nothing leaves no trace, and what came from no file is no import
    if !gathered.drafts.is_empty() && !input.files.is_empty() {
        gathered.drafts.insert(0, Draft::beginning(&Payload::Import(input.files.clone())));
    }
    gathered
}

impl Gathered {
    /// Everything in the input as records, one for each key.
    fn payloads(&mut self, current: &Current, input: &Input, goals: &[SiteGoal]) -> BTreeMap<Key, Payload> {
        let mut payloads = BTreeMap::new();
        if !input.plants.plants.is_empty() {
            self.take(&mut payloads, Payload::Plants(together(current, &input.plants)));
        }
        if !input.headings.is_empty() {
            // what is said now counts where both speak of a heading
            let stood = current
                .headings()
                .iter()
                .filter(|(theirs, _)| input.headings.iter().all(|(own, _)| own != theirs));
            let mut headings: Vec<(String, String)> = stood.chain(&input.headings).cloned().collect();
            headings.sort();
            self.take(&mut payloads, Payload::Headings(headings));
        }
        for protocol in input.protocols.values() {
            self.take(&mut payloads, Payload::Protocol(Box::new(protocol.clone())));
        }
        for line in &input.plan {
            self.take(&mut payloads, Payload::Line(line.clone()));
        }
        for site in &input.sites {
            self.take(&mut payloads, Payload::Site(site.clone()));
        }
        for place in &input.places {
            self.take(&mut payloads, Payload::Place(place.clone()));
        }
        for stratum in &input.strata {
            self.take(&mut payloads, Payload::Stratum(stratum.clone()));
        }
        let contradictory: Vec<&Finding> = input
            .findings
            .iter()
            .filter(|one| one.weight == Weight::MustSettle && one.place.is_some())
            .collect();
        for visit in &input.visits {
            // a visit that contradicts itself was read as “not read”; kept so, it would lose what its sheet says
            if contradictory.iter().any(|finding| finding.place == visit.place) {
                let called = Payload::Visit(Box::new(visit.clone())).called();
                self.findings
                    .push(Finding::must_settle(Message::new("import-left-out").with("what", called)));
            } else {
                self.take(&mut payloads, Payload::Visit(Box::new(visit.clone())));
            }
        }
        for word in &input.settlements {
            self.take(&mut payloads, Payload::Settlement(Box::new(word.clone())));
        }
        for one in &input.calibrations {
            self.take(&mut payloads, Payload::Calibration(Box::new(one.clone())));
        }
        for goal in goals {
            self.take(&mut payloads, Payload::Goal(goal.clone()));
        }
        payloads
    }

    /// Keeps the first record under a key and names any further one that differs.
    fn take(&mut self, payloads: &mut BTreeMap<Key, Payload>, payload: Payload) {
        match payloads.get(&payload.key()) {
            None => {
                payloads.insert(payload.key(), payload);
            }
            Some(first) if first.without_places() == payload.without_places() => {}
            Some(_) => {
                let message = Message::new("import-twice").with("what", payload.called());
                self.findings.push(Finding::must_settle(message));
            }
        }
    }
}

/// What a file is silent about stays as it stood: a sheet of readings says nothing of strata or plots.
fn keep_what_is_not_said(read: &mut Payload, stood: &Payload) {
    match (read, stood) {
        (Payload::Line(read), Payload::Line(stood)) => {
            read.length = read.length.take().or_else(|| stood.length.clone());
            read.stratum = read.stratum.take().or_else(|| stood.stratum.clone());
            read.plot = read.plot.take().or_else(|| stood.plot.clone());
            read.slope = read.slope.or(stood.slope);
            read.permission = read.permission.take().or_else(|| stood.permission.clone());
        }
        (Payload::Site(read), Payload::Site(stood)) => {
            if read.ownership.is_empty() {
                read.ownership.clone_from(&stood.ownership);
            }
            // a nest is gone when somebody opens the places, not when a file is silent
            read.nest |= stood.nest;
            read.places = read.places.or(stood.places);
        }
        (Payload::Place(read), Payload::Place(stood)) => read.end = read.end.or(stood.end),
        (Payload::Visit(read), Payload::Visit(stood)) => {
            read.length = read.length.take().or_else(|| stood.length.clone());
            if read.protocol.is_empty() {
                read.protocol.clone_from(&stood.protocol);
            }
        }
        _ => {}
    }
}

/// The plants that stand with those of the file: the file's word counts where both have a plant.
fn together(current: &Current, read: &PlantList) -> PlantList {
    let stood = current.standing.values().find_map(|standing| match &standing.payload {
        Payload::Plants(plants) => Some(plants),
        _ => None,
    });
    let mut together = stood.cloned().unwrap_or_default();
    for plant in &read.plants {
        let code = plant.code.to_lowercase();
        match together.plants.iter_mut().find(|known| known.code.to_lowercase() == code) {
            Some(known) => *known = plant.clone(),
            None => together.plants.push(plant.clone()),
        }
    }
    together
}

/// The drafts that make a record stand: it begins, or follows what stands under its key; none where it stands already.
pub fn stand(current: &Current, payload: &Payload) -> Vec<Draft> {
    match current.standing.get(&payload.key()) {
        None => vec![Draft::beginning(payload)],
        Some(standing) if standing.payload.without_places() == payload.without_places() => Vec::new(),
        Some(standing) => follow(standing, payload),
    }
}

/// The drafts that put a record in the place of the one under `was`, whatever either is called; those of [`stand`] where none
/// stands there.
///
/// # Range
/// `None` where another record stands under the new name already
pub fn change(current: &Current, was: &Key, payload: &Payload) -> Option<Vec<Draft>> {
    let key = payload.key();
    if key == *was {
        return Some(stand(current, payload));
    }
    match (current.standing.get(was), current.standing.get(&key)) {
        (_, Some(_)) => None,
        (Some(standing), None) => Some(follow(standing, payload)),
        (None, None) => Some(stand(current, payload)),
    }
}

/// The drafts that take a record back: it stands no more, and what it said stays in its history.
pub fn withdraw(standing: &Standing) -> Vec<Draft> {
    let mut drafts: BTreeMap<_, Draft> = BTreeMap::new();
    for head in &standing.heads {
        let draft = drafts.entry(head.record).or_insert_with(|| Draft {
            record: Some(head.record),
            parents: BTreeSet::new(),
            kind: standing.payload.kind_word(),
            version: VERSION,
            payload: None,
        });
        draft.parents.insert(head.revision);
    }
    drafts.into_values().collect()
}

/// The drafts that put a record in the place of what stands: one that follows, and where several records stood for
/// one thing, the others taken back.
pub(super) fn follow(standing: &Standing, payload: &Payload) -> Vec<Draft> {
    let json = with_unknown_fields(payload.to_json(), &standing.revision, &standing.payload);
    let record = standing.revision.record();
    let mut drafts: BTreeMap<_, Draft> = BTreeMap::new();
    for head in &standing.heads {
        let draft = drafts.entry((head.record != record, head.record)).or_insert_with(|| Draft {
            record: Some(head.record),
            parents: BTreeSet::new(),
            kind: payload.kind_word(),
            version: VERSION,
            payload: (head.record == record).then(|| json.clone()),
        });
        draft.parents.insert(head.revision);
    }
    drafts.into_values().collect()
}

/// Carries over the fields that only a newer version knows.
fn with_unknown_fields(mut json: Value, before: &Revision, known: &Payload) -> Value {
    let before = before.content().and_then(|content: Content<Value>| content.payload);
    if let (Value::Object(new), Some(Value::Object(before)), Value::Object(known)) =
        (&mut json, before, known.to_json())
    {
        for (field, value) in before {
            if !known.contains_key(&field) && !new.contains_key(&field) {
                new.insert(field, value);
            }
        }
    }
    json
}
