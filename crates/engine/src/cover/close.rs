//! Closing gaps of one union of stretches under a gap rule.

use crate::length::Length;
use crate::rule::{Bridging, GapRule};
use crate::stretch::{Stretch, any_overlaps, union};

/// Canopy whose presence in a gap keeps it open.
pub(super) struct Blockers<'a> {
    /// Dead wood, where the rule doesn't bridge it.
    pub(super) dead: &'a [Stretch],
    /// Other counted species, where the rule doesn't bridge them.
    pub(super) others: &'a [Stretch],
}

impl Blockers<'_> {
    fn stand_in(&self, gap: Stretch) -> bool {
        any_overlaps(self.dead, gap) || any_overlaps(self.others, gap)
    }
}

/// The union with every gap that falls under the rule filled.
pub(super) fn close_gaps(
    canopy: &[Stretch],
    rule: &GapRule,
    length: Length,
    blockers: &Blockers,
) -> Vec<Stretch> {
    let closes = |gap: &Stretch| rule.closes(gap.length()) && !blockers.stand_in(*gap);
    let inner = canopy.windows(2).filter_map(|pair| Stretch::new(pair[0].stop(), pair[1].start()));
    let mut filled: Vec<Stretch> = inner.filter(closes).collect();
    if rule.line_end == Bridging::Bridged
        && let (Some(first), Some(last)) = (canopy.first(), canopy.last())
    {
        let ends = [Stretch::new(Length::ZERO, first.start()), Stretch::new(last.stop(), length)];
        filled.extend(ends.into_iter().flatten().filter(closes));
    }
    union(canopy.iter().copied().chain(filled))
}
