//! The packet of a layout in the notebook: the page that the command makes, and the files for receiver, map and office.

use super::fields::{at, choice, date, long, number, text};
use super::replace::replace;
use super::sitting::{Held, Packet as Typed, Sitting};
use super::wanted::place;
use crate::parts::files::hand_out;
use crate::parts::sheet::sheet;
use crate::session::Session;
use leptos::prelude::*;
use std::time::Duration;
use tautline_engine::length::{Bare, Unit};
use tautline_exchange::{geojson, laid, protocol};
use tautline_ground::drawn;
use tautline_ground::site::Site;
use tautline_report::packet::{Packet, Paper, body, html, style};
use tautline_survey::date::Date;
use tautline_survey::drawn::DrawnLayout;
use tautline_survey::layout::LayoutOutput;
use tautline_survey::message::Message;
use tautline_survey::notebook::layouts::{layouts, replaced};
use tautline_survey::place::Openness;
use tautline_survey::protocol::Protocol;

/// Typing has paused after so long.
const PAUSE: Duration = Duration::from_millis(400);

/// What tells a layout from every other.
pub(super) fn key(layout: &DrawnLayout) -> String {
    format!("{}\u{1f}{}", layout.site, layout.names)
}

/// The layout that is chosen: the one kept last on this sitting, else one of its site, else the first.
fn chosen(session: Session, all: &Sitting) -> Option<DrawnLayout> {
    let standing = session.standing();
    let own = || layouts(&standing.current);
    let found =
        own().find(|one| key(one) == all.packet.layout).or_else(|| own().find(|one| one.site == all.site));
    let found = found.or_else(|| own().next())?;
    Some(found.with(&replaced(&standing.current)))
}

/// A packet that is ready to be shown or handed out.
struct Ready {
    site: Site,
    layout: LayoutOutput,
    protocol: Option<Protocol>,
    unit: Unit,
    paper: Paper,
    cautions: Vec<String>,
    calls: Vec<String>,
}

impl Ready {
    fn of(session: Session, typed: &Typed, record: &DrawnLayout) -> Result<Self, Message> {
        let mut record = record.clone();
        if record.from.is_none() && !typed.from.trim().is_empty() {
            record.from = Some(drawn::kept(place(&typed.from, "where-from")?));
        }
        let compass = Date::read(&typed.date)
            .map(|date| (date, super::fields::number_of(&typed.elevation).unwrap_or(0.0)));
        let (site, layout) = drawn::layout(&record, compass).map_err(|error| error.message())?;
        let unit = match Bare::from_words(&typed.unit) {
            Some(Bare::Unit(unit)) => unit,
            Some(Bare::DecimalFeet) => Unit::Foot,
            _ => Unit::Metre,
        };
        let rows = |text: &str| -> Vec<String> {
            text.lines().map(str::trim).filter(|line| !line.is_empty()).map(str::to_owned).collect()
        };
        Ok(Self {
            site,
            layout,
            protocol: protocols(session).into_iter().find(|one| one.fingerprint() == typed.protocol),
            unit,
            paper: Paper::named(Some(&typed.paper)),
            cautions: rows(&typed.cautions),
            calls: rows(&typed.calls),
        })
    }

    /// Does something with the packet.
    fn with<T>(&self, session: Session, show: impl FnOnce(&Packet) -> T) -> T {
        let standing = session.standing_untracked();
        let openness = standing.input.openness(&self.layout.site);
        show(&Packet {
            layout: &self.layout,
            map: &tautline_ground::map::map(&self.site, &self.layout),
            protocol: self.protocol.as_ref(),
            plants: &standing.input.plants.plants,
            known: &standing.input.plan,
            unit: self.unit,
            paper: self.paper,
            openness,
            kept_back: openness != Openness::Exact,
            cautions: &self.cautions,
            calls: &self.calls,
        })
    }
}

/// The protocols of the notebook, then the shipped ones.
fn protocols(session: Session) -> Vec<Protocol> {
    let mut all = session.standing_untracked().current.protocols();
    for (_, shipped) in protocol::shipped() {
        if all.iter().all(|own| own.fingerprint() != shipped.fingerprint()) {
            all.push(shipped);
        }
    }
    all
}

/// The step.
pub(super) fn packet(held: Held) -> impl IntoView {
    let session = held.session;
    let record = Memo::new(move |_| held.with(|all| chosen(session, all)));
    // a layout that knows where its walk begins isn't asked
    let begins_anywhere = move || {
        let asks = record.with(|record| record.as_ref().is_some_and(|record| record.from.is_none()));
        asks.then(|| text(held, "where-from", at!(packet.from)))
    };
    let shown = move || match record.get() {
        None => view! { <p>{session.word("carry-no-layout")}</p> }.into_any(),
        Some(record) => ready(held, &record).into_any(),
    };
    view! {
        <p>{session.word("carry-what")}</p>
        <form class="set-up" on:submit=move |event| event.prevent_default()>
            {choose_layout(held)}
            {choose_protocol(held)}
            {choice(held, "read-unit", at!(packet.unit), &[("m", "read-unit-m"), ("cm", "read-unit-cm"), ("in", "read-unit-in"), ("ft", "read-unit-decimal-ft")])}
            {choice(held, "carry-paper", at!(packet.paper), &[("a4", "carry-a4"), ("letter", "carry-letter")])}
            {date(held, "where-date", at!(packet.date))}
            {number(held, "where-elevation", at!(packet.elevation))}
            {begins_anywhere}
            {long(held, "carry-cautions", at!(packet.cautions))}
            {long(held, "carry-calls", at!(packet.calls))}
        </form>
        {shown}
    }
}

fn choose_layout(held: Held) -> impl IntoView {
    let session = held.session;
    let options = move || {
        let standing = session.standing();
        let chosen = held.with_untracked(|all| chosen(session, all)).map(|one| key(&one));
        let options = layouts(&standing.current).map(|one| {
            let said = session.say(
                &Message::new("carry-layout-of")
                    .with("site", one.site.as_str())
                    .with("names", one.names.as_str())
                    .with("lines", one.walk.len())
                    .with("date", one.date.map_or_else(String::new, |date| date.to_string())),
            );
            let value = key(one);
            let selected = chosen.as_ref() == Some(&value);
            view! { <option value=value selected=selected>{said}</option> }
        });
        options.collect_view()
    };
    let change = move |event| held.update(|all| all.packet.layout = event_target_value(&event));
    view! { <label>{session.word("carry-layout")}<select on:change=change>{options}</select></label> }
}

fn choose_protocol(held: Held) -> impl IntoView {
    let session = held.session;
    let options = move || {
        session.standing();
        let chosen = held.with_untracked(|all| all.packet.protocol.clone());
        let options = protocols(session).into_iter().map(|one| {
            let value = one.fingerprint();
            let selected = value == chosen;
            view! { <option value=value selected=selected>{one.name}</option> }
        });
        options.collect_view()
    };
    let change = move |event| held.update(|all| all.packet.protocol = event_target_value(&event));
    view! {
        <label>{session.word("read-protocol")}
            <select on:change=change><option value="">{session.word("read-protocol-none")}</option>{options}</select>
        </label>
    }
}

/// What was typed, once typing has paused: a packet of many sheets isn't drawn at each key.
fn settled(held: Held) -> ReadSignal<Typed> {
    let (settled, set) = signal(held.with_untracked(|all| all.packet.clone()));
    let typed = Memo::new(move |_| held.with(|all| all.packet.clone()));
    let pausing = StoredValue::new(None::<TimeoutHandle>);
    Effect::new(move |before: Option<()>| {
        let typed = typed.get();
        if before.is_none() {
            return;
        }
        if let Some(earlier) = pausing.get_value() {
            earlier.clear();
        }
        // a screen that was left meanwhile has no signals any more
        let settle = move || drop(set.try_set(typed));
        pausing.set_value(set_timeout_with_handle(settle, PAUSE).ok());
    });
    settled
}

/// The packet, its files, and what is done where a line can't be read.
fn ready(held: Held, record: &DrawnLayout) -> impl IntoView + use<> {
    let session = held.session;
    let made = {
        let record = record.clone();
        move |typed: &Typed| Ready::of(session, typed, &record)
    };
    let settled = settled(held);
    let page = {
        let made = made.clone();
        move || match settled.with(&made) {
            Err(wrong) => view! { <p class="wrong" role="alert">{session.say(&wrong)}</p> }.into_any(),
            Ok(ready) => {
                let words = session.words();
                let body = ready.with(session, |packet| body(packet, &words));
                let body = body.replace("<main>", "<article>").replace("</main>", "</article>");
                sheet(body, within()).into_any()
            }
        }
    };
    let files: [(&'static str, &'static str, &'static str); 5] = [
        ("carry-page", "packet.html", "text/html"),
        ("carry-gpx", "layout.gpx", "application/gpx+xml"),
        ("carry-geojson", "layout.geojson", "application/geo+json"),
        ("carry-lines", "lines.csv", "text/csv"),
        ("carry-reserve", "reserve-lines.csv", "text/csv"),
    ];
    let buttons = files.map(|(code, file, kind)| {
        let made = made.clone();
        let class = if code == "carry-page" { "main" } else { "" };
        let out = move |_| {
            let Ok(ready) = held.with_untracked(|all| made(&all.packet)) else { return };
            let words = session.words();
            let text = match code {
                "carry-page" => ready.with(session, |packet| html(packet, &words)),
                "carry-gpx" => laid::gpx(&ready.layout),
                "carry-geojson" => geojson::layout(&ready.layout),
                "carry-lines" => laid::lines_table(&ready.layout, false),
                _ => laid::lines_table(&ready.layout, true),
            };
            hand_out(file, kind, &text);
        };
        view! { <button type="button" class=class on:click=out>{session.word(code)}</button> }
    });
    let print = move |_| {
        if let Some(window) = web_sys::window() {
            // a browser that can't print says so itself
            let _ = window.print();
        }
    };
    view! {
        <div class="choices">{buttons}<button type="button" on:click=print>{session.word("carry-print")}</button></div>
        <p class="quiet">{session.word("carry-pdf")}</p>
        {replace(held, record)}
        <section class="paper" aria-label=session.word("carry-page")>{page}</section>
    }
}

/// The packet's rules within this page, where it is an article among others.
pub(super) fn within() -> String {
    style().replace("main table", "article table")
}
