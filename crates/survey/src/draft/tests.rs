//! Keys, undone and replayed, on invented lines.

use super::desk::{Stroke, meaning};
use super::search::{recent, search};
use super::twice::{Differs, side_by_side};
use super::*;
use crate::check::kind;
use crate::measure::Measure;
use crate::plan::PlannedLine;
use crate::plants::{GrowthForm, Plant, PlantList};
use crate::protocol::{Bridge, Gap, Protocol};
use crate::visit::{Outcome, State};
use proptest::prelude::*;
use tautline_engine::length::{Bare, DecimalMark, Unit};

pub(super) fn setup(unit: Bare, tape: &str) -> Setup {
    Setup {
        site: "Hollow Flat".into(),
        line: "1".into(),
        length: Some(Measure::read(tape, None, DecimalMark::Point).unwrap()),
        unit,
        comma: false,
        protocol: "p".into(),
        reader: "Reader A".into(),
        recorder: "Reader B".into(),
        date: None,
        pass: String::new(),
        blind: false,
    }
}

fn inches() -> LineDraft {
    LineDraft::new(setup(Bare::Unit(Unit::Inch), "65 ft"))
}

fn plants() -> PlantList {
    let plant =
        |code: &str, common: &str| Plant { common: common.into(), ..Plant::new(code, GrowthForm::Shrub) };
    PlantList { plants: vec![plant("ATCA2", "fourwing saltbush"), plant("KRLA2", "winterfat")] }
}

/// Types a sheet's row on the pad: the species, start and stop.
fn read(draft: &mut LineDraft, species: &str, edges: &[&str]) {
    assert!(draft.press(Key::Species(species.into())));
    for edge in edges {
        number(draft, edge);
        assert!(draft.press(Key::Done), "{edge}");
    }
}

fn number(draft: &mut LineDraft, text: &str) {
    for c in text.chars() {
        let key = match c {
            '.' => Key::Mark,
            c => c.to_digit(10).map_or(Key::Letter(c), |digit| Key::Digit(u8::try_from(digit).unwrap())),
        };
        assert!(draft.press(key), "{c} of {text}");
    }
}

fn rules<'a>(protocol: &'a Protocol, plants: &'a PlantList) -> Rules<'a> {
    Rules { protocol: Some(protocol), plants, planned: None }
}

fn two_and_a_half() -> Protocol {
    let inch = |text| Measure::read(text, Some(Bare::Unit(Unit::Inch)), DecimalMark::Point).ok();
    let gap = Gap { limit: inch("2.5"), equal: Some(Bridge::Breaks), ..Gap::default() };
    Protocol { gap, finest_division: inch("1/2"), ..Protocol::default() }
}

/// What is said, as kinds with the rows they are said of.
fn said(draft: &LineDraft) -> Vec<(&'static str, u32)> {
    let (protocol, plants) = (two_and_a_half(), plants());
    remarks(draft, rules(&protocol, &plants)).iter().map(|one| (one.kind, one.row)).collect()
}

#[test]
fn a_recent_species_takes_its_digits_and_three_taps() {
    let mut draft = inches();
    read(&mut draft, "ATCA2", &["12", "40"]);
    let before = draft.keys().len();
    read(&mut draft, "ATCA2", &["101", "118"]);
    assert_eq!(draft.keys().len() - before, "101118".len() + 3);
}

/// Types at a keyboard as a person would, and counts the strokes.
fn strokes(draft: &mut LineDraft, text: &str, list: &PlantList) -> usize {
    let mut count = 0;
    for c in text.chars() {
        let stroke = if c == '\n' { Stroke::Enter } else { Stroke::Character(c) };
        let recent = recent(draft.sheet(), &[]);
        let found =
            search(&draft.sheet().entry.letters, list, &recent).first().map(|plant| plant.code.clone());
        let key = meaning(draft, stroke, found.as_deref()).unwrap_or_else(|| panic!("{c:?} of {text:?}"));
        assert!(draft.press(key), "{c:?} of {text:?}");
        count += 1;
    }
    count
}

#[test]
fn twelve_intercepts_at_a_keyboard_take_fewer_than_sixty_keys_beyond_their_digits() {
    // the species change at every row, which is the worst there is
    let rows: Vec<String> = (0..12)
        .map(|n| format!("{}\n{}-{}\n", if n % 2 == 0 { 'a' } else { 'w' }, 60 * n, 60 * n + 25))
        .collect();
    let typed = rows.concat();
    let mut draft = inches();
    let all = strokes(&mut draft, &typed, &plants());
    let digits = typed.chars().filter(char::is_ascii_digit).count();
    assert!(all - digits < 60, "{}", all - digits);
    let species: Vec<&str> = draft.sheet().rows.iter().map(|row| row.species.as_str()).collect();
    assert_eq!(species[..3], ["ATCA2", "KRLA2", "ATCA2"]);
    assert_eq!(draft.sheet().rows[11].stop, "685");
}

#[test]
fn a_keyboard_types_what_paper_shows() {
    let mut draft = inches();
    strokes(&mut draft, "a\n10 1/2-14d\n20.5-31 3/16\n", &plants());
    let rows = &draft.sheet().rows;
    assert_eq!((rows[0].start.as_str(), rows[0].stop.as_str(), rows[0].state), ("10 1/2", "14", State::Dead));
    assert_eq!((rows[1].stop.as_str(), rows[1].species.as_str()), ("31 3/16", "ATCA2"));
    let mut draft = LineDraft::new(setup(Bare::FeetAndInches, "65 ft"));
    strokes(&mut draft, "w\n5-3 1/2-6-0\n", &plants());
    assert_eq!(
        (draft.sheet().rows[0].start.as_str(), draft.sheet().rows[0].stop.as_str()),
        ("5-3 1/2", "6-0")
    );
}

#[test]
fn what_is_odd_is_said_and_kept() {
    let mut draft = inches();
    read(&mut draft, "ATCA2", &["10", "20"]); // 1
    read(&mut draft, "ATCA2", &["21.5", "30"]); // 2: a gap of 1.5 in is joined
    read(&mut draft, "ATCA2", &["32.5", "40"]); // 3: a gap of exactly 2.5 in breaks
    read(&mut draft, "KRLA2", &["60", "50"]); // 4
    read(&mut draft, "KRLA2", &["70", "74.3"]); // 5
    read(&mut draft, "KRLA2", &["72", "76"]); // 6
    read(&mut draft, "KRLX2", &["770", "781"]); // 7: the tape has 780 in
    read(&mut draft, "KRLA2", &["70", "74.3"]); // 8
    let expected = [
        ("gap-joined", 2),
        ("stop-before-start", 4),
        ("finer-than-the-division", 5),
        ("overlap-within-species", 6),
        ("species-not-listed", 7),
        ("beyond-the-tape", 7),
        ("finer-than-the-division", 8),
        ("row-written-twice", 8),
    ];
    assert_eq!(said(&draft), expected);
    assert_eq!(draft.visit().intercepts.len(), 7);
    assert_eq!(draft.visit().set_aside, 1);
    // each offers a way out, and a person's word ends it
    let (protocol, plants) = (two_and_a_half(), plants());
    for one in remarks(&draft, rules(&protocol, &plants)) {
        if let Some(offer) = one.offers.first() {
            let mut mended = draft.clone();
            assert!(mended.press(offer.clone()), "{offer:?}");
            assert!(!said(&mended).contains(&(one.kind, one.row)), "{offer:?}");
        }
        draft.press(Key::LeaveSo(one.row, one.kind.into()));
    }
    assert_eq!(said(&draft), []);
}

/// What is said on the line is of a kind that the office's checks know, and they find it too.
#[test]
fn the_office_would_say_the_same() {
    let mut draft = inches();
    read(&mut draft, "KRLA2", &["70", "74"]);
    read(&mut draft, "KRLA2", &["72", "76"]);
    read(&mut draft, "KRLA2", &["770", "782"]);
    read(&mut draft, "KRLA2", &["783", "790"]);
    let mut input =
        crate::input::Input { visits: vec![draft.visit()], plants: plants(), ..Default::default() };
    crate::check::check(&mut input);
    for (code, row) in said(&draft) {
        if kind(code).is_some() {
            let same = |one: &crate::finding::Finding| {
                one.message.code == code
                    && one.place.as_ref().is_some_and(|place| place.row == u64::from(row))
            };
            assert!(input.findings.iter().any(same), "{code} of row {row}");
        }
    }
    assert_eq!(said(&draft).len(), 3);
}

#[test]
fn rows_are_split_joined_inserted_corrected_and_taken_out() {
    let mut draft = inches();
    read(&mut draft, "ATCA2", &["10", "40"]);
    read(&mut draft, "ATCA2", &["60", "70"]);
    draft.press(Key::Split(1));
    number(&mut draft, "20");
    draft.press(Key::Done);
    number(&mut draft, "26");
    draft.press(Key::Done);
    draft.press(Key::Insert(2));
    read(&mut draft, "KRLA2", &["50", "55"]);
    let edges = |draft: &LineDraft| -> Vec<String> {
        draft.sheet().standing().map(|row| format!("{}-{}", row.start, row.stop)).collect()
    };
    assert_eq!(edges(&draft), ["10-20", "26-40", "50-55", "60-70"]);
    draft.press(Key::Join(1, 3));
    assert_eq!(edges(&draft), ["10-40", "50-55", "60-70"]);
    // correcting a row in the middle of another loses nothing
    draft.press(Key::Species("KRLA2".into()));
    number(&mut draft, "9");
    draft.press(Key::Correct(2, Figure::Stop));
    number(&mut draft, "71");
    draft.press(Key::Done);
    assert_eq!((draft.sheet().entry.species.as_str(), draft.sheet().entry.text.as_str()), ("KRLA2", "9"));
    draft.press(Key::Leave);
    draft.press(Key::Remove(1));
    assert_eq!(edges(&draft), ["50-55", "60-71"]);
    let visit = draft.visit();
    assert_eq!(visit.intercepts.len(), 2);
    assert_eq!(visit.conditions.iter().filter(|(heading, _)| heading == "row taken out").count(), 2);
    while draft.undo() {}
    assert_eq!(draft.sheet(), &Sheet::default());
    while draft.redo() {}
    assert_eq!(edges(&draft), ["50-55", "60-71"]);
}

#[test]
fn plants_get_names_later_and_share_marks() {
    let mut draft = inches();
    draft.press(Key::NewPlant("grey one by the wash".into(), Some(GrowthForm::Shrub)));
    number(&mut draft, "5");
    draft.press(Key::Done);
    number(&mut draft, "9");
    draft.press(Key::Done);
    draft.press(Key::SamePlant(None));
    number(&mut draft, "11");
    draft.press(Key::Done);
    number(&mut draft, "14");
    draft.press(Key::Done);
    draft.press(Key::Rename("grey one by the wash".into(), "KRLA2".into()));
    let visit = draft.visit();
    assert!(visit.intercepts.iter().all(|one| one.species == "KRLA2" && one.plant.as_deref() == Some("1")));
}

#[test]
fn a_zero_is_only_what_somebody_wrote_down_as_one() {
    let mut draft = inches();
    assert_eq!(draft.close(None), Err(NotClosed::NothingWritten));
    draft.press(Key::Nothing);
    assert!(draft.close(None).is_ok());
    read(&mut draft, "ATCA2", &["1", "2"]);
    assert_eq!(draft.sheet().told, Told::Whole);
    assert!(!draft.press(Key::Nothing)); // something stands there
    draft.press(Key::ReadTo);
    number(&mut draft, "300");
    assert_eq!(draft.close(None), Err(NotClosed::UnderWay));
    draft.press(Key::Done);
    assert!(matches!(draft.visit().outcome, Outcome::PartlyRead(_)));
}

#[test]
fn the_tape_of_the_plan_is_not_said_twice_and_another_is() {
    let mut draft = inches();
    draft.press(Key::Nothing);
    let planned = |length: &str| PlannedLine {
        site: "Hollow Flat".into(),
        line: "1".into(),
        length: Measure::read(length, None, DecimalMark::Point).ok(),
        stratum: Some("flat".into()),
        plot: None,
        judgement: None,
        slope: None,
        permission: None,
    };
    let same = draft.close(Some(&planned("780 in"))).unwrap();
    assert_eq!(same.len(), 1);
    let other = draft.close(Some(&planned("50 ft"))).unwrap();
    let crate::notebook::payload::Payload::Visit(visit) = &other[0] else { panic!("a visit") };
    assert_eq!(visit.length.as_ref().unwrap().typed(), "65 ft");
}

#[test]
fn a_draft_of_the_future_or_of_something_else_is_not_opened() {
    assert_eq!(LineDraft::from_text("{}"), Err(NotOpened::NotADraft));
    assert_eq!(LineDraft::from_text("["), Err(NotOpened::NotADraft));
    let text = inches().to_text().replace("\"version\":1", "\"version\":2");
    assert_eq!(LineDraft::from_text(&text), Err(NotOpened::Newer));
}

#[test]
fn two_typings_side_by_side() {
    let mut first = inches();
    let mut second = inches();
    for draft in [&mut first, &mut second] {
        read(draft, "ATCA2", &["10", "20"]);
    }
    read(&mut first, "ATCA2", &["30", "34"]);
    read(&mut first, "KRLA2", &["46", "51"]);
    read(&mut second, "KRLA2", &["46", "57"]);
    let pairs = side_by_side(&first.visit(), &second.visit(), &plants());
    assert!(pairs[0].alike());
    assert_eq!((pairs[1].first, pairs[1].second), (Some(1), None));
    assert_eq!((pairs[2].first, pairs[2].second), (Some(2), Some(1)));
    assert_eq!(pairs[2].differs, [Differs::Stop]);
}

/// Any key at all, most of them on rows that may not be there.
fn any_key() -> BoxedStrategy<Key> {
    let row = || 0_u32..6;
    let name = || prop::sample::select(vec!["ATCA2", "KRLA2", "", "grey one"]).prop_map(str::to_owned);
    let figure = prop::sample::select(vec![
        Figure::Start,
        Figure::Stop,
        Figure::Length,
        Figure::Height,
        Figure::Width,
    ]);
    prop_oneof![
        12 => (0_u8..12).prop_map(Key::Digit),
        6 => Just(Key::Done),
        4 => name().prop_map(Key::Species),
        1 => Just(Key::Mark),
        1 => Just(Key::FeetAndInches),
        2 => (0_u8..9, 0_u16..9).prop_map(|(parts, of)| Key::Fraction(parts, of)),
        1 => any::<char>().prop_map(Key::Letter),
        1 => prop::sample::select(vec![' ', '/']).prop_map(Key::Letter),
        2 => Just(Key::Erase),
        1 => name().prop_map(|name| Key::NewPlant(name, None)),
        1 => (name(), name()).prop_map(|(was, now)| Key::Rename(was, now)),
        1 => prop::option::of(row()).prop_map(Key::Dead),
        1 => prop::option::of(row()).prop_map(Key::SamePlant),
        1 => name().prop_map(Key::Plant),
        1 => row().prop_map(Key::Swap),
        1 => (row(), figure).prop_map(|(row, figure)| Key::Correct(row, figure)),
        1 => (row(), name()).prop_map(|(row, name)| Key::CorrectSpecies(row, name)),
        1 => row().prop_map(Key::Insert),
        1 => row().prop_map(Key::Split),
        1 => (row(), row()).prop_map(|(first, second)| Key::Join(first, second)),
        1 => row().prop_map(Key::Remove),
        1 => (row(), name()).prop_map(|(row, note)| Key::Note(row, note)),
        1 => Just(Key::Leave),
        1 => any::<bool>().prop_map(Key::LengthsOnly),
        1 => Just(Key::Nothing),
        1 => Just(Key::ReadTo),
        1 => name().prop_map(Key::NotRead),
        1 => Just(Key::Whole),
        1 => (name(), name()).prop_map(|(heading, value)| Key::Condition(heading, value)),
        1 => (row(), name()).prop_map(|(row, code)| Key::LeaveSo(row, code)),
    ]
    .boxed()
}

fn any_unit() -> impl Strategy<Value = Bare> {
    prop::sample::select(vec![
        Bare::Unit(Unit::Inch),
        Bare::Unit(Unit::Foot),
        Bare::DecimalFeet,
        Bare::FeetAndInches,
        Bare::Unit(Unit::Centimetre),
        Bare::Unit(Unit::Metre),
    ])
}

proptest! {
    #[test]
    fn undo_takes_back_whatever_a_key_did(unit in any_unit(), keys in prop::collection::vec(any_key(), 0..80)) {
        let mut draft = LineDraft::new(setup(unit, "20 m"));
        for key in keys {
            let before = draft.clone();
            if draft.press(key) {
                let after = draft.sheet().clone();
                draft.undo();
                prop_assert_eq!(draft.sheet(), before.sheet());
                prop_assert!(draft.redo());
                prop_assert_eq!(draft.sheet(), &after);
            } else {
                prop_assert_eq!(&draft, &before);
            }
        }
    }

    #[test]
    fn a_draft_reopens_where_it_was(
        unit in any_unit(),
        keys in prop::collection::vec(any_key(), 0..80),
        undone in 0_usize..5,
    ) {
        let mut draft = LineDraft::new(setup(unit, "20 m"));
        for key in keys {
            draft.press(key);
        }
        for _ in 0..undone {
            draft.undo();
        }
        prop_assert_eq!(LineDraft::from_text(&draft.to_text()), Ok(draft));
    }

    #[test]
    fn whatever_is_typed_can_be_looked_through_and_kept(
        unit in any_unit(),
        keys in prop::collection::vec(any_key(), 0..80),
    ) {
        let mut draft = LineDraft::new(setup(unit, "20 m"));
        for key in keys {
            draft.press(key);
        }
        let (protocol, plants) = (two_and_a_half(), plants());
        let all = remarks(&draft, rules(&protocol, &plants));
        prop_assert!(all.iter().all(|one| draft.sheet().row(one.row).is_some_and(|row| !row.removed)));
        remarks::before_closing(&draft, rules(&protocol, &plants));
        let visit = draft.visit();
        let told = visit.conditions.iter().filter(|(heading, _)| heading.starts_with("row ")).count();
        prop_assert_eq!(visit.intercepts.len() + told, draft.sheet().rows.len());
        let json = serde_json::to_string(&visit).unwrap();
        prop_assert_eq!(serde_json::from_str::<crate::visit::Visit>(&json).unwrap(), visit);
    }
}

#[test]
fn a_draft_in_a_copy_is_where_it_was() {
    let mut draft = inches();
    read(&mut draft, "ATCA2", &["10", "20 1/2"]);
    draft.press(Key::Species("KRLA2".into()));
    number(&mut draft, "31");
    let line = draft.copy_line("draft/1");
    assert!(!line.contains('\n'));
    assert_eq!(LineDraft::from_copy_line(&line), Some(("draft/1".to_owned(), draft)));
    assert_eq!(LineDraft::from_copy_line("{\"content\":null}"), None);
}
