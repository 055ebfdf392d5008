//! Protests of a class's day: raised by whom, about which row, what was decided, by whom. A decision changes no marks by itself: where
//! a sheet or a key was wrong, it is put right there, and the class is marked again.

use super::class::Class;
use crate::message::Message;
use serde::{Deserialize, Serialize};

/// What was decided.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Decision {
    /// Nothing yet.
    #[default]
    Open,
    /// The protest is right.
    Upheld,
    /// It isn't.
    TurnedDown,
}

impl Decision {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Open, Self::Upheld, Self::TurnedDown];

    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Open => "protest-open",
            Self::Upheld => "protest-upheld",
            Self::TurnedDown => "protest-turned-down",
        }
    }

    /// The decision that a cell of a table names, in the words that tables are written with; nothing where it is none of them.
    ///
    /// # Example
    /// ```
    /// use tautline_survey::practice::Decision;
    /// assert_eq!(Decision::from_word("Turned down"), Some(Decision::TurnedDown));
    /// assert_eq!(Decision::from_word(""), Some(Decision::Open));
    /// assert_eq!(Decision::from_word("maybe"), None);
    /// ```
    pub fn from_word(word: &str) -> Option<Self> {
        let word = word.trim();
        let named = |one: &Self| one.word().eq_ignore_ascii_case(word);
        if word.is_empty() { Some(Self::Open) } else { Self::ALL.into_iter().find(named) }
    }

    /// The word of a table.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Open => "open",
            Self::Upheld => "upheld",
            Self::TurnedDown => "turned down",
        }
    }
}

/// A protest.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Protest {
    /// Who raised it: a learner, or a group.
    pub by: String,
    /// About which line.
    pub line: String,
    /// About which row of it, as its people call it; empty where the whole line is meant.
    pub row: String,
    /// What it says.
    pub about: String,
    /// What was decided.
    pub decided: Decision,
    /// Why.
    pub why: String,
    /// Who decided.
    pub judge: String,
}

impl Protest {
    /// Whether nothing stands in it.
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}

/// What should be heard of a class's protests: how many are open, and those about lines that nobody handed in.
pub fn protest_words(class: &Class) -> Vec<Message> {
    let open = class.protests.iter().filter(|one| one.decided == Decision::Open).count();
    let mut said = Vec::new();
    if open > 0 {
        said.push(Message::new("protests-open").with("protests", open));
    }
    let handed_in = |line: &str| class.learners.iter().any(|one| one.lines.iter().any(|own| own.0 == line));
    let strange = class.protests.iter().filter(|one| !one.line.is_empty() && !handed_in(&one.line));
    let mut strange: Vec<String> = strange.map(|one| one.line.clone()).collect();
    strange.sort();
    strange.dedup();
    if !strange.is_empty() {
        said.push(Message::new("protests-strange-lines").with("lines", strange));
    }
    said
}
