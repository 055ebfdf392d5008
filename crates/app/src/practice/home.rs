//! Where to begin, and who practises.

use super::kept::Kept;
use super::lesson::Settings;
use super::{SCREENS, address};
use crate::session::Session;
use leptos::prelude::*;

/// The screen.
pub(super) fn home() -> impl IntoView {
    let session = Session::here();
    let settings = Kept::<Settings>::of(session, Settings::NAME);
    let link = move |(rest, name): (&'static str, &'static str)| {
        view! {
            <li><a href=address(rest)>
                <span class="site">{session.word(name)}</span>
                <span class="quiet">{session.word(&format!("{name}-about"))}</span>
            </a></li>
        }
    };
    let (learner, coach) = SCREENS.split_at(6);
    view! {
        <h1>{session.word("lesson-practice")}</h1>
        <p>{session.word("lesson-practice-about")}</p>
        <label>{session.word("lesson-name")}
            <input type="text" autocomplete="nickname" prop:value=move || settings.value.with(|settings| settings.name.clone())
                on:input=move |event| settings.value.update(|settings| settings.name = event_target_value(&event))/>
        </label>
        <p class="quiet">{session.word("lesson-name-about")}</p>
        <ul class="sites ways">{learner.iter().copied().map(link).collect_view()}</ul>
        <h2>{session.word("lesson-coach")}</h2>
        <ul class="sites ways">{coach.iter().copied().map(link).collect_view()}</ul>
        <p class="quiet">{session.word("practice-made-up")}</p>
    }
}
