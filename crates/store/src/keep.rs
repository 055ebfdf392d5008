//! What every implementer can do: take revisions in, and give them back.

use tautline_survey::record::Added;
use tautline_survey::revision::{ActionId, RecordId, Revision};

/// Where somebody has read up to. The first is [`Cursor::START`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Cursor(pub u64);

impl Cursor {
    /// Before everything.
    pub const START: Self = Self(0);
}

/// What a batch came to.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Appended {
    /// Revisions that are new.
    pub new: usize,
    /// Revisions that were there.
    pub known: usize,
    /// Revisions whose content was blanked.
    pub erased: usize,
}

impl Appended {
    /// Counts one more.
    pub const fn count(&mut self, added: Added) {
        match added {
            Added::New => self.new += 1,
            Added::Known => self.known += 1,
            Added::Erased => self.erased += 1,
        }
    }
}

/// Why a store did not do what was asked. What it had acknowledged before is still there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum KeepError {
    /// There is no such file.
    NotThere,
    /// There is a file already where a new one was to be.
    Taken,
    /// The file is no notebook.
    NotANotebook,
    /// A newer version wrote it.
    Newer {
        /// The version of its schema.
        found: u32,
        /// The newest that is known here.
        known: u32,
    },
    /// The file is damaged; what the check found first.
    Damaged(String),
    /// The disk is full.
    Full,
    /// Another program is writing to it.
    Busy,
    /// It can't be written to.
    ReadOnly,
    /// A revision of the batch is not what its hash says; none of the batch was taken.
    NotWhole(Box<Revision>),
    /// Something else, in the words of the system.
    System(String),
}

/// Somewhere that revisions are kept.
///
/// What [`Keep::append`] has acknowledged is on the disk, if there is one.
pub trait Keep {
    /// Takes a batch in, all of it or nothing. A revision that is there already adds nothing; one whose content is
    /// blanked blanks it here too.
    ///
    /// # Errors
    /// [`KeepError`]
    fn append(&mut self, batch: &[Revision]) -> Result<Appended, KeepError>;

    /// The heads of every record.
    ///
    /// # Errors
    /// [`KeepError`]
    fn heads(&self) -> Result<Vec<Revision>, KeepError>;

    /// Every revision of a record, in no particular order; `tautline_survey::record::history` orders them.
    ///
    /// # Errors
    /// [`KeepError`]
    fn of_record(&self, record: RecordId) -> Result<Vec<Revision>, KeepError>;

    /// Every revision that an action made.
    ///
    /// # Errors
    /// [`KeepError`]
    fn of_action(&self, action: ActionId) -> Result<Vec<Revision>, KeepError>;

    /// What came in, or was blanked, since a cursor: at most so many, and the cursor to go on from.
    ///
    /// # Errors
    /// [`KeepError`]
    fn since(&self, cursor: Cursor, most: usize) -> Result<(Vec<Revision>, Cursor), KeepError>;

    /// The greatest counter that any revision carries.
    ///
    /// # Errors
    /// [`KeepError`]
    fn counter(&self) -> Result<u64, KeepError>;
}
