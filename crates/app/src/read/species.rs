//! Species: those read lately as keys, all others by a few letters, plants that nobody can name yet.

use super::open::{Open, Panel};
use leptos::html;
use leptos::prelude::*;
use tautline_survey::draft::Key;
use tautline_survey::draft::search::{recent, search};
use tautline_survey::message::Message;
use tautline_survey::plants::Plant;

/// So many keys stand ready: three rows of them on a phone would take the numbers' room.
const READY: usize = 6;
/// So many plants are shown as found.
const FOUND: usize = 12;

/// The keys.
pub(super) fn species(open: Open) -> impl IntoView {
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
                view! { <button type="button" aria-pressed=pressed on:mousedown=stay on:click=move |_| { open.press(Key::Species(key.clone())); }>{code}</button> }
            })
            .collect_view()
    };
    // at a keyboard letters are typed without a field
    let typed = move || open.draft.with(|draft| draft.sheet().entry.letters.clone());
    view! {
        <div class="species" role="group" aria-label=open.word("read-species")>
            <div class="ready">{ready}
                <button type="button" on:click=move |_| open.turn(Panel::Find)>{open.word("read-other-species")}</button>
                <button type="button" on:mousedown=stay on:click=move |_| new_plant(open)>{open.word("read-new-plant")}</button>
            </div>
            {move || found(open, &typed())}
        </div>
    }
}

/// A plant by a few letters of its code or names.
pub(super) fn find(open: Open) -> impl IntoView {
    let letters = RwSignal::new(String::new());
    let field = NodeRef::<html::Input>::new();
    field.on_load(|field| {
        // a field that can't have the focus is touched instead
        let _ = field.focus();
    });
    let first = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        let code = plants(open, &letters.get_untracked()).into_iter().next().map(|plant| plant.code);
        let typed = letters.get_untracked();
        if !typed.trim().is_empty() {
            open.press(Key::Species(code.unwrap_or(typed)));
        }
    };
    let kept_as_typed = move || {
        let typed = letters.get();
        let name = typed.trim().to_owned();
        (!name.is_empty()).then(|| {
            let said = open.session.say(&Message::new("read-keep-name").with("name", name.as_str()));
            view! { <button type="button" on:click=move |_| { open.press(Key::NewPlant(name.clone(), None)); }>{said}</button> }
        })
    };
    view! {
        <form class="find" on:submit=first>
            <label>{open.word("read-find-species")}
                <input type="search" autocomplete="off" autocapitalize="off" node_ref=field on:input=move |event| letters.set(event_target_value(&event))/>
            </label>
            {move || found(open, &letters.get())}
            <div class="choices">{kept_as_typed}</div>
        </form>
    }
}

/// The plants that letters find, those read lately first.
fn plants(open: Open, letters: &str) -> Vec<Plant> {
    let known = open.known();
    let lately = open.draft.with_untracked(|draft| recent(draft.sheet(), &known.earlier));
    search(letters, &known.plants, &lately).into_iter().take(FOUND).cloned().collect()
}

fn found(open: Open, letters: &str) -> Option<impl IntoView + use<>> {
    let found = plants(open, letters);
    (!found.is_empty()).then(|| {
        let keys = found.into_iter().map(|plant| {
            let key = plant.code.clone();
            let name = if plant.common.is_empty() { plant.name } else { plant.common };
            view! { <button type="button" on:mousedown=stay on:click=move |_| { open.press(Key::Species(key.clone())); }><b>{plant.code}</b><span class="quiet">{name}</span></button> }
        });
        view! { <div class="chips found">{keys.collect_view()}</div> }
    })
}

/// A plant that nobody can name here goes under the next working name; it is named later.
fn new_plant(open: Open) {
    let known = open.draft.with_untracked(|draft| draft.sheet().new_plants.clone());
    let name = |number: usize| open.session.say(&Message::new("read-working-name").with("number", number));
    // names that were taken are passed over: one more than there are is always free
    let free = (1..=known.len() + 1).map(name).find(|name| known.iter().all(|(taken, _)| taken != name));
    if let Some(name) = free {
        open.press(Key::NewPlant(name, None));
    }
}

/// A key of the pad never takes the focus, so that a keyboard goes on where it was.
#[expect(clippy::needless_pass_by_value, reason = "a listener is handed its event")]
pub(super) fn stay(event: web_sys::MouseEvent) {
    event.prevent_default();
}
