//! Where lines lie is told as the site's setting says, in every shape and for every reader; and a whole report says so of itself.

use crate::reader::{column, says};
use crate::sites::{PNG, asked, photo, placed};
use std::collections::BTreeMap;
use tautline_report::{Bytes, Reader, Telling, page_of, text_of};
use tautline_survey::assess::assess;
use tautline_survey::layout::{MapLine, MapOutput};
use tautline_survey::photo::Shows;
use tautline_survey::place::Openness;
use tautline_words::Words;

const NOT_FOR_OTHERS: &str = "it is not for handing on";

/// Runs of digits that a place of the invented site would leave behind: of its latitude, its longitude and its UTM.
const DIGITS: [&str; 5] = ["12345678", "8765432", "512346", "301234", "4265432"];

/// The page and the text for a reader.
fn told(places: Option<Openness>, full: bool, reader: Reader) -> [String; 2] {
    let (input, question, catalogue) = (placed(places), asked("at least 14 %"), Words::english());
    let assessments = assess(&input, &question);
    let photos = [photo("Invented wash", "1", Shows::Start, (2026, 6, 9), Bytes::Here(PNG.into()))];
    let line = |line: &str, north| MapLine {
        line: line.into(),
        from: [0.0, north],
        to: [0.0, north + 10.0],
        reserve: false,
    };
    let map = MapOutput {
        strata: Vec::new(),
        keep_out: Vec::new(),
        lines: vec![line("1", 0.0), line("2", 111.0)],
        way: Vec::new(),
        degrees: Vec::new(),
    };
    let maps = BTreeMap::from([("Invented wash".to_owned(), map)]);
    let telling = Telling::new(&input, &question, &assessments, &catalogue).to(reader);
    let telling = Telling { photos: &photos, maps: Some(&maps), full, ..telling };
    [page_of(&telling), text_of(&telling)]
}

#[test]
fn what_is_kept_back_stands_in_no_byte() {
    for places in [Some(Openness::Withheld), Some(Openness::Blurred(5))] {
        for (name, reader) in Reader::ALL {
            for shown in told(places, false, reader) {
                for digits in DIGITS {
                    assert!(!shown.contains(digits), "{digits} stands in the {name}'s");
                }
                assert!(shown.contains("light") && !shown.contains(NOT_FOR_OTHERS));
            }
        }
        let [page, _] = told(places, false, Reader::Specialist);
        assert!(!page.contains("site-1-map-wide"), "a map is drawn");
        says(&page, &["A cell that should say where a line of this site lies isn't understood"]);
    }
    says(
        &told(Some(Openness::Withheld), false, Reader::Board)[0],
        &["Where the lines lie was written down and is kept back"],
    );
}

/// By hand: 5 km are 5 / 111.133 = 0.044991 degree; the first line's 38.512346 are 855.997 of them, so the middle of its square is
/// 855.5 of them or 38.490. The second line lies 111 m north of it, in the next square, which isn't said.
#[test]
fn a_blurred_place_is_said_as_a_square() {
    let [page, text] = told(Some(Openness::Blurred(5)), false, Reader::Specialist);
    says(&page, &["no closer than a square 5 km wide", "38.490 -113.266", "up to 3820 m"]);
    assert!(text.contains("38.490") && !text.contains("38.535"));
}

/// What a search finds where it may be told, so that not finding it elsewhere means something.
#[test]
fn an_open_site_is_mapped_and_its_places_stand_in_a_table() {
    for (places, full) in [(None, false), (Some(Openness::Exact), false), (Some(Openness::Withheld), true)] {
        let [page, text] = told(places, full, Reader::Specialist);
        assert!(page.contains("site-1-map-wide") && page.contains("site-1-map-narrow"));
        let caption = "Where each line begins and ends (degrees, WGS 84)";
        assert_eq!(
            column(&page, caption, "start (latitude, longitude)"),
            ["38.512346 -113.287654", "38.513346 -113.287654"]
        );
        for digits in ["301234", "4265432", "38.512346"] {
            assert!(page.contains(digits) && text.contains(digits), "{digits}");
        }
        assert_eq!(page.contains(NOT_FOR_OTHERS), full);
        assert_eq!(text.replace('\n', " ").contains(NOT_FOR_OTHERS), full);
    }
}
