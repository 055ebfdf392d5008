//! All sites over the years: one row for each, as soon as it is worked out, and all of them together.

use super::ask::{pair, two_years, years};
use super::slowly::{Slow, Turn, answered};
use super::told::works;
use crate::parts::files::hand_out;
use crate::parts::sheet::sheet;
use crate::route::Route;
use crate::session::Session;
use crate::standing::Standing;
use leptos::prelude::*;
use std::rc::Rc;
use tautline_report::Followed;
use tautline_survey::assess::Question;
use tautline_survey::follow::{self, ChangeQuestion, SiteChange};
use tautline_survey::limits::CHANCE_TO_SETTLE_PER_MILLE;
use tautline_survey::message::Message;
use tautline_survey::trend::{self, SiteTrend};

/// So many sites are shown at once; a part of the name finds the others.
const MOST: usize = 150;

/// A page of more sites than this is for the command.
const MOST_ON_A_PAGE: usize = 200;

/// What is asked of every site.
enum Wanted {
    Trend(Rc<Standing>),
    Change(Rc<Standing>, (u16, u16)),
    Nothing,
}

/// A site, and the first sentence about it.
#[derive(Clone)]
struct Row {
    site: String,
    said: Message,
}

/// What was worked out so far.
struct Found {
    rows: Vec<Row>,
    /// All sites together, once the last is worked out; none where they can't be taken together.
    together: Option<Followed>,
    /// Every site as a page, where they aren't too many.
    page: Option<Followed>,
    done: bool,
}

/// The screen.
pub(super) fn all(session: Session) -> impl IntoView {
    let all_visits = RwSignal::new(true);
    let (from, to) = (RwSignal::new(None), RwSignal::new(None));
    let find = RwSignal::new(String::new());
    let wanted = move || {
        let standing = session.standing();
        if all_visits.get() {
            return Wanted::Trend(standing);
        }
        let years = pair(&years(&standing.input, None), from.get(), to.get());
        years.map_or(Wanted::Nothing, |years| Wanted::Change(standing, years))
    };
    let slow = answered(wanted, async move |wanted, turn| match wanted {
        Wanted::Trend(standing) => of_trends(session, &standing, turn).await,
        Wanted::Change(standing, years) => of_changes(session, &standing, years, turn).await,
        Wanted::Nothing => {
            turn.tell(Found { rows: Vec::new(), together: None, page: None, done: true });
        }
    });
    let options = [(true, "follow-all-visits"), (false, "follow-two-visits")].map(|(all, name)| {
        let checked = move || all_visits.get() == all;
        view! {
            <label class="option">
                <input type="radio" name="follow-what" prop:checked=checked on:change=move |_| all_visits.set(all)/>{session.word(name)}
            </label>
        }
    });
    let read = Memo::new(move |_| years(&session.standing().input, None));
    let visits = move || (!all_visits.get()).then(|| two_years(session, read, from, to));
    let stop = move || {
        slow.works.get().then(|| {
            view! { <button type="button" on:click=move |_| slow.stop()>{session.word("follow-stop")}</button> }
        })
    };
    view! {
        <h1>{session.word("follow-all-sites")}</h1>
        <fieldset class="what ask"><legend>{session.word("follow-what")}</legend>{options.collect_view()}</fieldset>
        <div class="ask">{visits}</div>
        {works(session, slow)}
        {stop}
        <label class="find ask">{session.word("app-find")}
            <input type="search" on:input=move |event| find.set(event_target_value(&event))/>
        </label>
        {list(session, slow, find)}
        {together(session, slow)}
    }
}

/// Looks through the sites one by one, telling so far after each slice. None where nobody waits any more.
async fn each<T>(
    sites: impl Iterator<Item = T>,
    turn: &Turn<Found>,
    row: impl Fn(&T) -> Option<Row>,
) -> Option<(Vec<Row>, Vec<T>)> {
    let (mut rows, mut found) = (Vec::new(), Vec::new());
    for one in sites {
        rows.extend(row(&one));
        found.push(one);
        if turn.is_over() {
            turn.tell(Found { rows: rows.clone(), together: None, page: None, done: false });
            if !turn.rest().await {
                return None;
            }
        }
    }
    Some((rows, found))
}

async fn of_trends(session: Session, standing: &Standing, turn: &Turn<Found>) {
    let question = standing.question();
    let row = |one: &SiteTrend| {
        let first = one.figures.first();
        let said = first.and_then(|figure| trend::sentences(one, figure).into_iter().next());
        let said = said.or_else(|| one.findings.first().map(|finding| finding.message.clone()));
        said.map(|said| Row { site: one.site.clone(), said })
    };
    let Some((rows, found)) = each(trend::each(&standing.input, &question), turn, row).await else { return };
    turn.tell(Found { rows: rows.clone(), together: None, page: None, done: false });
    if !turn.rest().await {
        return;
    }
    let words = session.words();
    let region = trend::region(&standing.input, &found);
    let together =
        region.as_ref().map(|region| tautline_report::trends(&standing.input, &[], Some(region), &words));
    let page = (found.len() <= MOST_ON_A_PAGE)
        .then(|| tautline_report::trends(&standing.input, &found, region.as_ref(), &words));
    turn.tell(Found { rows, together, page, done: true });
}

async fn of_changes(session: Session, standing: &Standing, (from, to): (u16, u16), turn: &Turn<Found>) {
    let question = ChangeQuestion {
        question: Question { ..standing.question() },
        from,
        to,
        matters: None,
        power: f64::from(CHANCE_TO_SETTLE_PER_MILLE) / 1000.0,
        temporary: false,
        untreated: None,
        span: super::log::days(&session.settings.get_untracked().span),
    };
    let row = |one: &SiteChange| {
        let said = one.figures.first().and_then(|figure| follow::sentences(one, figure).into_iter().next());
        let said = said.or_else(|| one.findings.first().map(|finding| finding.message.clone()));
        said.map(|said| Row { site: one.site.clone(), said })
    };
    let sites = follow::each(&standing.input, &question, |_| true);
    let Some((rows, found)) = each(sites, turn, row).await else { return };
    let page = (found.len() <= MOST_ON_A_PAGE)
        .then(|| tautline_report::changes(&standing.input, &found, &session.words()));
    turn.tell(Found { rows, together: None, page, done: true });
}

fn list(session: Session, slow: Slow<Found>, find: RwSignal<String>) -> impl IntoView {
    let fits = move || {
        let wanted = find.get().to_lowercase();
        let found = slow.answer.get();
        let rows = found.iter().flat_map(|found| &found.rows);
        rows.filter(|row| row.site.to_lowercase().contains(&wanted)).cloned().collect::<Vec<_>>()
    };
    // a row stays while others come, and with it whoever is on it
    let shown = move || {
        let said = |row: Row| (row.site, capital(&session.say(&row.said)));
        fits().into_iter().take(MOST).map(said).collect::<Vec<_>>()
    };
    let more = move || {
        let more = fits().len().saturating_sub(MOST);
        (more > 0).then(|| session.say(&Message::new("app-more-sites").with("more", more)))
    };
    let count = move || {
        let found = slow.answer.get()?;
        let none = found.done && found.rows.is_empty();
        let said = Message::new("follow-so-many").with("sites", found.rows.len());
        Some(if none { session.word("follow-no-site") } else { session.say(&said) })
    };
    view! {
        <p class="quiet">{count}</p>
        <ul class="sites">
            <For each=shown key=Clone::clone children=|(site, said)| item(site, said)/>
        </ul>
        <p class="quiet">{more}</p>
    }
}

fn item(site: String, said: String) -> impl IntoView {
    let address = Route::Follow(Some(site.clone())).address();
    view! { <li><a href=address><span class="site">{site}</span><span class="said-of">{said}</span></a></li> }
}

fn together(session: Session, slow: Slow<Found>) -> impl IntoView {
    move || {
        let found = slow.answer.get().filter(|found| found.done && !found.rows.is_empty())?;
        let region = found.together.as_ref().map(|page| sheet(page.body(), tautline_report::style()));
        let take = match found.page.clone() {
            Some(page) => {
                let file = format!("{}.html", session.word("follow-all-sites"));
                let take = move |_| hand_out(&file, "text/html", &page.page());
                view! { <p class="choices"><button type="button" on:click=take>{session.word("follow-take-page")}</button></p> }.into_any()
            }
            None => view! { <p class="quiet">{session.word("follow-too-many")}</p> }.into_any(),
        };
        Some(view! { {take}{region} })
    }
}

/// A sentence that begins with what it is about begins with a capital letter.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or(String::new(), |first| first.to_uppercase().chain(letters).collect())
}
