//! The frame around every screen: the tape with the app's name, the way to the other screens, the badge, what was said.

use crate::device::here;
use crate::newer;
use crate::pages;
use crate::parts::badge::badge;
use crate::route::{self, Route};
use crate::session::Session;
use crate::settings::Theme;
use crate::words::Spoken;
use leptos::prelude::*;
use tautline_store::KeepError;
use tautline_survey::message::Message;
use tautline_survey::sync::Badge;
use tautline_words::Words;

/// When a screen stands in the bar.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Stands {
    /// Always.
    Always,
    /// Where there is room for it.
    Wide,
    /// Where there isn't.
    Narrow,
}

impl Stands {
    /// Its name in the stylesheet.
    const fn code(self) -> &'static str {
        match self {
            Self::Always => "always",
            Self::Wide => "wide",
            Self::Narrow => "narrow",
        }
    }
}

/// The screens in the order of the job, and when they stand in the bar.
const BAR: [(Route, Stands); 12] = [
    (Route::Sites, Stands::Always),
    (Route::Plan(String::new()), Stands::Always),
    (Route::Read, Stands::Always),
    (Route::TakeIn, Stands::Wide),
    (Route::Settle, Stands::Wide),
    (Route::Follow(None), Stands::Wide),
    (Route::Agree(String::new()), Stands::Wide),
    (Route::Practice(String::new()), Stands::Always),
    (Route::Search(String::new()), Stands::Wide),
    (Route::Handbook(String::new()), Stands::Wide),
    (Route::Notebook, Stands::Wide),
    (Route::More, Stands::Narrow),
];

/// The screens for which a phone's bar has no room, each with what it is for.
pub(crate) fn more() -> impl IntoView {
    let session = Session::here();
    let ways = BAR.into_iter().filter(|(_, stands)| *stands == Stands::Wide).map(|(to, _)| {
        let (name, what) = (session.word(to.name()), session.word(&format!("{}-for", to.name())));
        view! { <li><a href=to.address()><span class="site">{name}</span><span class="quiet">{what}</span></a></li> }
    });
    view! { <h1>{session.word("app-more")}</h1><ul class="sites">{ways.collect_view()}</ul> }
}

/// The app, or why the notebook can't be opened.
pub(crate) fn shell(opened: Result<Session, (KeepError, Spoken)>) -> AnyView {
    match opened {
        Ok(session) => open(session).into_any(),
        Err((error, spoken)) => closed(&error, &spoken.words).into_any(),
    }
}

fn open(session: Session) -> impl IntoView {
    provide_context(session);
    let route = route::current();
    follow_settings(session);
    follow_route(session, route);
    session.read();
    frame(session, route)
}

fn frame(session: Session, route: ReadSignal<Route>) -> impl IntoView {
    view! {
        <a class="skip" href="#main" on:click=move |event| { event.prevent_default(); focus_main(); }>{session.word("app-skip")}</a>
        <header class="top">
            <a class="name" href=Route::Sites.address()>"tautline"</a>
            {badge()}
        </header>
        <nav class="bar" aria-label=session.word("app-screens")>
            {BAR.map(|(to, stands)| {
                let address = to.address();
                let (name, icon) = (session.word(to.name()), to.name());
                let here = move || (route.get().name() == to.name()).then_some("page");
                view! { <a href=address aria-current=here class=format!("to {icon} {}", stands.code())>{name}</a> }
            }).collect_view()}
        </nav>
        {newer::offer()}
        {moving(session)}
        <main id="main" tabindex="-1">{move || pages::screen(&route.get())}</main>
        <p class="said" role="status" aria-live="polite">{session.said}</p>
    }
}

/// That the notebook moves to another address, and what to do first: what is here isn't seen from there.
fn moving(session: Session) -> impl IntoView {
    move || {
        session.moving_to.get().map(|to| {
            let code = match session.badge.get() {
                Badge::Here(_) => "app-moving-send-first",
                Badge::ToSettle(_) | Badge::Sent => "app-moving-sent",
            };
            let said = session.say(&Message::new(code).with("to", to));
            view! {
                <aside class="newer" aria-label=session.word("app-moving-label")>
                    <p>{said}</p>
                    <a class="button" href=Route::Notebook.address()>{session.word("app-notebook")}</a>
                </aside>
            }
        })
    }
}

/// Without the notebook there is no app; why, and that nothing of it is lost.
fn closed(error: &KeepError, words: &Words) -> impl IntoView + use<> {
    let said = words.say(&error.message(&words.word("app-this-device")));
    view! { <main id="main"><h1>{words.word("app-closed")}</h1><p>{said}</p><p>{words.word("app-closed-way-out")}</p></main> }
}

/// Theme, letters and language stand on the root element, where the stylesheet and those who read aloud look for them.
fn follow_settings(session: Session) {
    Effect::new(move || {
        let (theme, letters) = session.settings.with(|settings| (settings.theme, settings.letters));
        let root = document().document_element();
        let Some(root) = root else { return };
        // attributes with plain names are always taken
        let _ = match theme {
            Theme::Device => root.remove_attribute("data-theme"),
            theme => root.set_attribute("data-theme", theme.code()),
        };
        let _ = root.set_attribute("data-letters", letters.code());
        let _ = root.set_attribute("lang", session.words().language());
    });
}

/// A new screen has a new title, and whoever listens is told of it.
fn follow_route(session: Session, route: ReadSignal<Route>) {
    Effect::new(move |before: Option<Route>| {
        let now = route.get();
        let name = match &now {
            Route::Site(site) => site.clone(),
            Route::Follow(Some(site)) => format!("{site}, {}", session.word(now.name())),
            other => session.word(other.name()),
        };
        title(&format!("{name} · tautline"));
        if before.is_some_and(|before| before != now) {
            focus_main();
        }
        now
    });
}

/// The page's title.
pub(crate) fn title(text: &str) {
    document().set_title(text);
}

fn focus_main() {
    use wasm_bindgen::JsCast as _;
    if let Some(main) =
        document().get_element_by_id("main").and_then(|main| main.dyn_into::<web_sys::HtmlElement>().ok())
    {
        // an element that can't have the focus keeps none
        let _ = main.focus();
    }
}

/// Says to whoever looks from outside that the app is there, and when it was opened.
pub(crate) fn opened() {
    mark("data-opened", &here::today());
}

/// Says to them that the whole notebook is at hand, too.
pub(crate) fn at_hand() {
    mark("data-read", "");
}

fn mark(name: &str, value: &str) {
    if let Some(root) = document().document_element() {
        // an attribute with a plain name is always taken
        let _ = root.set_attribute(name, value);
    }
}
