//! Lines laid over a stand at random, and what is read on them.

use crate::stands::{EXTENT, Known};
use core::f64::consts::PI;
use tautline_engine::estimate::Line;
use tautline_engine::num::sum::sum;
use tautline_engine::seed::Random;
use tautline_engine::simulate::{Tape, overlap_once};

/// How long the lines of a survey are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Length {
    /// All of one length, in whole metres.
    Equal(u64),
    /// 20, 30, 50 or 100 m, each as likely for every line.
    Mixed,
}

impl Length {
    /// All that are tried.
    pub const ALL: [Self; 5] =
        [Self::Equal(20), Self::Equal(30), Self::Equal(50), Self::Equal(100), Self::Mixed];

    /// Its name in the table.
    pub fn name(self) -> String {
        match self {
            Self::Equal(metres) => metres.to_string(),
            Self::Mixed => "mixed".to_owned(),
        }
    }

    fn draw(self, random: &mut Random) -> f64 {
        const LENGTHS: [f64; 4] = [20.0, 30.0, 50.0, 100.0];
        match self {
            #[expect(clippy::cast_precision_loss, reason = "whole metres of a tape")]
            Self::Equal(metres) => metres as f64,
            Self::Mixed => LENGTHS[usize::try_from(random.below(4)).expect("below four")],
        }
    }
}

/// What is read on one line, in metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// Length of the line.
    pub length: f64,
    /// Canopy, overlap counted once.
    pub canopy: f64,
    /// Every plant's canopy added up.
    pub sum: f64,
    /// Stretches of canopy.
    pub intercepts: usize,
    /// Sum of the squared lengths of those stretches.
    pub squares: f64,
}

impl Reading {
    /// The line as the estimators take it, for canopy.
    pub fn canopy_line(&self) -> Line {
        Line::new(self.canopy, self.length)
    }

    /// The line as the estimators take it, for the plants added up.
    pub fn sum_line(&self) -> Line {
        Line::new(self.sum, self.length)
    }
}

/// Reads `lines` lines that start anywhere and run in any direction, written over `readings`.
pub fn read(known: &Known, length: Length, lines: usize, random: &mut Random, readings: &mut Vec<Reading>) {
    let long = |stretches: &[(f64, f64)]| sum(stretches.iter().map(|(start, stop)| stop - start));
    let mut stretches = Vec::new();
    readings.clear();
    for _ in 0..lines {
        let (x, y) = (EXTENT * random.uniform(), EXTENT * random.uniform());
        let direction = 2.0 * PI * random.uniform();
        let tape = Tape { x, y, direction, length: length.draw(random) };
        known.ground.along(&tape, &mut stretches);
        let added_up = long(&stretches);
        overlap_once(&mut stretches);
        readings.push(Reading {
            length: tape.length,
            canopy: long(&stretches),
            sum: added_up,
            intercepts: stretches.len(),
            squares: sum(stretches.iter().map(|(start, stop)| (stop - start) * (stop - start))),
        });
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::stands::Set;
    use tautline_engine::seed::Seed;

    /// Lines laid anywhere have the stand's own cover on average: within four standard errors.
    #[test]
    fn lines_are_fair() {
        let [_, mild, ..] = Set::Choose.clumpings();
        let known = Set::Choose.stand(mild, 10, Set::Choose.area_of_clump(mild), 0);
        let mut random = Seed::from_purpose("test fair", &[]).stream();
        let mut readings = Vec::new();
        read(&known, Length::Equal(50), 4_000, &mut random, &mut readings);
        for (truth, of) in [
            (known.canopy, (|reading| reading.canopy_line().share()) as fn(&Reading) -> f64),
            (known.sum, |reading| reading.sum_line().share()),
        ] {
            let mean = readings.iter().map(of).sum::<f64>() / 4_000.0;
            let variance = readings.iter().map(|r| (of(r) - mean) * (of(r) - mean)).sum::<f64>() / 3_999.0;
            let error = (variance / 4_000.0).sqrt();
            assert!((mean - truth).abs() < 4.0 * error && error < 0.05 * truth, "{mean} {truth} {error}");
        }
    }
}
