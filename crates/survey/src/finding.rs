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
}

impl Finding {
    /// Something said so that nothing is assumed in silence.
    pub const fn note(message: Message) -> Self {
        Self { weight: Weight::Note, place: None, message }
    }

    /// Something a person should look at.
    pub const fn have_a_look(message: Message) -> Self {
        Self { weight: Weight::HaveALook, place: None, message }
    }

    /// Something that a person must settle.
    pub const fn must_settle(message: Message) -> Self {
        Self { weight: Weight::MustSettle, place: None, message }
    }

    /// The words for the finding, with its place before them where it has one.
    pub fn words(&self) -> Message {
        let Some(place) = &self.place else { return self.message.clone() };
        let message = match &place.column {
            Some(column) => Message::new("finding-at-column").with("column", column.as_str()),
            None => Message::new("finding-at"),
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
