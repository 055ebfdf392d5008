//! The demo read back as anyone would read it, and held against what is known.

use super::ground::{Ground, STRATA, YEARS, inside};
use super::reading::{SHARP, hundredths, read, written};
use super::{File, SEED, draw, truth};
use std::collections::BTreeSet;
use tautline_engine::length::Unit;
use tautline_engine::num::decimal::percent;
use tautline_engine::seed::Seed;
use tautline_exchange::{Options, Read, Source};
use tautline_survey::assess::{Question, assess};
use tautline_survey::check::{KINDS, check};
use tautline_survey::goal::Subject;
use tautline_survey::visit::Outcome;

/// Files read back as a person would hand them in.
fn read_back<'a>(files: impl IntoIterator<Item = &'a File>) -> Read {
    let source = |file: &File| Source { name: file.name.clone(), bytes: file.text.clone().into_bytes() };
    let sources: Vec<Source> = files.into_iter().map(source).collect();
    tautline_exchange::read(&sources, &Options::default())
}

#[test]
fn the_story_is_all_there() {
    let demo = draw(SEED);
    let read = read_back(&demo.files);
    assert_eq!(read.input.findings, []);
    assert_eq!((read.input.plan.len(), read.input.strata.len(), read.goals.len()), (12 + 5, 2, 2));

    // twelve lines in three years, one of them read twice in the last, and the five of the older sheet
    assert_eq!(read.input.visits.len(), 3 * 12 + 1 + 5);
    let of = |outcome: &Outcome| read.input.visits.iter().filter(|visit| visit.outcome == *outcome).count();
    assert_eq!((of(&Outcome::Read), of(&Outcome::NotRead)), (41, 1));
    let last = read.input.visits.iter().filter(|visit| visit.date.is_some_and(|date| date.year() == 2026));
    let nothing = last.filter(|visit| visit.outcome == Outcome::Read && visit.intercepts.is_empty());
    assert_eq!(nothing.count(), 1);
    let twice = read.input.visits.iter().filter(|visit| !visit.pass.is_empty());
    let twice: Vec<(&str, &str)> = twice.map(|visit| (visit.line.as_str(), visit.reader.as_str())).collect();
    assert_eq!(twice, [("B3", "reader A"), ("B3", "reader B")]);

    assert!(read.input.visits.iter().all(|visit| visit.site.ends_with("(invented)")));
    assert!(demo.readme.text.contains("EVERYTHING HERE IS INVENTED"));
}

#[test]
fn the_same_seed_draws_the_same_files() {
    let first = draw(7);
    assert_eq!(first, draw(7));
    assert_ne!(first.files, draw(8).files);
}

/// The truth is worked out under the rule of the protocol that lies in the folder.
#[test]
fn the_truth_follows_the_protocol_in_the_folder() {
    let (protocol, findings) =
        tautline_exchange::protocol::read("live-canopy.toml", include_str!("live-canopy.toml"));
    assert_eq!(findings, []);
    assert_eq!(protocol.rule(), (truth::rule(), Vec::new()));
}

/// Many lines laid at random and read as the crew reads them come to the swept truth, within four Monte-Carlo errors.
#[test]
fn readings_are_of_the_ground_they_claim() {
    let ground = Ground::draw(SEED);
    let (bench, last) = (&STRATA[0], &YEARS[2]);
    let stand = ground.stand(0, last);
    let mut random = Seed::from_purpose("test demo", &[]).stream();
    let shares: Vec<f64> = (0..600)
        .map(|_| {
            let tape = inside(&mut random);
            let mut rows = read(&stand.along(&tape), tape.length, last.unit, &SHARP, &mut random);
            rows.retain(|row| row.chord.live && bench.plants[row.chord.species].0 != "RICE");
            rows.sort_by_key(|row| row.written[0]);
            let mut reached = 0;
            let covered: i64 = rows
                .iter()
                .map(|row| {
                    let fresh = (row.written[1] - row.written[0].max(reached)).max(0);
                    reached = reached.max(row.written[1]);
                    fresh
                })
                .sum();
            f64::from(u32::try_from(covered).unwrap()) / 3048.0
        })
        .collect();
    let mean = shares.iter().sum::<f64>() / 600.0;
    let variance = shares.iter().map(|share| (share - mean) * (share - mean)).sum::<f64>() / 599.0;
    let error = (variance / 600.0).sqrt();
    let known = truth::known(stand, 0).openings_out;
    assert!((mean - known).abs() < 4.0 * error && error < 0.003, "{mean} ± {error}, known {known}");
}

#[test]
fn hundredths_are_rounded_half_up() {
    assert_eq!(hundredths(1.235, Unit::Metre), 124);
    assert_eq!(hundredths(30.48, Unit::Foot), 10_000);
    assert_eq!(written(507), "5.07");
    assert_eq!(written(9), "0.09");
}

/// Every planted mistake is found where it stands, by its own check, nothing else is, and every check is met.
#[test]
fn planted_mistakes_are_found() {
    let mut planted = draw(SEED).beside;
    planted.retain(|file| file.name.starts_with("mistakes/") && !file.name.ends_with("txt"));
    for file in &mut planted {
        file.name = file.name.replace("mistakes/", "");
    }
    planted.sort_by(|a, b| a.name.cmp(&b.name));
    let mut input = read_back(&planted).input;
    check(&mut input);
    let mut found: Vec<(&str, u64, &str)> = input
        .findings
        .iter()
        .map(|finding| {
            let (file, row) =
                finding.place.as_ref().map_or(("", 0), |place| (place.file.as_str(), place.row));
            (file, row, finding.message.code)
        })
        .collect();
    found.sort_unstable();
    let planted = [
        ("", 0, "line-planned-without-record"),
        ("lines.csv", 4, "mark-beyond-the-tape"),
        ("lines.csv", 5, "read-but-no-readings"),
        ("lines.csv", 7, "plan-differs"),
        ("permission.csv", 2, "permission-ended"),
        ("permission.csv", 3, "permission-missing"),
        ("two-visits.csv", 26, "tape-laid-the-other-way"),
        ("two-visits.csv", 30, "digits-heap"),
        ("two-visits.csv", 39, "species-new-to-site"),
        ("two-visits.csv", 50, "line-far-from-others"),
        ("with-mistakes.csv", 3, "stop-before-start"),
        ("with-mistakes.csv", 4, "zero-length"),
        ("with-mistakes.csv", 5, "length-unknown-unit"),
        ("with-mistakes.csv", 6, "stop-missing"),
        ("with-mistakes.csv", 7, "beyond-the-tape"),
        ("with-mistakes.csv", 9, "overlap-within-species"),
        ("with-mistakes.csv", 10, "species-misspelt"),
        ("with-mistakes.csv", 11, "state-not-known"),
        ("with-mistakes.csv", 13, "row-written-twice"),
        ("with-mistakes.csv", 14, "date-not-understood"),
        ("with-mistakes.csv", 15, "fits-another-unit"),
        ("with-mistakes.csv", 17, "line-length-differs"),
        ("with-mistakes.csv", 18, "tape-read-backwards"),
        ("with-mistakes.csv", 23, "positions-out-of-order"),
        ("with-mistakes.csv", 24, "start-stop-length-disagree"),
        ("with-mistakes.csv", 26, "line-read-twice"),
        ("with-mistakes.csv", 27, "reading-written-twice"),
        ("with-mistakes.csv", 33, "feet-and-inches-suspected"),
        ("with-mistakes.csv", 36, "lengths-pass-the-line"),
        ("with-mistakes.csv", 39, "past-the-mark"),
        ("with-mistakes.csv", 40, "wholly-past-the-mark"),
        ("with-mistakes.csv", 41, "line-length-missing"),
        ("with-mistakes.csv", 42, "gaps-under-the-rule"),
        ("with-mistakes.csv", 44, "outside-the-reading-window"),
        ("with-mistakes.csv", 45, "positions-fall"),
        ("with-mistakes.csv", 51, "wholly-beyond-the-tape"),
        ("with-mistakes.csv", 52, "positions-and-lengths-mixed"),
        ("with-mistakes.csv", 54, "start-missing"),
        ("with-mistakes.csv", 55, "start-and-stop-missing"),
        ("with-mistakes.csv", 56, "species-not-listed"),
        ("with-mistakes.csv", 57, "length-zero"),
        ("without-names.csv", 2, "date-missing"),
        ("without-names.csv", 2, "observer-missing"),
        ("written-again.csv", 2, "visit-in-two-files"),
    ];
    assert_eq!(found, planted);
    let unmet: Vec<&str> =
        KINDS.iter().map(|kind| kind.code).filter(|code| found.iter().all(|one| one.2 != *code)).collect();
    assert!(unmet.is_empty(), "no mistake is planted for {unmet:?}");
    // what must be settled speaks for no site: of the lines with mistakes three are sound enough
    let assessed = assess(&input, &Question { year: Some(2026), ..Question::default() });
    let lines: Vec<&str> = assessed
        .iter()
        .find(|site| site.site.starts_with("Hollow"))
        .unwrap()
        .lines
        .iter()
        .map(|line| line.line.as_str())
        .collect();
    assert_eq!(lines, ["M17", "M18", "M22"]);
}

/// The demo itself is sound: nothing must be settled, and the gaps that its crews wrote down are all there is to see.
#[test]
fn the_demo_itself_is_sound() {
    let mut input = read_back(&draw(SEED).files).input;
    check(&mut input);
    let codes: BTreeSet<&str> = input.findings.iter().map(|finding| finding.message.code).collect();
    assert_eq!(codes.into_iter().collect::<Vec<_>>(), ["gaps-under-the-rule"]);
    assert!(input.held.is_empty());
}

/// The table of `docs/demo.md` is what comes out.
#[test]
fn the_page_says_what_comes_out() {
    let page = include_str!("../../../docs/demo.md");
    let read = read_back(&draw(SEED).files);
    let assessed = assess(&read.input, &Question { goals: read.goals.clone(), ..Question::default() });
    let ground = Ground::draw(SEED);
    for year in &YEARS {
        let known = truth::by_area(&truth::strata(&ground, year));
        let site = assessed.iter().find(|site| site.year == Some(year.number)).unwrap();
        let estimate = site.figure(&Subject::Canopy).unwrap().ends()[0].value;
        let lower = site.judgements[0].bounds.as_ref().unwrap().lower;
        let figures = [known.outline, known.protocol, known.openings_out, estimate, lower];
        let row = figures.map(|share| percent(share, 1)).join(" | ");
        let row = format!("| {} | {row} |", year.number);
        assert!(page.contains(&row), "{row}");
    }
}
