//! The trends of many sites: rolled up by weight, and each drawn towards the others as far as it is thin.

use crate::num::math::sqrt;
use crate::num::quantile::t_quantile;
use crate::num::root::crossing;
use crate::num::{count, sum::sum};

/// The slope of one site.
#[derive(Clone, Debug, PartialEq)]
pub struct SiteSlope {
    /// Its share of the region; shares need not add up to one.
    pub weight: f64,
    /// The slope.
    pub slope: f64,
    /// Its standard error, years and all.
    pub se: f64,
    /// The years in which it was read.
    pub years: Vec<i32>,
}

/// A slope of the region.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Region {
    /// The slope.
    pub slope: f64,
    /// Its standard error.
    pub se: f64,
    /// Degrees of freedom: years less two, since all sites share them.
    pub df: f64,
}

impl Region {
    /// The interval: slope ± t se.
    pub fn interval(&self, confidence: f64) -> (f64, f64) {
        let reach = t_quantile(f64::midpoint(1.0, confidence), self.df) * self.se;
        (self.slope - reach, self.slope + reach)
    }
}

/// A site's slope with strength borrowed from the others.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drawn {
    /// The slope as drawn.
    pub slope: f64,
    /// Its standard error.
    pub se: f64,
    /// How much of it is the site's own: 1 all, 0 nothing.
    pub own: f64,
}

/// What each year of a straight line weighs in its slope: (t − t̄) / Σ (t − t̄)².
fn year_weights(years: &[i32]) -> Vec<f64> {
    let middle = sum(years.iter().map(|year| f64::from(*year))) / count(years.len());
    let spread = sum(years.iter().map(|year| (f64::from(*year) - middle) * (f64::from(*year) - middle)));
    years.iter().map(|year| (f64::from(*year) - middle) / spread).collect()
}

/// What a swing that all sites share adds to the product of two sites' errors.
fn shared(a: &SiteSlope, b: &SiteSlope, year_variance: f64) -> f64 {
    let weights =
        |site: &SiteSlope| site.years.iter().copied().zip(year_weights(&site.years)).collect::<Vec<_>>();
    let of_b = weights(b);
    let parts = weights(a).into_iter().filter_map(|(year, weight)| {
        of_b.iter().find(|(other, _)| *other == year).map(|(_, other)| weight * other)
    });
    year_variance * sum(parts)
}

/// Sites' slopes by their weights.
///
/// Σ wₛ bₛ with variance Σ wₛ² SEₛ² + 2 Σ wₛ wᵣ σ² Σ cₛₜ cᵣₜ, σ² the variance of the swing that all sites share in a year and cₛₜ what
/// a year weighs in a site's slope: sites that saw the same dry year are not so many samples.
///
/// # Range
/// `None` without sites, or with fewer than three years in all.
///
/// # Source
/// Cochran 1977, 5.3 (strata); the shared years are our own addition, by the variance of a sum
///
/// # Example
/// Two sites of equal weight, slopes 1 and 2, errors 0.3 and 0.4, nothing shared: 1.5 ± √(0.09 + 0.16)/2.
/// ```
/// use tautline_engine::trend::pool::{SiteSlope, region};
/// let site = |slope, se| SiteSlope { weight: 0.5, slope, se, years: vec![2018, 2020, 2022, 2024] };
/// let both = region(&[site(1.0, 0.3), site(2.0, 0.4)], 0.0).unwrap();
/// assert!((both.slope - 1.5).abs() < 1e-15 && (both.se - 0.25).abs() < 1e-15);
/// ```
pub fn region(sites: &[SiteSlope], year_variance: f64) -> Option<Region> {
    let whole = sum(sites.iter().map(|site| site.weight));
    let mut years: Vec<i32> = sites.iter().flat_map(|site| site.years.iter().copied()).collect();
    years.sort_unstable();
    years.dedup();
    if whole <= 0.0 || years.len() < 3 {
        return None;
    }
    let share = |site: &SiteSlope| site.weight / whole;
    let slope = sum(sites.iter().map(|site| share(site) * site.slope));
    let own = sum(sites.iter().map(|site| share(site) * share(site) * site.se * site.se));
    let pairs = sites.iter().enumerate().flat_map(|(at, a)| sites[at + 1..].iter().map(move |b| (a, b)));
    let mixed = sum(pairs.map(|(a, b)| 2.0 * share(a) * share(b) * shared(a, b, year_variance)));
    Some(Region { slope, se: sqrt((own + mixed).max(0.0)), df: count(years.len() - 2) })
}

/// Each site's slope drawn towards the others: sites differ by τ² beyond their errors, τ² found where Σ wₛ (bₛ − b̄)² = n − 1 with
/// wₛ = 1/(eₛ² + τ²); a site keeps τ²/(τ² + eₛ²) of its own. eₛ leaves out what all sites share, since that moves all alike.
///
/// # Range
/// Empty for fewer than three sites: two can't say how far sites differ.
///
/// # Source
/// Paule and Mandel 1982, Journal of Research of the National Bureau of Standards 87:377–385; drawing as in Efron and Morris 1975,
/// Journal of the American Statistical Association 70:311–319
pub fn drawn(sites: &[SiteSlope], year_variance: f64) -> Vec<Drawn> {
    if sites.len() < 3 {
        return Vec::new();
    }
    let common: Vec<f64> =
        sites.iter().map(|site| shared(site, site, year_variance).min(site.se * site.se)).collect();
    // an error of nothing but the shared years would weigh without end
    let own: Vec<f64> = sites
        .iter()
        .zip(&common)
        .map(|(site, common)| (site.se * site.se - common).max(1e-9 * site.se * site.se))
        .collect();
    let mean_at = |between: f64| {
        let weights = || own.iter().map(|own| 1.0 / (own + between));
        sum(weights().zip(sites).map(|(weight, site)| weight * site.slope)) / sum(weights())
    };
    let excess = |between: f64| {
        let mean = mean_at(between);
        sum(sites
            .iter()
            .zip(&own)
            .map(|(site, own)| (site.slope - mean) * (site.slope - mean) / (own + between)))
            - count(sites.len() - 1)
    };
    let most = sum(sites.iter().map(|site| site.slope * site.slope + site.se * site.se));
    let between = if excess(0.0) <= 0.0 { 0.0 } else { crossing(excess, 0.0, most).unwrap_or_default() };
    let mean = mean_at(between);
    let mean_variance = 1.0 / sum(own.iter().map(|own| 1.0 / (own + between)));
    sites
        .iter()
        .zip(own.iter().zip(&common))
        .map(|(site, (own, common))| {
            let kept = between / (between + own);
            let variance = kept * own + (1.0 - kept) * (1.0 - kept) * mean_variance + common;
            Drawn { slope: mean + kept * (site.slope - mean), se: sqrt(variance), own: kept }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn site(slope: f64, se: f64) -> SiteSlope {
        SiteSlope { weight: 1.0, slope, se, years: vec![2018, 2020, 2022, 2024] }
    }

    /// Equal errors: τ² is the slopes' own variance less the error's square. Slopes 1, 2, 6: mean 3, variance 7; errors of 1
    /// leave τ² = 6, so each site keeps 6/7.
    #[test]
    fn equal_errors_by_hand() {
        let drawn = drawn(&[site(1.0, 1.0), site(2.0, 1.0), site(6.0, 1.0)], 0.0);
        for (found, slope) in drawn.iter().zip([1.0, 2.0, 6.0]) {
            assert!((found.own - 6.0 / 7.0).abs() < 1e-12, "{found:?}");
            assert!((found.slope - (3.0 + 6.0 / 7.0 * (slope - 3.0))).abs() < 1e-12, "{found:?}");
        }
    }

    #[test]
    fn sites_no_further_apart_than_chance_are_one() {
        let drawn = drawn(&[site(1.0, 1.0), site(1.2, 1.0), site(1.4, 1.0)], 0.0);
        assert!(drawn.iter().all(|one| one.own == 0.0 && (one.slope - 1.2).abs() < 1e-12));
    }

    /// Years 2018, 20, 22, 24 weigh −3, −1, 1, 3 over 20: a shared variance of 4 adds 4·20/400 to each product. By hand.
    #[test]
    fn a_dry_year_that_all_share_does_not_average_out() {
        let alone = region(&[site(1.0, 0.5), site(1.0, 0.5)], 0.0).unwrap();
        let together = region(&[site(1.0, 0.5), site(1.0, 0.5)], 4.0).unwrap();
        assert!((alone.se - sqrt(0.125)).abs() < 1e-12);
        assert!((together.se - sqrt(0.125 + 0.1)).abs() < 1e-12, "{}", together.se);
        assert!((together.df - 2.0).abs() < 1e-15);
    }
}
