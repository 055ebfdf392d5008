//! What is wrong or worth a look, where it stands, and what would do.

use crate::message::Message;
use serde::{Deserialize, Serialize};

/// Where something was read: a file and a row of it.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Place {
    /// The file's name as given.
    pub file: String,
    /// The row, counted from 1 with the heading.
    pub row: u64,
    /// The column's heading, where one cell is meant.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub column: Option<String>,
    /// The character of the row, counted from 1, where one is meant.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub character: Option<u32>,
}

/// How much a finding matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Weight {
    /// Said so that nothing is assumed in silence.
    Note,
    /// May be right; a person should look.
    HaveALook,
    /// Part of the input could not be used until a person settles it.
    MustSettle,
}

/// A piece of a row as it stands in its file, for showing one character of it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Excerpt {
    /// The text, short enough for one line of a screen and free of control characters.
    pub text: String,
    /// How many characters stand before the one that is meant.
    pub before: usize,
}

/// One thing found while reading or working out.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Finding {
    /// How much it matters.
    pub weight: Weight,
    /// Where, if it stands in a file.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub place: Option<Place>,
    /// What was found and what would do.
    pub message: Message,
    /// The row with the character that is meant, where a person typed the row by hand.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub excerpt: Option<Box<Excerpt>>,
}

impl Finding {
    /// Something said so that nothing is assumed in silence.
    pub const fn note(message: Message) -> Self {
        Self { weight: Weight::Note, place: None, message, excerpt: None }
    }

    /// Something a person should look at.
    pub const fn have_a_look(message: Message) -> Self {
        Self { weight: Weight::HaveALook, place: None, message, excerpt: None }
    }

    /// Something that a person must settle.
    pub const fn must_settle(message: Message) -> Self {
        Self { weight: Weight::MustSettle, place: None, message, excerpt: None }
    }

    /// The words for the finding, with its place before them where it has one.
    pub fn words(&self) -> Message {
        let Some(place) = &self.place else { return self.message.clone() };
        let message = match (place.character, &place.column) {
            (Some(character), _) => {
                Message::new("finding-at-character").with("character", character.to_string())
            }
            (None, Some(column)) => Message::new("finding-at-column").with("column", column.as_str()),
            (None, None) => Message::new("finding-at"),
        };
        message
            .with("file", place.file.as_str())
            .with("row", place.row.to_string())
            .with("text", self.message.clone())
    }

    /// The same finding with its place.
    #[must_use]
    pub fn at(mut self, place: Place) -> Self {
        self.place = Some(place);
        self
    }
}
