//! A server on a notebook of its own, and a caller that says byte by byte what it sends.

use std::io::{Read as _, Write as _};
use std::net::TcpStream;
use std::path::PathBuf;
use std::thread::JoinHandle;
use tautline_server::{Server, Setup, Stop};

/// A server that ends with the test.
pub(crate) struct Served {
    pub(crate) folder: tempfile::TempDir,
    pub(crate) port: u16,
    stop: Stop,
    running: Option<JoinHandle<std::io::Result<()>>>,
}

/// What was answered.
#[derive(Debug)]
pub(crate) struct Answered {
    pub(crate) status: u16,
    pub(crate) headers: String,
    pub(crate) body: Vec<u8>,
}

impl Served {
    pub(crate) fn new(app: Option<PathBuf>) -> Self {
        Self::in_folder(tempfile::tempdir().unwrap(), app)
    }

    pub(crate) fn in_folder(folder: tempfile::TempDir, app: Option<PathBuf>) -> Self {
        // port 0: any that is free, since tests run beside each other
        let setup = Setup { notebook: folder.path().join("desk.tautline"), port: Some(0), app };
        let server = Server::begin(&setup).unwrap();
        let (port, stop) = (server.address().port(), server.stop());
        let running = Some(std::thread::spawn(move || server.run()));
        Self { folder, port, stop, running }
    }

    /// Sends a request as it stands, with the usual `Host` unless one is given.
    pub(crate) fn call(&self, first: &str, headers: &[&str], body: &[u8]) -> Answered {
        let usual = format!("Host: 127.0.0.1:{}", self.port);
        let host = if headers.iter().any(|header| header.starts_with("Host:")) { "" } else { &usual };
        let headers: Vec<&str> =
            headers.iter().copied().chain([host]).filter(|one| !one.is_empty()).collect();
        let headers = headers.join("\r\n");
        // HTTP/1.0: the answer ends where the connection does
        let head = format!("{first} HTTP/1.0\r\n{headers}\r\nContent-Length: {}\r\n\r\n", body.len());
        let mut to = TcpStream::connect(("127.0.0.1", self.port)).unwrap();
        to.write_all(head.as_bytes()).unwrap();
        // a server that has read enough may hang up on the rest
        let _ = to.write_all(body);
        let mut all = Vec::new();
        let _ = to.read_to_end(&mut all);
        let end = all.windows(4).position(|four| four == b"\r\n\r\n").unwrap_or(all.len());
        let head = String::from_utf8_lossy(&all[..end]).to_lowercase();
        let status = head.split(' ').nth(1).and_then(|status| status.parse().ok()).unwrap_or(0);
        Answered { status, headers: head, body: all.get(end + 4..).unwrap_or_default().to_vec() }
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
    }
}

impl Answered {
    pub(crate) fn json(&self) -> serde_json::Value {
        serde_json::from_slice(&self.body)
            .unwrap_or_else(|why| panic!("{why}: {self:?} {}", String::from_utf8_lossy(&self.body)))
    }

    /// The code of a refusal.
    pub(crate) fn code(&self) -> String {
        self.json()["findings"][0]["message"]["code"].as_str().unwrap_or_default().to_owned()
    }
}
