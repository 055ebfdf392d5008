//! Bytes to rows of cells: byte-order mark, UTF-8 or Windows-1252, comma, semicolon or tab.

use encoding_rs::{UTF_8, WINDOWS_1252};

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
    /// It holds zero bytes, so it isn't text.
    Binary,
}

/// The text of a file: UTF-8, or Windows-1252 where it isn't valid UTF-8.
///
/// # Errors
/// [`TextError`]
pub fn decode(bytes: &[u8]) -> Result<String, TextError> {
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    if bytes.contains(&0) {
        return Err(TextError::Binary);
    }
    let text = match UTF_8.decode_without_bom_handling_and_without_replacement(bytes) {
        Some(text) => text,
        None => WINDOWS_1252.decode_without_bom_handling(bytes).0,
    };
    if text.trim().is_empty() { Err(TextError::Empty) } else { Ok(text.into_owned()) }
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
            (line, record.iter().map(|cell| cell.trim().to_owned()).collect::<Vec<_>>())
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

    #[test]
    fn encodings() {
        assert_eq!(decode(b"\xef\xbb\xbfa,b").unwrap(), "a,b");
        assert_eq!(decode("10½ in".as_bytes()).unwrap(), "10½ in");
        assert_eq!(decode(b"10\xbd in").unwrap(), "10½ in"); // Windows-1252
        assert_eq!(decode(b"a\0b"), Err(TextError::Binary));
        assert_eq!(decode(b"\r\n "), Err(TextError::Empty));
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
