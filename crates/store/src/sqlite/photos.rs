//! The bytes of photos as rows.

use super::rows::fault;
use crate::keep::{KeepError, Named, may_be_photo};
use rusqlite::{Connection, OptionalExtension as _, params};
use tautline_survey::canonical::sha256_hex;

/// The photos that revisions name; the conditions are those of the index.
const NAMED: &str = "SELECT DISTINCT json_extract(content, '$.payload.sha256') AS sha256 FROM revision \
    WHERE instr(head, '\"kind\":\"photo\"') > 0 AND content IS NOT NULL \
    AND json_extract(content, '$.payload.sha256') IS NOT NULL";

pub(super) fn put(connection: &Connection, sha256: &str, bytes: &[u8]) -> Result<(), KeepError> {
    may_be_photo(sha256, bytes)?;
    let put = format!("INSERT OR IGNORE INTO photo SELECT ?1, ?2 WHERE ?1 IN ({NAMED})");
    let new = connection.execute(&put, params![sha256, bytes]).map_err(|error| fault(&error))?;
    if new > 0 || has(connection, sha256)? { Ok(()) } else { Err(KeepError::NotNamed) }
}

pub(super) fn has(connection: &Connection, sha256: &str) -> Result<bool, KeepError> {
    connection
        .query_row("SELECT EXISTS (SELECT 1 FROM photo WHERE sha256 = ?1)", [sha256], |row| row.get(0))
        .map_err(|error| fault(&error))
}

pub(super) fn get(connection: &Connection, sha256: &str) -> Result<Option<Vec<u8>>, KeepError> {
    let bytes: Option<Vec<u8>> = connection
        .query_row("SELECT bytes FROM photo WHERE sha256 = ?1", [sha256], |row| row.get(0))
        .optional()
        .map_err(|error| fault(&error))?;
    match bytes {
        Some(bytes) if sha256_hex(&bytes) != sha256 => Err(KeepError::Damaged(format!("photo {sha256}"))),
        whole => Ok(whole),
    }
}

pub(super) fn all(connection: &Connection) -> Result<Vec<Named>, KeepError> {
    let read = || -> rusqlite::Result<Vec<Named>> {
        let sql =
            format!("SELECT sha256, sha256 IN (SELECT sha256 FROM photo) FROM ({NAMED}) ORDER BY sha256");
        let mut statement = connection.prepare(&sql)?;
        let rows = statement.query_map([], |row| Ok(Named { sha256: row.get(0)?, is_here: row.get(1)? }))?;
        rows.collect()
    };
    read().map_err(|error| fault(&error))
}

/// Lets go of the bytes that no revision names any more.
pub(super) fn let_go(connection: &Connection) -> rusqlite::Result<()> {
    connection.execute(&format!("DELETE FROM photo WHERE sha256 NOT IN ({NAMED})"), []).map(|_| ())
}
