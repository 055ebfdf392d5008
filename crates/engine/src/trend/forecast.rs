//! When a straight line would reach a goal.

use super::mixed::Fit;
use crate::num::math::sqrt;
use crate::num::quantile::t_quantile;

/// When the trend's line reaches a value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Crossing {
    /// The year in which the line itself reaches it.
    pub year: f64,
    /// The years in which it may.
    pub within: Within,
}

/// The years in which a line may reach a value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Within {
    /// From the first year to the second.
    Between(f64, f64),
    /// Up to the first year or from the second on: the slope isn't sure, but the line lies sure of the value between them.
    Outside(f64, f64),
    /// Any year: neither slope nor level is sure enough.
    Any,
}

/// When the fitted line reaches `goal`, and the years that can't be ruled out.
///
/// Those years t for which (ℓ + s t − goal)² ≤ q² Var(ℓ + s t), with q the t quantile of the slope's degrees of freedom and the
/// errors of Kenward and Roger. `None` where the slope is zero.
///
/// # Units
/// Years; the goal in the unit of the values.
///
/// # Source
/// Fieller 1954, Journal of the Royal Statistical Society B 16:175–185
pub fn crossing(fit: &Fit, origin: f64, goal: f64, confidence: f64) -> Option<Crossing> {
    let (level, slope) = (fit.level(origin), fit.slope());
    // Var(ℓ + s) gives the covariance of both
    let both = fit.level(origin + 1.0);
    let covariance = (both.se * both.se - level.se * level.se - slope.se * slope.se) / 2.0;
    let quantile = t_quantile(f64::midpoint(1.0, confidence), slope.df);
    let line = Line { level: level.value - goal, slope: slope.value };
    let doubt = Doubt { level: level.se * level.se, both: covariance, slope: slope.se * slope.se };
    let (year, within) = fieller(line, doubt, quantile)?;
    let shift = |within| match within {
        Within::Between(a, b) => Within::Between(a + origin, b + origin),
        Within::Outside(a, b) => Within::Outside(a + origin, b + origin),
        Within::Any => Within::Any,
    };
    Some(Crossing { year: year + origin, within: shift(within) })
}

#[derive(Clone, Copy)]
struct Line {
    level: f64,
    slope: f64,
}

#[derive(Clone, Copy)]
struct Doubt {
    level: f64,
    both: f64,
    slope: f64,
}

/// Where level + slope t is zero, and where it may be.
fn fieller(line: Line, doubt: Doubt, quantile: f64) -> Option<(f64, Within)> {
    if line.slope == 0.0 || !quantile.is_finite() {
        return None;
    }
    let q = quantile * quantile;
    let a = line.slope * line.slope - q * doubt.slope;
    let b = line.level * line.slope - q * doubt.both;
    let c = line.level * line.level - q * doubt.level;
    let root = b * b - a * c;
    let within = if a == 0.0 || root < 0.0 {
        Within::Any
    } else {
        let (one, other) = ((-b - sqrt(root)) / a, (-b + sqrt(root)) / a);
        if a > 0.0 { Within::Between(one, other) } else { Within::Outside(other, one) }
    };
    Some((-line.level / line.slope, within))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: level 10, slope −2, errors 1 and 0.25 without covariance, quantile 2: (10 − 2t)² = 4 + 0.25 t² at
    /// t = (20 ± √40)/3.75… that is (40 ± √(1600 − 4·3.75·96))/7.5.
    #[test]
    fn a_sure_slope_has_two_ends() {
        let line = Line { level: 10.0, slope: -2.0 };
        let doubt = Doubt { level: 1.0, both: 0.0, slope: 0.0625 };
        let (year, within) = fieller(line, doubt, 2.0).unwrap();
        let half = sqrt(1600.0 - 1440.0) / 7.5;
        let Within::Between(low, high) = within else { panic!("{within:?}") };
        assert!((year - 5.0).abs() < 1e-12);
        assert!((low - (40.0 / 7.5 - half)).abs() < 1e-12 && (high - (40.0 / 7.5 + half)).abs() < 1e-12);
    }

    #[test]
    fn a_slope_in_doubt_has_no_end() {
        let sure_level = Doubt { level: 1.0, both: 0.0, slope: 4.0 };
        let found = fieller(Line { level: 10.0, slope: -2.0 }, sure_level, 2.0).unwrap();
        assert!(matches!(found.1, Within::Outside(low, high) if low < 0.0 && high > 0.0), "{found:?}");
        let nothing_sure = Doubt { level: 100.0, both: 0.0, slope: 4.0 };
        assert_eq!(fieller(Line { level: 10.0, slope: -2.0 }, nothing_sure, 2.0).unwrap().1, Within::Any);
        assert_eq!(fieller(Line { level: 10.0, slope: 0.0 }, nothing_sure, 2.0), None);
    }
}
