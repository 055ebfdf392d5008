//! Records as sets of revisions: what stands, what it came from, and how two copies of a notebook become one.
//!
//! Two copies are joined by the union of their sets. Union doesn't ask which copy came first or how often, so devices
//! can meet in any order and repeat themselves. Where one copy has blanked a content, the joined one has it blanked.

use crate::revision::{RecordId, Revision, RevisionId};
use std::collections::{BTreeMap, BTreeSet};

/// A revision's place in a set. Two unlike revisions under one id, which only damage can make, are both kept.
type Name = (RevisionId, String);

/// All revisions of all records.
///
/// # Semantics
/// a semilattice: [`Records::union`] is commutative, associative and idempotent
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Records {
    records: BTreeMap<RecordId, BTreeMap<Name, Revision>>,
}

/// What adding a revision did.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Added {
    /// It is new.
    New,
    /// It was there.
    Known,
    /// It was there, and its content is blanked now.
    Erased,
}

impl Records {
    /// Adds a revision, once.
    pub fn add(&mut self, revision: Revision) -> Added {
        let record = self.records.entry(revision.record()).or_default();
        match record.get_mut(&(revision.id(), revision.sha256().to_owned())) {
            Some(known) if revision.is_erased() && !known.is_erased() => {
                *known = revision;
                Added::Erased
            }
            Some(_) => Added::Known,
            None => {
                record.insert((revision.id(), revision.sha256().to_owned()), revision);
                Added::New
            }
        }
    }

    /// Takes in everything that another set holds.
    pub fn union(&mut self, other: &Self) {
        for revision in other.revisions() {
            self.add(revision.clone());
        }
    }

    /// Every revision, record by record.
    pub fn revisions(&self) -> impl Iterator<Item = &Revision> {
        self.records.values().flat_map(BTreeMap::values)
    }

    /// The revisions of one record.
    pub fn of(&self, record: RecordId) -> Vec<&Revision> {
        self.records.get(&record).into_iter().flat_map(BTreeMap::values).collect()
    }

    /// The heads of every record.
    pub fn heads(&self) -> Vec<&Revision> {
        self.records.values().flat_map(|own| heads(&own.values().collect::<Vec<_>>())).collect()
    }
}

/// The heads of one record: its revisions that no other names as a parent. Two heads that differ are a conflict.
///
/// Where every revision is somebody's parent, which only damage can make, all are heads, so that a person sees them.
pub fn heads<'a>(revisions: &[&'a Revision]) -> Vec<&'a Revision> {
    let parents: BTreeSet<RevisionId> =
        revisions.iter().flat_map(|revision| revision.head().parents.iter().copied()).collect();
    let heads: Vec<&Revision> =
        revisions.iter().copied().filter(|revision| !parents.contains(&revision.id())).collect();
    if heads.is_empty() { revisions.to_vec() } else { heads }
}

/// The revisions of one record, parents before children. Clocks have no say in it: what isn't ordered by parents is
/// ordered by the devices' counters, then by id.
pub fn history<'a>(revisions: &[&'a Revision]) -> Vec<&'a Revision> {
    let mut waiting = revisions.to_vec();
    waiting.sort_by_key(|revision| {
        (revision.head().counter, revision.head().device, revision.id(), revision.sha256())
    });
    let mut ordered = Vec::with_capacity(waiting.len());
    while !waiting.is_empty() {
        let ids: BTreeSet<RevisionId> = waiting.iter().map(|revision| revision.id()).collect();
        let next = waiting.iter().position(|revision| revision.head().parents.is_disjoint(&ids));
        // a circle, which only damage can make, is cut at its first revision
        ordered.push(waiting.remove(next.unwrap_or(0)));
    }
    ordered
}

/// The parents that a record's revisions name and nobody has brought yet.
pub fn missing_parents(revisions: &[&Revision]) -> BTreeSet<RevisionId> {
    let known: BTreeSet<RevisionId> = revisions.iter().map(|revision| revision.id()).collect();
    revisions
        .iter()
        .flat_map(|revision| revision.head().parents.iter().copied())
        .filter(|parent| !known.contains(parent))
        .collect()
}
