//! Whether what is on this device is in the shared notebook too, in a word.

use crate::route::Route;
use crate::session::{Session, Sharing};
use leptos::prelude::*;
use tautline_survey::message::Message;
use tautline_survey::sync::Badge;

/// The badge, which leads to the screen where something can be done about it.
pub(crate) fn badge() -> impl IntoView {
    let session = Session::here();
    let address = move || match session.badge.get() {
        Badge::ToSettle(_) => Route::Settle.address(),
        _ => Route::Notebook.address(),
    };
    let said = move || {
        let message = match session.badge.get() {
            Badge::Here(records) => Message::new("app-badge-here").with("records", records),
            Badge::ToSettle(things) => Message::new("app-badge-to-settle").with("things", things),
            Badge::Sent => Message::new("app-badge-sent"),
        };
        session.say(&message)
    };
    let under_way = move || session.sharing.get() == Sharing::UnderWay;
    view! {
        <a href=address class=move || format!("badge {}", session.badge.get().code()) class:under-way=under_way>{said}</a>
    }
}
