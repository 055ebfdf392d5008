//! Where the doubt of a mean comes from, and what to buy next.

use super::ask::{choose, typed, years};
use super::slowly::{Turn, answered};
use super::told::{told, works};
use crate::session::Session;
use crate::standing::Standing;
use leptos::prelude::*;
use std::rc::Rc;
use tautline_report::Followed;
use tautline_survey::agree::{Prices, Taking};
use tautline_survey::assess::Question;

/// What things cost, in minutes, each by its name.
const COSTS: [&str; 5] =
    ["follow-cost-walk", "follow-cost-lay", "follow-cost-read", "follow-cost-travel", "follow-cost-day"];

/// More minutes than this are a slip.
const MOST_MINUTES: f64 = 1e6;

/// The screen.
pub(super) fn sources(session: Session) -> impl IntoView {
    let costs = COSTS.map(|_| RwSignal::new(String::new()));
    let year = RwSignal::new(None::<u16>);
    let question = move || {
        let standing = session.standing();
        let question = Question { year: year.get(), ..standing.question() };
        (standing, question, Prices::said(costs.map(|cost| minutes(&cost.get()))))
    };
    let slow = answered(
        question,
        async move |(standing, question, prices): (Rc<Standing>, Question, Option<Prices>), turn| {
            work(session, &standing, &question, prices.as_ref(), turn).await;
        },
    );
    let fields = COSTS
        .iter()
        .zip(costs)
        .map(|(name, cost)| typed(session.word(name), String::new(), "decimal", move |text| cost.set(text)));
    let wrong = move || {
        let is_wrong =
            costs.iter().any(|cost| cost.with(|text| !text.trim().is_empty() && minutes(text).is_none()));
        is_wrong
            .then(|| view! { <p class="wrong" role="alert">{session.word("follow-minutes-not-read")}</p> })
    };
    let read = Memo::new(move |_| years(&session.standing().input, None));
    let of_year = move || {
        let all = (String::new(), session.word("follow-all-years"));
        let each = read.get().into_iter().map(|year| (year.to_string(), year.to_string()));
        let options = [all].into_iter().chain(each).collect();
        let value = move || year.get().map_or_else(String::new, |year| year.to_string());
        let set = move |text: String| year.set(text.parse().ok());
        choose(session.word("follow-year"), options, value, set)
    };
    view! {
        <p>{session.word("follow-sources-what")}</p>
        <div class="ask">{of_year}</div>
        <details class="ask">
            <summary>{session.word("follow-costs")}</summary>
            <p class="quiet">{session.word("follow-costs-what")}</p>
            {fields.collect_view()}
            {wrong}
        </details>
        {works(session, slow)}
        {move || slow.answer.get().map(|page| told(session, &page, format!("{}.html", session.word("follow-file-sources"))))}
    }
}

/// Takes the readings apart, a step of the search at a time.
async fn work(
    session: Session,
    standing: &Standing,
    question: &Question,
    prices: Option<&Prices>,
    turn: &Turn<Followed>,
) {
    let (taking, found) = Taking::begin(&standing.input, question);
    let doubt = match taking {
        Err(why) => Err(why),
        Ok(mut taking) => loop {
            if turn.is_over() && !turn.rest().await {
                return;
            }
            if let Some(found) = taking.step(prices) {
                break found;
            }
        },
    };
    let doubt = doubt.as_ref().map_err(|why| *why);
    turn.tell(tautline_report::sources(&standing.input, doubt, &found, &session.words()));
}

/// Minutes as typed; none where nothing was, or it isn't a number.
fn minutes(typed: &str) -> Option<f64> {
    typed.trim().parse().ok().filter(|minutes: &f64| (0.0..=MOST_MINUTES).contains(minutes))
}
