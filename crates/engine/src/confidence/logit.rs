//! Student's t on the logit: logit p̂ ± t(df) · SE / (p̂ (1 − p̂)), taken back to a share.

use super::{NoBound, Tail};
use crate::num::math::{expit, logit};
use crate::num::quantile::t_quantile;

pub(super) fn ends(value: f64, se: f64, df: f64, tail: Tail) -> Result<(f64, f64), NoBound> {
    if value > 1.0 {
        return Err(NoBound::MayPassWhole);
    }
    if value >= 1.0 {
        return Err(NoBound::FullCover);
    }
    let reach = t_quantile(1.0 - tail.probability(), df) * se / (value * (1.0 - value));
    Ok((expit(logit(value) - reach), expit(logit(value) + reach)))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: p = 0.2, SE = 0.04, df 9, t(0.95) = 1.833113; logit 0.2 = −1.386294; reach 1.833113 · 0.25 = 0.458278;
    /// ends 1/(1 + e^1.844573) = 0.136511 and 1/(1 + e^0.928016) = 0.283327.
    #[test]
    fn twenty_per_cent() {
        let (low, high) = ends(0.2, 0.04, 9.0, Tail::of_interval(0.90)).unwrap();
        assert!((low - 0.136_511).abs() < 2e-6 && (high - 0.283_327).abs() < 2e-6, "{low} {high}");
    }

    #[test]
    fn where_the_logit_has_no_value() {
        assert_eq!(ends(1.0, 0.1, 4.0, Tail::of_interval(0.9)), Err(NoBound::FullCover));
        assert_eq!(ends(1.2, 0.1, 4.0, Tail::of_interval(0.9)), Err(NoBound::MayPassWhole));
    }
}
