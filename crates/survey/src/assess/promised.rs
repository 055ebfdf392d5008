//! What was promised beforehand at which number, beside what the readings show of that number.

use super::{Assessment, Question, judge};
use crate::explain::goal_words;
use crate::input::Input;
use crate::message::Message;
use crate::promise::Trigger;
use tautline_engine::verdict::Verdict;

/// A trigger and what the readings of one year say of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Promised {
    /// The trigger.
    pub trigger: Trigger,
    /// Whether the number it waits for is met, not met, or not yet shown; none where it names its reading in words alone.
    pub answer: Option<Verdict>,
}

impl Promised {
    /// What the readings say of it, as a code.
    pub const fn code(&self) -> &'static str {
        match self.answer {
            Some(Verdict::Met) => "promised-reached",
            Some(Verdict::NotMet) => "promised-not-reached",
            Some(Verdict::NotYetShown) => "promised-not-yet-shown",
            None => "promised-in-words",
        }
    }

    /// The same as a sentence.
    pub fn message(&self) -> Message {
        let message = Message::new(self.code())
            .with("name", self.trigger.name.as_str())
            .with("when", self.trigger.when.as_str())
            .with("then", self.trigger.then.as_str());
        match &self.trigger.at {
            Some(at) => message.with("at", goal_words(&at.wanted)),
            None => message,
        }
    }

    /// Who agreed to it; none where nobody is named.
    pub fn agreed(&self) -> Option<Message> {
        let one = |agreed: &crate::promise::Agreed| match agreed.date {
            Some(date) => format!("{} ({date})", agreed.who),
            None => agreed.who.clone(),
        };
        let all: Vec<String> = self.trigger.agreed.iter().map(one).collect();
        (!all.is_empty()).then(|| Message::new("promised-agreed").with("who", all.join("; ")))
    }
}

/// The triggers that hold for a site in a year: its own and those of every site, agreed in that year or before.
pub(super) fn triggers<'a>(
    input: &'a Input,
    site: &'a str,
    year: Option<u16>,
) -> impl Iterator<Item = &'a Trigger> {
    input.triggers.iter().filter(move |trigger| {
        let first = trigger.agreed.iter().filter_map(|agreed| agreed.date).map(crate::date::Date::year).min();
        let in_time = year.zip(first).is_none_or(|(year, first)| first <= year);
        in_time && (trigger.site.is_empty() || trigger.site == site)
    })
}

/// What the readings say of each trigger.
pub(super) fn promised(input: &Input, question: &Question, assessment: &Assessment) -> Vec<Promised> {
    triggers(input, &assessment.site, assessment.year)
        .map(|trigger| Promised {
            trigger: trigger.clone(),
            answer: trigger.at.as_ref().map(|at| judge::judge(question, assessment, at).verdict),
        })
        .collect()
}
