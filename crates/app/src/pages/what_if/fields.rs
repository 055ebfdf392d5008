//! What can be asked of a site: how sure, which interval, the gap rule, what counts, which lines.

use super::{Asked, Held, Met, Newest, measure};
use crate::session::Session;
use leptos::prelude::*;
use std::collections::BTreeSet;
use tautline_engine::confidence::Method;
use tautline_survey::message::{Message, Value};
use tautline_survey::plants::{GrowthForm, Plant};

/// How sure, in per mille, as people ask.
const CONFIDENCES: [u16; 4] = [800, 900, 950, 990];

const METHODS: [Method; 4] = [Method::LogitEffective, Method::LogitT, Method::StudentT, Method::Bca];

/// What dead canopy does: as the protocol says, or as asked.
const DEAD: [(&str, Option<bool>, &str); 3] = [
    ("", None, "desk-dead-own"),
    ("counts", Some(true), "desk-dead-counts"),
    ("apart", Some(false), "desk-dead-apart"),
];

/// All fields.
pub(super) fn fields(session: Session, newest: Held, asked: RwSignal<Asked>) -> impl IntoView {
    view! {
        <div class="fields">
            {confidence(session, asked)}{method(session, asked)}{dead(session, asked)}{gap_rule(session, asked)}
        </div>
        {counting(session, newest, asked)}
        {lines(session, newest, asked)}
    }
}

fn confidence(session: Session, asked: RwSignal<Asked>) -> impl IntoView {
    let options = CONFIDENCES.map(|per_mille| {
        let said = session.words().value(&Value::Share(f64::from(per_mille) / 1000.0, 0));
        let is_so = move || asked.with(|asked| asked.confidence == per_mille);
        view! { <option value=per_mille.to_string() prop:selected=is_so>{said}</option> }
    });
    let chosen = move |event| {
        if let Ok(per_mille) = event_target_value(&event).parse() {
            asked.update(|asked| asked.confidence = per_mille);
        }
    };
    view! { <label>{session.word("app-confidence")}<select on:input=chosen>{options.collect_view()}</select></label> }
}

fn method(session: Session, asked: RwSignal<Asked>) -> impl IntoView {
    let options = METHODS.map(|method| {
        let is_so = move || asked.with(|asked| asked.method.unwrap_or(METHODS[0]) == method);
        view! { <option value=method.code() prop:selected=is_so>{session.word(method.code())}</option> }
    });
    let chosen = move |event| {
        let code = event_target_value(&event);
        // the first is the usual one: then each kind of figure takes its own
        let method = METHODS[1..].iter().copied().find(|method| method.code() == code);
        asked.update(|asked| asked.method = method);
    };
    view! { <label>{session.word("app-method")}<select on:input=chosen>{options.collect_view()}</select></label> }
}

fn dead(session: Session, asked: RwSignal<Asked>) -> impl IntoView {
    let options = DEAD.map(|(value, counts, name)| {
        let is_so = move || asked.with(|asked| asked.dead_counts == counts);
        view! { <option value=value prop:selected=is_so>{session.word(name)}</option> }
    });
    let chosen = move |event| {
        let value = event_target_value(&event);
        let counts = DEAD.iter().find(|(own, ..)| *own == value).and_then(|(_, counts, _)| *counts);
        asked.update(|asked| asked.dead_counts = counts);
    };
    view! { <label>{session.word("desk-dead")}<select on:input=chosen>{options.collect_view()}</select></label> }
}

fn gap_rule(session: Session, asked: RwSignal<Asked>) -> impl IntoView {
    let typed = move |event| asked.update(|asked| asked.gap_rule = event_target_value(&event));
    let said = move || {
        asked.with(|asked| match measure(&asked.gap_rule) {
            _ if asked.gap_rule.trim().is_empty() => session.word("app-gap-rule-own"),
            None => session.word("app-gap-rule-not-read"),
            Some(measure) => session.say(&Message::new("app-gap-rule-asked").with("length", measure.typed())),
        })
    };
    let value = move || asked.with(|asked| asked.gap_rule.clone());
    view! {
        <label>{session.word("app-gap-rule")}
            <input type="text" inputmode="text" autocomplete="off" aria-describedby="gap-rule-said" prop:value=value on:input=typed/>
        </label>
        <p class="quiet" id="gap-rule-said">{said}</p>
    }
}

/// Which species count: one by one, or all of a group or a growth form and no others.
fn counting(session: Session, newest: Held, asked: RwSignal<Asked>) -> impl IntoView {
    let kinds = newest.with_value(|newest| kinds(session, newest)).into_iter().map(|(name, codes)| {
        let choose = move |_| {
            let counts = newest.with_value(|newest| newest.counting(|met| codes.contains(&met.code)));
            asked.update(|asked| asked.counts = counts);
        };
        view! { <button type="button" on:click=choose>{name}</button> }
    });
    let kinds = kinds.collect_view();
    let ticks = newest.with_value(|own| {
        own.met.iter().enumerate().map(|(at, met)| species(newest, at, met, asked)).collect_view()
    });
    view! {
        <fieldset><legend>{session.word("desk-counts")}</legend>
            <p class="quiet">{session.word("desk-counts-only")}</p>
            <div class="choices">{kinds}</div>
            <div class="ticks">{ticks}</div>
        </fieldset>
    }
}

/// The growth forms and groups that were met, each with its species.
fn kinds(session: Session, newest: &Newest) -> Vec<(String, BTreeSet<String>)> {
    let plants = &newest.input.plants;
    let codes = |are: &dyn Fn(&Plant) -> bool| -> BTreeSet<String> {
        let met = newest.met.iter().filter(|met| plants.find(&met.code).is_some_and(are));
        met.map(|met| met.code.clone()).collect()
    };
    let forms = GrowthForm::ALL.map(|form| (session.word(form.word()), codes(&|plant| plant.form == form)));
    let groups = plants.groups().into_iter().map(|group| {
        let name = session.say(&Message::new("desk-group").with("group", group));
        (name, codes(&|plant| plant.groups.iter().any(|own| own == group)))
    });
    forms.into_iter().chain(groups).filter(|(_, codes)| !codes.is_empty()).collect()
}

/// One species: whether it counts.
fn species(newest: Held, at: usize, met: &Met, asked: RwSignal<Asked>) -> impl IntoView + use<> {
    let name = if met.name.is_empty() { met.code.clone() } else { format!("{} · {}", met.code, met.name) };
    let checked =
        move || newest.with_value(|newest| asked.with(|asked| newest.counts(asked, &newest.met[at])));
    let tick = move |event| {
        let wanted = event_target_checked(&event);
        let before = asked.get_untracked();
        let counts = newest.with_value(|newest| {
            let changed = &newest.met[at].code;
            newest.counting(|met| if met.code == *changed { wanted } else { newest.counts(&before, met) })
        });
        asked.update(|asked| asked.counts = counts);
    };
    view! { <label class="option"><input type="checkbox" prop:checked=checked on:input=tick/>{name}</label> }
}

/// Which lines speak.
fn lines(session: Session, newest: Held, asked: RwSignal<Asked>) -> impl IntoView {
    let ticks = newest.with_value(|newest| newest.lines.clone()).into_iter().map(|line| {
        let name = session.say(&Message::new("app-photo-line").with("line", line.as_str()));
        let own = line.clone();
        let checked = move || asked.with(|asked| !asked.without.contains(&own));
        let tick = move |event| {
            let wanted = event_target_checked(&event);
            asked.update(|asked| {
                if wanted { asked.without.remove(&line) } else { asked.without.insert(line.clone()) };
            });
        };
        view! { <label class="option"><input type="checkbox" prop:checked=checked on:input=tick/>{name}</label> }
    });
    let ticks = ticks.collect_view();
    view! { <fieldset><legend>{session.word("desk-lines")}</legend><div class="ticks">{ticks}</div></fieldset> }
}
