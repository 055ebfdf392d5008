//! Whether what is on a device is elsewhere too, in a word.

use super::state::State;

/// What a device shows at all times about the notebook that it shares in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Badge {
    /// Nothing has been sent yet, or some of it hasn't: so many revisions are on this device alone.
    Here(usize),
    /// Everything is in the shared notebook too; so many things wait for a person to settle them.
    ToSettle(usize),
    /// Everything is in the shared notebook too.
    Sent,
}

impl Badge {
    /// The badge of a device. What could still be lost comes before what must be settled.
    ///
    /// `waiting` is what [`State::waiting`] counts, `conflicts` how many records have unlike versions.
    pub fn of(state: &State, waiting: usize, conflicts: usize) -> Self {
        let to_settle = conflicts + state.refused().len() + state.damaged();
        if waiting > 0 || !state.has_met() {
            Self::Here(waiting)
        } else if to_settle > 0 {
            Self::ToSettle(to_settle)
        } else {
            Self::Sent
        }
    }

    /// The stable code, which is also the catalogue's key.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Here(_) => "sync-here",
            Self::ToSettle(_) => "sync-to-settle",
            Self::Sent => "sync-sent",
        }
    }
}
