//! Student's t on the figure itself: p̂ ± t(df) · SE.

use super::Tail;
use crate::num::quantile::t_quantile;

pub(super) fn ends(value: f64, se: f64, df: f64, tail: Tail) -> (f64, f64) {
    let reach = t_quantile(1.0 - tail.probability(), df) * se;
    (value - reach, value + reach)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// R reference output, `t.test` on all 20 values of Student's sleep data (1908): mean 1.54, t = 3.413, df 19,
    /// 95 % interval 0.5955845 to 2.4844155.
    #[test]
    fn sleep() {
        let (low, high) = ends(1.54, 1.54 / 3.412_964_9, 19.0, Tail::of_interval(0.95));
        assert!((low - 0.595_584_5).abs() < 1e-6 && (high - 2.484_415_5).abs() < 1e-6, "{low} {high}");
    }
}
