//! Revisions in memory: the plainest implementer, which the others are held against.

use crate::keep::{Appended, Cursor, Keep, KeepError, Marking, Named, may_be_photo};
use std::collections::{BTreeMap, BTreeSet};
use tautline_survey::photo::bytes_of;
use tautline_survey::record::{Added, Records};
use tautline_survey::revision::{ActionId, RecordId, Revision, RevisionId};
use tautline_survey::sync::{Entry, Place};

/// What tells a revision apart, and where to look for it.
type Name = (RecordId, RevisionId, String);

/// Revisions in memory.
#[derive(Clone, Debug, Default)]
pub struct Memory {
    records: Records,
    /// What came in or was blanked when; a revision stands at its last change.
    log: BTreeMap<u64, Name>,
    /// Where in the log each revision stands.
    places: BTreeMap<Name, u64>,
    /// The last number of each batch, and its mark.
    marks: BTreeMap<u64, String>,
    last: u64,
    /// The bytes of photos, under their hash.
    photos: BTreeMap<String, Vec<u8>>,
}

impl Memory {
    /// What another memory held: its log and its marks, as [`Keep::log`] and [`Memory::marks`] gave them.
    ///
    /// # Example
    /// ```
    /// use tautline_store::{Cursor, Keep, Memory};
    /// let kept = Memory::default();
    /// let again = Memory::restored(kept.log(Cursor::START, usize::MAX)?, kept.marks().clone());
    /// assert_eq!(again.end()?, kept.end()?);
    /// # Ok::<(), tautline_store::KeepError>(())
    /// ```
    pub fn restored(log: impl IntoIterator<Item = Entry>, marks: BTreeMap<u64, String>) -> Self {
        let mut memory = Self { marks, ..Self::default() };
        for Entry { at, revision } in log {
            let name = (revision.record(), revision.id(), revision.sha256().to_owned());
            memory.places.insert(name.clone(), at);
            memory.log.insert(at, name);
            memory.last = memory.last.max(at);
            memory.records.add(revision);
        }
        memory
    }

    /// The last number of each batch, and its mark.
    pub const fn marks(&self) -> &BTreeMap<u64, String> {
        &self.marks
    }

    /// The photos that revisions name, by the hash of their bytes.
    pub fn named(&self) -> BTreeSet<String> {
        self.records.revisions().filter_map(bytes_of).collect()
    }

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
        let mut marking = Marking::after(self.marks.last_key_value().map(|(_, mark)| mark.as_str()));
        for revision in batch {
            let added = self.records.add(revision.clone());
            appended.count(added);
            marking.add(revision, added);
            if added != Added::Known {
                let name = (revision.record(), revision.id(), revision.sha256().to_owned());
                self.last += 1;
                if let Some(before) = self.places.insert(name.clone(), self.last) {
                    self.log.remove(&before);
                }
                self.log.insert(self.last, name);
            }
        }
        if let Some(mark) = marking.end() {
            self.marks.insert(self.last, mark);
        }
        if appended.erased > 0 && !self.photos.is_empty() {
            let named = self.named();
            self.photos.retain(|sha256, _| named.contains(sha256));
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

    fn log(&self, cursor: Cursor, most: usize) -> Result<Vec<Entry>, KeepError> {
        let found = self.log.range(cursor.0.saturating_add(1)..).take(most);
        let entries = found.filter_map(|(&at, (record, id, sha256))| {
            let own = self.records.of(*record);
            let revision = own.into_iter().find(|one| one.id() == *id && one.sha256() == sha256)?;
            Some(Entry { at, revision: revision.clone() })
        });
        Ok(entries.collect())
    }

    fn place(&self, cursor: Cursor) -> Result<Option<Place>, KeepError> {
        let covering = self.marks.range(cursor.0..).next().filter(|_| cursor > Cursor::START);
        Ok(covering.map(|(_, mark)| Place { at: cursor.0, mark: mark.clone() }))
    }

    fn end(&self) -> Result<Option<Place>, KeepError> {
        Ok(self.marks.last_key_value().map(|(&at, mark)| Place { at, mark: mark.clone() }))
    }

    fn counter(&self) -> Result<u64, KeepError> {
        Ok(self.records.revisions().map(|revision| revision.head().counter).max().unwrap_or(0))
    }

    fn put_photo(&mut self, sha256: &str, bytes: &[u8]) -> Result<(), KeepError> {
        may_be_photo(sha256, bytes)?;
        if !self.named().contains(sha256) {
            return Err(KeepError::NotNamed);
        }
        self.photos.insert(sha256.to_owned(), bytes.to_owned());
        Ok(())
    }

    fn photo(&self, sha256: &str) -> Result<Option<Vec<u8>>, KeepError> {
        Ok(self.photos.get(sha256).cloned())
    }

    fn photos(&self) -> Result<Vec<Named>, KeepError> {
        let here = |sha256: String| Named { is_here: self.photos.contains_key(&sha256), sha256 };
        Ok(self.named().into_iter().map(here).collect())
    }
}
