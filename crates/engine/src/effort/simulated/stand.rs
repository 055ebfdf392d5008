//! Lines across an invented stand whose cover and spread are those that were foreseen.

use crate::num::math::{ln, sqrt};
use crate::num::{count, sum::sum};
use crate::seed::Seed;
use crate::simulate::{Ground, Openings, Pattern, Species, Stand, Tape, overlap_once};
use core::f64::consts::TAU;

/// What is foreseen of the lines.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Foreseen {
    /// Cover on the earlier visit, as a share.
    pub cover: f64,
    /// Standard deviation of the cover of lines.
    pub deviation: f64,
    /// Change of cover to the later visit: below zero where plants die, above where they come.
    pub change: f64,
    /// Length of a line in metres.
    pub length: f64,
}

/// Lines laid at random over one stand, each read on both visits: the same plants, some of them gone or come.
#[derive(Clone, Debug, PartialEq)]
pub struct Readings {
    /// Cover of each line on the earlier visit and on the later.
    pub lines: Vec<(f64, f64)>,
    /// Mean number of plants in a clump, which was chosen for the wanted spread.
    pub clump: f64,
}

/// Side of the square in metres, and crowns as in the trials of intervals: median diameter and spread of its logarithm.
const EXTENT: f64 = 300.0;
const DIAMETER: f64 = 0.9;
const DIAMETER_SPREAD: f64 = 0.4;
/// Standard deviation of a plant's distance from its clump's centre, in metres.
const CLUMP_SPREAD: f64 = 3.0;
/// Mean numbers of plants in a clump that are tried.
const CLUMPS: [f64; 9] = [1.0, 2.0, 4.0, 8.0, 16.0, 32.0, 64.0, 128.0, 256.0];
/// Lines read to choose the clumps, and lines that surveys are drawn from.
const SOUNDED: usize = 1_000;
const KEPT: usize = 4_000;

impl Readings {
    /// Draws a stand whose lines have about the cover and the spread foreseen: the clumps that fit best of
    /// those tried. Where cover falls a share of the plants dies; a rise is the same with the visits swapped.
    ///
    /// # Range
    /// cover, and cover after the change, above 0 and below 0.9; `None` otherwise
    pub fn of(foreseen: Foreseen, seed: u64) -> Option<Self> {
        let mut making = Making::new(foreseen, seed)?;
        loop {
            if let Some(made) = making.step() {
                return Some(made);
            }
        }
    }

    /// Mean and standard deviation of the earlier reading, of the difference, and the share of lines without canopy on
    /// the earlier visit.
    pub fn shape(&self) -> Shape {
        let earlier: Vec<f64> = self.lines.iter().map(|line| line.0).collect();
        let differences: Vec<f64> = self.lines.iter().map(|line| line.1 - line.0).collect();
        let n = count(self.lines.len());
        Shape {
            cover: sum(earlier.iter().copied()) / n,
            deviation: deviation(&earlier),
            change: sum(differences.iter().copied()) / n,
            deviation_of_differences: deviation(&differences),
            bare: count(earlier.iter().filter(|&&cover| cover <= 0.0).count()) / n,
        }
    }
}

/// A stand in the making, step by step for whoever can't wait for the whole: the steps don't change it.
#[derive(Clone, Debug)]
pub struct Making {
    foreseen: Foreseen,
    seed: u64,
    /// Cover on the visit with more, and with less.
    more: f64,
    less: f64,
    /// How far the spread of each number of plants in a clump that was tried is from the wanted one.
    tried: Vec<(f64, f64)>,
    dying: Option<Dying>,
}

/// A stand whose clumps are chosen, and between which shares of dead plants its later cover lies.
#[derive(Clone, Debug)]
struct Dying {
    clump: f64,
    all: Ground,
    wanted: f64,
    low: f64,
    high: f64,
    halvings: usize,
}

impl Making {
    /// Nothing drawn yet.
    ///
    /// # Range
    /// that of [`Readings::of`]
    pub fn new(foreseen: Foreseen, seed: u64) -> Option<Self> {
        let (before, after) = (foreseen.cover, foreseen.cover + foreseen.change);
        let fits = |cover: f64| cover > 0.0 && cover < 0.9;
        if !(fits(before) && fits(after) && foreseen.length > 0.0 && foreseen.deviation > 0.0) {
            return None;
        }
        let (more, less) = (before.max(after), before.min(after));
        Some(Self { foreseen, seed, more, less, tried: Vec::new(), dying: None })
    }

    /// Draws one stand more; the readings, once the last is drawn.
    pub fn step(&mut self) -> Option<Readings> {
        if let Some(&plants) = CLUMPS.get(self.tried.len()) {
            let lines = read(&[self.ground(plants, 0.0)], self.foreseen.length, SOUNDED, self.seed);
            let covers: Vec<f64> = lines.iter().map(|line| line[0]).collect();
            self.tried.push((plants, ln(deviation(&covers) / self.foreseen.deviation).abs()));
            return None;
        }
        let Some(mut dying) = self.dying.take() else {
            let (clump, _) = self.tried.iter().copied().min_by(|a, b| a.1.total_cmp(&b.1))?;
            let all = self.ground(clump, 0.0);
            let wanted = all.cover(SWEEP) * self.less / self.more;
            self.dying = Some(Dying { clump, all, wanted, low: 0.0, high: 1.0, halvings: 0 });
            return None;
        };
        let middle = f64::midpoint(dying.low, dying.high);
        let ground = self.ground(dying.clump, middle);
        if dying.halvings == HALVINGS {
            return Some(self.read(&dying, ground));
        }
        // more plants die, less is left: halving finds the share
        if ground.cover(SWEEP) > dying.wanted {
            dying.low = middle;
        } else {
            dying.high = middle;
        }
        dying.halvings += 1;
        self.dying = Some(dying);
        None
    }

    fn ground(&self, clump: f64, dead: f64) -> Ground {
        Ground::of(&drawn(clump, self.more, dead, self.seed), |crown| crown.live)
    }

    fn read(&self, dying: &Dying, later: Ground) -> Readings {
        let lines = read(&[dying.all.clone(), later], self.foreseen.length, KEPT, self.seed);
        let fell = self.foreseen.change <= 0.0;
        let lines = lines.iter().map(|line| if fell { (line[0], line[1]) } else { (line[1], line[0]) });
        Readings { lines: lines.collect(), clump: dying.clump }
    }
}

/// What lines are like.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shape {
    /// Mean cover on the earlier visit.
    pub cover: f64,
    /// Its standard deviation between lines.
    pub deviation: f64,
    /// Mean change.
    pub change: f64,
    /// Standard deviation of the change between lines.
    pub deviation_of_differences: f64,
    /// Share of lines without any canopy on the earlier visit.
    pub bare: f64,
}

const SWEEP: f64 = 0.5;
const HALVINGS: usize = 8;

fn drawn(plants: f64, cover: f64, dead: f64, seed: u64) -> Stand {
    let shrub = Species {
        density: 0.0,
        diameter: DIAMETER,
        diameter_spread: DIAMETER_SPREAD,
        dead,
        pattern: Pattern::Random,
        openings: Openings::NONE,
    };
    let clumps = -ln(1.0 - cover) / area_of_clump(plants, shrub.mean_area());
    let pattern =
        if plants > 1.0 { Pattern::Clumped { clumps, spread: CLUMP_SPREAD } } else { Pattern::Random };
    let species = Species { density: clumps * plants, pattern, ..shrub };
    Stand::draw(&[species], EXTENT, EXTENT, Seed::from_purpose("stand for a plan", &[seed]))
}

/// Mean area under the crowns of one clump, overlap counted once: clumps are then independent sets at random places, so
/// that cover = 1 − exp(−clumps per area · area).
///
/// A point at distance r from the centre is under a Poisson number of crowns with mean m a g(r), g the normal density in
/// two directions, so the area is ∫ 1 − exp(−m a g) = 2π s² Ein(m a / 2π s²), Ein(k) = ∫₀ᵏ (1 − e⁻ᵗ) / t dt. A crown's
/// own width adds its variance, a / 4π along either axis.
///
/// # Source
/// the Boolean model of sets: Chiu, Stoyan, Kendall and Mecke 2013, §3.1; Ein: NIST Digital Library of Mathematical
/// Functions, 6.2.3
fn area_of_clump(plants: f64, crown: f64) -> f64 {
    if plants <= 1.0 {
        return plants * crown;
    }
    let around = TAU * (CLUMP_SPREAD * CLUMP_SPREAD + crown / (2.0 * TAU));
    around * ein(plants * crown / around)
}

/// Ein(k) = Σ (−1)ʲ⁺¹ kʲ / (j j!), good to ten digits below 10.
fn ein(k: f64) -> f64 {
    let (mut power, mut value) = (-1.0, 0.0);
    for j in 1..=60 {
        let j = f64::from(j);
        power *= -k / j;
        value += power / j;
    }
    value
}

/// Each of so many lines anywhere in any direction, on every ground.
fn read(grounds: &[Ground], length: f64, lines: usize, seed: u64) -> Vec<Vec<f64>> {
    let mut random = Seed::from_purpose("lines for a plan", &[seed]).stream();
    let mut stretches = Vec::new();
    let tapes = (0..lines).map(|_| {
        let mut upto = |most: f64| most * random.uniform();
        Tape { x: upto(EXTENT), y: upto(EXTENT), direction: upto(TAU), length }
    });
    let tapes: Vec<Tape> = tapes.collect();
    let mut cover = |ground: &Ground, tape: &Tape| {
        ground.along(tape, &mut stretches);
        overlap_once(&mut stretches);
        sum(stretches.iter().map(|(start, stop)| stop - start)) / length
    };
    tapes.iter().map(|tape| grounds.iter().map(|ground| cover(ground, tape)).collect()).collect()
}

fn deviation(values: &[f64]) -> f64 {
    let n = count(values.len());
    let mean = sum(values.iter().copied()) / n;
    sqrt(sum(values.iter().map(|value| (value - mean) * (value - mean))) / (n - 1.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::effort::power::Sides;
    use crate::effort::simulated::{KnownLines, Simulation};

    /// Ein(1) = 0.7965995992970531 and Ein(5) = 2.1878018729269089 (γ + ln k + E₁(k): Abramowitz and Stegun 1964,
    /// table 5.1, E₁(1) = 0.219383934, E₁(5) = 0.001148296).
    #[test]
    fn ein_of_the_handbook() {
        for (k, e1) in [(1.0_f64, 0.219_383_934), (5.0, 0.001_148_296)] {
            let expected = 0.577_215_664_9 + ln(k) + e1;
            assert!((ein(k) - expected).abs() < 2e-9, "{k}");
        }
    }

    /// Sparse and uneven: many lines without a shrub, most of the rest little. The stand is about as foreseen, and the
    /// t test sees less of the change than normal lines with the same mean and spread of differences would show.
    #[test]
    fn a_skewed_stand() {
        let foreseen = Foreseen { cover: 0.02, deviation: 0.035, change: -0.012, length: 30.0 };
        let stand = Readings::of(foreseen, 1).unwrap();
        let shape = stand.shape();
        assert!(ln(shape.cover / 0.02).abs() < 0.5, "{shape:?}");
        assert!(ln(shape.deviation / 0.035).abs() < 0.5, "{shape:?}");
        assert!((shape.change / shape.cover + 0.6).abs() < 0.15, "{shape:?}");
        assert!(shape.bare > 0.3, "{shape:?}");
        let lines = KnownLines::new(&stand.lines, Seed::from_purpose("test", &[])).unwrap();
        let mut drawn = Simulation::new(lines, 10, Sides::Two, 0.1);
        drawn.run(4_000);
        let normal = crate::effort::power::TTest {
            groups: crate::effort::power::Groups::One,
            sides: Sides::Two,
            alpha: 0.1,
        };
        let closed = normal.power(shape.change.abs() / shape.deviation_of_differences, 10.0);
        let chance = drawn.chance();
        assert!((chance.value - closed).abs() > 4.0 * chance.error, "{chance:?} {closed}");
        assert_eq!(Readings::of(Foreseen { cover: 0.0, ..foreseen }, 1), None);
    }

    /// A rise is a fall seen backwards.
    #[test]
    fn a_rise() {
        let foreseen = Foreseen { cover: 0.05, deviation: 0.04, change: 0.03, length: 20.0 };
        let shape = Readings::of(foreseen, 2).unwrap().shape();
        assert!(shape.change > 0.0 && (shape.change / shape.cover - 0.6).abs() < 0.2, "{shape:?}");
    }
}
