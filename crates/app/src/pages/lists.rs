//! What readings stand on: protocols and the plant list, written here and kept as revisions.
//!
//! | what | module |
//! | --- | --- |
//! | one protocol | [`protocol`] |
//! | the plant list | [`plants`] |

mod plants;
mod protocol;

use crate::route::Route;
use crate::session::Session;
use leptos::prelude::*;
use std::collections::BTreeMap;
use tautline_survey::message::Message;

/// The name under which the plant list is opened, and that of a protocol that is yet to be written.
const PLANTS: &str = "plants";
const NEW: &str = "new";

/// The screen: both lists, the plants, or the protocol of a fingerprint.
pub(crate) fn lists(which: &str) -> AnyView {
    match which {
        "" => both().into_any(),
        PLANTS => plants::plants().into_any(),
        print => protocol::protocol(print.to_owned()).into_any(),
    }
}

fn both() -> impl IntoView {
    let session = Session::here();
    let list = move || {
        let standing = session.standing();
        let mut read: BTreeMap<&str, usize> = BTreeMap::new();
        for visit in &standing.input.visits {
            *read.entry(&visit.protocol).or_default() += 1;
        }
        let protocols = standing.current.protocols();
        let protocols = protocols.iter().map(|protocol| {
            let print = protocol.fingerprint();
            let lines = read.get(print.as_str()).copied().unwrap_or(0);
            let said = session.say(&Message::new("desk-protocol-read").with("lines", lines));
            let name = if protocol.name.is_empty() { print.chars().take(12).collect() } else { protocol.name.clone() };
            view! { <li><a href=Route::Lists(print).address()>{name}</a><span class="quiet">{said}</span></li> }
        });
        let protocols = protocols.collect_view();
        let plants = Message::new("desk-plants-count").with("plants", standing.input.plants.plants.len());
        view! {
            <section><h2>{session.word("app-kind-protocol")}</h2>
                <ul class="hits">{protocols}</ul>
                <p><a class="button" href=Route::Lists(NEW.to_owned()).address()>{session.word("desk-protocol-new")}</a></p>
            </section>
            <section><h2>{session.word("desk-plants")}</h2>
                <ul class="hits"><li><a href=Route::Lists(PLANTS.to_owned()).address()>{session.say(&plants)}</a></li></ul>
            </section>
        }
    };
    view! { <h1>{session.word("app-lists")}</h1>{list} }
}
