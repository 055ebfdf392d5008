//! Files: tables, typed sheets, protocols, and bytes that are none of them.

use crate::EACH;
use crate::says::says;
use crate::text::{PROTOCOLS, SHEETS, TABLES, text};
use bolero::check;
use std::num::NonZero;
use tautline_exchange::stream::{Content, Table, Way, sites};
use tautline_exchange::{Options, Read, Source, protocol, read, sheet, text as rows};
use tautline_survey::assess::{Question, assess};
use tautline_survey::check::check as look_through;
use tautline_survey::finding::{Finding, Weight};
use tautline_survey::line::{Choice, line_result};
use tautline_survey::sites::SiteRow;
use tautline_survey::visit::Extent;

fn read_as(name: &str, bytes: &[u8]) -> Read {
    read(&[Source { name: name.into(), bytes: bytes.to_vec() }], &Options::default())
}

/// What holds of anything that was read: places inside the file, stretches with room, lines that are worked out or
/// refused.
fn holds(mut read: Read, bytes: &[u8]) {
    let text = rows::decode(bytes).map(|decoded| decoded.text).unwrap_or_default();
    places_inside(&read.input.findings, &text);
    for intercept in read.input.visits.iter().flat_map(|visit| &visit.intercepts) {
        if let Extent::Edges { start, stop } = &intercept.extent {
            assert!(start.length() < stop.length());
        }
    }
    look_through(&mut read.input);
    for visit in 0..read.input.visits.len() {
        let _ = line_result(&read.input, visit, &Choice::default());
    }
}

fn places_inside(findings: &[Finding], text: &str) {
    let rows: Vec<&str> = text.split('\n').collect();
    for finding in findings {
        let Some(place) = &finding.place else { continue };
        let row = usize::try_from(place.row).expect("rows are counted in memory");
        assert!((1..=rows.len().max(1)).contains(&row), "{finding:?}");
        if let Some(character) = place.character {
            let behind = rows[row - 1].chars().count() + 1;
            assert!((1..=behind).contains(&(character as usize)), "{finding:?}");
        }
        if let Some(excerpt) = &finding.excerpt {
            assert!(excerpt.before <= excerpt.text.chars().count(), "{finding:?}");
            assert!(!excerpt.text.contains(char::is_control), "{finding:?}");
        }
    }
}

/// Printed and read again it says the same, unless something is named that a sheet can't say.
fn comes_back(read: &Read) {
    let printed = sheet::print(&read.input);
    if printed.left_out.iter().any(|finding| finding.weight != Weight::Note) {
        return;
    }
    // names of protocols are looked up; those handed in are not part of a sheet
    if read.input.visits.iter().any(|visit| !visit.protocol.is_empty()) {
        return;
    }
    let again = read_as("again.sheet", printed.text.as_bytes());
    assert_eq!(says(&again.input), says(&read.input), "{}", printed.text);
    assert_eq!(sheet::print(&again.input).text, printed.text);
}

#[test]
fn table() {
    check!(name = "table").with_test_time(EACH).for_each(|bytes: &[u8]| {
        let bytes = text(bytes, TABLES);
        let read = read_as("a.csv", &bytes);
        comes_back(&read);
        holds(read, &bytes);
    });
}

/// The quick reader of many sites and the general reader come to the same, to the last digit.
#[test]
fn quick_table() {
    check!(name = "quick").with_test_time(EACH).for_each(|bytes: &[u8]| {
        let bytes = text(bytes, TABLES);
        let mut read = read_as("a.csv", &bytes);
        look_through(&mut read.input);
        let question = Question { goals: read.goals, ..Question::default() };
        let rows: Vec<SiteRow> =
            assess(&read.input, &question).iter().map(|one| SiteRow::of(one, &question)).collect();
        let table = Table { name: "a.csv".into(), content: Content::Bytes(bytes) };
        let way = Way { threads: NonZero::<usize>::MIN, progress: &|_| {} };
        let quick = sites(&[table], &Options::default(), &Question::default(), &way)
            .expect("bytes at hand can always be read");
        assert_eq!(format!("{:?}", quick.rows), format!("{rows:?}"));
    });
}

#[test]
fn typed_sheet() {
    check!(name = "sheet").with_test_time(EACH).for_each(|bytes: &[u8]| {
        let bytes = text(bytes, SHEETS);
        let read = read_as("a.sheet", &bytes);
        comes_back(&read);
        holds(read, &bytes);
    });
}

#[test]
fn protocol_file() {
    check!(name = "protocol").with_test_time(EACH).for_each(|bytes: &[u8]| {
        let bytes = text(bytes, PROTOCOLS);
        let text = String::from_utf8_lossy(&bytes);
        let (found, findings) = protocol::read("a.toml", &text);
        places_inside(&findings, &text);
        if findings.is_empty() {
            let printed = protocol::to_toml(&found);
            assert_eq!(protocol::read("b.toml", &printed), (found, Vec::new()), "{printed}");
        }
    });
}

/// A heading row and rows below it by themselves: whatever stands in the headings.
#[test]
fn headings() {
    check!(name = "headings").with_test_time(EACH).for_each(|bytes: &[u8]| {
        let bytes = text(bytes, TABLES);
        let text = String::from_utf8_lossy(&bytes);
        let heading = tautline_exchange::headings::heading(&text);
        assert_eq!(heading.text, text.trim());
        let own = [(text.to_string(), "start (in)".to_owned()), ("B".to_owned(), text.to_string())];
        assert_eq!(tautline_exchange::headings::heading_under(&text, &own).text, text.trim());
        let cut = rows::rows(&text);
        for (row, cells) in &cut.rows {
            assert!(*row as usize <= text.lines().count().max(1), "{row}");
            assert!(cells.iter().any(|cell| !cell.is_empty()));
        }
    });
}
