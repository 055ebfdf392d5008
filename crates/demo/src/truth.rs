//! What really grows on the demo's ground, which in the field nobody knows.

use super::ground::{Ground, SITE, STRATA, YEARS, Year};
use super::reading::nanometres;
use tautline_engine::cover::{Intercept, Life, line_cover};
use tautline_engine::length::{Length, Unit};
use tautline_engine::num::decimal::percent;
use tautline_engine::rule::ReadingRule;
use tautline_engine::simulate::{Chord, Stand, Tape};
use tautline_engine::stretch::Stretch;
use tautline_exchange::table::row;

/// The plant that is written down and doesn't count: a grass.
const GRASS: &str = "RICE";

/// Distance between the exact lines that sweep the ground, in metres.
const SWEEP: f64 = 0.25;

/// The live cover of the plants that count.
pub(super) struct Known {
    /// Crowns as outlines, openings included.
    pub(super) outline: f64,
    /// As the demo's protocol would have it read: gaps under 2.5 in closed.
    pub(super) protocol: f64,
    /// Openings left out.
    pub(super) openings_out: f64,
}

/// The known cover of each stratum and of the site, year by year, in per cent.
pub(super) fn sheet(ground: &Ground) -> String {
    let mut sheet =
        row(&["site", "stratum", "year", "outline (%)", "under the protocol (%)", "openings left out (%)"]);
    for year in &YEARS {
        let strata = strata(ground, year);
        for (stratum, known) in STRATA.iter().zip(&strata) {
            sheet += &line(stratum.name, year, known);
        }
        sheet += &line("", year, &by_area(&strata));
    }
    sheet
}

/// The site's known cover under the protocol, year by year.
pub(super) fn of_the_site(ground: &Ground) -> Vec<(u16, f64)> {
    YEARS.iter().map(|year| (year.number, by_area(&strata(ground, year)).protocol)).collect()
}

/// Each stratum's known cover in a year.
pub(super) fn strata(ground: &Ground, year: &Year) -> Vec<Known> {
    (0..STRATA.len()).map(|stratum| known(ground.stand(stratum, year), stratum)).collect()
}

/// The strata's cover, each weighted by its share of the area.
pub(super) fn by_area(strata: &[Known]) -> Known {
    let area = STRATA.iter().map(|stratum| f64::from(stratum.hectares)).sum::<f64>();
    let weighted = |cover: fn(&Known) -> f64| {
        let parts = STRATA.iter().zip(strata);
        parts.map(|(stratum, known)| f64::from(stratum.hectares) / area * cover(known)).sum()
    };
    Known {
        outline: weighted(|known| known.outline),
        protocol: weighted(|known| known.protocol),
        openings_out: weighted(|known| known.openings_out),
    }
}

fn line(stratum: &str, year: &Year, known: &Known) -> String {
    let [outline, protocol, openings_out] =
        [known.outline, known.protocol, known.openings_out].map(|share| percent(share, 2));
    row(&[SITE, stratum, &year.number.to_string(), &outline, &protocol, &openings_out])
}

pub(super) fn known(stand: &Stand, stratum: usize) -> Known {
    let counts = |species: usize| STRATA[stratum].plants[species].0 != GRASS;
    let (mut protocol, mut openings_out, mut swept) = (Length::ZERO, Length::ZERO, Length::ZERO);
    let length = nanometres(stand.width);
    let mut y = SWEEP / 2.0;
    while y < stand.height {
        let mut chords = stand.along(&Tape { x: 0.0, y, direction: 0.0, length: stand.width });
        chords.retain(|chord| counts(chord.species));
        let intercepts: Vec<Intercept> = chords.iter().filter_map(intercept).collect();
        protocol = protocol + line_cover(length, &intercepts, &rule()).canopy_length();
        openings_out =
            openings_out + line_cover(length, &intercepts, &ReadingRule::AS_WRITTEN).canopy_length();
        swept = swept + length;
        y += SWEEP;
    }
    Known {
        outline: stand.cover(SWEEP, true, |crown| crown.live && counts(crown.species)),
        protocol: protocol.share_of(swept),
        openings_out: openings_out.share_of(swept),
    }
}

/// The rule of the demo's protocol.
pub(super) fn rule() -> ReadingRule {
    ReadingRule::AS_WRITTEN.with_limit(Length::from_nanometres(5 * Unit::Inch.nanometres() / 2))
}

fn intercept(chord: &Chord) -> Option<Intercept> {
    Some(Intercept {
        stretch: Stretch::new(nanometres(chord.start), nanometres(chord.stop))?,
        species: u32::try_from(chord.species).expect("a handful of species"),
        plant: u32::try_from(chord.plant).ok(),
        life: if chord.live { Life::Live } else { Life::Dead },
    })
}
