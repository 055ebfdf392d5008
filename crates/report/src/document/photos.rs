//! A photo of a report: what is said of it, and its bytes, which go beside the data.

use serde::Serialize;
use std::sync::Arc;

/// A photo.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Shot {
    /// When it was taken, and what else stands below it.
    pub caption: String,
    /// What it shows, in words.
    pub description: String,
    /// How many pixels wide.
    pub width: u32,
    /// How many pixels high.
    pub height: u32,
    /// The name under which a template finds the picture; nothing where it can't be shown, which the caption says.
    pub file: Option<String>,
    /// What the bytes are, by its name of RFC 6838.
    #[serde(skip)]
    pub media: &'static str,
    /// The bytes.
    #[serde(skip)]
    pub bytes: Arc<[u8]>,
}
