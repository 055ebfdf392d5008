//! Where lines start along a baseline, and which plants are in or out.

use super::choose::{Chosen, TAPES};
use super::drills::Asked;
use crate::session::Session;
use leptos::prelude::*;
use tautline_engine::length::{Length, Unit};
use tautline_engine::practice::place::{Beside, Starts, in_or_out as plants};
use tautline_figures::practice::{BesideTape, draw_beside};
use tautline_figures::{Frame, Palette};
use tautline_report::starts_words;
use tautline_survey::message::Message;
use tautline_survey::practice::{TapeKind, in_or_out_right, starts_right};

/// Plants of one exercise.
const PLANTS: usize = 12;

/// How many answers are right, and which aren't.
fn told(session: Session, right: &[bool]) -> String {
    let some = right.iter().filter(|right| **right).count();
    let first =
        session.say(&Message::new("practice-place-right").with("some", some).with("all", right.len()));
    let numbers = (1_usize..).zip(right).filter(|(_, right)| !**right).map(|(number, _)| number.to_string());
    let wrong: Vec<String> = numbers.collect();
    if wrong.is_empty() {
        return first;
    }
    [first, session.say(&Message::new("practice-place-wrong").with("numbers", wrong))].join(" ")
}

/// Which tape it is asked on.
pub(super) fn tapes(session: Session, tape: RwSignal<TapeKind>, asked: Asked) -> impl IntoView {
    let choose = move |event| {
        tape.set(TapeKind::from_word(&event_target_value(&event)).unwrap_or(TapeKind::FeetAndInches));
        asked.next();
    };
    let tapes = TAPES.map(|(own, name)| {
        view! { <option value=own.word() selected=move || tape.get() == own>{session.word(name)}</option> }
    });
    view! { <label>{session.word("lesson-tape")}<select on:change=choose>{tapes.collect_view()}</select></label> }
}

/// Where lines start.
pub(super) fn starts() -> impl IntoView {
    let session = Session::here();
    let tape = RwSignal::new(TapeKind::FeetAndInches);
    let asked = Asked::new();
    view! {
        <h1>{session.word("practice-starts-title")}</h1>
        {tapes(session, tape, asked)}
        {move || starts_on(session, tape.get(), asked.number.get(), asked)}
    }
}

fn starts_on(session: Session, tape: TapeKind, number: u64, asked: Asked) -> impl IntoView {
    let notation = tape.notation();
    let starts = Starts::draw(notation, number);
    let [question, solved] = starts_words(&starts, notation).map(|message| session.say(&message));
    let lines = usize::try_from(starts.lines).unwrap_or_default();
    let typed = RwSignal::new(vec![String::new(); lines]);
    let fields = (0..lines).map(|at| {
        let label = session.say(&Message::new("lesson-start-of").with("line", at + 1));
        let put = move |event| typed.update(|typed| typed[at] = event_target_value(&event));
        view! { <label>{label}<input type="text" autocomplete="off" on:input=put/></label> }
    });
    let fields = fields.collect_view();
    let check = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        let unit = Chosen { tape: tape.word().to_owned(), ..Chosen::default() }.whole();
        let answers: Vec<String> = typed.get_untracked().iter().map(|typed| with_unit(typed, unit)).collect();
        asked.said.set(match starts_right(&starts, notation, &answers.join(";")) {
            Some(right) => told(session, &right),
            None => session.say(&Message::new("practice-answer-starts").with("found", answers.join(", "))),
        });
    };
    let solution = move || {
        asked.solved.get().then(|| {
            view! { <section><h2>{session.word("practice-solution")}</h2><p>{solved.clone()}</p></section> }
        })
    };
    view! {
        <p>{question}</p>
        <form on:submit=check>
            <div class="set-up">{fields}</div>
            <div class="choices"><button type="submit" class="main">{session.word("lesson-check")}</button></div>
        </form>
        {asked.ways(session)}
        {solution}
    }
}

/// A bare number in the unit that the baseline is given in.
fn with_unit(typed: &str, unit: Unit) -> String {
    let bare = typed.trim().chars().all(|c| c.is_ascii_digit() || c == '.') && !typed.trim().is_empty();
    if bare { [typed.trim(), " ", unit.symbol()].concat() } else { typed.trim().to_owned() }
}

/// In or out.
pub(super) fn in_or_out() -> impl IntoView {
    let session = Session::here();
    let tape = RwSignal::new(TapeKind::FeetAndInches);
    let asked = Asked::new();
    view! {
        <h1>{session.word("practice-in-or-out-title")}</h1>
        {tapes(session, tape, asked)}
        {move || plants_on(session, tape.get(), asked.number.get(), asked)}
    }
}

fn plants_on(session: Session, tape: TapeKind, number: u64, asked: Asked) -> impl IntoView {
    let drawn = plants(tape.notation(), PLANTS, number);
    let picture = picture(session, tape, &drawn);
    let words = RwSignal::new(vec![""; drawn.len()]);
    let rows = (0..drawn.len()).map(|at| {
        let choice = move |word: &'static str, name: &'static str| {
            let pressed = move || (words.with(|words| words[at]) == word).to_string();
            let put = move |_| words.update(|words| words[at] = word);
            view! { <button type="button" aria-pressed=pressed on:click=put>{session.word(name)}</button> }
        };
        let label = session.say(&Message::new("lesson-plant").with("number", at + 1));
        view! {
            <div role="group" aria-label=label><span>{at + 1}</span>{choice("in", "practice-in")}{choice("out", "practice-out")}</div>
        }
    });
    let rows = rows.collect_view();
    let solved: Vec<String> = drawn
        .iter()
        .map(|plant| session.word(if plant.is_in() { "practice-in" } else { "practice-out" }))
        .collect();
    let check = move |_| {
        let given = words.get_untracked();
        // one without an answer is wrong, whatever would be right
        let answer: Vec<&str> = given
            .iter()
            .zip(&drawn)
            .map(|(&word, plant)| match (word, plant.is_in()) {
                ("", true) => "out",
                ("", false) => "in",
                (word, _) => word,
            })
            .collect();
        if let Some(right) = in_or_out_right(&drawn, &answer.join(",")) {
            asked.said.set(told(session, &right));
        }
    };
    let solution = move || {
        asked.solved.get().then(|| {
            let items = solved.iter().map(|word| view! { <li>{word.clone()}</li> }).collect_view();
            view! { <section><h2>{session.word("practice-solution")}</h2><ol class="answers">{items}</ol></section> }
        })
    };
    view! {
        <p>{session.word("practice-in-or-out-drawn")}</p>
        <figure class="strips" inner_html=picture></figure>
        <div class="plants">{rows}</div>
        <div class="choices"><button type="button" class="main" on:click=check>{session.word("lesson-check")}</button></div>
        {asked.ways(session)}
        {solution}
    }
}

/// The plants beside the tape, for a wide screen and for a narrow one.
fn picture(session: Session, tape: TapeKind, plants: &[Beside]) -> String {
    let each = match tape {
        TapeKind::Metric => Length::from_units(150, Unit::Centimetre),
        TapeKind::FeetAndInches | TapeKind::DecimalFeet => Length::from_units(60, Unit::Inch),
    };
    let half = Length::from_nanometres(each.nanometres() / 2);
    [(720, "wide", each), (360, "narrow", half)]
        .map(|(width, name, each)| {
            let frame = Frame {
                title: session.word("practice-in-or-out-title"),
                description: session.word("practice-in-or-out-asked"),
                mark: session.words().mark(),
                ..Frame::new(&["in-or-out-", name].concat(), width, Palette::screen())
            };
            let drawn = draw_beside(&BesideTape { plants, tape: tape.notation(), each }, &frame);
            ["<div class=\"", name, "\">", &drawn, "</div>"].concat()
        })
        .concat()
}
