//! Files that nobody would call a sheet: each is refused in words, or read as far as it goes. All data is invented.

use std::io::Read as _;
use tautline_exchange::limits::{LARGEST_FILE, LARGEST_PROTOCOL, LONGEST_ROW, LONGEST_SHOWN, MOST_COLUMNS};
use tautline_exchange::{Options, Read, Source, read};
use tautline_survey::message::Value;

fn bytes(name: &str, bytes: Vec<u8>) -> Read {
    read(&[Source { name: name.into(), bytes }], &Options::default())
}

/// Code and row of every finding.
fn found(read: &Read) -> Vec<(&'static str, u64)> {
    let findings = read.input.findings.iter();
    findings.map(|one| (one.message.code, one.place.as_ref().map_or(0, |place| place.row))).collect()
}

const HEAD: &str = "site,line,line length,species,start (cm),stop (cm)\n";
const ROW: &str = "A,1,20 m,SHAD,3,4\n";

#[test]
fn what_is_no_text() {
    for binary in [
        b"\0".to_vec(),
        b"\x89PNG\r\n\x1a\n\x01\x02\x03\x04".to_vec(),
        [HEAD.as_bytes(), b"A,1,20 m,SH\0AD,3,4\n"].concat(),
        (0..=255).cycle().take(5000).collect(),
    ] {
        for name in ["a.csv", "a.sheet", "a.toml", "-"] {
            assert_eq!(found(&bytes(name, binary.clone())), [("file-not-text", 0)], "{name}");
        }
    }
}

/// The beginning of a packed file, and no more of it: without the feature that opens them, it is no text.
#[test]
fn a_packed_file_that_is_cut_off() {
    let code = if cfg!(feature = "workbooks") { "packed-damaged" } else { "file-not-text" };
    for name in ["a.csv", "a.xlsx", "a.toml", "-"] {
        assert_eq!(found(&bytes(name, b"PK\x03\x04\x14\0\x06\0\x08\0".to_vec())), [(code, 0)], "{name}");
    }
}

/// A spreadsheet's “Unicode text” is UTF-16 with tabs.
#[test]
fn utf_16_is_read() {
    let text = format!("\u{feff}{}", (HEAD.to_owned() + "Piñon Flat,1,20 m,SHAD,3,4\n").replace(',', "\t"));
    let little: Vec<u8> = text.encode_utf16().flat_map(u16::to_le_bytes).collect();
    let big: Vec<u8> = text.encode_utf16().flat_map(u16::to_be_bytes).collect();
    for whole in [little, big] {
        let read = bytes("a.txt", whole.clone());
        assert_eq!((found(&read), read.input.visits[0].site.as_str()), (vec![], "Piñon Flat"));
        // broken off inside a character
        let cut = bytes("a.txt", whole[..whole.len() - 1].to_vec());
        assert_eq!(found(&cut)[0].0, "file-cut-off");
    }
}

#[test]
fn other_encodings_are_named_and_broken_ones_too() {
    let windows = bytes("a.csv", [HEAD.as_bytes(), b"Pi\xf1on,1,20 m,SHAD,3,4\n"].concat());
    assert_eq!(
        (found(&windows), windows.input.visits[0].site.as_str()),
        (vec![("file-read-as-windows-1252", 2)], "Piñon")
    );
    let cut = bytes(
        "a.csv",
        [HEAD, "ñ,1,20 m,SHAD,3,4\nñ,1,20 m,SHAD,5,6\nñ"].concat().into_bytes()[..]
            .split_last()
            .unwrap()
            .1
            .to_vec(),
    );
    assert_eq!(found(&cut), [("file-cut-off", 4)]);
    assert_eq!(cut.input.visits[0].intercepts.len(), 2);
}

/// Broken off anywhere: no row is made up, and every row that stands whole is read.
#[test]
fn a_file_broken_off_anywhere() {
    let whole = HEAD.to_owned() + ROW + "A,1,20 m,SHAD,7,8\n";
    for end in 0..whole.len() {
        let read = bytes("a.csv", whole.as_bytes()[..end].to_vec());
        let intercepts = read.input.visits.first().map_or(0, |visit| visit.intercepts.len());
        let rows = whole[..end].matches('\n').count().saturating_sub(1);
        assert!(intercepts >= rows.min(2) && intercepts <= 2, "{end}");
    }
}

#[test]
fn one_row_longer_than_any_row() {
    let long = "x".repeat(LONGEST_ROW + 1);
    for text in [long.clone(), format!("{HEAD}{ROW}A,1,20 m,{long},3,4\n"), "a,".repeat(LONGEST_ROW)] {
        let row = text.matches('\n').count() as u64;
        let expected = if row == 0 { 1 } else { row };
        for name in ["a.csv", "a.sheet", "a.toml"] {
            assert_eq!(
                found(&bytes(name, text.clone().into_bytes())),
                [("row-beyond-reading", expected)],
                "{name}"
            );
        }
    }
}

#[test]
fn more_columns_than_any_table_has() {
    let text = format!("{}{}\nA,1\n", HEAD.trim_end(), ",x".repeat(MOST_COLUMNS));
    assert_eq!(found(&bytes("a.csv", text.into_bytes())), [("too-many-columns", 1)]);
}

/// What is found in a cell is kept short in the message, so that a hundred long cells aren't kept twice.
#[test]
fn a_long_cell_is_shown_short() {
    let long = "x".repeat(100_000);
    let read = bytes("a.csv", format!("{HEAD}A,1,20 m,SHAD,{long},4\n{long},{long}\n").into_bytes());
    assert!(!read.input.findings.is_empty());
    for (_, value) in read.input.findings.iter().flat_map(|finding| &finding.message.values) {
        if let Value::Text(text) = value {
            assert!(text.chars().count() <= LONGEST_SHOWN + 1);
        }
    }
    let typed = bytes("-", format!("Unit: in\nLine 1, 65 ft\nATCA 12-{long}\n").into_bytes());
    let excerpt = typed.input.findings[0].excerpt.as_ref().unwrap();
    assert!(excerpt.text.chars().count() < 100);
}

/// A file without end is read to the limit and no further, and refused.
#[test]
fn a_file_without_end() {
    struct Endless(u64);
    impl std::io::Read for Endless {
        fn read(&mut self, buffer: &mut [u8]) -> std::io::Result<usize> {
            buffer.fill(b'x');
            self.0 += buffer.len() as u64;
            // asked for far more than the limit, it breaks off, and the test with it
            if self.0 < LARGEST_FILE + 64 * 1024 * 1024 {
                Ok(buffer.len())
            } else {
                Err(std::io::ErrorKind::Other.into())
            }
        }
    }
    let source = Source::open("-", Endless(0)).unwrap();
    assert_eq!(source.bytes.len() as u64, LARGEST_FILE + 1);
    assert_eq!(found(&read(&[source], &Options::default())), [("file-too-large", 0)]);
    let mut zeros = std::io::repeat(0).take(u64::MAX);
    assert_eq!(
        found(&read(&[Source::open("-", &mut zeros).unwrap()], &Options::default())),
        [("file-not-text", 0)]
    );
}

#[test]
fn a_protocol_as_long_as_a_book() {
    let text = "# x\n".repeat(usize::try_from(LARGEST_PROTOCOL / 4 + 1).unwrap());
    assert_eq!(found(&bytes("a.toml", text.into_bytes())), [("protocol-too-large", 0)]);
    // brackets within brackets without end
    let deep = format!("name = {}", "[".repeat(100_000));
    assert_eq!(found(&bytes("a.toml", deep.into_bytes()))[0].0, "protocol-not-toml");
}

/// A table that a spreadsheet keeps from working out its cells reads back as it was.
#[test]
fn formulas_come_back_as_text() {
    let cells = ["=HYPERLINK(\"x\")", "+A1", "@SUM(1)", "'=1", "-x"];
    let rows: String =
        cells.iter().map(|cell| tautline_exchange::table::row(&["A", "1", "20 m", cell, "3", "4"])).collect();
    assert!(rows.lines().all(|row| row.contains('\'')), "{rows}");
    let read = bytes("a.csv", (HEAD.to_owned() + &rows).into_bytes());
    let species: Vec<&str> = read.input.visits[0].intercepts.iter().map(|one| one.species.as_str()).collect();
    assert_eq!(species, cells);
}

/// Tables of sites and of where lines lie: what isn't understood is named, and nothing is told by mistake.
#[test]
fn places_and_sites_that_nobody_would_write() {
    use tautline_survey::place::Openness;
    let long = "9".repeat(5000);
    for position in [
        "",
        "x",
        "1e400",
        "NaN",
        "inf",
        "-0x1",
        "999999999999",
        "90.0000000001",
        "٣٨",
        "+-1",
        "..",
        ",",
        &long,
    ] {
        let head = "site,line,line length,start latitude,start longitude,end latitude,end longitude\n";
        let read = bytes("lines.csv", format!("{head}A,1,20 m,\"{position}\",\"{position}\",1,1\n").into());
        assert_eq!(read.input.places, [], "{position}");
        assert_eq!(found(&read).len(), 1, "{position}: {:?}", read.input.findings);
        assert_eq!(read.input.plan.len(), 1, "the line is kept");
    }
    for places in [
        "blurred",
        "blurred 0 km",
        "blurred -5 km",
        "blurred 99999999999999999999 km",
        "exactly",
        "no",
        &long,
    ] {
        let read = bytes("sites.csv", format!("site,places\nA,{places}\n").into());
        assert_eq!(read.input.openness("A"), Openness::Withheld, "{places}");
        assert_eq!(found(&read), [("places-not-known", 2)], "{places}");
    }
    let read = bytes("sites.csv", b"site,nest\nA,perhaps\n".to_vec());
    assert_eq!(read.input.openness("A"), Openness::Withheld);
}
