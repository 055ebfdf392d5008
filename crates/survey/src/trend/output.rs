//! What `tautline trend --json` prints.

use super::{
    Coming, Forecast, Model, NoModel, NoP, RegionTrend, SiteTrend, TrendFigure, region_sentences, sentences,
};
use crate::follow::NotedOutput;
use crate::goal::Subject;
use crate::input::{Input, SourceFile};
use crate::message::Message;
use crate::output::{EstimateOutput, FindingOutput, ProtocolOutput, VERSION, estimate, findings, protocols};
use serde::Serialize;
use tautline_engine::trend::robust::NoTrend;

/// What `tautline trend --json` prints.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TrendOutput {
    /// `tautline.trend`
    pub format: &'static str,
    /// The version of the format.
    pub version: u32,
    /// The files that were read.
    pub files: Vec<SourceFile>,
    /// The protocols the lines were read under.
    pub protocols: Vec<ProtocolOutput>,
    /// One for each site that was read in two years or more.
    pub trends: Vec<SiteTrendOutput>,
    /// All sites together, where two or more have a trend of canopy by the model.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub region: Option<RegionOutput>,
    /// What was found on reading.
    pub findings: Vec<FindingOutput>,
}

/// The trend of one site.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SiteTrendOutput {
    /// The site.
    pub site: String,
    /// Confidence of intervals.
    pub confidence: f64,
    /// The figures.
    pub figures: Vec<TrendFigureOutput>,
    /// What was noted beside the readings, in the order of the years.
    pub noted: Vec<NotedOutput>,
    /// What should be said.
    pub findings: Vec<FindingOutput>,
}

/// The trend of one subject; shares of the line.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TrendFigureOutput {
    /// What it is about.
    pub subject: Subject,
    /// The level of each year.
    pub years: Vec<(u16, EstimateOutput)>,
    /// Theil and Sen's slope a year.
    pub slope: Option<f64>,
    /// Its interval.
    pub interval: Option<(f64, f64)>,
    /// Mann and Kendall's S.
    pub s: f64,
    /// Chance of an S as far from zero where nothing changes.
    pub p: Option<f64>,
    /// Why there is none.
    pub no_p: Option<&'static str>,
    /// The same chance where visits hang together (Hamed and Rao 1998).
    pub p_hanging_together: Option<f64>,
    /// The model of lines and years.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub model: Option<ModelOutput>,
    /// Why there is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub no_model: Option<&'static str>,
    /// When goals would be reached.
    pub forecasts: Vec<ForecastOutput>,
    /// The sentences, the plain one first.
    pub said: Vec<String>,
}

/// The model of lines and years; shares of the line a year.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ModelOutput {
    /// Slope a year.
    pub slope: f64,
    /// Its standard error by Kenward and Roger.
    pub se: f64,
    /// Its degrees of freedom by Kenward and Roger.
    pub df: f64,
    /// Its interval.
    pub interval: Option<(f64, f64)>,
    /// Chance of a slope as far from zero where nothing changes.
    pub p: Option<f64>,
    /// Why there is none.
    pub no_p: Option<&'static str>,
    /// Variance of lines' levels in the middle year.
    pub line_variance: f64,
    /// Variance of lines' slopes, where the model has them.
    pub line_slope_variance: Option<f64>,
    /// Variance of what a year does to all lines alike, where the model has it.
    pub year_variance: Option<f64>,
    /// Variance of what is left.
    pub left_variance: f64,
    /// Each year: the level, its low and its high end.
    pub band: Vec<(i32, f64, f64, f64)>,
}

/// When one end of a goal would be reached.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ForecastOutput {
    /// The end, as a share.
    pub value: f64,
    /// Cover is to stay at or above it; else at or below.
    pub at_least: bool,
    /// Whether the trend's line stood on the right side of it in the last year.
    pub stands: bool,
    /// The year in which the line reaches it, if it does so in as many years as were looked back on.
    pub year: Option<f64>,
    /// Not before this year.
    pub earliest: Option<f64>,
    /// By this year; absent where it may never.
    pub latest: Option<f64>,
}

/// All sites together; shares of the line a year.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct RegionOutput {
    /// Sites count by their area; else alike.
    pub by_area: bool,
    /// Slope.
    pub slope: f64,
    /// Its standard error.
    pub se: f64,
    /// Its degrees of freedom.
    pub df: f64,
    /// Its interval.
    pub interval: (f64, f64),
    /// Variance of what a year does to all sites alike.
    pub year_variance: Option<f64>,
    /// The sites.
    pub sites: Vec<SiteInRegionOutput>,
    /// The sentences.
    pub said: Vec<String>,
}

/// One site of a region.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SiteInRegionOutput {
    /// The site.
    pub site: String,
    /// Its share.
    pub share: f64,
    /// Its slope by itself.
    pub slope: f64,
    /// Its standard error.
    pub se: f64,
    /// Its slope with strength borrowed from the other sites.
    pub drawn_slope: Option<f64>,
    /// Its standard error.
    pub drawn_se: Option<f64>,
    /// How much of the drawn slope is the site's own.
    pub own: Option<f64>,
}

/// All trends as data.
pub fn output(
    input: &Input,
    trends: &[SiteTrend],
    region: Option<&RegionTrend>,
    say: &dyn Fn(&Message) -> String,
) -> TrendOutput {
    TrendOutput {
        format: "tautline.trend",
        version: VERSION,
        files: input.files.clone(),
        protocols: protocols(input),
        trends: trends
            .iter()
            .map(|trend| SiteTrendOutput {
                site: trend.site.clone(),
                confidence: trend.confidence,
                figures: trend.figures.iter().map(|one| figure(trend, one, say)).collect(),
                noted: trend.noted.iter().map(NotedOutput::of).collect(),
                findings: findings(&trend.findings, say),
            })
            .collect(),
        region: region.map(|region| of_region(region, say)),
        findings: findings(&input.findings, say),
    }
}

fn figure(trend: &SiteTrend, one: &TrendFigure, say: &dyn Fn(&Message) -> String) -> TrendFigureOutput {
    TrendFigureOutput {
        subject: one.subject.clone(),
        years: one.years.iter().map(|(year, level)| (*year, estimate(level))).collect(),
        slope: one.slope,
        interval: one.interval,
        s: one.kendall.s,
        p: one.kendall.p.ok(),
        no_p: one.kendall.p.err().map(NoTrend::code),
        p_hanging_together: one.corrected.p.ok(),
        model: one.model.as_ref().ok().map(model),
        no_model: one.model.as_ref().err().copied().map(NoModel::code),
        forecasts: one.forecasts.iter().map(forecast).collect(),
        said: sentences(trend, one).iter().map(say).collect(),
    }
}

fn model(model: &Model) -> ModelOutput {
    ModelOutput {
        slope: model.slope.value,
        se: model.slope.se,
        df: model.slope.df,
        interval: model.interval,
        p: model.p.ok(),
        no_p: model.p.err().map(NoP::code),
        line_variance: model.variances.level,
        line_slope_variance: model.variances.slope,
        year_variance: model.variances.year,
        left_variance: model.variances.left,
        band: model.band.iter().map(|one| (one.year, one.level, one.interval.0, one.interval.1)).collect(),
    }
}

fn forecast(one: &Forecast) -> ForecastOutput {
    let (year, earliest, latest) = match one.coming {
        Coming::Reached { year, earliest, latest } => (Some(year), Some(earliest), latest),
        Coming::NotBy(_) | Coming::NotShown => (None, None, None),
    };
    ForecastOutput { value: one.value, at_least: one.at_least, stands: one.stands, year, earliest, latest }
}

fn of_region(region: &RegionTrend, say: &dyn Fn(&Message) -> String) -> RegionOutput {
    RegionOutput {
        by_area: region.by_area,
        slope: region.region.slope,
        se: region.region.se,
        df: region.region.df,
        interval: region.region.interval(region.confidence),
        year_variance: region.year_variance,
        sites: region
            .sites
            .iter()
            .map(|site| SiteInRegionOutput {
                site: site.site.clone(),
                share: site.share,
                slope: site.slope,
                se: site.se,
                drawn_slope: site.drawn.map(|drawn| drawn.slope),
                drawn_se: site.drawn.map(|drawn| drawn.se),
                own: site.drawn.map(|drawn| drawn.own),
            })
            .collect(),
        said: region_sentences(region).iter().map(say).collect(),
    }
}
