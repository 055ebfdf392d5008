//! Paper for a class: different lines, sheets, tally, protests, placards, the keys apart. The same page as the command's.

use super::choose::{Chosen, Year, fields, year};
use super::kept::Kept;
use crate::device::here::a_turn;
use crate::parts::files::hand_out;
use crate::parts::sheet::sheet;
use crate::session::Session;
use leptos::prelude::*;
use leptos::task::spawn_local;
use tautline_report::{PracticePage, PracticeSet};
use tautline_survey::message::Message;

/// A page made elsewhere in the house, as it is.
pub(super) fn sheet_of(page: PracticePage) -> impl IntoView {
    sheet(page.body, PracticePage::style())
}

/// A page with the ways to take it along above it. On paper it stands alone.
pub(super) fn page(session: Session, name: &'static str, page: PracticePage) -> impl IntoView {
    view! { {ways(session, name, page.clone())}<div class="paper">{sheet_of(page)}</div> }
}

/// The ways to take a page along: printed, or as a file.
pub(super) fn ways(session: Session, name: &'static str, page: PracticePage) -> impl IntoView {
    let give = move |_| hand_out(&[name, ".html"].concat(), "text/html", &page.page(&session.words()));
    let print = move |_| {
        if let Some(window) = web_sys::window() {
            // a browser that can't print says so itself
            let _ = window.print();
        }
    };
    view! {
        <div class="choices">
            <button type="button" class="main" on:click=print>{session.word("lesson-print")}</button>
            <button type="button" on:click=give>{session.word("lesson-as-file")}</button>
        </div>
    }
}

/// More would be no set but a library.
const MOST: usize = 30;

/// How far the drawing of a set is.
#[derive(Clone, Debug, PartialEq)]
enum Stage {
    /// Nothing was asked for.
    Nothing,
    /// So many lines are drawn.
    Drawing(usize),
    /// There it is.
    Made(PracticePage),
}

/// The screen.
pub(super) fn paper() -> impl IntoView {
    let session = Session::here();
    let settings = Kept::<(Chosen, usize)>::of(session, "paper");
    let of_year = Kept::<Year>::of(session, Year::NAME);
    move || {
        let ready = session.is_read.get() && settings.is_read() && of_year.is_read();
        ready.then(|| form(session, settings, of_year))
    }
}

fn form(session: Session, settings: Kept<(Chosen, usize)>, of_year: Kept<Year>) -> impl IntoView {
    let (chosen, lines) = settings.value.get_untracked();
    let chosen = RwSignal::new(chosen);
    let lines = RwSignal::new(if lines == 0 { 6 } else { lines });
    let stage = RwSignal::new(Stage::Nothing);
    let make = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        let (chosen, lines) = (chosen.get_untracked(), lines.get_untracked());
        settings.value.set((chosen.clone(), lines));
        spawn_local(draw(session, of_year, chosen, lines, stage));
    };
    let number = move |event| {
        if let Ok(number) = event_target_value(&event).trim().parse::<usize>() {
            lines.set(number.clamp(1, MOST));
        }
    };
    let told = move || match stage.get() {
        Stage::Nothing => None,
        Stage::Drawing(done) => {
            let said =
                session.say(&Message::new("lesson-drawing").with("done", done).with("all", lines.get()));
            Some(
                view! {
                    <p class="under-way" role="status">{said}</p>
                    <button type="button" on:click=move |_| stage.set(Stage::Nothing)>{session.word("lesson-stop")}</button>
                }
                .into_any(),
            )
        }
        Stage::Made(made) => Some(page(session, "practice-set", made).into_any()),
    };
    let unit = Signal::derive(move || chosen.with(Chosen::unit));
    view! {
        <h1>{session.word("lesson-paper")}</h1>
        <p>{session.word("lesson-paper-what")}</p>
        <form class="set-up" on:submit=make>
            {fields(session, chosen)}
            <label>{session.word("lesson-lines")}
                <input type="text" inputmode="numeric" autocomplete="off" prop:value=move || lines.get().to_string() on:change=number/>
            </label>
            {year(session, of_year.value, unit)}
            <div class="choices"><button type="submit" class="main">{session.word("lesson-make")}</button></div>
        </form>
        {told}
    }
}

/// Draws the lines one after the other; between two, others have their turn, and whoever stops it or goes away ends it.
async fn draw(session: Session, of_year: Kept<Year>, chosen: Chosen, lines: usize, stage: RwSignal<Stage>) {
    let marking = of_year.value.with_untracked(|year| year.marking_or_example(chosen.unit()));
    let laid = chosen.laid(session);
    let words = session.words();
    let mut set = PracticeSet::default();
    for number in (chosen.number..).take(lines) {
        stage.set(Stage::Drawing(set.lines()));
        a_turn().await;
        if stage.try_get_untracked() != Some(Stage::Drawing(set.lines())) {
            return;
        }
        set.add(&laid.exercise(chosen.level(), number), &marking, &words);
    }
    stage.set(Stage::Made(set.finish(&words)));
}
