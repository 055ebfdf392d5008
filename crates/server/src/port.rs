//! The port that a notebook is served on. A browser keeps what a device holds by address and port, so the port of the
//! first time is kept in the notebook and taken again ever after.

use std::net::{IpAddr, TcpListener};
use tautline_store::{KeepError, Sqlite};

/// Whose port it is.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Whose {
    /// What it is kept as in the notebook.
    setting: &'static str,
    /// Where the first free one is looked for, a hundred on from here.
    first: u16,
}

/// This computer's own browsers'.
pub(crate) const HERE: Whose = Whose { setting: "port", first: 7361 };

/// The crew's devices'.
pub(crate) const SHARED: Whose = Whose { setting: "shared-port", first: 7461 };

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

/// Listens on the port asked for, or else on the kept one, or else on the first free one.
///
/// It is not kept yet: whoever refuses to serve there leaves the one of before.
pub(crate) fn bind(
    keep: &Sqlite,
    address: IpAddr,
    whose: Whose,
    asked: Option<u16>,
) -> Result<Port, KeepError> {
    let kept: Option<u16> = keep.setting(whose.setting)?.and_then(|text| text.parse().ok());
    let range = match asked.or(kept) {
        Some(port) => port..=port,
        None => whose.first..=whose.first + 99,
    };
    let mut taken = whose.first;
    for port in range {
        match TcpListener::bind((address, port)) {
            Ok(listener) => {
                // asked for port 0, the system chooses
                let port = listener.local_addr().map_or(port, |address| address.port());
                return Ok(Port::Bound(listener, kept.filter(|&kept| kept != port)));
            }
            Err(error) if error.kind() == std::io::ErrorKind::AddrInUse => taken = port,
            Err(error) => return Ok(Port::Refused(port, error)),
        }
    }
    Ok(Port::Taken(taken))
}

/// Keeps a port for the times to come.
pub(crate) fn keep(keep: &mut Sqlite, whose: Whose, port: u16) -> Result<(), KeepError> {
    let text = port.to_string();
    if keep.setting(whose.setting)?.as_ref() == Some(&text) { Ok(()) } else { keep.set(whose.setting, &text) }
}
