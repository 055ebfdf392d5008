//! What was agreed before anybody measured, and what came of it: objectives, triggers, decisions.
//!
//! An objective has two halves. The management objective says what is wanted of which plants where, in which direction, how much
//! and by when; the sampling objective says how sure the answer must be, and which mistake may be made how often. A trigger is a
//! promise of what will be done at what reading. A decision says what was read, what was decided, by whom, and when to look again.
//! The software judges none of them: it keeps them beside the figures.
//!
//! # Source
//! the parts of either objective: Elzinga, Salzer and Willoughby 1998, BLM Technical Reference 1730-1, chapters 4 and 6 (from
//! memory); triggers as promises, weak where they are vague: Nie and Schultz 2012, Conservation Biology 26:1137

use crate::assess::SiteGoal;
use crate::date::Date;
use crate::effort::looks::Looks;
use crate::goal::{Goal, Percent};
use serde::{Deserialize, Serialize};

/// What is wanted, and how sure the answer must be.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(default)]
pub struct Objective {
    /// Its name, which tells it apart on its site.
    pub name: String,
    /// The site; every site where it is empty.
    pub site: String,
    /// What is measured of which plants: “canopy cover of live shrubs”.
    pub attribute: String,
    /// Which ground it is about.
    pub place: String,
    /// In which direction.
    pub direction: Option<Direction>,
    /// How much, in words.
    pub amount: String,
    /// By when.
    pub by: Option<Date>,
    /// The goal that readings are judged by.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub goal: Option<Goal>,
    /// How sure the answer must be.
    pub sampling: Sampling,
    /// Why it is wanted.
    pub reason: String,
    /// Where it comes from.
    pub source: String,
    /// Who agreed, and when.
    pub agreed: Vec<Agreed>,
}

/// Which way a figure should go.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Direction {
    /// Up.
    Raise,
    /// Down.
    Lower,
    /// As it is.
    Hold,
}

impl Direction {
    /// The direction that a word stands for.
    pub fn from_word(word: &str) -> Option<Self> {
        Some(match word.trim().to_lowercase().as_str() {
            "raise" => Self::Raise,
            "lower" => Self::Lower,
            "hold" => Self::Hold,
            _ => return None,
        })
    }

    /// The word in files and options, and the code of the catalogue's word.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Raise => "direction-raise",
            Self::Lower => "direction-lower",
            Self::Hold => "direction-hold",
        }
    }
}

/// How sure an answer must be; what is `None` was left open.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(default)]
pub struct Sampling {
    /// Confidence of intervals and verdicts, in per mille.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub confidence_per_mille: Option<u16>,
    /// The smallest change worth seeing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub smallest_change: Option<Percent>,
    /// Chance to see a change where there is none, in per mille.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub false_alarm_per_mille: Option<u16>,
    /// Chance to miss the smallest change worth seeing, in per mille; one less the power.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub missed_change_per_mille: Option<u16>,
    /// A plan that may stop after any of these lines, chosen before the first is read.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub looks: Option<Looks>,
}

/// Who agreed, and when.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Agreed {
    /// Who.
    pub who: String,
    /// When.
    pub date: Option<Date>,
}

/// A promise made beforehand: at what reading what will be done.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(default)]
pub struct Trigger {
    /// Its name, which tells it apart on its site.
    pub name: String,
    /// The site; every site where it is empty.
    pub site: String,
    /// At what reading.
    pub when: String,
    /// What will be done then.
    pub then: String,
    /// That reading as a number, where it can be said so: “at most 10 %” is reached where it is met.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at: Option<Goal>,
    /// Who agreed, and when.
    pub agreed: Vec<Agreed>,
}

/// What was read and decided.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(default)]
pub struct Decision {
    /// The site.
    pub site: String,
    /// The day.
    pub date: Option<Date>,
    /// The trigger that it answers; empty where there was none.
    pub trigger: String,
    /// What was read: the figure with its interval, as it was shown.
    pub read: String,
    /// What was decided.
    pub decided: String,
    /// By whom.
    pub by: String,
    /// When to look again.
    pub again: Option<Date>,
    /// Why.
    pub reason: String,
}

impl Objective {
    /// Its goal, as sure as the objective asks, for its site.
    pub fn site_goal(&self) -> Option<SiteGoal> {
        let mut goal = self.goal.clone()?;
        goal.confidence_per_mille = goal.confidence_per_mille.or(self.sampling.confidence_per_mille);
        if goal.source.is_empty() {
            goal.source.clone_from(&self.source);
        }
        Some(SiteGoal { site: Some(self.site.clone()).filter(|site| !site.is_empty()), goal })
    }

    /// The parts that nobody has filled in, by their codes: an objective without them can't be told met from missed.
    pub fn open(&self) -> Vec<&'static str> {
        let texts = [
            ("objective-attribute", self.attribute.is_empty()),
            ("objective-place", self.place.is_empty() && self.site.is_empty()),
            ("objective-direction", self.direction.is_none() && self.goal.is_none()),
            ("objective-amount", self.amount.is_empty() && self.goal.is_none()),
            ("objective-by", self.by.is_none()),
            ("objective-confidence", self.sampling.confidence_per_mille.is_none()),
            ("objective-source", self.source.is_empty()),
            ("objective-agreed", self.agreed.is_empty()),
        ];
        texts.into_iter().filter(|(_, open)| *open).map(|(code, _)| code).collect()
    }
}

/// Reads `who, 2026-06-01`, or only who.
pub fn agreed(text: &str) -> Agreed {
    match text.rsplit_once(',').map(|(who, date)| (who.trim(), Date::read(date.trim()))) {
        Some((who, Some(date))) => Agreed { who: who.to_owned(), date: Some(date) },
        _ => Agreed { who: text.trim().to_owned(), date: None },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_open_is_named() {
        let mut objective = Objective { name: "spring cover".into(), ..Objective::default() };
        assert_eq!(objective.open().len(), 8);
        objective.site = "Hollow Flat (invented)".into();
        objective.attribute = "canopy cover of live shrubs".into();
        objective.direction = Some(Direction::Hold);
        objective.amount = "15 % or more".into();
        objective.by = Date::new(2030, 9, 30);
        objective.sampling.confidence_per_mille = Some(900);
        objective.source = "invented for this test".into();
        assert_eq!(objective.open(), ["objective-agreed"]);
    }

    #[test]
    fn who_agreed_and_when() {
        assert_eq!(agreed("owner, 2026-03-01").date, Date::new(2026, 3, 1));
        assert_eq!(agreed("Doe, the owner"), Agreed { who: "Doe, the owner".into(), date: None });
    }

    /// Records survive JSON, and what is not said takes no room.
    #[test]
    fn records_survive() {
        let trigger = Trigger { name: "t".into(), when: "below 10 %".into(), ..Trigger::default() };
        let text = serde_json::to_string(&trigger).unwrap();
        assert_eq!(serde_json::from_str::<Trigger>(&text).unwrap(), trigger);
        assert!(!text.contains("goal"));
    }
}
