//! Sharing with the notebook that this page came from: asks and answers until both hold the same.

pub(crate) mod photos;

use super::Device;
use super::disk::Fault;
use tautline_store::{Cursor, Keep as _, KeepError};
use tautline_survey::sync::{Answer, Badge, MOST_LINES, MOVING_TO, State};
use wasm_bindgen::{JsCast as _, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Headers, RequestInit, Response};

/// Why sharing came to nothing. Nothing is lost by it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum NotShared {
    /// Nobody answers, or nobody who keeps a notebook.
    Nobody,
    /// The answer isn't understood.
    NotUnderstood,
    /// This device could not keep what came.
    NotKept(KeepError),
}

impl From<KeepError> for NotShared {
    fn from(error: KeepError) -> Self {
        Self::NotKept(error)
    }
}

/// The name under which the state of sharing with an address is kept.
fn name(origin: &str) -> String {
    format!("shared {origin}")
}

/// What this device remembers of the notebook at an address.
pub(crate) async fn state(device: &Device, origin: &str) -> Result<State, KeepError> {
    let kept = device.text(&name(origin)).await?;
    Ok(kept.and_then(|text| serde_json::from_str(&text).ok()).unwrap_or_default())
}

/// The badge of this device. A photo whose bytes are here alone waits as a revision does.
pub(crate) async fn badge(device: &Device, origin: &str, conflicts: usize) -> Badge {
    let state = state(device, origin).await.unwrap_or_default();
    let log = device.memory().log(Cursor(state.sent()), usize::MAX).unwrap_or_default();
    let photos = photos::waiting(device, origin).await.unwrap_or_default();
    Badge::of(&state, state.waiting(&log) + photos, conflicts)
}

/// What one exchange came to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Exchanged {
    /// Each has what the other has.
    pub(crate) done: bool,
    /// The address that the notebook moves to, where it does.
    pub(crate) moving_to: Option<String>,
}

/// One exchange.
pub(crate) async fn exchange(device: &mut Device, origin: &str) -> Result<Exchanged, NotShared> {
    let state = state(device, origin).await?;
    let log = device.memory().log(Cursor(state.sent()), MOST_LINES)?;
    let whole = log.len() < MOST_LINES;
    let asked = state.ask(device.id, &log, whole);
    let body = serde_json::to_string(&asked.ask).map_err(|_| NotShared::NotUnderstood)?;
    let (answer, moving_to) = post(origin, &body).await?;
    let taken = state.take(&asked, &answer).map_err(|_| NotShared::NotUnderstood)?;
    let kept = serde_json::to_string(&taken.state).map_err(|_| NotShared::NotUnderstood)?;
    device.append(&taken.revisions, &[], &[(&name(origin), &kept)]).await?;
    Ok(Exchanged { done: taken.done, moving_to })
}

async fn post(origin: &str, body: &str) -> Result<(Answer, Option<String>), NotShared> {
    let response =
        ask("POST", &format!("{origin}/api/sync"), Some(("application/json", body.into()))).await?;
    if !response.ok() {
        return Err(NotShared::Nobody);
    }
    let moving_to = response.headers().get(MOVING_TO).ok().flatten();
    Ok((read(&response).await?, moving_to))
}

/// Sends a request, and waits for the head of its answer.
async fn ask(method: &str, address: &str, body: Option<(&str, JsValue)>) -> Result<Response, NotShared> {
    let init = RequestInit::new();
    init.set_method(method);
    if let Some((kind, body)) = body {
        let headers = Headers::new().map_err(nobody)?;
        headers.set("content-type", kind).map_err(nobody)?;
        init.set_headers(&headers);
        init.set_body(&body);
    }
    let window = web_sys::window().ok_or(NotShared::Nobody)?;
    let sent = window.fetch_with_str_and_init(address, &init);
    Ok(JsFuture::from(sent).await.map_err(nobody)?.unchecked_into())
}

/// Reads an answer.
async fn read<T: serde::de::DeserializeOwned>(response: &Response) -> Result<T, NotShared> {
    let text = JsFuture::from(response.text().map_err(nobody)?).await.map_err(nobody)?;
    serde_json::from_str(&text.as_string().unwrap_or_default()).map_err(|_| NotShared::NotUnderstood)
}

fn nobody(_: JsValue) -> NotShared {
    NotShared::Nobody
}

impl From<Fault> for NotShared {
    fn from(fault: Fault) -> Self {
        Self::NotKept(fault.into())
    }
}
