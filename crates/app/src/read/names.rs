//! Plants of the notebook that were read under a working name, each with a field for what it turned out to be.

use super::ending::following;
use crate::session::Session;
use leptos::prelude::*;
use tautline_survey::message::Message;
use tautline_survey::naming::{renamed, unnamed};
use tautline_survey::notebook::payload::Payload;

/// The list; nothing where every plant has its name.
pub(super) fn names(session: Session) -> Option<impl IntoView + use<>> {
    let standing = session.standing();
    let waiting = unnamed(&standing.input);
    if waiting.is_empty() {
        return None;
    }
    let summary = session.say(&Message::new("read-unnamed").with("plants", waiting.len()));
    let plants = standing.input.plants.plants.iter();
    let codes =
        plants.map(|plant| view! { <option value=plant.code.clone()>{plant.common.clone()}</option> });
    let codes = codes.collect_view();
    let fields = waiting.into_iter().map(|(name, rows)| {
        let said = session
            .say(&Message::new("read-unnamed-is").with("name", name.as_str()).with("rows", rows));
        let give = move |event| rename(session, &name, event_target_value(&event).trim());
        view! { <label>{said}<input type="text" autocomplete="off" list="read-codes" on:change=give/></label> }
    });
    let fields = fields.collect_view();
    Some(view! {
        <details class="waiting"><summary>{summary}</summary>
            <datalist id="read-codes">{codes}</datalist>{fields}
        </details>
    })
}

/// Every visit with a row of that name follows itself under the new one: one action, which the history shows.
fn rename(session: Session, was: &str, now: &str) {
    if now.is_empty() {
        return;
    }
    let standing = session.standing_untracked();
    let visits = standing.current.standing.values().filter_map(|one| match &one.payload {
        Payload::Visit(visit) => renamed(visit, was, now),
        _ => None,
    });
    let drafts: Vec<_> = visits.map(|visit| following(&standing, &Payload::Visit(Box::new(visit)))).collect();
    let reason = session.say(&Message::new("read-named").with("name", was).with("species", now));
    session.write("read", drafts, reason.clone(), move |_| session.tell(reason));
}
