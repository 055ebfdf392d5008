//! The figures as data, for whoever sets them beside the command's: what every site and year comes to, and nothing else.

use crate::parts::files::hand_out;
use crate::parts::withheld::withheld;
use crate::session::Session;
use leptos::prelude::*;
use tautline_survey::assess::assess;
use tautline_survey::message::Message;
use tautline_survey::output::AssessOutput;

/// The screen.
pub(crate) fn screen() -> AnyView {
    let session = Session::here();
    let hand_it_out = move |_| {
        hand_out("tautline-figures.json", "application/json", &text(session));
    };
    view! {
        <h1>{session.word("figures-json")}</h1>
        <p>{session.word("figures-json-what")}</p>
        {withheld(session)}
        <p class="choices">
            <button type="button" class="main" disabled=move || !session.is_read.get() on:click=hand_it_out>{session.word("figures-json")}</button>
        </p>
    }
    .into_any()
}

/// As `tautline assess --json` prints it.
fn text(session: Session) -> String {
    let standing = session.standing_untracked();
    let assessments = assess(&standing.input, &standing.question());
    let words = session.words();
    let say = |message: &Message| words.say(message);
    let output = AssessOutput::of(&standing.input, &assessments, &say);
    // figures are numbers and texts, which JSON has room for
    serde_json::to_string_pretty(&output).map_or_else(|_| String::new(), |text| text + "\n")
}
