//! Lines bunched in plots: the plot is the unit, and bunched lines say less than scattered ones.

use super::{Estimate, EstimateError, Line, Method, NoError, SamplingError, check, odd_length, of_lines};
use crate::num::{
    count,
    sum::{self, sum},
};

/// Cover from lines bunched in plots.
///
/// Each plot's intercepted length and length of line are added up; the plots then stand as lines do in
/// [`ratio`](super::ratio) (or [`mean`](super::mean()) where all plots hold equally many lines of one length).
/// Only the variation between plots enters the error, which covers both stages whatever happened within them.
///
/// # Units
/// A share; lengths cancel.
///
/// # Range
/// One plot or more; with one plot the error is unknown. `population` counts the plots that could have been drawn.
///
/// # Errors
/// No plots, a plot without lines, a line that can't be reckoned with, a population smaller than the sample.
///
/// # Source
/// Cochran, W.G. 1977. Sampling Techniques, 3rd ed., §9A.1 and §11.9 (ultimate clusters: Hansen, Hurwitz & Madow 1953).
///
/// # Example
/// Two plots of two 10 m lines (invented): 10 and 30 % in one, 50 and 70 % in the other.
/// ```
/// use tautline_engine::estimate::{Line, plots};
/// let cover = plots(
///     &[[Line::new(1.0, 10.0), Line::new(3.0, 10.0)], [Line::new(5.0, 10.0), Line::new(7.0, 10.0)]],
///     None,
/// )?;
/// assert!((cover.value - 0.4).abs() < 1e-15);
/// assert_eq!((cover.lines, cover.units), (4, 2));
/// # Ok::<(), tautline_engine::estimate::EstimateError>(())
/// ```
pub fn plots<P: AsRef<[Line]>>(plots: &[P], population: Option<u64>) -> Result<Estimate, EstimateError> {
    let lines = all_lines(plots)?;
    let totals = plot_totals(plots);
    let alike = odd_length(&lines).is_none() && odd_length(&totals).is_none();
    let estimate = of_lines(&totals, population)?;
    Ok(Estimate {
        error: match estimate.error {
            SamplingError::Unknown(_) => SamplingError::Unknown(NoError::OnePlot),
            known @ SamplingError::Known { .. } => known,
        },
        lines: lines.len(),
        method: if alike { Method::MeanOfPlots } else { Method::RatioOfPlots },
        ..estimate
    })
}

/// Each plot as one long line.
pub(crate) fn plot_totals<P: AsRef<[Line]>>(plots: &[P]) -> Vec<Line> {
    let total = |plot: &P, of: fn(&Line) -> f64| sum(plot.as_ref().iter().map(of));
    plots
        .iter()
        .map(|plot| Line::new(total(plot, |line| line.intercept), total(plot, |line| line.length)))
        .collect()
}

/// How many scattered lines the bunched ones are worth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EffectiveLines {
    /// Lines read.
    pub lines: usize,
    /// The number of scattered lines that would have given the same precision.
    pub effective: f64,
    /// How alike lines of one plot are: the share of the variance that lies between plots; as estimated, so
    /// a little below zero where plots look more alike than chance.
    pub intraclass: f64,
    /// Lines per plot, allowing for unequal numbers.
    pub lines_per_plot: f64,
}

/// How many scattered lines the bunched ones are worth.
///
/// n / (1 + (m₀ − 1) ρ), where ρ = (B − W) / (B + (m₀ − 1) W) from the mean squares between and within plots of
/// an analysis of variance of the lines' shares, and m₀ = (n − Σ m²/n) / (k − 1). For the effective number ρ is
/// held at zero or above, so bunching is never said to help.
///
/// # Units
/// Lines.
///
/// # Range
/// Two plots or more, of which one at least has two lines or more, and lines that aren't all alike; `None` otherwise.
///
/// # Errors
/// No plots, a plot without lines, a line that can't be reckoned with.
///
/// # Source
/// Kish, L. 1965. Survey Sampling, §5.4 (design effect); Shrout & Fleiss 1979 (ICC(1,1)); m₀: Snedecor & Cochran
/// 1967, §10.16.
///
/// # Example
/// Lines that only repeat their plot (invented) count once each plot:
/// ```
/// use tautline_engine::estimate::{Line, effective_lines};
/// let (thin, thick) = ([Line::new(1.0, 10.0); 3], [Line::new(5.0, 10.0); 3]);
/// let worth = effective_lines(&[thin, thick])?.expect("the plots differ");
/// assert_eq!(worth.effective, 2.0);
/// # Ok::<(), tautline_engine::estimate::EstimateError>(())
/// ```
pub fn effective_lines<P: AsRef<[Line]>>(plots: &[P]) -> Result<Option<EffectiveLines>, EstimateError> {
    let lines = all_lines(plots)?;
    let (n, k) = (count(lines.len()), count(plots.len()));
    if plots.len() < 2 || lines.len() == plots.len() {
        return Ok(None);
    }
    let shares: Vec<Vec<f64>> =
        plots.iter().map(|plot| plot.as_ref().iter().map(|line| line.share()).collect()).collect();
    let grand = sum(shares.iter().flatten().copied()) / n;
    let square = |x: f64| x * x;
    let between =
        sum(shares.iter().map(|plot| count(plot.len()) * square(sum::mean(plot) - grand))) / (k - 1.0);
    let within = sum(shares.iter().map(|plot| {
        let centre = sum::mean(plot);
        sum(plot.iter().map(|share| square(share - centre)))
    })) / (n - k);
    let lines_per_plot = (n - sum(shares.iter().map(|plot| square(count(plot.len())))) / n) / (k - 1.0);
    let spread = between + (lines_per_plot - 1.0) * within;
    if spread <= 0.0 {
        return Ok(None);
    }
    let intraclass = (between - within) / spread;
    let effective = n / (1.0 + (lines_per_plot - 1.0) * intraclass.max(0.0));
    Ok(Some(EffectiveLines { lines: lines.len(), effective, intraclass, lines_per_plot }))
}

fn all_lines<P: AsRef<[Line]>>(plots: &[P]) -> Result<Vec<Line>, EstimateError> {
    if let Some(plot) = plots.iter().position(|plot| plot.as_ref().is_empty()) {
        return Err(EstimateError::EmptyPlot { plot });
    }
    let lines: Vec<Line> = plots.iter().flat_map(|plot| plot.as_ref().iter().copied()).collect();
    check(&lines)?;
    Ok(lines)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_plot_has_no_error_however_many_lines() {
        let cover = plots(&[[Line::new(1.0, 10.0), Line::new(2.0, 10.0)]], None).unwrap();
        assert_eq!(cover.error, SamplingError::Unknown(NoError::OnePlot));
    }

    #[test]
    fn plots_of_unlike_numbers_go_by_ratio() {
        let plot = |n: usize| vec![Line::new(2.0, 10.0); n];
        assert_eq!(plots(&[plot(2), plot(3)], None).unwrap().method, Method::RatioOfPlots);
        assert_eq!(plots(&[plot(3), plot(3)], None).unwrap().method, Method::MeanOfPlots);
    }

    #[test]
    fn an_empty_plot_is_named() {
        let refused = EstimateError::EmptyPlot { plot: 1 };
        assert_eq!(plots(&[vec![Line::new(1.0, 10.0)], vec![]], None), Err(refused));
    }

    #[test]
    fn worth_is_unknown_without_repeats_or_spread() {
        let single = [[Line::new(1.0, 10.0)], [Line::new(2.0, 10.0)]];
        assert_eq!(effective_lines(&single), Ok(None));
        let alike = [[Line::new(1.0, 10.0); 2]; 2];
        assert_eq!(effective_lines(&alike), Ok(None));
    }
}
