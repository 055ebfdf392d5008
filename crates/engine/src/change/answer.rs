//! What the readings say about a change: shown, small enough to call none, or neither.

use crate::confidence::{NoBound, Tail};
use crate::estimate::{Estimate, SamplingError};
use crate::num::quantile::{t_cdf, t_quantile};

/// Which way a change goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    /// More at the later visit.
    Rise,
    /// Less at the later visit.
    Fall,
}

/// What is said about a change at a confidence.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Answer {
    /// It rose: the interval lies above zero.
    Rose,
    /// It fell: the interval lies below zero.
    Fell,
    /// Neither is shown, and the interval reaches beyond the change that matters, or nobody said which one matters.
    NotShown,
    /// Neither is shown, and a change as large as the one that matters is ruled out.
    NoneThatMatters,
}

impl Answer {
    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Rose => "change-rose",
            Self::Fell => "change-fell",
            Self::NotShown => "change-not-shown",
            Self::NoneThatMatters => "change-none-that-matters",
        }
    }
}

/// A figure's standard error and degrees of freedom, or why nothing can be tested.
fn error_of(change: &Estimate) -> Result<(f64, f64), NoBound> {
    match change.error {
        SamplingError::Unknown(reason) => Err(NoBound::NoError(reason)),
        SamplingError::Known { se, .. } if se <= 0.0 => Err(NoBound::NoSpread),
        SamplingError::Known { se, df } => Ok((se, df)),
    }
}

/// Chance of a difference at least this far from zero, either way, where nothing changed.
///
/// p = 2 P(T > |d|/SE).
///
/// # Errors
/// The figure has no error, or all lines changed exactly alike.
///
/// # Source
/// Student 1908; Welch 1947 where the lines aren't the same
///
/// # Example
/// See [`super::paired`].
pub fn p_value(change: &Estimate) -> Result<f64, NoBound> {
    let (se, df) = error_of(change)?;
    Ok(2.0 * t_cdf(-(change.value / se).abs(), df))
}

/// The same, for a change in one direction that was asked about before anything was read.
///
/// # Errors
/// The figure has no error, or all lines changed exactly alike.
///
/// # Source
/// Student 1908
///
/// # Example
/// Student's sleep data, one-sided: half of 0.002833.
/// ```
/// use tautline_engine::change::{Direction, one_sided_p};
/// use tautline_engine::estimate::mean_of;
/// let gained = mean_of(&[1.2, 2.4, 1.3, 1.3, 0.0, 1.0, 1.8, 0.8, 4.6, 1.4], None)?;
/// assert!((one_sided_p(&gained, Direction::Rise).unwrap() - 0.001_416_5).abs() < 5e-7);
/// # Ok::<(), tautline_engine::estimate::EstimateError>(())
/// ```
pub fn one_sided_p(change: &Estimate, direction: Direction) -> Result<f64, NoBound> {
    let (se, df) = error_of(change)?;
    let t = change.value / se;
    Ok(match direction {
        Direction::Rise => t_cdf(-t, df),
        Direction::Fall => t_cdf(t, df),
    })
}

/// Chance to see a difference as small as this, where the true change were as large as `margin`: two one-sided tests.
///
/// p = max(P(T > (d + m)/SE), P(T < (d − m)/SE)). Small values say that the change is smaller than the margin.
///
/// # Units
/// The margin in the unit of the figure, above zero.
///
/// # Errors
/// The figure has no error, or all lines changed exactly alike.
///
/// # Source
/// Schuirmann 1987, Journal of Pharmacokinetics and Biopharmaceutics 15:657–680
///
/// # Example
/// ```
/// use tautline_engine::change::{equivalence_p, largest_hidden};
/// use tautline_engine::confidence::Tail;
/// use tautline_engine::estimate::mean_of;
/// let change = mean_of(&[0.01, -0.02, 0.00, 0.02, -0.01], None)?;
/// // the margin at which the test just succeeds is the largest change that can hide
/// let hidden = largest_hidden(&change, Tail::of_bound(0.9)).unwrap();
/// assert!((equivalence_p(&change, hidden).unwrap() - 0.1).abs() < 1e-12);
/// # Ok::<(), tautline_engine::estimate::EstimateError>(())
/// ```
pub fn equivalence_p(change: &Estimate, margin: f64) -> Result<f64, NoBound> {
    let (se, df) = error_of(change)?;
    let not_below = t_cdf(-(change.value + margin) / se, df);
    let not_above = t_cdf((change.value - margin) / se, df);
    Ok(not_below.max(not_above))
}

/// The largest change that these lines can't rule out: "no change larger than this".
///
/// |d| + t(1 − tail) SE, the smallest margin at which [`equivalence_p`] is no more than the tail.
///
/// # Errors
/// The figure has no error, or all lines changed exactly alike.
///
/// # Source
/// Schuirmann 1987
pub fn largest_hidden(change: &Estimate, tail: Tail) -> Result<f64, NoBound> {
    let (se, df) = error_of(change)?;
    Ok(change.value.abs() + t_quantile(1.0 - tail.probability(), df) * se)
}

/// Whether a change is shown at a confidence, and if not, whether one that matters is ruled out.
///
/// Shown: the two-sided interval leaves zero out. Ruled out: both one-sided bounds at the confidence lie within
/// ± `matters`. A change may be shown and still be smaller than the one that matters; the interval says so.
///
/// # Errors
/// The figure has no error, or all lines changed exactly alike.
///
/// # Source
/// Schuirmann 1987 for the second; common practice, no source, for asking both
///
/// # Example
/// ```
/// use tautline_engine::change::{Answer, answer};
/// use tautline_engine::estimate::mean_of;
/// let change = mean_of(&[0.01, -0.02, 0.00, 0.02, -0.01], None)?;
/// assert_eq!(answer(&change, 0.9, None), Ok(Answer::NotShown));
/// assert_eq!(answer(&change, 0.9, Some(0.05)), Ok(Answer::NoneThatMatters));
/// # Ok::<(), tautline_engine::estimate::EstimateError>(())
/// ```
pub fn answer(change: &Estimate, confidence: f64, matters: Option<f64>) -> Result<Answer, NoBound> {
    let p = p_value(change)?;
    if p < 1.0 - confidence {
        return Ok(if change.value > 0.0 { Answer::Rose } else { Answer::Fell });
    }
    let hidden = largest_hidden(change, Tail::of_bound(confidence))?;
    Ok(match matters {
        Some(margin) if hidden < margin => Answer::NoneThatMatters,
        _ => Answer::NotShown,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::estimate::{NoError, mean_of};

    #[test]
    fn a_shown_change_says_which_way() {
        let rise = mean_of(&[0.04, 0.05, 0.06], None).unwrap();
        let fall = mean_of(&[-0.04, -0.05, -0.06], None).unwrap();
        assert_eq!(answer(&rise, 0.9, Some(0.2)), Ok(Answer::Rose));
        assert_eq!(answer(&fall, 0.9, None), Ok(Answer::Fell));
    }

    #[test]
    fn lines_without_spread_or_a_single_line_test_nothing() {
        assert_eq!(p_value(&mean_of(&[0.02, 0.02], None).unwrap()), Err(NoBound::NoSpread));
        let one = mean_of(&[0.02], None).unwrap();
        assert_eq!(answer(&one, 0.9, None), Err(NoBound::NoError(NoError::OneLine)));
    }
}
