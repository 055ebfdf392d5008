//! Plans: the chance that a test sees a difference, and the numbers of lines that handbooks give.

use tautline_engine::confidence::Method;
use tautline_engine::effort::change::{Change, Lines};
use tautline_engine::effort::power::{Groups, Sides, TTest};
use tautline_engine::effort::simulated::{Foreseen, KnownLines, NormalLines, Readings, Simulation};
use tautline_engine::effort::trend::{JudgedBy, Trend};
use tautline_engine::effort::width::Width;
use tautline_engine::effort::{SoFar, chance_to_settle};
use tautline_engine::effort::{allot, length, size};
use tautline_engine::seed::Seed;
use tautline_engine::verdict::Goal;

use crate::inputs::Inputs;
use crate::table::Table;

const PLANS: usize = 10;

pub(crate) fn rows(table: &mut Table) {
    let mut inputs = Inputs::new(5);
    let mut of_wider = Inputs::new(51);
    for plan in 0..PLANS {
        for groups in [Groups::One, Groups::Two] {
            for sides in [Sides::One, Sides::Two] {
                let test = TTest { groups, sides, alpha: inputs.between(0.01, 0.2) };
                let label = format!("plan {plan} {groups:?} {sides:?}").to_lowercase();
                test_rows(table, &label, test, inputs.between(0.3, 2.0), inputs.between(3.0, 60.0));
            }
        }
        size_rows(table, plan, &mut inputs);
        wider_rows(table, plan, &mut of_wider);
        settle_rows(table, plan, &mut inputs);
    }
    simulated_rows(table);
}

fn simulated_rows(table: &mut Table) {
    let seed = |purpose| Seed::from_purpose(purpose, &[]);
    let mut normals = seed("golden normals").normals();
    table.digest("normals", (0..20_000).map(|_| normals.draw()));
    let lines = NormalLines::new((0.2, 0.16), 0.08, 0.6, seed("golden lines"));
    let mut simulation = Simulation::new(lines, 12, Sides::Two, 0.1);
    simulation.run(2_000);
    table.real("simulated normal", simulation.chance().value);
    let foreseen = Foreseen { cover: 0.04, deviation: 0.04, change: -0.015, length: 30.0 };
    let Some(stand) = Readings::of(foreseen, 1) else { return };
    table.digest("stand for a plan", stand.lines.iter().flat_map(|line| [line.0, line.1]));
    let Some(lines) = KnownLines::new(&stand.lines, seed("golden known lines")) else { return };
    let mut simulation = Simulation::new(lines, 12, Sides::Two, 0.2);
    simulation.run(2_000);
    table.real("simulated stand", simulation.chance().value);
}

fn test_rows(table: &mut Table, label: &str, test: TTest, difference: f64, units: f64) {
    table.real(format_args!("{label} power"), test.power(difference, units));
    table.real(
        format_args!("{label} power unlike"),
        test.power_of_unlike_groups(difference, units, units / 2.0),
    );
    maybe(table, format!("{label} units"), test.units(difference, 0.8));
    maybe(table, format!("{label} detectable"), test.detectable(units, 0.8));
}

fn size_rows(table: &mut Table, plan: usize, inputs: &mut Inputs) {
    let deviation = inputs.between(0.02, 0.2);
    let wanted = inputs.between(0.01, 0.1);
    let again = size::deviation_of_differences(deviation, inputs.between(0.0, 0.95));
    let plain = size::for_half_width(1.96, deviation, wanted);
    table.real(format_args!("size {plan} half width"), plain);
    table.real(
        format_args!("size {plan} new"),
        size::for_change_of_new_units(1.645, 0.842, deviation, wanted),
    );
    table.real(format_args!("size {plan} same"), size::for_change_of_same_units(1.645, 0.842, again, wanted));
    table.real(format_args!("size {plan} population"), size::of_population(plain, 120.0));
    table.real(format_args!("size {plan} share of mean"), size::for_share_of_mean(1.7, deviation, wanted));
    maybe(table, format!("size {plan} interval"), size::for_interval(0.9, deviation, wanted));
    table.row(format_args!("size {plan} corrected"), size::corrected(5 + 3 * plan, 0.95, 0.8));
}

fn settle_rows(table: &mut Table, plan: usize, inputs: &mut Inputs) {
    let so_far = SoFar {
        value: inputs.between(0.05, 0.5),
        se: inputs.between(0.01, 0.06),
        df: inputs.between(4.0, 9.0),
        units: 10,
        method: if plan.is_multiple_of(2) { Method::LogitT } else { Method::StudentT },
    };
    for goal in [Goal::AtLeast(0.2), Goal::AtMost(0.2), Goal::Between(0.1, 0.3)] {
        let chance = chance_to_settle(&so_far, goal, 0.9, 10 + 4 * plan);
        table.real(format_args!("settle {plan} {goal:?}"), chance);
    }
}

fn wider_rows(table: &mut Table, plan: usize, inputs: &mut Inputs) {
    let deviation = inputs.between(0.03, 0.2);
    let population = plan.is_multiple_of(2).then_some(150.0);
    let width = Width { confidence: 0.9, deviation, population };
    table.real(format_args!("width {plan} chance"), width.chance(0.05, 12));
    table.real(format_args!("width {plan} half"), width.half_width(12, 0.8));
    let lines = Lines::Permanent { correlation: inputs.between(0.0, 0.95) };
    let change = Change { lines, deviation, sides: Sides::Two, alpha: 0.1, population };
    table.real(format_args!("change {plan} chance"), change.chance(0.05, 9));
    maybe(table, format!("change {plan} detectable"), change.detectable(9, 0.8));
    let trend = Trend {
        years: (0..6).map(f64::from).collect(),
        judged_by: if plan.is_multiple_of(2) { JudgedBy::YearMeans } else { JudgedBy::LineSlopes },
        deviation,
        between_years: 0.02,
        between_slopes: 0.004,
        sides: Sides::One,
        alpha: 0.1,
    };
    table.real(format_args!("trend {plan} chance"), trend.chance(0.01, 10));
    let mut stratum = || allot::Stratum {
        area: inputs.between(1.0, 9.0),
        deviation: inputs.between(0.02, 0.2),
        cost: inputs.between(10.0, 40.0),
        least: 2,
    };
    let strata = [stratum(), stratum(), stratum()];
    let lines = allot::allot(&strata, 20, allot::Allotment::Neyman);
    table.row(format_args!("allot {plan}"), format_args!("{lines:?}"));
    let law = length::Law { of_one_metre: deviation, fall: inputs.between(0.1, 0.9) };
    table.real(format_args!("law {plan}"), law.deviation(50.0));
}

fn maybe(table: &mut Table, label: String, value: Option<f64>) {
    match value {
        Some(value) => table.real(label, value),
        None => table.row(label, "none"),
    }
}
