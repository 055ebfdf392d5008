//! Readings outside their protocol's reading window.

use super::records::{Reading, Records};
use crate::finding::{About, Finding};
use crate::message::Message;
use std::collections::BTreeMap;

/// Readings dated outside the window that their protocol states as two days or months, once for each site, year and
/// window. A window in other words, such as a growth stage, isn't looked at.
pub(super) fn outside(records: &Records) -> Vec<Finding> {
    let mut late: BTreeMap<(&str, Option<u16>, &str), Vec<&Reading>> = BTreeMap::new();
    for reading in &records.readings {
        let Some(words) = reading.protocol.map(|protocol| protocol.reading_window.as_str()) else { continue };
        if reading.visit.date.is_some_and(|date| is_outside(words, date)) {
            late.entry((&reading.visit.site, reading.year(), words)).or_default().push(reading);
        }
    }
    late.into_iter()
        .map(|((site, _, window), readings)| {
            let first = readings[0].visit;
            let mut lines: Vec<String> = readings.iter().map(|reading| reading.visit.line.clone()).collect();
            lines.sort_by(|a, b| crate::assess::natural_order(a, b));
            let message = Message::new("outside-the-reading-window")
                .with("site", site)
                .with("lines", lines)
                .with("date", first.date.map_or(String::new(), |date| date.to_string()))
                .with("window", window);
            let about = About { site: site.to_owned(), date: first.date, ..About::default() };
            Finding::have_a_look(message).at_place(first.place.as_ref()).about(about)
        })
        .collect()
}

/// Whether a day lies outside a window that is stated as two days or months.
pub(crate) fn is_outside(window: &str, date: crate::date::Date) -> bool {
    Window::read(window).is_some_and(|window| !window.holds((date.month(), date.day())))
}

/// A month and a day in it.
type Day = (u8, u8);

/// From one day of the year to another, both within; over the turn of the year where the first is the later.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Window {
    from: Day,
    to: Day,
}

const MONTHS: [&str; 12] =
    ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

impl Window {
    /// Reads two days: `06-01 to 07-15`, `1 June to 15 July`, `June 1 – July 15`, `June to July`.
    fn read(words: &str) -> Option<Self> {
        let lower = words.to_lowercase();
        let parts: Vec<&str> = [" to ", "..", "–", " - ", " until "]
            .iter()
            .find(|between| lower.contains(**between))
            .map(|between| lower.split(between).collect())?;
        let [from, to] = parts[..] else { return None };
        Some(Self { from: day(from, 1)?, to: day(to, 31)? })
    }

    fn holds(self, day: Day) -> bool {
        if self.from <= self.to {
            (self.from..=self.to).contains(&day)
        } else {
            day >= self.from || day <= self.to
        }
    }
}

/// A day such as `06-01`, `1 june` or `june`; a month alone is its `otherwise`th day.
fn day(text: &str, otherwise: u8) -> Option<Day> {
    let words: Vec<&str> = text.split([' ', '.', ',', '-']).filter(|word| !word.is_empty()).collect();
    let named = words.iter().find_map(|word| MONTHS.iter().position(|month| word.starts_with(month)));
    let numbers: Vec<u8> = words.iter().filter_map(|word| word.parse().ok()).collect();
    let (month, day) = match (named, numbers.as_slice()) {
        (Some(month), []) => (u8::try_from(month + 1).ok()?, otherwise),
        (Some(month), &[day]) => (u8::try_from(month + 1).ok()?, day),
        (None, &[month, day]) => (month, day),
        _ => return None,
    };
    ((1..=12).contains(&month) && (1..=31).contains(&day)).then_some((month, day))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_days_in_the_ways_people_write_them() {
        let june = Window { from: (6, 1), to: (7, 15) };
        for words in ["06-01 to 07-15", "1 June to 15 July", "June 1 – July 15", "06-01..07-15"] {
            assert_eq!(Window::read(words), Some(june), "{words}");
        }
        assert_eq!(Window::read("June to July"), Some(Window { from: (6, 1), to: (7, 31) }));
        assert_eq!(Window::read("full leaf, before seed drops"), None);
        assert_eq!(Window::read("full leaf to seed"), None);
        assert!(june.holds((7, 15)) && !june.holds((7, 16)) && !june.holds((5, 31)));
        let winter = Window { from: (11, 15), to: (2, 10) };
        assert!(winter.holds((12, 24)) && winter.holds((2, 10)) && !winter.holds((2, 11)));
    }
}
