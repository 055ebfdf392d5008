//! Readings, plan and results as tables: one for each kind of thing, numbers in metres and shares.

mod plan;
mod readings;
pub(crate) mod results;

use crate::Whole;
use crate::table::{Cell, Table};
use std::collections::BTreeSet;
use tautline_engine::length::Length;
use tautline_survey::measure::Measure;

/// Every table, those that others hang on first.
pub fn all(whole: &Whole) -> Vec<Table> {
    let told;
    let input = if whole.full {
        whole.input
    } else {
        told = whole.input.told();
        &told
    };
    vec![
        plan::sites(whole),
        plan::strata(input),
        plan::plants(input),
        plan::protocols(input),
        plan::lines(whole),
        plan::goals(whole.goals),
        readings::visits(input),
        readings::conditions(input),
        readings::intercepts(input),
        results::stretches(whole),
        results::line_cover(whole),
        results::results(whole),
        results::parts(whole),
    ]
}

/// Every line that anything is said of, where it lies as far as that is told.
pub(crate) fn lines(whole: &Whole) -> Table {
    plan::lines(whole)
}

/// Every site that anything is said of.
pub(crate) fn site_names<'a>(
    whole: &'a tautline_survey::input::Input,
    goals: &'a [tautline_survey::assess::SiteGoal],
) -> BTreeSet<&'a str> {
    let plan = whole.plan.iter().map(|line| line.site.as_str());
    let visits = whole.visits.iter().map(|visit| visit.site.as_str());
    let strata = whole.strata.iter().map(|stratum| stratum.site.as_str());
    let sites = whole.sites.iter().map(|site| site.site.as_str());
    let places = whole.places.iter().map(|place| place.site.as_str());
    let goals = goals.iter().filter_map(|goal| goal.site.as_deref());
    plan.chain(visits).chain(strata).chain(sites).chain(places).chain(goals).collect()
}

/// A length in metres: the nearest double of a whole number of nanometres, whose shortest decimal is exact.
#[expect(clippy::cast_precision_loss, reason = "a length on a tape is far below 2^53 nm, 9000 km")]
pub(crate) fn metres(length: Length) -> f64 {
    length.nanometres() as f64 / 1e9
}

pub(crate) fn measure(measure: Option<&Measure>) -> Cell {
    Cell::number(measure.map(|measure| metres(measure.length())))
}

/// The place of a visit in the input as its number in the tables, from 1.
pub(crate) fn visit_number(at: usize) -> Cell {
    Cell::count(at + 1)
}
