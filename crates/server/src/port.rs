//! The port that a notebook is served on. A browser keeps what a device holds by address and port, so the port of the
//! first time is kept in the notebook and taken again ever after.

use std::net::{Ipv4Addr, TcpListener};
use tautline_store::{KeepError, Sqlite};

/// Where the first free port is looked for.
const FIRST: u16 = 7361;
const LAST: u16 = 7460;

const SETTING: &str = "port";

/// What became of finding a port.
#[derive(Debug)]
pub(crate) enum Port {
    /// Listening; the port that was kept before, where another was asked for.
    Bound(TcpListener, Option<u16>),
    /// Another program has it.
    Taken(u16),
    /// It can't be listened on.
    Refused(u16, std::io::Error),
}

/// Listens on the port asked for, or else on the kept one, or else on the first free one, on this computer alone.
pub(crate) fn bind(keep: &mut Sqlite, asked: Option<u16>) -> Result<Port, KeepError> {
    let kept: Option<u16> = keep.setting(SETTING)?.and_then(|text| text.parse().ok());
    let range = match asked.or(kept) {
        Some(port) => port..=port,
        None => FIRST..=LAST,
    };
    let mut taken = FIRST;
    for port in range {
        match TcpListener::bind((Ipv4Addr::LOCALHOST, port)) {
            Ok(listener) => {
                // asked for port 0, the system chooses
                let port = listener.local_addr().map_or(port, |address| address.port());
                if kept != Some(port) {
                    keep.set(SETTING, &port.to_string())?;
                }
                return Ok(Port::Bound(listener, kept.filter(|&kept| kept != port)));
            }
            Err(error) if error.kind() == std::io::ErrorKind::AddrInUse => taken = port,
            Err(error) => return Ok(Port::Refused(port, error)),
        }
    }
    Ok(Port::Taken(taken))
}
