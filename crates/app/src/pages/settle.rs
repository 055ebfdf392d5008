//! What two people wrote unlike: the versions side by side, and one of them made to stand by a person.

use crate::session::Session;
use leptos::html;
use leptos::prelude::*;
use tautline_survey::message::Message;
use tautline_survey::notebook::amend::settle as settled;
use tautline_survey::notebook::changes::changes;
use tautline_survey::notebook::current::{Conflict, written_by};
use tautline_survey::notebook::payload::Payload;
use tautline_survey::revision::Revision;

/// The screen.
pub(crate) fn settle() -> impl IntoView {
    let session = Session::here();
    view! {
        <h1>{session.word("app-settle")}</h1>
        {move || {
            let standing = session.standing();
            if standing.current.conflicts.is_empty() {
                return view! { <p>{session.word("app-settle-nothing")}</p> }.into_any();
            }
            let all = standing.current.conflicts.iter().map(|conflict| one(session, conflict)).collect_view();
            view! { <p>{session.word("app-settle-what")}</p>{all} }.into_any()
        }}
    }
}

fn one(session: Session, conflict: &Conflict) -> impl IntoView + use<> {
    let reason = NodeRef::<html::Input>::new();
    let first = conflict.versions.first().and_then(|version| Payload::of(version).ok());
    let versions = conflict.versions.iter().map(|version| {
        let other = first.as_ref().filter(|_| conflict.versions.first() != Some(version));
        self::version(session, conflict, version, other, reason)
    });
    let versions = versions.collect_view();
    view! {
        <section class="conflict">
            <h2>{session.say(&conflict.called)}</h2>
            <div class="versions">{versions}</div>
            <label>{session.word("app-reason")}<input type="text" node_ref=reason/></label>
        </section>
    }
}

fn version(
    session: Session,
    conflict: &Conflict,
    version: &Revision,
    other: Option<&Payload>,
    reason: NodeRef<html::Input>,
) -> impl IntoView + use<> {
    let own = Payload::of(version).ok();
    let unlike: Vec<Message> = other.map_or_else(Vec::new, |other| changes(Some(other), own.as_ref()));
    let unlike = unlike.iter().map(|message| view! { <li>{session.say(message)}</li> }).collect_view();
    let drafts = settled(conflict, version).ok();
    let keep = move |_| {
        let reason = reason.get().map(|input| input.value()).unwrap_or_default();
        if let Some(drafts) = drafts.clone() {
            session.write("settle", drafts, reason, move |_| session.tell(session.word("app-settled")));
        }
    };
    view! {
        <article class="version">
            <h3>{session.say(&written_by(version))}</h3>
            <ul>{unlike}</ul>
            <button type="button" on:click=keep>{session.word("app-this-stands")}</button>
        </article>
    }
}
