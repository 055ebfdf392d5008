//! Sites, strata and planned lines: what was to be read, before anything was.

use crate::date::Date;
use crate::goal::Percent;
use crate::measure::Measure;
use crate::message::Message;
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
    /// Why its area was chosen by judgement, as a key area is; none where chance chose it, or nobody says.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub judgement: Option<String>,
    /// How steep the ground under it is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub slope: Option<Slope>,
    /// Whether somebody may enter the ground to read it; none where nobody wrote anything down about that.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub permission: Option<Permission>,
}

/// Permission to enter the ground that a line lies on.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Permission {
    /// Who gave it; empty where it is needed and nobody has given it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub from: String,
    /// The last day that it holds; none where no end was said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub until: Option<Date>,
}

impl Permission {
    /// Somebody has given it.
    pub const fn is_given(&self) -> bool {
        !self.from.is_empty()
    }

    /// What is said of it: who gave it and until when, or that it is needed.
    pub fn said(&self) -> Message {
        match self.until {
            _ if !self.is_given() => Message::new("permission-needed"),
            Some(until) => Message::new("permission-given-until")
                .with("from", self.from.as_str())
                .with("until", until.to_string()),
            None => Message::new("permission-given").with("from", self.from.as_str()),
        }
    }

    /// It was given, and its last day lies before this one.
    ///
    /// # Example
    /// ```
    /// use tautline_survey::{date::Date, plan::Permission};
    /// let day = |text| Date::read(text).unwrap();
    /// let given = Permission { from: "the ranch".into(), until: Some(day("2026-06-30")) };
    /// assert!(!given.had_ended_by(day("2026-06-30")) && given.had_ended_by(day("2026-07-01")));
    /// ```
    pub fn had_ended_by(&self, day: Date) -> bool {
        self.is_given() && self.until.is_some_and(|until| until < day)
    }
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
