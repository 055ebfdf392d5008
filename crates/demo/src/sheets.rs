//! The demo's sheets: plan, strata, and the readings of a year.

use super::ground::{Ground, Line, SITE, STRATA, Year};
use super::reading::{Eye, Row, SHARP, WIDE, read, written};
use tautline_engine::length::Unit;
use tautline_engine::seed::Seed;
use tautline_engine::simulate::Stand;
use tautline_exchange::table::row;

/// The line whose stakes a flood took before the last year.
const WASHED_OUT: (&str, u16) = ("B6", 2026);

/// The line that two readers read in the last year.
const READ_TWICE: (&str, u16) = ("B3", 2026);

/// The permanent lines.
pub(super) fn lines(ground: &Ground) -> String {
    let plan = ground.lines.iter().map(|line| row(&[SITE, &line.name, "100", STRATA[line.stratum].name]));
    row(&["site", "line", "line length (ft)", "stratum"]) + &plan.collect::<String>()
}

/// The strata and their areas.
pub(super) fn strata() -> String {
    let strata = STRATA.iter().map(|stratum| row(&[SITE, stratum.name, &stratum.hectares.to_string()]));
    row(&["site", "stratum", "area (ha)"]) + &strata.collect::<String>()
}

/// The readings of a year.
pub(super) fn readings(ground: &Ground, year: &Year, seed: u64) -> String {
    // a bare `ft` could as well mean feet and inches
    let unit = if year.unit == Unit::Foot { "decimal ft" } else { year.unit.symbol() };
    let mut sheet = row(&[
        "site",
        "line",
        "date",
        "reader",
        "recorder",
        "pass",
        "species",
        &format!("start ({unit})"),
        &format!("stop ({unit})"),
        "state",
        "plant",
        "height (cm)",
        "outcome",
        "growth stage",
        "wind",
        "note",
    ]);
    let mut random = Seed::from_purpose("demo readers", &[seed, u64::from(year.number)]).stream();
    for line in &ground.lines {
        let stand = ground.stand(line.stratum, year);
        let twice = (line.name.as_str(), year.number) == READ_TWICE;
        let passes: &[(&str, &str, &Eye)] = if twice {
            &[("1", year.reader, &SHARP), ("2", "reader B", &WIDE)]
        } else {
            &[("", year.reader, &SHARP)]
        };
        for &(pass, reader, eye) in passes {
            let head = Head { line, year, pass, reader };
            if (line.name.as_str(), year.number) == WASHED_OUT {
                sheet += &head.outcome("not read", "both stakes washed out; invented");
                continue;
            }
            let rows = read(&stand.along(&line.tape), line.tape.length, year.unit, eye, &mut random);
            if rows.is_empty() {
                sheet += &head.outcome("nothing found", "invented");
            }
            sheet
                .extend(rows.iter().enumerate().map(|(number, row)| head.intercept(row, stand, number == 0)));
        }
    }
    sheet
}

/// What the rows of one reading share.
struct Head<'a> {
    line: &'a Line,
    year: &'a Year,
    pass: &'a str,
    reader: &'a str,
}

impl Head<'_> {
    fn outcome(&self, outcome: &str, note: &str) -> String {
        self.row(["", "", "", "", "", "", outcome], note)
    }

    fn intercept(&self, row: &Row, stand: &Stand, first: bool) -> String {
        let (code, _) = STRATA[self.line.stratum].plants[row.chord.species];
        let state = if row.chord.live { "live" } else { "dead" };
        let [start, stop] = row.written.map(written);
        let plant = row.plant.to_string();
        self.row(
            [code, &start, &stop, state, &plant, &height(row, stand), ""],
            if first { "invented" } else { "" },
        )
    }

    fn row(&self, [species, start, stop, state, plant, height, outcome]: [&str; 7], note: &str) -> String {
        let day = self.year.days[self.line.stratum];
        row(&[
            SITE,
            &self.line.name,
            day,
            self.reader,
            self.year.recorder,
            self.pass,
            species,
            start,
            stop,
            state,
            plant,
            height,
            outcome,
            self.year.stage,
            self.year.wind,
            note,
        ])
    }
}

/// The height of every third live plant, two thirds of its width give or take, to the nearest 5 cm.
fn height(row: &Row, stand: &Stand) -> String {
    let plant = row.chord.plant;
    if !(row.first && row.chord.live && plant.is_multiple_of(3)) {
        return String::new();
    }
    let crown = stand
        .crowns
        .iter()
        .find(|crown| crown.plant == plant)
        .expect("a chord is cut from a crown of the stand");
    let taller = [0.8, 1.1, 0.95, 1.25, 0.9][plant % 5];
    let fives = (crown.outline.radius * 2.0 / 3.0 * 2.0 * taller * 100.0 / 5.0).round().max(1.0);
    format!("{}", fives * 5.0)
}
