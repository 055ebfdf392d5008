//! Bytes to rows of cells: byte-order mark, UTF-8, UTF-16 or Windows-1252, comma, semicolon or tab.

use crate::encoding::{utf_16, utf_16_mark, windows_1252};
use crate::limits::{LONGEST_ROW, LOOKED_AT};
use crate::table::plain;

/// A file cut into rows and cells.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Rows {
    /// What stands between cells.
    pub delimiter: char,
    /// The rows, each with its line number in the file, counted from 1. Empty rows are left out.
    pub rows: Vec<(u64, Vec<String>)>,
}

/// Why bytes are not rows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TextError {
    /// There is nothing in the file.
    Empty,
    /// It isn't text: zero bytes, or more control characters than any text has.
    Binary,
}

/// What had to be taken for granted, and the row it was first seen in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doubt {
    /// It isn't UTF-8, so every byte was read as Windows-1252.
    Windows1252 {
        /// The first row that isn't UTF-8.
        row: u64,
    },
    /// It breaks off inside a character.
    CutOff {
        /// The last row.
        row: u64,
    },
}

/// A file as text.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Decoded {
    /// The text.
    pub text: String,
    /// What had to be taken for granted.
    pub doubt: Option<Doubt>,
}

/// The text of a file: UTF-16 where its first two bytes say so, UTF-8, or Windows-1252 where it isn't valid UTF-8.
///
/// # Errors
/// [`TextError`]
pub fn decode(bytes: &[u8]) -> Result<Decoded, TextError> {
    if let Some(order) = utf_16_mark(bytes) {
        let (text, damaged) = utf_16(bytes, order);
        let doubt = damaged.then(|| Doubt::CutOff { row: row_of(&text) });
        return if damaged && is_binary(text.as_bytes()) {
            Err(TextError::Binary)
        } else {
            full(text, doubt)
        };
    }
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    if is_binary(bytes) || bytes.contains(&0) {
        return Err(TextError::Binary);
    }
    let (text, doubt) = match core::str::from_utf8(bytes) {
        Ok(text) => (text.to_owned(), None),
        Err(error) => {
            let sound = String::from_utf8_lossy(&bytes[..error.valid_up_to()]);
            let row = row_of(&sound);
            // a single letter of an older encoding at the very end looks like a broken one; others before it tell
            if error.error_len().is_none() && !sound.is_ascii() {
                (sound.into_owned(), Some(Doubt::CutOff { row }))
            } else {
                (windows_1252(bytes), Some(Doubt::Windows1252 { row }))
            }
        }
    };
    full(text, doubt)
}

fn full(text: String, doubt: Option<Doubt>) -> Result<Decoded, TextError> {
    if text.trim().is_empty() { Err(TextError::Empty) } else { Ok(Decoded { text, doubt }) }
}

/// The row that the end of this text stands in.
fn row_of(text: &str) -> u64 {
    1 + text.matches('\n').count() as u64
}

/// Whether the beginning of a file is no text: zero bytes, or more than one control character in fifty.
///
/// # Example
/// ```
/// use tautline_exchange::text::is_binary;
/// assert!(is_binary(b"GIF89a\x01\x00\x01\x00"));
/// assert!(!is_binary(b"site,line\r\nA,1\r\n"));
/// ```
pub fn is_binary(bytes: &[u8]) -> bool {
    let begin = &bytes[..bytes.len().min(LOOKED_AT)];
    if utf_16_mark(begin).is_some() {
        return false;
    }
    let control =
        begin.iter().filter(|&&byte| byte < 32 && !matches!(byte, b'\t' | b'\n' | b'\r' | 12)).count();
    begin.contains(&0) || control > 2 + begin.len() / 50
}

/// The first row longer than [`LONGEST_ROW`].
pub fn row_beyond_reading(text: &str) -> Option<u64> {
    (1..).zip(text.split('\n')).find(|(_, row)| row.len() > LONGEST_ROW).map(|(number, _)| number)
}

/// Cuts text into rows. The delimiter is the one of tab, semicolon and comma that stands most often in the first row.
pub fn rows(text: &str) -> Rows {
    let first = text.lines().find(|line| !line.trim().is_empty()).unwrap_or("");
    // later candidates win ties, so that a heading with one comma inside a tab-separated row doesn't decide
    let delimiter =
        [',', ';', '\t'].into_iter().max_by_key(|&candidate| first.matches(candidate).count()).unwrap_or(',');
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .delimiter(u8::try_from(delimiter).unwrap_or(b','))
        .from_reader(text.as_bytes());
    let mut counter = Lines { text: text.as_bytes(), byte: 0, line: 1 };
    let rows = reader
        .records()
        .filter_map(Result::ok)
        .map(|record| {
            let begin = record.position().map_or(0, csv::Position::byte);
            let line = counter.line_at(usize::try_from(begin).unwrap_or(usize::MAX));
            (line, record.iter().map(|cell| plain(cell.trim()).to_owned()).collect::<Vec<_>>())
        })
        .filter(|(_, cells)| cells.iter().any(|cell| !cell.is_empty()))
        .collect();
    Rows { delimiter, rows }
}

/// Counts lines while walking forwards; a record that begins with empty lines is placed on its first full one.
struct Lines<'a> {
    text: &'a [u8],
    byte: usize,
    line: u64,
}

impl Lines<'_> {
    fn line_at(&mut self, begin: usize) -> u64 {
        while let Some(&byte) =
            self.text.get(self.byte).filter(|&&b| self.byte < begin || b == b'\n' || b == b'\r')
        {
            self.line += u64::from(byte == b'\n');
            self.byte += 1;
        }
        self.line
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn text(bytes: &[u8]) -> Result<(String, Option<Doubt>), TextError> {
        decode(bytes).map(|decoded| (decoded.text, decoded.doubt))
    }

    #[test]
    fn encodings() {
        assert_eq!(text(b"\xef\xbb\xbfa,b"), Ok(("a,b".into(), None)));
        assert_eq!(text("10½ in".as_bytes()), Ok(("10½ in".into(), None)));
        assert_eq!(text(b"a\n10\xbd in"), Ok(("a\n10½ in".into(), Some(Doubt::Windows1252 { row: 2 }))));
        assert_eq!(text(b"\xff\xfea\0,\0\xbd\0"), Ok(("a,½".into(), None)));
        assert_eq!(text(b"\xfe\xff\0a\0,\0\xbd"), Ok(("a,½".into(), None)));
        assert_eq!(text(b"a\0b"), Err(TextError::Binary));
        assert_eq!(text(b"\x7fELF\x02\x01\x01\x03\x04"), Err(TextError::Binary));
        assert_eq!(text(b"\r\n "), Err(TextError::Empty));
    }

    #[test]
    fn a_file_that_breaks_off_inside_a_character() {
        let whole = "½,a\nñ".as_bytes();
        let cut = text(&whole[..whole.len() - 1]);
        assert_eq!(cut, Ok(("½,a\n".into(), Some(Doubt::CutOff { row: 2 }))));
        let (found, doubt) = text(b"\xff\xfea\0,\0\xbd").unwrap();
        assert_eq!((found.as_str(), doubt), ("a,\u{fffd}", Some(Doubt::CutOff { row: 1 })));
    }

    #[test]
    fn delimiters_and_line_numbers() {
        let found = rows("a;b;c\r\n\r\n1;\"x;y\";3,5\r\n");
        assert_eq!(found.delimiter, ';');
        assert_eq!(found.rows[1], (3, vec!["1".into(), "x;y".into(), "3,5".into()]));
        assert_eq!(rows("a\tb\n1\t2").delimiter, '\t');
        assert_eq!(rows("a,b\n1,2").delimiter, ',');
    }
}
