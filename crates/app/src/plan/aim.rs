//! What is wanted: of what, how much, by when, how sure; what that costs in lines is said at once.

use super::ask::{ask_of, foreseen, goal_of, sites};
use super::fields::{at, choice, date, long, number, suggested, text};
use super::goals::{goals, keep};
use super::published::published;
use super::sitting::{Held, Sitting};
use crate::session::Session;
use leptos::prelude::*;
use tautline_engine::length::DecimalMark;
use tautline_report::EffortTold;
use tautline_survey::date::Date;
use tautline_survey::effort::{Ask, EffortOutput, answers};
use tautline_survey::explain::subject_words;
use tautline_survey::goal::{Percent, Subject, read_confidence};
use tautline_survey::message::Message;
use tautline_survey::plants::GrowthForm;
use tautline_survey::promise::{Direction, Objective, Sampling, agreed};

/// What an answer can be about.
const ABOUT: [&str; 4] = ["plot", "site", "pasture", "allotment"];

/// The step.
pub(super) fn aim(held: Held) -> impl IntoView {
    let session = held.session;
    let known =
        move || sites(held).into_iter().map(|site| view! { <option value=site></option> }).collect_view();
    view! {
        <p>{session.word("aim-what")}</p>
        <form class="set-up" on:submit=move |event| event.prevent_default()>
            <h2>{session.word("aim-ground")}</h2>
            {suggested(held, "aim-site", at!(site), "plan-sites")}
            <datalist id="plan-sites">{known}</datalist>
            {about(held)}
            <h2>{session.word("aim-number")}</h2>
            {subject(held)}
            {choice(held, "aim-relation", at!(aim.relation), &[("at least", "aim-at-least"), ("at most", "aim-at-most"), ("between", "aim-between")])}
            {number(held, "aim-low", at!(aim.low))}
            {move || held.with(|all| all.aim.relation == "between").then(|| number(held, "aim-high", at!(aim.high)))}
            {published(held)}
            <h2>{session.word("aim-sure")}</h2>
            {choice(held, "app-confidence", at!(aim.confidence), &[("80", "aim-80"), ("90", "aim-90"), ("95", "aim-95"), ("99", "aim-99")])}
            {date(held, "aim-by", at!(aim.by))}
            {number(held, "aim-smallest", at!(aim.smallest))}
            {number(held, "aim-false-alarm", at!(aim.false_alarm))}
            {number(held, "aim-missed", at!(aim.missed))}
            {choice(held, "aim-direction", at!(aim.direction), &[("", "aim-direction-open"), ("raise", "direction-raise"), ("lower", "direction-lower"), ("hold", "direction-hold")])}
            <h2>{session.word("aim-why")}</h2>
            {text(held, "aim-name", at!(aim.name))}
            {text(held, "aim-agreed", at!(aim.agreed))}
            {long(held, "aim-reason", at!(aim.reason))}
            {long(held, "aim-source", at!(aim.source))}
        </form>
        {cost(held)}
        {keep(held)}
        {goals(held)}
    }
}

/// What the answer is about, and what counts as a sample of that.
fn about(held: Held) -> impl IntoView {
    let session = held.session;
    let options = ABOUT.map(|word| {
        let is_it = move || held.with(|all| all.aim.about == word);
        let chosen = move |_| held.update(|all| word.clone_into(&mut all.aim.about));
        view! {
            <label class="option"><input type="radio" name="plan-about" value=word prop:checked=is_it on:change=chosen/>
                <span>{session.word(about_code(word))}</span></label>
        }
    });
    let follows = move || session.word(held.with(|all| about_follows(&all.aim.about)));
    view! {
        <fieldset><legend>{session.word("aim-about")}</legend>{options.collect_view()}</fieldset>
        <p class="quiet" aria-live="polite">{follows}</p>
    }
}

fn about_code(word: &str) -> &'static str {
    match word {
        "plot" => "aim-about-plot",
        "pasture" => "aim-about-pasture",
        "allotment" => "aim-about-allotment",
        _ => "aim-about-site",
    }
}

/// What an answer is about, by the words that a notebook has for it.
pub(super) fn about_of(place: &str, session: Session) -> &'static str {
    ABOUT.into_iter().find(|word| session.word(about_code(word)) == place).unwrap_or("site")
}

fn about_follows(word: &str) -> &'static str {
    match word {
        "plot" => "aim-sample-plot",
        "pasture" => "aim-sample-pasture",
        "allotment" => "aim-sample-allotment",
        _ => "aim-sample-site",
    }
}

/// What is measured: all live canopy, a growth form, a group or a species of the notebook's plant list.
fn subject(held: Held) -> impl IntoView {
    let session = held.session;
    let options = move || {
        let plants = &session.standing().input.plants.plants;
        let mut groups: Vec<&String> = plants.iter().flat_map(|plant| &plant.groups).collect();
        groups.sort();
        groups.dedup();
        let mut subjects: Vec<(String, String)> =
            vec![("canopy".to_owned(), session.say(&subject_words(&Subject::Canopy)))];
        subjects.extend(GrowthForm::ALL.into_iter().filter(|form| form.is_woody()).map(|form| {
            (format!("form {}", form.word()), session.say(&subject_words(&Subject::Form(form))))
        }));
        subjects.extend(groups.into_iter().map(|group| {
            (format!("group {group}"), session.say(&subject_words(&Subject::Group(group.clone()))))
        }));
        subjects.extend(plants.iter().map(|plant| {
            (plant.code.clone(), session.say(&subject_words(&Subject::Species(plant.code.clone()))))
        }));
        let chosen = held.with_untracked(|all| all.aim.subject.clone());
        subjects
            .into_iter()
            .map(|(value, said)| {
                let selected = value == chosen;
                view! { <option value=value selected=selected>{said}</option> }
            })
            .collect_view()
    };
    let chosen = move |event| held.update(|all| all.aim.subject = event_target_value(&event));
    view! { <label>{session.word("aim-subject")}<select on:change=chosen>{options}</select></label> }
}

/// What the goal costs in lines, as far as anything says how lines vary.
fn cost(held: Held) -> impl IntoView {
    let session = held.session;
    let foreseen = foreseen(held);
    let goal = Memo::new(move |_| held.with(goal_of));
    let ask = Memo::new(move |_| held.with(ask_of));
    let site = Memo::new(move |_| held.with(|all| all.site.clone()));
    let said = move || {
        let goal = match goal.get() {
            Ok(goal) => goal,
            Err(open) => return vec![session.say(&open)],
        };
        let Some(foreseen) = foreseen.get() else { return vec![session.word("aim-nothing-foreseen")] };
        let asked = Ask { half_width: None, lines: None, trend: None, ..ask.get() };
        let found = answers(&foreseen, &asked);
        let output = EffortOutput::of(Some(site.get()), &foreseen, &asked, found);
        let goals = [goal.wanted];
        let told = EffortTold { output: &output, goals: &goals, visits: 0, cost: false };
        let lines = output.answers.iter().map(|answer| {
            let message = match answer.lines {
                Some(lines) => Message::new("effort-takes").with("lines", lines),
                None => Message::new("effort-takes-too-many"),
            };
            session.say(&message.with("question", told.question(answer)))
        });
        lines.chain(told.foreseen().iter().map(|message| session.say(message))).collect()
    };
    view! {
        <section class="costs" aria-live="polite"><h2>{session.word("aim-cost")}</h2>
            {move || said().into_iter().map(|said| view! { <p>{said}</p> }).collect_view()}
        </section>
    }
}

/// The objective as typed; what the fields don't hold stays as it was before.
pub(super) fn objective(
    all: &Sitting,
    before: Option<Objective>,
    session: Session,
) -> Result<Objective, Message> {
    let aim = &all.aim;
    if all.site.trim().is_empty() {
        return Err(Message::new("aim-no-site"));
    }
    let goal = goal_of(all)?;
    let share = |text: &str| Percent::read(text.trim().trim_end_matches('%').trim(), DecimalMark::Point);
    let chance = |text: &str| {
        share(text)
            .and_then(|found| u16::try_from(found.0 / 1_000).ok())
            .filter(|&found| (1..1_000).contains(&found))
    };
    let before = before.unwrap_or_default();
    let name = aim.name.trim();
    let said = session.say(&subject_words(&goal.subject));
    Ok(Objective {
        name: if name.is_empty() { said.clone() } else { name.to_owned() },
        site: all.site.trim().to_owned(),
        attribute: said,
        place: session.word(about_code(&aim.about)),
        direction: Direction::from_word(&aim.direction),
        amount: before.amount,
        by: Date::read(aim.by.trim()),
        sampling: Sampling {
            confidence_per_mille: read_confidence(&aim.confidence, DecimalMark::Point),
            smallest_change: share(&aim.smallest),
            false_alarm_per_mille: chance(&aim.false_alarm),
            missed_change_per_mille: chance(&aim.missed),
            looks: before.sampling.looks,
        },
        goal: Some(goal),
        reason: aim.reason.trim().to_owned(),
        source: aim.source.trim().to_owned(),
        agreed: aim.agreed.split(';').map(str::trim).filter(|one| !one.is_empty()).map(agreed).collect(),
    })
}
