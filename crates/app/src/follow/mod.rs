//! Sites over the years, and readers side by side: what changed, what a trend says, whether people read alike.
//!
//! | what | module |
//! | --- | --- |
//! | answers that take a while, in slices | `slowly` |
//! | what is asked, as fields | `ask` |
//! | a page of the report on a screen, and as a file | `told` |
//! | one site: two visits, or all | `site` |
//! | all sites | `all` |
//! | readers of the same lines | `readers` |
//! | the log of calibrations: who is due, certificates | `log` |
//! | where the doubt comes from, and what to buy next | `sources` |

mod all;
mod ask;
mod log;
mod readers;
mod site;
mod slowly;
mod sources;
mod told;

use crate::route::Route;
use crate::session::Session;
use leptos::prelude::*;

/// The parts of what readers come to, by their addresses.
const PARTS: [(&str, &str); 3] =
    [("", "follow-agree-readers"), ("log", "follow-agree-log"), ("sources", "follow-agree-sources")];

/// The screen that a route of this area names.
pub(crate) fn screen(route: &Route) -> AnyView {
    let session = Session::here();
    let screen = match route {
        Route::Follow(Some(site)) => of_site(site.clone()),
        Route::Agree(part) => agree(part),
        _ => once_read(all::all),
    };
    view! { <div class="follow">{screen}{onward(session, route)}</div> }.into_any()
}

/// A screen that needs the notebook whole.
fn once_read<V: IntoView + 'static>(screen: impl Fn(Session) -> V + Send + 'static) -> AnyView {
    let session = Session::here();
    (move || {
        if session.is_read.get() {
            screen(session).into_any()
        } else {
            view! { <p class="quiet">{session.word("app-reading")}</p> }.into_any()
        }
    })
    .into_any()
}

fn of_site(name: String) -> AnyView {
    once_read(move |session| site::site(session, name.clone()))
}

fn agree(part: &str) -> AnyView {
    let session = Session::here();
    let known = PARTS.iter().find(|(address, _)| *address == part).unwrap_or(&PARTS[0]);
    let here = known.0;
    let links = PARTS.map(|(address, name)| {
        let to = Route::Agree(address.to_owned()).address();
        let current = (address == here).then_some("page");
        view! { <a class="button" href=to aria-current=current>{session.word(name)}</a> }
    });
    let screen = match here {
        "log" => once_read(log::log),
        "sources" => once_read(sources::sources),
        _ => once_read(readers::readers),
    };
    view! {
        <h1>{session.word("follow-agree-screen")}</h1>
        <nav class="choices" aria-label=session.word("follow-agree-parts")>{links.collect_view()}</nav>
        {screen}
    }
    .into_any()
}

/// Where else one may want to go.
fn onward(session: Session, route: &Route) -> impl IntoView + use<> {
    let mut to = Vec::new();
    if let Route::Follow(Some(site)) = route {
        to.push((Route::Site(site.clone()), session.word("follow-to-site")));
    }
    if *route != Route::Follow(None) {
        to.push((Route::Follow(None), session.word("follow-to-all")));
    }
    if !matches!(route, Route::Agree(_)) {
        to.push((Route::Agree(String::new()), session.word("follow-to-agree")));
    }
    let links = to.into_iter().map(|(to, name)| view! { <a class="button" href=to.address()>{name}</a> });
    view! { <nav class="choices onward" aria-label=session.word("follow-onward")>{links.collect_view()}</nav> }
}
