//! What every implementer can do: take revisions in, and give them back.

use core::fmt::Write as _;
use tautline_survey::canonical;
use tautline_survey::message::Message;
use tautline_survey::photo::LONGEST;
use tautline_survey::record::Added;
use tautline_survey::revision::{ActionId, RecordId, Revision};
use tautline_survey::sync::{Entry, Place};

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
    /// The bytes of a photo are not those of their hash.
    OtherBytes,
    /// No revision names such a photo.
    NotNamed,
    /// The bytes of a photo are more than [`tautline_survey::photo::LONGEST`].
    TooLong,
    /// Something else, in the words of the system.
    System(String),
}

/// A photo that some revision names.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Named {
    /// SHA-256 of its bytes.
    pub sha256: String,
    /// Its bytes are here.
    pub is_here: bool,
}

impl KeepError {
    /// What a person should hear of it.
    pub fn message(&self, file: &str) -> Message {
        let said = match self {
            Self::NotThere => Message::new("notebook-not-there"),
            Self::Taken => Message::new("notebook-taken"),
            Self::NotANotebook => Message::new("notebook-not-one"),
            Self::Newer { found, known } => Message::new("notebook-newer")
                .with("found", u64::from(*found))
                .with("known", u64::from(*known)),
            Self::Damaged(why) => Message::new("notebook-damaged").with("why", why.as_str()),
            Self::Full => Message::new("notebook-full"),
            Self::Busy => Message::new("notebook-busy"),
            Self::ReadOnly => Message::new("notebook-read-only"),
            Self::NotWhole(broken) => {
                Message::new("notebook-not-whole").with("revision", broken.id().short())
            }
            Self::OtherBytes => Message::new("photo-other-bytes"),
            Self::NotNamed => Message::new("photo-not-named"),
            Self::TooLong => Message::new("photo-too-long").with("most", LONGEST >> 20),
            Self::System(why) => Message::new("notebook-system").with("why", why.as_str()),
        };
        said.with("file", file)
    }
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

    /// The log on from a cursor: what came in, or was blanked, since then, at most so many.
    ///
    /// # Errors
    /// [`KeepError`]
    fn log(&self, cursor: Cursor, most: usize) -> Result<Vec<Entry>, KeepError>;

    /// The place of a cursor in the log: its mark is that of the first batch that reaches as far. Two logs with one
    /// mark at a place are the same up to there. None where the log isn't so long, and at its start.
    ///
    /// # Errors
    /// [`KeepError`]
    fn place(&self, cursor: Cursor) -> Result<Option<Place>, KeepError>;

    /// Where the log ends; none where it is empty.
    ///
    /// # Errors
    /// [`KeepError`]
    fn end(&self) -> Result<Option<Place>, KeepError>;

    /// What came in, or was blanked, since a cursor: at most so many, and the cursor to go on from.
    ///
    /// # Errors
    /// [`KeepError`]
    fn since(&self, cursor: Cursor, most: usize) -> Result<(Vec<Revision>, Cursor), KeepError> {
        let log = self.log(cursor, most)?;
        let upto = log.last().map_or(cursor, |last| Cursor(last.at));
        Ok((log.into_iter().map(|entry| entry.revision).collect(), upto))
    }

    /// The greatest counter that any revision carries.
    ///
    /// # Errors
    /// [`KeepError`]
    fn counter(&self) -> Result<u64, KeepError>;

    /// Keeps the bytes of a photo under their hash. They are on the disk when this returns; a second time adds nothing.
    /// They go again when the last revision that names them is blanked.
    ///
    /// # Errors
    /// [`KeepError::OtherBytes`], [`KeepError::NotNamed`], [`KeepError::TooLong`]
    fn put_photo(&mut self, sha256: &str, bytes: &[u8]) -> Result<(), KeepError>;

    /// The bytes of a photo; none where they aren't here.
    ///
    /// # Errors
    /// [`KeepError::Damaged`] where they are not what their hash says any more
    fn photo(&self, sha256: &str) -> Result<Option<Vec<u8>>, KeepError>;

    /// Every photo that a revision names, in the order of their hashes, and whether its bytes are here.
    ///
    /// # Errors
    /// [`KeepError`]
    fn photos(&self) -> Result<Vec<Named>, KeepError>;

    /// Whether the bytes of a photo are here.
    ///
    /// # Errors
    /// [`KeepError`]
    fn has_photo(&self, sha256: &str) -> Result<bool, KeepError> {
        Ok(self.photos()?.iter().any(|named| named.sha256 == sha256 && named.is_here))
    }
}

/// Whether bytes may be kept as a photo, as far as they themselves tell.
///
/// # Errors
/// [`KeepError::TooLong`], [`KeepError::OtherBytes`]
pub fn may_be_photo(sha256: &str, bytes: &[u8]) -> Result<(), KeepError> {
    if bytes.len() > LONGEST {
        Err(KeepError::TooLong)
    } else if canonical::sha256_hex(bytes) == sha256 {
        Ok(())
    } else {
        Err(KeepError::OtherBytes)
    }
}

/// The mark of a log, worked out batch by batch: each mark covers the one before.
#[derive(Debug)]
pub(crate) struct Marking {
    text: String,
    anything: bool,
}

impl Marking {
    /// Begins a batch after the mark of the last.
    pub(crate) fn after(last: Option<&str>) -> Self {
        Self { text: last.unwrap_or_default().to_owned(), anything: false }
    }

    /// A revision of the batch, and what adding it did.
    pub(crate) fn add(&mut self, revision: &Revision, added: Added) {
        if added != Added::Known {
            let state = if revision.is_erased() { "blank" } else { "whole" };
            // writing to a String can't fail
            let _ = write!(self.text, "\n{} {state}", revision.sha256());
            self.anything = true;
        }
    }

    /// The mark; none where the batch changed nothing.
    pub(crate) fn end(self) -> Option<String> {
        self.anything.then(|| canonical::sha256_hex(self.text.as_bytes()))
    }
}
