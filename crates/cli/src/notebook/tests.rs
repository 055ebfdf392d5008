//! The commands with a clock, a chance and names of the test's own.

use super::*;
use std::cell::Cell;
use std::path::PathBuf;
use std::rc::Rc;
use tautline_survey::record::history as ordered;
use tautline_survey::revision::{Content, Stamp};

const SHEET: &str =
    "site,line,line length,date,species,start (in),stop (in)\nInvented,1,65 ft,2026-06-09,ATCA,12,17\n";

/// A notebook in a folder of its own, and a hand whose clock the test sets.
struct Desk {
    folder: tempfile::TempDir,
    hour: Rc<Cell<u8>>,
    here: Here,
}

impl Desk {
    fn new() -> Self {
        let hour = Rc::new(Cell::new(12));
        let (clock, mut drawn) = (Rc::clone(&hour), 0_u8);
        let here = Here {
            author: "Invented A".to_owned(),
            device: "tablet 1".to_owned(),
            now: Box::new(move || {
                let text = format!("2026-06-09T{:02}:00:00Z", clock.get());
                (Stamp::new(&text, -360).unwrap(), u64::from(clock.get()) * 3_600_000)
            }),
            today: tautline_survey::date::Date::new(2026, 6, 9).unwrap(),
            random: Box::new(move |bytes| {
                drawn += 1;
                bytes.fill(drawn);
            }),
        };
        Self { folder: tempfile::tempdir().unwrap(), hour, here }
    }

    fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    /// Calls a command on the notebook, and the sheet that it names.
    fn call(&mut self, name: &str, arguments: &[&str]) -> Done {
        let words = Words::english();
        let notebook = self.path("notes.tautline").display().to_string();
        let all = [&["tautline", name, "--notebook", &notebook], arguments].concat();
        let matches = crate::call::command(&words).try_get_matches_from(all).unwrap();
        let (name, asked) = matches.subcommand().unwrap();
        run(name, asked, &words, &mut self.here)
    }

    fn import(&mut self, sheet: &str) -> Done {
        let path = self.path("sheet.csv");
        std::fs::write(&path, sheet).unwrap();
        self.call("import", &[&path.display().to_string()])
    }

    fn all(&self) -> Vec<Revision> {
        let keep = Sqlite::open(&self.path("notes.tautline")).unwrap();
        keep.since(Cursor::START, usize::MAX).unwrap().0
    }
}

#[test]
fn a_clock_gone_backwards_changes_no_order() {
    let mut desk = Desk::new();
    assert_eq!(desk.import(SHEET), Ok(Exit::Well));
    desk.hour.set(3);
    assert_eq!(desk.import(&SHEET.replace("17", "18")), Ok(Exit::Well));
    let all = desk.all();
    let visits: Vec<&Revision> = all.iter().filter(|one| one.head().kind.0 == "visit").collect();
    let hours: Vec<String> = ordered(&visits).iter().map(|one| one.head().time.minute()).collect();
    assert_eq!(hours, ["2026-06-09 12:00", "2026-06-09 03:00"]);
    let current = Current::of(Sqlite::open(&desk.path("notes.tautline")).unwrap().heads().unwrap());
    assert!(current.conflicts.is_empty());
    assert_eq!(current.input().0.visits.len(), 1);
}

#[test]
fn who_where_when_and_why_stand_in_the_revision() {
    let mut desk = Desk::new();
    let path = desk.path("other.csv");
    std::fs::write(&path, SHEET).unwrap();
    let done = desk
        .call("import", &[&path.display().to_string(), "--author", "Invented B", "--reason", "first day"]);
    assert_eq!(done, Ok(Exit::Well));
    for revision in desk.all() {
        let by: Content<serde_json::Value> = revision.content().unwrap();
        assert_eq!(
            (by.author.as_str(), by.device.as_str(), by.reason.as_str()),
            ("Invented B", "tablet 1", "first day")
        );
        assert_eq!(
            (revision.head().time.utc(), revision.head().time.offset()),
            ("2026-06-09T12:00:00Z", "-06:00".to_owned())
        );
    }
}

/// With the same clock and the same chance, the same call writes the same bytes.
#[test]
fn nothing_else_gets_in() {
    let sums = || {
        let mut desk = Desk::new();
        let path = desk.path("sheet.csv");
        std::fs::write(&path, SHEET).unwrap();
        // the sheet by a name that doesn't depend on the folder
        let source = tautline_exchange::Source { name: "sheet.csv".into(), bytes: SHEET.into() };
        let read = tautline_exchange::read(&[source], &tautline_exchange::Options::default());
        let words = Words::english();
        let file = desk.path("notes.tautline").display().to_string();
        let mut notebook = Notebook::open_or_begin(&file, &words).unwrap();
        let gathered =
            tautline_survey::notebook::gather::gather(&Current::default(), &read.input, &read.goals);
        notebook.write("import", gathered.drafts, "", &mut desk.here).unwrap();
        desk.all().iter().map(|revision| revision.sha256().to_owned()).collect::<Vec<_>>()
    };
    assert_eq!(sums(), sums());
    assert_eq!(sums().len(), 3);
}

#[test]
fn an_id_is_named_by_its_end() {
    let words = Words::english();
    let all = || [("0000-aaaa1111".to_owned(), 1), ("0000-bbbb1111".to_owned(), 2)];
    assert_eq!(named("…aaaa1111", all(), &words), Ok(1));
    assert_eq!(named("0000-BBBB1111", all(), &words), Ok(2));
    assert!(named("1111", all(), &words).is_err());
    assert!(named("cccc", all(), &words).is_err());
    assert!(named("1", all(), &words).is_err());
}
