//! An outline by its corners, typed one a line.

use super::fields::{choice_of, text_of};
use super::ground::{CROSSED, datum_of};
use super::sitting::{Held, Outline};
use leptos::prelude::*;
use tautline_ground::typed;
use tautline_survey::boundary::Pair;
use tautline_survey::message::Message;

/// The corners of an outline in degrees on its datum.
pub(super) fn corners_of(outline: &Outline) -> Result<Vec<Pair>, Message> {
    let lines = (1_usize..).zip(outline.corners.lines()).filter(|(_, line)| !line.trim().is_empty());
    let corner = |(number, line): (usize, &str)| {
        typed::degrees(line, datum_of(outline))
            .ok_or_else(|| Message::new("where-corner-not-read").with("row", number).with("found", line))
    };
    lines.map(corner).collect()
}

/// On which datum corners can be.
const DATUMS: [(&str, &str); 3] =
    [("", "where-datum-wgs84"), ("NAD83", "where-datum-nad83"), ("NAD27", "where-datum-nad27")];

/// Its fields.
pub(super) fn outline(held: Held, at: usize) -> impl IntoView {
    let session = held.session;
    let is_ground =
        held.with_untracked(|all| all.ground.outlines.get(at).is_some_and(|one| one.purpose == "ground"));
    let line =
        move |label: &'static str, get: fn(&Outline) -> &String, set: fn(&mut Outline) -> &mut String| {
            text_of(
                held,
                session.word(label),
                "text",
                move |all| all.ground.outlines.get(at).map_or("", |one| get(one).as_str()),
                move |all, text| {
                    if let Some(one) = all.ground.outlines.get_mut(at) {
                        *set(one) = text;
                    }
                },
            )
        };
    let choice = move |label: &'static str,
                       options: &'static [(&'static str, &'static str)],
                       get: fn(&Outline) -> &String,
                       set: fn(&mut Outline) -> &mut String| {
        choice_of(
            held,
            label,
            options,
            move |all| all.ground.outlines.get(at).map_or("", |one| get(one).as_str()),
            move |all, text| {
                if let Some(one) = all.ground.outlines.get_mut(at) {
                    *set(one) = text;
                }
            },
        )
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
    let wrong = move || {
        let read = held.with(|all| all.ground.outlines.get(at).map(corners_of));
        read.and_then(Result::err).map(|message| session.say(&message))
    };
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
        line("where-stratum", |one| &one.stratum, |one| &mut one.stratum).into_any()
    } else {
        view! {
            {line("where-buffer", |one| &one.buffer, |one| &mut one.buffer)}
            {choice("where-crossed", &CROSSED, |one| &one.crossed, |one| &mut one.crossed)}
        }
        .into_any()
    };
    view! {
        <fieldset><legend>{name.clone()}</legend>
            {own}
            {choice("where-datum", &DATUMS, |one| &one.datum, |one| &mut one.datum)}
            <label>{session.word("where-corners")}
                <textarea rows="5" spellcheck="false" autocapitalize="off" placeholder=session.word("where-corners-example") prop:value=corners on:input=typed></textarea>
            </label>
            <p class="wrong" role="alert">{wrong}</p>
            <button type="button" on:click=away>{session.say(&Message::new("where-take-away").with("what", name))}</button>
        </fieldset>
    }
}
