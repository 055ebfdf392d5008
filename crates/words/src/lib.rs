//! The one catalogue of messages. Every other room hands in a code with values and gets words back.
//!
//! Messages are Fluent files under `messages/`, one folder a language. Numbers are rounded and marked for people
//! here and nowhere else, by [`tautline_engine::num::decimal`].
#![forbid(unsafe_code)]

use fluent_bundle::{FluentArgs, FluentBundle, FluentResource, FluentValue};
use std::borrow::Cow;
use tautline_engine::length::{DecimalMark, write};
use tautline_engine::num::decimal::{decimal, percent};
use tautline_survey::finding::Excerpt;
use tautline_survey::message::{Message, Value};
use tautline_survey::protocol::Assumption;
use unic_langid::LanguageIdentifier;
use unicode_width::UnicodeWidthStr;

const ENGLISH: [&str; 12] = [
    include_str!("../messages/en/app.ftl"),
    include_str!("../messages/en/survey.ftl"),
    include_str!("../messages/en/exchange.ftl"),
    include_str!("../messages/en/draft.ftl"),
    include_str!("../messages/en/command.ftl"),
    include_str!("../messages/en/report.ftl"),
    include_str!("../messages/en/follow.ftl"),
    include_str!("../messages/en/methods.ftl"),
    include_str!("../messages/en/notebook.ftl"),
    include_str!("../messages/en/packet.ftl"),
    include_str!("../messages/en/plan.ftl"),
    include_str!("../messages/en/practice.ftl"),
];

/// The catalogue in one language.
pub struct Words {
    bundle: FluentBundle<FluentResource>,
    mark: DecimalMark,
}

impl Words {
    /// The English catalogue.
    ///
    /// # Example
    /// ```
    /// use tautline_survey::message::Message;
    /// let words = tautline_words::Words::english();
    /// assert_eq!(words.word("met"), "met");
    /// assert_eq!(words.say(&Message::new("per-cent").with("figure", "9.4")), "9.4\u{a0}%"); // a no-break space
    /// ```
    pub fn english() -> Self {
        let mut bundle = FluentBundle::new(vec![LanguageIdentifier::from_bytes(b"en").unwrap_or_default()]);
        bundle.set_use_isolating(false);
        for text in ENGLISH {
            // what the files hold is checked by a test; a bad message here falls back to its code
            let resource = FluentResource::try_new(text.to_owned()).unwrap_or_else(|(good, _)| good);
            bundle.add_resource_overriding(resource);
        }
        Self { bundle, mark: DecimalMark::Point }
    }

    /// The language of the words, as a page or a file names it: `en`.
    pub fn language(&self) -> &str {
        self.bundle.locales.first().map_or("en", |language| language.language.as_str())
    }

    /// The decimal mark of its numbers.
    pub fn mark(&self) -> DecimalMark {
        self.mark
    }

    /// The words for a message; a code that the catalogue lacks comes back as it is.
    pub fn say(&self, message: &Message) -> String {
        let mut arguments = FluentArgs::new();
        for (name, value) in &message.values {
            arguments.set(*name, self.argument(value));
        }
        self.format(message.code, &arguments)
    }

    fn format(&self, code: &str, arguments: &FluentArgs) -> String {
        let Some(pattern) = self.bundle.get_message(code).and_then(|found| found.value()) else {
            return code.to_owned();
        };
        let mut errors = Vec::new();
        self.bundle.format_pattern(pattern, Some(arguments), &mut errors).into_owned()
    }

    /// The words for a code without values.
    pub fn word(&self, code: &str) -> String {
        self.format(code, &FluentArgs::new())
    }

    /// What was taken where a protocol is silent: the rule, and how.
    pub fn assumption(&self, taken: &Assumption) -> String {
        let message = Message::new("assumed")
            .with("rule", self.word(&format!("rule-{}", taken.rule)))
            .with("taken", self.word(&format!("taken-{}", taken.taken)));
        self.say(&message)
    }

    /// Whether the catalogue has words for a code.
    pub fn has(&self, code: &str) -> bool {
        self.bundle.get_message(code).is_some_and(|found| found.value().is_some())
    }

    /// A share as per cent for people, with its sign.
    pub fn percent(&self, share: f64, places: u32) -> String {
        self.say(&Message::new("per-cent").with("figure", self.marked(percent(share, places))))
    }

    /// A number for people.
    pub fn number(&self, number: f64, places: u32) -> String {
        self.marked(decimal(number, places))
    }

    fn marked(&self, number: String) -> String {
        match self.mark {
            DecimalMark::Point => number,
            DecimalMark::Comma => number.replace('.', ","),
        }
    }

    fn argument(&self, value: &Value) -> FluentValue<'static> {
        match value {
            Value::Count(count) => FluentValue::from(*count),
            other => FluentValue::from(self.value(other)),
        }
    }

    /// A value of a message by itself.
    pub fn value(&self, value: &Value) -> String {
        match value {
            Value::Text(text) => visible(text).into_owned(),
            Value::Count(count) => count.to_string(),
            Value::Length(length, notation) => self.marked(write(*length, *notation)),
            Value::Share(share, places) => self.percent(*share, *places),
            Value::Number(number, places) => self.number(*number, *places),
            Value::Word(word) => self.word(word),
            Value::Message(message) => self.say(message),
            Value::List(values) => {
                values.iter().map(|value| self.value(value)).collect::<Vec<_>>().join(", ")
            }
        }
    }
}

/// The row that is meant, and below it a mark under the character, each character as wide as a screen shows it.
///
/// # Example
/// ```
/// use tautline_survey::finding::Excerpt;
/// let excerpt = Excerpt { text: "ATCA 12-1O".into(), before: 9 };
/// assert_eq!(tautline_words::picture(&excerpt), ["ATCA 12-1O", "         ^"]);
/// ```
pub fn picture(excerpt: &Excerpt) -> [String; 2] {
    let before: String = excerpt.text.chars().take(excerpt.before).collect();
    [excerpt.text.clone(), " ".repeat(before.width()) + "^"]
}

/// A text as it may be shown on a screen: in place of each character that would steer the screen or turn the direction
/// of writing, a sign that something stands there.
///
/// # Example
/// ```
/// assert_eq!(tautline_words::visible("Dry\u{1b}[2J Fork\u{202e}"), "Dry\u{fffd}[2J Fork\u{fffd}");
/// ```
pub fn visible(text: &str) -> Cow<'_, str> {
    let steers = |c: char| {
        (c.is_control() && c != '\n')
            || matches!(c, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
    };
    if text.contains(steers) { Cow::Owned(text.replace(steers, "\u{fffd}")) } else { Cow::Borrowed(text) }
}
