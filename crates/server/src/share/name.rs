//! The name on the crew's own network, answered for by multicast DNS (RFC 6762) where it ends in `.local`.

use mdns_sd::{ServiceDaemon, ServiceInfo};

/// Answers for a name as long as it lives.
pub(crate) struct Name(Option<ServiceDaemon>);

impl Name {
    /// Begins to answer for a name. A name of another kind is somebody else's to answer for.
    pub(crate) fn answer(name: &str, port: u16) -> Result<Self, String> {
        if name.rsplit('.').next() != Some("local") {
            return Ok(Self(None));
        }
        let daemon = ServiceDaemon::new().map_err(|error| error.to_string())?;
        let host = format!("{name}.");
        let none: &[(&str, &str)] = &[];
        let service = ServiceInfo::new("_https._tcp.local.", "tautline", &host, "", port, none)
            .map_err(|error| error.to_string())?
            .enable_addr_auto();
        daemon.register(service).map_err(|error| error.to_string())?;
        Ok(Self(Some(daemon)))
    }
}

impl core::fmt::Debug for Name {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.debug_tuple("Name").field(&self.0.is_some()).finish()
    }
}

impl Drop for Name {
    fn drop(&mut self) {
        if let Some(daemon) = &self.0 {
            // at the end of the program; whoever asks again gets no answer either way
            let _ = daemon.shutdown();
        }
    }
}
