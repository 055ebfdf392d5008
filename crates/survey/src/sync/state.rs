//! What a device remembers of one shared notebook.

use super::message::{Answer, Ask, FORMAT, LONGEST, Lines, NotTaken, VERSION};
use super::{Entry, Place};
use crate::revision::{DeviceId, Revision, RevisionId, read_line};
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};

/// What tells a revision, blanked or not, from every other.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Name {
    /// Its id.
    pub id: RevisionId,
    /// SHA-256 of its head matter.
    pub sha256: String,
    /// Its content is blanked.
    pub erased: bool,
}

impl Name {
    /// The name of a revision.
    pub fn of(revision: &Revision) -> Self {
        Self { id: revision.id(), sha256: revision.sha256().to_owned(), erased: revision.is_erased() }
    }
}

/// What a device remembers of one shared notebook: one state for each address that it syncs with. It is kept on the
/// device, beside the revisions.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(default)]
pub struct State {
    /// How far it has read the notebook's log.
    read: Option<Place>,
    /// Where the notebook's log ended when it had what the device had sent.
    held: Option<Place>,
    /// Up to here in the device's own log, the notebook has everything.
    sent: u64,
    /// Further revisions in the device's own log that the notebook has, since they came from there.
    theirs: BTreeSet<Name>,
    /// Revisions that the notebook did not take, and why: codes of the catalogue of messages.
    refused: BTreeMap<RevisionId, String>,
    /// How many lines of the notebook were damaged and could not be taken here.
    damaged: usize,
}

/// An ask, and what it was made from.
#[derive(Clone, Debug)]
pub struct Asked {
    /// What is sent.
    pub ask: Ask,
    from: u64,
    upto: u64,
    /// Everything in the device's log was looked through.
    whole: bool,
    sent: Vec<RevisionId>,
    passed: Vec<Name>,
    too_long: Vec<RevisionId>,
}

/// What an answer came to.
#[derive(Clone, Debug)]
pub struct Taken {
    /// Revisions to be kept, before the state is.
    pub revisions: Vec<Revision>,
    /// The state from here on.
    pub state: State,
    /// Each has what the other has.
    pub done: bool,
}

impl State {
    /// Where to read the device's own log on from.
    pub const fn sent(&self) -> u64 {
        self.sent
    }

    /// Whether this notebook has ever answered.
    pub const fn has_met(&self) -> bool {
        self.held.is_some() || self.read.is_some() || self.sent > 0
    }

    /// How many of these entries of the device's own log, read on from [`State::sent`], are on this device alone.
    pub fn waiting<'a>(&self, log: impl IntoIterator<Item = &'a Entry>) -> usize {
        log.into_iter().filter(|entry| entry.at > self.sent && !self.is_theirs(entry)).count()
    }

    /// Revisions that the notebook did not take, and why: codes of the catalogue of messages.
    pub const fn refused(&self) -> &BTreeMap<RevisionId, String> {
        &self.refused
    }

    /// How many lines of the notebook were damaged; going back to a backup of it mends that.
    pub const fn damaged(&self) -> usize {
        self.damaged
    }

    fn is_theirs(&self, entry: &Entry) -> bool {
        !self.theirs.is_empty() && self.theirs.contains(&Name::of(&entry.revision))
    }

    /// The next ask, of the device's own log read on from [`State::sent`]; `whole` where that is all of it.
    pub fn ask(&self, device: DeviceId, log: &[Entry], whole: bool) -> Asked {
        let mut asked = Asked {
            ask: Ask {
                format: FORMAT.to_owned(),
                version: VERSION,
                device,
                read: self.read.clone(),
                held: self.held.clone(),
                lines: Vec::new(),
            },
            from: self.sent,
            upto: self.sent,
            whole,
            sent: Vec::new(),
            passed: Vec::new(),
            too_long: Vec::new(),
        };
        let mut lines = Lines::default();
        for entry in log.iter().filter(|entry| entry.at > self.sent) {
            if self.is_theirs(entry) {
                asked.passed.push(Name::of(&entry.revision));
            } else if entry.revision.content_text().is_some_and(|text| text.len() > LONGEST) {
                asked.too_long.push(entry.revision.id());
            } else if lines.push(&entry.revision) {
                asked.sent.push(entry.revision.id());
            } else {
                asked.whole = false;
                break;
            }
            asked.upto = entry.at;
        }
        asked.ask.lines = lines.lines;
        asked
    }

    /// Takes an answer. One that comes late, when the device has gone on already, moves nothing; what it brings is
    /// kept all the same.
    ///
    /// # Errors
    /// [`NotTaken`]
    pub fn take(&self, asked: &Asked, answer: &Answer) -> Result<Taken, NotTaken> {
        answer.check()?;
        let mut state = self.clone();
        let mut revisions = Vec::new();
        let in_time = asked.ask.read == self.read && asked.ask.held == self.held && asked.from == self.sent;
        if in_time && answer.restart {
            state = Self::default();
        } else if in_time {
            state.sent = asked.upto;
            if asked.whole {
                // the device's whole log was looked through; what is left of these names stands further back in it
                state.theirs.clear();
            }
            for name in &asked.passed {
                state.theirs.remove(name);
            }
            state.read.clone_from(&answer.read);
            state.held.clone_from(&answer.held);
            state.refused.extend(asked.too_long.iter().map(|&id| (id, "revision-too-long".to_owned())));
            for refused in &answer.refused {
                if let Some(&id) = asked.sent.get(refused.line) {
                    state.refused.insert(id, refused.why.clone());
                }
            }
        }
        for line in &answer.lines {
            match read_line(line.get()) {
                Ok(revision) => revisions.push(revision),
                Err(_) if in_time => state.damaged += 1,
                Err(_) => {}
            }
        }
        if in_time {
            state.theirs.extend(revisions.iter().map(Name::of));
        }
        let done = in_time && asked.whole && !answer.more && !answer.restart;
        Ok(Taken { revisions, state, done })
    }
}
