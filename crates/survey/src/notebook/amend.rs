//! Settling two versions, restoring an earlier one, undoing an import, forgetting a person or a place. All of it is
//! done by further revisions; erasing blanks what the earlier ones said.

use super::current::Conflict;
use super::hand::Draft;
use crate::record::{Records, heads, history};
use crate::revision::{ActionId, Content, RecordId, Revision, RevisionId};
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};

/// The kind of record that an import leaves of itself.
const IMPORT: &str = "import";

/// Why something was not amended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotAmended {
    /// Two versions stand side by side; they must be settled first.
    InConflict,
    /// The revision's content was blanked.
    Erased,
    /// It stands as it is.
    AlreadyStands,
}

/// Settles a conflict: one version stands from here on, and follows all of them.
///
/// Where the versions belong to several records, the others are taken back.
///
/// # Errors
/// [`NotAmended::Erased`], where the chosen version is blank
pub fn settle(conflict: &Conflict, chosen: &Revision) -> Result<Vec<Draft>, NotAmended> {
    let payload = payload_of(chosen)?;
    let mut parents: BTreeMap<RecordId, BTreeSet<RevisionId>> = BTreeMap::new();
    for version in &conflict.versions {
        parents.entry(version.record()).or_default().insert(version.id());
    }
    Ok(parents
        .into_iter()
        .map(|(record, parents)| Draft {
            record: Some(record),
            parents,
            kind: chosen.head().kind.clone(),
            version: chosen.head().version,
            payload: if record == chosen.record() { payload.clone() } else { None },
        })
        .collect())
}

/// Restores an earlier revision of a record, by a new one that says the same.
///
/// # Errors
/// [`NotAmended`]
pub fn restore(revisions: &[&Revision], wanted: &Revision) -> Result<Draft, NotAmended> {
    let heads = heads(revisions);
    let [head] = heads.as_slice() else { return Err(NotAmended::InConflict) };
    let payload = payload_of(wanted)?;
    if payload_of(head) == Ok(payload.clone()) {
        return Err(NotAmended::AlreadyStands);
    }
    Ok(Draft {
        record: Some(head.record()),
        parents: BTreeSet::from([head.id()]),
        kind: wanted.head().kind.clone(),
        version: wanted.head().version,
        payload,
    })
}

/// Undoes what an action did to one record. None where others have built on it since, or where it settled versions,
/// for then there is no one state to go back to.
pub fn undo(revisions: &[&Revision], action: ActionId) -> Option<Draft> {
    let heads = heads(revisions);
    let [head] = heads.as_slice() else { return None };
    let mut before = *head;
    while before.head().action.id == action {
        let parents: Vec<RevisionId> = before.head().parents.iter().copied().collect();
        match parents.as_slice() {
            [] => break,
            [parent] => before = revisions.iter().copied().find(|revision| revision.id() == *parent)?,
            _ => return None,
        }
    }
    if before.id() == head.id() && head.head().action.id != action {
        return None;
    }
    let began_here = before.head().action.id == action;
    Some(Draft {
        record: Some(head.record()),
        parents: BTreeSet::from([head.id()]),
        kind: before.head().kind.clone(),
        version: before.head().version,
        payload: if began_here { None } else { payload_of(before).ok()? },
    })
}

/// What taking an action back comes to.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct TakenBack {
    /// Each record as it was before.
    pub drafts: Vec<Draft>,
    /// How many records that is, those of an import's files aside, which nobody counts.
    pub records: usize,
    /// Records that stay as they are, since others have built on them or they settled something.
    pub left: usize,
}

/// Undoes an action in every record that it touched, as far as that can be done.
pub fn take_back(records: &Records, action: ActionId) -> TakenBack {
    let touched: BTreeSet<RecordId> =
        records.revisions().filter(|one| one.head().action.id == action).map(Revision::record).collect();
    let mut drafts: Vec<Draft> =
        touched.iter().filter_map(|&record| undo(&records.of(record), action)).collect();
    let left = touched.len() - drafts.len();
    // the import itself is a record too, though not one that a person counts; it stands while anything of it does
    if left > 0 {
        drafts.retain(|draft| draft.kind.0 != IMPORT);
    }
    let records = drafts.iter().filter(|draft| draft.kind.0 != IMPORT).count();
    if records == 0 {
        drafts.clear();
    }
    TakenBack { drafts, records, left }
}

/// Forgets a person or a place in one record: the new state without them, and the earlier revisions to be blanked.
///
/// `without` gives the record as it may stay; none takes it back.
///
/// # Errors
/// [`NotAmended::InConflict`]
pub fn erase(
    revisions: &[&Revision],
    without: impl Fn(Value) -> Option<Value>,
) -> Result<(Draft, Vec<RevisionId>), NotAmended> {
    let heads = heads(revisions);
    let [head] = heads.as_slice() else { return Err(NotAmended::InConflict) };
    let draft = Draft {
        record: Some(head.record()),
        parents: BTreeSet::from([head.id()]),
        kind: head.head().kind.clone(),
        version: head.head().version,
        payload: payload_of(head).ok().flatten().and_then(without),
    };
    Ok((draft, history(revisions).iter().map(|revision| revision.id()).collect()))
}

fn payload_of(revision: &Revision) -> Result<Option<Value>, NotAmended> {
    let content: Content<Value> = revision.content().ok_or(NotAmended::Erased)?;
    Ok(content.payload)
}
