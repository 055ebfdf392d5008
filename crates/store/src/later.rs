//! The same interface where every answer has to be waited for, as from a browser's disk.

use crate::keep::{Appended, Cursor, Keep, KeepError, Named};
use std::future::Future;
use std::pin::pin;
use std::task::{Context, Poll, Waker};
use tautline_survey::revision::{ActionId, RecordId, Revision};
use tautline_survey::sync::{Entry, Place};

/// [`Keep`], to be waited for. What it promises is the same.
pub trait Later {
    /// As [`Keep::append`].
    ///
    /// # Errors
    /// [`KeepError`]
    fn append(&mut self, batch: &[Revision]) -> impl Future<Output = Result<Appended, KeepError>>;

    /// As [`Keep::heads`].
    ///
    /// # Errors
    /// [`KeepError`]
    fn heads(&self) -> impl Future<Output = Result<Vec<Revision>, KeepError>>;

    /// As [`Keep::of_record`].
    ///
    /// # Errors
    /// [`KeepError`]
    fn of_record(&self, record: RecordId) -> impl Future<Output = Result<Vec<Revision>, KeepError>>;

    /// As [`Keep::of_action`].
    ///
    /// # Errors
    /// [`KeepError`]
    fn of_action(&self, action: ActionId) -> impl Future<Output = Result<Vec<Revision>, KeepError>>;

    /// As [`Keep::log`].
    ///
    /// # Errors
    /// [`KeepError`]
    fn log(&self, cursor: Cursor, most: usize) -> impl Future<Output = Result<Vec<Entry>, KeepError>>;

    /// As [`Keep::place`].
    ///
    /// # Errors
    /// [`KeepError`]
    fn place(&self, cursor: Cursor) -> impl Future<Output = Result<Option<Place>, KeepError>>;

    /// As [`Keep::end`].
    ///
    /// # Errors
    /// [`KeepError`]
    fn end(&self) -> impl Future<Output = Result<Option<Place>, KeepError>>;

    /// As [`Keep::since`].
    ///
    /// # Errors
    /// [`KeepError`]
    fn since(
        &self,
        cursor: Cursor,
        most: usize,
    ) -> impl Future<Output = Result<(Vec<Revision>, Cursor), KeepError>>;

    /// As [`Keep::counter`].
    ///
    /// # Errors
    /// [`KeepError`]
    fn counter(&self) -> impl Future<Output = Result<u64, KeepError>>;

    /// As [`Keep::put_photo`].
    ///
    /// # Errors
    /// [`KeepError`]
    fn put_photo(&mut self, sha256: &str, bytes: &[u8]) -> impl Future<Output = Result<(), KeepError>>;

    /// As [`Keep::photo`].
    ///
    /// # Errors
    /// [`KeepError`]
    fn photo(&self, sha256: &str) -> impl Future<Output = Result<Option<Vec<u8>>, KeepError>>;

    /// As [`Keep::photos`].
    ///
    /// # Errors
    /// [`KeepError`]
    fn photos(&self) -> impl Future<Output = Result<Vec<Named>, KeepError>>;
}

/// What answers at once is never waited for.
impl Later for Box<dyn Keep> {
    async fn append(&mut self, batch: &[Revision]) -> Result<Appended, KeepError> {
        (**self).append(batch)
    }

    async fn heads(&self) -> Result<Vec<Revision>, KeepError> {
        (**self).heads()
    }

    async fn of_record(&self, record: RecordId) -> Result<Vec<Revision>, KeepError> {
        (**self).of_record(record)
    }

    async fn of_action(&self, action: ActionId) -> Result<Vec<Revision>, KeepError> {
        (**self).of_action(action)
    }

    async fn log(&self, cursor: Cursor, most: usize) -> Result<Vec<Entry>, KeepError> {
        (**self).log(cursor, most)
    }

    async fn place(&self, cursor: Cursor) -> Result<Option<Place>, KeepError> {
        (**self).place(cursor)
    }

    async fn end(&self) -> Result<Option<Place>, KeepError> {
        (**self).end()
    }

    async fn since(&self, cursor: Cursor, most: usize) -> Result<(Vec<Revision>, Cursor), KeepError> {
        (**self).since(cursor, most)
    }

    async fn counter(&self) -> Result<u64, KeepError> {
        (**self).counter()
    }

    async fn put_photo(&mut self, sha256: &str, bytes: &[u8]) -> Result<(), KeepError> {
        (**self).put_photo(sha256, bytes)
    }

    async fn photo(&self, sha256: &str) -> Result<Option<Vec<u8>>, KeepError> {
        (**self).photo(sha256)
    }

    async fn photos(&self) -> Result<Vec<Named>, KeepError> {
        (**self).photos()
    }
}

/// Runs what waits for nothing.
///
/// # Panics
/// where it waits
pub(crate) fn at_once<T>(work: impl Future<Output = T>) -> T {
    match pin!(work).poll(&mut Context::from_waker(Waker::noop())) {
        Poll::Ready(done) => done,
        Poll::Pending => unreachable!("nothing here waits"),
    }
}
