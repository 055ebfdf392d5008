//! A plan that may stop after any line, as data.

use serde::Serialize;
use tautline_engine::effort::sequential::{Course, Design, Plan, Step};
use tautline_engine::num::count;
use tautline_engine::num::math::sqrt;
use tautline_engine::seed::Seed;
use tautline_engine::verdict::Goal;

/// What `tautline plan sequential --json` prints.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SequentialOutput {
    /// `tautline.plan-sequential`
    pub format: &'static str,
    /// The version of the format.
    pub version: u32,
    /// Lines before the first look.
    pub first: usize,
    /// Lines between looks.
    pub every: usize,
    /// The last look.
    pub most: usize,
    /// Chance of a false "met" over all looks, and as much of a false "not met".
    pub error: f64,
    /// One-sided level at each look.
    pub level: f64,
    /// The looks.
    pub looks: Vec<LookOutput>,
    /// What becomes of it where lines are normal with the spread foreseen; none where nothing was foreseen.
    pub courses: Vec<CourseOutput>,
}

/// One look.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LookOutput {
    /// Lines read.
    pub lines: usize,
    /// Stop where the mean of the lines lies this many of their own standard deviations beyond the goal, by Student's t.
    pub times: f64,
}

/// What becomes of the plan on a site of known cover.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CourseOutput {
    /// The true cover.
    pub cover: f64,
    /// Share of surveys that stop for met.
    pub met: f64,
    /// Share that stop for not met.
    pub not_met: f64,
    /// Share that end with neither shown.
    pub neither: f64,
    /// Lines read on average.
    pub lines: f64,
}

/// The plan in full; `None` where it is no plan (see [`Design::of`]).
pub fn plan(plan: Plan, foreseen: Option<(Goal, f64)>, covers: &[f64]) -> Option<SequentialOutput> {
    let design = Design::of(plan)?;
    let looks = (plan.first..=plan.most).filter(|&lines| plan.looks_at(lines));
    let looks = looks.map(|lines| LookOutput { lines, times: design.limit(lines) / sqrt(count(lines)) });
    let course = |goal: Goal, deviation: f64, cover: f64| {
        let mut normals = Seed::from_purpose("plan: course", &[cover.to_bits()]).normals();
        let Course { met, not_met, lines } =
            design.course(goal, SURVEYS, || cover + deviation * normals.draw());
        CourseOutput { cover, met, not_met, neither: 1.0 - met - not_met, lines }
    };
    Some(SequentialOutput {
        format: "tautline.plan-sequential",
        version: crate::output::VERSION,
        first: plan.first,
        every: plan.every,
        most: plan.most,
        error: plan.error,
        level: design.level,
        looks: looks.collect(),
        courses: foreseen.map_or_else(Vec::new, |(goal, deviation)| {
            covers.iter().map(|&cover| course(goal, deviation, cover)).collect()
        }),
    })
}

/// Surveys drawn for each course.
const SURVEYS: u32 = 10_000;

/// Where a visit stands under a plan.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct StandingOutput {
    /// `no-look`, `go-on`, `met`, `not-met` or `end`.
    pub step: &'static str,
    /// Lines when it was said; those after a stop don't count.
    pub lines: usize,
}

/// A stable key for data and for the catalogue of words.
pub const fn code(step: Step) -> &'static str {
    match step {
        Step::NoLook => "no-look",
        Step::GoOn => "go-on",
        Step::Met => "met",
        Step::NotMet => "not-met",
        Step::End => "end",
    }
}

/// Reads `5 to 30` or `5 to 30 by 2`.
pub fn read(text: &str, error: f64) -> Option<Plan> {
    let words: Vec<&str> = text.split_whitespace().collect();
    let whole =
        |word: &str| word.parse::<usize>().ok().filter(|&lines| lines <= crate::limits::MOST_PRACTICAL_LINES);
    let (first, most, every) = match words.as_slice() {
        [first, "to", most] => (whole(first)?, whole(most)?, 1),
        [first, "to", most, "by", every] => (whole(first)?, whole(most)?, whole(every)?),
        _ => return None,
    };
    (first >= 2 && first <= most && every > 0).then_some(Plan { first, every, most, error })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_plan_as_written() {
        assert_eq!(read("5 to 30", 0.1), Some(Plan { first: 5, every: 1, most: 30, error: 0.1 }));
        assert_eq!(read("6 to 18 by 3", 0.1).map(|plan| plan.every), Some(3));
        for wrong in ["", "5", "30 to 5", "1 to 5", "5 to 999", "5 to 30 by 0", "5 - 30"] {
            assert_eq!(read(wrong, 0.1), None, "{wrong}");
        }
    }

    /// Far from the goal few lines do; at the goal false verdicts keep within what was asked on either side.
    #[test]
    fn courses() {
        let goal = Goal::AtLeast(0.15);
        let asked = read("5 to 30", 0.1).unwrap();
        let found = plan(asked, Some((goal, 0.06)), &[0.15, 0.25]).unwrap();
        let [at, far] = found.courses.as_slice() else { panic!("{found:?}") };
        assert!(at.met < 0.112 && at.not_met < 0.112 && at.neither > 0.78, "{at:?}");
        assert!(far.met > 0.99 && far.lines < 10.0, "{far:?}");
        assert!(found.looks.windows(2).all(|pair| pair[0].times > pair[1].times));
    }
}
