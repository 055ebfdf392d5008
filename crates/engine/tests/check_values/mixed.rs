//! Mixed models of lines and years as lme4, pbkrtest and lmerTest work them out: testdata/reference.

use crate::tables::{Misses, number, numbers, rows};
use tautline_engine::trend::mixed::{Combination, Reading, Terms, Variances, fit};

const ORIGIN: f64 = 2018.0;
/// Level, slope and their plain errors.
const ESTIMATES: f64 = 5e-6;
/// Variances, and what is built on them, as exactly as the other program's search ends.
const VARIANCES: f64 = 1e-4;
/// Satterthwaite's degrees of freedom: the other program takes its curvature by differences.
const CURVATURE: f64 = 1e-3;

fn readings(name: &str) -> Vec<Reading> {
    let table = rows(include_str!("../../../../testdata/reference/lines.txt"), 2);
    let row = table.iter().find(|row| row[0] == name).unwrap_or_else(|| panic!("no such lines: {name}"));
    let cells: Vec<&str> = row[1].split_whitespace().collect();
    let whole = |cell: &str| cell.parse().expect("a whole number");
    cells
        .chunks(4)
        .map(|cell| Reading {
            site: whole(cell[0]),
            line: whole(cell[1]),
            year: cell[2].parse().expect("a year"),
            value: number(cell[3]),
        })
        .collect()
}

fn variances(found: Variances) -> Vec<f64> {
    let Variances { level, level_and_slope, slope, year, site_year, left } = found;
    [Some(level), level_and_slope, slope, year, site_year, Some(left)].into_iter().flatten().collect()
}

/// lme4 1.1, pbkrtest 0.5, lmerTest 3.1; lines invented.
#[test]
fn lines_and_years() {
    let mut misses = Misses::default();
    for row in rows(include_str!("../../../../testdata/reference/mixed.txt"), 3) {
        let (name, parts) = row[1].split_once(' ').expect("name and parts");
        let has = |part| parts.split(' ').any(|own| own == part);
        let terms = Terms { slope: has("slope"), year: has("year"), site_year: has("site_year") };
        let fitted = fit(&readings(name), ORIGIN, terms).expect("a fit");
        let expected = numbers(row[2]);
        let (level, slope): (Combination, Combination) = (fitted.level(ORIGIN), fitted.slope());
        // ours may lie higher, by what the other's search left
        let gain = fitted.ln_likelihood() - expected[0];
        misses.holds(gain > -1e-8 && gain < 1e-6, &format!("{gain} {row:?}"));
        for (expected, found) in
            expected[1..5].iter().zip([level.value, slope.value, level.plain_se, slope.plain_se])
        {
            misses.within(ESTIMATES, *expected, found, &row);
        }
        for (expected, found) in expected[5..9].iter().zip([level.se, slope.se, level.df, slope.df]) {
            misses.within(VARIANCES, *expected, found, &row);
        }
        misses.within(CURVATURE, expected[9], slope.satterthwaite_df.expect("bent downwards"), &row);
        let found = variances(fitted.variances());
        assert_eq!(found.len(), expected.len() - 10);
        for (expected, found) in expected[10..].iter().zip(found) {
            misses.within(VARIANCES, *expected, found, &row);
        }
    }
    misses.none();
}
