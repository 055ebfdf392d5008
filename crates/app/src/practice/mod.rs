//! Practice on the screen: lines read from above, drills, progress, and a coach's afternoon. Nothing of it enters the notebook.
//!
//! | what | module |
//! | --- | --- |
//! | what is kept of practice on this device | `kept` |
//! | which line, tape and rules; the year's bands and marks | `choose` |
//! | where to begin | `home` |
//! | a lesson, from the first edge to its marks | `lesson` |
//! | the long picture that one walks along | `picture` |
//! | edges set on the picture | `hand` |
//! | a sheet typed cell by cell | `grid` |
//! | a lesson beside its key | `marked` |
//! | arithmetic by hand | `drills` |
//! | where lines start, in or out | `place` |
//! | an eye that leans | `sight` |
//! | progress over time | `progress` |
//! | paper for a class | `paper` |
//! | a class's sheets, experts' keys, places | `class`, `sheets` |
//! | protests and what was decided | `protests` |

mod choose;
mod class;
mod drills;
mod grid;
mod hand;
mod home;
mod kept;
mod lesson;
mod marked;
mod paper;
mod picture;
mod place;
mod progress;
mod protests;
mod sheets;
mod sight;

use leptos::prelude::*;
use wasm_bindgen::JsCast as _;

/// Every screen of practice: the rest of its address, and the catalogue's key of its name.
const SCREENS: [(&str, &str); 8] = [
    ("lesson", "lesson-read"),
    ("arithmetic", "lesson-arithmetic"),
    ("line-starts", "lesson-starts"),
    ("in-or-out", "lesson-in-or-out"),
    ("sight", "lesson-sight"),
    ("progress", "lesson-progress-title"),
    ("paper", "lesson-paper"),
    ("class", "lesson-class"),
];

/// The screen that the rest of an address names.
pub(crate) fn screen(rest: &str) -> AnyView {
    let own = match rest {
        "lesson" => lesson::lesson().into_any(),
        "arithmetic" => drills::drills().into_any(),
        "line-starts" => place::starts().into_any(),
        "in-or-out" => place::in_or_out().into_any(),
        "sight" => sight::sight().into_any(),
        "progress" => progress::progress().into_any(),
        "paper" => paper::paper().into_any(),
        "class" => class::class().into_any(),
        _ => return home::home().into_any(),
    };
    let words = crate::session::Session::here().word("lesson-practice");
    view! { {own}<p class="choices back"><a class="button" href=address("")>{words}</a></p> }.into_any()
}

/// What is shown is another thing on the same screen: whoever listens begins at its top.
fn begin_at_the_top() {
    Effect::new(move |_| {
        let Some(window) = web_sys::window() else { return };
        window.scroll_to_with_x_and_y(0.0, 0.0);
        let main = document().get_element_by_id("main");
        if let Some(main) = main.and_then(|main| main.dyn_into::<web_sys::HtmlElement>().ok()) {
            // an element that can't have the focus keeps none
            let _ = main.focus();
        }
    });
}

/// The address of a screen of practice.
fn address(rest: &str) -> String {
    crate::route::Route::Practice(rest.to_owned()).address()
}
