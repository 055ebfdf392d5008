//! Everything in the notebook that holds some words: sites, readings by line, reader, species or note, plants, protocols,
//! goals and whatever else stands there. It looks on while a person types on, a part at a time.

use crate::route::{self, Route};
use crate::session::Session;
use crate::standing::Standing;
use leptos::prelude::*;
use std::rc::Rc;
use std::time::Duration;
use tautline_survey::message::Message;
use tautline_survey::notebook::find::Wanted;
use tautline_survey::notebook::payload::Payload;
use tautline_survey::revision::RecordId;

/// The kinds of what is found, in the order in which they are shown, each with its heading.
const KINDS: [(&str, &str); 7] = [
    ("site", "app-sites"),
    ("visit", "app-kind-visit"),
    ("line", "app-kind-line"),
    ("plants", "desk-plants"),
    ("protocol", "app-kind-protocol"),
    ("goal", "app-kind-goal"),
    ("", "desk-others"),
];

/// So many of a kind are shown.
const MOST: usize = 25;

/// So many records are looked at in a row; then the browser has its turn.
const PART: usize = 400;

/// A person who types on isn't answered to each letter.
const PAUSE: Duration = Duration::from_millis(150);

/// What was found.
#[derive(Clone)]
struct Hit {
    /// Its place in [`KINDS`].
    kind: usize,
    called: String,
    /// The words around what was looked for.
    around: String,
    to: Route,
    /// Its history, where it is a record.
    record: Option<RecordId>,
}

/// What was found so far.
#[derive(Clone, Default)]
struct Found {
    hits: Vec<Hit>,
    /// All of the notebook was looked through.
    whole: bool,
}

/// The screen.
pub(crate) fn search(words: String) -> impl IntoView {
    let session = Session::here();
    let typed = RwSignal::new(words);
    let found = RwSignal::new_local(Found::default());
    let mut look = leptos::leptos_dom::helpers::debounce(PAUSE, move |()| begin(session, typed, found));
    Effect::new(move || {
        typed.track();
        session.standing();
        look(());
    });
    let type_on = move |event| {
        typed.set(event_target_value(&event));
        // whoever opens a find and comes back sees it again
        route::keep(&Route::Search(typed.get_untracked()));
        found.set(Found::default());
    };
    let shown = move || (!typed.with(|typed| typed.trim().is_empty())).then(|| all(session, &found.get()));
    view! {
        <h1>{session.word("app-search")}</h1>
        <label>{session.word("desk-search-what")}<input type="search" autocomplete="off" prop:value=typed on:input=type_on/></label>
        <div aria-live="polite">{shown}</div>
    }
}

/// Begins to look for what was typed.
fn begin(session: Session, typed: RwSignal<String>, found: RwSignal<Found, LocalStorage>) {
    let Some(text) = typed.try_get_untracked() else { return };
    let wanted = Wanted::of(&text);
    if wanted.is_nothing() {
        found.set(Found::default());
        return;
    }
    let standing = session.standing_untracked();
    let mut hits: Vec<Hit> = Vec::new();
    let sites = session.summaries_untracked();
    for site in sites.sites().keys().filter(|site| wanted.found_in([(*site).clone()]).is_some()) {
        let to = Route::Site(site.clone());
        hits.push(Hit { kind: 0, called: site.clone(), around: String::new(), to, record: None });
    }
    for plant in &standing.input.plants.plants {
        let texts = [plant.code.clone(), plant.name.clone(), plant.common.clone(), plant.groups.join(", ")];
        if wanted.found_in(texts).is_some() {
            let called = format!("{} · {}", plant.code, plant.name);
            let to = Route::Lists("plants".to_owned());
            hits.push(Hit { kind: 3, called, around: plant.common.clone(), to, record: None });
        }
    }
    found.set(Found { hits, whole: false });
    look_on(session, &standing, Rc::new((text, wanted)), 0, typed, found);
}

/// Looks through the next part of the records, and so on, until all are seen or something else was typed.
fn look_on(
    session: Session,
    standing: &Rc<Standing>,
    wanted: Rc<(String, Wanted)>,
    from: usize,
    typed: RwSignal<String>,
    found: RwSignal<Found, LocalStorage>,
) {
    if typed.try_with_untracked(|typed| *typed == wanted.0) != Some(true) {
        return;
    }
    let records = standing.current.standing.values().skip(from).take(PART);
    let mut hits: Vec<Hit> = Vec::new();
    let mut seen = 0;
    for one in records {
        seen += 1;
        // the plant list is looked through plant by plant, and an import is the files' own affair
        if !matches!(one.payload, Payload::Plants(_) | Payload::Import(_)) {
            let around = wanted.1.found(&one.payload, &standing.input.plants);
            hits.extend(around.map(|around| hit(session, &one.payload, around, one.revision.record())));
        }
    }
    let whole = seen < PART;
    found.update(|found| {
        found.hits.extend(hits);
        found.whole = whole;
    });
    if !whole {
        let standing = Rc::clone(standing);
        set_timeout(move || look_on(session, &standing, wanted, from + PART, typed, found), Duration::ZERO);
    }
}

fn hit(session: Session, payload: &Payload, around: String, record: RecordId) -> Hit {
    let own = payload.kind();
    let kind = KINDS.iter().position(|(kind, _)| *kind == own).filter(|&kind| kind > 0);
    let to = match payload {
        Payload::Visit(visit) => Route::Site(visit.site.clone()),
        Payload::Line(line) => Route::Site(line.site.clone()),
        Payload::Protocol(protocol) => Route::Lists(protocol.fingerprint()),
        _ => Route::History(Some(record)),
    };
    Hit {
        kind: kind.unwrap_or(KINDS.len() - 1),
        called: session.say(&payload.called()),
        around,
        to,
        record: Some(record),
    }
}

/// What was found, kind by kind.
fn all(session: Session, found: &Found) -> impl IntoView + use<> {
    let said = match (found.hits.len(), found.whole) {
        (0, true) => session.word("desk-search-nothing"),
        (hits, true) => session.say(&Message::new("desk-search-found").with("found", hits)),
        (hits, false) => session.say(&Message::new("desk-search-so-far").with("found", hits)),
    };
    let kinds = KINDS.iter().enumerate().filter_map(|(kind, (_, heading))| {
        let own: Vec<&Hit> = found.hits.iter().filter(|hit| hit.kind == kind).collect();
        (!own.is_empty()).then(|| {
            let items = own.iter().take(MOST).map(|hit| item(session, hit)).collect_view();
            let more = (own.len() > MOST).then(|| {
                let said = session.say(&Message::new("desk-search-more").with("more", own.len() - MOST));
                view! { <p class="quiet">{said}</p> }
            });
            view! { <section><h2>{session.word(heading)}</h2><ul class="hits">{items}</ul>{more}</section> }
        })
    });
    let kinds = kinds.collect_view();
    view! { <p class="quiet">{said}</p>{kinds} }
}

fn item(session: Session, hit: &Hit) -> impl IntoView + use<> {
    let around = (!hit.around.is_empty() && hit.around != hit.called)
        .then(|| view! { <span class="quiet">{hit.around.clone()}</span> });
    let own = hit.record.map(|record| Route::History(Some(record))).filter(|own| *own != hit.to);
    let history = own.map(|own| {
        let label = session.say(&Message::new("desk-history-of").with("what", hit.called.as_str()));
        view! { <a class="own" href=own.address() aria-label=label>{session.word("app-history")}</a> }
    });
    view! { <li><a href=hit.to.address()>{hit.called.clone()}</a>{around}{history}</li> }
}
