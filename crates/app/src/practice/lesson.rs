//! A lesson: chosen, read on the picture or typed as a sheet, and set beside its key.

use super::choose::{Chosen, Year, by_chance, fields};
use super::grid::grid;
use super::hand::{Hand, hand};
use super::kept::Kept;
use super::marked::{RESULTS, Results, marked, result};
use super::picture::{Picture, track};
use crate::device::here;
use crate::session::Session;
use leptos::prelude::*;
use serde::{Deserialize, Serialize};
use std::rc::Rc;
use tautline_survey::finding::Finding;
use tautline_survey::message::Message;
use tautline_survey::practice::{Exercise, LearnerSheet, Reading, SPECIES, TypedRow, TypedSheet};

/// Who practises, and what was chosen last.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub(super) struct Settings {
    /// The name that the learner chose.
    pub(super) name: String,
    pub(super) chosen: Chosen,
}

impl Settings {
    /// The name under which they are kept.
    pub(super) const NAME: &'static str = "settings";

    /// The name on sheets.
    pub(super) fn name(&self, session: Session) -> String {
        let name = self.name.trim();
        if name.is_empty() { session.word("lesson-nobody") } else { name.to_owned() }
    }
}

/// How edges are written.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub(super) enum Way {
    /// Set on the picture.
    #[default]
    Picture,
    /// Typed, as on a sheet of paper.
    Sheet,
}

/// A lesson under way.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub(super) struct UnderWay {
    /// Which line; none before one was chosen.
    pub(super) chosen: Option<Chosen>,
    pub(super) way: Way,
    /// What was set on the picture.
    pub(super) reading: Reading,
    /// What was typed.
    pub(super) typed: TypedSheet,
    /// The reading is done and stands beside its key.
    pub(super) done: bool,
}

impl UnderWay {
    const NAME: &'static str = "lesson";

    /// A line that nobody has read yet.
    pub(super) fn begun(session: Session, chosen: &Chosen, way: Way) -> Self {
        let reading = Reading::of(&chosen.exercise(session));
        Self { chosen: Some(chosen.clone()), way, reading, ..Self::default() }
    }

    /// The sheet that is handed in, and what of it can't be read.
    pub(super) fn sheet(
        &self,
        exercise: &Exercise,
        chosen: &Chosen,
        name: &str,
    ) -> (LearnerSheet, Vec<Finding>) {
        let typed = TypedSheet {
            name: name.to_owned(),
            line: exercise.name(),
            date: here::today(),
            ..self.typed.clone()
        };
        let (sheet, findings) = typed.read(chosen.unit());
        match self.way {
            Way::Sheet => (sheet, findings),
            Way::Picture => (LearnerSheet { rows: self.reading.sheet(exercise).rows, ..sheet }, Vec::new()),
        }
    }
}

/// What a lesson needs of what is kept. Copied freely; all copies are one.
#[derive(Clone, Copy)]
struct All {
    session: Session,
    settings: Kept<Settings>,
    year: Kept<Year>,
    under_way: Kept<UnderWay>,
    results: Kept<Results>,
}

impl All {
    fn is_read(self) -> bool {
        // the rules of the notebook can be chosen, so that is read too
        let own = self.settings.is_read() && self.year.is_read();
        own && self.under_way.is_read() && self.results.is_read() && self.session.is_read.get()
    }

    fn name(self) -> String {
        self.settings.value.with_untracked(|settings| settings.name(self.session))
    }

    /// Hands the sheet in: it is marked, and stands among the learner's lessons.
    fn hand_in(self, chosen: &Chosen) {
        let marking = self.year.value.with_untracked(|year| year.marking_or_example(chosen.unit()));
        let lesson = self.under_way.value.get_untracked();
        if let Some(result) = result(self.session, &lesson, chosen, &self.name(), &marking) {
            self.results.value.update(|results| results.push(result));
        }
        self.under_way.value.update(|lesson| lesson.done = true);
    }
}

/// The screen.
pub(super) fn lesson() -> impl IntoView {
    let session = Session::here();
    let all = All {
        session,
        settings: Kept::of(session, Settings::NAME),
        year: Kept::of(session, Year::NAME),
        under_way: Kept::of(session, UnderWay::NAME),
        results: Kept::of(session, RESULTS),
    };
    let stage = Memo::new(move |_| {
        all.is_read().then(|| all.under_way.value.with(|lesson| (lesson.chosen.clone(), lesson.done)))
    });
    move || match stage.get() {
        None => view! { <p class="quiet">{session.word("app-reading")}</p> }.into_any(),
        Some((None, _)) => begin(session, all.settings, all.under_way).into_any(),
        Some((Some(chosen), false)) => reading(all, &chosen).into_any(),
        Some((Some(chosen), true)) => {
            marked(session, all.year, all.under_way, &chosen, &all.name()).into_any()
        }
    }
}

fn begin(session: Session, settings: Kept<Settings>, under_way: Kept<UnderWay>) -> impl IntoView {
    let mut first = settings.value.with_untracked(|settings| settings.chosen.clone());
    first.number = by_chance();
    let chosen = RwSignal::new(first);
    let way = RwSignal::new(Way::Picture);
    let ways = [(Way::Picture, "lesson-way-picture"), (Way::Sheet, "lesson-way-sheet")].map(|(own, name)| {
        view! {
            <label class="option">
                <input type="radio" name="way" prop:checked=move || way.get() == own on:change=move |_| way.set(own)/>
                <span>{session.word(name)}</span>
            </label>
        }
    });
    let start = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        let chosen = chosen.get_untracked();
        settings.value.update(|settings| settings.chosen = chosen.clone());
        under_way.value.set(UnderWay::begun(session, &chosen, way.get_untracked()));
    };
    view! {
        <h1>{session.word("lesson-read")}</h1>
        <p>{session.word("lesson-read-what")}</p>
        <form class="set-up" on:submit=start>
            {fields(session, chosen)}
            <fieldset><legend>{session.word("lesson-way")}</legend>{ways.collect_view()}</fieldset>
            <div class="choices"><button type="submit" class="main">{session.word("lesson-begin")}</button></div>
        </form>
    }
}

fn reading(all: All, chosen: &Chosen) -> impl IntoView + use<> {
    let session = all.session;
    super::begin_at_the_top();
    let exercise = chosen.exercise(session);
    let about = session.say(
        &Message::new("lesson-about")
            .with("level", exercise.level.number().to_string())
            .with("protocol", exercise.protocol.name.as_str()),
    );
    let slope = (exercise.line.slope > 0).then(|| {
        session.say(&Message::new("practice-line-slope").with("slope", exercise.line.slope.to_string()))
    });
    let title = session.say(&Message::new("practice-title").with("line", exercise.name()));
    let codes: Vec<&'static str> =
        (0..exercise.line.species).map(|number| Exercise::code(Some(number))).collect();
    let picture = Picture::of(exercise);
    let value = all.under_way.value;
    let way = value.with_untracked(|lesson| lesson.way);
    let written = match way {
        Way::Picture => hand(Hand::new(session, value, &picture)).into_any(),
        Way::Sheet => sheet(session, value, chosen, &codes, &picture).into_any(),
    };
    let percent = move |event| value.update(|lesson| lesson.typed.percent = event_target_value(&event));
    let own = chosen.clone();
    let done = move |_| all.hand_in(&own);
    let forget = move |_| value.set(UnderWay::default());
    view! {
        <h1>{title}</h1>
        <p>{about}</p>{slope.map(|slope| view! { <p>{slope}</p> })}
        {picture.meaning(session)}
        {written}
        <label>{session.word("lesson-percent")}
            <input type="text" inputmode="decimal" autocomplete="off" prop:value=move || value.with(|lesson| lesson.typed.percent.clone()) on:input=percent/>
        </label>
        <p class="quiet">{session.word("lesson-percent-about")}</p>
        <div class="choices">
            <button type="button" class="main" on:click=done>{session.word("lesson-hand-in")}</button>
            <button type="button" on:click=forget>{session.word("lesson-another-choice")}</button>
        </div>
    }
}

/// The picture to look at, and the rows to type.
fn sheet(
    session: Session,
    value: RwSignal<UnderWay>,
    chosen: &Chosen,
    codes: &[&'static str],
    picture: &Rc<Picture>,
) -> impl IntoView + use<> {
    let rows = Signal::derive(move || value.with(|lesson| lesson.typed.rows.clone()));
    let lengths_only = Signal::derive(move || value.with(|lesson| lesson.typed.lengths_only));
    let put = move |at: usize, row: TypedRow| {
        value.update(|lesson| super::grid::put(&mut lesson.typed.rows, at, row));
    };
    let only = move |event| value.update(|lesson| lesson.typed.lengths_only = event_target_checked(&event));
    let known = codes.iter().filter_map(|code| SPECIES.iter().find(|(own, ..)| own == code));
    let known: Vec<String> = known.map(|(code, common, _)| [code, " ", common].concat()).collect();
    view! {
        <div class="walk" tabindex="0" role="region" aria-label=session.word("lesson-walk-look")>
            <div class="track">{track(session, picture, ().into_any())}</div>
        </div>
        <p class="quiet">{known.join(", ")}". "{session.word(chosen.hint())}</p>
        <label class="option">
            <input type="checkbox" prop:checked=lengths_only on:change=only/><span>{session.word("lesson-lengths-only")}</span>
        </label>
        {grid(session, rows, lengths_only, chosen.unit(), put, || ())}
    }
}
