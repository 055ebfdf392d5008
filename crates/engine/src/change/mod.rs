//! Change between two visits: how much, how sure, and how large a change could hide.
//!
//! | question | item |
//! | --- | --- |
//! | the same staked lines twice | [`paired`] |
//! | other lines each time; treated against untreated | [`unpaired`] |
//! | some lines twice, others once | [`combined`] |
//! | strata of known area | [`crate::estimate::strata`], each stratum's change with its area |
//! | is it shown, is it small enough to call none | [`p_value`], [`equivalence_p`], [`largest_hidden`], [`answer`] |
//! | the same for few or skewed lines | [`signs`], [`ranks`] |
//! | what could have been seen, and how many lines see it | [`smallest_seen`], [`lines_to_see`] |
//! | where on the tape | [`tape`]: gained, lost, kept; [`align`]: shift and stretch, does the pairing still hold |

pub mod align;
mod answer;
mod difference;
mod plan;
pub mod ranks;
pub mod signs;
pub mod tape;

pub use answer::{Answer, Direction, answer, equivalence_p, largest_hidden, one_sided_p, p_value};
pub use difference::{Pair, combined, paired, unpaired};
pub use plan::{Reread, lines_to_see, smallest_seen, worth_of_pairing};
