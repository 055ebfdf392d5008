//! What is read at most, so that no file takes more memory or time than a table of readings could need.

/// A file in bytes: 256 MiB. A hundred thousand lines of fifty readings are about 400 bytes a line and 40 MB in all.
pub const LARGEST_FILE: u64 = 256 * 1024 * 1024;

/// A protocol file in bytes: 1 MiB, a thousand times the longest that is shipped.
pub const LARGEST_PROTOCOL: u64 = 1024 * 1024;

/// A row in bytes: 1 MiB. A row of a table is a few hundred bytes; what is longer has lost its line breaks.
pub const LONGEST_ROW: usize = 1024 * 1024;

/// Cells in the heading row. The tables know some forty; an office that adds its own stays far below a thousand.
pub const MOST_COLUMNS: usize = 1000;

/// Characters of a heading or of anything found that are kept in a message.
pub const LONGEST_SHOWN: usize = 200;

/// How far into a file is looked to tell text from anything else, in bytes.
pub const LOOKED_AT: usize = 64 * 1024;

/// What a packed file may come to in bytes, once unpacked: 1 GiB. A full sheet of a million rows and six columns is 270 MB of XML, of
/// which a cell at a time is kept; whatever is kept whole may be no larger than [`LARGEST_FILE`].
#[cfg(feature = "workbooks")]
pub const MOST_UNPACKED: u64 = 4 * LARGEST_FILE;

/// Cells of a workbook, empty ones before a filled one counted: 12 million, a full sheet of a million rows and a dozen columns.
#[cfg(feature = "workbooks")]
pub const MOST_CELLS: u64 = 12_000_000;

/// Files within a packed one. A season's sheets are some hundreds.
#[cfg(feature = "workbooks")]
pub const MOST_PACKED: usize = 10_000;

/// How many rows of a table are looked at for its headings; what stands above them are titles and remarks.
pub const ROWS_ABOVE_HEADINGS: usize = 30;

/// A boundary in bytes: 64 MiB. A county's roads are some megabytes.
#[cfg(feature = "boundaries")]
pub const LARGEST_BOUNDARY: u64 = 64 * 1024 * 1024;

/// Corners of all shapes of a boundary: half a million.
#[cfg(feature = "boundaries")]
pub const MOST_CORNERS: usize = 500_000;

/// Elements, texts and attributes of GPX and KML, values of GeoJSON, cells of the tables beside shapes: four million, eight to each
/// corner.
#[cfg(feature = "boundaries")]
pub const MOST_NODES: u32 = 4_000_000;
