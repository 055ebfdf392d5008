//! Findings of the checks: what must be settled first, then what is worth a look, each with its place.

use crate::session::Session;
use leptos::prelude::*;
use tautline_survey::finding::{Finding, Weight, few};
use tautline_survey::message::Message;

/// So many of a kind are shown at once: whoever settles those sees the next.
const MOST: usize = 40;

/// A list of findings; nothing where there are none.
pub(crate) fn findings(found: &[Finding]) -> impl IntoView + use<> {
    [(Weight::MustSettle, "app-must-settle"), (Weight::HaveALook, "app-have-a-look")]
        .into_iter()
        .filter_map(|(weight, heading)| {
            let own = few(found.iter().filter(|one| one.weight == weight));
            (!own.is_empty()).then(|| {
                let session = Session::here();
                let heading = session.say(&Message::new(heading).with("findings", own.iter().map(|one| one.times()).sum::<usize>()));
                let more = own.len().saturating_sub(MOST);
                let more = (more > 0).then(|| session.say(&Message::new("app-more-findings").with("more", more)));
                let items = own.iter().take(MOST).map(|one| item(one)).collect_view();
                view! {
                    <section class="findings"><h3>{heading}</h3><ul>{items}</ul>{more.map(|more| view! { <p class="quiet">{more}</p> })}</section>
                }
            })
        })
        .collect_view()
}

fn item(finding: &Finding) -> impl IntoView + use<> {
    let words = Session::here().words();
    let place = finding.place.as_ref().map(|place| format!("{}:{} ", place.file, place.row));
    let picture = finding.excerpt.as_ref().map(|excerpt| {
        let [row, mark] = tautline_words::picture(excerpt);
        view! { <pre>{row}"\n"{mark}</pre> }
    });
    let place = place.map(|place| view! { <span class="place">{place}</span> });
    view! { <li>{place}{words.say(&finding.said())}{picture}</li> }
}
