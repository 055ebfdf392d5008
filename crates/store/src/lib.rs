//! A notebook on disk: append-only revisions behind one small interface, and the implementers that hold them.
//!
//! It is a room of its own because SQLite is heavy and because the file's format deserves tests of its own. It knows
//! no HTTP, no accounts, and no rules of meaning: what a record says, what a conflict is and how one is settled stand
//! in `tautline-survey`.
//!
//! | what | module |
//! | --- | --- |
//! | what every implementer can do | [`Keep`] |
//! | the same, where answers have to be waited for | [`Later`] |
//! | the suite that every implementer passes | [`conformance`] |
//! | what a shared notebook answers to its devices | [`desk`] |
//! | revisions in memory | [`Memory`] |
//! | revisions in a file | [`Sqlite`] |
#![forbid(unsafe_code)]

pub mod conformance;
pub mod desk;
mod keep;
mod later;
mod memory;
#[cfg(feature = "sqlite")]
mod sqlite;

pub use keep::{Appended, Cursor, Keep, KeepError, Named, may_be_photo};
pub use later::Later;
pub use memory::Memory;
#[cfg(feature = "sqlite")]
pub use sqlite::{Paired, SCHEMA_VERSION, Sqlite};
