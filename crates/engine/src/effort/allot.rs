//! How many lines each stratum gets.

use super::search::{MOST_UNITS, smallest};
use crate::num::math::sqrt;
use crate::num::quantile::t_quantile;
use crate::num::{count, sum::sum};

/// A stratum whose lines are to be numbered.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stratum {
    /// Its share of the site's area, in any unit.
    pub area: f64,
    /// Standard deviation of its lines.
    pub deviation: f64,
    /// What one of its lines costs, in any unit.
    pub cost: f64,
    /// Lines that it gets at least: two, so that its error is known, or more.
    pub least: usize,
}

/// How lines are shared out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Allotment {
    /// By area alone.
    Proportional,
    /// By area and spread, and fewer where a line costs more: the smallest error for the money.
    Neyman,
}

/// Lines of each stratum, `units` in all.
///
/// One line after another goes to the stratum with the largest W S / √(c n (n + 1)) (for proportional allotment S and c
/// are one): among all whole numbers these give the smallest variance Σ W² S² / n where lines cost the same.
///
/// # Errors
/// `None` where `units` is less than the least numbers together, or an area, a spread or a cost is not above zero
/// # Source
/// Neyman 1934; Cochran 1977, §5.5; whole numbers: Wright, T. 2012. The equivalence of Neyman optimum allocation for
/// sampling and equal proportions for apportioning the U.S. House of Representatives. The American Statistician
/// 66:217–224
/// # Example
/// Two strata of 16 and 48 cities with standard deviations √53 843 and √5 581: of 24 cities Neyman gives 12 and 12,
/// proportional allotment 6 and 18 (Cochran 1977, §5.9, from memory).
/// ```
/// use tautline_engine::effort::allot::{Allotment, Stratum, allot};
/// let stratum = |area, variance: f64| Stratum { area, deviation: variance.sqrt(), cost: 1.0, least: 2 };
/// let cities = [stratum(16.0, 53_843.0), stratum(48.0, 5_581.0)];
/// assert_eq!(allot(&cities, 24, Allotment::Neyman), Some(vec![12, 12]));
/// assert_eq!(allot(&cities, 24, Allotment::Proportional), Some(vec![6, 18]));
/// ```
pub fn allot(strata: &[Stratum], units: usize, how: Allotment) -> Option<Vec<usize>> {
    let usable = |s: &Stratum| [s.area, s.deviation, s.cost].iter().all(|&x| x > 0.0 && x.is_finite());
    if strata.is_empty() || !strata.iter().all(usable) {
        return None;
    }
    let mut lines: Vec<usize> = strata.iter().map(|stratum| stratum.least).collect();
    let left = units.checked_sub(lines.iter().sum())?;
    let weights: Vec<f64> = strata
        .iter()
        .map(|stratum| match how {
            Allotment::Proportional => stratum.area,
            Allotment::Neyman => stratum.area * stratum.deviation / sqrt(stratum.cost),
        })
        .collect();
    for _ in 0..left {
        let claim = |at: usize| weights[at] / sqrt(count(lines[at]) * (count(lines[at]) + 1.0));
        let mut next = 0;
        for at in 1..lines.len() {
            if claim(at) > claim(next) {
                next = at;
            }
        }
        lines[next] += 1;
    }
    Some(lines)
}

/// Standard error of the site's mean and its degrees of freedom, with so many lines in each stratum.
///
/// √(Σ W² S² / n), and (Σ v)² / Σ (v² / (n − 1)) with v = W² S² / n.
///
/// # Range
/// two lines or more in each stratum
/// # Source
/// Cochran 1977, §5.3–5.4, with Satterthwaite's degrees of freedom
pub fn error_of(strata: &[Stratum], lines: &[usize]) -> (f64, f64) {
    let area = sum(strata.iter().map(|stratum| stratum.area));
    let parts: Vec<f64> = strata
        .iter()
        .zip(lines)
        .map(|(stratum, &n)| {
            let weighted = stratum.area / area * stratum.deviation;
            weighted * weighted / count(n)
        })
        .collect();
    let variance = sum(parts.iter().copied());
    let lost = sum(parts.iter().zip(lines).map(|(v, &n)| {
        let share = v / variance;
        share * share / (count(n) - 1.0)
    }));
    (sqrt(variance), 1.0 / lost)
}

/// The fewest lines, and those of each stratum, whose interval reaches no farther than ± `half_width` if the lines vary
/// as foreseen.
///
/// # Range
/// `None` where a million lines don't, or as for [`allot`]
pub fn for_half_width(
    strata: &[Stratum],
    how: Allotment,
    confidence: f64,
    half_width: f64,
) -> Option<Vec<usize>> {
    let least: usize = strata.iter().map(|stratum| stratum.least.max(2)).sum();
    let narrow = |units: usize| {
        allot(strata, units, how).is_some_and(|lines| {
            let (se, df) = error_of(strata, &lines);
            t_quantile(1.0 - (1.0 - confidence) / 2.0, df) * se <= half_width
        })
    };
    allot(strata, least, how)?;
    let units = smallest(least, MOST_UNITS.min(MOST_SHARED_OUT), narrow)?;
    allot(strata, units, how)
}

/// Lines are handed out one by one, so no more than anybody would read.
const MOST_SHARED_OUT: usize = 20_000;

#[cfg(test)]
mod tests {
    use super::*;

    fn stratum(area: f64, deviation: f64) -> Stratum {
        Stratum { area, deviation, cost: 1.0, least: 2 }
    }

    /// Every other way to share 20 lines among three strata has at least the same error.
    #[test]
    fn no_other_whole_numbers_do_better() {
        let strata = [stratum(50.0, 0.04), stratum(30.0, 0.12), stratum(20.0, 0.02)];
        let best = allot(&strata, 20, Allotment::Neyman).unwrap();
        assert_eq!(best.iter().sum::<usize>(), 20);
        let (least, _) = error_of(&strata, &best);
        let mut tried = 0;
        for a in 2..=16 {
            for b in 2..=(18 - a) {
                tried += 1;
                assert!(error_of(&strata, &[a, b, 20 - a - b]).0 >= least - 1e-15);
            }
        }
        assert!(tried > 100);
    }

    #[test]
    fn minimums_are_kept_and_too_few_are_refused() {
        let strata = [stratum(990.0, 0.1), Stratum { least: 4, ..stratum(10.0, 0.01) }];
        assert_eq!(allot(&strata, 10, Allotment::Neyman), Some(vec![6, 4]));
        assert_eq!(allot(&strata, 5, Allotment::Neyman), None);
        assert_eq!(allot(&[stratum(0.0, 0.1)], 5, Allotment::Proportional), None);
        assert_eq!(allot(&[], 5, Allotment::Proportional), None);
    }

    /// Two strata alike in everything, so n/2 lines each: SE = S/√n, df = n − 2.
    #[test]
    fn the_error_by_hand() {
        let strata = [stratum(1.0, 0.08), stratum(1.0, 0.08)];
        let (se, df) = error_of(&strata, &[8, 8]);
        assert!((se - 0.02).abs() < 1e-15 && (df - 14.0).abs() < 1e-12, "{se} {df}");
        // t(0.95; 14) = 1.7613 (printed tables), so ± 0.03523 with 16
        assert_eq!(for_half_width(&strata, Allotment::Neyman, 0.9, 0.035_24), Some(vec![8, 8]));
    }
}
