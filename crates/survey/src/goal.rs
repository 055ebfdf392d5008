//! Goals: what is to be judged, against which value, and how a person writes that down.

use crate::limits::CONFIDENCE_PER_MILLE;
use crate::measure::Measure;
use crate::plants::GrowthForm;
use serde::{Deserialize, Serialize};
use tautline_engine::length::{DecimalMark, LengthError};

/// What a figure is about.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Subject {
    /// Canopy cover: the union of what counts, live.
    Canopy,
    /// The sum of the counted species' covers.
    Sum,
    /// Dead canopy apart from live.
    Dead,
    /// One species, by its code.
    Species(String),
    /// One growth form: union inside the form.
    Form(GrowthForm),
    /// A group of the plant list: union inside the group.
    Group(String),
}

impl Subject {
    /// Whether the figure can't pass 100 %.
    pub const fn is_bounded(&self) -> bool {
        !matches!(self, Self::Sum)
    }

    /// Reads `canopy`, `sum`, `dead`, a growth form, `group NAME`, or a species' code.
    pub fn read(text: &str) -> Self {
        let text = text.trim();
        let lower = text.to_lowercase();
        if let Some(group) = lower.strip_prefix("group ") {
            return Self::Group(group.trim().to_owned());
        }
        match lower.as_str() {
            "" | "canopy" | "cover" | "canopy cover" => Self::Canopy,
            "sum" | "sum of species" => Self::Sum,
            "dead" => Self::Dead,
            _ => GrowthForm::from_word(lower.strip_prefix("form ").unwrap_or(&lower))
                .map_or_else(|| Self::Species(text.to_uppercase()), Self::Form),
        }
    }
}

/// A percentage in whole ten-thousandths of a per cent, so that records hold no floats.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Percent(pub u32);

impl Percent {
    /// As a share of one.
    pub fn share(self) -> f64 {
        f64::from(self.0) / 1_000_000.0
    }

    /// The digits that [`Self::read`] reads, without needless ones.
    pub fn digits(self) -> String {
        let text = format!("{}.{:04}", self.0 / 10_000, self.0 % 10_000);
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    }

    /// Reads digits with at most four decimals, without the sign.
    pub fn read(text: &str, mark: DecimalMark) -> Option<Self> {
        let point = match mark {
            DecimalMark::Point => '.',
            DecimalMark::Comma => ',',
        };
        let (whole, decimals) = text.split_once(point).unwrap_or((text, ""));
        let digits = |part: &str| part.bytes().all(|b| b.is_ascii_digit());
        if whole.is_empty() || whole.len() > 4 || decimals.len() > 4 || !digits(whole) || !digits(decimals) {
            return None;
        }
        let whole: u32 = whole.parse().ok()?;
        let decimals: u32 = format!("{decimals:0<4}").parse().ok()?;
        Some(Self(whole * 10_000 + decimals))
    }
}

/// The attribute and the value or values that a goal asks for.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Wanted {
    /// Cover in per cent.
    Cover(Relation<Percent>),
    /// Mean height.
    Height(Relation<Measure>),
}

/// At least, at most, or between.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Relation<T> {
    /// This much or more.
    AtLeast(T),
    /// This much or less.
    AtMost(T),
    /// From this much to that much.
    Between(T, T),
}

/// A goal for a site.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Goal {
    /// What it is about.
    pub subject: Subject,
    /// What it asks for.
    pub wanted: Wanted,
    /// How sure the verdict must be, in per mille; the question's confidence where the goal sets none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub confidence_per_mille: Option<u16>,
    /// Where the number comes from.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub source: String,
}

/// Why a text was not read as a goal.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum GoalError {
    /// No `at least`, `at most`, or `LOW..HIGH` was found in this text.
    NoRelation(String),
    /// This is not a percentage with at most four decimals.
    NotAPercentage(String),
    /// This is not a length.
    NotALength(String, LengthError),
    /// The low end lies above the high end.
    LowAboveHigh(String),
}

/// Reads a confidence in per cent with at most one decimal, `90`, `90 %` or `97.5 %`, as per mille.
///
/// # Range
/// [`CONFIDENCE_PER_MILLE`]; none where the text is something else
/// # Example
/// ```
/// use tautline_engine::length::DecimalMark;
/// use tautline_survey::goal::read_confidence;
/// assert_eq!(read_confidence("97.5 %", DecimalMark::Point), Some(975));
/// assert_eq!(read_confidence("0.9", DecimalMark::Point), None);
/// ```
pub fn read_confidence(text: &str, mark: DecimalMark) -> Option<u16> {
    let percent = Percent::read(text.trim().trim_end_matches('%').trim(), mark)?;
    let per_mille = u16::try_from(percent.0 / 1_000).ok()?;
    (percent.0.is_multiple_of(1_000) && CONFIDENCE_PER_MILLE.contains(&per_mille)).then_some(per_mille)
}

/// Reads a goal as a person writes it: `at least 15 %`, `ATCA: at most 10 %`, `group browse: 15..25 %`, `between 15 and 25 %`,
/// `height of ATCA: at least 40 cm`.
///
/// # Errors
/// [`GoalError`] with the part that was not understood
/// # Example
/// ```
/// use tautline_engine::length::DecimalMark;
/// use tautline_survey::goal::{Percent, Relation, Subject, Wanted, read};
/// let goal = read("shrub: 15..25 %", DecimalMark::Point).unwrap();
/// assert_eq!(goal.wanted, Wanted::Cover(Relation::Between(Percent(150_000), Percent(250_000))));
/// ```
pub fn read(text: &str, mark: DecimalMark) -> Result<Goal, GoalError> {
    let (subject, relation) = text.split_once(':').unwrap_or(("", text));
    let subject = subject.trim();
    let height = subject.strip_prefix("height of ").or_else(|| subject.strip_prefix("height "));
    let relation = relation.trim();
    let wanted = match height {
        Some(_) => Wanted::Height(read_relation(relation, |value| {
            Measure::read(value, None, mark).map_err(|error| GoalError::NotALength(value.to_owned(), error))
        })?),
        None => Wanted::Cover(read_relation(relation, |value| {
            Percent::read(value.trim_end_matches('%').trim(), mark)
                .ok_or_else(|| GoalError::NotAPercentage(value.to_owned()))
        })?),
    };
    let ordered = match &wanted {
        Wanted::Cover(Relation::Between(low, high)) => low <= high,
        Wanted::Height(Relation::Between(low, high)) => low.length() <= high.length(),
        _ => true,
    };
    if !ordered {
        return Err(GoalError::LowAboveHigh(relation.to_owned()));
    }
    Ok(Goal {
        subject: Subject::read(height.unwrap_or(subject)),
        wanted,
        confidence_per_mille: None,
        source: String::new(),
    })
}

fn read_relation<T>(
    text: &str,
    value: impl Fn(&str) -> Result<T, GoalError>,
) -> Result<Relation<T>, GoalError> {
    let lower = text.to_lowercase();
    if let Some(rest) = lower.strip_prefix("at least ") {
        return Ok(Relation::AtLeast(value(rest.trim())?));
    }
    if let Some(rest) = lower.strip_prefix("at most ") {
        return Ok(Relation::AtMost(value(rest.trim())?));
    }
    let between = match lower.strip_prefix("between ") {
        Some(rest) => rest.split_once(" and "),
        None => lower.split_once("..").or_else(|| lower.split_once(" to ")),
    };
    let (low, high) = between.ok_or_else(|| GoalError::NoRelation(text.to_owned()))?;
    let high = high.trim();
    // `30..80 cm`: the unit behind the second value is the first one's too
    let unit = high.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.' || c == ',').trim();
    let low = low.trim();
    let low =
        if low.ends_with(|c: char| c.is_ascii_digit()) { format!("{low} {unit}") } else { low.to_owned() };
    Ok(Relation::Between(value(low.trim())?, value(high)?))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn goal(text: &str) -> Goal {
        read(text, DecimalMark::Point).unwrap()
    }

    #[test]
    fn what_people_write() {
        assert_eq!(goal("at least 15 %").wanted, Wanted::Cover(Relation::AtLeast(Percent(150_000))));
        assert_eq!(goal("at most 12.5%").wanted, Wanted::Cover(Relation::AtMost(Percent(125_000))));
        assert_eq!(goal("atca: at least 5 %").subject, Subject::Species("ATCA".into()));
        assert_eq!(goal("form shrub: at least 5 %").subject, Subject::Form(GrowthForm::Shrub));
        assert_eq!(goal("group browse: 5..9 %").subject, Subject::Group("browse".into()));
        let between = Wanted::Cover(Relation::Between(Percent(150_000), Percent(250_000)));
        for written in ["15..25 %", "15 to 25 %", "between 15 and 25 %", "between 15 % and 25 %"] {
            assert_eq!(goal(written).wanted, between, "{written}");
        }
        let Wanted::Height(Relation::Between(low, high)) = goal("height of ATCA: 30..80 cm").wanted else {
            panic!("a height goal")
        };
        assert_eq!((low.typed(), high.typed()), ("30 cm", "80 cm"));
    }

    #[test]
    fn what_is_not_understood_is_named() {
        assert_eq!(read("15 %", DecimalMark::Point), Err(GoalError::NoRelation("15 %".into())));
        assert_eq!(read("at least lots", DecimalMark::Point), Err(GoalError::NotAPercentage("lots".into())));
        assert_eq!(read("25..15 %", DecimalMark::Point), Err(GoalError::LowAboveHigh("25..15 %".into())));
    }
}
