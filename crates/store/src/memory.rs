//! Revisions in memory: the plainest implementer, which the others are held against.

use crate::keep::{Appended, Cursor, Keep, KeepError};
use std::collections::BTreeMap;
use tautline_survey::record::{Added, Records};
use tautline_survey::revision::{ActionId, RecordId, Revision, RevisionId};

/// Revisions in memory.
#[derive(Clone, Debug, Default)]
pub struct Memory {
    records: Records,
    /// What came in or was blanked when; a revision stands at its last change.
    log: BTreeMap<u64, (RecordId, RevisionId, String)>,
    last: u64,
}

impl Memory {
    /// The revisions as a set.
    pub const fn records(&self) -> &Records {
        &self.records
    }
}

impl Keep for Memory {
    fn append(&mut self, batch: &[Revision]) -> Result<Appended, KeepError> {
        if let Some(broken) = batch.iter().find(|revision| !revision.content_is_whole()) {
            return Err(KeepError::NotWhole(Box::new(broken.clone())));
        }
        let mut appended = Appended::default();
        for revision in batch {
            let added = self.records.add(revision.clone());
            appended.count(added);
            if added != Added::Known {
                let name = (revision.record(), revision.id(), revision.sha256().to_owned());
                self.log.retain(|_, logged| *logged != name);
                self.last += 1;
                self.log.insert(self.last, name);
            }
        }
        Ok(appended)
    }

    fn heads(&self) -> Result<Vec<Revision>, KeepError> {
        Ok(self.records.heads().into_iter().cloned().collect())
    }

    fn of_record(&self, record: RecordId) -> Result<Vec<Revision>, KeepError> {
        Ok(self.records.of(record).into_iter().cloned().collect())
    }

    fn of_action(&self, action: ActionId) -> Result<Vec<Revision>, KeepError> {
        let own = self.records.revisions().filter(|revision| revision.head().action.id == action);
        Ok(own.cloned().collect())
    }

    fn since(&self, cursor: Cursor, most: usize) -> Result<(Vec<Revision>, Cursor), KeepError> {
        let mut upto = cursor;
        let mut found = Vec::new();
        for (&at, (record, id, sha256)) in self.log.range(cursor.0.saturating_add(1)..).take(most) {
            let own = self.records.of(*record);
            let revision = own.into_iter().find(|one| one.id() == *id && one.sha256() == sha256);
            found.extend(revision.cloned());
            upto = Cursor(at);
        }
        Ok((found, upto))
    }

    fn counter(&self) -> Result<u64, KeepError> {
        Ok(self.records.revisions().map(|revision| revision.head().counter).max().unwrap_or(0))
    }
}
