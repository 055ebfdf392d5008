//! Office Open XML.

use crate::{INCH, found, intercepts, reads};
use rust_xlsxwriter::{ExcelDateTime, Format, Workbook, Worksheet};

const HEADINGS: [&str; 7] = ["site", "line", "line length", "date", "species", "start (in)", "stop (in)"];

fn head(sheet: &mut Worksheet, row: u32, cells: &[&str]) {
    for (column, cell) in (0..).zip(cells) {
        sheet.write(row, column, *cell).unwrap();
    }
}

fn day(year: u16, month: u8, day: u8) -> ExcelDateTime {
    ExcelDateTime::from_ymd(year, month, day).unwrap()
}

/// Several sheets, each what its headings say; numbers as numbers and as text; a real day in the date's column.
#[test]
fn sheets_of_a_workbook_are_tables() {
    let mut book = Workbook::new();
    let readings = book.add_worksheet().set_name("Readings").unwrap();
    head(readings, 0, &HEADINGS);
    let iso = Format::new().set_num_format("d/m/yyyy");
    readings.write(1, 0, "Hollow Flat").unwrap();
    readings.write(1, 1, 1).unwrap();
    readings.write(1, 2, "65 ft").unwrap();
    readings.write_with_format(1, 3, day(2026, 6, 9), &iso).unwrap();
    readings.write(1, 4, "ATCA").unwrap();
    readings.write(1, 5, "12").unwrap();
    readings.write(1, 6, 40.5).unwrap();
    let plants = book.add_worksheet().set_name("Plants").unwrap();
    head(plants, 0, &["code", "form"]);
    head(plants, 1, &["ATCA", "shrub"]);
    let notes = book.add_worksheet().set_name("Remarks").unwrap();
    notes.write(0, 0, "invented").unwrap();
    book.add_worksheet().set_name("Empty").unwrap();
    let read = reads("flats.xlsx", book.save_to_buffer().unwrap());
    assert_eq!(found(&read), [("sheets-left-out", 0, "")]);
    assert_eq!(intercepts(&read), [("1", "ATCA", 12 * INCH, 81 * INCH / 2)]);
    let visit = &read.input.visits[0];
    assert_eq!(visit.date.unwrap().to_string(), "2026-06-09");
    let place = visit.intercepts[0].place.as_ref().unwrap();
    assert_eq!((place.file.as_str(), place.row), ("flats.xlsx: Readings", 2));
    assert!(read.input.plants.find("ATCA").is_some());
    // one file, known by its bytes, however many sheets it has
    assert_eq!(read.input.files.len(), 1);
}

/// “1/2” typed into a spreadsheet becomes 2 January where months come first and 1 February where days do: a half both times.
#[test]
fn fractions_that_became_days() {
    let mut book = Workbook::new();
    let sheet = book.add_worksheet();
    head(sheet, 0, &HEADINGS);
    let short = Format::new().set_num_format("d-mmm");
    for (row, start, stop) in [(1, day(2026, 1, 2), day(2026, 7, 8)), (2, day(2026, 2, 1), day(2026, 8, 7))] {
        head(sheet, row, &["Hollow Flat", "1", "65 ft", "2026-06-09", "ATCA"]);
        sheet.write_with_format(row, 5, &start, &short).unwrap();
        sheet.write_with_format(row, 6, &stop, &short).unwrap();
    }
    let read = reads("flats.xlsx", book.save_to_buffer().unwrap());
    let half_to_seven_eighths = ("1", "ATCA", INCH / 2, INCH * 7 / 8);
    assert_eq!(intercepts(&read), [half_to_seven_eighths; 2]);
    assert_eq!(found(&read).len(), 4);
    assert_eq!(found(&read)[0], ("day-was-a-fraction", 2, "start (in)"));
    let about = read.input.findings[0].about.as_ref().unwrap();
    assert_eq!((about.site.as_str(), about.line.as_str()), ("Hollow Flat", "1"));
}

/// What can't be told is said and not guessed: 10-5 (ten feet five, or October 5?), and names.
#[test]
fn days_that_were_something_else() {
    let mut book = Workbook::new();
    let sheet = book.add_worksheet();
    head(sheet, 0, &HEADINGS);
    let short = Format::new().set_num_format("d-mmm");
    head(sheet, 1, &["Hollow Flat", "1", "65 ft", "2026-06-09", "ATCA", "", "90"]);
    sheet.write_with_format(1, 5, day(2026, 10, 5), &short).unwrap();
    head(sheet, 2, &["Hollow Flat", "1", "65 ft", "2026-06-09", "", "3", "4"]);
    sheet.write_with_format(2, 4, day(2026, 3, 4), &short).unwrap();
    head(sheet, 3, &["Hollow Flat", "1", "65 ft", "2026-06-09", "KRLA", "5", "6"]);
    let mut read = reads("flats.xlsx", book.save_to_buffer().unwrap());
    assert_eq!(intercepts(&read), [("1", "KRLA", 5 * INCH, 6 * INCH)]);
    let codes = [
        ("day-not-a-length", 2, "start (in)"),
        ("day-was-a-name", 3, "species"),
        ("length-unknown-unit", 2, "start (in)"),
    ];
    assert_eq!(found(&read), codes);
    // a line with a row that was set aside speaks for no site
    tautline_survey::check::check(&mut read.input);
    assert!(read.input.held.contains(&0));
}

/// A title, then two rows of headings with merged cells: the unit stands over both edges. The site is merged downwards.
#[test]
fn headings_in_two_rows_below_a_title() {
    let mut book = Workbook::new();
    let sheet = book.add_worksheet();
    let plain = Format::new();
    sheet.merge_range(0, 0, 0, 5, "Shrub lines, invented", &plain).unwrap();
    for (column, text) in [(0, "Site"), (1, "Line"), (2, "Line length (ft)"), (3, "Species")] {
        sheet.merge_range(2, column, 3, column, text, &plain).unwrap();
    }
    sheet.merge_range(2, 4, 2, 5, "Position (in)", &plain).unwrap();
    // merged downwards too, though nobody but the office knows it
    sheet.merge_range(2, 6, 3, 6, "Grazing", &plain).unwrap();
    head(sheet, 3, &["", "", "", "", "Start", "Stop"]);
    sheet.merge_range(4, 0, 5, 0, "Hollow Flat", &plain).unwrap();
    for row in 4..6 {
        sheet.write(row, 1, "1").unwrap();
        sheet.write(row, 2, 65).unwrap();
        sheet.write(row, 3, "ATCA").unwrap();
        sheet.write(row, 4, 10 * row).unwrap();
        sheet.write(row, 5, 10 * row + 5).unwrap();
    }
    sheet.write(5, 7, "by the road").unwrap();
    let read = reads("flats.xlsx", book.save_to_buffer().unwrap());
    assert_eq!(found(&read), [("rows-above-headings", 1, "")]);
    assert_eq!(intercepts(&read), [("1", "ATCA", 40 * INCH, 45 * INCH), ("1", "ATCA", 50 * INCH, 55 * INCH)]);
    assert_eq!(read.input.visits[0].site, "Hollow Flat");
    // a remark beside the table is kept under the letter of its column
    assert_eq!(read.input.visits[0].conditions, [("H".to_owned(), "by the road".to_owned())]);
}

/// A spreadsheet keeps 8 % as 0.08, and 12.3 as a sum of tenths with an error behind it.
#[test]
fn shares_and_sums() {
    let mut book = Workbook::new();
    let sheet = book.add_worksheet();
    head(sheet, 0, &["site", "line", "line length (m)", "slope (%)", "species", "start (cm)", "stop (cm)"]);
    head(sheet, 1, &["Hollow Flat", "1"]);
    sheet.write(1, 2, 20).unwrap();
    sheet.write_with_format(1, 3, 0.08, &Format::new().set_num_format("0%")).unwrap();
    sheet.write(1, 4, "ATCA").unwrap();
    sheet.write(1, 5, 0.1 + 0.2).unwrap();
    sheet.write_formula(1, 6, rust_xlsxwriter::Formula::new("=F2*41").set_result("12.3")).unwrap();
    let read = reads("flats.xlsx", book.save_to_buffer().unwrap());
    assert_eq!(found(&read), []);
    assert_eq!(intercepts(&read), [("1", "ATCA", 3_000_000, 123_000_000)]);
    let slope = read.input.plan[0].slope.unwrap();
    assert_eq!(slope, tautline_survey::plan::Slope::Grade(tautline_survey::goal::Percent(80_000)));
}

/// Every number of days that a spreadsheet could have kept of “a/b” gives the fraction back, or is refused.
#[test]
fn fractions_of_a_tape_come_back() {
    let mut book = Workbook::new();
    let sheet = book.add_worksheet();
    head(sheet, 0, &HEADINGS);
    let short = Format::new().set_num_format("d-mmm");
    let fractions: Vec<(u8, u8)> =
        [2_u8, 4, 8, 16].iter().flat_map(|&of| (1..of.min(13)).map(move |part| (part, of))).collect();
    for (row, &(part, of)) in (1..).zip(&fractions) {
        head(sheet, row, &["Hollow Flat", "1", "65 ft", "2026-06-09", "ATCA"]);
        sheet.write_with_format(row, 5, day(2026, part, of), &short).unwrap();
        sheet.write(row, 6, 2).unwrap();
    }
    let read = reads("flats.xlsx", book.save_to_buffer().unwrap());
    let expected: Vec<i64> =
        fractions.iter().map(|&(part, of)| INCH * i64::from(part) / i64::from(of)).collect();
    let starts: Vec<i64> = intercepts(&read).iter().map(|one| one.2).collect();
    assert_eq!(starts, expected);
}

/// Five feet eight typed as 5-8 is May 8, and two and a half typed as 2-1/2 is in the year 2002: neither is 5/8 nor a half.
#[test]
fn days_that_only_look_like_fractions() {
    let read_as = |heading: &str, moment: ExcelDateTime| {
        let mut book = Workbook::new();
        let sheet = book.add_worksheet();
        head(sheet, 0, &["site", "line", "line length", "species", heading, "stop"]);
        head(sheet, 1, &["Hollow Flat", "1", "65 ft", "ATCA", "", "60 ft"]);
        sheet.write_with_format(1, 4, &moment, &Format::new().set_num_format("d-mmm")).unwrap();
        let read = reads("flats.xlsx", book.save_to_buffer().unwrap());
        (read.input.visits[0].intercepts.len(), found(&read)[0].0.to_owned())
    };
    for heading in ["start (ft)", "start (decimal ft)", "start (ft-in)", "start"] {
        assert_eq!(read_as(heading, day(2026, 5, 8)), (0, "day-not-a-length".to_owned()), "{heading}");
    }
    assert_eq!(read_as("start (in)", day(2002, 2, 1)), (0, "day-not-a-length".to_owned()));
    assert_eq!(read_as("start (in)", day(2026, 2, 1)), (1, "day-was-a-fraction".to_owned()));
}
