//! Revisions in a file: SQLite, written ahead and synced before anything is acknowledged.

mod file;
mod paired;
mod photos;
mod rows;

#[cfg(test)]
mod tests;

pub use file::SCHEMA_VERSION;
pub use paired::Paired;

use crate::keep::{Appended, Cursor, Keep, KeepError, Named};
use rows::{entries, fault, revisions};
use rusqlite::{Connection, OpenFlags, OptionalExtension as _, TransactionBehavior, params};
use std::path::Path;
use tautline_survey::record::Added;
use tautline_survey::revision::{ActionId, DeviceId, RecordId, Revision};
use tautline_survey::sync::{Entry, Place};

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

    /// Opens a notebook, which is open elsewhere in this program and was checked there, for reading alone.
    ///
    /// # Errors
    /// [`KeepError`]
    pub fn reader(path: &Path) -> Result<Self, KeepError> {
        file::beside(path, OpenFlags::SQLITE_OPEN_READ_ONLY).map(|connection| Self { connection })
    }

    /// The same for writing.
    ///
    /// # Errors
    /// [`KeepError`]
    pub fn beside(path: &Path) -> Result<Self, KeepError> {
        file::beside(path, OpenFlags::SQLITE_OPEN_READ_WRITE).map(|connection| Self { connection })
    }

    /// Lets the file grow by so many pages and no further, as a disk would that is nearly full; for trials.
    ///
    /// # Errors
    /// [`KeepError`]
    pub fn let_grow_by(&self, pages: u32) -> Result<(), KeepError> {
        let size = || -> rusqlite::Result<()> {
            let now: u32 = self.connection.pragma_query_value(None, "page_count", |row| row.get(0))?;
            self.connection.pragma_update_and_check(None, "max_page_count", now + pages, |_| Ok(()))
        };
        size().map_err(|error| fault(&error))
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

    /// What a setting of this copy was set to.
    ///
    /// # Errors
    /// [`KeepError`]
    pub fn setting(&self, name: &str) -> Result<Option<String>, KeepError> {
        self.connection
            .query_row("SELECT value FROM setting WHERE name = ?1", [name], |row| row.get(0))
            .optional()
            .map_err(|error| fault(&error))
    }

    /// Sets a setting of this copy.
    ///
    /// # Errors
    /// [`KeepError`]
    pub fn set(&mut self, name: &str, value: &str) -> Result<(), KeepError> {
        self.connection
            .execute("INSERT OR REPLACE INTO setting VALUES (?1, ?2)", [name, value])
            .map(|_| ())
            .map_err(|error| fault(&error))
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
        writer.end(&transaction).map_err(|error| fault(&error))?;
        if appended.erased > 0 {
            photos::let_go(&transaction).map_err(|error| fault(&error))?;
        }
        // with synchronous = FULL the log is synced before this returns
        transaction.commit().map_err(|error| fault(&error))?;
        if appended.erased > 0 {
            file::forget(&self.connection)?;
        }
        Ok(appended)
    }

    fn heads(&self) -> Result<Vec<Revision>, KeepError> {
        revisions(&self.connection, include_str!("heads.sql"), &[])
    }

    fn of_record(&self, record: RecordId) -> Result<Vec<Revision>, KeepError> {
        let sql = format!("{REVISION} WHERE record = ?1 ORDER BY seq");
        revisions(&self.connection, &sql, &[&record.to_string()])
    }

    fn of_action(&self, action: ActionId) -> Result<Vec<Revision>, KeepError> {
        let sql = format!("{REVISION} WHERE action = ?1 ORDER BY seq");
        revisions(&self.connection, &sql, &[&action.to_string()])
    }

    fn log(&self, cursor: Cursor, most: usize) -> Result<Vec<Entry>, KeepError> {
        let sql = format!("{REVISION} WHERE seq > ?1 ORDER BY seq LIMIT ?2");
        let most = i64::try_from(most).unwrap_or(i64::MAX);
        entries(&self.connection, &sql, &[&signed(cursor), &most])
    }

    fn place(&self, cursor: Cursor) -> Result<Option<Place>, KeepError> {
        if cursor == Cursor::START {
            return Ok(None);
        }
        let sql = "SELECT mark FROM batch WHERE upto >= ?1 ORDER BY upto LIMIT 1";
        self.connection
            .query_row(sql, [signed(cursor)], |row| Ok(Place { at: cursor.0, mark: row.get(0)? }))
            .optional()
            .map_err(|error| fault(&error))
    }

    fn end(&self) -> Result<Option<Place>, KeepError> {
        self.connection
            .query_row("SELECT upto, mark FROM batch ORDER BY upto DESC LIMIT 1", [], |row| {
                Ok(Place { at: row.get(0)?, mark: row.get(1)? })
            })
            .optional()
            .map_err(|error| fault(&error))
    }

    fn counter(&self) -> Result<u64, KeepError> {
        self.connection
            .query_row("SELECT coalesce(max(counter), 0) FROM revision", [], |row| row.get(0))
            .map_err(|error| fault(&error))
    }

    fn put_photo(&mut self, sha256: &str, bytes: &[u8]) -> Result<(), KeepError> {
        photos::put(&self.connection, sha256, bytes)
    }

    fn photo(&self, sha256: &str) -> Result<Option<Vec<u8>>, KeepError> {
        photos::get(&self.connection, sha256)
    }

    fn photos(&self) -> Result<Vec<Named>, KeepError> {
        photos::all(&self.connection)
    }

    fn has_photo(&self, sha256: &str) -> Result<bool, KeepError> {
        photos::has(&self.connection, sha256)
    }
}

/// A cursor as SQLite counts; none of ours is past its last number.
fn signed(cursor: Cursor) -> i64 {
    i64::try_from(cursor.0).unwrap_or(i64::MAX)
}
