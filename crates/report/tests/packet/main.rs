//! The packet says what the layout says, has a sheet for each line, and stands alone.

mod site;

use site::packed;
use tautline_report::packet::{Paper, html};
use tautline_survey::place::Openness;
use tautline_words::Words;

fn page(cautions: &[String], paper: Paper) -> String {
    page_told(cautions, paper, Openness::Exact)
}

fn page_told(cautions: &[String], paper: Paper, openness: Openness) -> String {
    packed((cautions, &[]), paper, openness, |packet| html(packet, &Words::english()))
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

#[test]
fn how_far_it_is_to_walk_and_where_no_way_was_found() {
    let page = page(&[], Paper::A4);
    assert!(page.contains("The walk from line to line is 112 m in all"), "{page}");
    assert!(page.contains("the map goes straight: from 2 to 1. Look for a way on the ground."));
}

/// Key features stand as the user wrote them, below a heading of their own.
#[test]
fn plants_come_with_what_tells_them_apart() {
    let page = page(&[], Paper::A4);
    assert!(page.contains("key features</th>") && page.contains("bracts with four &lt;wings&gt;</td>"));
}

/// Each rule that a packet is read under is drawn, with its words below; whom to call has room or is the office's own.
#[test]
fn rules_are_drawn_and_whom_to_call_is_asked() {
    let open = page(&[], Paper::A4);
    assert_eq!(open.matches("<figcaption>").count(), 4, "dead, overhang, under the line, two species");
    let front = open.split("class=\"calls\"").nth(1).and_then(|rest| rest.split("</dl>").next()).unwrap();
    assert_eq!(front.matches("dd class=\"blank\"").count(), 6);
    let calls = ["Rim Draw office (invented): 555 0100".to_owned(), "Back by".to_owned()];
    let own = packed((&[], &calls), Paper::A4, Openness::Exact, |packet| html(packet, &Words::english()));
    assert!(own.contains("<dt>Rim Draw office (invented)</dt>\n<dd>555 0100</dd>"));
    assert!(own.contains("<dt>Back by</dt>\n<dd class=\"blank\"></dd>"));
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
