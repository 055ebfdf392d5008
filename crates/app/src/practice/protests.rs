//! Protests of the day, one after the other: raised by whom, about which row, what was decided.

use super::sheets::ClassList;
use crate::parts::files;
use crate::session::Session;
use leptos::prelude::*;
use tautline_exchange::practice::protests_table;
use tautline_survey::practice::{Decision, Protest};

/// One of a protest's texts.
type Part = fn(&mut Protest) -> &mut String;

/// The texts of a protest before its decision, and behind it.
const BEFORE: [(&str, Part); 4] = [
    ("protest-by", |one| &mut one.by),
    ("protest-line", |one| &mut one.line),
    ("protest-row", |one| &mut one.row),
    ("protest-about", |one| &mut one.about),
];
const BEHIND: [(&str, Part); 2] =
    [("protest-why", |one| &mut one.why), ("protest-judge", |one| &mut one.judge)];

/// The list; it is part of the class list and goes with it.
pub(super) fn protests(session: Session, list: RwSignal<ClassList>) -> impl IntoView {
    let number = Memo::new(move |_| list.with(|list| list.protests.len()));
    let all = move || (0..number.get()).map(|at| one(session, list, at)).collect_view();
    let more = move |_| list.update(|list| list.protests.push(Protest::default()));
    let give = move |_| {
        let table = list.with_untracked(|list| protests_table(&list.protests));
        files::hand_out("protests.csv", "text/csv", &table);
    };
    view! {
        <h2>{session.word("practice-set-protests")}</h2>
        <p class="quiet">{session.word("protests-about")}</p>
        <ol class="plain protests">{all}</ol>
        <div class="choices">
            <button type="button" on:click=more>{session.word("protests-more")}</button>
            {move || (number.get() > 0).then(|| view! { <button type="button" on:click=give>{session.word("protests-out")}</button> })}
        </div>
    }
}

/// The fields of one protest.
fn one(session: Session, list: RwSignal<ClassList>, at: usize) -> impl IntoView {
    let own = move || list.with(|list| list.protests.get(at).cloned().unwrap_or_default());
    let change = move |how: &dyn Fn(&mut Protest)| {
        list.update(|list| {
            if let Some(protest) = list.protests.get_mut(at) {
                how(protest);
            }
        });
    };
    let field = move |(name, part): (&'static str, Part)| {
        let typed = move |event| {
            let typed = event_target_value(&event);
            change(&|protest| part(protest).clone_from(&typed));
        };
        let value = move || part(&mut own()).clone();
        view! { <label>{session.word(name)}<input type="text" autocomplete="off" prop:value=value on:input=typed/></label> }
    };
    let options = Decision::ALL.map(|one| {
        let is_own = move || own().decided == one;
        view! { <option value=one.word() prop:selected=is_own>{session.word(one.code())}</option> }
    });
    let decide = move |event| {
        let decided = Decision::from_word(&event_target_value(&event)).unwrap_or_default();
        change(&|protest| protest.decided = decided);
    };
    let away = move |_| {
        list.update(|list| {
            list.protests.remove(at);
        });
    };
    view! {
        <li>
            <div class="fields">
                {BEFORE.map(field).collect_view()}
                <label>{session.word("protest-decided")}<select on:change=decide>{options.collect_view()}</select></label>
                {BEHIND.map(field).collect_view()}
            </div>
            <button type="button" on:click=away>{session.word("protests-take-away")}</button>
        </li>
    }
}
