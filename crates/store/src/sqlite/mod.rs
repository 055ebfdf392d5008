//! Revisions in a file: SQLite, written ahead and synced before anything is acknowledged.

mod file;
mod rows;

#[cfg(test)]
mod tests;

pub use file::SCHEMA_VERSION;

use crate::keep::{Appended, Cursor, Keep, KeepError};
use rows::{fault, read};
use rusqlite::{Connection, OptionalExtension as _, TransactionBehavior, params};
use std::path::Path;
use tautline_survey::record::Added;
use tautline_survey::revision::{ActionId, DeviceId, RecordId, Revision};

/// The columns that make a revision.
const REVISION: &str = "SELECT seq, head, sha256, content FROM revision";

/// A notebook as one file.
#[derive(Debug)]
pub struct Sqlite {
    connection: Connection,
}

impl Sqlite {
    /// Opens a notebook, brings its schema up to date and checks that it is whole.
    ///
    /// # Errors
    /// [`KeepError::NotThere`], [`KeepError::NotANotebook`], [`KeepError::Newer`], [`KeepError::Damaged`]
    pub fn open(path: &Path) -> Result<Self, KeepError> {
        file::open(path).map(|connection| Self { connection })
    }

    /// Opens a notebook, or begins one where there is no file.
    ///
    /// # Errors
    /// as [`Sqlite::open`], [`KeepError::NotThere`] aside
    pub fn open_or_begin(path: &Path) -> Result<Self, KeepError> {
        file::open_or_begin(path).map(|connection| Self { connection })
    }

    /// Copies the whole notebook to a new file, while others may be writing, and checks the copy.
    ///
    /// # Errors
    /// [`KeepError::Taken`] where there is a file already
    pub fn back_up(&self, to: &Path) -> Result<(), KeepError> {
        file::back_up(&self.connection, to)
    }

    /// How many revisions it holds.
    ///
    /// # Errors
    /// [`KeepError`]
    pub fn len(&self) -> Result<usize, KeepError> {
        self.connection
            .query_row("SELECT count(*) FROM revision", [], |row| row.get(0))
            .map_err(|e| fault(&e))
    }

    /// Whether it holds none.
    ///
    /// # Errors
    /// [`KeepError`]
    pub fn is_empty(&self) -> Result<bool, KeepError> {
        Ok(self.len()? == 0)
    }

    /// The id that this copy goes by on a computer of this name; `new` where it wasn't opened there before.
    ///
    /// # Errors
    /// [`KeepError`]
    pub fn device(&mut self, name: &str, new: DeviceId) -> Result<DeviceId, KeepError> {
        let known: Option<String> = self
            .connection
            .query_row("SELECT id FROM device WHERE name = ?1", [name], |row| row.get(0))
            .optional()
            .map_err(|error| fault(&error))?;
        if let Some(known) = known.as_deref().and_then(DeviceId::read) {
            return Ok(known);
        }
        self.connection
            .execute("INSERT OR REPLACE INTO device VALUES (?1, ?2)", params![name, new.to_string()])
            .map_err(|error| fault(&error))?;
        Ok(new)
    }
}

impl Keep for Sqlite {
    fn append(&mut self, batch: &[Revision]) -> Result<Appended, KeepError> {
        if let Some(broken) = batch.iter().find(|revision| !revision.content_is_whole()) {
            return Err(KeepError::NotWhole(Box::new(broken.clone())));
        }
        let transaction = self
            .connection
            .transaction_with_behavior(TransactionBehavior::Immediate)
            .map_err(|error| fault(&error))?;
        let mut appended = Appended::default();
        let mut writer = rows::Writer::new(&transaction).map_err(|error| fault(&error))?;
        for revision in batch {
            let added: Added = writer.add(revision).map_err(|error| fault(&error))?;
            appended.count(added);
        }
        drop(writer);
        // with synchronous = FULL the log is synced before this returns
        transaction.commit().map_err(|error| fault(&error))?;
        if appended.erased > 0 {
            file::forget(&self.connection)?;
        }
        Ok(appended)
    }

    fn heads(&self) -> Result<Vec<Revision>, KeepError> {
        read(&self.connection, include_str!("heads.sql"), &[]).map(|(revisions, _)| revisions)
    }

    fn of_record(&self, record: RecordId) -> Result<Vec<Revision>, KeepError> {
        let sql = format!("{REVISION} WHERE record = ?1 ORDER BY seq");
        read(&self.connection, &sql, &[&record.to_string()]).map(|(revisions, _)| revisions)
    }

    fn of_action(&self, action: ActionId) -> Result<Vec<Revision>, KeepError> {
        let sql = format!("{REVISION} WHERE action = ?1 ORDER BY seq");
        read(&self.connection, &sql, &[&action.to_string()]).map(|(revisions, _)| revisions)
    }

    fn since(&self, cursor: Cursor, most: usize) -> Result<(Vec<Revision>, Cursor), KeepError> {
        let sql = format!("{REVISION} WHERE seq > ?1 ORDER BY seq LIMIT ?2");
        let from = i64::try_from(cursor.0).unwrap_or(i64::MAX);
        let most = i64::try_from(most).unwrap_or(i64::MAX);
        let (revisions, last) = read(&self.connection, &sql, &[&from, &most])?;
        Ok((revisions, last.map_or(cursor, Cursor)))
    }

    fn counter(&self) -> Result<u64, KeepError> {
        self.connection
            .query_row("SELECT coalesce(max(counter), 0) FROM revision", [], |row| row.get(0))
            .map_err(|error| fault(&error))
    }
}
