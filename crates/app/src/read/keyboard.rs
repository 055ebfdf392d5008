//! What a keyboard does on this screen: typed as the sheet reads, never a need for the mouse.

use super::open::Open;
use leptos::ev;
use leptos::prelude::*;
use tautline_survey::draft::desk::{Stroke, meaning};
use tautline_survey::draft::search::{recent, search};
use wasm_bindgen::JsCast as _;
use web_sys::{Element, KeyboardEvent};

/// Listens as long as the screen is shown.
pub(super) fn listen(open: Open) {
    let handle = window_event_listener(ev::keydown, move |event: KeyboardEvent| {
        if pressed(open, &event) {
            event.prevent_default();
        }
    });
    on_cleanup(move || handle.remove());
}

/// Whether the stroke was one for the sheet.
fn pressed(open: Open, event: &KeyboardEvent) -> bool {
    let place =
        event.target().and_then(|target| target.dyn_into::<Element>().ok()).map(|place| place.tag_name());
    let place = place.as_deref().unwrap_or_default();
    if event.alt_key() || matches!(place, "INPUT" | "TEXTAREA" | "SELECT") {
        return false;
    }
    let key = event.key();
    if event.ctrl_key() || event.meta_key() {
        match key.as_str() {
            "z" => open.undo(),
            "y" => open.redo(),
            _ => return false,
        }
        return true;
    }
    // what has the focus is pressed by its own keys
    if matches!(place, "BUTTON" | "A" | "SUMMARY") && matches!(key.as_str(), "Enter" | " ") {
        return false;
    }
    let mut letters = key.chars();
    let stroke = match (key.as_str(), letters.next(), letters.next()) {
        ("Enter", ..) => Stroke::Enter,
        ("Backspace", ..) => Stroke::Backspace,
        ("Escape", ..) => Stroke::Escape,
        (_, Some(letter), None) => Stroke::Character(letter),
        _ => return false,
    };
    let known = open.known();
    let key = open.draft.with_untracked(|draft| {
        let lately = recent(draft.sheet(), &known.earlier);
        let found = search(&draft.sheet().entry.letters, &known.plants, &lately);
        meaning(draft, stroke, found.first().map(|plant| plant.code.as_str()))
    });
    key.is_some_and(|key| open.press(key))
}
