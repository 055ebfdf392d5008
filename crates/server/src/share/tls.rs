//! Connections that are secured before anybody waits for them.

use axum::extract::connect_info::Connected;
use axum::serve::{IncomingStream, Listener};
use rustls::ServerConfig;
use std::net::SocketAddr;
use std::sync::Arc;
use std::time::Duration;
use tokio::net::{TcpListener, TcpStream};
use tokio::sync::{Semaphore, mpsc};
use tokio_rustls::TlsAcceptor;
use tokio_rustls::server::TlsStream;

/// Whoever takes longer to agree on a key is left.
const PATIENCE: Duration = Duration::from_secs(10);

/// So many may be agreeing on one at a time.
const AT_ONCE: usize = 64;

/// A listener that gives secured connections.
#[derive(Debug)]
pub(crate) struct Tls {
    address: SocketAddr,
    secured: mpsc::Receiver<(TlsStream<TcpStream>, SocketAddr)>,
}

impl Tls {
    /// Listens; needs the runtime that it is called on.
    pub(crate) fn listen(
        listener: std::net::TcpListener,
        config: Arc<ServerConfig>,
    ) -> std::io::Result<Self> {
        let address = listener.local_addr()?;
        let listener = TcpListener::from_std(listener)?;
        let acceptor = TlsAcceptor::from(config);
        let (to, secured) = mpsc::channel(AT_ONCE);
        let room = Arc::new(Semaphore::new(AT_ONCE));
        tokio::spawn(async move {
            // it ends when nobody waits for connections any more
            while let Ok(place) = Arc::clone(&room).acquire_owned().await {
                let stream = tokio::select! {
                    accepted = listener.accept() => accepted,
                    () = to.closed() => return,
                };
                let Ok((stream, from)) = stream else {
                    // too many open files, most likely; in a moment there are fewer
                    tokio::time::sleep(Duration::from_millis(100)).await;
                    continue;
                };
                let (acceptor, to) = (acceptor.clone(), to.clone());
                tokio::spawn(async move {
                    // one that doesn't come about is nobody's loss but the caller's
                    if let Ok(Ok(stream)) = tokio::time::timeout(PATIENCE, acceptor.accept(stream)).await {
                        let _ = to.send((stream, from)).await;
                    }
                    drop(place);
                });
            }
        });
        Ok(Self { address, secured })
    }
}

impl Listener for Tls {
    type Io = TlsStream<TcpStream>;
    type Addr = SocketAddr;

    async fn accept(&mut self) -> (Self::Io, SocketAddr) {
        match self.secured.recv().await {
            Some(secured) => secured,
            // the task above ended with the runtime, and so does this
            None => std::future::pending().await,
        }
    }

    fn local_addr(&self) -> std::io::Result<SocketAddr> {
        Ok(self.address)
    }
}

/// Whose connection it is.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Peer(pub(crate) SocketAddr);

impl Connected<IncomingStream<'_, Tls>> for Peer {
    fn connect_info(stream: IncomingStream<'_, Tls>) -> Self {
        Self(*stream.remote_addr())
    }
}
