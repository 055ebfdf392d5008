//! Refusals, in the same shape as what the checks find.

use axum::body::Body;
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};
use serde::Serialize;
use tautline_store::KeepError;
use tautline_survey::finding::Finding;
use tautline_survey::message::Message;
use tautline_survey::output::{FindingOutput, findings};
use tautline_words::Words;

/// The version of the format of a refusal.
const VERSION: u32 = 1;

/// Why something was not done.
#[derive(Debug)]
pub(crate) struct Fault {
    status: StatusCode,
    message: Message,
}

/// A refusal as it is sent.
#[derive(Serialize, schemars::JsonSchema)]
pub(crate) struct Refusal {
    /// `tautline.refusal`
    format: &'static str,
    /// The version of the format.
    version: u32,
    /// What is wrong, as the checks say it.
    findings: Vec<FindingOutput>,
}

impl Fault {
    pub(crate) const fn new(status: StatusCode, message: Message) -> Self {
        Self { status, message }
    }

    /// What the notebook could not do.
    pub(crate) fn kept(error: &KeepError, file: &str) -> Self {
        let status = match error {
            KeepError::Full => StatusCode::INSUFFICIENT_STORAGE,
            KeepError::Busy => StatusCode::SERVICE_UNAVAILABLE,
            KeepError::OtherBytes => StatusCode::UNPROCESSABLE_ENTITY,
            KeepError::NotNamed => StatusCode::NOT_FOUND,
            KeepError::TooLong => StatusCode::PAYLOAD_TOO_LARGE,
            _ => StatusCode::INTERNAL_SERVER_ERROR,
        };
        Self::new(status, error.message(file))
    }
}

thread_local! {
    /// The catalogue can't be shared between threads.
    static WORDS: Words = Words::english();
}

/// What a message says, in words.
pub(crate) fn said(message: &Message) -> String {
    WORDS.with(|words| words.say(message))
}

impl IntoResponse for Fault {
    fn into_response(self) -> Response {
        let findings = findings(&[Finding::must_settle(self.message)], &said);
        json(self.status, &Refusal { format: "tautline.refusal", version: VERSION, findings })
    }
}

/// A value as JSON. Nothing that is sent refuses to be written.
pub(crate) fn json(status: StatusCode, value: &impl Serialize) -> Response {
    let text = serde_json::to_vec(value).unwrap_or_default();
    (status, [(header::CONTENT_TYPE, "application/json")], Body::from(text)).into_response()
}
