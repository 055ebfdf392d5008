//! All sites: verdict, cover and interval against the goal, the last visit, what waits. The first run starts here.

use crate::parts::small::{Small, small};
use crate::route::{Route, go};
use crate::session::{Session, Standing};
use leptos::prelude::*;
use std::collections::BTreeMap;
use tautline_survey::assess::{SiteGoal, threshold};
use tautline_survey::goal::Subject;
use tautline_survey::message::{Message, Value};
use tautline_survey::sites::{SiteRow, rows};

/// So many sites are shown at once; a part of the name finds the others.
const MOST: usize = 150;

/// The screen.
pub(crate) fn sites() -> impl IntoView {
    let session = Session::here();
    move || {
        let standing = session.standing();
        if standing.input.visits.is_empty() && standing.input.plan.is_empty() {
            first_run(session).into_any()
        } else {
            list(session, &standing).into_any()
        }
    }
}

fn first_run(session: Session) -> impl IntoView {
    let demo = move |_| crate::pages::take_in::demo(session);
    view! {
        <h1>{session.word("app-welcome")}</h1>
        <p>{session.word("app-welcome-what")}</p>
        <div class="choices">
            <button type="button" class="main" on:click=demo>{session.word("app-open-demo")}</button>
            <a class="button" href=Route::TakeIn.address()>{session.word("app-begin-empty")}</a>
        </div>
        <p class="quiet">{session.word("app-demo-invented")}</p>
        <p class="quiet">{session.word("app-cautions")}</p>
    }
}

fn list(session: Session, standing: &Standing) -> impl IntoView + use<> {
    let question = standing.question();
    let all = rows(standing.input.clone(), &question);
    // the newest year of each site; the older ones stand on its own screen
    let mut newest: BTreeMap<String, SiteRow> = BTreeMap::new();
    for row in all {
        let known = newest.get(&row.site).is_some_and(|known| known.year > row.year);
        if !known {
            newest.insert(row.site.clone(), row);
        }
    }
    let end = newest
        .values()
        .filter_map(|row| row.cover.as_ref())
        .map(|cover| cover.interval.map_or(cover.high, |i| i.high))
        .fold(0.1, f64::max);
    let end = (end * 10.0).ceil() / 10.0;
    let newest = StoredValue::new_local(newest);
    let goals = StoredValue::new_local(standing.goals.clone());
    let (wanted, set) = signal(String::new());
    let items = move || {
        let wanted = wanted.get().to_lowercase();
        newest.with_value(|newest| {
            let found = newest.values().filter(|row| row.site.to_lowercase().contains(&wanted));
            goals
                .with_value(|goals| found.take(MOST).map(|row| item(session, goals, row, end)).collect_view())
        })
    };
    let more = move || {
        let wanted = wanted.get().to_lowercase();
        let found = newest
            .with_value(|newest| newest.keys().filter(|site| site.to_lowercase().contains(&wanted)).count());
        (found > MOST).then(|| session.say(&Message::new("app-more-sites").with("more", found - MOST)))
    };
    view! {
        <h1>{session.word("app-sites")}</h1>
        <label class="find">{session.word("app-find")}<input type="search" on:input=move |event| set.set(event_target_value(&event))/></label>
        <ul class="sites">{items}</ul>
        <p class="quiet">{more}</p>
    }
}

fn item(session: Session, goals: &[SiteGoal], row: &SiteRow, end: f64) -> impl IntoView + use<> {
    let words = session.words();
    let address = Route::Site(row.site.clone()).address();
    let verdict = row.verdicts.first();
    let goal =
        verdict.and_then(|&(place, _)| goals.get(place)).filter(|goal| goal.goal.subject == Subject::Canopy);
    let picture = row.cover.as_ref().map(|cover| {
        small(Small {
            cover: (cover.low, cover.high),
            interval: cover.interval.ok().map(|interval| (interval.low, interval.high)),
            goal: goal.map(|goal| threshold(&goal.goal.wanted)),
            end,
        })
    });
    let said = row.cover.as_ref().map(|cover| {
        let message = match (cover.low.to_bits() == cover.high.to_bits(), cover.interval) {
            (true, Ok(interval)) => Message::new("app-site-cover")
                .with("cover", Value::Share(cover.low, 1))
                .with("low", Value::Share(interval.low, 1))
                .with("high", Value::Share(interval.high, 1)),
            (true, Err(_)) => Message::new("app-site-cover-alone").with("cover", Value::Share(cover.low, 1)),
            (false, _) => Message::new("app-site-cover-between")
                .with("low", Value::Share(cover.low, 1))
                .with("high", Value::Share(cover.high, 1)),
        };
        words.say(&message)
    });
    let mut about = vec![words.say(&Message::new("app-site-lines").with("lines", row.lines))];
    if let Some(year) = row.year {
        about.push(year.to_string());
    }
    if row.must_settle > 0 {
        about.push(words.say(&Message::new("app-site-to-settle").with("findings", row.must_settle)));
    }
    if row.have_a_look > 0 {
        about.push(words.say(&Message::new("app-site-to-look-at").with("findings", row.have_a_look)));
    }
    let verdict = verdict.map(|&(_, verdict)| {
        view! { <strong class=format!("verdict {}", verdict.code())>{words.word(verdict.code())}</strong> }
    });
    let site = row.site.clone();
    view! {
        <li>
            <a href=address><span class="site">{site}</span>{verdict}{picture}<span class="cover">{said}</span><span class="quiet">{about.join(" · ")}</span></a>
        </li>
    }
}

/// Opens the screen of all sites.
pub(crate) fn open() {
    go(&Route::Sites);
}
