//! Files in and out. Nothing here decides what a reading means; it says where a file can't be read and what would do.
//!
//! | what | module |
//! | --- | --- |
//! | a file or standard input, read no further than it can be used | [`source`] |
//! | what is read at most, and why | [`limits`] |
//! | bytes to rows: encoding, delimiter, decimal mark | [`text`] |
//! | headings and the units beside them | [`headings`] |
//! | readings, lines, plants, strata, goals | [`delimited`] |
//! | typed sheets in and out | [`sheet`] |
//! | canopy of thousands of sites, rows never kept | [`stream`] |
//! | sheets of learners and experts | [`practice`] |
//! | protocols as small readable files, and the shipped ones | [`protocol`] |
//! | delimited text out | [`table`] |
//! | a site's boundary in, with the feature `boundaries`, out of a GeoPackage with `databases` | `boundary` |
//! | a layout on a map | [`geojson`] |
//! | a layout for a GPS receiver and as a lines table | [`laid`] |
//! | spreadsheets and packed folders, with the feature `workbooks` | `workbook` |

pub mod benchmarks;
#[cfg(feature = "boundaries")]
pub mod boundary;
pub mod delimited;
mod encoding;
pub mod geojson;
pub mod headings;
pub mod laid;
pub mod limits;
pub mod photo;
pub mod practice;
pub mod protocol;
pub mod sheet;
pub mod shown;
pub mod source;
pub mod stream;
pub mod table;
pub mod text;
#[cfg(feature = "workbooks")]
pub mod workbook;

pub use delimited::{Options, Read, read};
pub use source::Source;
