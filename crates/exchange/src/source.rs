//! A file by name and bytes, read no further than it can be used.

use crate::limits::{LARGEST_FILE, LOOKED_AT};
use crate::text;
use std::io::{self, Read};

/// A file by name and bytes; whoever reads the disk hands it in.
#[derive(Clone, Debug)]
pub struct Source {
    /// The name as given.
    pub name: String,
    /// What it holds.
    pub bytes: Vec<u8>,
}

impl Source {
    /// Reads a file, or standard input. What is no text is read no further than it takes to see that, and nothing is
    /// read further than one byte past [`LARGEST_FILE`], so that the reading refuses it.
    ///
    /// # Errors
    /// the reader's own
    pub fn open(name: impl Into<String>, mut reader: impl Read) -> io::Result<Self> {
        let mut bytes = Vec::with_capacity(LOOKED_AT);
        let looked_at = u64::try_from(LOOKED_AT).unwrap_or(u64::MAX);
        reader.by_ref().take(looked_at).read_to_end(&mut bytes)?;
        let name = name.into();
        // the table beside shapes says nothing of itself
        let is_table = name.rsplit_once('.').is_some_and(|(_, ending)| ending.eq_ignore_ascii_case("dbf"));
        if !text::is_binary(&bytes) || is_packed(&bytes) || is_table {
            reader.take(LARGEST_FILE + 1 - looked_at.min(LARGEST_FILE)).read_to_end(&mut bytes)?;
        }
        Ok(Self { name, bytes })
    }
}

/// Whether a file is packed and can be opened here: a spreadsheet, or a folder as one file; or a database that is a map.
#[cfg(feature = "workbooks")]
fn is_packed(bytes: &[u8]) -> bool {
    #[cfg(feature = "boundaries")]
    if crate::boundary::is_map(bytes) {
        return true;
    }
    crate::workbook::is_packed(bytes)
}

#[cfg(not(feature = "workbooks"))]
const fn is_packed(_: &[u8]) -> bool {
    false
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_no_text_is_not_read_to_its_end() {
        let endless = Source::open("zero", io::repeat(0)).unwrap();
        assert_eq!(endless.bytes.len(), LOOKED_AT);
        let text = "site,line\n".repeat(20_000);
        assert_eq!(Source::open("a.csv", text.as_bytes()).unwrap().bytes, text.as_bytes());
    }
}
