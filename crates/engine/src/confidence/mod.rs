//! How sure: intervals and one-sided bounds, one method a file.
//!
//! | method | file | for |
//! | --- | --- | --- |
//! | Student's t | `scale.rs` | any mean or ratio with a standard error |
//! | log-t | `scale.rs` | figures that can't fall below zero: heights, plants per area |
//! | logit-t | `scale.rs` | shares that can't pass 100 %: the interval stays inside 0 to 100 % |
//! | either with effective df | `effective.rs` | the same two where little was met; the default, see docs/intervals.md |
//! | BCa bootstrap | [`bootstrap`] | any of them, from the lines themselves |
//! | few lines, few intercepts | [`measured`] | how often the default is right there, as measured |
//! | nothing found | [`zeros`] | lines on which nothing was found |
//!
//! A two-sided interval at 90 % has 5 % in each tail; a one-sided bound at 90 % has 10 % in its one. They are never
//! the same figure: [`Tail`] says which is meant.

pub mod bootstrap;
mod effective;
mod exact;
pub mod measured;
mod scale;
pub mod zeros;

pub use effective::effective_df;
pub use scale::Scale;

use crate::estimate::{Estimate, NoError, SamplingError};

/// How an interval is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Method {
    /// Student's t on the figure itself.
    StudentT,
    /// Student's t on the logarithm of the figure, for figures that can't fall below zero.
    LogT,
    /// Student's t on the logit of the figure, for shares that can't pass 1.
    LogitT,
    /// Log-t with [`effective_df`].
    LogEffective,
    /// Logit-t with [`effective_df`]: the default for shares.
    LogitEffective,
    /// Bias-corrected and accelerated bootstrap of the lines.
    Bca,
}

impl Method {
    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::StudentT => "student-t",
            Self::LogT => "log-t",
            Self::LogitT => "logit-t",
            Self::LogEffective => "log-t-effective",
            Self::LogitEffective => "logit-t-effective",
            Self::Bca => "bca",
        }
    }

    /// The scale of a t interval; none for a bootstrap.
    pub const fn scale(self) -> Option<Scale> {
        match self {
            Self::StudentT => Some(Scale::Plain),
            Self::LogT | Self::LogEffective => Some(Scale::Log),
            Self::LogitT | Self::LogitEffective => Some(Scale::Logit),
            Self::Bca => None,
        }
    }

    /// The method on the scale of figures that may pass any bound: the logarithm for the logit.
    #[must_use]
    pub const fn without_a_top(self) -> Self {
        match self {
            Self::LogitT => Self::LogT,
            Self::LogitEffective => Self::LogEffective,
            Self::StudentT | Self::LogT | Self::LogEffective | Self::Bca => self,
        }
    }

    /// The degrees of freedom that the method gives a standard error with `df` of its own.
    pub fn df(self, value: f64, se: f64, df: f64) -> f64 {
        match self {
            Self::LogEffective => effective_df(Scale::Log, value, se, df),
            Self::LogitEffective => effective_df(Scale::Logit, value, se, df),
            Self::StudentT | Self::LogT | Self::LogitT | Self::Bca => df,
        }
    }
}

/// Probability that is left out at one end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tail(f64);

impl Tail {
    /// One end of a two-sided interval at this confidence: half of what is left.
    pub fn of_interval(confidence: f64) -> Self {
        Self((1.0 - confidence) / 2.0)
    }

    /// A one-sided bound at this confidence: all that is left.
    pub fn of_bound(confidence: f64) -> Self {
        Self(1.0 - confidence)
    }

    /// The probability.
    pub const fn probability(self) -> f64 {
        self.0
    }
}

/// A two-sided interval.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Interval {
    /// Its low end.
    pub low: f64,
    /// Its high end.
    pub high: f64,
}

/// Two one-sided bounds, each at the same confidence on its own.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    /// The true figure lies at or above this, at the confidence.
    pub lower: f64,
    /// The true figure lies at or below this, at the confidence.
    pub upper: f64,
}

/// Why there is no interval and no bound.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NoBound {
    /// The figure has no error.
    NoError(NoError),
    /// Nothing was found on any line: see [`zeros`].
    NothingFound,
    /// The figure is 100 %, where the logit has no value.
    FullCover,
    /// All lines are exactly alike, so they show no variation to reckon with.
    NoSpread,
    /// The figure may pass 100 %, so the logit doesn't fit it.
    MayPassWhole,
    /// A bootstrap works from the lines, not from an estimate: see [`bootstrap::Resampled`].
    NeedsTheLines,
    /// The weights of strata don't add up to one.
    WeightsNotWhole {
        /// What they add up to.
        whole: f64,
    },
    /// Too few lines or plots for a bootstrap.
    TooFewUnits {
        /// How many there are.
        units: usize,
    },
}

impl NoBound {
    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::NoError(NoError::OneLine) => "one-line",
            Self::NoError(NoError::OnePlot) => "one-plot",
            Self::NoError(NoError::OneUnitInStratum { .. }) => "one-line-in-a-stratum",
            Self::NothingFound => "nothing-found",
            Self::FullCover => "full-cover",
            Self::NoSpread => "no-spread",
            Self::MayPassWhole => "may-pass-the-whole",
            Self::NeedsTheLines => "needs-the-lines",
            Self::WeightsNotWhole { .. } => "weights-not-whole",
            Self::TooFewUnits { .. } => "too-few-units",
        }
    }
}

/// The two ends of a figure, each with `tail` beyond it, by a t method.
///
/// # Units
/// those of the figure; a share for logit-t
/// # Range
/// logit-t stays strictly inside 0 to 1, log-t above 0; Student's t may pass them
/// # Errors
/// [`NoBound`], with the reason; always for [`Method::Bca`], which works from the lines: [`bootstrap::Resampled`]
/// # Source
/// Student's t: Cochran 1977, *Sampling Techniques*, §2.8; logit-t: Korn and Graubard 1998, Survey Methodology
/// 24(2):193–201 (the logit interval), with the delta method; log-t: the same on the logarithm; effective degrees of
/// freedom: [`effective_df`]
/// # Example
/// Ten values with mean 0.75 and standard error 0.38897 (Student 1908, first column): t(0.975, 9) = 2.262157.
/// ```
/// use tautline_engine::confidence::{Method, Tail, ends};
/// use tautline_engine::estimate::mean_of;
/// let hours = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0];
/// let (low, high) = ends(&mean_of(&hours, None).unwrap(), Method::StudentT, Tail::of_interval(0.95)).unwrap();
/// assert!((low + 0.529_780_4).abs() < 1e-6 && (high - 2.029_780_4).abs() < 1e-6);
/// ```
pub fn ends(estimate: &Estimate, method: Method, tail: Tail) -> Result<(f64, f64), NoBound> {
    let (se, df) = match estimate.error {
        SamplingError::Known { se, df } => (se, df),
        SamplingError::Unknown(reason) => return Err(NoBound::NoError(reason)),
    };
    if estimate.value == 0.0 && se == 0.0 {
        return Err(NoBound::NothingFound);
    }
    if se <= 0.0 {
        return Err(NoBound::NoSpread);
    }
    let scale = method.scale().ok_or(NoBound::NeedsTheLines)?;
    scale::ends(scale, estimate.value, se, method.df(estimate.value, se, df), tail)
}
