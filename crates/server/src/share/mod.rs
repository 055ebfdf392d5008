//! The notebook for the crew's phones: a secure address on their own network, and a door that opens to paired devices
//! alone.
//!
//! A browser keeps what a device holds only at a secure address, so this computer is its own certificate authority, for
//! this one name and no other; or an organisation's certificate is used. A device is let in once by a code that is shown
//! here, works once and not for long, and shows a token ever after.

pub(crate) mod authority;
pub(crate) mod name;
pub(crate) mod pages;
pub(crate) mod pairing;
pub(crate) mod tls;

use std::net::IpAddr;
use std::path::PathBuf;
use std::sync::Arc;

/// How the crew's devices reach the notebook.
#[derive(Clone)]
pub struct ShareSetup {
    /// The folder for the authority's key, which leaves it never.
    pub folder: PathBuf,
    /// The name that devices know this computer by, such as `desk.local`.
    pub name: String,
    /// Where to listen; every address of this computer, if unspecified.
    pub address: IpAddr,
    /// The port, where it is not to be the one kept in the notebook.
    pub port: Option<u16>,
    /// An organisation's own certificate and key, in place of this computer's authority.
    pub certificate: Option<(PathBuf, PathBuf)>,
    /// Paired devices know it by another address, and that is understood.
    pub new_address: bool,
    /// The name that it is to go by from the next time on. Devices that meet it are told to send or export first.
    pub move_to: Option<String>,
    /// Told of each code that lets one device in.
    pub tell: Tell,
}

/// Shows an invitation to whoever sits at the desk.
pub type Tell = Arc<dyn Fn(&Invitation) + Send + Sync>;

/// What lets one device in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Invitation {
    /// The address with the code in it, for a camera.
    pub link: String,
    /// The code.
    pub code: String,
}

impl core::fmt::Debug for ShareSetup {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.debug_struct("ShareSetup")
            .field("name", &self.name)
            .field("port", &self.port)
            .finish_non_exhaustive()
    }
}

/// The link as a picture of characters, two rows of it to a line; none where it is too long for one.
pub fn picture(link: &str) -> Option<String> {
    let code = qrcode::QrCode::new(link).ok()?;
    Some(code.render::<qrcode::render::unicode::Dense1x2>().quiet_zone(true).build())
}

/// The link as a drawing.
fn drawing(link: &str) -> Option<String> {
    let code = qrcode::QrCode::new(link).ok()?;
    let svg = code.render::<qrcode::render::svg::Color>().min_dimensions(320, 320).quiet_zone(true).build();
    // inside a page it is no document of its own
    Some(svg.find("<svg").map_or(String::new(), |at| svg[at..].to_owned()))
}
