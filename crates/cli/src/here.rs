//! Everything about this place and this moment that a revision carries: who, on what, when, and chance. The clock, the
//! randomness and the names are read here and nowhere else; tests hand in their own.

use jiff::ZonedDateTime;
use tautline_survey::date::Date;
use tautline_survey::revision::Stamp;

/// Fills bytes at random.
type Random = Box<dyn FnMut(&mut [u8])>;

/// Who writes, on what, when, and a source of random bytes.
pub(crate) struct Here {
    /// Who.
    pub(crate) author: String,
    /// What the device is called.
    pub(crate) device: String,
    /// When, as text and in milliseconds since 1970.
    pub(crate) now: Box<dyn Fn() -> (Stamp, u64)>,
    /// The day here.
    pub(crate) today: Date,
    /// Fills bytes at random.
    pub(crate) random: Random,
}

impl Here {
    /// This computer, now, and whoever is logged in.
    pub(crate) fn real() -> Self {
        let user = ["USER", "USERNAME", "LOGNAME"].iter().find_map(|name| std::env::var(name).ok());
        Self {
            author: user.unwrap_or_default(),
            device: gethostname::gethostname().to_string_lossy().into_owned(),
            now: Box::new(now),
            today: today(),
            random: Box::new(|bytes| {
                getrandom::fill(bytes).expect("every system that runs this has randomness");
            }),
        }
    }
}

fn today() -> Date {
    let day = ZonedDateTime::now().date();
    let number = |part: i8| u8::try_from(part).unwrap_or(1);
    let here = Date::new(u16::try_from(day.year()).unwrap_or(0), number(day.month()), number(day.day()));
    // as with the time: a day that can't be written down
    here.unwrap_or_else(|| Date::new(1, 1, 1).expect("the oldest day is one"))
}

fn now() -> (Stamp, u64) {
    let now = ZonedDateTime::now();
    let offset = i16::try_from(now.offset().seconds() / 60).unwrap_or(0);
    let utc = now.timestamp();
    let milliseconds = u64::try_from(utc.as_millisecond()).unwrap_or(0);
    // a clock before year 1 or after 9999 can't be written down; the oldest time stands for it
    let oldest = || Stamp::new("0001-01-01T00:00:00Z", 0).expect("the oldest time is one");
    let stamp = Stamp::new(&format!("{utc:.3}"), offset).unwrap_or_else(oldest);
    (stamp, milliseconds)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_clock_is_understood() {
        let (stamp, milliseconds) = now();
        assert!(stamp.utc() > "2026", "{}", stamp.utc());
        assert!(milliseconds > 1_767_225_600_000, "past the beginning of 2026");
    }
}
