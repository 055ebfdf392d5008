//! Who and what is out of sight: people who are forgotten, photos of them, a first reading while the second is blind.

use super::{Device, add_all, sheet, standing, visit};
use serde_json::{Value, json};
use tautline_engine::length::{Bare, Unit};
use tautline_survey::date::Date;
use tautline_survey::draft::Setup;
use tautline_survey::draft::blind::Withheld;
use tautline_survey::notebook::amend::{self};
use tautline_survey::notebook::forget::{Whom, forget};
use tautline_survey::notebook::hand::Draft;
use tautline_survey::notebook::payload::Payload;
use tautline_survey::photo::{Media, OfVisit, Photo, Shows, bytes_of};
use tautline_survey::record::{Added, Records};
use tautline_survey::revision::Revision;
use tautline_survey::visit::Visit;

#[test]
fn a_person_is_forgotten_and_ids_and_hashes_stay() {
    let (mut device, mut records) = (Device::new(1), Records::default());
    device.import(&mut records, &sheet("a", vec![visit("1", 7)]));
    let record = standing(&records)
        .standing
        .values()
        .find(|one| one.payload.kind() == "visit")
        .unwrap()
        .revision
        .record();
    let own: Vec<Revision> = records.of(record).into_iter().cloned().collect();
    let without = |mut payload: Value| {
        payload["reader"] = json!("a former reader");
        Some(payload)
    };
    let (draft, blank) = amend::erase(&own.iter().collect::<Vec<_>>(), without).unwrap();
    add_all(&mut records, device.write("erase", vec![draft]));
    for revision in own.iter().filter(|revision| blank.contains(&revision.id())) {
        assert_eq!(records.add(revision.erased()), Added::Erased);
        // an old copy brings nothing back
        assert_eq!(records.add(revision.clone()), Added::Known);
    }
    let after = records.of(record);
    assert_eq!(after.iter().filter(|revision| revision.is_erased()).count(), 1);
    assert!(
        after.iter().any(|revision| revision.sha256() == own[0].sha256() && revision.id() == own[0].id())
    );
    assert_eq!(standing(&records).input().0.visits[0].reader, "a former reader");
    assert!(
        !after.iter().any(|revision| revision.content_text().is_some_and(|text| text.contains("reader A")))
    );
}

fn photo(line: &str, shows: Shows, bytes: &[u8]) -> Photo {
    Photo {
        site: "Invented Flat".into(),
        line: line.into(),
        shows,
        date: tautline_survey::date::Date::read("2026-06-09"),
        time: "14:03:22".into(),
        place: None,
        bearing: None,
        caption: String::new(),
        people: Vec::new(),
        visit: None,
        width: 4,
        height: 3,
        media: Media::Jpeg,
        bytes: bytes.len() as u64,
        sha256: tautline_survey::canonical::sha256_hex(bytes),
    }
}

/// A photo stands beside what was read and moves none of it; forgotten, nothing names its bytes any more.
#[test]
fn photos_stand_in_order_and_one_that_shows_a_person_goes_with_them() {
    let (mut device, mut records) = (Device::new(1), Records::default());
    device.import(&mut records, &sheet("a", vec![visit("1", 7)]));
    let before = standing(&records).input().0.fingerprint();
    let seen = Photo { people: vec!["reader A".into()], ..photo("1", Shows::Visit, b"seen") };
    // their name stands on the paper, so another name beside it would not take it off
    let own = OfVisit { reader: "reader A".into(), ..OfVisit::default() };
    let written = Photo { visit: Some(own), ..photo("1", Shows::Sheet, b"paper") };
    let all =
        [photo("10", Shows::Start, b"a"), seen.clone(), written.clone(), photo("1", Shows::Start, b"b")];
    let drafts = all.map(|one| Draft::beginning(&Payload::Photo(Box::new(one)))).to_vec();
    add_all(&mut records, device.write("photo", drafts));
    let current = standing(&records);
    assert_eq!(current.input().0.fingerprint(), before);
    let order: Vec<(&str, Shows)> =
        current.photos().iter().map(|one| (one.line.as_str(), one.shows)).collect();
    let sheet = ("1", Shows::Sheet);
    assert_eq!(order, [("1", Shows::Start), ("1", Shows::Visit), sheet, ("10", Shows::Start)]);
    let forgotten = forget(&records, &Whom::Person("reader A".into()), "a former reader");
    add_all(&mut records, device.write("erase", forgotten.drafts));
    add_all(&mut records, forgotten.blank);
    assert_eq!(standing(&records).photos().len(), 2);
    let gone = [seen.sha256, written.sha256];
    assert!(records.revisions().filter_map(bytes_of).all(|sha256| !gone.contains(&sha256)));
    assert_eq!(standing(&records).input().0.visits[0].reader, "a former reader");
}

/// While a line is read blind nothing of the first reading stands, whoever wrote it and by which file it came; other lines, other
/// years and the reader's own sheet stay in sight; and whoever closes it has everything back as it was.
#[test]
fn a_line_that_is_read_blind_has_no_first_reading_in_sight() {
    let (mut device, mut records) = (Device::new(1), Records::default());
    let older = Visit { date: Date::new(2025, 6, 9), ..visit("1", 9) };
    let undated = Visit { date: None, ..visit("1", 8) };
    device.import(&mut records, &sheet("a", vec![visit("1", 7), visit("2", 7), older, undated]));
    let paper = |reader: &str, bytes: &[u8]| Photo {
        visit: Some(OfVisit { date: Date::new(2026, 6, 9), reader: reader.into(), recorder: String::new() }),
        ..photo("1", Shows::Sheet, bytes)
    };
    let photos = [paper("reader A", b"first"), paper("reader B", b"own"), photo("1", Shows::Start, b"view")];
    let drafts = photos.map(|one| Draft::beginning(&Payload::Photo(Box::new(one)))).to_vec();
    add_all(&mut records, device.write("photo", drafts));
    let first = Setup {
        site: "Invented Flat".into(),
        line: "1".into(),
        length: None,
        unit: Bare::Unit(Unit::Foot),
        comma: false,
        protocol: String::new(),
        reader: "reader A".into(),
        recorder: "reader B".into(),
        date: Date::new(2026, 6, 9),
        pass: String::new(),
        blind: false,
    };
    let second = first.second("reader B", "");
    assert!(second.hides_draft(&first) && !first.hides_draft(&second) && !second.hides_draft(&second));
    let whole = standing(&records);
    let mut current = whole.clone();
    // a set-up that isn't blind takes nothing out
    let nothing = Withheld::take(&mut current, vec![first]);
    assert!(nothing.lines().is_empty() && nothing.mark().is_empty() && current.standing == whole.standing);
    let withheld = Withheld::take(&mut current, vec![second]);
    let seen: Vec<(String, Option<Date>)> =
        current.input().0.visits.into_iter().map(|visit| (visit.line, visit.date)).collect();
    let kept = [("1".to_owned(), Date::new(2025, 6, 9)), ("2".to_owned(), Date::new(2026, 6, 9))];
    assert_eq!(seen, kept);
    let in_sight: Vec<&str> = current.photos().iter().map(|photo| photo.sha256.as_str()).collect();
    let hash = |bytes: &[u8]| tautline_survey::canonical::sha256_hex(bytes);
    assert_eq!(in_sight, [hash(b"view"), hash(b"own")]);
    assert_eq!(withheld.lines(), [("Invented Flat", "1")]);
    let key = Payload::Visit(Box::new(visit("1", 7))).key();
    assert!(!current.standing.contains_key(&key) && withheld.record(&key).is_some());
    withheld.give_back(&mut current);
    assert_eq!(current.standing, whole.standing);
}
