//! A goal, a number of lines with its reason, a drawn layout and a packet, in one sitting.
//!
//! | what | module |
//! | --- | --- |
//! | what a person has typed so far, kept on the device | `sitting` |
//! | fields that write into it | `fields` |
//! | the steps, and what stands around each | `steps` |
//! | what is wanted, by when, how sure | `aim` |
//! | the goals of the notebook, changed and taken back | `goals` |
//! | published numbers beside one's own way to read | `published` |
//! | what the notebook and the fields foresee and ask | `ask` |
//! | how many lines | `number` |
//! | answers that take longer, in pieces | `longer` |
//! | lines of each stratum | `strata` |
//! | the ground: its files, its outlines by hand | `ground`, `handed`, `outline` |
//! | corners set down on a plane | `plane` |
//! | how lines are laid out; what is read of its fields | `lines`, `wanted` |
//! | a map that can be come near to | `map` |
//! | the packet and its files | `packet` |
//! | lines that can't be read | `replace` |

mod aim;
mod ask;
mod fields;
mod goals;
mod ground;
mod handed;
mod lines;
mod longer;
mod map;
mod number;
mod outline;
mod packet;
mod plane;
mod published;
mod replace;
mod sitting;
mod steps;
mod strata;
mod wanted;

use leptos::prelude::*;
use sitting::Held;
use steps::Step;

/// The screen of a step; the first where the address names none.
pub(crate) fn screen(rest: &str) -> AnyView {
    let step = Step::of(rest);
    let held = Held::here();
    let shown = move || {
        held.is_read().then(|| match step {
            Step::Aim => aim::aim(held).into_any(),
            Step::Number => number::number(held).into_any(),
            Step::Where => lines::lines(held).into_any(),
            Step::Packet => packet::packet(held).into_any(),
        })
    };
    steps::around(step, held, shown).into_any()
}
