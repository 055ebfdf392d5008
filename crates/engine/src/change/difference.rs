//! The difference itself: paired, unpaired, or both put together.

use crate::estimate::{Estimate, EstimateError, Line, Method, NoError, SamplingError, check};
use crate::num::{
    count,
    math::sqrt,
    sum::{self, sum},
};

/// One staked line at two visits; a plot of lines is such a line too, with its lines' lengths added up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pair {
    /// What was read first.
    pub earlier: Line,
    /// What was read later.
    pub later: Line,
}

impl Pair {
    /// Later share less earlier share.
    pub fn difference(self) -> f64 {
        self.later.share() - self.earlier.share()
    }
}

/// Change of the cover of a site from staked lines that were read twice.
///
/// d = R₂ − R₁ with R = Σy / Σx of each visit; SE = s(z)/√n, where zᵢ = (y₂ − R₂x₂)/x̄₂ − (y₁ − R₁x₁)/x̄₁; n − 1
/// degrees of freedom. With lines of one length this is the paired t test: d the mean of the differences, s theirs.
///
/// # Units
/// Shares; lengths cancel.
///
/// # Range
/// One pair or more; with one the error is unknown.
///
/// # Errors
/// No pairs, or a line that can't be reckoned with.
///
/// # Source
/// Student 1908, Biometrika 6:1–25, for lines of one length; Cochran 1977, *Sampling Techniques*, §6.18 (comparison of
/// two ratios; section from memory)
///
/// # Example
/// Hours of sleep gained with two drugs (Student 1908, ten hours added so that none is negative): t = 4.0621, 9 degrees
/// of freedom, mean difference 1.58.
/// ```
/// use tautline_engine::change::{Pair, p_value, paired};
/// use tautline_engine::estimate::{Line, SamplingError};
/// let first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0];
/// let second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];
/// let hours = |gained: f64| Line::new(10.0 + gained, 1.0);
/// let pairs: Vec<Pair> =
///     first.iter().zip(second).map(|(&a, b)| Pair { earlier: hours(a), later: hours(b) }).collect();
/// let change = paired(&pairs)?;
/// let SamplingError::Known { se, df } = change.error else { unreachable!("ten pairs have an error") };
/// assert!((change.value / se - 4.0621).abs() < 5e-5 && df == 9.0);
/// assert!((p_value(&change).unwrap() - 0.002833).abs() < 5e-7);
/// # Ok::<(), tautline_engine::estimate::EstimateError>(())
/// ```
pub fn paired(pairs: &[Pair]) -> Result<Estimate, EstimateError> {
    let earlier = Visit::of(&pairs.iter().map(|pair| pair.earlier).collect::<Vec<_>>())?;
    let later = Visit::of(&pairs.iter().map(|pair| pair.later).collect::<Vec<_>>())?;
    let n = pairs.len();
    let error = if n == 1 {
        SamplingError::Unknown(NoError::OneLine)
    } else {
        let deviations: Vec<f64> =
            pairs.iter().map(|pair| later.deviation(pair.later) - earlier.deviation(pair.earlier)).collect();
        SamplingError::Known { se: sqrt(sum::variance(&deviations) / count(n)), df: count(n - 1) }
    };
    Ok(Estimate {
        value: later.ratio - earlier.ratio,
        error,
        lines: n,
        units: n,
        method: Method::PairedDifference,
    })
}

/// All lines of one visit.
struct Visit {
    ratio: f64,
    mean_length: f64,
}

impl Visit {
    fn of(lines: &[Line]) -> Result<Self, EstimateError> {
        check(lines)?;
        let length = sum(lines.iter().map(|line| line.length));
        let ratio = sum(lines.iter().map(|line| line.intercept)) / length;
        Ok(Self { ratio, mean_length: length / count(lines.len()) })
    }

    /// How far a line pulls the ratio from where it is.
    fn deviation(&self, line: Line) -> f64 {
        (line.intercept - self.ratio * line.length) / self.mean_length
    }
}

/// Difference of two figures that know nothing of each other: other lines at each visit, or another site.
///
/// d = later − earlier; SE = √(SE₁² + SE₂²); degrees of freedom (SE₁² + SE₂²)² / (SE₁⁴/df₁ + SE₂⁴/df₂), between the
/// smaller of the two and their sum.
///
/// With the changes of a treated and of an untreated site as the two figures it is the difference of differences: what
/// the treated site did beyond what the dry year did to both.
///
/// # Units
/// Those of the figures.
///
/// # Source
/// Welch 1947, Biometrika 34:28–35; Satterthwaite 1946, Biometrics Bulletin 2:110–114
///
/// # Example
/// 1 to 10 against 7 to 20 (R, t.test, reference output): t = 5.4349 on 21.982 degrees of freedom.
/// ```
/// use tautline_engine::change::unpaired;
/// use tautline_engine::estimate::{SamplingError, mean_of};
/// let numbers = |from: i32, to: i32| (from..=to).map(f64::from).collect::<Vec<_>>();
/// let change = unpaired(&mean_of(&numbers(1, 10), None)?, &mean_of(&numbers(7, 20), None)?);
/// let SamplingError::Known { se, df } = change.error else { unreachable!("both have an error") };
/// assert!((change.value / se - 5.4349).abs() < 5e-5 && (df - 21.982).abs() < 5e-4);
/// # Ok::<(), tautline_engine::estimate::EstimateError>(())
/// ```
pub fn unpaired(earlier: &Estimate, later: &Estimate) -> Estimate {
    let error = match (earlier.error, later.error) {
        (SamplingError::Known { se: se1, df: df1 }, SamplingError::Known { se: se2, df: df2 }) => {
            let (v1, v2) = (se1 * se1, se2 * se2);
            let variance = v1 + v2;
            let df = if variance > 0.0 {
                let (part1, part2) = (v1 / variance, v2 / variance);
                1.0 / (part1 * part1 / df1 + part2 * part2 / df2)
            } else {
                df1 + df2
            };
            SamplingError::Known { se: sqrt(variance), df }
        }
        (SamplingError::Unknown(reason), _) | (_, SamplingError::Unknown(reason)) => {
            SamplingError::Unknown(reason)
        }
    };
    Estimate {
        value: later.value - earlier.value,
        error,
        lines: earlier.lines + later.lines,
        units: earlier.units + later.units,
        method: Method::UnpairedDifference,
    }
}

/// Change from staked lines and, beside them, lines that were read at one of the two visits only.
///
/// The paired and the unpaired difference come from different lines, so they are weighted by what each is worth:
/// d = Σ wᵢdᵢ / Σ wᵢ, wᵢ = 1/SEᵢ²; with pᵢ = wᵢ/Σw, SE² = (1 + 4 Σ pᵢ(1 − pᵢ)/dfᵢ) / Σw, since the weights were
/// estimated too; degrees of freedom 1 / Σ(pᵢ²/dfᵢ).
///
/// # Range
/// `None` unless both have an error above zero: then the pairs alone are the honest figure.
///
/// # Source
/// Graybill and Deal 1959, Biometrics 15:543–550; Meier 1953, Biometrics 9:59–73
///
/// # Example
/// Two figures as sure as each other share the weight: the error falls by √2, times √(1 + 4·2·¼/df).
/// ```
/// use tautline_engine::change::combined;
/// use tautline_engine::estimate::{Estimate, Method, SamplingError};
/// let figure = |value, method| Estimate {
///     value, error: SamplingError::Known { se: 0.02, df: 10.0 }, lines: 11, units: 11, method,
/// };
/// let both = combined(&figure(0.04, Method::PairedDifference), &figure(0.02, Method::UnpairedDifference)).unwrap();
/// let SamplingError::Known { se, df } = both.error else { unreachable!("both have an error") };
/// assert!((both.value - 0.03).abs() < 1e-15 && (df - 20.0).abs() < 1e-12);
/// assert!((se - 0.02 * (0.5_f64 * (1.0 + 0.2)).sqrt()).abs() < 1e-15);
/// ```
pub fn combined(pairs: &Estimate, others: &Estimate) -> Option<Estimate> {
    let (SamplingError::Known { se: se1, df: df1 }, SamplingError::Known { se: se2, df: df2 }) =
        (pairs.error, others.error)
    else {
        return None;
    };
    if !(se1 > 0.0 && se2 > 0.0) {
        return None;
    }
    let (v1, v2) = (se1 * se1, se2 * se2);
    let (p1, p2) = (v2 / (v1 + v2), v1 / (v1 + v2));
    let weights_estimated = 1.0 + 4.0 * p1 * p2 * (1.0 / df1 + 1.0 / df2);
    Some(Estimate {
        value: p1 * pairs.value + p2 * others.value,
        error: SamplingError::Known {
            se: sqrt(v1 * p1 * weights_estimated),
            df: 1.0 / (p1 * p1 / df1 + p2 * p2 / df2),
        },
        lines: pairs.lines + others.lines,
        units: pairs.units + others.units,
        method: Method::PairedAndUnpaired,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::estimate::{mean_of, of_lines};

    fn pairs(values: &[(f64, f64, f64)]) -> Vec<Pair> {
        let pair = |&(length, y1, y2)| Pair { earlier: Line::new(y1, length), later: Line::new(y2, length) };
        values.iter().map(pair).collect()
    }

    fn known(estimate: &Estimate) -> (f64, f64) {
        let SamplingError::Known { se, df } = estimate.error else { unreachable!("has an error") };
        (se, df)
    }

    #[test]
    fn lines_of_one_length_give_the_mean_of_their_differences() {
        let pairs = pairs(&[(30.0, 3.0, 6.0), (30.0, 9.0, 8.0), (30.0, 0.0, 2.0), (30.0, 12.0, 15.0)]);
        let differences: Vec<f64> = pairs.iter().map(|pair| pair.difference()).collect();
        let plain = mean_of(&differences, None).unwrap();
        let change = paired(&pairs).unwrap();
        assert!((change.value - plain.value).abs() < 1e-15);
        assert!((known(&change).0 - known(&plain).0).abs() < 1e-15);
    }

    #[test]
    fn lines_of_unlike_lengths_count_by_their_length() {
        let pairs = pairs(&[(10.0, 1.0, 2.0), (30.0, 3.0, 3.0)]);
        let change = paired(&pairs).unwrap();
        assert!((change.value - 1.0 / 40.0).abs() < 1e-15);
    }

    #[test]
    fn both_ends_swapped_turn_the_sign() {
        let there = pairs(&[(20.0, 1.0, 4.0), (35.0, 9.0, 8.0), (30.0, 2.0, 7.0)]);
        let back: Vec<Pair> =
            there.iter().map(|pair| Pair { earlier: pair.later, later: pair.earlier }).collect();
        let (there, back) = (paired(&there).unwrap(), paired(&back).unwrap());
        assert!((there.value + back.value).abs() < 1e-15);
        assert!((known(&there).0 - known(&back).0).abs() < 1e-15);
    }

    #[test]
    fn one_pair_has_a_difference_and_no_error() {
        let change = paired(&pairs(&[(30.0, 3.0, 6.0)])).unwrap();
        assert_eq!(change.error, SamplingError::Unknown(NoError::OneLine));
        assert_eq!(paired(&[]), Err(EstimateError::NoLines));
    }

    #[test]
    fn lines_that_are_not_matched_never_make_it_less_sure_than_the_surer_half_by_much() {
        let lines = |intercepts: &[f64]| {
            let lines: Vec<Line> = intercepts.iter().map(|&y| Line::new(y, 30.0)).collect();
            of_lines(&lines, None).unwrap()
        };
        let pairs = paired(&pairs(&[
            (30.0, 3.0, 4.0),
            (30.0, 9.0, 9.6),
            (30.0, 0.5, 1.2),
            (30.0, 12.0, 13.1),
            (30.0, 6.0, 6.9),
        ]))
        .unwrap();
        let others = unpaired(&lines(&[2.0, 8.0, 5.0, 11.0]), &lines(&[9.0, 1.0, 4.0, 12.0]));
        let both = combined(&pairs, &others).unwrap();
        assert!(known(&both).0 < 1.05 * known(&pairs).0);
        assert!((both.value - pairs.value).abs() < (others.value - pairs.value).abs());
    }
}
