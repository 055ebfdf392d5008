//! Devices that were let in.

use super::Sqlite;
use super::rows::fault;
use crate::keep::KeepError;
use rusqlite::{OptionalExtension as _, params};

/// A device that was let in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Paired {
    /// Names it; a few characters are enough for a person.
    pub id: String,
    /// What its owner calls it.
    pub name: String,
    /// Since when, in UTC by the desk's clock.
    pub since: String,
    /// When it was shut out again.
    pub withdrawn: Option<String>,
}

/// By the desk's clock; nothing is ordered or merged by it.
const NOW: &str = "strftime('%Y-%m-%dT%H:%M:%SZ', 'now')";

impl Sqlite {
    /// Lets a device in by the SHA-256 of what it shows.
    ///
    /// # Errors
    /// [`KeepError`]
    pub fn pair(&mut self, id: &str, name: &str, token_sha256: &str) -> Result<(), KeepError> {
        let sql = format!("INSERT INTO paired VALUES (?1, ?2, ?3, {NOW}, NULL)");
        self.connection
            .execute(&sql, params![id, name, token_sha256])
            .map(|_| ())
            .map_err(|error| fault(&error))
    }

    /// Whether a device is let in that shows this.
    ///
    /// # Errors
    /// [`KeepError`]
    pub fn is_paired(&self, token_sha256: &str) -> Result<bool, KeepError> {
        let sql = "SELECT 1 FROM paired WHERE token_sha256 = ?1 AND withdrawn IS NULL";
        let found: Option<u32> = self
            .connection
            .query_row(sql, [token_sha256], |row| row.get(0))
            .optional()
            .map_err(|error| fault(&error))?;
        Ok(found.is_some())
    }

    /// Every device that was ever let in, in the order of their coming.
    ///
    /// # Errors
    /// [`KeepError`]
    pub fn paired(&self) -> Result<Vec<Paired>, KeepError> {
        let read = || -> rusqlite::Result<Vec<Paired>> {
            let mut statement = self
                .connection
                .prepare("SELECT id, name, since, withdrawn FROM paired ORDER BY since, id")?;
            let rows = statement.query_map([], |row| {
                Ok(Paired { id: row.get(0)?, name: row.get(1)?, since: row.get(2)?, withdrawn: row.get(3)? })
            })?;
            rows.collect()
        };
        read().map_err(|error| fault(&error))
    }

    /// Shuts a device out from now on.
    ///
    /// # Errors
    /// [`KeepError`]
    pub fn withdraw(&mut self, id: &str) -> Result<(), KeepError> {
        let sql = format!("UPDATE paired SET withdrawn = {NOW} WHERE id = ?1 AND withdrawn IS NULL");
        self.connection.execute(&sql, [id]).map(|_| ()).map_err(|error| fault(&error))
    }
}
