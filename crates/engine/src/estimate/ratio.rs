//! Lines of different lengths: intercepted length over length, and how sure.

use super::{
    Estimate, EstimateError, Line, Method, NoError, SamplingError, check, mean, odd_length, share_not_drawn,
};
use crate::num::{count, math::sqrt, sum::sum};

/// Cover from lines of any lengths.
///
/// R̂ = Σ y / Σ x; SE = √((1 − n/N) · Σ (y − R̂x)² / (n (n − 1))) / x̄; (Σ x)² / Σ x² − 1 degrees of freedom (n − 1
/// where all lines have one length), but 1 at least.
///
/// # Units
/// A share; lengths cancel.
///
/// # Range
/// One line or more; with one line the error is unknown. The error is an approximation for large n and runs a little
/// small with few lines of very different lengths; fewer degrees of freedom make up for it (docs/intervals.md).
///
/// # Errors
/// No lines, a line that can't be reckoned with, a population smaller than the sample.
///
/// # Source
/// Cochran, W.G. 1977. Sampling Techniques, 3rd ed., §6.4, eq. 6.13 (with n − 1 in the residual variance). Degrees of
/// freedom: Satterthwaite 1946, Biometrics Bulletin 2:110–114, with a residual variance in proportion to the line's
/// length; (Σ x)² / Σ x² is the effective number of lines (Kish 1965, Survey Sampling, §11.7, from memory).
///
/// # Example
/// Two lines (invented), 20 m with 2 m of canopy and 40 m with 10 m: 12 m of 60 m.
/// ```
/// use tautline_engine::estimate::{Line, ratio};
/// let cover = ratio(&[Line::new(2.0, 20.0), Line::new(10.0, 40.0)], None)?;
/// assert!((cover.value - 0.2).abs() < 1e-15);
/// # Ok::<(), tautline_engine::estimate::EstimateError>(())
/// ```
pub fn ratio(lines: &[Line], population: Option<u64>) -> Result<Estimate, EstimateError> {
    check(lines)?;
    let units = lines.len();
    let not_drawn = share_not_drawn(units, population)?;
    let value = sum(lines.iter().map(|line| line.intercept)) / sum(lines.iter().map(|line| line.length));
    let error = if units == 1 {
        SamplingError::Unknown(NoError::OneLine)
    } else {
        SamplingError::Known {
            se: sqrt(not_drawn) * error_of_ratio(lines, value),
            df: (effective_number(lines) - 1.0).max(1.0),
        }
    };
    Ok(Estimate { value, error, lines: units, units, method: Method::RatioOfSums })
}

/// Cover from lines: [`mean`](super::mean()) where all have one length, else [`ratio`].
///
/// # Errors
/// As for [`ratio`].
///
/// # Example
/// ```
/// use tautline_engine::estimate::{Line, Method, of_lines};
/// let cover = of_lines(&[Line::new(2.0, 20.0), Line::new(10.0, 40.0)], None)?;
/// assert_eq!(cover.method, Method::RatioOfSums);
/// # Ok::<(), tautline_engine::estimate::EstimateError>(())
/// ```
pub fn of_lines(lines: &[Line], population: Option<u64>) -> Result<Estimate, EstimateError> {
    if odd_length(lines).is_some() { ratio(lines, population) } else { mean(lines, population) }
}

/// How many lines of one length would count for as much: (Σ x)² / Σ x², at most n.
fn effective_number(lines: &[Line]) -> f64 {
    let longest = lines.iter().fold(0.0_f64, |longest, line| longest.max(line.length));
    // relative lengths: alike they are all exactly 1, and n stays whole
    let whole = sum(lines.iter().map(|line| line.length / longest));
    whole * whole / sum(lines.iter().map(|line| line.length / longest * (line.length / longest)))
}

/// Standard error of Σ y / Σ x without a finite population, two units or more.
fn error_of_ratio(units: &[Line], value: f64) -> f64 {
    let n = count(units.len());
    let residuals = sum(units.iter().map(|unit| {
        let residual = unit.intercept - value * unit.length;
        residual * residual
    }));
    sqrt(n / (n - 1.0) * residuals) / sum(units.iter().map(|unit| unit.length))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn zero_lines_count_like_any_other() {
        let lines = [Line::new(0.0, 30.0), Line::new(0.0, 50.0), Line::new(8.0, 20.0)];
        let cover = ratio(&lines, None).unwrap();
        assert!((cover.value - 0.08).abs() < 1e-16);
        assert_eq!(cover.lines, 3);
    }

    /// By hand: lengths 20, 30 and 50 m count as 100²/3800 = 2.631579 lines.
    #[test]
    fn long_lines_beside_short_ones_cost_degrees_of_freedom() {
        let lines = [Line::new(2.0, 20.0), Line::new(5.0, 30.0), Line::new(8.0, 50.0)];
        let SamplingError::Known { df, .. } = ratio(&lines, None).unwrap().error else {
            panic!("three lines")
        };
        assert!((df - 1.631_579).abs() < 1e-6, "{df}");
    }

    #[test]
    fn the_same_share_on_every_line_leaves_no_spread() {
        let lines = [Line::new(5.0, 20.0), Line::new(10.0, 40.0)];
        assert_eq!(ratio(&lines, None).unwrap().error, SamplingError::Known { se: 0.0, df: 1.0 });
    }
}
