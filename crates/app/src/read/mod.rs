//! Reading a line: set up in a few touches, read with one thumb or at a keyboard, kept at each key, closed into the notebook.
//!
//! | what | module |
//! | --- | --- |
//! | what is open: one draft, what it is read by | `open` |
//! | which line, who, which rules | `begin` |
//! | the screen of one line | `line` |
//! | the tape that runs with the reader | `tape` |
//! | the rows, what is said of them, how they are put right | `rows` |
//! | species, the recent ones first | `species` |
//! | plants named later | `names` |
//! | the pad of numbers | `pad` |
//! | a photo taken over the last one, or of the sheet | `photo` |
//! | the device's camera | `viewfinder` |
//! | finding the zero stake again | `stake` |
//! | what a keyboard does | `keyboard` |
//! | a sheet typed a second time | `twice` |
//! | how far the line was read, conditions, closing | `ending` |
//! | the protocol, with its rules drawn | `rules` |
//! | what the line comes to once it is closed | `after` |
//! | two readers of one line at the truck | `talk` |

mod after;
mod begin;
mod ending;
mod keyboard;
mod line;
mod names;
mod open;
mod pad;
mod photo;
mod rows;
mod rules;
mod species;
mod stake;
mod talk;
mod tape;
mod twice;
mod viewfinder;

use crate::route::Route;
use crate::standing::Standing;
use leptos::prelude::*;
use tautline_survey::draft::Setup;

/// The screens of this room.
pub(crate) fn room(route: &Route) -> AnyView {
    match route {
        Route::Line(draft) => line::line(draft.clone()).into_any(),
        Route::Photo(shot) => photo::photo(shot.clone()).into_any(),
        _ => begin::begin().into_any(),
    }
}

/// Whether a draft waits: a second reader has its line open, and would see the first reading in it.
fn waits(standing: &Standing, setup: &Setup) -> bool {
    standing.withheld.blind().iter().any(|blind| blind.hides_draft(setup))
}
