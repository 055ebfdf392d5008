//! What is settled before the first intercept: which line, who reads, under which rules, in which unit.

use crate::date::Date;
use crate::measure::{Measure, unit_words};
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use tautline_engine::length::{Bare, DecimalMark, LengthError, Unit};

/// The head of an unfinished line.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Setup {
    /// The site.
    pub site: String,
    /// The line's own name within the site.
    pub line: String,
    /// How long the tape is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length: Option<Measure>,
    /// What a bare number means.
    #[serde(serialize_with = "unit_out", deserialize_with = "unit_in")]
    #[cfg_attr(feature = "schema", schemars(with = "String"))]
    pub unit: Bare,
    /// Decimals are parted by a comma.
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    pub comma: bool,
    /// The fingerprint of the protocol.
    pub protocol: String,
    /// Who reads the tape.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub reader: String,
    /// Who writes.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub recorder: String,
    /// The day.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub date: Option<Date>,
    /// The pass, where the line is read more than once.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub pass: String,
    /// Read without seeing anybody else's reading of the line.
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    pub blind: bool,
}

/// The pass of a second reader who has not seen the first one's sheet.
const BLIND: &str = "blind";

impl Setup {
    /// The same line for a second reader, who sees nothing of the first reading.
    #[must_use]
    pub fn second(&self, reader: &str, recorder: &str) -> Self {
        Self {
            reader: reader.to_owned(),
            recorder: recorder.to_owned(),
            pass: BLIND.to_owned(),
            blind: true,
            ..self.clone()
        }
    }

    /// The decimal mark.
    pub const fn mark(&self) -> DecimalMark {
        if self.comma { DecimalMark::Comma } else { DecimalMark::Point }
    }

    /// Reads a number as typed on this line.
    ///
    /// # Errors
    /// what is wrong with it
    pub fn measure(&self, typed: &str) -> Result<Measure, LengthError> {
        Measure::read(typed, Some(self.unit), self.mark())
    }

    /// The fractions that a pad offers: halves, quarters and eighths where the unit is the inch.
    ///
    /// A tape in decimal feet or in metres has tenths and hundredths, which are typed behind the decimal mark.
    pub const fn fractions(&self) -> &'static [(u8, u16)] {
        match self.unit {
            Bare::Unit(Unit::Inch) | Bare::FeetAndInches => {
                &[(1, 8), (1, 4), (3, 8), (1, 2), (5, 8), (3, 4), (7, 8)]
            }
            Bare::Unit(Unit::Foot) => &[(1, 4), (1, 2), (3, 4)],
            Bare::Unit(_) | Bare::DecimalFeet => &[],
        }
    }

    /// Whether a decimal mark means something: `5.11` under plain feet could be 5 ft 11 in.
    pub const fn has_decimals(&self) -> bool {
        !matches!(self.unit, Bare::Unit(Unit::Foot))
    }
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "serde hands in a reference")]
fn unit_out<S: Serializer>(unit: &Bare, serializer: S) -> Result<S::Ok, S::Error> {
    serializer.serialize_str(unit_words(*unit))
}

fn unit_in<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Bare, D::Error> {
    let words = String::deserialize(deserializer)?;
    Bare::from_words(&words).ok_or_else(|| serde::de::Error::custom("unit-not-known"))
}
