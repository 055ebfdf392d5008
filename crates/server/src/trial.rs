//! Devices for trials: they write invented revisions and sync over HTTP, as an app does. Tests, the load program and the
//! trials with a killed server call them.

use std::io::{self, Read as _, Write as _};
use std::net::{SocketAddr, TcpStream};
use std::time::Duration;
use tautline_store::conformance::Invented;
use tautline_store::{Cursor, Keep as _, KeepError, Memory};
use tautline_survey::canonical::sha256_hex;
use tautline_survey::revision::{DeviceId, Revision};
use tautline_survey::sync::{Answer, MOST_LINES, State};

/// Whoever hears nothing for so long gives up.
const PATIENCE: Duration = Duration::from_secs(30);

/// What a device reads of which photos a notebook lacks.
#[derive(serde::Deserialize)]
struct Lacking {
    sha256: Vec<String>,
}

/// What was answered.
#[derive(Debug)]
pub struct Answered {
    /// The status; 0 where the answer broke off before it.
    pub status: u16,
    /// The headers in lower case.
    pub headers: String,
    /// The body.
    pub body: Vec<u8>,
}

/// Sends a request as it stands, with the usual `Host` unless one is given.
///
/// # Errors
/// those of the network
pub fn call(to: SocketAddr, first: &str, headers: &[&str], body: &[u8]) -> io::Result<Answered> {
    let usual = format!("Host: {to}");
    let mut headers = headers.to_vec();
    if !headers.iter().any(|header| header.starts_with("Host:")) {
        headers.push(&usual);
    }
    // HTTP/1.0: the answer ends where the connection does
    let length = body.len();
    let head = format!("{first} HTTP/1.0\r\n{}\r\nContent-Length: {length}\r\n\r\n", headers.join("\r\n"));
    let mut stream = TcpStream::connect(to)?;
    stream.set_read_timeout(Some(PATIENCE))?;
    stream.write_all(head.as_bytes())?;
    // a server that has read enough may hang up on the rest, and has said why
    let _ = stream.write_all(body);
    let mut all = Vec::new();
    let read = stream.read_to_end(&mut all);
    if all.is_empty() {
        read?;
    }
    let end = all.windows(4).position(|four| four == b"\r\n\r\n").unwrap_or(all.len());
    let head = String::from_utf8_lossy(&all[..end]).to_lowercase();
    let status = head.split(' ').nth(1).and_then(|status| status.parse().ok()).unwrap_or(0);
    Ok(Answered { status, headers: head, body: all.get(end + 4..).unwrap_or_default().to_vec() })
}

/// A device with what it holds and remembers.
#[derive(Clone, Debug)]
pub struct Device {
    /// Which it is.
    pub id: DeviceId,
    /// What it holds.
    pub keep: Memory,
    /// What it remembers of the notebook.
    pub state: State,
    /// What writes.
    pub hand: Invented,
    last: Option<Revision>,
}

impl Device {
    /// A device that holds nothing.
    pub fn new(number: u8) -> Self {
        Self {
            id: DeviceId::made(0, [number; 10]),
            keep: Memory::default(),
            state: State::default(),
            hand: Invented::device(u64::from(number)),
            last: None,
        }
    }

    /// Writes a revision that begins a record.
    ///
    /// # Errors
    /// [`KeepError`]
    pub fn begin(&mut self, text: &str) -> Result<Revision, KeepError> {
        let made = self.hand.revision(None, &[], text);
        self.keep.append(std::slice::from_ref(&made))?;
        self.last = Some(made.clone());
        Ok(made)
    }

    /// Writes a revision that follows the device's last; without one, it begins a record.
    ///
    /// # Errors
    /// [`KeepError`]
    pub fn follow(&mut self, text: &str) -> Result<Revision, KeepError> {
        let Some(last) = self.last.take() else { return self.begin(text) };
        let made = self.hand.revision(Some(last.record()), &[last.id()], text);
        self.keep.append(std::slice::from_ref(&made))?;
        self.last = Some(made.clone());
        Ok(made)
    }

    /// How many revisions are on this device alone, as far as it knows.
    ///
    /// # Errors
    /// [`KeepError`]
    pub fn waiting(&self) -> Result<usize, KeepError> {
        Ok(self.state.waiting(&self.keep.log(Cursor(self.state.sent()), usize::MAX)?))
    }

    /// The revisions that it has heard are kept.
    ///
    /// # Errors
    /// [`KeepError`]
    pub fn acknowledged(&self) -> Result<Vec<Revision>, KeepError> {
        let log = self.keep.log(Cursor::START, usize::MAX)?;
        let own = log.into_iter().filter(|entry| entry.at <= self.state.sent());
        Ok(own.map(|entry| entry.revision).collect())
    }

    /// One exchange; whether each has what the other has.
    ///
    /// # Errors
    /// those of the network; what was answered, where that is no answer
    pub fn exchange(&mut self, to: SocketAddr) -> io::Result<bool> {
        let kept = |error: KeepError| io::Error::other(format!("{error:?}"));
        let log = self.keep.log(Cursor(self.state.sent()), MOST_LINES).map_err(kept)?;
        let asked = self.state.ask(self.id, &log, log.len() < MOST_LINES);
        let body = serde_json::to_vec(&asked.ask)?;
        let answered = call(to, "POST /api/sync", &["Content-Type: application/json"], &body)?;
        if answered.status != 200 {
            return Err(io::Error::other(format!("{answered:?}")));
        }
        let answer: Answer = serde_json::from_slice(&answered.body)?;
        let taken = self.state.take(&asked, &answer).map_err(|why| io::Error::other(format!("{why:?}")))?;
        self.keep.append(&taken.revisions).map_err(kept)?;
        self.state = taken.state;
        Ok(taken.done)
    }

    /// Takes a photo of invented bytes.
    ///
    /// # Errors
    /// [`KeepError`]
    pub fn take_photo(&mut self, bytes: &[u8]) -> Result<String, KeepError> {
        let made = self.hand.photo(None, &[], bytes);
        self.keep.append(std::slice::from_ref(&made))?;
        let sha256 = sha256_hex(bytes);
        self.keep.put_photo(&sha256, bytes)?;
        Ok(sha256)
    }

    /// Sends the photos that the notebook lacks and brings those that this device lacks, one by one and no more than so
    /// many; how many went.
    ///
    /// # Errors
    /// as [`Device::exchange`]
    pub fn exchange_photos(&mut self, to: SocketAddr, most: usize) -> io::Result<usize> {
        let kept = |error: KeepError| io::Error::other(format!("{error:?}"));
        let refused = |answered: &Answered| io::Error::other(format!("{answered:?}"));
        let answered = call(to, "GET /api/photos", &[], b"")?;
        let lacking: Lacking = serde_json::from_slice(&answered.body)?;
        let mut went = 0;
        for sha256 in lacking.sha256 {
            let Some(bytes) = self.keep.photo(&sha256).map_err(kept)?.filter(|_| went < most) else {
                continue;
            };
            let answered = call(to, &format!("PUT /api/photos/{sha256}"), &[], &bytes)?;
            if answered.status != 204 {
                return Err(refused(&answered));
            }
            went += 1;
        }
        for named in self.keep.photos().map_err(kept)? {
            if named.is_here || went == most {
                continue;
            }
            let answered = call(to, &format!("GET /api/photos/{}", named.sha256), &[], b"")?;
            // 404: whoever took it has not sent it yet
            if answered.status == 200 {
                self.keep.put_photo(&named.sha256, &answered.body).map_err(kept)?;
                went += 1;
            } else if answered.status != 404 {
                return Err(refused(&answered));
            }
        }
        Ok(went)
    }

    /// Exchanges until each has what the other has.
    ///
    /// # Errors
    /// as [`Device::exchange`]
    pub fn sync(&mut self, to: SocketAddr) -> io::Result<()> {
        while !self.exchange(to)? {}
        Ok(())
    }
}
