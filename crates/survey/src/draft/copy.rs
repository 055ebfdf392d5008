//! Drafts in a copy of everything on a device: one line each, among the lines of revisions.

use super::LineDraft;
use serde::{Deserialize, Serialize};

#[derive(Serialize, Deserialize)]
struct Copied {
    draft: serde_json::Value,
    name: String,
}

impl LineDraft {
    /// The draft as one line of a copy, with the name that the device keeps it under.
    ///
    /// # Panics
    /// never: a draft's own text is JSON
    pub fn copy_line(&self, name: &str) -> String {
        let draft = serde_json::from_str(&self.to_text()).expect("a draft's own text is JSON");
        serde_json::to_string(&Copied { draft, name: name.to_owned() }).expect("JSON and text")
    }

    /// A draft from a line of a copy, with its name; nothing where the line is something else, or of a newer version.
    pub fn from_copy_line(line: &str) -> Option<(String, Self)> {
        let copied: Copied = serde_json::from_str(line).ok()?;
        Some((copied.name, Self::from_text(&copied.draft.to_string()).ok()?))
    }
}
