//! What is said of a notebook: what came in, what happened, what stands side by side.

use super::table::Table;
use super::{QUIET, STRONG, findings, println, title, wrapped};
use std::collections::{BTreeMap, BTreeSet};
use tautline_store::{Appended, Paired};
use tautline_survey::finding::Finding;
use tautline_survey::message::{Message, Value};
use tautline_survey::notebook::changes::changes;
use tautline_survey::notebook::current::{Conflict, written_by};
use tautline_survey::notebook::gather::Tally;
use tautline_survey::notebook::payload::{NoPayload, Payload};
use tautline_survey::photo::{Photo, Spot};
use tautline_survey::place::Openness;
use tautline_survey::revision::{Content, Revision};
use tautline_words::{Words, visible};

/// So many changed records are shown one by one.
const SHOWN: usize = 20;

/// What an import brought, kind by kind, and what changed by it.
pub(crate) fn imported(
    tally: &BTreeMap<&'static str, Tally>,
    changed: &[(Payload, Payload)],
    said: &Message,
    words: &Words,
) {
    let headings = ["column-what", "column-new", "column-changed", "column-known"];
    let mut table = Table::new(&headings.map(|code| words.word(code)));
    let count = |count: usize| if count == 0 { String::new() } else { count.to_string() };
    for (kind, tally) in tally {
        let kind = words.word(&format!("kind-{kind}"));
        table.row(vec![kind, count(tally.new), count(tally.changed), count(tally.known)]);
    }
    table.print();
    for (before, after) in changed.iter().take(SHOWN) {
        println!();
        wrapped(&words.say(&after.called()), 0);
        for change in changes(Some(before), Some(after)) {
            wrapped(&words.say(&change), 2);
        }
    }
    if let Some(more) = changed.len().checked_sub(SHOWN).filter(|&more| more > 0) {
        println!();
        wrapped(&words.say(&Message::new("changed-more").with("records", more)), 0);
    }
    println!();
    wrapped(&words.say(said), 0);
}

/// What joining another notebook would bring.
pub(crate) fn would_join(file: &str, new: usize, words: &Words) {
    wrapped(&words.say(&Message::new("would-join").with("file", file).with("new", new)), 0);
}

/// What joining another notebook brought.
pub(crate) fn joined(file: &str, appended: Appended, words: &Words) {
    let said = Message::new("joined")
        .with("file", file)
        .with("new", appended.new)
        .with("known", appended.known)
        .with("erased", appended.erased);
    wrapped(&words.say(&said), 0);
}

/// Records by what a person calls them, below what is to be said of them.
pub(crate) fn records(said: &str, called: &[Message], words: &Words) {
    wrapped(said, 0);
    for one in called.iter().take(SHOWN) {
        wrapped(&words.say(one), 2);
    }
    if let Some(more) = called.len().checked_sub(SHOWN).filter(|&more| more > 0) {
        wrapped(&words.say(&Message::new("records-more").with("records", more)), 2);
    }
    println!();
}

/// A photo that was added.
pub(crate) fn photo(file: &str, photo: &Photo, words: &Words) {
    let said = Message::new("photo-added")
        .with("file", file)
        .with("what", Payload::Photo(Box::new(photo.clone())).called())
        .with("shows", Value::Word(photo.shows.code()))
        .with("when", when(photo, words))
        .with("where", place(photo, words));
    wrapped(&words.say(&said), 0);
}

/// The photos of a notebook, their places as open as each site has them; of some the bytes aren't here.
pub(crate) fn photos(
    photos: &[&Photo],
    lacking: &BTreeSet<String>,
    openness: &dyn Fn(&str) -> Openness,
    words: &Words,
) {
    if photos.is_empty() {
        wrapped(&words.word("photos-none"), 0);
        return;
    }
    let headings = [
        "column-site",
        "column-line",
        "column-photo-shows",
        "column-date",
        "column-place",
        "column-size",
        "column-caption",
    ];
    let mut table = Table::new(&headings.map(|code| words.word(code)));
    for photo in photos {
        let open = openness(&photo.site) == Openness::Exact;
        let size = if lacking.contains(&photo.sha256) {
            words.word("photo-bytes-lacking")
        } else {
            format!("{} × {}", photo.width, photo.height)
        };
        table.row(vec![
            visible(&photo.site).into_owned(),
            visible(&photo.line).into_owned(),
            words.word(photo.shows.code()),
            when(photo, words),
            match photo.place {
                Some(_) if !open => words.word("photo-place-kept-back"),
                _ => place(photo, words),
            },
            size,
            if open { visible(&photo.caption).into_owned() } else { String::new() },
        ]);
    }
    table.print();
}

/// The day, and the time where it was kept.
fn when(photo: &Photo, words: &Words) -> String {
    let date = photo.date.map_or_else(|| words.word("photo-undated"), |date| date.to_string());
    if photo.time.is_empty() { date } else { format!("{date} {}", photo.time) }
}

/// Latitude and longitude to a ten-thousandth of a minute of arc or so.
fn place(photo: &Photo, words: &Words) -> String {
    let Some(Spot { latitude, longitude }) = photo.place else { return words.word("photo-no-place") };
    #[expect(clippy::cast_precision_loss, reason = "180 thousand million fit a float exactly")]
    let degrees = |part: i64| words.number(part as f64 / 1e9, 6);
    format!("{} {}", degrees(latitude), degrees(longitude))
}

/// The devices that were let in, and which of them were shut out again.
pub(crate) fn devices(paired: &[Paired], words: &Words) {
    if paired.is_empty() {
        wrapped(&words.word("devices-none"), 0);
        return;
    }
    let headings = ["column-device-name", "column-device-id", "column-since", "column-withdrawn"];
    let mut table = Table::new(&headings.map(|code| words.word(code)));
    for one in paired {
        let end = one.id.len().saturating_sub(8);
        let id = format!("…{}", &one.id[end..]);
        table.row(vec![
            visible(&one.name).into_owned(),
            id,
            one.since.clone(),
            one.withdrawn.clone().unwrap_or_default(),
        ]);
    }
    table.print();
}

/// Findings below what was done.
pub(crate) fn findings_too(found: &[Finding], words: &Words) {
    findings(found, words);
}

/// Every action: when, who, on what, what it did to how many records, and why.
pub(crate) fn actions(actions: &[Vec<&Revision>], words: &Words) {
    let headings =
        ["column-when", "column-who", "column-device", "column-done", "column-records", "column-why"];
    let mut table = Table::new(&headings.map(|code| words.word(code)));
    for own in actions {
        let Some(first) = own.first() else { continue };
        let signed: Option<Content<serde_json::Value>> = first.content();
        let blank = || words.word("blanked");
        let (author, device, reason) =
            signed.map_or_else(|| (blank(), blank(), String::new()), |by| (by.author, by.device, by.reason));
        let head = first.head();
        let done = format!("{} …{}", done(first, words), head.action.id.short());
        // the import itself is a record too, and not one that a person counts
        let records = own.iter().filter(|revision| revision.head().kind.0 != "import").count();
        table.row(vec![head.time.minute(), author, device, done, records.to_string(), reason]);
    }
    table.print();
}

/// What was done, as a word of the catalogue; what a newer version did, by its own name.
fn done(revision: &Revision, words: &Words) -> String {
    let what = &revision.head().action.what;
    let code = format!("done-{what}");
    if words.has(&code) { words.word(&code) } else { what.clone() }
}

/// What changed between two states of a record, as far as its site's setting lets others know.
fn told(
    before: Option<&Payload>,
    after: Option<&Payload>,
    openness: &dyn Fn(&str) -> Openness,
) -> Vec<Message> {
    let told = |payload: Option<&Payload>| {
        payload.and_then(|payload| payload.told(payload.site().map_or(Openness::Exact, openness)))
    };
    let (was, is) = (told(before), told(after));
    let kept_back = match (before, after) {
        (Some(before), Some(after)) => was == is && before.without_places() != after.without_places(),
        (None, Some(_)) => is.is_none(),
        _ => false,
    };
    if kept_back {
        vec![Message::new("change-kept-back")]
    } else if was.is_none() && after.is_none() {
        changes(before, after)
    } else {
        changes(was.as_ref(), is.as_ref())
    }
}

/// One record through all its revisions, its places as open as each site has them.
pub(crate) fn record_history(own: &[&Revision], openness: &dyn Fn(&str) -> Openness, words: &Words) {
    let payload = |revision: &Revision| Payload::of(revision);
    let called = own.iter().rev().find_map(|revision| Some(payload(revision).ok()?.called()));
    title(&called.map_or_else(|| words.word("record-unread"), |called| words.say(&called)));
    for revision in own {
        let signed: Option<Content<serde_json::Value>> = revision.content();
        println!("  {STRONG}{}{STRONG:#}", words.say(&written_by(revision)));
        let reason = signed.map(|by| by.reason).filter(|reason| !reason.is_empty());
        let done = done(revision, words);
        println!("    {QUIET}{}{QUIET:#}", reason.map_or(done.clone(), |reason| format!("{done}: {reason}")));
        let parents: Vec<&&Revision> =
            own.iter().filter(|other| revision.head().parents.contains(&other.id())).collect();
        match payload(revision) {
            Err(NoPayload::Erased) => wrapped(&words.word("blanked"), 4),
            Err(NoPayload::Newer | NoPayload::NotUnderstood) => wrapped(&words.word("kept-unread"), 4),
            after => {
                if parents.is_empty() {
                    said(&told(None, after.as_ref().ok(), openness), words);
                }
                for parent in &parents {
                    if parents.len() > 1 {
                        let message = Message::new("set-beside").with("revision", parent.id().short());
                        wrapped(&words.say(&message), 4);
                    }
                    let before = payload(parent);
                    said(&told(before.as_ref().ok(), after.as_ref().ok(), openness), words);
                }
            }
        }
    }
}

fn said(changes: &[Message], words: &Words) {
    for change in changes {
        wrapped(&words.say(change), 4);
    }
}

/// What must be settled: the versions, and where they differ, side by side.
pub(crate) fn conflicts(conflicts: &[Conflict], words: &Words) {
    for conflict in conflicts {
        title(&words.say(&conflict.called));
        for version in &conflict.versions {
            let reason: Option<Content<serde_json::Value>> = version.content();
            let reason = reason.map(|by| by.reason).filter(|reason| !reason.is_empty());
            let by = words.say(&written_by(version));
            wrapped(&reason.map_or(by.clone(), |reason| format!("{by}: {reason}")), 2);
        }
        let Some((first, others)) = conflict.versions.split_first() else { continue };
        for other in others {
            println!();
            let column = |version: &Revision| format!("…{}", version.id().short());
            let mut table = Table::new(&[words.word("column-what"), column(first), column(other)]);
            for row in side_by_side(first, other, words) {
                table.row(row);
            }
            table.print();
        }
        println!();
        wrapped(&words.word("settle-how"), 0);
    }
    if conflicts.is_empty() {
        wrapped(&words.word("settle-nothing"), 0);
    }
}

/// Rows of what differs: what it is, and how each version has it.
fn side_by_side(first: &Revision, other: &Revision, words: &Words) -> Vec<Vec<String>> {
    let (a, b) = (Payload::of(first).ok(), Payload::of(other).ok());
    let (yes, no) = (words.word("stands-there"), words.word("change-none"));
    let mut rows = Vec::new();
    for change in changes(a.as_ref(), b.as_ref()) {
        let value = |name: &str| change.values.iter().find(|(own, _)| *own == name).map(|(_, value)| value);
        let text = |name: &str| value(name).map(|value| words.value(value)).unwrap_or_default();
        match (change.code, value("changes")) {
            ("change-field", _) => rows.push(vec![text("field"), text("before"), text("after")]),
            ("change-reading", Some(Value::List(fields))) => {
                for field in fields {
                    let Value::Message(field) = field else { continue };
                    let of = |name: &str| {
                        let own = field.values.iter().find(|(own, _)| *own == name);
                        own.map(|(_, value)| words.value(value)).unwrap_or_default()
                    };
                    rows.push(vec![
                        format!("{}: {}", text("reading"), of("field")),
                        of("before"),
                        of("after"),
                    ]);
                }
            }
            ("change-reading-removed", _) => rows.push(vec![text("reading"), yes.clone(), no.clone()]),
            ("change-reading-added", _) => rows.push(vec![text("reading"), no.clone(), yes.clone()]),
            ("change-taken-back", _) => rows.push(vec![words.word("whole-record"), yes.clone(), no.clone()]),
            ("change-begun" | "change-begun-visit", _) => {
                rows.push(vec![words.word("whole-record"), no.clone(), yes.clone()]);
            }
            _ => rows.push(vec![words.say(&change), String::new(), String::new()]),
        }
    }
    rows
}
