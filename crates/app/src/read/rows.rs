//! The rows of the sheet, what is said of each, and how it is put right.

use super::open::{Open, Panel};
use super::photo::way_to_row;
use super::species::stay;
use leptos::html;
use leptos::prelude::*;
use tautline_survey::draft::{Figure, Key, Remark, Row, Told};
use tautline_survey::message::Message;
use tautline_survey::visit::State;

/// A row as it would stand on paper.
pub(super) fn as_text(row: &Row) -> String {
    let numbers =
        if row.length.is_empty() { format!("{}–{}", row.start, row.stop) } else { row.length.clone() };
    format!("{} {numbers}", row.species).trim_start().to_owned()
}

/// The rows as on a paper sheet, the last one nearest to the thumb.
pub(super) fn rows(open: Open) -> impl IntoView {
    let place = NodeRef::<html::Section>::new();
    // a digit typed changes no row: what has been read stays as it is, where it was scrolled to
    let rows = Memo::new(move |_| open.draft.with(|draft| draft.sheet().rows.clone()));
    let items = move || {
        let rows = rows.get();
        let remarks = open.remarks();
        to_the_last(place);
        rows.iter()
            .map(|row| {
                let said = remarks.iter().filter(|one| one.row == row.id).cloned().collect();
                item(open, row, said)
            })
            .collect_view()
    };
    let nothing = move || {
        open.draft.with(|draft| draft.sheet().rows.is_empty() && draft.sheet().told == Told::Whole).then(|| {
            view! {
                <p class="quiet">{open.word("read-nothing-yet")}</p>
                <button type="button" on:mousedown=stay on:click=move |_| { open.press(Key::Nothing); }>{open.word("read-nothing")}</button>
            }
        })
    };
    let heads =
        ["read-species", "read-start", "read-stop"].map(|head| view! { <span>{open.word(head)}</span> });
    view! {
        <section class="rows" aria-label=open.word("read-rows") tabindex="0" node_ref=place>
            <p class="heads quiet" aria-hidden="true">{heads.collect_view()}</p>
            {nothing}<ol>{items}</ol>
        </section>
    }
}

/// The last row is in sight, with whatever is said of it. Whoever leaves the screen before the next frame takes the place along.
fn to_the_last(place: NodeRef<html::Section>) {
    request_animation_frame(move || {
        if let Some(place) = place.try_get_untracked().flatten() {
            place.set_scroll_top(place.scroll_height());
        }
    });
}

fn item(open: Open, row: &Row, said: Vec<Remark>) -> impl IntoView + use<> {
    let id = row.id;
    let mut about = Vec::new();
    if row.state == State::Dead {
        about.push(open.word("read-dead"));
    }
    for (code, value) in
        [("read-row-height", &row.height), ("read-row-width", &row.width), ("read-row-note", &row.note)]
    {
        if !value.is_empty() {
            about.push(open.session.say(&Message::new(code).with("value", value.as_str())));
        }
    }
    if let Some(plant) = &row.plant {
        about.push(open.session.say(&Message::new("read-row-plant").with("value", plant.as_str())));
    }
    if row.removed {
        about.push(open.word("read-row-removed"));
    }
    let (start, stop) = if row.length.is_empty() {
        (row.start.clone(), row.stop.clone())
    } else {
        (String::new(), row.length.clone())
    };
    let dash = (!start.is_empty()).then(|| view! { <span class="dash">"–"</span> });
    let (species, about, removed) = (row.species.clone(), about.join(" · "), row.removed);
    let is_shown = move || (open.panel.get() == Panel::Row(id)).to_string();
    let said = said.into_iter().map(|one| remark(open, one)).collect_view();
    view! {
        <li class:removed=removed>
            <button type="button" class="row" aria-expanded=is_shown on:mousedown=stay on:click=move |_| open.turn(Panel::Row(id))>
                <b>{species}</b><span class="edge">{start}</span><span class="edge">{dash}{stop}</span><span class="quiet about">{about}</span>
            </button>
            {said}
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
pub(super) fn menu(open: Open, id: u32) -> impl IntoView {
    let (row, before) = open.draft.with_untracked(|draft| {
        let sheet = draft.sheet();
        let earlier = sheet.rows.iter().take_while(|row| row.id != id);
        (sheet.row(id).cloned(), earlier.filter(|row| !row.removed).last().map(|row| row.id))
    });
    let row = row?;
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
        view! { <button type="button" on:click=move |_| { open.press(key.clone()); }>{open.word(word)}</button> }
    });
    let photo = open.draft.with_untracked(|draft| way_to_row(open.session, draft.setup(), as_text(&row)));
    let note = RwSignal::new(row.note.clone());
    let species = RwSignal::new(row.species.clone());
    let keep_note = move |_| {
        open.press(Key::Note(id, note.get_untracked()));
    };
    let keep_species = move |_| {
        open.press(Key::CorrectSpecies(id, species.get_untracked()));
    };
    Some(view! {
        <div class="menu" role="group" aria-label=as_text(&row)>
            <p><b>{as_text(&row)}</b></p>
            <div class="choices">{buttons.collect_view()}{photo}</div>
            <label>{open.word("read-species-of-row")}<input type="text" autocomplete="off" prop:value=species on:input=move |event| species.set(event_target_value(&event)) on:change=keep_species/></label>
            <label>{open.word("read-note")}<input type="text" prop:value=note on:input=move |event| note.set(event_target_value(&event)) on:change=keep_note/></label>
        </div>
    })
}
