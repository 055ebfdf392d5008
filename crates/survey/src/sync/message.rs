//! The two messages. Each line in them is one revision, as in a notebook's lines of JSON.

use super::state::Name;
use super::{Entry, Place};
use crate::revision::{DeviceId, LineError, Revision, line, read_line};
use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;
use std::collections::BTreeSet;

/// The name of the format of both messages.
pub const FORMAT: &str = "tautline.sync";

/// Its version. Within a version fields are only ever added, and unknown ones are passed over.
pub const VERSION: u32 = 1;

/// At most so many revisions go into one message.
pub const MOST_LINES: usize = 500;

/// A message that has so many bytes of revisions gets no further one.
const ENOUGH: usize = 1 << 20;

/// A revision of more bytes than this isn't sent.
pub const LONGEST: usize = 8 << 20;

/// What a device says: where it stands, and revisions that the notebook may not have.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Ask {
    /// `tautline.sync`
    #[cfg_attr(feature = "schema", schemars(extend("const" = FORMAT)))]
    pub format: String,
    /// The version of the format.
    #[cfg_attr(feature = "schema", schemars(extend("const" = VERSION)))]
    pub version: u32,
    /// Which copy of the notebook asks.
    pub device: DeviceId,
    /// How far it has read the notebook's log; null at the beginning.
    pub read: Option<Place>,
    /// Where the notebook's log ended when it had everything that the device had sent; null at the beginning.
    pub held: Option<Place>,
    /// Revisions, each a line of a notebook's lines of JSON. Any that isn't is refused by itself.
    #[cfg_attr(feature = "schema", schemars(with = "Vec<serde_json::Value>", extend("maxItems" = MOST_LINES)))]
    pub lines: Vec<Box<RawValue>>,
}

/// What the notebook says: what became of the lines, and what the device may not have.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Answer {
    /// `tautline.sync`
    #[cfg_attr(feature = "schema", schemars(extend("const" = FORMAT)))]
    pub format: String,
    /// The version of the format.
    #[cfg_attr(feature = "schema", schemars(extend("const" = VERSION)))]
    pub version: u32,
    /// The notebook's log doesn't have the places that the device named: it was set back, or is another one. The
    /// device begins again, with both sending and reading.
    pub restart: bool,
    /// Lines that were not taken; all others are on the disk.
    pub refused: Vec<Refused>,
    /// Revisions that came in since the device read.
    #[cfg_attr(feature = "schema", schemars(with = "Vec<crate::revision::Line>", extend("maxItems" = MOST_LINES)))]
    pub lines: Vec<Box<RawValue>>,
    /// How far the device has read with these; null where the log is empty.
    pub read: Option<Place>,
    /// Where the log ended when it had the device's lines; null where it is empty.
    pub held: Option<Place>,
    /// There is more to be read.
    pub more: bool,
}

/// A line that was not taken.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Refused {
    /// Which, from 0.
    pub line: usize,
    /// Why: a code of the catalogue of messages.
    pub why: String,
}

/// Why a message was not taken as a whole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotTaken {
    /// It is no message of this format.
    NotSync,
    /// It is of a newer version than is known here.
    Newer(u32),
    /// It holds more than [`MOST_LINES`] revisions.
    TooMany(usize),
}

/// What an ask brought.
#[derive(Clone, Debug, Default)]
pub struct Sent {
    /// The revisions that are whole.
    pub revisions: Vec<Revision>,
    /// The other lines.
    pub refused: Vec<Refused>,
}

impl Ask {
    /// Format, version and size are such as are taken here.
    ///
    /// # Errors
    /// [`NotTaken`]
    pub fn check(&self) -> Result<(), NotTaken> {
        known(&self.format, self.version)?;
        if self.lines.len() > MOST_LINES { Err(NotTaken::TooMany(self.lines.len())) } else { Ok(()) }
    }

    /// The revisions in it, each held against its hashes.
    pub fn sent(&self) -> Sent {
        let mut sent = Sent::default();
        for (line, text) in self.lines.iter().enumerate() {
            match read_line(text.get()) {
                Ok(revision) => sent.revisions.push(revision),
                Err(why) => sent.refused.push(Refused { line, why: code(why).to_owned() }),
            }
        }
        sent
    }
}

impl Answer {
    /// The answer to an ask whose lines are on the disk.
    ///
    /// `log` is the notebook's log on from what the ask has read, none where the log has not the places that it
    /// names; `place` gives the place of a number in the log, and `end` is the log's.
    ///
    /// # Errors
    /// those of `place`
    pub fn new<E>(
        sent: Sent,
        log: Option<&[Entry]>,
        read: Option<&Place>,
        end: Option<Place>,
        place: impl FnOnce(u64) -> Result<Option<Place>, E>,
    ) -> Result<Self, E> {
        let echo: BTreeSet<Name> = sent.revisions.iter().map(Name::of).collect();
        let from = read.map_or(0, |read| read.at);
        let mut lines = Lines::default();
        let mut upto = from;
        for entry in log.unwrap_or_default() {
            // what has just come from the device needn't go back to it
            if !echo.contains(&Name::of(&entry.revision)) && !lines.push(&entry.revision) {
                break;
            }
            upto = entry.at;
        }
        let more = log.is_some() && end.as_ref().is_some_and(|end| end.at > upto);
        let read = match &end {
            Some(end) if end.at == upto => Some(end.clone()),
            _ if upto == from => read.cloned(),
            _ => place(upto)?,
        };
        Ok(Self {
            format: FORMAT.to_owned(),
            version: VERSION,
            restart: log.is_none(),
            refused: sent.refused,
            lines: lines.lines,
            read,
            held: end,
            more,
        })
    }

    /// Format and version are such as are understood here.
    ///
    /// # Errors
    /// [`NotTaken`]
    pub fn check(&self) -> Result<(), NotTaken> {
        known(&self.format, self.version)
    }
}

fn known(format: &str, version: u32) -> Result<(), NotTaken> {
    match version {
        _ if format != FORMAT => Err(NotTaken::NotSync),
        VERSION => Ok(()),
        0 => Err(NotTaken::NotSync),
        newer => Err(NotTaken::Newer(newer)),
    }
}

/// Lines of a message until it has enough.
#[derive(Default)]
pub(super) struct Lines {
    pub(super) lines: Vec<Box<RawValue>>,
    bytes: usize,
}

impl Lines {
    /// Adds a revision; not where the message has enough.
    pub(super) fn push(&mut self, revision: &Revision) -> bool {
        if self.lines.len() == MOST_LINES || self.bytes >= ENOUGH {
            return false;
        }
        // what has canonical bytes is JSON
        if let Ok(line) = RawValue::from_string(line(revision)) {
            self.bytes += line.get().len();
            self.lines.push(line);
        }
        true
    }
}

pub(super) const fn code(why: LineError) -> &'static str {
    match why {
        LineError::NotANotebook | LineError::Newer(_) | LineError::NotUnderstood => "line-not-a-revision",
        LineError::OtherBytes => "photo-other-bytes",
        LineError::Revision(error) => error.code(),
    }
}
