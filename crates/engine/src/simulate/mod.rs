//! Invented stands of shrubs whose cover is known, and the lines that cross them.
//!
//! A stand is drawn from [`Species`], each with its own density, crowns and pattern; [`Stand::along`] gives the
//! exact stretches of canopy over a tape, [`Stand::cover`] what there really is, and [`mean_cover`] what stands
//! of that make have on average. The region joins at opposite edges, so that it has no thin margin; [`Ground`] is the
//! same stand made ready for very many tapes.

mod ground;
mod stand;
mod tape;

pub use ground::{Ground, overlap_once};
pub use stand::{Crown, Disc, Stand};
pub use tape::{Chord, Tape};

use crate::num::math::exp;
use crate::num::sum::sum;
use core::f64::consts::PI;

/// How a species grows in a stand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Species {
    /// Plants per square metre, live and dead.
    pub density: f64,
    /// Median crown diameter in metres.
    pub diameter: f64,
    /// Standard deviation of the logarithm of the crown diameter.
    pub diameter_spread: f64,
    /// Share of the plants that are dead.
    pub dead: f64,
    /// Where the plants stand.
    pub pattern: Pattern,
    /// Openings in each crown.
    pub openings: Openings,
}

/// Where plants stand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Pattern {
    /// Anywhere, each for itself: a Poisson process.
    Random,
    /// In clumps that lie at random; each plant is scattered normally about its clump's centre.
    ///
    /// # Source
    /// Thomas 1949, Biometrika 36:18–25; Neyman and Scott 1958, Journal of the Royal Statistical Society B 20:1–43
    Clumped {
        /// Clumps per square metre.
        clumps: f64,
        /// Standard deviation, along either axis, of a plant's distance from its clump's centre, in metres.
        spread: f64,
    },
}

/// Round openings inside a crown; they grow with it, so that the same plant a few years on is the same shape.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Openings {
    /// Mean number in a crown; the number is Poisson.
    pub number: f64,
    /// Diameter as a share of the crown's; the openings lie wholly inside and may overlap.
    pub diameter: f64,
}

impl Openings {
    /// A closed crown.
    pub const NONE: Self = Self { number: 0.0, diameter: 0.0 };
}

impl Species {
    /// Mean area of a live plant's outline, π/4 · median² · e^(2σ²): the second moment of a lognormal diameter.
    ///
    /// # Units
    /// square metres
    pub fn mean_area(&self) -> f64 {
        PI / 4.0 * self.diameter * self.diameter * exp(2.0 * self.diameter_spread * self.diameter_spread)
    }
}

/// Mean cover of the live outlines where every species stands at random, 1 − exp(−Σ λ · E\[area\]) over live plants.
///
/// Clumped plants overlap more, so that a clumped stand covers less than this on average.
///
/// # Units
/// share of the ground
/// # Source
/// the Boolean model: Chiu, Stoyan, Kendall and Mecke 2013, Stochastic Geometry and its Applications, §3.1.2
/// # Example
/// ```
/// use tautline_engine::simulate::{Openings, Pattern, Species, mean_cover};
/// let shrub = Species { density: 0.25, diameter: 1.0, diameter_spread: 0.0, dead: 0.0,
///                       pattern: Pattern::Random, openings: Openings::NONE };
/// // λ · E[area] = 0.25 · π/4 = 0.19635
/// assert!((mean_cover(&[shrub]) - 0.178_275).abs() < 1e-6);
/// ```
pub fn mean_cover(species: &[Species]) -> f64 {
    1.0 - exp(-sum(species.iter().map(|s| s.density * (1.0 - s.dead) * s.mean_area())))
}
