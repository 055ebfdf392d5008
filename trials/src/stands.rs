//! Which stands are tried, and how a stand of a wanted cover is made.
//!
//! A stand is one species on a square of [`EXTENT`] that joins at opposite edges. Crowns are closed discs whose diameter
//! is lognormal. Plants stand at random (a Poisson process), or in clumps that lie at random, each with a Poisson number
//! of plants scattered normally about its centre (a Thomas process). Clumps are then independent sets of crowns at
//! random places, so that cover = 1 − exp(−clumps per area · mean area under one clump), whatever a clump looks like:
//! that gives the number of clumps for a wanted cover. Truth is always the finished stand's own cover.

use tautline_engine::num::math::{exp, ln};
use tautline_engine::seed::Seed;
use tautline_engine::simulate::{Ground, Openings, Pattern, Species, Stand};

/// Side of the square, in metres.
pub const EXTENT: f64 = 500.0;

/// Distance between the lines that sweep a stand for its own cover, in metres.
const SWEEP: f64 = 0.25;

/// The same for a sounding, whose number of clumps is unsure by more.
const SOUNDING_SWEEP: f64 = 1.0;

/// A set of stands: methods are chosen on one and confirmed on the other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Set {
    /// The stands on which the default was chosen.
    Choose,
    /// Other crowns, other clumps, other covers.
    Confirm,
}

/// How strongly the plants of a stand are clumped.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Clumping {
    /// Its name.
    pub name: &'static str,
    /// Mean number of plants in a clump; 1 for plants at random.
    pub plants: f64,
    /// Standard deviation, along either axis, of a plant's distance from its clump's centre, in metres; 0 at random.
    pub spread: f64,
}

const fn clumping(name: &'static str, plants: f64, spread: f64) -> Clumping {
    Clumping { name, plants, spread }
}

impl Set {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Choose, Self::Confirm];

    /// Its name in the table.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Choose => "choose",
            Self::Confirm => "confirm",
        }
    }

    /// Median crown diameter in metres, and standard deviation of its logarithm.
    pub const fn crowns(self) -> (f64, f64) {
        match self {
            Self::Choose => (0.9, 0.4),
            Self::Confirm => (0.6, 0.5),
        }
    }

    /// Wanted covers, in per cent.
    pub const fn covers(self) -> &'static [u64] {
        match self {
            Self::Choose => &[1, 3, 10, 40],
            Self::Confirm => &[2, 6, 20],
        }
    }

    /// Degrees of clumping, from none to strong.
    pub const fn clumpings(self) -> [Clumping; 4] {
        match self {
            Self::Choose => [
                clumping("random", 1.0, 0.0),
                clumping("mild", 5.0, 2.0),
                clumping("strong", 40.0, 3.0),
                clumping("patches", 100.0, 8.0),
            ],
            Self::Confirm => [
                clumping("random", 1.0, 0.0),
                clumping("mild", 4.0, 1.5),
                clumping("strong", 30.0, 2.0),
                clumping("patches", 200.0, 6.0),
            ],
        }
    }

    fn species(self, clumping: Clumping, clumps: f64) -> Species {
        let (diameter, diameter_spread) = self.crowns();
        let pattern = if clumping.spread > 0.0 {
            Pattern::Clumped { clumps, spread: clumping.spread }
        } else {
            Pattern::Random
        };
        let density = clumps * clumping.plants;
        Species { density, diameter, diameter_spread, dead: 0.0, pattern, openings: Openings::NONE }
    }

    /// Mean area under the crowns of one clump, overlap counted once, in square metres.
    ///
    /// Known for plants at random; otherwise measured on a stand of 1 km × 1 km with a clump on 400 m², which is about
    /// 2,500 clumps: 1 − cover = exp(−clumps per area · area).
    pub fn area_of_clump(self, clumping: Clumping) -> f64 {
        if clumping.spread <= 0.0 {
            return self.species(clumping, 1.0).mean_area();
        }
        let clumps = 1.0 / 400.0;
        let seed = Seed::from_purpose(&format!("trial sounding {} {}", self.name(), clumping.name), &[]);
        let stand = Stand::draw(&[self.species(clumping, clumps)], 1_000.0, 1_000.0, seed);
        -ln(1.0 - Ground::of(&stand, |_| true).cover(SOUNDING_SWEEP)) / clumps
    }

    /// One stand: number `realisation` of this clumping and cover, given the area of a clump.
    pub fn stand(self, clumping: Clumping, cover: u64, area_of_clump: f64, realisation: u64) -> Known {
        #[expect(clippy::cast_precision_loss, reason = "per cent")]
        let clumps = -ln(1.0 - cover as f64 / 100.0) / area_of_clump;
        let purpose = format!("trial stand {} {}", self.name(), clumping.name);
        let seed = Seed::from_purpose(&purpose, &[cover, realisation]);
        let stand = Stand::draw(&[self.species(clumping, clumps)], EXTENT, EXTENT, seed);
        let ground = Ground::of(&stand, |_| true);
        Known { canopy: ground.cover(SWEEP), sum: ground.sum(), ground }
    }
}

/// A stand whose cover is known.
pub struct Known {
    /// The stand, ready for tapes.
    pub ground: Ground,
    /// Its canopy cover, overlap counted once.
    pub canopy: f64,
    /// Its plants' covers added up.
    pub sum: f64,
}

/// The cover that stands of so many clumps per area have on average: what [`Set::stand`] turns round.
pub fn mean_cover(clumps: f64, area_of_clump: f64) -> f64 {
    1.0 - exp(-clumps * area_of_clump)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Twenty stands have the wanted cover on average, within four of their own standard errors.
    #[test]
    fn a_stand_has_about_the_wanted_cover() {
        let [random, _, strong, _] = Set::Choose.clumpings();
        for clumping in [random, strong] {
            let area = Set::Choose.area_of_clump(clumping);
            let covers: Vec<f64> =
                (0..8).map(|stand| Set::Choose.stand(clumping, 10, area, stand).canopy).collect();
            let mean = covers.iter().sum::<f64>() / 8.0;
            let variance = covers.iter().map(|cover| (cover - mean) * (cover - mean)).sum::<f64>() / 7.0;
            let error = (variance / 8.0).sqrt();
            // the sounding of about 2,500 clumps is itself unsure by about 3 %
            assert!((mean - 0.1).abs() < 4.0 * error + 0.005, "{} {mean} ± {error}", clumping.name);
            assert!(error < 0.01);
        }
    }

    /// By hand: crowns of the first set have a mean area of π/4 · 0.81 · e^0.32 = 0.87609 m².
    #[test]
    fn the_area_of_a_single_crown() {
        let [random, ..] = Set::Choose.clumpings();
        assert!((Set::Choose.area_of_clump(random) - 0.876_09).abs() < 1e-5);
        assert!((mean_cover(0.12, 0.876_09) - 0.099_78).abs() < 1e-4);
    }
}
