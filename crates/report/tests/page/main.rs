//! Pages about hand-worked, invented sites: they say what was worked out, hold every record, and stand alone.
#![expect(clippy::unwrap_used, reason = "a test that can't go on should stop")]

mod codes;
mod figures;
mod photos;
mod places;
mod plain;
mod practice;
mod reader;
mod records;
mod sentences;
mod sites;
mod whole;
