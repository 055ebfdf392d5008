//! Who may enter a site's lines, where that is kept.

use crate::session::Session;
use leptos::prelude::*;
use tautline_survey::assess::natural_order;
use tautline_survey::message::Message;

/// Who gave permission to enter each line, and until when; nothing where nobody keeps that here.
pub(crate) fn permissions(site: String) -> impl IntoView {
    let session = Session::here();
    move || {
        let standing = session.standing();
        let mut lines: Vec<(String, String)> = standing
            .input
            .plan
            .iter()
            .filter(|line| line.site == site)
            .filter_map(|line| Some((line.line.clone(), session.say(&line.permission.as_ref()?.said()))))
            .collect();
        lines.sort_by(|a, b| natural_order(&a.0, &b.0));
        (!lines.is_empty()).then(|| {
            let items = lines.into_iter().map(|(line, said)| {
                let line = session.say(&Message::new("app-photo-line").with("line", line));
                view! { <li>{line}": "{said}</li> }
            });
            view! { <section><h2>{session.word("app-permission")}</h2><ul>{items.collect_view()}</ul></section> }
        })
    }
}
