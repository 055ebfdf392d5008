//! How far the line was read, what was noted beside it, and closing it into the notebook.

use super::open::Open;
use super::{photo, stake, twice};
use crate::session::Session;
use crate::standing::Standing;
use leptos::prelude::*;
use tautline_survey::draft::remarks::before_closing;
use tautline_survey::draft::{Entry, Key, LineDraft, NotClosed, Told};
use tautline_survey::message::Message;
use tautline_survey::notebook::hand::Draft;
use tautline_survey::notebook::payload::Payload;
use tautline_survey::visit::Visit;

/// What may be noted beside a line, by the heading that it stands under in the record.
const CONDITIONS: [(&str, &str); 3] =
    [("read-wind", "wind"), ("read-growth-stage", "growth stage"), ("read-remarks", "remarks")];

/// Under which heading it stands that a sheet was typed twice.
const TYPED_TWICE: &str = "typed twice";

/// Whether the visit of a draft stands in the notebook already.
pub(super) fn stands(session: Session, draft: &LineDraft) -> bool {
    let Ok(records) = draft.close(None) else { return false };
    let standing = session.standing_untracked();
    records.iter().filter(|one| matches!(one, Payload::Visit(_))).all(|one| {
        standing.record(&one.key()).is_some_and(|known| {
            let (known, own) = (known.payload.without_places(), one.without_places());
            readings(&known) == readings(&own)
        })
    })
}

fn readings(payload: &Payload) -> Option<&Vec<tautline_survey::visit::Intercept>> {
    if let Payload::Visit(visit) = payload { Some(&visit.intercepts) } else { None }
}

/// What is done seldom: how far the line was read, what was noted beside it, plants that wait for a name.
pub(super) fn more(open: Open) -> impl IntoView {
    let why = RwSignal::new(String::new());
    let press = move |key: Key| {
        move |_| {
            open.press(key.clone());
        }
    };
    let (lengths, has_rows) = open.draft.with_untracked(|draft| {
        let sheet = draft.sheet();
        (sheet.lengths_only, sheet.standing().next().is_some())
    });
    let conditions = CONDITIONS.map(|(word, heading)| condition(open, word, heading));
    let not_read = move |_| {
        open.press(Key::NotRead(why.get_untracked()));
    };
    view! {
        <div class="more">
            <div class="choices">
                <button type="button" disabled=has_rows on:click=press(Key::Nothing)>{open.word("read-nothing")}</button>
                <button type="button" on:click=press(Key::ReadTo)>{open.word("read-partly")}</button>
                <button type="button" on:click=press(Key::Whole)>{open.word("read-whole")}</button>
                <button type="button" aria-pressed=lengths.to_string() disabled=has_rows on:click=press(Key::LengthsOnly(!lengths))>{open.word("read-lengths-only")}</button>
                <button type="button" on:click=press(Key::SamePlant(None))>{open.word("read-same-plant")}</button>
                <button type="button" on:click=press(Key::Leave)>{open.word("read-leave-entry")}</button>
            </div>
            {names(open)}
            {conditions.collect_view()}
            {photos(open)}
            {stake::note(open)}
            {twice::again(open)}
            <label>{open.word("read-why-not")}<input type="text" autocomplete="off" on:input=move |event| why.set(event_target_value(&event))/></label>
            <div class="choices"><button type="button" on:click=not_read>{open.word("read-not-read")}</button></div>
            {discard(open)}
        </div>
    }
}

/// The photos that are kept with this reading.
fn photos(open: Open) -> impl IntoView {
    open.draft.with_untracked(|draft| {
        let setup = draft.setup();
        photo::ways(open.session, &setup.site, &setup.line, &photo::of_draft(setup))
    })
}

/// What is noted beside the line under one heading.
pub(super) fn condition(open: Open, word: &'static str, heading: &'static str) -> impl IntoView {
    let value = open.draft.with_untracked(|draft| {
        let known = draft.sheet().conditions.iter().find(|(name, _)| name == heading);
        known.map_or(String::new(), |(_, value)| value.clone())
    });
    let keep = move |event| {
        open.press(Key::Condition(heading.to_owned(), event_target_value(&event)));
    };
    view! { <label>{open.word(word)}<input type="text" autocomplete="off" value=value on:change=keep/></label> }
}

/// Plants under working names, each with a field for what it turned out to be.
fn names(open: Open) -> impl IntoView {
    let waiting = open.draft.with_untracked(|draft| draft.sheet().new_plants.clone());
    waiting
        .into_iter()
        .map(|(name, _)| {
            let said = open.session.say(&Message::new("read-is-now").with("name", name.as_str()));
            let rename = move |event| {
                let now = event_target_value(&event);
                if !now.trim().is_empty() {
                    open.press(Key::Rename(name.clone(), now));
                }
            };
            view! { <label>{said}<input type="text" autocomplete="off" on:change=rename/></label> }
        })
        .collect_view()
}

/// How far the line was read, where that was said.
pub(super) fn told(open: Open) -> impl IntoView {
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
    view! { <p class="told-of-line">{told}</p> }
}

/// The last look before the stake is pulled, and closing.
pub(super) fn closing(open: Open) -> impl IntoView {
    if twice::first_of(&open.name()).is_some() {
        twice::compare(open).into_any()
    } else {
        closing_with(open, None).into_any()
    }
}

/// The same, with what is to be noted of a second typing.
pub(super) fn closing_with(open: Open, twice: Option<String>) -> impl IntoView {
    match ready(open) {
        Ok(mut ready) => {
            ready.visit.conditions.extend(twice.map(|noted| (TYPED_TWICE.to_owned(), noted)));
            closable(open, &ready).into_any()
        }
        Err(missing) => {
            let leave = move |_| {
                open.press(Key::Leave);
            };
            let under_way = open.draft.with_untracked(|draft| draft.sheet().entry != Entry::default());
            let leave = under_way.then(
                || view! { <button type="button" on:click=leave>{open.word("read-leave-entry")}</button> },
            );
            view! { <p class="wrong" role="alert">{open.session.say(&missing)}</p><div class="choices">{leave}</div> }
                .into_any()
        }
    }
}

fn closable(open: Open, ready: &Ready) -> impl IntoView + use<> {
    let rows = open.draft.with_untracked(|draft| draft.sheet().standing().count());
    let summary = open.session.say(&Message::new("read-close-rows").with("rows", rows));
    let close = move |word: &'static str, as_pass: Option<String>| {
        let ready = ready.clone();
        let write = move |_| {
            let (drafts, visit) = ready.drafts(open, as_pass.clone());
            let closed = move || open.closed.set(Some(visit));
            open.session.write("read", drafts, String::new(), move |_| open.forget(closed));
        };
        view! { <button type="button" class="main" on:click=write>{open.word(word)}</button> }
    };
    let choices = match ready_again(open, ready) {
        None => close("read-close", None).into_any(),
        Some(pass) => {
            let (corrects, another) =
                (close("read-again-corrects", None), close("read-again-another", Some(pass)));
            view! { <p>{open.word("read-again-what")}</p>{corrects}{another} }.into_any()
        }
    };
    view! { <div class="closing"><p><b>{summary}</b></p>{office(open)}<div class="choices close">{choices}</div></div> }
}

/// What the office would say of the whole line, while one still stands on it.
fn office(open: Open) -> Option<impl IntoView> {
    let known = open.known();
    let found = open.draft.with_untracked(|draft| before_closing(draft, known.rules()));
    (!found.is_empty()).then(|| {
        let items = found.into_iter().map(|one| view! { <li>{open.session.say(&one.message)}</li> });
        view! { <p>{open.word("read-before-closing")}</p><ul>{items.collect_view()}</ul> }
    })
}

/// A draft is thrown away in two steps, each said.
fn discard(open: Open) -> impl IntoView {
    let sure = RwSignal::new(false);
    let away = move |_| {
        if sure.get_untracked() {
            open.discard(|| crate::route::go(&crate::route::Route::Read));
        } else {
            sure.set(true);
        }
    };
    let word = move || open.word(if sure.get() { "read-discard-sure" } else { "read-discard" });
    view! { <div class="choices"><button type="button" on:click=away>{word}</button></div> }
}

/// The records of a line that can be closed.
#[derive(Clone)]
struct Ready {
    records: Vec<Payload>,
    visit: Visit,
}

/// The records of the line, or what is missing.
fn ready(open: Open) -> Result<Ready, Message> {
    let known = open.known();
    let records = open.draft.with_untracked(|draft| draft.close(known.planned.as_ref())).map_err(|not| {
        Message::new(match not {
            NotClosed::UnderWay => "read-under-way",
            NotClosed::NothingWritten => "read-nothing-written",
        })
    })?;
    let visit = records.iter().find_map(|one| match one {
        Payload::Visit(visit) => Some(visit.as_ref().clone()),
        _ => None,
    });
    visit.map(|visit| Ready { records, visit }).ok_or_else(|| Message::new("read-nothing-written"))
}

/// The pass that another reading of the same day by the same people would be; none where this is the first.
fn ready_again(open: Open, ready: &Ready) -> Option<String> {
    let standing = open.session.standing_untracked();
    let taken = |pass: &str| {
        let visit = Visit { pass: pass.to_owned(), ..ready.visit.clone() };
        standing.record(&Payload::Visit(Box::new(visit)).key()).is_some()
    };
    let free = || (2..=u32::MAX).map(|pass| pass.to_string()).find(|pass| !taken(pass));
    taken(&ready.visit.pass).then(free).flatten()
}

impl Ready {
    /// What is written: as a pass of its own, or following whatever stands of the same reading.
    fn drafts(&self, open: Open, pass: Option<String>) -> (Vec<Draft>, Visit) {
        let standing = open.session.standing_untracked();
        let visit = Visit { pass: pass.unwrap_or_else(|| self.visit.pass.clone()), ..self.visit.clone() };
        let records = self.records.iter().map(|one| match one {
            Payload::Visit(_) => Payload::Visit(Box::new(visit.clone())),
            other => other.clone(),
        });
        let protocol = open.known().protocol.clone().map(|protocol| Payload::Protocol(Box::new(protocol)));
        let missing = protocol.filter(|protocol| !standing.current.standing.contains_key(&protocol.key()));
        let drafts = missing.into_iter().chain(records).map(|payload| following(&standing, &payload));
        (drafts.collect(), visit)
    }
}

/// A draft of a record: one that stands is followed, not begun again.
pub(super) fn following(standing: &Standing, payload: &Payload) -> Draft {
    let begun = Draft::beginning(payload);
    match standing.record(&payload.key()) {
        Some(known) => Draft {
            record: Some(known.revision.record()),
            parents: known.heads.iter().map(|head| head.revision).collect(),
            ..begun
        },
        None => begun,
    }
}
