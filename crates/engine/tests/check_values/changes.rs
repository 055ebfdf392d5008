//! Changes, trends and the agreement of readers as other programs work them out: testdata/reference.

use crate::tables::{Misses, number, numbers, rows};
use tautline_engine::agreement::reliability::{Form, Of, mean_squares};
use tautline_engine::change::{Pair, equivalence_p, p_value, paired, ranks, signs, unpaired};
use tautline_engine::estimate::{Estimate, Line, SamplingError, mean_of};
use tautline_engine::seed::Seed;
use tautline_engine::trend::robust::{mann_kendall, theil_sen};
use tautline_engine::trend::serial::corrected;

/// Relative tolerance of arithmetic done in another order, and of chances built on quantiles.
const NEAR: f64 = 1e-11;

/// The same where another program takes a table apart by least squares.
const TABLES: f64 = 1e-9;

/// One row of SciPy's.
pub(crate) fn python(misses: &mut Misses, kind: &str, given: &str, expected: &[f64]) {
    let told = (kind, given);
    match kind {
        "unpaired" => {
            let [earlier, later, _] = visits(given);
            let change = unpaired(
                &mean_of(&earlier, None).expect("usable lines"),
                &mean_of(&later, None).expect("usable lines"),
            );
            let (t, df) = t_and_df(&change);
            for (expected, value) in
                expected.iter().zip([change.value, t, df, p_value(&change).expect("usable lines")])
            {
                misses.within(NEAR, *expected, value, &told);
            }
        }
        "paired" => {
            let change = paired(&pairs(given)).expect("usable lines");
            let (t, df) = t_and_df(&change);
            for (expected, value) in expected.iter().zip([change.value, t, df]) {
                misses.within(NEAR, *expected, value, &told);
            }
        }
        "paired p" => {
            misses.within(
                NEAR,
                expected[0],
                p_value(&paired(&pairs(given)).expect("usable lines")).expect("usable lines"),
                &told,
            );
        }
        "equivalence" => {
            let (name, margin) = given.split_once(' ').expect("name margin");
            let change = paired(&pairs(name)).expect("usable lines");
            misses.within(
                NEAR,
                expected[0],
                equivalence_p(&change, number(margin)).expect("usable lines"),
                &told,
            );
        }
        "signs" => {
            let mut random = Seed::from_purpose("reference", &[]).stream();
            let (p, _) = signs::p_value(&differences(given), 0, &mut random);
            misses.within(NEAR, expected[0], p, &told);
        }
        "kendall" => {
            let values: Vec<f64> = series(given).iter().map(|(_, value)| *value).collect();
            let test = mann_kendall(&values);
            misses.within(NEAR, expected[0], test.s, &told);
            misses.within(NEAR, expected[1], test.p.expect("usable lines"), &told);
        }
        "hanging together" => {
            let values = numbers(given);
            let (test, plain) = (corrected(&values), mann_kendall(&values));
            misses.within(NEAR, expected[2], test.published * plain.variance, &told);
            // a variance below that of visits that don't hang together isn't taken
            if test.published >= 1.0 {
                misses.within(NEAR, expected[0], test.z, &told);
                misses.within(NEAR, expected[1], test.p.expect("enough visits"), &told);
            }
        }
        "slope" => misses.within(NEAR, expected[0], theil_sen(&series(given)).expect("usable lines"), &told),
        "reliability" => {
            let (form, table) = given.split_once(' ').expect("form table");
            let form = match form {
                "one-way" => Form::OneWay,
                "agreement" => Form::Agreement,
                _ => Form::Consistency,
            };
            let table = numbers(table);
            let squares = mean_squares(&rows_of(&table)).expect("a whole table");
            let (low, high) = squares.interval(form, Of::OneReader, 0.9);
            let found = [squares.reliability(form, Of::OneReader), low, high];
            for (expected, value) in expected.iter().zip(found) {
                misses.within(TABLES, *expected, value, &told);
            }
        }
        other => panic!("no such kind: {other}"),
    }
}

/// One row of R's: statistic, chance, median change, low and high end.
pub(crate) fn r(misses: &mut Misses, name: &str, confidence: f64, expected: &[f64]) {
    let [earlier, later, _] = visits(name);
    let change: Vec<f64> = earlier.iter().zip(later).map(|(a, b)| b - a).collect();
    let test = ranks::signed_rank(&change).expect("usable lines");
    let (low, high, _) = ranks::median_interval(&change, confidence).expect("usable lines");
    let found = [test.above, test.two_sided, ranks::median_change(&change).expect("usable lines"), low, high];
    for (expected, value) in expected.iter().zip(found) {
        misses.within(NEAR, *expected, value, &name);
    }
}

fn visits(name: &str) -> [Vec<f64>; 3] {
    let table = rows(include_str!("../../../../testdata/reference/visits.txt"), 4);
    let row = table.iter().find(|row| row[0] == name).unwrap_or_else(|| panic!("no such lines: {name}"));
    [numbers(row[1]), numbers(row[2]), if row[3] == "-" { Vec::new() } else { numbers(row[3]) }]
}

fn pairs(name: &str) -> Vec<Pair> {
    let [earlier, later, lengths] = visits(name);
    let both = earlier.into_iter().zip(later).zip(lengths);
    both.map(|((a, b), length)| Pair { earlier: Line::new(a, length), later: Line::new(b, length) }).collect()
}

fn differences(name: &str) -> Vec<f64> {
    pairs(name).into_iter().map(Pair::difference).collect()
}

fn t_and_df(change: &Estimate) -> (f64, f64) {
    let SamplingError::Known { se, df } = change.error else { panic!("has an error") };
    (change.value / se, df)
}

/// A table after its numbers of lines and readers.
fn rows_of(table: &[f64]) -> Vec<Vec<f64>> {
    let [_, readers, cells @ ..] = table else { panic!("lines readers cells") };
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a small count")]
    let readers = *readers as usize;
    cells.chunks(readers).map(<[f64]>::to_vec).collect()
}

fn series(given: &str) -> Vec<(f64, f64)> {
    numbers(given).chunks(2).map(|pair| (pair[0], pair[1])).collect()
}
