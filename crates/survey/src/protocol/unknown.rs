//! Sheets out of a cabinet, of which nobody knows any more how they were read: what is unknown, and between which rules the
//! figures lie.

use super::{Gap, Protocol};
use crate::measure::Measure;
use serde::{Deserialize, Serialize};
use tautline_engine::length::{DecimalMark, Length, Unit};
use tautline_engine::rule::{Bridging, DeadRule, GapRule, ReadingRule};

/// What an unknown rule is taken to close in the cases on which its protocol is silent: all that it may have closed.
pub(super) const ALL_BRIDGED: GapRule = GapRule {
    limit: Length::ZERO,
    equal: Bridging::Bridged,
    two_plants: Bridging::Bridged,
    across_species: Bridging::Bridged,
    between_species: Bridging::Bridged,
    across_dead: Bridging::Bridged,
    line_end: Bridging::Bridged,
};

/// The widest gap that any rule of the shipped protocols closes: what an unknown gap rule may have been, where nobody says
/// that it was less.
///
/// # Source
/// Boyd, Bates and Miller 2007, Rangeland Ecology & Management 60(2):199–202, methods (gaps of 5, 10 and 15 cm)
pub fn widest_unknown() -> Measure {
    // as a person would write it, so that it is the same measure once written to a file and read back
    let written = Measure::read("15 cm", None, DecimalMark::Point);
    written.unwrap_or_else(|_| Measure::whole(15, Unit::Centimetre))
}

/// A rule that somebody looked for and didn't find; a silent rule is one that nobody asked about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Unknown {
    /// Which meaning of cover the reader had in mind.
    Cover,
    /// Whether dead canopy was counted.
    Dead,
}

impl Gap {
    /// How far the limit may reach, where it is unknown.
    pub fn unknown(&self) -> Option<&Measure> {
        self.unknown_up_to.as_ref().filter(|_| self.limit.is_none())
    }
}

impl Protocol {
    /// Whether a rule is known to be unknown.
    pub fn is_unknown(&self, rule: Unknown) -> bool {
        self.unknown.contains(&rule)
    }

    /// Whether any rule is known to be unknown.
    pub fn has_unknown(&self) -> bool {
        !self.unknown.is_empty() || self.gap.unknown().is_some()
    }

    /// Whether any figure under it lies between two, because a rule is unknown.
    pub fn lies_between(&self) -> bool {
        self.gap.unknown().is_some() || self.is_unknown(Unknown::Dead)
    }

    /// The rules that make least and most canopy of all that the reading may have been made under; nothing where no rule that
    /// the arithmetic needs is unknown. `limit` is a gap limit that somebody asks for, which settles the gap rule.
    ///
    /// Canopy never falls as the limit grows, as more cases are bridged, or as dead canopy counts (`engine/tests/laws.rs`), so
    /// every rule between makes a figure between.
    ///
    /// # Example
    /// ```
    /// use tautline_engine::length::Length;
    /// use tautline_survey::protocol::{Gap, Protocol, widest_unknown};
    /// let gap = Gap { unknown_up_to: Some(widest_unknown()), ..Gap::default() };
    /// let [least, most] = Protocol { gap, ..Protocol::default() }.ends(None).unwrap();
    /// assert_eq!(least.gap.limit, Length::ZERO);
    /// assert_eq!(most.gap.limit, Length::from_nanometres(150_000_000));
    /// assert!(Protocol::default().ends(None).is_none());
    /// ```
    pub fn ends(&self, limit: Option<Length>) -> Option<[ReadingRule; 2]> {
        let (rule, _) = self.rule();
        let [mut least, mut most] = [limit.map_or(rule, |limit| rule.with_limit(limit)); 2];
        if self.gap.unknown().is_some() && limit.is_none() {
            least = least.with_limit(Length::ZERO);
        }
        if self.is_unknown(Unknown::Dead) {
            least.dead = DeadRule::Apart;
            most.dead = DeadRule::CountsAsLive;
        }
        self.lies_between().then_some([least, most])
    }
}
