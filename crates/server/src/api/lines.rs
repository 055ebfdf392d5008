//! The notebook as lines of JSON, sent while it is read.

use super::Desk;
use crate::fault::Fault;
use axum::body::{Body, Bytes};
use axum::extract::rejection::QueryRejection;
use axum::extract::{Query, State};
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse as _, Response};
use core::pin::Pin;
use core::task::{Context, Poll};
use http_body::Frame;
use serde::Deserialize;
use tautline_store::{Cursor, Keep as _, KeepError};
use tautline_survey::message::Message;
use tautline_survey::revision;
use tokio::sync::mpsc;

/// So many revisions are read at once.
const AT_ONCE: usize = 200;

#[derive(Deserialize)]
pub(super) struct From {
    #[serde(default)]
    after: u64,
}

/// Everything that the notebook holds, past revisions included, as lines of JSON.
#[utoipa::path(
    get,
    path = "/api/revisions",
    params(("after" = Option<u64>, Query, description = "Only what came in after this number of the log")),
    responses(
        (status = 200, description = "A first line that names the format, then a line for each revision", body = String, content_type = "application/jsonl"),
        (status = 400, description = "The number is none", body = ref("#/components/schemas/Refusal")),
    )
)]
pub(super) async fn revisions(
    State(desk): State<Desk>,
    from: Result<Query<From>, QueryRejection>,
) -> Result<Response, Fault> {
    // a log counts as its file does, in whole numbers of 63 bits
    let from = from.ok().filter(|Query(from)| i64::try_from(from.after).is_ok());
    let none = || Fault::new(StatusCode::BAD_REQUEST, Message::new("api-not-a-number").with("name", "after"));
    let Query(from) = from.ok_or_else(none)?;
    // few at a time: whoever reads slowly holds the next ones up, and what isn't read isn't kept in memory
    let (to, lines) = mpsc::channel(2);
    let reading = desk.readers.clone();
    tokio::task::spawn_blocking(move || {
        let mut text = format!("{}\n", revision::header());
        let mut cursor = Cursor(from.after);
        loop {
            if to.blocking_send(Ok(Bytes::from(text))).is_err() {
                return; // whoever asked is gone
            }
            match reading.read_here(|keep| keep.since(cursor, AT_ONCE)) {
                Ok((some, _)) if some.is_empty() => return,
                Ok((some, upto)) => {
                    cursor = upto;
                    text = some.iter().map(|one| revision::line(one) + "\n").collect();
                }
                Err(error) => {
                    // the answer breaks off, so that nobody takes half of it for the whole
                    let _ = to.blocking_send(Err(error));
                    return;
                }
            }
        }
    });
    let body = Body::new(Lines { lines });
    Ok(([(header::CONTENT_TYPE, "application/jsonl"), (header::CACHE_CONTROL, "no-store")], body)
        .into_response())
}

struct Lines {
    lines: mpsc::Receiver<Result<Bytes, KeepError>>,
}

#[derive(Debug)]
struct BrokenOff;

impl core::fmt::Display for BrokenOff {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str("broken-off")
    }
}

impl core::error::Error for BrokenOff {}

impl http_body::Body for Lines {
    type Data = Bytes;
    type Error = BrokenOff;

    fn poll_frame(
        mut self: Pin<&mut Self>,
        context: &mut Context<'_>,
    ) -> Poll<Option<Result<Frame<Bytes>, BrokenOff>>> {
        self.lines
            .poll_recv(context)
            .map(|next| next.map(|text| text.map(Frame::data).map_err(|_| BrokenOff)))
    }
}
