//! Imports, corrections that meet, and what is undone.

use super::{Device, add_all, sheet, standing, visit};
use tautline_survey::finding::Weight;
use tautline_survey::input::Input;
use tautline_survey::notebook::amend::{self, NotAmended};
use tautline_survey::place::{Openness, Site};
use tautline_survey::record::{Records, missing_parents};
use tautline_survey::revision::{Content, Revision};
use tautline_survey::visit::Visit;

#[test]
fn the_same_file_twice_adds_nothing_and_a_change_follows_what_stood() {
    let (mut device, mut records) = (Device::new(1), Records::default());
    assert_eq!(device.import(&mut records, &sheet("a", vec![visit("1", 7), visit("2", 9)])), 4);
    assert_eq!(device.import(&mut records, &sheet("a", vec![visit("1", 7), visit("2", 9)])), 0);
    // another file with the same readings in other rows says nothing new
    let mut moved = visit("1", 7);
    moved.intercepts[0].place = None;
    assert_eq!(device.import(&mut records, &sheet("b", vec![moved])), 0);
    // one visit changed: the import itself, and the visit with its parent
    assert_eq!(device.import(&mut records, &sheet("c", vec![visit("1", 8), visit("2", 9)])), 2);
    let changed: Vec<&Revision> =
        records.revisions().filter(|revision| !revision.head().parents.is_empty()).collect();
    assert_eq!(changed.len(), 1);
    let (input, _) = standing(&records).input();
    assert_eq!(input.visits, [visit("1", 8), visit("2", 9)]);
    assert_eq!(input.plan.len(), 1);
    assert!(input.findings.is_empty());
}

#[test]
fn two_corrections_are_used_neither_way_until_settled() {
    let (mut here, mut records) = (Device::new(1), Records::default());
    here.import(&mut records, &sheet("a", vec![visit("1", 7), visit("2", 9)]));
    let (mut there, mut other) = (Device::new(2), records.clone());
    here.import(&mut records, &sheet("b", vec![visit("1", 8)]));
    there.import(&mut other, &sheet("c", vec![visit("1", 10)]));
    records.union(&other);
    let current = standing(&records);
    let (input, _) = current.input();
    assert_eq!(input.visits, [visit("2", 9)]);
    assert_eq!(input.findings.iter().map(|one| one.weight).collect::<Vec<_>>(), [Weight::MustSettle]);
    // files don't settle it by the way
    assert_eq!(here.import(&mut records, &sheet("d", vec![visit("1", 8)])), 0);
    let conflict = &current.conflicts[0];
    assert_eq!(conflict.versions.len(), 2);
    let made = here.write("settle", amend::settle(conflict, &conflict.versions[1]).unwrap());
    assert_eq!(made[0].head().parents, conflict.versions.iter().map(Revision::id).collect());
    add_all(&mut records, made);
    let (input, _) = standing(&records).input();
    let chosen: Content<Visit> = conflict.versions[1].content().unwrap();
    assert_eq!(input.visits[0], chosen.payload.unwrap());
    assert!(input.findings.is_empty());
}

/// Two say unlike things of how much of a site's places is told: until somebody settles it, nothing is.
#[test]
fn a_site_that_is_disputed_is_kept_back() {
    let set = |places| {
        let site = Site { site: "Invented Flat".into(), places: Some(places), ..Site::default() };
        Input { sites: vec![site], ..sheet("a", vec![visit("1", 7)]) }
    };
    let told = |records: &Records| standing(records).input().0.openness("Invented Flat");
    let (mut here, mut records) = (Device::new(1), Records::default());
    here.import(&mut records, &set(Openness::Blurred(5)));
    assert_eq!(told(&records), Openness::Blurred(5));
    let (mut there, mut other) = (Device::new(2), records.clone());
    here.import(&mut records, &set(Openness::Exact));
    there.import(&mut other, &set(Openness::Blurred(10)));
    assert_eq!(told(&records), Openness::Exact);
    records.union(&other);
    assert_eq!(told(&records), Openness::Withheld);
    let conflict = &standing(&records).conflicts[0];
    add_all(&mut records, here.write("settle", amend::settle(conflict, &conflict.versions[0]).unwrap()));
    assert_ne!(told(&records), Openness::Withheld);
}

#[test]
fn equal_corrections_are_no_conflict() {
    let (mut here, mut records) = (Device::new(1), Records::default());
    here.import(&mut records, &sheet("a", vec![visit("1", 7)]));
    let (mut there, mut other) = (Device::new(2), records.clone());
    here.import(&mut records, &sheet("b", vec![visit("1", 8)]));
    there.import(&mut other, &sheet("c", vec![visit("1", 8)]));
    records.union(&other);
    let current = standing(&records);
    assert!(current.conflicts.is_empty());
    assert_eq!(current.input().0.visits, [visit("1", 8)]);
    // a change on top of both follows both
    here.import(&mut records, &sheet("d", vec![visit("1", 9)]));
    let current = standing(&records);
    assert!(current.conflicts.is_empty());
    assert_eq!(current.input().0.visits, [visit("1", 9)]);
}

/// Two devices that never met import the same sheet: one visit, not two; and if they read it unlike, a conflict.
#[test]
fn one_visit_under_two_records_is_one_visit() {
    let (mut here, mut there) = (Device::new(1), Device::new(2));
    let (mut records, mut other) = (Records::default(), Records::default());
    here.import(&mut records, &sheet("a", vec![visit("1", 7), visit("2", 9)]));
    there.import(&mut other, &sheet("a", vec![visit("1", 7), visit("2", 11)]));
    records.union(&other);
    let current = standing(&records);
    assert_eq!(current.input().0.visits, [visit("1", 7)]);
    assert_eq!(current.conflicts.len(), 1);
    let conflict = &current.conflicts[0];
    let made = here.write("settle", amend::settle(conflict, &conflict.versions[0]).unwrap());
    assert_eq!(made.len(), 2, "the other record is taken back");
    add_all(&mut records, made);
    assert!(standing(&records).conflicts.is_empty());
    assert_eq!(standing(&records).input().0.visits.len(), 2);
    // a change to what stands twice leaves one of the two
    here.import(&mut records, &sheet("b", vec![visit("1", 8)]));
    assert_eq!(standing(&records).input().0.visits[0], visit("1", 8));
    assert!(standing(&records).conflicts.is_empty());
}

#[test]
fn an_import_is_undone_as_one_and_an_earlier_revision_restored() {
    let (mut device, mut records) = (Device::new(1), Records::default());
    device.import(&mut records, &sheet("a", vec![visit("1", 7)]));
    device.import(&mut records, &sheet("b", vec![visit("1", 8), visit("2", 9)]));
    let changed = records.revisions().find(|revision| !revision.head().parents.is_empty()).unwrap().clone();
    let action = changed.head().action.id;
    let taken = amend::take_back(&records, action);
    // two visits and the import itself
    assert_eq!((taken.drafts.len(), taken.records, taken.left), (3, 2, 0));
    add_all(&mut records, device.write("undo", taken.drafts));
    assert_eq!(standing(&records).input().0.visits, [visit("1", 7)]);
    // undone once, there is nothing left to undo
    let again = amend::take_back(&records, action);
    assert_eq!((again.drafts.len(), again.records, again.left), (0, 0, 3));
    let own = records.of(changed.record());
    let draft = amend::restore(&own, &changed).unwrap();
    add_all(&mut records, device.write("restore", vec![draft]));
    assert_eq!(standing(&records).input().0.visits, [visit("1", 8)]);
    let own = records.of(changed.record());
    assert_eq!(amend::restore(&own, &changed), Err(NotAmended::AlreadyStands));
    assert_eq!(own.len(), 4);
    assert!(missing_parents(&own).is_empty());
}
