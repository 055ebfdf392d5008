//! The file itself: what it must be before it is used, its schema and the steps that lead to it, copies of it.

use super::rows::fault;
use crate::keep::KeepError;
use rusqlite::backup::Backup;
use rusqlite::{Connection, OpenFlags, TransactionBehavior};
use std::path::Path;
use std::time::Duration;

/// The steps of the schema, in order. A step that has shipped is never edited; a change is a further step.
const STEPS: [&str; 5] = [
    include_str!("steps/0001_revisions.sql"),
    include_str!("steps/0002_devices.sql"),
    include_str!("steps/0003_batches.sql"),
    include_str!("steps/0004_paired.sql"),
    include_str!("steps/0005_photos.sql"),
];

/// The version of the schema that this version writes.
pub const SCHEMA_VERSION: u32 = 5;
const _: () = assert!(STEPS.len() == SCHEMA_VERSION as usize);

/// What marks a file as a notebook: “taut” in ASCII, in SQLite's field for it.
pub(super) const APPLICATION: u32 = 0x7461_7574;

/// What each connection asks for; that the log is written ahead stands in the file.
const SETTINGS: [(&str, &str); 3] =
    [("trusted_schema", "OFF"), ("synchronous", "FULL"), ("secure_delete", "ON")];

/// How long to wait for another program that is writing.
const PATIENCE: Duration = Duration::from_secs(5);

pub(super) fn open(path: &Path) -> Result<Connection, KeepError> {
    if !path.exists() {
        return Err(KeepError::NotThere);
    }
    connect(path, OpenFlags::empty())
}

pub(super) fn open_or_begin(path: &Path) -> Result<Connection, KeepError> {
    connect(path, OpenFlags::SQLITE_OPEN_CREATE)
}

fn connect(path: &Path, create: OpenFlags) -> Result<Connection, KeepError> {
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX | create;
    let mut connection = Connection::open_with_flags(path, flags).map_err(|error| fault(&error))?;
    prepare(&mut connection)?;
    Ok(connection)
}

/// A further connection to a file that this program has open and has looked through.
pub(super) fn beside(path: &Path, access: OpenFlags) -> Result<Connection, KeepError> {
    let flags = access | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let connection = Connection::open_with_flags(path, flags).map_err(|error| fault(&error))?;
    connection.busy_timeout(PATIENCE).map_err(|error| fault(&error))?;
    for (name, value) in SETTINGS {
        connection.pragma_update(None, name, value).map_err(|error| fault(&error))?;
    }
    Ok(connection)
}

/// Refuses what is no notebook or comes from the future before anything is written to it.
pub(super) fn prepare(connection: &mut Connection) -> Result<(), KeepError> {
    connection.busy_timeout(PATIENCE).map_err(|error| fault(&error))?;
    let found = version(connection)?;
    if found > SCHEMA_VERSION {
        return Err(KeepError::Newer { found, known: SCHEMA_VERSION });
    }
    connection.pragma_update(None, "journal_mode", "WAL").map_err(|error| fault(&error))?;
    for (name, value) in SETTINGS {
        connection.pragma_update(None, name, value).map_err(|error| fault(&error))?;
    }
    check(connection)?;
    migrate(connection)
}

/// The version of the schema; 0 for an empty file.
fn version(connection: &Connection) -> Result<u32, KeepError> {
    let pragma = |name| -> Result<u32, KeepError> {
        connection.pragma_query_value(None, name, |row| row.get(0)).map_err(|error| fault(&error))
    };
    let tables: u32 = connection
        .query_row("SELECT count(*) FROM sqlite_schema", [], |row| row.get(0))
        .map_err(|error| fault(&error))?;
    match pragma("application_id")? {
        APPLICATION => pragma("user_version"),
        0 if tables == 0 => Ok(0),
        _ => Err(KeepError::NotANotebook),
    }
}

/// SQLite's own check of the whole file.
fn check(connection: &Connection) -> Result<(), KeepError> {
    let found: String = connection
        .query_row("PRAGMA integrity_check(1)", [], |row| row.get(0))
        .map_err(|error| fault(&error))?;
    if found == "ok" { Ok(()) } else { Err(KeepError::Damaged(found)) }
}

/// Takes the steps that a file still lacks, all of them or none.
fn migrate(connection: &mut Connection) -> Result<(), KeepError> {
    if version(connection)? == SCHEMA_VERSION {
        return Ok(());
    }
    let mut step = || -> rusqlite::Result<()> {
        let transaction = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        // another program may have taken the steps while this one waited
        let found: usize = transaction.pragma_query_value(None, "user_version", |row| row.get(0))?;
        for sql in STEPS.iter().skip(found) {
            transaction.execute_batch(sql)?;
        }
        transaction.pragma_update(None, "application_id", APPLICATION)?;
        transaction.pragma_update(None, "user_version", SCHEMA_VERSION)?;
        transaction.commit()
    };
    step().map_err(|error| fault(&error))
}

pub(super) fn back_up(connection: &Connection, to: &Path) -> Result<(), KeepError> {
    // created here and nowhere else, so that no two copies share a file
    let made = std::fs::OpenOptions::new().write(true).create_new(true).open(to);
    made.map_err(|error| match error.kind() {
        std::io::ErrorKind::AlreadyExists => KeepError::Taken,
        std::io::ErrorKind::NotFound => KeepError::NotThere,
        std::io::ErrorKind::StorageFull => KeepError::Full,
        _ => KeepError::System(error.to_string()),
    })?;
    let copy = || -> Result<(), KeepError> {
        let mut copy = Connection::open(to).map_err(|error| fault(&error))?;
        let backup = Backup::new(connection, &mut copy).map_err(|error| fault(&error))?;
        backup.run_to_completion(1024, Duration::ZERO, None).map_err(|error| fault(&error))?;
        drop(backup);
        check(&copy)
    };
    copy().inspect_err(|_| {
        // half a copy is worse than none; that it can't be removed changes nothing about the error
        let _ = std::fs::remove_file(to);
    })
}

/// After a content was blanked: no old page of it stays behind in the log beside the file.
pub(super) fn forget(connection: &Connection) -> Result<(), KeepError> {
    connection.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |_| Ok(())).map_err(|error| fault(&error))
}
