//! One record through all its revisions: what each changed, and each of them restored by a touch.

use super::{called, what_words};
use crate::route::Route;
use crate::session::Session;
use leptos::prelude::*;
use serde::de::IgnoredAny;
use tautline_survey::message::Message;
use tautline_survey::notebook::amend::restore;
use tautline_survey::notebook::changes::changes;
use tautline_survey::notebook::current::written_by;
use tautline_survey::notebook::hand::Draft;
use tautline_survey::notebook::payload::{NoPayload, Payload};
use tautline_survey::record::{Records, history};
use tautline_survey::revision::{Content, RecordId, Revision};

/// One state of the record.
struct State {
    by: Message,
    what: String,
    reason: String,
    changes: Vec<Message>,
    /// What makes it stand again; none where it stands, was blanked, or unlike versions wait to be settled.
    again: Option<Draft>,
}

/// The screen.
pub(super) fn record(record: RecordId) -> impl IntoView {
    let session = Session::here();
    let found = RwSignal::new_local(None::<(Option<Message>, Vec<State>)>);
    Effect::new(move || {
        session.standing();
        session.with_device(
            async move |device| {
                let records = device.memory().records();
                (called(records, record), states(records, record))
            },
            move |states| {
                // a person may have left the screen by then
                found.try_set(Some(states));
            },
        );
    });
    let shown = move || {
        found.with(|found| {
            let Some((called, states)) = found else {
                return view! { <p class="quiet">{session.word("app-reading")}</p> }.into_any();
            };
            let title =
                called.as_ref().map_or_else(|| session.word("record-unread"), |called| session.say(called));
            let items = states.iter().map(|state| item(session, state)).collect_view();
            view! { <h1>{title}</h1><ol class="history">{items}</ol> }.into_any()
        })
    };
    view! {
        {shown}
        <p><a class="button" href=Route::History(None).address()>{session.word("app-history")}</a></p>
    }
}

/// The states of a record, the newest first.
fn states(records: &Records, record: RecordId) -> Vec<State> {
    let own = records.of(record);
    let mut states: Vec<State> = history(&own).into_iter().map(|revision| state(&own, revision)).collect();
    states.reverse();
    states
}

fn state(own: &[&Revision], revision: &Revision) -> State {
    let before = own.iter().find(|other| revision.head().parents.contains(&other.id()));
    let before = before.and_then(|before| Payload::of(before).ok());
    let changes = match Payload::of(revision) {
        Err(NoPayload::Erased) => vec![Message::new("blanked")],
        Err(NoPayload::Newer | NoPayload::NotUnderstood) => vec![Message::new("kept-unread")],
        after => changes(before.as_ref(), after.as_ref().ok()),
    };
    let content: Option<Content<IgnoredAny>> = revision.content();
    State {
        by: written_by(revision),
        what: revision.head().action.what.clone(),
        reason: content.map(|content| content.reason).unwrap_or_default(),
        changes,
        again: restore(own, revision).ok(),
    }
}

fn item(session: Session, state: &State) -> impl IntoView + use<> {
    let by = session.say(&state.by);
    let changes = state.changes.iter().map(|change| view! { <li>{session.say(change)}</li> }).collect_view();
    let reason = (!state.reason.is_empty()).then(|| view! { <p>{state.reason.clone()}</p> });
    let again = state.again.clone().map(|draft| {
        let label = session.say(&Message::new("desk-restore-of").with("version", by.as_str()));
        let said = session.say(&Message::new("restored").with("version", by.as_str()));
        let click = move |_| {
            let said = said.clone();
            session.write("restore", vec![draft.clone()], String::new(), move |_| session.tell(said));
        };
        view! { <button type="button" aria-label=label on:click=click>{session.word("desk-restore")}</button> }
    });
    view! {
        <li>
            <h2>{what_words(session, &state.what)}</h2>
            <p class="quiet">{by}</p>
            {reason}<ul>{changes}</ul>{again}
        </li>
    }
}
