//! The goals that stand in the notebook: each can be changed, as a further revision, or taken back.

use super::aim::{about_of, objective};
use super::fields::{at, long};
use super::sitting::{Aim, Held};
use crate::session::Session;
use leptos::prelude::*;
use tautline_survey::explain::{goal_words, subject_words};
use tautline_survey::goal::{Percent, Relation, Subject, Wanted};
use tautline_survey::message::Message;
use tautline_survey::notebook::current::Current;
use tautline_survey::notebook::gather::{change, stand, withdraw};
use tautline_survey::notebook::payload::{Key, Payload};
use tautline_survey::promise::{Agreed, Direction, Objective};

/// The objective that a sitting changes, as it stands.
pub(super) fn changed(current: &Current, changes: Option<&(String, String)>) -> Option<Objective> {
    let (site, name) = changes?;
    match &current.standing.get(&Key::of_objective(site, name))?.payload {
        Payload::Objective(found) => Some((**found).clone()),
        _ => None,
    }
}

/// The goals of the site that is named, or of all sites where none is.
pub(super) fn goals(held: Held) -> impl IntoView {
    let session = held.session;
    let asked = RwSignal::new(None::<(String, String)>);
    let list = move || {
        let site = held.with(|all| all.site.trim().to_owned());
        let standing = session.standing();
        let own = standing.current.standing.values().filter_map(|one| match &one.payload {
            Payload::Objective(found) if site.is_empty() || found.site.is_empty() || found.site == site => {
                Some((**found).clone())
            }
            _ => None,
        });
        let own: Vec<Objective> = own.collect();
        if own.is_empty() {
            return view! { <p class="quiet">{session.word("goals-none")}</p> }.into_any();
        }
        let rows = own.iter().map(|one| row(held, asked, one)).collect_view();
        view! { <ul class="plain handed">{rows}</ul> }.into_any()
    };
    view! { <section class="goals"><h2>{session.word("goals-title")}</h2>{list}</section> }
}

fn row(held: Held, asked: RwSignal<Option<(String, String)>>, one: &Objective) -> impl IntoView + use<> {
    let session = held.session;
    let who = (one.site.clone(), one.name.clone());
    let named = |code| session.say(&Message::new(code).with("name", one.name.as_str()));
    let wanted = one.goal.as_ref().map(|goal| {
        let what = session.say(&subject_words(&goal.subject));
        format!(" · {what}, {}", session.say(&goal_words(&goal.wanted)))
    });
    let said = format!("{}{}", one.name, wanted.unwrap_or_default());
    let (change_label, withdraw_label) = (named("goals-change-of"), named("goals-withdraw-of"));
    let change = {
        let one = one.clone();
        move |_| match typed(&one, session) {
            Some(aim) => {
                held.update(|all| {
                    all.site.clone_from(&one.site);
                    all.aim = aim;
                });
                if let Some(window) = web_sys::window() {
                    window.scroll_to_with_x_and_y(0.0, 0.0);
                }
            }
            None => session.tell(session.word("goals-not-of-cover")),
        }
    };
    let is_asked = {
        let who = who.clone();
        move || asked.with(|asked| *asked == Some(who.clone()))
    };
    let ask = {
        let who = who.clone();
        move |_| asked.set(Some(who.clone()))
    };
    let sure = move || is_asked().then(|| sure(held, asked, who.clone()));
    view! {
        <li>
            <span>{said}</span>
            <button type="button" aria-label=change_label on:click=change>{session.word("goals-change")}</button>
            <button type="button" aria-label=withdraw_label on:click=ask>{session.word("goals-withdraw")}</button>
            {sure}
        </li>
    }
}

/// Asks why before anything is taken back.
fn sure(held: Held, asked: RwSignal<Option<(String, String)>>, who: (String, String)) -> impl IntoView {
    let session = held.session;
    let why = RwSignal::new(String::new());
    let take_back = move |_| {
        let current = &session.standing_untracked().current;
        let Some(standing) = current.standing.get(&Key::of_objective(&who.0, &who.1)) else { return };
        let changes = Some(who.clone());
        session.write("withdraw", withdraw(standing), why.get_untracked(), move |_| {
            asked.set(None);
            held.update(|all| {
                if all.aim.changes == changes {
                    all.aim.changes = None;
                }
            });
            session.tell(session.word("goals-withdrawn"));
        });
    };
    view! {
        <div class="sure">
            <label>{session.word("goals-withdraw-sure")}
                <input type="text" autocomplete="off" prop:value=why on:input=move |event| why.set(event_target_value(&event))/>
            </label>
            <div class="choices">
                <button type="button" class="main" on:click=take_back>{session.word("goals-withdraw-do")}</button>
                <button type="button" on:click=move |_| asked.set(None)>{session.word("goals-withdraw-not")}</button>
            </div>
        </div>
    }
}

/// An objective as it would be typed; none where its goal isn't one that the fields hold.
fn typed(one: &Objective, session: Session) -> Option<Aim> {
    let per_mille = |chance: Option<u16>| {
        chance.map_or_else(String::new, |chance| Percent(u32::from(chance) * 1_000).digits())
    };
    let mut aim = Aim {
        name: one.name.clone(),
        about: about_of(&one.place, session).to_owned(),
        direction: match one.direction {
            Some(Direction::Raise) => "raise",
            Some(Direction::Lower) => "lower",
            Some(Direction::Hold) => "hold",
            None => "",
        }
        .to_owned(),
        by: one.by.map_or_else(String::new, |by| by.to_string()),
        smallest: one.sampling.smallest_change.map_or_else(String::new, Percent::digits),
        false_alarm: per_mille(one.sampling.false_alarm_per_mille),
        missed: per_mille(one.sampling.missed_change_per_mille),
        reason: one.reason.clone(),
        source: one.source.clone(),
        agreed: one.agreed.iter().map(agreed).collect::<Vec<_>>().join("; "),
        changes: Some((one.site.clone(), one.name.clone())),
        ..Aim::default()
    };
    if let Some(sure) = one.sampling.confidence_per_mille {
        aim.confidence = per_mille(Some(sure));
    }
    let Some(goal) = &one.goal else { return Some(aim) };
    let Wanted::Cover(relation) = &goal.wanted else { return None };
    aim.subject = match &goal.subject {
        Subject::Canopy => "canopy".to_owned(),
        Subject::Sum => "sum".to_owned(),
        Subject::Dead => "dead".to_owned(),
        Subject::Species(code) => code.clone(),
        Subject::Form(form) => format!("form {}", form.word()),
        Subject::Group(group) => format!("group {group}"),
    };
    let (word, low, high) = match relation {
        Relation::AtLeast(low) => ("at least", low, None),
        Relation::AtMost(low) => ("at most", low, None),
        Relation::Between(low, high) => ("between", low, Some(high)),
    };
    word.clone_into(&mut aim.relation);
    aim.low = low.digits();
    aim.high = high.map_or_else(String::new, |high| high.digits());
    Some(aim)
}

fn agreed(one: &Agreed) -> String {
    one.date.map_or_else(|| one.who.clone(), |date| format!("{}, {date}", one.who))
}

/// Keeps the goal in the notebook, in the place of the one that it changes, and names what was left open.
pub(super) fn keep(held: Held) -> impl IntoView {
    let session = held.session;
    let wrong = RwSignal::new(None::<String>);
    let as_typed = move |all: &super::sitting::Sitting| {
        let before = changed(&session.standing().current, all.aim.changes.as_ref());
        objective(all, before, session)
    };
    let keep = move |_| {
        let (found, changes, why) = held.with_untracked(|all| {
            (untrack(|| as_typed(all)), all.aim.changes.clone(), all.aim.why_changed.trim().to_owned())
        });
        let objective = match found {
            Ok(objective) => objective,
            Err(message) => return wrong.set(Some(session.say(&message))),
        };
        let current = &session.standing_untracked().current;
        let payload = Payload::Objective(Box::new(objective));
        let drafts = match &changes {
            Some((site, name)) => change(current, &Key::of_objective(site, name), &payload),
            None => Some(stand(current, &payload)),
        };
        let Some(drafts) = drafts else { return wrong.set(Some(session.word("goals-other-name"))) };
        wrong.set(None);
        if drafts.is_empty() {
            return session.tell(session.word("ledger-same"));
        }
        session.write("objective", drafts, why, move |_| {
            held.update(|all| {
                all.aim.changes = None;
                all.aim.why_changed.clear();
            });
            session.tell(session.word(if changes.is_some() { "goals-changed" } else { "aim-kept" }));
        });
    };
    let changing = move || {
        let (_, name) = held.with(|all| all.aim.changes.clone())?;
        let as_new = move |_| held.update(|all| all.aim.changes = None);
        Some(view! {
            <p>{session.say(&Message::new("goals-changing").with("name", name))}</p>
            {long(held, "goals-why-changed", at!(aim.why_changed))}
            <div class="choices"><button type="button" on:click=as_new>{session.word("goals-as-new")}</button></div>
        })
    };
    let open = move || {
        let objective = held.with(as_typed).ok()?;
        let parts: Vec<_> = objective.open().into_iter().map(tautline_survey::message::Value::Word).collect();
        (!parts.is_empty()).then(|| {
            session.say(
                &Message::new("objective-open").with("parts", tautline_survey::message::Value::List(parts)),
            )
        })
    };
    view! {
        <div class="set-up">{changing}</div>
        <p class="quiet">{open}</p>
        <p class="wrong" role="alert">{move || wrong.get()}</p>
        <div class="choices"><button type="button" class="main" on:click=keep>{session.word("aim-keep")}</button></div>
    }
}
