//! Does one reader drift: differences in the order of time as a control chart.

use crate::num::sum::mean;

/// Fewer differences than this say nothing of how far they vary.
pub const FEWEST_POINTS: usize = 5;

/// Mean range of two values of a bell curve, in standard deviations.
const MEAN_RANGE_OF_TWO: f64 = 1.128;

/// Which rule a difference breaks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Rule {
    /// It lies beyond three standard deviations.
    BeyondThree,
    /// Two of three lie beyond two on one side; this is the last of them.
    TwoOfThree,
    /// Four of five lie beyond one on one side.
    FourOfFive,
    /// Eight in a row lie on one side.
    EightInARow,
}

impl Rule {
    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::BeyondThree => "control-beyond-three",
            Self::TwoOfThree => "control-two-of-three",
            Self::FourOfFive => "control-four-of-five",
            Self::EightInARow => "control-eight-in-a-row",
        }
    }
}

/// A control chart of single values.
#[derive(Clone, Debug, PartialEq)]
pub struct Chart {
    /// The middle line.
    pub middle: f64,
    /// Standard deviation from one value to the next.
    pub sd: f64,
    /// Where rules are broken: the place of the value, and the first rule it breaks.
    pub broken: Vec<(usize, Rule)>,
}

/// The chart about `middle`, or about the values' own mean where none is given.
///
/// The standard deviation is the mean range from one value to the next over 1.128, so a slow drift doesn't widen its own limits.
/// With all four rules about one value in ninety breaks one by chance (Champ and Woodall 1987, Technometrics 29:393–399; from memory).
///
/// # Range
/// `None` for fewer than five values or where all are alike.
///
/// # Source
/// Western Electric 1956, *Statistical Quality Control Handbook* (rules and zones); limits of single values as in NIST/SEMATECH
/// e-Handbook of Statistical Methods, 6.3.2.2
///
/// # Example
/// NIST/SEMATECH 6.3.2.2, flow rates: middle 50.81, limits 45.8159 and 55.8041 (from memory).
/// ```
/// use tautline_engine::agreement::control::chart;
/// let flow = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
/// let chart = chart(&flow, None).unwrap();
/// assert!((chart.middle - 50.81).abs() < 1e-9);
/// assert!((chart.middle + 3.0 * chart.sd - 55.8041).abs() < 5e-4);
/// assert!((chart.middle - 3.0 * chart.sd - 45.8159).abs() < 5e-4);
/// ```
pub fn chart(values: &[f64], middle: Option<f64>) -> Option<Chart> {
    if values.len() < FEWEST_POINTS {
        return None;
    }
    let middle = middle.unwrap_or_else(|| mean(values));
    let ranges: Vec<f64> = values.windows(2).map(|pair| (pair[1] - pair[0]).abs()).collect();
    let sd = mean(&ranges) / MEAN_RANGE_OF_TWO;
    if sd.is_nan() || sd <= 0.0 {
        return None;
    }
    let off: Vec<f64> = values.iter().map(|value| (value - middle) / sd).collect();
    let broken = (0..values.len()).filter_map(|at| Some((at, rule_at(&off, at)?))).collect();
    Some(Chart { middle, sd, broken })
}

/// The first rule that the value at this place breaks.
fn rule_at(off: &[f64], at: usize) -> Option<Rule> {
    let own = off[at];
    // how many of the last `of` values, this one among them, lie beyond `far` on this one's side
    let beyond = |of: usize, far: f64| {
        let last = (at + 1).checked_sub(of).map(|from| &off[from..=at])?;
        let side = own.signum();
        (own * side > far).then(|| last.iter().filter(|value| **value * side > far).count())
    };
    let at_least = |number: usize, of: usize, far: f64| beyond(of, far).is_some_and(|found| found >= number);
    if own.abs() > 3.0 {
        Some(Rule::BeyondThree)
    } else if at_least(2, 3, 2.0) {
        Some(Rule::TwoOfThree)
    } else if at_least(4, 5, 1.0) {
        Some(Rule::FourOfFive)
    } else if at_least(8, 8, 0.0) {
        Some(Rule::EightInARow)
    } else {
        None
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand, in standard deviations.
    #[test]
    fn each_rule_by_hand() {
        let rule = |off: &[f64]| rule_at(off, off.len() - 1);
        assert_eq!(rule(&[0.0, 0.0, 0.0, 0.0, 3.1]), Some(Rule::BeyondThree));
        assert_eq!(rule(&[2.1, 0.0, 2.2]), Some(Rule::TwoOfThree));
        assert_eq!(rule(&[2.1, 0.0, -2.2]), None);
        assert_eq!(rule(&[-1.1, -1.2, 0.3, -1.5, -1.1]), Some(Rule::FourOfFive));
        assert_eq!(rule(&[0.1, 0.2, 0.3, 0.4, 0.5, 0.1, 0.2, 0.3]), Some(Rule::EightInARow));
        assert_eq!(rule(&[0.1, 0.2, 0.3, 0.4, 0.5, 0.1, 0.2]), None);
    }

    #[test]
    fn too_few_or_all_alike_have_no_chart() {
        assert_eq!(chart(&[1.0, 2.0, 3.0, 4.0], None), None);
        assert_eq!(chart(&[1.0; 6], None), None);
    }
}
