//! The pages before the door: how to trust this computer, and where to give the code. And the door itself.

use super::authority::fingerprint;
use super::pairing::{NotLetIn, Pairing};
use super::tls::Peer;
use super::{Invitation, Tell};
use crate::fault::{Fault, said};
use crate::readers::Readers;
use axum::extract::rejection::{FormRejection, QueryRejection};
use axum::extract::{ConnectInfo, DefaultBodyLimit, Form, Query, Request, State};
use axum::http::{HeaderMap, StatusCode, header};
use axum::middleware::Next;
use axum::response::{Html, IntoResponse as _, Redirect, Response};
use axum::routing::get;
use axum::{Router, body::Bytes};
use rustls::pki_types::CertificateDer;
use serde::Deserialize;
use std::path::PathBuf;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::Instant;
use tautline_store::{KeepError, Sqlite};
use tautline_survey::canonical::sha256_hex;
use tautline_survey::message::Message;

/// The cookie that a paired device shows; the prefix binds it to this very origin (RFC 6265bis, section 4.1.3).
const COOKIE: &str = "__Host-tautline";

/// Four hundred days, the longest that browsers keep one.
const COOKIE_SECONDS: u32 = 34_560_000;

/// A code and a name take no more.
const LONGEST_FORM: usize = 4096;

/// How long a device's name may be.
const LONGEST_NAME: usize = 60;

/// What stands before the door.
pub(crate) struct Gate {
    pub(crate) origin: String,
    pub(crate) authority: Option<CertificateDer<'static>>,
    pub(crate) readers: Readers,
    pub(crate) notebook: PathBuf,
    pairing: Mutex<Pairing>,
    tell: Tell,
}

impl Gate {
    pub(crate) fn new(
        origin: String,
        authority: Option<CertificateDer<'static>>,
        readers: Readers,
        notebook: PathBuf,
        tell: Tell,
    ) -> Self {
        let pairing = Mutex::new(Pairing::new(Instant::now(), random()));
        Self { origin, authority, readers, notebook, pairing, tell }
    }

    /// What lets the next device in.
    pub(crate) fn invitation(&self) -> Invitation {
        self.invite(self.pairing().code())
    }

    fn invite(&self, code: &str) -> Invitation {
        Invitation { link: format!("{}/pair?code={code}", self.origin), code: code.to_owned() }
    }

    fn pairing(&self) -> MutexGuard<'_, Pairing> {
        // whoever broke off in there left a code behind that is as good as before
        self.pairing.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl core::fmt::Debug for Gate {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.debug_struct("Gate").field("origin", &self.origin).finish_non_exhaustive()
    }
}

fn random<const BYTES: usize>() -> [u8; BYTES] {
    let mut bytes = [0; BYTES];
    getrandom::fill(&mut bytes).expect("every system that runs this has randomness");
    bytes
}

/// The pages, and the door before everything else.
pub(crate) fn behind_the_gate(gate: &Arc<Gate>, inside: Router) -> Router {
    let before = Router::new()
        .route("/pair", get(ask_for_code).post(take_code))
        .route("/trust", get(trust))
        .route("/trust/authority.crt", get(authority))
        .route("/trust/plain.css", get(style))
        .layer(DefaultBodyLimit::max(LONGEST_FORM))
        .with_state(Arc::clone(gate));
    inside.layer(axum::middleware::from_fn_with_state(Arc::clone(gate), let_in)).merge(before)
}

/// The page of the desk itself, for a camera to look at; given out on this computer alone.
pub(crate) fn at_the_desk(gate: &Arc<Gate>, inside: Router) -> Router {
    let own = Router::new()
        .route("/share", get(share))
        .route("/trust/plain.css", get(style))
        .with_state(Arc::clone(gate));
    inside.merge(own)
}

async fn style() -> Response {
    ([(header::CONTENT_TYPE, "text/css")], STYLE).into_response()
}

/// The invitation as a picture, as a link and as a code; another one each time that it was used.
async fn share(State(gate): State<Arc<Gate>>) -> Html<String> {
    let invitation = gate.invitation();
    let word = |code| escaped(&said(&Message::new(code)));
    let link = escaped(&invitation.link);
    let picture = super::drawing(&invitation.link).unwrap_or_default();
    let fingerprint = gate.authority.as_ref().map_or_else(String::new, |certificate| {
        format!("<p><strong>{}</strong></p>{}", word("trust-fingerprint"), spaced(&fingerprint(certificate)))
    });
    let body = format!(
        "<h1>{title}</h1><p>{how}</p>{picture}<p><strong>{label}</strong></p><code class=\"code\">{code}</code>\
         <p>{link}</p>{fingerprint}",
        title = word("share-title"),
        how = word("share-how"),
        label = word("pair-code"),
        code = escaped(&invitation.code),
    );
    page(&word("share-title"), &body)
}

/// A fingerprint that breaks between its pairs.
fn spaced(fingerprint: &str) -> String {
    format!("<code>{}</code>", fingerprint.replace(':', ":<wbr>"))
}

/// Lets a paired device in; shows any other where to give its code.
async fn let_in(State(gate): State<Arc<Gate>>, request: Request, next: Next) -> Response {
    let paired = match token(request.headers()) {
        Some(token) => {
            let sum = sha256_hex(token.as_bytes());
            gate.readers.read(move |keep| keep.is_paired(&sum)).await
        }
        None => Ok(false),
    };
    match paired {
        Ok(true) => next.run(request).await,
        Ok(false)
            if request.method() == axum::http::Method::GET && !request.uri().path().starts_with("/api/") =>
        {
            Redirect::to("/pair").into_response()
        }
        Ok(false) => {
            let message = Message::new("share-not-paired").with("origin", gate.origin.as_str());
            Fault::new(StatusCode::UNAUTHORIZED, message).into_response()
        }
        Err(error) => Fault::kept(&error, &gate.readers.file()).into_response(),
    }
}

fn token(headers: &HeaderMap) -> Option<&str> {
    let cookies = headers.get_all(header::COOKIE).iter().filter_map(|value| value.to_str().ok());
    cookies.flat_map(|cookies| cookies.split(';')).find_map(|cookie| {
        let (name, value) = cookie.trim().split_once('=')?;
        (name == COOKIE).then_some(value)
    })
}

#[derive(Deserialize)]
struct Link {
    #[serde(default)]
    code: String,
}

async fn ask_for_code(
    State(gate): State<Arc<Gate>>,
    link: Result<Query<Link>, QueryRejection>,
) -> Html<String> {
    let code = link.map_or_else(|_| String::new(), |Query(link)| link.code);
    form(&gate, &code, None)
}

#[derive(Deserialize)]
struct Given {
    code: String,
    #[serde(default)]
    name: String,
}

async fn take_code(
    State(gate): State<Arc<Gate>>,
    ConnectInfo(Peer(from)): ConnectInfo<Peer>,
    given: Result<Form<Given>, FormRejection>,
) -> Result<Response, Fault> {
    let not_one = || Fault::new(StatusCode::BAD_REQUEST, Message::new("share-no-code"));
    let Form(given) = given.map_err(|_| not_one())?;
    let (right, shown) = {
        let mut pairing = gate.pairing();
        let before = pairing.code().to_owned();
        let right = pairing.give(&given.code, from.ip(), Instant::now(), random());
        (right, (pairing.code() != before).then(|| pairing.code().to_owned()))
    };
    if let Some(code) = shown {
        (gate.tell)(&gate.invite(&code));
    }
    match right {
        Ok(()) => {}
        Err(NotLetIn::Wrong) => {
            return Ok((StatusCode::FORBIDDEN, form(&gate, "", Some("share-wrong-code"))).into_response());
        }
        Err(NotLetIn::TooMany) => {
            let page = form(&gate, "", Some("share-too-many-codes"));
            return Ok((StatusCode::TOO_MANY_REQUESTS, page).into_response());
        }
    }
    let token: String = hex(&random::<32>());
    let (id, sum) = (hex(&random::<8>()), sha256_hex(token.as_bytes()));
    let name: String = given.name.trim().chars().filter(|c| !c.is_control()).take(LONGEST_NAME).collect();
    let path = gate.notebook.clone();
    let paired = tokio::task::spawn_blocking(move || Sqlite::beside(&path)?.pair(&id, &name, &sum)).await;
    let paired = paired.unwrap_or_else(|broken| Err(KeepError::System(broken.to_string())));
    paired.map_err(|error| Fault::kept(&error, &gate.readers.file()))?;
    // lax, so that a link that leads here finds the device paired; what changes anything asks for its origin besides
    let cookie =
        format!("{COOKIE}={token}; Path=/; Max-Age={COOKIE_SECONDS}; Secure; HttpOnly; SameSite=Lax");
    Ok(([(header::SET_COOKIE, cookie)], Redirect::to("/")).into_response())
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect::<Vec<_>>().concat()
}

async fn authority(State(gate): State<Arc<Gate>>) -> Response {
    match &gate.authority {
        Some(certificate) => {
            let kind = [(header::CONTENT_TYPE, "application/x-x509-ca-cert")];
            (kind, Bytes::copy_from_slice(certificate)).into_response()
        }
        None => Fault::new(StatusCode::NOT_FOUND, Message::new("share-no-authority")).into_response(),
    }
}

async fn trust(State(gate): State<Arc<Gate>>) -> Html<String> {
    let word = |code| escaped(&said(&Message::new(code)));
    let how = match &gate.authority {
        Some(certificate) => {
            let steps = [
                "trust-compare",
                "trust-fetch",
                "trust-android",
                "trust-apple",
                "trust-desktop",
                "trust-pair",
            ];
            let steps: Vec<String> = steps.iter().map(|code| format!("<li>{}</li>", word(code))).collect();
            format!(
                "<p><strong>{}</strong></p>{}<p><a class=\"button\" href=\"/trust/authority.crt\">{}</a></p>\
                 <ol>{}</ol><p>{}</p>",
                word("trust-fingerprint"),
                spaced(&fingerprint(certificate)),
                word("trust-take"),
                steps.concat(),
                word("trust-limits"),
            )
        }
        None => format!("<p>{}</p>", word("share-no-authority")),
    };
    let body = format!(
        "<h1>{}</h1><p>{}</p>{how}<p><a class=\"button\" href=\"/pair\">{}</a></p>",
        word("trust-title"),
        word("trust-why"),
        word("pair-title"),
    );
    page(&word("trust-title"), &body)
}

/// Where the code is given; a code that came with the link stands there already.
fn form(gate: &Gate, code: &str, wrong: Option<&'static str>) -> Html<String> {
    let word = |code| escaped(&said(&Message::new(code)));
    let code: String = code.chars().filter(char::is_ascii_alphanumeric).take(12).collect();
    let wrong = wrong
        .map_or_else(String::new, |code| format!("<p role=\"alert\" class=\"wrong\">{}</p>", word(code)));
    let trust = gate
        .authority
        .as_ref()
        .map_or_else(String::new, |_| format!("<p><a href=\"/trust\">{}</a></p>", word("trust-title")));
    let body = format!(
        "<h1>{title}</h1>{wrong}<p>{how}</p><form method=\"post\" action=\"/pair\">\
         <label for=\"code\">{code_label}</label><input id=\"code\" name=\"code\" value=\"{code}\" required \
         autocomplete=\"off\" autocapitalize=\"characters\" spellcheck=\"false\">\
         <label for=\"name\">{name_label}</label><input id=\"name\" name=\"name\" maxlength=\"{LONGEST_NAME}\" \
         autocomplete=\"off\"><button>{title}</button></form>{trust}",
        title = word("pair-title"),
        how = word("pair-how"),
        code_label = word("pair-code"),
        name_label = word("pair-name"),
    );
    page(&word("pair-title"), &body)
}

fn page(title: &str, body: &str) -> Html<String> {
    Html(format!(
        "<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\">\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"><title>tautline: {title}</title>\
         <link rel=\"stylesheet\" href=\"/trust/plain.css\"></head><body><main>{body}</main></body></html>"
    ))
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

/// Plain, legible in the sun, in light and dark, for thumbs.
const STYLE: &str = "\
:root { color-scheme: light dark; --ground: #fbf8f1; --ink: #221d14; --deed: #2f4a1f; --on-deed: #ffffff; --wrong: #8c1d10; }
@media (prefers-color-scheme: dark) {
  :root { --ground: #1a1813; --ink: #f1ead9; --deed: #c9dfb3; --on-deed: #14200b; --wrong: #ffb4a6; }
}
* { box-sizing: border-box; }
body { margin: 0; background: var(--ground); color: var(--ink); font: 1.125rem/1.5 system-ui, sans-serif; }
main { max-width: 36rem; margin: 0 auto; padding: 1.5rem 1rem 3rem; }
h1 { font-size: 1.5rem; line-height: 1.2; padding-bottom: .5rem; border-bottom: 3px solid currentcolor; }
label { display: block; margin-top: 1rem; font-weight: 600; }
input { width: 100%; min-height: 3rem; padding: .5rem .75rem; font: inherit; color: inherit; background: transparent;
  border: 2px solid currentcolor; border-radius: .25rem; }
#code { font-family: ui-monospace, monospace; font-size: 1.5rem; letter-spacing: .15em; }
button, .button { display: block; width: 100%; min-height: 3.5rem; margin-top: 1.5rem; padding: .75rem 1rem; border: 0;
  border-radius: .25rem; background: var(--deed); color: var(--on-deed); font: inherit; font-weight: 600;
  text-align: center; text-decoration: none; cursor: pointer; }
a { color: inherit; display: inline-block; min-height: 3rem; padding: .6rem 0; }
:focus-visible { outline: 4px solid var(--ink); outline-offset: 3px; }
code { display: block; padding: .5rem 0; font-size: 1rem; }
.code { font-size: 2rem; letter-spacing: .15em; }
svg { display: block; width: min(100%, 20rem); height: auto; }
p { overflow-wrap: anywhere; }
li { margin: .5rem 0; }
.wrong { color: var(--wrong); font-weight: 600; }
";
