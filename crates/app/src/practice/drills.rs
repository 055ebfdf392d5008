//! Arithmetic by hand, with the solution line by line.

use super::choose::by_chance;
use crate::session::Session;
use leptos::prelude::*;
use tautline_engine::practice::drill::{Drill, Kind};
use tautline_survey::message::Message;
use tautline_survey::paper::worked_out;
use tautline_survey::practice::drill_output;

const KINDS: [(Kind, &str, &str); 4] = [
    (Kind::Add, "lesson-kind-add", "practice-drill-add"),
    (Kind::FeetToInches, "lesson-kind-feet-to-inches", "practice-drill-feet-to-inches"),
    (Kind::Subtract, "lesson-kind-subtract", "practice-drill-subtract"),
    (Kind::Whole, "lesson-kind-whole", "practice-drill-whole"),
];

/// An answer that is being given to an exercise, and what came of it.
#[derive(Clone, Copy)]
pub(super) struct Asked {
    /// The number of the exercise.
    pub(super) number: RwSignal<u64>,
    /// Whether the solution is shown.
    pub(super) solved: RwSignal<bool>,
    /// What is said of the answer.
    pub(super) said: RwSignal<String>,
}

impl Asked {
    pub(super) fn new() -> Self {
        Self {
            number: RwSignal::new(by_chance()),
            solved: RwSignal::new(false),
            said: RwSignal::new(String::new()),
        }
    }

    /// The next exercise.
    pub(super) fn next(self) {
        self.solved.set(false);
        self.said.set(String::new());
        self.number.set(by_chance());
    }

    /// The ways on, and what is said of the answer.
    pub(super) fn ways(self, session: Session) -> impl IntoView {
        view! {
            <p class="told" role="status">{self.said}</p>
            <div class="choices">
                <button type="button" on:click=move |_| self.solved.set(true)>{session.word("lesson-solve")}</button>
                <button type="button" on:click=move |_| self.next()>{session.word("lesson-next-exercise")}</button>
            </div>
        }
    }
}

/// The screen.
pub(super) fn drills() -> impl IntoView {
    let session = Session::here();
    let kind = RwSignal::new(Kind::Add);
    let asked = Asked::new();
    let kinds = KINDS.map(|(own, name, _)| {
        let choose = move |_| {
            kind.set(own);
            asked.next();
        };
        let pressed = move || (kind.get() == own).to_string();
        view! { <button type="button" aria-pressed=pressed on:click=choose>{session.word(name)}</button> }
    });
    view! {
        <h1>{session.word("lesson-arithmetic")}</h1>
        <div class="chips kinds" role="group" aria-label=session.word("lesson-kind")>{kinds.collect_view()}</div>
        {move || one(session, Drill::draw(kind.get(), asked.number.get()), asked)}
    }
}

fn one(session: Session, drill: Drill, asked: Asked) -> impl IntoView {
    let output = drill_output(&drill, false, None);
    let code = KINDS.iter().find(|(kind, ..)| *kind == drill.kind).map_or("", |(.., code)| code);
    let question = session.say(&Message::new(code).with("line", output.line.as_str()));
    let given = output.given.iter().map(|given| view! { <li>{given.clone()}</li> }).collect_view();
    let answer = RwSignal::new(String::new());
    let worked = worked_out(&drill.worked(), &output.line);
    let check = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        let right = drill.is_right(&answer.get_untracked());
        asked.said.set(session.word(if right { "practice-drill-right" } else { "lesson-drill-wrong" }));
    };
    let solution = move || {
        asked.solved.get().then(|| {
            let lines = worked.iter().map(|said| view! { <li>{session.say(said)}</li> }).collect_view();
            view! { <section><h2>{session.word("practice-solution")}</h2><ol class="worked plain">{lines}</ol></section> }
        })
    };
    view! {
        <h2>{question}</h2>
        <ol class="given">{given}</ol>
        <form on:submit=check>
            <label>{session.word("lesson-answer")}
                <input type="text" inputmode="decimal" autocomplete="off" on:input=move |event| answer.set(event_target_value(&event))/>
            </label>
            <div class="choices"><button type="submit" class="main">{session.word("lesson-check")}</button></div>
        </form>
        {asked.ways(session)}
        {solution}
    }
}
