//! The reading rule as the arithmetic needs it: when a gap closes, and what dead wood does.

use crate::length::Length;

/// What a gap shorter than the rule does in a case that handbooks leave open.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Bridging {
    /// The gap is read as canopy.
    Bridged,
    /// The gap stays open.
    Breaks,
}

/// When a gap inside a canopy is read as canopy, compared on lengths along the tape as it was read.
///
/// # Source
/// the open questions are listed in no single handbook; each protocol answers them (see `docs/reading-rules.md`)
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct GapRule {
    /// A gap shorter than this closes; zero closes none.
    pub limit: Length,
    /// A gap of exactly the limit.
    pub equal: Bridging,
    /// A gap between two plants of one species; [`Bridging::Breaks`] stops the rule at the plant and needs plant marks.
    pub two_plants: Bridging,
    /// A gap within one species in which canopy of another counted species stands.
    pub across_species: Bridging,
    /// A gap between two different species; what closes belongs to the canopy and to no species.
    pub between_species: Bridging,
    /// A gap within live canopy in which dead wood of the same species stands.
    pub across_dead: Bridging,
    /// A gap between the last canopy and either end of the line.
    pub line_end: Bridging,
}

impl GapRule {
    /// Whether a gap of this length falls under the rule.
    pub fn closes(&self, gap: Length) -> bool {
        gap < self.limit || (gap == self.limit && self.equal == Bridging::Bridged && gap > Length::ZERO)
    }
}

/// What dead canopy does.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum DeadRule {
    /// Dead canopy isn't part of any figure.
    LeftOut,
    /// Dead canopy is worked out apart from live.
    Apart,
    /// Apart, but a dead stretch shorter than the gap limit that touches live canopy is read as live.
    ///
    /// # Source
    /// Boyd, Bates and Miller 2007, Rangeland Ecology & Management 60(2):199–202, methods
    ShortJoinsLive,
    /// Dead canopy counts like live.
    CountsAsLive,
}

/// Everything about a protocol that changes the arithmetic of a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct ReadingRule {
    /// The gap rule.
    pub gap: GapRule,
    /// The rule for dead canopy.
    pub dead: DeadRule,
    /// A canopy piece shorter than this isn't read; zero reads everything.
    pub shortest: Length,
}

impl ReadingRule {
    /// Every edge as written: no gap closes, dead canopy apart, nothing too short.
    pub const AS_WRITTEN: Self = Self {
        gap: GapRule {
            limit: Length::ZERO,
            equal: Bridging::Breaks,
            two_plants: Bridging::Bridged,
            across_species: Bridging::Bridged,
            between_species: Bridging::Breaks,
            across_dead: Bridging::Bridged,
            line_end: Bridging::Breaks,
        },
        dead: DeadRule::Apart,
        shortest: Length::ZERO,
    };

    /// The same rule with another gap limit.
    #[must_use]
    pub const fn with_limit(mut self, limit: Length) -> Self {
        self.gap.limit = limit;
        self
    }
}
