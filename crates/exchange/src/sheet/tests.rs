//! Sheets as they are typed, and what comes out. All data is invented.

use crate::{Options, Read, Source, read};
use tautline_engine::length::{Length, Unit};
use tautline_survey::visit::{Extent, Outcome, State, Visit};

fn one(text: &str) -> Read {
    read(&[Source { name: "-".into(), bytes: text.into() }], &Options::default())
}

/// Code, row and character of every finding.
fn found(read: &Read) -> Vec<(&'static str, u64, u32)> {
    let of = |finding: &tautline_survey::finding::Finding| {
        let place = finding.place.as_ref();
        let character = place.and_then(|place| place.character);
        (finding.message.code, place.map_or(0, |place| place.row), character.unwrap_or(0))
    };
    read.input.findings.iter().map(of).collect()
}

/// Species, start and stop (or zero and length) in half inches, and the state.
fn halves(visit: &Visit) -> Vec<(&str, i64, i64, State)> {
    let half = |length: Length| length.nanometres() / (Unit::Inch.nanometres() / 2);
    let of = |extent: &Extent| match extent {
        Extent::Edges { start, stop } => (half(start.length()), half(stop.length())),
        Extent::Length(length) => (0, half(length.length())),
    };
    let intercepts = visit.intercepts.iter();
    intercepts.map(|one| (one.species.as_str(), of(&one.extent).0, of(&one.extent).1, one.state)).collect()
}

const HEAD: &str = "Site: Invented Flat\nUnit: in\nLine 1, 65 ft\n";

/// The same two stretches, 12 to 17 1/2 in and 60 to 63 in, in the ways that people write them.
#[test]
fn ways_of_writing_two_stretches() {
    for row in [
        "ATCA 12-17.5 60-63",
        "ATCA 12-17 1/2, 60-63",
        "ATCA 12 - 17½ 60 to 63",
        "ATCA\t12–17.5\t60—63",
        "ATCA 12..17.5; 60 -63",
        "ATCA 1 ft-1'5 1/2\" 5 ft-5 ft 3 in",
        "ATCA 1'-1'5.5 5'0\"-5'3\"",
        "ATCA 12-17.5\n60-63",
        "[ATCA] 12-17.5\n  60-63 # no plant".trim_end_matches("# no plant"),
        "ＡＴＣＡ　１２－１７.５　６０－６３",
    ] {
        let read = one(&format!("{HEAD}{row}\n"));
        assert_eq!(found(&read), [], "{row}");
        let two = [("ATCA", 24, 35, State::Live), ("ATCA", 120, 126, State::Live)];
        assert_eq!(halves(&read.input.visits[0]), two, "{row}");
    }
}

#[test]
fn feet_and_inches_with_a_dash() {
    let sheet = "Unit: ft-in\nLine 1, 65 ft\nATCA 1-0-1-5 1/2, 5-0 to 5-3\nLine 2, 65 ft\nATCA 0-5 5-3\n";
    let read = one(sheet);
    assert_eq!(found(&read), []);
    assert_eq!(
        halves(&read.input.visits[0]),
        [("ATCA", 24, 35, State::Live), ("ATCA", 120, 126, State::Live)]
    );
    let lengths: Vec<i64> = halves(&read.input.visits[1]).iter().map(|one| one.2).collect();
    assert_eq!(lengths, [10, 126]);
}

#[test]
fn decimal_commas_where_the_head_says_so() {
    let read = one("Decimal: comma\nUnit: m\nLine 1, 19,8 m\nATCA 1,5-2,25, 3-4,5 h 0,4\n");
    assert_eq!(found(&read), []);
    let ends: Vec<i64> = read.input.visits[0]
        .intercepts
        .iter()
        .map(|one| match &one.extent {
            Extent::Edges { stop, .. } => stop.length().nanometres() / 1_000_000,
            Extent::Length(_) => panic!("edges"),
        })
        .collect();
    assert_eq!(ends, [2250, 4500]);
    assert_eq!(read.input.plan[0].length.as_ref().unwrap().length().nanometres(), 19_800_000_000);
}

#[test]
fn marks_behind_a_number_and_before_all() {
    let read = one(&format!(
        "{HEAD}ATCA 12-14 d h 40cm w=30 cm #2 (leans in (a bit)) 20-23\nKRLA dead 30-34 35-36 live\n"
    ));
    assert_eq!(found(&read), []);
    let visit = &read.input.visits[0];
    let first = &visit.intercepts[0];
    assert_eq!(
        (first.state, first.plant.as_deref(), first.note.as_str()),
        (State::Dead, Some("2"), "leans in (a bit)")
    );
    assert_eq!(
        (first.height.as_ref().unwrap().typed(), first.width.as_ref().unwrap().typed()),
        ("40cm", "30 cm")
    );
    let states: Vec<State> = visit.intercepts.iter().map(|one| one.state).collect();
    assert_eq!(states, [State::Dead, State::Live, State::Dead, State::Live]);
}

#[test]
fn names_of_species() {
    for (row, name) in [
        ("big sagebrush 1-2", "big sagebrush"),
        ("coast live oak 1-2", "coast live oak"),
        ("2FORB 1-2", "2FORB"),
        ("ARTR2 1-2", "ARTR2"),
        ("[2 m tall, dead] 1-2", "2 m tall, dead"),
        ("[] 1-2", ""),
        ("1-2", ""),
    ] {
        let read = one(&format!("{HEAD}{row}\n"));
        assert_eq!(
            (found(&read), halves(&read.input.visits[0])),
            (vec![], vec![(name, 2, 4, State::Live)]),
            "{row}"
        );
    }
}

#[test]
fn how_far_a_line_was_read() {
    let read = one(
        "Unit: m\nLine 1, 20 m, nothing\nLine 2, 20 m\nnot read: gate, locked\nLine 3, 20 m, read to 12\nATCA 1-2\nLine 4 20 m planned\nLine 5, 20 m\n",
    );
    let outcomes: Vec<&Outcome> = read.input.visits.iter().map(|visit| &visit.outcome).collect();
    assert!(matches!(
        outcomes[..],
        [Outcome::Read, Outcome::NotRead, Outcome::PartlyRead(_), Outcome::NotRead]
    ));
    assert_eq!(read.input.visits[1].conditions, [("why not read".to_owned(), "gate, locked".to_owned())]);
    // a line with nothing below it is no zero
    assert_eq!(found(&read), [("read-but-no-readings", 8, 0)]);
    assert_eq!(read.input.plan.len(), 5);
}

#[test]
fn heads_carry_over_and_end() {
    let read = one(
        "Site: A\nDate: 2026-06-09\nReader: Ann\nPass: 1\nWind: calm\nUnit: in\nLine 1, 65 ft\nReader: Bob\nATCA 1-2\n\
        Line 2, 65 ft, stratum wash, plot P 3, slope 12 %\nnothing\n(cattle near the stake)\nDate: 2026-06-10\nLine 1, 65 ft\nnothing\nSite: B\nRecorder: Cy\nLine 1, 65 ft\nnothing\n",
    );
    assert_eq!(found(&read), []);
    let visits: Vec<String> = read
        .input
        .visits
        .iter()
        .map(|v| {
            format!(
                "{} {} {} {} {} {} {:?}",
                v.site,
                v.line,
                v.date.unwrap(),
                v.reader,
                v.recorder,
                v.pass,
                v.conditions
            )
        })
        .collect();
    assert_eq!(
        visits,
        [
            r#"A 1 2026-06-09 Bob  1 [("Wind", "calm")]"#,
            r#"A 2 2026-06-09 Ann  1 [("Wind", "calm"), ("note", "cattle near the stake")]"#,
            "A 1 2026-06-10 Ann   []",
            "B 1 2026-06-10 Ann Cy  []",
        ]
    );
    let second = &read.input.plan[1];
    assert_eq!((second.stratum.as_deref(), second.plot.as_deref()), (Some("wash"), Some("P 3")));
    assert!(second.slope.is_some());
}

/// Each slip at its character, and what stands beside it on the row is kept.
#[test]
fn slips_are_placed_and_the_rest_is_kept() {
    for (row, code, character, kept) in [
        ("ATCA 12-2O 30-34", "sheet-letter-for-digit", 10, 1),
        ("ATCA l2-14 30-34", "sheet-letter-for-digit", 6, 1),
        ("ATCA 12,5-14 30-34", "sheet-decimal-mark", 8, 1),
        ("ATCA12-14", "sheet-space-missing", 5, 0),
        ("ATCA 12-14x 30-34", "sheet-word-not-understood", 11, 1),
        ("ATCA 12-14 x 30-34", "sheet-word-not-understood", 12, 2),
        ("ATCA 12- 30-34", "sheet-too-many-dashes", 12, 0),
        ("ATCA 30-34 12-", "sheet-number-missing-at-end", 15, 1),
        ("ATCA -14", "sheet-dash-without-start", 6, 0),
        ("ATCA 12-14-16 30-34", "sheet-too-many-dashes", 11, 1),
        ("ATCA 10-1/2", "sheet-dash-or-fraction", 8, 0),
        ("ATCA 12-14 (leans 30-34", "sheet-bracket-open", 12, 1),
        ("ATCA 12-14 # 30-34", "sheet-plant-missing", 12, 2),
        ("ATCA d 12-14 h 40 h 41", "sheet-mark-twice", 19, 1),
        ("ATCA", "sheet-no-numbers", 1, 0),
        ("h 40 30-34", "sheet-mark-before-number", 1, 0),
        ("ATCA: 12-14", "sheet-species-or-remark", 1, 0),
        ("ATCA 12-1\u{200b}4 30-34", "sheet-character", 10, 1),
        ("ATCA 5 ft 14 in", "length-part-too-large", 11, 0),
        ("ATCA 20-14 30-34", "stop-before-start", 9, 1),
    ] {
        let read = one(&format!("{HEAD}ZZZZ 1-2\n{row}\n"));
        let first = found(&read).into_iter().next();
        let visit = &read.input.visits[0];
        assert_eq!(first, Some((code, 5, character)), "{row}");
        assert_eq!(visit.intercepts.len(), kept + 1, "{row}");
        assert!(visit.set_aside > 0, "{row}");
        let excerpt = read.input.findings[0].excerpt.as_ref().expect("the row is shown");
        assert_eq!(excerpt.before, (character - 1) as usize, "{row}");
    }
}

#[test]
fn a_unit_behind_the_stop_is_the_starts_as_well() {
    let read = one("Unit: in\nLine 1, 65 ft\nATCA 12-14 cm\n");
    let Extent::Edges { start, .. } = &read.input.visits[0].intercepts[0].extent else { panic!("edges") };
    assert_eq!((start.length().nanometres(), start.typed()), (120_000_000, "12 cm"));
}

#[test]
fn the_same_line_twice_is_asked_about() {
    let twice = "Unit: in\nLine 1, 65 ft\nATCA 1-2\nLine 1, 65 ft\nATCA 3-4\n";
    let read = one(twice);
    assert_eq!(found(&read), [("sheet-line-twice", 4, 6)]);
    assert_eq!((read.input.visits[0].intercepts.len(), read.input.visits[0].set_aside), (1, 1));
    let read = one(&twice.replace("ft\nATCA 3", "ft, continued\nATCA 3"));
    assert_eq!((found(&read), read.input.visits[0].intercepts.len()), (vec![], 2));
    let read = one(&twice.replace("ft\nATCA 3", "ft, pass 2\nATCA 3"));
    assert_eq!((found(&read), read.input.visits.len()), (vec![], 2));
}

/// A missing unit is said once, not at each number, and nothing is taken for a length.
#[test]
fn a_missing_unit_is_said_once() {
    let read = one("Line 1, 65 ft\nATCA 1-2 3-4 5 cm-6 cm\nKRLA 7-8\n");
    assert_eq!(found(&read), [("sheet-no-unit", 2, 6)]);
    assert_eq!((read.input.visits[0].intercepts.len(), read.input.visits[0].set_aside), (1, 3));
}

#[test]
fn a_head_that_cannot_be_read_leaves_its_lines_to_be_settled() {
    let read =
        one("Date: 9.6.2026\nUnit: in\nLine 1, 65 ft\nATCA 1-2\nDate: 2026-06-10\nLine 2, 65 ft\nATCA 1-2\n");
    assert_eq!(found(&read), [("date-not-understood", 1, 7)]);
    assert_eq!(read.input.visits.iter().map(|visit| visit.set_aside).collect::<Vec<_>>(), [1, 0]);
}

/// A row that goes on with one that could not be read isn't given to the species before.
#[test]
fn a_row_below_an_unread_one_belongs_to_nobody() {
    let read = one(&format!("{HEAD}ATCA 1-2\nKRLA: 3-4\n5-6\n"));
    assert_eq!(found(&read), [("sheet-species-or-remark", 5, 1), ("sheet-species-above", 6, 1)]);
    assert_eq!(read.input.visits[0].intercepts.len(), 1);
}

#[test]
fn what_is_no_sheet_and_what_is_one() {
    for text in [
        "Site: A\nLine 1, 65 ft\n",
        "# typed in the evening\n\nShrub cover, page 1\nDate 2026-06-09\n",
        "Line 1, 65 ft\nATCA 1-2",
        "Transect: 4\n",
    ] {
        assert!(super::is_sheet("-", text), "{text}");
    }
    for text in [
        "site,line\nA,1",
        "Line,Species\n1,ATCA",
        "line length,species\n",
        "Cover of 2026\nline length;species\nLine 1\n",
        "hello\nworld",
        "{\"site\": 1}",
    ] {
        assert!(!super::is_sheet("a.csv", text), "{text}");
    }
    assert!(super::is_sheet("A.SHEET", "hello"));
}
