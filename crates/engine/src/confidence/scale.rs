//! Student's t on a scale: g(p̂) ± t(df) · SE · g′(p̂), taken back to the figure (the delta method).

use super::{NoBound, Tail};
use crate::num::math::{exp, expit, ln, logit};
use crate::num::quantile::t_quantile;

/// The scale on which a figure is given its t interval.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Scale {
    /// The figure itself.
    Plain,
    /// Its logarithm, for figures that can't fall below zero.
    Log,
    /// Its log odds, for shares.
    Logit,
}

impl Scale {
    /// The figure on the scale.
    pub fn on(self, figure: f64) -> f64 {
        match self {
            Self::Plain => figure,
            Self::Log => ln(figure),
            Self::Logit => logit(figure),
        }
    }

    /// The figure back from the scale.
    pub fn back(self, scaled: f64) -> f64 {
        match self {
            Self::Plain => scaled,
            Self::Log => exp(scaled),
            Self::Logit => expit(scaled),
        }
    }

    /// How much of the figure one step of the scale is, at this figure: 1/g′.
    pub fn step(self, figure: f64) -> f64 {
        match self {
            Self::Plain => 1.0,
            Self::Log => figure,
            Self::Logit => figure * (1.0 - figure),
        }
    }
}

pub(super) fn ends(scale: Scale, value: f64, se: f64, df: f64, tail: Tail) -> Result<(f64, f64), NoBound> {
    if scale == Scale::Logit && value >= 1.0 {
        return Err(if value > 1.0 { NoBound::MayPassWhole } else { NoBound::FullCover });
    }
    let reach = t_quantile(1.0 - tail.probability(), df) * se / scale.step(value);
    let at = scale.on(value);
    Ok((scale.back(at - reach), scale.back(at + reach)))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// R reference output, `t.test` on all 20 values of Student's sleep data (1908): mean 1.54, t = 3.413, df 19,
    /// 95 % interval 0.5955845 to 2.4844155.
    #[test]
    fn sleep() {
        let (low, high) =
            ends(Scale::Plain, 1.54, 1.54 / 3.412_964_9, 19.0, Tail::of_interval(0.95)).unwrap();
        assert!((low - 0.595_584_5).abs() < 1e-6 && (high - 2.484_415_5).abs() < 1e-6, "{low} {high}");
    }

    /// By hand: p = 0.2, SE = 0.04, df 9, t(0.95) = 1.833113; logit 0.2 = −1.386294; reach 1.833113 · 0.25 = 0.458278;
    /// ends 1/(1 + e^1.844573) = 0.136511 and 1/(1 + e^0.928016) = 0.283327.
    #[test]
    fn twenty_per_cent() {
        let (low, high) = ends(Scale::Logit, 0.2, 0.04, 9.0, Tail::of_interval(0.90)).unwrap();
        assert!((low - 0.136_511).abs() < 2e-6 && (high - 0.283_327).abs() < 2e-6, "{low} {high}");
    }

    /// By hand: a mean height of 0.50 m, SE 0.10, df 9, t(0.95) = 1.833113: 0.5 · e^∓0.366623 = 0.346536 and 0.721427.
    #[test]
    fn half_a_metre() {
        let (low, high) = ends(Scale::Log, 0.5, 0.1, 9.0, Tail::of_interval(0.90)).unwrap();
        assert!((low - 0.346_536).abs() < 2e-6 && (high - 0.721_427).abs() < 2e-6, "{low} {high}");
    }

    #[test]
    fn where_the_logit_has_no_value() {
        let at = |value| ends(Scale::Logit, value, 0.1, 4.0, Tail::of_interval(0.9));
        assert_eq!(at(1.0), Err(NoBound::FullCover));
        assert_eq!(at(1.2), Err(NoBound::MayPassWhole));
    }
}
