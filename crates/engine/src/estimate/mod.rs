//! From lines to a site: how much, and how sure.
//!
//! The line is the sample, or the plot where lines were bunched in plots. Nothing here takes plants or pieces
//! of a line.
//!
//! | how the lines lie | function |
//! | --- | --- |
//! | anywhere on the site | [`of_lines`], which picks one of the next two |
//! | all of one length | [`mean`] |
//! | of different lengths | [`ratio`] |
//! | within strata of known area | [`strata`], [`combined_ratio`] |
//! | bunched in plots | [`plots`], [`effective_lines`] |
//! | a variance in two stages | [`TwoStages`] |

mod mean;
mod plots;
mod ratio;
mod strata;
mod two_stage;

pub use mean::{mean, mean_of};
pub use plots::{EffectiveLines, effective_lines, plots};
pub use ratio::{of_lines, ratio};
pub use strata::{CombinedStratum, Stratum, combined_ratio, strata};
pub use two_stage::TwoStages;

use crate::num::count;

/// One line as the estimators need it: how much of it was intercepted, and how long it is, in one unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// Intercepted length; more than `length` where overlapping canopies are added up.
    pub intercept: f64,
    /// Length of the line.
    pub length: f64,
}

impl Line {
    /// A line from its intercepted length and its length.
    pub fn new(intercept: f64, length: f64) -> Self {
        Self { intercept, length }
    }

    /// Share of the line that was intercepted.
    pub fn share(self) -> f64 {
        self.intercept / self.length
    }
}

/// A figure with its error, or the reason why it has none.
#[derive(Clone, Debug, PartialEq)]
pub struct Estimate {
    /// The figure, a share where lines were given.
    pub value: f64,
    /// Its sampling error.
    pub error: SamplingError,
    /// Lines behind the figure.
    pub lines: usize,
    /// Sampling units behind the figure: the lines, or the plots they were bunched in.
    pub units: usize,
    /// How it was worked out.
    pub method: Method,
}

/// How far a figure may lie from the site's own, by chance of where the lines fell.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SamplingError {
    /// The error could be worked out.
    Known {
        /// Standard error, in the figure's unit.
        se: f64,
        /// Degrees of freedom behind the standard error, whole or not.
        df: f64,
    },
    /// It could not.
    Unknown(NoError),
}

/// Why a figure has no error.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoError {
    /// One line shows no variation between lines.
    OneLine,
    /// All lines stand in one plot.
    OnePlot,
    /// A stratum has a single line or plot; its own error, and so the site's, stays unknown.
    OneUnitInStratum {
        /// Which stratum, counted from 0.
        stratum: usize,
    },
}

/// How a figure was worked out: the chain from lines to site.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Method {
    /// Mean of the lines' shares.
    MeanOfLines,
    /// Intercepted length of all lines over the length of all lines.
    RatioOfSums,
    /// Mean of the plots' shares.
    MeanOfPlots,
    /// Intercepted length of all plots over the length of line in all plots.
    RatioOfPlots,
    /// Strata weighted by area, each worked out in its own way, in their order.
    Strata(Vec<Method>),
    /// One ratio of the weighted sums of all strata.
    CombinedRatio,
    /// Mean of plain numbers that aren't lines.
    MeanOfValues,
    /// The same lines at two visits, later less earlier.
    PairedDifference,
    /// Later less earlier, or one site less another, with nothing in common.
    UnpairedDifference,
    /// The two before, weighted by what each is worth.
    PairedAndUnpaired,
}

impl Method {
    /// Where the formula is printed.
    pub fn source(&self) -> Source {
        match self {
            Self::MeanOfLines | Self::MeanOfValues => Source::Cochran1977Mean,
            Self::RatioOfSums => Source::Cochran1977Ratio,
            Self::MeanOfPlots | Self::RatioOfPlots => Source::Cochran1977Clusters,
            Self::Strata(_) => Source::Cochran1977Strata,
            Self::CombinedRatio => Source::Cochran1977CombinedRatio,
            Self::PairedDifference => Source::Cochran1977TwoRatios,
            Self::UnpairedDifference => Source::Welch1947,
            Self::PairedAndUnpaired => Source::Meier1953,
        }
    }

    /// The sampling unit is a plot, not a line.
    pub fn counts_plots(&self) -> bool {
        match self {
            Self::MeanOfPlots | Self::RatioOfPlots => true,
            Self::Strata(parts) => parts.iter().any(Self::counts_plots),
            _ => false,
        }
    }
}

/// Where a formula is printed; a code, whose words other rooms hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Source {
    /// Cochran 1977, §2.4–2.6: mean and variance of a simple random sample.
    Cochran1977Mean,
    /// Cochran 1977, §6.4, eq. 6.13: ratio estimate.
    Cochran1977Ratio,
    /// Cochran 1977, §9A.1: clusters of unequal size, ratio to size.
    Cochran1977Clusters,
    /// Cochran 1977, §5.3–5.4: stratified mean and its degrees of freedom.
    Cochran1977Strata,
    /// Cochran 1977, §6.11: combined ratio estimate.
    Cochran1977CombinedRatio,
    /// Cochran 1977, §6.18: comparison of two ratios; Student 1908 for lines of one length.
    Cochran1977TwoRatios,
    /// Welch 1947: two means with unlike variances.
    Welch1947,
    /// Meier 1953: a mean weighted by estimated variances.
    Meier1953,
}

impl Source {
    /// A stable key for the catalogue of words.
    pub fn code(self) -> &'static str {
        match self {
            Self::Cochran1977Mean => "source-cochran-1977-mean",
            Self::Cochran1977Ratio => "source-cochran-1977-ratio",
            Self::Cochran1977Clusters => "source-cochran-1977-clusters",
            Self::Cochran1977Strata => "source-cochran-1977-strata",
            Self::Cochran1977CombinedRatio => "source-cochran-1977-combined-ratio",
            Self::Cochran1977TwoRatios => "source-cochran-1977-two-ratios",
            Self::Welch1947 => "source-welch-1947",
            Self::Meier1953 => "source-meier-1953",
        }
    }
}

/// Why there is no figure at all.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum EstimateError {
    /// Nothing was given.
    NoLines,
    /// A plot without lines.
    EmptyPlot {
        /// Which plot, counted from 0.
        plot: usize,
    },
    /// A line's length is not a finite number above zero.
    LengthNotPositive {
        /// Which line, counted from 0 (through all plots or strata in order).
        line: usize,
        /// The length found.
        length: f64,
    },
    /// A line's intercepted length is not a finite number of zero or more.
    InterceptNotUsable {
        /// Which line, counted from 0 (through all plots or strata in order).
        line: usize,
        /// The intercepted length found.
        intercept: f64,
    },
    /// A value is not a finite number.
    ValueNotFinite {
        /// Which value, counted from 0.
        at: usize,
        /// What was found.
        value: f64,
    },
    /// The lines differ in length, so the mean of their shares is not the site's cover: take [`ratio`].
    UnequalLengths {
        /// The first line whose length differs, counted from 0.
        line: usize,
        /// Its length.
        length: f64,
        /// Length of the first line.
        first: f64,
    },
    /// The population is smaller than the sample drawn from it.
    PopulationTooSmall {
        /// Units in the population, as given.
        population: u64,
        /// Units in the sample.
        units: usize,
    },
    /// A stratum's weight is not a finite number above zero.
    WeightNotPositive {
        /// Which stratum, counted from 0.
        stratum: usize,
        /// The weight found.
        weight: f64,
    },
}

// Lengths come from whole nanometres and are equal to the bit when equal; this leaves room for a change of unit.
const SAME_LENGTH: f64 = 1e-9;

/// The first line whose length differs from the first one's.
fn odd_length(lines: &[Line]) -> Option<EstimateError> {
    let first = lines.first()?.length;
    lines
        .iter()
        .enumerate()
        .find(|(_, line)| (line.length - first).abs() > SAME_LENGTH * first)
        .map(|(at, line)| EstimateError::UnequalLengths { line: at, length: line.length, first })
}

/// Refuses lines that can't be reckoned with.
pub(crate) fn check(lines: &[Line]) -> Result<(), EstimateError> {
    if lines.is_empty() {
        return Err(EstimateError::NoLines);
    }
    for (at, &Line { intercept, length }) in lines.iter().enumerate() {
        if !(length > 0.0 && length.is_finite()) {
            return Err(EstimateError::LengthNotPositive { line: at, length });
        }
        if !(intercept >= 0.0 && intercept.is_finite()) {
            return Err(EstimateError::InterceptNotUsable { line: at, intercept });
        }
    }
    Ok(())
}

/// Share of the population that was not drawn, 1 − n/N; 1 where the population is as good as endless.
fn share_not_drawn(units: usize, population: Option<u64>) -> Result<f64, EstimateError> {
    let Some(population) = population else { return Ok(1.0) };
    if population < units as u64 {
        return Err(EstimateError::PopulationTooSmall { population, units });
    }
    #[expect(clippy::cast_precision_loss, reason = "beyond 2^53 units the share not drawn is 1 all the same")]
    let all = population as f64;
    Ok(1.0 - count(units) / all)
}
