//! A line that is being read: set-up and keys, from which everything else follows.
//!
//! The saved text of a draft is its set-up and every key pressed. Read back, the keys are pressed again, so a draft
//! saved at each key reopens where it was, in the middle of a number too. Undo takes the last key back, whatever it
//! did and however far back.
//!
//! | what | module |
//! | --- | --- |
//! | which line, who, which unit | [`setup`] |
//! | what can be pressed | [`key`] |
//! | the sheet that keys fill | [`sheet`] |
//! | what is said while reading | [`remarks()`] |
//! | the visit that a closed line becomes | [`close`](LineDraft::close) |
//! | drafts in a copy of everything | [`LineDraft::copy_line`] |
//! | species by a few letters, the recent ones first | [`search`] |
//! | what a keyboard's keys mean | [`desk`] |
//! | one sheet typed by two persons | [`twice`] |
//! | a second reading without sight of the first | [`blind`] |

pub mod blind;
pub mod close;
mod copy;
pub mod desk;
pub mod key;
mod number;
pub mod remarks;
pub mod search;
pub mod setup;
pub mod sheet;
#[cfg(test)]
mod tests;
pub mod twice;

pub use close::NotClosed;
pub use key::{Figure, Key};
pub use remarks::{Remark, Rules, remarks};
pub use setup::Setup;
pub use sheet::{Entry, Expects, Row, Sheet, Told};

use serde::{Deserialize, Serialize};

/// What the saved text of a draft says it is.
const FORMAT: &str = "tautline.draft";
/// The version of that text.
const VERSION: u32 = 1;

/// An unfinished line.
///
/// # Example
/// ```
/// use tautline_engine::length::{Bare, Unit};
/// use tautline_survey::draft::{Key, LineDraft, Setup};
/// let setup = Setup {
///     site: "Hollow Flat".into(), // invented
///     line: "3".into(),
///     length: None,
///     unit: Bare::Unit(Unit::Inch),
///     comma: false,
///     protocol: String::new(),
///     reader: "Reader A".into(),
///     recorder: String::new(),
///     date: None,
///     pass: String::new(),
///     blind: false,
/// };
/// let mut draft = LineDraft::new(setup);
/// for key in [Key::Species("ATCA".into()), Key::Digit(1), Key::Digit(2), Key::Done, Key::Digit(4)] {
///     assert!(draft.press(key));
/// }
/// // the battery dies and the draft is opened again
/// let mut draft = LineDraft::from_text(&draft.to_text()).unwrap();
/// assert_eq!(draft.sheet().entry.text, "4");
/// draft.press(Key::Fraction(1, 2));
/// draft.press(Key::Done);
/// assert_eq!(draft.sheet().rows[0].stop, "4 1/2"); // before its start: it is kept, and said
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LineDraft {
    setup: Setup,
    keys: Vec<Key>,
    undone: Vec<Key>,
    sheet: Sheet,
}

#[derive(Serialize, Deserialize)]
struct Saved {
    format: String,
    version: u32,
    setup: Setup,
    keys: Vec<Key>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    undone: Vec<Key>,
}

/// Why a saved draft was not opened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotOpened {
    /// The text is not a draft, or is broken.
    NotADraft,
    /// A newer version wrote it.
    Newer,
}

impl LineDraft {
    /// A line of which nothing has been read.
    pub fn new(setup: Setup) -> Self {
        Self { setup, keys: Vec::new(), undone: Vec::new(), sheet: Sheet::default() }
    }

    /// The set-up.
    pub const fn setup(&self) -> &Setup {
        &self.setup
    }

    /// The sheet as it stands.
    pub const fn sheet(&self) -> &Sheet {
        &self.sheet
    }

    /// Every key that stands, in the order pressed.
    pub fn keys(&self) -> &[Key] {
        &self.keys
    }

    /// Presses a key, and says whether it did anything; one that makes no sense here leaves everything as it was.
    pub fn press(&mut self, key: Key) -> bool {
        let Some(sheet) = self.sheet.with(&key, &self.setup) else { return false };
        self.sheet = sheet;
        self.keys.push(key);
        self.undone.clear();
        true
    }

    /// Takes back the last key, whatever it did.
    pub fn undo(&mut self) -> bool {
        let Some(last) = self.keys.pop() else { return false };
        self.undone.push(last);
        self.sheet = replayed(&self.setup, &self.keys);
        true
    }

    /// Presses the key that was taken back last once more.
    pub fn redo(&mut self) -> bool {
        let Some(key) = self.undone.pop() else { return false };
        let rest = core::mem::take(&mut self.undone);
        let pressed = self.press(key);
        self.undone = rest;
        pressed
    }

    /// Whether something can be taken back, and whether something taken back can come again.
    pub fn can_undo_and_redo(&self) -> (bool, bool) {
        (!self.keys.is_empty(), !self.undone.is_empty())
    }

    /// The draft as text, to be kept at each key.
    ///
    /// # Panics
    /// never: a draft is text and whole numbers
    pub fn to_text(&self) -> String {
        let saved = Saved {
            format: FORMAT.to_owned(),
            version: VERSION,
            setup: self.setup.clone(),
            keys: self.keys.clone(),
            undone: self.undone.clone(),
        };
        serde_json::to_string(&saved).expect("a draft is text and whole numbers")
    }

    /// A draft from its text, exactly where it was.
    ///
    /// # Errors
    /// [`NotOpened`]
    pub fn from_text(text: &str) -> Result<Self, NotOpened> {
        let value: serde_json::Value = serde_json::from_str(text).map_err(|_| NotOpened::NotADraft)?;
        if value["format"] != FORMAT {
            return Err(NotOpened::NotADraft);
        }
        if value["version"].as_u64() > Some(u64::from(VERSION)) {
            return Err(NotOpened::Newer);
        }
        let saved: Saved = serde_json::from_value(value).map_err(|_| NotOpened::NotADraft)?;
        let sheet = replayed(&saved.setup, &saved.keys);
        Ok(Self { setup: saved.setup, keys: saved.keys, undone: saved.undone, sheet })
    }
}

fn replayed(setup: &Setup, keys: &[Key]) -> Sheet {
    keys.iter().fold(Sheet::default(), |sheet, key| sheet.with(key, setup).unwrap_or(sheet))
}
