//! The log of calibrations: who is due, what was judged, and certificates to print.

use super::ask::{choose, names, typed};
use crate::device::here;
use crate::parts::files::hand_out;
use crate::parts::sheet::sheet;
use crate::session::Session;
use crate::settings::Settings;
use crate::standing::Standing;
use leptos::prelude::*;
use tautline_survey::agree::{Calibration, reminder_sentences, reminders};
use tautline_survey::date::Date;
use tautline_survey::input::Input;
use tautline_survey::message::Message;

/// The screen.
pub(super) fn log(session: Session) -> impl IntoView {
    let span = RwSignal::new(session.settings.get_untracked().span);
    let keep = move |text: String| {
        span.set(text.clone());
        session.set(Settings { span: text, ..session.settings.get_untracked() });
    };
    view! {
        <div class="ask">
            {typed(session.word("follow-span"), span.get_untracked(), "numeric", keep)}
            <p class="quiet">{move || session.word(if days(&span.get()).is_none() && !span.get().trim().is_empty() { "follow-span-not-read" } else { "follow-span-what" })}</p>
        </div>
        {move || due(session, &session.standing(), days(&span.get()))}
        {move || judged(session, &session.standing())}
        {certificates(session)}
    }
}

/// Days that a calibration lasts; none where none is set.
pub(super) fn days(typed: &str) -> Option<u32> {
    typed.trim().parse().ok().filter(|days| *days > 0)
}

fn due(session: Session, standing: &Standing, span: Option<u32>) -> Option<impl IntoView + use<>> {
    let today = Date::read(&here::today())?;
    let all = reminders(&standing.input, today, span);
    let items = all.iter().map(|one| {
        let said: Vec<String> = reminder_sentences(one).iter().map(|said| session.say(said)).collect();
        let mark = if one.is_due() { "due" } else { "in-time" };
        let word = session.word(if one.is_due() { "follow-due" } else { "follow-in-time" });
        view! { <li class=mark><strong>{word}</strong>" "{said.join(" ")}</li> }
    });
    let items = items.collect_view();
    (!all.is_empty()).then(|| {
        view! { <section class="ask"><h2>{session.word("title-due")}</h2><ul class="reminders">{items}</ul></section> }
    })
}

/// Every calibration as a row.
fn judged(session: Session, standing: &Standing) -> impl IntoView + use<> {
    let log = &standing.input.calibrations;
    if log.is_empty() {
        return view! { <p>{session.word("follow-log-empty")}</p> }.into_any();
    }
    let headings =
        ["date", "reader", "against", "site", "within", "tolerance", "mean-difference", "outcome", "judge"];
    let head = headings.map(|name| view! { <th scope="col">{session.word(&format!("column-{name}"))}</th> });
    let rows = log.iter().map(|one| row(session, one)).collect_view();
    let title = session.word("title-log");
    view! {
        <section class="ask"><h2>{title.clone()}</h2>
            <div class="wide-table" tabindex="0" role="group" aria-label=title>
                <table><thead><tr>{head.collect_view()}</tr></thead><tbody>{rows}</tbody></table>
            </div>
            <p class="quiet">{session.word("points-of-cover")}</p>
        </section>
    }
    .into_any()
}

fn row(session: Session, one: &Calibration) -> impl IntoView + use<> {
    let words = session.words();
    let within = Message::new("so-many-of").with("some", one.within()).with("all", one.lines.len());
    let sign = if one.bias() > 0.0 { "+" } else { "" };
    let cells = [
        one.reader.clone(),
        one.against.clone(),
        one.site.clone(),
        words.say(&within),
        words.number(one.tolerance.share() * 100.0, 1),
        format!("{sign}{}", words.number(one.bias() * 100.0, 1)),
        words.word(one.outcome.code()),
        one.judge.clone(),
    ];
    let cells = cells.map(|cell| view! { <td>{cell}</td> });
    view! { <tr><th scope="row">{one.date.to_string()}</th>{cells.collect_view()}</tr> }
}

/// The sheets, of one reader or of all: as they print.
fn certificates(session: Session) -> impl IntoView {
    let reader = RwSignal::new(String::new());
    let readers = Memo::new(move |_| {
        let standing = session.standing();
        names(standing.input.calibrations.iter().map(|one| one.reader.as_str()))
    });
    let choice = move || {
        let all = (String::new(), session.word("follow-all-readers"));
        let each = readers.get().into_iter().map(|name| (name.clone(), name));
        let options = [all].into_iter().chain(each).collect();
        choose(session.word("column-reader"), options, move || reader.get(), move |name| reader.set(name))
    };
    let print = move |_| {
        if let Some(window) = web_sys::window() {
            // a browser that can't print says so itself
            let _ = window.print();
        }
    };
    let take = move |_| {
        let words = session.words();
        let page = tautline_report::certificates(
            &of_reader(&session.standing_untracked(), &reader.get_untracked()),
            &words,
        );
        hand_out(&format!("{}.html", words.word("certificate-title")), "text/html", &page);
    };
    let sheets = move || {
        let own = of_reader(&session.standing(), &reader.get());
        sheet(
            tautline_report::certificates_body(&own, &session.words()),
            tautline_report::certificates_style(),
        )
    };
    move || {
        (!readers.get().is_empty()).then(|| {
            view! {
                <section><h2 class="ask">{session.word("follow-certificates")}</h2>
                    <div class="ask">{choice}</div>
                    <p class="choices">
                        <button type="button" on:click=print>{session.word("follow-print")}</button>
                        <button type="button" on:click=take>{session.word("follow-take-page")}</button>
                    </p>
                    {sheets}
                </section>
            }
        })
    }
}

/// What the certificates of one reader, or of all, are made from.
fn of_reader(standing: &Standing, reader: &str) -> Input {
    let own = standing.input.calibrations.iter().filter(|one| reader.is_empty() || one.reader == reader);
    Input {
        protocols: standing.input.protocols.clone(),
        calibrations: own.cloned().collect(),
        ..Input::default()
    }
}
