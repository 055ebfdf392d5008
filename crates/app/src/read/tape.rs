//! The tape as one walks along it: a window that runs with the reader, what has been read, where they stand.

use super::open::Open;
use leptos::ev;
use leptos::prelude::*;
use tautline_engine::length::{Bare, Length, Unit};
use tautline_engine::stretch::Stretch;
use tautline_figures::ruler::{Read, Ruler, draw, window};
use tautline_figures::{Frame, Palette, Tone};
use tautline_survey::draft::{LineDraft, Setup};
use tautline_survey::message::Message;
use tautline_survey::visit::State;

/// The picture, as wide as the screen.
pub(super) fn tape(open: Open) -> impl IntoView {
    let wide = RwSignal::new(width());
    // a phone is turned, a window pulled wider
    let handle = window_event_listener(ev::resize, move |_| wide.set(width()));
    on_cleanup(move || handle.remove());
    let drawn = move || open.draft.with(|draft| picture(open, draft, wide.get()));
    view! { <div class="ruler" inner_html=drawn></div> }
}

fn picture(open: Open, draft: &LineDraft, wide: u16) -> String {
    let (setup, sheet) = (draft.setup(), draft.sheet());
    let known = open.known();
    let planned = known.planned.as_ref().and_then(|line| line.length.as_ref());
    let end = setup.length.as_ref().or(planned).map(tautline_survey::measure::Measure::length);
    let mut codes: Vec<String> = Vec::new();
    let mut read = Vec::new();
    for row in sheet.standing() {
        let code = known.plants.code(&row.species);
        let at = codes.iter().position(|known| *known == code).unwrap_or_else(|| {
            codes.push(code);
            codes.len() - 1
        });
        let (start, stop) = (length(setup, &row.start), length(setup, &row.stop));
        if let Some(stretch) = start.zip(stop).and_then(|(start, stop)| Stretch::new(start, stop)) {
            let tone = Tone(u8::try_from(at % 6).unwrap_or(0));
            read.push(Read { stretch, tone, dead: row.state == State::Dead });
        }
    }
    let since = length(setup, &sheet.entry.start);
    let farthest = read.iter().map(|one| one.stretch.stop()).max();
    let typed = length(setup, &sheet.entry.text).filter(|&typed| end.is_none_or(|end| typed <= end));
    // a number half typed is a small one: the mark goes back only where an intercept that was missed is put in
    let so_far = if sheet.entry.before.is_some() { since } else { since.max(farthest) };
    let at = typed.max(so_far).unwrap_or(Length::ZERO);
    let unit = match setup.unit {
        Bare::Unit(Unit::Inch) => Unit::Inch,
        Bare::DecimalFeet | Bare::FeetAndInches | Bare::Unit(Unit::Foot) => Unit::Foot,
        Bare::Unit(unit) => unit,
    };
    let mut frame = Frame::new("read-tape", wide, Palette::screen());
    frame.title = open.word("read-tape");
    frame.description = open.session.say(&Message::new("read-tape-shows").with("rows", read.len()));
    draw(&Ruler { window: window(at, end, unit), end, unit, read, since, at }, &frame)
}

/// How wide the screen is, in the steps of a picture.
fn width() -> u16 {
    let inner = web_sys::window().and_then(|window| window.inner_width().ok()?.as_f64()).unwrap_or(0.0);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "held within a few hundred")]
    let width = inner.clamp(380.0, 1400.0) as u16;
    width
}

fn length(setup: &Setup, typed: &str) -> Option<Length> {
    setup.measure(typed).ok().map(|measure| measure.length())
}
