//! The server killed while twenty devices sync fifty readings each: what any device heard is kept is there once, every
//! chain of revisions is whole, and when the server is back all the rest comes in.
//!
//! `TAUTLINE_KILLS` says how often (10 without it; `./test --long` asks for 200). The readings are invented, and every
//! other device's clock runs backwards.

#![cfg(all(unix, feature = "serve"))]
#![expect(clippy::unwrap_used, reason = "a test that can't call the command has failed")]

use std::collections::BTreeMap;
use std::io::{BufRead as _, BufReader};
use std::net::SocketAddr;
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};
use tautline_server::trial::Device;
use tautline_store::{Cursor, Keep as _, Sqlite};
use tautline_survey::record::{Records, heads, missing_parents};
use tautline_survey::revision::{Revision, RevisionId};

const DEVICES: u8 = 20;
const READINGS: u32 = 50;

fn serve(folder: &Path) -> (Child, SocketAddr) {
    let mut child = Command::new(env!("CARGO_BIN_EXE_tautline"))
        .current_dir(folder)
        .args(["serve", "--port", "0", "--notebook", "n.tautline"])
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    let mut first = String::new();
    BufReader::new(child.stdout.take().unwrap()).read_line(&mut first).unwrap();
    let address = first.split("http://").nth(1).and_then(|rest| rest.split('/').next()).unwrap();
    (child, address.parse().unwrap())
}

/// Each device reads a line after another, ten readings long, and syncs after each reading; once nobody answers, it
/// reads on and syncs the next day.
fn day(devices: Vec<Device>, to: SocketAddr) -> Vec<Device> {
    let walking = devices.into_iter().enumerate().map(|(number, mut device)| {
        std::thread::spawn(move || {
            let mut there = true;
            for reading in 0..READINGS {
                device.hand.second =
                    if number % 2 == 0 { 20_000 + reading } else { 80_000_u32.saturating_sub(reading * 700) };
                let text = format!("device {number}, reading {reading}");
                if reading % 10 == 0 { device.begin(&text) } else { device.follow(&text) }.unwrap();
                there = there && device.exchange(to).is_ok();
            }
            device
        })
    });
    let walking: Vec<_> = walking.collect();
    walking.into_iter().map(|one| one.join().unwrap()).collect()
}

/// Everything in the notebook, each revision once; every chain must be whole.
fn kept(folder: &Path) -> BTreeMap<RevisionId, Revision> {
    let keep = Sqlite::open(&folder.join("n.tautline")).unwrap();
    let (mut records, mut found) = (Records::default(), BTreeMap::new());
    for revision in keep.since(Cursor::START, usize::MAX).unwrap().0 {
        assert!(revision.content_is_whole());
        records.add(revision.clone());
        assert!(found.insert(revision.id(), revision).is_none(), "a revision is there twice");
    }
    for head in records.heads() {
        let own = records.of(head.record());
        assert!(missing_parents(&own).is_empty());
        assert_eq!(heads(&own).len(), 1);
    }
    found
}

#[test]
fn what_a_device_heard_is_kept_is_there_once() {
    let kills: u32 = std::env::var("TAUTLINE_KILLS").ok().and_then(|text| text.parse().ok()).unwrap_or(10);
    let mut cut_short = 0;
    for first in (0..kills).step_by(10) {
        cut_short += ten_kills(first);
    }
    assert!(cut_short > 0, "no day was cut short, so nothing was tried");
}

/// Kills ten servers of one notebook and looks through it after each; gives back how many days were cut short.
fn ten_kills(first: u32) -> u32 {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path();
    // how long a day takes here, so that the kills fall all over one
    let (mut child, address) = serve(at);
    let begun = Instant::now();
    let mut everybody = day((0..DEVICES).map(Device::new).collect(), address);
    let whole = begun.elapsed().min(Duration::from_secs(20));
    child.kill().unwrap();
    child.wait().unwrap();
    assert_eq!(kept(at).len(), usize::from(DEVICES) * READINGS as usize);
    let mut cut_short = 0;
    for number in 1..=10_u32 {
        let (mut child, address) = serve(at);
        let walking = std::thread::spawn(move || day(everybody, address));
        // multiples of the golden ratio spread evenly, whatever their number
        let share = (first + number) * 618 % 1000;
        std::thread::sleep(whole * share / 1000);
        child.kill().unwrap();
        child.wait().unwrap();
        everybody = walking.join().unwrap();
        let found = kept(at);
        for device in &everybody {
            for revision in device.acknowledged().unwrap() {
                assert_eq!(found.get(&revision.id()), Some(&revision), "a reading was lost");
            }
        }
        cut_short += u32::from(everybody.iter().any(|device| device.waiting().unwrap() > 0));
    }
    // the server is back for good: all that was read comes in, once, and whoever asks gets all of it
    let (mut child, address) = serve(at);
    for device in &mut everybody {
        while device.waiting().unwrap() > 0 {
            device.exchange(address).unwrap();
        }
    }
    let mut fresh = Device::new(255);
    fresh.sync(address).unwrap();
    child.kill().unwrap();
    child.wait().unwrap();
    let found = kept(at);
    assert_eq!(found.len(), 11 * usize::from(DEVICES) * READINGS as usize);
    assert_eq!(fresh.keep.records().revisions().count(), found.len());
    for device in &everybody {
        for entry in device.keep.log(Cursor::START, usize::MAX).unwrap() {
            assert_eq!(found.get(&entry.revision.id()), Some(&entry.revision));
        }
    }
    cut_short
}
