//! Lines of one length: the mean of their shares, and how sure.

use super::{
    Estimate, EstimateError, Line, Method, NoError, SamplingError, check, odd_length, share_not_drawn,
};
use crate::num::{count, math::sqrt, sum};

/// Cover from lines of one length.
///
/// p̂ = Σ (yᵢ/xᵢ) / n; SE = s/√n · √(1 − n/N); n − 1 degrees of freedom.
///
/// # Units
/// Shares; lengths cancel.
///
/// # Range
/// One line or more; with one line the error is unknown. `population` is the number of lines that could have
/// been drawn, where it is finite and known.
///
/// # Errors
/// No lines, a line that can't be reckoned with, lines of unequal lengths, a population smaller than the sample.
///
/// # Source
/// Cochran, W.G. 1977. Sampling Techniques, 3rd ed., §2.4–2.6.
///
/// # Example
/// Three 30 m lines (invented) with 6, 9 and 12 m of canopy: 20, 30 and 40 %.
/// ```
/// use tautline_engine::estimate::{Line, SamplingError, mean};
/// let lines = [6.0, 9.0, 12.0].map(|y| Line::new(y, 30.0));
/// let cover = mean(&lines, None)?;
/// assert!((cover.value - 0.3).abs() < 1e-15);
/// let SamplingError::Known { se, df } = cover.error else { unreachable!("three lines have an error") };
/// assert!((se - 0.1 / 3.0_f64.sqrt()).abs() < 1e-15);
/// assert_eq!(df, 2.0);
/// # Ok::<(), tautline_engine::estimate::EstimateError>(())
/// ```
pub fn mean(lines: &[Line], population: Option<u64>) -> Result<Estimate, EstimateError> {
    check(lines)?;
    if let Some(odd) = odd_length(lines) {
        return Err(odd);
    }
    let shares: Vec<f64> = lines.iter().map(|line| line.share()).collect();
    Ok(Estimate { method: Method::MeanOfLines, ..mean_of(&shares, population)? })
}

/// Mean of plain numbers, such as differences between two visits to the same lines.
///
/// x̄ = Σ x / n; SE = s/√n · √(1 − n/N); n − 1 degrees of freedom.
///
/// # Units
/// Those of the numbers.
///
/// # Range
/// One number or more; with one the error is unknown.
///
/// # Errors
/// No numbers, one that isn't finite, a population smaller than the sample.
///
/// # Source
/// Cochran 1977, §2.4–2.6.
///
/// # Example
/// ```
/// use tautline_engine::estimate::mean_of;
/// assert_eq!(mean_of(&[-1.0, 2.0, 5.0], None)?.value, 2.0);
/// # Ok::<(), tautline_engine::estimate::EstimateError>(())
/// ```
pub fn mean_of(values: &[f64], population: Option<u64>) -> Result<Estimate, EstimateError> {
    let n = values.len();
    if n == 0 {
        return Err(EstimateError::NoLines);
    }
    if let Some((at, &value)) = values.iter().enumerate().find(|(_, x)| !x.is_finite()) {
        return Err(EstimateError::ValueNotFinite { at, value });
    }
    let not_drawn = share_not_drawn(n, population)?;
    let error = if n == 1 {
        SamplingError::Unknown(NoError::OneLine)
    } else {
        let se = sqrt(not_drawn * sum::variance(values) / count(n));
        SamplingError::Known { se, df: count(n - 1) }
    };
    Ok(Estimate { value: sum::mean(values), error, lines: n, units: n, method: Method::MeanOfValues })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_line_has_a_cover_but_no_error() {
        let cover = mean(&[Line::new(3.0, 30.0)], None).unwrap();
        assert_eq!(cover.error, SamplingError::Unknown(NoError::OneLine));
    }

    #[test]
    fn unequal_lengths_are_refused_by_name() {
        let lines = [Line::new(1.0, 30.0), Line::new(1.0, 30.0), Line::new(1.0, 50.0)];
        let refused = EstimateError::UnequalLengths { line: 2, length: 50.0, first: 30.0 };
        assert_eq!(mean(&lines, None), Err(refused));
    }

    #[test]
    fn a_census_has_no_sampling_error() {
        let lines = [Line::new(1.0, 30.0), Line::new(2.0, 30.0)];
        let cover = mean(&lines, Some(2)).unwrap();
        assert_eq!(cover.error, SamplingError::Known { se: 0.0, df: 1.0 });
        let refused = EstimateError::PopulationTooSmall { population: 1, units: 2 };
        assert_eq!(mean(&lines, Some(1)), Err(refused));
    }

    #[test]
    fn what_cannot_be_reckoned_with_is_named() {
        let bad = [Line::new(1.0, 30.0), Line::new(-1.0, 30.0)];
        assert_eq!(mean(&bad, None), Err(EstimateError::InterceptNotUsable { line: 1, intercept: -1.0 }));
        let bad = [Line::new(1.0, 0.0)];
        assert_eq!(mean(&bad, None), Err(EstimateError::LengthNotPositive { line: 0, length: 0.0 }));
        assert_eq!(mean(&[], None), Err(EstimateError::NoLines));
    }
}
