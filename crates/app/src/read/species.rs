//! Species: those read lately as keys, all others by a few letters, plants that nobody can name yet.

use super::open::Open;
use leptos::prelude::*;
use tautline_survey::draft::Key;
use tautline_survey::draft::search::{recent, search};

/// So many keys stand ready: three rows on a phone would take the numbers' room.
const READY: usize = 6;
/// So many plants are shown as found.
const FOUND: usize = 12;

/// The keys.
pub(super) fn species(open: Open) -> impl IntoView {
    let letters = RwSignal::new(String::new());
    let searching = RwSignal::new(false);
    let choose = move |code: String| {
        open.press(Key::Species(code));
        letters.set(String::new());
        searching.set(false);
    };
    let ready = move || {
        let known = open.known();
        let (lately, chosen) = open
            .draft
            .with(|draft| (recent(draft.sheet(), &known.earlier), draft.sheet().entry.species.clone()));
        let listed = known.plants.plants.iter().map(|plant| plant.code.clone());
        // before anything was read, the list itself stands in
        let more: Vec<String> = listed.filter(|code| !lately.contains(code)).collect();
        let codes = lately.into_iter().chain(more).take(READY);
        codes
            .map(|code| {
                let pressed = (code == chosen).to_string();
                let key = code.clone();
                view! { <button type="button" aria-pressed=pressed on:mousedown=stay on:click=move |_| choose(key.clone())>{code}</button> }
            })
            .collect_view()
    };
    let typed = move || {
        let own = letters.get();
        if own.is_empty() { open.draft.with(|draft| draft.sheet().entry.letters.clone()) } else { own }
    };
    let found = move || {
        let wanted = typed();
        if wanted.trim().is_empty() {
            return None;
        }
        let known = open.known();
        let lately = open.draft.with(|draft| recent(draft.sheet(), &known.earlier));
        let plants = search(&wanted, &known.plants, &lately);
        let keys = plants.into_iter().take(FOUND).map(|plant| {
            let (code, key) = (plant.code.clone(), plant.code.clone());
            let name = if plant.common.is_empty() { plant.name.clone() } else { plant.common.clone() };
            view! { <button type="button" on:mousedown=stay on:click=move |_| choose(key.clone())><b>{code}</b><span class="quiet">{name}</span></button> }
        });
        let new = wanted.trim().to_owned();
        let said = open
            .session
            .say(&tautline_survey::message::Message::new("read-new-plant").with("name", new.as_str()));
        let keep_new = move |_| {
            open.press(Key::NewPlant(new.clone(), None));
            letters.set(String::new());
            searching.set(false);
        };
        Some(
            view! { <div class="chips found">{keys.collect_view()}<button type="button" on:click=keep_new>{said}</button></div> },
        )
    };
    let field = move || {
        searching.get().then(|| {
            view! {
                <label>{open.word("read-find-species")}
                    <input type="search" autocomplete="off" autofocus on:input=move |event| letters.set(event_target_value(&event))/>
                </label>
            }
        })
    };
    view! {
        <div class="species" role="group" aria-label=open.word("read-species")>
            <div class="chips">{ready}
                <button type="button" aria-expanded=move || searching.get().to_string() on:click=move |_| searching.update(|now| *now = !*now)>{open.word("read-other-species")}</button>
            </div>
            {field}{found}
        </div>
    }
}

/// A key of the pad never takes the focus, so that a keyboard goes on where it was.
pub(super) fn stay(event: web_sys::MouseEvent) {
    event.prevent_default();
}
