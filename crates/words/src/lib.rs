//! The one catalogue of messages. Every other room hands in a code with values and gets words back.
//!
//! Messages are Fluent files under `messages/`, one folder a language. Numbers are rounded and marked for people
//! here and nowhere else, by [`tautline_engine::num::decimal`].
#![forbid(unsafe_code)]

mod lengths;

pub use lengths::Lengths;

use fluent_bundle::concurrent::FluentBundle; // reports are written by several threads
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use std::borrow::Cow;
use tautline_engine::length::{DecimalMark, write};
use tautline_engine::num::decimal::{decimal, percent};
use tautline_survey::finding::Excerpt;
use tautline_survey::message::{Message, Value};
use tautline_survey::protocol::Assumption;
use unic_langid::LanguageIdentifier;
use unicode_width::UnicodeWidthStr;

/// The files of each language: one name, one file in each.
macro_rules! catalogue {
    ($($file:literal)+) => {
        const ENGLISH: &[(&str, &str)] = &[$(($file, include_str!(concat!("../messages/en/", $file, ".ftl"))),)+];
        const SPANISH: &[(&str, &str)] = &[$(($file, include_str!(concat!("../messages/es/", $file, ".ftl"))),)+];
    };
}

catalogue! {
    "app" "read" "survey" "exchange" "draft" "command" "report" "follow" "methods" "notebook" "packet" "plan" "practice" "tell" "travel" "handbook" "following" "lesson" "aim" "desk" "field"
}

type Bundle = FluentBundle<FluentResource>;

/// The catalogue in one language.
pub struct Words {
    language: &'static str,
    bundle: Bundle,
    /// English, for what the language has no words for yet.
    fallback: Option<Bundle>,
    mark: DecimalMark,
    lengths: Lengths,
}

/// What the files hold is checked by a test; a bad message here falls back to its code.
fn bundle<'a>(language: &str, texts: impl IntoIterator<Item = &'a str>) -> Bundle {
    let identifier = LanguageIdentifier::from_bytes(language.as_bytes()).unwrap_or_default();
    let mut bundle = FluentBundle::new_concurrent(vec![identifier]);
    bundle.set_use_isolating(false);
    for text in texts {
        let resource = FluentResource::try_new(text.to_owned()).unwrap_or_else(|(good, _)| good);
        bundle.add_resource_overriding(resource);
    }
    bundle
}

/// What a code, or a variant of it, says in a bundle; nothing where it has no words for it.
fn said(bundle: &Bundle, code: &str, variant: Option<&str>, arguments: &FluentArgs) -> Option<String> {
    let message = bundle.get_message(code)?;
    let pattern = match variant {
        None => message.value()?,
        Some(variant) => message.get_attribute(variant)?.value(),
    };
    let mut errors = Vec::new();
    Some(bundle.format_pattern(pattern, Some(arguments), &mut errors).into_owned())
}

/// The two ends of a range, as messages name them. A message that has the variant `alike` says it where both print alike.
const ENDS: [[&str; 2]; 3] = [["low", "high"], ["lowest", "highest"], ["earliest", "latest"]];

/// Where Spanish is written with a decimal point.
///
/// # Source
/// Unicode Common Locale Data Repository, `es` and `es_419` with the regions that depart from it; from memory
const WITH_A_POINT: [&str; 13] =
    ["419", "BZ", "CU", "DO", "GT", "HN", "MX", "NI", "PA", "PE", "PR", "SV", "US"];

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
        Self::of_english(ENGLISH.iter().map(|(_, text)| *text))
    }

    fn of_english<'a>(texts: impl IntoIterator<Item = &'a str>) -> Self {
        Self {
            language: "en",
            bundle: bundle("en", texts),
            fallback: None,
            mark: DecimalMark::Point,
            lengths: Lengths::default(),
        }
    }

    /// Spanish, numbers as they are written where it is spoken; `es-MX` has a decimal point, `es` a comma.
    fn of_spanish<'a>(
        region: &str,
        texts: impl IntoIterator<Item = &'a str>,
        english: impl IntoIterator<Item = &'a str>,
    ) -> Self {
        let mark = if WITH_A_POINT.contains(&region.to_uppercase().as_str()) {
            DecimalMark::Point
        } else {
            DecimalMark::Comma
        };
        let fallback = Some(bundle("en", english));
        Self { language: "es", bundle: bundle("es", texts), fallback, mark, lengths: Lengths::default() }
    }

    /// The languages there are.
    pub const LANGUAGES: [&'static str; 2] = ["en", "es"];

    /// The catalogue's files of a language, each name with its text; nothing where there is no such language.
    pub fn files(language: &str) -> &'static [(&'static str, &'static str)] {
        match language {
            "en" => ENGLISH,
            "es" => SPANISH,
            _ => &[],
        }
    }

    /// The catalogue in a language, named as `es`, `es-MX` or `es_MX.UTF-8`; nothing where there is none.
    ///
    /// # Example
    /// ```
    /// use tautline_words::Words;
    /// let say = |language| Words::in_language(language).map(|words| words.percent(0.094, 1));
    /// assert_eq!(say("en-GB").as_deref(), Some("9.4\u{a0}%"));
    /// assert_eq!(say("es").as_deref(), Some("9,4\u{a0}%"));
    /// assert_eq!(say("es_MX.UTF-8").as_deref(), Some("9.4\u{a0}%"));
    /// assert_eq!(say("tlh"), None);
    /// ```
    pub fn in_language(named: &str) -> Option<Self> {
        Self::of(named, &|language| Self::files(language).iter().map(|(_, text)| *text).collect())
    }

    /// The same of texts that stand elsewhere, by language: where only what is shown is fetched.
    ///
    /// # Example
    /// ```
    /// use tautline_words::Words;
    /// let words = Words::of("es", &|language| if language == "es" { vec!["met = cumplida"] } else { vec!["per-cent = { $figure } %"] });
    /// assert_eq!(words.as_ref().map(|words| words.word("met")).as_deref(), Some("cumplida"));
    /// assert_eq!(words.map(|words| words.word("unknown")).as_deref(), Some("unknown"));
    /// ```
    pub fn of<'a>(named: &str, texts: &dyn Fn(&str) -> Vec<&'a str>) -> Option<Self> {
        let mut parts = named.split(['-', '_', '.', '@']);
        match parts.next()?.to_lowercase().as_str() {
            "en" => Some(Self::of_english(texts("en"))),
            "es" => Some(Self::of_spanish(parts.next().unwrap_or_default(), texts("es"), texts("en"))),
            _ => None,
        }
    }

    /// The same words, lengths in the units that a person likes.
    #[must_use]
    pub fn with_lengths(self, lengths: Lengths) -> Self {
        Self { lengths, ..self }
    }

    /// A catalogue without any words: every code is said as it is.
    pub fn bare() -> Self {
        Self::of_english([])
    }

    /// The language of the words, as a page or a file names it: `en`.
    pub fn language(&self) -> &'static str {
        self.language
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
        let alike = || said(&self.bundle, message.code, Some("alike"), &arguments);
        let alike = self.ends_are_alike(message).then(alike).flatten();
        alike.unwrap_or_else(|| self.format(message.code, &arguments))
    }

    /// Whether the two ends of the message's range are printed as the same number: then it is said as one.
    fn ends_are_alike(&self, message: &Message) -> bool {
        let named = |wanted: &str| {
            let found = message.values.iter().find(|(name, _)| *name == wanted);
            found.map(|(_, value)| self.value(value))
        };
        ENDS.iter().any(|[low, high]| named(low).is_some_and(|low| named(high) == Some(low)))
    }

    fn format(&self, code: &str, arguments: &FluentArgs) -> String {
        let mut bundles = [Some(&self.bundle), self.fallback.as_ref()].into_iter().flatten();
        bundles.find_map(|bundle| said(bundle, code, None, arguments)).unwrap_or_else(|| code.to_owned())
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
            Value::Figures(figures) => self.marked(figures.clone()),
            Value::Count(count) => count.to_string(),
            Value::Length(length, notation) => self.marked(write(*length, self.lengths.notation(*notation))),
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
