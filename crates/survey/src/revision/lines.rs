//! A notebook as lines of JSON: a first line that names the format, then one line for each revision.

use super::{HeadMatter, Revision, RevisionError};
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// The name of the format.
pub const FORMAT: &str = "tautline.notebook";

/// Its version. Within a version fields are only ever added.
pub const VERSION: u32 = 1;

/// The first line.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Header {
    /// The name of the format: `tautline.notebook`.
    pub format: String,
    /// Its version.
    pub version: u32,
}

/// Any further line.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Line {
    /// SHA-256 of the canonical bytes of `revision`.
    pub sha256: String,
    /// Ids, parents and time.
    pub revision: HeadMatter,
    /// Author, reason and the record (a `Content`); null where it was blanked.
    pub content: Option<Value>,
}

/// Why a line was not read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LineError {
    /// The first line doesn't name the format.
    NotANotebook,
    /// It is of a newer version of the format than is known here.
    Newer(u32),
    /// The line is no revision as the format has it.
    NotUnderstood,
    /// It is one, and isn't whole.
    Revision(RevisionError),
}

/// The first line of a notebook.
pub fn header() -> String {
    format!("{{\"format\":\"{FORMAT}\",\"version\":{VERSION}}}")
}

impl Header {
    /// Reads a first line.
    ///
    /// # Errors
    /// [`LineError::NotANotebook`], [`LineError::Newer`]
    pub fn read(text: &str) -> Result<Self, LineError> {
        let header: Self = serde_json::from_str(text).map_err(|_| LineError::NotANotebook)?;
        match header {
            Self { format, .. } if format != FORMAT => Err(LineError::NotANotebook),
            Self { version, .. } if version > VERSION => Err(LineError::Newer(version)),
            header => Ok(header),
        }
    }
}

/// A revision as one line, its parts in canonical bytes.
pub fn line(revision: &Revision) -> String {
    let content = revision.content_text().unwrap_or("null");
    format!(
        "{{\"content\":{content},\"revision\":{},\"sha256\":\"{}\"}}",
        revision.head_text(),
        revision.sha256()
    )
}

/// Reads a line back and holds it against its hashes.
///
/// # Errors
/// [`LineError`]
pub fn read_line(text: &str) -> Result<Revision, LineError> {
    let line: Line = serde_json::from_str(text).map_err(|_| LineError::NotUnderstood)?;
    let revision = Revision::checked(line.revision, line.content.as_ref()).map_err(LineError::Revision)?;
    if revision.sha256() == line.sha256 {
        Ok(revision)
    } else {
        Err(LineError::Revision(RevisionError::OtherHash))
    }
}
