//! `tautline plan` as a person uses it.

#![expect(clippy::unwrap_used, reason = "a test that can't call the command has failed")]

use std::process::{Command, Output};

fn tautline(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_tautline")).args(arguments).output().unwrap()
}

fn text(output: &Output) -> String {
    String::from_utf8(output.stdout.clone()).unwrap().replace('\u{a0}', " ")
}

fn folder(name: &str) -> std::path::PathBuf {
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).unwrap();
    folder
}

const BOUNDARY: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../../testdata/invented/boundary.geojson");

#[test]
fn lines_are_written_and_read_back_as_the_plan() {
    let folder = folder("plan-lines");
    let place = folder.to_str().unwrap();
    let call = [
        "plan",
        "lines",
        "--boundary",
        BOUNDARY,
        "--lines",
        "12",
        "--length",
        "50 m",
        "--date",
        "2026-06-01",
    ];
    let output = tautline(&[&call[..], &["--into", place]].concat());
    assert_eq!(output.status.code(), Some(0), "{}", String::from_utf8_lossy(&output.stderr));
    let printed = text(&output);
    assert!(printed.contains("10 of 10 placed") && printed.contains("east of true north"), "{printed}");
    assert!(printed.lines().all(|line| line.chars().count() <= 100), "{printed}");
    assert_eq!(printed, text(&tautline(&call)), "the same call draws the same lines");
    // one line of the plan is read; the other eleven are known to be missing
    let readings = folder.join("readings.csv");
    std::fs::write(&readings, "site,line,species,start (m),stop (m)\nInvented Flat,3,ATCA,10,20\n").unwrap();
    let cover = text(&tautline(&["cover", place, "--count", "ATCA"]));
    let row = cover.lines().find(|row| row.starts_with('3')).unwrap();
    assert!(row.contains("50 m") && row.contains("20.0 %"), "{cover}");
    let gpx = std::fs::read_to_string(folder.join("layout.gpx")).unwrap();
    assert_eq!(gpx.matches("<wpt ").count(), 2 * 18);
    assert!(gpx.contains("<name>R6 end</name>"), "the reserve is in it");
    let layout: serde_json::Value =
        serde_json::from_str(&std::fs::read_to_string(folder.join("layout.geojson")).unwrap()).unwrap();
    assert_eq!(layout["features"].as_array().unwrap().len(), 18);
}

/// Lines that stay are read from a layout that was written: nothing new comes nearer than asked.
#[test]
fn a_written_layout_is_read_as_lines_that_stay() {
    let folder = folder("plan-kept");
    let first =
        ["plan", "lines", "--boundary", BOUNDARY, "--lines", "8", "--length", "50 m", "--reserve", "0"];
    assert_eq!(
        tautline(&[&first[..], &["--into", folder.to_str().unwrap()]].concat()).status.code(),
        Some(0)
    );
    let read = |path: &std::path::Path| -> serde_json::Value {
        serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
    };
    let mut boundary = read(std::path::Path::new(BOUNDARY));
    let kept = read(&folder.join("layout.geojson"))["features"].as_array().unwrap().clone();
    boundary["features"].as_array_mut().unwrap().extend(kept);
    let both = folder.join("both.geojson");
    std::fs::write(&both, boundary.to_string()).unwrap();
    let again = tautline(&[
        "plan",
        "lines",
        "--boundary",
        both.to_str().unwrap(),
        "--lines",
        "8",
        "--length",
        "50 m",
        "--json",
    ]);
    let again: serde_json::Value = serde_json::from_slice(&again.stdout).unwrap();
    // with the same seed the points are the same, so that every line of before is in the way
    assert!(again["given_up_too_near"].as_u64().unwrap() >= 8);
}

#[test]
fn effort_from_a_pilot_and_from_foreseen_figures() {
    let folder = folder("plan-effort");
    let pilot = folder.join("pilot");
    assert_eq!(tautline(&["demo", pilot.to_str().unwrap()]).status.code(), Some(0));
    let goal = ["--goal", "at least 10 %", "--walk", "12", "--lay", "8", "--read", "0.6"];
    let site = ["plan", "effort", pilot.to_str().unwrap(), "--site", "Hollow Flat (invented)"];
    let output = tautline(&[&site[..], &goal[..]].concat());
    assert_eq!(output.status.code(), Some(0), "{}", String::from_utf8_lossy(&output.stderr));
    let printed = text(&output);
    assert!(printed.contains("verdict on at least 10 %") && printed.contains("cheapest"), "{printed}");
    assert!(printed.lines().all(|line| line.chars().count() <= 100), "{printed}");
    // Elzinga, Salzer and Willoughby 1998, appendix 7, from memory: 7.5 lines by the plain formula, 14 with assurance
    let foreseen = [
        "--cover",
        "25",
        "--spread",
        "7",
        "--half-width",
        "5",
        "--confidence",
        "95",
        "--power",
        "90",
        "--json",
    ];
    let output = tautline(&[&["plan", "effort"], &foreseen[..]].concat());
    let value: serde_json::Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!(value["format"], "tautline.plan-effort");
    assert_eq!(value["answers"][0]["lines"], 14);
}

#[test]
fn what_is_not_understood_is_said() {
    let status = |arguments: &[&str]| tautline(arguments).status.code();
    assert_eq!(status(&["plan", "effort"]), Some(2));
    assert_eq!(status(&["plan", "effort", "--cover", "20", "--spread", "5"]), Some(2));
    assert_eq!(
        status(&["plan", "effort", "--cover", "20", "--spread", "5", "--goal", "ATCA: at least 5 %"]),
        Some(2)
    );
    let lines =
        |more: &[&str]| status(&[&["plan", "lines", "--boundary", BOUNDARY, "--lines", "6"], more].concat());
    assert_eq!(lines(&["--length", "50"]), Some(2), "of what?");
    assert_eq!(lines(&["--length", "50 m", "--bearing", "uphill"]), Some(2));
    assert_eq!(lines(&["--length", "50 m", "--date", "2041-01-01"]), Some(2));
    assert_eq!(lines(&["--length", "3000 m"]), Some(3), "no room at all");
    assert_eq!(
        status(&["plan", "lines", "--boundary", "none.geojson", "--lines", "6", "--length", "50 m"]),
        Some(4)
    );
}
