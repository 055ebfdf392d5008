//! Progress over time: the lessons of this device, and those in files of results, on the command's own page.

use super::choose::Year;
use super::kept::Kept;
use super::marked::{RESULTS, Results};
use super::paper::{sheet_of, ways};
use crate::parts::files;
use crate::parts::findings::findings;
use crate::session::Session;
use leptos::prelude::*;
use leptos::task::spawn_local;
use tautline_exchange::practice::results;
use tautline_report::practice_progress;
use tautline_survey::finding::Finding;
use tautline_survey::practice::{Lesson, progress as by_learner};
use wasm_bindgen::JsCast as _;
use web_sys::HtmlInputElement;

/// The screen.
pub(super) fn progress() -> impl IntoView {
    let session = Session::here();
    let own = Kept::<Results>::of(session, RESULTS);
    let of_year = Kept::<Year>::of(session, Year::NAME);
    move || (own.is_read() && of_year.is_read()).then(|| shown(session, own, of_year))
}

fn shown(session: Session, own: Kept<Results>, of_year: Kept<Year>) -> impl IntoView {
    let others = RwSignal::new((Vec::<Lesson>::new(), Vec::<Finding>::new()));
    let told = move || {
        // the band is a share of the line, whatever its tape
        let inches = tautline_engine::length::Bare::Unit(tautline_engine::length::Unit::Inch);
        let within = of_year.value.with(|year| year.marking_or_example(inches).narrowest());
        let (mut lessons, found) = own.value.with(|own| results("", &own.join("\n")));
        let found = if own.value.with(Vec::is_empty) { Vec::new() } else { found };
        let (more, other_findings) = others.get();
        lessons.extend(more);
        let made = practice_progress(&by_learner(lessons), within, &session.words());
        view! {
            <div class="paper">{sheet_of(made.clone())}</div>
            {findings(&[found, other_findings].concat())}{ways(session, "progress", made)}
        }
    };
    let picked = move |event: web_sys::Event| {
        let input = event.target().and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
        let Some(list) = input.and_then(|input| input.files()) else { return };
        spawn_local(async move {
            let (sources, _) = files::read(list).await;
            let read = sources.iter().map(|one| results(&one.name, &String::from_utf8_lossy(&one.bytes)));
            let (lessons, found): (Vec<_>, Vec<_>) = read.unzip();
            others.set((lessons.concat(), found.concat()));
        });
    };
    let give = move |_| {
        let text = own.value.with_untracked(|own| own.join("\n"));
        files::hand_out("practice-results.json", "application/json", &text);
    };
    let sure = RwSignal::new(false);
    let forget = move |_| {
        if sure.get_untracked() {
            own.value.set(Vec::new());
        }
        sure.update(|sure| *sure = !*sure);
    };
    let forget_words =
        move || session.word(if sure.get() { "lesson-forget-sure" } else { "lesson-forget-lessons" });
    let none = move || own.value.with(Vec::is_empty);
    view! {
        {told}
        <section class="ask">
            <h2>{session.word("lesson-results")}</h2>
            <p class="quiet">{session.word("lesson-results-about")}</p>
            <label>{session.word("lesson-results-of-others")}<input type="file" multiple accept=".json" on:change=picked/></label>
            <div class="choices">
                <button type="button" disabled=none on:click=give>{session.word("lesson-results-out")}</button>
                <button type="button" disabled=none on:click=forget>{forget_words}</button>
            </div>
        </section>
    }
}
