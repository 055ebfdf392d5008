//! Trend by a model of lines and years together.
//!
//! Cover of line i in year t: level + slope · (t − origin) + the line's own level (and slope) + what the year did to all lines
//! (and what it did at one site alone) + what is left. Lines, years and what is left are random; their variances are those at which
//! the restricted likelihood is greatest. Lines may be missed in any year.
//!
//! | question | item |
//! | --- | --- |
//! | the fit | [`fit`], [`Fit`] |
//! | slope, level in a year, or any combination, with its error | [`Fit::combination`] |
//! | variances of lines, years, what is left | [`Fit::variances`] |
//! | lines and years as predicted | [`Fit::years`] |

mod climb;
mod curve;
mod likelihood;
mod sums;
#[cfg(test)]
mod tests;

use crate::num::quantile::{t_cdf, t_quantile};
use crate::num::square::{Square, dot};
use curve::{Curve, with_rest, with_rests};
use likelihood::At;
use sums::{FIXED, Sums};

/// Cover of one line in one year.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// The site, by number; one number throughout for a single site.
    pub site: usize,
    /// The line, by number; lines of unlike sites may share numbers.
    pub line: usize,
    /// The year.
    pub year: i32,
    /// Cover, or any other figure.
    pub value: f64,
}

/// What is random beside the lines' levels and what is left.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Terms {
    /// Each line has a slope of its own.
    pub slope: bool,
    /// Each year moves all lines alike.
    pub year: bool,
    /// Each year moves the lines of one site alike.
    pub site_year: bool,
}

/// Why there is no fit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoFit {
    /// All readings are of one year, or there are fewer than three.
    OneYear,
    /// The readings can't tell the variances apart: as many random parts as readings, or two that always go together.
    NotSeparable,
    /// The readings lie exactly on what lines and years predict, so no error can be told.
    NothingLeft,
    /// The likelihood kept rising; the readings don't settle the variances.
    NoSummit,
}

impl NoFit {
    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::OneYear => "fit-one-year",
            Self::NotSeparable => "fit-not-separable",
            Self::NothingLeft => "fit-nothing-left",
            Self::NoSummit => "fit-no-summit",
        }
    }
}

/// Variances of the random parts, in squared units of the values; `None` for parts that the model lacks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Variances {
    /// Of lines' levels at the origin.
    pub level: f64,
    /// Of lines' levels and slopes together.
    pub level_and_slope: Option<f64>,
    /// Of lines' slopes.
    pub slope: Option<f64>,
    /// Of years.
    pub year: Option<f64>,
    /// Of years at single sites.
    pub site_year: Option<f64>,
    /// Of what is left.
    pub left: f64,
}

/// A combination of level and slope, with its error by Kenward and Roger and by Satterthwaite.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Combination {
    /// The estimate.
    pub value: f64,
    /// Standard error as if the variances were known.
    pub plain_se: f64,
    /// Standard error with the variances' own doubt in it (Kenward and Roger 1997).
    pub se: f64,
    /// Degrees of freedom by Kenward and Roger 1997, from the expected curvature.
    pub df: f64,
    /// Degrees of freedom by Satterthwaite's rule, from the curvature at the summit; `None` where that bends upwards.
    pub satterthwaite_df: Option<f64>,
}

impl Combination {
    /// The interval: value ± t se.
    pub fn interval(&self, confidence: f64) -> (f64, f64) {
        let reach = t_quantile(f64::midpoint(1.0, confidence), self.df) * self.se;
        (self.value - reach, self.value + reach)
    }

    /// Chance of a value as far from zero either way where the truth is zero.
    pub fn p(&self) -> f64 {
        2.0 * t_cdf(-(self.value / self.se).abs(), self.df)
    }
}

/// A fitted model.
#[derive(Clone, Debug)]
pub struct Fit {
    sums: Sums,
    at: At,
    expected: Square,
    observed: Square,
    origin: f64,
    years: Vec<i32>,
    lines: Vec<(usize, usize)>,
}

/// Fits the model by restricted maximum likelihood, to the last digits.
///
/// # Units
/// Those of the values, and of the values a year.
///
/// # Range
/// Times count from `origin`, which lies best near the middle of the years. Years that all lines miss are no hindrance.
///
/// # Errors
/// See [`NoFit`]: the model asks more than the readings can tell.
///
/// # Source
/// Patterson and Thompson 1971, Biometrika 58:545–554; Laird and Ware 1982, Biometrics 38:963–974; steps by Newton's method,
/// curvature as in Gilmour, Thompson and Cullis 1995, Biometrics 51:1440–1450
///
/// # Example
/// Four lines over five years (invented); every line rises by 1 a year and the years swing by ±1 on all lines alike.
/// ```
/// use tautline_engine::trend::mixed::{Reading, Terms, fit};
/// let swing = [1.0, -1.0, 0.0, -1.0, 1.0];
/// let noise = [0.1, -0.2, 0.05, 0.15, -0.1, 0.2, -0.05, -0.15, 0.1, 0.0, -0.1, 0.1, 0.2, -0.2, 0.0, 0.05, -0.1, 0.1, 0.0, -0.05];
/// let readings: Vec<Reading> = (0..20_usize)
///     .map(|at| {
///         let (line, step) = (at / 5, at % 5);
///         let year = 2020 + i32::try_from(step).unwrap();
///         let value = [12.0, 20.0, 9.0, 15.0][line] + f64::from(year - 2022) + swing[step] + noise[at];
///         Reading { site: 0, line, year, value }
///     })
///     .collect();
/// let fitted = fit(&readings, 2022.0, Terms { year: true, ..Terms::default() }).unwrap();
/// let slope = fitted.slope();
/// assert!((slope.value - 1.0).abs() < 0.05);
/// // the years are the sample: five of them leave three degrees of freedom
/// assert!((slope.df - 3.0).abs() < 1e-6);
/// ```
pub fn fit(readings: &[Reading], origin: f64, terms: Terms) -> Result<Fit, NoFit> {
    let sums = Sums::of(readings, origin, terms);
    let (at, Curve { expected, observed, .. }) = climb::climb(&sums)?;
    let mut years: Vec<i32> = readings.iter().map(|one| one.year).collect();
    years.sort_unstable();
    years.dedup();
    let mut lines: Vec<(usize, usize)> = readings.iter().map(|one| (one.site, one.line)).collect();
    lines.sort_unstable();
    lines.dedup();
    let years = if terms.year { years } else { Vec::new() };
    Ok(Fit { sums, at, expected, observed, origin, years, lines })
}

/// A line as predicted: drawn towards the others as far as its own readings leave it in doubt.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PredictedLine {
    /// The site, by number.
    pub site: usize,
    /// The line, by number.
    pub line: usize,
    /// Its level at the origin.
    pub level: f64,
    /// Its slope.
    pub slope: f64,
}

impl Fit {
    /// The slope of all lines together.
    pub fn slope(&self) -> Combination {
        self.combination([0.0, 1.0])
    }

    /// The level of all lines together in a year.
    pub fn level(&self, year: f64) -> Combination {
        self.combination([1.0, year - self.origin])
    }

    /// Any combination of the level at the origin and the slope.
    ///
    /// The plain error is √(lᵀ Φ l) with Φ = (Xᵀ V⁻¹ X)⁻¹; Kenward and Roger add twice Σ Wₖₗ cᵀ Vₖ P Vₗ c, with c = V⁻¹ X Φ l and
    /// W the inverse of the expected curvature. Degrees of freedom are 2 (lᵀ Φ l)² / gᵀ W g with gₖ = cᵀ Vₖ c. Variances that
    /// fell to zero keep their part in W: that a swing of years wasn't seen doesn't make it known to be absent.
    ///
    /// # Source
    /// Kenward and Roger 1997, Biometrics 53:983–997 (V linear in the variances, one contrast); Satterthwaite 1946,
    /// Biometrics Bulletin 2:110–114, in the form of Giesbrecht and Burns 1985, Biometrics 41:477–486
    pub fn combination(&self, l: [f64; 2]) -> Combination {
        let (at, sums) = (&self.at, &self.sums);
        let level = sums.width - FIXED;
        let value = l[0] * (at.effects[level] + sums.middle) + l[1] * at.effects[level + 1];
        let variance = covariance(&at.middle, level, l, l);
        let probe = at.weights(l);
        let gradient = with_rest(&probe.squares(sums), &at.theta, variance);
        let crossed = with_rests(&at.crossed(sums, &probe), &at.theta, &vec![0.0; at.theta.len()]);
        let df_and_more = |information: &Square| {
            let inverse = information.factor()?.factor_inverse();
            let doubt = dot(&gradient, &inverse.apply(&gradient));
            Some((2.0 * variance * variance / doubt, 2.0 * inverse.trace_with(&crossed)))
        };
        let (df, more) = df_and_more(&self.expected).unwrap_or((f64::NAN, f64::NAN));
        Combination {
            value,
            plain_se: crate::num::math::sqrt(variance),
            se: crate::num::math::sqrt(variance + more),
            df,
            satterthwaite_df: df_and_more(&self.observed).map(|(df, _)| df).filter(|df| *df > 0.0),
        }
    }

    /// Covariance of level and slope at the origin, as if the variances were known.
    pub fn covariance(&self) -> [[f64; 2]; 2] {
        let level = self.sums.width - FIXED;
        let cell = |a, b| covariance(&self.at.middle, level, a, b);
        let (one, two) = ([1.0, 0.0], [0.0, 1.0]);
        [[cell(one, one), cell(one, two)], [cell(two, one), cell(two, two)]]
    }

    /// The variances.
    pub fn variances(&self) -> Variances {
        let theta = &self.at.theta;
        let slopes = self.sums.slope;
        let mut outer = theta[self.sums.line_parts()..theta.len() - 1].iter().copied();
        let year = (!self.years.is_empty()).then(|| outer.next()).flatten();
        Variances {
            level: theta[0],
            level_and_slope: slopes.then(|| theta[1]),
            slope: slopes.then(|| theta[2]),
            year,
            site_year: outer.next(),
            left: theta[theta.len() - 1],
        }
    }

    /// The greatest restricted log likelihood.
    pub fn ln_likelihood(&self) -> f64 {
        self.at.ln_likelihood
    }

    /// How far each year is predicted to lie off the trend; none where the model has no years.
    pub fn years(&self) -> Vec<(i32, f64)> {
        self.years.iter().copied().zip(self.at.effects.iter().copied()).collect()
    }

    /// Each line as predicted.
    ///
    /// # Source
    /// Henderson 1975, Biometrics 31:423–447
    pub fn lines(&self) -> Vec<PredictedLine> {
        let theta = &self.at.theta;
        let spread = if self.sums.slope { [theta[0], theta[1], theta[2]] } else { [theta[0], 0.0, 0.0] };
        let level = self.sums.width - FIXED;
        let (middle, rise) = (self.at.effects[level] + self.sums.middle, self.at.effects[level + 1]);
        let predicted = |(&(site, line), p): (&(usize, usize), [f64; 2])| PredictedLine {
            site,
            line,
            level: middle + spread[0] * p[0] + spread[1] * p[1],
            slope: rise + spread[1] * p[0] + spread[2] * p[1],
        };
        self.lines.iter().zip(self.at.residual().lines).map(predicted).collect()
    }
}

fn covariance(middle: &Square, level: usize, a: [f64; 2], b: [f64; 2]) -> f64 {
    let cells =
        [0, 1].map(|row| middle.at(level + row, level) * b[0] + middle.at(level + row, level + 1) * b[1]);
    dot(&a, &cells)
}
