//! How often a sequential plan is wrong on uneven stands whose cover is known, and how many lines it takes: `docs/sequential.md`.
//!
//! The goal is set at the stand's own cover, where a false verdict is likeliest, and once well below it.

use crate::stands::{Clumping, Known, Set};
use crate::survey::{Length, read};
use core::fmt::Write as _;
use tautline_engine::confidence::Method;
use tautline_engine::effort::sequential::{Design, Plan, Step};
use tautline_engine::estimate::Line;
use tautline_engine::num::count;
use tautline_engine::seed::Seed;
use tautline_engine::verdict::Goal;

/// The plan that is tried: a look after each of 5 to 30 lines, one chance in ten.
pub const PLAN: Plan = Plan { first: 5, every: 1, most: 30, error: 0.1 };
/// Covers of the stands in per cent.
pub const COVERS: [u64; 3] = [3, 10, 40];

/// How many surveys of how many stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Size {
    /// Stands of each case.
    pub stands: u64,
    /// Surveys of each stand.
    pub surveys: usize,
}

impl Size {
    /// 250 surveys of each of 8 stands: 2,000 a case, so that 10 % is known to within 1.3 % (two standard errors).
    pub const FULL: Self = Self { stands: 8, surveys: 250 };
}

/// What came of one way to judge in one case, as shares of surveys.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Outcome {
    /// Said to be met, where the goal is the cover itself.
    pub false_met: f64,
    /// Said to be not met, where the goal is the cover itself.
    pub false_not_met: f64,
    /// Said to be met, where cover is one and a half times the goal.
    pub met: f64,
    /// Lines on average, where cover is one and a half times the goal.
    pub lines: f64,
}

/// One case: a degree of clumping, a cover, and what came of each way to judge.
#[derive(Clone, Debug, PartialEq)]
pub struct Case {
    /// Degree of clumping.
    pub clumping: &'static str,
    /// Cover in per cent.
    pub cover: u64,
    /// In the order of [`WAYS`].
    pub outcomes: Vec<Outcome>,
}

/// The ways to judge: the interval, and whether the level is the plan's or that of a single look.
pub const WAYS: [(&str, Method, bool); 4] = [
    ("logit-t, plan", Method::LogitEffective, true),
    ("Student's t, plan", Method::StudentT, true),
    ("logit-t, single look each time", Method::LogitEffective, false),
    ("Student's t, single look each time", Method::StudentT, false),
];

/// All cases; the same every time.
///
/// # Panics
/// never: the plan is sound
pub fn cases(size: Size) -> (Design, Vec<Case>) {
    let design = Design::of(PLAN).expect("the plan is sound");
    let mut cases = Vec::new();
    for clumping in Set::Choose.clumpings() {
        let area = Set::Choose.area_of_clump(clumping);
        for cover in COVERS {
            cases.push(case(design, clumping, cover, area, size));
        }
    }
    (design, cases)
}

fn case(design: Design, clumping: Clumping, cover: u64, area: f64, size: Size) -> Case {
    let mut outcomes = vec![Outcome::default(); WAYS.len()];
    #[expect(clippy::cast_precision_loss, reason = "a few stands")]
    let all = size.stands as f64 * count(size.surveys);
    for stand in 0..size.stands {
        let known = Set::Choose.stand(clumping, cover, area, stand);
        let purpose = format!("trial sequential {} {cover}", clumping.name);
        let mut random = Seed::from_purpose(&purpose, &[stand]).stream();
        let mut readings = Vec::new();
        for _ in 0..size.surveys {
            read(&known, Length::Equal(50), PLAN.most, &mut random, &mut readings);
            let lines: Vec<Line> = readings.iter().map(crate::survey::Reading::canopy_line).collect();
            for (outcome, (_, method, by_plan)) in outcomes.iter_mut().zip(WAYS) {
                let design = if by_plan { design } else { Design { level: PLAN.error, ..design } };
                add(outcome, &known, design, &lines, method, all);
            }
        }
    }
    Case { clumping: clumping.name, cover, outcomes }
}

fn add(outcome: &mut Outcome, known: &Known, design: Design, lines: &[Line], method: Method, all: f64) {
    let at = design.standing(lines, Goal::AtLeast(known.canopy), method).step;
    let above = design.standing(lines, Goal::AtLeast(known.canopy / 1.5), method);
    let share = |is: bool| if is { 1.0 / all } else { 0.0 };
    outcome.false_met += share(at == Step::Met);
    outcome.false_not_met += share(at == Step::NotMet);
    outcome.met += share(above.step == Step::Met);
    outcome.lines += count(above.lines) / all;
}

/// The page.
pub fn page(design: Design, cases: &[Case], size: Size) -> String {
    let mut page = format!(
        "# How often a sequential plan is right\n\nWritten by `cargo run --release --package tautline-trials -- --sequential`; \
         do not edit. Stands, crowns and clumps are invented; they are those of [intervals.md](intervals.md).\n\n\
         The plan: a look after each of {} to {} lines of 50 m, one chance in ten of a false \u{201c}met\u{201d} over all looks \
         together and as much of a false \u{201c}not met\u{201d}. Each look uses {:.1} % confidence to each side, found by drawing \
         {} sequences of normal lines (one nominal level at every look: Pocock 1977). Below, {} surveys of {} stands in each case. \
         In \u{201c}false\u{201d} columns the goal is the stand's own cover, where a false verdict is likeliest: at most 10 % is \
         promised, and 2,000 surveys tell 10 % to within 1.3 %. In the last two columns cover is one and a half times the goal.\n",
        PLAN.first,
        PLAN.most,
        100.0 * (1.0 - design.level),
        tautline_engine::effort::sequential::SEQUENCES,
        size.stands * size.surveys as u64,
        size.stands,
    );
    for (way, (name, ..)) in WAYS.iter().enumerate() {
        let _ = write!(
            page,
            "\n## {name}\n\n| clumping | cover, % | false met, % | false not met, % | met, % | lines |\n\
             | --- | --- | --- | --- | --- | --- |\n"
        );
        for case in cases {
            let one = case.outcomes[way];
            let _ = writeln!(
                page,
                "| {} | {} | {:.1} | {:.1} | {:.1} | {:.1} |",
                case.clumping,
                case.cover,
                100.0 * one.false_met,
                100.0 * one.false_not_met,
                100.0 * one.met,
                one.lines
            );
        }
    }
    page += &told(cases);
    page
}

/// What the tables come to.
fn told(cases: &[Case]) -> String {
    let worst = |way: usize, of: fn(&Outcome) -> f64| {
        100.0 * cases.iter().map(|case| of(&case.outcomes[way])).fold(0.0, f64::max)
    };
    let mean = cases.iter().map(|case| case.outcomes[0].lines).sum::<f64>() / count(cases.len());
    format!(
        "\n## What that comes to\n\n\
         - Judged by logit-t with effective degrees of freedom, the way of `assess`, the plan is wrong in at most {:.1} % (met) and \
         {:.1} % (not met) of surveys in any case.\n\
         - By Student's t, the way of the table for paper, in at most {:.1} % and {:.1} %: lines on sparse, clumped stands are skewed, \
         so that where few have met much the mean and the spread are low together, and \u{201c}not met\u{201d} comes too easily.\n\
         - Looking after each line with the level of a single look is wrong in up to {:.1} % (met) and {:.1} % (not met).\n\
         - Where cover is one and a half times the goal the plan takes {mean:.1} lines on average over these stands, of {} at most.\n",
        worst(0, |one| one.false_met),
        worst(0, |one| one.false_not_met),
        worst(1, |one| one.false_met),
        worst(1, |one| one.false_not_met),
        worst(2, |one| one.false_met),
        worst(2, |one| one.false_not_met),
        PLAN.most
    )
}
