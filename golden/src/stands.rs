//! Invented stands and the randomness they are drawn from.

use tautline_engine::seed::Seed;
use tautline_engine::simulate::{Openings, Pattern, Species, Stand, Tape, mean_cover};

use crate::table::Table;

pub(crate) fn rows(table: &mut Table) {
    random_rows(table);
    let species = species();
    table.real("stand mean cover", mean_cover(&species));
    for number in 0..3 {
        let stand = Stand::draw(&species, 40.0, 30.0, Seed::from_purpose("golden stand", &[number]));
        table.row(format_args!("stand {number} crowns"), stand.crowns.len());
        table.digest(
            format_args!("stand {number} outlines"),
            stand.crowns.iter().flat_map(|crown| [crown.outline.x, crown.outline.y, crown.outline.radius]),
        );
        table.real(format_args!("stand {number} cover"), stand.cover(0.5, false, |crown| crown.live));
        let tape = Tape { x: 3.0, y: 4.0, direction: 0.3, length: 30.0 };
        let chords = stand.along(&tape);
        table.row(format_args!("stand {number} chords"), chords.len());
        table.digest(
            format_args!("stand {number} chords"),
            chords.iter().flat_map(|chord| [chord.start, chord.stop]),
        );
    }
}

fn random_rows(table: &mut Table) {
    let mut random = Seed::from_purpose("golden draws", &[1]).stream();
    for number in 0..8 {
        table.row(format_args!("bits {number}"), random.bits());
        table.row(format_args!("below {number}"), random.below(1_000_003));
        table.row(format_args!("poisson {number}"), random.poisson(4.5));
    }
    table.digest("uniform", (0..5_000).map(|_| random.uniform()));
    table.digest("normal", (0..5_000).map(|_| random.normal()));
    table.digest("lognormal", (0..5_000).map(|_| random.lognormal(0.8, 0.4)));
}

/// Two invented species: one scattered with open crowns, one in clumps.
fn species() -> [Species; 2] {
    [
        Species {
            density: 0.2,
            diameter: 0.9,
            diameter_spread: 0.4,
            dead: 0.1,
            pattern: Pattern::Random,
            openings: Openings { number: 2.0, diameter: 0.15 },
        },
        Species {
            density: 0.3,
            diameter: 0.4,
            diameter_spread: 0.3,
            dead: 0.2,
            pattern: Pattern::Clumped { clumps: 0.05, spread: 1.2 },
            openings: Openings::NONE,
        },
    ]
}
