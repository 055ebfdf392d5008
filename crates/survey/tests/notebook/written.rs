//! Revisions as lines of text: hashes, newer versions, unknown fields, whole numbers alone.

use super::{Device, add_all, sheet, standing, visit};
use serde_json::{Value, json};
use std::collections::BTreeSet;
use tautline_engine::length::DecimalMark;
use tautline_survey::finding::{Place, Weight};
use tautline_survey::measure::Measure;
use tautline_survey::notebook::current::Current;
use tautline_survey::notebook::gather::gather;
use tautline_survey::notebook::hand::Draft;
use tautline_survey::record::Records;
use tautline_survey::revision::{self, Content, Header, Kind, LineError, RevisionError, Stamp};
use tautline_survey::visit::Outcome;

/// Blanked contents can't be guessed at: equal records have unequal hashes.
#[test]
fn equal_records_have_unequal_hashes() {
    let mut device = Device::new(1);
    let draft = || Draft {
        record: None,
        parents: BTreeSet::new(),
        kind: Kind("invented".into()),
        version: 1,
        payload: Some(json!("the same")),
    };
    let made = device.write("invent", vec![draft(), draft()]);
    assert_ne!(made[0].head().content_sha256, made[1].head().content_sha256);
}

#[test]
fn what_a_newer_version_wrote_is_kept_unread() {
    let (mut device, mut records) = (Device::new(1), Records::default());
    device.import(&mut records, &sheet("a", vec![visit("1", 7)]));
    let mut newer = Draft {
        record: None,
        parents: BTreeSet::new(),
        kind: Kind("weather".into()),
        version: 1,
        payload: Some(json!({ "of": "line 1" })),
    };
    let weather = newer.clone();
    newer.kind = Kind("visit".into());
    newer.version = 99;
    add_all(&mut records, device.write("invent", vec![weather, newer]));
    let current = standing(&records);
    assert_eq!(current.newer.values().sum::<usize>(), 2);
    let (input, _) = current.input();
    assert_eq!(input.visits.len(), 1);
    assert!(input.findings.iter().all(|finding| finding.weight == Weight::Note));
}

/// A field that only a newer version knows survives a correction by this one.
#[test]
fn unknown_fields_survive_a_correction() {
    let (mut device, mut records) = (Device::new(1), Records::default());
    let mut payload = serde_json::to_value(visit("1", 7)).unwrap();
    payload["drone_height"] = json!(12);
    let draft = Draft {
        record: None,
        parents: BTreeSet::new(),
        kind: Kind("visit".into()),
        version: 1,
        payload: Some(payload),
    };
    add_all(&mut records, device.write("invent", vec![draft]));
    device.import(&mut records, &sheet("b", vec![visit("1", 8)]));
    let head =
        standing(&records).standing.into_values().find(|one| one.payload.kind() == "visit").unwrap().revision;
    let content: Content<Value> = head.content().unwrap();
    assert_eq!(content.payload.unwrap()["drone_height"], 12);
    assert_eq!(head.head().parents.len(), 1);
}

#[test]
fn records_hold_no_floats() {
    let mut device = Device::new(1);
    let whole = device.write("invent", vec![]);
    assert!(whole.is_empty());
    let head = r#"{"action":{"id":"00000000-0000-7000-8000-000000000001","what":"invent"},"content_sha256":"","counter":1,"device":"00000000-0000-7000-8000-000000000001","id":"00000000-0000-7000-8000-000000000001","kind":"invented","parents":[],"record":"00000000-0000-7000-8000-000000000001","time":{"offset_minutes":0,"utc":"2026-06-09T20:03:07Z"},"version":1}"#;
    let line = format!(
        r#"{{"content":{{"author":"","device":"","salt":"","payload":1.5}},"revision":{head},"sha256":""}}"#
    );
    assert_eq!(revision::read_line(&line), Err(LineError::Revision(RevisionError::NotWhole)));
}

#[test]
fn the_first_line_names_format_and_version() {
    assert!(Header::read(&revision::header()).is_ok());
    assert_eq!(Header::read(r#"{"format":"tautline.notebook","version":2}"#), Err(LineError::Newer(2)));
    assert_eq!(Header::read(r#"{"format":"tautline.cover","version":1}"#), Err(LineError::NotANotebook));
    assert_eq!(Header::read("site,line"), Err(LineError::NotANotebook));
}

#[test]
fn a_visit_that_contradicts_itself_is_left_out_and_named() {
    use tautline_survey::finding::Finding;
    use tautline_survey::message::Message;
    let mut contradictory = visit("1", 7);
    contradictory.place = Some(Place { file: "sheet.csv".into(), row: 2, column: None, character: None });
    contradictory.outcome = Outcome::NotRead;
    let mut input = sheet("a", vec![contradictory.clone(), visit("2", 9)]);
    let message = Message::new("not-read-but-readings").with("site", "Invented Flat").with("line", "1");
    input.findings.push(Finding::must_settle(message).at(contradictory.place.clone().unwrap()));
    let gathered = gather(&Current::default(), &input, &[]);
    assert_eq!(gathered.tally["visit"].new, 1);
    assert_eq!(gathered.findings[0].message.code, "import-left-out");
}

#[test]
fn times_are_times() {
    for (text, good) in [
        ("2026-06-09T20:03:07Z", true),
        ("2026-06-09T20:03:07.123456Z", true),
        ("2026-06-31T20:03:07Z", false),
        ("2026-06-09T24:00:00Z", false),
        ("2026-06-09T20:03:07", false),
        ("2026-06-09T20:03Z", false),
        ("2026-06-09T2é:03:07Z", false),
    ] {
        assert_eq!(Stamp::new(text, 0).is_some(), good, "{text}");
    }
    assert!(Measure::read("3 ft", None, DecimalMark::Point).is_ok());
}
