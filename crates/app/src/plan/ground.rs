//! The ground: boundaries from files, corners typed or set down on a plane, and what to keep out of.

use super::fields::{Place, at, text};
use super::plane::plane;
use super::sitting::{Ground, Handed, Held, Outline};
use crate::parts::files;
use leptos::prelude::*;
use leptos::task::spawn_local;
use tautline_exchange::Source;
use tautline_exchange::boundary::{Asked, Purpose, read};
use tautline_ground::site::Site;
use tautline_ground::typed;
use tautline_survey::boundary::{Boundary, Pair, Part, Reference, Role, Shape};
use tautline_survey::message::{Message, Value};
use wasm_bindgen::JsCast as _;

/// What was understood of the ground.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Understood {
    pub(super) site: Option<Site>,
    /// The site's name, where a file says it.
    pub(super) name: Option<String>,
    /// What was mended.
    pub(super) remarks: Vec<Message>,
    /// What is in the way.
    pub(super) wrong: Option<Message>,
}

/// The site of everything that was handed in.
pub(super) fn site_of(ground: &Ground) -> Understood {
    let mut understood = Understood::default();
    if ground.files.is_empty() && ground.outlines.is_empty() {
        return understood;
    }
    match boundary_of(ground, &mut understood.remarks) {
        Err(wrong) => understood.wrong = Some(wrong),
        Ok(boundary) => {
            understood.name.clone_from(&boundary.site);
            match Site::of(&boundary) {
                Err(error) => understood.wrong = Some(error.message()),
                Ok(site) => {
                    let file = ground.files.first().map_or("", |file| file.name.as_str());
                    understood.remarks.extend(site.repaired.iter().map(|repair| repair.message(file)));
                    understood.site = Some(site);
                }
            }
        }
    }
    understood
}

fn boundary_of(ground: &Ground, remarks: &mut Vec<Message>) -> Result<Boundary, Message> {
    let mut boundary = Boundary::default();
    for file in &ground.files {
        let source = Source { name: file.name.clone(), bytes: file.text.clone().into_bytes() };
        let stratum =
            if ground.stratum_from.trim().is_empty() { "stratum" } else { ground.stratum_from.trim() };
        let asked =
            Asked { stratum: stratum.to_owned(), ..Asked::of(purpose_of(&file.purpose, &file.buffer)) };
        let found = read(&source, &[], &asked).map_err(|why| refused(&file.name, why))?;
        remarks.extend(found.boundary.left_out.iter().map(|&part| {
            Message::new("boundary-left-out").with("file", file.name.as_str()).with("part", part)
        }));
        boundary.join(found.boundary);
    }
    let first = boundary.parts.len() + 1;
    for (number, outline) in (first..).zip(&ground.outlines) {
        let corners = corners_of(&outline.corners)?;
        if corners.len() < if outline.purpose == "ground" { 3 } else { 1 } {
            continue; // still being set down
        }
        let role = match purpose_of(&outline.purpose, &outline.buffer) {
            Purpose::KeepOut { buffer, crossed } => Role::KeepOut { buffer, crossed },
            _ => Role::Stratum(Some(outline.stratum.trim().to_owned()).filter(|name| !name.is_empty())),
        };
        let shape = if corners.len() < 3 { Shape::Way(corners) } else { Shape::Areas(vec![vec![corners]]) };
        boundary.parts.push(Part { number, reference: Reference::default(), role, shape });
    }
    if boundary.parts.is_empty() { Err(Message::new("where-too-few-corners")) } else { Ok(boundary) }
}

/// The corners of an outline, one a line.
pub(super) fn corners_of(text: &str) -> Result<Vec<Pair>, Message> {
    let lines = (1_usize..).zip(text.lines()).filter(|(_, line)| !line.trim().is_empty());
    let corner = |(number, line): (usize, &str)| {
        let position = typed::read(line, Reference::default())
            .ok_or_else(|| Message::new("where-corner-not-read").with("row", number).with("found", line))?;
        Ok([position.longitude(), position.latitude()])
    };
    lines.map(corner).collect()
}

fn purpose_of(purpose: &str, buffer: &str) -> Purpose {
    match purpose {
        "keep-out" => {
            let metres = super::fields::number_of(buffer).unwrap_or(0.0).min(10_000.0);
            #[expect(clippy::cast_possible_truncation, reason = "10 km at most")]
            let millimetres = (metres * 1000.0).round() as i64;
            Purpose::KeepOut { buffer: millimetres, crossed: None }
        }
        "there" => Purpose::There,
        _ => Purpose::Ground,
    }
}

fn refused(file: &str, why: Message) -> Message {
    Message::new("boundary-refused").with("file", file).with("why", why)
}

/// The fields of the ground.
pub(super) fn ground(held: Held) -> impl IntoView {
    let session = held.session;
    let picks =
        [("ground", "where-file-ground"), ("keep-out", "where-file-keep-out"), ("there", "where-file-there")];
    let picks = picks.map(|(purpose, code)| pick(held, purpose, code));
    let files = move || {
        let files = held.with(|all| all.ground.files.len());
        (0..files).map(|at| handed(held, at)).collect_view()
    };
    let outlines = move || {
        let outlines = held.with(|all| all.ground.outlines.len());
        (0..outlines).map(|at| outline(held, at)).collect_view()
    };
    let add = |purpose: &'static str, code: &'static str| {
        let add = move |_| {
            held.update(|all| {
                let outline = Outline { purpose: purpose.to_owned(), ..Outline::default() };
                all.ground.outlines.push(outline);
            });
        };
        view! { <button type="button" on:click=add>{session.word(code)}</button> }
    };
    view! {
        <section class="ground">
            <h2>{session.word("where-ground")}</h2>
            <p class="quiet">{session.word("where-ground-what")}</p>
            <div class="choices picks">{picks}</div>
            <ul class="plain handed">{files}</ul>
            <details>
                <summary>{session.word("where-by-hand")}</summary>
                <p class="quiet">{session.word("where-by-hand-what")}</p>
                <div class="choices">{add("ground", "where-add-ground")}{add("keep-out", "where-add-keep-out")}</div>
                {outlines}
                {plane(held)}
            </details>
            <details><summary>{session.word("where-more-ground")}</summary>{text(held, "where-stratum-from", at!(ground.stratum_from))}</details>
        </section>
    }
}

fn pick(held: Held, purpose: &'static str, code: &'static str) -> impl IntoView {
    let session = held.session;
    let picked = move |event: web_sys::Event| {
        let input = event.target().and_then(|target| target.dyn_into::<web_sys::HtmlInputElement>().ok());
        let Some((input, list)) = input.and_then(|input| Some((input.clone(), input.files()?))) else {
            return;
        };
        spawn_local(async move {
            let (sources, left) = files::read(list).await;
            // the same file can be picked again
            input.set_value("");
            for source in sources {
                take(held, purpose, source);
            }
            if !left.is_empty() {
                let names = left.into_iter().map(Value::from).collect();
                session.tell(session.say(&Message::new("app-files-left").with("files", Value::List(names))));
            }
        });
    };
    view! {
        <label class="button pick"><span>{session.word(code)}</span><input type="file" multiple on:change=picked/></label>
    }
}

/// Takes a file in that can be read; one that can't is said, and nothing else is lost.
fn take(held: Held, purpose: &'static str, source: Source) {
    let session = held.session;
    if let Err(why) = read(&source, &[], &Asked::of(purpose_of(purpose, ""))) {
        session.tell(session.say(&refused(&source.name, why)));
        return;
    }
    let Ok(text) = String::from_utf8(source.bytes) else { return };
    held.update(|all| {
        let purpose = purpose.to_owned();
        let buffer = if purpose == "keep-out" { "10".to_owned() } else { String::new() };
        all.ground.files.retain(|file| file.name != source.name);
        all.ground.files.push(Handed { name: source.name, text, purpose, buffer });
    });
}

fn handed(held: Held, at: usize) -> Option<impl IntoView> {
    let session = held.session;
    let (name, purpose) = held.with_untracked(|all| {
        let file = all.ground.files.get(at)?;
        Some((file.name.clone(), file.purpose.clone()))
    })?;
    let buffer = (purpose == "keep-out").then(|| {
        let value = move || held.with(|all| all.ground.files.get(at).map(|file| file.buffer.clone()).unwrap_or_default());
        let typed = move |event| held.update(|all| {
            if let Some(file) = all.ground.files.get_mut(at) {
                file.buffer = event_target_value(&event);
            }
        });
        view! { <label>{session.word("where-buffer")}<input type="text" inputmode="decimal" autocomplete="off" prop:value=value on:input=typed/></label> }
    });
    let code = match purpose.as_str() {
        "keep-out" => "where-is-keep-out",
        "there" => "where-is-there",
        _ => "where-is-ground",
    };
    let said = session.say(&Message::new(code).with("file", name.as_str()));
    let away = move |_| {
        held.update(|all| {
            if at < all.ground.files.len() {
                all.ground.files.remove(at);
            }
        });
    };
    let away_said = session.say(&Message::new("where-take-away").with("what", name));
    Some(
        view! { <li><span>{said}</span>{buffer}<button type="button" on:click=away>{away_said}</button></li> },
    )
}

/// An outline by its corners.
fn outline(held: Held, at: usize) -> impl IntoView {
    let session = held.session;
    let is_ground =
        held.with_untracked(|all| all.ground.outlines.get(at).is_some_and(|one| one.purpose == "ground"));
    let field = move |label: &'static str,
                      get: fn(&Outline) -> &String,
                      set: fn(&mut Outline) -> &mut String| {
        let value =
            move || held.with(|all| all.ground.outlines.get(at).map(get).cloned().unwrap_or_default());
        let typed = move |event| {
            held.update(|all| {
                if let Some(one) = all.ground.outlines.get_mut(at) {
                    *set(one) = event_target_value(&event);
                }
            });
        };
        view! { <label>{session.word(label)}<input type="text" autocomplete="off" prop:value=value on:input=typed/></label> }
    };
    let corners = move || {
        held.with(|all| all.ground.outlines.get(at).map(|one| one.corners.clone()).unwrap_or_default())
    };
    let typed = move |event| {
        held.update(|all| {
            if let Some(one) = all.ground.outlines.get_mut(at) {
                one.corners = event_target_value(&event);
            }
        });
    };
    let wrong = move || corners_of(&corners()).err().map(|message| session.say(&message));
    let away = move |_| {
        held.update(|all| {
            if at < all.ground.outlines.len() {
                all.ground.outlines.remove(at);
            }
        });
    };
    let title = Message::new(if is_ground { "where-outline-ground" } else { "where-outline-keep-out" })
        .with("number", at + 1);
    let name = session.say(&title);
    let own = if is_ground {
        field("where-stratum", |one| &one.stratum, |one| &mut one.stratum).into_any()
    } else {
        field("where-buffer", |one| &one.buffer, |one| &mut one.buffer).into_any()
    };
    view! {
        <fieldset><legend>{name.clone()}</legend>
            {own}
            <label>{session.word("where-corners")}
                <textarea rows="5" spellcheck="false" autocapitalize="off" placeholder=session.word("where-corners-example") prop:value=corners on:input=typed></textarea>
            </label>
            <p class="wrong" role="alert">{wrong}</p>
            <button type="button" on:click=away>{session.say(&Message::new("where-take-away").with("what", name))}</button>
        </fieldset>
    }
}

/// What the fields of a plane write into.
pub(super) const MIDDLE: Place = at!(ground.middle);
pub(super) const WIDE: Place = at!(ground.wide);
