//! Trend of a site over its visits: slope, direction and where they stand, by a model of lines and years and without one; when a
//! goal would be reached; and many sites together.

mod model;
mod output;
mod region;
mod sentences;

pub use model::{Band, Coming, Forecast, Model, NoModel, NoP, fit_of};
pub use output::{TrendOutput, output};
pub use region::{RegionTrend, SiteInRegion, region};
pub use sentences::{region_sentences, sentences};

use crate::assess::{Question, dedupe, figure, intercept, natural_order, round, subjects, usable_lines};
use crate::compare::common_ground;
use crate::finding::{Finding, Weight};
use crate::follow::Noted;
use crate::follow::noted::{SAME_SEASON_DAYS, days_apart, middle_day, noted, outside_window};
use crate::goal::{Goal, Subject};
use crate::input::Input;
use crate::line::LineResult;
use crate::message::{Message, Value};
use tautline_engine::estimate::{Estimate, Line};
use tautline_engine::length::Unit;
use tautline_engine::trend::mixed::Reading;
use tautline_engine::trend::robust::{Kendall, mann_kendall, slope_interval, theil_sen};
use tautline_engine::trend::serial::{Corrected, corrected};

/// The trend of one site.
#[derive(Clone, Debug)]
pub struct SiteTrend {
    /// The site.
    pub site: String,
    /// Confidence of intervals.
    pub confidence: f64,
    /// One for each subject.
    pub figures: Vec<TrendFigure>,
    /// What was noted beside the readings, in each year of `noted_years`.
    pub noted: Vec<Noted>,
    /// The years.
    pub noted_years: Vec<u16>,
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
    /// The same where visits hang together.
    pub corrected: Corrected,
    /// The model of lines and years, or why there is none.
    pub model: Result<Model, NoModel>,
    /// What the model reads: cover of each line in each year, lines numbered as `lines` names them.
    pub readings: Vec<Reading>,
    /// The lines.
    pub lines: Vec<String>,
    /// When each end of each goal would be reached.
    pub forecasts: Vec<Forecast>,
}

/// The trend of every site that was read in two years or more.
pub fn trends(input: &Input, question: &Question) -> Vec<SiteTrend> {
    each(input, question).collect()
}

/// The same, one site after the other, for whoever can't wait until all are worked out.
pub fn each(input: &Input, question: &Question) -> impl Iterator<Item = SiteTrend> {
    round::by_site(round::rounds(input, None)).into_iter().filter_map(move |of_site| {
        let own: Vec<&round::Round> = of_site.iter().filter(|round| round.year.is_some()).collect();
        (own.len() > 1).then(|| site_trend(input, question, &of_site[0].site, &own))
    })
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
        noted: Vec::new(),
        noted_years: Vec::new(),
        findings: found,
    };
    let lines: Vec<LineResult> = years.iter().flat_map(|(_, lines)| lines.iter().cloned()).collect();
    if years.len() < 2 {
        return trend;
    }
    trend.findings.extend(unlike_lines(&years));
    trend.findings.extend(unlike_times(input, &years));
    let of_years: Vec<&[LineResult]> = years.iter().map(|(_, lines)| lines.as_slice()).collect();
    trend.noted = noted(input, &of_years);
    trend.noted_years = years.iter().map(|(year, _)| *year).collect();
    trend.findings.extend(unlike_stages(&trend));
    let goals: Vec<&Goal> = question.goals_of(site).map(|goal| &goal.goal).collect();
    for subject in subjects(&lines, question.by, &goals) {
        if lines.iter().all(|line| intercept(line, &subject).is_known()) {
            trend.figures.push(trend_figure(input, question, site, &years, subject));
        } else {
            let message = Message::new("trend-between-ends")
                .with("what", crate::explain::subject_words(&subject))
                .with("site", site);
            trend.findings.push(Finding::have_a_look(message));
        }
    }
    trend.findings.push(Finding::note(Message::new("trend-years-are-the-sample")));
    if input.strata.iter().any(|stratum| stratum.site == site) {
        trend.findings.push(Finding::note(Message::new("trend-lines-count-alike")));
    }
    dedupe(&mut trend.findings);
    trend
}

/// Years that were read at another time of the year than most, and lines outside their protocol's window.
fn unlike_times(input: &Input, years: &[(u16, Vec<LineResult>)]) -> Vec<Finding> {
    let middle: Vec<(u16, u16)> =
        years.iter().filter_map(|(year, lines)| Some((*year, middle_day(lines)?))).collect();
    let mut days: Vec<u16> = middle.iter().map(|(_, day)| *day).collect();
    days.sort_unstable();
    let usual = days.get(days.len() / 2).copied().unwrap_or_default();
    let off: Vec<String> = middle
        .iter()
        .filter(|(_, day)| days_apart(*day, usual) > SAME_SEASON_DAYS)
        .map(|(year, _)| year.to_string())
        .collect();
    let season = (!off.is_empty()).then(|| {
        let message = Message::new("trend-unlike-season").with("years", off);
        Finding::have_a_look(message.with("days", u64::from(SAME_SEASON_DAYS)))
    });
    let outside = years.iter().flat_map(|(year, lines)| outside_window(input, *year, lines));
    season.into_iter().chain(outside).collect()
}

/// Years read in unlike stages of growth.
fn unlike_stages(trend: &SiteTrend) -> Option<Finding> {
    let stage = trend.noted.iter().find(|noted| noted.is_growth_stage() && noted.is_unlike())?;
    let said = stage.visits.iter().zip(&trend.noted_years).map(|(stages, year)| {
        let words =
            if stages.is_empty() { Value::Word("nothing-noted") } else { Value::from(stages.clone()) };
        Message::new("stage-in-year").with("year", year.to_string()).with("stage", words).into()
    });
    Some(Finding::have_a_look(Message::new("trend-unlike-stage").with("stages", Value::List(said.collect()))))
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
    site: &str,
    of_years: &[(u16, Vec<LineResult>)],
    subject: Subject,
) -> TrendFigure {
    let years: Vec<(u16, Estimate)> = of_years
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
    let (readings, lines) = readings(of_years, &subject);
    let fitted = fit_of(&readings);
    let forecasts = match &fitted {
        Ok(fitted) => model::forecasts(question, site, &subject, fitted, &readings),
        Err(_) => Vec::new(),
    };
    TrendFigure {
        subject,
        slope: theil_sen(&points),
        interval: slope_interval(&points, question.confidence()),
        kendall: mann_kendall(&levels),
        corrected: corrected(&levels),
        model: fitted.map(|fitted| Model::new(&fitted, &readings, question.confidence())),
        readings,
        lines,
        forecasts,
        years,
    }
}

/// Cover of each line in each year, and the lines' names in the order of their numbers.
fn readings(years: &[(u16, Vec<LineResult>)], subject: &Subject) -> (Vec<Reading>, Vec<String>) {
    let mut names: Vec<String> =
        years.iter().flat_map(|(_, lines)| lines.iter().map(|line| line.line.clone())).collect();
    names.sort_by(|a, b| natural_order(a, b));
    names.dedup();
    let number = |line: &LineResult| names.iter().position(|name| *name == line.line).unwrap_or_default();
    let readings = years.iter().flat_map(|(year, lines)| {
        lines.iter().map(|line| Reading {
            site: 0,
            line: number(line),
            year: i32::from(*year),
            value: line.share(intercept(line, subject).low),
        })
    });
    (readings.collect(), names)
}
