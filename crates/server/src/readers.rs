//! Those who read: a few connections, each used by one request at a time. A reader sees every commit that was
//! acknowledged before it began, and is never kept waiting by the writer.

use std::path::PathBuf;
use std::sync::{Arc, Mutex, PoisonError};
use tautline_store::{KeepError, Sqlite};

/// So many connections are kept when nobody reads.
const IDLE: usize = 4;

/// Connections that only read.
#[derive(Clone, Debug)]
pub(crate) struct Readers {
    path: Arc<PathBuf>,
    idle: Arc<Mutex<Vec<Sqlite>>>,
}

impl Readers {
    pub(crate) fn new(path: PathBuf) -> Self {
        Self { path: Arc::new(path), idle: Arc::default() }
    }

    /// The notebook's file, for what is said of it.
    pub(crate) fn file(&self) -> String {
        self.path.file_name().unwrap_or_default().to_string_lossy().into_owned()
    }

    /// Reads on a thread that may wait for the disk.
    pub(crate) async fn read<T: Send + 'static>(
        &self,
        read: impl FnOnce(&Sqlite) -> Result<T, KeepError> + Send + 'static,
    ) -> Result<T, KeepError> {
        let own = self.clone();
        let done = tokio::task::spawn_blocking(move || own.read_here(read)).await;
        done.unwrap_or_else(|broken| Err(KeepError::System(broken.to_string())))
    }

    /// Reads on this very thread.
    pub(crate) fn read_here<T>(
        &self,
        read: impl FnOnce(&Sqlite) -> Result<T, KeepError>,
    ) -> Result<T, KeepError> {
        // a thread that broke off in mid-read left only a connection behind, which is as good as new
        let idle = || self.idle.lock().unwrap_or_else(PoisonError::into_inner);
        let waiting = idle().pop();
        let reader = match waiting {
            Some(reader) => reader,
            None => Sqlite::reader(&self.path)?,
        };
        let found = read(&reader);
        let mut idle = idle();
        if idle.len() < IDLE {
            idle.push(reader);
        }
        found
    }
}
