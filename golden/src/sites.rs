//! From lines to a site: estimates in every design, their intervals, verdicts, and the lines that would settle them.

use tautline_engine::confidence::bootstrap::{Group, Resampled};
use tautline_engine::confidence::zeros::share_of_lines_at_most;
use tautline_engine::confidence::{Bounds, Method, NoBound, Tail, ends};
use tautline_engine::effort::{MoreUnits, SoFar, more_units};
use tautline_engine::estimate::{
    CombinedStratum, Estimate, EstimateError, Line, SamplingError, Stratum, combined_ratio, effective_lines,
    of_lines, plots, strata,
};
use tautline_engine::seed::Seed;
use tautline_engine::verdict::{Goal, decide};

use crate::inputs::Inputs;
use crate::table::Table;

const SITES: u64 = 10;
const CONFIDENCE: f64 = 0.9;
const GOALS: [Goal; 3] = [Goal::AtLeast(0.15), Goal::AtMost(0.3), Goal::Between(0.1, 0.4)];
const INVENTED: &str = "the invented lines have a length and an intercept of nought or more";

pub(crate) fn rows(table: &mut Table) {
    let mut inputs = Inputs::new(4);
    for site in 0..SITES {
        let alike = lines(&mut inputs, |_| 30.0);
        let unlike = lines(&mut inputs, |inputs| inputs.between(10.0, 60.0));
        let designs = [
            ("equal lines", of_lines(&alike, None)),
            ("unequal lines", of_lines(&unlike, Some(400))),
            ("plots", plots(&[&alike[..], &unlike[..], &alike[1..3]], None)),
            ("strata", in_strata(&alike, &unlike)),
            ("combined ratio", combined(&alike, &unlike)),
        ];
        for (design, estimate) in designs {
            estimate_rows(table, &format!("site {site} {design}"), &estimate.expect(INVENTED));
        }
        if let Some(worth) = effective_lines(&[&alike[..], &unlike[..]]).expect(INVENTED) {
            table.real(format_args!("site {site} effective lines"), worth.effective);
        }
        bootstrap_rows(table, site, &alike, unlike);
    }
    for lines in [1, 3, 10, 40] {
        table.real(format_args!("nothing on {lines} lines"), share_of_lines_at_most(lines, CONFIDENCE));
    }
}

/// Between five and fourteen lines of a site that is anything from nearly bare to closed.
fn lines(inputs: &mut Inputs, length: impl Fn(&mut Inputs) -> f64) -> Vec<Line> {
    let number = 5 + inputs.below(10);
    let most = inputs.between(0.05, 0.9);
    (0..number)
        .map(|_| {
            let length = length(inputs);
            Line::new(length * inputs.between(0.0, most), length)
        })
        .collect()
}

fn in_strata(upland: &[Line], wash: &[Line]) -> Result<Estimate, EstimateError> {
    let stratum = |weight, lines| of_lines(lines, None).map(|estimate| Stratum { weight, estimate });
    strata(&[stratum(70.0, upland)?, stratum(30.0, wash)?])
}

fn combined(upland: &[Line], wash: &[Line]) -> Result<Estimate, EstimateError> {
    let stratum = |weight, lines| CombinedStratum { weight, lines, population: None };
    combined_ratio(&[stratum(70.0, upland), stratum(30.0, wash)])
}

fn estimate_rows(table: &mut Table, label: &str, estimate: &Estimate) {
    table.real(format_args!("{label} cover"), estimate.value);
    let SamplingError::Known { se, df } = estimate.error else {
        return table.row(format_args!("{label} error"), "unknown");
    };
    table.real(format_args!("{label} se"), se);
    table.real(format_args!("{label} df"), df);
    for method in
        [Method::StudentT, Method::LogT, Method::LogitT, Method::LogEffective, Method::LogitEffective]
    {
        let label = format!("{label} {}", method.code());
        end_rows(table, &label, ends(estimate, method, Tail::of_interval(CONFIDENCE)));
        let Ok((lower, upper)) = ends(estimate, method, Tail::of_bound(CONFIDENCE)) else { continue };
        for goal in GOALS {
            table.row(format_args!("{label} {goal:?}"), decide(goal, Bounds { lower, upper }).code());
        }
    }
    let so_far =
        SoFar { value: estimate.value, se, df, units: estimate.units, method: Method::LogitEffective };
    let more = match more_units(&so_far, Goal::AtLeast(0.15), CONFIDENCE, 0.8, 60) {
        MoreUnits::More(units) => units.to_string(),
        MoreUnits::NoPracticalNumber => "no practical number".to_owned(),
    };
    table.row(format_args!("{label} more lines"), more);
}

fn bootstrap_rows(table: &mut Table, site: u64, upland: &[Line], wash: Vec<Line>) {
    let groups = [Group { weight: 0.7, units: upland.to_vec() }, Group { weight: 0.3, units: wash }];
    let mut random = Seed::from_purpose("golden bootstrap", &[site]).stream();
    let drawn = Resampled::draw(&groups, 1_999, &mut random);
    end_rows(
        table,
        &format!("site {site} bca"),
        drawn.map(|drawn| drawn.ends(Tail::of_interval(CONFIDENCE))),
    );
    let alike = upland.iter().map(|line| Line::new(line.share(), 1.0)).collect();
    for (what, units) in [("ratio", upland.to_vec()), ("mean", alike)] {
        let all = Resampled::of(&[Group { weight: 1.0, units }], 1_999);
        end_rows(
            table,
            &format!("site {site} bca of all draws, {what}"),
            all.map(|all| all.ends(Tail::of_interval(CONFIDENCE))),
        );
    }
}

fn end_rows(table: &mut Table, label: &str, ends: Result<(f64, f64), NoBound>) {
    match ends {
        Ok((low, high)) => {
            table.real(format_args!("{label} low"), low);
            table.real(format_args!("{label} high"), high);
        }
        Err(reason) => table.row(format_args!("{label} ends"), reason.code()),
    }
}
