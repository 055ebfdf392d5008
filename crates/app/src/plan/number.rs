//! How many lines: from readings or a described stand, answered while the fields move.

use super::ask::{ask_of, cost_of, foreseen, goal_of};
use super::fields::{at, choice, number as digits, slider, text};
use super::longer::{Longer, longer};
use super::sitting::Held;
use super::strata::strata;
use crate::parts::files::hand_out;
use crate::parts::sheet::sheet;
use leptos::prelude::*;
use tautline_report::{EffortTold, effort_body, effort_page};
use tautline_survey::effort::shares::SharesOutput;
use tautline_survey::effort::{Ask, EffortOutput, Foreseen, answers};
use tautline_survey::explain::subject_words;
use tautline_survey::goal::Wanted;
use tautline_survey::message::{Message, Value};

/// Everything that the page of a plan is made of.
#[derive(Clone)]
struct Found {
    output: EffortOutput,
    goals: Vec<Wanted>,
    visits: usize,
    cost: bool,
}

impl Found {
    fn told(&self) -> EffortTold<'_> {
        EffortTold { output: &self.output, goals: &self.goals, visits: self.visits, cost: self.cost }
    }
}

/// The step.
pub(super) fn number(held: Held) -> impl IntoView {
    let session = held.session;
    let foreseen = foreseen(held);
    let ask = Memo::new(move |_| held.with(ask_of));
    let later = longer(held, foreseen, ask);
    let shares = strata(held, foreseen, ask);
    view! {
        <p>{session.word("many-what")}</p>
        <form class="set-up" on:submit=move |event| event.prevent_default()>
            <h2>{session.word("many-foreseen")}</h2>
            {source(held, foreseen)}
            <h2>{session.word("many-asked")}</h2>
            {goal_said(held)}
            {slider(held, "many-half-width", at!(number.half_width), ["0.5", "15", "0.5"])}
            {slider(held, "many-power", at!(number.power), ["50", "99", "1"])}
            {choice(held, "app-confidence", at!(aim.confidence), &[("80", "aim-80"), ("90", "aim-90"), ("95", "aim-95"), ("99", "aim-99")])}
            {digits(held, "many-shows", at!(number.shows))}
            <details>
                <summary>{session.word("many-change")}</summary>
                {digits(held, "many-change-of", at!(number.change))}
                {digits(held, "many-correlation", at!(number.correlation))}
                {digits(held, "many-trend", at!(number.trend))}
                {digits(held, "many-visits", at!(number.visits))}
                {digits(held, "many-between-years", at!(number.between_years))}
                {simulate(held)}
            </details>
            <details>
                <summary>{session.word("many-costs")}</summary>
                <p class="quiet">{session.word("many-costs-what")}</p>
                {digits(held, "many-walk", at!(number.walk))}
                {digits(held, "many-lay", at!(number.lay))}
                {digits(held, "many-read", at!(number.read))}
                {digits(held, "many-budget", at!(number.budget))}
                {text(held, "where-length", at!(layout.length))}
            </details>
            {shares.fields}
        </form>
        {answer(held, foreseen, ask, later, shares.found)}
        {chosen(held)}
    }
}

/// From readings of the site, or described.
fn source(held: Held, foreseen: Memo<Option<Foreseen>>) -> impl IntoView {
    let session = held.session;
    let of = [(false, "many-from-readings"), (true, "many-described")].map(|(described, code)| {
        let is_it = move || held.with(|all| all.number.described == described);
        let chosen = move |_| held.update(|all| all.number.described = described);
        view! {
            <label class="option"><input type="radio" name="plan-source" prop:checked=is_it on:change=chosen/><span>{session.word(code)}</span></label>
        }
    });
    let described = move || {
        held.with(|all| all.number.described).then(|| {
            view! {
                {slider(held, "many-cover", at!(number.cover), ["0", "90", "1"])}
                {slider(held, "many-spread", at!(number.spread), ["1", "30", "0.5"])}
            }
        })
    };
    let said = move || match foreseen.get() {
        Some(found) if found.pilot.is_some() => {
            let message = Message::new("effort-from-pilot")
                .with("site", held.with(|all| all.site.clone()))
                .with("lines", found.pilot.unwrap_or(0))
                .with("what", subject_words(&found.subject))
                .with("cover", Value::Share(found.cover, 1))
                .with("spread", Value::Share(found.deviation, 1));
            session.say(&message)
        }
        Some(_) => session.word("many-described-what"),
        None => session.word("many-nothing-foreseen"),
    };
    view! {
        {text(held, "aim-site", at!(site))}
        <fieldset><legend>{session.word("many-source")}</legend>{of.collect_view()}</fieldset>
        {described}
        <p class="quiet" aria-live="polite">{said}</p>
    }
}

fn goal_said(held: Held) -> impl IntoView {
    let session = held.session;
    move || {
        let said = match held.with(goal_of) {
            Ok(goal) => session.say(
                &Message::new("many-goal").with("goal", tautline_survey::explain::goal_words(&goal.wanted)),
            ),
            Err(_) => session.word("many-no-goal"),
        };
        view! { <p class="quiet">{said}</p> }
    }
}

fn simulate(held: Held) -> impl IntoView {
    let is_it = move || held.with(|all| all.number.simulate);
    let chosen = move |event| held.update(|all| all.number.simulate = event_target_checked(&event));
    view! {
        <label class="option"><input type="checkbox" prop:checked=is_it on:change=chosen/><span>{held.session.word("many-simulate")}</span></label>
    }
}

/// The answers: the command's own page, and a number to be taken from each.
fn answer(
    held: Held,
    foreseen: Memo<Option<Foreseen>>,
    ask: Memo<Ask>,
    later: ReadSignal<Longer>,
    shares: Memo<Option<SharesOutput>>,
) -> impl IntoView {
    let session = held.session;
    let site = Memo::new(move |_| held.with(|all| all.site.clone()));
    let costs = Memo::new(move |_| held.with(|all| cost_of(all).is_some()));
    let quick = move || {
        let foreseen = foreseen.get()?;
        let ask = ask.get();
        let site = site.get();
        let found = answers(&foreseen, &ask);
        let visits = ask.trend.map_or(0, |(_, visits)| visits);
        let output = EffortOutput::of(Some(site), &foreseen, &ask, found);
        Some(Found { output, goals: ask.goals, visits, cost: costs.get() })
    };
    let whole = move || {
        let mut found = quick()?;
        let later = later.get();
        found.output.simulated = later.simulated;
        found.output.lengths = later.lengths;
        // what is on its way isn't missing
        found.cost &= !later.under_way;
        found.output.strata = shares.get();
        Some(found)
    };
    let body = move || {
        whole().filter(|found| !found.output.answers.is_empty()).map(|found| {
            let body = effort_body(&found.told(), &session.words());
            sheet(body, tautline_report::style())
        })
    };
    let take = move || {
        let found = quick()?;
        let told = found.told();
        let buttons = found.output.answers.iter().filter_map(|answer| {
            let lines = answer.lines?;
            let why = session.say(&told.question(answer));
            let said =
                session.say(&Message::new("many-take").with("lines", lines).with("question", why.clone()));
            let take = move |_| {
                held.update(|all| {
                    all.number.lines = lines.to_string();
                    all.number.why.clone_from(&why);
                });
            };
            Some(view! { <button type="button" on:click=take>{said}</button> })
        });
        Some(view! { <div class="choices">{buttons.collect_view()}</div> })
    };
    let under_way = move || later.get().under_way.then(|| session.word("many-under-way"));
    let out = move |_| {
        if let Some(found) = untrack(whole) {
            hand_out("plan.html", "text/html", &effort_page(&found.told(), &session.words()));
        }
    };
    view! {
        <section>
            <p class="quiet under-way" role="status">{under_way}</p>
            {body}
            {take}
            <div class="choices"><button type="button" on:click=out>{session.word("many-page")}</button></div>
        </section>
    }
}

/// The number that is laid out, and why.
fn chosen(held: Held) -> impl IntoView {
    let session = held.session;
    view! {
        <section class="set-up">
            <h2>{session.word("many-chosen")}</h2>
            {digits(held, "many-lines", at!(number.lines))}
            {text(held, "many-why", at!(number.why))}
        </section>
    }
}
