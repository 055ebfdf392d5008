//! The invented place: two strata, what grows in them in each year, and where the permanent lines lie.

use core::f64::consts::PI;
use tautline_engine::length::Unit;
use tautline_engine::seed::{Random, Seed};
use tautline_engine::simulate::{Openings, Pattern, Species, Stand, Tape};

/// The site's name, which says on every page that there is no such place.
pub(super) const SITE: &str = "Hollow Flat (invented)";

/// Length of every line: 100 ft in metres.
pub(super) const LINE: f64 = 30.48;

/// The piece of ground that stands for a stratum, in metres.
const PIECE: (f64, f64) = (120.0, 80.0);

/// A stratum as it was in the first year.
pub(super) struct Stratum {
    pub(super) name: &'static str,
    /// Area in hectares.
    pub(super) hectares: u32,
    /// Letter before the number of each of its lines.
    pub(super) letter: char,
    /// How many lines it has.
    pub(super) lines: usize,
    /// Codes and growth of its plants.
    pub(super) plants: &'static [(&'static str, Species)],
}

/// Position of the swale among the strata.
const SWALE: usize = 1;

/// The strata.
pub(super) const STRATA: [Stratum; 2] = [
    Stratum {
        name: "bench",
        hectares: 240,
        letter: 'B',
        lines: 8,
        plants: &[
            ("FOUR", plant(0.035, 1.1, 0.35, Pattern::Random, 7.0, 0.10)),
            ("WINT", plant(0.30, 0.38, 0.30, Pattern::Random, 3.0, 0.12)),
            ("SHAD", plant(0.30, 0.45, 0.30, Pattern::Random, 4.0, 0.12)),
            ("BUDS", plant(0.15, 0.28, 0.25, Pattern::Random, 0.0, 0.0)),
            ("RICE", plant(0.30, 0.16, 0.25, Pattern::Random, 0.0, 0.0)),
        ],
    },
    Stratum {
        name: "swale",
        hectares: 45,
        letter: 'S',
        lines: 4,
        plants: &[
            ("GREA", plant(0.17, 1.3, 0.35, Pattern::Clumped { clumps: 0.006, spread: 3.5 }, 8.0, 0.09)),
            ("FOUR", plant(0.02, 1.0, 0.35, Pattern::Clumped { clumps: 0.002, spread: 3.0 }, 7.0, 0.10)),
        ],
    },
];

const fn plant(
    density: f64,
    diameter: f64,
    spread: f64,
    pattern: Pattern,
    openings: f64,
    share: f64,
) -> Species {
    let openings = Openings { number: openings, diameter: share };
    Species { density, diameter, diameter_spread: spread, dead: 0.0, pattern, openings }
}

/// A year in which the lines were read.
pub(super) struct Year {
    pub(super) number: u16,
    /// How much wider every crown is than in the first year.
    pub(super) grown: f64,
    /// Share of the plants that are dead.
    pub(super) dead: f64,
    /// Days on which the two strata were read.
    pub(super) days: [&'static str; 2],
    /// Unit of that year's tape; hundredths of it were written.
    pub(super) unit: Unit,
    pub(super) reader: &'static str,
    pub(super) recorder: &'static str,
    pub(super) stage: &'static str,
    pub(super) wind: &'static str,
}

/// The three visits: the crowns grow, some plants die, and in the last year the tape is metric.
pub(super) const YEARS: [Year; 3] = [
    Year {
        number: 2022,
        grown: 1.0,
        dead: 0.05,
        days: ["2022-06-14", "2022-06-15"],
        unit: Unit::Foot,
        reader: "reader C",
        recorder: "recorder A",
        stage: "full leaf",
        wind: "calm",
    },
    Year {
        number: 2024,
        grown: 1.09,
        dead: 0.08,
        days: ["2024-06-11", "2024-06-12"],
        unit: Unit::Foot,
        reader: "reader A",
        recorder: "recorder D",
        stage: "full leaf",
        wind: "light",
    },
    Year {
        number: 2026,
        grown: 1.18,
        dead: 0.12,
        days: ["2026-06-16", "2026-06-17"],
        unit: Unit::Metre,
        reader: "reader A",
        recorder: "recorder D",
        stage: "full leaf",
        wind: "light",
    },
];

/// A permanent line.
pub(super) struct Line {
    /// Its name.
    pub(super) name: String,
    /// Position of its stratum.
    pub(super) stratum: usize,
    /// Where it lies on the stratum's piece of ground.
    pub(super) tape: Tape,
}

/// The stands of every year and the lines across them.
pub(super) struct Ground {
    /// The permanent lines.
    pub(super) lines: Vec<Line>,
    /// By year and stratum.
    stands: Vec<Vec<Stand>>,
}

impl Ground {
    /// The first place of the seed in which exactly one line of the swale crosses nothing in the last year.
    ///
    /// The place is chosen and never the line, so that every line lies where chance put it.
    pub(super) fn draw(seed: u64) -> Self {
        let [.., last] = &YEARS;
        let mut place = 0;
        loop {
            let lines = lay(seed, place);
            let swale = stand(seed, place, SWALE, last);
            let across = lines.iter().filter(|line| line.stratum == SWALE);
            let empty = across.filter(|line| swale.along(&line.tape).is_empty()).count();
            if empty == 1 {
                let stands =
                    |year| (0..STRATA.len()).map(|stratum| stand(seed, place, stratum, year)).collect();
                return Self { lines, stands: YEARS.iter().map(stands).collect() };
            }
            place += 1;
        }
    }

    /// The stand of a stratum in a year.
    pub(super) fn stand(&self, stratum: usize, year: &Year) -> &Stand {
        let number =
            YEARS.iter().position(|known| known.number == year.number).expect("one of the three years");
        &self.stands[number][stratum]
    }
}

/// A stratum's stand in a year: the same plants in every year, grown or gone.
fn stand(seed: u64, place: u64, stratum: usize, year: &Year) -> Stand {
    let species: Vec<Species> = STRATA[stratum]
        .plants
        .iter()
        .map(|(_, plant)| Species { diameter: plant.diameter * year.grown, dead: year.dead, ..*plant })
        .collect();
    let (width, height) = PIECE;
    Stand::draw(&species, width, height, Seed::from_purpose("demo stand", &[seed, place, stratum as u64]))
}

/// The permanent lines of a place.
fn lay(seed: u64, place: u64) -> Vec<Line> {
    let mut random = Seed::from_purpose("demo lines", &[seed, place]).stream();
    let mut lines = Vec::new();
    for (number, stratum) in STRATA.iter().enumerate() {
        for line in 1..=stratum.lines {
            let name = format!("{}{line}", stratum.letter);
            lines.push(Line { name, stratum: number, tape: inside(&mut random) });
        }
    }
    lines
}

/// A tape laid at random, on any bearing, wholly on the piece of ground.
pub(super) fn inside(random: &mut Random) -> Tape {
    let (width, height) = PIECE;
    loop {
        let tape = Tape {
            x: width * random.uniform(),
            y: height * random.uniform(),
            direction: 2.0 * PI * random.uniform(),
            length: LINE,
        };
        let (x, y) = tape.end();
        if (0.0..=width).contains(&x) && (0.0..=height).contains(&y) {
            return tape;
        }
    }
}
