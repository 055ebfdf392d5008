//! When a revision was made, as its device's clock had it. For people: nothing is ordered or merged by it.

use crate::date::Date;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// A time in UTC as text, and how far the device's own clock stood from it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stamp {
    utc: String,
    offset_minutes: i16,
}

impl Stamp {
    /// A stamp from the text `2026-06-09T20:03:07Z` and the offset in minutes east of UTC.
    ///
    /// # Range
    /// a second of the calendar, with or without a fraction; an offset of less than a day
    /// # Example
    /// ```
    /// use tautline_survey::revision::Stamp;
    /// let stamp = Stamp::new("2026-06-09T20:03:07.250Z", -360).unwrap();
    /// assert_eq!((stamp.minute(), stamp.offset()), ("2026-06-09 20:03".to_owned(), "-06:00".to_owned()));
    /// assert!(Stamp::new("2026-06-09 20:03", 0).is_none());
    /// ```
    pub fn new(utc: &str, offset_minutes: i16) -> Option<Self> {
        let (day, time) = utc.strip_suffix('Z')?.split_once('T')?;
        Date::read(day)?;
        let (clock, fraction) = time.split_once('.').unwrap_or((time, "0"));
        let digits = |part: &str| !part.is_empty() && part.bytes().all(|b| b.is_ascii_digit());
        let parts: Vec<&str> = clock.split(':').collect();
        let limits = [23, 59, 60]; // 60: a leap second
        let right = parts.len() == 3
            && parts.iter().zip(limits).all(|(part, most)| {
                part.len() == 2 && digits(part) && part.parse().is_ok_and(|number: u8| number <= most)
            });
        (right && digits(fraction) && offset_minutes.abs() < 24 * 60)
            .then(|| Self { utc: utc.to_owned(), offset_minutes })
    }

    /// The text in UTC.
    pub fn utc(&self) -> &str {
        &self.utc
    }

    /// Day, hour and minute in UTC, for people.
    pub fn minute(&self) -> String {
        self.utc[..16].replace('T', " ")
    }

    /// The offset as `-06:00`.
    pub fn offset(&self) -> String {
        let (sign, minutes) =
            if self.offset_minutes < 0 { ('-', -self.offset_minutes) } else { ('+', self.offset_minutes) };
        format!("{sign}{:02}:{:02}", minutes / 60, minutes % 60)
    }
}

#[derive(Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "Stamp"))]
struct Stored {
    /// The time in UTC, such as `2026-06-09T20:03:07Z`.
    utc: String,
    /// How many minutes the device's own clock stood east of UTC.
    offset_minutes: i16,
}

impl Serialize for Stamp {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        Stored { utc: self.utc.clone(), offset_minutes: self.offset_minutes }.serialize(serializer)
    }
}

impl<'de> Deserialize<'de> for Stamp {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let stored = Stored::deserialize(deserializer)?;
        Self::new(&stored.utc, stored.offset_minutes).ok_or_else(|| serde::de::Error::custom("not-a-time"))
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for Stamp {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Stamp".into()
    }
    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        Stored::json_schema(generator)
    }
}
