//! A coach's afternoon: a class's sheets, keys that experts agreed on, the year's marks, places and what cost points.

use super::choose::{Chosen, TAPES, Year, shown_length, tape_fields, year};
use super::kept::Kept;
use super::paper::page;
use super::protests::protests;
use super::sheets::{ClassList, Whose, sheets};
use crate::device::here::a_turn;
use crate::parts::findings::findings;
use crate::session::Session;
use leptos::prelude::*;
use leptos::task::spawn_local;
use serde::{Deserialize, Serialize};
use tautline_report::{PracticePage, practice_class};
use tautline_survey::finding::Finding;
use tautline_survey::message::Message;
use tautline_survey::practice::{Marked, class as in_order, key_findings, spread_words};

/// What a day is marked by; it names nobody, and stays when the class list goes.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
struct Day {
    chosen: Chosen,
    /// How many of a group's learners count.
    best: usize,
}

impl Default for Day {
    fn default() -> Self {
        Self { chosen: Chosen::default(), best: 3 }
    }
}

/// How far the marking is.
#[derive(Clone, Debug, PartialEq)]
enum Stage {
    /// Nothing was asked for.
    Nothing,
    /// So many sheets are marked.
    Marking(usize),
    /// There it is, and what a marker should know.
    Marked(PracticePage, Vec<Finding>, Vec<Message>),
}

#[derive(Clone, Copy)]
struct All {
    session: Session,
    list: Kept<ClassList>,
    day: Kept<Day>,
    year: Kept<Year>,
    stage: RwSignal<Stage>,
}

/// The screen.
pub(super) fn class() -> impl IntoView {
    let session = Session::here();
    let all = All {
        session,
        list: Kept::of(session, ClassList::NAME),
        day: Kept::of(session, "day"),
        year: Kept::of(session, Year::NAME),
        stage: RwSignal::new(Stage::Nothing),
    };
    move || {
        let own = all.list.is_read() && all.day.is_read() && all.year.is_read();
        (own && session.is_read.get()).then(|| desk(all))
    }
}

fn desk(all: All) -> impl IntoView {
    let All { session, list, day, stage, .. } = all;
    let chosen = RwSignal::new(day.value.with_untracked(|day| day.chosen.clone()));
    Effect::new(move |_| day.value.update(|day| day.chosen = chosen.get()));
    let unit = Signal::derive(move || chosen.with(Chosen::unit));
    let mark = move |_| {
        spawn_local(mark_all(all));
    };
    let told = move || match stage.get() {
        Stage::Nothing => None,
        Stage::Marking(done) => {
            let said = session.say(&Message::new("lesson-marking").with("done", done));
            Some(
                view! {
                    <p class="under-way" role="status">{said}</p>
                    <button type="button" on:click=move |_| stage.set(Stage::Nothing)>{session.word("lesson-stop")}</button>
                }
                .into_any(),
            )
        }
        Stage::Marked(made, found, spread) => {
            let spread = spread.iter().map(|said| view! { <p>{session.say(said)}</p> }).collect_view();
            Some(view! { {spread}{findings(&found)}{page(session, "class", made)} }.into_any())
        }
    };
    view! {
        <h1>{session.word("lesson-class")}</h1>
        <p>{session.word("lesson-class-what")}</p>
        {laid(session, chosen)}
        {year(session, all.year.value, unit)}
        {best(all)}
        <h2>{session.word("lesson-sheets")}</h2>
        {sheets(session, list.value, chosen)}
        {protests(session, list.value)}
        <div class="choices">
            <button type="button" class="main" on:click=mark>{session.word("lesson-mark")}</button>
            {forget(all)}
        </div>
        {told}
    }
}

/// How the day's lines are laid: the tape, how long, by which rules.
fn laid(session: Session, chosen: RwSignal<Chosen>) -> impl IntoView {
    view! {
        <details class="laid"><summary>{move || {
            let laid = chosen.get().laid(session);
            let tape = TAPES.iter().find(|(tape, _)| *tape == laid.tape).map_or("", |(_, name)| name);
            let unit = chosen.with(Chosen::whole);
            let length = shown_length(laid.length, unit);
            let said = Message::new("lesson-laid").with("tape", session.word(tape)).with("length", length);
            session.say(&said.with("protocol", laid.protocol.name))
        }}</summary>
            <p class="quiet">{session.word("lesson-laid-about")}</p>
            {tape_fields(session, chosen)}
        </details>
    }
}

fn best(all: All) -> impl IntoView {
    let put = move |event| {
        if let Ok(best) = event_target_value(&event).trim().parse::<usize>() {
            all.day.value.update(|day| day.best = best.max(1));
        }
    };
    view! {
        <label>{all.session.word("lesson-best")}
            <input type="text" inputmode="numeric" autocomplete="off" prop:value=move || all.day.value.with(|day| day.best.to_string()) on:change=put/>
        </label>
    }
}

/// One action takes the whole class list away, after one question.
fn forget(all: All) -> impl IntoView {
    let session = all.session;
    let sure = RwSignal::new(false);
    let forget = move |_| {
        if sure.get_untracked() {
            all.list.value.set(ClassList::default());
            all.stage.set(Stage::Nothing);
            session.tell(session.word("lesson-forgotten"));
        }
        sure.update(|sure| *sure = !*sure);
    };
    let words = move || session.word(if sure.get() { "lesson-forget-sure" } else { "lesson-forget-class" });
    view! { <button type="button" on:click=forget>{words}</button> }
}

/// Marks one sheet after the other; between two, others have their turn, and whoever stops it or goes away ends it.
async fn mark_all(all: All) {
    let All { session, list, day, year, stage } = all;
    let Day { chosen, best } = day.value.get_untracked();
    let marking = year.value.with_untracked(|year| year.marking_or_example(chosen.unit()));
    let laid = chosen.laid(session);
    let list = list.value.get_untracked();
    let [(learners, mut found), (experts, more), (again, still_more)] =
        Whose::ALL.map(|(whose, _)| list.read(whose, &chosen));
    found.extend(more.into_iter().chain(still_more));
    let keys = laid.agreed(&experts);
    found.extend(key_findings(&keys, &laid.agreed(&again), &marking));
    let mut marker = laid.marker(&keys, &marking);
    let mut marked: Vec<Marked> = Vec::new();
    for (done, sheet) in learners.iter().enumerate() {
        stage.set(Stage::Marking(done));
        a_turn().await;
        if stage.try_get_untracked() != Some(Stage::Marking(done)) {
            return;
        }
        match marker.mark(sheet) {
            Ok(one) => marked.push(one),
            Err(finding) => found.push(*finding),
        }
    }
    let mut in_order = in_order(&marked, &marking, best);
    in_order.protests = list.protests.into_iter().filter(|one| !one.is_empty()).collect();
    let made = practice_class(&in_order, &marked, &marking, best, &session.words());
    stage.set(Stage::Marked(made, found, keys.iter().map(spread_words).collect()));
}
