//! The command killed in mid-import: what it acknowledged is there once, what it didn't is there whole or not at all,
//! and every chain of revisions is whole.
//!
//! `TAUTLINE_KILLS` says how often (10 without it; `./test --long` asks for 200). The readings are invented.

#![cfg(unix)]
#![expect(clippy::unwrap_used, reason = "a test that can't call the command has failed")]

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};
use tautline_store::{Cursor, Keep, Sqlite};
use tautline_survey::notebook::current::Current;
use tautline_survey::record::{Records, heads, missing_parents};

/// Lines that each import brings, beside one that every import changes.
const LINES: usize = 150;

fn sheet(folder: &Path, number: usize) -> String {
    let mut text = String::from("site,line,line length,date,reader,species,start (in),stop (in)\n");
    writeln!(text, "Invented,shared,65 ft,2026-06-09,reader A,ATCA,1,{}", number + 2).unwrap();
    for line in 0..LINES {
        // no two lines alike, or the checks would ask whether a sheet was entered twice
        let own = number * LINES + line;
        for plant in 0..2 {
            let (start, hundredths) = (plant * 390 + own / 100, own % 100);
            let stop = start + 12;
            writeln!(
                text,
                "Invented {number},{line},65 ft,2026-06-09,reader A,ATCA,{start}.{hundredths:02},{stop}.{hundredths:02}"
            )
            .unwrap();
        }
    }
    let name = format!("{number}.csv");
    std::fs::write(folder.join(&name), text).unwrap();
    name
}

fn begin(folder: &Path, name: &str) -> Child {
    Command::new(env!("CARGO_BIN_EXE_tautline"))
        .current_dir(folder)
        .args(["import", name, "--notebook", "n.tautline"])
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .unwrap()
}

/// Whether the import told its person that the readings are safe, now or since before.
fn is_acknowledged(child: Child) -> bool {
    let output = child.wait_with_output().unwrap().stdout;
    let said = String::from_utf8_lossy(&output);
    said.contains("Written to") || said.contains("nothing was added")
}

/// Visits by site; every chain must be whole.
fn visits(folder: &Path) -> BTreeMap<String, usize> {
    let keep = Sqlite::open(&folder.join("n.tautline")).unwrap();
    let mut records = Records::default();
    for revision in keep.since(Cursor::START, usize::MAX).unwrap().0 {
        assert!(revision.content_is_whole());
        records.add(revision);
    }
    for head in records.heads() {
        let own = records.of(head.record());
        assert!(missing_parents(&own).is_empty());
        assert_eq!(heads(&own).len(), 1);
    }
    let current = Current::of(keep.heads().unwrap());
    assert!(current.findings().is_empty());
    let mut found = BTreeMap::new();
    for visit in current.input().0.visits {
        *found.entry(visit.site).or_default() += 1;
    }
    found
}

#[test]
fn what_was_acknowledged_is_there_once() {
    let kills: usize = std::env::var("TAUTLINE_KILLS").ok().and_then(|text| text.parse().ok()).unwrap_or(10);
    // a fresh notebook for every ten, so that looking through them stays quick
    let mut cut_short = 0;
    for first in (0..kills).step_by(10) {
        cut_short += ten_kills(first);
    }
    assert!(cut_short > 0, "no import was cut short, so nothing was tried");
}

/// Kills ten imports into one notebook and looks through it after each; gives back how many were cut short.
fn ten_kills(first: usize) -> usize {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path();
    // how long an import takes here, so that the kills fall all over one
    let begun = Instant::now();
    assert!(is_acknowledged(begin(at, &sheet(at, 0))));
    let whole = begun.elapsed();
    let (mut acknowledged, mut cut_short) = (vec![0], 0);
    for number in 1..=10 {
        let name = sheet(at, number);
        let mut child = begin(at, &name);
        // multiples of the golden ratio spread evenly, whatever their number
        let share = u32::try_from((first + number) * 618 % 1000).unwrap() * 11 / 10;
        std::thread::sleep(whole.min(Duration::from_secs(10)) * share / 1000);
        child.kill().unwrap();
        if is_acknowledged(child) {
            acknowledged.push(number);
        } else {
            cut_short += 1;
        }
        let found = visits(at);
        for earlier in 0..=number {
            let own = found.get(&format!("Invented {earlier}")).copied().unwrap_or(0);
            assert!(own == LINES || own == 0, "import {earlier} is there in part: {own}");
            assert!(own == LINES || !acknowledged.contains(&earlier), "import {earlier} was lost");
        }
    }
    // each import once more: what is there adds nothing, the rest comes in, and each visit stands once
    for number in 0..=10 {
        assert!(is_acknowledged(begin(at, &format!("{number}.csv"))));
    }
    let found = visits(at);
    assert!((0..=10).all(|number| found[&format!("Invented {number}")] == LINES));
    assert_eq!(found["Invented"], 1);
    cut_short
}
