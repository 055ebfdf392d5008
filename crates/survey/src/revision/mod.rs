//! Revisions: what a notebook is made of. None is ever changed; a correction is another one that names its parents.
//!
//! A revision has two parts. Its *head matter* (ids, parents, time) is kept for ever and holds nothing that a person
//! typed. Its *content* (who, why, and the record itself) can be blanked when a person or a place must be forgotten;
//! the head matter keeps the content's SHA-256, and a random salt inside the content keeps anybody from guessing at
//! what was blanked.

mod head;
mod id;
mod lines;
mod stamp;

pub use id::{ActionId, DeviceId, RecordId, RevisionId};
pub use lines::{
    FORMAT, Header, Held, Line, LineError, PhotoLine, VERSION, header, line, photo_line, read_held, read_line,
};
pub use stamp::Stamp;

use crate::canonical;
use serde::{Deserialize, Serialize, de::DeserializeOwned};
use serde_json::{Map, Value};
use std::collections::BTreeSet;
use std::sync::Arc;

/// What a revision is a revision of: `visit`, `line`, or a word that only a newer version knows.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(transparent)]
pub struct Kind(pub String);

/// One thing that a person did, in the words of the command: `import`, `settle`, `restore`, `undo`, `erase`.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Action {
    /// Its id, the same in all revisions that it made.
    pub id: ActionId,
    /// What was done.
    pub what: String,
}

/// What is kept of a revision for ever.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct HeadMatter {
    /// Its own id.
    pub id: RevisionId,
    /// The record that it is a revision of.
    pub record: RecordId,
    /// The kind of that record.
    pub kind: Kind,
    /// The version of the kind's format.
    pub version: u32,
    /// The revisions that it follows: none for the first, two or more where it settles them.
    pub parents: BTreeSet<RevisionId>,
    /// What it was part of.
    pub action: Action,
    /// The device that made it.
    pub device: DeviceId,
    /// One more than the greatest count that the device had seen. Counts may repeat; nothing is merged by them.
    pub counter: u64,
    /// When, by the device's clock.
    pub time: Stamp,
    /// SHA-256 of the canonical bytes of the content, whether it is still there or not.
    pub content_sha256: String,
    /// What a newer version says beside.
    #[serde(flatten)]
    pub more: Map<String, Value>,
}

/// What a person wrote, and may have to be forgotten.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Content<T> {
    /// Who made the revision.
    pub author: String,
    /// What the device is called.
    pub device: String,
    /// Why.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub reason: String,
    /// Random, so that a blanked content can't be guessed from its hash.
    pub salt: String,
    /// The record as it is from here on; none where it is taken back.
    pub payload: Option<T>,
}

/// A revision with its canonical bytes. None is ever changed, so all copies share one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Revision {
    head: Arc<HeadMatter>,
    sha256: Arc<str>,
    content: Option<Arc<str>>,
}

/// Why something is no revision.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RevisionError {
    /// A number in it isn't whole; records hold none such, so it has no canonical bytes.
    NotWhole,
    /// Its bytes are not those of its hash.
    OtherHash,
}

impl RevisionError {
    /// The stable code, which is also the catalogue's key.
    pub const fn code(self) -> &'static str {
        match self {
            Self::NotWhole => "revision-not-whole",
            Self::OtherHash => "revision-other-hash",
        }
    }
}

impl Revision {
    /// A revision of its head matter and its content; the content's hash is worked out here.
    ///
    /// # Errors
    /// [`RevisionError::NotWhole`]
    pub fn new<T: Serialize>(mut head: HeadMatter, content: &Content<T>) -> Result<Self, RevisionError> {
        let content = canonical_text(content)?;
        head.content_sha256 = canonical::sha256_hex(content.as_bytes());
        let sha256 = canonical::sha256_hex(canonical_text(&head)?.as_bytes());
        Ok(Self::of(head, sha256, Some(content)))
    }

    /// A revision that was written down before, held against its hashes.
    ///
    /// # Errors
    /// [`RevisionError`]
    pub fn checked(head: HeadMatter, content: Option<&Value>) -> Result<Self, RevisionError> {
        let content = content.map(canonical_text).transpose()?;
        let sha256 = canonical::sha256_hex(canonical_text(&head)?.as_bytes());
        let revision = Self::of(head, sha256, content);
        if revision.content_is_whole() { Ok(revision) } else { Err(RevisionError::OtherHash) }
    }

    /// A revision as a store kept it, its canonical texts and hash taken on trust so that opening is fast.
    ///
    /// `None` where the head matter can't be read.
    pub fn kept(head: &str, sha256: String, content: Option<String>) -> Option<Self> {
        Some(Self::of(serde_json::from_str(head).ok()?, sha256, content))
    }

    fn of(head: HeadMatter, sha256: String, content: Option<String>) -> Self {
        Self { head: Arc::new(head), sha256: sha256.into(), content: content.map(Arc::from) }
    }

    /// The head matter.
    pub fn head(&self) -> &HeadMatter {
        &self.head
    }

    /// Its id.
    pub fn id(&self) -> RevisionId {
        self.head.id
    }

    /// The record it belongs to.
    pub fn record(&self) -> RecordId {
        self.head.record
    }

    /// SHA-256 of the canonical bytes of the head matter, and so of everything.
    pub fn sha256(&self) -> &str {
        &self.sha256
    }

    /// The canonical text of the head matter.
    pub fn head_text(&self) -> String {
        // what made it a revision was that it has canonical bytes
        canonical_text(&*self.head).unwrap_or_default()
    }

    /// The canonical text of the content; none where it was blanked.
    pub fn content_text(&self) -> Option<&str> {
        self.content.as_deref()
    }

    /// The content as a type, where it is still there and is one.
    pub fn content<T: DeserializeOwned>(&self) -> Option<Content<T>> {
        serde_json::from_str(self.content.as_deref()?).ok()
    }

    /// The content was blanked because somebody or some place must be forgotten.
    pub const fn is_erased(&self) -> bool {
        self.content.is_none()
    }

    /// The same revision without what a person wrote.
    #[must_use]
    pub fn erased(&self) -> Self {
        Self { content: None, ..self.clone() }
    }

    /// Whether the content, where it is there, is the one that the head matter names.
    pub fn content_is_whole(&self) -> bool {
        self.content
            .as_ref()
            .is_none_or(|text| canonical::sha256_hex(text.as_bytes()) == self.head.content_sha256)
    }
}

fn canonical_text(value: &impl Serialize) -> Result<String, RevisionError> {
    let value = serde_json::to_value(value).map_err(|_| RevisionError::NotWhole)?;
    let bytes = canonical::bytes(&value).ok_or(RevisionError::NotWhole)?;
    String::from_utf8(bytes).map_err(|_| RevisionError::NotWhole)
}
