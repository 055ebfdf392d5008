//! Variance of a mean in two stages, plots and then lines or belts within plots.

use crate::num::count;

/// A sample in two stages with equal numbers, as its published variance formula needs it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TwoStages {
    /// Variance between plot means.
    pub between: f64,
    /// Variance between units within a plot.
    pub within: f64,
    /// Plots drawn, n.
    pub plots: usize,
    /// Units drawn in each plot, m.
    pub per_plot: usize,
    /// Share of all plots that was drawn, f₁; 0 where the population is as good as endless.
    pub drawn_plots: f64,
    /// Share of a plot's units that was drawn, f₂.
    pub drawn_units: f64,
}

impl TwoStages {
    /// Variance of the mean per unit, V = (1 − f₁) S₁²/n + (1 − f₂) S₂²/(m n).
    ///
    /// # Units
    /// The square of the variable's unit.
    ///
    /// # Range
    /// One plot and one unit or more. It takes the true variances; a sample's between-plot variance holds the
    /// within-plot part already.
    ///
    /// # Source
    /// Cochran, W.G. 1977. Sampling Techniques, 3rd ed., ch. 10 (the source of the
    /// example quotes it as eq. 10.14).
    ///
    /// # Example
    /// A shrub density survey of public record, 15 of 20 plots and 3 of 607 belts each, printed as 0.985:
    /// ```
    /// use tautline_engine::estimate::TwoStages;
    /// let variance = TwoStages {
    ///     between: 33.54,
    ///     within: 19.30,
    ///     plots: 15,
    ///     per_plot: 3,
    ///     drawn_plots: 15.0 / 20.0,
    ///     drawn_units: 3.0 / 607.0,
    /// }
    /// .variance_of_mean();
    /// assert!((variance - 0.98577).abs() < 5e-6);
    /// ```
    pub fn variance_of_mean(&self) -> f64 {
        let (n, m) = (count(self.plots), count(self.per_plot));
        (1.0 - self.drawn_plots) * self.between / n + (1.0 - self.drawn_units) * self.within / (m * n)
    }
}
