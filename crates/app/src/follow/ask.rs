//! What is asked, as fields.

use crate::session::Session;
use leptos::prelude::*;
use std::collections::BTreeSet;
use tautline_engine::length::DecimalMark;
use tautline_survey::goal::Percent;
use tautline_survey::input::Input;
use tautline_survey::message::Value;

/// How sure, in per mille, as people ask.
pub(super) const CONFIDENCES: [u16; 4] = [800, 900, 950, 990];

/// So many names are offered in one list.
const MOST_NAMES: usize = 200;

/// A choice of some, each with its value and its name; the one that stands is marked. The field stays when another one comes to
/// stand, and with it whoever is in it.
pub(super) fn choose(
    label: String,
    options: Vec<(String, String)>,
    value: impl Fn() -> String + Copy + Send + 'static,
    chosen: impl Fn(String) + 'static,
) -> impl IntoView {
    let options = options
        .into_iter()
        .map(|(own, name)| {
            let is_chosen = {
                let own = own.clone();
                move || value() == own
            };
            view! { <option value=own prop:selected=is_chosen>{name}</option> }
        })
        .collect_view();
    view! { <label>{label}<select on:change=move |event| chosen(event_target_value(&event))>{options}</select></label> }
}

/// A line of text; what is typed counts at once.
pub(super) fn typed(
    label: String,
    value: String,
    inputmode: &'static str,
    changed: impl Fn(String) + 'static,
) -> impl IntoView {
    view! {
        <label>{label}
            <input type="text" inputmode=inputmode autocomplete="off" value=value on:input=move |event| changed(event_target_value(&event))/>
        </label>
    }
}

/// A choice of how sure.
pub(super) fn confidence(session: Session, value: RwSignal<u16>) -> impl IntoView {
    shares(session, "app-confidence", &CONFIDENCES, value)
}

/// A choice of shares in per mille.
pub(super) fn shares(
    session: Session,
    label: &'static str,
    of: &'static [u16],
    value: RwSignal<u16>,
) -> impl IntoView {
    let words = session.words();
    let options = of.iter().map(|per_mille| {
        (per_mille.to_string(), words.value(&Value::Share(f64::from(*per_mille) / 1000.0, 0)))
    });
    choose(
        session.word(label),
        options.collect(),
        move || value.get().to_string(),
        move |text| {
            if let Ok(per_mille) = text.parse() {
                value.set(per_mille);
            }
        },
    )
}

/// Points of cover as a share, from “5 %” or “5”; none where it isn't one yet.
pub(super) fn points(typed: &str) -> Option<f64> {
    let percent = Percent::read(typed.trim().trim_end_matches('%').trim(), DecimalMark::Point)?;
    Some(percent.share()).filter(|share| *share > 0.0 && *share <= 1.0)
}

/// That points were typed which can't be read.
pub(super) fn unread(session: Session, typed: &str) -> Option<impl IntoView + use<>> {
    (!typed.trim().is_empty() && points(typed).is_none())
        .then(|| view! { <p class="wrong" role="alert">{session.word("follow-points-not-read")}</p> })
}

/// The years in which lines were read, of one site or of all; the oldest first.
pub(super) fn years(input: &Input, site: Option<&str>) -> Vec<u16> {
    let own = input.visits.iter().filter(|visit| site.is_none_or(|site| visit.site == site));
    own.filter_map(|visit| visit.date)
        .map(tautline_survey::date::Date::year)
        .collect::<BTreeSet<_>>()
        .into_iter()
        .collect()
}

/// Names for a list beside a field; where there are too many, the first ones.
pub(super) fn names<'a>(all: impl Iterator<Item = &'a str>) -> Vec<String> {
    let all: BTreeSet<&str> = all.filter(|name| !name.is_empty()).collect();
    all.into_iter().take(MOST_NAMES).map(str::to_owned).collect()
}

/// Two years, the earlier first: those that were chosen, else the last two.
pub(super) fn pair(years: &[u16], from: Option<u16>, to: Option<u16>) -> Option<(u16, u16)> {
    let to = to.filter(|to| years.contains(to)).or(years.last().copied())?;
    let before = years.iter().rev().find(|year| **year < to).copied();
    let from = from.filter(|from| years.contains(from) && *from < to).or(before)?;
    Some((from, to))
}

/// Choices of two visits; nothing where there is only one. The lists change with the years that there are, and with nothing else.
pub(super) fn two_years(
    session: Session,
    years: Memo<Vec<u16>>,
    from: RwSignal<Option<u16>>,
    to: RwSignal<Option<u16>>,
) -> impl IntoView {
    let chosen = move || years.with(|years| pair(years, from.get(), to.get()));
    let text = |year: Option<u16>| year.map_or_else(String::new, |year| year.to_string());
    let set_from = move |text: String| {
        let year = text.parse().ok();
        if year >= chosen().map(|(_, last)| last) {
            to.set(None);
        }
        from.set(year);
    };
    let set_to = move |text: String| {
        let year = text.parse().ok();
        if chosen().map(|(first, _)| first) >= year {
            from.set(None);
        }
        to.set(year);
    };
    move || {
        let all = years.get();
        let options = |years: &[u16]| years.iter().map(|year| (year.to_string(), year.to_string())).collect();
        (all.len() > 1).then(|| {
            let (earlier, later) = (options(&all[..all.len() - 1]), options(&all[1..]));
            view! {
                <div class="two">
                    {choose(session.word("follow-earlier-visit"), earlier, move || text(chosen().map(|years| years.0)), set_from)}
                    {choose(session.word("follow-later-visit"), later, move || text(chosen().map(|years| years.1)), set_to)}
                </div>
            }
        })
    }
}
