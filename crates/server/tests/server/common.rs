//! A server on a notebook of its own, and a caller that says byte by byte what it sends.

use std::net::SocketAddr;
use std::path::PathBuf;
use std::thread::JoinHandle;
use tautline_server::trial::{Answered, call};
use tautline_server::{Server, Setup, Stop};
use tautline_store::Sqlite;

/// A server that ends with the test.
pub(crate) struct Served {
    pub(crate) folder: PathBuf,
    pub(crate) address: SocketAddr,
    stop: Stop,
    running: Option<JoinHandle<std::io::Result<()>>>,
    /// Goes with the test, where the folder is one of its own.
    temporary: Option<tempfile::TempDir>,
}

impl Served {
    pub(crate) fn new(app: Option<PathBuf>) -> Self {
        let folder = tempfile::tempdir().unwrap();
        let mut own = Self::begin(folder.path().to_owned(), app, |_| {});
        own.temporary = Some(folder);
        own
    }

    /// Serves the notebook in a folder, with something done to it first.
    pub(crate) fn begin(folder: PathBuf, app: Option<PathBuf>, first: impl FnOnce(&Sqlite)) -> Self {
        let notebook = folder.join("desk.tautline");
        let keep = Sqlite::open_or_begin(&notebook).unwrap();
        first(&keep);
        // port 0: any that is free, since tests run beside each other
        let server = Server::on(keep, &Setup { notebook, port: Some(0), app, share: None }).unwrap();
        let (address, stop) = (server.address(), server.stop());
        let running = Some(std::thread::spawn(move || server.run()));
        Self { folder, address, stop, running, temporary: None }
    }

    pub(crate) fn call(&self, first: &str, headers: &[&str], body: &[u8]) -> Answered {
        call(self.address, first, headers, body).unwrap()
    }

    pub(crate) fn get(&self, path: &str) -> Answered {
        self.call(&format!("GET {path}"), &[], b"")
    }

    pub(crate) fn post(&self, path: &str, body: &str) -> Answered {
        self.call(&format!("POST {path}"), &["Content-Type: application/json"], body.as_bytes())
    }
}

impl Drop for Served {
    fn drop(&mut self) {
        self.stop.stop();
        if let Some(running) = self.running.take() {
            let _ = running.join();
        }
        self.temporary.take();
    }
}

pub(crate) fn json(answered: &Answered) -> serde_json::Value {
    serde_json::from_slice(&answered.body).unwrap_or_else(|why| panic!("{why}: {answered:?}"))
}

/// The code of a refusal.
pub(crate) fn code(answered: &Answered) -> String {
    json(answered)["findings"][0]["message"]["code"].as_str().unwrap_or_default().to_owned()
}
