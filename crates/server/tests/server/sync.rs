//! Devices that share in a notebook over HTTP.
//!
//! The revisions are invented.

use crate::common::{Served, json};
use std::collections::BTreeSet;
use tautline_server::trial::Device;
use tautline_server::{NotServed, Server, Setup};
use tautline_store::conformance::Invented;
use tautline_store::{Keep as _, Sqlite};
use tautline_survey::revision::{Header, Revision, RevisionId, read_line};

fn ids(device: &Device) -> BTreeSet<RevisionId> {
    device.keep.records().revisions().map(Revision::id).collect()
}

#[test]
fn devices_come_to_hold_the_same_over_http() {
    let served = Served::new(None);
    let mut devices: Vec<Device> = (1..=3).map(Device::new).collect();
    for (number, device) in devices.iter_mut().enumerate() {
        for reading in 0..(number + 1) * 300 {
            device.begin(&reading.to_string()).unwrap();
        }
    }
    for _ in 0..2 {
        for device in &mut devices {
            device.sync(served.address).unwrap();
        }
    }
    assert_eq!(ids(&devices[0]).len(), 1800);
    assert!(devices.iter().all(|device| ids(device) == ids(&devices[0])));
    // the whole as lines of JSON, as the command would export it
    let lines = String::from_utf8(served.get("/api/revisions").body).unwrap();
    let mut lines = lines.lines();
    Header::read(lines.next().unwrap()).unwrap();
    let read: BTreeSet<RevisionId> = lines.map(|line| read_line(line).unwrap().id()).collect();
    assert_eq!(read, ids(&devices[0]));
    let end = json(&served.get("/api/health"))["end"]["at"].as_u64().unwrap();
    assert_eq!(end, 1800);
    let rest = served.get("/api/revisions?after=1795").body;
    assert_eq!(String::from_utf8(rest).unwrap().lines().count(), 6);
    // another program may write to the notebook beside the server
    let mut beside = Sqlite::open(&served.folder.join("desk.tautline")).unwrap();
    let made = Invented::device(9).revision(None, &[], "beside");
    beside.append(std::slice::from_ref(&made)).unwrap();
    devices[0].sync(served.address).unwrap();
    assert!(ids(&devices[0]).contains(&made.id()));
}

/// The laptop's notebook is set back to a backup between two syncs, and its address changes.
#[test]
fn what_the_desk_lost_comes_back_from_the_devices() {
    let served = Served::new(None);
    let (mut one, mut other) = (Device::new(1), Device::new(2));
    one.begin("first").unwrap();
    one.sync(served.address).unwrap();
    other.sync(served.address).unwrap();
    let notebook = served.folder.join("desk.tautline");
    let backup = tempfile::tempdir().unwrap();
    Sqlite::open(&notebook).unwrap().back_up(&backup.path().join("desk.tautline")).unwrap();
    one.begin("second").unwrap();
    one.sync(served.address).unwrap();
    other.begin("third").unwrap();
    other.sync(served.address).unwrap();
    drop(served);
    let served = Served::begin(backup.path().to_owned(), None, |_| {});
    for _ in 0..2 {
        one.sync(served.address).unwrap();
        other.sync(served.address).unwrap();
    }
    let held = Sqlite::open(&served.folder.join("desk.tautline")).unwrap().len().unwrap();
    assert_eq!((ids(&one).len(), ids(&other) == ids(&one), held), (3, true, 3));
}

#[test]
fn the_port_of_the_first_time_is_taken_again() {
    let folder = tempfile::tempdir().unwrap();
    let setup = |port| Setup { notebook: folder.path().join("desk.tautline"), port, app: None, share: None };
    let first = Server::begin(&setup(None)).unwrap();
    let port = first.address().port();
    assert!(first.address().ip().is_loopback());
    assert_eq!(first.port_before(), None);
    // while the first listens, a second finds the port taken and doesn't go elsewhere
    assert!(matches!(Server::begin(&setup(None)), Err(NotServed::PortTaken(taken)) if taken == port));
    drop(first);
    let again = Server::begin(&setup(None)).unwrap();
    assert_eq!((again.address().port(), again.port_before()), (port, None));
    drop(again);
    let other = Server::begin(&setup(Some(0))).unwrap();
    assert_eq!(other.port_before(), Some(port));
    let port = other.address().port();
    drop(other);
    assert_eq!(Server::begin(&setup(None)).unwrap().address().port(), port);
}

#[test]
fn a_folder_without_an_app_is_said() {
    let folder = tempfile::tempdir().unwrap();
    let setup = Setup {
        notebook: folder.path().join("desk.tautline"),
        port: Some(0),
        app: Some(folder.path().to_owned()),
        share: None,
    };
    assert!(matches!(Server::begin(&setup), Err(NotServed::NoApp(_))));
    assert!(!folder.path().join("desk.tautline").exists());
}
