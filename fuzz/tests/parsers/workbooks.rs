//! Spreadsheets whose parts say what no program would write.

use crate::EACH;
use crate::text::text;
use bolero::check;
use std::io::{Cursor, Write as _};
use tautline_exchange::{Options, Source, read};
use tautline_survey::check::check as look_through;
use tautline_survey::line::{Choice, line_result};
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, ZipWriter};

/// What stands in a sheet of either kind.
const PIECES: &[&str] = &[
    "<row>",
    "<row r=\"1\">",
    "<row r=\"1048577\">",
    "</row>",
    "<c>",
    "<c r=\"A1\">",
    "<c r=\"XFD9\">",
    "<c r=\"ZZZZ1\">",
    "<c t=\"inlineStr\">",
    "<c t=\"s\">",
    "<c t=\"b\">",
    "<c t=\"e\">",
    "<c s=\"9\">",
    "</c>",
    "<v>",
    "</v>",
    "<is><t>",
    "</t></is>",
    "<f>1+1</f>",
    "<mergeCell ref=\"A1:C2\"/>",
    "<mergeCell ref=\"B9:A1\"/>",
    "<table:table table:name=\"T\">",
    "</table:table>",
    "<table:table-row>",
    "<table:table-row table:number-rows-repeated=\"1000000\">",
    "</table:table-row>",
    "<table:table-cell/>",
    "<table:table-cell table:number-columns-repeated=\"99999\"/>",
    "<table:table-cell office:value-type=\"float\" office:value=\"1e999\"/>",
    "<table:table-cell office:value-type=\"date\" office:date-value=\"2026-02-30\"/>",
    "<table:table-cell office:value-type=\"string\"><text:p>",
    "</text:p></table:table-cell>",
    "<table:table-cell table:number-columns-spanned=\"3\" table:number-rows-spanned=\"2\">",
    "</table:table-cell>",
    "<table:covered-table-cell/>",
    "site",
    "line",
    "line length",
    "species",
    "start (in)",
    "stop (in)",
    "1",
    "2",
    "46024",
    "0.5",
    "-1",
    "1e308",
    "NaN",
    "65 ft",
    "ATCA",
    "&lt;",
    "&#0;",
    "&nope;",
    "<!--",
    "-->",
    "<![CDATA[",
    "]]>",
    "<",
    ">",
    " ",
];

fn packed(parts: &[(&str, &[u8])]) -> Vec<u8> {
    let mut out = ZipWriter::new(Cursor::new(Vec::new()));
    let options = SimpleFileOptions::default().compression_method(CompressionMethod::Stored);
    for (name, bytes) in parts {
        out.start_file(*name, options).expect("memory takes a file");
        out.write_all(bytes).expect("memory takes bytes");
    }
    out.finish().expect("memory takes an end").into_inner()
}

fn around(head: &str, middle: &[u8], tail: &str) -> Vec<u8> {
    [head.as_bytes(), middle, tail.as_bytes()].concat()
}

fn xlsx(sheet: &[u8]) -> Vec<u8> {
    const MAIN: &str = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    const RELATED: &str = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    const PACKAGE: &str = "http://schemas.openxmlformats.org/package/2006";
    let related = |kind: &str, target: &str| {
        format!(
            r#"<Relationships xmlns="{PACKAGE}/relationships"><Relationship Id="r1" Type="{RELATED}/{kind}" Target="{target}"/></Relationships>"#
        )
    };
    let book = format!(
        r#"<workbook xmlns="{MAIN}" xmlns:r="{RELATED}"><sheets><sheet name="S" sheetId="1" r:id="r1"/></sheets></workbook>"#
    );
    let head = format!(r#"<worksheet xmlns="{MAIN}"><sheetData>"#);
    packed(&[
        ("[Content_Types].xml", format!(r#"<Types xmlns="{PACKAGE}/content-types"/>"#).as_bytes()),
        ("_rels/.rels", related("officeDocument", "xl/workbook.xml").as_bytes()),
        ("xl/workbook.xml", book.as_bytes()),
        ("xl/_rels/workbook.xml.rels", related("worksheet", "worksheets/sheet1.xml").as_bytes()),
        ("xl/worksheets/sheet1.xml", &around(&head, sheet, "</sheetData></worksheet>")),
    ])
}

fn ods(tables: &[u8]) -> Vec<u8> {
    const OPEN: &str = "urn:oasis:names:tc:opendocument:xmlns";
    let head = format!(
        r#"<office:document-content xmlns:office="{OPEN}:office:1.0" xmlns:table="{OPEN}:table:1.0" xmlns:text="{OPEN}:text:1.0"><office:body><office:spreadsheet>"#
    );
    let whole = around(&head, tables, "</office:spreadsheet></office:body></office:document-content>");
    packed(&[("mimetype", b"application/vnd.oasis.opendocument.spreadsheet"), ("content.xml", &whole)])
}

#[test]
fn workbook() {
    check!(name = "workbook").with_test_time(EACH).for_each(|bytes: &[u8]| {
        let inner = text(bytes, PIECES);
        for (name, bytes) in
            [("a.xlsx", xlsx(&inner)), ("a.ods", ods(&inner)), ("a.zip", packed(&[("a.csv", &inner)]))]
        {
            let mut read = read(&[Source { name: name.into(), bytes }], &Options::default());
            for place in read.input.findings.iter().filter_map(|finding| finding.place.as_ref()) {
                assert!(place.file.starts_with(name), "{place:?}");
            }
            look_through(&mut read.input);
            for visit in 0..read.input.visits.len() {
                let _ = line_result(&read.input, visit, &Choice::default());
            }
        }
    });
}
