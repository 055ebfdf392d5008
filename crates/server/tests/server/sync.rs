//! Devices that share in a notebook over HTTP.
//!
//! The revisions are invented.

use crate::common::Served;
use std::collections::BTreeSet;
use tautline_server::{NotServed, Server, Setup};
use tautline_store::conformance::Invented;
use tautline_store::{Cursor, Keep, Memory, Sqlite};
use tautline_survey::revision::{DeviceId, Header, Revision, RevisionId, read_line};
use tautline_survey::sync::{Answer, MOST_LINES, State};

struct Device {
    id: DeviceId,
    keep: Memory,
    state: State,
    hand: Invented,
}

impl Device {
    fn new(number: u8) -> Self {
        Self {
            id: DeviceId::made(0, [number; 10]),
            keep: Memory::default(),
            state: State::default(),
            hand: Invented::device(u64::from(number)),
        }
    }

    fn write(&mut self, text: &str) -> RevisionId {
        let made = self.hand.revision(None, &[], text);
        self.keep.append(std::slice::from_ref(&made)).unwrap();
        made.id()
    }

    /// Exchanges until each has what the other has.
    fn sync(&mut self, served: &Served) {
        loop {
            let log = self.keep.log(Cursor(self.state.sent()), MOST_LINES).unwrap();
            let asked = self.state.ask(self.id, &log, log.len() < MOST_LINES);
            let answered = served.post("/api/sync", &serde_json::to_string(&asked.ask).unwrap());
            assert_eq!(answered.status, 200, "{answered:?}");
            let answer: Answer = serde_json::from_slice(&answered.body).unwrap();
            let taken = self.state.take(&asked, &answer).unwrap();
            self.keep.append(&taken.revisions).unwrap();
            self.state = taken.state;
            if taken.done {
                return;
            }
        }
    }

    fn ids(&self) -> BTreeSet<RevisionId> {
        self.keep.records().revisions().map(Revision::id).collect()
    }
}

#[test]
fn devices_come_to_hold_the_same_over_http() {
    let served = Served::new(None);
    let mut devices: Vec<Device> = (1..=3).map(Device::new).collect();
    for (number, device) in devices.iter_mut().enumerate() {
        for reading in 0..(number + 1) * 300 {
            device.write(&reading.to_string());
        }
    }
    for _ in 0..2 {
        for device in &mut devices {
            device.sync(&served);
        }
    }
    assert_eq!(devices[0].ids().len(), 1800);
    assert!(devices.iter().all(|device| device.ids() == devices[0].ids()));
    // the whole as lines of JSON, as the command would export it
    let lines = String::from_utf8(served.get("/api/revisions").body).unwrap();
    let mut lines = lines.lines();
    Header::read(lines.next().unwrap()).unwrap();
    let read: BTreeSet<RevisionId> = lines.map(|line| read_line(line).unwrap().id()).collect();
    assert_eq!(read, devices[0].ids());
    let end = served.get("/api/health").json()["end"]["at"].as_u64().unwrap();
    assert_eq!(end, 1800);
    let rest = served.get("/api/revisions?after=1795").body;
    assert_eq!(String::from_utf8(rest).unwrap().lines().count(), 6);
    // another program may write to the notebook beside the server
    let mut beside = Sqlite::open(&served.folder.path().join("desk.tautline")).unwrap();
    let made = Invented::device(9).revision(None, &[], "beside");
    beside.append(std::slice::from_ref(&made)).unwrap();
    devices[0].sync(&served);
    assert!(devices[0].ids().contains(&made.id()));
}

/// The laptop's notebook is set back to a backup between two syncs, and its address changes.
#[test]
fn what_the_desk_lost_comes_back_from_the_devices() {
    let served = Served::new(None);
    let (mut one, mut other) = (Device::new(1), Device::new(2));
    one.write("first");
    one.sync(&served);
    other.sync(&served);
    let notebook = served.folder.path().join("desk.tautline");
    let backup = tempfile::tempdir().unwrap();
    Sqlite::open(&notebook).unwrap().back_up(&backup.path().join("desk.tautline")).unwrap();
    one.write("second");
    one.sync(&served);
    other.write("third");
    other.sync(&served);
    drop(served);
    let served = Served::in_folder(backup, None);
    for _ in 0..2 {
        one.sync(&served);
        other.sync(&served);
    }
    let held = Sqlite::open(&served.folder.path().join("desk.tautline")).unwrap().len().unwrap();
    assert_eq!((one.ids().len(), other.ids() == one.ids(), held), (3, true, 3));
}

#[test]
fn the_port_of_the_first_time_is_taken_again() {
    let folder = tempfile::tempdir().unwrap();
    let setup = |port| Setup { notebook: folder.path().join("desk.tautline"), port, app: None };
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
    };
    assert!(matches!(Server::begin(&setup), Err(NotServed::NoApp(_))));
    assert!(!folder.path().join("desk.tautline").exists());
}
