//! That a reading is out of sight, and why: figures without it must not pass for figures with it.

use crate::session::Session;
use leptos::prelude::*;
use tautline_survey::message::{Message, Value};

/// Which lines are out of sight; nothing where none is.
pub(crate) fn withheld(session: Session) -> impl IntoView {
    move || {
        let standing = session.standing();
        let line = |(site, line): (&str, &str)| {
            let said = Message::new("read-planned").with("site", site).with("line", line);
            Value::from(session.say(&said))
        };
        let lines: Vec<Value> = standing.withheld.lines().into_iter().map(line).collect();
        (!lines.is_empty()).then(|| {
            let said = session.say(&Message::new("field-blind").with("lines", Value::List(lines)));
            view! { <p class="told" role="note">{said}</p> }
        })
    }
}
