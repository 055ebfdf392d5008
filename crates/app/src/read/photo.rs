//! A photo of a line's end, a view, something met or the sheet: through the camera with the last photo of the same view over
//! it, or from a file; looked at, and then kept.

use super::viewfinder::Camera;
use crate::device::{Bytes, here};
use crate::parts::camera::{Small, smaller, still};
use crate::parts::picture::{Address, Read, kept};
use crate::route::{Route, Shot};
use crate::session::Session;
use leptos::html;
use leptos::prelude::*;
use leptos::task::spawn_local;
use tautline_exchange::photo::written;
use tautline_survey::canonical::sha256_hex;
use tautline_survey::date::Date;
use tautline_survey::draft::Setup;
use tautline_survey::message::{Message, Value};
use tautline_survey::notebook::hand::Draft;
use tautline_survey::notebook::payload::Payload;
use tautline_survey::photo::{Media, OfVisit, Photo, Shows};
use wasm_bindgen::JsCast as _;
use wasm_bindgen_futures::JsFuture;
use web_sys::{File, HtmlInputElement, HtmlVideoElement};

/// How strongly the last photo may lie over the picture, from not at all to alone; the stylesheet has one for each.
const STRONGEST: usize = 4;

/// A photo that was taken and not kept yet.
#[derive(Clone)]
struct Taken {
    small: Small,
    date: Option<Date>,
}

/// What came of asking the browser for a camera.
enum Asked {
    /// Nothing yet.
    Waiting,
    /// A camera.
    Given(Camera),
    /// That there is none.
    None,
}

/// What stands behind the screen.
#[derive(Clone, Copy)]
struct Taking {
    session: Session,
    shot: StoredValue<Shot>,
    taken: RwSignal<Option<Taken>>,
    camera: RwSignal<Asked, LocalStorage>,
    /// Where the camera is shown; another place each time that a photo is taken again.
    video: StoredValue<Option<NodeRef<html::Video>>>,
}

/// The ways to the photos that are kept with a reading.
pub(super) fn ways(session: Session, site: &str, line: &str, visit: &OfVisit) -> impl IntoView + use<> {
    let way = |shows: Shows| {
        let (site, line) = (site.to_owned(), line.to_owned());
        let shot = Shot { site, line, shows, visit: Some(visit.clone()), caption: String::new() };
        let said = session.say(&Message::new("field-photo").with("shows", Value::Word(shows.code())));
        view! { <a class="button" href=Route::Photo(shot).address()>{said}</a> }
    };
    let ways = [Shows::Start, Shows::End, Shows::Visit, Shows::Sheet].map(way);
    view! { <p class="choices" role="group" aria-label=session.word("field-photos")>{ways.collect_view()}</p> }
}

/// The way to a photo of one intercept, which it names.
pub(super) fn way_to_row(session: Session, setup: &Setup, row: String) -> impl IntoView + use<> {
    let shot = Shot {
        site: setup.site.clone(),
        line: setup.line.clone(),
        shows: Shows::Visit,
        visit: Some(of_draft(setup)),
        caption: row,
    };
    view! { <a class="button" href=Route::Photo(shot).address()>{session.word("field-photo-of-row")}</a> }
}

/// The visit that a draft becomes.
pub(super) fn of_draft(setup: &Setup) -> OfVisit {
    OfVisit { date: setup.date, reader: setup.reader.clone(), recorder: setup.recorder.clone() }
}

/// The screen.
pub(crate) fn photo(shot: Shot) -> impl IntoView {
    let session = Session::here();
    // the last photo stands in the notebook, so that is read first
    move || session.is_read.get().then(|| screen(session, &shot))
}

fn screen(session: Session, shot: &Shot) -> impl IntoView + use<> {
    let taking = Taking {
        session,
        shot: StoredValue::new(shot.clone()),
        taken: RwSignal::new(None),
        camera: RwSignal::new_local(Asked::Waiting),
        video: StoredValue::new(None),
    };
    spawn_local(async move {
        // whoever has left the screen meanwhile lets the camera go here
        taking.camera.try_set(Camera::open().await.map_or(Asked::None, Asked::Given));
    });
    let heading = if shot.line.is_empty() {
        Message::new("field-photo-of-site")
    } else {
        Message::new("field-photo-of-line").with("line", shot.line.as_str())
    };
    let heading = heading.with("site", shot.site.as_str()).with("shows", Value::Word(shot.shows.code()));
    view! {
        <h1>{session.say(&heading)}</h1>
        {move || match taking.taken.get() {
            None => looking(taking).into_any(),
            Some(taken) => look_at(taking, taken).into_any(),
        }}
        <p class="choices"><button type="button" on:click=move |_| back()>{session.word("field-back")}</button></p>
    }
}

/// Where the screen was opened from.
fn back() {
    if let Some(history) = web_sys::window().and_then(|window| window.history().ok()) {
        // the first page of a window has nothing behind it, and stays
        let _ = history.back();
    }
}

/// The last photo of the same view, where such views are compared.
fn last_of(session: Session, shot: &Shot) -> Option<Photo> {
    let standing = session.standing_untracked();
    let of_view =
        |photo: &&Photo| photo.site == shot.site && photo.line == shot.line && photo.shows == shot.shows;
    let photos = standing.current.photos();
    let last = photos.into_iter().filter(of_view).max_by_key(|photo| photo.date);
    last.filter(|_| shot.shows.is_compared()).cloned()
}

/// The camera with the last photo over it; where there is no camera, the last photo and a file.
fn looking(taking: Taking) -> impl IntoView {
    let Taking { session, camera, .. } = taking;
    let shot = taking.shot.get_value();
    let last = last_of(session, &shot);
    let has_camera = Memo::new(move |_| {
        camera.with(|camera| match camera {
            Asked::Waiting => None,
            Asked::Given(_) => Some(true),
            Asked::None => Some(false),
        })
    });
    move || {
        match has_camera.get() {
        None => view! { <p class="quiet" role="status">{session.word("field-camera-opening")}</p> }.into_any(),
        Some(true) => view! {
            {about(session, &shot, last.as_ref(), "field-last-of")}
            {over(taking, last.clone())}
            <p class="choices">
                <button type="button" class="main" on:click=move |_| take(taking)>{session.word("field-take")}</button>
                {from_file(taking, false)}
            </p>
        }
        .into_any(),
        Some(false) => view! {
            <p>{session.word("field-camera-none")}</p>
            {about(session, &shot, last.as_ref(), "field-last-beside")}
            {last.clone().map(|last| view! { <div class="viewfinder">{last_photo(session, &last)}</div> })}
            <p class="choices">{from_file(taking, true)}</p>
        }
        .into_any(),
    }
    }
}

/// What to do before the photo is taken.
fn about(session: Session, shot: &Shot, last: Option<&Photo>, code: &'static str) -> impl IntoView + use<> {
    let said = match last {
        _ if shot.shows == Shows::Sheet => Some(session.word("field-sheet-what")),
        _ if !shot.shows.is_compared() => None,
        None => Some(session.word("field-last-none")),
        Some(last) => {
            let date = last.date.map_or_else(|| session.word("photo-undated"), |date| date.to_string());
            Some(session.say(&Message::new(code).with("date", date)))
        }
    };
    said.map(|said| view! { <p class="quiet">{said}</p> })
}

/// What the camera sees, under the last photo.
fn over(taking: Taking, last: Option<Photo>) -> impl IntoView {
    let Taking { session, camera, .. } = taking;
    let video = NodeRef::<html::Video>::new();
    taking.video.set_value(Some(video));
    video.on_load(move |video| {
        camera.with_untracked(|camera| {
            if let Asked::Given(camera) = camera {
                video.set_src_object(Some(camera.stream()));
            }
        });
    });
    let strength = RwSignal::new(STRONGEST / 2);
    let class = move || format!("over strength-{}", strength.get());
    let stronger = move |event| {
        if let Ok(wanted) = event_target_value(&event).parse::<usize>() {
            strength.set(wanted.min(STRONGEST));
        }
    };
    let (photo, slider) = match last {
        None => (None, None),
        Some(last) => (
            Some(view! { <div class=class>{last_photo(session, &last)}</div> }),
            Some(view! {
                <label class="strength">{session.word("field-last-over")}
                    <input type="range" min="0" max=STRONGEST.to_string() step="1" prop:value=move || strength.get().to_string() on:input=stronger/>
                </label>
            }),
        ),
    };
    view! {
        <div class="viewfinder"><video node_ref=video autoplay muted playsinline></video>{photo}</div>
        {slider}
    }
}

fn last_photo(session: Session, last: &Photo) -> impl IntoView + use<> {
    let read = kept(session, last);
    let alt = session.say(
        &Message::new("field-last-of")
            .with("date", last.date.map(|date| date.to_string()).unwrap_or_default()),
    );
    move || {
        read.with(|read| match read {
            Read::UnderWay => ().into_any(),
            Read::Lacking => view! { <p class="quiet">{session.word("photo-bytes-lacking")}</p> }.into_any(),
            Read::Shown(address) => view! { <img src=address.text().to_owned() alt=alt.clone()/> }.into_any(),
        })
    }
}

/// Takes what the camera shows at this moment.
fn take(taking: Taking) {
    let Some(video) = taking.video.get_value().and_then(|video| video.get_untracked()) else { return };
    let video: HtmlVideoElement = video.unchecked_into();
    spawn_local(async move {
        // before the first picture there is nothing to take, and the touch does nothing
        if let Ok(small) = still(&video).await {
            taking.taken.set(Some(Taken { small, date: Date::read(&here::today()) }));
        }
    });
}

/// A photo or a scan from the device's own camera or its files.
fn from_file(taking: Taking, is_main: bool) -> impl IntoView {
    let picked = move |event: web_sys::Event| {
        let input = event.target().and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
        let Some(input) = input else { return };
        if let Some(file) = input.files().and_then(|list| list.get(0)) {
            spawn_local(take_file(taking, file));
        }
        // the same file may be picked once more
        input.set_value("");
    };
    view! {
        <label class="button pick" class:main=is_main>{taking.session.word("field-file")}<input type="file" accept="image/*" on:change=picked/></label>
    }
}

async fn take_file(taking: Taking, file: File) {
    let date = match JsFuture::from(file.array_buffer()).await {
        Ok(buffer) => written(&js_sys::Uint8Array::new(&buffer).to_vec()).date,
        Err(_) => None,
    };
    if let Ok(small) = smaller(&file).await {
        let date = date.or_else(|| Date::read(&here::day_of(file.last_modified())));
        taking.taken.set(Some(Taken { small, date }));
    } else {
        let files = Value::List(vec![Value::from(file.name())]);
        taking.session.tell(taking.session.say(&Message::new("app-photos-left").with("files", files)));
    }
}

/// The photo as it would be kept, what there is to say of it, and keeping it.
fn look_at(taking: Taking, taken: Taken) -> impl IntoView {
    let session = taking.session;
    let (caption, people) =
        (RwSignal::new(taking.shot.with_value(|shot| shot.caption.clone())), RwSignal::new(String::new()));
    let address = Address::of(&taken.small.bytes, Media::Jpeg);
    let shown = address.as_ref().map(|address| address.text().to_owned());
    // the address is let go with this view
    let address = StoredValue::new(address);
    on_cleanup(move || {
        address.try_update_value(Option::take);
    });
    let field = move |code: &'static str, value: RwSignal<String>| {
        view! { <label>{session.word(code)}<input type="text" autocomplete="off" prop:value=value on:input=move |event| value.set(event_target_value(&event))/></label> }
    };
    let keep = move |_| {
        let photo =
            record(&taking.shot.get_value(), &taken, &caption.get_untracked(), &people.get_untracked());
        let bytes = Bytes { sha256: photo.sha256.clone(), bytes: taken.small.bytes.clone() };
        let drafts = vec![Draft::beginning(&Payload::Photo(Box::new(photo)))];
        session.write_with("photo", drafts, vec![bytes], String::new(), move |_| {
            session.tell(session.say(&Message::new("app-photos-kept").with("photos", 1_usize)));
            back();
        });
    };
    view! {
        <div class="viewfinder"><img src=shown alt=session.word("field-taken")/></div>
        {field("app-photo-caption", caption)}
        {field("app-photo-people", people)}
        <p class="choices">
            <button type="button" class="main" on:click=keep>{session.word("field-keep")}</button>
            <button type="button" on:click=move |_| taking.taken.set(None)>{session.word("field-take-again")}</button>
        </p>
    }
}

/// The record of a photo. Of when and where, the day alone stands in it.
fn record(shot: &Shot, taken: &Taken, caption: &str, people: &str) -> Photo {
    let people = people.split([',', ';']).map(str::trim).filter(|name| !name.is_empty());
    Photo {
        site: shot.site.clone(),
        line: shot.line.clone(),
        shows: shot.shows,
        date: taken.date,
        time: String::new(),
        place: None,
        bearing: None,
        caption: caption.trim().to_owned(),
        people: people.map(str::to_owned).collect(),
        visit: shot.visit.clone(),
        width: taken.small.width,
        height: taken.small.height,
        media: Media::Jpeg,
        bytes: taken.small.bytes.len() as u64,
        sha256: sha256_hex(&taken.small.bytes),
    }
}
