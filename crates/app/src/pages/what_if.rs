//! What a site would come to under another rule, with other plants, lines or confidence. The answer stands there with the
//! next picture; nothing of it goes into the notebook.

mod fields;

use crate::parts::small;
use crate::session::Session;
use crate::standing::Standing;
use leptos::prelude::*;
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;
use tautline_engine::confidence::Method;
use tautline_engine::length::DecimalMark;
use tautline_survey::assess::{Assessment, Question, assess, natural_order};
use tautline_survey::input::Input;
use tautline_survey::measure::Measure;
use tautline_survey::message::Message;
use tautline_survey::protocol::{Counts, Protocol};
use tautline_survey::sites::of_site;
use tautline_survey::summary::YearSummary;

/// What is asked of the site beyond what the notebook asks.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Asked {
    confidence: u16,
    method: Option<Method>,
    /// Another gap rule, as typed.
    gap_rule: String,
    /// What counts, where it isn't what the protocol says.
    counts: Option<Counts>,
    dead_counts: Option<bool>,
    without: BTreeSet<String>,
}

impl Default for Asked {
    fn default() -> Self {
        Self {
            confidence: Question::default().confidence_per_mille,
            method: None,
            gap_rule: String::new(),
            counts: None,
            dead_counts: None,
            without: BTreeSet::new(),
        }
    }
}

impl Asked {
    /// The notebook's question, changed by what is asked.
    pub(super) fn question(&self, standing: &Standing) -> Question {
        let mut question = standing.question();
        question.confidence_per_mille = self.confidence;
        question.method = self.method;
        question.choice.gap_limit = measure(&self.gap_rule).map(|measure| measure.length());
        question.choice.counts.clone_from(&self.counts);
        question.choice.dead_counts = self.dead_counts;
        question.without.clone_from(&self.without);
        question
    }
}

/// A length with its unit; none where it isn't one yet.
fn measure(typed: &str) -> Option<Measure> {
    Measure::read(typed, None, DecimalMark::Point).ok().filter(|_| !typed.trim().is_empty())
}

/// A species that was met on the site.
struct Met {
    code: String,
    name: String,
    /// It counts under the protocol.
    counted: bool,
}

/// What can be asked of the newest year of a site, and what that came to.
struct Newest {
    standing: Rc<Standing>,
    input: Input,
    year: Option<u16>,
    recorded: YearSummary,
    lines: Vec<String>,
    met: Vec<Met>,
    /// What counts under the protocol that the readings carry.
    counts: Counts,
}

/// Held by the screen; all copies are one.
type Held = StoredValue<Newest, LocalStorage>;

impl Newest {
    /// None where nothing of the site can be worked out.
    fn of(standing: Rc<Standing>, site: &str) -> Option<Self> {
        let input = of_site(&standing.input, site);
        let question = standing.question();
        let newest = assess(&input, &question).into_iter().max_by_key(|one| one.year)?;
        let lines: BTreeSet<&String> = newest.lines.iter().map(|line| &line.line).collect();
        let mut lines: Vec<String> = lines.into_iter().cloned().collect();
        lines.sort_by(|a, b| natural_order(a, b));
        let protocol = newest.lines.first().and_then(|line| input.protocols.get(&line.protocol));
        let counts = protocol.map_or_else(Counts::woody, Protocol::counts_or_woody);
        let met = met(&newest, &input);
        let (year, recorded) = (newest.year, YearSummary::of(&newest, &question));
        (!lines.is_empty()).then_some(Self { standing, input, year, recorded, lines, met, counts })
    }

    /// What the newest year comes to under another question.
    fn answer(&self, asked: &Asked) -> Option<YearSummary> {
        let question = Question { year: self.year, ..asked.question(&self.standing) };
        let assessed = assess(&self.input, &question);
        // visits without a date are of no year, and every year is asked of them
        assessed.iter().find(|one| one.year == self.year).map(|one| YearSummary::of(one, &question))
    }

    /// Whether a species counts as asked.
    fn counts(&self, asked: &Asked, met: &Met) -> bool {
        let listed = self.input.plants.find(&met.code);
        asked.counts.as_ref().map_or(met.counted, |counts| counts.includes(&met.code, listed))
    }

    /// The protocol's words on what counts, with a species in or out for each that it would have otherwise; nothing where
    /// all is as the protocol has it.
    fn counting(&self, wanted: impl Fn(&Met) -> bool) -> Option<Counts> {
        if self.met.iter().all(|one| wanted(one) == one.counted) {
            return None;
        }
        let mut counts = self.counts.clone();
        for one in &self.met {
            let wanted = wanted(one);
            if counts.includes(&one.code, self.input.plants.find(&one.code)) != wanted {
                let other = |code: &String| !code.eq_ignore_ascii_case(&one.code);
                counts.also.retain(other);
                counts.except.retain(other);
                if wanted { &mut counts.also } else { &mut counts.except }.push(one.code.clone());
            }
        }
        Some(counts)
    }
}

/// The species met, those that count first.
fn met(newest: &Assessment, input: &Input) -> Vec<Met> {
    let mut found: BTreeMap<&str, bool> = BTreeMap::new();
    for one in newest.lines.iter().flat_map(|line| &line.species).filter(|one| !one.code.is_empty()) {
        found.insert(&one.code, one.counted);
    }
    let mut met: Vec<Met> = found
        .into_iter()
        .map(|(code, counted)| {
            let plant = input.plants.find(code);
            let name =
                plant.map_or("", |plant| if plant.common.is_empty() { &plant.name } else { &plant.common });
            Met { code: code.to_owned(), name: name.to_owned(), counted }
        })
        .collect();
    met.sort_by_key(|one| !one.counted);
    met
}

/// What can be asked, and the answer; nothing where the site has no figure.
pub(super) fn what_if(session: Session, site: &str, asked: RwSignal<Asked>) -> Option<impl IntoView + use<>> {
    let newest: Held = StoredValue::new_local(Newest::of(session.standing(), site)?);
    let usual = move |_| asked.set(Asked::default());
    let as_usual = move || asked.with(|asked| *asked == Asked::default());
    Some(view! {
        <details class="ask">
            <summary>{session.word("app-what-if")}</summary>
            <p class="quiet">{session.word("app-what-if-changes-nothing")}</p>
            {answers(session, newest, asked)}
            <p class="choices"><button type="button" disabled=as_usual on:click=usual>{session.word("desk-as-recorded")}</button></p>
            {fields::fields(session, newest, asked)}
        </details>
    })
}

/// The answer as asked beside what stands in the notebook, on one scale.
fn answers(session: Session, newest: Held, asked: RwSignal<Asked>) -> impl IntoView {
    view! {
        <div class="asked" role="status">
            {move || {
                let (answer, recorded) = newest.with_value(|newest| (newest.answer(&asked.get()), newest.recorded.clone()));
                let ends = [Some(&recorded), answer.as_ref()];
                let end = small::end_of(ends.into_iter().flatten());
                view! {
                    {one(session, "desk-asked", answer.as_ref(), end)}
                    {one(session, "desk-recorded", Some(&recorded), end)}
                }
            }}
        </div>
    }
}

/// One answer: its picture, and its words with every verdict.
fn one(session: Session, name: &str, answer: Option<&YearSummary>, end: f64) -> impl IntoView + use<> {
    let words = session.words();
    let picture = answer.and_then(|answer| small::of_year(answer, end));
    let cover = answer.and_then(super::sites::cover_words);
    let cover = cover.unwrap_or_else(|| Message::new("desk-asked-nothing"));
    let lines = answer.map_or(0, |answer| answer.lines);
    let lines = words.say(&Message::new("app-site-lines").with("lines", lines));
    let verdicts = answer.map_or(&[][..], |answer| &answer.verdicts).iter().map(|(_, code)| {
        view! { " "<strong class=format!("verdict {code}")>{words.word(code)}</strong> }
    });
    let verdicts = verdicts.collect_view();
    view! {
        <p class="answer"><span class="name">{session.word(name)}</span>" "{words.say(&cover)}", "{lines}{verdicts}</p>
        {picture}
    }
}
