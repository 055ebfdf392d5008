//! Bias-corrected and accelerated bootstrap: lines (or plots) drawn again with replacement, within their strata.

use super::exact::Chances;
use super::{NoBound, Tail};
use crate::estimate::Line;
use crate::num::quantile::{normal_cdf, normal_quantile};
use crate::num::{count, sum::sum};
use crate::seed::{Random, Seed};

/// The units of one stratum and its weight; one group of weight 1 where there are no strata.
#[derive(Clone, Debug, PartialEq)]
pub struct Group {
    /// Share of the area.
    pub weight: f64,
    /// Lines, or plots as one long line each.
    pub units: Vec<Line>,
}

/// The figure of a sample drawn again many times, ready to give limits.
#[derive(Clone, Debug)]
pub struct Resampled {
    draws: Draws,
    observed: f64,
    bias: f64,
    acceleration: f64,
}

/// What the samples drawn again come to.
#[derive(Clone, Debug)]
enum Draws {
    /// The figures of those that were drawn, sorted.
    Some(Vec<f64>),
    /// The chances of all there are.
    All(Chances),
}

/// Σ weight · Σy/Σx, each unit of each group taken so many times.
///
/// Always added up in the units' own order: a draw that holds every unit once is the sample itself to the last bit,
/// and counts as a tie. Added up as drawn it would fall above or below by rounding, and with few lines such draws are
/// many: one in eleven of four lines.
fn figure(groups: &[Group], times: impl Fn(usize, usize) -> f64) -> f64 {
    sum(groups.iter().enumerate().map(|(g, group)| {
        let total = |of: fn(&Line) -> f64| {
            sum(group.units.iter().enumerate().map(|(unit, line)| times(g, unit) * of(line)))
        };
        group.weight * total(|line| line.intercept) / total(|line| line.length)
    }))
}

/// How often each of n units comes up in n draws with replacement.
fn times_drawn(n: usize, random: &mut Random) -> Vec<f64> {
    let mut times = vec![0.0; n];
    for _ in 0..n {
        let pick = usize::try_from(random.below(n as u64)).expect("below the number of units");
        times[pick] += 1.0;
    }
    times
}

impl Resampled {
    /// The limits of the units' own bootstrap: of all draws there are where they can be reckoned with, so without any
    /// noise; else of so many, drawn from a seed that the units give. The order of the units doesn't matter.
    ///
    /// All draws: one group, of at most 50 units or few different ones. What that costs in exactness is less than a
    /// thousandth of a standard error, and nothing with up to seven units.
    ///
    /// # Errors
    /// as [`Resampled::draw`]
    /// # Source
    /// Efron 1987, as for [`Resampled::draw`]; listing every draw: Fisher and Hall 1991, Statistics & Probability
    /// Letters 11:481–485 (from memory); the sums on a lattice are plain convolution
    /// # Example
    /// Three lines of 1, 2 and 6 in 10 (invented): 27 draws, the least 0.1, the most 0.6, each with a chance of 1/27.
    /// ```
    /// use tautline_engine::confidence::{Tail, bootstrap::{Group, Resampled}};
    /// use tautline_engine::estimate::Line;
    /// let units = [1.0, 2.0, 6.0].map(|y| Line::new(y, 10.0)).to_vec();
    /// let all = Resampled::of(&[Group { weight: 1.0, units }], 10_000).unwrap();
    /// assert_eq!(all.ends(Tail::of_interval(0.999)), (0.1, 0.6));
    /// ```
    pub fn of(groups: &[Group], resamples: usize) -> Result<Self, NoBound> {
        check(groups)?;
        let mut groups = groups.to_vec();
        for group in &mut groups {
            group
                .units
                .sort_by(|a, b| a.length.total_cmp(&b.length).then(a.intercept.total_cmp(&b.intercept)));
        }
        let observed = figure(&groups, |_, _| 1.0);
        if let [group] = groups.as_slice()
            && let Some(chances) = Chances::of(&group.units)
        {
            let mut shares = group.units.iter().map(|line| line.share());
            let first = shares.next().unwrap_or_default();
            if shares.all(|share| share.to_bits() == first.to_bits()) {
                return Err(without_spread(observed));
            }
            let bias = bias(chances.below(observed));
            let acceleration = acceleration(&groups);
            return Ok(Self { draws: Draws::All(chances), observed, bias, acceleration });
        }
        let units = || groups.iter().flat_map(|group| &group.units);
        let data: Vec<u64> =
            units().flat_map(|line| [line.intercept.to_bits(), line.length.to_bits()]).collect();
        let mut random = Seed::from_purpose("bootstrap of lines", &data).stream();
        Self::draw(&groups, resamples, &mut random)
    }

    /// Draws the units of every group again, `resamples` times.
    ///
    /// # Errors
    /// [`NoBound::TooFewUnits`] with fewer than three units in a group; [`NoBound::NoSpread`] or
    /// [`NoBound::NothingFound`] where every draw gives the same figure
    /// # Source
    /// Efron 1987, Journal of the American Statistical Association 82:171–185: bias correction eq. 2.8 (ties counted
    /// half), acceleration by the jackknife (Efron and Tibshirani 1993, eq. 14.15); several strata: Davison and
    /// Hinkley 1997, §5.3.2, by leaving out one unit of one stratum at a time
    /// # Example
    /// ```
    /// use tautline_engine::confidence::{Tail, bootstrap::{Group, Resampled}};
    /// use tautline_engine::{estimate::Line, seed::Seed};
    /// let units = [8.0, 12.0, 15.0, 21.0, 9.0, 14.0].map(|y| Line::new(y, 100.0)).to_vec();
    /// let mut random = Seed::from_purpose("example", &[]).stream();
    /// let draws = Resampled::draw(&[Group { weight: 1.0, units }], 2_000, &mut random).unwrap();
    /// let (low, high) = draws.ends(Tail::of_interval(0.9));
    /// assert!(low < 0.1317 && 0.1317 < high);
    /// ```
    pub fn draw(groups: &[Group], resamples: usize, random: &mut Random) -> Result<Self, NoBound> {
        check(groups)?;
        let mut drawn: Vec<f64> = Vec::with_capacity(resamples);
        for _ in 0..resamples {
            let times = groups.iter().map(|group| times_drawn(group.units.len(), random));
            let times: Vec<Vec<f64>> = times.collect();
            drawn.push(figure(groups, |g, unit| times[g][unit]));
        }
        Self::from_figures(groups, drawn)
    }

    /// The same from figures of resamples that were drawn elsewhere.
    ///
    /// # Errors
    /// as [`Resampled::draw`]
    pub fn from_figures(groups: &[Group], mut drawn: Vec<f64>) -> Result<Self, NoBound> {
        check(groups)?;
        drawn.sort_by(f64::total_cmp);
        let observed = figure(groups, |_, _| 1.0);
        let (Some(&least), Some(&most)) = (drawn.first(), drawn.last()) else {
            return Err(NoBound::TooFewUnits { units: 0 });
        };
        if least >= most {
            return Err(without_spread(observed));
        }
        let below = drawn.partition_point(|&f| f < observed);
        let up_to = drawn.partition_point(|&f| f <= observed);
        let all = count(drawn.len());
        // where every draw lies on one side, as if half of one more lay on the other
        let share = ((count(below) + count(up_to)) / (2.0 * all)).clamp(0.5 / all, 1.0 - 0.5 / all);
        let acceleration = acceleration(groups);
        Ok(Self { draws: Draws::Some(drawn), observed, bias: bias(share), acceleration })
    }

    /// The two limits with `tail` beyond each.
    pub fn ends(&self, tail: Tail) -> (f64, f64) {
        (self.limit(tail.probability()), self.limit(1.0 - tail.probability()))
    }

    /// The quantile of the draws at the corrected probability; between two drawn ones in proportion (Hyndman and Fan
    /// 1996, type 7).
    fn limit(&self, probability: f64) -> f64 {
        let z = self.bias + normal_quantile(probability);
        let stretch = 1.0 - self.acceleration * z;
        // beyond the point where the correction turns round, its limit
        let corrected = if stretch > 0.0 {
            normal_cdf(self.bias + z / stretch).clamp(0.0, 1.0)
        } else {
            f64::from(u8::from(z > 0.0))
        };
        let sorted = match &self.draws {
            Draws::All(chances) => return chances.quantile(corrected, self.observed),
            Draws::Some(sorted) => sorted,
        };
        let at = corrected * count(sorted.len() - 1);
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "between 0 and the number of draws"
        )]
        let first = at.floor() as usize;
        let (low, high) = (sorted[first], sorted[(first + 1).min(sorted.len() - 1)]);
        low + (at - at.floor()) * (high - low)
    }
}

/// How far the observed figure lies from the middle of the draws, as a normal quantile; `share` of them lie below it.
fn bias(share: f64) -> f64 {
    normal_quantile(share.clamp(f64::MIN_POSITIVE, 1.0 - f64::EPSILON))
}

fn without_spread(observed: f64) -> NoBound {
    if observed == 0.0 { NoBound::NothingFound } else { NoBound::NoSpread }
}

fn check(groups: &[Group]) -> Result<(), NoBound> {
    let whole = sum(groups.iter().map(|group| group.weight));
    if !groups.is_empty() && (whole - 1.0).abs() > 1e-9 {
        return Err(NoBound::WeightsNotWhole { whole });
    }
    match groups.iter().map(|group| group.units.len()).min() {
        Some(units) if units >= 3 => Ok(()),
        fewest => Err(NoBound::TooFewUnits { units: fewest.unwrap_or(0) }),
    }
}

/// Skewness of the leave-one-out figures: Σ d³ / (6 (Σ d²)^1.5) with d the mean figure less each.
fn acceleration(groups: &[Group]) -> f64 {
    let (mut cubes, mut squares) = (0.0, 0.0);
    for (left_out, group) in groups.iter().enumerate() {
        let without = |unit: usize| figure(groups, |g, u| if g == left_out && u == unit { 0.0 } else { 1.0 });
        let figures: Vec<f64> = (0..group.units.len()).map(without).collect();
        let mean = sum(figures.iter().copied()) / count(figures.len());
        // strata of other sizes: influence values are (n − 1) d, weighted by 1/n as a whole
        let scale = if groups.len() == 1 { 1.0 } else { (count(figures.len()) - 1.0) / count(figures.len()) };
        for figure in figures {
            let d = (mean - figure) * scale;
            cubes += d * d * d;
            squares += d * d;
        }
    }
    if squares > 0.0 { cubes / (6.0 * squares * crate::num::math::sqrt(squares)) } else { 0.0 }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::seed::Seed;

    fn group(values: &[f64]) -> Group {
        Group { weight: 1.0, units: values.iter().map(|&y| Line::new(y, 1.0)).collect() }
    }

    #[test]
    fn a_bootstrap_needs_units_and_spread() {
        let mut random = Seed::from_purpose("test", &[]).stream();
        let mut draw = |values: &[f64]| Resampled::draw(&[group(values)], 200, &mut random).err();
        assert_eq!(draw(&[0.1, 0.2]), Some(NoBound::TooFewUnits { units: 2 }));
        assert_eq!(draw(&[0.2, 0.2, 0.2]), Some(NoBound::NoSpread));
        assert_eq!(draw(&[0.0, 0.0, 0.0]), Some(NoBound::NothingFound));
    }

    /// Whatever the draws, there are limits.
    #[test]
    fn draws_on_one_side_give_limits() {
        let groups = [group(&[0.1, 0.2, 0.9])];
        for draws in [vec![0.1, 0.2, 0.3], vec![0.5, 0.6, 0.7]] {
            let (low, high) = Resampled::from_figures(&groups, draws).unwrap().ends(Tail::of_interval(0.9));
            assert!(low.is_finite() && high.is_finite(), "{low} {high}");
        }
    }

    #[test]
    fn weights_add_up_to_one() {
        let half = Group { weight: 0.5, ..group(&[0.1, 0.2, 0.3]) };
        assert_eq!(Resampled::of(&[half], 10).err(), Some(NoBound::WeightsNotWhole { whole: 0.5 }));
    }

    #[test]
    fn the_order_of_lines_moves_no_bit() {
        let values = [4.4, 6.1, 9.8, 2.3, 0.0, 7.7, 3.1, 5.2, 8.9];
        for lengths in [[30.0; 9], [30.0, 50.0, 20.0, 30.0, 50.0, 20.0, 30.0, 50.0, 20.0]] {
            let units: Vec<Line> = values.iter().zip(lengths).map(|(&y, x)| Line::new(y, x)).collect();
            let ends = |units: Vec<Line>| {
                let drawn = Resampled::of(&[Group { weight: 1.0, units }], 100).unwrap();
                let (low, high) = drawn.ends(Tail::of_interval(0.9));
                (low.to_bits(), high.to_bits())
            };
            assert_eq!(ends(units.clone()), ends(units.into_iter().rev().collect()));
        }
    }

    /// Draws that hold every line once are ties whatever the unit of length.
    #[test]
    fn the_unit_of_length_moves_no_limit() {
        let limits = |values: &[f64], scale: f64| {
            let units = values.iter().map(|y| Line::new(y * scale, 30.0 * scale)).collect();
            let mut random = Seed::from_purpose("test", &[]).stream();
            let drawn = Resampled::draw(&[Group { weight: 1.0, units }], 10_000, &mut random).unwrap();
            drawn.ends(Tail::of_interval(0.9))
        };
        let metres = limits(&[4.37, 6.11, 9.83, 2.29], 1.0);
        for scale in [1.0 / 0.3048, 0.3048, 100.0, 1e9] {
            let other = limits(&[4.37, 6.11, 9.83, 2.29], scale);
            assert!((metres.0 - other.0).abs() < 1e-12 && (metres.1 - other.1).abs() < 1e-12, "{scale}");
        }
    }

    /// For a mean the acceleration is a sixth of the sample's skewness over √n: here Σd³ = 0 by symmetry.
    #[test]
    fn a_symmetric_sample_has_no_acceleration() {
        assert!(acceleration(&[group(&[1.0, 2.0, 3.0, 4.0, 5.0])]).abs() < 1e-12);
        assert!(acceleration(&[group(&[1.0, 1.0, 1.0, 9.0])]) > 0.0);
    }

    /// By hand, Davison and Hinkley 1997, §5.3.2, with areas of one half: the first stratum has Σd³ = 6 and Σd² = 6 of
    /// 3, the second 24 and 12 of 4: (6/27 + 24/64)/8 / (6 ((6/9 + 12/16)/4)^1.5) = 0.059032.
    #[test]
    fn strata_weigh_in_the_acceleration() {
        let half = |values| Group { weight: 0.5, ..group(values) };
        let found = acceleration(&[half(&[0.0, 0.0, 3.0]), half(&[0.0, 0.0, 0.0, 4.0])]);
        assert!((found - 0.059_032).abs() < 1e-6, "{found}");
    }
}
