//! Length against number: how line length moves the spread of lines, what a design costs, and the cheapest that does.
//!
//! A pilot's lines are cut in equal pieces to learn how much a shorter line would vary. Pieces serve for nothing else:
//! they are never counted as a sample.

use super::search::{MOST_UNITS, smallest};
use crate::length::Length;
use crate::num::count;
use crate::num::math::{exp, ln, powf, sqrt};
use crate::num::sum::{mean, sum, variance};
use crate::seed::{Random, Seed};
use crate::stretch::Stretch;

/// One line of a pilot: its counted canopy in order and without overlap, and its length.
#[derive(Clone, Debug, PartialEq)]
pub struct PilotLine {
    /// Counted canopy along the tape.
    pub canopy: Vec<Stretch>,
    /// Length of the tape.
    pub length: Length,
}

impl PilotLine {
    /// Cover of each of so many equal pieces.
    fn pieces(&self, pieces: i64) -> Vec<f64> {
        let whole = self.length.nanometres();
        let edge = |at: i64| {
            let product = i128::from(whole) * i128::from(at) / i128::from(pieces);
            i64::try_from(product).unwrap_or(whole)
        };
        (0..pieces)
            .map(|piece| {
                let (from, to) = (edge(piece), edge(piece + 1));
                let under: i64 = self
                    .canopy
                    .iter()
                    .map(|canopy| {
                        let start = canopy.start().nanometres().max(from);
                        (canopy.stop().nanometres().min(to) - start).max(0)
                    })
                    .sum();
                real(under) / real(to - from)
            })
            .collect()
    }
}

/// How much lines of one length vary.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread {
    /// Length in metres.
    pub length: f64,
    /// Variance of the cover of lines of this length.
    pub variance: f64,
    /// Part of it that lies between the pilot's lines.
    pub between: f64,
    /// Part of it that lies along them.
    pub along: f64,
}

/// Spread of the pilot's lines when cut in so many equal pieces.
///
/// With a lines of k pieces, MSB the mean square between lines and MSW along them: (MSB + (k − 1) MSW) / k, which is
/// the variance of a single piece that lies anywhere, whatever the pieces of one line have to do with each other.
///
/// # Range
/// two lines of one length or more; `None` otherwise
/// # Source
/// components of variance: Cochran 1977, §9.4 and §10.3
pub fn spread(pilot: &[PilotLine], pieces: i64) -> Option<Spread> {
    let length = pilot.first()?.length;
    if pilot.len() < 2
        || pieces < 1
        || length <= Length::ZERO
        || pilot.iter().any(|line| line.length != length)
    {
        return None;
    }
    let cut: Vec<Vec<f64>> = pilot.iter().map(|line| line.pieces(pieces)).collect();
    let means: Vec<f64> = cut.iter().map(|pieces| mean(pieces)).collect();
    let between_lines = variance(&means);
    let k = real(pieces);
    let along =
        if pieces == 1 { 0.0 } else { mean(&cut.iter().map(|one| variance(one)).collect::<Vec<_>>()) };
    let total = between_lines + (k - 1.0) / k * along;
    let between = (between_lines - along / k).max(0.0);
    Some(Spread {
        length: real(length.nanometres()) / 1e9 / k,
        variance: total,
        between,
        along: total - between,
    })
}

/// The law that ties spread to length: v(L) = v₁ L^(−b).
///
/// # Range
/// b = 1 where each metre is a fresh draw, b = 0 where a line is the same all along
/// # Source
/// Smith, H.F. 1938. An empirical law describing heterogeneity in the yields of agricultural crops. Journal of
/// Agricultural Science 28:1–23
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Law {
    /// Variance of the cover of lines of one metre.
    pub of_one_metre: f64,
    /// How fast longer lines become alike.
    pub fall: f64,
}

impl Law {
    /// The law fitted to the pilot cut in 1 to 10 pieces: the slope by least squares of the logarithms, held between 0
    /// and 1, through the variance of the whole lines.
    ///
    /// # Range
    /// `None` as for [`spread`], or where the lines don't vary
    pub fn of_pilot(pilot: &[PilotLine]) -> Option<Self> {
        let whole = spread(pilot, 1)?;
        let spreads: Vec<Spread> = CUTS.iter().filter_map(|&pieces| spread(pilot, pieces)).collect();
        if whole.variance <= 0.0 || spreads.iter().any(|spread| spread.variance <= 0.0) {
            return None;
        }
        let x: Vec<f64> = spreads.iter().map(|spread| ln(spread.length)).collect();
        let y: Vec<f64> = spreads.iter().map(|spread| ln(spread.variance)).collect();
        let (middle, level) = (mean(&x), mean(&y));
        let slope = sum(x.iter().zip(&y).map(|(x, y)| (x - middle) * (y - level)))
            / sum(x.iter().map(|x| (x - middle) * (x - middle)));
        let fall = (-slope).clamp(0.0, 1.0);
        Some(Self { of_one_metre: exp(ln(whole.variance) + fall * ln(whole.length)), fall })
    }

    /// The same law with so many times the variance: where strata or plots take part of it out of the error.
    #[must_use]
    pub fn times(self, factor: f64) -> Self {
        Self { of_one_metre: self.of_one_metre * factor, ..self }
    }

    /// Standard deviation of lines of this length in metres.
    pub fn deviation(&self, length: f64) -> f64 {
        sqrt(self.of_one_metre * powf(length, -self.fall))
    }
}

const CUTS: [i64; 6] = [1, 2, 3, 4, 6, 10];

/// What a line costs, in minutes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cost {
    /// To walk from one line to the next.
    pub walk: f64,
    /// To lay the tape and take it up.
    pub lay: f64,
    /// To read one metre.
    pub per_metre: f64,
}

impl Cost {
    /// Minutes of one line of this length in metres.
    pub fn of_line(&self, length: f64) -> f64 {
        self.walk + self.lay + self.per_metre * length
    }
}

/// A design: so many lines of one length.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Design {
    /// Length of each line in metres.
    pub length: f64,
    /// Lines.
    pub units: usize,
    /// Minutes of all of them.
    pub minutes: f64,
}

/// The fewest lines of each length that do, with their cost; lengths of which no number does are left out.
///
/// `does` says whether so many lines with such a standard deviation meet the goal.
pub fn designs(law: Law, lengths: &[f64], cost: Cost, does: impl Fn(f64, usize) -> bool) -> Vec<Design> {
    lengths
        .iter()
        .filter_map(|&length| {
            let deviation = law.deviation(length);
            let units = smallest(2, MOST_UNITS, |units| does(deviation, units))?;
            Some(Design { length, units, minutes: count(units) * cost.of_line(length) })
        })
        .collect()
}

/// The cheapest design; of two that cost the same, the one with more lines.
pub fn cheapest(designs: &[Design]) -> Option<Design> {
    designs.iter().copied().min_by(|a, b| a.minutes.total_cmp(&b.minutes).then(b.units.cmp(&a.units)))
}

/// How sure the cheapest length is: its share among the cheapest lengths of pilots redrawn from this one, and how much
/// dearer than the cheapest it would have been.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sureness {
    /// A tenth of the redrawn pilots had their cheapest length below this.
    pub low: f64,
    /// A tenth had it above this.
    pub high: f64,
    /// Share of redrawn pilots in which the chosen length costs at most a tenth more than the cheapest.
    pub nearly_cheapest: f64,
    /// Redrawn pilots that gave an answer.
    pub redrawn: usize,
}

/// Redraws whole lines of the pilot, takes so many times their variance as [`Law::times`] does, works out the cheapest length of each redrawn pilot, and compares.
///
/// # Range
/// `None` where no redrawn pilot gives a design
/// # Source
/// bootstrap of sampling units: Efron 1979, Annals of Statistics 7:1–26
pub fn sureness(
    pilot: &[PilotLine],
    times: f64,
    lengths: &[f64],
    cost: Cost,
    chosen: f64,
    does: impl Fn(f64, usize) -> bool,
    seed: Seed,
) -> Option<Sureness> {
    let mut redrawing = Redrawing::new(seed);
    redrawing.run(REDRAWN, pilot, times, lengths, cost, chosen, does);
    redrawing.sureness()
}

/// Pilots that are redrawn piece by piece, for whoever can't wait: the pieces don't change the answer.
#[derive(Clone, Debug)]
pub struct Redrawing {
    random: Random,
    best: Vec<f64>,
    near: usize,
    drawn: usize,
}

impl Redrawing {
    /// None redrawn yet.
    pub fn new(seed: Seed) -> Self {
        Self { random: seed.stream(), best: Vec::new(), near: 0, drawn: 0 }
    }

    /// Redraws so many more, up to 200 in all; see [`sureness`].
    #[expect(clippy::too_many_arguments, reason = "those of `sureness`, and how many")]
    pub fn run(
        &mut self,
        more: usize,
        pilot: &[PilotLine],
        times: f64,
        lengths: &[f64],
        cost: Cost,
        chosen: f64,
        does: impl Fn(f64, usize) -> bool,
    ) {
        for _ in 0..more.min(REDRAWN - self.drawn) {
            self.drawn += 1;
            let redrawn: Vec<PilotLine> = (0..pilot.len())
                .map(|_| pilot[usize::try_from(self.random.below(pilot.len() as u64)).unwrap_or(0)].clone())
                .collect();
            let Some(law) = Law::of_pilot(&redrawn) else { continue };
            let designs = designs(law.times(times), lengths, cost, &does);
            let Some(cheapest) = cheapest(&designs) else { continue };
            self.best.push(cheapest.length);
            let dearer =
                designs.iter().find(|design| design.length.to_bits() == chosen.to_bits()).map(|d| d.minutes);
            self.near += usize::from(dearer.is_some_and(|minutes| minutes <= 1.1 * cheapest.minutes));
        }
    }

    /// All were redrawn.
    pub const fn is_done(&self) -> bool {
        self.drawn == REDRAWN
    }

    /// What those redrawn so far say.
    pub fn sureness(&self) -> Option<Sureness> {
        let mut best = self.best.clone();
        best.sort_by(f64::total_cmp);
        let (&low, &high) =
            (best.get(best.len() / 10)?, best.get((best.len() * 9 / 10).min(best.len() - 1))?);
        let nearly_cheapest = count(self.near) / count(best.len());
        Some(Sureness { low, high, nearly_cheapest, redrawn: best.len() })
    }
}

const REDRAWN: usize = 200;

fn real(nanometres: i64) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "a tape is far shorter than 2^53 nm, 9000 km")]
    let real = nanometres as f64;
    real
}

#[cfg(test)]
mod tests;
