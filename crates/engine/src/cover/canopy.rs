//! Length under canopy and nothing else, for the many lines of which nothing else is asked.

use super::{Intercept, Life, line_cover};
use crate::length::Length;
use crate::rule::{Bridging, DeadRule, ReadingRule};
use crate::stretch::Stretch;

/// What is under canopy on a line.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Canopy {
    /// Its length, overlap counted once.
    pub length: Length,
    /// The stretches it is in.
    pub stretches: usize,
}

/// Works out the canopy length of one line after another under one rule: what [`line_cover`] gives, without the
/// pieces, their sources and what was closed.
///
/// Most rules ask of a gap only how long it is. Those take one sweep along the tape for each line; the others go
/// through [`line_cover`].
///
/// # Example
/// ```
/// use tautline_engine::{cover::{CanopyLength, Intercept, Life}, length::{Length, Unit}};
/// use tautline_engine::{rule::ReadingRule, stretch::Stretch};
/// let at = |cm| Length::from_units(cm, Unit::Centimetre);
/// let shrub = |from, to| Intercept {
///     stretch: Stretch::new(at(from), at(to)).unwrap(), species: 0, plant: None, life: Life::Live,
/// };
/// let mut canopy = CanopyLength::under(ReadingRule::AS_WRITTEN.with_limit(at(5)));
/// // the gap of 4 cm closes, the gap of exactly 5 cm stays open
/// let mut line = [shrub(0, 30), shrub(34, 50), shrub(55, 60)];
/// let found = canopy.of_line(at(100), &mut line);
/// assert_eq!((found.length, found.stretches), (at(55), 2));
/// ```
#[derive(Clone, Debug)]
pub struct CanopyLength {
    rule: ReadingRule,
    one_sweep: bool,
    /// How far each species met on this line reaches.
    reaches: Vec<(u32, Length)>,
    closed: Vec<Stretch>,
}

impl CanopyLength {
    /// Ready to work out lines under this rule.
    pub fn under(rule: ReadingRule) -> Self {
        let dead_blocks = rule.gap.across_dead == Bridging::Breaks && rule.dead != DeadRule::CountsAsLive;
        let one_sweep = rule.gap.two_plants == Bridging::Bridged
            && rule.gap.across_species == Bridging::Bridged
            && rule.gap.between_species == Bridging::Breaks
            && !dead_blocks
            && rule.dead != DeadRule::ShortJoinsLive
            && rule.shortest == Length::ZERO;
        Self { rule, one_sweep, reaches: Vec::new(), closed: Vec::new() }
    }

    /// The canopy of a line of `length`. The intercepts may come back in another order.
    pub fn of_line(&mut self, length: Length, intercepts: &mut [Intercept]) -> Canopy {
        if !self.one_sweep {
            let cover = line_cover(length, intercepts, &self.rule);
            return Canopy { length: cover.canopy_length(), stretches: cover.canopy.len() };
        }
        if !intercepts.is_sorted_by_key(|intercept| intercept.stretch.start()) {
            intercepts.sort_unstable_by_key(|intercept| intercept.stretch.start());
        }
        self.close(length, intercepts);
        // a stretch drawn back over a gap may now begin before another species' stretch
        if !self.closed.is_sorted_by_key(|stretch| stretch.start()) {
            self.closed.sort_unstable();
        }
        let mut reach = Length::ZERO;
        let mut canopy = Canopy::default();
        for stretch in &self.closed {
            if canopy.stretches == 0 || stretch.start() > reach {
                canopy.stretches += 1;
            }
            canopy.length = canopy.length + (stretch.stop() - stretch.start().max(reach)).max(Length::ZERO);
            reach = reach.max(stretch.stop());
        }
        canopy
    }

    /// Each live intercept, drawn back over the gap before it where that gap closes. Sorted intercepts come in.
    fn close(&mut self, length: Length, intercepts: &[Intercept]) {
        let ends_close = self.rule.gap.line_end == Bridging::Bridged;
        self.reaches.clear();
        self.closed.clear();
        let Some(line) = Stretch::new(Length::ZERO, length) else { return };
        for intercept in intercepts {
            if intercept.life == Life::Dead && self.rule.dead != DeadRule::CountsAsLive {
                continue;
            }
            let Some(stretch) = intercept.stretch.within(line) else { continue };
            let met = self.reaches.iter_mut().find(|(species, _)| *species == intercept.species);
            let before = match &met {
                Some((_, reach)) => Some(*reach),
                None => ends_close.then_some(Length::ZERO),
            };
            let start = before
                .filter(|&reach| reach < stretch.start() && self.rule.gap.closes(stretch.start() - reach))
                .unwrap_or(stretch.start());
            self.closed.extend(Stretch::new(start, stretch.stop()));
            match met {
                Some((_, reach)) => *reach = stretch.stop().max(*reach),
                None => self.reaches.push((intercept.species, stretch.stop())),
            }
        }
        if ends_close {
            let to_the_end = self.reaches.iter().filter_map(|&(_, reach)| Stretch::new(reach, length));
            self.closed.extend(to_the_end.filter(|gap| self.rule.gap.closes(gap.length())));
        }
    }
}
