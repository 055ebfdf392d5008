//! Which screen an address names. Addresses live behind the `#`, so that any folder of files can serve the app.

use leptos::prelude::*;
use tautline_survey::date::Date;
use tautline_survey::photo::{OfVisit, Shows};
use tautline_survey::revision::RecordId;
use wasm_bindgen::prelude::*;

/// A screen.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Route {
    /// All sites.
    Sites,
    /// One site.
    Site(String),
    /// Which line is read next.
    Read,
    /// A line that is being read, by the name of its draft.
    Line(String),
    /// A step of a plan, by its word.
    Plan(String),
    /// A site over its years; all sites where none is named.
    Follow(Option<String>),
    /// Readers side by side, or a part of that by its name.
    Agree(String),
    /// A photo that is being taken.
    Photo(Shot),
    /// The figures as data.
    Figures,
    /// Files and sheets taken in.
    TakeIn,
    /// What two people wrote unlike.
    Settle,
    /// The notebook itself: sharing, copying, settings.
    Notebook,
    /// The way to the screens that have no room in the bar of a phone.
    More,
    /// Practice: lessons, drills, a coach's desk, by the rest of the address.
    Practice(String),
    /// A page of the method handbook; without a name all of them.
    Handbook(String),
    /// What was done in the notebook; of one record, where one is named.
    History(Option<RecordId>),
    /// Everything that holds a word.
    Search(String),
    /// Protocols and the plant list.
    Lists(String),
}

/// What a photo is about to show, and the visit that it is kept with.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Shot {
    pub(crate) site: String,
    pub(crate) line: String,
    pub(crate) shows: Shows,
    pub(crate) visit: Option<OfVisit>,
    /// What is to be said of it, such as the intercept that it shows.
    pub(crate) caption: String,
}

impl Shot {
    fn read(rest: &str) -> Option<Self> {
        let parts: Vec<String> = rest.split('/').map(decoded_or_empty).collect();
        let of_visit = |date: &str, reader: &String, recorder: &String| {
            let (reader, recorder) = (reader.clone(), recorder.clone());
            Some(OfVisit { date: Date::read(date), reader, recorder })
        };
        let (site, line, shows, visit, caption) = match parts.as_slice() {
            [site, line, shows] => (site, line, shows, None, ""),
            [site, line, shows, date, reader, recorder] => {
                (site, line, shows, of_visit(date, reader, recorder), "")
            }
            [site, line, shows, date, reader, recorder, caption] => {
                (site, line, shows, of_visit(date, reader, recorder), caption.as_str())
            }
            _ => return None,
        };
        let shows = Shows::read(shows).filter(|shows| !shows.is_of_line() || !line.is_empty())?;
        let (site, line, caption) = (site.clone(), line.clone(), caption.to_owned());
        (!site.is_empty()).then_some(Self { site, line, shows, visit, caption })
    }

    fn address(&self) -> String {
        let mut parts = vec![self.site.clone(), self.line.clone(), self.shows.word().to_owned()];
        if let Some(visit) = &self.visit {
            let date = visit.date.map_or_else(String::new, |date| date.to_string());
            parts.extend([date, visit.reader.clone(), visit.recorder.clone()]);
            if !self.caption.is_empty() {
                parts.push(self.caption.clone());
            }
        }
        let parts: Vec<String> =
            parts.iter().map(|part| String::from(js_sys::encode_uri_component(part))).collect();
        format!("#/photo/{}", parts.join("/"))
    }
}

impl Route {
    /// The screen that an address names; all sites where it names none.
    pub(crate) fn read(hash: &str) -> Self {
        let path = hash.trim_start_matches('#').trim_start_matches('/');
        let (first, rest) = path.split_once('/').unwrap_or((path, ""));
        match first {
            "site" => decoded(rest).map_or(Self::Sites, Self::Site),
            "read" => decoded(rest).map_or(Self::Read, Self::Line),
            "plan" => Self::Plan(rest.to_owned()),
            "follow" => Self::Follow(decoded(rest)),
            "agree" => Self::Agree(rest.to_owned()),
            "photo" => Shot::read(rest).map_or(Self::Read, Self::Photo),
            "figures" => Self::Figures,
            "take-in" => Self::TakeIn,
            "settle" => Self::Settle,
            "notebook" => Self::Notebook,
            "more" => Self::More,
            "practice" => Self::Practice(rest.to_owned()),
            "handbook" => Self::Handbook(decoded(rest).unwrap_or_default()),
            "history" => Self::History(RecordId::read(rest)),
            "search" => Self::Search(decoded(rest).unwrap_or_default()),
            "lists" => Self::Lists(decoded(rest).unwrap_or_default()),
            _ => Self::Sites,
        }
    }

    /// Its address.
    pub(crate) fn address(&self) -> String {
        match self {
            Self::Sites => "#/".to_owned(),
            Self::Site(site) => format!("#/site/{}", String::from(js_sys::encode_uri_component(site))),
            Self::Read => "#/read".to_owned(),
            Self::Line(draft) => format!("#/read/{}", String::from(js_sys::encode_uri_component(draft))),
            Self::Plan(step) if step.is_empty() => "#/plan".to_owned(),
            Self::Plan(step) => format!("#/plan/{step}"),
            Self::Follow(None) => "#/follow".to_owned(),
            Self::Follow(Some(site)) => {
                format!("#/follow/{}", String::from(js_sys::encode_uri_component(site)))
            }
            Self::Agree(part) if part.is_empty() => "#/agree".to_owned(),
            Self::Agree(part) => format!("#/agree/{part}"),
            Self::Photo(shot) => shot.address(),
            Self::Figures => "#/figures".to_owned(),
            Self::TakeIn => "#/take-in".to_owned(),
            Self::Settle => "#/settle".to_owned(),
            Self::Notebook => "#/notebook".to_owned(),
            Self::More => "#/more".to_owned(),
            Self::Practice(rest) => format!("#/practice/{rest}").trim_end_matches('/').to_owned(),
            Self::Handbook(page) if page.is_empty() => "#/handbook".to_owned(),
            Self::Handbook(page) => {
                format!("#/handbook/{}", String::from(js_sys::encode_uri_component(page)))
            }
            Self::History(record) => {
                format!("#/history/{}", record.map(|one| one.to_string()).unwrap_or_default())
            }
            Self::Search(words) => format!("#/search/{}", String::from(js_sys::encode_uri_component(words))),
            Self::Lists(which) => format!("#/lists/{}", String::from(js_sys::encode_uri_component(which))),
        }
    }

    /// The catalogue's key of its name.
    pub(crate) const fn name(&self) -> &'static str {
        match self {
            Self::Sites | Self::Site(_) => "app-sites",
            Self::Plan(_) => "app-plan",
            Self::Follow(_) => "app-follow",
            Self::Agree(_) => "app-agree",
            Self::Read | Self::Line(_) | Self::Photo(_) => "read-lines",
            Self::Figures => "app-figures",
            Self::TakeIn => "app-take-in",
            Self::Settle => "app-settle",
            Self::Notebook => "app-notebook",
            Self::More => "app-more",
            Self::Practice(_) => "app-practice",
            Self::Handbook(_) => "app-handbook",
            Self::History(_) => "app-history",
            Self::Search(_) => "app-search",
            Self::Lists(_) => "app-lists",
        }
    }
}

fn decoded(text: &str) -> Option<String> {
    Some(decoded_or_empty(text)).filter(|name| !name.is_empty())
}

fn decoded_or_empty(text: &str) -> String {
    js_sys::decode_uri_component(text).map_or_else(|_| String::new(), String::from)
}

fn hash() -> String {
    web_sys::window().and_then(|window| window.location().hash().ok()).unwrap_or_default()
}

/// The screen that the address names now, and ever after.
pub(crate) fn current() -> ReadSignal<Route> {
    let (route, set) = signal(Route::read(&hash()));
    let changed = Closure::<dyn Fn()>::new(move || set.set(Route::read(&hash())));
    if let Some(window) = web_sys::window() {
        // without it the first screen stays; nothing is lost
        let _ = window.add_event_listener_with_callback("hashchange", changed.as_ref().unchecked_ref());
    }
    changed.forget();
    route
}

/// Goes to another screen.
pub(crate) fn go(route: &Route) {
    if let Some(window) = web_sys::window() {
        // an address of our own is always taken
        let _ = window.location().set_hash(&route.address());
    }
}

/// Names the screen that is shown by another address, which the way back leads to.
pub(crate) fn keep(route: &Route) {
    let history = web_sys::window().and_then(|window| window.history().ok());
    if let Some(history) = history {
        // an address of our own is always taken
        let _ = history.replace_state_with_url(&JsValue::NULL, "", Some(&route.address()));
    }
}

/// Whether the address asks for the suite of the store.
#[cfg(feature = "conformance")]
pub(crate) fn wants_conformance() -> bool {
    hash() == "#conformance"
}
