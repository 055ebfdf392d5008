//! The written rules of a reading: what they state, what they leave open, and the fingerprint of their meaning.

mod said;
mod unknown;

pub(crate) use said::rule_word;
pub use unknown::{Unknown, widest_unknown};

use crate::canonical;
use crate::measure::Measure;
use crate::plants::{GrowthForm, Plant};
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value, json};
use tautline_engine::length::Length;
use tautline_engine::rule::{Bridging, DeadRule, GapRule, ReadingRule};

/// Which of the meanings of cover the reader had in mind.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum CoverMeaning {
    /// The outline of the canopy seen straight down, small openings included.
    CanopyOutline,
    /// The aerial parts themselves; small openings left out.
    Foliar,
    /// At ground level.
    Basal,
}

/// What a gap or an equal gap does.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Bridge {
    /// Read as canopy.
    Bridged,
    /// Stays open.
    Breaks,
}

impl From<Bridge> for Bridging {
    fn from(bridge: Bridge) -> Self {
        match bridge {
            Bridge::Bridged => Self::Bridged,
            Bridge::Breaks => Self::Breaks,
        }
    }
}

/// What dead canopy does.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Dead {
    /// Not read.
    LeftOut,
    /// Read and worked out apart.
    Apart,
    /// Apart; a stretch shorter than the gap limit that touches live canopy is read as live.
    ShortJoinsLive,
    /// Counts like live canopy.
    CountsAsLive,
}

/// What is written down where two species overlap.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Overlap {
    /// Each species in full.
    EachSpecies,
    /// The tape once, under the upper species.
    Once,
}

/// Which edge of the tape is read, looking from its zero.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Side {
    /// The left edge.
    Left,
    /// The right edge.
    Right,
}

/// Which plants count.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Counts {
    /// The growth forms that count.
    pub forms: Vec<GrowthForm>,
    /// Codes that count whatever their growth form: the agreed list for the doubtful ones.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub also: Vec<String>,
    /// Codes that don't count whatever their growth form.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub except: Vec<String>,
}

impl Counts {
    /// The woody growth forms.
    pub fn woody() -> Self {
        let forms = GrowthForm::ALL.into_iter().filter(|form| form.is_woody()).collect();
        Self { forms, ..Self::default() }
    }

    /// Whether a code of this growth form counts; a code that no list knows counts, since the reader wrote it down.
    pub fn includes(&self, code: &str, plant: Option<&Plant>) -> bool {
        let listed = |codes: &[String]| codes.iter().any(|listed| listed.eq_ignore_ascii_case(code));
        !listed(&self.except)
            && (listed(&self.also) || plant.is_none_or(|plant| self.forms.contains(&plant.form)))
    }
}

/// The gap rule as written; what is `None` is left open.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(default)]
pub struct Gap {
    /// A gap shorter than this is read as canopy.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub limit: Option<Measure>,
    /// Nobody knows the limit any more; it was no more than this.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unknown_up_to: Option<Measure>,
    /// A gap of exactly the limit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub equal: Option<Bridge>,
    /// A gap between two plants of one species.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub two_plants: Option<Bridge>,
    /// A gap within one species in which another counted species stands.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub across_species: Option<Bridge>,
    /// A gap between two species.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub between_species: Option<Bridge>,
    /// A gap in which dead wood of the same species stands.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub across_dead: Option<Bridge>,
    /// A gap between the last canopy and the line's end.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub line_end: Option<Bridge>,
}

/// A protocol: the written rules that every reading carries. What is `None` or empty is left open.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(default)]
pub struct Protocol {
    /// A neutral descriptive name.
    pub name: String,
    /// Where the rules come from.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub source: String,
    /// The source was not at hand when the rules were written down.
    #[serde(skip_serializing_if = "core::ops::Not::not")]
    pub from_memory: bool,
    /// Which meaning of cover.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cover: Option<CoverMeaning>,
    /// Which plants count.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub counts: Option<Counts>,
    /// What dead canopy does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub dead: Option<Dead>,
    /// The gap rule.
    pub gap: Gap,
    /// What somebody looked for and didn't find.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub unknown: Vec<Unknown>,
    /// The shortest canopy that is read.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shortest: Option<Measure>,
    /// What is written where two species overlap.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub overlap: Option<Overlap>,
    /// Which edge of the tape is read.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub side: Option<Side>,
    /// The finest division that is written down.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub finest_division: Option<Measure>,
    /// Dates or growth stage between which lines are read.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub reading_window: String,
    /// What counts as alive without leaves.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub alive_without_leaves: String,
    /// What is done with flower stalks.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub flower_stalks: String,
    /// How the tape lies.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub tape: String,
    /// The wind above which nobody reads.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub wind_limit: String,
    /// How heights are read.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub heights: String,
}

/// Something that a protocol leaves open and that the arithmetic had to take one way.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub struct Assumption {
    /// The rule that is silent, by its key in [`Protocol::meaning`].
    pub rule: &'static str,
    /// What was taken.
    pub taken: &'static str,
}

/// The version of what a fingerprint covers. Raised when a rule is added whose absence would change a meaning.
const MEANING_VERSION: u32 = 1;

impl Protocol {
    /// What the protocol means, rule by rule; names and wording are not part of it. Silent rules are absent.
    ///
    /// Lengths are whole nanometres, so 2.5 in and 6.35 cm mean the same. Free text is compared with letter case
    /// and white space evened out.
    pub fn meaning(&self) -> Map<String, Value> {
        let mut meaning = Map::new();
        let mut state = |rule: &str, value: Option<Value>| {
            if let Some(value) = value {
                meaning.insert(rule.to_owned(), value);
            }
        };
        let length = |measure: &Option<Measure>| measure.as_ref().map(|m| json!(m.length().nanometres()));
        let text = |words: &str| {
            let even = words.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase();
            (!even.is_empty()).then(|| json!(even))
        };
        state("cover", self.cover.map(|cover| json!(cover)));
        state("counts", self.counts.as_ref().map(counts_meaning));
        state("dead", self.dead.map(|dead| json!(dead)));
        state("gap-limit", length(&self.gap.limit));
        state("gap-limit-unknown-up-to", self.gap.unknown().map(|most| json!(most.length().nanometres())));
        state("unknown", unknown_meaning(&self.unknown));
        state("gap-equal", self.gap.equal.map(|bridge| json!(bridge)));
        state("gap-two-plants", self.gap.two_plants.map(|bridge| json!(bridge)));
        state("gap-across-species", self.gap.across_species.map(|bridge| json!(bridge)));
        state("gap-between-species", self.gap.between_species.map(|bridge| json!(bridge)));
        state("gap-across-dead", self.gap.across_dead.map(|bridge| json!(bridge)));
        state("gap-line-end", self.gap.line_end.map(|bridge| json!(bridge)));
        state("shortest", length(&self.shortest));
        state("overlap", self.overlap.map(|overlap| json!(overlap)));
        state("side", self.side.map(|side| json!(side)));
        state("finest-division", length(&self.finest_division));
        state("reading-window", text(&self.reading_window));
        state("alive-without-leaves", text(&self.alive_without_leaves));
        state("flower-stalks", text(&self.flower_stalks));
        state("tape", text(&self.tape));
        state("wind-limit", text(&self.wind_limit));
        state("heights", text(&self.heights));
        meaning
    }

    /// The fingerprint of the meaning: SHA-256 of its canonical bytes, in hexadecimal.
    pub fn fingerprint(&self) -> String {
        let value = json!({ "version": MEANING_VERSION, "meaning": self.meaning() });
        // the meaning holds whole numbers and text only, so it always has canonical bytes
        canonical::sha256_hex(&canonical::bytes(&value).unwrap_or_default())
    }

    /// The rule that the arithmetic uses, with every assumption it had to make where the protocol is silent.
    pub fn rule(&self) -> (ReadingRule, Vec<Assumption>) {
        let plain = ReadingRule::AS_WRITTEN;
        let mut assumed = Vec::new();
        let mut bridge = |rule, stated: Option<Bridge>, silent: Bridging| {
            stated.map_or_else(
                || {
                    let taken = if silent == Bridging::Bridged { "bridged" } else { "breaks" };
                    assumed.push(Assumption { rule, taken });
                    silent
                },
                Bridging::from,
            )
        };
        // an unknown rule is taken at its widest, which no reading under it can have passed
        let limit = self.gap.limit.as_ref().map(Measure::length).or(self.gap.unknown().map(Measure::length));
        let silent = if self.gap.unknown().is_some() { unknown::ALL_BRIDGED } else { plain.gap };
        let gap = match limit {
            // where no gap closes, what a closing gap would do is no question
            None | Some(Length::ZERO) => plain.gap,
            Some(limit) => GapRule {
                limit,
                equal: bridge("gap-equal", self.gap.equal, silent.equal),
                two_plants: bridge("gap-two-plants", self.gap.two_plants, silent.two_plants),
                across_species: bridge("gap-across-species", self.gap.across_species, silent.across_species),
                between_species: bridge(
                    "gap-between-species",
                    self.gap.between_species,
                    silent.between_species,
                ),
                across_dead: bridge("gap-across-dead", self.gap.across_dead, silent.across_dead),
                line_end: bridge("gap-line-end", self.gap.line_end, silent.line_end),
            },
        };
        if limit.is_none() {
            assumed.push(Assumption { rule: "gap-limit", taken: "no-gap-closed" });
        }
        let dead = match self.dead {
            Some(Dead::LeftOut) => DeadRule::LeftOut,
            Some(Dead::Apart) => DeadRule::Apart,
            Some(Dead::ShortJoinsLive) => DeadRule::ShortJoinsLive,
            Some(Dead::CountsAsLive) => DeadRule::CountsAsLive,
            None => {
                if !self.is_unknown(Unknown::Dead) {
                    assumed.push(Assumption { rule: "dead", taken: "apart" });
                }
                DeadRule::Apart
            }
        };
        let cover_is_silent = self.cover.is_none() && !self.is_unknown(Unknown::Cover);
        for (rule, silent, taken) in
            [("cover", cover_is_silent, "canopy-outline"), ("counts", self.counts.is_none(), "woody")]
        {
            if silent {
                assumed.push(Assumption { rule, taken });
            }
        }
        let shortest = self.shortest.as_ref().map_or(Length::ZERO, Measure::length);
        (ReadingRule { gap, dead, shortest }, assumed)
    }

    /// What counts, or the woody plants where the protocol is silent.
    pub fn counts_or_woody(&self) -> Counts {
        self.counts.clone().unwrap_or_else(Counts::woody)
    }

    /// Whether the gap rule stops at the plant, so that each intercept needs a plant mark.
    pub fn stops_at_the_plant(&self) -> bool {
        self.gap.two_plants == Some(Bridge::Breaks)
    }
}

fn unknown_meaning(unknown: &[Unknown]) -> Option<Value> {
    let mut rules = unknown.to_vec();
    rules.sort_unstable();
    rules.dedup();
    (!rules.is_empty()).then(|| json!(rules))
}

fn counts_meaning(counts: &Counts) -> Value {
    let codes = |codes: &[String]| {
        let mut codes: Vec<String> = codes.iter().map(|code| code.trim().to_uppercase()).collect();
        codes.sort();
        codes.dedup();
        codes
    };
    let mut forms = counts.forms.clone();
    forms.sort_unstable();
    forms.dedup();
    json!({ "forms": forms, "also": codes(&counts.also), "except": codes(&counts.except) })
}

#[cfg(test)]
mod tests {
    use super::*;
    use tautline_engine::length::DecimalMark;

    fn measure(text: &str) -> Measure {
        Measure::read(text, None, DecimalMark::Point).unwrap()
    }

    fn protocol(limit: &str) -> Protocol {
        Protocol { gap: Gap { limit: Some(measure(limit)), ..Gap::default() }, ..Protocol::default() }
    }

    #[test]
    fn the_fingerprint_is_of_the_meaning_and_not_of_the_wording() {
        let inches =
            Protocol { name: "ours".into(), wind_limit: "Above  5 m/s".into(), ..protocol("2.5 in") };
        let metric =
            Protocol { name: "theirs".into(), wind_limit: "above 5 m/s".into(), ..protocol("6.35 cm") };
        assert_eq!(inches.fingerprint(), metric.fingerprint());
        assert_ne!(inches.fingerprint(), protocol("2 in").fingerprint());
    }

    #[test]
    fn silence_is_not_the_same_as_stating_what_is_assumed() {
        let silent = protocol("2 in");
        let mut stated = silent.clone();
        stated.gap.equal = Some(Bridge::Breaks);
        assert_eq!(silent.rule().0, stated.rule().0);
        assert_ne!(silent.fingerprint(), stated.fingerprint());
        assert!(silent.rule().1.contains(&Assumption { rule: "gap-equal", taken: "breaks" }));
        assert!(!stated.rule().1.iter().any(|assumption| assumption.rule == "gap-equal"));
    }

    #[test]
    fn doubtful_plants_are_named_one_by_one() {
        let plant = |code: &str, form| Plant::new(code, form);
        let counts = Counts { also: vec!["CACT".into()], except: vec!["HALF".into()], ..Counts::woody() };
        assert!(counts.includes("cact", Some(&plant("CACT", GrowthForm::Succulent))));
        assert!(!counts.includes("HALF", Some(&plant("HALF", GrowthForm::Subshrub))));
        assert!(!counts.includes("GRAS", Some(&plant("GRAS", GrowthForm::Grass))));
        assert!(counts.includes("UNK1", None));
    }
}
