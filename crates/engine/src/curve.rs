//! Cover of one line as a curve against the gap rule.

use crate::cover::{Intercept, LineCover, line_cover};
use crate::length::Length;
use crate::rule::ReadingRule;

/// Cover from one gap limit up to the next step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Step {
    /// From this gap limit on.
    pub limit: Length,
    /// Length under live canopy.
    pub canopy: Length,
    /// The species' live lengths added up.
    pub sum: Length,
    /// Length under dead canopy only.
    pub dead: Length,
}

impl Step {
    fn at(limit: Length, cover: &LineCover) -> Self {
        Self { limit, canopy: cover.canopy_length(), sum: cover.sum_length(), dead: cover.dead_length() }
    }
}

/// Cover under every gap limit from the rule's own up to `widest`, as steps; the first is the rule's own.
///
/// Cover is constant between steps, so the curve is exact. A limit finer than the recorded one is never given:
/// gaps under it were not written down.
///
/// # Units
/// exact lengths
/// # Range
/// canopy and sum never fall from step to step
/// # Example
/// ```
/// use tautline_engine::{cover::{Intercept, Life}, curve::curve, length::{Length, Unit}};
/// use tautline_engine::{rule::ReadingRule, stretch::Stretch};
/// let at = |cm| Length::from_units(cm, Unit::Centimetre);
/// let piece = |from, to| Intercept {
///     stretch: Stretch::new(at(from), at(to)).unwrap(), species: 0, plant: None, life: Life::Live,
/// };
/// // gaps of 4 and 9 cm
/// let steps = curve(at(500), &[piece(0, 24), piece(28, 51), piece(60, 85)], &ReadingRule::AS_WRITTEN, at(20));
/// assert_eq!(steps.iter().map(|step| step.canopy).collect::<Vec<_>>(), [at(72), at(76), at(85)]);
/// ```
pub fn curve(length: Length, intercepts: &[Intercept], rule: &ReadingRule, widest: Length) -> Vec<Step> {
    let at = |limit| Step::at(limit, &line_cover(length, intercepts, &rule.with_limit(limit)));
    let limits = turning_points(length, intercepts, rule.gap.limit, widest);
    let mut steps = vec![at(rule.gap.limit)];
    let Some(&last) = limits.last() else { return steps };
    search(&limits, steps[0], at(last), &at, &mut steps);
    steps
}

/// Adds the steps within `limits`, the last of which gives `right`; `left` holds just before the first.
///
/// Canopy, sum and the tape under any canopy never fall as the limit grows, so where both ends agree nothing
/// happens between them.
fn search(limits: &[Length], left: Step, right: Step, at: &impl Fn(Length) -> Step, steps: &mut Vec<Step>) {
    let same = |a: Step, b: Step| (a.canopy, a.sum, a.dead) == (b.canopy, b.sum, b.dead);
    if same(left, right) {
        return;
    }
    if limits.len() == 1 {
        steps.push(right);
        return;
    }
    let (first, second) = limits.split_at(limits.len() / 2);
    let middle = at(first[first.len() - 1]);
    search(first, left, middle, at, steps);
    search(second, middle, right, at, steps);
}

/// The limits at which cover may change: every gap and every dead stretch lies between two edges of the reading, so
/// it happens at the distance of two edges (where equal gaps close) or just above it.
fn turning_points(length: Length, intercepts: &[Intercept], from: Length, widest: Length) -> Vec<Length> {
    let inside = |edge: Length| edge.clamp(Length::ZERO, length);
    let mut edges: Vec<Length> =
        intercepts.iter().flat_map(|i| [inside(i.stretch.start()), inside(i.stretch.stop())]).collect();
    edges.extend([Length::ZERO, length]);
    edges.sort_unstable();
    edges.dedup();
    let just_above = Length::from_nanometres(1);
    let mut limits: Vec<Length> = Vec::new();
    for (i, &start) in edges.iter().enumerate() {
        let distances =
            edges[i + 1..].iter().map(|&stop| stop - start).take_while(|&distance| distance <= widest);
        limits.extend(distances.flat_map(|distance| [distance, distance + just_above]));
    }
    limits.retain(|&limit| limit > from && limit <= widest);
    limits.sort_unstable();
    limits.dedup();
    limits
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cover::Life;
    use crate::length::Unit;
    use crate::rule::{Bridging, DeadRule};
    use crate::stretch::tests::cm;

    fn piece(life: Life, start: i64, stop: i64) -> Intercept {
        Intercept { stretch: cm(start, stop), species: 0, plant: None, life }
    }

    #[test]
    fn an_equal_gap_closes_where_the_rule_says_so() {
        let at = |n| Length::from_units(n, Unit::Centimetre);
        let pair = [piece(Life::Live, 0, 10), piece(Life::Live, 14, 20)];
        let mut rule = ReadingRule::AS_WRITTEN;
        let first_step = |rule: &ReadingRule| curve(at(100), &pair, rule, at(50))[1].limit;
        assert_eq!(first_step(&rule), at(4) + Length::from_nanometres(1));
        rule.gap.equal = Bridging::Bridged;
        assert_eq!(first_step(&rule), at(4));
    }

    /// Boyd, Bates and Miller 2007 found live cover up, dead cover down and their total unchanged as the gap
    /// limit grew; where only short dead stretches touch live canopy the same must come out exactly.
    #[test]
    fn dead_that_joins_moves_from_dead_to_live() {
        let at = |n| Length::from_units(n, Unit::Centimetre);
        let rule = ReadingRule { dead: DeadRule::ShortJoinsLive, ..ReadingRule::AS_WRITTEN };
        let plant = [piece(Life::Live, 0, 10), piece(Life::Dead, 10, 14), piece(Life::Dead, 80, 90)];
        let steps = curve(at(100), &plant, &rule, at(8));
        assert_eq!(steps.first().map(|s| (s.canopy, s.dead)), Some((at(10), at(14))));
        assert_eq!(steps.last().map(|s| (s.canopy, s.dead)), Some((at(14), at(10))));
    }
}
