//! Change, turnover, trend, and readers side by side.

use tautline_engine::agreement::habits::{Habit, Sheets, habits};
use tautline_engine::agreement::limits;
use tautline_engine::agreement::patches::matched;
use tautline_engine::agreement::reliability::{Form, Of, mean_squares};
use tautline_engine::change::{
    Pair, Reread, align::align, combined, largest_hidden, lines_to_see, p_value, paired, ranks, signs,
    smallest_seen, tape::turnover, unpaired,
};
use tautline_engine::confidence::Tail;
use tautline_engine::estimate::{Estimate, Line, SamplingError, of_lines};
use tautline_engine::length::Length;
use tautline_engine::seed::Seed;
use tautline_engine::stretch::{Stretch, total, union};
use tautline_engine::trend::robust::{mann_kendall, slope_interval, theil_sen};

use crate::inputs::Inputs;
use crate::table::Table;

const SITES: u64 = 6;
const INVENTED: &str = "the invented lines have a length and an intercept of nought or more";

pub(crate) fn rows(table: &mut Table) {
    let mut inputs = Inputs::new(8);
    for site in 0..SITES {
        change_rows(table, &mut inputs, site);
        tape_rows(table, &mut inputs, site);
        trend_rows(table, &mut inputs, site);
        reader_rows(table, &mut inputs, site);
    }
}

fn change_rows(table: &mut Table, inputs: &mut Inputs, site: u64) {
    let pairs: Vec<Pair> = (0..5 + inputs.below(20))
        .map(|_| {
            let length = inputs.between(20.0, 40.0);
            let earlier = length * inputs.between(0.0, 0.5);
            let later = earlier * inputs.between(0.7, 1.5);
            Pair { earlier: Line::new(earlier, length), later: Line::new(later, length) }
        })
        .collect();
    let level = |of: fn(&Pair) -> Line| {
        let lines: Vec<Line> = pairs.iter().map(of).collect();
        of_lines(&lines, None).expect(INVENTED)
    };
    let same = paired(&pairs).expect(INVENTED);
    let other = unpaired(&level(|pair| pair.earlier), &level(|pair| pair.later));
    let both = combined(&same, &other).expect("invented lines vary");
    for (design, change) in [("paired", &same), ("unpaired", &other), ("both", &both)] {
        estimate_rows(table, &format!("change {site} {design}"), change);
    }
    let differences: Vec<f64> = pairs.iter().map(|pair| pair.difference()).collect();
    let mut random = Seed::from_purpose("golden signs", &[site]).stream();
    table.real(format_args!("change {site} signs"), signs::p_value(&differences, 999, &mut random).0);
    if let Some(test) = ranks::signed_rank(&differences) {
        table.real(format_args!("change {site} signed rank"), test.two_sided);
    }
    if let Some((low, high, confidence)) = ranks::median_interval(&differences, 0.9) {
        table.digest(format_args!("change {site} median"), [low, high, confidence]);
    }
}

fn estimate_rows(table: &mut Table, label: &str, change: &Estimate) {
    table.real(format_args!("{label} value"), change.value);
    if let SamplingError::Known { se, df } = change.error {
        table.real(format_args!("{label} se"), se);
        table.real(format_args!("{label} df"), df);
    }
    table.real(format_args!("{label} p"), p_value(change).unwrap_or(f64::NAN));
    let hidden = largest_hidden(change, Tail::of_bound(0.9));
    table.real(format_args!("{label} hidden"), hidden.unwrap_or(f64::NAN));
    let seen = smallest_seen(change, 0.9, 0.8).ok().flatten();
    table.real(format_args!("{label} seen"), seen.unwrap_or(f64::NAN));
    let lines = lines_to_see(change, Reread::SameLines, 0.03, 0.9, 0.8).ok().flatten();
    table.row(format_args!("{label} lines"), lines.map_or("none".to_owned(), |lines| lines.to_string()));
}

fn tape_rows(table: &mut Table, inputs: &mut Inputs, site: u64) {
    let millimetres = |number: u32| Length::from_nanometres(i64::from(number) * 1_000_000);
    let mut patches = || {
        let patches = (0..15).filter_map(|_| {
            let start = inputs.below(29_000);
            Stretch::new(millimetres(start), millimetres(start + 50 + inputs.below(900)))
        });
        union(patches.collect::<Vec<_>>())
    };
    let (earlier, later) = (patches(), patches());
    let change = turnover(&earlier, &later);
    for (what, stretches) in [("gained", &change.gained), ("lost", &change.lost), ("kept", &change.kept)] {
        table.row(format_args!("tape {site} {what}"), total(stretches).nanometres());
    }
    for (what, later) in [("strange", &later), ("same", &earlier)] {
        let found = align(&earlier, later, millimetres(30_000), millimetres(500));
        table.row(format_args!("tape {site} {what} shift"), found.shift.nanometres());
        table.real(format_args!("tape {site} {what} stretch"), found.stretch);
        table.row(format_args!("tape {site} {what}"), found.pairing.code());
    }
}

fn trend_rows(table: &mut Table, inputs: &mut Inputs, site: u64) {
    let mut year = 2000.0;
    let visits: Vec<(f64, f64)> = (0..4 + inputs.below(9))
        .map(|_| {
            year += f64::from(1 + inputs.below(3));
            (year, inputs.between(0.1, 0.3) + 0.01 * (year - 2000.0))
        })
        .collect();
    let values: Vec<f64> = visits.iter().map(|(_, value)| *value).collect();
    let test = mann_kendall(&values);
    table.real(format_args!("trend {site} z"), test.z);
    table.real(format_args!("trend {site} p"), test.p.unwrap_or(f64::NAN));
    table.real(format_args!("trend {site} slope"), theil_sen(&visits).unwrap_or(f64::NAN));
    if let Some((low, high)) = slope_interval(&visits, 0.9) {
        table.digest(format_args!("trend {site} slope interval"), [low, high]);
    }
}

fn reader_rows(table: &mut Table, inputs: &mut Inputs, site: u64) {
    let covers: Vec<Vec<f64>> = (0..4 + inputs.below(6))
        .map(|_| {
            let cover = inputs.between(0.05, 0.4);
            (0..3).map(|_| cover * inputs.between(0.9, 1.2)).collect()
        })
        .collect();
    let differences: Vec<f64> = covers.iter().map(|row| row[1] - row[0]).collect();
    let found = limits(&differences, 0.95).expect("four lines or more");
    let (low, high) = found.bias_interval(0.9);
    table.digest(
        format_args!("readers {site} limits"),
        [found.bias, found.sd, found.lower, found.upper, low, high],
    );
    let squares = mean_squares(&covers).expect("every reader read every line");
    for form in [Form::OneWay, Form::Agreement, Form::Consistency] {
        for of in [Of::OneReader, Of::Mean] {
            let (low, high) = squares.interval(form, of, 0.9);
            let value = squares.reliability(form, of);
            table.digest(format_args!("readers {site} {form:?} {of:?}"), [value, low, high]);
        }
    }
    let centimetres = |number: u32| Length::from_nanometres(i64::from(number) * 10_000_000);
    let mut from = 10;
    let mut patches = |wider: u32| -> Vec<(Stretch, Stretch)> {
        (0..12)
            .filter_map(|_| {
                from += 40 + inputs.below(150);
                let to = from + 10 + inputs.below(60);
                let first = Stretch::new(centimetres(from), centimetres(to))?;
                let second =
                    Stretch::new(centimetres(from - inputs.below(3) - wider), centimetres(to + wider))?;
                from = to;
                Some((first, second))
            })
            .collect()
    };
    let (first, second): (Vec<Stretch>, Vec<Stretch>) = patches(2).into_iter().unzip();
    let both = matched(&first, &second);
    table.row(format_args!("readers {site} both"), both.both.len());
    for habit in habits(&[Sheets { first, second, ..Sheets::default() }]) {
        let way = match habit {
            Habit::Wider(way) | Habit::Narrower(way) | Habit::TapeOff(way) => way.nanometres(),
            _ => 0,
        };
        table.row(format_args!("readers {site} {}", habit.code()), way);
    }
}
