//! Many years.

use super::{Answer, unknown};
use crate::example::Example;
use crate::printed::{Found, number, numbers};
use tautline_engine::num::count;
use tautline_engine::trend::mixed::{Reading, Terms, fit};
use tautline_engine::trend::robust::{mann_kendall, slope_interval, theil_sen};

fn years_of(example: &Example) -> Vec<i32> {
    example.needed("years").split(',').map(|year| year.trim().parse().expect("a year")).collect()
}

/// Lines read over several years, by the model of lines and years.
pub(super) fn years(example: &Example) -> Answer<'_> {
    let years = years_of(example);
    let readings: Vec<Reading> = example
        .all("line")
        .enumerate()
        .flat_map(|(line, (_, covers))| {
            let covers = numbers(covers);
            assert_eq!(covers.len(), years.len(), "a cover for each year");
            years.clone().into_iter().zip(covers).map(move |(year, value)| Reading {
                site: 0,
                line,
                year,
                value,
            })
        })
        .collect();
    let origin = years.iter().map(|&year| f64::from(year)).sum::<f64>() / count(years.len());
    let confidence = number(example.needed("confidence"));
    let fitted = fit(&readings, origin, Terms { year: true, ..Terms::default() }).expect("a fit");
    Box::new(move |key| {
        let slope = fitted.slope();
        Ok(match key {
            "slope" => slope.value.into(),
            "standard error" => slope.se.into(),
            "degrees of freedom" => slope.df.into(),
            "t" => (slope.value / slope.se).into(),
            "p" => slope.p().into(),
            "interval" => {
                let (low, high) = slope.interval(confidence);
                Found::Range(low, high)
            }
            other => return unknown(other),
        })
    })
}

/// One value a year, without a model.
pub(super) fn series(example: &Example) -> Answer<'_> {
    let values = numbers(example.needed("values"));
    let times: Vec<f64> = match example.given("years") {
        Some(_) => years_of(example).into_iter().map(f64::from).collect(),
        None => (0..values.len()).map(count).collect(),
    };
    let confidence = example.given("confidence").map(number);
    let points: Vec<(f64, f64)> = times.into_iter().zip(values.iter().copied()).collect();
    let test = mann_kendall(&values);
    Box::new(move |key| {
        Ok(match key {
            "S" => test.s.into(),
            "variance of S" => test.variance.into(),
            "Z" => test.z.into(),
            "p" => test.p.map_err(|why| why.code().to_owned())?.into(),
            "p is" => if test.exact { "exact" } else { "approximate" }.into(),
            "slope" => theil_sen(&points).ok_or("no two times differ")?.into(),
            "interval" => {
                let confidence = confidence.ok_or("it has no confidence")?;
                let (low, high) =
                    slope_interval(&points, confidence).ok_or("too few visits to be so sure")?;
                Found::Range(low, high)
            }
            other => return unknown(other),
        })
    })
}
