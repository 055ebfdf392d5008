//! Figures that other programs worked out from the same data: testdata/reference, which also has their scripts.

use crate::changes;
use crate::tables::{Misses, number, numbers, rows};
use tautline_engine::confidence::bootstrap::{Group, Resampled};
use tautline_engine::confidence::{Method, Tail, ends};
use tautline_engine::effort::power::{Groups, Sides, TTest};
use tautline_engine::estimate::{
    CombinedStratum, Estimate, Line, SamplingError, Stratum, combined_ratio, mean, plots, ratio, strata,
};
use tautline_engine::num::count;
use tautline_engine::num::noncentral::noncentral_t_cdf;
use tautline_engine::num::quantile::{beta_quantile, chi_square_quantile, normal_quantile, t_quantile};
use tautline_engine::seed::Seed;

/// Relative tolerance of plain arithmetic done in another order.
const ARITHMETIC: f64 = 1e-12;
/// Relative tolerance of quantiles and of what is built on them.
const QUANTILE: f64 = 1e-12;
/// The same with more than 10 000 degrees of freedom, where the fraction's many terms cost a digit.
const QUANTILE_OF_MANY: f64 = 1e-11;
/// Relative tolerance of the logit interval: R reaches it by iteration.
const ITERATED: f64 = 1e-8;
/// Share of an interval's width by which limits from other draws may differ: about ten standard errors of a limit.
const CHANCE: f64 = 0.05;
/// Draws for the comparison by chance.
const DRAWS: usize = 20_000;

/// Python: quantiles, noncentral t, intervals of a mean, power, BCa from the same draws.
#[test]
fn python() {
    let mut misses = Misses::default();
    let table = rows(include_str!("../../../../testdata/reference/python.txt"), 3);
    for row in &table {
        let (given, expected) = (row[1], numbers(row[2]));
        let told = (row[0], given);
        match row[0] {
            "normal upper" => misses.within(QUANTILE, expected[0], -normal_quantile(number(given)), &told),
            "t upper" => {
                let x = numbers(given);
                let tolerance = if x[1] > 10_000.0 { QUANTILE_OF_MANY } else { QUANTILE };
                misses.within(tolerance, expected[0], -t_quantile(x[0], x[1]), &told);
            }
            "chi-square upper" => {
                let x = numbers(given);
                misses.within(QUANTILE, expected[0], chi_square_quantile(1.0 - x[0], x[1]), &told);
            }
            "beta lower" => {
                let x = numbers(given);
                misses.within(QUANTILE, expected[0], beta_quantile(x[0], x[1], x[2]), &told);
            }
            "noncentral t" => {
                let x = numbers(given);
                misses.holds((noncentral_t_cdf(x[0], x[1], x[2]) - expected[0]).abs() < 1e-13, &told);
            }
            "mean" => agree(&mut misses, &mean(&plain(given), None).unwrap(), &expected, &told),
            "mean t interval" => {
                let (name, confidence) = given.split_once(' ').expect("sample confidence");
                let estimate = mean(&plain(name), None).unwrap();
                both(
                    &mut misses,
                    QUANTILE,
                    interval(&estimate, Method::StudentT, confidence),
                    &expected,
                    &told,
                );
            }
            "power" => misses.within(1e-9, expected[0], power(given), &told),
            "log-t effective" | "logit-t effective" => {
                let (name, confidence) = given.split_once(' ').expect("sample confidence");
                let method =
                    if row[0] == "log-t effective" { Method::LogEffective } else { Method::LogitEffective };
                let estimate = ratio(&plain(name), None).unwrap();
                both(&mut misses, ITERATED, interval(&estimate, method, confidence), &expected, &told);
            }
            "unpaired" | "paired" | "paired p" | "signs" | "equivalence" | "kendall" | "hanging together"
            | "slope" | "reliability" => {
                changes::python(&mut misses, row[0], given, &expected);
            }
            // used by the row of the interval
            "bca draws" => {}
            "bca interval" => {
                let (name, confidence) = given.split_once(' ').expect("sample confidence");
                let draws =
                    table.iter().find(|row| row[0] == "bca draws" && row[1] == name).expect("its draws");
                let groups = [Group { weight: 1.0, units: plain(name) }];
                let drawn = Resampled::from_figures(&groups, numbers(draws[2])).unwrap();
                let found = drawn.ends(Tail::of_interval(number(confidence)));
                both(&mut misses, ARITHMETIC, found, &expected, &told);
            }
            other => panic!("no such kind: {other}"),
        }
    }
    misses.none();
}

/// R: ratio, strata, plots, logit-t, Welch's degrees of freedom, BCa as far as chance allows.
#[test]
fn r() {
    let mut misses = Misses::default();
    for row in rows(include_str!("../../../../testdata/reference/r.txt"), 3) {
        let (name, setting) = row[1].split_once(' ').unwrap_or((row[1], ""));
        let expected = numbers(row[2]);
        let told = (row[0], row[1]);
        match row[0] {
            "ratio" => agree(&mut misses, &ratio(&plain(name), None).unwrap(), &expected, &told),
            "ratio of a population" => {
                let population = setting.parse().expect("a count");
                agree(&mut misses, &ratio(&plain(name), Some(population)).unwrap(), &expected, &told);
            }
            "t interval" => {
                let estimate = one_less_than_lines(ratio(&plain(name), None).unwrap());
                both(&mut misses, QUANTILE, interval(&estimate, Method::StudentT, setting), &expected, &told);
            }
            "logit-t interval" => {
                let estimate = one_less_than_lines(ratio(&plain(name), None).unwrap());
                both(&mut misses, ITERATED, interval(&estimate, Method::LogitT, setting), &expected, &told);
            }
            "combined ratio" => {
                let parts = parts(name);
                let strata: Vec<CombinedStratum> = parts
                    .iter()
                    .map(|(weight, lines)| CombinedStratum { weight: *weight, lines, population: None })
                    .collect();
                agree(&mut misses, &combined_ratio(&strata).unwrap(), &expected, &told);
            }
            "strata" => agree(&mut misses, &weighted(name), &expected, &told),
            "strata df" => {
                let SamplingError::Known { df, .. } = weighted(name).error else {
                    panic!("both halves have an error")
                };
                misses.within(ARITHMETIC, expected[0], df, &told);
            }
            "plots" => {
                let lines: Vec<Vec<Line>> = parts(name).into_iter().map(|(_, lines)| lines).collect();
                agree(&mut misses, &plots(&lines, None).unwrap(), &expected, &told);
            }
            "signed rank" => changes::r(&mut misses, name, number(setting), &expected),
            "bca by chance" => {
                let parts = parts(name);
                let whole: f64 = parts.iter().map(|(area, _)| area).sum();
                let groups: Vec<Group> =
                    parts.into_iter().map(|(area, units)| Group { weight: area / whole, units }).collect();
                let mut random = Seed::from_purpose("reference", &[]).stream();
                let drawn = Resampled::draw(&groups, DRAWS, &mut random).unwrap();
                let (low, high) = drawn.ends(Tail::of_interval(number(setting)));
                let near = CHANCE * (expected[1] - expected[0]);
                misses.holds(
                    (low - expected[0]).abs() < near && (high - expected[1]).abs() < near,
                    &(told, low, high, &expected),
                );
            }
            other => panic!("no such kind: {other}"),
        }
    }
    misses.none();
}

/// The parts of an invented sample, each with its area (1 where it has none).
fn parts(name: &str) -> Vec<(f64, Vec<Line>)> {
    let table = rows(include_str!("../../../../testdata/reference/data.txt"), 4);
    let parts: Vec<(f64, Vec<Line>)> = table
        .iter()
        .filter(|row| row[0] == name)
        .map(|row| {
            let lines =
                numbers(row[2]).into_iter().zip(numbers(row[3])).map(|(y, x)| Line::new(y, x)).collect();
            (if row[1] == "-" { 1.0 } else { number(row[1]) }, lines)
        })
        .collect();
    assert!(!parts.is_empty(), "no such sample: {name}");
    parts
}

fn plain(name: &str) -> Vec<Line> {
    let [(_, lines)] = &parts(name)[..] else { panic!("{name} has parts") };
    lines.clone()
}

fn weighted(name: &str) -> Estimate {
    let strata_of_it: Vec<Stratum> = parts(name)
        .into_iter()
        .map(|(area, lines)| Stratum { weight: area, estimate: ratio(&lines, None).expect("usable lines") })
        .collect();
    strata(&strata_of_it).expect("usable strata")
}

fn power(given: &str) -> f64 {
    let [groups, sides, alpha, difference, units] = given.split(' ').collect::<Vec<_>>()[..] else {
        panic!("five settings: {given}")
    };
    let groups = if groups == "one" { Groups::One } else { Groups::Two };
    let sides = if sides == "one" { Sides::One } else { Sides::Two };
    TTest { groups, sides, alpha: number(alpha) }.power(number(difference), number(units))
}

fn interval(estimate: &Estimate, method: Method, confidence: &str) -> (f64, f64) {
    ends(estimate, method, Tail::of_interval(number(confidence))).expect("a sample with spread")
}

fn agree(misses: &mut Misses, estimate: &Estimate, expected: &[f64], told: &(&str, &str)) {
    let SamplingError::Known { se, .. } = estimate.error else { panic!("{told:?} has an error") };
    both(misses, ARITHMETIC, (estimate.value, se), expected, told);
}

/// The script gives R's intervals n − 1 degrees of freedom, whatever the lines' lengths.
fn one_less_than_lines(estimate: Estimate) -> Estimate {
    let SamplingError::Known { se, .. } = estimate.error else { panic!("a sample has an error") };
    let df = count(estimate.lines - 1);
    Estimate { error: SamplingError::Known { se, df }, ..estimate }
}

fn both(misses: &mut Misses, relative: f64, found: (f64, f64), expected: &[f64], told: &(&str, &str)) {
    misses.within(relative, expected[0], found.0, told);
    misses.within(relative, expected[1], found.1, told);
}
