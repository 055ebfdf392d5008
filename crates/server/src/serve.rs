//! The server as a whole: a notebook, a port, the files of the app; and its end.

use crate::api::{Desk, router};
use crate::door::{Door, guard};
use crate::files::files;
use crate::port::{self, Port, Whose};
use crate::readers::Readers;
use crate::share::authority::{self, Secured, fingerprint};
use crate::share::name::Name;
use crate::share::pages::{Gate, at_the_desk, behind_the_gate};
use crate::share::tls::{Peer, Tls};
use crate::share::{Invitation, ShareSetup};
use crate::writer::Writer;
use axum::Router;
use axum::http::HeaderValue;
use axum::middleware::from_fn_with_state;
use axum::response::Response;
use rustls::ServerConfig;
use std::net::{IpAddr, Ipv4Addr, SocketAddr, TcpListener};
use std::path::PathBuf;
use std::sync::Arc;
use std::thread::JoinHandle;
use tautline_store::{KeepError, Sqlite};
use tautline_survey::message::Message;
use tautline_survey::sync::MOVING_TO;
use tokio::sync::watch;

/// At most so many threads wait for the disk or work out hashes.
const THREADS: usize = 4;

/// What is served, and where.
#[derive(Clone, Debug)]
pub struct Setup {
    /// The notebook; begun where there is no such file.
    pub notebook: PathBuf,
    /// The port, where it is not to be the one kept in the notebook.
    pub port: Option<u16>,
    /// The folder of the built app.
    pub app: Option<PathBuf>,
    /// The crew's devices, where they are to reach it too.
    pub share: Option<ShareSetup>,
}

/// Why nothing is served.
#[derive(Debug)]
pub enum NotServed {
    /// The notebook can't be used.
    Notebook(KeepError),
    /// Another program has the port.
    PortTaken(u16),
    /// The port can't be listened on.
    Port(u16, std::io::Error),
    /// There is no such folder, or it holds no app.
    NoApp(PathBuf),
    /// No secure address could be made: the authority or the certificate can't be used.
    NotSecure(std::io::Error),
    /// Paired devices know it by another address, and what they hold would not be seen under this one.
    OtherAddress {
        /// The address that they know.
        before: String,
        /// What their owners call them. What they hold that isn't here, they alone know.
        devices: Vec<String>,
    },
    /// Something else, in the words of the system.
    System(std::io::Error),
}

impl NotServed {
    /// What a person should hear of it.
    pub fn message(&self, notebook: &str) -> Message {
        match self {
            Self::Notebook(error) => error.message(notebook),
            Self::PortTaken(port) => Message::new("serve-port-taken").with("port", port.to_string()),
            Self::Port(port, error) => {
                Message::new("serve-port").with("port", port.to_string()).with("why", error.to_string())
            }
            Self::NoApp(folder) => Message::new("serve-no-app").with("folder", folder.display().to_string()),
            Self::NotSecure(error) => Message::new("share-not-secure").with("why", error.to_string()),
            Self::OtherAddress { before, devices } => Message::new("share-other-address")
                .with("before", before.as_str())
                .with("number", devices.len())
                .with("devices", devices.clone()),
            Self::System(error) => Message::new("serve-system").with("why", error.to_string()),
        }
    }
}

/// A server that listens and has yet to answer.
#[derive(Debug)]
pub struct Server {
    listener: TcpListener,
    address: SocketAddr,
    before: Option<u16>,
    router: Router,
    share: Option<Sharing>,
    writing: JoinHandle<()>,
    stop: watch::Sender<bool>,
}

/// The crew's side of it.
#[derive(Debug)]
struct Sharing {
    listener: TcpListener,
    config: Arc<ServerConfig>,
    router: Router,
    shared: Shared,
    name: Option<Name>,
    gate: Arc<Gate>,
}

/// How the crew's devices reach it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shared {
    /// The address, as a browser has it.
    pub origin: String,
    /// Where it listens.
    pub address: SocketAddr,
    /// The SHA-256 of the certificate that devices must trust; none where an organisation's own is used.
    pub fingerprint: Option<String>,
    /// What lets the first device in.
    pub invitation: Option<Invitation>,
    /// Why the name isn't answered for on the network, where it isn't.
    pub unnamed: Option<String>,
}

/// A way to end a server from another thread.
#[derive(Clone, Debug)]
pub struct Stop(watch::Sender<bool>);

impl Stop {
    /// Ends it: what is being answered is answered, nothing new is begun.
    pub fn stop(&self) {
        self.0.send_replace(true);
    }
}

impl Server {
    /// Opens the notebook and listens, on this computer alone.
    ///
    /// # Errors
    /// [`NotServed`]
    pub fn begin(setup: &Setup) -> Result<Self, NotServed> {
        if let Some(folder) = setup.app.as_ref().filter(|folder| !folder.join("index.html").is_file()) {
            return Err(NotServed::NoApp(folder.clone()));
        }
        Self::on(Sqlite::open_or_begin(&setup.notebook).map_err(NotServed::Notebook)?, setup)
    }

    /// Listens for a notebook that is open already.
    ///
    /// # Errors
    /// [`NotServed`]
    pub fn on(mut keep: Sqlite, setup: &Setup) -> Result<Self, NotServed> {
        let here = IpAddr::V4(Ipv4Addr::LOCALHOST);
        let (listener, before) = listen(&keep, here, port::HERE, setup.port)?;
        let address = listener.local_addr().map_err(NotServed::System)?;
        let share = match &setup.share {
            Some(share) => Some((share, secure(&mut keep, share)?)),
            None => None,
        };
        port::keep(&mut keep, port::HERE, address.port()).map_err(NotServed::Notebook)?;
        let (writer, writing) = Writer::start(keep).map_err(NotServed::System)?;
        let readers = Readers::new(setup.notebook.clone());
        let desk = Desk { readers: readers.clone(), writer };
        let inside = router(desk).fallback_service(files(setup.app.as_deref()));
        let share = share.map(|(share, (listener, secured, mut shared))| {
            let authority = secured.authority;
            shared.fingerprint = authority.as_ref().map(fingerprint);
            let tell = Arc::clone(&share.tell);
            let gate =
                Arc::new(Gate::new(shared.origin.clone(), authority, readers, setup.notebook.clone(), tell));
            shared.invitation = Some(gate.invitation());
            let inside = match &share.move_to {
                Some(name) => moving(inside.clone(), &origin(name, shared.address.port())),
                None => inside.clone(),
            };
            let router =
                behind_the_gate(&gate, inside).layer(from_fn_with_state(Door::shared(&shared.origin), guard));
            // without an answer to its name the rest still works, under an address that people type
            let name = Name::answer(&share.name, shared.address.port());
            shared.unnamed = name.as_ref().err().cloned();
            Sharing { listener, config: secured.config, router, shared, name: name.ok(), gate }
        });
        let inside = match &share {
            Some(share) => at_the_desk(&share.gate, inside),
            None => inside,
        };
        let router = inside.layer(from_fn_with_state(Door::here(address.port()), guard));
        Ok(Self { listener, address, before, router, share, writing, stop: watch::Sender::new(false) })
    }

    /// Where it listens.
    pub const fn address(&self) -> SocketAddr {
        self.address
    }

    /// The address of the app, as a browser has it.
    pub fn origin(&self) -> String {
        format!("http://{}", self.address)
    }

    /// The port that was kept before, where another was asked for: what browsers hold under it stays there.
    pub const fn port_before(&self) -> Option<u16> {
        self.before
    }

    /// How the crew's devices reach it, where they do.
    pub fn shared(&self) -> Option<&Shared> {
        self.share.as_ref().map(|share| &share.shared)
    }

    /// A way to end it.
    pub fn stop(&self) -> Stop {
        Stop(self.stop.clone())
    }

    /// Answers until it is stopped or the program is told to end.
    ///
    /// # Errors
    /// those of the system
    pub fn run(self) -> std::io::Result<()> {
        let runtime = tokio::runtime::Builder::new_current_thread()
            .enable_all()
            .max_blocking_threads(THREADS)
            .build()?;
        runtime.block_on(async {
            let listener = tokio::net::TcpListener::from_std(self.listener)?;
            let here = axum::serve(listener, self.router).with_graceful_shutdown(end(&self.stop));
            let Some(share) = self.share else { return here.await };
            let service = share.router.into_make_service_with_connect_info::<Peer>();
            let crew = axum::serve(Tls::listen(share.listener, share.config)?, service)
                .with_graceful_shutdown(end(&self.stop));
            let (here, crew) = tokio::join!(here, crew);
            // from here on the name isn't answered for any more
            drop(share.name);
            here.and(crew)
        })?;
        drop(runtime);
        // the last way to the writer is gone with the router, so it ends once what it was handed is kept
        let _ = self.writing.join();
        Ok(())
    }
}

/// Comes when the server is stopped or the program is told to end.
fn end(stop: &watch::Sender<bool>) -> impl Future<Output = ()> + Send + 'static {
    let mut stopped = stop.subscribe();
    async move {
        tokio::select! {
            _ = stopped.wait_for(|stopped| *stopped) => {}
            _ = tokio::signal::ctrl_c() => {}
        }
    }
}

fn listen(
    keep: &Sqlite,
    address: IpAddr,
    whose: Whose,
    port: Option<u16>,
) -> Result<(TcpListener, Option<u16>), NotServed> {
    match port::bind(keep, address, whose, port).map_err(NotServed::Notebook)? {
        Port::Bound(listener, before) => {
            listener.set_nonblocking(true).map_err(NotServed::System)?;
            Ok((listener, before))
        }
        Port::Taken(port) => Err(NotServed::PortTaken(port)),
        Port::Refused(port, error) => Err(NotServed::Port(port, error)),
    }
}

/// The address of a name, as a browser has it.
fn origin(name: &str, port: u16) -> String {
    let name = if name.contains(':') { format!("[{name}]") } else { name.to_owned() };
    format!("https://{name}:{port}")
}

/// Everything that is answered says where the notebook moves to, so that each device sends or exports first.
fn moving(inside: Router, to: &str) -> Router {
    let to = HeaderValue::from_str(to).ok();
    inside.layer(axum::middleware::map_response(move |mut response: Response| {
        if let Some(to) = &to {
            response.headers_mut().insert(MOVING_TO, to.clone());
        }
        std::future::ready(response)
    }))
}

/// The address that paired devices know, in the notebook's settings.
const ORIGIN: &str = "shared-origin";

/// Listens for the crew's devices, with what secures the address.
fn secure(keep: &mut Sqlite, share: &ShareSetup) -> Result<(TcpListener, Secured, Shared), NotServed> {
    let secured = match &share.certificate {
        Some((certificate, key)) => authority::given(certificate, key),
        None => authority::own(&share.folder, &share.name),
    };
    let secured = secured.map_err(NotServed::NotSecure)?;
    let before = keep.setting(ORIGIN).map_err(NotServed::Notebook)?;
    let (listener, _) = listen(keep, share.address, port::SHARED, share.port)?;
    let address = listener.local_addr().map_err(NotServed::System)?;
    let origin = origin(&share.name, address.port());
    if let Some(before) = before.filter(|before| *before != origin && !share.new_address) {
        let paired = keep.paired().map_err(NotServed::Notebook)?;
        let devices: Vec<String> =
            paired.into_iter().filter(|one| one.withdrawn.is_none()).map(|one| one.name).collect();
        if !devices.is_empty() {
            return Err(NotServed::OtherAddress { before, devices });
        }
    }
    port::keep(keep, port::SHARED, address.port()).map_err(NotServed::Notebook)?;
    keep.set(ORIGIN, &origin).map_err(NotServed::Notebook)?;
    Ok((listener, secured, Shared { origin, address, fingerprint: None, invitation: None, unnamed: None }))
}
