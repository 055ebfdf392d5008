//! How a device and the notebook that it shares in come to hold the same revisions: the messages, and what a device
//! remembers between them. Nothing here knows a network, a clock or a disk.
//!
//! A device sends an [`Ask`] and gets an [`Answer`], again and again until both have everything. Either may die at any
//! moment, messages may be lost, repeated or come late: revisions are a set (see [`crate::record`]), so that what
//! comes twice changes nothing, and a device moves on in its [`State`] only by what was answered.
//!
//! What the shared notebook holds is a log, and a [`Place`] in it carries a *mark*, which only this very log up to
//! there can have. So a device notices by itself that the notebook was set back to a backup, or is another one, and
//! begins again: it sends everything and reads everything.
//!
//! One exchange, as a device does it:
//!
//! 1. read its own log on from [`State::sent`], some [`MOST_LINES`] entries, and make an [`Ask`] of them by
//!    [`State::ask`];
//! 2. send it; without an answer nothing has happened, and the next exchange begins again at 1;
//! 3. take the answer by [`State::take`]: *first* keep the revisions, *then* the state, or both in one transaction;
//! 4. go on until [`Taken::done`].

mod badge;
mod message;
mod state;

pub use badge::Badge;
pub use message::{Answer, Ask, FORMAT, LONGEST, MOST_LINES, NotTaken, Refused, Sent, VERSION};
pub use state::{Asked, Name, State, Taken};

use crate::revision::Revision;
use serde::{Deserialize, Serialize};

/// The header of an answer over HTTP that says which address the notebook moves to. A device sends or exports what it holds
/// before it follows, since what a browser keeps isn't seen under another address.
pub const MOVING_TO: &str = "tautline-moving-to";

/// A place in a notebook's log: everything up to a number, and a mark of what that was.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Place {
    /// The number of the last entry.
    pub at: u64,
    /// A mark that only a log with these very entries has.
    pub mark: String,
}

/// A revision and its number in a log.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// The number. A revision that is blanked moves to the end.
    pub at: u64,
    /// The revision.
    pub revision: Revision,
}
