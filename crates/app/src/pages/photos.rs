//! A site's photos: each line's ends, visits and the site at large, year beside year; and taking one.

use crate::device::{Bytes, here};
use crate::parts::camera::{Small, smaller};
use crate::parts::picture::{Read, kept};
use crate::route::{Route, Shot};
use crate::session::Session;
use crate::standing::Standing;
use js_sys::Uint8Array;
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::collections::{BTreeMap, BTreeSet};
use tautline_exchange::photo::{Written, written};
use tautline_survey::assess::natural_order;
use tautline_survey::canonical::sha256_hex;
use tautline_survey::date::Date;
use tautline_survey::message::{Message, Value};
use tautline_survey::notebook::hand::Draft;
use tautline_survey::notebook::payload::Payload;
use tautline_survey::photo::{Media, Photo, Shows};
use wasm_bindgen::JsCast as _;
use wasm_bindgen_futures::JsFuture;
use web_sys::{File, FileList, HtmlInputElement};

/// What a person says of the photos that they are about to take.
#[derive(Clone, Debug, PartialEq)]
struct About {
    line: String,
    shows: Shows,
    caption: String,
    people: String,
    keeps_place: bool,
}

/// The photos of a site, below its report.
pub(crate) fn photos(site: String) -> impl IntoView {
    let session = Session::here();
    let named = site.clone();
    let shown = move || shown(session, &session.standing(), &named);
    view! {
        <section class="photos">
            <h2>{session.word("app-photos")}</h2>
            {taking(session, site)}
            {shown}
        </section>
    }
}

/// The lines of a site, planned or read, in order.
fn lines(standing: &Standing, site: &str) -> Vec<String> {
    let planned = standing.input.plan.iter().map(|line| (&line.site, &line.line));
    let read = standing.input.visits.iter().map(|visit| (&visit.site, &visit.line));
    let own: BTreeSet<&String> =
        planned.chain(read).filter(|(own, _)| *own == site).map(|(_, line)| line).collect();
    let mut lines: Vec<String> = own.into_iter().cloned().collect();
    lines.sort_by(|a, b| natural_order(a, b));
    lines
}

fn taking(session: Session, site: String) -> impl IntoView {
    let lines = lines(&session.standing(), &site);
    let begun = About {
        line: lines.first().cloned().unwrap_or_default(),
        shows: if lines.is_empty() { Shows::Opening } else { Shows::Start },
        caption: String::new(),
        people: String::new(),
        keeps_place: true,
    };
    let usual = begun.clone();
    let (about, tell) = signal(begun);
    let site = StoredValue::new(site);
    let picked = move |event: web_sys::Event| {
        let input = event.target().and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
        let Some(input) = input else { return };
        if let Some(list) = input.files() {
            take(session, site.get_value(), about.get_untracked(), &list);
        }
        // the same photo may be picked once more
        input.set_value("");
    };
    let line_options = lines.into_iter().map(|line| {
        let said = session.say(&Message::new("app-photo-line").with("line", line.as_str()));
        view! { <option value=line.clone() selected=line == usual.line>{said}</option> }
    });
    let whole = view! { <option value="">{session.word("app-photo-site-at-large")}</option> };
    let chosen_line = move |event| tell.update(|about| about.line = event_target_value(&event));
    let shows = Shows::ALL.map(|shows| {
        let said = session.word(shows.code());
        view! { <option value=shows.word() selected=shows == usual.shows>{said}</option> }
    });
    let chosen = move |event| {
        if let Some(shows) = Shows::read(&event_target_value(&event)) {
            tell.update(|about| about.shows = shows);
        }
    };
    let keeps = move |event| tell.update(|about| about.keeps_place = event_target_checked(&event));
    view! {
        <details class="ask">
            <summary>{session.word("app-photo-add")}</summary>
            <label>{session.word("app-photo-of")}<select on:change=chosen_line>{line_options.collect_view()}{whole}</select></label>
            <label>{session.word("app-photo-shows")}<select on:change=chosen>{shows.collect_view()}</select></label>
            <label>{session.word("app-photo-caption")}<input type="text" autocomplete="off" on:change=move |event| tell.update(|about| about.caption = event_target_value(&event))/></label>
            <label>{session.word("app-photo-people")}<input type="text" autocomplete="off" on:change=move |event| tell.update(|about| about.people = event_target_value(&event))/></label>
            <label class="option"><input type="checkbox" checked on:change=keeps/>{session.word("app-photo-keep-place")}</label>
            <p class="quiet">{session.word("app-photo-what-is-kept")}</p>
            <p class="choices">
                <label class="button pick">{session.word("app-photo-take")}<input type="file" accept="image/*" capture="environment" on:change=picked/></label>
                <label class="button pick">{session.word("app-photo-choose")}<input type="file" accept="image/*" multiple on:change=picked/></label>
            </p>
        </details>
    }
}

/// Takes photos in: each made smaller, all of them written in one go. What is said then is true of the disk.
fn take(session: Session, site: String, about: About, list: &FileList) {
    let files: Vec<File> = (0..list.length()).filter_map(|at| list.get(at)).collect();
    spawn_local(async move {
        let (mut photos, mut drafts, mut left) = (Vec::new(), Vec::new(), Vec::new());
        for file in files {
            match (whole(&file).await, smaller(&file).await) {
                (Some(bytes), Ok(small)) => {
                    let (photo, bytes) = photo(&site, &about, &written(&bytes), small, &file);
                    drafts.push(Draft::beginning(&Payload::Photo(Box::new(photo))));
                    photos.push(bytes);
                }
                _ => left.push(Value::from(file.name())),
            }
        }
        if !left.is_empty() {
            session.tell(session.say(&Message::new("app-photos-left").with("files", Value::List(left))));
        }
        let number = photos.len();
        if number > 0 {
            let said = Message::new("app-photos-kept").with("photos", number);
            session.write_with("photo", drafts, photos, String::new(), move |_| {
                session.tell(session.say(&said));
            });
        }
    });
}

async fn whole(file: &File) -> Option<Vec<u8>> {
    Some(Uint8Array::new(&JsFuture::from(file.array_buffer()).await.ok()?).to_vec())
}

/// The record of a photo and its bytes.
fn photo(site: &str, about: &About, written: &Written, small: Small, file: &File) -> (Photo, Bytes) {
    let sha256 = sha256_hex(&small.bytes);
    // a camera's own word first; a file that says nothing was last changed when it was taken, most likely
    let date = written.date.or_else(|| Date::read(&here::day_of(file.last_modified())));
    let kept = about.keeps_place.then_some(written);
    let photo = Photo {
        site: site.to_owned(),
        line: about.line.clone(),
        shows: about.shows,
        date,
        time: kept.map_or_else(String::new, |written| written.time.clone()),
        place: kept.and_then(|written| written.place),
        bearing: kept.and_then(|written| written.bearing),
        caption: about.caption.trim().to_owned(),
        people: about
            .people
            .split([',', ';'])
            .map(str::trim)
            .filter(|name| !name.is_empty())
            .map(str::to_owned)
            .collect(),
        visit: None,
        width: small.width,
        height: small.height,
        media: Media::Jpeg,
        bytes: small.bytes.len() as u64,
        sha256: sha256.clone(),
    };
    (photo, Bytes { sha256, bytes: small.bytes })
}

/// The photos that stand: a row for each thing shown, year beside year.
fn shown(session: Session, standing: &Standing, site: &str) -> AnyView {
    let mut rows: Vec<((String, Shows), Vec<Photo>)> = Vec::new();
    for photo in standing.current.photos().into_iter().filter(|photo| photo.site == site) {
        let what = (photo.line.clone(), photo.shows);
        match rows.last_mut() {
            Some((last, photos)) if *last == what => photos.push(photo.clone()),
            _ => rows.push((what, vec![photo.clone()])),
        }
    }
    if rows.is_empty() {
        return view! { <p class="quiet">{session.word("app-photos-none")}</p> }.into_any();
    }
    let row = |((line, shows), photos): ((String, Shows), Vec<Photo>)| {
        let over = over_last(session, site, &line, shows);
        let said = Value::Word(shows.code());
        let title = if line.is_empty() {
            Message::new("app-photo-row-site").with("shows", said)
        } else {
            Message::new("app-photo-row").with("line", line).with("shows", said)
        };
        let title = session.say(&title);
        let mut years: BTreeMap<Option<u16>, Vec<Photo>> = BTreeMap::new();
        for photo in photos {
            years.entry(photo.date.map(Date::year)).or_default().push(photo);
        }
        let figures =
            years.into_values().flatten().map(|photo| figure(session, &photo, &title)).collect::<Vec<_>>();
        view! { <h3>{title.clone()}</h3><div class="side-by-side">{figures}</div>{over} }
    };
    rows.into_iter().map(row).collect_view().into_any()
}

/// The way to the camera with the last photo over it, where views are compared from year to year.
fn over_last(session: Session, site: &str, line: &str, shows: Shows) -> Option<impl IntoView + use<>> {
    let shot =
        Shot { site: site.to_owned(), line: line.to_owned(), shows, visit: None, caption: String::new() };
    let address = Route::Photo(shot).address();
    shows.is_compared().then(
        || view! { <p class="choices"><a class="button" href=address>{session.word("field-photo-over-last")}</a></p> },
    )
}

/// One photo with what is said of it.
fn figure(session: Session, photo: &Photo, title: &str) -> impl IntoView + use<> {
    let when = match photo.date {
        Some(date) => format!("{date} {}", photo.time).trim_end().to_owned(),
        None => session.word("photo-undated"),
    };
    let place = photo.place.map(|spot| {
        #[expect(clippy::cast_precision_loss, reason = "180 thousand million fit a float exactly")]
        let degrees = |part: i64| session.words().number(part as f64 / 1e9, 6);
        format!("{} {}", degrees(spot.latitude), degrees(spot.longitude))
    });
    let alt = format!("{title}, {when}. {}", photo.caption);
    let caption = photo.caption.clone();
    view! {
        <figure>{picture(session, photo, alt)}
            <figcaption><strong>{when}</strong>{(!caption.is_empty()).then(|| view! { <span>{caption}</span> })}
                {place.map(|place| view! { <span class="quiet">{place}</span> })}</figcaption>
        </figure>
    }
}

/// The picture itself, once its bytes are read from the disk.
fn picture(session: Session, photo: &Photo, alt: String) -> impl IntoView + use<> {
    let read = kept(session, photo);
    let (width, height) = (photo.width, photo.height);
    move || {
        read.with(|read| match read {
        Read::UnderWay => view! { <p class="quiet waiting">{session.word("app-photo-being-read")}</p> }.into_any(),
        Read::Lacking => view! { <p class="quiet waiting">{session.word("photo-bytes-lacking")}</p> }.into_any(),
        Read::Shown(address) => {
            let (address, alt) = (address.text().to_owned(), alt.clone());
            view! { <a href=address.clone() target="_blank"><img src=address.clone() alt=alt width=width height=height/></a> }.into_any()
        }
    })
    }
}
