//! A newer version of the app has come and waits: it is offered, and taken when a person says so, never in mid-work.

use crate::session::Session;
use leptos::prelude::*;
use wasm_bindgen::prelude::*;

/// What `web/start.js` sends when a newer version waits.
const EVENT: &str = "tautline-newer";

/// Where it leaves the function that takes it.
const TAKE: &str = "tautlineNewer";

fn waiting() -> Option<js_sys::Function> {
    js_sys::Reflect::get(&js_sys::global(), &TAKE.into()).ok()?.dyn_into().ok()
}

/// The offer; nothing while this is the newest version.
pub(crate) fn offer() -> impl IntoView {
    let session = Session::here();
    let take = RwSignal::new_local(waiting());
    let came = Closure::<dyn Fn()>::new(move || take.set(waiting()));
    if let Some(window) = web_sys::window() {
        // without it the newer version comes when all windows have been closed
        let _ = window.add_event_listener_with_callback(EVENT, came.as_ref().unchecked_ref());
    }
    came.forget();
    move || {
        take.get().map(|take| {
            let now = move |_| {
                // the worker answers by taking over, and the page is loaded again
                let _ = take.call0(&JsValue::NULL);
            };
            view! {
                <aside class="newer" aria-label=session.word("app-newer-label")>
                    <p>{session.word("app-newer")}</p>
                    <button type="button" on:click=now>{session.word("app-newer-take")}</button>
                </aside>
            }
        })
    }
}
