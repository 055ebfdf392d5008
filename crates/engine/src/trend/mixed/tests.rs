use super::*;
use crate::num::count;
use crate::num::math::sqrt;
use crate::seed::Seed;

/// Balanced readings: lines with their own levels and slopes, years that swing.
fn readings(lines: usize, years: i32, swing: f64, left: f64, seed: u64) -> Vec<Reading> {
    let mut random = Seed::from_purpose("test mixed", &[seed]).stream();
    let mut bell = || random.normal();
    let swings: Vec<f64> = (0..years).map(|_| swing * bell()).collect();
    let mut all = Vec::new();
    for line in 0..lines {
        let (level, slope) = (20.0 + 5.0 * bell(), 0.5 + 0.4 * bell());
        for (year, swing) in (0..years).zip(&swings) {
            let value = level + slope * f64::from(year) + swing + left * bell();
            all.push(Reading { site: 0, line, year: 2015 + year, value });
        }
    }
    all
}

/// Balanced lines and years without slopes of their own are a two-way table: the variances follow from its mean squares, and
/// the slope's error from the years' own scatter about it, with years less two degrees of freedom.
#[test]
fn balanced_lines_and_years_have_a_closed_form() {
    let (lines, years) = (6, 7);
    let all = readings(lines, years, 2.0, 1.0, 1);
    let fitted = fit(&all, 2018.0, Terms { year: true, ..Terms::default() }).unwrap();
    let (l, y) = (count(lines), f64::from(years));
    let mean = |of: &dyn Fn(&Reading) -> bool| {
        let own: Vec<f64> = all.iter().filter(|one| of(one)).map(|one| one.value).collect();
        crate::num::sum::mean(&own)
    };
    let grand = mean(&|_| true);
    let line_means: Vec<f64> = (0..lines).map(|line| mean(&|one| one.line == line)).collect();
    let year_means: Vec<f64> = (0..years).map(|year| mean(&|one| one.year == 2015 + year)).collect();
    let sxx: f64 = (0..years).map(|year| f64::from(year - 3) * f64::from(year - 3)).sum();
    let slope = (0..years).zip(&year_means).map(|(year, mean)| f64::from(year - 3) * mean).sum::<f64>() / sxx;
    let off_trend: Vec<f64> =
        (0..years).zip(&year_means).map(|(year, mean)| mean - grand - slope * f64::from(year - 3)).collect();
    let ms_years = l * off_trend.iter().map(|x| x * x).sum::<f64>() / (y - 2.0);
    let ms_lines = y * line_means.iter().map(|x| (x - grand) * (x - grand)).sum::<f64>() / (l - 1.0);
    let ms_left = all
        .iter()
        .map(|one| {
            let year = usize::try_from(one.year - 2015).unwrap();
            let left = one.value - line_means[one.line] - year_means[year] + grand;
            left * left
        })
        .sum::<f64>()
        / ((l - 1.0) * (y - 1.0));
    let found = fitted.variances();
    let near = |a: f64, b: f64| assert!((a - b).abs() < 1e-9 * b.abs().max(1.0), "{a} {b}");
    near(found.left, ms_left);
    near(found.level, (ms_lines - ms_left) / y);
    near(found.year.unwrap(), (ms_years - ms_left) / l);
    let combination = fitted.slope();
    near(combination.value, slope);
    near(combination.plain_se, sqrt(ms_years / l / sxx));
    near(combination.se, combination.plain_se);
    near(combination.df, y - 2.0);
    near(combination.satterthwaite_df.unwrap(), y - 2.0);
}

#[test]
fn what_can_not_be_told_is_said() {
    let all = readings(5, 6, 1.0, 1.0, 2);
    let one_year: Vec<Reading> = all.iter().copied().filter(|one| one.year == 2015).collect();
    let no = |readings: &[Reading], terms| fit(readings, 2015.0, terms).err();
    assert_eq!(no(&one_year, Terms::default()), Some(NoFit::OneYear));
    // a single line: its years can't be told from what is left
    let one_line: Vec<Reading> = all.iter().copied().filter(|one| one.line == 0).collect();
    assert_eq!(no(&one_line, Terms { year: true, ..Terms::default() }), Some(NoFit::NotSeparable));
    // a site's years and all years are the same where there is one site
    assert_eq!(no(&all, Terms { year: true, site_year: true, slope: false }), Some(NoFit::NotSeparable));
    let exact: Vec<Reading> =
        all.iter().map(|one| Reading { value: f64::from(one.year) * 0.5, ..*one }).collect();
    assert_eq!(no(&exact, Terms::default()), Some(NoFit::NothingLeft));
}

/// Years, lines and units renamed change nothing but what they should.
#[test]
fn shift_scale_and_order_do_not_matter() {
    let mut all = readings(5, 6, 1.0, 1.0, 3);
    all.retain(|one| (one.line + usize::try_from(one.year).unwrap()) % 4 != 0);
    let terms = Terms { slope: true, year: true, site_year: false };
    let plain = fit(&all, 2017.0, terms).unwrap();
    let mut other: Vec<Reading> = all
        .iter()
        .map(|one| Reading {
            year: one.year - 1000,
            value: 3.0 * one.value + 100.0,
            line: 9 - one.line,
            ..*one
        })
        .collect();
    other.reverse();
    let other = fit(&other, 1017.0, terms).unwrap();
    let near = |a: f64, b: f64| assert!((a - b).abs() < 1e-7 * b.abs().max(1e-3), "{a} {b}");
    near(other.slope().value, 3.0 * plain.slope().value);
    near(other.slope().se, 3.0 * plain.slope().se);
    near(other.slope().df, plain.slope().df);
    near(other.level(1020.0).value, 3.0 * plain.level(2020.0).value + 100.0);
    near(other.variances().year.unwrap(), 9.0 * plain.variances().year.unwrap());
}
