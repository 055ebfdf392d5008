//! A trend in sentences, the plain one first.

use super::{Coming, Forecast, NoP, RegionTrend, SiteTrend, TrendFigure};
use crate::explain::{confidence_value, goal_words, subject_words};
use crate::message::{Message, Value};

fn points(slope: f64) -> Value {
    Value::Number(slope * 100.0, 2)
}

fn chance(p: f64) -> Value {
    if p < 0.0005 { Value::Word("under-a-thousandth") } else { Value::Number(p, 3) }
}

/// A year for people: the whole one in which it falls.
fn year(year: f64) -> Value {
    Value::Number(year.floor(), 0)
}

/// What is said of a figure.
pub fn sentences(trend: &SiteTrend, figure: &TrendFigure) -> Vec<Message> {
    let mut said = vec![first(trend, figure)];
    match &figure.model {
        Err(reason) => said.push(Message::new("trend-no-model").with("reason", Value::Word(reason.code()))),
        Ok(model) => {
            let se = Value::Number(model.slope.se * 100.0, 2);
            match (model.p, model.interval) {
                (Ok(p), Some((low, high))) => said.push(
                    Message::new("trend-by-model")
                        .with("slope", points(model.slope.value))
                        .with("low", points(low))
                        .with("high", points(high))
                        .with("confidence", confidence_value(trend.confidence))
                        .with("se", se)
                        .with("df", Value::Number(model.slope.df, 1))
                        .with("p", chance(p)),
                ),
                (Err(NoP::NoYears), _) => {
                    said.push(Message::new("trend-no-years").with("slope", points(model.slope.value)));
                }
                _ => {}
            }
            let root = |variance: f64| Value::Number(variance.max(0.0).sqrt() * 100.0, 1);
            said.extend(model.variances.year.filter(|_| model.p.is_ok()).map(|of_years| {
                Message::new("trend-swings")
                    .with("years", root(of_years))
                    .with("lines", root(model.variances.level))
                    .with("left", root(model.variances.left))
            }));
        }
    }
    if let (Ok(plain), Ok(p)) = (figure.kendall.p, figure.corrected.p)
        && (figure.corrected.times - 1.0).abs() > 1e-12
    {
        said.push(
            Message::new("trend-hangs-together")
                .with("plain", chance(plain))
                .with("p", chance(p))
                .with("times", Value::Number(figure.corrected.times, 1)),
        );
    }
    said.extend(figure.forecasts.iter().map(|one| forecast(trend, figure, one)));
    if figure.forecasts.iter().any(|one| matches!(one.coming, Coming::Reached { .. })) {
        said.push(Message::new("forecast-caution"));
    }
    said
}

fn first(trend: &SiteTrend, figure: &TrendFigure) -> Message {
    let by_model = figure.model.as_ref().ok().and_then(|model| Some((model.p.ok()?, model.slope.value)));
    let without = figure.kendall.p.map(|p| (p, figure.slope.unwrap_or_default()));
    let (code, slope) = match by_model.map_or(without, Ok) {
        Err(_) => ("trend-too-few-visits", 0.0),
        Ok((p, slope)) if p >= 1.0 - trend.confidence => ("trend-not-shown", slope),
        Ok((_, slope)) if slope >= 0.0 => ("trend-rises", slope),
        Ok((_, slope)) => ("trend-falls", slope),
    };
    Message::new(code)
        .with("what", subject_words(&figure.subject))
        .with("slope", points(slope.abs()))
        .with("visits", figure.years.len())
        .with("confidence", confidence_value(trend.confidence))
}

fn forecast(trend: &SiteTrend, figure: &TrendFigure, one: &Forecast) -> Message {
    let about = |code: &'static str| {
        Message::new(code)
            .with("what", subject_words(&figure.subject))
            .with("goal", goal_words(&one.goal.wanted))
            .with("value", Value::Share(one.value, 1))
            .with("confidence", confidence_value(trend.confidence))
    };
    match one.coming {
        Coming::NotShown => about("forecast-not-shown"),
        Coming::NotBy(last) => about("forecast-not-by").with("last", year(last)),
        Coming::Reached { year: at, earliest, latest } => {
            let (end, open) = if one.stands {
                ("forecast-lost", "forecast-lost-or-never")
            } else {
                ("forecast-met", "forecast-met-or-never")
            };
            let code = if latest.is_some() { end } else { open };
            let message = about(code).with("year", year(at)).with("earliest", year(earliest));
            match latest {
                Some(latest) => message.with("latest", year(latest)),
                None => message,
            }
        }
    }
}

/// What is said of all sites together.
pub fn region_sentences(trend: &RegionTrend) -> Vec<Message> {
    let (low, high) = trend.region.interval(trend.confidence);
    let mut said = vec![
        Message::new(if trend.by_area { "region-by-area" } else { "region-alike" })
            .with("sites", trend.sites.len())
            .with("slope", points(trend.region.slope))
            .with("low", points(low))
            .with("high", points(high))
            .with("confidence", confidence_value(trend.confidence))
            .with("df", Value::Number(trend.region.df, 0)),
    ];
    said.push(match trend.year_variance {
        Some(shared) => {
            Message::new("region-shares-years").with("years", Value::Number(shared.sqrt() * 100.0, 1))
        }
        None => Message::new("region-shares-all-years"),
    });
    if trend.sites.iter().any(|site| site.drawn.is_some()) {
        said.push(Message::new("region-drawn"));
    }
    said
}
