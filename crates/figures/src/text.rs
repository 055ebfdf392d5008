//! How wide a text is likely to be, where to break it, and how it is written safely into XML.

use std::fmt::Write as _;

/// The likely width of a text set at `size`, on the wide side because the font is the reader's.
pub(crate) fn width(text: &str, size: f64) -> f64 {
    text.chars().map(advance).sum::<f64>() * size
}

/// The widths of a wide sans (DejaVu Sans), in ems, rounded up by kind of letter.
fn advance(letter: char) -> f64 {
    match letter {
        'i' | 'j' | 'l' | '.' | ',' | ':' | ';' | '\'' | '|' | '!' => 0.36,
        ' ' | '\u{a0}' | '\u{202f}' => 0.34,
        'm' | 'w' | 'M' | 'W' | '@' | '%' | '—' | '…' => 1.0,
        '\u{2e80}'.. => 1.05,
        '\u{900}'..'\u{2000}' => 0.9,
        _ if letter.is_uppercase() => 0.79,
        _ => 0.64,
    }
}

/// The rows of a text that may be `room` wide, broken at spaces, or inside a word that is wider than a row.
pub(crate) fn wrap(text: &str, size: f64, room: f64) -> Vec<String> {
    let mut rows: Vec<String> = Vec::new();
    let mut row = String::new();
    for word in text.split([' ', '\n', '\t']).filter(|word| !word.is_empty()) {
        if !row.is_empty() && width(&row, size) + width(" ", size) + width(word, size) > room {
            rows.push(std::mem::take(&mut row));
        }
        if !row.is_empty() {
            row.push(' ');
        }
        for letter in word.chars() {
            if !row.is_empty() && width(&row, size) + advance(letter) * size > room {
                rows.push(std::mem::take(&mut row));
            }
            row.push(letter);
        }
    }
    if !row.is_empty() {
        rows.push(row);
    }
    rows
}

/// A text as XML content or attribute value; characters that XML forbids become U+FFFD.
pub(crate) fn escape(text: &str) -> String {
    let mut escaped = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => escaped.push_str("&amp;"),
            '<' => escaped.push_str("&lt;"),
            '>' => escaped.push_str("&gt;"),
            '"' => escaped.push_str("&quot;"),
            '\'' => escaped.push_str("&#39;"),
            '\t' | '\n' | '\r' => escaped.push(letter),
            '\u{0}'..' ' | '\u{fffe}' | '\u{ffff}' => escaped.push('\u{fffd}'),
            _ => escaped.push(letter),
        }
    }
    escaped
}

/// An id that is safe as a fragment: everything but letters, digits, `-` and `_` becomes `-`.
pub(crate) fn fragment(id: &str) -> String {
    id.chars()
        .map(|letter| if letter.is_ascii_alphanumeric() || letter == '_' { letter } else { '-' })
        .collect()
}

/// A coordinate to two decimals, without needless zeros and without a negative zero.
pub(crate) fn coordinate(value: f64) -> String {
    let mut text = String::new();
    write!(text, "{value:.2}").expect("writing into a String cannot fail");
    let short = text.trim_end_matches('0').trim_end_matches('.');
    if short == "-0" { "0".to_owned() } else { short.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_xml_reserves_is_escaped_and_what_it_forbids_is_replaced() {
        assert_eq!(escape("<b a=\"1\">&'\u{1}é"), "&lt;b a=&quot;1&quot;&gt;&amp;&#39;\u{fffd}é");
        assert_eq!(fragment("site 4 \"><"), "site-4----");
    }

    #[test]
    fn coordinates_have_two_decimals_at_most() {
        let written = [1.0, 0.125, -0.001, 100.0, 33.333_3].map(coordinate);
        assert_eq!(written, ["1", "0.12", "0", "100", "33.33"]);
    }

    #[test]
    fn rows_break_at_spaces_and_inside_words_only_where_they_must() {
        // 'a' is 6.4 wide at size 10, a space 3.4: "aaa aaa" is 41.8
        assert_eq!(wrap("aaa aaa", 10.0, 42.0), ["aaa aaa"]);
        assert_eq!(wrap("aaa aaa", 10.0, 41.0), ["aaa", "aaa"]);
        assert_eq!(wrap("aaaaa a", 10.0, 20.0), ["aaa", "aa", "a"]);
        assert_eq!(wrap("  ", 10.0, 20.0), Vec::<String>::new());
        assert_eq!(wrap("ab", 10.0, 0.0), ["a", "b"]);
    }
}
