//! A lesson beside its key: what was right, what was off and which rule explains it; and the marks by the year's bands.

use super::address;
use super::choose::{Chosen, Year, by_chance, year};
use super::kept::Kept;
use super::lesson::UnderWay;
use super::paper::sheet_of;
use super::picture::{Picture, bar, track};
use crate::parts::findings::findings;
use crate::session::Session;
use leptos::prelude::*;
use std::sync::Arc;
use tautline_engine::practice::grade::Found;
use tautline_engine::practice::mistake::Row;
use tautline_report::{practice_line, practice_sheets};
use tautline_survey::message::Message;
use tautline_survey::practice::{Exercise, Marking, Placed, grade_output, mark, recogniser};

/// Graded lessons, each as `tautline practice grade --json` writes it.
pub(super) type Results = Vec<String>;

/// The name under which they are kept.
pub(super) const RESULTS: &str = "results";

/// A lesson as it is handed in, as a document of results.
pub(super) fn result(
    session: Session,
    lesson: &UnderWay,
    chosen: &Chosen,
    name: &str,
    marking: &Marking,
) -> Option<String> {
    let exercise = chosen.exercise(session);
    let (sheet, _) = lesson.sheet(&exercise, chosen, name);
    let marked = mark(&sheet, &exercise, marking, &recogniser(&exercise));
    let words = session.words();
    serde_json::to_string(&grade_output(&[marked], marking, &|message| words.say(message))).ok()
}

/// The screen.
pub(super) fn marked(
    session: Session,
    of_year: Kept<Year>,
    under_way: Kept<UnderWay>,
    chosen: &Chosen,
    name: &str,
) -> impl IntoView + use<> {
    let exercise = Arc::new(chosen.exercise(session));
    let (lesson, unit) = (under_way.value.get_untracked(), chosen.unit());
    let (sheet, left) = lesson.sheet(&exercise, chosen, name);
    let places: Vec<Placed> = sets(&exercise, &sheet.placed(Exercise::species));
    let told = {
        let exercise = Arc::clone(&exercise);
        let recogniser = recogniser(&exercise);
        move || {
            let marking = of_year.value.with(|year| year.marking_or_example(unit));
            let marked = mark(&sheet, &exercise, &marking, &recogniser);
            let mut marks = marked.graded.iter().flat_map(|graded| &graded.marks);
            let off = marks.any(|mark| mark.found != Found::Right);
            let again = off.then(|| view! { <p>{session.word("lesson-look-again")}</p> });
            view! { {sheet_of(practice_sheets(&[marked], &marking, &session.words()))}{again} }
        }
    };
    super::begin_at_the_top();
    let way = lesson.way;
    let go = move |chosen: Chosen| under_way.value.set(UnderWay::begun(session, &chosen, way));
    let (same, other) = (chosen.clone(), chosen.clone());
    view! {
        {told}{findings(&left)}
        <div class="choices">
            <button type="button" class="main" on:click=move |_| go(Chosen { number: by_chance(), ..other.clone() })>{session.word("lesson-next")}</button>
            <button type="button" on:click=move |_| go(same.clone())>{session.word("lesson-again")}</button>
            <button type="button" on:click=move |_| under_way.value.set(UnderWay::default())>{session.word("lesson-another-choice")}</button>
            <a class="button" href=address("progress")>{session.word("lesson-progress-title")}</a>
        </div>
        {year(session, of_year.value, Signal::derive(move || unit))}
        <h2>{session.word("lesson-beside")}</h2>
        <p class="quiet">{session.word("lesson-beside-about")}</p>
        {beside(session, &exercise, &places)}
        {key(session, of_year, exercise, chosen)}
    }
}

/// Rows as places on the picture.
fn sets(exercise: &Exercise, rows: &[Row]) -> Vec<Placed> {
    let step = exercise.line.step().nanometres().max(1);
    let set = |row: &Row| Placed {
        species: row.species.unwrap_or(u32::MAX),
        start: row.stretch.start().nanometres() / step,
        stop: row.stretch.stop().nanometres() / step,
    };
    rows.iter().map(set).collect()
}

/// The picture with what was read above it and the key below.
fn beside(session: Session, exercise: &Exercise, read: &[Placed]) -> impl IntoView + use<> {
    let picture = Picture::of(exercise.clone());
    let above = read.iter().map(|&set| bar(&picture, set, false)).collect_view();
    let below =
        sets(exercise, &exercise.key()).into_iter().map(|set| bar(&picture, set, true)).collect_view();
    let over = view! { {above}{below} }.into_any();
    view! {
        <div class="walk" tabindex="0" role="region" aria-label=session.word("lesson-beside")>
            <div class="track">{track(session, &picture, over)}</div>
        </div>
    }
}

/// The key as a table, and what each habit would cost; worked out when it is opened.
fn key(
    session: Session,
    of_year: Kept<Year>,
    exercise: Arc<Exercise>,
    chosen: &Chosen,
) -> impl IntoView + use<> {
    let open = RwSignal::new(false);
    let unit = chosen.unit();
    let title = session.say(&Message::new("practice-key-title").with("line", exercise.name()));
    let told = move || {
        open.get().then(|| {
            let marking = of_year.value.with(|year| year.marking_or_example(unit));
            sheet_of(practice_line(&exercise, Some(&marking), &session.words()))
        })
    };
    view! { <details><summary on:click=move |_| open.set(true)>{title}</summary>{told}</details> }
}
