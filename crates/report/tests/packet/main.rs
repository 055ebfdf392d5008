//! The packet says what the layout says, has a sheet for each line, and stands alone.

use super::*;
use tautline_survey::date::Date;
use tautline_survey::layout::{End, MapLine, MapStratum};
use tautline_survey::plan::Permission;
use tautline_survey::plants::GrowthForm;

fn line(name: &str, reserve: bool) -> LaidLine {
    let end = |latitude| End { latitude, longitude: -113.7, utm: "12 N 277000 4686000".to_owned() };
    LaidLine {
        line: name.to_owned(),
        stratum: Some("flat".to_owned()),
        plot: None,
        reserve,
        start: end(42.3),
        end: end(42.300_45),
        true_bearing: 350,
        magnetic_bearing: Some(338.6),
        draw: 1,
        turned: false,
        staked: false,
    }
}

fn layout() -> LayoutOutput {
    LayoutOutput {
        format: "tautline.plan-lines",
        version: 1,
        site: "Hollow Flat <invented>".to_owned(),
        seed: 1,
        design: "balanced".to_owned(),
        edge: "turn".to_owned(),
        judged: None,
        line_length: "50 m".to_owned(),
        line_length_mm: 50_000,
        apart_mm: 50_000,
        strata: Vec::new(),
        position_error_m: 0,
        declination: None,
        lines: vec![line("1", false), line("2", false), line("R1", true)],
        walk: vec!["2".to_owned(), "1".to_owned()],
        given_up_at_the_edge: 0,
        given_up_kept_out: 0,
        given_up_too_near: 0,
    }
}

fn map() -> MapOutput {
    let square = vec![[0.0, 0.0], [300.0, 0.0], [300.0, 300.0], [0.0, 300.0]];
    let line = |name: &str, east, reserve| MapLine {
        line: name.to_owned(),
        from: [east, 50.0],
        to: [east, 100.0],
        reserve,
    };
    MapOutput {
        strata: vec![MapStratum { name: "flat".to_owned(), rings: vec![square] }],
        keep_out: Vec::new(),
        lines: vec![line("1", 50.0, false), line("2", 150.0, false), line("R1", 250.0, true)],
        degrees: Vec::new(),
    }
}

fn page(cautions: &[String], paper: Paper) -> String {
    page_told(cautions, paper, Openness::Exact)
}

fn page_told(cautions: &[String], paper: Paper, openness: Openness) -> String {
    let plant = Plant {
        code: "ATCA".to_owned(),
        name: "Atriplex canescens".to_owned(),
        common: "fourwing saltbush".to_owned(),
        form: GrowthForm::Shrub,
        groups: Vec::new(),
    };
    let known = PlannedLine {
        site: layout().site,
        line: "2".to_owned(),
        length: None,
        stratum: None,
        plot: None,
        judgement: None,
        slope: None,
        permission: Some(Permission { from: "the <owner>".to_owned(), until: Date::read("2027-03-31") }),
    };
    let packet = Packet {
        layout: &layout(),
        map: &map(),
        protocol: Some(&Protocol { name: "Own rules".to_owned(), ..Protocol::default() }),
        plants: &[plant],
        known: &[known],
        unit: Unit::Inch,
        paper,
        openness,
        kept_back: openness != Openness::Exact,
        cautions,
    };
    html(&packet, &Words::english())
}

#[test]
fn a_sheet_for_each_line_in_the_order_of_the_walk_and_a_spare_one() {
    let page = page(&[], Paper::A4);
    assert!(roxmltree::Document::parse(page.trim_start_matches("<!DOCTYPE html>\n")).is_ok(), "well formed");
    let sheets: Vec<&str> = page.split("<section class=\"sheet\">").skip(1).collect();
    assert_eq!(sheets.len(), 3);
    assert!(sheets[0].contains("Line 2") && sheets[1].contains("Line 1") && sheets[2].contains("Spare"));
    assert_eq!(page.matches("class=\"code\"").count(), 2, "a code on each sheet that has a line");
    // true and compass bearing are both named, so that neither is taken for the other
    assert!(sheets[0].contains("True bearing") && sheets[0].contains("350°"));
    assert!(sheets[0].contains("Compass") && sheets[0].contains("338.6°"));
    assert!(sheets[0].contains("fraction"), "inches are read with fractions");
    // the view back along 350° is toward 170°
    assert!(page.contains("170° true"));
}

/// The card of a line says whose permission is known, and leaves room where none is.
#[test]
fn a_card_says_who_gave_permission_to_enter() {
    let page = page(&[], Paper::A4);
    let cards: Vec<&str> = page.split("<article class=\"card\">").skip(1).collect();
    assert!(cards[0].contains("<dd>the &lt;owner&gt;, until 2027-03-31</dd>"), "{}", cards[0]);
    assert!(!cards[1].contains("owner&gt;"));
}

#[test]
fn it_stands_alone_and_nothing_becomes_markup() {
    let page = page(&["Gate <b>code</b> at the ranch".to_owned()], Paper::Letter);
    assert!(page.contains("size:letter") && !page.contains("size:A4"));
    assert!(page.contains("Hollow Flat &lt;invented&gt;") && page.contains("&lt;b&gt;code"));
    assert!(!page.contains("Call before you dig"), "the office's cautions stand in place of ours");
    for other in ["<script", "href=\"http", "src=", "@import", "url(http"] {
        assert!(!page.contains(other), "{other}");
    }
}

/// The code's text is the head of a typed sheet: read back here from its squares by the finder pattern's size alone is
/// beyond a test, so its size is: version 1 to 6 are 21 to 41 squares (ISO/IEC 18004, table 1).
#[test]
fn the_code_is_small_enough_to_scan_from_paper() {
    let page = page(&[], Paper::A4);
    let view = page.split("viewBox=\"-4 -4 ").nth(1).and_then(|rest| rest.split(' ').next()).unwrap();
    let squares: usize = view.parse::<usize>().unwrap() - 8;
    assert!((21..=41).contains(&squares) && (squares - 21).is_multiple_of(4), "{squares}");
}

/// What lies about for years keeps back what the site keeps back.
#[test]
fn a_card_keeps_back_where_a_line_lies_as_its_site_is_set() {
    for (openness, told) in
        [(Openness::Exact, true), (Openness::Blurred(5), false), (Openness::Withheld, false)]
    {
        let page = page_told(&[], Paper::A4, openness);
        let cards: Vec<&str> = page.split("<article class=\"card\">").skip(1).collect();
        assert!(!cards.is_empty());
        // the sheets by which the crew gets there hold the places, and say so
        assert!(page.contains("42.3"));
        assert_eq!(page.contains("it is not for handing on"), !told);
        for card in cards {
            let card = card.split("</article>").next().unwrap();
            assert_eq!(card.contains("42.3"), told, "{card}");
            assert_eq!(card.contains("277000"), told, "{card}");
            assert_eq!(card.contains("Withheld"), !told, "{card}");
        }
    }
}
