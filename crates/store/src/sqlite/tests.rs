//! The file through everything that can befall it.

use super::*;
use crate::conformance::{Invented, conformance};
use crate::memory::Memory;
use proptest::prelude::*;
use tautline_survey::canonical::sha256_hex;

fn folder() -> tempfile::TempDir {
    tempfile::tempdir().unwrap()
}

#[test]
fn memory_conforms() {
    conformance(|| Box::new(Memory::default()));
}

#[test]
fn a_file_conforms() {
    let folder = folder();
    let mut number = 0;
    conformance(|| {
        number += 1;
        Box::new(Sqlite::open_or_begin(&folder.path().join(format!("{number}.tautline"))).unwrap())
    });
}

#[test]
fn what_was_acknowledged_is_there_when_opened_again() {
    let folder = folder();
    let path = folder.path().join("notes.tautline");
    let batch: Vec<Revision> = {
        let mut device = Invented::device(1);
        (0..20).map(|number| device.revision(None, &[], &number.to_string())).collect()
    };
    Sqlite::open_or_begin(&path).unwrap().append(&batch).unwrap();
    assert_eq!(Sqlite::open(&path).unwrap().heads().unwrap(), batch);
}

#[test]
fn what_is_no_notebook_is_refused_and_left_alone() {
    let folder = folder();
    let path = folder.path().join("other");
    assert_eq!(Sqlite::open(&path).unwrap_err(), KeepError::NotThere);
    std::fs::write(&path, "site,line\nInvented,1\n".repeat(100)).unwrap();
    assert_eq!(Sqlite::open_or_begin(&path).unwrap_err(), KeepError::NotANotebook);
    std::fs::remove_file(&path).unwrap();
    Connection::open(&path).unwrap().execute_batch("CREATE TABLE other (x)").unwrap();
    let before = std::fs::read(&path).unwrap();
    assert_eq!(Sqlite::open_or_begin(&path).unwrap_err(), KeepError::NotANotebook);
    assert_eq!(std::fs::read(&path).unwrap(), before);
}

#[test]
fn a_notebook_from_the_future_is_refused_and_left_alone() {
    let folder = folder();
    let path = folder.path().join("notes.tautline");
    let future = Sqlite::open_or_begin(&path).unwrap();
    future.connection.pragma_update(None, "user_version", SCHEMA_VERSION + 1).unwrap();
    drop(future);
    let before = std::fs::read(&path).unwrap();
    let refused = Sqlite::open(&path).unwrap_err();
    assert_eq!(refused, KeepError::Newer { found: SCHEMA_VERSION + 1, known: SCHEMA_VERSION });
    assert_eq!(std::fs::read(&path).unwrap(), before);
}

/// A notebook as the first step of the schema left it keeps everything through the later steps.
#[test]
fn older_notebooks_are_brought_up_to_date_with_what_they_hold() {
    let folder = folder();
    let path = folder.path().join("notes.tautline");
    let mut device = Invented::device(1);
    let first = device.revision(None, &[], "first");
    let second = device.revision(Some(first.record()), &[first.id()], "second");
    let old = Connection::open(&path).unwrap();
    old.execute_batch(include_str!("steps/0001_revisions.sql")).unwrap();
    old.pragma_update(None, "application_id", file::APPLICATION).unwrap();
    old.pragma_update(None, "user_version", 1).unwrap();
    let photo = Invented::device(3).photo(None, &[], b"invented");
    for revision in [&first, &second, &photo] {
        let head = revision.head();
        let row = params![
            head.id.to_string(),
            revision.sha256(),
            head.record.to_string(),
            head.action.id.to_string(),
            head.counter,
            revision.head_text(),
            revision.content_text()
        ];
        old.execute(include_str!("add.sql"), row).unwrap();
        for parent in &head.parents {
            let named = params![head.record.to_string(), parent.to_string(), head.id.to_string()];
            old.execute("INSERT INTO parent VALUES (?1, ?2, ?3)", named).unwrap();
        }
    }
    drop(old);
    let mut now = Sqlite::open(&path).unwrap();
    assert_eq!(now.heads().unwrap(), [second, photo]);
    // photos that came in from a newer device, before this file knew any
    let named = now.photos().unwrap();
    assert!(named.len() == 1 && !named[0].is_here);
    now.put_photo(&named[0].sha256, b"invented").unwrap();
    assert_eq!(now.of_action(first.head().action.id).unwrap(), [first]);
    let device = DeviceId::read("00000000-0000-7000-8000-000000000001").unwrap();
    assert_eq!(now.device("tablet", device).unwrap(), device);
    // what was there is one batch with a mark of its own, and the log goes on from it
    let end = now.end().unwrap().unwrap();
    assert_eq!((end.at, now.place(Cursor(1)).unwrap().unwrap().mark), (3, end.mark.clone()));
    now.append(&[Invented::device(2).revision(None, &[], "third")]).unwrap();
    assert_eq!(now.place(Cursor(3)).unwrap(), Some(end.clone()));
    assert_ne!(now.end().unwrap(), Some(end));
}

/// The schema as it stands is that of the steps, whichever step a file began at.
#[test]
fn the_steps_lead_to_one_schema() {
    let schema = |connection: &Connection| -> Vec<String> {
        let mut statement =
            connection.prepare("SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name").unwrap();
        statement.query_map([], |row| row.get(0)).unwrap().map(Result::unwrap).collect()
    };
    let mut fresh = Connection::open_in_memory().unwrap();
    file::prepare(&mut fresh).unwrap();
    let mut old = Connection::open_in_memory().unwrap();
    old.execute_batch(include_str!("steps/0001_revisions.sql")).unwrap();
    old.pragma_update(None, "application_id", file::APPLICATION).unwrap();
    old.pragma_update(None, "user_version", 1).unwrap();
    file::prepare(&mut old).unwrap();
    assert_eq!(schema(&fresh), schema(&old));
    assert_eq!(schema(&fresh).len(), 10);
}

#[test]
fn a_device_is_let_in_and_shut_out() {
    let folder = folder();
    let mut keep = Sqlite::open_or_begin(&folder.path().join("notes.tautline")).unwrap();
    keep.pair("1", "tablet", "aa").unwrap();
    keep.pair("2", "phone", "bb").unwrap();
    assert!(keep.is_paired("aa").unwrap() && !keep.is_paired("cc").unwrap());
    keep.withdraw("1").unwrap();
    assert!(!keep.is_paired("aa").unwrap() && keep.is_paired("bb").unwrap());
    let all = keep.paired().unwrap();
    assert_eq!(all.iter().map(|one| one.name.as_str()).collect::<Vec<_>>(), ["tablet", "phone"]);
    assert!(all[0].withdrawn.is_some() && all[1].withdrawn.is_none());
}

#[test]
fn a_damaged_file_is_named_as_one() {
    let folder = folder();
    let path = folder.path().join("notes.tautline");
    let mut device = Invented::device(1);
    let batch: Vec<Revision> =
        (0..500).map(|number| device.revision(None, &[], &number.to_string())).collect();
    Sqlite::open_or_begin(&path).unwrap().append(&batch).unwrap();
    let mut bytes = std::fs::read(&path).unwrap();
    let middle = bytes.len() / 2;
    bytes[middle..middle + 8192].fill(0xA5);
    std::fs::write(&path, bytes).unwrap();
    assert!(matches!(Sqlite::open(&path), Err(KeepError::Damaged(_))));
}

#[test]
fn a_full_disk_is_said_and_loses_nothing_acknowledged() {
    let folder = folder();
    let path = folder.path().join("notes.tautline");
    let mut device = Invented::device(1);
    let kept: Vec<Revision> = (0..10).map(|number| device.revision(None, &[], &number.to_string())).collect();
    let mut keep = Sqlite::open_or_begin(&path).unwrap();
    keep.append(&kept).unwrap();
    keep.let_grow_by(2).unwrap();
    let long = "x".repeat(4000);
    let more: Vec<Revision> = (0..50).map(|_| device.revision(None, &[], &long)).collect();
    assert_eq!(keep.append(&more), Err(KeepError::Full));
    assert_eq!(keep.heads().unwrap(), kept);
    drop(keep);
    // with room again, the same batch goes in
    let mut keep = Sqlite::open(&path).unwrap();
    assert_eq!(keep.heads().unwrap(), kept);
    assert_eq!(keep.append(&more).unwrap().new, 50);
}

#[test]
fn a_backup_is_whole_and_takes_no_other_file_s_place() {
    let folder = folder();
    let (path, to) = (folder.path().join("notes.tautline"), folder.path().join("copy.tautline"));
    let mut device = Invented::device(1);
    let mut batch: Vec<Revision> =
        (0..300).map(|number| device.revision(None, &[], &number.to_string())).collect();
    batch.push(device.photo(None, &[], b"invented"));
    let mut keep = Sqlite::open_or_begin(&path).unwrap();
    keep.append(&batch).unwrap();
    keep.put_photo(&sha256_hex(b"invented"), b"invented").unwrap();
    // the notebook is still open, its last rows in the log beside the file
    keep.back_up(&to).unwrap();
    assert_eq!(Sqlite::open(&to).unwrap().heads().unwrap(), batch);
    assert_eq!(Sqlite::open(&to).unwrap().photo(&sha256_hex(b"invented")).unwrap().unwrap(), b"invented");
    assert_eq!(keep.back_up(&to), Err(KeepError::Taken));
    assert_eq!(keep.back_up(&folder.path().join("no/such/folder")), Err(KeepError::NotThere));
}

/// A name that was blanked is nowhere in the file, nor in the log beside it.
#[test]
fn what_is_blanked_is_gone_from_the_disk() {
    let folder = folder();
    let path = folder.path().join("notes.tautline");
    let mut device = Invented::device(1);
    let named = device.revision(None, &[], "Invented Person Number One");
    let mut keep = Sqlite::open_or_begin(&path).unwrap();
    keep.append(std::slice::from_ref(&named)).unwrap();
    let holds = || {
        std::fs::read_dir(folder.path()).unwrap().any(|entry| {
            let bytes = std::fs::read(entry.unwrap().path()).unwrap();
            bytes.windows(26).any(|part| part == b"Invented Person Number One")
        })
    };
    assert!(holds());
    keep.append(&[named.erased()]).unwrap();
    assert!(!holds());
    // the bytes of a photo go with the last revision that names them
    let bytes = b"Invented Person Number One".repeat(3000);
    let photo = device.photo(None, &[], &bytes);
    keep.append(std::slice::from_ref(&photo)).unwrap();
    keep.put_photo(&sha256_hex(&bytes), &bytes).unwrap();
    assert!(holds());
    keep.append(&[photo.erased()]).unwrap();
    assert!(!holds());
}

/// A device that was set back to an old copy and wrote on meets the others again.
#[test]
fn a_device_restored_from_an_old_backup_merges() {
    let folder = folder();
    let (path, old) = (folder.path().join("notes.tautline"), folder.path().join("old.tautline"));
    let mut device = Invented::device(1);
    let first = device.revision(None, &[], "first");
    let mut keep = Sqlite::open_or_begin(&path).unwrap();
    keep.append(std::slice::from_ref(&first)).unwrap();
    keep.back_up(&old).unwrap();
    let later = device.revision(Some(first.record()), &[first.id()], "later");
    keep.append(std::slice::from_ref(&later)).unwrap();
    // the restored device counts from where the backup stood, so counters repeat
    let mut restored = Sqlite::open(&old).unwrap();
    let mut device = Invented::device(9);
    device.counter = restored.counter().unwrap();
    let other = device.revision(Some(first.record()), &[first.id()], "other");
    assert_eq!(other.head().counter, later.head().counter);
    restored.append(std::slice::from_ref(&other)).unwrap();
    let (all, _) = keep.since(Cursor::START, usize::MAX).unwrap();
    restored.append(&all).unwrap();
    let (all, _) = restored.since(Cursor::START, usize::MAX).unwrap();
    keep.append(&all).unwrap();
    for keep in [&keep, &restored] {
        let mut heads = keep.heads().unwrap();
        heads.sort_by_key(Revision::id);
        let mut expected = vec![later.clone(), other.clone()];
        expected.sort_by_key(Revision::id);
        assert_eq!(heads, expected);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// Whatever comes in whatever batches, the file stands where the memory stands.
    #[test]
    fn the_file_stands_where_the_memory_stands(
        story in prop::collection::vec((0_usize..6, 0_usize..6, prop::bool::ANY), 1..30),
        batches in prop::collection::vec(prop::collection::vec(0_usize..30, 0..8), 0..12),
    ) {
        let mut device = Invented::device(3);
        let mut made: Vec<Revision> = Vec::new();
        for (record, parent, erased) in story {
            let own: Vec<&Revision> = made.iter().skip(record).step_by(6).collect();
            let parent = own.get(parent).map(|one| (one.record(), one.id()));
            let next = device.revision(
                parent.map(|(record, _)| record),
                &parent.map(|(_, id)| id).into_iter().collect::<Vec<_>>(),
                &made.len().to_string(),
            );
            made.push(if erased { next.erased() } else { next });
        }
        let mut memory = Memory::default();
        let mut file = Sqlite { connection: Connection::open_in_memory().unwrap() };
        file::prepare(&mut file.connection).unwrap();
        for batch in batches {
            let batch: Vec<Revision> = batch.iter().filter_map(|&at| made.get(at).cloned()).collect();
            prop_assert_eq!(memory.append(&batch).unwrap(), file.append(&batch).unwrap());
        }
        let sorted = |mut revisions: Vec<Revision>| {
            revisions.sort_by_key(Revision::id);
            revisions
        };
        prop_assert_eq!(sorted(memory.heads().unwrap()), sorted(file.heads().unwrap()));
        prop_assert_eq!(memory.since(Cursor::START, 100).unwrap(), file.since(Cursor::START, 100).unwrap());
    }
}

/// Bytes that the disk has changed are named as damage, not shown as the photo.
#[test]
fn a_photo_that_the_disk_has_changed_is_named() {
    let folder = folder();
    let mut keep = Sqlite::open_or_begin(&folder.path().join("notes.tautline")).unwrap();
    let photo = Invented::device(1).photo(None, &[], b"invented");
    keep.append(&[photo]).unwrap();
    let sha256 = sha256_hex(b"invented");
    keep.put_photo(&sha256, b"invented").unwrap();
    keep.connection.execute("UPDATE photo SET bytes = ?1", params![b"inventeD"]).unwrap();
    assert!(matches!(keep.photo(&sha256), Err(KeepError::Damaged(_))));
}
