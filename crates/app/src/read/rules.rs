//! The protocol, one touch away: its rules in words, with a small drawing of each.

use super::open::Open;
use leptos::prelude::*;
use tautline_figures::rules::draw;
use tautline_figures::{Frame, Palette};
use tautline_report::packet::drawn_rules;
use tautline_survey::protocol::Protocol;

/// The protocol.
pub(super) fn rules(open: Open) -> impl IntoView {
    let known = open.known();
    let Some(protocol) = known.protocol.as_ref() else {
        return view! { <div class="protocol"><p class="quiet">{open.word("read-without-protocol")}</p>{departure(open)}</div> }.into_any();
    };
    let figures = drawn_rules(protocol).into_iter().map(|(case, message)| {
        let said = open.session.say(&message);
        let mut frame = Frame::new(&format!("read-{}", case.code()), 240, Palette::screen());
        frame.title.clone_from(&said);
        view! { <figure><div inner_html=draw(case, &frame)></div><figcaption>{said}</figcaption></figure> }
    });
    let words =
        texts(open, protocol).into_iter().map(|(name, text)| view! { <dt>{name}</dt><dd>{text}</dd> });
    view! {
        <div class="protocol">
            <p><b>{protocol.name.clone()}</b></p>
            <div class="drawings">{figures.collect_view()}</div>
            <dl>{words.collect_view()}</dl>
            {departure(open)}
        </div>
    }
    .into_any()
}

/// A departure from the protocol is written where the protocol is read.
fn departure(open: Open) -> impl IntoView {
    super::ending::condition(open, "read-departure", "departure")
}

/// What the protocol says in its own words, and what it leaves open.
fn texts(open: Open, protocol: &Protocol) -> Vec<(String, String)> {
    let own = [
        ("read-rule-window", &protocol.reading_window),
        ("read-rule-alive", &protocol.alive_without_leaves),
        ("read-rule-stalks", &protocol.flower_stalks),
        ("read-rule-tape", &protocol.tape),
        ("read-rule-wind", &protocol.wind_limit),
        ("read-rule-heights", &protocol.heights),
    ];
    let mut texts: Vec<(String, String)> = own
        .into_iter()
        .filter(|(_, text)| !text.is_empty())
        .map(|(name, text)| (open.word(name), text.clone()))
        .collect();
    let words = open.session.words();
    let taken: Vec<String> = protocol.rule().1.iter().map(|taken| words.assumption(taken)).collect();
    if !taken.is_empty() {
        texts.push((open.word("read-rule-open"), taken.join("; ")));
    }
    texts
}
