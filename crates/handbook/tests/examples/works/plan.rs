//! How many lines, where they go, and what they show.

use super::{Answer, unknown};
use crate::example::Example;
use crate::printed::{Found, goal, number, numbers};
use tautline_engine::confidence::Method;
use tautline_engine::effort::allot::{Allotment, Stratum, allot};
use tautline_engine::effort::change::{Change, Lines};
use tautline_engine::effort::power::{Groups, Sides, TTest};
use tautline_engine::effort::sequential::{Design, Plan, Step};
use tautline_engine::effort::size;
use tautline_engine::effort::width::Width;
use tautline_engine::estimate::Line;

/// Lines for a wanted half-width.
pub(super) fn needed(example: &Example) -> Answer<'_> {
    let deviation = number(example.needed("standard deviation of lines"));
    let wanted = number(example.needed("half-width wanted"));
    let confidence = number(example.needed("confidence"));
    let assurance = number(example.needed("assurance"));
    let width = Width { confidence, deviation, population: None };
    Box::new(move |key| match key {
        "lines by t alone" => size::for_interval(confidence, deviation, wanted)
            .map(Found::from)
            .ok_or_else(|| "no number".to_owned()),
        "lines" => width.units(wanted, assurance).map(Found::from).ok_or_else(|| "no number".to_owned()),
        other => unknown(other),
    })
}

/// Lines shared out over strata.
pub(super) fn allotment(example: &Example) -> Answer<'_> {
    let lines: usize = example.needed("lines").parse().expect("a number of lines");
    let (names, strata): (Vec<&str>, Vec<Stratum>) = example
        .all("stratum")
        .map(|(name, said)| {
            let (area, deviation) = said.split_once(", ").unwrap_or_else(|| panic!("“{said}” has no spread"));
            let deviation = number(deviation.trim_start_matches("lines vary by "));
            (name, Stratum { area: number(area), deviation, cost: 1.0, least: 2 })
        })
        .unzip();
    let shared = |how| allot(&strata, lines, how).expect("enough lines");
    let (by_area, by_spread) = (shared(Allotment::Proportional), shared(Allotment::Neyman));
    Box::new(move |key| {
        let of = |prefix: &str, counts: &[usize]| {
            let name = key.strip_prefix(prefix)?;
            names.iter().position(|own| *own == name).map(|at| counts[at])
        };
        let count = of("by area, ", &by_area).or_else(|| of("by area and spread, ", &by_spread));
        count.map_or_else(|| unknown(key), |count| Ok(count.into()))
    })
}

/// A plan that may stop after any look.
pub(super) fn looks(example: &Example) -> Answer<'_> {
    let count =
        |key: &str| example.needed(key).parse::<usize>().unwrap_or_else(|_| panic!("“{key}” is no number"));
    let plan = Plan {
        first: count("first look after"),
        every: count("then every"),
        most: count("last look after"),
        error: number(example.needed("chance of a false answer, to each side")),
    };
    let design = Design::of(plan).expect("a sound plan");
    let goal = example.given("goal").map(goal);
    let covers = example.given("covers").map(numbers);
    Box::new(move |key| {
        Ok(match key {
            "looks" => (1..=plan.most).filter(|&lines| plan.looks_at(lines)).count().into(),
            "confidence of each look" => (1.0 - design.level).into(),
            "both tails of each look" => (2.0 * design.level).into(),
            "stops after" | "answer" => {
                let (Some(goal), Some(covers)) = (goal, &covers) else { return unknown(key) };
                let lines: Vec<Line> = covers.iter().map(|&cover| Line::new(cover, 1.0)).collect();
                let standing = design.standing(&lines, goal, Method::LogitEffective);
                let word = match standing.step {
                    Step::Met => "met",
                    Step::NotMet => "not met",
                    Step::GoOn | Step::NoLook => "read on",
                    Step::End => "not yet shown",
                };
                if key == "answer" { word.into() } else { standing.lines.into() }
            }
            other => return unknown(other),
        })
    })
}

/// The chance to see a change that is planned for.
pub(super) fn chance(example: &Example) -> Answer<'_> {
    let alpha = 1.0 - number(example.needed("confidence"));
    let lines: usize = example.needed("lines at each visit").parse().expect("a number of lines");
    let power = example.given("chance wanted").map(number);
    let change = example.given("change").map(number);
    let deviation = number(example.needed("standard deviation of lines"));
    let again = match example.needed("lines are") {
        "new at each visit" => Lines::Temporary,
        "the same" => {
            Lines::Permanent { correlation: number(example.needed("correlation of the two visits")) }
        }
        other => panic!("lines are “{other}”?"),
    };
    let planned = Change { lines: again, deviation, sides: Sides::Two, alpha, population: None };
    Box::new(move |key| {
        let found = match (key, change, power) {
            ("chance to see it", Some(change), _) => Some(planned.chance(change, lines).into()),
            ("smallest change seen", _, Some(power)) => planned.detectable(lines, power).map(Found::from),
            ("lines for the change", Some(change), Some(power)) => {
                planned.units(change, power).map(Found::from)
            }
            ("spread of the differences", ..) => match again {
                Lines::Permanent { correlation } => {
                    Some(size::deviation_of_differences(deviation, correlation).into())
                }
                Lines::Temporary => None,
            },
            ("smallest change in standard errors", _, Some(power)) => {
                let test = TTest { groups: Groups::One, sides: Sides::Two, alpha };
                test.noncentrality(tautline_engine::num::count(lines - 1), power).map(Found::from)
            }
            _ => None,
        };
        found.map_or_else(|| unknown(key), Ok)
    })
}
