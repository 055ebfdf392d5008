//! Trend of a site over its visits, without a model: slope, direction, and where they stand.

use crate::assess::{Question, dedupe, figure, intercept, round, subjects, usable_lines};
use crate::compare::common_ground;
use crate::finding::{Finding, Weight};
use crate::goal::Subject;
use crate::input::{Input, SourceFile};
use crate::line::LineResult;
use crate::message::Message;
use crate::output::{EstimateOutput, FindingOutput, ProtocolOutput, VERSION, estimate, findings, protocols};
use serde::Serialize;
use tautline_engine::estimate::{Estimate, Line};
use tautline_engine::length::Unit;
use tautline_engine::trend::robust::{Kendall, NoTrend, mann_kendall, slope_interval, theil_sen};

/// The trend of one site.
#[derive(Clone, Debug)]
pub struct SiteTrend {
    /// The site.
    pub site: String,
    /// Confidence of intervals.
    pub confidence: f64,
    /// One for each subject.
    pub figures: Vec<TrendFigure>,
    /// What should be said.
    pub findings: Vec<Finding>,
}

/// The trend of one subject.
#[derive(Clone, Debug)]
pub struct TrendFigure {
    /// What it is about.
    pub subject: Subject,
    /// The level of each year.
    pub years: Vec<(u16, Estimate)>,
    /// Theil and Sen's slope, as a share of the line a year.
    pub slope: Option<f64>,
    /// Its interval; none with too few visits to be that sure.
    pub interval: Option<(f64, f64)>,
    /// Mann and Kendall's test.
    pub kendall: Kendall,
}

/// The trend of every site that was read in two years or more.
pub fn trends(input: &Input, question: &Question) -> Vec<SiteTrend> {
    let rounds = round::rounds(input, None);
    let mut sites: Vec<&str> = rounds.iter().map(|round| round.site.as_str()).collect();
    sites.dedup();
    sites
        .into_iter()
        .filter_map(|site| {
            let own: Vec<&round::Round> =
                rounds.iter().filter(|round| round.site == site && round.year.is_some()).collect();
            (own.len() > 1).then(|| site_trend(input, question, site, &own))
        })
        .collect()
}

fn site_trend(input: &Input, question: &Question, site: &str, rounds: &[&round::Round]) -> SiteTrend {
    let all: Vec<usize> = rounds.iter().flat_map(|round| round.visits.iter().copied()).collect();
    let ground = common_ground(input, &all, &question.choice);
    let mut found = ground.findings;
    let mut years: Vec<(u16, Vec<LineResult>)> = Vec::new();
    for round in rounds.iter().filter(|_| !ground.apart) {
        found.extend(round.findings(input).into_iter().filter(|finding| finding.weight != Weight::Note));
        let lines = usable_lines(input, question, &round.visits, &ground.choice, &mut found);
        if let (Some(year), false) = (round.year, lines.is_empty()) {
            years.push((year, lines));
        }
    }
    let mut trend = SiteTrend {
        site: site.to_owned(),
        confidence: question.confidence(),
        figures: Vec::new(),
        findings: found,
    };
    let lines: Vec<LineResult> = years.iter().flat_map(|(_, lines)| lines.iter().cloned()).collect();
    if years.len() < 2 {
        return trend;
    }
    trend.findings.extend(unlike_lines(&years));
    for subject in subjects(&lines, question.by, &[]) {
        if lines.iter().all(|line| intercept(line, &subject).is_known()) {
            trend.figures.push(trend_figure(input, question, &years, subject));
        } else {
            let message = Message::new("trend-between-ends")
                .with("what", crate::explain::subject_words(&subject))
                .with("site", site);
            trend.findings.push(Finding::have_a_look(message));
        }
    }
    trend.findings.push(Finding::note(Message::new("trend-visits-hang-together")));
    dedupe(&mut trend.findings);
    trend
}

/// Years that were not read on the same lines: part of their difference is the lines'.
fn unlike_lines(years: &[(u16, Vec<LineResult>)]) -> Option<Finding> {
    let names = |lines: &[LineResult]| lines.iter().map(|line| line.line.clone()).collect::<Vec<_>>();
    let first = names(&years[0].1);
    let unlike: Vec<String> =
        years.iter().filter(|(_, lines)| names(lines) != first).map(|(year, _)| year.to_string()).collect();
    (!unlike.is_empty()).then(|| {
        Finding::have_a_look(
            Message::new("trend-unlike-lines").with("years", unlike).with("first", years[0].0.to_string()),
        )
    })
}

fn trend_figure(
    input: &Input,
    question: &Question,
    years: &[(u16, Vec<LineResult>)],
    subject: Subject,
) -> TrendFigure {
    let years: Vec<(u16, Estimate)> = years
        .iter()
        .map(|(year, lines)| {
            let values: Vec<Line> = lines
                .iter()
                .map(|line| {
                    let length = intercept(line, &subject).low;
                    Line::new(length.in_unit(Unit::Millimetre), line.read.in_unit(Unit::Millimetre))
                })
                .collect();
            (*year, figure::estimate(input, question.claim, lines, &values).0)
        })
        .collect();
    let points: Vec<(f64, f64)> = years.iter().map(|(year, level)| (f64::from(*year), level.value)).collect();
    let levels: Vec<f64> = points.iter().map(|(_, level)| *level).collect();
    TrendFigure {
        subject,
        slope: theil_sen(&points),
        interval: slope_interval(&points, question.confidence()),
        kendall: mann_kendall(&levels),
        years,
    }
}

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
}

/// All trends as data.
pub fn output(input: &Input, trends: &[SiteTrend], say: &dyn Fn(&Message) -> String) -> TrendOutput {
    let figure = |one: &TrendFigure| TrendFigureOutput {
        subject: one.subject.clone(),
        years: one.years.iter().map(|(year, level)| (*year, estimate(level))).collect(),
        slope: one.slope,
        interval: one.interval,
        s: one.kendall.s,
        p: one.kendall.p.ok(),
        no_p: one.kendall.p.err().map(NoTrend::code),
    };
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
                figures: trend.figures.iter().map(figure).collect(),
                findings: findings(&trend.findings, say),
            })
            .collect(),
        findings: findings(&input.findings, say),
    }
}
