//! Who may come in. A page of some other place can make a browser send requests here, under a name of its own that it
//! points at this computer (rebinding) or across origins; neither is let in.

use crate::fault::Fault;
use axum::extract::{Request, State};
use axum::http::{HeaderMap, HeaderName, Method, StatusCode, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Redirect, Response};
use std::sync::Arc;
use tautline_survey::message::Message;

/// The names that this server answers to.
#[derive(Debug)]
pub(crate) struct Door {
    /// The one that pages are shown under, such as `127.0.0.1:7361`, then the others.
    hosts: Vec<String>,
    /// `http://` or `https://`
    scheme: &'static str,
}

const FETCH_SITE: HeaderName = HeaderName::from_static("sec-fetch-site");

impl Door {
    /// The door of this computer's own browsers.
    pub(crate) fn here(port: u16) -> Arc<Self> {
        let hosts = ["127.0.0.1", "localhost"].map(|name| format!("{name}:{port}"));
        Arc::new(Self { hosts: hosts.to_vec(), scheme: "http://" })
    }

    /// The door of the crew's devices.
    pub(crate) fn shared(origin: &str) -> Arc<Self> {
        let host = origin.strip_prefix("https://").unwrap_or(origin);
        Arc::new(Self { hosts: vec![host.to_owned()], scheme: "https://" })
    }

    fn is_host(&self, host: &str) -> bool {
        self.hosts.iter().any(|own| own.eq_ignore_ascii_case(host))
    }

    fn is_origin(&self, origin: &str) -> bool {
        origin.strip_prefix(self.scheme).is_some_and(|host| self.is_host(host))
    }

    /// Why a request isn't let in.
    fn refusal(&self, method: &Method, path: &str, headers: &HeaderMap) -> Option<Fault> {
        let refused = |status, code, found: &str| {
            Some(Fault::new(
                status,
                Message::new(code).with("found", found).with("accepted", self.hosts[0].as_str()),
            ))
        };
        let text = |name: &HeaderName| headers.get(name).map(|value| value.to_str().unwrap_or("?"));
        let host = text(&header::HOST).unwrap_or_default();
        if !self.is_host(host) || headers.get_all(header::HOST).iter().count() != 1 {
            return refused(StatusCode::MISDIRECTED_REQUEST, "door-host", host);
        }
        if let Some(origin) = text(&header::ORIGIN).filter(|origin| !self.is_origin(origin)) {
            return refused(StatusCode::FORBIDDEN, "door-origin", origin);
        }
        // following a link to the app from elsewhere is fine; asking the interface from elsewhere is not
        let site = text(&FETCH_SITE).unwrap_or("none");
        let is_api = path.starts_with("/api/") || method != Method::GET;
        if is_api && !matches!(site, "none" | "same-origin") {
            return refused(StatusCode::FORBIDDEN, "door-origin", site);
        }
        None
    }
}

/// Lets a request in, or doesn't; what comes out goes with the headers that keep a page to itself.
pub(crate) async fn guard(State(door): State<Arc<Door>>, request: Request, next: Next) -> Response {
    let (method, path) = (request.method(), request.uri().path());
    let mut response = match door.refusal(method, path, request.headers()) {
        Some(fault) => fault.into_response(),
        None if is_under_another_name(&door, &request) => {
            Redirect::permanent(&format!("{}{}{path}", door.scheme, door.hosts[0])).into_response()
        }
        None => next.run(request).await,
    };
    for (name, value) in ALWAYS {
        response.headers_mut().insert(name, value.parse().expect("the values below are plain ASCII"));
    }
    response
}

/// The app's first page asked for under another of our names: what the browser holds would be split in two.
fn is_under_another_name(door: &Door, request: &Request) -> bool {
    let host = request.headers().get(header::HOST).and_then(|host| host.to_str().ok()).unwrap_or_default();
    request.method() == Method::GET
        && request.uri().path() == "/"
        && !host.eq_ignore_ascii_case(&door.hosts[0])
}

/// A page runs its own scripts and styles, talks to this server, and is shown in nobody else's frame.
const ALWAYS: [(&str, &str); 6] = [
    (
        "content-security-policy",
        "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' blob: data:; \
         font-src 'self'; connect-src 'self'; manifest-src 'self'; worker-src 'self'; base-uri 'none'; \
         form-action 'self'; frame-ancestors 'none'",
    ),
    ("x-content-type-options", "nosniff"),
    ("referrer-policy", "no-referrer"),
    ("cross-origin-opener-policy", "same-origin"),
    ("cross-origin-resource-policy", "same-origin"),
    ("permissions-policy", "geolocation=(self), camera=(self), microphone=()"),
];
