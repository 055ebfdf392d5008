//! The methods that are tried: the engine's, and those that were tried beside them.

use crate::stands::Set;
use crate::survey::Reading;
use tautline_engine::confidence::bootstrap::{Group, Resampled};
use tautline_engine::confidence::{Method, Tail, ends};
use tautline_engine::estimate::{Estimate, Line, SamplingError, of_lines};
use tautline_engine::num::count;
use tautline_engine::num::math::{powf, sqrt};
use tautline_engine::num::quantile::{beta_quantile, normal_quantile, t_quantile};
use tautline_engine::num::sum::sum;
use tautline_engine::seed::Random;

/// Resamples of a bootstrap in the trials; the product draws more, which moves a limit by less than a tenth of its
/// distance.
pub const RESAMPLES: usize = 500;

/// One of this many surveys is given to the bootstrap, which takes as long as all others together.
pub const BOOTSTRAP_EVERY: usize = 4;

/// Which figure of a site.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Figure {
    /// Canopy cover, which can't pass 100 %.
    Canopy,
    /// The plants' covers added up, which can.
    Sum,
}

impl Figure {
    /// Its name in the table.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Canopy => "canopy",
            Self::Sum => "sum",
        }
    }

    /// The methods that are tried for it.
    pub const fn rivals(self) -> &'static [Rival] {
        match self {
            Self::Canopy => &[
                Rival::Ours(Method::StudentT),
                Rival::Ours(Method::LogitT),
                Rival::Ours(Method::LogitEffective),
                Rival::Ours(Method::Bca),
                Rival::Floor,
                Rival::Beta,
                Rival::Cubic,
            ],
            Self::Sum => {
                &[Rival::Ours(Method::StudentT), Rival::Ours(Method::LogT), Rival::Ours(Method::LogEffective)]
            }
        }
    }
}

/// A method in the trials.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rival {
    /// One of the engine's.
    Ours(Method),
    /// Logit-t with effective degrees of freedom, and an error never below what intercepts strewn at random would
    /// give: SE ≥ (1 − p̂) √Σ intercept² / Σ length (the variance of a compound Poisson process).
    Floor,
    /// Exact binomial limits with an effective number of trials, p̂ (1 − p̂) / SE² · (z/t)².
    ///
    /// Source: Korn and Graubard 1998, Survey Methodology 24(2):193–201.
    Beta,
    /// Student's t with the sample's skewness taken out by a monotone cubic.
    ///
    /// Source: Hall 1992, Journal of the Royal Statistical Society B 54:221–228, with Student's t for the normal.
    Cubic,
}

/// What one survey says about one figure.
pub struct Sample<'a> {
    /// The lines.
    pub lines: &'a [Line],
    /// What was read on them.
    pub readings: &'a [Reading],
    /// The estimate from them.
    pub estimate: Estimate,
}

impl<'a> Sample<'a> {
    /// The sample of some lines.
    ///
    /// # Panics
    /// without any line, of which no survey is made
    pub fn of(lines: &'a [Line], readings: &'a [Reading]) -> Self {
        let estimate = of_lines(lines, None).expect("simulated lines have a length, and there is one");
        Self { lines, readings, estimate }
    }

    fn error(&self) -> Option<(f64, f64)> {
        match self.estimate.error {
            SamplingError::Known { se, df } if se > 0.0 => Some((se, df)),
            _ => None,
        }
    }
}

impl Rival {
    /// Its name in the table.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Ours(method) => method.code(),
            Self::Floor => "logit-t-effective-floor",
            Self::Beta => "beta-effective",
            Self::Cubic => "cubic-t",
        }
    }

    /// Whether it is tried with so many lines on a set: the slow ones where the bar applies, and what isn't the
    /// engine's only for choosing.
    pub fn is_tried(self, set: Set, lines: usize) -> bool {
        match self {
            Self::Ours(Method::Bca) => lines >= 8,
            Self::Ours(_) => true,
            Self::Floor | Self::Beta | Self::Cubic => lines >= 8 && set == Set::Choose,
        }
    }

    /// Whether it is given every survey, or one of [`BOOTSTRAP_EVERY`].
    pub fn is_slow(self) -> bool {
        self == Self::Ours(Method::Bca)
    }

    /// Low and high end for each tail; nothing where the survey allows none.
    pub fn ends(self, sample: &Sample, tails: [Tail; 2], random: &mut Random) -> Option<[(f64, f64); 2]> {
        let (se, df) = sample.error()?;
        let value = sample.estimate.value;
        match self {
            Self::Ours(Method::Bca) => {
                let groups = [Group { weight: 1.0, units: sample.lines.to_vec() }];
                let figures = (0..RESAMPLES).map(|_| drawn_again(sample.lines, random)).collect();
                let drawn = Resampled::from_figures(&groups, figures).ok()?;
                Some(tails.map(|tail| drawn.ends(tail)))
            }
            Self::Ours(method) => each(tails, |tail| ends(&sample.estimate, method, tail).ok()),
            Self::Floor => {
                let squares = sum(sample.readings.iter().map(|reading| reading.squares));
                let length = sum(sample.readings.iter().map(|reading| reading.length));
                let se = se.max((1.0 - value) * sqrt(squares) / length);
                let raised = Estimate { error: SamplingError::Known { se, df }, ..sample.estimate.clone() };
                each(tails, |tail| ends(&raised, Method::LogitEffective, tail).ok())
            }
            Self::Beta => each(tails, |tail| beta(value, se, t(tail, df), tail)),
            Self::Cubic => {
                let (skewness, n) = (skewness(sample.lines, value), count(sample.lines.len()));
                each(tails, |tail| Some(cubic(value, se, t(tail, df), skewness, n)))
            }
        }
    }
}

/// The t quantile with `tail` beyond it.
fn t(tail: Tail, df: f64) -> f64 {
    t_quantile(1.0 - tail.probability(), df)
}

/// The figure of as many lines drawn from these with replacement, added up in their own order as the engine does.
fn drawn_again(lines: &[Line], random: &mut Random) -> f64 {
    let mut times = vec![0.0; lines.len()];
    for _ in lines {
        times[usize::try_from(random.below(lines.len() as u64)).expect("below the number of lines")] += 1.0;
    }
    let total = |of: fn(&Line) -> f64| sum(lines.iter().zip(&times).map(|(line, times)| times * of(line)));
    total(|line| line.intercept) / total(|line| line.length)
}

fn each(tails: [Tail; 2], of: impl Fn(Tail) -> Option<(f64, f64)>) -> Option<[(f64, f64); 2]> {
    let [one, other] = tails;
    Some([of(one)?, of(other)?])
}

fn beta(value: f64, se: f64, t: f64, tail: Tail) -> Option<(f64, f64)> {
    if value >= 1.0 {
        return None;
    }
    let p = 1.0 - tail.probability();
    let shrink = normal_quantile(p) / t;
    let trials = value * (1.0 - value) / (se * se) * shrink * shrink;
    let hits = value * trials;
    let low = beta_quantile(tail.probability(), hits, trials - hits + 1.0);
    Some((low, beta_quantile(p, hits + 1.0, trials - hits)))
}

/// Skewness of the lines' residuals from the estimate.
fn skewness(lines: &[Line], value: f64) -> f64 {
    let residuals: Vec<f64> = lines.iter().map(|line| line.intercept - value * line.length).collect();
    let n = count(residuals.len());
    let square = sum(residuals.iter().map(|r| r * r)) / n;
    sum(residuals.iter().map(|r| r * r * r)) / n / (square * sqrt(square))
}

/// Limits p̂ − SE √n g⁻¹(± t/√n), g⁻¹(x) = (3/γ) ((1 + γ (x − γ/(6n)))^(1/3) − 1).
fn cubic(value: f64, se: f64, t: f64, skewness: f64, n: f64) -> (f64, f64) {
    let root = |x: f64| if x < 0.0 { -powf(-x, 1.0 / 3.0) } else { powf(x, 1.0 / 3.0) };
    let back = |x: f64| {
        if skewness.abs() < 1e-9 {
            x
        } else {
            3.0 / skewness * (root(1.0 + skewness * (x - skewness / (6.0 * n))) - 1.0)
        }
    };
    let reach = t / sqrt(n);
    let spread = se * sqrt(n);
    (value - spread * back(reach), value - spread * back(-reach))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Without skewness the cubic is Student's t; to the right of it, both limits move up.
    #[test]
    fn the_cubic_leans_with_the_sample() {
        let (low, high) = cubic(0.2, 0.04, 1.833_113, 0.0, 10.0);
        assert!(
            (low - (0.2 - 1.833_113 * 0.04)).abs() < 1e-6 && (high - (0.2 + 1.833_113 * 0.04)).abs() < 1e-6
        );
        let (skewed_low, skewed_high) = cubic(0.2, 0.04, 1.833_113, 1.0, 10.0);
        assert!(skewed_low > low && skewed_high > high);
    }

    /// Ten trials and two hits, SE √(0.2 · 0.8 / 10), endless degrees of freedom: Clopper and Pearson's 90 % limits
    /// 0.0368 and 0.5069 (printed tables of exact binomial limits; from memory).
    #[test]
    fn beta_is_clopper_and_pearson() {
        let (low, high) =
            beta(0.2, (0.2_f64 * 0.8 / 10.0).sqrt(), 1.644_854, Tail::of_interval(0.9)).unwrap();
        assert!((low - 0.0368).abs() < 1e-4 && (high - 0.5069).abs() < 1e-4, "{low} {high}");
    }
}
