//! The rows as data for `--json`: documented, versioned, additive within a version.

use super::SiteRow;
use crate::assess::Question;
use crate::goal::Goal;
use crate::output::{FindingOutput, estimator};
use serde::Serialize;
use tautline_engine::confidence::NoBound;
use tautline_engine::estimate::SamplingError;

/// What `tautline sites --json` prints.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SitesOutput {
    /// `tautline.sites`
    pub format: &'static str,
    /// The version of the format: 1, the first.
    pub version: u32,
    /// The names of the files that were read.
    pub files: Vec<String>,
    /// Confidence of intervals and verdicts.
    pub confidence: f64,
    /// One for each site and year.
    pub sites: Vec<SiteOutput>,
    /// What was found on reading.
    pub findings: Vec<FindingOutput>,
}

/// One site and year.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SiteOutput {
    /// The site.
    pub site: String,
    /// The year.
    pub year: Option<u16>,
    /// Lines behind the figures.
    pub lines: usize,
    /// Length of tape read on them, in nanometres.
    pub length_nm: i64,
    /// Canopy cover, a share: at least this; null where no line could be worked out.
    pub low: Option<f64>,
    /// At most this; the same where the estimate is known.
    pub high: Option<f64>,
    /// Standard error, where there is one.
    pub se: Option<f64>,
    /// Its degrees of freedom.
    pub df: Option<f64>,
    /// How cover was estimated.
    pub estimator: Option<&'static str>,
    /// The interval's method.
    pub interval_method: Option<&'static str>,
    /// Low and high end of the two-sided interval.
    pub interval: Option<(f64, f64)>,
    /// Why there is none.
    pub no_interval: Option<&'static str>,
    /// Where lines or intercepts are few: the least and the greatest share of 90 % intervals that held the true cover in
    /// simulated surveys with as few.
    pub measured_coverage: Option<(f64, f64)>,
    /// The verdict on each goal of the site.
    pub verdicts: Vec<SiteVerdict>,
    /// Findings about the site that must be settled; `tautline assess` says them.
    pub must_settle: usize,
    /// Findings about the site that want a look.
    pub have_a_look: usize,
}

/// The verdict on one goal.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SiteVerdict {
    /// The goal.
    pub goal: Goal,
    /// `met`, `not-met` or `not-yet-shown`.
    pub verdict: &'static str,
}

/// A row as data.
pub fn output(row: &SiteRow, question: &Question) -> SiteOutput {
    let cover = row.cover.as_ref();
    let (se, df) = match cover.map(|cover| cover.error) {
        Some(SamplingError::Known { se, df }) => (Some(se), Some(df)),
        _ => (None, None),
    };
    let verdict = |&(place, verdict): &(usize, tautline_engine::verdict::Verdict)| {
        let goal = question.goals.get(place)?.goal.clone();
        Some(SiteVerdict { goal, verdict: verdict.code() })
    };
    SiteOutput {
        site: row.site.clone(),
        year: row.year,
        lines: row.lines,
        length_nm: row.length.nanometres(),
        low: cover.map(|cover| cover.low),
        high: cover.map(|cover| cover.high),
        se,
        df,
        estimator: cover.map(|cover| estimator(&cover.estimator)),
        interval_method: cover.map(|cover| cover.method.code()),
        interval: cover.and_then(|cover| cover.interval.ok()).map(|interval| (interval.low, interval.high)),
        no_interval: cover.and_then(|cover| cover.interval.err()).map(NoBound::code),
        measured_coverage: cover
            .and_then(|cover| cover.few)
            .map(|few| (few.measured.lowest, few.measured.highest)),
        verdicts: row.verdicts.iter().filter_map(verdict).collect(),
        must_settle: row.must_settle,
        have_a_look: row.have_a_look,
    }
}
