//! All sites: verdict, cover and interval against the goal, the last visit, what waits. The first run starts here.

use crate::later;
use crate::parts::small;
use crate::parts::withheld::withheld;
use crate::route::{Route, go};
use crate::session::Session;
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::collections::BTreeMap;
use std::sync::Arc;
use tautline_survey::message::{Message, Value};
use tautline_survey::summary::{Summaries, Summary, YearSummary};

/// So many sites are shown at once; a part of the name finds the others.
const MOST: usize = 150;

/// The screen.
pub(crate) fn sites() -> impl IntoView {
    let session = Session::here();
    move || {
        let summaries = session.summaries();
        if !summaries.sites().is_empty() {
            list(session, summaries).into_any()
        } else if session.is_read.get() {
            first_run(session).into_any()
        } else {
            view! { <p class="quiet">{session.word("app-reading")}</p> }.into_any()
        }
    }
}

fn first_run(session: Session) -> impl IntoView {
    let demo = move |_| {
        spawn_local(async move {
            session.all_words().await;
            if later::demo(session).await.is_err() {
                session.tell(session.word("app-room-not-here"));
            }
        });
    };
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

fn list(session: Session, summaries: Arc<Summaries>) -> impl IntoView {
    let end = small::end_of(summaries.sites().values().filter_map(|site| site.years.last()));
    let (wanted, set) = signal(String::new());
    let (only, choose) = signal(String::new());
    let fits = move |site: &str, summary: &Summary, twice: usize| {
        let named = wanted.with(|wanted| site.to_lowercase().contains(&wanted.to_lowercase()));
        named && only.with(|only| is_so(only, summary, twice))
    };
    let found = {
        let summaries = Arc::clone(&summaries);
        Memo::new(move |_| {
            let twice = written_twice(session);
            let twice = |site: &String| twice.get(site).copied().unwrap_or(0);
            let all = summaries.sites().iter().map(|(site, summary)| (site, summary, twice(site)));
            all.filter(|(site, summary, twice)| fits(site, summary, *twice))
                .map(|(site, _, twice)| (site.clone(), twice))
                .collect::<Vec<(String, usize)>>()
        })
    };
    let items = move || {
        found.with(|found| {
            let known = found.iter().take(MOST).filter_map(|(site, twice)| {
                summaries.sites().get(site).map(|summary| item(session, site, summary, *twice, end))
            });
            known.collect_view()
        })
    };
    let more = move || match found.with(Vec::len) {
        0 => Some(session.word("desk-no-site")),
        found => {
            (found > MOST).then(|| session.say(&Message::new("app-more-sites").with("more", found - MOST)))
        }
    };
    let options = ONLY.map(|(code, name)| view! { <option value=code>{session.word(name)}</option> });
    let options = options.collect_view();
    view! {
        <h1>{session.word("app-sites")}</h1>
        {withheld(session)}
        <div class="fields">
            <label class="find">{session.word("app-find")}<input type="search" on:input=move |event| set.set(event_target_value(&event))/></label>
            <label>{session.word("desk-only")}<select on:input=move |event| choose.set(event_target_value(&event))>{options}</select></label>
        </div>
        <ul class="sites">{items}</ul>
        <p class="quiet">{more}</p>
    }
}

/// Which sites are shown, each by its code and its words.
const ONLY: [(&str, &str); 5] = [
    ("", "desk-only-all"),
    ("waiting", "desk-only-waiting"),
    ("met", "met"),
    ("not-met", "not-met"),
    ("not-yet-shown", "not-yet-shown"),
];

/// Whether a site is one of those: something waits there, or one of its verdicts is so.
fn is_so(only: &str, summary: &Summary, twice: usize) -> bool {
    let newest = summary.years.last();
    match only {
        "" => true,
        "waiting" => {
            let found = newest.is_some_and(|year| year.must_settle + year.have_a_look > 0);
            twice > 0 || found || !summary.not_read.is_empty()
        }
        verdict => newest.is_some_and(|year| year.verdicts.iter().any(|(_, code)| code == verdict)),
    }
}

/// How many records of each site two people wrote unlike.
pub(super) fn written_twice(session: Session) -> BTreeMap<String, usize> {
    let standing = session.standing();
    let mut twice = BTreeMap::new();
    for conflict in &standing.current.conflicts {
        if let Some(site) = conflict.keys.first().and_then(|key| key.parts.first()) {
            *twice.entry(site.clone()).or_default() += 1;
        }
    }
    twice
}

fn item(session: Session, site: &str, summary: &Summary, twice: usize, end: f64) -> impl IntoView + use<> {
    let words = session.words();
    let address = Route::Site(site.to_owned()).address();
    let newest = summary.years.last();
    let picture = newest.and_then(|year| small::of_year(year, end));
    let verdict = newest.and_then(|year| year.verdicts.first()).map(|(_, code)| {
        view! { <strong class=format!("verdict {code}")>{words.word(code)}</strong> }
    });
    let said = newest.and_then(cover_words).map(|message| words.say(&message));
    let about: Vec<String> = about(summary, twice).iter().map(|message| words.say(message)).collect();
    view! {
        <li>
            <a href=address><span class="site">{site.to_owned()}</span>{verdict}{picture}<span class="cover">{said}</span><span class="quiet">{about.join(" · ")}</span></a>
        </li>
    }
}

pub(super) fn cover_words(year: &YearSummary) -> Option<Message> {
    let (low, high) = year.cover?;
    let share = |share: f64| Value::Share(share, 1);
    Some(match (low.to_bits() == high.to_bits(), year.interval) {
        (true, Some((from, to))) => Message::new("app-site-cover")
            .with("cover", share(low))
            .with("low", share(from))
            .with("high", share(to)),
        (true, None) => Message::new("app-site-cover-alone").with("cover", share(low)),
        (false, Some((from, to))) => Message::new("app-site-cover-between-sure")
            .with("low", share(low))
            .with("high", share(high))
            .with("from", share(from))
            .with("to", share(to)),
        (false, None) => {
            Message::new("app-site-cover-between").with("low", share(low)).with("high", share(high))
        }
    })
}

/// When the site was read, on how many lines, and what waits there.
pub(super) fn about(summary: &Summary, twice: usize) -> Vec<Message> {
    let mut said = Vec::new();
    if let Some(last) = summary.last {
        said.push(Message::new("app-site-last").with("date", last.to_string()));
    }
    let Some(year) = summary.years.last() else { return said };
    said.push(Message::new("app-site-lines").with("lines", year.lines));
    let waiting = [
        ("desk-site-twice", twice),
        ("app-site-not-read", summary.not_read.len()),
        ("app-site-to-settle", year.must_settle),
        ("app-site-to-look-at", year.have_a_look),
    ];
    said.extend(
        waiting
            .into_iter()
            .filter(|(_, count)| *count > 0)
            .map(|(code, count)| Message::new(code).with("count", count)),
    );
    said
}

/// Opens the screen of all sites.
pub(crate) fn open() {
    go(&Route::Sites);
}
