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
        let Some(table) = place.get_untracked() else { return };
        let across = if lengths_only.get_untracked() { 2 } else { 3 };
        match behind(&table, &event, across) {
            Behind::Cell(cell) => {
                // an input can have the focus
                let _ = cell.focus();
            }
            Behind::EmptyRow => done(),
            Behind::Nothing => {}
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

/// What lies behind a cell in which Enter was pressed.
enum Behind {
    /// Another cell.
    Cell(HtmlElement),
    /// Nothing more is typed: it was the first cell of an empty last row.
    EmptyRow,
    /// The cell isn't one of the table's.
    Nothing,
}

fn behind(table: &HtmlElement, event: &KeyboardEvent, across: usize) -> Behind {
    let Ok(cells) = table.query_selector_all("input") else { return Behind::Nothing };
    let all = (0..cells.length()).filter_map(|at| cells.get(at));
    let cells: Vec<HtmlInputElement> = all.filter_map(|node| node.dyn_into().ok()).collect();
    let target = event.target().and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
    let Some(at) = cells.iter().position(|cell| Some(cell) == target.as_ref()) else {
        return Behind::Nothing;
    };
    let empty = cells.iter().skip(at).all(|cell| cell.value().trim().is_empty());
    match cells.get(at + 1) {
        _ if empty && at % across == 0 => Behind::EmptyRow,
        Some(cell) => Behind::Cell(cell.clone().into()),
        None => Behind::Nothing,
    }
}
