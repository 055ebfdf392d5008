//! Fields that write into the sitting.

use super::sitting::{Held, Sitting};
use leptos::prelude::*;
use tautline_survey::message::Message;

/// Where in the sitting a field writes.
#[derive(Clone, Copy)]
pub(super) struct Place {
    pub(super) get: fn(&Sitting) -> &String,
    pub(super) set: fn(&mut Sitting) -> &mut String,
}

/// The place of a text, by its name.
macro_rules! at {
    ($($part:ident).+) => {
        $crate::plan::fields::Place { get: |all| &all.$($part).+, set: |all| &mut all.$($part).+ }
    };
}
pub(super) use at;

impl Place {
    pub(super) fn text(self, held: Held) -> String {
        held.with(|all| (self.get)(all).clone())
    }

    pub(super) fn write(self, held: Held, text: String) {
        held.update(|all| *(self.set)(all) = text);
    }
}

/// A line of text under its label.
pub(super) fn text(held: Held, label: &'static str, place: Place) -> impl IntoView {
    field(held, label, place, "text", "")
}

/// A line of text, its suggestions in a list of this id.
pub(super) fn suggested(held: Held, label: &'static str, place: Place, list: &'static str) -> impl IntoView {
    field(held, label, place, "text", list)
}

/// A date.
pub(super) fn date(held: Held, label: &'static str, place: Place) -> impl IntoView {
    field(held, label, place, "date", "")
}

fn field(
    held: Held,
    label: &'static str,
    place: Place,
    kind: &'static str,
    list: &'static str,
) -> impl IntoView {
    let typed = move |event| place.write(held, event_target_value(&event));
    view! {
        <label>{held.session.word(label)}
            <input type=kind autocomplete="off" list=(!list.is_empty()).then_some(list)
                prop:value=move || place.text(held) on:input=typed/>
        </label>
    }
}

/// A number under its label; `inputmode` brings up digits on a phone.
pub(super) fn number(held: Held, label: &'static str, place: Place) -> impl IntoView {
    let typed = move |event| place.write(held, event_target_value(&event));
    view! {
        <label>{held.session.word(label)}
            <input type="text" inputmode="decimal" autocomplete="off" prop:value=move || place.text(held) on:input=typed/>
        </label>
    }
}

/// Several lines of text.
pub(super) fn long(held: Held, label: &'static str, place: Place) -> impl IntoView {
    let typed = move |event| place.write(held, event_target_value(&event));
    view! {
        <label>{held.session.word(label)}
            <textarea rows="3" prop:value=move || place.text(held) on:input=typed></textarea>
        </label>
    }
}

/// One of a few, each a word in files and the code of its words.
pub(super) fn choice(
    held: Held,
    label: &'static str,
    place: Place,
    options: &'static [(&'static str, &'static str)],
) -> impl IntoView {
    choice_of(
        held,
        label,
        options,
        move |all| (place.get)(all).as_str(),
        move |all, chosen| *(place.set)(all) = chosen,
    )
}

/// The same for one thing among several, by whoever knows where it stands; nothing where it was taken away meanwhile.
pub(super) fn choice_of(
    held: Held,
    label: &'static str,
    options: &'static [(&'static str, &'static str)],
    get: impl Fn(&Sitting) -> &str + Copy + Send + 'static,
    set: impl Fn(&mut Sitting, String) + 'static,
) -> impl IntoView {
    let chosen = move |event| held.update(|all| set(all, event_target_value(&event)));
    let options = options.iter().map(|&(value, code)| {
        let is_it = move || held.with(|all| get(all) == value);
        view! { <option value=value selected=is_it>{held.session.word(code)}</option> }
    });
    view! { <label>{held.session.word(label)}<select on:change=chosen>{options.collect_view()}</select></label> }
}

/// A line of text of one thing among several.
pub(super) fn text_of(
    held: Held,
    label: String,
    mode: &'static str,
    get: impl Fn(&Sitting) -> &str + Send + 'static,
    set: impl Fn(&mut Sitting, String) + 'static,
) -> impl IntoView {
    let value = move || held.with(|all| get(all).to_owned());
    let typed = move |event| held.update(|all| set(all, event_target_value(&event)));
    view! { <label>{label}<input type="text" inputmode=mode autocomplete="off" prop:value=value on:input=typed/></label> }
}

/// A share of the ground in per cent, to be drawn along a scale or set by the arrow keys.
pub(super) fn slider(
    held: Held,
    label: &'static str,
    place: Place,
    [least, most, step]: [&'static str; 3],
) -> impl IntoView {
    let moved = move |event| place.write(held, event_target_value(&event));
    let shown = move || {
        let text = place.text(held);
        let number = if text.is_empty() { held.session.word("plan-not-asked") } else { text + "\u{a0}%" };
        held.session
            .say(&Message::new("plan-slider").with("what", held.session.word(label)).with("value", number))
    };
    view! {
        <label class="slider"><span>{shown}</span>
            <input type="range" min=least max=most step=step prop:value=move || place.text(held) on:input=moved/>
        </label>
    }
}

/// A share in per cent as typed; none where it is none, or nothing was typed.
pub(super) fn share(text: &str) -> Option<f64> {
    number_of(text.trim().trim_end_matches('%'))
        .map(|percent| percent / 100.0)
        .filter(|share| (0.0..=1.0).contains(share))
}

/// A number as typed, with either decimal mark.
pub(super) fn number_of(text: &str) -> Option<f64> {
    text.trim().replace(',', ".").parse().ok().filter(|number: &f64| number.is_finite() && *number >= 0.0)
}
