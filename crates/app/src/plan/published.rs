//! Published numbers beside one's own way to read, to be taken into the goal with their source.

use super::sitting::Held;
use leptos::prelude::*;
use tautline_exchange::benchmarks;
use tautline_survey::benchmark::{Compared, Scale, compare};
use tautline_survey::explain::goal_words;
use tautline_survey::goal::{Percent, Relation, Wanted};
use tautline_survey::message::Message;

/// The library, closed until it is wanted.
pub(super) fn published(held: Held) -> impl IntoView {
    let session = held.session;
    let (wanted, want) = signal(String::new());
    let (scale, set_scale) = signal(Scale::Stand);
    let (open, set_open) = signal(false);
    let found = move || {
        let wanted = wanted.get().to_lowercase();
        let site = held.with(|all| all.site.clone());
        let standing = session.standing();
        // the rule that the site was read under last
        let last =
            standing.input.visits.iter().filter(|visit| visit.site == site).max_by_key(|visit| visit.date);
        let protocol = last.and_then(|visit| standing.input.protocols.get(&visit.protocol));
        let all = benchmarks::published().into_iter().filter(|one| {
            [&one.key, &one.name, &one.plants].iter().any(|text| text.to_lowercase().contains(&wanted))
        });
        all.map(|one| item(held, &compare(&one, scale.get(), protocol))).collect_view()
    };
    let scales = [Scale::Stand, Scale::Nest, Scale::Landscape];
    let options = scales.map(|one| view! { <option value=one.word()>{session.word(one.word())}</option> });
    let chosen = move |event| {
        let word = event_target_value(&event);
        set_scale.set(scales.into_iter().find(|one| one.word() == word).unwrap_or(Scale::Stand));
    };
    view! {
        <details class="published" on:toggle=move |_| set_open.set(true)>
            <summary>{session.word("aim-published")}</summary>
            <p class="quiet">{session.word("benchmarks-not-official")}</p>
            <label>{session.word("aim-published-find")}<input type="search" on:input=move |event| want.set(event_target_value(&event))/></label>
            <label>{session.word("aim-published-scale")}<select on:change=chosen>{options.collect_view()}</select></label>
            <ul class="plain" aria-live="polite">{move || open.get().then(found)}</ul>
        </details>
    }
}

fn item(held: Held, one: &Compared) -> impl IntoView + use<> {
    let session = held.session;
    let about = one.benchmark.clone();
    let cover = session.say(&goal_words(&Wanted::Cover(about.cover.clone())));
    let facts = [
        ("benchmark-published", &about.published),
        ("benchmark-plants", &about.plants),
        ("benchmark-season", &about.season),
        ("benchmark-region", &about.region),
        ("benchmark-source", &about.source),
    ];
    let facts = facts.into_iter().filter(|(_, said)| !said.is_empty()).map(|(code, said)| {
        view! { <div><dt>{session.word(code)}</dt><dd>{said.clone()}</dd></div> }
    });
    let facts = facts.collect_view();
    let warnings =
        one.warnings.iter().map(|warning| view! { <li>{session.say(warning)}</li> }).collect_view();
    let said = if one.fits {
        session.say(&Message::new("benchmark-fits").with("goal", cover.clone()))
    } else {
        let range = |&(low, high): &(f64, f64)| {
            let words = session.words();
            let message = Message::new("benchmark-range").with("low", words.percent(low, 1));
            words.say(&message.with("high", words.percent(high, 1)))
        };
        let ranges: Vec<String> = one.could_be.iter().map(range).collect();
        session.say(&Message::new("benchmark-could-be").with("ranges", ranges))
    };
    let (name, fits) = (about.name.clone(), one.fits);
    let take = move |_| {
        let percent = |one: &Percent| (f64::from(one.0) / 10_000.0).to_string();
        held.update(|all| {
            let (relation, low, high) = match &about.cover {
                Relation::AtLeast(at) => ("at least", percent(at), String::new()),
                Relation::AtMost(at) => ("at most", percent(at), String::new()),
                Relation::Between(low, high) => ("between", percent(low), percent(high)),
            };
            relation.clone_into(&mut all.aim.relation);
            (all.aim.low, all.aim.high) = (low, high);
            all.aim.source.clone_from(&about.source);
        });
        session.tell(session.word(if fits { "aim-published-taken" } else { "aim-published-taken-unlike" }));
    };
    view! {
        <li class="benchmark">
            <h3>{format!("{name}: {cover}")}</h3>
            <dl>{facts}</dl>
            <ul>{warnings}</ul>
            <p>{said}</p>
            <button type="button" on:click=take>{session.say(&Message::new("aim-take-number").with("name", name))}</button>
        </li>
    }
}
