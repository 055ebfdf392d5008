//! Several lines: the site's cover, its error, its interval, the verdict.

use super::{Answer, unknown};
use crate::example::Example;
use crate::printed::{Found, goal, number, numbers};
use tautline_engine::confidence::{Bounds, Method, Tail, ends, zeros};
use tautline_engine::estimate::{
    Estimate, Line, Method as Worked, SamplingError, Stratum, effective_lines, of_lines, plots, strata,
};
use tautline_engine::num::math::sqrt;
use tautline_engine::num::quantile::t_quantile;
use tautline_engine::verdict::decide;

/// “3 m of 30 m”, or “3, 6 and 9 m of 30 m” as “3, 6, 9 m of 30 m”.
fn lines_of(text: &str) -> Vec<Line> {
    let (canopy, line) = text.split_once(" of ").unwrap_or_else(|| panic!("“{text}” has no “ of ”"));
    let line = number(line);
    numbers(canopy).into_iter().map(|canopy| Line::new(canopy, line)).collect()
}

/// The estimate of an example with lines, strata or plots.
pub(super) fn estimate(example: &Example) -> (Estimate, Vec<Vec<Line>>) {
    let in_strata: Vec<(f64, Vec<Line>)> = example
        .all("stratum")
        .map(|(name, canopy)| {
            let area = name.rsplit_once(", ").unwrap_or_else(|| panic!("“{name}” has no area")).1;
            (number(area), lines_of(canopy))
        })
        .collect();
    let in_plots: Vec<Vec<Line>> = example.all("plot").map(|(_, canopy)| lines_of(canopy)).collect();
    let worked = |lines: &[Line]| of_lines(lines, None).expect("lines that can be reckoned with");
    if !in_strata.is_empty() {
        let parts: Vec<Stratum> = in_strata
            .iter()
            .map(|(weight, lines)| Stratum { weight: *weight, estimate: worked(lines) })
            .collect();
        return (strata(&parts).expect("strata that can be reckoned with"), Vec::new());
    }
    if !in_plots.is_empty() {
        return (plots(&in_plots, None).expect("plots that can be reckoned with"), in_plots);
    }
    let lines: Vec<Line> =
        example.all("line").chain(example.all("lines")).flat_map(|(_, canopy)| lines_of(canopy)).collect();
    (worked(&lines), vec![lines])
}

/// The site's figure from its lines.
pub(super) fn out(example: &Example) -> Answer<'_> {
    let (estimate, plots) = estimate(example);
    let more = of_estimate(example, estimate.clone());
    Box::new(move |key| match key {
        "standard deviation of lines" => {
            let SamplingError::Known { se, .. } = estimate.error else { return unknown(key) };
            if estimate.method != Worked::MeanOfLines {
                return unknown(key);
            }
            Ok((se * sqrt(tautline_engine::num::count(estimate.lines))).into())
        }
        "worked out as" => Ok(match estimate.method {
            Worked::MeanOfLines => "mean of lines",
            Worked::RatioOfSums => "ratio of sums",
            Worked::MeanOfPlots => "mean of plots",
            Worked::RatioOfPlots => "ratio of plots",
            _ => return unknown(key),
        }
        .into()),
        "worth in lines laid apart" => effective_lines(&plots)
            .ok()
            .flatten()
            .map(|worth| Found::from(worth.effective))
            .ok_or_else(|| "no worth".to_owned()),
        "alikeness within plots" => effective_lines(&plots)
            .ok()
            .flatten()
            .map(|worth| Found::from(worth.intraclass))
            .ok_or_else(|| "no worth".to_owned()),
        _ => more(key),
    })
}

/// A figure with its error, as given.
pub(super) fn figure(example: &Example) -> Answer<'_> {
    let error = SamplingError::Known {
        se: number(example.needed("standard error")),
        df: number(example.needed("degrees of freedom")),
    };
    let value = number(example.needed("cover"));
    of_estimate(example, Estimate { value, error, lines: 0, units: 0, method: Worked::MeanOfLines })
}

/// Interval, bounds and verdict.
fn of_estimate(example: &Example, estimate: Estimate) -> Answer<'_> {
    let method = match example.given("interval") {
        None | Some("logit-t with effective degrees of freedom") => Method::LogitEffective,
        Some("logit-t") => Method::LogitT,
        Some("Student's t") => Method::StudentT,
        Some("log-t") => Method::LogT,
        Some(other) => panic!("“{other}” is no interval"),
    };
    let confidence = example.given("confidence").map_or(0.9, number);
    let goal = example.given("goal").map(goal);
    Box::new(move |key| {
        let SamplingError::Known { se, df } = estimate.error else {
            return Err("it has no error".to_owned());
        };
        let both = |tail| ends(&estimate, method, tail).map_err(|why| why.code().to_owned());
        let effective = method.df(estimate.value, se, df);
        Ok(match key {
            "cover" => estimate.value.into(),
            "standard error" => se.into(),
            "degrees of freedom" => df.into(),
            "effective degrees of freedom" => effective.into(),
            "t for the interval" => {
                t_quantile(1.0 - Tail::of_interval(confidence).probability(), effective).into()
            }
            "t for a bound" => t_quantile(1.0 - Tail::of_bound(confidence).probability(), effective).into(),
            "interval" => {
                let (low, high) = both(Tail::of_interval(confidence))?;
                Found::Range(low, high)
            }
            "lower bound" => both(Tail::of_bound(confidence))?.0.into(),
            "upper bound" => both(Tail::of_bound(confidence))?.1.into(),
            "verdict" => {
                let (lower, upper) = both(Tail::of_bound(confidence))?;
                let goal = goal.ok_or("it has no goal")?;
                match decide(goal, Bounds { lower, upper }).code() {
                    "not-met" => "not met",
                    "not-yet-shown" => "not yet shown",
                    code => code,
                }
                .into()
            }
            other => return unknown(other),
        })
    })
}

/// Lines on which nothing was found.
pub(super) fn empty(example: &Example) -> Answer<'_> {
    let lines: usize = example.needed("lines").parse().expect("a number of lines");
    let confidence = number(example.needed("confidence"));
    let where_present = example.given("cover where there are any").map(number);
    Box::new(move |key| match (key, where_present) {
        ("lines with shrubs, at most", _) => Ok(zeros::share_of_lines_at_most(lines, confidence).into()),
        ("cover, at most", Some(cover)) => Ok(zeros::cover_at_most(lines, confidence, cover).into()),
        _ => unknown(key),
    })
}
