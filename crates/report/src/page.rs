//! What every part of a page needs: the input, what was asked of it, the words, and the colours of the species.

use crate::onward::Changes;
use crate::pictures::Tones;
use crate::telling::{Reader, Telling};
use tautline_survey::assess::Question;
use tautline_survey::input::Input;
use tautline_survey::message::Message;
use tautline_words::Words;

/// What the pictures are drawn for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Medium {
    /// Wide and narrow, coloured by the page's style.
    Screen,
    /// Once, in colours of their own.
    #[cfg_attr(
        not(feature = "pdf"),
        expect(dead_code, reason = "only the typeset report is drawn for print")
    )]
    Print,
    /// Not at all.
    Plain,
}

/// The page in the making.
pub(crate) struct Page<'a> {
    pub(crate) input: &'a Input,
    pub(crate) question: &'a Question,
    pub(crate) words: &'a Words,
    pub(crate) reader: Reader,
    pub(crate) medium: Medium,
    pub(crate) tones: Tones,
    pub(crate) changes: Changes,
}

impl<'a> Page<'a> {
    pub(crate) fn new(telling: &Telling<'a>, medium: Medium) -> Self {
        let Telling { input, question, assessments, words, reader, .. } = *telling;
        let changes = Changes::up_to(input, question, assessments);
        Self { input, question, words, reader, medium, tones: Tones::of(assessments), changes }
    }

    /// The words for a code without values.
    pub(crate) fn word(&self, code: &str) -> String {
        self.words.word(code)
    }

    /// The words for a message.
    pub(crate) fn say(&self, message: &Message) -> String {
        self.words.say(message)
    }

    /// The words for some codes, in their order.
    pub(crate) fn each(&self, codes: &[&str]) -> Vec<String> {
        codes.iter().map(|code| self.word(code)).collect()
    }
}

/// The place of an assessment on the page: the beginning of its ids.
pub(crate) fn site_id(number: usize) -> String {
    format!("site-{}", number + 1)
}

/// The place of a visit's readings on the page.
pub(crate) fn readings_id(visit: usize) -> String {
    format!("readings-{}", visit + 1)
}
