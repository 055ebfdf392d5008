//! Photos of a notebook: each view year by year, the landowner's two, their bytes as they are, and no name of who is seen.

use crate::reader::{all, says, tree, words};
use crate::sites::{HOSTILE, PNG, asked, photo, placed};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use tautline_report::{Bytes, Photograph, Reader, Telling, page_of, text_of, worth_showing};
use tautline_survey::assess::assess;
use tautline_survey::photo::Shows;
use tautline_words::Words;

const SITE: &str = "Invented wash";

fn here() -> Bytes {
    Bytes::Here(PNG.into())
}

fn album() -> Vec<Photograph> {
    let line = |line: &str, shows, day, bytes| photo(SITE, line, shows, day, bytes);
    vec![
        line("", Shows::Opening, (2026, 6, 9), here()),
        line("1", Shows::Start, (2024, 6, 9), here()),
        line("1", Shows::Start, (2026, 6, 9), here()),
        line("1", Shows::End, (2022, 6, 9), Bytes::Lacking),
        line("2", Shows::End, (2025, 6, 9), here()),
        line("2", Shows::End, (2026, 6, 9), Bytes::TooMany),
        line("2", Shows::Visit, (2024, 6, 9), here()),
        line("2", Shows::Visit, (2026, 6, 9), here()),
        photo("Elsewhere", "", Shows::Opening, (2026, 6, 9), here()),
    ]
}

fn told<T>(reader: Reader, tell: impl FnOnce(&Telling) -> T) -> T {
    let (input, question, catalogue) = (placed(None), asked("at least 14 %"), Words::english());
    let assessments = assess(&input, &question);
    let photos = album();
    let telling = Telling::new(&input, &question, &assessments, &catalogue).to(reader);
    tell(&Telling { photos: &photos, ..telling })
}

fn days(page: &str) -> Vec<(String, Vec<String>)> {
    let tree = tree(page);
    let blocks = all(&tree, "div").filter(|div| div.attribute("class") == Some("photos"));
    let day = |text: String| text.split(" · ").next().unwrap_or_default().to_owned();
    blocks
        .map(|block| {
            let shots = block.children().filter(|one| one.tag_name().name() == "figure");
            let head = block.prev_siblings().find(|one| one.tag_name().name() == "h4").unwrap();
            (words(head), shots.map(|one| day(words(one))).collect())
        })
        .collect()
}

#[test]
fn each_view_stands_year_by_year() {
    let page = told(Reader::Specialist, page_of);
    let views = days(&page);
    let of = |title: &str| {
        views.iter().filter(|(own, _)| own == title).flat_map(|(_, days)| days.clone()).collect::<Vec<_>>()
    };
    assert_eq!(of("The site, opening view"), ["2026-06-09"]);
    assert_eq!(of("Line 1, from the zero"), ["2024-06-09", "2026-06-09"]);
    assert_eq!(of("Line 2, from the far end"), ["2025-06-09", "2026-06-09"]);
    // the newest year first, each with what was met in it
    assert_eq!(of("Met on the visits of this year"), ["2026-06-09", "2024-06-09"]);
    assert_eq!(views.len(), 6, "{views:?}");
    says(
        &page,
        &["isn't in this copy of the notebook", "too large to stand here", "looking 212° from true north"],
    );
}

#[test]
fn the_bytes_stand_in_the_page_as_they_are() {
    let page = told(Reader::Board, page_of);
    let tree = tree(&page);
    let pictures: Vec<_> = all(&tree, "img").collect();
    assert_eq!(pictures.len(), 6);
    for picture in pictures {
        let data = picture.attribute("src").unwrap().strip_prefix("data:image/png;base64,").unwrap();
        assert_eq!(STANDARD.decode(data).unwrap(), PNG);
        assert!(picture.attribute("alt").is_some_and(|alt| alt.contains("photographed on 202")));
        assert_eq!((picture.attribute("width"), picture.attribute("height")), (Some("3"), Some("2")));
    }
    assert_eq!(page, told(Reader::Board, page_of), "two runs differ");
}

/// The longest time between two pictures that are here is that of line 1 from its zero, from 2024 to 2026.
#[test]
fn a_landowner_sees_then_and_now() {
    let page = told(Reader::Landowner, page_of);
    let wanted = ("Line 1, from the zero".to_owned(), vec!["2024-06-09".to_owned(), "2026-06-09".to_owned()]);
    assert_eq!(days(&page), [wanted]);
}

#[test]
fn nobody_who_is_seen_is_named_and_no_caption_becomes_markup() {
    for reader in Reader::ALL.map(|(_, reader)| reader) {
        let (page, text) = (told(reader, page_of), told(reader, text_of));
        assert!(!page.contains("Somebody Seen") && !text.contains("Somebody Seen"));
        assert_eq!(all(&tree(&page), "script").count(), 0);
    }
    says(&told(Reader::Specialist, page_of), &[HOSTILE.replace('\u{1}', "\u{fffd}").trim()]);
}

#[test]
fn of_each_view_the_last_of_a_year_is_shown() {
    let all = [
        photo(SITE, "10", Shows::Start, (2026, 6, 9), here()),
        photo(SITE, "2", Shows::Start, (2026, 7, 1), here()),
        photo(SITE, "2", Shows::Start, (2026, 6, 9), here()),
        photo(SITE, "2", Shows::Visit, (2026, 6, 9), here()),
        photo(SITE, "2", Shows::Visit, (2026, 6, 10), here()),
    ];
    let shown = worth_showing(all.iter().map(|one| &one.photo));
    let days: Vec<(&str, String)> =
        shown.iter().map(|one| (one.line.as_str(), one.date.unwrap().to_string())).collect();
    let day = |line, day: &str| (line, day.to_owned());
    assert_eq!(
        days,
        [day("2", "2026-07-01"), day("2", "2026-06-09"), day("2", "2026-06-10"), day("10", "2026-06-09")]
    );
}
