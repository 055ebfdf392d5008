//! The notebook itself: whether it is elsewhere too, a copy of everything, and what a person sets on this device.

use super::own;
use crate::device::here;
use crate::parts::files::hand_out_parts;
use crate::route::Route;
use crate::session::{Session, Sharing};
use leptos::prelude::*;
use leptos::task::spawn_local;
use tautline_survey::message::Message;
use wasm_bindgen_futures::JsFuture;

/// The screen.
pub(crate) fn notebook() -> impl IntoView {
    let session = Session::here();
    view! {
        <h1>{session.word("app-notebook")}</h1>
        {ways(session)}
        {sharing(session)}
        {copying(session)}
        {persisting(session)}
        {own::own(session)}
        <p class="quiet">{session.say(&Message::new("app-version").with("version", env!("CARGO_PKG_VERSION")))}</p>
    }
}

/// The screens about everything in the notebook.
fn ways(session: Session) -> impl IntoView {
    let ways = [Route::Search(String::new()), Route::History(None), Route::Lists(String::new())];
    let links = ways.map(|to| view! { <a class="button" href=to.address()>{session.word(to.name())}</a> });
    view! { <p class="choices">{links.collect_view()}</p> }
}

fn sharing(session: Session) -> impl IntoView {
    let said = move || {
        session.word(match session.sharing.get() {
            Sharing::Unknown | Sharing::UnderWay => "app-sharing-under-way",
            Sharing::Nobody => "app-sharing-nobody",
            Sharing::Done => "app-sharing-done",
        })
    };
    view! {
        <section><h2>{session.word("app-sharing")}</h2><p>{said}</p>
            <button type="button" on:click=move |_| session.share()>{session.word("app-share-now")}</button>
        </section>
    }
}

fn copying(session: Session) -> impl IntoView {
    let copy = move |_| {
        session.all(move |parts| {
            spawn_local(async move {
                // lines that are being read go along: a device that is lost takes nothing with it
                let unfinished = match crate::device::drafts::unfinished().await {
                    Ok(lines) => lines,
                    Err(error) => return session.tell_fault(&error),
                };
                for line in unfinished {
                    parts.push(&(line + "\n").into());
                }
                hand_out_parts(&format!("tautline-{}.jsonl", here::today()), "application/jsonl", &parts);
            });
        });
    };
    view! {
        <section><h2>{session.word("app-copy")}</h2><p>{session.word("app-copy-what")}</p>
            <button type="button" on:click=copy>{session.word("app-copy-now")}</button>
        </section>
    }
}

/// Whether the browser promises to keep what is here when it runs short of room.
fn persisting(session: Session) -> impl IntoView {
    let (kept, set) = signal(None::<bool>);
    let ask = move |asking: bool| {
        spawn_local(async move {
            let Some(storage) = web_sys::window().map(|window| window.navigator().storage()) else { return };
            let asked = if asking { storage.persist() } else { storage.persisted() };
            if let Ok(asked) = asked {
                set.set(JsFuture::from(asked).await.ok().and_then(|kept| kept.as_bool()));
            }
        });
    };
    ask(false);
    let said = move || {
        session.word(match kept.get() {
            Some(true) => "app-persist-promised",
            Some(false) => "app-persist-not",
            None => "app-persist-unknown",
        })
    };
    view! {
        <section><h2>{session.word("app-persist")}</h2><p>{said}</p>
            {move || (kept.get() != Some(true)).then(|| view! { <button type="button" on:click=move |_| ask(true)>{session.word("app-persist-ask")}</button> })}
        </section>
    }
}
