//! Objectives, triggers and decisions in sentences.

use super::{line, title, wrapped};
use tautline_survey::assess::Promised;
use tautline_survey::explain::goal_words;
use tautline_survey::message::{Message, Value};
use tautline_survey::notebook::payload::Payload;
use tautline_survey::promise::{Agreed, Decision, Objective, Trigger};
use tautline_words::Words;

/// One of the ledger.
pub(crate) fn promised(payload: &Payload, words: &Words) {
    match payload {
        Payload::Objective(one) => objective(one, words),
        Payload::Trigger(one) => trigger(one, words),
        Payload::Decision(one) => decision(one, words),
        _ => {}
    }
}

/// What the readings of a site say of its triggers.
pub(crate) fn answers(promises: &[Promised], words: &Words) {
    for one in promises {
        line("");
        wrapped(&words.say(&one.message()), 0);
        match one.agreed() {
            Some(agreed) => wrapped(&words.say(&agreed), 2),
            None => wrapped(&words.word("trigger-not-agreed"), 2),
        }
    }
}

/// What an objective leaves open.
pub(crate) fn open_parts(objective: &Objective, words: &Words) {
    let open: Vec<String> = objective.open().iter().map(|code| words.word(code)).collect();
    if !open.is_empty() {
        wrapped(&words.say(&Message::new("objective-open").with("parts", open)), 0);
    }
}

fn said(code: &'static str, text: &str, words: &Words) {
    if !text.is_empty() {
        wrapped(&format!("{}: {text}", words.word(code)), 2);
    }
}

fn objective(one: &Objective, words: &Words) {
    title(&words.say(
        &Message::new("objective-title").with("name", one.name.as_str()).with("site", of(&one.site, words)),
    ));
    said("objective-attribute", &one.attribute, words);
    said("objective-place", &one.place, words);
    said("objective-direction", &one.direction.map_or(String::new(), |way| words.word(way.word())), words);
    said("objective-amount", &one.amount, words);
    said("objective-by", &one.by.map_or(String::new(), |date| date.to_string()), words);
    let goal = one.goal.as_ref().map(|goal| words.say(&goal_words(&goal.wanted)));
    said("objective-goal", &goal.unwrap_or_default(), words);
    let share = |per_mille: Option<u16>| {
        per_mille.map_or(String::new(), |found| words.value(&Value::Share(f64::from(found) / 1000.0, 1)))
    };
    said("objective-confidence", &share(one.sampling.confidence_per_mille), words);
    let smallest = one.sampling.smallest_change.map(|change| words.percent(change.share(), 1));
    said("objective-smallest", &smallest.unwrap_or_default(), words);
    said("objective-false-alarm", &share(one.sampling.false_alarm_per_mille), words);
    said("objective-missed", &share(one.sampling.missed_change_per_mille), words);
    let looks = one.sampling.looks.map(tautline_survey::effort::looks::Looks::text);
    said("objective-looks", &looks.unwrap_or_default(), words);
    said("objective-reason", &one.reason, words);
    said("objective-source", &one.source, words);
    said("objective-agreed", &all(&one.agreed), words);
    open_parts(one, words);
}

fn trigger(one: &Trigger, words: &Words) {
    title(&words.say(
        &Message::new("trigger-title").with("name", one.name.as_str()).with("site", of(&one.site, words)),
    ));
    said("trigger-when", &one.when, words);
    said("trigger-then", &one.then, words);
    let at = one.at.as_ref().map(|at| words.say(&goal_words(&at.wanted)));
    said("trigger-at", &at.unwrap_or_default(), words);
    said("objective-agreed", &all(&one.agreed), words);
    if one.agreed.is_empty() {
        wrapped(&words.word("trigger-not-agreed"), 2);
    }
}

fn decision(one: &Decision, words: &Words) {
    let date = one.date.map_or(String::new(), |date| date.to_string());
    title(&words.say(&Message::new("decision-title").with("site", of(&one.site, words)).with("date", date)));
    said("decision-trigger", &one.trigger, words);
    said("decision-read", &one.read, words);
    said("decision-decided", &one.decided, words);
    said("decision-by", &one.by, words);
    said("objective-reason", &one.reason, words);
    said("decision-again", &one.again.map_or(String::new(), |date| date.to_string()), words);
}

fn of(site: &str, words: &Words) -> String {
    if site.is_empty() { words.word("every-site") } else { site.to_owned() }
}

fn all(agreed: &[Agreed]) -> String {
    let one = |one: &Agreed| match one.date {
        Some(date) => format!("{} ({date})", one.who),
        None => one.who.clone(),
    };
    agreed.iter().map(one).collect::<Vec<_>>().join("; ")
}
