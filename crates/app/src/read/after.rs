//! Once a line is closed: its cover, the site so far with its interval, and the planned lines that nobody has read yet.

use super::open::Open;
use super::{photo, talk};
use crate::device::here::a_turn;
use crate::route::Route;
use crate::session::Session;
use crate::standing::Standing;
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::rc::Rc;
use tautline_survey::date::Date;
use tautline_survey::effort::looks::chosen;
use tautline_survey::line::{Choice, line_result};
use tautline_survey::message::{Message, Value};
use tautline_survey::photo::OfVisit;
use tautline_survey::sites::{of_site, rows};
use tautline_survey::visit::{Outcome, Visit};

/// The screen.
pub(super) fn after(open: Open, visit: &Visit) -> impl IntoView + use<> {
    let session = open.session;
    let standing = session.standing_untracked();
    let heading = session.say(
        &Message::new("read-closed").with("site", visit.site.as_str()).with("line", visit.line.as_str()),
    );
    let said = [own_cover(&standing, visit), last_time(&standing, visit), so_far(&standing, visit)];
    let said = said.into_iter().flatten().map(|one| view! { <p>{session.say(&one)}</p> }).collect_view();
    let left = unread(&standing, visit);
    let left = (!left.is_empty()).then(|| {
        let message = Message::new("read-left").with("lines", left);
        view! { <p>{session.say(&message)}</p> }
    });
    view! {
        <h1>{heading}</h1>{said}{left}
        {looks(session, &standing, visit)}
        {talk::talk(open, &standing, visit)}
        {photo::ways(session, &visit.site, &visit.line, &of_visit(visit))}
        <p class="choices">
            <a class="button main" href=Route::Read.address()>{session.word("read-next-line")}</a>
            <a class="button" href=Route::Site(visit.site.clone()).address()>{session.word("read-to-site")}</a>
        </p>
    }
}

/// Whether to read on, on a site whose objective names a plan for that; nothing on any other. It is worked out once the screen
/// is there.
fn looks(session: Session, standing: &Rc<Standing>, visit: &Visit) -> impl IntoView + use<> {
    let (standing, year) = (Rc::clone(standing), visit.date.map(Date::year));
    let plans = chosen(&standing.current, &standing.input, &visit.site, year);
    let said = RwSignal::new(None::<Vec<String>>);
    let waits = !plans.is_empty();
    if waits {
        spawn_local(async move {
            a_turn().await;
            let advice = plans.iter().map(|plan| plan.advice(&standing.input, &standing.question(), year));
            let advice = advice.map(|one| session.say(&one)).collect();
            said.try_set(Some(advice));
        });
    }
    waits.then_some(move || {
        let lines = said.get().unwrap_or_else(|| vec![session.word("looks-working")]);
        let lines = lines.into_iter().map(|line| view! { <p>{line}</p> }).collect_view();
        view! { <div class="told" role="status">{lines}</div> }
    })
}

/// The reading as photos are kept with it.
fn of_visit(visit: &Visit) -> OfVisit {
    OfVisit { date: visit.date, reader: visit.reader.clone(), recorder: visit.recorder.clone() }
}

/// What the same line came to the time before; shown only now, so that nobody reads towards it.
fn last_time(standing: &Standing, visit: &Visit) -> Option<Message> {
    let visits = &standing.input.visits;
    let before = (0..visits.len()).filter(|&at| {
        let other = &visits[at];
        other.site == visit.site
            && other.line == visit.line
            && other.date.is_some()
            && other.date < visit.date
    });
    let last = before.max_by_key(|&at| visits[at].date)?;
    let result = line_result(&standing.input, last, &Choice::default()).ok()?;
    let alike = visits[last].protocol == visit.protocol;
    let code = if alike { "read-last-time" } else { "read-last-time-unlike" };
    let date = visits[last].date.map_or(String::new(), |date| date.to_string());
    Some(
        Message::new(code).with("date", date).with("cover", Value::Share(result.share(result.canopy.low), 1)),
    )
}

fn own_cover(standing: &Standing, visit: &Visit) -> Option<Message> {
    let index = standing.input.visits.iter().position(|known| known.identity() == visit.identity())?;
    if visit.outcome == Outcome::NotRead {
        return Some(Message::new("read-line-not-read"));
    }
    match line_result(&standing.input, index, &Choice::default()) {
        Ok(result) => Some(
            Message::new("read-line-cover").with("cover", Value::Share(result.share(result.canopy.low), 1)),
        ),
        Err(finding) => Some(finding.message),
    }
}

fn so_far(standing: &Standing, visit: &Visit) -> Option<Message> {
    let site = rows(of_site(&standing.input, &visit.site), &standing.question());
    let row = site.into_iter().find(|row| row.year == visit.date.map(Date::year))?;
    let cover = row.cover?;
    let message = match cover.interval {
        Ok(interval) => Message::new("read-site-cover")
            .with("low", Value::Share(interval.low, 1))
            .with("high", Value::Share(interval.high, 1)),
        Err(_) => Message::new("read-site-cover-alone"),
    };
    Some(message.with("cover", Value::Share(cover.low, 1)).with("lines", row.lines))
}

/// Planned lines of the site without a reading in the year.
fn unread(standing: &Standing, visit: &Visit) -> Vec<String> {
    let year = visit.date.map(Date::year);
    let read =
        |line: &str| {
            standing.input.visits.iter().any(|known| {
                known.site == visit.site && known.line == line && known.date.map(Date::year) == year
            })
        };
    let plan = standing.input.plan.iter().filter(|line| line.site == visit.site && !read(&line.line));
    plan.map(|line| line.line.clone()).collect()
}
