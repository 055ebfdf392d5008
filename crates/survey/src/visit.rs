//! Visits: one reading of one line on one date by a reader and a recorder, under one protocol.

use crate::date::Date;
use crate::finding::Place;
use crate::measure::Measure;
use crate::stake::ZERO_STAKE;
use serde::{Deserialize, Serialize};

/// Alive or dead, as the reader wrote it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum State {
    /// Alive by the protocol's definition.
    #[default]
    Live,
    /// Dead.
    Dead,
}

/// Where an intercept was read: its edges on the tape, or only its length.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Extent {
    /// Start and stop along the tape.
    Edges {
        /// Where it starts.
        start: Measure,
        /// Where it stops; beyond start.
        stop: Measure,
    },
    /// Only the length was written down.
    Length(Measure),
}

/// One stretch of tape under or over canopy.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Intercept {
    /// A short id, stable within the visit.
    pub id: u32,
    /// The species' code as written; empty where the reader named none.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub species: String,
    /// Edges or length.
    pub extent: Extent,
    /// Live or dead.
    #[serde(default)]
    pub state: State,
    /// The plant's mark within the visit, where the protocol asks for it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plant: Option<String>,
    /// Height of the plant.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub height: Option<Measure>,
    /// Greatest width of the whole plant at right angles to the line.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub width: Option<Measure>,
    /// A remark.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// Where it was read from; not part of the record's meaning.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<Place>,
}

/// How far a line was read. These are never confused with each other.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Outcome {
    /// Read from end to end; with no intercepts, read and nothing found.
    Read,
    /// Read from zero up to here.
    PartlyRead(Measure),
    /// Not read.
    NotRead,
}

/// The condition under which the reason stands why a line was not read.
pub const NOT_READ_WHY: &str = "why not read";

/// One reading of one line. Its identity is site, line, date, observers and pass.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Visit {
    /// The site.
    pub site: String,
    /// The line's own name within the site.
    pub line: String,
    /// The day.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub date: Option<Date>,
    /// Who read the tape.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub reader: String,
    /// Who wrote.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub recorder: String,
    /// The pass, where one line was read more than once: 1, 2, A, blind.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub pass: String,
    /// The fingerprint of the protocol it was read under.
    pub protocol: String,
    /// How long the tape is, where it is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length: Option<Measure>,
    /// How far it was read.
    pub outcome: Outcome,
    /// What was read, in the order of the sheet.
    pub intercepts: Vec<Intercept>,
    /// Rows of the sheet that could not be read as they stand; until they are settled the reading isn't whole.
    #[serde(default, skip_serializing_if = "is_zero")]
    pub set_aside: u32,
    /// Growth stage, wind, grazing, fire and whatever else was noted, by heading.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub conditions: Vec<(String, String)>,
    /// Where the visit itself was read from.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<Place>,
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "serde hands in a reference")]
const fn is_zero(count: &u32) -> bool {
    *count == 0
}

impl Visit {
    /// What tells this visit from every other.
    pub fn identity(&self) -> (&str, &str, Option<Date>, &str, &str, &str) {
        (&self.site, &self.line, self.date, &self.reader, &self.recorder, &self.pass)
    }

    /// The conditions that everybody may be told: where a stake stands is left out.
    pub fn told(&self) -> impl Iterator<Item = &(String, String)> + Clone {
        self.conditions.iter().filter(|(heading, _)| heading != ZERO_STAKE)
    }
}
