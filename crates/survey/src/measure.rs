//! A length as it was written down: the exact length, the text, and the unit the text stood in.

use serde::{Deserialize, Deserializer, Serialize, Serializer};
use tautline_engine::length::{Bare, DecimalMark, Length, LengthError, Notation, Unit, read};

/// A length with the text it was typed as.
///
/// # Semantics
/// reading the text again in its unit gives the same length; a record in which it doesn't is refused
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Measure {
    length: Length,
    typed: String,
    unit: Option<Bare>,
    notation: Notation,
    rounded: bool,
}

impl Measure {
    /// Reads a text as it stands on a sheet.
    ///
    /// # Errors
    /// what is wrong with the text, and at which character
    pub fn read(typed: &str, unit: Option<Bare>, mark: DecimalMark) -> Result<Self, LengthError> {
        let written = read(typed, unit, mark)?;
        Ok(Self {
            length: written.length,
            typed: typed.trim().to_owned(),
            unit,
            notation: written.notation,
            rounded: written.rounded,
        })
    }

    /// A whole number of a unit, for lengths that no person typed.
    pub fn whole(count: u32, unit: Unit) -> Self {
        Self {
            length: Length::from_units(i64::from(count), unit),
            typed: count.to_string(),
            unit: Some(Bare::Unit(unit)),
            notation: Notation::decimals(unit, 0),
            rounded: false,
        }
    }

    /// The exact length.
    pub const fn length(&self) -> Length {
        self.length
    }

    /// The text as typed.
    pub fn typed(&self) -> &str {
        &self.typed
    }

    /// What a bare number meant where the text was read; the text itself may name another unit.
    pub const fn unit(&self) -> Option<Bare> {
        self.unit
    }

    /// How it was written, for printing other lengths alike.
    pub const fn notation(&self) -> Notation {
        self.notation
    }

    /// The text was not whole in nanometres and was rounded once.
    pub const fn was_rounded(&self) -> bool {
        self.rounded
    }
}

/// How a short length is said beside readings that were written in a notation: in inches beside feet and inches, else in
/// centimetres.
///
/// # Example
/// ```
/// use tautline_engine::length::{Length, Notation, Unit, write};
/// use tautline_survey::measure::short;
/// let said = |tape: Unit| write(Length::from_units(127, Unit::Millimetre), short(Notation::decimals(tape, 0), 1));
/// assert_eq!([said(Unit::Foot), said(Unit::Metre)], ["5.0 in", "12.7 cm"]); // the inch of 1959
/// ```
pub const fn short(beside: Notation, places: u8) -> Notation {
    match beside.unit {
        Unit::Foot | Unit::Inch => Notation::decimals(Unit::Inch, places),
        _ => Notation::decimals(Unit::Centimetre, places),
    }
}

/// How lengths that somebody chose, such as the breaks between classes, are said alike: in whole centimetres where they are whole
/// in them, else in inches.
///
/// # Example
/// ```
/// use tautline_engine::length::{Length, Notation, Unit};
/// use tautline_survey::measure::alike;
/// let of = |unit| alike(&[10, 24].map(|count| Length::from_units(count, unit)));
/// assert_eq!([of(Unit::Centimetre), of(Unit::Inch)], [Unit::Centimetre, Unit::Inch].map(|unit| Notation::decimals(unit, 0)));
/// ```
pub fn alike(lengths: &[Length]) -> Notation {
    let whole = |unit| {
        let step = Length::from_units(1, unit).nanometres();
        lengths.iter().all(|length| length.nanometres() % step == 0)
    };
    match (whole(Unit::Centimetre), whole(Unit::Inch)) {
        (true, _) => Notation::decimals(Unit::Centimetre, 0),
        (false, true) => Notation::decimals(Unit::Inch, 0),
        (false, false) => Notation::decimals(Unit::Inch, 1),
    }
}

/// The words for what a bare number meant, the same that a heading or an option uses.
pub const fn unit_words(unit: Bare) -> &'static str {
    match unit {
        Bare::Unit(unit) => unit.symbol(),
        Bare::DecimalFeet => "decimal ft",
        Bare::FeetAndInches => "ft-in",
    }
}

#[derive(Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "Measure"))]
struct Stored {
    /// The exact length in whole nanometres.
    nm: i64,
    /// The text as typed.
    typed: String,
    /// What a bare number meant: mm, cm, in, dm, ft, m, decimal ft, ft-in.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    unit: Option<String>,
}

impl Serialize for Measure {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        Stored {
            nm: self.length.nanometres(),
            typed: self.typed.clone(),
            unit: self.unit.map(|unit| unit_words(unit).to_owned()),
        }
        .serialize(serializer)
    }
}

impl<'de> Deserialize<'de> for Measure {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let stored = Stored::deserialize(deserializer)?;
        let unit = stored.unit.as_deref().and_then(Bare::from_words);
        [DecimalMark::Point, DecimalMark::Comma]
            .into_iter()
            .filter_map(|mark| Self::read(&stored.typed, unit, mark).ok())
            .find(|measure| measure.length.nanometres() == stored.nm)
            .ok_or_else(|| serde::de::Error::custom("length-and-text-differ"))
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for Measure {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Measure".into()
    }
    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        Stored::json_schema(generator)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_record_keeps_the_text_and_is_checked_on_reading() {
        let measure = Measure::read("10 1/2", Some(Bare::Unit(Unit::Inch)), DecimalMark::Point).unwrap();
        let json = serde_json::to_string(&measure).unwrap();
        assert_eq!(json, r#"{"nm":266700000,"typed":"10 1/2","unit":"in"}"#);
        assert_eq!(serde_json::from_str::<Measure>(&json).unwrap(), measure);
        assert!(serde_json::from_str::<Measure>(&json.replace("2667", "2668")).is_err());
    }
}
