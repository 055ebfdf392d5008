//! Figures printed in handbooks, papers and reference outputs, each row with its source: testdata/published.

use crate::tables::{Misses, count_or_none, number, numbers, rows};
use tautline_engine::confidence::{Method, Tail, ends};
use tautline_engine::effort::power::{Groups, Sides, TTest};
use tautline_engine::effort::size;
use tautline_engine::estimate::{
    CombinedStratum, Estimate, Line, Method as How, SamplingError, Stratum, TwoStages, combined_ratio,
    effective_lines, mean_of, ratio, strata,
};
use tautline_engine::num::math::sqrt;
use tautline_engine::num::quantile::{chi_square_quantile, normal_quantile, t_quantile};

#[test]
fn quantiles() {
    let mut misses = Misses::default();
    for row in rows(include_str!("../../../../testdata/published/quantiles.txt"), 5) {
        let below = 1.0 - number(row[2]);
        let point = match row[0] {
            "t upper" => t_quantile(below, number(row[1])),
            "normal upper" => normal_quantile(below),
            "chi-square upper" => chi_square_quantile(below, number(row[1])),
            other => panic!("no such kind: {other}"),
        };
        misses.printed(row[3], point, &row);
    }
    misses.none();
}

#[test]
fn power() {
    let mut misses = Misses::default();
    for row in rows(include_str!("../../../../testdata/published/power.txt"), 8) {
        let groups = if row[1] == "one" { Groups::One } else { Groups::Two };
        let sides = if row[2] == "one" { Sides::One } else { Sides::Two };
        let test = TTest { groups, sides, alpha: number(row[3]) };
        let units = || test.units(number(row[4]), number(row[5])).expect("between two and a million units");
        let worked_out = match row[0] {
            "power" => test.power(number(row[4]), number(row[5])),
            "power unlike" => {
                let sizes = numbers(row[5]);
                test.power_of_unlike_groups(number(row[4]), sizes[0], sizes[1])
            }
            "units" => units(),
            "whole units" => units().ceil(),
            "detectable" => test.detectable(number(row[4]), number(row[5])).expect("some difference is seen"),
            other => panic!("no such kind: {other}"),
        };
        misses.printed(row[6], worked_out, &row);
    }
    misses.none();
}

#[test]
fn sizes() {
    let mut misses = Misses::default();
    for row in rows(include_str!("../../../../testdata/published/sizes.txt"), 4) {
        let interval =
            |x: &[f64]| size::for_interval(x[0], x[1], x[2]).expect("between two and a million units");
        let x = numbers(row[1]);
        let worked_out = match row[0] {
            "share of mean" => size::for_share_of_mean(t_quantile(x[3], x[2] - 1.0), x[1], x[4] * x[0]),
            "half width" => size::for_half_width(x[0], x[1], x[2]),
            "new units" => size::for_change_of_new_units(x[0], x[1], x[2], x[3]),
            "same units" => size::for_change_of_same_units(x[0], x[1], x[2], x[3]),
            "deviation of differences" => size::deviation_of_differences(x[0], x[1]),
            "population" => size::of_population(x[0], x[1]),
            "interval" => interval(&x),
            "whole interval" => interval(&x).ceil(),
            "corrected" => {
                let plain = row[1].split(' ').next().expect("a count").parse().expect("a count");
                f64::from(u32::try_from(size::corrected(plain, x[1], x[2])).expect("a small count"))
            }
            other => panic!("no such kind: {other}"),
        };
        misses.printed(row[2], worked_out, &row);
    }
    misses.none();
}

#[test]
fn estimates() {
    let mut misses = Misses::default();
    for row in rows(include_str!("../../../../testdata/published/estimates.txt"), 6) {
        let (value, se) = match row[0] {
            "mean" => {
                let (values, population) = row[1].split_once(':').expect("values : population");
                told(&mean_of(&numbers(values), count_or_none(population)).unwrap())
            }
            "ratio" => {
                let cells: Vec<&str> = row[1].split(':').collect();
                told(&ratio(&lines(cells[0], cells[1]), count_or_none(cells[2])).unwrap())
            }
            "strata" => told(&strata(&row[1].split(';').map(stratum_of_values).collect::<Vec<_>>()).unwrap()),
            "summaries" => {
                told(&strata(&row[1].split(';').map(stratum_of_summary).collect::<Vec<_>>()).unwrap())
            }
            "combined" => told(&combined(row[1])),
            "two stages" => (two_stages(&numbers(row[1])), 0.0),
            "intraclass" => {
                let plots: Vec<Vec<Line>> = row[1]
                    .split(';')
                    .map(|values| numbers(values).iter().map(|&y| Line::new(y, 1.0)).collect())
                    .collect();
                (effective_lines(&plots).unwrap().expect("the plots differ").intraclass, 0.0)
            }
            other => panic!("no such kind: {other}"),
        };
        misses.printed(row[3], value * number(row[2]), &row);
        if row[4] != "-" {
            misses.printed(row[4], se * number(row[2]), &row);
        }
    }
    misses.none();
}

/// The t intervals of R's `t.test`.
#[test]
fn intervals() {
    let mut misses = Misses::default();
    for row in rows(include_str!("../../../../testdata/published/intervals.txt"), 6) {
        let estimate = mean_of(&numbers(row[0]), None).unwrap();
        let (low, high) = ends(&estimate, Method::StudentT, Tail::of_interval(number(row[1]))).unwrap();
        misses.printed(row[2], estimate.value, &row);
        misses.printed(row[3], low, &row);
        misses.printed(row[4], high, &row);
    }
    misses.none();
}

fn told(estimate: &Estimate) -> (f64, f64) {
    match estimate.error {
        SamplingError::Known { se, .. } => (estimate.value, se),
        SamplingError::Unknown(_) => (estimate.value, f64::NAN),
    }
}

fn lines(intercepts: &str, lengths: &str) -> Vec<Line> {
    let (y, x) = (numbers(intercepts), numbers(lengths));
    assert_eq!(y.len(), x.len());
    y.into_iter().zip(x).map(|(y, x)| Line::new(y, x)).collect()
}

fn stratum_of_values(cell: &str) -> Stratum {
    let (head, values) = cell.split_once(':').expect("area population : values");
    let (area, population) = head.trim().split_once(' ').expect("area population");
    let estimate = mean_of(&numbers(values), count_or_none(population)).expect("values of one stratum");
    Stratum { weight: number(area), estimate }
}

/// Variance of a mean under drawing without replacement, as printed in every handbook: (1 − n/N) s²/n.
fn stratum_of_summary(cell: &str) -> Stratum {
    let [population, units, value, variance] = numbers(cell)[..] else { panic!("four numbers: {cell}") };
    let se = sqrt((1.0 - units / population) * variance / units);
    let error = SamplingError::Known { se, df: units - 1.0 };
    Stratum {
        weight: population,
        estimate: Estimate { value, error, lines: 0, units: 0, method: How::MeanOfValues },
    }
}

fn combined(cell: &str) -> Estimate {
    let parts: Vec<Vec<&str>> = cell.split(';').map(|part| part.split(':').collect()).collect();
    let lines: Vec<Vec<Line>> = parts.iter().map(|part| lines(part[1], part[2])).collect();
    let strata: Vec<CombinedStratum> = parts
        .iter()
        .zip(&lines)
        .map(|(part, lines)| {
            let (weight, population) = part[0].trim().split_once(' ').expect("weight population");
            CombinedStratum { weight: number(weight), lines, population: count_or_none(population) }
        })
        .collect();
    combined_ratio(&strata).expect("usable strata")
}

fn two_stages(x: &[f64]) -> f64 {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "small counts from a table")]
    let whole = |x: f64| x as usize;
    TwoStages {
        between: x[0],
        within: x[1],
        plots: whole(x[2]),
        per_plot: whole(x[3]),
        drawn_plots: x[2] / x[4],
        drawn_units: x[3] / x[5],
    }
    .variance_of_mean()
}
