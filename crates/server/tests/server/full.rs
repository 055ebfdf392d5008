//! The disk of the desk is full. `TAUTLINE_SMALL_DISK` names a folder on a disk of a few megabytes (`./test --long` mounts
//! one where it may); without it, the notebook's file is let grow by a few pages only.

use crate::common::{Served, code, json};
use std::path::PathBuf;
use tautline_server::trial::Device;
use tautline_store::{Keep as _, Sqlite};
use tautline_survey::sync::{MOST_LINES, Place};

#[test]
fn a_full_disk_is_said_and_what_was_acknowledged_is_there() {
    let small = std::env::var_os("TAUTLINE_SMALL_DISK").map(PathBuf::from);
    let temporary = tempfile::tempdir().unwrap();
    let folder = small.clone().unwrap_or_else(|| temporary.path().to_owned());
    let pages = |keep: &Sqlite| keep.let_grow_by(150).unwrap();
    let served = Served::begin(folder.clone(), None, |keep| {
        if small.is_none() {
            pages(keep);
        }
    });
    let mut device = Device::new(1);
    let page = "x".repeat(8_000);
    let mut refused = None;
    for _ in 0..2_000 {
        device.begin(&page).unwrap();
        if device.exchange(served.address).is_err() {
            let log = device.keep.log(tautline_store::Cursor(device.state.sent()), MOST_LINES).unwrap();
            let asked = device.state.ask(device.id, &log, true).ask;
            refused = Some(served.post("/api/sync", &serde_json::to_string(&asked).unwrap()));
            break;
        }
    }
    let refused = refused.expect("the disk is small");
    assert_eq!((refused.status, code(&refused).as_str()), (507, "notebook-full"));
    assert_eq!(device.waiting().unwrap(), 1);
    let acknowledged = device.acknowledged().unwrap();
    assert!(acknowledged.len() > 3, "some went in before");
    // what is there can be read while the disk is full
    let health = json(&served.get("/api/health"));
    let end: Place = serde_json::from_value(health["end"].clone()).unwrap();
    assert_eq!(end.at, acknowledged.len() as u64);
    drop(served);
    // with room again, nothing acknowledged is missing and the rest goes in
    let roomy = tempfile::tempdir().unwrap();
    for entry in std::fs::read_dir(&folder).unwrap() {
        let path = entry.unwrap().path();
        std::fs::copy(&path, roomy.path().join(path.file_name().unwrap())).unwrap();
    }
    let served = Served::begin(roomy.path().to_owned(), None, |_| {});
    device.sync(served.address).unwrap();
    let kept = Sqlite::open(&served.folder.join("desk.tautline")).unwrap().heads().unwrap();
    assert_eq!(kept.len(), acknowledged.len() + 1);
    assert!(acknowledged.iter().all(|one| kept.contains(one)));
}
