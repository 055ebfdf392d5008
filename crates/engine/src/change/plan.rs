//! What the design could have seen, and what would see the change that matters.

use crate::confidence::NoBound;
use crate::effort::power::{Groups, Sides, TTest};
use crate::estimate::{Estimate, SamplingError};
use crate::num::{count, math::sqrt};

/// Whether the same lines are read again or others are laid.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reread {
    /// The same staked lines at both visits.
    SameLines,
    /// Other lines at each visit.
    OtherLines,
}

/// The smallest change that these lines would have shown with the chance `power`.
///
/// δ SE, with δ the smallest noncentrality at which the two-sided t test at `confidence` succeeds with that chance.
///
/// # Units
/// Those of the figure.
///
/// # Errors
/// The figure has no error, or all lines changed exactly alike.
///
/// # Source
/// Owen 1965, Biometrika 52:437–446; Cohen 1988, ch. 2
///
/// # Example
/// Twenty pairs whose differences have a standard deviation of 1, 5 % two-sided, chance 0.8: 0.66 (EnvStats 3.1.0
/// manual, tTestScaledMdd).
/// ```
/// use tautline_engine::change::smallest_seen;
/// use tautline_engine::estimate::{Estimate, Method, SamplingError};
/// let error = SamplingError::Known { se: 1.0 / 20.0_f64.sqrt(), df: 19.0 };
/// let change = Estimate { value: 0.1, error, lines: 20, units: 20, method: Method::PairedDifference };
/// assert!((smallest_seen(&change, 0.95, 0.8).unwrap().unwrap() - 0.66).abs() < 0.005);
/// ```
pub fn smallest_seen(change: &Estimate, confidence: f64, power: f64) -> Result<Option<f64>, NoBound> {
    let (se, df) = known(change)?;
    let test = TTest { groups: Groups::One, sides: Sides::Two, alpha: 1.0 - confidence };
    Ok(test.noncentrality(df, power).map(|delta| delta * se))
}

/// Lines (at each visit) with which a change of `matters` would be shown with the chance `power`, at the spread seen.
///
/// The spread of one difference is taken from the error: s = SE √n for the same lines, SE / √(1/n₁ + 1/n₂) for others,
/// so a design in strata keeps its allocation. Rounded up.
///
/// # Range
/// `None` where a million lines don't do; two at least.
///
/// # Errors
/// The figure has no error, or all lines changed exactly alike.
///
/// # Source
/// Owen 1965; Cohen 1988, ch. 2
///
/// # Example
/// Pairs needed where the change is half a standard deviation of the differences, chance 0.8, 5 % two-sided: 34
/// (StatsToDo, sample size for paired differences).
/// ```
/// use tautline_engine::change::{Reread, lines_to_see};
/// use tautline_engine::estimate::{Estimate, Method, SamplingError};
/// let error = SamplingError::Known { se: 0.2, df: 24.0 };
/// let change = Estimate { value: 0.1, error, lines: 25, units: 25, method: Method::PairedDifference };
/// assert_eq!(lines_to_see(&change, Reread::SameLines, 0.5, 0.95, 0.8), Ok(Some(34)));
/// ```
pub fn lines_to_see(
    change: &Estimate,
    reread: Reread,
    matters: f64,
    confidence: f64,
    power: f64,
) -> Result<Option<usize>, NoBound> {
    let (se, _) = known(change)?;
    let (groups, spread) = match reread {
        Reread::SameLines => (Groups::One, se * sqrt(count(change.units))),
        // half of the lines at each visit
        Reread::OtherLines => (Groups::Two, se * sqrt(count(change.units)) / 2.0),
    };
    let test = TTest { groups, sides: Sides::Two, alpha: 1.0 - confidence };
    let size = matters / spread;
    if test.power(size, 2.0) >= power {
        return Ok(Some(2));
    }
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "between two and a million")]
    let units = test.units(size, power).map(|units| units.ceil() as usize);
    Ok(units)
}

/// How many times as many lines it would take, if they weren't the same, to be as sure of the change.
///
/// (SE₁² + SE₂²) / SE², the errors of both visits' levels and of the paired change; 1 where pairing is worth nothing.
///
/// # Range
/// `None` where one of the three has no error above zero.
///
/// # Source
/// Cochran 1977, §12.12 (change from the same units; section from memory)
///
/// # Example
/// Two visits whose levels are known to ± 3 % and a change to ± 1 %: eighteen times as many lines.
/// ```
/// use tautline_engine::change::worth_of_pairing;
/// use tautline_engine::estimate::{Estimate, Method, SamplingError};
/// let figure = |se| Estimate {
///     value: 0.2, error: SamplingError::Known { se, df: 9.0 }, lines: 10, units: 10, method: Method::MeanOfLines,
/// };
/// assert!((worth_of_pairing(&figure(0.03), &figure(0.03), &figure(0.01)).unwrap() - 18.0).abs() < 1e-9);
/// ```
pub fn worth_of_pairing(earlier: &Estimate, later: &Estimate, change: &Estimate) -> Option<f64> {
    let variance = |estimate: &Estimate| known(estimate).ok().map(|(se, _)| se * se);
    Some((variance(earlier)? + variance(later)?) / variance(change)?)
}

fn known(change: &Estimate) -> Result<(f64, f64), NoBound> {
    match change.error {
        SamplingError::Unknown(reason) => Err(NoBound::NoError(reason)),
        // differences that are all alike leave rounding alone
        SamplingError::Known { se, .. } if se <= 1e-13 * change.value.abs() => Err(NoBound::NoSpread),
        SamplingError::Known { se, df } => Ok((se, df)),
    }
}
