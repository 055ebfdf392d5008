//! Cover of one line as a curve against the gap rule.

use crate::cover::{Intercept, Life, LineCover, line_cover};
use crate::length::Length;
use crate::rule::ReadingRule;
use crate::stretch::{gaps, union};

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
    let mut steps = vec![Step::at(rule.gap.limit, &line_cover(length, intercepts, rule))];
    for limit in turning_points(length, intercepts, rule.gap.limit, widest) {
        let step = Step::at(limit, &line_cover(length, intercepts, &rule.with_limit(limit)));
        let last = steps[steps.len() - 1];
        if (step.canopy, step.sum, step.dead) != (last.canopy, last.sum, last.dead) {
            steps.push(step);
        }
    }
    steps
}

/// The limits at which cover may change: just above each gap and each dead stretch, or at it where equal ones close.
fn turning_points(length: Length, intercepts: &[Intercept], from: Length, widest: Length) -> Vec<Length> {
    let mut lengths: Vec<Length> = Vec::new();
    let mut species: Vec<u32> = intercepts.iter().map(|i| i.species).collect();
    species.sort_unstable();
    species.dedup();
    let mut take = |stretches: Vec<crate::stretch::Stretch>| {
        lengths.extend(gaps(&stretches, length).iter().map(|gap| gap.length()));
        lengths.extend(stretches.iter().map(|piece| piece.length()));
    };
    for one in species {
        let of = |life: Option<Life>| {
            union(
                intercepts
                    .iter()
                    .filter(|i| i.species == one && life.is_none_or(|life| i.life == life))
                    .map(|i| i.stretch),
            )
        };
        take(of(Some(Life::Live)));
        take(of(Some(Life::Dead)));
        take(of(None));
    }
    take(union(intercepts.iter().map(|i| i.stretch)));
    take(union(intercepts.iter().filter(|i| i.life == Life::Live).map(|i| i.stretch)));
    take(crate::stretch::without(
        &union(intercepts.iter().filter(|i| i.life == Life::Dead).map(|i| i.stretch)),
        &union(intercepts.iter().filter(|i| i.life == Life::Live).map(|i| i.stretch)),
    ));
    let just_above = Length::from_nanometres(1);
    let mut limits: Vec<Length> = lengths
        .into_iter()
        .flat_map(|gap| [gap, gap + just_above])
        .filter(|&limit| limit > from && limit <= widest)
        .collect();
    limits.sort_unstable();
    limits.dedup();
    limits
}

#[cfg(test)]
mod tests {
    use super::*;
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
