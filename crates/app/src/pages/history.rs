//! The history of the notebook: who did what, when and why; each of it can be taken back, and of each record any earlier
//! state restored, always by a further revision.
//!
//! | what | module |
//! | --- | --- |
//! | what was done, the newest first | here |
//! | one record through all its revisions | [`record`] |

mod record;

use crate::route::Route;
use crate::session::Session;
use leptos::prelude::*;
use serde::de::IgnoredAny;
use std::collections::BTreeMap;
use tautline_survey::message::Message;
use tautline_survey::notebook::amend::{take_back, undo};
use tautline_survey::notebook::payload::Payload;
use tautline_survey::record::Records;
use tautline_survey::revision::{ActionId, Content, RecordId, Revision};

/// So many actions are shown at once.
const MOST: usize = 40;

/// So many records of an action are named; its others are counted.
const NAMED: usize = 6;

/// What was done at once.
struct Done {
    action: ActionId,
    what: String,
    time: String,
    /// Author and reason; none where they were blanked.
    signed: Option<(String, String)>,
    named: Vec<(RecordId, Option<Message>)>,
    more: usize,
    /// Something of it can be taken back.
    open: bool,
}

/// The screen: everything that was done, or one record.
pub(crate) fn history(record: Option<RecordId>) -> AnyView {
    match record {
        Some(record) => record::record(record).into_any(),
        None => actions().into_any(),
    }
}

fn actions() -> impl IntoView {
    let session = Session::here();
    let most = RwSignal::new(MOST);
    let found = RwSignal::new_local(None::<(Vec<Done>, usize)>);
    // whenever something else stands, something was done
    Effect::new(move || {
        session.standing();
        let most = most.get();
        session.with_device(
            async move |device| done(device.memory().records(), most),
            move |done| {
                // a person may have left the screen by then
                found.try_set(Some(done));
            },
        );
    });
    let list = move || {
        found.with(|found| {
            let Some((done, more)) = found else {
                return view! { <p class="quiet">{session.word("app-reading")}</p> }.into_any();
            };
            if done.is_empty() {
                return view! { <p>{session.word("desk-history-empty")}</p> }.into_any();
            }
            let items = done.iter().map(|one| item(session, one)).collect_view();
            let (more, shown) = (*more, done.len());
            let further = (more > 0).then(|| {
                let said = session.say(&Message::new("desk-history-more").with("more", more));
                view! { <button type="button" on:click=move |_| most.set(shown + MOST)>{said}</button> }
            });
            view! { <ol class="history">{items}</ol>{further} }.into_any()
        })
    };
    view! {
        <h1>{session.word("app-history")}</h1>
        <p>{session.word("desk-history-what")}</p>
        {list}
    }
}

/// What was done, the newest first, and how much more there is.
fn done(records: &Records, most: usize) -> (Vec<Done>, usize) {
    let mut by_action: BTreeMap<ActionId, Vec<&Revision>> = BTreeMap::new();
    for revision in records.revisions() {
        by_action.entry(revision.head().action.id).or_default().push(revision);
    }
    let mut actions: Vec<Vec<&Revision>> = by_action.into_values().collect();
    actions.sort_by_key(|own| {
        own.iter().map(|one| core::cmp::Reverse((one.head().counter, one.head().device, one.id()))).min()
    });
    let more = actions.len().saturating_sub(most);
    (actions.iter().take(most).filter_map(|own| one_done(records, own)).collect(), more)
}

fn one_done(records: &Records, own: &[&Revision]) -> Option<Done> {
    let first = own.first()?;
    let action = first.head().action.clone();
    let signed: Option<Content<IgnoredAny>> = first.content();
    let is_record = |one: &&&Revision| one.head().kind.0 != "import";
    let named = own.iter().filter(is_record).take(NAMED);
    Some(Done {
        what: action.what,
        time: first.head().time.minute(),
        signed: signed.map(|by| (by.author, by.reason)),
        named: named.map(|one| (one.record(), called(records, one.record()))).collect(),
        more: own.iter().filter(is_record).count().saturating_sub(NAMED),
        open: own.iter().any(|one| undo(&records.of(one.record()), action.id).is_some()),
        action: action.id,
    })
}

/// How a person would call a record, by the last of its revisions that says so.
fn called(records: &Records, record: RecordId) -> Option<Message> {
    let own = records.of(record);
    let ordered = tautline_survey::record::history(&own);
    ordered.iter().rev().find_map(|revision| Some(Payload::of(revision).ok()?.called()))
}

fn item(session: Session, done: &Done) -> impl IntoView + use<> {
    let words = session.words();
    let what = what_words(session, &done.what);
    let who = done.signed.as_ref().map_or_else(|| words.word("blanked"), |(author, _)| author.clone());
    let reason = done.signed.as_ref().map(|(_, reason)| reason.clone()).filter(|reason| !reason.is_empty());
    let named = done.named.iter().map(|(record, called)| {
        let said = called.as_ref().map_or_else(|| words.word("record-unread"), |called| words.say(called));
        let address = Route::History(Some(*record)).address();
        view! { <li><a href=address>{said}</a></li> }
    });
    let named = named.collect_view();
    let more = (done.more > 0).then(|| {
        view! { <li class="quiet">{words.say(&Message::new("desk-history-records").with("more", done.more))}</li> }
    });
    let action = done.action;
    let back = done.open.then(|| {
        let label = words.say(&Message::new("desk-take-back-of").with("what", what.as_str()).with("time", done.time.as_str()));
        view! { <button type="button" aria-label=label on:click=move |_| back(session, action)>{words.word("desk-take-back")}</button> }
    });
    view! {
        <li>
            <h2>{what.clone()}</h2>
            <p class="quiet">{done.time.clone()}" "{who}</p>
            {reason.map(|reason| view! { <p>{reason}</p> })}
            <ul>{named}{more}</ul>
            {back}
        </li>
    }
}

/// What was done, as a word; what a newer version did, by its own name.
fn what_words(session: Session, what: &str) -> String {
    let code = format!("done-{what}");
    if session.words().has(&code) { session.word(&code) } else { what.to_owned() }
}

/// Takes an action back: each of its records stands as before, by a further revision, which can be taken back in turn.
fn back(session: Session, action: ActionId) {
    session.with_device(
        async move |device| take_back(device.memory().records(), action),
        move |taken| {
            if taken.drafts.is_empty() {
                return session.tell(session.word("undone-nothing"));
            }
            let said = Message::new("desk-taken-back").with("records", taken.records);
            let left = (taken.left > 0).then(|| Message::new("undone-left").with("records", taken.left));
            session.write("undo", taken.drafts, String::new(), move |_| {
                let mut all = session.say(&said);
                if let Some(left) = left {
                    all = format!("{all} {}", session.say(&left));
                }
                session.tell(all);
            });
        },
    );
}
