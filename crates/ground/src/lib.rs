//! The earth under the plane: geodesics, a local plane in millimetres, UTM, the compass.
//!
//! A room of its own for its weight: the geodesic and magnetic libraries stay away from the engine, whose figures are
//! the same bits everywhere. Positions here are rounded to 1e-9 degree and are no part of that promise. It never holds
//! files, and no rule of where a line may go: that is the engine's.
//!
//! | what | module |
//! | --- | --- |
//! | positions in degrees, distance and bearing between them | [`position`] |
//! | the way to a stake | [`find`] |
//! | a plane about a place, in whole millimetres | [`local`] |
//! | UTM, both ways | [`utm`] |
//! | old datums | [`datum`] |
//! | lines at right angles to a baseline | [`baseline`] |
//! | outlines that cross themselves or overlap | [`mend`] |
//! | what a compass shows | [`magnetic`] |
//! | lines laid out on a site, with ends and bearings | [`lay`] |
//! | the walk from line to line | `walk` |
//! | a layout as a record, and back | [`drawn`] |
//! | a boundary brought to the plane, and checked | [`site`] |
//! | positions as people type them | [`typed`] |
//! | what is said of either | `told` |
#![forbid(unsafe_code)]

pub mod baseline;
pub mod datum;
pub mod drawn;
pub mod find;
pub mod lay;
pub mod local;
pub mod magnetic;
pub mod map;
pub mod mend;
pub mod position;
pub mod site;
mod told;
pub mod typed;
pub mod utm;
mod walk;
