//! Where each number of a site comes from: figure, formula with its source, lines, readings, each opened by a touch.

use super::what_if::Asked;
use crate::session::Session;
use leptos::ev;
use leptos::prelude::*;
use std::rc::Rc;
use tautline_survey::assess::{Assessment, By, Question, assess};
use tautline_survey::explain::{self, Step, protocol_words};
use tautline_survey::input::Input;
use tautline_survey::message::Message;
use tautline_survey::sites::of_site;
use wasm_bindgen::JsCast as _;

/// The numbers of the newest year, worked out when the part is opened: what is asked stands on the report above.
pub(super) fn chains(session: Session, site: String, asked: RwSignal<Asked>) -> impl IntoView {
    let (open, set) = signal(false);
    let numbers = move || {
        open.get().then(|| {
            let standing = session.standing();
            let input = of_site(&standing.input, &site);
            let question = Question { by: By::Species, ..asked.with(|asked| asked.question(&standing)) };
            let newest = assess(&input, &question).into_iter().max_by_key(|one| one.year);
            newest.map(|newest| numbers(session, &input, &newest))
        })
    };
    view! {
        <details class="chains" on:toggle=move |event| set.set(is_open(&event))>
            <summary>{session.word("desk-numbers")}</summary>
            <p class="quiet">{session.word("desk-numbers-what")}</p>
            {numbers}
        </details>
    }
}

fn is_open(event: &ev::Event) -> bool {
    let element = event.target().and_then(|target| target.dyn_into::<web_sys::Element>().ok());
    element.is_some_and(|element| element.has_attribute("open"))
}

/// Verdicts first, then figures; and the protocols under which it was read.
fn numbers(session: Session, input: &Input, newest: &Assessment) -> impl IntoView + use<> {
    let words = session.result_words();
    let verdicts = newest.judgements.iter().map(|one| explain::verdict(input, newest, one));
    let figures = newest.figures.iter().map(|one| explain::figure(input, newest, one));
    let said = |step: &Step| (step.depth, words.say(&step.message));
    let all = verdicts.chain(figures).map(|chain| {
        let steps: Rc<Vec<(usize, String)>> = Rc::new(chain.iter().map(said).collect());
        view! { <li>{link(&steps, 0)}</li> }
    });
    let all = all.collect_view();
    let mut prints: Vec<&str> = newest.lines.iter().map(|line| line.protocol.as_str()).collect();
    prints.sort_unstable();
    prints.dedup();
    let protocols = prints.into_iter().map(|print| view! { <li>{rules(session, input, print)}</li> });
    let protocols = protocols.collect_view();
    view! { <ul class="chain">{all}{protocols}</ul> }
}

/// One link: what it says, and what it came from, which is put there when it is opened.
fn link(steps: &Rc<Vec<(usize, String)>>, at: usize) -> AnyView {
    let Some((depth, said)) = steps.get(at).cloned() else { return ().into_any() };
    let below = steps[at + 1..].iter().take_while(|(other, _)| *other > depth).count();
    if below == 0 {
        return said.into_any();
    }
    let (open, set) = signal(false);
    let steps = StoredValue::new_local(Rc::clone(steps));
    let came_from = move || {
        open.get().then(|| {
            let steps = steps.get_value();
            let next = steps[at + 1].0;
            let own = (at + 1..=at + below).filter(|&one| steps[one].0 <= next);
            let own = own.map(|one| view! { <li>{link(&steps, one)}</li> }).collect_view();
            view! { <ul>{own}</ul> }
        })
    };
    view! {
        <details on:toggle=move |event| { event.stop_propagation(); set.set(is_open(&event)); }>
            <summary>{said}</summary>{came_from}
        </details>
    }
    .into_any()
}

/// A protocol, and each of its rules.
fn rules(session: Session, input: &Input, print: &str) -> impl IntoView + use<> {
    let said = session.say(&protocol_words(input, print));
    let meaning = input.protocols.get(print).map(|protocol| (protocol.source.clone(), protocol.rule().1));
    let (source, assumed) = meaning.unwrap_or_default();
    let words = session.words();
    let source = (!source.is_empty())
        .then(|| words.say(&Message::new("methods-source").with("source", source)))
        .map(|said| view! { <li>{said}</li> });
    let taken = assumed.iter().map(|one| view! { <li>{words.assumption(one)}</li> }).collect_view();
    view! { <details><summary>{said}</summary><ul>{source}{taken}</ul></details> }
}
