//! Spreadsheets (XLSX, ODS) and packed folders in: the same tables, read by the same rules as delimited text.
//!
//! | what | module |
//! | --- | --- |
//! | sizes, before anything is unpacked for use | `packed` |
//! | cells as a spreadsheet holds them, and how many there may be | `grid` |
//! | Office Open XML (ECMA-376) | `xlsx` |
//! | OpenDocument (ISO/IEC 26300) | `ods` |
//! | which row holds the headings | `headings` |
//! | what cells said before a spreadsheet changed them | `sheet` |

mod grid;
mod headings;
mod ods;
pub(crate) mod packed;
pub(crate) mod sheet;
mod xlsx;

use crate::source::Source;
pub(crate) use grid::{Grid, Room};
use tautline_survey::message::Message;

/// How every packed file begins (ZIP, APPNOTE 4.3.7: the first local header).
const PACKED: &[u8] = b"PK\x03\x04";

/// How an old binary spreadsheet begins, and a new one that is locked with a password.
const COMPOUND: &[u8] = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1";

/// Why a packed file is not read, as the words' code.
pub(crate) type Refusal = &'static str;

/// What a packed file holds.
pub(crate) enum Opened {
    /// The sheets of a workbook.
    Sheets(Vec<Grid>),
    /// The files of a folder, and the names of those that are of no kind that is read.
    Folder(Vec<Source>, Vec<String>),
}

/// Whether a file is packed: a spreadsheet, or a folder as one file.
///
/// # Example
/// ```
/// assert!(tautline_exchange::workbook::is_packed(b"PK\x03\x04\x14"));
/// assert!(!tautline_exchange::workbook::is_packed(b"site,line\n"));
/// ```
pub fn is_packed(bytes: &[u8]) -> bool {
    bytes.starts_with(PACKED) || bytes.starts_with(COMPOUND)
}

/// Opens a packed file; how much it holds is known before any of it is kept.
pub(crate) fn open(source: &Source, room: &mut Room) -> Result<Opened, Message> {
    let refuse = |code: Refusal| Message::new(code).with("file", source.name.as_str());
    if source.bytes.starts_with(COMPOUND) {
        return Err(refuse("workbook-old-or-locked"));
    }
    let mut archive = packed::sized(&source.bytes, room).map_err(refuse)?;
    let names = packed::names(&mut archive).map_err(refuse)?;
    let has = |name: &str| names.iter().any(|own| own == name);
    if has("[Content_Types].xml") {
        return xlsx::grids(&source.bytes, &mut archive, room).map(Opened::Sheets).map_err(refuse);
    }
    if has("content.xml") {
        return ods::grids(&mut archive, room).map(Opened::Sheets).map_err(refuse);
    }
    let (files, others) = packed::files(&source.name, &mut archive).map_err(refuse)?;
    Ok(Opened::Folder(files, others))
}
