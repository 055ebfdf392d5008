//! A drawn line that can't be read: why, and what takes its place.

use super::sitting::Held;
use leptos::prelude::*;
use tautline_survey::date::Date;
use tautline_survey::drawn::{DrawnLayout, Replaced, Why};
use tautline_survey::message::{Message, Value};
use tautline_survey::notebook::layouts::{replace as replaced_by, replaced};

/// The lines that are to be read, a reason, and what was said before.
pub(super) fn replace(held: Held, record: &DrawnLayout) -> impl IntoView + use<> {
    let session = held.session;
    let site = record.site.clone();
    let lines: Vec<String> =
        record.lines.iter().filter(|line| !line.reserve).map(|line| line.line.clone()).collect();
    let line = RwSignal::new(lines.first().cloned().unwrap_or_default());
    let why = RwSignal::new(Why::ALL[0]);
    let note = RwSignal::new(String::new());
    let wrong = RwSignal::new(None::<String>);
    let before = {
        let site = site.clone();
        move || {
            let standing = session.standing();
            let own = replaced(&standing.current).into_iter().filter(|word| word.site == site);
            own.map(|word| view! { <li>{session.say(&said(&word))}</li> }).collect_view()
        }
    };
    let lines = lines.into_iter().map(|name| {
        let said = session.say(&Message::new("sheet-title").with("line", name.as_str()));
        view! { <option value=name>{said}</option> }
    });
    let reasons = Why::ALL.map(|why| view! { <option value=why.word()>{session.word(why.code())}</option> });
    let write = move |_| {
        let word = Replaced {
            site: site.clone(),
            line: line.get_untracked(),
            by: None,
            why: why.get_untracked(),
            note: note.get_untracked().trim().to_owned(),
            date: Date::read(&crate::device::here::today()),
        };
        match replaced_by(&session.standing_untracked().current, word) {
            Err(refused) => wrong.set(Some(session.say(&refused))),
            Ok(done) => {
                wrong.set(None);
                let told = session.say(&said(&done.word));
                session.write("replace", done.drafts, note.get_untracked(), move |_| session.tell(told));
            }
        }
    };
    let follows = move || {
        let own = vec![Value::from(line.get())];
        session.say(&Message::new(why.get().follows()).with("site", "").with("lines", Value::List(own)))
    };
    view! {
        <details class="replace">
            <summary>{session.word("carry-replace")}</summary>
            <p class="quiet">{session.word("carry-replace-what")}</p>
            <ul class="plain">{before}</ul>
            <label>{session.word("carry-replace-line")}
                <select on:change=move |event| line.set(event_target_value(&event))>{lines.collect_view()}</select>
            </label>
            <label>{session.word("carry-replace-why")}
                <select on:change=move |event| why.set(Why::from_word(&event_target_value(&event)).unwrap_or(Why::Other))>{reasons.collect_view()}</select>
            </label>
            <label>{session.word("carry-replace-note")}
                <input type="text" autocomplete="off" prop:value=note on:input=move |event| note.set(event_target_value(&event))/>
            </label>
            <p class="quiet">{follows}</p>
            <p class="wrong" role="alert">{move || wrong.get()}</p>
            <div class="choices"><button type="button" on:click=write>{session.word("carry-replace-do")}</button></div>
        </details>
    }
}

fn said(word: &Replaced) -> Message {
    let message = Message::new(if word.by.is_some() { "replaced-by" } else { "replaced-by-none" });
    message
        .with("line", word.line.as_str())
        .with("by", word.by.clone().unwrap_or_default())
        .with("why", Value::Word(word.why.code()))
}
