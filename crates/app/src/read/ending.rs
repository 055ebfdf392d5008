//! How far the line was read, what was noted beside it, and closing it into the notebook.

use super::open::Open;
use crate::session::Session;
use leptos::prelude::*;
use tautline_survey::draft::remarks::before_closing;
use tautline_survey::draft::{Expects, Key, LineDraft, NotClosed, Told};
use tautline_survey::message::Message;
use tautline_survey::notebook::hand::Draft;
use tautline_survey::notebook::payload::Payload;
use tautline_survey::visit::Visit;

/// What may be noted beside a line, by the heading that it stands under in the record.
const CONDITIONS: [(&str, &str); 4] = [
    ("read-wind", "wind"),
    ("read-growth-stage", "growth stage"),
    ("read-departure", "departure"),
    ("read-remarks", "remarks"),
];

/// Whether the visit of a draft stands in the notebook already.
pub(super) fn stands(session: Session, draft: &LineDraft) -> bool {
    let Ok(records) = draft.close(None) else { return false };
    let standing = session.standing_untracked();
    records.iter().filter(|one| matches!(one, Payload::Visit(_))).all(|one| {
        standing.current.standing.get(&one.key()).is_some_and(|known| {
            let (known, own) = (known.payload.without_places(), one.without_places());
            readings(&known) == readings(&own)
        })
    })
}

fn readings(payload: &Payload) -> Option<&Vec<tautline_survey::visit::Intercept>> {
    if let Payload::Visit(visit) = payload { Some(&visit.intercepts) } else { None }
}

/// The part of the screen below the pad.
pub(super) fn ending(open: Open, closed: impl Fn(Visit) + Copy + 'static) -> impl IntoView {
    let wrong = RwSignal::new(None::<Message>);
    let why = RwSignal::new(String::new());
    let press = move |key: Key| {
        move |_| {
            open.press(key.clone());
        }
    };
    let told = move || {
        open.draft.with(|draft| {
            let message = match &draft.sheet().told {
                Told::Whole => return None,
                Told::Nothing => Message::new("read-told-nothing"),
                Told::To(mark) => Message::new("read-told-to").with("mark", mark.as_str()),
                Told::NotRead(why) => Message::new("read-told-not-read").with("why", why.as_str()),
            };
            Some(open.session.say(&message))
        })
    };
    let lengths = move || open.draft.with(|draft| draft.sheet().lengths_only);
    let turn_lengths = move |_| {
        open.press(Key::LengthsOnly(!lengths()));
    };
    let has_rows = move || open.draft.with(|draft| draft.sheet().standing().next().is_some());
    let conditions = CONDITIONS.map(|(word, heading)| {
        let value = open.draft.with_untracked(|draft| {
            let known = draft.sheet().conditions.iter().find(|(name, _)| name == heading);
            known.map_or(String::new(), |(_, value)| value.clone())
        });
        let keep = move |event| {
            open.press(Key::Condition(heading.to_owned(), event_target_value(&event)));
        };
        view! { <label>{open.word(word)}<input type="text" autocomplete="off" value=value on:change=keep/></label> }
    });
    let end = move |_| match close(open) {
        Ok((drafts, visit)) => write(open, drafts, visit, closed),
        Err(not) => wrong.set(Some(not)),
    };
    let not_read = move |_| {
        open.press(Key::NotRead(why.get_untracked()));
    };
    view! {
        <details class="ending">
            <summary>{open.word("read-more")}</summary>
            <div class="choices">
                <button type="button" disabled=has_rows on:click=press(Key::Nothing)>{open.word("read-nothing")}</button>
                <button type="button" on:click=press(Key::ReadTo)>{open.word("read-partly")}</button>
                <button type="button" on:click=press(Key::Whole)>{open.word("read-whole")}</button>
                <button type="button" aria-pressed=move || lengths().to_string() disabled=has_rows on:click=turn_lengths>{open.word("read-lengths-only")}</button>
                <button type="button" on:click=press(Key::SamePlant(None))>{open.word("read-same-plant")}</button>
                <button type="button" on:click=press(Key::Leave)>{open.word("read-leave-entry")}</button>
            </div>
            <label>{open.word("read-why-not")}<input type="text" on:input=move |event| why.set(event_target_value(&event))/></label>
            <div class="choices"><button type="button" on:click=not_read>{open.word("read-not-read")}</button></div>
            {conditions.collect_view()}
            {discard(open)}
        </details>
        <p class="told-of-line">{told}</p>
        {move || office(open)}
        <p class="wrong" role="alert">{move || wrong.get().map(|wrong| open.session.say(&wrong))}</p>
        <div class="choices close"><button type="button" class="main" on:click=end>{open.word("read-close")}</button></div>
    }
}

/// What the office would say of the whole line, while one still stands on it. Said between intercepts only.
fn office(open: Open) -> Option<impl IntoView> {
    let known = open.known();
    let found = open.draft.with(|draft| {
        let quiet = draft.sheet().entry.expects != Expects::Species || draft.sheet().rows.is_empty();
        if quiet { Vec::new() } else { before_closing(draft, known.rules()) }
    });
    (!found.is_empty()).then(|| {
        let items = found.into_iter().map(|one| view! { <li>{open.session.say(&one.message)}</li> });
        view! { <details class="office"><summary>{open.word("read-before-closing")}</summary><ul>{items.collect_view()}</ul></details> }
    })
}

/// A draft is thrown away in two steps, each said.
fn discard(open: Open) -> impl IntoView {
    let sure = RwSignal::new(false);
    let away = move |_| {
        if sure.get_untracked() {
            open.forget(|| crate::route::go(&crate::route::Route::Read));
        } else {
            sure.set(true);
        }
    };
    let word = move || open.word(if sure.get() { "read-discard-sure" } else { "read-discard" });
    view! { <div class="choices"><button type="button" on:click=away>{word}</button></div> }
}

/// The records of the line, ready to be written, or what is missing.
fn close(open: Open) -> Result<(Vec<Draft>, Visit), Message> {
    let known = open.known();
    let standing = open.session.standing_untracked();
    let records = open.draft.with_untracked(|draft| draft.close(known.planned.as_ref())).map_err(|not| {
        Message::new(match not {
            NotClosed::UnderWay => "read-under-way",
            NotClosed::NothingWritten => "read-nothing-written",
        })
    })?;
    let protocol = known.protocol.clone().map(|protocol| Payload::Protocol(Box::new(protocol)));
    let missing = protocol.filter(|protocol| !standing.current.standing.contains_key(&protocol.key()));
    let visit = records.iter().find_map(|one| match one {
        Payload::Visit(visit) => Some(visit.as_ref().clone()),
        _ => None,
    });
    let drafts = missing.into_iter().chain(records).map(|payload| {
        let begun = Draft::beginning(&payload);
        match standing.current.standing.get(&payload.key()) {
            // a record that stands is followed, not begun again
            Some(known) => Draft {
                record: Some(known.revision.record()),
                parents: known.heads.iter().map(|head| head.revision).collect(),
                ..begun
            },
            None => begun,
        }
    });
    visit.map(|visit| (drafts.collect(), visit)).ok_or_else(|| Message::new("read-nothing-written"))
}

fn write(open: Open, drafts: Vec<Draft>, visit: Visit, closed: impl Fn(Visit) + Copy + 'static) {
    open.session.write("read", drafts, String::new(), move |_| {
        open.forget(move || closed(visit));
    });
}
