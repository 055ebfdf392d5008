//! The screen of one line: the tape, the rows, what is expected next, species and numbers.

use super::open::{Open, Panel};
use super::species::stay;
use super::{after, ending, keyboard, pad, rows, rules, species, tape};
use crate::device::drafts::Drafts;
use crate::route::Route;
use crate::session::Session;
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::rc::Rc;
use tautline_survey::draft::{Expects, Figure};
use tautline_survey::message::Message;
use tautline_survey::visit::State;

/// What the screen shows.
#[derive(Clone, Copy)]
enum Shown {
    /// The disk is asked.
    Opening,
    /// No draft has this name.
    Unknown,
    /// Somebody reads this line again without sight of this draft.
    Waits,
    /// The line is being read, or has been closed.
    Open(StoredValue<Open, LocalStorage>),
}

/// The screen.
pub(crate) fn line(name: String) -> impl IntoView {
    let session = Session::here();
    let shown = RwSignal::new_local(Shown::Opening);
    // what a line is read by stands in the notebook, so that is read first
    Effect::new(move || {
        if session.is_read.get() && matches!(shown.get_untracked(), Shown::Opening) {
            let name = name.clone();
            spawn_local(async move { shown.set(opened(session, name).await) });
        }
    });
    move || {
        match shown.get() {
        Shown::Opening => ().into_any(),
        Shown::Unknown => {
            view! { <h1>{session.word("read-lines")}</h1><p>{session.word("read-unknown")}</p>{back(session)} }.into_any()
        }
        Shown::Waits => {
            view! { <h1>{session.word("read-lines")}</h1><p>{session.word("field-blind-waits")}</p>{back(session)} }.into_any()
        }
        Shown::Open(open) => {
            let open = open.get_value();
            let view = move || match open.closed.get() {
                None => reading(open).into_any(),
                Some(visit) => after::after(open, &visit).into_any(),
            };
            view.into_any()
        }
    }
    }
}

async fn opened(session: Session, name: String) -> Shown {
    let Ok(drafts) = Drafts::open().await else { return Shown::Unknown };
    match drafts.draft(&name).await {
        Some(draft) if super::waits(&session.standing_untracked(), draft.setup()) => Shown::Waits,
        Some(draft) => Shown::Open(StoredValue::new_local(Open::new(session, Rc::new(drafts), name, draft))),
        None => Shown::Unknown,
    }
}

fn back(session: Session) -> impl IntoView {
    view! { <p class="choices"><a class="button" href=Route::Read.address()>{session.word("read-lines")}</a></p> }
}

fn reading(open: Open) -> impl IntoView {
    let session = open.session;
    keyboard::listen(open);
    let setup = open.draft.with_untracked(|draft| draft.setup().clone());
    let heading = session.say(
        &Message::new("read-heading").with("site", setup.site.as_str()).with("line", setup.line.as_str()),
    );
    let turn = move |word: &'static str, panel: Panel| {
        let is_shown = move || (open.panel.get() == panel).to_string();
        view! { <button type="button" aria-expanded=is_shown on:mousedown=stay on:click=move |_| open.turn(panel)>{open.word(word)}</button> }
    };
    let panel = move || match open.panel.get() {
        Panel::Keys => view! { {species::species(open)}{pad::pad(open)} }.into_any(),
        Panel::Find => species::find(open).into_any(),
        Panel::Rules => rules::rules(open).into_any(),
        Panel::Row(id) => rows::menu(open, id).into_any(),
        Panel::More => ending::more(open).into_any(),
        Panel::Close => ending::closing(open).into_any(),
    };
    let foot = move || {
        if open.panel.get() == Panel::Keys {
            view! { {turn("read-more", Panel::More)}{turn("read-close-look", Panel::Close)} }.into_any()
        } else {
            view! { <button type="button" on:click=move |_| open.panel.set(Panel::Keys)>{open.word("read-keys")}</button> }
                .into_any()
        }
    };
    view! {
        <div class="reading">
            <div class="above">
                <p class="where">
                    <a href=Route::Read.address() class="button">{open.word("read-back")}</a>
                    <span class="name-of-line">{heading.clone()}{kept(open)}</span>
                    {turn("read-rules", Panel::Rules)}
                </p>
                <h1 class="unseen">{heading}</h1>
                {tape::tape(open)}
            </div>
            {rows::rows(open)}
            {ending::told(open)}
            {expected(open)}
            <div class="below">{panel}</div>
            <div class="foot">{foot}</div>
            <p class="unseen" role="status" aria-live="polite">{open.heard}</p>
        </div>
    }
}

/// Whether everything is on the disk: said only once it is.
fn kept(open: Open) -> impl IntoView {
    let word = move || open.word(if open.is_kept() { "read-kept" } else { "read-keeping" });
    view! { <span class="kept" class:waiting=move || !open.is_kept()>{word}</span> }
}

/// What is expected next, and the number so far, large enough for full sun.
fn expected(open: Open) -> impl IntoView {
    let said = move || {
        open.draft.with(|draft| {
            let entry = &draft.sheet().entry;
            let row = |id: u32| draft.sheet().row(id).map(rows::as_text).unwrap_or_default();
            let message = match entry.expects {
                Expects::Species => Message::new("read-expects-species"),
                Expects::Start => Message::new("read-expects-start").with("species", entry.species.as_str()),
                Expects::Stop => Message::new("read-expects-stop")
                    .with("species", entry.species.as_str())
                    .with("start", entry.start.as_str()),
                Expects::Length => {
                    Message::new("read-expects-length").with("species", entry.species.as_str())
                }
                Expects::Correction(id, figure) => Message::new(figure_word(figure)).with("row", row(id)),
                Expects::SplitStop(id) => Message::new("read-expects-split-stop").with("row", row(id)),
                Expects::SplitStart(id) => Message::new("read-expects-split-start").with("row", row(id)),
                Expects::ReadTo => Message::new("read-expects-read-to"),
            };
            open.session.say(&message)
        })
    };
    let number =
        move || open.draft.with(|draft| draft.sheet().entry.text.clone() + &draft.sheet().entry.letters);
    let dead = move || open.draft.with(|draft| draft.sheet().entry.state == State::Dead);
    view! {
        <p class="expected"><span class="what">{said}{move || dead().then(|| format!(" ({})", open.word("read-dead")))}</span>
            <output class="number">{number}</output>
        </p>
    }
}

const fn figure_word(figure: Figure) -> &'static str {
    match figure {
        Figure::Start => "read-expects-correct-start",
        Figure::Stop => "read-expects-correct-stop",
        Figure::Length => "read-expects-correct-length",
        Figure::Height => "read-expects-height",
        Figure::Width => "read-expects-width",
    }
}
