//! Strata of known area: each worked out alone, then weighted by area.

use super::{Estimate, EstimateError, Line, Method, NoError, SamplingError, check, share_not_drawn};
use crate::num::{
    count,
    math::sqrt,
    sum::{self, sum},
};

/// One stratum, already worked out.
#[derive(Clone, Debug, PartialEq)]
pub struct Stratum {
    /// Area, in any unit: only the shares of the whole matter.
    pub weight: f64,
    /// The stratum's own figure.
    pub estimate: Estimate,
}

/// Cover of a site from its strata.
///
/// p̂ = Σ W p̂ₕ; SE = √(Σ W² SEₕ²), where W is the stratum's share of the area; degrees of freedom
/// (Σ W² SEₕ²)² / Σ (W⁴ SEₕ⁴ / dfₕ), Satterthwaite's, between the smallest dfₕ and their sum (which it is where
/// no stratum shows any spread).
///
/// # Units
/// Those of the strata's figures.
///
/// # Range
/// One stratum or more. A stratum whose own error is unknown makes the site's error unknown.
///
/// # Errors
/// No strata, or a weight that isn't a finite number above zero.
///
/// # Source
/// Cochran, W.G. 1977. Sampling Techniques, 3rd ed., §5.3–5.4, eqs 5.6 and 5.16; Satterthwaite 1946.
///
/// # Example
/// ```
/// use tautline_engine::estimate::{Line, Stratum, mean, strata};
/// let upland = mean(&[Line::new(6.0, 30.0), Line::new(9.0, 30.0)], None)?;
/// let wash = mean(&[Line::new(15.0, 30.0), Line::new(12.0, 30.0)], None)?;
/// let site = strata(&[Stratum { weight: 90.0, estimate: upland }, Stratum { weight: 10.0, estimate: wash }])?;
/// assert!((site.value - (0.9 * 0.25 + 0.1 * 0.45)).abs() < 1e-15);
/// # Ok::<(), tautline_engine::estimate::EstimateError>(())
/// ```
pub fn strata(strata: &[Stratum]) -> Result<Estimate, EstimateError> {
    let whole = whole_weight(strata.iter().map(|stratum| stratum.weight))?;
    let value = sum(strata.iter().map(|stratum| stratum.weight / whole * stratum.estimate.value));
    let parts = strata.iter().map(|stratum| (stratum.weight / whole, stratum.estimate.error));
    Ok(Estimate {
        value,
        error: pooled(parts),
        lines: strata.iter().map(|stratum| stratum.estimate.lines).sum(),
        units: strata.iter().map(|stratum| stratum.estimate.units).sum(),
        method: Method::Strata(strata.iter().map(|stratum| stratum.estimate.method.clone()).collect()),
    })
}

/// One stratum with its lines, for [`combined_ratio`].
#[derive(Clone, Debug, PartialEq)]
pub struct CombinedStratum<'a> {
    /// The stratum's share of all lines that could have been drawn (its area, where lines are drawn evenly over
    /// it), in any unit.
    pub weight: f64,
    /// Its lines.
    pub lines: &'a [Line],
    /// The number of lines that could have been drawn, where finite and known.
    pub population: Option<u64>,
}

/// Cover of a site as one ratio of weighted sums, for strata with too few lines for a ratio of their own.
///
/// R̂ = Σ W ȳₕ / Σ W x̄ₕ; SE = √(Σ W² (1 − nₕ/Nₕ) s²ₕ / nₕ) / Σ W x̄ₕ, where s²ₕ is the variance of y − R̂x within
/// the stratum; Satterthwaite's degrees of freedom.
///
/// # Units
/// A share; lengths cancel.
///
/// # Range
/// One stratum or more; a stratum with one line makes the error unknown.
///
/// # Errors
/// No strata, a stratum without lines, a line that can't be reckoned with, a weight that isn't a finite number
/// above zero, a population smaller than its sample.
///
/// # Source
/// Cochran, W.G. 1977. Sampling Techniques, 3rd ed., §6.11, eq. 6.51.
pub fn combined_ratio(strata: &[CombinedStratum]) -> Result<Estimate, EstimateError> {
    let all: Vec<Line> = strata.iter().flat_map(|stratum| stratum.lines.iter().copied()).collect();
    if strata.iter().any(|stratum| stratum.lines.is_empty()) {
        return Err(EstimateError::NoLines);
    }
    check(&all)?;
    let whole = whole_weight(strata.iter().map(|stratum| stratum.weight))?;
    let weighted_mean = |of: fn(&Line) -> f64| {
        sum(strata.iter().map(|stratum| {
            stratum.weight / whole * sum(stratum.lines.iter().map(of)) / count(stratum.lines.len())
        }))
    };
    let mean_length = weighted_mean(|line| line.length);
    let value = weighted_mean(|line| line.intercept) / mean_length;
    let mut parts = Vec::with_capacity(strata.len());
    for stratum in strata {
        let n = stratum.lines.len();
        let not_drawn = share_not_drawn(n, stratum.population)?;
        let residuals: Vec<f64> =
            stratum.lines.iter().map(|line| line.intercept - value * line.length).collect();
        let error = if n == 1 {
            SamplingError::Unknown(NoError::OneLine)
        } else {
            let se = sqrt(not_drawn * sum::variance(&residuals) / count(n)) / mean_length;
            SamplingError::Known { se, df: count(n - 1) }
        };
        parts.push((stratum.weight / whole, error));
    }
    let error = pooled(parts.into_iter());
    Ok(Estimate { value, error, lines: all.len(), units: all.len(), method: Method::CombinedRatio })
}

fn whole_weight(weights: impl Iterator<Item = f64> + Clone) -> Result<f64, EstimateError> {
    if weights.clone().next().is_none() {
        return Err(EstimateError::NoLines);
    }
    if let Some((stratum, weight)) = weights.clone().enumerate().find(|(_, w)| !(*w > 0.0 && w.is_finite())) {
        return Err(EstimateError::WeightNotPositive { stratum, weight });
    }
    Ok(sum(weights))
}

/// Error of a weighted sum of independent figures, given each one's share and error.
fn pooled(parts: impl Iterator<Item = (f64, SamplingError)>) -> SamplingError {
    let mut variances = Vec::new();
    for (stratum, (share, error)) in parts.enumerate() {
        match error {
            SamplingError::Known { se, df } => variances.push((share * share * se * se, df)),
            SamplingError::Unknown(_) => {
                return SamplingError::Unknown(NoError::OneUnitInStratum { stratum });
            }
        }
    }
    let variance = sum(variances.iter().map(|(v, _)| *v));
    let df = if variance > 0.0 {
        // Relative parts, so that small figures don't vanish when squared.
        1.0 / sum(variances.iter().map(|(v, df)| v / variance * (v / variance) / df))
    } else {
        sum(variances.iter().map(|(_, df)| *df))
    };
    SamplingError::Known { se: sqrt(variance), df }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::estimate::mean;

    fn stratum(weight: f64, intercepts: &[f64]) -> Stratum {
        let lines: Vec<Line> = intercepts.iter().map(|&y| Line::new(y, 10.0)).collect();
        Stratum { weight, estimate: mean(&lines, None).unwrap() }
    }

    #[test]
    fn a_stratum_with_one_line_makes_the_error_unknown_and_is_named() {
        let site = strata(&[stratum(1.0, &[1.0, 2.0]), stratum(1.0, &[3.0])]).unwrap();
        assert_eq!(site.error, SamplingError::Unknown(NoError::OneUnitInStratum { stratum: 1 }));
    }

    #[test]
    fn equal_strata_of_equal_spread_add_their_degrees_of_freedom() {
        let site = strata(&[stratum(2.0, &[1.0, 2.0, 3.0]), stratum(2.0, &[4.0, 5.0, 6.0])]).unwrap();
        let SamplingError::Known { df, .. } = site.error else { unreachable!("both strata have an error") };
        assert!((df - 4.0).abs() < 1e-12, "{df}");
    }

    #[test]
    fn a_weight_of_nothing_is_refused() {
        let refused = EstimateError::WeightNotPositive { stratum: 1, weight: 0.0 };
        assert_eq!(strata(&[stratum(2.0, &[1.0]), stratum(0.0, &[1.0])]), Err(refused));
        assert_eq!(strata(&[]), Err(EstimateError::NoLines));
    }
}
