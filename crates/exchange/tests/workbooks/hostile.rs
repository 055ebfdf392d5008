//! Packed files that nobody would call a workbook: each is refused in words, within bounded memory.

use crate::make::{ods, packed, row};
use crate::{found, reads};
use proptest::prelude::*;
use rust_xlsxwriter::Workbook;
use tautline_exchange::limits::{LARGEST_FILE, MOST_PACKED};

const HEADINGS: [&str; 6] = ["site", "line", "line length", "species", "start (in)", "stop (in)"];

fn xlsx() -> Vec<u8> {
    let mut book = Workbook::new();
    let sheet = book.add_worksheet();
    for (row, cells) in (0..).zip([HEADINGS, ["Hollow Flat", "1", "65 ft", "ATCA", "1", "2"]]) {
        for (column, cell) in (0..).zip(cells) {
            sheet.write(row, column, cell).unwrap();
        }
    }
    book.save_to_buffer().unwrap()
}

fn only_code(name: &str, bytes: Vec<u8>) -> String {
    let read = reads(name, bytes);
    let found = found(&read);
    assert_eq!(found.len(), 1, "{found:?}");
    found[0].0.to_owned()
}

/// Broken off anywhere: refused, or read whole.
#[test]
fn a_workbook_broken_off_anywhere() {
    for whole in [xlsx(), ods(&format!(r#"<table:table table:name="T">{}</table:table>"#, row(&HEADINGS)))] {
        assert_eq!(found(&reads("a.xlsx", whole.clone())), []);
        for end in (4..whole.len()).step_by(37) {
            assert_eq!(
                only_code("a.xlsx", whole[..end].to_vec()),
                "packed-damaged",
                "{end} of {}",
                whole.len()
            );
        }
    }
}

/// A few hundred kilobytes or a few megabytes that unpack to more than may be read: in one part, and in all together.
#[test]
fn a_small_file_that_unpacks_to_a_huge_one() {
    let zeros = vec![b' '; usize::try_from(LARGEST_FILE + 1).unwrap()];
    let bomb = packed(&[("a.csv", &zeros)]);
    assert!(bomb.len() < 1 << 19, "{}", bomb.len());
    assert_eq!(only_code("bomb.zip", bomb), "packed-too-large");
    // called like a sheet of a workbook, it is no shorter for it
    let named = packed(&[("xl/worksheets/a.csv", &zeros)]);
    assert_eq!(only_code("bomb.zip", named), "packed-too-large");
    let parts = ["a.csv", "b.csv", "c.csv", "d.csv", "e.csv"].map(|name| (name, &zeros[1..]));
    assert_eq!(only_code("bomb.zip", packed(&parts)), "packed-too-large");
}

/// A cell that says it stands a million times in a row that says so too; and one long text that stands in every row.
#[test]
fn cells_that_stand_without_end() {
    let everywhere = r#"<table:table-row table:number-rows-repeated="1048576"><table:table-cell office:value-type="string" table:number-columns-repeated="900"><text:p>x</text:p></table:table-cell></table:table-row>"#;
    let table = |rows: &str| ods(&format!(r#"<table:table table:name="T">{rows}</table:table>"#));
    assert_eq!(only_code("a.ods", table(everywhere)), "packed-too-large");
    let wide = r#"<table:table-row><table:table-cell office:value-type="string" table:number-columns-repeated="16384"><text:p>x</text:p></table:table-cell></table:table-row>"#;
    assert_eq!(only_code("a.ods", table(wide)), "workbook-too-wide");
    let long = format!(
        r#"<table:table-row table:number-rows-repeated="1048576"><table:table-cell office:value-type="string"><text:p>{}</text:p></table:table-cell></table:table-row>"#,
        "x".repeat(32_000)
    );
    assert_eq!(only_code("a.ods", table(&long)), "packed-too-large");
    let no_number = r#"<table:table-row table:number-rows-repeated="-1"/>"#;
    assert_eq!(only_code("a.ods", table(no_number)), "workbook-damaged");
}

/// Two cells in opposite corners of an XLSX sheet are two cells.
#[test]
fn cells_in_opposite_corners() {
    let mut book = Workbook::new();
    let sheet = book.add_worksheet();
    sheet.write(0, 0, "line").unwrap();
    sheet.write(1_048_575, 16_383, "x").unwrap();
    assert_eq!(only_code("a.xlsx", book.save_to_buffer().unwrap()), "workbook-too-wide");
    let mut book = Workbook::new();
    let sheet = book.add_worksheet();
    for (column, cell) in (0..).zip(HEADINGS) {
        sheet.write(0, column, cell).unwrap();
    }
    for (column, cell) in (0..).zip(["Hollow Flat", "1", "65 ft", "ATCA", "1", "2"]) {
        sheet.write(1_048_575, column, cell).unwrap();
    }
    let read = reads("a.xlsx", book.save_to_buffer().unwrap());
    assert_eq!(read.input.visits[0].place.as_ref().unwrap().row, 1_048_576);
}

/// Places that no sheet has, and ranges that end before they begin. Each would wrap round into a place that exists: 4294967297 is
/// row 1 once more.
#[test]
fn cells_outside_of_any_sheet() {
    for (cell, range) in
        [("A4294967297", "A1"), ("AAAAAAAAA1", "A1"), ("A1", "B2:A1"), ("A1", "A1:A4294967297"), ("1A", "A1")]
    {
        let sheet = format!(
            r#"<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData><row r="1"><c r="{cell}"><v>1</v></c></row></sheetData><mergeCells><mergeCell ref="{range}"/></mergeCells></worksheet>"#
        );
        assert_eq!(only_code("a.xlsx", packed_xlsx(&sheet)), "workbook-damaged", "{cell} {range}");
    }
}

/// Entities that name each other (the “billion laughs”, W3C XML 1.0 4.4) and one that names a file are never followed.
#[test]
fn entities_are_not_followed() {
    let head = r#"<?xml version="1.0"?><!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;"><!ENTITY f SYSTEM "file:///etc/passwd">]>"#;
    let body = r#"<office:document-content xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0"><table:table table:name="T"><table:table-row><table:table-cell><text:p>&b;&f;</text:p></table:table-cell></table:table-row></table:table></office:document-content>"#;
    for content in [format!("{head}{body}"), body.to_owned()] {
        assert_eq!(only_code("a.ods", packed(&[("content.xml", content.as_bytes())])), "workbook-damaged");
    }
    let sheet = r#"<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>&b;&f;</t></is></c></row></sheetData></worksheet>"#;
    let whole = packed_xlsx(&format!("{head}{sheet}"));
    let read = reads("a.xlsx", whole);
    assert_eq!(found(&read).len(), 1);
    assert!(!format!("{:?}", read.input.findings).contains("aaaaaaaaaa"));
}

/// The workbook of the tests with another sheet in place of its own.
fn packed_xlsx(sheet: &str) -> Vec<u8> {
    let whole = xlsx();
    let mut archive = zip::ZipArchive::new(std::io::Cursor::new(whole)).unwrap();
    let mut parts = Vec::new();
    for at in 0..archive.len() {
        let mut part = archive.by_index(at).unwrap();
        let name = part.name().unwrap().into_owned();
        let mut bytes = Vec::new();
        std::io::Read::read_to_end(&mut part, &mut bytes).unwrap();
        let is_sheet = name == "xl/worksheets/sheet1.xml";
        parts.push((name, if is_sheet { sheet.as_bytes().to_vec() } else { bytes }));
    }
    let parts: Vec<(&str, &[u8])> =
        parts.iter().map(|(name, bytes)| (name.as_str(), bytes.as_slice())).collect();
    packed(&parts)
}

#[test]
fn old_and_locked_spreadsheets_are_named() {
    assert_eq!(
        only_code("a.xls", b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1 more".to_vec()),
        "workbook-old-or-locked"
    );
    let many: Vec<(String, &[u8])> =
        (0..=MOST_PACKED).map(|at| (format!("{at}.csv"), b"".as_slice())).collect();
    let many: Vec<(&str, &[u8])> = many.iter().map(|(name, bytes)| (name.as_str(), *bytes)).collect();
    assert_eq!(only_code("a.zip", packed(&many)), "packed-too-large");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    /// Bytes changed anywhere: never a panic, and never silence about a file that gave nothing.
    #[test]
    fn any_bytes_changed(at in 4..4000_usize, to in any::<u8>(), ods_file in any::<bool>()) {
        let mut whole = if ods_file { ods(&format!(r#"<table:table table:name="T">{}</table:table>"#, row(&HEADINGS))) } else { xlsx() };
        let at = at % whole.len();
        whole[at] = to;
        let read = reads("a.xlsx", whole);
        prop_assert!(!read.input.findings.is_empty() || read.input.visits.len() == usize::from(!ods_file));
    }

    /// The sheet's own XML changed anywhere.
    #[test]
    fn any_sheet_changed(at in 0..300_usize, to in "[<>&;\"/a-z0-9]") {
        let mut sheet = r#"<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>line</t></is></c><c r="ZZZ99999" s="0"><v>1</v></c></row></sheetData><mergeCells><mergeCell ref="A1:XFD1048576"/></mergeCells></worksheet>"#.to_owned();
        let at = at % sheet.len();
        sheet.replace_range(at..=at, &to);
        reads("a.xlsx", packed_xlsx(&sheet));
    }
}
