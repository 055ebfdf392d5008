//! The same slip in row after row of a file: few of them are kept whole, and nothing is lost. All data is invented.

use std::collections::BTreeSet;
use tautline_exchange::{Options, Read, Source, read};
use tautline_survey::check::check;
use tautline_survey::finding::{Finding, MOST_ALIKE};

const HEAD: &str = "site,line,line length,date,observer,species,start (m),stop (m)\n";

/// Every third of 6000 rows is right, every third has letters for a number, every third stands the wrong way round.
fn sheet() -> String {
    let row = |row: usize| match row % 3 {
        0 => "3,4".to_owned(),
        1 => format!("x{row},4"),
        _ => "5,4".to_owned(),
    };
    let rows = (0..6000).map(|at| format!("Invented,{},20 m,2026-06-09,Ana,ATCO,{}\n", at / 500, row(at)));
    HEAD.to_owned() + &rows.collect::<Vec<_>>().concat()
}

fn taken_in(sheet: &str, signed: &str, every_finding: bool) -> Read {
    let source = |name: &str, text: &str| Source { name: name.into(), bytes: text.into() };
    let options = Options { every_finding, ..Options::default() };
    let files = [source("sheet.csv", sheet), source("signed.csv", signed)];
    let files = if signed.is_empty() { &files[..1] } else { &files[..] };
    let mut read = read(files, &options);
    check(&mut read.input);
    read
}

/// Each row of which a code speaks.
fn rows_of(read: &Read, code: &str) -> (usize, BTreeSet<u64>) {
    let own: Vec<&Finding> = read.input.findings.iter().filter(|one| one.message.code == code).collect();
    let further = own.iter().filter_map(|one| one.more.as_deref()).flat_map(|more| &more.rows);
    let further = further.flat_map(|&(first, last)| first..=last);
    let places = own.iter().filter_map(|one| one.place.as_ref()).map(|place| place.row);
    (own.iter().map(|one| one.times()).sum(), places.chain(further).collect())
}

#[test]
fn few_are_kept_and_all_are_counted() {
    let sheet = sheet();
    let (few, every) = (taken_in(&sheet, "", false), taken_in(&sheet, "", true));
    for (code, first) in [("length-not-a-number", 3), ("stop-before-start", 4)] {
        let found = rows_of(&few, code);
        // the heading is row 1
        assert!(found == (2000, (first..6002).step_by(3).collect()), "{code}: {}", found.0);
        assert!(found == rows_of(&every, code));
        let kept = |read: &Read| read.input.findings.iter().filter(|one| one.message.code == code).count();
        // of the lines that follow one each, which holds its line back
        assert!(kept(&few) < MOST_ALIKE + 12 && kept(&every) == 2000, "{code}: {}", kept(&few));
    }
    assert!(few.input.held.len() == 12 && few.input.held == every.input.held);
    assert_eq!(few.input.visits, every.input.visits);
}

/// Rows with more cells than there are headings, which are no reading's.
#[test]
fn rows_that_can_t_be_told_apart_are_counted_too() {
    let sheet_of = |count| format!("{HEAD}{}", "Invented,1,20 m,2026-06-09,Ana,ATCO,3,4,5,6\n".repeat(count));
    for count in [MOST_ALIKE - 1, MOST_ALIKE, MOST_ALIKE + 1, 500] {
        let read = taken_in(&sheet_of(count), "", false);
        assert_eq!(rows_of(&read, "row-too-long"), (count, (2..2 + count as u64).collect()));
        assert_eq!(read.input.findings.len(), count.min(MOST_ALIKE));
    }
}

/// Thirty tapes read from their far end: what is said of a whole reading is worked out of its rows, however few of them are kept.
#[test]
fn a_reading_is_known_by_its_rows_as_well() {
    let rows = (0..150).map(|at| format!("Invented,{},20 m,2026-06-09,Ana,ATCO,5,4\n", at % 30 + 1));
    let sheet = HEAD.to_owned() + &rows.collect::<Vec<_>>().concat();
    let said = |every| {
        let of = |one: &Finding| (one.message.clone(), one.place.clone());
        let read = taken_in(&sheet, "", every);
        let own = read.input.findings.iter().filter(|one| one.message.code == "tape-read-backwards");
        (own.map(of).collect::<Vec<_>>(), rows_of(&read, "stop-before-start"))
    };
    assert_eq!(said(false), said(true));
    assert_eq!((said(false).0.len(), said(false).1), (30, (0, BTreeSet::new())));
}

/// A person's word about one row must find that row.
#[test]
fn what_is_signed_row_by_row_is_found_row_by_row() {
    let sheet = HEAD.to_owned() + &"Invented,1,20 m,2026-06-09,Ana,ATCO,4,4\n".repeat(100);
    let signed = "finding,file,row,settled by,reason\nzero-length,sheet.csv,77,Ana,Only a stem\n";
    let read = taken_in(&sheet, signed, false);
    let settled = read.input.findings.iter().filter(|one| one.settled.is_some());
    let settled: Vec<u64> = settled.filter_map(|one| Some(one.place.as_ref()?.row)).collect();
    let zeros = read.input.findings.iter().filter(|one| one.message.code == "zero-length").count();
    assert_eq!((settled, zeros), (vec![77], 100));
}
