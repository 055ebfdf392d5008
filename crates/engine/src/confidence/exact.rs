//! Every way of drawing n of n units again, with its probability: a bootstrap without drawing, so without its noise.
//!
//! Few units, or few different ones, are listed draw by draw. More of them are added up one after another on a lattice:
//! each value is split between the two points beside it so that its own size is kept, and n steps give the chance of
//! every sum. The figure of lines of unequal length, Σy/Σx, lies at or below r just where Σ(y − r·x) is at most zero,
//! so the same sums answer for it, r by r.
//!
//! What the lattice costs: a step is at most 1/32 of the values' standard deviation, and splitting moves no figure but
//! smears it by at most half a step for each value, 1/64 of a standard error for their mean. That widens the standard
//! error by one part in eight thousand at most. The limits of 10 000 draws are off by 1/50 of it at random.

use crate::estimate::Line;
use crate::num::count;
use crate::num::math::sqrt;
use crate::num::quantile::normal_quantile;
use crate::num::sum::sum;

/// More ways of drawing than these are not listed one by one.
const MOST_LISTED: u64 = 2_000;
/// Steps of the lattice within one standard deviation.
const STEPS_IN_DEVIATION: f64 = 32.0;
/// Above this many units the steps cost more than drawing.
const MOST_UNITS: usize = 50;

/// The chances of all draws.
#[derive(Clone, Debug)]
pub(super) enum Chances {
    /// Each figure with its probability, rising.
    Listed(Vec<(f64, f64)>),
    /// Means of values.
    Mean(Sums),
    /// Ratios of sums.
    Ratio(Vec<Line>),
}

impl Chances {
    /// The chances of drawing these units, sorted, again; `None` where they are too many.
    pub(super) fn of(units: &[Line]) -> Option<Self> {
        let mut different: Vec<(Line, u32)> = Vec::new();
        for unit in units {
            match different.last_mut() {
                Some((last, times)) if last == unit => *times += 1,
                _ => different.push((*unit, 1)),
            }
        }
        if ways(units.len(), different.len()) <= MOST_LISTED {
            return Some(Self::Listed(listed(units.len(), &different)));
        }
        if units.len() > MOST_UNITS {
            return None;
        }
        let of_one_length = units.iter().all(|unit| unit.length.to_bits() == units[0].length.to_bits());
        if of_one_length {
            let shares: Vec<f64> = units.iter().map(|unit| unit.intercept / unit.length).collect();
            return Some(Self::Mean(Sums::of(&shares)));
        }
        Some(Self::Ratio(units.to_vec()))
    }

    /// Probability of a figure below this one, and half of that of the same.
    pub(super) fn below(&self, figure: f64) -> f64 {
        match self {
            Self::Listed(figures) => {
                let tie = 1e-12 * figure.abs();
                let of = |(value, chance): &(f64, f64)| {
                    if (value - figure).abs() <= tie {
                        chance / 2.0
                    } else if *value < figure {
                        *chance
                    } else {
                        0.0
                    }
                };
                sum(figures.iter().map(of))
            }
            Self::Mean(sums) => sums.below(figure),
            Self::Ratio(units) => {
                let differences: Vec<f64> =
                    units.iter().map(|unit| unit.intercept - figure * unit.length).collect();
                Sums::of(&differences).below(0.0)
            }
        }
    }

    /// The figure with this probability below it.
    pub(super) fn quantile(&self, probability: f64, observed: f64) -> f64 {
        match self {
            Self::Listed(figures) => {
                let mut so_far = 0.0;
                let reached = figures.iter().find(|(_, chance)| {
                    so_far += chance;
                    so_far >= probability - 1e-12
                });
                reached.or(figures.last()).map_or(observed, |(value, _)| *value)
            }
            Self::Mean(sums) => sums.quantile(probability),
            Self::Ratio(units) => self.ratio_quantile(units, probability, observed),
        }
    }

    /// On the scale of normal quantiles the chances rise almost in a straight line, so a few secants find the point.
    fn ratio_quantile(&self, units: &[Line], probability: f64, observed: f64) -> f64 {
        let shares = || units.iter().map(|unit| unit.share());
        let (least, most) = (shares().fold(f64::INFINITY, f64::min), shares().fold(0.0, f64::max));
        let inside = |p: f64| p.clamp(1e-15, 1.0 - 1e-15);
        let wanted = normal_quantile(inside(probability));
        let miss = |figure: f64| normal_quantile(inside(self.below(figure))) - wanted;
        let residuals = sum(units.iter().map(|unit| {
            let residual = unit.intercept - observed * unit.length;
            residual * residual
        }));
        let scale = sqrt(residuals) / sum(units.iter().map(|unit| unit.length));
        let (mut before, mut missed_before) = (observed, miss(observed));
        let mut at = (before - missed_before * scale).clamp(least, most);
        for _ in 0..MOST_SECANTS {
            let missed = miss(at);
            let slope = (missed - missed_before) / (at - before);
            if missed.abs() < NEAR_ENOUGH || !(slope > 0.0 && slope.is_finite()) {
                break;
            }
            (before, missed_before) = (at, missed);
            at = (at - missed / slope).clamp(least, most);
        }
        at
    }
}

/// A ratio's limit may miss its place by so many standard errors.
const NEAR_ENOUGH: f64 = 1e-5;
const MOST_SECANTS: usize = 20;

/// In how many ways n draws can fall on so many different units: C(n + k − 1, k − 1), at most one more than are listed.
fn ways(n: usize, different: usize) -> u64 {
    let mut ways = 1_u64;
    for k in 1..different as u64 {
        ways = ways * (n as u64 + k) / k;
        if ways > MOST_LISTED {
            break;
        }
    }
    ways
}

/// Every way of drawing, as one figure with its probability.
fn listed(n: usize, different: &[(Line, u32)]) -> Vec<(f64, f64)> {
    // so far: how often each unit came up, how many draws are left, and the chance of that
    let mut ways: Vec<(Vec<f64>, usize, f64)> = vec![(Vec::new(), n, 1.0)];
    for (place, &(_, copies)) in different.iter().enumerate() {
        let share = f64::from(copies) / count(n);
        let is_last = place + 1 == different.len();
        let mut next = Vec::new();
        for (times, left, chance) in &ways {
            // C(left, drawn) · share^drawn, drawn by drawn
            let mut own = *chance;
            for drawn in 0..=*left {
                if !is_last || drawn == *left {
                    next.push(([&times[..], &[count(drawn)]].concat(), left - drawn, own));
                }
                own *= share * count(left - drawn) / count(drawn + 1);
            }
        }
        ways = next;
    }
    let mut figures: Vec<(f64, f64)> = ways
        .into_iter()
        .map(|(times, _, chance)| {
            let total = |of: fn(&Line) -> f64| {
                sum(times.iter().zip(different).map(|(times, (unit, _))| times * of(unit)))
            };
            (total(|unit| unit.intercept) / total(|unit| unit.length), chance)
        })
        .collect();
    figures.sort_by(|a, b| a.0.total_cmp(&b.0));
    figures
}

/// The chances of the sum of n draws from n values, on a lattice.
#[derive(Clone, Debug)]
pub(super) struct Sums {
    least: f64,
    step: f64,
    n: f64,
    /// Probability below each point of the lattice and half of that of the point itself.
    below: Vec<f64>,
}

impl Sums {
    fn of(values: &[f64]) -> Self {
        let least = values.iter().copied().fold(f64::INFINITY, f64::min);
        let most = values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let n = count(values.len());
        let mean = sum(values.iter().copied()) / n;
        let deviation = sqrt(sum(values.iter().map(|value| (value - mean) * (value - mean))) / n);
        let wanted = (STEPS_IN_DEVIATION * (most - least) / deviation).ceil();
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "the range of n values is at most √(2n) of their standard deviations"
        )]
        let points = if wanted.is_finite() { wanted.max(1.0) as usize } else { 1 };
        let step = if most > least { (most - least) / count(points) } else { 1.0 };
        let single = split(values, least, step, points);
        let mut chances = vec![1.0];
        for _ in values {
            let mut next = vec![0.0; chances.len() + points];
            for &(shift, chance) in &single {
                for (to, from) in next[shift..].iter_mut().zip(&chances) {
                    *to += chance * from;
                }
            }
            chances = next;
        }
        let mut so_far = 0.0;
        for chance in &mut chances {
            let own = *chance;
            *chance = so_far + own / 2.0;
            so_far += own;
        }
        Self { least, step, n, below: chances }
    }

    /// Probability of a mean below this one, points between those of the lattice in proportion.
    fn below(&self, mean: f64) -> f64 {
        let at = (mean - self.least) * self.n / self.step;
        let last = self.below.len() - 1;
        if at <= 0.0 {
            return if at < 0.0 { 0.0 } else { self.below[0] };
        }
        if at >= count(last) {
            return if at > count(last) { 1.0 } else { self.below[last] };
        }
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within the lattice")]
        let point = at.floor() as usize;
        let (low, high) = (self.below[point], self.below[point + 1]);
        low + (at - at.floor()) * (high - low)
    }

    fn quantile(&self, probability: f64) -> f64 {
        let point = self.below.partition_point(|&below| below <= probability);
        let at = match point {
            0 => 0.0,
            _ if point == self.below.len() => count(point - 1),
            _ => {
                let (low, high) = (self.below[point - 1], self.below[point]);
                count(point - 1) + (probability - low) / (high - low)
            }
        };
        self.least + at * self.step / self.n
    }
}

/// The chance of each lattice point in one draw: every value on the two points beside it, in proportion.
fn split(values: &[f64], least: f64, step: f64, points: usize) -> Vec<(usize, f64)> {
    let mut chances = vec![0.0; points + 1];
    let one = 1.0 / count(values.len());
    for value in values {
        let at = ((value - least) / step).clamp(0.0, count(points));
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within the lattice")]
        let point = at.floor() as usize;
        let over = at - at.floor();
        chances[point] += one * (1.0 - over);
        if over > 0.0 {
            chances[point + 1] += one * over;
        }
    }
    chances.into_iter().enumerate().filter(|(_, chance)| *chance > 0.0).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lines(values: &[(f64, f64)]) -> Vec<Line> {
        values.iter().map(|&(y, x)| Line::new(y, x)).collect()
    }

    /// Every one of the n to the n equally likely draws, one by one.
    fn all_draws(units: &[Line]) -> Vec<f64> {
        let n = units.len();
        (0..n.pow(u32::try_from(n).unwrap()))
            .map(|number| {
                let picks = (0..n).scan(number, |rest, _| {
                    let pick = *rest % n;
                    *rest /= n;
                    Some(units[pick])
                });
                let picks: Vec<Line> = picks.collect();
                picks.iter().map(|line| line.intercept).sum::<f64>()
                    / picks.iter().map(|line| line.length).sum::<f64>()
            })
            .collect()
    }

    #[test]
    fn what_is_listed_is_what_every_draw_gives() {
        for units in [
            lines(&[(1.0, 10.0), (2.0, 10.0), (6.0, 10.0)]),
            lines(&[(0.0, 10.0), (0.0, 10.0), (6.0, 20.0)]),
            lines(&[(1.0, 10.0), (2.0, 20.0), (2.0, 20.0), (7.0, 30.0), (9.0, 30.0)]),
        ] {
            let draws = all_draws(&units);
            let chances = Chances::of(&units).unwrap();
            assert!(matches!(chances, Chances::Listed(_)));
            for &figure in &draws {
                let tie = |draw: &f64| (draw - figure).abs() < 1e-12;
                let ties = draws.iter().filter(|draw| tie(draw)).count();
                let below = draws.iter().filter(|draw| **draw < figure && !tie(draw)).count();
                let expected = (count(below) + count(ties) / 2.0) / count(draws.len());
                assert!((chances.below(figure) - expected).abs() < 1e-12, "{figure}");
            }
        }
    }

    /// Eight different lines have 6435 ways of drawing, too many to list in earnest.
    #[test]
    fn the_lattice_gives_what_the_list_gives() {
        let cover = [3.1, 0.0, 7.4, 12.9, 5.5, 1.2, 22.8, 9.3];
        for lengths in [[30.0; 8], [30.0, 20.0, 50.0, 30.0, 25.0, 100.0, 30.0, 50.0]] {
            let mut units: Vec<Line> = cover.iter().zip(lengths).map(|(&y, x)| Line::new(y, x)).collect();
            units.sort_by(|a, b| a.length.total_cmp(&b.length).then(a.intercept.total_cmp(&b.intercept)));
            let different: Vec<(Line, u32)> = units.iter().map(|unit| (*unit, 1)).collect();
            let list = Chances::Listed(listed(8, &different));
            let lattice = Chances::of(&units).unwrap();
            assert!(!matches!(lattice, Chances::Listed(_)));
            let estimate = crate::estimate::of_lines(&units, None).unwrap();
            let crate::estimate::SamplingError::Known { se, .. } = estimate.error else { unreachable!() };
            // the likeliest single draw, every line once, may lie on either side
            let one_draw = 40_320.0 / 16_777_216.0;
            for figure in [-1.8, -1.0, -0.5, 0.0, 0.7, 1.2, 2.1].map(|z| estimate.value + z * se) {
                let (own, other) = (lattice.below(figure), list.below(figure));
                assert!((own - other).abs() < one_draw, "{figure}: {own} {other}");
            }
            for probability in [0.02, 0.05, 0.3, 0.5, 0.9, 0.95, 0.98] {
                let other = list.below(lattice.quantile(probability, estimate.value));
                assert!((other - probability).abs() < one_draw, "{probability}: {other}");
            }
        }
    }

    /// Heads of 12 tosses, two values with equal chances: C(12, k)/2^12, so 1/4096 for none and 299/4096 below three
    /// (Abramowitz and Stegun 1964, table 24.1: 1 + 12 + 66 + 220 = 299).
    #[test]
    fn tosses_of_a_coin() {
        let units = lines(&[[(0.0, 1.0); 6], [(1.0, 1.0); 6]].concat());
        let chances = Chances::of(&units).unwrap();
        assert!((chances.below(-0.01)).abs() < 1e-15);
        assert!((chances.below(0.5 / 12.0) - 1.0 / 4096.0).abs() < 1e-15);
        assert!((chances.below(3.5 / 12.0) - 299.0 / 4096.0).abs() < 1e-15);
        assert_eq!(chances.quantile(0.05, 0.5).to_bits(), (3.0_f64 / 12.0).to_bits());
    }
}
