//! The quick reader and the general one can't be told apart: the same rows to the last bit, the same findings, whatever
//! the table and however many threads. All data is invented.

#![expect(clippy::unwrap_used, reason = "a test that can't read its tables has failed")]

use proptest::prelude::*;
use std::fmt::Write;
use std::num::NonZero;
use tautline_engine::confidence::Method;
use tautline_engine::length::{Bare, DecimalMark, Unit};
use tautline_exchange::stream::{Content, Sites, Table, Way, sites};
use tautline_exchange::{Options, Source, protocol, read};
use tautline_survey::assess::{Question, SiteGoal, assess};
use tautline_survey::check::check;
use tautline_survey::goal;
use tautline_survey::measure::Measure;
use tautline_survey::sites::{SiteRow, hold_back};

fn quick(files: &[(&str, String)], options: &Options, question: &Question, threads: usize) -> Sites {
    let tables: Vec<Table> = files
        .iter()
        .map(|(name, text)| Table { name: (*name).into(), content: Content::Bytes(text.clone().into()) })
        .collect();
    let way = Way { threads: NonZero::new(threads).unwrap(), progress: &|_| {} };
    sites(&tables, options, question, &way).unwrap()
}

/// What `tautline assess` works from, row by row.
fn general(files: &[(&str, String)], options: &Options, question: &Question) -> (Vec<SiteRow>, Vec<String>) {
    let sources: Vec<Source> = files
        .iter()
        .map(|(name, text)| Source { name: (*name).into(), bytes: text.clone().into() })
        .collect();
    let mut read = read(&sources, options);
    let mut all = read.input.clone();
    check(&mut all);
    hold_back(&mut read.input);
    let mut question = question.clone();
    if question.goals.is_empty() {
        question.goals = read.goals;
    }
    let rows = assess(&all, &question).iter().map(|one| SiteRow::of(one, &question)).collect();
    (rows, read.input.findings.iter().map(|finding| format!("{finding:?}")).collect())
}

/// Every figure by its bits, so that 0.1 + 0.2 isn't 0.3.
fn bits(rows: &[SiteRow]) -> Vec<String> {
    let of = |row: &SiteRow| {
        let cover = row.cover.as_ref().map(|cover| {
            let interval = cover.interval.map(|i| (i.low.to_bits(), i.high.to_bits()));
            format!("{:x} {:x} {interval:?} {cover:?}", cover.low.to_bits(), cover.high.to_bits())
        });
        format!("{row:?} {cover:?}")
    };
    rows.iter().map(of).collect()
}

/// Both ways, on one thread and on three; gives what the quick one left to the general one.
fn both(files: &[(&str, String)], options: &Options, question: &Question) -> Option<usize> {
    let (rows, mut findings) = general(files, options, question);
    findings.sort();
    let mut read_again = None;
    for threads in [1, 3] {
        let found = quick(files, options, question, threads);
        assert_eq!(bits(&found.rows), bits(&rows), "{files:?}");
        let mut own: Vec<String> = found.findings.iter().map(|finding| format!("{finding:?}")).collect();
        own.sort();
        assert_eq!(own, findings, "{files:?}");
        read_again = found.read_again;
    }
    read_again
}

const PLANTS: &str = "species,growth form\nSHAA,shrub\nSHBB,shrub\nTREE,tree\nGRAS,grass\n";

fn metres() -> Options {
    Options { unit: Some(Bare::Unit(Unit::Metre)), ..Options::default() }
}

fn at_least(text: &str) -> SiteGoal {
    SiteGoal { site: None, goal: goal::read(text, DecimalMark::Point).unwrap() }
}

/// One row of a table as numbers, so that shrinking keeps it a row.
#[derive(Clone, Debug)]
struct Reading {
    site: u8,
    line: u8,
    year: u8,
    species: u8,
    start: u16,
    width: u16,
    dead: bool,
    awkward: Option<u8>,
}

fn reading(awkward: f64) -> impl Strategy<Value = Reading> {
    let awkward = prop_oneof![9 => Just(false), 1 => Just(true)].prop_map(move |yes| yes && awkward > 0.0);
    (0_u8..4, 0_u8..4, 0_u8..2, 0_u8..6, 0_u16..2_900, 1_u16..100, any::<bool>(), awkward, 0_u8..14).prop_map(
        |(site, line, year, species, start, width, dead, awkward, kind)| Reading {
            site,
            line,
            year,
            species,
            start,
            width,
            dead,
            awkward: awkward.then_some(kind),
        },
    )
}

const SPECIES: [&str; 6] = ["SHAA", "SHBB", "TREE", "GRAS", "shaa", "UNKNOWNPLANT"];

/// A row as text; awkward ones hold what a row can hold beside plain numbers.
fn row(reading: &Reading) -> String {
    let Reading { site, line, year, species, start, width, dead, awkward } = reading;
    let centimetres = |n: u16| format!("{}.{:02}", n / 100, n % 100);
    let (mut start, mut stop) = (centimetres(*start), centimetres(start + width));
    let mut length = if *site == 3 && line % 2 == 1 { "50.00" } else { "30.00" }.to_owned();
    let mut site = format!("S{site}");
    let mut species = SPECIES[*species as usize].to_owned();
    let mut state = if *dead { "dead" } else { "" }.to_owned();
    let mut more = String::new();
    match awkward {
        Some(0) => start = format!("{start} m"),
        Some(1) => stop = "what".into(),
        Some(2) => (start, stop) = (stop, start),
        Some(3) => length = "40".into(),
        Some(4) => length.clear(),
        Some(5) => state = "half".into(),
        Some(6) => more = ",\"a note, with a comma\"".into(),
        Some(7) => more = ",\"a \"\"quoted\"\" note\"".into(),
        Some(8) => site.clear(),
        Some(9) => more = ",note,too much".into(),
        Some(10) => stop = "31".into(),
        Some(11) => species = format!(" {species} "),
        Some(12) => start = "1.23456789012".into(),
        Some(13) => stop.clone_from(&start),
        _ => {}
    }
    format!(
        "{site},L{line},{length},{}-06-09,{species},{start},{stop},{state}{more}\n",
        2024 + u16::from(*year)
    )
}

const HEAD: &str = "site,line,line length,date,species,start,stop,state,note\n";

proptest! {
    #![proptest_config(ProptestConfig::with_cases(80))]

    /// Rows in the order of the tape, as they are written down.
    #[test]
    fn tables_in_order(
        mut readings in prop::collection::vec(reading(1.0), 1..160),
        awkward in prop::bool::weighted(0.5),
        sorted in prop::bool::weighted(0.8),
        two_files in prop::bool::weighted(0.2),
        rule in 0_usize..10,
        year in prop::option::weighted(0.2, Just(2024_u16)),
        method in prop::sample::select(vec![None, Some(Method::StudentT), None, Some(Method::LogitT)]),
    ) {
        if !awkward {
            for reading in &mut readings {
                reading.awkward = None;
            }
        }
        if sorted {
            readings.sort_by_key(|r| (r.site, r.year, r.line, r.start));
        }
        let split = if two_files { readings.len() / 2 } else { readings.len() };
        let text = |readings: &[Reading]| HEAD.to_owned() + &readings.iter().map(row).collect::<String>();
        let mut files = vec![("plants.csv", PLANTS.to_owned()), ("readings.csv", text(&readings[..split]))];
        if two_files {
            files.push(("more.csv", text(&readings[split..])));
        }
        let protocol = protocol::shipped().into_iter().nth(rule).map(|(_, protocol)| protocol);
        let options = Options { protocol, ..metres() };
        let mut question = Question { year, goals: vec![at_least("at least 15 %")], ..Question::default() };
        question.method = method;
        let read_again = both(&files, &options, &question);
        // and it is no empty law: what is plain and stands together is read the quick way
        if !awkward && sorted && !two_files {
            prop_assert!(read_again.is_some());
        }
    }
}

fn plain(rows: &str) -> String {
    HEAD.to_owned() + rows
}

#[test]
fn a_plain_table_is_read_the_quick_way() {
    let mut rows = String::new();
    for (site, line, at) in (0..40).flat_map(|s| (0..5).flat_map(move |l| (0..30).map(move |at| (s, l, at))))
    {
        let start = (site * 7 + line) % 50;
        writeln!(rows, "S{site},L{line},30,2026-06-09,SHAA,{at}.{start:02},{at}.6{site:02}{line},live,")
            .unwrap();
    }
    let files = [("plants.csv", PLANTS.to_owned()), ("readings.csv", plain(&rows))];
    assert_eq!(both(&files, &metres(), &Question::default()), Some(0));
    // Windows line ends, quotes as spreadsheets write them, no line feed at the end
    let quoted = plain(&rows).replace("SHAA", "\"SHAA\"").replace('\n', "\r\n");
    let files = [("plants.csv", PLANTS.to_owned()), ("readings.csv", quoted.trim_end().to_owned())];
    assert_eq!(both(&files, &metres(), &Question::default()), Some(0));
    // semicolons, a byte-order mark, blank rows
    let other = "\u{feff}".to_owned() + &plain(&rows).replace(',', ";").replace("S3;L0;30", "\n\nS3;L0;30");
    let files = [("plants.csv", PLANTS.to_owned()), ("readings.csv", other)];
    assert_eq!(both(&files, &metres(), &Question::default()), Some(0));
}

/// Pieces of a file begin in the middle of rows, lines and sites; enough rows for several.
#[test]
fn pieces_meet_without_a_seam() {
    let mut rows = String::new();
    for (site, line, at) in (0..40).flat_map(|s| (0..4).flat_map(move |l| (0..60).map(move |at| (s, l, at))))
    {
        let long = if site == 7 { "x".repeat(5_000) } else { String::new() };
        writeln!(rows, "Site {site},L{line},80,2026-06-09,SHBB,{at}.1,{at}.2{site:02}{line},live,{long}")
            .unwrap();
    }
    assert!(rows.len() > 4 * 64 * 1024);
    let files = [("readings.csv", plain(&rows))];
    assert_eq!(both(&files, &metres(), &Question::default()), Some(0));
    // one line from the first row to the last
    let mut rows = String::new();
    for at in 0..4_000 {
        writeln!(
            rows,
            "S,L,1000,2026-06-09,SHBB,{}.{:03},{}.{:03},live,0123456789012345678901234567890123456789",
            at / 100,
            at % 100,
            at / 100,
            at % 100 + 1
        )
        .unwrap();
    }
    assert!(rows.len() > 4 * 64 * 1024);
    assert_eq!(both(&[("readings.csv", plain(&rows))], &metres(), &Question::default()), Some(0));
}

/// What the quick reader doesn't know goes to the general one, and the rest of the table doesn't.
#[test]
fn odd_sites_are_read_again_and_no_others() {
    let good = "A,1,30,,SHAA,1,2,,\nA,2,30,,SHAA,1,3,,\nC,1,30,,SHAA,2,3,,\nC,2,30,,SHAA,1,4,,\n";
    for (bad, sites) in [
        ("B,1,30,,SHAA,1,2,,\nB,2,30,,SHAA,5,4,,\n", 1),
        ("B,1,30,,SHAA,1,2,half,\n", 1),
        ("B,1,30,2026-02-30,SHAA,1,2,,\n", 1),
        ("B,1,,,SHAA,1,2,,\n", 1),
        ("B,1,30,,SHAA,1,31,,\n", 1),
        ("B,1,30,,SHAA,1,2,,\nB,1,20,,SHAA,1,2,,\n", 1),
        ("B,,30,,SHAA,1,2,,\nB,1,30,,SHAA,1,2,,\n", 1),
        // its neighbours are those of its site
        (
            "B,1,30,,SHAA,1,2,,\nD,1,30,,SHAA,1,2,,\nB,,30,,SHAA,1,2,,\nD,2,30,,SHAA,1,2,,\nB,2,30,,SHAA,1,2,,\n",
            1,
        ),
        ("B,1,30,,SHAA,1,2,,\nB,2,30,,SHAA,1,2,,\nB,1,30,,SHAA,5,6,,\n", 1),
        ("B,1,30,2024-06-01,SHAA,1,2,,\nB,1,30,2024-06-02,SHAA,1,2,,\n", 1),
        ("B,1,30,2024-06-01,SHAA,1,2,,\nB,2,30,2025-06-02,SHAA,1,2,,\n", 1),
        ("B,1,30,,SHAA,1,2,,\nB,1,30,,TOTAL,0,1,,\nB,Total,30,,,,1,,\n", 1),
        ("B,1,30,,SHAA,1,2,,\nAverage cover,,,,,,7,,\n", 1),
        // the same three rows on lines of two sites: written twice, most likely
        (
            "B,1,30,,SHAA,1,2,,\nB,1,30,,SHAA,4,5,,\nB,1,30,,TREE,7,8,,\n\
             D,1,30,,SHAA,4,5,,\nD,1,30,,TREE,7,8,,\nD,1,30,,shaa,1,2,,\n",
            2,
        ),
    ] {
        let files = [("plants.csv", PLANTS.to_owned()), ("readings.csv", plain(&(bad.to_owned() + good)))];
        assert_eq!(both(&files, &metres(), &Question::default()), Some(sites), "{bad}");
    }
}

/// Tables and questions that the general reader takes as a whole.
#[test]
fn what_is_beyond_the_quick_reader_as_a_whole() {
    let rows = "A,1,30,,SHAA,1,2,,\nA,2,30,,SHAA,1,3,,\n";
    let readings = ("readings.csv", plain(rows));
    let over_rows = ("readings.csv", plain(&format!("{rows}A,3,30,,SHAA,1,2,,\"goes\non\"\n")));
    let decimal_comma = ("readings.csv", plain(rows).replace(',', ";").replace("1;2;", "1,5;2,25;"));
    let lines = ("lines.csv", "site,line,outcome,line length\nA,3,nothing found,30\n".to_owned());
    let no_site = ("readings.csv", plain(&format!("{rows},2,30,,SHAA,5,6,,\n")));
    let too_long = ("readings.csv", plain(&format!("{rows}A,2,30,,SHAA,5,6,5,,7\n")));
    for files in
        [vec![over_rows], vec![no_site], vec![too_long], vec![decimal_comma], vec![readings.clone(), lines]]
    {
        assert_eq!(both(&files, &metres(), &Question::default()), None, "{files:?}");
    }
    let question = Question { goals: vec![at_least("SHAA: at least 5 %")], ..Question::default() };
    assert_eq!(both(std::slice::from_ref(&readings), &metres(), &question), None);
    let latin = Table {
        name: "readings.csv".into(),
        content: Content::Bytes([plain(rows).as_bytes(), b"A,3,30,,SHAA,1,2,,\xe9t\xe9\n"].concat()),
    };
    let way = Way { threads: NonZero::<usize>::MIN, progress: &|_| {} };
    let found = sites(&[latin], &metres(), &Question::default(), &way).unwrap();
    assert_eq!((found.read_again, found.rows[0].lines), (None, 3));
}

/// Options reach the quick reader as they reach the general one.
#[test]
fn options_are_the_same_for_both() {
    let rows = "1,SHAA,100,160\n1,SHAA,162,190\n2,SHBB,10,20.5\n2,SHAA,12,30\n";
    let files = [("readings.csv", "transect,species,start (cm),stop (cm)\n".to_owned() + rows)];
    let length = Measure::read("20 m", None, DecimalMark::Point).ok();
    for (site, gap) in [(None, None), (Some("Invented Flat"), Some("2 in")), (None, Some("3 cm"))] {
        let options =
            Options { line_length: length.clone(), site: site.map(str::to_owned), ..Options::default() };
        let mut question = Question::default();
        question.choice.gap_limit =
            gap.and_then(|text| Measure::read(text, None, DecimalMark::Point).ok()).map(|gap| gap.length());
        question.choice.counts = gap
            .map(|_| tautline_survey::protocol::Counts { also: vec!["SHAA".into()], ..Default::default() });
        assert_eq!(both(&files, &options, &question), Some(0));
    }
}
