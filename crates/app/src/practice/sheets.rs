//! Sheets typed one after the other: learners', experts', and what experts read again later.

use super::choose::Chosen;
use super::grid::{grid, put};
use crate::parts::files;
use crate::session::Session;
use leptos::html;
use leptos::prelude::*;
use leptos::task::spawn_local;
use serde::{Deserialize, Serialize};
use tautline_exchange::practice::{sheets as read_table, table};
use tautline_survey::finding::Finding;
use tautline_survey::message::Message;
use tautline_survey::practice::{LearnerSheet, Protest, TypedRow, TypedSheet};
use wasm_bindgen::JsCast as _;
use web_sys::HtmlInputElement;

/// Whose sheets are typed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Whose {
    /// Learners'.
    #[default]
    Learners,
    /// Experts', who make the key of a real line.
    Experts,
    /// Experts' who read the same lines later in the day.
    Again,
}

impl Whose {
    pub(super) const ALL: [(Self, &'static str); 3] = [
        (Self::Learners, "lesson-sheets-learners"),
        (Self::Experts, "lesson-sheets-experts"),
        (Self::Again, "lesson-sheets-again"),
    ];
}

/// The class list: everything that names a person. Taken away as a whole.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub(super) struct ClassList {
    learners: Vec<TypedSheet>,
    experts: Vec<TypedSheet>,
    again: Vec<TypedSheet>,
    /// What was protested against, and by whom.
    pub(super) protests: Vec<Protest>,
}

impl ClassList {
    /// The name under which it is kept.
    pub(super) const NAME: &'static str = "class";

    fn of(&self, whose: Whose) -> &Vec<TypedSheet> {
        match whose {
            Whose::Learners => &self.learners,
            Whose::Experts => &self.experts,
            Whose::Again => &self.again,
        }
    }

    fn of_mut(&mut self, whose: Whose) -> &mut Vec<TypedSheet> {
        match whose {
            Whose::Learners => &mut self.learners,
            Whose::Experts => &mut self.experts,
            Whose::Again => &mut self.again,
        }
    }

    /// The sheets as they are read, by day, and what of them can't be.
    pub(super) fn read(&self, whose: Whose, chosen: &Chosen) -> (Vec<LearnerSheet>, Vec<Finding>) {
        let named =
            self.of(whose).iter().filter(|sheet| !sheet.name.trim().is_empty() || !sheet.rows.is_empty());
        let (mut sheets, findings): (Vec<LearnerSheet>, Vec<Vec<Finding>>) =
            named.map(|sheet| sheet.read(chosen.unit())).unzip();
        sheets.sort_by_key(|sheet| sheet.date);
        (sheets, findings.concat())
    }
}

/// The list, and the sheet of it that is open.
pub(super) fn sheets(session: Session, list: RwSignal<ClassList>, chosen: RwSignal<Chosen>) -> impl IntoView {
    let whose = RwSignal::new(Whose::Learners);
    let at = RwSignal::new(0_usize);
    let found = RwSignal::new(Vec::<Finding>::new());
    let kinds = Whose::ALL.map(|(own, name)| {
        let choose = move |_| {
            whose.set(own);
            at.set(0);
        };
        let label = move || {
            let sheets = list.with(|list| list.of(own).len());
            session.say(&Message::new(name).with("sheets", sheets))
        };
        view! { <button type="button" aria-pressed=move || (whose.get() == own).to_string() on:click=choose>{label}</button> }
    });
    let picked = move |event: web_sys::Event| {
        let input = event.target().and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
        let Some(files) = input.and_then(|input| input.files()) else { return };
        let notation = chosen.with_untracked(Chosen::tape).notation();
        spawn_local(async move {
            let (sources, _) = files::read(files).await;
            let mut findings = Vec::new();
            for source in sources {
                let (sheets, mut own) = read_table(&source.name, &String::from_utf8_lossy(&source.bytes));
                findings.append(&mut own);
                list.update(|list| {
                    let typed = sheets.iter().map(|sheet| TypedSheet::of(sheet, notation));
                    list.of_mut(whose.get_untracked()).extend(typed);
                });
            }
            found.set(findings);
        });
    };
    let give = move |_| {
        let (sheets, _) =
            list.with_untracked(|list| list.read(whose.get_untracked(), &chosen.get_untracked()));
        files::hand_out("sheets.csv", "text/csv", &table(&sheets));
    };
    let open = move || editor(session, list, whose.get(), at, chosen.get().unit());
    view! {
        <div class="chips kinds" role="group" aria-label=session.word("lesson-sheets-whose")>{kinds.collect_view()}</div>
        {move || (whose.get() != Whose::Learners).then(|| view! { <p class="quiet">{session.word("lesson-sheets-experts-about")}</p> })}
        <div class="desk">
            {move || all(session, list, whose.get(), at)}
            <section class="open" aria-label=session.word("lesson-sheet")>{open}</section>
        </div>
        <details><summary>{session.word("lesson-tables")}</summary>
            <p class="quiet">{session.word("lesson-tables-about")}</p>
            <label>{session.word("lesson-tables-in")}<input type="file" multiple accept=".csv,.tsv,.txt" on:change=picked/></label>
            <div class="choices"><button type="button" on:click=give>{session.word("lesson-tables-out")}</button></div>
        </details>
        {move || crate::parts::findings::findings(&found.get())}
    }
}

/// Every sheet by name and line, the open one marked.
fn all(session: Session, list: RwSignal<ClassList>, whose: Whose, at: RwSignal<usize>) -> impl IntoView {
    let names = Memo::new(move |_| {
        list.with(|list| {
            let named = |sheet: &TypedSheet| (sheet.name.clone(), sheet.line.clone(), sheet.rows.len());
            list.of(whose).iter().map(named).collect::<Vec<_>>()
        })
    });
    let items = move || {
        let item = |(number, (name, line, rows)): (usize, (String, String, usize))| {
            let name = if name.trim().is_empty() { session.word("lesson-nobody") } else { name };
            let said =
                Message::new("lesson-sheet-of").with("name", name).with("line", line).with("rows", rows);
            let open = move || (at.get() == number).then_some("true");
            let away = move |_| {
                list.update(|list| {
                    list.of_mut(whose).remove(number);
                });
                at.update(|at| *at = at.saturating_sub(usize::from(*at >= number && *at > 0)));
            };
            view! {
                <li>
                    <button type="button" class="sheet-of" aria-current=open on:click=move |_| at.set(number)>{session.say(&said)}</button>
                    <button type="button" on:click=away>{session.word("lesson-take-away")}</button>
                </li>
            }
        };
        names.get().into_iter().enumerate().map(item).collect_view()
    };
    let more = move |_| next(list, whose, at);
    view! {
        <section class="list" aria-label=session.word("lesson-sheets")>
            <ol class="plain">{items}</ol>
            <div class="choices"><button type="button" on:click=more>{session.word("lesson-sheet-more")}</button></div>
        </section>
    }
}

/// Opens a new sheet, for the same group and line as the last one.
fn next(list: RwSignal<ClassList>, whose: Whose, at: RwSignal<usize>) {
    let number = list.try_maybe_update(|list| {
        let sheets = list.of_mut(whose);
        let last = sheets.last().cloned().unwrap_or_default();
        let (group, line, date, lengths_only) = (last.group, last.line, last.date, last.lengths_only);
        sheets.push(TypedSheet { group, line, date, lengths_only, ..TypedSheet::default() });
        (true, sheets.len() - 1)
    });
    at.set(number.unwrap_or_default());
}

/// One of a sheet's texts.
type Part = fn(&mut TypedSheet) -> &mut String;

/// The fields and rows of the open sheet.
fn editor(
    session: Session,
    list: RwSignal<ClassList>,
    whose: Whose,
    at: RwSignal<usize>,
    unit: tautline_engine::length::Bare,
) -> AnyView {
    let number = at.get();
    if list.with_untracked(|list| list.of(whose).len()) <= number && number > 0 {
        return ().into_any();
    }
    let own = Memo::new(move |_| list.with(|list| list.of(whose).get(number).cloned().unwrap_or_default()));
    let change = move |how: &dyn Fn(&mut TypedSheet)| {
        list.update(|list| {
            let sheets = list.of_mut(whose);
            if number >= sheets.len() {
                sheets.push(TypedSheet::default());
            }
            if let Some(sheet) = sheets.get_mut(number) {
                how(sheet);
            }
        });
    };
    let first = NodeRef::<html::Input>::new();
    let field = move |label: &'static str, part: Part| {
        let value = move || own.with(|sheet| part(&mut sheet.clone()).clone());
        let typed = move |event| {
            let typed = event_target_value(&event);
            change(&|sheet| part(sheet).clone_from(&typed));
        };
        (session.word(label), value, typed)
    };
    let input = move |label, part| {
        let (label, value, typed) = field(label, part);
        view! { <label>{label}<input type="text" autocomplete="off" prop:value=value on:input=typed/></label> }
    };
    let (name, name_value, name_typed) = field("practice-set-name", |sheet| &mut sheet.name);
    let rows = Signal::derive(move || own.with(|sheet| sheet.rows.clone()));
    let lengths_only = Signal::derive(move || own.with(|sheet| sheet.lengths_only));
    let put_row =
        move |row: usize, cells: TypedRow| change(&|sheet| put(&mut sheet.rows, row, cells.clone()));
    let only = move |event| {
        let only = event_target_checked(&event);
        change(&|sheet| sheet.lengths_only = only);
    };
    let done = move || next(list, whose, at);
    // a new sheet is typed from its name on; an old one is looked at first
    let is_new = own.with_untracked(|sheet| sheet.name.is_empty()) && number > 0;
    Effect::new(move |_| {
        if let Some(input) = first.get().filter(|_| is_new) {
            // an input can have the focus
            let _ = input.focus();
        }
    });
    let learners = whose == Whose::Learners;
    view! {
        <div class="fields">
            <label>{name}<input type="text" autocomplete="off" node_ref=first prop:value=name_value on:input=name_typed/></label>
            {learners.then(|| input("lesson-group", |sheet| &mut sheet.group))}
            {input("lesson-line", |sheet| &mut sheet.line)}
            {learners.then(|| input("lesson-percent", |sheet| &mut sheet.percent))}
        </div>
        <label class="option">
            <input type="checkbox" prop:checked=lengths_only on:change=only/><span>{session.word("lesson-lengths-only")}</span>
        </label>
        {grid(session, rows, lengths_only, unit, put_row, done)}
        <p class="quiet">{session.word("lesson-sheet-enter")}</p>
        <div class="choices"><button type="button" class="main" on:click=move |_| done()>{session.word("lesson-sheet-next")}</button></div>
    }
    .into_any()
}
