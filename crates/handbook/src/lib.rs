//! The method handbook: what each figure is, its formula and source, an example by hand, and when not to trust it.
//!
//! The pages are `docs/handbook/*.md`; this room turns them into markup and plain text and finds words in them. It is a room
//! of its own because the command prints them and the web build packs them, and neither owns them; the app brings in only what finds a
//! word, without the pages (feature `pages`), and fetches those as one file. Every worked example is worked out by the engine
//! in `tests/examples`.
#![forbid(unsafe_code)]

mod find;
#[cfg(feature = "pages")]
mod markdown;
#[cfg(feature = "pages")]
mod pages;
#[cfg(feature = "pages")]
mod plain;

pub use find::find;
#[cfg(feature = "pages")]
pub use pages::{named, pages, source};

use serde::{Deserialize, Serialize};

/// One page.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Page {
    /// Its name in an address and in the command: `gap-rule`.
    pub name: String,
    /// The part of the handbook that it stands in.
    pub part: String,
    /// Its title.
    pub title: String,
    /// What it says, in one sentence.
    pub about: String,
    /// Everything below the title as plain text, without markup.
    pub text: String,
    /// The same as markup, safe to show: no script, no style, no picture, and links to pages of the handbook or to the network.
    pub html: String,
}
