//! A plan that may stop after any line, with its errors held however often it is looked at.
//!
//! Looking after each line with the bounds of a single look blames or clears a site far too often: with enough looks
//! something will pass. Here every look uses one stiffer level, chosen beforehand so that over all looks together the
//! chance of a false "met", and that of a false "not met", stay within what was asked.

use crate::confidence::{Bounds, Method, Tail, ends};
use crate::estimate::{Line, of_lines};
use crate::num::math::{exp, ln, sqrt};
use crate::num::{count, quantile::t_quantile};
use crate::seed::Seed;
use crate::verdict::{Goal, Verdict, decide};

/// When lines are looked at, and how often the plan may be wrong.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plan {
    /// Lines before the first look.
    pub first: usize,
    /// Lines between looks: 1 for a look after each, or a batch.
    pub every: usize,
    /// The last look: there the plan ends, whatever it shows.
    pub most: usize,
    /// Chance of a false "met" over all looks, and as much of a false "not met".
    pub error: f64,
}

/// A plan with the level that every look uses.
///
/// The level is found by drawing [`SEQUENCES`] sequences of normal lines at the goal itself, where a false verdict is likeliest:
/// t = d̄ / (s / √n) doesn't depend on the goal or on how lines vary, so it holds for all normal lines. The
/// verdict that ends a plan is counted as false on one side whether or not the other came first, which errs to the
/// careful side.
///
/// # Source
/// one nominal level at every look: Pocock 1977, Biometrika 64:191; why looks need it: Armitage, McPherson and Rowe 1969,
/// Journal of the Royal Statistical Society A 132:235
/// # Example
/// A look after each of 5 to 30 lines, one chance in ten in all:
/// ```
/// use tautline_engine::effort::sequential::{Design, Plan};
/// let design = Design::of(Plan { first: 5, every: 1, most: 30, error: 0.1 }).unwrap();
/// assert!(design.level < 0.04 && design.level > 0.015);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Design {
    /// The plan.
    pub plan: Plan,
    /// One-sided level at each look.
    pub level: f64,
}

/// What to do after a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    /// Not one of the looks: read on.
    NoLook,
    /// Neither is shown: read on.
    GoOn,
    /// Stop: the goal is met.
    Met,
    /// Stop: the goal is not met.
    NotMet,
    /// Stop: the last line is read, and neither is shown.
    End,
}

/// Where a sequence of lines stopped, or stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Standing {
    /// What to do.
    pub step: Step,
    /// Lines read when it was said; those after a stop don't count.
    pub lines: usize,
}

/// How surveys under a plan end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Course {
    /// Share that stop for met.
    pub met: f64,
    /// Share that stop for not met.
    pub not_met: f64,
    /// Lines read on average.
    pub lines: f64,
}

/// Sequences drawn to find the level: its Monte-Carlo error is then below 0.1 % of surveys at 10 %.
pub const SEQUENCES: u32 = 60_000;
/// Levels tried, from the whole error down to a share of what Bonferroni would give.
const LEVELS: usize = 400;

impl Plan {
    /// Whether lines are looked at after so many.
    pub fn looks_at(&self, lines: usize) -> bool {
        lines == self.most
            || (lines >= self.first
                && lines < self.most
                && (lines - self.first).is_multiple_of(self.every.max(1)))
    }

    fn is_sound(&self) -> bool {
        (2..=self.most).contains(&self.first) && self.every > 0 && self.error > 0.0 && self.error < 0.5
    }
}

impl Design {
    /// Chooses the level.
    ///
    /// # Range
    /// two lines or more before the first look, an error below a half; `None` otherwise
    pub fn of(plan: Plan) -> Option<Self> {
        if !plan.is_sound() {
            return None;
        }
        let looks: Vec<usize> = (plan.first..=plan.most).filter(|&n| plan.looks_at(n)).collect();
        let levels = levels(plan.error, looks.len());
        // what t must pass at each look, for each level; rising
        let limits: Vec<Vec<f64>> = looks
            .iter()
            .map(|&n| levels.iter().map(|level| t_quantile(1.0 - level, count(n) - 1.0)).collect())
            .collect();
        let key = [plan.first as u64, plan.every as u64, plan.most as u64];
        let mut normals = Seed::from_purpose("sequential plan", &key).normals();
        let mut reached = vec![0_u32; LEVELS + 1];
        for _ in 0..SEQUENCES {
            let (mut above, mut below, mut look) = (0, 0, 0);
            let (mut sum, mut squares) = (0.0, 0.0);
            for n in 1..=plan.most {
                let x = normals.draw();
                sum += x;
                squares += x * x;
                if looks.get(look) == Some(&n) {
                    let n = count(n);
                    let t = sum / sqrt((n * squares - sum * sum) / (n - 1.0));
                    let limits = &limits[look];
                    while above < LEVELS && t >= limits[above] {
                        above += 1;
                    }
                    while below < LEVELS && -t >= limits[below] {
                        below += 1;
                    }
                    look += 1;
                }
            }
            reached[above] += 1;
            reached[below] += 1;
        }
        // a sequence that reached k levels passes under each of the first k
        let all = 2.0 * f64::from(SEQUENCES);
        let mut passed = 0;
        let mut chosen = *levels.last()?;
        for k in (1..=LEVELS).rev() {
            passed += reached[k];
            if f64::from(passed) / all > plan.error {
                break;
            }
            chosen = levels[k - 1];
        }
        Some(Self { plan, level: chosen })
    }

    /// What Student's t must pass after so many lines: met where the mean is this many standard errors beyond the goal.
    pub fn limit(&self, lines: usize) -> f64 {
        if lines < 2 { f64::INFINITY } else { t_quantile(1.0 - self.level, count(lines) - 1.0) }
    }

    /// How surveys end whose lines, one number each, are drawn one by one and judged by Student's t.
    pub fn course(&self, goal: Goal, surveys: u32, mut line: impl FnMut() -> f64) -> Course {
        let (mut met, mut not_met, mut lines) = (0_u32, 0_u32, 0_u64);
        let limits: Vec<f64> = (1..=self.plan.most).map(|n| self.limit(n) / sqrt(count(n))).collect();
        for _ in 0..surveys {
            let (about, mut sum, mut squares) = (line(), 0.0, 0.0);
            for (n, limit) in (1..).zip(&limits) {
                if n > 1 {
                    let away = line() - about;
                    sum += away;
                    squares += away * away;
                }
                if !self.plan.looks_at(n) {
                    continue;
                }
                let (mean, all) = (sum / count(n), count(n));
                let reach = limit * sqrt(((squares - sum * mean) / (all - 1.0)).max(0.0));
                let mean = about + mean;
                let step = self.step(goal, n, Bounds { lower: mean - reach, upper: mean + reach });
                met += u32::from(step == Step::Met);
                not_met += u32::from(step == Step::NotMet);
                if step != Step::GoOn {
                    lines += n as u64;
                    break;
                }
            }
        }
        let all = f64::from(surveys);
        #[expect(clippy::cast_precision_loss, reason = "lines of a simulation are far fewer than 2^53")]
        let lines = lines as f64;
        Course { met: f64::from(met) / all, not_met: f64::from(not_met) / all, lines: lines / all }
    }

    /// What bounds say at a look after so many lines.
    pub fn step(&self, goal: Goal, lines: usize, bounds: Bounds) -> Step {
        match decide(goal, bounds) {
            Verdict::Met => Step::Met,
            Verdict::NotMet => Step::NotMet,
            Verdict::NotYetShown if lines >= self.plan.most => Step::End,
            Verdict::NotYetShown => Step::GoOn,
        }
    }

    /// Where lines, in the order in which they were to be read, stopped or stand.
    pub fn standing(&self, lines: &[Line], goal: Goal, method: Method) -> Standing {
        let mut standing = Standing { step: Step::NoLook, lines: lines.len().min(self.plan.most) };
        for n in (self.plan.first..=standing.lines).filter(|&n| self.plan.looks_at(n)) {
            let found = of_lines(&lines[..n], None)
                .ok()
                .and_then(|estimate| ends(&estimate, method, Tail::of_bound(1.0 - self.level)).ok());
            // without a bound nothing is shown
            let (lower, upper) = found.unwrap_or((f64::NEG_INFINITY, f64::INFINITY));
            standing.step = self.step(goal, n, Bounds { lower, upper });
            if !matches!(standing.step, Step::GoOn) {
                return Standing { lines: n, ..standing };
            }
        }
        if !self.plan.looks_at(standing.lines) && standing.lines > self.plan.first {
            standing.step = Step::NoLook;
        }
        standing
    }
}

fn levels(error: f64, looks: usize) -> Vec<f64> {
    let span = ln(4.0 * count(looks));
    (0..LEVELS).map(|at| error * exp(-span * count(at) / count(LEVELS - 1))).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn design(first: usize, every: usize, most: usize, error: f64) -> Design {
        Design::of(Plan { first, every, most, error }).unwrap()
    }

    /// Five equal groups, two-sided 5 %: 0.0158 at each look; two: 0.0294 (Pocock 1977, table 1, from memory). Those are
    /// for a known spread; 60 lines a group are near enough for two digits.
    #[test]
    fn pocock() {
        for (groups, nominal) in [(2, 0.029_4), (5, 0.015_8)] {
            let level = design(60, 60, 60 * groups, 0.025).level;
            assert!((2.0 * level / nominal - 1.0).abs() < 0.06, "{groups} {level}");
        }
    }

    /// One look is an ordinary test, within the levels tried and Monte-Carlo error.
    #[test]
    fn one_look() {
        let level = design(10, 1, 10, 0.1).level;
        assert!((level - 0.1).abs() < 0.004, "{level}");
    }

    /// Fresh lines at the goal: false verdicts as often as allowed, on either side; a plain look after each far oftener.
    #[test]
    fn errors_are_held() {
        let design = design(5, 1, 20, 0.1);
        let plain = Design { level: 0.1, ..design };
        let mut normals = Seed::from_purpose("test sequential", &[]).normals();
        let surveys = 1_500;
        let mut wrong = [0, 0, 0];
        for _ in 0..surveys {
            let lines: Vec<Line> = (0..20).map(|_| Line::new(0.2 + 0.03 * normals.draw(), 1.0)).collect();
            let step = |design: &Design| design.standing(&lines, Goal::AtLeast(0.2), Method::StudentT).step;
            wrong[0] += u32::from(step(&design) == Step::Met);
            wrong[1] += u32::from(step(&design) == Step::NotMet);
            wrong[2] += u32::from(step(&plain) == Step::Met);
        }
        let share = |wrong: u32| f64::from(wrong) / f64::from(surveys);
        // four Monte-Carlo errors of 10 %
        let most = 0.1 + 4.0 * sqrt(0.1 * 0.9 / f64::from(surveys));
        assert!(share(wrong[0]) < most && share(wrong[1]) < most, "{wrong:?}");
        assert!(share(wrong[0]) > 0.06, "{wrong:?}");
        assert!(share(wrong[2]) > 0.2, "{wrong:?}");
    }

    #[test]
    fn looks_and_standings() {
        let design = Design { plan: Plan { first: 4, every: 3, most: 9, error: 0.1 }, level: 0.05 };
        let looks: Vec<usize> = (1..12).filter(|&n| design.plan.looks_at(n)).collect();
        assert_eq!(looks, [4, 7, 9]);
        let line = |cover: f64| Line::new(cover, 1.0);
        let near = [0.21, 0.19, 0.22, 0.18, 0.20, 0.21, 0.19, 0.21, 0.20].map(line);
        let standing = |lines: &[Line], goal| design.standing(lines, goal, Method::StudentT);
        let goal = Goal::AtLeast(0.2);
        assert_eq!(standing(&near[..3], goal), Standing { step: Step::NoLook, lines: 3 });
        assert_eq!(standing(&near[..4], goal), Standing { step: Step::GoOn, lines: 4 });
        assert_eq!(standing(&near[..5], goal), Standing { step: Step::NoLook, lines: 5 });
        assert_eq!(standing(&near, goal), Standing { step: Step::End, lines: 9 });
        assert_eq!(standing(&near, Goal::AtLeast(0.1)), Standing { step: Step::Met, lines: 4 });
        assert_eq!(standing(&near, Goal::AtMost(0.1)), Standing { step: Step::NotMet, lines: 4 });
        assert_eq!(Design::of(Plan { first: 1, ..design.plan }), None);
    }
}
