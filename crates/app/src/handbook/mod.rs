//! The method handbook: pages made by the web build, fetched as one file when the first is opened, and found by their words.

use crate::route::Route;
use crate::session::Session;
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::sync::OnceLock;
use tautline_handbook::{Page, find};
use tautline_survey::message::Message;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;

/// The file that the web build makes of `docs/handbook`.
const FILE: &str = "handbook.json";

/// All pages once they are there; they stay for the next screen of the handbook.
type Pages = &'static [Page];

static FETCHED: OnceLock<Vec<Page>> = OnceLock::new();

/// What a screen waits for.
#[derive(Clone, Copy)]
enum Waiting {
    Fetching,
    Missing,
    There(Pages),
}

/// All pages, or the one that the address names.
pub(crate) fn screen(page: &str) -> AnyView {
    let session = Session::here();
    let there = FETCHED.get().map(Vec::as_slice);
    let (waiting, set) = signal(there.map_or(Waiting::Fetching, Waiting::There));
    if matches!(waiting.get_untracked(), Waiting::Fetching) {
        spawn_local(async move {
            set.set(fetched().await.map_or(Waiting::Missing, Waiting::There));
        });
    }
    let name = page.to_owned();
    let english = (session.words().language() != "en")
        .then(|| view! { <p class="quiet">{session.word("handbook-english")}</p> });
    let shown = move || match waiting.get() {
        Waiting::Fetching => view! { <p class="quiet">{session.word("handbook-fetching")}</p> }.into_any(),
        Waiting::Missing => view! { <p role="alert">{session.word("handbook-missing")}</p> }.into_any(),
        Waiting::There(pages) if name.is_empty() => contents(session, pages).into_any(),
        Waiting::There(pages) => match pages.iter().position(|page| page.name == name) {
            Some(at) => one(session, pages, at).into_any(),
            None => unknown(session, &name).into_any(),
        },
    };
    view! { <div class="handbook">{english}{shown}</div> }.into_any()
}

/// The pages, kept for the next time. Their words are taken from their markup, so that the file holds them once.
async fn fetched() -> Option<Pages> {
    let response = JsFuture::from(web_sys::window()?.fetch_with_str(FILE)).await.ok()?;
    let response = response.dyn_into::<web_sys::Response>().ok().filter(web_sys::Response::ok)?;
    let text = JsFuture::from(response.text().ok()?).await.ok()?.as_string()?;
    let mut pages: Vec<Page> = serde_json::from_str(&text).ok()?;
    for page in &mut pages {
        let apart = document().create_element("div").ok()?;
        apart.set_inner_html(&page.html);
        page.text = format!("{} {}", page.about, apart.text_content().unwrap_or_default());
    }
    Some(FETCHED.get_or_init(|| pages))
}

fn link(page: &Page) -> impl IntoView + use<> {
    let address = Route::Handbook(page.name.clone()).address();
    view! {
        <li><a href=address><strong>{page.title.clone()}</strong><span class="quiet">{page.about.clone()}</span></a></li>
    }
}

/// All pages part by part, or those that hold the words that are looked for.
fn contents(session: Session, pages: Pages) -> impl IntoView {
    let (wanted, want) = signal(String::new());
    let list = move || {
        let wanted = wanted.get();
        if wanted.trim().is_empty() {
            return parts(pages).into_any();
        }
        let found = find(pages, &wanted);
        view! { <ul class="pages">{found.into_iter().map(link).collect_view()}</ul> }.into_any()
    };
    let said = move || {
        wanted.with(|wanted| {
            (!wanted.trim().is_empty()).then(|| {
                let found = find(pages, wanted).len();
                session.say(&Message::new("handbook-found").with("pages", found))
            })
        })
    };
    view! {
        <h1>{session.word("app-handbook")}</h1>
        <p>{session.word("handbook-about")}</p>
        <label class="find">{session.word("handbook-find")}<input type="search" autocomplete="off" on:input=move |event| want.set(event_target_value(&event))/></label>
        <p class="quiet" role="status">{said}</p>
        <div lang="en">{list}</div>
    }
}

fn parts(pages: &[Page]) -> impl IntoView + use<> {
    let parts = pages.chunk_by(|one, next| one.part == next.part).map(|part| {
        let heading = part.first().map(|page| page.part.clone());
        view! { <h2>{heading}</h2><ul class="pages">{part.iter().map(link).collect_view()}</ul> }
    });
    parts.collect_view()
}

/// One page, with the way to those beside it.
fn one(session: Session, pages: &[Page], at: usize) -> impl IntoView + use<> {
    let page = &pages[at];
    let to = |code: &'static str, at: Option<usize>| {
        let page = at.and_then(|at| pages.get(at))?;
        let address = Route::Handbook(page.name.clone()).address();
        let (said, title) = (session.word(code), page.title.clone());
        Some(
            view! { <a class="button" href=address><span class="quiet">{said}</span><span lang="en">{title}</span></a> },
        )
    };
    view! {
        <p><a class="back" href=Route::Handbook(String::new()).address()>{session.word("handbook-all")}</a></p>
        <article lang="en">
            <h1>{page.title.clone()}</h1>
            <p class="about">{page.about.clone()}</p>
            <div inner_html=page.html.clone()></div>
        </article>
        <nav class="beside" aria-label=session.word("handbook-beside")>
            {to("handbook-before", at.checked_sub(1))}
            {to("handbook-after", Some(at + 1))}
        </nav>
    }
}

fn unknown(session: Session, name: &str) -> impl IntoView + use<> {
    let said = session.say(&Message::new("handbook-no-page").with("page", name));
    view! {
        <h1>{session.word("app-handbook")}</h1>
        <p>{said}</p>
        <p><a class="back" href=Route::Handbook(String::new()).address()>{session.word("handbook-all")}</a></p>
    }
}
