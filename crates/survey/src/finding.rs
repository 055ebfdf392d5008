//! What is wrong or worth a look, where it stands, and what would do.

mod alike;

pub use alike::{Keeper, MOST_ALIKE, More, few};

use crate::date::Date;
use crate::message::{Message, Value};
use crate::visit::Visit;
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

/// Which reading a finding is about.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct About {
    /// The site.
    pub site: String,
    /// The line; empty where the site as a whole is meant.
    pub line: String,
    /// The day of the reading.
    pub date: Option<Date>,
    /// The species' code; empty where the finding isn't about one species.
    pub species: String,
    /// The visits by their place in the input; every visit of the line where none is named.
    #[serde(skip)]
    pub visits: Vec<usize>,
}

/// That a person looked at a finding and said why it is fine.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Settled {
    /// Who looked.
    pub by: String,
    /// On which day.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub on: Option<Date>,
    /// Why it is fine.
    pub reason: String,
}

/// One thing found while reading, checking or working out.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Finding {
    /// How much it matters.
    pub weight: Weight,
    /// Where, if it stands in a file.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub place: Option<Place>,
    /// Which reading it is about, if it is about one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub about: Option<Box<About>>,
    /// Who settled it and why, if somebody did.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub settled: Option<Box<Settled>>,
    /// What was found and what would do.
    pub message: Message,
    /// The row with the character that is meant, where a person typed the row by hand.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub excerpt: Option<Box<Excerpt>>,
    /// Where the same was found again, where that isn't said one by one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub more: Option<Box<More>>,
}

impl Finding {
    const fn new(weight: Weight, message: Message) -> Self {
        Self { weight, place: None, about: None, settled: None, message, excerpt: None, more: None }
    }

    /// Something said so that nothing is assumed in silence.
    pub const fn note(message: Message) -> Self {
        Self::new(Weight::Note, message)
    }

    /// Something a person should look at.
    pub const fn have_a_look(message: Message) -> Self {
        Self::new(Weight::HaveALook, message)
    }

    /// Something that a person must settle.
    pub const fn must_settle(message: Message) -> Self {
        Self::new(Weight::MustSettle, message)
    }

    /// The words for the finding, with its place before them where it has one, and where it was found again behind them.
    pub fn words(&self) -> Message {
        self.with_more(self.words_of_one())
    }

    /// The words for the finding without its place, and where it was found again.
    pub fn said(&self) -> Message {
        self.with_more(self.message.clone())
    }

    fn with_more(&self, words: Message) -> Message {
        match &self.more {
            None => words,
            Some(more) => more.words(words),
        }
    }

    fn words_of_one(&self) -> Message {
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

    /// The same with who settled it, when and why; nothing where nobody did.
    pub fn settled_words(&self) -> Option<Message> {
        let settled = self.settled.as_ref()?;
        let on = settled.on.map(|day| Message::new("check-settled-on").with("date", day.to_string()).into());
        Some(
            Message::new("check-settled")
                .with("text", self.words())
                .with("by", settled.by.as_str())
                .with("on", on.unwrap_or_else(|| Value::from("")))
                .with("reason", settled.reason.as_str()),
        )
    }

    /// The same finding with its place.
    #[must_use]
    pub fn at(mut self, place: Place) -> Self {
        self.place = Some(place);
        self
    }

    /// The same finding with its place, where there is one.
    #[must_use]
    pub fn at_place(mut self, place: Option<&Place>) -> Self {
        self.place = place.cloned();
        self
    }

    /// The same finding, said to be about a reading.
    #[must_use]
    pub fn about(mut self, about: About) -> Self {
        self.about = Some(Box::new(about));
        self
    }

    /// The same finding, said to be about a visit, the `index`th of the input; it stands where the visit does
    /// unless it has a place of its own.
    #[must_use]
    pub fn of(mut self, visit: &Visit, index: usize) -> Self {
        if self.place.is_none() {
            self.place.clone_from(&visit.place);
        }
        self.about(About {
            site: visit.site.clone(),
            line: visit.line.clone(),
            date: visit.date,
            species: String::new(),
            visits: vec![index],
        })
    }

    /// The same finding, said to be about one species of the reading.
    #[must_use]
    pub fn species(mut self, code: &str) -> Self {
        code.clone_into(&mut self.about.get_or_insert_default().species);
        self
    }

    /// The year of the reading it is about, where it is about one with a date.
    pub fn year(&self) -> Option<u16> {
        self.about.as_ref()?.date.map(Date::year)
    }

    /// What tells it from every other finding: its code, where it stands and what it is about.
    pub fn identity(&self) -> (&'static str, Option<&Place>, Option<&About>) {
        (self.message.code, self.place.as_ref(), self.about.as_deref())
    }

    /// Whether a person still has to settle it.
    pub fn holds_back(&self) -> bool {
        self.weight == Weight::MustSettle && self.settled.is_none()
    }
}
