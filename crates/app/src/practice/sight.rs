//! An eye that leans reads an edge off: seen from the side, with the eye moved by hand, and asked.

use super::drills::Asked;
use super::place::tapes;
use crate::session::Session;
use leptos::prelude::*;
use tautline_engine::length::{Length, Notation};
use tautline_engine::practice::line::parallax;
use tautline_figures::practice::{Sight, draw_sight};
use tautline_figures::{Frame, Palette};
use tautline_survey::message::{Message, Value};
use tautline_survey::practice::{SightDrill, TapeKind};

/// The screen.
pub(super) fn sight() -> impl IntoView {
    let session = Session::here();
    let tape = RwSignal::new(TapeKind::FeetAndInches);
    let asked = Asked::new();
    view! {
        <h1>{session.word("practice-sight-title")}</h1>
        <p>{session.word("lesson-sight-what")}</p>
        {tapes(session, tape, asked)}
        {move || eye(session, SightDrill::draw(tape.get(), asked.number.get()))}
        {move || question(session, SightDrill::draw(tape.get(), asked.number.get()), asked)}
    }
}

/// An eye that is leaned by hand over an edge of the exercise's unit.
fn eye(session: Session, drill: SightDrill) -> impl IntoView {
    let degrees = RwSignal::new(20_u8);
    let height = Length::from_units(if drill.unit.symbol() == "in" { 24 } else { 60 }, drill.unit);
    let shown =
        move || session.say(&Message::new("lesson-degrees").with("degrees", degrees.get().to_string()));
    let drawn = move || picture(session, height, degrees.get(), drill);
    let lean = move |event| degrees.set(event_target_value(&event).parse().unwrap_or(20));
    view! {
        <section class="eye">
            <label>{session.word("lesson-lean")}
                <input type="range" min="1" max="45" aria-valuetext=shown prop:value=move || degrees.get().to_string() on:input=lean/>
            </label>
            <figure class="sight" inner_html=drawn></figure>
        </section>
    }
}

fn picture(session: Session, height: Length, degrees: u8, drill: SightDrill) -> String {
    let words = session.words();
    let unit = drill.unit.symbol();
    let off = parallax(height, f64::from(degrees))
        / Length::from_units(1, drill.unit).in_unit(tautline_engine::length::Unit::Metre);
    let shown = |code: &'static str| {
        let message = Message::new(code)
            .with("height", Value::Length(height, Notation::decimals(drill.unit, 0)))
            .with("degrees", degrees.to_string());
        words.say(&message.with("off", [words.number(off, 1).as_str(), unit].join("\u{a0}")))
    };
    let sight = Sight {
        height,
        degrees: f64::from(degrees),
        height_words: shown("practice-sight-height"),
        angle_words: shown("practice-sight-angle"),
        off_words: shown("practice-sight-off"),
        right_words: words.word("practice-sight-right"),
    };
    let frame = Frame {
        title: words.word("practice-sight-title"),
        description: shown("practice-sight-off"),
        mark: words.mark(),
        ..Frame::new("sight", 360, Palette::screen())
    };
    draw_sight(&sight, &frame)
}

fn question(session: Session, drill: SightDrill, asked: Asked) -> impl IntoView {
    let [question, solved] = drill.words().map(|message| session.say(&message));
    let answer = RwSignal::new(String::new());
    let check = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        let typed = answer.get_untracked();
        asked.said.set(match drill.is_right(&typed) {
            Some(true) => session.word("practice-drill-right"),
            Some(false) => session.word("lesson-drill-wrong"),
            None => session.say(&Message::new("practice-cell-length").with("found", typed.trim())),
        });
    };
    let solution = move || {
        asked.solved.get().then(|| {
            view! { <section><h2>{session.word("practice-solution")}</h2><p>{solved.clone()}</p></section> }
        })
    };
    view! {
        <h2>{session.word("lesson-sight-question")}</h2>
        <p>{question}</p>
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
