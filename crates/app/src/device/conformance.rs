//! This browser's disk held to the suite that every store passes. Before each answer everything is read from the disk
//! again, so that nothing is answered from memory.

use super::Device;
use std::cell::Cell;
use tautline_store::conformance::conformance_later;
use tautline_store::{Appended, Cursor, Keep as _, KeepError, Later, Named};
use tautline_survey::revision::{ActionId, RecordId, Revision};
use tautline_survey::sync::{Entry, Place};

struct Reread(String);

impl Reread {
    async fn again(&self) -> Result<Device, KeepError> {
        let mut device = Device::open(&self.0).await?;
        device.load().await?;
        Ok(device)
    }
}

impl Later for Reread {
    async fn append(&mut self, batch: &[Revision]) -> Result<Appended, KeepError> {
        self.again().await?.append(batch, &[], &[]).await
    }

    async fn heads(&self) -> Result<Vec<Revision>, KeepError> {
        self.again().await?.memory().heads()
    }

    async fn of_record(&self, record: RecordId) -> Result<Vec<Revision>, KeepError> {
        self.again().await?.memory().of_record(record)
    }

    async fn of_action(&self, action: ActionId) -> Result<Vec<Revision>, KeepError> {
        self.again().await?.memory().of_action(action)
    }

    async fn log(&self, cursor: Cursor, most: usize) -> Result<Vec<Entry>, KeepError> {
        self.again().await?.memory().log(cursor, most)
    }

    async fn place(&self, cursor: Cursor) -> Result<Option<Place>, KeepError> {
        self.again().await?.memory().place(cursor)
    }

    async fn end(&self) -> Result<Option<Place>, KeepError> {
        self.again().await?.memory().end()
    }

    async fn since(&self, cursor: Cursor, most: usize) -> Result<(Vec<Revision>, Cursor), KeepError> {
        self.again().await?.memory().since(cursor, most)
    }

    async fn counter(&self) -> Result<u64, KeepError> {
        self.again().await?.memory().counter()
    }

    async fn put_photo(&mut self, sha256: &str, bytes: &[u8]) -> Result<(), KeepError> {
        self.again().await?.put_photo(sha256, bytes).await
    }

    async fn photo(&self, sha256: &str) -> Result<Option<Vec<u8>>, KeepError> {
        self.again().await?.photo(sha256).await
    }

    async fn photos(&self) -> Result<Vec<Named>, KeepError> {
        self.again().await?.photos().await
    }
}

/// Runs the suite, each part on a database of its own; a part that fails panics.
pub(crate) async fn run() {
    let number = Cell::new(0);
    conformance_later(async || {
        number.set(number.get() + 1);
        Reread(format!("conformance {} {}", super::here::now().1, number.get()))
    })
    .await;
}
