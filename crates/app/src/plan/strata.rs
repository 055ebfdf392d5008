//! Lines of each stratum, where the ground of the next step has strata.

use super::fields::share;
use super::ground::site_of;
use super::sitting::Held;
use leptos::prelude::*;
use tautline_engine::effort::allot::Stratum;
use tautline_ground::site::square_metres;
use tautline_survey::effort::shares::{Planned, SharesOutput, shares};
use tautline_survey::effort::{Ask, Foreseen};
use tautline_survey::message::{Message, Value};

/// The fields, and what they come to.
pub(super) struct Shares {
    pub(super) fields: AnyView,
    pub(super) found: Memo<Option<SharesOutput>>,
}

/// Each stratum by name and hectares.
pub(super) fn strata(held: Held, foreseen: Memo<Option<Foreseen>>, ask: Memo<Ask>) -> Shares {
    let session = held.session;
    let ground = Memo::new(move |_| held.with(|all| all.ground.clone()));
    let strata = Memo::new(move |_| -> Vec<(String, f64)> {
        let site = ground.with(|ground| site_of(ground).site);
        let strata = site.map_or_else(Vec::new, |site| site.strata);
        if strata.len() < 2 {
            return Vec::new();
        }
        let one = |(name, region): (Option<String>, _)| {
            (name.unwrap_or_default(), square_metres(&region) / 10_000.0)
        };
        strata.into_iter().map(one).collect()
    });
    let found = Memo::new(move |_| {
        let (ask, foreseen) = (ask.get(), foreseen.get()?);
        let planned: Vec<Planned> = strata
            .get()
            .into_iter()
            .map(|(name, area)| {
                let own = held.with(|all| all.number.spreads.get(&name).and_then(|text| share(text)));
                let deviation = own.filter(|&own| own > 0.0).unwrap_or(foreseen.deviation);
                Planned { name, stratum: Stratum { area, deviation, cost: 1.0, least: 2 } }
            })
            .collect();
        if planned.is_empty() {
            return None;
        }
        let own = held.with(|all| all.number.lines.trim().parse::<usize>().ok());
        shares(&planned, own.or(ask.lines), ask.half_width, ask.confidence)
    });
    let fields = move || {
        let strata = strata.get();
        (!strata.is_empty()).then(|| {
            let rows = strata.into_iter().map(|(name, hectares)| {
                let label = Message::new("many-stratum").with("name", name.as_str()).with("hectares", Value::Number(hectares, 2));
                let value = {
                    let name = name.clone();
                    move || held.with(|all| all.number.spreads.get(&name).cloned().unwrap_or_default())
                };
                let typed = move |event| {
                    held.update(|all| {
                        all.number.spreads.insert(name.clone(), event_target_value(&event));
                    });
                };
                view! { <label>{session.say(&label)}<input type="text" inputmode="decimal" autocomplete="off" prop:value=value on:input=typed/></label> }
            });
            let rows = rows.collect_view();
            view! { <details><summary>{session.word("many-strata")}</summary><p class="quiet">{session.word("many-strata-what")}</p>{rows}</details> }
        })
    };
    Shares { fields: fields.into_any(), found }
}
