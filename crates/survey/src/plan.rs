//! Sites, strata and planned lines: what was to be read, before anything was.

use crate::goal::Percent;
use crate::measure::Measure;
use serde::{Deserialize, Serialize};
use tautline_engine::length::DecimalMark;
use tautline_engine::slope::{cosine_of_degrees, cosine_of_grade};

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
    /// How steep the ground under it is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub slope: Option<Slope>,
}

/// How steep the ground is, up or down.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Slope {
    /// Rise over run.
    Grade(Percent),
    /// Angle in ten-thousandths of a degree, below 90 degrees.
    Degrees(u32),
}

impl Slope {
    /// Reads `12`, `12 %`, `7°` or `7 deg`; `unit` is what a bare number means.
    ///
    /// # Example
    /// ```
    /// use tautline_engine::length::DecimalMark;
    /// use tautline_survey::{goal::Percent, plan::Slope};
    /// let read = |text| Slope::read(text, None, DecimalMark::Point);
    /// assert_eq!(read("12.5 %"), Some(Slope::Grade(Percent(125_000))));
    /// assert_eq!(read("-7°"), Some(Slope::Degrees(70_000)));
    /// assert_eq!(read("12"), None); // of what?
    /// ```
    pub fn read(text: &str, unit: Option<&str>, mark: DecimalMark) -> Option<Self> {
        let text = text.trim().trim_start_matches(['-', '−', '+']);
        let end = text.find(|c: char| !c.is_ascii_digit() && c != '.' && c != ',').unwrap_or(text.len());
        let (number, own) = (&text[..end], text[end..].trim());
        let number = Percent::read(number, mark)?;
        match if own.is_empty() { unit? } else { own }.trim().to_lowercase().as_str() {
            "%" | "percent" | "per cent" => Some(Self::Grade(number)),
            "°" | "deg" | "degree" | "degrees" => (number.0 < 900_000).then_some(Self::Degrees(number.0)),
            _ => None,
        }
    }

    /// Cosine of the angle, which takes a length along the ground to the level.
    pub fn cosine(self) -> f64 {
        match self {
            Self::Grade(grade) => cosine_of_grade(grade.share()),
            Self::Degrees(angle) => cosine_of_degrees(f64::from(angle) / 10_000.0),
        }
    }
}
