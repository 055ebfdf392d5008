//! Degrees of freedom that reckon with how a small cover's own error wavers.

use super::Scale;

/// Degrees of freedom of a standard error once it stands on a scale: df′ = 2 / (2/df + u²), but 1 at least.
///
/// Where little was met, the standard error on the log or logit scale hangs on the figure itself: lines that met a
/// clump too few give a low figure, and its error there is as unsure as the figure. With the variance between lines
/// in proportion to p on the logarithm, and to p (1 − p) on the logit, the squared error on the scale is in
/// proportion to 1/p and to 1/(p (1 − p)); so it varies by the chi-square's 2/df and by u² more, where u = SE/p̂ on
/// the logarithm and u = SE |1 − 2p̂| / (p̂ (1 − p̂)) on the logit. A t interval takes the degrees of freedom of a
/// chi-square that varies so much.
///
/// # Units
/// degrees of freedom; value and error in one unit
/// # Range
/// at most `df`; on the plain scale `df` itself. With many intercepts u vanishes and df′ is `df`
/// # Source
/// matching the variance of a variance: Satterthwaite 1946, Biometrics Bulletin 2:110–114. Variance in proportion to
/// p: lines as a compound Poisson process of clumps (exact where clumps are alike, and where their lengths are
/// exponential). The combination is ours, chosen by simulation: docs/intervals.md
/// # Example
/// Eight lines, 3 ± 1 %: u = 0.01 · 0.94 / 0.0291 = 0.323024; 2 / (2/7 + 0.104345) = 5.127432.
/// ```
/// use tautline_engine::confidence::{Scale, effective_df};
/// assert!((effective_df(Scale::Logit, 0.03, 0.01, 7.0) - 5.127_432).abs() < 1e-6);
/// assert_eq!(effective_df(Scale::Plain, 0.03, 0.01, 7.0), 7.0);
/// ```
pub fn effective_df(scale: Scale, value: f64, se: f64, df: f64) -> f64 {
    let u = match scale {
        Scale::Plain => return df,
        Scale::Log => se / value,
        Scale::Logit => se * (1.0 - 2.0 * value) / (value * (1.0 - value)),
    };
    (2.0 / (2.0 / df + u * u)).max(df.min(1.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: at one half the logit's error doesn't hang on the figure; on the logarithm u = 0.5 and
    /// 2 / (2/4 + 0.25) = 2.666667.
    #[test]
    fn it_is_lost_where_the_figure_is_small_beside_its_error() {
        assert!((effective_df(Scale::Logit, 0.5, 0.2, 4.0) - 4.0).abs() < 1e-12);
        assert!((effective_df(Scale::Log, 0.5, 0.25, 4.0) - 2.666_667).abs() < 1e-6);
        let low = effective_df(Scale::Logit, 0.1, 0.05, 4.0);
        assert!((effective_df(Scale::Logit, 0.9, 0.05, 4.0) - low).abs() < 1e-12);
        assert!((effective_df(Scale::Log, 0.1, 0.2, 4.0) - 1.0).abs() < 1e-12, "never less than one");
    }
}
