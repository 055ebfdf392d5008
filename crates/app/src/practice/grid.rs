//! The rows of a sheet, typed cell by cell. Enter goes to the next cell; there is always an empty row below.

use crate::session::Session;
use leptos::html;
use leptos::prelude::*;
use tautline_engine::length::Bare;
use tautline_survey::message::Message;
use tautline_survey::practice::TypedRow;
use wasm_bindgen::JsCast as _;
use web_sys::{HtmlElement, HtmlInputElement, KeyboardEvent};

type Cell = fn(&mut TypedRow) -> &mut String;

const SPECIES: (&str, Cell) = ("practice-column-species", |row| &mut row.species);
const START: (&str, Cell) = ("practice-column-start", |row| &mut row.start);
const STOP: (&str, Cell) = ("practice-column-stop", |row| &mut row.stop);
const LENGTH: (&str, Cell) = ("practice-column-length", |row| &mut row.start);

/// Puts a row at its place; the one below the last is new.
pub(super) fn put(rows: &mut Vec<TypedRow>, at: usize, row: TypedRow) {
    match rows.get_mut(at) {
        Some(own) => *own = row,
        None => rows.push(row),
    }
}

/// The rows. `put` is told of each row that changes; `done` when Enter is pressed in an empty last row.
pub(super) fn grid(
    session: Session,
    rows: Signal<Vec<TypedRow>>,
    lengths_only: Signal<bool>,
    unit: Bare,
    put: impl Fn(usize, TypedRow) + Copy + Send + Sync + 'static,
    done: impl Fn() + Copy + 'static,
) -> impl IntoView {
    let place = NodeRef::<html::Table>::new();
    let count = Memo::new(move |_| rows.with(Vec::len) + 1);
    let key = move |event: KeyboardEvent| {
        if event.key() != "Enter" || event.ctrl_key() || event.alt_key() {
            return;
        }
        event.prevent_default();
        let empty = event
            .target()
            .and_then(|target| target.dyn_into::<HtmlInputElement>().ok())
            .is_some_and(|input| input.value().trim().is_empty());
        let is_last = place.get_untracked().is_some_and(|table| next(&table, &event).is_none());
        if empty && (is_last || rows.with_untracked(Vec::is_empty)) {
            return done();
        }
        if let Some(cell) = place.get_untracked().and_then(|table| next(&table, &event)) {
            // an input can have the focus
            let _ = cell.focus();
        }
    };
    let columns = move || if lengths_only.get() { vec![SPECIES, LENGTH] } else { vec![SPECIES, START, STOP] };
    let row = move |at: usize| {
        let own = Memo::new(move |_| rows.with(|rows| rows.get(at).cloned()).unwrap_or_default());
        let cell = move |(name, of): (&'static str, Cell)| {
            let label = session
                .say(&Message::new("lesson-cell").with("column", session.word(name)).with("row", at + 1));
            let value = move || own.with(|row| of(&mut row.clone()).clone());
            let typed = move |event| {
                let mut row = own.get_untracked();
                *of(&mut row) = event_target_value(&event);
                put(at, row);
            };
            view! {
                <td><input type="text" autocomplete="off" autocapitalize="off" spellcheck="false" aria-label=label prop:value=value on:input=typed/></td>
            }
        };
        let wrong = move || {
            let (row, lengths_only) = (own.get(), lengths_only.get());
            let whole = !row.start.trim().is_empty() && (lengths_only || !row.stop.trim().is_empty());
            let why = whole.then(|| row.read(unit, lengths_only).err()).flatten()?;
            let why = session.say(&why);
            Some(view! { <tr class="why"><td colspan="4"><p class="wrong" role="alert">{why}</p></td></tr> })
        };
        view! {
            <tr><th scope="row">{at + 1}</th>{move || columns().into_iter().map(cell).collect_view()}</tr>{wrong}
        }
    };
    view! {
        <table class="grid" node_ref=place on:keydown=key>
            <thead><tr><th scope="col"><span class="unseen">{session.word("lesson-row")}</span></th>
                {move || columns().into_iter().map(|(name, _)| view! { <th scope="col">{session.word(name)}</th> }).collect_view()}
            </tr></thead>
            <tbody><For each=move || 0..count.get() key=|at| *at children=row/></tbody>
        </table>
    }
}

/// The cell behind the one in which a key was pressed; none behind the first cell of an empty last row.
fn next(table: &HtmlElement, event: &KeyboardEvent) -> Option<HtmlElement> {
    let cells = table.query_selector_all("input").ok()?;
    let all = (0..cells.length()).filter_map(|at| cells.get(at));
    let cells: Vec<HtmlInputElement> = all.filter_map(|node| node.dyn_into().ok()).collect();
    let target = event.target()?.dyn_into::<HtmlInputElement>().ok()?;
    let at = cells.iter().position(|cell| *cell == target)?;
    let last_row_is_empty = cells.iter().skip(at).all(|cell| cell.value().trim().is_empty());
    if last_row_is_empty && at > 0 {
        return None;
    }
    cells.get(at + 1).cloned().map(HtmlElement::from)
}
