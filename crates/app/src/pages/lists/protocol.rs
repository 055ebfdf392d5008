//! A protocol, rule by rule. Another name or source is a revision of it; another rule makes another protocol, for readings
//! stay under the rules they were read by.

use super::NEW;
use super::plants::parted;
use crate::route::{Route, go};
use crate::session::Session;
use leptos::prelude::*;
use serde::Serialize;
use serde::de::DeserializeOwned;
use tautline_engine::length::DecimalMark;
use tautline_survey::measure::Measure;
use tautline_survey::message::Message;
use tautline_survey::notebook::payload::Payload;
use tautline_survey::plants::GrowthForm;
use tautline_survey::protocol::{Bridge, Counts, CoverMeaning, Dead, Overlap, Protocol, Side};

/// A text of a protocol, with its label.
type Text = (&'static str, fn(&mut Protocol) -> &mut String);

const TEXTS: [Text; 6] = [
    ("read-rule-window", |protocol| &mut protocol.reading_window),
    ("read-rule-alive", |protocol| &mut protocol.alive_without_leaves),
    ("read-rule-stalks", |protocol| &mut protocol.flower_stalks),
    ("read-rule-tape", |protocol| &mut protocol.tape),
    ("read-rule-wind", |protocol| &mut protocol.wind_limit),
    ("read-rule-heights", |protocol| &mut protocol.heights),
];

/// A length of a protocol, with its label.
type Length = (&'static str, fn(&mut Protocol) -> &mut Option<Measure>);

const LENGTHS: [Length; 3] = [
    ("rule-gap-limit", |protocol| &mut protocol.gap.limit),
    ("desk-rule-shortest", |protocol| &mut protocol.shortest),
    ("desk-rule-division", |protocol| &mut protocol.finest_division),
];

/// What a gap does in a case that handbooks leave open.
type Gap = (&'static str, fn(&mut Protocol) -> &mut Option<Bridge>);

const GAPS: [Gap; 6] = [
    ("rule-gap-equal", |protocol| &mut protocol.gap.equal),
    ("rule-gap-two-plants", |protocol| &mut protocol.gap.two_plants),
    ("rule-gap-across-species", |protocol| &mut protocol.gap.across_species),
    ("rule-gap-between-species", |protocol| &mut protocol.gap.between_species),
    ("rule-gap-across-dead", |protocol| &mut protocol.gap.across_dead),
    ("rule-gap-line-end", |protocol| &mut protocol.gap.line_end),
];

/// The screen.
pub(super) fn protocol(print: String) -> impl IntoView {
    let session = Session::here();
    move || {
        let known = session.standing().input.protocols.get(&print).cloned();
        match (known, print.as_str()) {
            (Some(known), _) => form(session, known, true).into_any(),
            (None, NEW) => form(session, Protocol::default(), false).into_any(),
            (None, _) => view! { <p>{session.word("history-nothing")}</p> }.into_any(),
        }
    }
}

fn form(session: Session, known: Protocol, stands: bool) -> impl IntoView {
    let title = if stands { known.name.clone() } else { session.word("desk-protocol-new") };
    let print = stands.then(|| known.fingerprint());
    let own = RwSignal::new_local(known);
    // lengths that can't be read yet, by the place of their field
    let unread = RwSignal::new([false; LENGTHS.len()]);
    let text = |label: &'static str, of: fn(&mut Protocol) -> &mut String| {
        let value = of(&mut own.get_untracked()).clone();
        let type_on = move |event| own.update(|own| event_target_value(&event).trim().clone_into(of(own)));
        view! { <label>{session.word(label)}<input type="text" autocomplete="off" prop:value=value on:input=type_on/></label> }
    };
    let lengths =
        LENGTHS.iter().enumerate().map(|(at, &(label, of))| length(session, own, unread, at, label, of));
    let said = move || {
        // one that is yet to be written is kept as itself
        print.as_ref().map(|print| {
            let is_other = own.with(|own| own.fingerprint() != *print);
            session.word(if is_other { "desk-protocol-another" } else { "desk-protocol-same" })
        })
    };
    let keep = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        keep(session, own.get_untracked(), unread.get_untracked().contains(&true));
    };
    view! {
        <h1>{title}</h1>
        <form on:submit=keep class="rules">
            <div class="fields">
                {text("desk-protocol-name", |own| &mut own.name)}{text("desk-protocol-source", |own| &mut own.source)}
                {choice(session, own, "rule-cover", |own| &mut own.cover, &[("taken-canopy-outline", CoverMeaning::CanopyOutline), ("desk-cover-foliar", CoverMeaning::Foliar), ("desk-cover-basal", CoverMeaning::Basal)])}
                {choice(session, own, "rule-dead", |own| &mut own.dead, &[("desk-dead-left-out", Dead::LeftOut), ("taken-apart", Dead::Apart), ("desk-dead-short", Dead::ShortJoinsLive), ("desk-dead-counts", Dead::CountsAsLive)])}
                {choice(session, own, "desk-rule-overlap", |own| &mut own.overlap, &[("desk-overlap-each", Overlap::EachSpecies), ("desk-overlap-once", Overlap::Once)])}
                {choice(session, own, "desk-rule-side", |own| &mut own.side, &[("desk-side-left", Side::Left), ("desk-side-right", Side::Right)])}
                {lengths.collect_view()}
                {GAPS.map(|(label, of)| choice(session, own, label, of, &[("taken-bridged", Bridge::Bridged), ("taken-breaks", Bridge::Breaks)])).collect_view()}
                {TEXTS.map(|(label, of)| text(label, of)).collect_view()}
            </div>
            {counts(session, own)}
            <p class="quiet" role="status">{said}</p>
            <div class="choices"><button type="submit" class="main">{session.word("app-keep")}</button></div>
        </form>
    }
}

/// A length with its unit; nothing in the field leaves the rule open.
fn length(
    session: Session,
    own: RwSignal<Protocol, LocalStorage>,
    unread: RwSignal<[bool; LENGTHS.len()]>,
    at: usize,
    label: &'static str,
    of: fn(&mut Protocol) -> &mut Option<Measure>,
) -> impl IntoView {
    let value = of(&mut own.get_untracked()).as_ref().map(|measure| {
        let unit = measure.unit().map(tautline_survey::measure::unit_words);
        let bare = measure.typed().ends_with(|c: char| c.is_ascii_digit());
        unit.filter(|_| bare)
            .map_or_else(|| measure.typed().to_owned(), |unit| format!("{} {unit}", measure.typed()))
    });
    let type_on = move |event| {
        let typed = event_target_value(&event);
        let read = Measure::read(&typed, None, DecimalMark::Point);
        unread.update(|unread| unread[at] = read.is_err() && !typed.trim().is_empty());
        own.update(|own| *of(own) = read.ok());
    };
    let wrong = move || unread.with(|unread| unread[at]).then(|| session.word("app-gap-rule-not-read"));
    view! {
        <label>{session.word(label)}
            <input type="text" autocomplete="off" placeholder=session.word("desk-left-open") aria-invalid=move || unread.with(|unread| unread[at]).to_string() prop:value=value.unwrap_or_default() on:input=type_on/>
            <span class="quiet">{wrong}</span>
        </label>
    }
}

/// One of a few, or left open.
fn choice<T: Copy + PartialEq + Serialize + DeserializeOwned + 'static>(
    session: Session,
    own: RwSignal<Protocol, LocalStorage>,
    label: &'static str,
    of: fn(&mut Protocol) -> &mut Option<T>,
    words: &[(&'static str, T)],
) -> impl IntoView + use<T> {
    let now = *of(&mut own.get_untracked());
    let options = words.iter().map(|&(word, value)| {
        view! { <option value=word selected=now == Some(value)>{session.word(word)}</option> }
    });
    let options = options.collect_view();
    let words = words.to_vec();
    let choose = move |event| {
        let chosen = event_target_value(&event);
        let value = words.iter().find(|(word, _)| *word == chosen).map(|(_, value)| *value);
        own.update(|own| *of(own) = value);
    };
    view! {
        <label>{session.word(label)}
            <select on:input=choose><option value="" selected=now.is_none()>{session.word("desk-left-open")}</option>{options}</select>
        </label>
    }
}

/// What counts: growth forms, and codes one by one.
fn counts(session: Session, own: RwSignal<Protocol, LocalStorage>) -> impl IntoView {
    let now = own.get_untracked().counts.unwrap_or_default();
    let change = move |change: &dyn Fn(&mut Counts)| {
        own.update(|own| {
            let mut counts = own.counts.take().unwrap_or_default();
            change(&mut counts);
            own.counts = (counts != Counts::default()).then_some(counts);
        });
    };
    let forms = GrowthForm::ALL.map(|form| {
        let ticked = now.forms.contains(&form);
        let tick = move |event| {
            let wanted = event_target_checked(&event);
            change(&|counts| {
                counts.forms.retain(|own| *own != form);
                if wanted {
                    counts.forms.push(form);
                }
            });
        };
        view! { <label class="option"><input type="checkbox" prop:checked=ticked on:input=tick/>{session.word(form.word())}</label> }
    });
    let codes = |label: &'static str, value: String, of: fn(&mut Counts) -> &mut Vec<String>| {
        let type_on = move |event| {
            let codes = parted(&event_target_value(&event).to_uppercase());
            change(&|counts| of(counts).clone_from(&codes));
        };
        view! { <label>{session.word(label)}<input type="text" autocomplete="off" prop:value=value on:input=type_on/></label> }
    };
    view! {
        <fieldset><legend>{session.word("rule-counts")}</legend>
            <p class="quiet">{session.word("desk-counts-open")}</p>
            <div class="ticks">{forms.collect_view()}</div>
            <div class="fields">
                {codes("desk-counts-also", now.also.join(", "), |counts| &mut counts.also)}
                {codes("desk-counts-except", now.except.join(", "), |counts| &mut counts.except)}
            </div>
        </fieldset>
    }
}

/// Keeps the protocol, and opens it under its fingerprint.
fn keep(session: Session, protocol: Protocol, unread: bool) {
    if unread {
        return session.tell(session.word("app-gap-rule-not-read"));
    }
    if protocol.name.is_empty() {
        return session.tell(session.word("desk-protocol-no-name"));
    }
    let print = protocol.fingerprint();
    let payload = Payload::Protocol(Box::new(protocol));
    let standing = session.standing_untracked();
    if standing.current.standing.get(&payload.key()).is_some_and(|known| known.payload == payload) {
        return session.tell(session.word("app-brings-nothing"));
    }
    let draft = standing.current.following(&payload);
    session.write("edit", vec![draft], String::new(), move |_| {
        session.tell(session.say(&Message::new("app-kept")));
        go(&Route::Lists(print));
    });
}
