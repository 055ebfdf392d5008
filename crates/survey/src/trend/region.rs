//! The trends of many sites together.

use super::{SiteTrend, TrendFigure};
use crate::goal::Subject;
use crate::input::Input;
use tautline_engine::num::count;
use tautline_engine::trend::mixed::{Reading, Terms, fit};
use tautline_engine::trend::pool::{Drawn, Region, SiteSlope, drawn, region as rolled_up};

/// A joint model of years takes no more sites than this, spread evenly over all.
const MOST_SITES: usize = 40;

/// Sites in a region.
#[derive(Clone, Debug)]
pub struct SiteInRegion {
    /// The site.
    pub site: String,
    /// Its share of the region.
    pub share: f64,
    /// Its slope by the model, as a share of the line a year.
    pub slope: f64,
    /// Its standard error.
    pub se: f64,
    /// The slope with strength borrowed from the other sites; none for fewer than three sites.
    pub drawn: Option<Drawn>,
}

/// The trend of canopy over all sites that have one.
#[derive(Clone, Debug)]
pub struct RegionTrend {
    /// Confidence of intervals.
    pub confidence: f64,
    /// Sites count by their area; else alike, since some area isn't known.
    pub by_area: bool,
    /// The slope of the region.
    pub region: Region,
    /// Variance of what a year does to all sites alike; none where the sites can't tell.
    pub year_variance: Option<f64>,
    /// The sites.
    pub sites: Vec<SiteInRegion>,
}

/// The region of all sites whose canopy has a trend by the model; nothing for fewer than two.
pub fn region(input: &Input, trends: &[SiteTrend]) -> Option<RegionTrend> {
    let of_canopy = |trend: &SiteTrend| -> Option<usize> {
        trend.figures.iter().position(|figure| {
            figure.subject == Subject::Canopy && figure.model.as_ref().is_ok_and(|model| model.p.is_ok())
        })
    };
    let with: Vec<(&SiteTrend, &TrendFigure)> =
        trends.iter().filter_map(|trend| Some((trend, &trend.figures[of_canopy(trend)?]))).collect();
    if with.len() < 2 {
        return None;
    }
    let areas: Vec<f64> = with.iter().map(|(trend, _)| area(input, &trend.site)).collect();
    let by_area = areas.iter().all(|area| *area > 0.0);
    let slopes: Vec<SiteSlope> = with
        .iter()
        .zip(&areas)
        .filter_map(|((_, figure), area)| {
            let model = figure.model.as_ref().ok()?;
            Some(SiteSlope {
                weight: if by_area { *area } else { 1.0 },
                slope: model.slope.value,
                se: model.slope.se,
                years: figure.years.iter().map(|(year, _)| i32::from(*year)).collect(),
            })
        })
        .collect();
    let year_variance = year_variance(&with);
    // unknown, all of the years' swing is taken as shared: the wider error
    let shared = year_variance.unwrap_or_else(|| {
        let own = with.iter().filter_map(|(_, figure)| figure.model.as_ref().ok()?.variances.year);
        own.fold(0.0, f64::max)
    });
    let whole: f64 = slopes.iter().map(|site| site.weight).sum();
    let mut drawn = drawn(&slopes, shared).into_iter();
    Some(RegionTrend {
        confidence: with[0].0.confidence,
        by_area,
        region: rolled_up(&slopes, shared)?,
        year_variance,
        sites: with
            .iter()
            .zip(&slopes)
            .map(|((trend, _), site)| SiteInRegion {
                site: trend.site.clone(),
                share: site.weight / whole,
                slope: site.slope,
                se: site.se,
                drawn: drawn.next(),
            })
            .collect(),
    })
}

/// Area of a site in square metres: that of its strata.
fn area(input: &Input, site: &str) -> f64 {
    let own = input.strata.iter().filter(|stratum| stratum.site == site);
    #[expect(clippy::cast_precision_loss, reason = "areas stay far below 2^53 in square metres")]
    let square_metres = own.map(|stratum| stratum.area as f64 / 1e6).sum();
    square_metres
}

/// What a year does to all sites alike, from a model of all lines with years and years at sites.
fn year_variance(with: &[(&SiteTrend, &TrendFigure)]) -> Option<f64> {
    let step = with.len().div_ceil(MOST_SITES);
    let readings: Vec<Reading> = with
        .iter()
        .step_by(step)
        .enumerate()
        .flat_map(|(site, (_, figure))| figure.readings.iter().map(move |one| Reading { site, ..*one }))
        .collect();
    let origin = readings.iter().map(|one| f64::from(one.year)).sum::<f64>() / count(readings.len());
    let terms = Terms { slope: false, year: true, site_year: true };
    fit(&readings, origin, terms).ok()?.variances().year
}
