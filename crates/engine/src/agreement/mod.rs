//! Do readers agree: the same lines read by several, without seeing each other's sheets.
//!
//! | question | item |
//! | --- | --- |
//! | how far two readers' covers lie apart, and how far they may next time | [`limits`] |
//! | how far one reader's own readings lie apart | [`within_reader`], [`repeatability`] |
//! | how much of what differs is lines and how much readers | [`reliability`] |
//! | which plants one has and the other hasn't, and how edges differ | [`patches`] |
//! | which rule would explain it | [`habits`] |
//! | where two readings of a line lie furthest apart | [`apart`] |
//! | where differences come from: readers, lines, sites, years | [`sources`](mod@sources) |
//! | does one reader drift over a season | [`control`] |

pub mod apart;
pub mod control;
pub mod habits;
mod limits;
pub mod patches;
pub mod reliability;
pub mod sources;

pub use limits::{Limits, limits, repeatability, within_reader};
