//! One site: its report as it would be printed, and what can be asked of it without changing anything.

use super::{permission, photos};
use crate::parts::files::hand_out;
use crate::parts::sheet::sheet;
use crate::session::Session;
use crate::standing::Standing;
use leptos::prelude::*;
use tautline_engine::confidence::Method;
use tautline_engine::length::DecimalMark;
use tautline_report::Telling;
use tautline_survey::assess::{Assessment, Question, assess};
use tautline_survey::input::Input;
use tautline_survey::measure::Measure;
use tautline_survey::message::{Message, Value};
use tautline_survey::sites::of_site;

/// How sure, in per mille, as people ask.
const CONFIDENCES: [u16; 4] = [800, 900, 950, 990];

const METHODS: [Method; 4] = [Method::LogitEffective, Method::LogitT, Method::StudentT, Method::Bca];

/// What is asked of the site beyond what the notebook asks.
#[derive(Clone, Debug, PartialEq)]
struct Asked {
    confidence: u16,
    method: Option<Method>,
    /// Another gap rule, as typed.
    gap_rule: String,
}

impl Default for Asked {
    fn default() -> Self {
        Self { confidence: Question::default().confidence_per_mille, method: None, gap_rule: String::new() }
    }
}

impl Asked {
    fn question(&self, standing: &Standing) -> Question {
        let mut question = standing.question();
        question.confidence_per_mille = self.confidence;
        question.method = self.method;
        question.choice.gap_limit = measure(&self.gap_rule).map(|measure| measure.length());
        question
    }
}

/// A length with its unit; none where it isn't one yet.
fn measure(typed: &str) -> Option<Measure> {
    Measure::read(typed, None, DecimalMark::Point).ok().filter(|_| !typed.trim().is_empty())
}

/// The answer: the site alone, and what it comes to.
struct Answer {
    input: Input,
    question: Question,
    assessments: Vec<Assessment>,
}

impl Answer {
    fn of(standing: &Standing, site: &str, asked: &Asked) -> Self {
        let input = of_site(&standing.input, site);
        let question = asked.question(standing);
        let assessments = assess(&input, &question);
        Self { input, question, assessments }
    }
}

/// The screen.
pub(crate) fn site(name: String) -> impl IntoView {
    let session = Session::here();
    let (asked, ask) = signal(Asked::default());
    let of_site = (name.clone(), name.clone());
    let answer = move || {
        let answer = Answer::of(&session.standing(), &name, &asked.get());
        if answer.assessments.is_empty() {
            return view! { <p>{session.word("app-site-unknown")}</p> }.into_any();
        }
        let words = session.result_words();
        let body = tautline_report::body_of(&Telling::new(
            &answer.input,
            &answer.question,
            &answer.assessments,
            &words,
        ));
        let file = format!("{name}.html");
        let take = move |_| {
            hand_out(
                &file,
                "text/html",
                &tautline_report::html(&answer.input, &answer.question, &answer.assessments, &words),
            );
        };
        view! {
            <p class="choices"><button type="button" on:click=take>{session.word("app-report-file")}</button></p>
            {sheet(body, tautline_report::style())}
        }
        .into_any()
    };
    view! {
        <details class="ask">
            <summary>{session.word("app-what-if")}</summary>
            <p class="quiet">{session.word("app-what-if-changes-nothing")}</p>
            {choose_confidence(session, asked, ask)}
            {choose_method(session, ask)}
            {choose_gap_rule(session, asked, ask)}
        </details>
        {answer}
        {permission::permissions(of_site.0)}
        {photos::photos(of_site.1)}
    }
}

fn choose_confidence(session: Session, asked: ReadSignal<Asked>, ask: WriteSignal<Asked>) -> impl IntoView {
    let usual = asked.get_untracked().confidence;
    let options = CONFIDENCES.map(|per_mille| {
        let said = session.words().value(&Value::Share(f64::from(per_mille) / 1000.0, 0));
        view! { <option value=per_mille.to_string() selected=per_mille == usual>{said}</option> }
    });
    let chosen = move |event| {
        if let Ok(per_mille) = event_target_value(&event).parse() {
            ask.update(|asked| asked.confidence = per_mille);
        }
    };
    view! { <label>{session.word("app-confidence")}<select on:change=chosen>{options.collect_view()}</select></label> }
}

fn choose_method(session: Session, ask: WriteSignal<Asked>) -> impl IntoView {
    let options =
        METHODS.map(|method| view! { <option value=method.code()>{session.word(method.code())}</option> });
    let chosen = move |event| {
        let code = event_target_value(&event);
        // the first is the usual one: then each kind of figure takes its own
        let method =
            METHODS.into_iter().find(|method| method.code() == code).filter(|method| *method != METHODS[0]);
        ask.update(|asked| asked.method = method);
    };
    view! { <label>{session.word("app-method")}<select on:change=chosen>{options.collect_view()}</select></label> }
}

fn choose_gap_rule(session: Session, asked: ReadSignal<Asked>, ask: WriteSignal<Asked>) -> impl IntoView {
    let typed = move |event| ask.update(|asked| asked.gap_rule = event_target_value(&event));
    let said = move || {
        asked.with(|asked| match measure(&asked.gap_rule) {
            _ if asked.gap_rule.trim().is_empty() => session.word("app-gap-rule-own"),
            None => session.word("app-gap-rule-not-read"),
            Some(measure) => session.say(&Message::new("app-gap-rule-asked").with("length", measure.typed())),
        })
    };
    view! {
        <label>{session.word("app-gap-rule")}<input type="text" inputmode="text" autocomplete="off" on:input=typed/></label>
        <p class="quiet">{said}</p>
    }
}
