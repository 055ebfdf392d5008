//! The head of a sheet: rows such as `Date: 2026-06-09`, and what stays in force for the lines below.

use super::scan::Span;
use crate::headings::{Column, column};

/// What a head row speaks of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Key {
    /// Something that the tables have a column for.
    Of(Column),
    /// The decimal mark of the sheet.
    Decimal,
    /// A line begins.
    Line,
    /// Anything else: wind, growth stage, grazing.
    Condition,
    /// A column of the readings, which can't stand in a head.
    NotHere,
}

/// A head row: what it speaks of, the key and the value as they stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct KeyRow {
    pub(super) key: Key,
    pub(super) name: Span,
    pub(super) value: Span,
}

/// Longer than this no key is.
const LONGEST_KEY: usize = 40;

/// Reads a head row: a key, a colon and a value; the colon may be left out behind the plain keys.
pub(super) fn key_row(even: &[char]) -> Option<KeyRow> {
    let end = even.iter().rposition(|&c| c != ' ')? + 1;
    let begin = even.iter().position(|&c| c != ' ')?;
    let value = |from: usize| {
        let at = (from..end).find(|&at| even[at] != ' ').unwrap_or(end);
        (at, end)
    };
    let colon = even[begin..end.min(begin + LONGEST_KEY)].iter().position(|&c| c == ':').map(|at| begin + at);
    let word_end = (begin..end).find(|&at| matches!(even[at], ' ' | ':')).unwrap_or(end);
    let text: String = even[begin..word_end].iter().collect();
    let begins_line = key(&text) == Key::Line && even.get(word_end) == Some(&' ');
    if let Some(colon) = colon.filter(|_| !begins_line) {
        let key_end = (begin..colon).rfind(|&at| even[at] != ' ').map_or(begin, |last| last + 1);
        let name = (begin, key_end);
        let text: String = even[begin..key_end].iter().collect();
        let is_name = text.split(' ').all(|word| word.starts_with(|c: char| c.is_alphabetic()));
        return is_name.then(|| KeyRow { key: key(&text), name, value: value(colon + 1) });
    }
    let key = key(&text);
    let value = value(word_end);
    let without_colon = match key {
        Key::Line => value.0 < value.1,
        Key::Of(Column::Date) => true,
        Key::Of(
            Column::Site | Column::Reader | Column::Recorder | Column::Protocol | Column::Unit | Column::Pass,
        )
        | Key::Decimal => !even[value.0..].first().is_some_and(char::is_ascii_digit),
        _ => false,
    };
    let is_word = text.chars().all(|c| c.is_alphanumeric() || c == '.');
    if without_colon && is_word {
        return Some(KeyRow { key, name: (begin, word_end), value });
    }
    // `Line1` with the blank forgotten
    let line = text.get(..4).is_some_and(|word| word.eq_ignore_ascii_case("line"));
    let is_line = line && even.get(begin + 4).is_some_and(char::is_ascii_digit);
    is_line.then_some(KeyRow { key: Key::Line, name: (begin, begin + 4), value: (begin + 4, end) })
}

fn key(text: &str) -> Key {
    let own = match text.trim_end_matches('.').to_lowercase().as_str() {
        "obs" => Some(Column::Reader),
        "rec" => Some(Column::Recorder),
        _ => column(text),
    };
    match own {
        Some(Column::Line) => Key::Line,
        Some(Column::Length) => Key::Of(Column::LineLength),
        Some(Column::Note) | None if is_decimal(text) => Key::Decimal,
        Some(Column::Note | Column::Source) | None => Key::Condition,
        Some(
            found @ (Column::Site
            | Column::Date
            | Column::Reader
            | Column::Recorder
            | Column::Pass
            | Column::Protocol
            | Column::Unit
            | Column::HeightUnit
            | Column::LineLength
            | Column::Stratum
            | Column::Plot
            | Column::Slope),
        ) => Key::Of(found),
        Some(_) => Key::NotHere,
    }
}

fn is_decimal(text: &str) -> bool {
    ["decimal", "decimal mark", "decimals"].contains(&text.to_lowercase().as_str())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(row: &str) -> Option<(Key, String, String)> {
        let chars: Vec<char> = row.chars().collect();
        let text = |span: Span| chars[span.0..span.1].iter().collect();
        key_row(&chars).map(|found| (found.key, text(found.name), text(found.value)))
    }

    fn found(key: Key, name: &str, value: &str) -> (Key, String, String) {
        (key, name.to_owned(), value.to_owned())
    }

    fn some(row: &str) -> (Key, String, String) {
        read(row).expect("a head row")
    }

    #[test]
    fn with_and_without_colon() {
        assert_eq!(some("Site: Dry Fork #3 "), found(Key::Of(Column::Site), "Site", "Dry Fork #3"));
        assert_eq!(some("date 2026-06-09"), found(Key::Of(Column::Date), "date", "2026-06-09"));
        assert_eq!(some("Observer:"), found(Key::Of(Column::Reader), "Observer", ""));
        assert_eq!(some("Growth stage: full leaf"), found(Key::Condition, "Growth stage", "full leaf"));
        assert_eq!(some("Line 1, 65 ft"), found(Key::Line, "Line", "1, 65 ft"));
        assert_eq!(some("Line1, 65 ft"), found(Key::Line, "Line", "1, 65 ft"));
        assert_eq!(some("Species: ATCA"), found(Key::NotHere, "Species", "ATCA"));
    }

    #[test]
    fn readings_are_no_head() {
        for row in ["ATCA 12-14", "12-14 20-23", "ATCA 12: 14", "unit 12-14", ""] {
            assert_eq!(read(row), None, "{row}");
        }
    }
}
