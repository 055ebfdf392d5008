//! One exchange with a device.

use super::{Desk, LONGEST_BODY};
use crate::fault::{Fault, json};
use axum::body::Bytes;
use axum::extract::State;
use axum::extract::rejection::BytesRejection;
use axum::http::{HeaderMap, StatusCode, header};
use axum::response::Response;
use tautline_store::desk::answer;
use tautline_survey::message::Message;
use tautline_survey::sync::{Ask, FORMAT, MOST_LINES, NotTaken, Sent, VERSION};

/// Takes in what a device brings, and gives it what it lacks.
///
/// When the answer comes, every line that it doesn't refuse is synced to the disk.
#[utoipa::path(
    post,
    path = "/api/sync",
    request_body(content = ref("#/components/schemas/Ask"), content_type = "application/json"),
    responses(
        (status = 200, description = "What became of the lines, and what is new", body = ref("#/components/schemas/Answer"),
            headers(("tautline-moving-to" = String, description = "The address that the notebook moves to, where it does"))),
        (status = 400, description = "It is no message of this format", body = ref("#/components/schemas/Refusal")),
        (status = 413, description = "It is too long", body = ref("#/components/schemas/Refusal")),
        (status = 415, description = "It is not JSON", body = ref("#/components/schemas/Refusal")),
        (status = 503, description = "Another program is writing; again in a moment", body = ref("#/components/schemas/Refusal")),
        (status = 507, description = "The disk is full", body = ref("#/components/schemas/Refusal")),
    )
)]
pub(super) async fn sync(
    State(desk): State<Desk>,
    headers: HeaderMap,
    body: Result<Bytes, BytesRejection>,
) -> Result<Response, Fault> {
    let kind = headers.get(header::CONTENT_TYPE).and_then(|kind| kind.to_str().ok()).unwrap_or_default();
    if kind.split(';').next().unwrap_or_default().trim() != "application/json" {
        let message = Message::new("api-not-json").with("found", kind);
        return Err(Fault::new(StatusCode::UNSUPPORTED_MEDIA_TYPE, message));
    }
    let body = body.map_err(|_| {
        let message = Message::new("api-too-long").with("most", LONGEST_BODY >> 20);
        Fault::new(StatusCode::PAYLOAD_TOO_LARGE, message)
    })?;
    // hashing a message takes a while, and the network waits for nobody
    let read = tokio::task::spawn_blocking(move || read(&body)).await;
    let (ask, sent) = read.unwrap_or_else(|_| Err(not_a_message("?")))?;
    let file = desk.readers.file();
    if !sent.revisions.is_empty() {
        desk.writer.keep(sent.revisions.clone()).await.map_err(|error| Fault::kept(&error, &file))?;
    }
    let answered = desk.readers.read(move |keep| answer(keep, &ask, sent, MOST_LINES)).await;
    Ok(json(StatusCode::OK, &answered.map_err(|error| Fault::kept(&error, &file))?))
}

fn read(body: &[u8]) -> Result<(Ask, Sent), Fault> {
    let ask: Ask = serde_json::from_slice(body).map_err(|error| not_a_message(&error.to_string()))?;
    ask.check().map_err(|why| match why {
        NotTaken::NotSync => not_a_message(&ask.format),
        NotTaken::Newer(version) => {
            let known = u64::from(VERSION);
            let message = Message::new("sync-newer").with("found", u64::from(version)).with("known", known);
            Fault::new(StatusCode::BAD_REQUEST, message)
        }
        NotTaken::TooMany(lines) => {
            let message = Message::new("sync-too-many").with("found", lines).with("most", MOST_LINES);
            Fault::new(StatusCode::BAD_REQUEST, message)
        }
    })?;
    let sent = ask.sent();
    Ok((ask, sent))
}

fn not_a_message(found: &str) -> Fault {
    let message = Message::new("sync-not-a-message").with("found", found).with("format", FORMAT);
    Fault::new(StatusCode::BAD_REQUEST, message)
}
