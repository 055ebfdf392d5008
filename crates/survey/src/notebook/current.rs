//! What stands in a notebook now, worked out from the heads of its records. What two people wrote unlike is used
//! neither way until somebody settles it.

use super::hand::Draft;
use super::payload::{Key, NoPayload, Payload};
use crate::assess::{SiteGoal, natural_order};
use crate::finding::Finding;
use crate::input::Input;
use crate::message::{Message, Value};
use crate::photo::Photo;
use crate::place::{Openness, Site};
use crate::protocol::Protocol;
use crate::revision::{Content, RecordId, Revision, RevisionId};
use serde::de::IgnoredAny;
use std::collections::{BTreeMap, BTreeSet};

/// A head and what it holds, if that is there to be used.
type Read = (Result<Payload, NoPayload>, Revision);

/// A head whose content was read, which is most of what it takes to know what stands: whoever has others wait reads
/// them one by one.
pub struct ReadHead(Read);

impl ReadHead {
    /// Reads a head.
    pub fn of(head: Revision) -> Self {
        Self((Payload::of(&head), head))
    }
}

/// A head that something stands on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Head {
    /// The record.
    pub record: RecordId,
    /// Its revision.
    pub revision: RevisionId,
}

/// What stands under one key, and all heads that say so.
#[derive(Clone, Debug, PartialEq)]
pub struct Standing {
    /// The record.
    pub payload: Payload,
    /// The revision that it was taken from.
    pub revision: Revision,
    /// The heads that agree on it.
    pub heads: Vec<Head>,
}

/// Revisions that stand side by side and differ.
#[derive(Clone, Debug, PartialEq)]
pub struct Conflict {
    /// What it is about, as the first of them calls it.
    pub called: Message,
    /// What it is about; each version's own, should they differ in that too.
    pub keys: Vec<Key>,
    /// The versions, in an order that doesn't depend on who came first.
    pub versions: Vec<Revision>,
}

/// What stands now.
#[derive(Clone, Debug, Default)]
pub struct Current {
    /// Everything that can be used.
    pub standing: BTreeMap<Key, Standing>,
    /// Everything that must be settled first.
    pub conflicts: Vec<Conflict>,
    /// How many records of each kind a newer version wrote.
    pub newer: BTreeMap<String, usize>,
    /// Records that are not what their kind says.
    pub not_understood: Vec<Revision>,
}

impl Current {
    /// What stands, from the heads of all records in any order.
    pub fn of(heads: Vec<Revision>) -> Self {
        Self::of_read(read(heads))
    }

    /// The same of heads that were read one by one.
    pub fn of_heads(heads: Vec<ReadHead>) -> Self {
        Self::of_read(heads.into_iter().map(|head| head.0).collect())
    }

    fn of_read(heads: Vec<Read>) -> Self {
        let mut by_record: BTreeMap<RecordId, Vec<Read>> = BTreeMap::new();
        for (payload, head) in heads {
            by_record.entry(head.record()).or_default().push((payload, head));
        }
        let mut current = Self::default();
        let mut groups: BTreeMap<Key, Vec<(Payload, Revision)>> = BTreeMap::new();
        let mut unlike: Vec<Vec<Revision>> = Vec::new();
        for mut versions in by_record.into_values() {
            let newer = versions.iter().find(|(payload, _)| matches!(payload, Err(NoPayload::Newer)));
            if let Some((_, head)) = newer {
                *current.newer.entry(head.head().kind.0.clone()).or_default() += 1;
                continue;
            }
            if versions.len() > 1 && !alike(&versions) {
                unlike.push(versions.into_iter().map(|(_, head)| head).collect());
                continue;
            }
            versions
                .sort_by(|(_, a), (_, b)| a.content_text().cmp(&b.content_text()).then(a.id().cmp(&b.id())));
            for (payload, head) in versions {
                match payload {
                    Ok(payload) => groups.entry(payload.key()).or_default().push((payload, head)),
                    Err(NoPayload::NotUnderstood) => current.not_understood.push(head),
                    Err(_) => {}
                }
            }
        }
        for versions in unlike {
            current.dispute(versions, &mut groups);
        }
        for (key, own) in groups {
            current.stand(key, own);
        }
        current.conflicts.sort_by(|a, b| a.keys.cmp(&b.keys));
        current
    }

    /// A record with unlike heads; whatever else claims to be the same thing is drawn in.
    fn dispute(&mut self, mut versions: Vec<Revision>, groups: &mut BTreeMap<Key, Vec<(Payload, Revision)>>) {
        let keys: Vec<Key> = versions.iter().filter_map(|head| Some(Payload::of(head).ok()?.key())).collect();
        for key in &keys {
            versions.extend(groups.remove(key).into_iter().flatten().map(|(_, head)| head));
        }
        self.push_conflict(keys, versions);
    }

    /// Heads under one key: one thing where they agree.
    fn stand(&mut self, key: Key, mut own: Vec<(Payload, Revision)>) {
        let agree = own.windows(2).all(|pair| pair[0].0.without_places() == pair[1].0.without_places());
        // a protocol's key is its meaning, so two wordings of it give the same figures
        if agree || key.kind == "protocol" {
            own.sort_by(|(_, a), (_, b)| a.content_text().cmp(&b.content_text()).then(a.id().cmp(&b.id())));
            let heads =
                own.iter().map(|(_, head)| Head { record: head.record(), revision: head.id() }).collect();
            if let Some((payload, revision)) = own.into_iter().next() {
                self.standing.insert(key, Standing { payload, revision, heads });
            }
        } else {
            self.push_conflict(vec![key], own.into_iter().map(|(_, head)| head).collect());
        }
    }

    fn push_conflict(&mut self, mut keys: Vec<Key>, mut versions: Vec<Revision>) {
        keys.sort();
        keys.dedup();
        versions.sort_by(|a, b| a.id().cmp(&b.id()).then_with(|| a.sha256().cmp(b.sha256())));
        let first = versions.iter().find_map(|head| Payload::of(head).ok());
        let called = first.map_or(Message::new("record-unread"), |payload| payload.called());
        self.conflicts.push(Conflict { called, keys, versions });
    }

    /// Everything that stands, ready to be worked with, and its goals. The order is that of sites, lines and dates,
    /// whatever the order in which it was handed in.
    pub fn into_input(self) -> (Input, Vec<SiteGoal>) {
        let mut input = Input { findings: self.findings(), ..Input::default() };
        let (mut goals, mut aimed_at) = (Vec::new(), Vec::new());
        let disputed = self.disputed_sites();
        for standing in self.standing.into_values() {
            match standing.payload {
                Payload::Line(line) => input.plan.push(line),
                Payload::Headings(headings) => input.headings = headings,
                Payload::Site(site) => input.sites.push(site),
                Payload::Place(place) => input.places.push(place),
                Payload::Stratum(stratum) => input.strata.push(stratum),
                Payload::Visit(visit) => input.visits.push(*visit),
                Payload::Plants(plants) => input.plants = plants,
                Payload::Protocol(protocol) => {
                    input.add_protocol(*protocol);
                }
                Payload::Goal(goal) => goals.push(goal),
                Payload::Settlement(word) => input.settlements.push(*word),
                Payload::Calibration(one) => input.calibrations.push(*one),
                Payload::Trigger(trigger) => input.triggers.push(*trigger),
                Payload::Objective(objective) => aimed_at.extend(objective.site_goal()),
                // kept beside the figures; none of them moves one
                Payload::Decision(_) | Payload::Photo(_) | Payload::Layout(_) => {}
                Payload::Replaced(word) => input.replaced.push(*word),
                Payload::Import(files) => {
                    for file in files {
                        if !input.files.contains(&file) {
                            input.files.push(file);
                        }
                    }
                }
            }
        }
        // while two persons differ about a site, nobody is told where it is
        input.sites.extend(disputed.into_iter().map(|site| Site {
            site,
            places: Some(Openness::Withheld),
            ..Site::default()
        }));
        input.sites.sort_by(|a, b| a.site.cmp(&b.site));
        // a goal that stands both in an objective and by itself is one goal
        aimed_at.retain(|one: &SiteGoal| !goals.iter().any(|goal: &SiteGoal| goal.asks_the_same(one)));
        goals.extend(aimed_at);
        input.plan.sort_by(|a, b| a.site.cmp(&b.site).then_with(|| natural_order(&a.line, &b.line)));
        input.calibrations.sort_by(|a, b| (a.date, &a.site, &a.reader).cmp(&(b.date, &b.site, &b.reader)));
        input.places.sort_by(|a, b| a.site.cmp(&b.site).then_with(|| natural_order(&a.line, &b.line)));
        input.visits.sort_by(|a, b| {
            (&a.site, a.date)
                .cmp(&(&b.site, b.date))
                .then_with(|| natural_order(&a.line, &b.line))
                .then_with(|| natural_order(&a.pass, &b.pass))
                .then_with(|| (&a.reader, &a.recorder).cmp(&(&b.reader, &b.recorder)))
        });
        (input, goals)
    }

    /// The sites of which two versions stand side by side.
    fn disputed_sites(&self) -> BTreeSet<String> {
        let versions = self.conflicts.iter().flat_map(|conflict| &conflict.versions);
        let site = |revision: &Revision| match Payload::of(revision) {
            Ok(Payload::Site(site)) => Some(site.site),
            _ => None,
        };
        versions.filter_map(site).collect()
    }

    /// The same of a copy.
    pub fn input(&self) -> (Input, Vec<SiteGoal>) {
        self.clone().into_input()
    }

    /// The protocols that stand.
    pub fn protocols(&self) -> Vec<Protocol> {
        self.standing
            .values()
            .filter_map(|standing| match &standing.payload {
                Payload::Protocol(protocol) => Some((**protocol).clone()),
                _ => None,
            })
            .collect()
    }

    /// A draft of a record: one that stands is followed, not begun again.
    pub fn following(&self, payload: &Payload) -> Draft {
        let begun = Draft::beginning(payload);
        match self.standing.get(&payload.key()) {
            Some(known) => Draft {
                record: Some(known.revision.record()),
                parents: known.heads.iter().map(|head| head.revision).collect(),
                ..begun
            },
            None => begun,
        }
    }

    /// The photos that stand, in the order of sites, lines, what they show, and days.
    pub fn photos(&self) -> Vec<&Photo> {
        let mut photos: Vec<&Photo> = self
            .standing
            .values()
            .filter_map(|standing| match &standing.payload {
                Payload::Photo(photo) => Some(&**photo),
                _ => None,
            })
            .collect();
        let order = |photo: &&Photo| (photo.shows, photo.date, photo.time.clone(), photo.sha256.clone());
        photos.sort_by(|a, b| {
            a.site
                .cmp(&b.site)
                .then_with(|| natural_order(&a.line, &b.line))
                .then_with(|| order(a).cmp(&order(b)))
        });
        photos
    }

    /// What the office writes over its columns.
    pub fn headings(&self) -> &[(String, String)] {
        let own = self.standing.values().find_map(|standing| match &standing.payload {
            Payload::Headings(headings) => Some(headings.as_slice()),
            _ => None,
        });
        own.unwrap_or_default()
    }

    /// What a person should know of the notebook before using what stands in it.
    pub fn findings(&self) -> Vec<Finding> {
        let mut findings: Vec<Finding> = self.conflicts.iter().map(Conflict::finding).collect();
        findings.extend(self.not_understood.iter().map(|revision| {
            let message = Message::new("record-not-understood").with("kind", revision.head().kind.0.as_str());
            Finding::must_settle(message.with("revision", revision.id().short()))
        }));
        findings.extend(self.newer.iter().map(|(kind, &records)| {
            Finding::note(Message::new("records-newer").with("kind", kind.as_str()).with("records", records))
        }));
        findings
    }
}

impl Conflict {
    /// What must be settled, with who wrote each version.
    pub fn finding(&self) -> Finding {
        let versions = self.versions.iter().map(|version| Value::from(written_by(version))).collect();
        Finding::must_settle(
            Message::new("two-versions")
                .with("what", self.called.clone())
                .with("versions", Value::List(versions)),
        )
    }
}

/// What each head holds. Reading them is most of what opening a large notebook takes, so all cores take part, where
/// there are several; the order stays.
fn read(heads: Vec<Revision>) -> Vec<Read> {
    let one_by_one =
        |heads: Vec<Revision>| heads.into_iter().map(|head| (Payload::of(&head), head)).collect::<Vec<_>>();
    // a browser has one
    let cores = std::thread::available_parallelism().map_or(1, std::num::NonZero::get);
    if cores == 1 || heads.len() < 1000 {
        return one_by_one(heads);
    }
    let share = heads.len().div_ceil(cores);
    let mut rest = heads;
    let mut parts = Vec::new();
    while !rest.is_empty() {
        let after = rest.split_off(share.min(rest.len()));
        parts.push(std::mem::replace(&mut rest, after));
    }
    std::thread::scope(|scope| {
        let reading: Vec<_> = parts.into_iter().map(|part| scope.spawn(move || one_by_one(part))).collect();
        reading
            .into_iter()
            .flat_map(|part| part.join().unwrap_or_else(|why| std::panic::resume_unwind(why)))
            .collect()
    })
}

/// Who made a revision, where and when.
pub fn written_by(revision: &Revision) -> Message {
    let time = revision.head().time.minute();
    let code = revision.id().short();
    match revision.content::<IgnoredAny>() {
        Some(Content { author, device, .. }) => {
            let message = match (author.is_empty(), device.is_empty()) {
                (false, false) => Message::new("written-by").with("author", author).with("device", device),
                (false, true) => Message::new("written-by-author").with("author", author),
                (true, false) => Message::new("written-on").with("device", device),
                (true, true) => Message::new("written-by-nobody"),
            };
            message.with("time", time).with("revision", code)
        }
        None => Message::new("written-by-erased").with("time", time).with("revision", code),
    }
}

/// All heads of a record say the same, places aside.
fn alike(versions: &[Read]) -> bool {
    let meaning = |payload: &Result<Payload, NoPayload>| {
        payload.as_ref().map(Payload::without_places).map_err(|why| *why)
    };
    versions.windows(2).all(|pair| {
        let (a, b) = (meaning(&pair[0].0), meaning(&pair[1].0));
        // what can't be read can't be held to agree
        a == b && !matches!(a, Err(NoPayload::NotUnderstood | NoPayload::Erased))
    })
}
