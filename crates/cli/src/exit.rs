//! Exit statuses, as documented in the help and the README.

use std::process::ExitCode;

/// How a call ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Exit {
    /// All well.
    Well = 0,
    /// Something must be settled; the rest was worked out.
    MustSettle = 1,
    /// The call was not understood.
    NotUnderstood = 2,
    /// Nothing could be worked out.
    Nothing = 3,
    /// A file could not be read or written.
    File = 4,
}

impl From<Exit> for ExitCode {
    fn from(exit: Exit) -> Self {
        Self::from(exit as u8)
    }
}
