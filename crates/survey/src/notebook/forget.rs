//! Forgetting a person or a site: every record that names them gets a state without the name, and what it said before
//! is blanked. Ids, times and hashes stay, so that nobody can pretend that nothing was there.

use super::amend::erase;
use super::hand::Draft;
use super::payload::Payload;
use crate::message::Message;
use crate::photo::Shows;
use crate::record::Records;
use crate::revision::{RecordId, Revision};
use serde_json::Value;
use std::collections::BTreeSet;

/// Who or what must be forgotten.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Whom {
    /// A person, by the name that stands in the records.
    Person(String),
    /// A site; its own records are taken back.
    Site(String),
}

/// What forgetting comes to.
#[derive(Clone, Debug, Default)]
pub struct Forgotten {
    /// The states without the name, one for each record.
    pub drafts: Vec<Draft>,
    /// The revisions as they are from here on, blank.
    pub blank: Vec<Revision>,
    /// The records, as a person would call them.
    pub called: Vec<Message>,
    /// Records that name them too and must be settled first, since unlike versions stand side by side.
    pub in_conflict: Vec<Message>,
}

impl Whom {
    /// The name.
    pub fn name(&self) -> &str {
        match self {
            Self::Person(name) | Self::Site(name) => name,
        }
    }
}

/// Works out what is to be written and what blanked so that a name stands nowhere any more; `instead` stands in its place.
pub fn forget(records: &Records, whom: &Whom, instead: &str) -> Forgotten {
    let mut forgotten = Forgotten::default();
    let ids: BTreeSet<RecordId> = records.revisions().map(Revision::record).collect();
    for id in ids {
        let own = records.of(id);
        let contents: Vec<Value> =
            own.iter().filter_map(|one| serde_json::from_str(one.content_text()?).ok()).collect();
        if !contents.iter().any(|content| names(content, whom.name())) {
            continue;
        }
        let called = own.iter().rev().find_map(|one| Some(Payload::of(one).ok()?.called()));
        let called = called.unwrap_or(Message::new("record-unread"));
        let is_its_own = contents.iter().any(|content| is_of(&content["payload"], whom));
        let without = |payload: Value| (!is_its_own).then(|| replaced(payload, whom.name(), instead));
        match erase(&own, without) {
            Ok((draft, blank)) => {
                forgotten.drafts.push(draft);
                let open = own.iter().filter(|one| blank.contains(&one.id()) && !one.is_erased());
                forgotten.blank.extend(open.map(|one| one.erased()));
                forgotten.called.push(called);
            }
            Err(_) => forgotten.in_conflict.push(called),
        }
    }
    forgotten
}

/// A record of the site itself: its plan, its strata, its visits, its goals, its photos. A photo on which a person can be
/// seen, whose caption names them, or of a sheet in their hand, is theirs: no other name under it takes them off it.
fn is_of(payload: &Value, whom: &Whom) -> bool {
    match whom {
        Whom::Site(site) => payload["site"].as_str() == Some(site),
        Whom::Person(person) => {
            let is_their_sheet =
                payload["shows"].as_str() == Some(Shows::Sheet.word()) && names(&payload["visit"], person);
            payload["sha256"].is_string()
                && (is_their_sheet || names(&payload["people"], person) || names(&payload["caption"], person))
        }
    }
}

/// Whether a name stands anywhere in a value.
fn names(value: &Value, name: &str) -> bool {
    match value {
        Value::String(text) => places(text, name).next().is_some(),
        Value::Array(items) => items.iter().any(|item| names(item, name)),
        Value::Object(map) => map.values().any(|item| names(item, name)),
        _ => false,
    }
}

/// The same value with something else in place of a name.
fn replaced(value: Value, name: &str, instead: &str) -> Value {
    match value {
        Value::String(text) => {
            let mut new = String::new();
            let mut from = 0;
            for at in places(&text, name) {
                new.push_str(&text[from..at]);
                new.push_str(instead);
                from = at + name.len();
            }
            new.push_str(&text[from..]);
            Value::String(new)
        }
        Value::Array(items) => {
            Value::Array(items.into_iter().map(|item| replaced(item, name, instead)).collect())
        }
        Value::Object(map) => {
            Value::Object(map.into_iter().map(|(key, item)| (key, replaced(item, name, instead))).collect())
        }
        other => other,
    }
}

/// Where a name stands in a text as a word of its own: “Al” isn't in “Alder”.
fn places<'a>(text: &'a str, name: &'a str) -> impl Iterator<Item = usize> + 'a {
    text.match_indices(name).map(|(at, _)| at).filter(move |at| {
        let before = text[..*at].chars().next_back();
        let after = text[at + name.len()..].chars().next();
        ![before, after].into_iter().flatten().any(char::is_alphanumeric)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn a_name_is_a_word_of_its_own() {
        let text = json!({ "note": "with Al, not Alder; Al's tape", "of": ["Al", 1, null] });
        assert!(names(&text, "Al"));
        let after = replaced(text, "Al", "somebody");
        assert_eq!(
            after,
            json!({ "note": "with somebody, not Alder; somebody's tape", "of": ["somebody", 1, null] })
        );
        assert!(!names(&after, "Al"));
        assert!(!names(&json!("Alder"), "Al"));
    }
}
