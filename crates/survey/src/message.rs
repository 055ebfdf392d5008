//! What a person should hear, as a code with values. The catalogue in `tautline-words` holds the words.

use serde::{Serialize, Serializer, ser::SerializeMap};
use tautline_engine::length::{Length, Notation};

/// A code of the catalogue with the values that its words need.
///
/// # Example
/// ```
/// use tautline_survey::message::Message;
/// let message = Message::new("line-not-read").with("line", "L3");
/// assert_eq!(message.code, "line-not-read");
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Message {
    /// The key in the catalogue, the same in every language; also the stable code in data.
    pub code: &'static str,
    /// Named values, in the order they were given.
    pub values: Vec<(&'static str, Value)>,
}

/// A value inside a message, not yet formatted for people.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// Text that a person wrote: a name, a code, what was found in a cell.
    Text(String),
    /// Figures as they are worked out on paper, with points: shown with the mark of whoever reads them.
    Figures(String),
    /// A count.
    Count(u64),
    /// A length in the notation to show it in.
    Length(Length, Notation),
    /// A share, shown as per cent with so many decimals.
    Share(f64, u32),
    /// A plain number with so many decimals.
    Number(f64, u32),
    /// A word of the catalogue itself.
    Word(&'static str),
    /// A message inside a message.
    Message(Box<Message>),
    /// Several values, listed with commas.
    List(Vec<Value>),
}

impl Message {
    /// A message without values.
    pub const fn new(code: &'static str) -> Self {
        Self { code, values: Vec::new() }
    }

    /// The same message with one more value.
    #[must_use]
    pub fn with(mut self, name: &'static str, value: impl Into<Value>) -> Self {
        self.values.push((name, value.into()));
        self
    }
}

impl From<&str> for Value {
    fn from(text: &str) -> Self {
        Self::Text(text.to_owned())
    }
}

impl From<String> for Value {
    fn from(text: String) -> Self {
        Self::Text(text)
    }
}

impl From<usize> for Value {
    fn from(count: usize) -> Self {
        Self::Count(count as u64)
    }
}

impl From<u64> for Value {
    fn from(count: u64) -> Self {
        Self::Count(count)
    }
}

impl From<Message> for Value {
    fn from(message: Message) -> Self {
        Self::Message(Box::new(message))
    }
}

impl From<Vec<String>> for Value {
    fn from(texts: Vec<String>) -> Self {
        Self::List(texts.into_iter().map(Self::Text).collect())
    }
}

impl Serialize for Message {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        map.serialize_entry("code", self.code)?;
        for (name, value) in &self.values {
            map.serialize_entry(name, value)?;
        }
        map.end()
    }
}

impl Serialize for Value {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Text(text) | Self::Figures(text) => serializer.serialize_str(text),
            Self::Count(count) => serializer.serialize_u64(*count),
            Self::Length(length, _) => serializer.serialize_i64(length.nanometres()),
            Self::Share(number, _) | Self::Number(number, _) => serializer.serialize_f64(*number),
            Self::Word(word) => serializer.serialize_str(word),
            Self::Message(message) => message.serialize(serializer),
            Self::List(values) => serializer.collect_seq(values),
        }
    }
}
