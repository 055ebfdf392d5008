//! Drafts made into revisions: everything that comes from outside (who, which device, when, random ids) in one hand.

use super::payload::{Payload, VERSION};
use crate::revision::{
    Action, ActionId, Content, DeviceId, HeadMatter, Kind, RecordId, Revision, RevisionError, RevisionId,
    Stamp,
};
use core::fmt::Write as _;
use serde_json::{Map, Value};
use std::collections::BTreeSet;

/// A revision that has yet to be made.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    /// The record that it belongs to; none begins a record.
    pub record: Option<RecordId>,
    /// The revisions that it follows.
    pub parents: BTreeSet<RevisionId>,
    /// The record's kind.
    pub kind: Kind,
    /// The version of the kind's format.
    pub version: u32,
    /// The record from here on; none where it is taken back.
    pub payload: Option<Value>,
}

impl Draft {
    /// A draft that begins a record.
    pub fn beginning(payload: &Payload) -> Self {
        Self {
            record: None,
            parents: BTreeSet::new(),
            kind: payload.kind_word(),
            version: VERSION,
            payload: Some(payload.to_json()),
        }
    }
}

/// Whoever writes, on which device, and when. Nothing in `survey` reads a clock or draws at random: it is handed in.
pub struct Hand<'a> {
    /// Who.
    pub author: String,
    /// Why, if they said so.
    pub reason: String,
    /// Which copy of the notebook.
    pub device: DeviceId,
    /// What the device is called.
    pub device_name: String,
    /// When.
    pub time: Stamp,
    /// The same in milliseconds since 1970, for ids.
    pub milliseconds: u64,
    /// The greatest counter that the notebook holds.
    pub counter: u64,
    /// Fills bytes at random.
    pub random: &'a mut dyn FnMut(&mut [u8]),
}

impl Hand<'_> {
    /// Makes revisions of drafts, all part of one action.
    ///
    /// # Errors
    /// [`RevisionError::NotWhole`], where a draft holds a number that isn't whole
    pub fn write(&mut self, what: &str, drafts: Vec<Draft>) -> Result<Vec<Revision>, RevisionError> {
        let action = Action { id: ActionId::made(self.milliseconds, self.ten()), what: what.to_owned() };
        drafts.into_iter().map(|draft| self.one(&action, draft)).collect()
    }

    fn one(&mut self, action: &Action, draft: Draft) -> Result<Revision, RevisionError> {
        self.counter += 1;
        let head = HeadMatter {
            id: RevisionId::made(self.milliseconds, self.ten()),
            record: draft.record.unwrap_or_else(|| RecordId::made(self.milliseconds, self.ten())),
            kind: draft.kind,
            version: draft.version,
            parents: draft.parents,
            action: action.clone(),
            device: self.device,
            counter: self.counter,
            time: self.time.clone(),
            content_sha256: String::new(),
            more: Map::new(),
        };
        let content = Content {
            author: self.author.clone(),
            device: self.device_name.clone(),
            reason: self.reason.clone(),
            salt: self.salt(),
            payload: draft.payload,
        };
        Revision::new(head, &content)
    }

    fn ten(&mut self) -> [u8; 10] {
        let mut bytes = [0; 10];
        (self.random)(&mut bytes);
        bytes
    }

    fn salt(&mut self) -> String {
        let mut bytes = [0; 16];
        (self.random)(&mut bytes);
        bytes.iter().fold(String::with_capacity(32), |mut hex, byte| {
            // writing to a String can't fail
            let _ = write!(hex, "{byte:02x}");
            hex
        })
    }
}
