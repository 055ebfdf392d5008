//! A notebook as a person uses it, through the command.
//!
//! Sites, people and readings are invented.

#![expect(clippy::unwrap_used, reason = "a test that can't call the command has failed")]

use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use tautline_store::conformance::Invented;
use tautline_survey::revision;

fn tautline(folder: &Path, arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_tautline")).current_dir(folder).args(arguments).output().unwrap()
}

/// What a call printed; it must have ended as expected.
fn said(folder: &Path, arguments: &[&str], status: i32) -> String {
    let output = tautline(folder, arguments);
    let text = String::from_utf8_lossy(&[output.stdout, output.stderr].concat()).replace('\u{a0}', " ");
    assert_eq!(output.status.code(), Some(status), "{arguments:?}\n{text}");
    text
}

/// A notebook as lines of JSON; that it tells everything is said beside it.
fn full_copy(folder: &Path, notebook: &str) -> String {
    let output = tautline(folder, &["export", "--full", "--notebook", notebook]);
    assert!(String::from_utf8_lossy(&output.stderr).contains("This is a full copy"));
    assert!(output.status.success());
    String::from_utf8(output.stdout).unwrap()
}

fn folder() -> tempfile::TempDir {
    tempfile::tempdir().unwrap()
}

fn sheet(folder: &Path, name: &str, stop: u32) -> PathBuf {
    let path = folder.join(name);
    let text = format!(
        "site,line,line length,date,reader,species,start (in),stop (in)\n\
         Invented,1,65 ft,2026-06-09,reader A,ATCA,12,{stop}\n\
         Invented,2,65 ft,2026-06-09,reader A,KRLA,100,130\n"
    );
    std::fs::write(&path, text).unwrap();
    path
}

/// The last characters of an id, as the command prints them.
fn ids(text: &str) -> Vec<String> {
    text.split('…').skip(1).map(|rest| rest.chars().take_while(char::is_ascii_hexdigit).collect()).collect()
}

#[test]
fn a_notebook_gives_what_its_files_give() {
    let folder = folder();
    let at = folder.path();
    said(at, &["demo", "demo"], 0);
    said(at, &["import", "demo", "--notebook", "n.tautline"], 0);
    // one row a site, worked out another way, says the same as well
    let sites = |what: &[&str]| said(at, &[&["sites", "--csv", "--goal", "at least 15 %"], what].concat(), 0);
    assert_eq!(sites(&["demo"]), sites(&["--notebook", "n.tautline"]));
    for arguments in [&["assess", "--json", "--by", "species"][..], &["cover", "--csv"], &["check", "--json"]]
    {
        let from_files = said(at, &[arguments, &["demo"]].concat(), 0);
        let from_notebook = said(at, &[arguments, &["--notebook", "n.tautline"]].concat(), 0);
        let mut rows = [from_files.lines().collect::<Vec<_>>(), from_notebook.lines().collect()];
        if arguments[0] == "cover" {
            for rows in &mut rows {
                rows.sort_unstable();
            }
        }
        assert_eq!(rows[0], rows[1], "{arguments:?}");
    }
    // the chain still leads to file and row
    let chain = said(at, &["assess", "--notebook", "n.tautline", "--year", "2026", "--explain"], 0);
    assert!(chain.contains("readings-2026.csv row"), "{chain}");
}

#[test]
fn the_same_files_twice_add_nothing_and_a_change_is_a_revision() {
    let folder = folder();
    let at = folder.path();
    sheet(at, "a.csv", 17);
    sheet(at, "b.csv", 18);
    let first = said(at, &["import", "a.csv", "--notebook", "n.tautline"], 0);
    assert!(first.contains("visits           2"), "{first}");
    let before = full_copy(at, "n.tautline");
    let again = said(at, &["import", "a.csv", "--notebook", "n.tautline"], 0);
    assert!(again.contains("nothing was added"), "{again}");
    assert_eq!(full_copy(at, "n.tautline"), before);
    let changed = said(at, &["import", "b.csv", "--notebook", "n.tautline", "--reason", "misread"], 0);
    assert!(changed.contains("stop: 17 in → 18 in"), "{changed}");
    let history = said(at, &["history", "--notebook", "n.tautline", "--line", "1"], 0);
    assert!(history.contains("import: misread") && history.contains("stop: 17 in → 18 in"), "{history}");
    // undone as one action, the first sheet stands again, and nothing that was written is gone
    let import = said(at, &["history", "--notebook", "n.tautline"], 0);
    let import = ids(&import).pop().unwrap();
    said(at, &["restore", "--undo", &import, "--notebook", "n.tautline"], 0);
    let cover = said(at, &["cover", "--csv", "--notebook", "n.tautline"], 0);
    assert_eq!(cover, said(at, &["cover", "--csv", "a.csv"], 0));
    assert!(full_copy(at, "n.tautline").starts_with(&before));
    said(at, &["restore", "--undo", &import, "--notebook", "n.tautline"], 3);
}

#[test]
fn an_import_can_be_looked_at_first_and_an_offices_headings_are_remembered() {
    let folder = folder();
    let at = folder.path();
    let text = |line: u32| {
        format!(
            "site,Cinta,line length,date,Lector,species,Inicio (in),Fin\n\
             Invented,{line},65 ft,2026-06-09,reader A,ATCA,12,17\n"
        )
    };
    std::fs::write(at.join("a.csv"), text(1)).unwrap();
    std::fs::write(at.join("b.csv"), text(2)).unwrap();
    let own = ["Cinta=line", "Lector=reader", "Inicio=start", "Fin=stop (in)"];
    let headings: Vec<&str> = own.iter().flat_map(|one| ["--heading", one]).collect();
    let import = |file, more: &[&str], status| {
        said(at, &[&["import", file, "--notebook", "n.tautline"], more].concat(), status)
    };
    // without the office's headings nothing is understood, and nothing is written
    import("a.csv", &["--dry-run"], 3);
    let looked = import("a.csv", &[&["--dry-run"], headings.as_slice()].concat(), 0);
    assert!(looked.contains("Nothing was written") && looked.contains("visits"), "{looked}");
    assert!(!at.join("n.tautline").exists());
    import("a.csv", &headings, 0);
    // the next file of the office needs none of it
    let next = import("b.csv", &[], 0);
    assert!(next.contains("Written to"), "{next}");
    let before = full_copy(at, "n.tautline");
    let again = import("b.csv", &["--dry-run"], 0);
    assert!(again.contains("nothing was added") || again.contains("Nothing"), "{again}");
    assert_eq!(full_copy(at, "n.tautline"), before);
    let cover = said(at, &["cover", "--csv", "--notebook", "n.tautline"], 0);
    assert_eq!(cover.lines().count(), 5, "{cover}"); // the heads, and two rows a line
    assert!(
        said(at, &["import", "a.csv", "--notebook", "n.tautline", "--heading", "x=y"], 2).contains("x=y")
    );
}

#[test]
fn two_versions_are_used_neither_way_until_one_is_chosen() {
    let folder = folder();
    let at = folder.path();
    for (name, stop) in [("a.csv", 17), ("b.csv", 18), ("c.csv", 20)] {
        sheet(at, name, stop);
    }
    said(at, &["import", "a.csv", "--notebook", "here.tautline"], 0);
    said(at, &["backup", "there.tautline", "--notebook", "here.tautline"], 0);
    said(at, &["import", "b.csv", "--notebook", "here.tautline", "--author", "Invented A"], 0);
    said(at, &["import", "c.csv", "--notebook", "there.tautline", "--author", "Invented B"], 0);
    let lines = full_copy(at, "there.tautline");
    std::fs::write(at.join("there.jsonl"), lines).unwrap();
    let joined = said(at, &["import", "there.jsonl", "--notebook", "here.tautline"], 1);
    assert!(joined.contains("2 new revisions") && joined.contains("Invented B"), "{joined}");
    // the other notebook itself, joined again, brings nothing new
    assert!(
        said(at, &["import", "there.tautline", "--notebook", "here.tautline"], 1).contains("0 new revisions")
    );
    let cover = said(at, &["cover", "--csv", "--notebook", "here.tautline"], 1);
    assert!(!cover.contains("Invented,1,") && cover.contains("Invented,2,"), "{cover}");
    let shown = said(at, &["settle", "--notebook", "here.tautline"], 1);
    assert!(shown.contains("18 in") && shown.contains("20 in"), "{shown}");
    let by_b = shown.lines().find(|line| line.contains("by Invented B")).unwrap();
    let chosen = ids(by_b).remove(0);
    said(at, &["settle", "--keep", &chosen, "--notebook", "here.tautline", "--reason", "sheet checked"], 0);
    let cover = said(at, &["cover", "--csv", "--notebook", "here.tautline"], 0);
    assert_eq!(cover, said(at, &["cover", "--csv", "c.csv"], 0));
    assert!(said(at, &["settle", "--notebook", "here.tautline"], 0).contains("Nothing is to be settled"));
    let history = said(at, &["history", "--notebook", "here.tautline", "--site", "Invented"], 0);
    assert!(history.contains("settled: sheet checked"), "{history}");
    // an earlier revision stands again, by a further one
    let visit = history.split("line 1, 2026-06-09").nth(1).unwrap();
    said(at, &["restore", &ids(visit)[0], "--notebook", "here.tautline"], 0);
    let cover = said(at, &["cover", "--csv", "--notebook", "here.tautline"], 0);
    assert_eq!(cover, said(at, &["cover", "--csv", "a.csv"], 0));
}

#[test]
fn everything_goes_out_as_lines_and_comes_back_unknown_kinds_among_it() {
    let folder = folder();
    let at = folder.path();
    sheet(at, "a.csv", 17);
    said(at, &["import", "a.csv", "--notebook", "n.tautline"], 0);
    let unknown = Invented::device(5).of_kind("of-a-newer-version", None, &[], "unread");
    let lines = format!("{}\n{}\nnot a line\n", revision::header(), revision::line(&unknown));
    std::fs::write(at.join("newer.jsonl"), lines).unwrap();
    let joined = said(at, &["import", "newer.jsonl", "--notebook", "n.tautline"], 1);
    assert!(joined.contains("newer.jsonl, row 3") && joined.contains("One record of the kind"), "{joined}");
    let all = full_copy(at, "n.tautline");
    assert!(all.contains("of-a-newer-version"));
    std::fs::write(at.join("all.jsonl"), &all).unwrap();
    said(at, &["import", "all.jsonl", "--notebook", "back.tautline"], 0);
    assert_eq!(full_copy(at, "back.tautline"), all);
    let newer = all.replacen("\"version\":1", "\"version\":2", 1);
    std::fs::write(at.join("future.jsonl"), newer).unwrap();
    assert!(said(at, &["import", "future.jsonl", "--notebook", "n.tautline"], 4).contains("version 2"));
}

#[test]
fn corrections_come_alone_and_take_the_rest_from_the_notebook() {
    let folder = folder();
    let at = folder.path();
    said(at, &["demo", "demo"], 0);
    said(at, &["import", "demo", "--notebook", "n.tautline"], 0);
    let readings = std::fs::read_to_string(at.join("demo/readings-2026.csv")).unwrap();
    std::fs::write(at.join("again.csv"), &readings).unwrap();
    // neither plan nor protocol nor plants beside it: those of the notebook hold, and nothing is new
    let again = said(at, &["import", "again.csv", "--notebook", "n.tautline"], 0);
    assert!(again.contains("nothing was added"), "{again}");
}

#[test]
fn a_person_and_a_site_are_forgotten() {
    let folder = folder();
    let at = folder.path();
    sheet(at, "a.csv", 17);
    sheet(at, "b.csv", 18);
    let author = ["--author", "Invented Person", "--notebook", "n.tautline"];
    said(at, &[&["import", "a.csv"], &author[..]].concat(), 0);
    said(at, &[&["import", "b.csv"], &author[..]].concat(), 0);
    let holds = |name: &str| {
        ["n.tautline", "n.tautline-wal"].iter().any(|file| {
            let bytes = std::fs::read(at.join(file)).unwrap_or_default();
            bytes.windows(name.len()).any(|part| part == name.as_bytes())
        })
    };
    let erase = |what: &[&str], status: i32| {
        said(at, &[&["erase", "--notebook", "n.tautline", "--author", "the office"], what].concat(), status)
    };
    assert!(erase(&["--person", "Nobody"], 3).contains("Nothing in the notebook names"));
    let cover = said(at, &["cover", "--csv", "--notebook", "n.tautline"], 0);
    // shown first, and nothing done
    let shown = erase(&["--person", "Invented Person"], 0);
    assert!(shown.contains("line 1, 2026-06-09") && shown.contains("can never be got back"), "{shown}");
    assert!(holds("Invented Person"));
    let done = erase(&["--person", "Invented Person", "--yes"], 0);
    assert!(done.contains("without the name"), "{done}");
    assert!(!holds("Invented Person"), "the name is gone from the disk");
    assert_eq!(said(at, &["cover", "--csv", "--notebook", "n.tautline"], 0), cover, "the readings stay");
    // a reader, named in the readings themselves
    erase(&["--person", "reader A", "--instead", "reader X", "--yes"], 0);
    let after = said(at, &["cover", "--csv", "--notebook", "n.tautline"], 0);
    assert_eq!(after, cover.replace("reader A", "reader X"));
    assert!(
        said(at, &["erase", "--person", "same", "--author", "same", "--notebook", "n.tautline"], 2)
            .contains("--author")
    );
    erase(&["--site", "Invented", "--yes"], 0);
    assert!(!holds("reader X") && !holds("ATCA"));
    said(at, &["cover", "--csv", "--notebook", "n.tautline"], 3);
    let left = said(at, &["history", "--blanked", "--notebook", "n.tautline"], 0);
    assert!(left.contains("a record") && left.contains("the office"), "{left}");
}

#[test]
fn what_can_t_be_used_is_refused_and_left_alone() {
    let folder = folder();
    let at = folder.path();
    let csv = sheet(at, "a.csv", 17);
    let before = std::fs::read(&csv).unwrap();
    assert!(said(at, &["import", "a.csv", "--notebook", "a.csv"], 4).contains("is no notebook"));
    assert_eq!(std::fs::read(&csv).unwrap(), before);
    assert!(said(at, &["cover", "--notebook", "none.tautline"], 4).contains("there is no such notebook"));
    assert!(!at.join("none.tautline").exists());
    said(at, &["import", "a.csv", "--notebook", "n.tautline"], 0);
    said(at, &["backup", "b.tautline", "--notebook", "n.tautline"], 0);
    assert!(
        said(at, &["backup", "b.tautline", "--notebook", "n.tautline"], 4).contains("no other file's place")
    );
    said(at, &["cover", "a.csv", "--notebook", "n.tautline"], 2);
    said(at, &["restore", "--notebook", "n.tautline"], 2);
    assert!(said(at, &["settle", "--keep", "ffff", "--notebook", "n.tautline"], 2).contains("ffff"));
    assert_eq!(full_copy(at, "n.tautline").lines().count(), 6);
}

/// What was promised is kept with its corrections, and names what was left open.
#[test]
fn objectives_triggers_and_decisions() {
    let folder = folder();
    let at = folder.path();
    let book = ["--notebook", "n.tautline", "--site", "Invented"];
    let objective =
        ["ledger", "objective", "--name", "spring", "--goal", "at least 15 %", "--confidence", "90"];
    let first = said(at, &[&objective[..], &book[..]].concat(), 0);
    assert!(first.contains("Left open") && first.contains("agreed"), "{first}");
    assert!(said(at, &[&objective[..], &book[..]].concat(), 0).contains("stands there already"));
    let agreed = ["--agreed", "owner, 2026-03-01", "--smallest-change", "4", "--false-alarm", "10"];
    let agreed = [&agreed[..], &["--looks", "6 to 18 by 3"]].concat();
    said(at, &[&objective[..], &agreed, &book[..]].concat(), 0);
    let trigger =
        ["ledger", "trigger", "--name", "low", "--when", "not met twice", "--then", "rest a spring"];
    said(at, &[&trigger[..], &book[..]].concat(), 0);
    let decide = ["ledger", "decide", "--date", "2028-07-01", "--trigger", "low", "--read", "12.1 %"];
    let decided = ["--decided", "rest in 2029", "--by", "owner", "--again", "2029-09-01"];
    said(at, &[&decide[..], &decided, &book[..]].concat(), 0);
    let shown = said(at, &["ledger", "show", "--notebook", "n.tautline"], 0);
    for part in [
        "at least 15 %",
        "owner (2026-03-01)",
        "rest a spring",
        "look again: 2029-09-01",
        "4.0 %",
        "6 to 18 by 3",
    ] {
        assert!(shown.contains(part), "{part}: {shown}");
    }
    assert_eq!(shown.matches("“spring”").count(), 1, "the correction stands, not both: {shown}");
    assert!(shown.contains("Nobody is named who agreed"), "{shown}");
    // it is kept with what it was before, and comes through lines of JSON
    let lines = full_copy(at, "n.tautline");
    assert_eq!(lines.matches("\"kind\":\"objective\"").count(), 2);
    std::fs::write(at.join("lines.jsonl"), lines).unwrap();
    said(at, &["import", "lines.jsonl", "--notebook", "other.tautline"], 0);
    assert!(said(at, &["ledger", "show", "--notebook", "other.tautline"], 0).contains("rest in 2029"));
    // under another name it goes on as the same record; a name that is taken is refused
    said(
        at,
        &[&["ledger", "objective", "--name", "fall", "--goal", "at least 9 %"][..], &book[..]].concat(),
        0,
    );
    let rename = |from: &str, to: &str, code| {
        said(at, &[&["ledger", "rename", "--name", from, "--to", to][..], &book[..]].concat(), code)
    };
    assert!(rename("spring", "fall", 1).contains("Another goal"));
    assert!(rename("winter", "spring", 3).contains("winter"));
    assert!(rename("spring", "spring browse", 0).contains("is called"));
    let shown = said(at, &["ledger", "show", "--notebook", "n.tautline"], 0);
    assert!(shown.contains("“spring browse”") && !shown.contains("“spring”"), "{shown}");
    assert!(shown.contains("at least 15 %") && shown.contains("owner (2026-03-01)"), "{shown}");
    rename("spring browse", "spring", 0);
    assert_eq!(full_copy(at, "n.tautline").matches("\"kind\":\"objective\"").count(), 5);
    // what is taken back counts no more, and is there in the history
    let withdraw = ["ledger", "withdraw", "--name", "spring", "--reason", "another pasture now"];
    assert!(said(at, &[&withdraw[..], &book[..]].concat(), 0).contains("Taken back"));
    let shown = said(at, &["ledger", "show", "--notebook", "n.tautline"], 0);
    assert!(!shown.contains("“spring”") && shown.contains("rest a spring"), "{shown}");
    assert_eq!(full_copy(at, "n.tautline").matches("\"kind\":\"objective\"").count(), 6);
    said(at, &[&withdraw[..], &book[..]].concat(), 3);
    let trigger = ["ledger", "withdraw", "--trigger", "--name", "low"];
    said(at, &[&trigger[..], &book[..]].concat(), 0);
    for wrong in [["--false-alarm", "lots"], ["--looks", "18 to 6"]] {
        said(at, &[&objective[..6], &wrong, &book[..]].concat(), 2);
    }
}

/// A JPEG of 4 by 3 pixels without any, which is all that is looked at here: SOI, SOF0, SOS, EOI (ISO/IEC 10918-1, annex B).
const PHOTO: &[u8] = b"\xFF\xD8\xFF\xC0\x00\x0B\x08\x00\x03\x00\x04\x01\x01\x11\x00\xFF\xDA\x00\x08\x01\x01\x00\x00\x3F\x00\x37\xFF\xD9";

#[test]
fn photos_go_in_come_out_and_travel_with_every_copy() {
    let folder = folder();
    let at = folder.path();
    sheet(at, "a.csv", 18);
    said(at, &["import", "a.csv", "--notebook", "n.tautline"], 0);
    std::fs::write(at.join("zero.jpg"), PHOTO).unwrap();
    std::fs::write(at.join("no.jpg"), "no photo").unwrap();
    let add = |files: &[&str], more: &[&str], status| {
        said(at, &[&["photo", "add"], files, &["--notebook", "n.tautline"], more].concat(), status)
    };
    let line = ["--line", "1", "--at", "start", "--date", "2026-06-09", "--person", "reader A"];
    assert!(add(&["zero.jpg"], &line, 0).contains("from the zero, 2026-06-09, without a place"));
    assert!(add(&["zero.jpg"], &line, 0).contains("No photo is new"));
    // none of several goes in where one can't
    add(&["zero.jpg", "no.jpg"], &["--at", "opening"], 4);
    assert!(add(&["zero.jpg"], &["--line", "9", "--at", "end"], 2).contains("1, 2"));
    let list = |notebook: &str| said(at, &["photo", "list", "--notebook", notebook], 0);
    assert_eq!(list("n.tautline").matches("4 × 3").count(), 1);
    // as a backup, as lines of JSON, and joined with another notebook
    said(at, &["backup", "b.tautline", "--notebook", "n.tautline"], 0);
    std::fs::write(at.join("n.jsonl"), full_copy(at, "n.tautline")).unwrap();
    for (copy, into) in [("b.tautline", "c.tautline"), ("n.jsonl", "d.tautline")] {
        assert!(said(at, &["import", copy, "--notebook", into], 0).contains("one photo"));
        let out = format!("out-{into}");
        said(at, &["photo", "out", &out, "--notebook", into], 0);
        let files: Vec<_> =
            std::fs::read_dir(at.join(out)).unwrap().map(|file| file.unwrap().path()).collect();
        assert_eq!(files.len(), 1);
        assert!(files[0].to_string_lossy().contains("Invented_1_start_2026-06-09_"), "{files:?}");
        assert_eq!(std::fs::read(&files[0]).unwrap(), PHOTO);
    }
    // the person who can be seen on it is forgotten, and the bytes with them; an old copy brings nothing back
    said(at, &["erase", "--person", "reader A", "--notebook", "n.tautline", "--yes"], 0);
    said(at, &["import", "n.jsonl", "--notebook", "n.tautline"], 0);
    assert!(list("n.tautline").contains("No photo"));
    assert!(!std::fs::read(at.join("n.tautline")).unwrap().windows(PHOTO.len()).any(|part| part == PHOTO));
}

/// A grey JPEG of 2000 by 1500 pixels, taken at 38° 30' north and 113° 15' west (Exif 2.32, 4.6.6, on TIFF 6.0, section 2).
fn large_photo() -> Vec<u8> {
    let entry = |tag: u16, kind: u16, count: u32, value: [u8; 4]| {
        [&tag.to_be_bytes()[..], &kind.to_be_bytes(), &count.to_be_bytes(), &value].concat()
    };
    let degrees = |degrees: u32, minutes: u32| -> Vec<u8> {
        [degrees, 1, minutes, 1, 0, 1].into_iter().flat_map(u32::to_be_bytes).collect()
    };
    // the first directory at 8 points to the one of places at 26, and that to its fractions at 80 and 104
    let tiff = [
        b"MM\0*\0\0\0\x08\0\x01".to_vec(),
        entry(0x8825, 4, 1, 26_u32.to_be_bytes()),
        b"\0\0\0\0\0\x04".to_vec(),
        entry(1, 2, 2, *b"N\0\0\0"),
        entry(2, 5, 3, 80_u32.to_be_bytes()),
        entry(3, 2, 2, *b"W\0\0\0"),
        entry(4, 5, 3, 104_u32.to_be_bytes()),
        vec![0; 4],
        degrees(38, 30),
        degrees(113, 15),
    ];
    let mut bytes = Vec::new();
    let mut encoder = jpeg_encoder::Encoder::new(&mut bytes, 90);
    encoder.add_exif_metadata(&tiff.concat()).unwrap();
    encoder.encode(&vec![128; 2000 * 1500], 2000, 1500, jpeg_encoder::ColorType::Luma).unwrap();
    bytes
}

/// As in the app, what a large photo says of its place goes into the record, and a smaller picture into the notebook.
#[test]
fn a_large_photo_is_made_smaller_unless_somebody_says_otherwise() {
    let folder = folder();
    let at = folder.path();
    sheet(at, "a.csv", 18);
    said(at, &["import", "a.csv", "--notebook", "n.tautline"], 0);
    let large = large_photo();
    std::fs::write(at.join("large.jpg"), &large).unwrap();
    let add = |more: &[&str]| {
        let opening = ["photo", "add", "large.jpg", "--notebook", "n.tautline", "--at", "opening"];
        said(at, &[&opening[..], more].concat(), 0)
    };
    let first = add(&[]);
    assert!(first.contains("One was made smaller, its longest edge 1600 pixels"), "{first}");
    assert!(add(&[]).contains("No photo is new"), "the same file gives the same bytes");
    assert!(add(&["--full-size"]).contains("kept byte for byte"));
    let list = said(at, &["photo", "list", "--notebook", "n.tautline"], 0);
    assert_eq!((list.matches("1600 × 1200").count(), list.matches("2000 × 1500").count()), (1, 1), "{list}");
    assert_eq!(list.matches("38.5").count(), 2, "{list}");
    said(at, &["photo", "out", "out", "--notebook", "n.tautline"], 0);
    let mut out: Vec<Vec<u8>> = std::fs::read_dir(at.join("out"))
        .unwrap()
        .map(|file| std::fs::read(file.unwrap().path()).unwrap())
        .collect();
    out.sort_by_key(Vec::len);
    assert_eq!(out.len(), 2);
    assert!(!out[0].windows(4).any(|part| part == b"Exif") && out[1] == large);
}

/// Six lines of 9 to 11 % cover: at 90 % to each side the mean of 10 % is above 8 %, below 15 %, and neither to either side of 10 %
/// (Student's t by hand: 10 ± 1.476 · 0.894 / √6).
#[test]
fn promises_stand_beside_the_figures() {
    let folder = folder();
    let at = folder.path();
    let row = |(line, stop)| format!("Invented,{line},2027-06-01,10 m,ATCA,100,{stop}\n");
    let rows = (1..).zip([190, 190, 200, 200, 210, 210]).map(row).collect::<Vec<_>>().concat();
    std::fs::write(
        at.join("r.csv"),
        format!("site,line,date,line length,species,start (cm),stop (cm)\n{rows}"),
    )
    .unwrap();
    said(at, &["import", "r.csv", "--notebook", "n.tautline"], 0);
    let book = ["--notebook", "n.tautline"];
    let promises = [
        ("low", "at most 15 %", "2026-03-01", "is reached; at most 15 % is met"),
        ("lower", "at most 8 %", "2026-03-01", "is not reached"),
        ("near", "at most 10 %", "2026-03-01", "isn't shown yet"),
        ("later", "at most 15 %", "2028-01-01", ""),
    ];
    for (name, number, agreed, _) in promises {
        let call = [
            "ledger",
            "trigger",
            "--site",
            "Invented",
            "--name",
            name,
            "--when",
            name,
            "--then",
            "rest a spring",
        ];
        said(
            at,
            &[&call[..], &["--at", number, "--agreed", &format!("owner, {agreed}")], &book[..]].concat(),
            0,
        );
    }
    let objective =
        ["ledger", "objective", "--site", "Invented", "--name", "spring", "--goal", "at least 8 %"];
    said(at, &[&objective[..], &book[..]].concat(), 0);
    let words = ["ledger", "trigger", "--name", "dry", "--when", "two dry springs", "--then", "meet"];
    said(at, &[&words[..], &book[..]].concat(), 0);
    let shown =
        said(at, &[&["assess"][..], &book[..]].concat(), 0).split_whitespace().collect::<Vec<_>>().join(" ");
    said(at, &[&["assess", "--report", "r.html"][..], &book[..]].concat(), 0);
    let page = std::fs::read_to_string(at.join("r.html")).unwrap();
    for (name, _, _, answer) in promises.into_iter().filter(|one| !one.3.is_empty()) {
        assert!(
            shown.contains(&format!("“{name}” {answer}"))
                || shown.contains(&format!("whether “{name}” is reached {answer}")),
            "{name}: {shown}"
        );
        assert!(page.contains(&format!("Promised beforehand: “{name}”")), "{name}");
    }
    assert!(
        shown.contains("words that no figure answers") && shown.contains("owner (2026-03-01)"),
        "{shown}"
    );
    assert!(shown.contains("The goal of at least 8 % for canopy cover is met"), "{shown}");
    assert!(!shown.contains("later"), "agreed after the year that was read: {shown}");
}
