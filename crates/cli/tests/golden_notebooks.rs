//! Notebooks of every version open and say the same, for ever. Site, people and readings are invented.

#![expect(clippy::unwrap_used, reason = "a test that can't call the command has failed")]

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::process::Command;
use tautline_store::SCHEMA_VERSION;
use tautline_survey::revision::VERSION;

fn kept() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../testdata/notebooks")
}

fn said(folder: &Path, arguments: &[&str]) -> String {
    let output =
        Command::new(env!("CARGO_BIN_EXE_tautline")).current_dir(folder).args(arguments).output().unwrap();
    String::from_utf8_lossy(&output.stdout).replace('\u{a0}', " ")
}

/// What every one of them must say: 12 in minus 18 in is 6 in, and 30 in of a tape of 65 ft, 780 in; of the third line
/// two versions stand side by side.
fn look_through(folder: &Path) {
    let cover = said(folder, &["cover", "--csv", "--notebook", "n.tautline"]);
    let line = |number: &str| {
        let row = format!("Invented Flat,{number},2026-06-09,Invented A,,,");
        cover
            .lines()
            .find(|line| line.starts_with(&row))
            .map(|line| line.rsplit(',').next().unwrap_or_default().parse::<f64>().unwrap())
    };
    assert!((line("1").unwrap() - 6.0 / 780.0).abs() < 1e-15);
    assert!((line("2").unwrap() - 30.0 / 780.0).abs() < 1e-15);
    assert_eq!(line("3"), None);
    let settle = said(folder, &["settle", "--notebook", "n.tautline"]);
    assert!(settle.contains("270 in") && settle.contains("275 in"), "{settle}");
    let history = said(folder, &["history", "--notebook", "n.tautline", "--line", "1"]);
    assert!(history.contains("misread") && history.contains("blanked"), "{history}");
    let lines: BTreeSet<String> =
        said(folder, &["export", "--full", "--notebook", "n.tautline"]).lines().map(str::to_owned).collect();
    let golden = std::fs::read_to_string(kept().join("v1.jsonl")).unwrap();
    assert_eq!(lines, golden.lines().map(str::to_owned).collect::<BTreeSet<_>>());
}

#[test]
fn a_notebook_of_every_version_opens_and_says_the_same() {
    for version in 1..=SCHEMA_VERSION {
        let folder = tempfile::tempdir().unwrap();
        let golden = kept().join(format!("v{version}.tautline"));
        assert!(golden.is_file(), "{} is missing: every version keeps one", golden.display());
        std::fs::copy(golden, folder.path().join("n.tautline")).unwrap();
        look_through(folder.path());
    }
}

#[test]
fn lines_of_json_of_every_version_come_in() {
    for version in 1..=VERSION {
        let folder = tempfile::tempdir().unwrap();
        let golden = kept().join(format!("v{version}.jsonl"));
        assert!(golden.is_file(), "{} is missing: every version keeps one", golden.display());
        said(folder.path(), &["import", &golden.display().to_string(), "--notebook", "n.tautline"]);
        look_through(folder.path());
    }
}
