//! Photos: what a revision says of one. Its bytes stay apart from the revision, under their own hash, so that a notebook is
//! read without them and each photo is sent by itself.

use crate::date::Date;
use crate::revision::{Content, Revision};
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// The kind of a revision of a photo.
pub const KIND: &str = "photo";

/// The bytes of one photo are no more than this.
pub const LONGEST: usize = 24 << 20;

/// A photo of a line's end, of a visit, or of a site.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Photo {
    /// The site.
    pub site: String,
    /// The line; empty where the site as a whole is shown.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub line: String,
    /// What it shows.
    pub shows: Shows,
    /// The day it was taken, by the camera's clock or as a person says.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub date: Option<Date>,
    /// The time of that day as the camera wrote it, such as `14:03:22`; empty where it isn't known or wasn't kept.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub time: String,
    /// Where it was taken, where that is known and was kept.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<Spot>,
    /// Which way the camera looked, in whole ten-thousandths of a degree from true north.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bearing: Option<u32>,
    /// What a person says of it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub caption: String,
    /// Persons who can be seen on it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub people: Vec<String>,
    /// The visit that it is kept with, where it was taken while the line was read.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub visit: Option<OfVisit>,
    /// How many pixels wide.
    pub width: u32,
    /// How many pixels high.
    pub height: u32,
    /// What its bytes are.
    pub media: Media,
    /// How many bytes.
    pub bytes: u64,
    /// SHA-256 of the bytes, in lower-case hexadecimal.
    pub sha256: String,
}

/// Which reading of its line a photo is kept with: the day, and who read and wrote.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct OfVisit {
    /// The day of the visit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub date: Option<Date>,
    /// Who read the tape.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub reader: String,
    /// Who wrote.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub recorder: String,
}

/// What a photo shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Shows {
    /// The line from its zero.
    Start,
    /// The line from its far end.
    End,
    /// Something met on a visit.
    Visit,
    /// The site at large, before the lines are read.
    Opening,
    /// The sheet of paper that a line was written on, photographed or scanned.
    Sheet,
}

/// A place on the earth, WGS 84, in whole thousand-millionths of a degree; north and east are positive.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Spot {
    /// Latitude.
    pub latitude: i64,
    /// Longitude.
    pub longitude: i64,
}

/// What the bytes of a photo are.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Media {
    /// JPEG.
    #[serde(rename = "image/jpeg")]
    Jpeg,
    /// PNG.
    #[serde(rename = "image/png")]
    Png,
    /// WebP.
    #[serde(rename = "image/webp")]
    Webp,
}

impl Shows {
    /// Every kind of view, in the order in which they are shown.
    pub const ALL: [Self; 5] = [Self::Opening, Self::Start, Self::End, Self::Visit, Self::Sheet];

    /// Whether it is of one line, and says nothing without that line's name.
    pub const fn is_of_line(self) -> bool {
        matches!(self, Self::Start | Self::End | Self::Sheet)
    }

    /// Whether the same view is taken again, to be compared from year to year.
    pub const fn is_compared(self) -> bool {
        matches!(self, Self::Start | Self::End | Self::Opening)
    }

    /// The word for it in data and commands.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::End => "end",
            Self::Visit => "visit",
            Self::Opening => "opening",
            Self::Sheet => "sheet",
        }
    }

    /// The catalogue's key.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Start => "photo-shows-start",
            Self::End => "photo-shows-end",
            Self::Visit => "photo-shows-visit",
            Self::Opening => "photo-shows-opening",
            Self::Sheet => "photo-shows-sheet",
        }
    }

    /// Reads such a word.
    pub fn read(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|shows| shows.word() == word)
    }
}

impl Media {
    /// Its name by RFC 6838.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Jpeg => "image/jpeg",
            Self::Png => "image/png",
            Self::Webp => "image/webp",
        }
    }

    /// What a file of it usually ends in.
    pub const fn ending(self) -> &'static str {
        match self {
            Self::Jpeg => "jpg",
            Self::Png => "png",
            Self::Webp => "webp",
        }
    }

    /// What bytes are, by how they begin.
    ///
    /// # Source
    /// ISO/IEC 10918-1, B.1.1.3 (SOI and the marker after it); PNG (third edition), 5.2; RFC 9649, 2.4 (WebP)
    /// # Example
    /// ```
    /// use tautline_survey::photo::Media;
    /// assert_eq!(Media::of(&[0xFF, 0xD8, 0xFF, 0xE1]), Some(Media::Jpeg));
    /// assert_eq!(Media::of(b"<svg>"), None);
    /// ```
    pub fn of(bytes: &[u8]) -> Option<Self> {
        match bytes {
            [0xFF, 0xD8, 0xFF, ..] => Some(Self::Jpeg),
            [0x89, b'P', b'N', b'G', 0x0D, 0x0A, 0x1A, 0x0A, ..] => Some(Self::Png),
            [b'R', b'I', b'F', b'F', _, _, _, _, b'W', b'E', b'B', b'P', ..] => Some(Self::Webp),
            _ => None,
        }
    }
}

/// Whether a text is a SHA-256 in lower-case hexadecimal.
pub fn is_sha256(text: &str) -> bool {
    text.len() == 64 && text.bytes().all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'))
}

/// The bytes that a revision names, if it is one of a photo whose content is there.
pub fn bytes_of(revision: &Revision) -> Option<String> {
    if revision.head().kind.0 != KIND {
        return None;
    }
    // a newer version's photo names its bytes in the same place, whatever else it says
    let content: Content<Value> = revision.content()?;
    let sha256 = content.payload?.get("sha256")?.as_str()?.to_owned();
    is_sha256(&sha256).then_some(sha256)
}
