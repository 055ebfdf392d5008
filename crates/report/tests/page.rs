//! A page about a hand-worked, invented site: it says what was worked out, and it stands alone.
#![expect(clippy::unwrap_used, reason = "a test that can't go on should stop")]

use std::fs;
use std::path::Path;
use tautline_engine::confidence::Method;
use tautline_engine::length::{Bare, DecimalMark, Unit};
use tautline_survey::assess::{Assessment, Question, SiteGoal, assess};
use tautline_survey::goal;
use tautline_survey::input::Input;
use tautline_survey::measure::Measure;
use tautline_survey::plan::PlannedLine;
use tautline_survey::protocol::Protocol;
use tautline_survey::visit::{Extent, Intercept, Outcome, State, Visit};
use tautline_words::Words;

fn cm(text: &str) -> Measure {
    Measure::read(text, Some(Bare::Unit(Unit::Centimetre)), DecimalMark::Point).unwrap()
}

fn intercept(id: u32, start: u32, stop: u32, state: State) -> Intercept {
    Intercept {
        id,
        species: "AAAA".into(),
        extent: Extent::Edges { start: cm(&start.to_string()), stop: cm(&stop.to_string()) },
        state,
        plant: None,
        height: None,
        width: None,
        note: String::new(),
        place: None,
    }
}

/// Lines of 10 m, each with the intercepts given (cm).
fn site(name: &str, protocol: Protocol, lines: &[Vec<Intercept>]) -> Input {
    let mut input = Input::default();
    let protocol = input.add_protocol(protocol);
    for (number, intercepts) in lines.iter().enumerate() {
        let line = (number + 1).to_string();
        let (stratum, plot) = (None, None);
        input.plan.push(PlannedLine {
            site: name.into(),
            line: line.clone(),
            length: Some(cm("10 m")),
            stratum,
            plot,
            slope: None,
        });
        input.visits.push(Visit {
            site: name.into(),
            line,
            date: None,
            reader: String::new(),
            recorder: String::new(),
            pass: String::new(),
            protocol: protocol.clone(),
            length: None,
            outcome: Outcome::Read,
            intercepts: intercepts.clone(),
            conditions: Vec::new(),
            set_aside: 0,
            place: None,
        });
    }
    input
}

fn four_lines(name: &str) -> Input {
    let lines: Vec<_> = [100, 200, 300, 400].map(|stop| vec![intercept(1, 0, stop, State::Live)]).to_vec();
    site(name, Protocol::default(), &lines)
}

fn asked(goal: &str) -> Question {
    let goal = goal::read(goal, DecimalMark::Point).unwrap();
    Question {
        goals: vec![SiteGoal { site: None, goal }],
        method: Some(Method::StudentT),
        ..Question::default()
    }
}

fn page(input: &Input, question: &Question) -> String {
    tautline_report::html(input, &assess(input, question), &Words::english())
}

/// The words of a page without its marks; no-break spaces as spaces.
fn words_of(page: &str) -> String {
    let body = page.split("</style>").nth(1).unwrap();
    let pieces = body.split('<').filter_map(|piece| piece.split_once('>').map(|(_, text)| text));
    pieces.collect::<Vec<_>>().join(" ").replace('\u{a0}', " ")
}

fn says(page: &str, wanted: &[&str]) {
    let text = words_of(page);
    for wanted in wanted {
        assert!(text.contains(wanted), "“{wanted}” isn't on the page:\n{text}");
    }
}

/// By hand: covers 10, 20, 30, 40 % have mean 25 %, s = 12.909944 points, SE = 6.454972, 3 df; t(0.90, 3) = 1.637744
/// (printed tables of Student's t), so the one-sided 90 % lower bound is 25 − 10.571593 = 14.4 %; t(0.95, 3) =
/// 2.353363, so the two-sided 90 % interval is 9.8 to 40.2 %.
#[test]
fn a_met_goal_is_said_with_its_lower_bound() {
    let page = page(&four_lines("Invented flat"), &asked("at least 14 %"));
    says(
        &page,
        &[
            "The goal of at least 14 % for canopy cover is met.",
            "canopy cover comes to 25.0 %",
            "it is 14.4 % or more, with 90 % confidence",
            "SE 6.5 %, 3.0 df",
            "one-sided 90 % lower bound 14.4 %",
            "25.0 %, at least 14.4 %",
            "9.8 % to 40.2 %",
        ],
    );
    assert!(page.contains("<p class=\"verdict met\">"));
}

/// The same lines: the upper bound is 25 + 10.571593 = 35.6 %.
#[test]
fn a_missed_and_an_open_goal_are_said_with_what_decides() {
    let input = four_lines("Invented flat");
    says(
        &page(&input, &asked("at least 36 %")),
        &[
            "for canopy cover is not met.",
            "it is 35.6 % or less",
            "upper bound 35.6 %",
            "25.0 %, at most 35.6 %",
        ],
    );
    says(
        &page(&input, &asked("at most 13 %")),
        &[
            "for canopy cover is not met.",
            "it is 14.4 % or more",
            "lower bound 14.4 %",
            "25.0 %, at least 14.4 %",
        ],
    );
    says(
        &page(&input, &asked("at least 20 %")),
        &["don't show yet", "as low as 14.4 % or as high as 35.6 %", "25.0 %, at least 14.4 %"],
    );
    says(
        &page(&input, &asked("14..36 %")),
        &["is met.", "it is 14.4 % or more and 35.6 % or less", "25.0 %, 14.4 % to 35.6 %"],
    );
}

#[test]
fn one_line_has_no_bound_and_the_page_says_why() {
    let input = site("Invented flat", Protocol::default(), &[vec![intercept(1, 0, 100, State::Live)]]);
    says(
        &page(&input, &asked("at least 5 %")),
        &["comes to 10.0 %", "There is no bound for it: one line shows no variation between lines"],
    );
}

/// 100 to 150 and 154 to 200 cm under a limit of 5 cm: the gap of 4 cm is read as canopy, so 100 of 1000 cm are canopy;
/// 300 to 340 cm stand dead, 4 %.
#[test]
fn closed_gaps_and_dead_canopy_stay_apart() {
    let mut protocol = Protocol { name: "invented rules".into(), ..Protocol::default() };
    protocol.gap.limit = Some(cm("5"));
    let line = vec![
        intercept(1, 100, 150, State::Live),
        intercept(2, 154, 200, State::Live),
        intercept(3, 300, 340, State::Dead),
    ];
    let page = page(&site("Invented wash", protocol, &[line.clone(), line]), &Question::default());
    says(
        &page,
        &[
            "gap closed by the rule",
            "dead canopy",
            "1 · 4 cm",
            "10.0 %",
            "4.0 %",
            "Gaps between shrubs",
            "invented rules",
        ],
    );
    says(&page, &["No goal was set for this site"]);
}

/// Tags that open are closed, in order; ids are given once.
#[test]
fn the_page_is_well_formed_and_stands_alone() {
    let input = four_lines("Flat <b>&\"quoted\"");
    let page = page(&input, &asked("at least 14 %"));
    let mut open: Vec<&str> = Vec::new();
    let body = page.strip_prefix("<!doctype html>").unwrap();
    for tag in body.split('<').skip(1).map(|piece| piece.split_once('>').expect("a tag ends").0) {
        let name = tag.trim_start_matches('/').split([' ', '/']).next().unwrap();
        if tag.starts_with('/') {
            assert_eq!(open.pop(), Some(name));
        } else if !tag.ends_with('/') && name != "meta" {
            open.push(name);
        }
    }
    assert!(open.is_empty(), "{open:?} stay open");
    // the name of the vector markup is no address, and `url(#…)` points into the page itself
    let own = page.replace("xmlns=\"http://www.w3.org/2000/svg\"", "").replace("url(#", "");
    for foreign in ["<script", "http:", "https:", "url(", "@import", " src=", "<link", "<b>"] {
        assert!(!own.contains(foreign), "{foreign}");
    }
    assert!(page.contains("Flat &lt;b&gt;&amp;&quot;quoted&quot;"));
    let mut ids: Vec<&str> = page.split(" id=\"").skip(1).filter_map(|rest| rest.split('"').next()).collect();
    let all = ids.len();
    ids.sort_unstable();
    ids.dedup();
    assert_eq!(all, ids.len());
    let levels: Vec<u8> =
        page.match_indices("<h").map(|(at, _)| page.as_bytes()[at + 2]).filter(u8::is_ascii_digit).collect();
    assert_eq!(levels[0], b'1');
    assert!(levels.windows(2).all(|pair| pair[1] <= pair[0] + 1), "headings skip a level");
    assert_eq!(page.matches("<th").count() - page.matches("<thead").count(), page.matches(" scope=").count());
}

#[test]
fn the_newest_year_of_a_site_comes_first() {
    let input = four_lines("B");
    let of = |site: &str, year| -> Assessment {
        let mut one = assess(&input, &asked("at least 14 %")).remove(0);
        (one.site, one.year) = (site.to_owned(), Some(year));
        one
    };
    let page = tautline_report::html(
        &input,
        &[of("B 10", 2025), of("B 2", 2024), of("B 2", 2026)],
        &Words::english(),
    );
    let headings: Vec<&str> =
        page.split("<h2 id=").skip(1).filter_map(|rest| rest.split(['>', '<']).nth(1)).collect();
    assert_eq!(headings, ["B 2, 2026", "B 2, 2024", "B 10, 2025"]);
    says(&page, &["canopy cover, at least 14 %: met"]);
}

/// Every text in the sources that is a code of the catalogue has words there.
#[test]
fn every_code_has_words() {
    let words = Words::english();
    let mut checked = 0;
    for entry in fs::read_dir(Path::new(env!("CARGO_MANIFEST_DIR")).join("src")).unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_none_or(|extension| extension != "rs") {
            continue;
        }
        let text = fs::read_to_string(&path).unwrap();
        let families =
            ["report-", "column-", "title-", "verdict-", "heading-", "units-", "explain-", "finding-"];
        for literal in text.split('"').skip(1) {
            let is_code = families.iter().any(|family| literal.starts_with(family) && literal != *family)
                && literal.bytes().all(|b| b.is_ascii_lowercase() || b == b'-');
            if is_code {
                checked += 1;
                assert!(words.has(literal), "{}: no words for “{literal}”", path.display());
            }
        }
    }
    assert!(checked > 60, "only {checked} codes were found");
}
