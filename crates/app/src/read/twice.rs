//! A paper sheet typed a second time, both typings side by side before one of them is closed.

use super::ending;
use super::open::{Open, Panel};
use super::rows::as_text;
use crate::device::drafts::Drafts;
use crate::route::{Route, go};
use leptos::prelude::*;
use leptos::task::spawn_local;
use tautline_store::KeepError;
use tautline_survey::draft::LineDraft;
use tautline_survey::draft::twice::side_by_side;
use tautline_survey::message::Message;
use tautline_survey::visit::Visit;

/// What the name of a second typing has behind that of the first.
const AGAIN: &str = "/again";

/// The name of the first typing, where a draft is the second.
pub(super) fn first_of(name: &str) -> Option<&str> {
    name.strip_suffix(AGAIN)
}

/// Begins the second typing, or goes on with it.
pub(super) fn again(open: Open) -> Option<impl IntoView> {
    let name = open.name();
    if first_of(&name).is_some() {
        return None;
    }
    let begin = move |_| {
        let second = format!("{name}{AGAIN}");
        let draft = LineDraft::new(open.draft.with_untracked(|draft| draft.setup().clone()));
        spawn_local(async move {
            let kept = async {
                let drafts = Drafts::open().await?;
                match drafts.draft(&second).await {
                    Some(_) => Ok(()),
                    None => drafts.keep(&second, Some(&draft.to_text())).await,
                }
            };
            match kept.await {
                Ok(()) => go(&Route::Line(second)),
                Err(fault) => open.session.tell_fault(&KeepError::from(fault)),
            }
        });
    };
    Some(
        view! { <div class="choices"><button type="button" on:click=begin>{open.word("read-type-again")}</button></div> },
    )
}

/// Both typings, row beside row, and closing with this one.
pub(super) fn compare(open: Open) -> impl IntoView {
    let first = RwSignal::new(None::<LineDraft>);
    let name = open.name();
    spawn_local(async move {
        if let (Some(name), Ok(drafts)) = (first_of(&name), Drafts::open().await) {
            first.set(drafts.draft(name).await);
        }
    });
    move || first.get().map(|first| beside(open, &first))
}

fn beside(open: Open, first: &LineDraft) -> impl IntoView + use<> {
    let second = open.draft.with_untracked(Clone::clone);
    let (a, b) = (first.visit(), second.visit());
    let pairs = side_by_side(&a, &b, &open.known().plants);
    let differ: Vec<_> = pairs.iter().filter(|pair| !pair.alike()).collect();
    let said = open.session.say(
        &Message::new("read-twice").with("alike", pairs.len() - differ.len()).with("differ", differ.len()),
    );
    let address = Route::Line(first_of(&open.name()).unwrap_or_default().to_owned()).address();
    let lines = differ.iter().map(|pair| {
        let one = pair.first.and_then(|at| row(first, &a, at)).map(|(_, text)| text);
        let other = pair.second.and_then(|at| row(&second, &b, at));
        let other = other.map(|(id, text)| {
            view! { <button type="button" on:click=move |_| open.turn(Panel::Row(id))>{text}</button> }
        });
        view! { <tr><td>{one}</td><td>{other}</td></tr> }
    });
    let table = (!differ.is_empty()).then(|| {
        view! {
            <table><thead><tr><th scope="col">{open.word("read-first-typing")}</th><th scope="col">{open.word("read-second-typing")}</th></tr></thead>
                <tbody>{lines.collect_view()}</tbody></table>
            <p class="choices"><a class="button" href=address>{open.word("read-to-first-typing")}</a></p>
        }
    });
    view! { <div class="twice"><p>{said.clone()}</p>{table}{ending::closing_with(open, Some(said))}</div> }
}

/// The number and the text of the row that became an intercept.
fn row(draft: &LineDraft, visit: &Visit, at: usize) -> Option<(u32, String)> {
    let place = visit.intercepts.get(at)?.place.as_ref()?;
    let id = u32::try_from(place.row).ok()?;
    Some((id, as_text(draft.sheet().row(id)?)))
}
