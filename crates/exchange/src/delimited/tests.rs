use super::*;
use tautline_engine::length::{Length, Unit};
use tautline_survey::visit::{Extent, Outcome, State};

fn one(text: &str) -> Read {
    read(&[Source { name: "sheet.csv".into(), bytes: text.into() }], &Options::default())
}

fn edges(found: &Read) -> Vec<(i64, i64)> {
    let inch = Unit::Inch.nanometres();
    found.input.visits[0]
        .intercepts
        .iter()
        .map(|intercept| match &intercept.extent {
            Extent::Edges { start, stop } => {
                (start.length().nanometres() / inch, stop.length().nanometres() / inch)
            }
            Extent::Length(length) => (0, length.length().nanometres() / inch),
        })
        .collect()
}

/// The same two intercepts, 12 to 17 in and 60 to 63 in, with the unit in every place it may stand.
#[test]
fn units_in_the_heading_in_a_column_and_in_the_cell() {
    for text in [
        "site,line,line length,species,start (in),stop (in)\nA,1,65 ft,SHAD,12,17\nA,1,65 ft,SHAD,60,63\n",
        "Site;LINE;Line Length;Species;Start_in;Stop_in\r\nA;1;65 ft;SHAD;12;17\r\nA;1;65 ft;SHAD;60;63\r\n",
        "site\tline\tline length\tspecies\tstart\tstop\tunit\nA\t1\t65 ft\tSHAD\t12\t17\tin\nA\t1\t65 ft\tSHAD\t60\t63\tin\n",
        "site,line,line length (ft),species,start,stop\nA,1,65,SHAD,1 ft,1'5\"\nA,1,65,SHAD,5 ft,5 ft 3 in\n",
        "site,line,line length,species,start (ft-in),stop (ft-in)\nA,1,65 ft,SHAD,1-0,1-5\nA,1,65 ft,SHAD,5-0,5-3\n",
    ] {
        let found = one(text);
        assert_eq!(found.input.findings, [], "{text}");
        assert_eq!(edges(&found), [(12, 17), (60, 63)], "{text}");
        assert_eq!(found.input.plan[0].length.as_ref().unwrap().length(), Length::from_units(65, Unit::Foot));
    }
}

#[test]
fn a_decimal_comma_where_the_file_shows_one() {
    let found = one("site;line;line length (m);species;start (m);stop (m)\nA;1;20;SHAD;1,5;2,25\n");
    assert_eq!(found.input.findings, []);
    let Extent::Edges { start, stop } = &found.input.visits[0].intercepts[0].extent else { panic!("edges") };
    assert_eq!((start.length().nanometres(), stop.length().nanometres()), (1_500_000_000, 2_250_000_000));
}

#[test]
fn bad_rows_are_placed_and_good_rows_are_kept() {
    let found = one("site,line,line length,species,start (in),stop (in)\n\
        A,1,65 ft,SHAD,12,17\nA,1,65 ft,SHAD,30,20\nA,1,65 ft,SHAD,abc,40\nA,1,65 ft,SHAD,41,41\nA,1,65 ft,SHAD,50,\nA,1,65 ft,SHAD,60,63\n");
    assert_eq!(edges(&found), [(12, 17), (60, 63)]);
    let placed: Vec<(&str, u64, &str)> = found
        .input
        .findings
        .iter()
        .map(|f| {
            let place = f.place.as_ref().unwrap();
            (f.message.code, place.row, place.column.as_deref().unwrap())
        })
        .collect();
    assert_eq!(
        placed,
        [
            ("stop-before-start", 3, "stop (in)"),
            ("length-not-a-number", 4, "start (in)"),
            ("zero-length", 5, "stop (in)"),
            ("stop-missing", 6, "stop (in)"),
        ]
    );
}

#[test]
fn a_bare_number_without_unit_is_refused_and_an_option_gives_one() {
    let text = "site,line,line length,species,length\nA,1,65 ft,SHAD,5\n";
    assert_eq!(one(text).input.findings[0].message.code, "length-no-unit");
    let options = Options { unit: Bare::from_words("in"), ..Options::default() };
    let found = read(&[Source { name: "s.csv".into(), bytes: text.into() }], &options);
    assert_eq!(edges(&found), [(0, 5)]);
}

#[test]
fn nothing_found_not_read_and_partly_read_are_three_things() {
    let found = one(
        "site,line,line length,outcome,read to\nA,1,65 ft,nothing found,\nA,2,65 ft,not read,\nA,3,65 ft,partly read,40 ft\nA,4,65 ft,,\n",
    );
    let outcomes: Vec<Outcome> = found.input.visits.iter().map(|visit| visit.outcome.clone()).collect();
    assert!(matches!(outcomes[..], [Outcome::Read, Outcome::NotRead, Outcome::PartlyRead(_)]));
    assert_eq!(found.input.plan.len(), 4);
}

#[test]
fn the_same_bytes_twice_add_nothing() {
    let source = |name: &str| Source {
        name: name.into(),
        bytes: "site,line,line length,species,start (in),stop (in)\nA,1,65 ft,SHAD,12,17\n".into(),
    };
    let found = read(&[source("a.csv"), source("b.csv")], &Options::default());
    assert_eq!(found.input.visits[0].intercepts.len(), 1);
    assert_eq!(found.input.findings[0].message.code, "same-file-twice");
}

#[test]
fn plants_strata_goals_and_conditions() {
    let sources = [
        (
            "p.csv",
            "code,scientific name,common name,growth form,groups,key features\nSHAD,Atriplex confertifolia,shadscale,shrub,browse saltbush,\"round grey leaves, spiny twigs\"\nXXXX,,,bush,,\n",
        ),
        ("s.csv", "site,stratum,area (ha)\nA,flat,90.5\nA,wash,10 acres\n"),
        ("g.csv", "site,goal,source\nA,at least 15 %,invented\nA,lots,\n"),
        (
            "r.csv",
            "site,line,line length,stratum,date,reader,species,state,start (in),stop (in),grazing\nA,1,65 ft,flat,2026-06-09,Ann,shad,dead,12,17,light\n",
        ),
    ];
    let sources: Vec<Source> =
        sources.iter().map(|(name, text)| Source { name: (*name).into(), bytes: (*text).into() }).collect();
    let found = read(&sources, &Options::default());
    assert_eq!(found.input.plants.plants[0].groups, ["browse", "saltbush"]);
    assert_eq!(found.input.plants.plants[0].key_features, "round grey leaves, spiny twigs");
    let areas: Vec<u64> = found.input.strata.iter().map(|stratum| stratum.area).collect();
    assert_eq!(areas, [905_000_000_000, 40_468_564_220]);
    assert_eq!(found.goals.len(), 1);
    let visit = &found.input.visits[0];
    assert_eq!(visit.intercepts[0].state, State::Dead);
    assert_eq!(visit.conditions, [("grazing".to_owned(), "light".to_owned())]);
    let codes: Vec<&str> = found.input.findings.iter().map(|finding| finding.message.code).collect();
    assert_eq!(codes, ["form-not-known", "goal-no-relation"]);
}

#[test]
fn positions_and_lengths_on_one_line_are_not_mixed() {
    let found = one(
        "site,line,line length,species,start (in),stop (in),length (in)\nA,1,65 ft,SHAD,12,17,\nA,1,65 ft,SHAD,,,5\n",
    );
    assert_eq!(found.input.findings[0].message.code, "positions-and-lengths-mixed");
    assert_eq!(found.input.visits[0].outcome, Outcome::NotRead);
}

#[test]
fn what_is_no_table_is_said() {
    assert_eq!(one("hello,world\n1,2\n").input.findings[0].message.code, "headings-not-understood");
    assert_eq!(one("").input.findings[0].message.code, "file-empty");
    assert_eq!(one("a\0b").input.findings[0].message.code, "file-not-text");
}

#[test]
fn where_lines_lie_and_how_much_is_told() {
    use tautline_survey::place::{Openness, Position};
    let lines = "site,line,line length,start latitude,start longitude,end latitude,end longitude\n\
                 Hollow Flat,1,50 m,38.5,-113.25,38.500000001,-113.249\nHollow Flat,2,50 m,38.5,,,\nHollow Flat,1,50 m,38.6,-113.25,,\n\
                 Rim Draw,1,50 m,38.7,-113.5,,\n";
    let sites = "site,ownership,nest,places\nHollow Flat,state,yes,\nRim Draw,private,,exact\nRim Draw,,,blurred 5 km\n";
    let source = |name: &str, text: &str| Source { name: name.into(), bytes: text.into() };
    let read = read(&[source("lines.csv", lines), source("sites.csv", sites)], &Options::default()).input;
    let first = read.place("Hollow Flat", "1").unwrap();
    assert_eq!(first.start, Position { latitude: 38_500_000_000, longitude: -113_250_000_000 });
    assert_eq!(first.end, Some(Position { latitude: 38_500_000_001, longitude: -113_249_000_000 }));
    assert_eq!(read.place("Hollow Flat", "2"), None);
    // a nest is kept back; so is what two rows say unlike things of
    assert_eq!(read.openness("Hollow Flat"), Openness::Withheld);
    assert_eq!(read.openness("Rim Draw"), Openness::Withheld);
    let codes: Vec<&str> = read.findings.iter().map(|finding| finding.message.code).collect();
    assert_eq!(codes, ["site-differs", "position-not-understood", "place-differs"]);
}
