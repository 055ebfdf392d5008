//! The rows of the sheet, what is said of each, and how it is put right.

use super::open::Open;
use leptos::prelude::*;
use tautline_survey::draft::{Figure, Key, Remark, Row};
use tautline_survey::message::Message;
use tautline_survey::visit::State;

/// A row as it would stand on paper.
pub(super) fn as_text(row: &Row) -> String {
    let numbers =
        if row.length.is_empty() { format!("{}–{}", row.start, row.stop) } else { row.length.clone() };
    format!("{} {numbers}", row.species).trim_start().to_owned()
}

/// The rows, the last one nearest to the thumb.
pub(super) fn rows(open: Open) -> impl IntoView {
    let chosen = RwSignal::new(None::<u32>);
    let items = move || {
        let remarks = open.remarks();
        let rows = open.draft.with(|draft| draft.sheet().rows.clone());
        let before = |at: usize| rows[..at].iter().rev().find(|row| !row.removed).map(|row| row.id);
        rows.iter()
            .enumerate()
            .map(|(at, row)| {
                let said: Vec<Remark> = remarks.iter().filter(|one| one.row == row.id).cloned().collect();
                item(open, row, before(at), said, chosen)
            })
            .collect_view()
    };
    let empty = move || {
        open.draft
            .with(|draft| draft.sheet().rows.is_empty())
            .then(|| view! { <p class="quiet">{open.word("read-nothing-yet")}</p> })
    };
    view! { <section class="rows" aria-label=open.word("read-rows") tabindex="0">{empty}<ol>{items}</ol></section> }
}

fn item(
    open: Open,
    row: &Row,
    before: Option<u32>,
    said: Vec<Remark>,
    chosen: RwSignal<Option<u32>>,
) -> impl IntoView + use<> {
    let id = row.id;
    let is_chosen = move || chosen.get() == Some(id);
    let toggle = move |_| chosen.update(|now| *now = if *now == Some(id) { None } else { Some(id) });
    let mut about = Vec::new();
    if row.state == State::Dead {
        about.push(open.word("read-dead"));
    }
    let named =
        [("read-row-height", &row.height), ("read-row-width", &row.width), ("read-row-note", &row.note)];
    for (code, value) in named.into_iter().filter(|(_, value)| !value.is_empty()) {
        about.push(open.session.say(&Message::new(code).with("value", value.as_str())));
    }
    if let Some(plant) = &row.plant {
        about.push(open.session.say(&Message::new("read-row-plant").with("value", plant.as_str())));
    }
    if row.removed {
        about.push(open.word("read-row-removed"));
    }
    let text = as_text(row);
    let (about, removed) = (about.join(" · "), row.removed);
    let menu = {
        let row = row.clone();
        move || is_chosen().then(|| menu(open, &row, before, chosen))
    };
    let said = said.into_iter().map(|one| remark(open, one)).collect_view();
    view! {
        <li class:removed=removed>
            <button type="button" class="row" aria-expanded=move || is_chosen().to_string() on:click=toggle>
                <span>{text}</span><span class="quiet">{about}</span>
            </button>
            {said}{menu}
        </li>
    }
}

fn remark(open: Open, one: Remark) -> impl IntoView {
    let said = open.session.say(&one.message);
    // what the rule does by itself needs no answer
    let told_only = matches!(one.kind, "gap-joined" | "dead-joined");
    let offers = one.offers.into_iter().map(|key| {
        let word = offer_word(open, &key);
        view! { <button type="button" class="main" on:click=move |_| { open.press(key.clone()); }>{word}</button> }
    });
    let offers = offers.collect_view();
    let leave = (!told_only).then(|| {
        let key = Key::LeaveSo(one.row, one.kind.to_owned());
        view! { <button type="button" on:click=move |_| { open.press(key.clone()); }>{open.word("read-leave-so")}</button> }
    });
    view! { <div class="remark" class:told=told_only><p>{said}</p><div class="choices">{offers}{leave}</div></div> }
}

fn offer_word(open: Open, key: &Key) -> String {
    match key {
        Key::Swap(_) => open.word("read-swap"),
        Key::Join(..) => open.word("read-join"),
        Key::Remove(_) => open.word("read-remove"),
        Key::CorrectSpecies(_, code) => {
            open.session.say(&Message::new("read-use-species").with("species", code.as_str()))
        }
        _ => open.word("read-mend"),
    }
}

/// Everything that can be done to one row.
fn menu(open: Open, row: &Row, before: Option<u32>, chosen: RwSignal<Option<u32>>) -> impl IntoView + use<> {
    let id = row.id;
    let figures = if row.length.is_empty() {
        vec![
            ("read-correct-start", Key::Correct(id, Figure::Start)),
            ("read-correct-stop", Key::Correct(id, Figure::Stop)),
        ]
    } else {
        vec![("read-correct-length", Key::Correct(id, Figure::Length))]
    };
    let state = if row.state == State::Live { "read-make-dead" } else { "read-make-live" };
    let mut keys = figures;
    keys.extend([
        (state, Key::Dead(Some(id))),
        ("read-insert", Key::Insert(id)),
        ("read-split", Key::Split(id)),
    ]);
    if let Some(before) = before {
        keys.push(("read-join-before", Key::Join(before, id)));
        keys.push(("read-same-plant", Key::SamePlant(Some(id))));
    }
    keys.extend([
        ("read-height", Key::Correct(id, Figure::Height)),
        ("read-width", Key::Correct(id, Figure::Width)),
        (if row.removed { "read-put-back" } else { "read-remove" }, Key::Remove(id)),
    ]);
    let buttons = keys.into_iter().map(|(word, key)| {
        let press = move |_| {
            if open.press(key.clone()) {
                chosen.set(None);
            }
        };
        view! { <button type="button" on:click=press>{open.word(word)}</button> }
    });
    let note = RwSignal::new(row.note.clone());
    let species = RwSignal::new(row.species.clone());
    let keep_note = move |_| {
        open.press(Key::Note(id, note.get_untracked()));
    };
    let keep_species = move |_| {
        open.press(Key::CorrectSpecies(id, species.get_untracked()));
    };
    view! {
        <div class="menu">
            <div class="choices">{buttons.collect_view()}</div>
            <label>{open.word("read-species-of-row")}<input type="text" autocomplete="off" prop:value=species on:input=move |event| species.set(event_target_value(&event)) on:change=keep_species/></label>
            <label>{open.word("read-note")}<input type="text" prop:value=note on:input=move |event| note.set(event_target_value(&event)) on:change=keep_note/></label>
        </div>
    }
}
