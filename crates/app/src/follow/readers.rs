//! Readers of the same lines: how far apart, by which habit, whether they are ready by the office's own tolerance; and what is
//! entered into the log.

use super::ask::{choose, names, points, typed, unread};
use super::slowly::{Slow, answered};
use super::told::{told, works};
use crate::parts::findings::findings;
use crate::route::Route;
use crate::session::Session;
use crate::settings::Settings;
use crate::standing::Standing;
use leptos::prelude::*;
use std::collections::BTreeSet;
use std::rc::Rc;
use tautline_report::Followed;
use tautline_survey::agree::{self, Agreement, Entered, enter};
use tautline_survey::finding::Finding;
use tautline_survey::message::Message;

/// So many pairs of readers stand on one screen.
const MOST: usize = 20;

/// A site in a year.
type Place = (String, Option<u16>);

/// What was found, with what it was found in.
struct Found {
    standing: Rc<Standing>,
    agreements: Vec<Agreement>,
}

/// What stands on the screen.
struct Page {
    /// None where no line was read by two.
    followed: Option<Followed>,
    /// Pairs of readers that aren't shown.
    left: usize,
}

impl Found {
    /// Those of one place, or the first of all.
    fn of(&self, which: Option<&Place>) -> Vec<Agreement> {
        let fits = |one: &&Agreement| which.is_none_or(|(site, year)| one.site == *site && one.year == *year);
        self.agreements.iter().filter(fits).take(MOST).cloned().collect()
    }

    fn page(&self, session: Session, which: Option<&Place>, tolerance: Option<f64>) -> Page {
        let shown = self.of(which);
        let left = if which.is_none() { self.agreements.len() - shown.len() } else { 0 };
        let followed = (!shown.is_empty())
            .then(|| tautline_report::agreement(&self.standing.input, &shown, tolerance, &session.words()));
        Page { followed, left }
    }
}

/// The screen.
pub(super) fn readers(session: Session) -> impl IntoView {
    let against = RwSignal::new(String::new());
    let which = RwSignal::new(None::<Place>);
    let tolerance = RwSignal::new(session.settings.get_untracked().tolerance);
    let question = move || (session.standing(), against.get());
    let slow = answered(question, async |(standing, against): (Rc<Standing>, String), turn| {
        let against = Some(against.trim()).filter(|name| !name.is_empty());
        let question = standing.question();
        let mut agreements = Vec::new();
        for own in agree::each(&standing.input, &question, against) {
            agreements.extend(own);
            if turn.is_over() && !turn.rest().await {
                return;
            }
        }
        turn.tell(Found { standing: Rc::clone(&standing), agreements });
    });
    let shown = move || (slow.answer.get(), which.get(), points(&tolerance.get()));
    let page = answered(shown, async move |(found, which, tolerance): (Option<Rc<Found>>, _, _), turn| {
        if let Some(found) = found {
            turn.tell(found.page(session, which.as_ref(), tolerance));
        }
    });
    let any = Memo::new(move |_| {
        slow.answer.with(|found| found.as_ref().is_some_and(|found| !found.agreements.is_empty()))
    });
    view! {
        <p>{session.word("follow-agree-what")}</p>
        <div class="ask">
            {against_whom(session, against)}
            {which_pair(session, slow, which)}
            {typed(session.word("follow-tolerance"), tolerance.get_untracked(), "decimal", move |text| keep(session, tolerance, text))}
            {move || unread(session, &tolerance.get())}
            <p class="quiet">{session.word("standing-whose")}</p>
        </div>
        {works(session, page)}
        {move || answer(session, page)}
        {move || any.get().then(|| entering(session, slow, which, tolerance))}
    }
}

/// The tolerance is the office's own: it stays on the device.
fn keep(session: Session, tolerance: RwSignal<String>, text: String) {
    tolerance.set(text.clone());
    session.set(Settings { tolerance: text, ..session.settings.get_untracked() });
}

fn against_whom(session: Session, against: RwSignal<String>) -> impl IntoView {
    let readers = Memo::new(move |_| {
        let standing = session.standing();
        names(standing.input.visits.iter().map(|visit| visit.reader.as_str()))
    });
    move || {
        let first = (String::new(), session.word("follow-first-pass"));
        let each = readers.get().into_iter().map(|name| (name.clone(), name));
        let options = [first].into_iter().chain(each).collect();
        let set = move |name| against.set(name);
        choose(session.word("follow-against"), options, move || against.get(), set)
    }
}

/// Where readers read the same lines: a site in a year, or all of them.
fn which_pair(session: Session, slow: Slow<Found>, which: RwSignal<Option<Place>>) -> impl IntoView {
    let places = Memo::new(move |_| {
        let found = slow.answer.get();
        let all = found.iter().flat_map(|found| &found.agreements);
        all.map(|one| (one.site.clone(), one.year)).collect::<BTreeSet<Place>>()
    });
    move || {
        let places: Vec<Place> = places.get().into_iter().collect();
        (places.len() > 1).then(|| {
            let all = (String::new(), session.word("follow-all-places"));
            let each = places.iter().map(|place| {
                let year = place.1.map_or_else(|| session.word("report-undated"), |year| year.to_string());
                (name(place), format!("{} {year}", place.0))
            });
            let options = [all].into_iter().chain(each).collect();
            let value = move || which.with(|which| which.as_ref().map_or_else(String::new, name));
            let set = move |chosen: String| which.set(places.iter().find(|one| name(one) == chosen).cloned());
            choose(session.word("follow-which"), options, value, set)
        })
    }
}

/// A place as a value of a choice.
fn name((site, year): &Place) -> String {
    format!("{} {site}", year.unwrap_or_default())
}

fn answer(session: Session, page: Slow<Page>) -> Option<impl IntoView + use<>> {
    let page = page.answer.get()?;
    let Some(followed) = &page.followed else {
        return Some(
            view! { <p>{session.word("agree-nobody")}</p><p class="quiet">{session.word("follow-agree-how")}</p> }.into_any(),
        );
    };
    let left =
        (page.left > 0).then(|| session.say(&Message::new("follow-more-pairs").with("more", page.left)));
    let file = format!("{}.html", session.word("follow-file-readers"));
    Some(view! { <p class="quiet">{left}</p>{told(session, followed, file)} }.into_any())
}

/// What is shown, entered into the log by the tolerance and judged by somebody.
fn entering(
    session: Session,
    slow: Slow<Found>,
    which: RwSignal<Option<Place>>,
    tolerance: RwSignal<String>,
) -> impl IntoView {
    let judge = RwSignal::new(session.settings.get_untracked().name);
    let left_out = RwSignal::new(Vec::<Finding>::new());
    let write = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        let Some(found) = slow.answer.get_untracked() else { return };
        let Some(tolerance) = points(&tolerance.get_untracked()) else {
            return session.tell(session.word("follow-log-needs-tolerance"));
        };
        let standing = session.standing_untracked();
        let shown = found.of(which.get_untracked().as_ref());
        let Entered { drafts, calibrations, findings } =
            enter(&standing.current, &found.standing.input, &shown, tolerance, judge.get_untracked().trim());
        left_out.set(findings);
        if drafts.is_empty() {
            return session.tell(session.word("follow-log-known"));
        }
        let said = session.say(&Message::new("follow-logged").with("records", calibrations));
        session.write("log", drafts, String::new(), move |_| session.tell(said));
    };
    view! {
        <section class="ask"><h2>{session.word("follow-log-heading")}</h2>
            <p>{session.word("follow-log-what")}</p>
            <form on:submit=write>
                {typed(session.word("follow-judge"), judge.get_untracked(), "text", move |text| judge.set(text))}
                <p class="choices">
                    <button type="submit">{session.word("follow-log-write")}</button>
                    <a class="button" href=Route::Agree("log".to_owned()).address()>{session.word("follow-to-log")}</a>
                </p>
            </form>
            {move || left_out.with(|found| findings(found))}
        </section>
    }
}
