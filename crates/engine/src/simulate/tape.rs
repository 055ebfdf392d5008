//! A tape across an invented stand: which stretches of it have canopy over them, exactly.

use super::stand::{Crown, Disc, Stand};
use crate::num::math::{cos, sin, sqrt};
use crate::num::{count, sum::sum};

/// A tape laid over a stand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tape {
    /// Easting of the tape's zero, in metres.
    pub x: f64,
    /// Northing of the tape's zero, in metres.
    pub y: f64,
    /// Direction in radians, from east towards north.
    pub direction: f64,
    /// Length in metres.
    pub length: f64,
}

impl Tape {
    /// Easting and northing of the tape's far end, in metres.
    pub fn end(&self) -> (f64, f64) {
        let Heading { east, north } = self.heading();
        (self.x + self.length * east, self.y + self.length * north)
    }

    pub(super) fn heading(&self) -> Heading {
        Heading { east: cos(self.direction), north: sin(self.direction) }
    }
}

/// A stretch of a tape under one plant's canopy.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chord {
    /// Number of the plant in its stand.
    pub plant: usize,
    /// Position of its species in the list that the stand was drawn from.
    pub species: usize,
    /// Whether the plant lives.
    pub live: bool,
    /// Where it starts, in metres from the tape's zero.
    pub start: f64,
    /// Where it stops.
    pub stop: f64,
}

impl Stand {
    /// The stretches of a tape under canopy, openings left out, in the order of their starts.
    ///
    /// # Units
    /// metres from the tape's zero
    /// # Range
    /// a tape inside the rectangle; beyond it nothing grows
    pub fn along(&self, tape: &Tape) -> Vec<Chord> {
        let heading = tape.heading();
        let mut chords: Vec<Chord> =
            self.crowns.iter().flat_map(|crown| pieces(crown, tape, heading)).collect();
        chords.sort_by(|a, b| a.start.total_cmp(&b.start).then(a.plant.cmp(&b.plant)));
        chords
    }

    /// The cover that is really there: share of the rectangle under the crowns that count, overlap counted once.
    ///
    /// `openings` says whether they are canopy, as in an outline. The rectangle is swept by exact lines to the
    /// east, `spacing` apart.
    ///
    /// # Units
    /// share of the ground; `spacing` in metres, far smaller than a crown
    pub fn cover(&self, spacing: f64, openings: bool, counts: impl Fn(&Crown) -> bool) -> f64 {
        let crowns = self.crowns.iter().filter(|crown| counts(crown)).cloned().map(|mut crown| {
            if openings {
                crown.openings.clear();
            }
            crown
        });
        let counted = Self { crowns: crowns.collect(), ..*self };
        let mut shares = Vec::new();
        let mut y = spacing / 2.0;
        while y < self.height {
            let sweep = Tape { x: 0.0, y, direction: 0.0, length: self.width };
            shares.push(covered(&counted.along(&sweep)) / self.width);
            y += spacing;
        }
        sum(shares.iter().copied()) / count(shares.len())
    }
}

/// Length under chords in the order of their starts, overlap counted once.
fn covered(chords: &[Chord]) -> f64 {
    let mut reached = 0.0_f64;
    sum(chords.iter().map(|chord| {
        let fresh = (chord.stop - chord.start.max(reached)).max(0.0);
        reached = reached.max(chord.stop);
        fresh
    }))
}

/// The way a tape points, worked out once for all crowns.
#[derive(Clone, Copy)]
pub(super) struct Heading {
    pub(super) east: f64,
    pub(super) north: f64,
}

/// Where a tape runs under a disc, before it is cut to the tape's ends: half the chord is √(r² − d²).
pub(super) fn under(disc: &Disc, tape: &Tape, heading: Heading) -> Option<(f64, f64)> {
    let (east, north) = (disc.x - tape.x, disc.y - tape.y);
    let aside = east * heading.north - north * heading.east;
    let square = disc.radius * disc.radius - aside * aside;
    if square <= 0.0 {
        return None;
    }
    let (ahead, half) = (east * heading.east + north * heading.north, sqrt(square));
    Some((ahead - half, ahead + half))
}

/// The stretches of a tape under one crown, cut at its openings and at the tape's ends.
fn pieces(crown: &Crown, tape: &Tape, heading: Heading) -> Vec<Chord> {
    let Some((start, stop)) = under(&crown.outline, tape, heading) else { return Vec::new() };
    let stop = stop.min(tape.length);
    let mut openings: Vec<(f64, f64)> =
        crown.openings.iter().filter_map(|disc| under(disc, tape, heading)).collect();
    openings.sort_by(|a, b| a.0.total_cmp(&b.0));
    openings.push((stop, stop));
    let mut from = start.max(0.0);
    let mut found = Vec::new();
    for (opens, closes) in openings {
        let to = opens.min(stop);
        if from < to {
            found.push(Chord {
                plant: crown.plant,
                species: crown.species,
                live: crown.live,
                start: from,
                stop: to,
            });
        }
        from = from.max(closes);
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::seed::Seed;
    use crate::simulate::{Openings, Pattern, Species, mean_cover};

    fn crown(x: f64, y: f64, radius: f64, openings: Vec<Disc>) -> Crown {
        Crown { plant: 0, species: 0, live: true, outline: Disc { x, y, radius }, openings }
    }

    fn stretches(crown: &Crown, tape: &Tape) -> Vec<(f64, f64)> {
        let round = |metres: f64| (metres * 1e9).round() / 1e9;
        pieces(crown, tape, tape.heading())
            .iter()
            .map(|chord| (round(chord.start), round(chord.stop)))
            .collect()
    }

    /// The triangle of sides 3, 4 and 5: a disc of radius 5 whose centre is 3 aside has a half chord of 4.
    #[test]
    fn a_chord_by_pythagoras() {
        let east = Tape { x: 2.0, y: 3.0, direction: 0.0, length: 30.0 };
        assert_eq!(stretches(&crown(12.0, 6.0, 5.0, vec![]), &east), [(6.0, 14.0)]);
        assert_eq!(east.end(), (32.0, 3.0));
        let north = Tape { x: 9.0, y: 0.0, direction: core::f64::consts::FRAC_PI_2, length: 12.0 };
        assert_eq!(stretches(&crown(12.0, 6.0, 5.0, vec![]), &north), [(2.0, 10.0)]);
        // cut at the tape's end, at its zero, and missed
        assert_eq!(stretches(&crown(12.0, 6.0, 5.0, vec![]), &Tape { length: 8.0, ..east }), [(6.0, 8.0)]);
        assert_eq!(stretches(&crown(3.0, 3.0, 5.0, vec![]), &east), [(0.0, 6.0)]);
        assert!(stretches(&crown(12.0, 8.0, 5.0, vec![]), &east).is_empty());
    }

    /// Openings of radius 1 straight under the tape leave 2 m out each; two that overlap leave out their union.
    #[test]
    fn openings_cut_the_chord() {
        let tape = Tape { x: 0.0, y: 0.0, direction: 0.0, length: 20.0 };
        let opening = |x| Disc { x, y: 0.0, radius: 1.0 };
        let one = crown(10.0, 0.0, 5.0, vec![opening(9.0)]);
        assert_eq!(stretches(&one, &tape), [(5.0, 8.0), (10.0, 15.0)]);
        let two = crown(10.0, 0.0, 5.0, vec![opening(10.5), opening(9.0)]);
        assert_eq!(stretches(&two, &tape), [(5.0, 8.0), (11.5, 15.0)]);
        let edge = crown(10.0, 0.0, 5.0, vec![opening(14.0)]);
        assert_eq!(stretches(&edge, &tape), [(5.0, 13.0)]);
    }

    fn shrub(pattern: Pattern, openings: Openings) -> Species {
        Species { density: 0.4, diameter: 0.8, diameter_spread: 0.4, dead: 0.25, pattern, openings }
    }

    /// Mean, and standard deviation, of the live outline's cover on one line in each of many stands.
    fn over_many_stands(pattern: Pattern) -> (f64, f64) {
        let shares: Vec<f64> = (0..400)
            .map(|seed| {
                let species = shrub(pattern, Openings::NONE);
                let stand = Stand::draw(&[species], 30.0, 12.0, Seed::from_purpose("test cover", &[seed]));
                let live: Vec<Chord> = stand
                    .along(&Tape { x: 0.0, y: 6.0, direction: 0.0, length: 30.0 })
                    .into_iter()
                    .filter(|chord| chord.live)
                    .collect();
                covered(&live) / 30.0
            })
            .collect();
        let mean = shares.iter().sum::<f64>() / 400.0;
        let variance = shares.iter().map(|share| (share - mean) * (share - mean)).sum::<f64>() / 399.0;
        (mean, sqrt(variance))
    }

    /// The Boolean model, by hand: λ · (1 − dead) · π/4 · 0.8² · e^0.32 = 0.3 · 0.692 20 = 0.207 66; cover 0.187 52.
    #[test]
    fn a_random_stand_has_the_cover_of_the_boolean_model() {
        let known = mean_cover(&[shrub(Pattern::Random, Openings::NONE)]);
        assert!((known - 0.187_52).abs() < 5e-5, "{known}");
        let (mean, spread) = over_many_stands(Pattern::Random);
        // four Monte-Carlo standard errors of the mean of 400 stands
        let error = spread / 20.0;
        assert!((mean - known).abs() < 4.0 * error && error < 0.005, "{mean} ± {error}, known {known}");
    }

    #[test]
    fn clumps_make_lines_differ_more() {
        let (_, random) = over_many_stands(Pattern::Random);
        let (_, clumped) = over_many_stands(Pattern::Clumped { clumps: 0.03, spread: 1.5 });
        // were both alike, a ratio of variances of 1.364 would be the 99.9 % point of F with 399 and 399 degrees
        assert!(clumped * clumped > 1.364 * random * random, "{clumped} {random}");
    }

    #[test]
    fn chords_stay_on_the_tape_and_have_length() {
        let openings = Openings { number: 3.0, diameter: 0.12 };
        let stand =
            Stand::draw(&[shrub(Pattern::Random, openings)], 30.0, 20.0, Seed::from_purpose("test", &[]));
        let mut seen = 0;
        for step in 0..40 {
            let tape = Tape { x: 2.0, y: 0.5 * f64::from(step), direction: 0.02, length: 25.0 };
            for chord in stand.along(&tape) {
                assert!(0.0 <= chord.start && chord.start < chord.stop && chord.stop <= 25.0);
                seen += 1;
            }
        }
        assert!(seen > 200, "{seen}");
    }

    /// One disc of radius 1 in 4 m × 4 m, laid over the corner: π/16 of the ground, with an opening of radius ½ 3π/64.
    #[test]
    fn cover_is_of_the_whole_rectangle() {
        let stand = Stand {
            width: 4.0,
            height: 4.0,
            crowns: vec![crown(2.0, 2.0, 1.0, vec![Disc { x: 2.0, y: 2.0, radius: 0.5 }])],
        };
        let pi = core::f64::consts::PI;
        assert!((stand.cover(0.001, true, |_| true) - pi / 16.0).abs() < 1e-5);
        assert!((stand.cover(0.001, false, |_| true) - 3.0 * pi / 64.0).abs() < 1e-5);
        assert!(stand.cover(0.001, true, |crown| !crown.live) == 0.0);
    }
}
