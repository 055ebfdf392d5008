//! Sites, strata and planned lines: what was to be read, before anything was.

use crate::measure::Measure;
use serde::{Deserialize, Serialize};

/// A stratum of a site and its area.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Stratum {
    /// The site.
    pub site: String,
    /// The stratum's name.
    pub name: String,
    /// Its area in whole square millimetres, within [`crate::limits::LARGEST_AREA`].
    pub area: u64,
}

/// A planned line. Its identity is its site and its own name.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PlannedLine {
    /// The site.
    pub site: String,
    /// The line's own name within the site.
    pub line: String,
    /// How long the tape is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length: Option<Measure>,
    /// The stratum it lies in.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stratum: Option<String>,
    /// The plot it belongs to, where lines are bunched in plots.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plot: Option<String>,
}
