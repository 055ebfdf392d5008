//! Reading a line: set up in a few touches, read with one thumb or at a keyboard, kept at each key, closed into the notebook.
//!
//! | what | module |
//! | --- | --- |
//! | drafts on the device's disk | `drafts` |
//! | what is open: one draft, what it is read by | `open` |
//! | which line, who, which rules | `begin` |
//! | the screen of one line | `line` |
//! | the tape that runs with the reader | `tape` |
//! | the rows, what is said of them, how they are put right | `rows` |
//! | species, the recent ones first | `species` |
//! | plants named later | `names` |
//! | the pad of numbers | `pad` |
//! | finding the zero stake again | `stake` |
//! | what a keyboard does | `keyboard` |
//! | a sheet typed a second time | `twice` |
//! | how far the line was read, conditions, closing | `ending` |
//! | the protocol, with its rules drawn | `rules` |
//! | what the line comes to once it is closed | `after` |
//! | two readers of one line at the truck | `talk` |

mod after;
mod begin;
mod drafts;
mod ending;
mod keyboard;
mod line;
mod names;
mod open;
mod pad;
mod rows;
mod rules;
mod species;
mod stake;
mod talk;
mod tape;
mod twice;

pub(crate) use drafts::{take_in, unfinished};

use crate::route::Route;
use leptos::prelude::*;

/// The screens of this room.
pub(crate) fn room(route: &Route) -> AnyView {
    match route {
        Route::Line(draft) => line::line(draft.clone()).into_any(),
        _ => begin::begin().into_any(),
    }
}
