//! Revisions as rows, and what SQLite says put into our terms.

use crate::keep::{KeepError, Marking};
use rusqlite::{Connection, ErrorCode, OptionalExtension as _, Statement, ToSql, params};
use tautline_survey::record::Added;
use tautline_survey::revision::Revision;
use tautline_survey::sync::Entry;

/// Adds revisions inside a transaction.
pub(super) struct Writer<'a> {
    insert: Statement<'a>,
    name_parent: Statement<'a>,
    blank: Statement<'a>,
    marking: Marking,
}

impl<'a> Writer<'a> {
    pub(super) fn new(connection: &'a Connection) -> rusqlite::Result<Self> {
        let last: Option<String> = connection
            .query_row("SELECT mark FROM batch ORDER BY upto DESC LIMIT 1", [], |row| row.get(0))
            .optional()?;
        Ok(Self {
            marking: Marking::after(last.as_deref()),
            insert: connection.prepare(include_str!("add.sql"))?,
            name_parent: connection.prepare("INSERT OR IGNORE INTO parent VALUES (?1, ?2, ?3)")?,
            blank: connection.prepare(include_str!("blank.sql"))?,
        })
    }

    pub(super) fn add(&mut self, revision: &Revision) -> rusqlite::Result<Added> {
        let added = self.put(revision)?;
        self.marking.add(revision, added);
        Ok(added)
    }

    /// Ends the batch: where it changed something, its mark goes with it.
    pub(super) fn end(self, connection: &Connection) -> rusqlite::Result<()> {
        if let Some(mark) = self.marking.end() {
            connection.execute("INSERT INTO batch SELECT max(seq), ?1 FROM revision", [mark])?;
        }
        Ok(())
    }

    fn put(&mut self, revision: &Revision) -> rusqlite::Result<Added> {
        let head = revision.head();
        let (id, record) = (head.id.to_string(), head.record.to_string());
        let inserted = self.insert.execute(params![
            id,
            revision.sha256(),
            record,
            head.action.id.to_string(),
            i64::try_from(head.counter).unwrap_or(i64::MAX),
            revision.head_text(),
            revision.content_text(),
        ])?;
        if inserted > 0 {
            for parent in &head.parents {
                self.name_parent.execute(params![record, parent.to_string(), id])?;
            }
            return Ok(Added::New);
        }
        let blanked =
            if revision.is_erased() { self.blank.execute(params![id, revision.sha256()])? } else { 0 };
        Ok(if blanked > 0 { Added::Erased } else { Added::Known })
    }
}

/// Reads revisions and their places in the log.
pub(super) fn entries(
    connection: &Connection,
    sql: &str,
    parameters: &[&dyn ToSql],
) -> Result<Vec<Entry>, KeepError> {
    let mut statement = connection.prepare(sql).map_err(|error| fault(&error))?;
    let mut rows = statement.query(parameters).map_err(|error| fault(&error))?;
    let mut entries = Vec::new();
    while let Some(row) = rows.next().map_err(|error| fault(&error))? {
        let take = || -> rusqlite::Result<(u64, String, String, Option<String>)> {
            Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?))
        };
        let (at, head, sha256, content) = take().map_err(|error| fault(&error))?;
        let revision = Revision::kept(&head, sha256, content);
        let revision = revision.ok_or_else(|| KeepError::Damaged(format!("revision {at}")))?;
        entries.push(Entry { at, revision });
    }
    Ok(entries)
}

/// Reads revisions.
pub(super) fn revisions(
    connection: &Connection,
    sql: &str,
    parameters: &[&dyn ToSql],
) -> Result<Vec<Revision>, KeepError> {
    Ok(entries(connection, sql, parameters)?.into_iter().map(|entry| entry.revision).collect())
}

/// What went wrong, in our terms.
pub(super) fn fault(error: &rusqlite::Error) -> KeepError {
    match error.sqlite_error_code() {
        Some(ErrorCode::DiskFull) => KeepError::Full,
        Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked) => KeepError::Busy,
        Some(ErrorCode::ReadOnly) => KeepError::ReadOnly,
        Some(ErrorCode::NotADatabase) => KeepError::NotANotebook,
        Some(ErrorCode::DatabaseCorrupt) => KeepError::Damaged(error.to_string()),
        _ => KeepError::System(error.to_string()),
    }
}
