//! Sharing with the notebook that this page came from: asks and answers until both hold the same.

use super::Device;
use super::disk::Fault;
use tautline_store::{Cursor, Keep as _, KeepError};
use tautline_survey::sync::{Answer, Badge, MOST_LINES, State};
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

/// The badge of this device.
pub(crate) fn badge(device: &Device, state: &State, conflicts: usize) -> Badge {
    let log = device.memory().log(Cursor(state.sent()), usize::MAX).unwrap_or_default();
    Badge::of(state, state.waiting(&log), conflicts)
}

/// One exchange; true where each has what the other has.
pub(crate) async fn exchange(device: &mut Device, origin: &str) -> Result<bool, NotShared> {
    let state = state(device, origin).await?;
    let log = device.memory().log(Cursor(state.sent()), MOST_LINES)?;
    let whole = log.len() < MOST_LINES;
    let asked = state.ask(device.id, &log, whole);
    let body = serde_json::to_string(&asked.ask).map_err(|_| NotShared::NotUnderstood)?;
    let answer = post(origin, &body).await?;
    let taken = state.take(&asked, &answer).map_err(|_| NotShared::NotUnderstood)?;
    let kept = serde_json::to_string(&taken.state).map_err(|_| NotShared::NotUnderstood)?;
    device.append(&taken.revisions, &[(&name(origin), &kept)]).await?;
    Ok(taken.done)
}

async fn post(origin: &str, body: &str) -> Result<Answer, NotShared> {
    let nobody = |_: JsValue| NotShared::Nobody;
    let headers = Headers::new().map_err(nobody)?;
    headers.set("content-type", "application/json").map_err(nobody)?;
    let init = RequestInit::new();
    init.set_method("POST");
    init.set_headers(&headers);
    init.set_body(&body.into());
    let window = web_sys::window().ok_or(NotShared::Nobody)?;
    let sent = window.fetch_with_str_and_init(&format!("{origin}/api/sync"), &init);
    let response: Response = JsFuture::from(sent).await.map_err(nobody)?.unchecked_into();
    if !response.ok() {
        return Err(NotShared::Nobody);
    }
    let text = JsFuture::from(response.text().map_err(nobody)?).await.map_err(nobody)?;
    serde_json::from_str(&text.as_string().unwrap_or_default()).map_err(|_| NotShared::NotUnderstood)
}

impl From<Fault> for NotShared {
    fn from(fault: Fault) -> Self {
        Self::NotKept(fault.into())
    }
}
