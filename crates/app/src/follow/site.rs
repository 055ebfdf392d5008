//! One site over its years: what changed between two visits, or the trend over all of them.

use super::ask::{choose, confidence, names, pair, points, shares, two_years, typed, unread, years};
use super::slowly::{Slow, Turn, answered};
use super::told::{told, works};
use crate::session::Session;
use crate::standing::Standing;
use leptos::prelude::*;
use std::rc::Rc;
use tautline_report::Followed;
use tautline_survey::assess::{By, Question};
use tautline_survey::follow::{ChangeQuestion, change_of};
use tautline_survey::limits::CHANCE_TO_SETTLE_PER_MILLE;
use tautline_survey::sites::of_site;
use tautline_survey::trend::trends;

/// The chances with which a change should be seen, in per mille, as people ask.
const CHANCES: [u16; 3] = [CHANCE_TO_SETTLE_PER_MILLE, 900, 950];

/// What figures can be split by, each with its name.
const SPLITS: [(&str, By); 4] = [
    ("follow-by-nothing", By::Nothing),
    ("follow-by-species", By::Species),
    ("follow-by-form", By::Form),
    ("follow-by-group", By::Group),
];

/// What is asked of the site.
#[derive(Clone, Copy)]
struct Asked {
    all_visits: RwSignal<bool>,
    from: RwSignal<Option<u16>>,
    to: RwSignal<Option<u16>>,
    matters: RwSignal<String>,
    chance: RwSignal<u16>,
    confidence: RwSignal<u16>,
    split: RwSignal<usize>,
    untreated: RwSignal<String>,
    new_lines: RwSignal<bool>,
}

impl Asked {
    fn new() -> Self {
        Self {
            all_visits: RwSignal::new(false),
            from: RwSignal::new(None),
            to: RwSignal::new(None),
            matters: RwSignal::default(),
            chance: RwSignal::new(CHANCE_TO_SETTLE_PER_MILLE),
            confidence: RwSignal::new(Question::default().confidence_per_mille),
            split: RwSignal::new(0),
            untreated: RwSignal::default(),
            new_lines: RwSignal::new(false),
        }
    }

    fn question(self, standing: &Standing) -> Question {
        let mut question = standing.question();
        question.confidence_per_mille = self.confidence.get();
        question.by = SPLITS[self.split.get()].1;
        question
    }

    /// The change that is asked about; none where the site was read in one year only.
    fn change(self, standing: &Standing, site: &str, span: Option<u32>) -> Option<ChangeQuestion> {
        let (from, to) = pair(&years(&standing.input, Some(site)), self.from.get(), self.to.get())?;
        let untreated = self.untreated.get().trim().to_owned();
        Some(ChangeQuestion {
            question: self.question(standing),
            from,
            to,
            matters: points(&self.matters.get()),
            power: f64::from(self.chance.get()) / 1000.0,
            temporary: self.new_lines.get(),
            untreated: Some(untreated).filter(|name| !name.is_empty() && name != site),
            span,
        })
    }
}

/// A question as it stood when it was asked.
enum Wanted {
    Change(Rc<Standing>, Box<ChangeQuestion>),
    Trend(Rc<Standing>, Box<Question>),
    OneYear,
}

/// The screen.
pub(super) fn site(session: Session, name: String) -> impl IntoView {
    let asked = Asked::new();
    let own = name.clone();
    let wanted = move || {
        let standing = session.standing();
        if asked.all_visits.get() {
            let question = asked.question(&standing);
            return Wanted::Trend(standing, Box::new(question));
        }
        let span = super::log::days(&session.settings.get().span);
        match asked.change(&standing, &own, span) {
            Some(change) => Wanted::Change(standing, Box::new(change)),
            None => Wanted::OneYear,
        }
    };
    let own = name.clone();
    let slow = answered(wanted, async move |wanted, turn| work(session, &own, wanted, turn));
    let file = name.clone();
    view! {
        <h1>{name.clone()}</h1>
        {what(session, asked)}
        {fields(session, asked, name)}
        {works(session, slow)}
        {answer(session, slow, file, asked)}
    }
}

fn work(session: Session, site: &str, wanted: Wanted, turn: &Turn<Option<Followed>>) {
    let words = session.words();
    turn.tell(match wanted {
        Wanted::OneYear => None,
        Wanted::Change(standing, question) => {
            let changes: Vec<_> = change_of(&standing.input, &question, site).into_iter().collect();
            Some(tautline_report::changes(&of_site(&standing.input, site), &changes, &words))
        }
        Wanted::Trend(standing, question) => {
            let input = of_site(&standing.input, site);
            let found = trends(&input, &question);
            Some(tautline_report::trends(&input, &found, None, &words))
        }
    });
}

fn answer(session: Session, slow: Slow<Option<Followed>>, site: String, asked: Asked) -> impl IntoView {
    move || {
        let answer = slow.answer.get()?;
        let Some(followed) = answer.as_ref() else {
            return Some(view! { <p>{session.word("follow-one-year")}</p> }.into_any());
        };
        let kind = if asked.all_visits.get_untracked() { "follow-file-trend" } else { "follow-file-change" };
        Some(told(session, followed, format!("{site} {}.html", session.word(kind))).into_any())
    }
}

/// Two visits, or all.
fn what(session: Session, asked: Asked) -> impl IntoView {
    let options = [(false, "follow-two-visits"), (true, "follow-all-visits")].map(|(all, name)| {
        let checked = move || asked.all_visits.get() == all;
        view! {
            <label class="option">
                <input type="radio" name="follow-what" prop:checked=checked on:change=move |_| asked.all_visits.set(all)/>{session.word(name)}
            </label>
        }
    });
    view! { <fieldset class="what ask"><legend>{session.word("follow-what")}</legend>{options.collect_view()}</fieldset> }
}

fn fields(session: Session, asked: Asked, site: String) -> impl IntoView {
    let own = site.clone();
    let read = Memo::new(move |_| years(&session.standing().input, Some(&own)));
    let others = Memo::new(move |_| {
        let standing = session.standing();
        names(standing.input.visits.iter().map(|visit| visit.site.as_str()).filter(|other| *other != site))
    });
    let visits = move || (!asked.all_visits.get()).then(|| two_years(session, read, asked.from, asked.to));
    let of_change = move || (!asked.all_visits.get()).then(|| change_fields(session, asked, others));
    let splits = SPLITS.iter().enumerate().map(|(at, (name, _))| (at.to_string(), session.word(name)));
    let split = move |text: String| asked.split.set(text.parse().unwrap_or_default());
    view! {
        <div class="ask">{visits}</div>
        <details class="ask">
            <summary>{session.word("follow-ask-more")}</summary>
            <p class="quiet">{session.word("app-what-if-changes-nothing")}</p>
            {confidence(session, asked.confidence)}
            {choose(session.word("follow-by"), splits.collect(), move || asked.split.get().to_string(), split)}
            {of_change}
        </details>
    }
}

/// What is asked of a change alone.
fn change_fields(session: Session, asked: Asked, others: Memo<Vec<String>>) -> impl IntoView {
    let others =
        move || others.get().into_iter().map(|name| view! { <option value=name></option> }).collect_view();
    let untreated = asked.untreated.get_untracked();
    view! {
        {typed(session.word("follow-matters"), asked.matters.get_untracked(), "decimal", move |text| asked.matters.set(text))}
        {move || unread(session, &asked.matters.get())}
        {shares(session, "follow-chance", &CHANCES, asked.chance)}
        <label>{session.word("follow-untreated")}
            <input type="text" list="follow-sites" autocomplete="off" value=untreated on:input=move |event| asked.untreated.set(event_target_value(&event))/>
        </label>
        <datalist id="follow-sites">{others}</datalist>
        <p class="quiet">{session.word("follow-untreated-what")}</p>
        <label class="option">
            <input type="checkbox" prop:checked=asked.new_lines on:change=move |event| asked.new_lines.set(event_target_checked(&event))/>
            <span>{session.word("follow-new-lines")}</span>
        </label>
    }
}
