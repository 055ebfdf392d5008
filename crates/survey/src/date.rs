//! A civil date without zone, as a visit has one.

use core::fmt;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// A day of the calendar.
///
/// # Example
/// ```
/// use tautline_survey::date::Date;
/// assert_eq!(Date::read("2026-06-09").unwrap().to_string(), "2026-06-09");
/// assert!(Date::read("2026-02-30").is_none());
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Date {
    year: u16,
    month: u8,
    day: u8,
}

impl Date {
    /// A date, if the calendar has it (years 1 to 9999).
    pub fn new(year: u16, month: u8, day: u8) -> Option<Self> {
        let leap = year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400));
        let days = match month {
            4 | 6 | 9 | 11 => 30,
            2 if leap => 29,
            2 => 28,
            1..=12 => 31,
            _ => return None,
        };
        ((1..=9999).contains(&year) && (1..=days).contains(&day)).then_some(Self { year, month, day })
    }

    /// Reads the ISO form `2026-06-09`; other orders of day and month can't be told apart and aren't guessed.
    pub fn read(text: &str) -> Option<Self> {
        let mut parts = text.trim().splitn(3, '-');
        let mut next = |digits: usize| {
            parts.next().filter(|part| part.len() == digits && part.bytes().all(|b| b.is_ascii_digit()))
        };
        let (year, month, day) = (next(4)?, next(2)?, next(2)?);
        Self::new(year.parse().ok()?, month.parse().ok()?, day.parse().ok()?)
    }

    /// The calendar year.
    pub const fn year(self) -> u16 {
        self.year
    }

    /// Days since 1 January 1970 in the Gregorian calendar, below zero before it.
    ///
    /// # Source
    /// Richards E.G., 2013, Calendars, in Explanatory Supplement to the Astronomical Almanac, §15.11: the Julian day
    /// number, less 2 440 588 (from memory)
    /// # Example
    /// ```
    /// use tautline_survey::date::Date;
    /// let days = |text| Date::read(text).unwrap().days_since_1970();
    /// assert_eq!([days("1970-01-01"), days("2000-03-01"), days("1969-12-31")], [0, 11_017, -1]);
    /// ```
    pub fn days_since_1970(self) -> i32 {
        let (year, month, day) = (i32::from(self.year), i32::from(self.month), i32::from(self.day));
        let before_march = (month - 14) / 12;
        let julian_day = (1461 * (year + 4800 + before_march)) / 4
            + (367 * (month - 2 - 12 * before_march)) / 12
            - (3 * ((year + 4900 + before_march) / 100)) / 4
            + day
            - 32_075;
        julian_day - 2_440_588
    }

    /// The day of the year, 1 on 1 January.
    ///
    /// # Example
    /// ```
    /// use tautline_survey::date::Date;
    /// assert_eq!(Date::read("2024-03-01").unwrap().day_of_year(), 61); // 2024 is a leap year
    /// ```
    pub fn day_of_year(self) -> u16 {
        let earlier = (1..self.month)
            .map(|month| (28..=31).rev().find(|&day| Self::new(self.year, month, day).is_some()));
        earlier.flatten().map(u16::from).sum::<u16>() + u16::from(self.day)
    }

    /// The days since another day, none where that is later.
    ///
    /// # Example
    /// From the first day of 1970 to that of 2000, in days of 86 400 s (IEEE Std 1003.1, 4.16: 946 684 800 s).
    /// ```
    /// use tautline_survey::date::Date;
    /// let day = |text| Date::read(text).unwrap();
    /// assert_eq!(day("2000-01-01").days_since(day("1970-01-01")), 946_684_800 / 86_400);
    /// assert_eq!(day("2024-03-01").days_since(day("2024-02-28")), 2);
    /// ```
    pub fn days_since(self, other: Self) -> u32 {
        self.ordinal().saturating_sub(other.ordinal())
    }

    /// The days from the beginning of year 1, by the Gregorian calendar.
    fn ordinal(self) -> u32 {
        let years = u32::from(self.year) - 1;
        years * 365 + years / 4 - years / 100 + years / 400 + u32::from(self.day_of_year())
    }

    /// The month, 1 to 12.
    pub const fn month(self) -> u8 {
        self.month
    }

    /// The day of the month, from 1.
    pub const fn day(self) -> u8 {
        self.day
    }
}

impl fmt::Display for Date {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.year, self.month, self.day)
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for Date {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Date".into()
    }
    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({ "type": "string", "format": "date" })
    }
}

impl Serialize for Date {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Date {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        Self::read(&text).ok_or_else(|| serde::de::Error::custom("not-a-date"))
    }
}
