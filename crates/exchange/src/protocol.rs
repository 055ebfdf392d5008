//! Protocols as small readable files: read, written back, and the ones that are shipped.
//!
//! ```toml
//! name = "live woody canopy, gaps under 2.5 in closed"
//! source = "common practice, no source"
//! cover = "canopy-outline"
//! dead = "left-out"
//!
//! [counts]
//! woody = true
//!
//! [gap]
//! limit = "2.5 in"
//! equal = "breaks"
//! ```
//!
//! What a file leaves out is left open, and the report says what was taken instead. Every key is explained in
//! `docs/reading-rules.md`.

mod keys;
mod reading;
mod shipped;
#[cfg(test)]
mod tests;
mod writing;

pub use reading::read;
pub use shipped::{find, shipped};
pub use writing::to_toml;
