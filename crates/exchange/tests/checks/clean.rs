//! How often the checks speak of readings in which nothing is wrong: two hundred simulated sites, read twice by two
//! people who follow the rule.

use super::looked_through;
use std::collections::BTreeMap;
use std::fmt::Write;
use tautline_engine::seed::{Random, Seed};
use tautline_engine::simulate::{Chord, Openings, Pattern, Species, Stand, Tape};
use tautline_survey::finding::Weight;

const SITES: u64 = 200;
const LINES: usize = 10;
/// Metres.
const TAPE: f64 = 30.0;

/// How a crew writes: so many divisions of a unit, and gaps of fewer than `limit` of them closed, as under 5 cm.
struct Writing {
    unit: &'static str,
    metres: f64,
    per_unit: i64,
    limit: i64,
}

/// Sites take turns: hundredths of a metre, hundredths of a foot, quarters of an inch.
const WRITINGS: [Writing; 3] = [
    Writing { unit: "m", metres: 1.0, per_unit: 100, limit: 5 },
    Writing { unit: "decimal ft", metres: 0.3048, per_unit: 100, limit: 17 },
    Writing { unit: "in", metres: 0.0254, per_unit: 4, limit: 8 },
];

impl Writing {
    fn divisions(&self, metres: f64) -> i64 {
        #[expect(clippy::cast_possible_truncation, reason = "a tape is thirty metres long")]
        let divisions = (metres / self.metres * if self.per_unit == 4 { 4.0 } else { 100.0 }).round() as i64;
        divisions
    }

    fn edge(&self, at: i64) -> String {
        let (whole, rest) = (at / self.per_unit, at % self.per_unit);
        if self.per_unit == 4 { format!("{whole} {rest}/4") } else { format!("{whole}.{rest:02}") }
    }
}

const PLANTS: [&str; 4] = ["AAAA", "BBBB", "CCCC", "DDDD"];

/// Large shrubs in clumps, small ones at random, subshrubs, and one that is rare.
fn species(grown: f64, dead: f64) -> [Species; 4] {
    let plant = |density, diameter, pattern| Species {
        density,
        diameter: diameter * grown,
        diameter_spread: 0.35,
        dead,
        pattern,
        openings: Openings { number: 3.0, diameter: 0.1 },
    };
    [
        plant(0.06, 1.2, Pattern::Clumped { clumps: 0.01, spread: 3.0 }),
        plant(0.20, 0.5, Pattern::Random),
        plant(0.15, 0.3, Pattern::Random),
        plant(0.01, 0.6, Pattern::Random),
    ]
}

fn tape(random: &mut Random) -> Tape {
    loop {
        let (x, y) = (60.0 * random.uniform(), 50.0 * random.uniform());
        let direction = 2.0 * std::f64::consts::PI * random.uniform();
        let tape = Tape { x, y, direction, length: TAPE };
        let (east, north) = tape.end();
        if (0.0..=60.0).contains(&east) && (0.0..=50.0).contains(&north) {
            return tape;
        }
    }
}

/// Rows of species, start, stop and state as a reader who follows the rule writes them, along the tape.
fn rows(chords: &[Chord], writing: &Writing) -> Vec<(i64, i64, usize, bool)> {
    let mut rows: Vec<(i64, i64, usize, bool)> = Vec::new();
    for live in [true, false] {
        for chord in chords.iter().filter(|chord| chord.live == live) {
            let (start, stop) = (writing.divisions(chord.start), writing.divisions(chord.stop));
            let alike = |row: &&mut (i64, i64, usize, bool)| row.2 == chord.species && row.3 == live;
            match rows.iter_mut().rev().find(alike) {
                Some(before) if start - before.1 < writing.limit => before.1 = before.1.max(stop),
                _ if start < stop => rows.push((start, stop, chord.species, live)),
                _ => {}
            }
        }
    }
    rows.sort_unstable();
    rows
}

/// The sheet of a site: ten lines, read in 2024 by Reader A and in 2026 by Reader B.
fn sheet(site: u64) -> String {
    let mut random = Seed::from_purpose("clean lines", &[site]).stream();
    let tapes: Vec<Tape> = (0..LINES).map(|_| tape(&mut random)).collect();
    let writing = &WRITINGS[usize::try_from(site).unwrap() % WRITINGS.len()];
    let mut text = "site,line,line length,date,reader,species,start (U),stop (U),state,outcome\n"
        .replace('U', writing.unit);
    for (date, reader, grown, dead) in
        [("2024-06-11", "Reader A", 1.0, 0.1), ("2026-06-09", "Reader B", 1.1, 0.15)]
    {
        let stand =
            Stand::draw(&species(grown, dead), 60.0, 50.0, Seed::from_purpose("clean stand", &[site]));
        for (line, tape) in tapes.iter().enumerate() {
            let head = format!("Invented,{},30 m,{date},{reader}", line + 1);
            let rows = rows(&stand.along(tape), writing);
            if rows.is_empty() {
                writeln!(text, "{head},,,,,nothing found").unwrap();
            }
            for (start, stop, species, live) in rows {
                let state = if live { "live" } else { "dead" };
                writeln!(
                    text,
                    "{head},{},{},{},{state},",
                    PLANTS[species],
                    writing.edge(start),
                    writing.edge(stop)
                )
                .unwrap();
            }
        }
    }
    text
}

/// What `docs/checks.md` states: on how many of the two hundred sites each check speaks, and that no other does.
fn stated() -> BTreeMap<&'static str, usize> {
    let (_, table) = include_str!("../../../../docs/checks.md").split_once("## False alarms").unwrap();
    let row = |line: &'static str| line.strip_prefix("| `")?.strip_suffix(" |")?.split_once("` | ");
    table.lines().filter_map(row).map(|(code, sites)| (code, sites.parse().unwrap())).collect()
}

#[test]
fn clean_sites_are_left_in_peace() {
    let plants = "code,form\nAAAA,shrub\nBBBB,shrub\nCCCC,subshrub\nDDDD,shrub\n";
    let protocol = "name = \"invented\"\ncover = \"canopy-outline\"\ndead = \"apart\"\nreading-window = \"June to July\"\n\
        [gap]\nlimit = \"5 cm\"\nequal = \"breaks\"\n";
    let mut spoke: BTreeMap<&str, usize> = BTreeMap::new();
    let mut edges = 0;
    for site in 0..SITES {
        let text = sheet(site);
        let input = looked_through(&[("plants.csv", plants), ("p.toml", protocol), ("sheet.csv", &text)]);
        edges += input.visits.iter().map(|visit| 2 * visit.intercepts.len()).sum::<usize>();
        assert!(input.findings.iter().all(|one| one.weight != Weight::MustSettle), "{:?}", input.findings);
        let mut codes: Vec<&str> = input.findings.iter().map(|one| one.message.code).collect();
        codes.sort_unstable();
        codes.dedup();
        for code in codes {
            *spoke.entry(code).or_default() += 1;
        }
    }
    assert!(edges > 60_000, "only {edges} edges were read");
    assert_eq!(spoke, stated());
}
