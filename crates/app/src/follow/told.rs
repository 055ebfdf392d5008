//! A page of the report on a screen, and the same as a file.

use super::slowly::Slow;
use crate::parts::files::hand_out;
use crate::parts::sheet::sheet;
use crate::session::Session;
use leptos::prelude::*;
use tautline_report::Followed;

/// The page as it stands, with a way to take it along.
pub(super) fn told(session: Session, followed: &Followed, file: String) -> impl IntoView + use<> {
    let page = followed.clone();
    let take = move |_| hand_out(&file, "text/html", &page.page());
    view! {
        <p class="choices"><button type="button" on:click=take>{session.word("follow-take-page")}</button></p>
        {sheet(followed.body(), tautline_report::style())}
    }
}

/// That an answer is being worked out, for eyes and ears.
pub(super) fn works<T>(session: Session, slow: Slow<T>) -> impl IntoView {
    view! {
        <p class="works quiet" role="status">
            {move || slow.works.get().then(|| session.word("follow-working"))}
        </p>
    }
}
