//! The pad: numbers for one thumb, fractions as the tape has them, undo of anything.

use super::open::Open;
use super::species::stay;
use leptos::prelude::*;
use tautline_engine::length::Bare;
use tautline_survey::draft::{Expects, Key};

/// The pad.
pub(super) fn pad(open: Open) -> impl IntoView {
    let setup = open.draft.with_untracked(|draft| draft.setup().clone());
    let key = move |label: String, class: &'static str, key: Key| {
        view! { <button type="button" class=class on:mousedown=stay on:click=move |_| { open.press(key.clone()); }>{label}</button> }
    };
    let digit = move |digit: u8| key(digit.to_string(), "digit", Key::Digit(digit));
    let named =
        move |word: &'static str, class: &'static str, pressed: Key| key(open.word(word), class, pressed);
    let fractions = setup.fractions().iter().map(|&(parts, of)| {
        let shown = format!("{parts}/{of}");
        view! { <button type="button" class="fraction" on:mousedown=stay on:click=move |_| { open.press(Key::Fraction(parts, of)); }>{shown}</button> }
    });
    let fractions = fractions.collect_view();
    let sign = if setup.comma { "," } else { "." };
    // feet and inches are parted by a dash; a decimal mark means something everywhere else but under plain feet
    let mark = if setup.unit == Bare::FeetAndInches {
        key(open.word("read-feet"), "digit sign", Key::FeetAndInches).into_any()
    } else if setup.has_decimals() {
        key(sign.to_owned(), "digit sign", Key::Mark).into_any()
    } else {
        view! { <span></span> }.into_any()
    };
    let done = move || {
        let expects = open.draft.with(|draft| draft.sheet().entry.expects);
        open.word(match expects {
            Expects::Species | Expects::Start => "read-start-done",
            Expects::Stop => "read-stop-done",
            _ => "read-done",
        })
    };
    let can_undo = move || open.draft.with(|draft| draft.can_undo_and_redo().0);
    let can_redo = move || open.draft.with(|draft| draft.can_undo_and_redo().1);
    let nothing_typed = move || open.draft.with(|draft| draft.sheet().entry.text.is_empty());
    view! {
        <div class="pad" role="group" aria-label=open.word("read-pad")>
            <div class="fractions">{fractions}</div>
            <div class="numbers">
                {digit(7)}{digit(8)}{digit(9)}{named("read-erase", "", Key::Erase)}
                {digit(4)}{digit(5)}{digit(6)}{named("read-dead", "", Key::Dead(None))}
                {digit(1)}{digit(2)}{digit(3)}<button type="button" disabled=move || !can_undo() on:mousedown=stay on:click=move |_| open.undo()>{open.word("read-undo")}</button>
                {mark}{digit(0)}
                <button type="button" disabled=move || !can_redo() on:mousedown=stay on:click=move |_| open.redo()>{open.word("read-redo")}</button>
                <button type="button" class="main" disabled=nothing_typed on:mousedown=stay on:click=move |_| { open.press(Key::Done); }>{done}</button>
            </div>
        </div>
    }
}
