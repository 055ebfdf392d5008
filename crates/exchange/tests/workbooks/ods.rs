//! OpenDocument.

use crate::make::{ods, row};
use crate::{INCH, found, intercepts, reads};

const HEADINGS: [&str; 7] = ["site", "line", "line length", "date", "species", "start (in)", "stop (in)"];

/// Days, numbers and shares by their values, whatever the text in the cell shows; rows and cells that say they stand twice.
#[test]
fn cells_by_their_values() {
    let table = format!(
        r#"<table:table table:name="Lines &amp; more">{}<table:table-row table:number-rows-repeated="3"/><table:table-row>
<table:table-cell office:value-type="string"><text:p>Hollow<text:s/>Flat</text:p></table:table-cell>
<table:table-cell office:value-type="float" office:value="1"><text:p>1</text:p></table:table-cell>
<table:table-cell office:value-type="string"><office:annotation><text:p>checked</text:p></office:annotation><text:p>65 ft</text:p></table:table-cell>
<table:table-cell office:value-type="date" office:date-value="2026-06-09"><text:p>09.06.26</text:p></table:table-cell>
<table:table-cell office:value-type="string"><text:p>ATCA</text:p></table:table-cell>
<table:table-cell office:value-type="date" office:date-value="2026-01-02T00:00:00"><text:p>1/2</text:p></table:table-cell>
<table:table-cell office:value-type="float" office:value="40.5"><text:p>40,5</text:p></table:table-cell>
<table:table-cell table:number-columns-repeated="16377"/></table:table-row>
<table:table-row table:number-rows-repeated="1048571"><table:table-cell table:number-columns-repeated="16384"/></table:table-row></table:table>"#,
        row(&HEADINGS)
    );
    let read = reads("flats.ods", ods(&table));
    assert_eq!(found(&read), [("day-was-a-fraction", 5, "start (in)")]);
    assert_eq!(intercepts(&read), [("1", "ATCA", INCH / 2, 81 * INCH / 2)]);
    let visit = &read.input.visits[0];
    assert_eq!(
        (visit.site.as_str(), visit.date.unwrap().to_string().as_str()),
        ("Hollow Flat", "2026-06-09")
    );
    assert_eq!(visit.place.as_ref().unwrap().file, "flats.ods: Lines & more");
    assert_eq!(read.input.plan[0].length.as_ref().unwrap().typed(), "65 ft");
}

/// Merged downwards, the site speaks for each of its rows; numbers kept as text with a comma are read with one.
#[test]
fn merged_cells_and_decimal_commas() {
    let first = r#"<table:table-row><table:table-cell office:value-type="string" table:number-rows-spanned="2"><text:p>Rim Draw</text:p></table:table-cell>"#;
    let second = "<table:table-row><table:covered-table-cell/>";
    let rest = |start: &str, stop: &str| {
        let whole = row(&["2", "20 m", "", "KRLA", start, stop]);
        whole.trim_start_matches("<table:table-row>").to_owned()
    };
    let heads = row(&["site", "line", "line length", "date", "species", "start (cm)", "stop (cm)"]);
    let table = format!(
        r#"<table:table table:name="T">{heads}{first}{}{second}{}</table:table>"#,
        rest("1,5", "3"),
        rest("4", "5,25")
    );
    let read = reads("draw.ods", ods(&table));
    assert_eq!(found(&read), []);
    assert_eq!(
        intercepts(&read),
        [("2", "KRLA", 15_000_000, 30_000_000), ("2", "KRLA", 40_000_000, 52_500_000)]
    );
    assert!(read.input.visits.iter().all(|visit| visit.site == "Rim Draw"));
}
