//! Whether one of a few values lies far from the others, by a rule that the far one itself can't stretch.

use crate::num::count;
use crate::num::math::powf;
use crate::num::quantile::normal_quantile;

/// The chance that any value of a normal sample is called far.
const FALSE_ALARM: f64 = 0.01;

/// Up to `n` values, the largest distance of a normal sample of `n` is above this in one sample of a hundred: from a
/// simulation of four million samples (to 12 values), 1.5 million (to 30) and half a million (beyond).
const LIMITS: [(usize, f64); 32] = [
    (5, 27.58),
    (6, 14.95),
    (7, 15.91),
    (8, 11.77),
    (9, 12.19),
    (10, 10.27),
    (11, 10.48),
    (12, 9.352),
    (13, 9.489),
    (14, 8.740),
    (15, 8.849),
    (16, 8.311),
    (17, 8.389),
    (18, 7.993),
    (19, 8.046),
    (20, 7.743),
    (21, 7.802),
    (22, 7.548),
    (23, 7.613),
    (24, 7.424),
    (25, 7.450),
    (26, 7.287),
    (27, 7.308),
    (28, 7.189),
    (29, 7.196),
    (30, 7.108),
    (35, 6.948),
    (40, 6.774),
    (50, 6.644),
    (60, 6.544),
    (80, 6.440),
    (100, 6.379),
];

/// The median absolute deviation of a normal distribution, in standard deviations.
const OF_NORMAL: f64 = 0.674_489_750_196_081_7;

/// How far each value lies from the median: |x − median| / MAD, the MAD being the median of |x − median|.
///
/// # Units
/// median absolute deviations
/// # Range
/// `None` for no values, and where half of the values or more are alike, so that there is no yardstick
/// # Source
/// Hampel 1974, Journal of the American Statistical Association 69:383–393
/// # Example
/// ```
/// // median 3, deviations 2, 1, 0, 1, 97, of which the median is 1
/// let found = tautline_engine::outlying::distances(&[1.0, 2.0, 3.0, 4.0, 100.0]).unwrap();
/// assert_eq!(found, [2.0, 1.0, 0.0, 1.0, 97.0]);
/// ```
pub fn distances(values: &[f64]) -> Option<Vec<f64>> {
    let centre = median(values)?;
    let away: Vec<f64> = values.iter().map(|value| (value - centre).abs()).collect();
    let yardstick = median(&away).filter(|&deviation| deviation > 0.0)?;
    Some(away.into_iter().map(|distance| distance / yardstick).collect())
}

/// The distance beyond which a value lies far from the others, so that of a hundred normal samples of `n` one holds
/// any such value.
///
/// Above a hundred values the limit is that of the normal distribution, z(1 − (1 − 0.99^(1/n)) / 2) / 0.6745, where
/// that is larger than the last one simulated.
///
/// # Units
/// median absolute deviations
/// # Range
/// five values or more; `None` for fewer, which can't tell a far value from a narrow rest
/// # Source
/// the identifier of Hampel 1974 with limits for the number of values, as in Davies and Gather 1993, Journal of the
/// American Statistical Association 88:782–792
pub fn far_from(n: usize) -> Option<f64> {
    let simulated = LIMITS.iter().rev().find(|(most, _)| *most <= n).map(|(_, limit)| *limit)?;
    if n <= 100 {
        return Some(simulated);
    }
    let each = 1.0 - powf(1.0 - FALSE_ALARM, 1.0 / count(n));
    Some(simulated.max(normal_quantile(1.0 - each / 2.0) / OF_NORMAL))
}

fn median(values: &[f64]) -> Option<f64> {
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    let (low, high) = (sorted.get(sorted.len().checked_sub(1)? / 2)?, sorted.get(sorted.len() / 2)?);
    Some(f64::midpoint(*low, *high))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::seed::Seed;

    #[test]
    fn too_few_values_and_values_alike_say_nothing() {
        assert_eq!(far_from(4), None);
        assert_eq!(distances(&[]), None);
        assert_eq!(distances(&[0.0, 0.0, 0.0, 0.0, 0.4]), None);
        assert!(far_from(34) == far_from(30) && far_from(1000) > far_from(100));
    }

    /// Normal samples drawn anew hold a far value in one of a hundred, within four Monte-Carlo errors.
    #[test]
    fn one_normal_sample_in_a_hundred_holds_a_far_value() {
        let mut random = Seed::from_purpose("test outlying", &[]).stream();
        for n in [5_usize, 6, 8, 12, 20, 50] {
            let limit = far_from(n).unwrap();
            let samples = 20_000;
            let far = (0..samples)
                .filter(|_| {
                    let sample: Vec<f64> = (0..n).map(|_| random.normal()).collect();
                    distances(&sample).unwrap().iter().any(|&distance| distance > limit)
                })
                .count();
            let rate = count(far) / f64::from(samples);
            // four times √(0.01 · 0.99 / 20 000)
            assert!((rate - FALSE_ALARM).abs() < 0.002_82, "{n}: {rate}");
        }
    }
}
