//! A line read on a device gives the same visit as its sheet typed at a desk and its table in a file.

#![expect(clippy::unwrap_used, reason = "a test that can't read its own sheets has failed")]

use proptest::prelude::*;
use std::fmt::Write as _;
use tautline_engine::length::{Bare, DecimalMark, Unit};
use tautline_exchange::{Options, Source};
use tautline_survey::date::Date;
use tautline_survey::draft::{Figure, Key, LineDraft, Setup};
use tautline_survey::measure::Measure;
use tautline_survey::notebook::payload::Payload;
use tautline_survey::visit::{State, Visit};

/// One row of an invented line: species, start and stop in eighths of an inch, dead, height in inches.
#[derive(Clone, Debug)]
struct Row {
    species: &'static str,
    start: u32,
    stop: u32,
    dead: bool,
    height: Option<u32>,
}

fn rows() -> impl Strategy<Value = Vec<Row>> {
    let species = prop::sample::select(vec!["ATCA", "KRLA", "big sagebrush"]);
    let row = (species, 0_u32..6000, 0_u32..6000, any::<bool>(), prop::option::of(1_u32..90));
    prop::collection::vec(
        row.prop_map(|(species, start, stop, dead, height)| Row { species, start, stop, dead, height }),
        1..12,
    )
}

/// Eighths of an inch as a tape shows them.
fn inches(eighths: u32) -> (u32, u8, u16) {
    let (whole, rest) = (eighths / 8, eighths % 8);
    match rest {
        0 => (whole, 0, 1),
        4 => (whole, 1, 2),
        2 | 6 => (whole, u8::try_from(rest / 2).unwrap(), 4),
        _ => (whole, u8::try_from(rest).unwrap(), 8),
    }
}

fn text(eighths: u32) -> String {
    match inches(eighths) {
        (whole, 0, _) => whole.to_string(),
        (0, parts, of) => format!("{parts}/{of}"),
        (whole, parts, of) => format!("{whole} {parts}/{of}"),
    }
}

fn press(draft: &mut LineDraft, eighths: u32) {
    let (whole, parts, of) = inches(eighths);
    if whole > 0 || parts == 0 {
        for digit in whole.to_string().bytes() {
            assert!(draft.press(Key::Digit(digit - b'0')));
        }
    }
    if parts > 0 {
        assert!(draft.press(Key::Fraction(parts, of)));
    }
    assert!(draft.press(Key::Done));
}

fn read_on_the_line(rows: &[Row]) -> Visit {
    let setup = Setup {
        site: "Hollow Flat".into(),
        line: "1".into(),
        length: Measure::read("65 ft", None, DecimalMark::Point).ok(),
        unit: Bare::Unit(Unit::Inch),
        comma: false,
        protocol: String::new(),
        reader: "Reader A".into(),
        recorder: "Reader B".into(),
        date: Date::read("2026-06-09"),
        pass: String::new(),
        blind: false,
    };
    let mut draft = LineDraft::new(setup);
    for row in rows {
        draft.press(Key::Species(row.species.into()));
        if row.dead {
            draft.press(Key::Dead(None));
        }
        press(&mut draft, row.start);
        press(&mut draft, row.stop);
        if let Some(height) = row.height {
            let id = draft.sheet().rows.last().unwrap().id;
            draft.press(Key::Correct(id, Figure::Height));
            press(&mut draft, height * 8);
        }
    }
    let records = draft.close(None).unwrap();
    let Payload::Visit(mut visit) = records.last().unwrap().without_places() else { panic!("a visit") };
    // what can't be used is kept by name on a device; on a sheet the sheet itself keeps it
    visit.conditions.clear();
    *visit
}

fn typed(rows: &[Row]) -> String {
    let mut sheet = String::from(
        "Site: Hollow Flat\nDate: 2026-06-09\nReader: Reader A\nRecorder: Reader B\nUnit: in\n\nLine 1, 65 ft\n",
    );
    for Row { species, start, stop, dead, height } in rows {
        write!(sheet, "{species} {}-{}", text(*start), text(*stop)).unwrap();
        sheet.push_str(if *dead { " d" } else { "" });
        if let Some(height) = height {
            write!(sheet, " h {height}").unwrap();
        }
        sheet.push('\n');
    }
    sheet
}

fn table(rows: &[Row]) -> String {
    let mut table = String::from(
        "site,line,line length (ft),date,reader,recorder,species,start (in),stop (in),live or dead,height (in)\n",
    );
    for Row { species, start, stop, dead, height } in rows {
        let state = if *dead { "dead" } else { "live" };
        let height = height.map_or(String::new(), |height| height.to_string());
        writeln!(
            table,
            "Hollow Flat,1,65,2026-06-09,Reader A,Reader B,{species},{},{},{state},{height}",
            text(*start),
            text(*stop)
        )
        .unwrap();
    }
    table
}

fn from_file(name: &str, text: &str) -> Visit {
    let source = Source { name: name.to_owned(), bytes: text.as_bytes().to_vec() };
    let input = tautline_exchange::read(&[source], &Options::default()).input;
    let [visit] = input.visits.as_slice() else { panic!("{:#?}", input.findings) };
    let Payload::Visit(visit) = Payload::Visit(Box::new(visit.clone())).without_places() else {
        panic!("a visit")
    };
    *visit
}

proptest! {
    #[test]
    fn read_on_the_line_typed_and_in_a_table_it_is_one_visit(rows in rows()) {
        prop_assume!(rows.iter().any(|row| row.start < row.stop));
        let read = read_on_the_line(&rows);
        prop_assert_eq!(&read, &from_file("line.sheet", &typed(&rows)));
        prop_assert_eq!(&read, &from_file("line.csv", &table(&rows)));
        let good = rows.iter().filter(|row| row.start < row.stop);
        prop_assert_eq!(read.intercepts.len(), good.clone().count());
        let dead = read.intercepts.iter().filter(|one| one.state == State::Dead).count();
        prop_assert_eq!(dead, good.filter(|row| row.dead).count());
    }
}
