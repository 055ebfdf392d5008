//! The server as a whole: a notebook, a port, the files of the app; and its end.

use crate::api::{Desk, router};
use crate::door::{Door, guard};
use crate::files::files;
use crate::port::{self, Port};
use crate::readers::Readers;
use crate::writer::Writer;
use axum::Router;
use axum::middleware::from_fn_with_state;
use std::net::{SocketAddr, TcpListener};
use std::path::PathBuf;
use std::thread::JoinHandle;
use tautline_store::{KeepError, Sqlite};
use tautline_survey::message::Message;
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
    writing: JoinHandle<()>,
    stop: watch::Sender<bool>,
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
        let (listener, before) = match port::bind(&mut keep, setup.port).map_err(NotServed::Notebook)? {
            Port::Bound(listener, before) => (listener, before),
            Port::Taken(port) => return Err(NotServed::PortTaken(port)),
            Port::Refused(port, error) => return Err(NotServed::Port(port, error)),
        };
        let address = listener.local_addr().map_err(NotServed::System)?;
        listener.set_nonblocking(true).map_err(NotServed::System)?;
        let (writer, writing) = Writer::start(keep).map_err(NotServed::System)?;
        let desk = Desk { readers: Readers::new(setup.notebook.clone()), writer };
        let router = router(desk)
            .fallback_service(files(setup.app.as_deref()))
            .layer(from_fn_with_state(Door::new(address.port()), guard));
        Ok(Self { listener, address, before, router, writing, stop: watch::Sender::new(false) })
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
        let mut stopped = self.stop.subscribe();
        runtime.block_on(async {
            let listener = tokio::net::TcpListener::from_std(self.listener)?;
            let end = async move {
                tokio::select! {
                    _ = stopped.wait_for(|stopped| *stopped) => {}
                    _ = tokio::signal::ctrl_c() => {}
                }
            };
            axum::serve(listener, self.router).with_graceful_shutdown(end).await
        })?;
        drop(runtime);
        // the last way to the writer is gone with the router, so it ends once what it was handed is kept
        let _ = self.writing.join();
        Ok(())
    }
}
