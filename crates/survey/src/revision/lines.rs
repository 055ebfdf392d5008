//! A notebook as lines of JSON: a first line that names the format, then one line for each revision, and one for the bytes of
//! each photo. Bytes stand in base64, a third longer than they are, so that one text that any tool can read is everything.

use super::{HeadMatter, Revision, RevisionError};
use crate::canonical::sha256_hex;
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
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

/// A further line that holds the bytes of a photo.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PhotoLine {
    /// The bytes in base64 (RFC 4648, section 4).
    pub photo: String,
    /// SHA-256 of the bytes.
    pub sha256: String,
}

/// What a further line holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Held {
    /// A revision.
    Revision(Box<Revision>),
    /// The bytes of a photo, which are those of their hash.
    Photo {
        /// SHA-256 of the bytes.
        sha256: String,
        /// The bytes.
        bytes: Vec<u8>,
    },
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
    /// It holds bytes that are not those of their hash.
    OtherBytes,
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

/// The bytes of a photo as one line.
pub fn photo_line(sha256: &str, bytes: &[u8]) -> String {
    // what stands between the quotes needs no escapes
    format!("{{\"photo\":\"{}\",\"sha256\":\"{sha256}\"}}", STANDARD.encode(bytes))
}

/// Reads any further line back and holds it against its hashes.
///
/// # Errors
/// [`LineError`]
/// # Example
/// ```
/// use tautline_survey::canonical::sha256_hex;
/// use tautline_survey::revision::{Held, LineError, photo_line, read_held};
/// let own = sha256_hex(b"invented");
/// assert_eq!(read_held(&photo_line(&own, b"invented")), Ok(Held::Photo { sha256: own.clone(), bytes: b"invented".into() }));
/// assert_eq!(read_held(&photo_line(&own, b"another")), Err(LineError::OtherBytes));
/// ```
pub fn read_held(text: &str) -> Result<Held, LineError> {
    if !text.trim_start().starts_with("{\"photo\":") {
        return read_line(text).map(Box::new).map(Held::Revision);
    }
    let PhotoLine { photo, sha256 } = serde_json::from_str(text).map_err(|_| LineError::NotUnderstood)?;
    let bytes = STANDARD.decode(photo).map_err(|_| LineError::NotUnderstood)?;
    if sha256_hex(&bytes) == sha256 { Ok(Held::Photo { sha256, bytes }) } else { Err(LineError::OtherBytes) }
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
