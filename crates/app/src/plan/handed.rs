//! Files of the ground: picked, kept as they are, each with what only a person can say of it.

use super::fields::{choice_of, text_of};
use super::ground::{CROSSED, purpose_of, refused};
use super::sitting::{Handed, Held, Kept};
use crate::parts::files;
use leptos::prelude::*;
use leptos::task::spawn_local;
use tautline_exchange::Source;
use tautline_exchange::boundary::{Asked, gathered, read};
use tautline_survey::message::{Message, Value};
use wasm_bindgen::JsCast as _;

/// Where files are picked, and those that were.
pub(super) fn handed_in(held: Held) -> impl IntoView {
    let picks =
        [("ground", "where-file-ground"), ("keep-out", "where-file-keep-out"), ("there", "where-file-there")];
    let picks = picks.map(|(purpose, code)| pick(held, purpose, code));
    let files = move || {
        let files = held.with(|all| all.ground.files.len());
        (0..files).map(|at| handed(held, at)).collect_view()
    };
    view! {
        <div class="choices picks">{picks}</div>
        <ul class="plain handed">{files}</ul>
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
            for (source, beside) in gathered(sources) {
                take(held, purpose, source, beside);
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

/// Takes a file in that can be read, or that could be if somebody said its datum; any other is said, and nothing else is lost.
fn take(held: Held, purpose: &'static str, source: Source, beside: Vec<Source>) {
    let session = held.session;
    let datum = match read(&source, &beside, &Asked::of(purpose_of(purpose, "", ""))) {
        Ok(_) => None,
        Err(why) if matches!(why.code, "boundary-no-reference" | "boundary-typed-no-datum") => {
            Some(String::new())
        }
        Err(why) => {
            session.tell(session.say(&refused(&source.name, why)));
            return;
        }
    };
    held.update(|all| {
        all.ground.files.retain(|handed| handed.file.name != source.name);
        all.ground.files.push(Handed {
            file: Kept::of(source),
            beside: beside.into_iter().map(Kept::of).collect(),
            purpose: purpose.to_owned(),
            buffer: if purpose == "keep-out" { "10".to_owned() } else { String::new() },
            crossed: String::new(),
            datum,
        });
    });
}

fn handed(held: Held, at: usize) -> Option<impl IntoView> {
    let session = held.session;
    let (name, purpose, asks_datum) = held.with_untracked(|all| {
        let handed = all.ground.files.get(at)?;
        Some((handed.file.name.clone(), handed.purpose.clone(), handed.datum.is_some()))
    })?;
    let keeps_out = (purpose == "keep-out").then(|| {
        let buffer = text_of(
            held,
            session.word("where-buffer"),
            "decimal",
            move |all| all.ground.files.get(at).map_or("", |one| one.buffer.as_str()),
            move |all, text| {
                if let Some(one) = all.ground.files.get_mut(at) {
                    one.buffer = text;
                }
            },
        );
        let crossed = choice_of(
            held,
            "where-crossed",
            &CROSSED,
            move |all| all.ground.files.get(at).map_or("", |one| one.crossed.as_str()),
            move |all, text| {
                if let Some(one) = all.ground.files.get_mut(at) {
                    one.crossed = text;
                }
            },
        );
        view! { {buffer}{crossed} }
    });
    let datum = asks_datum.then(|| {
        text_of(
            held,
            session.word("where-file-datum"),
            "text",
            move |all| all.ground.files.get(at).and_then(|one| one.datum.as_deref()).unwrap_or_default(),
            move |all, text| {
                if let Some(one) = all.ground.files.get_mut(at) {
                    one.datum = Some(text);
                }
            },
        )
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
    Some(view! {
        <li><span>{said}</span>{datum}{keeps_out}<button type="button" on:click=away>{away_said}</button></li>
    })
}
