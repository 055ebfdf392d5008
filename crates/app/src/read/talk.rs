//! Reader and recorder swap at a day's first line; where they lie furthest apart, and what they agreed on.

use super::begin;
use super::ending::following;
use super::open::Open;
use crate::standing::Standing;
use leptos::prelude::*;
use tautline_survey::agree::tailgate::{is_first_of_the_day, partner, tailgate};
use tautline_survey::draft::LineDraft;
use tautline_survey::message::Message;
use tautline_survey::notebook::payload::Payload;
use tautline_survey::visit::Visit;

/// Under which heading stands what was agreed on.
const AGREED: &str = "agreed on";

/// The part of the closing screen that speaks of two readers.
pub(super) fn talk(open: Open, standing: &Standing, visit: &Visit) -> Option<AnyView> {
    match partner(&standing.input, visit) {
        Some(first) => beside(open, standing, first, visit),
        None => swap(open, standing, visit),
    }
}

/// The recorder reads the same line next, without the sheet.
fn swap(open: Open, standing: &Standing, visit: &Visit) -> Option<AnyView> {
    if visit.recorder.is_empty() || !is_first_of_the_day(&standing.input, visit) {
        return None;
    }
    let said = open.session.say(&Message::new("tailgate-swap").with("second", visit.recorder.as_str()));
    let begin = move |_| {
        let second = open.draft.with_untracked(|draft| {
            let setup = draft.setup();
            setup.second(&setup.recorder, &setup.reader)
        });
        begin::open(open.session, LineDraft::new(second));
    };
    let view = view! {
        <section><h2>{open.word("tailgate-heading")}</h2><p>{said}</p>
            <div class="choices"><button type="button" on:click=begin>{open.word("tailgate-begin")}</button></div>
        </section>
    };
    Some(view.into_any())
}

fn beside(open: Open, standing: &Standing, first: usize, visit: &Visit) -> Option<AnyView> {
    let own = standing.input.visits.iter().position(|known| known.identity() == visit.identity())?;
    let found = tailgate(&standing.input, first, own)?;
    let mut said = found.sentences().into_iter().map(|one| open.session.say(&one));
    let covers = said.next();
    let stretches = said.map(|one| view! { <li>{one}</li> }).collect_view();
    let agreed = RwSignal::new(String::new());
    let visit = visit.clone();
    let write = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        let text = agreed.get_untracked().trim().to_owned();
        if text.is_empty() {
            return;
        }
        let mut visit = visit.clone();
        visit.conditions.retain(|(heading, _)| heading != AGREED);
        visit.conditions.push((AGREED.to_owned(), text.clone()));
        let standing = open.session.standing_untracked();
        let draft = following(&standing, &Payload::Visit(Box::new(visit)));
        open.session.write("read", vec![draft], text, move |_| open.session.tell(open.word("tailgate-kept")));
    };
    let view = view! {
        <section><h2>{open.word("tailgate-heading")}</h2><p>{covers}</p><ol>{stretches}</ol>
            <form on:submit=write>
                <label>{open.word("tailgate-agreed")}<input type="text" autocomplete="off" on:input=move |event| agreed.set(event_target_value(&event))/></label>
                <div class="choices"><button type="submit">{open.word("tailgate-keep")}</button></div>
            </form>
        </section>
    };
    Some(view.into_any())
}
