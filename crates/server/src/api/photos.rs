//! The bytes of photos, each by itself, after the revisions that name them. An exchange that breaks off goes on at the next
//! photo; one that comes twice changes nothing.

use super::Desk;
use crate::fault::{Fault, json};
use axum::body::Bytes;
use axum::extract::rejection::BytesRejection;
use axum::extract::{Path, State};
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};
use serde::Serialize;
use tautline_store::{Keep, KeepError};
use tautline_survey::message::Message;
use tautline_survey::photo::is_sha256;

/// The version of the format below.
const VERSION: u32 = 1;

/// Photos that the notebook names and has no bytes of: a device that has them sends them.
#[derive(Serialize, schemars::JsonSchema)]
pub(crate) struct Lacking {
    /// `tautline.photos-lacking`
    format: &'static str,
    /// The version of this format.
    version: u32,
    /// SHA-256 of the bytes of each.
    sha256: Vec<String>,
}

/// Photos that the notebook names and has no bytes of.
#[utoipa::path(
    get,
    path = "/api/photos",
    responses(
        (status = 200, description = "What is lacking", body = ref("#/components/schemas/Lacking")),
        (status = 500, description = "The notebook can't be read", body = ref("#/components/schemas/Refusal")),
    )
)]
pub(super) async fn lacking(State(desk): State<Desk>) -> Result<Response, Fault> {
    let named = desk.readers.read(Keep::photos).await;
    let named = named.map_err(|error| Fault::kept(&error, &desk.readers.file()))?;
    let sha256 = named.into_iter().filter(|one| !one.is_here).map(|one| one.sha256).collect();
    Ok(json(StatusCode::OK, &Lacking { format: "tautline.photos-lacking", version: VERSION, sha256 }))
}

/// The bytes of a photo.
///
/// They are given out as bytes and nothing else: what they are stands in the photo's revision.
#[utoipa::path(
    get,
    path = "/api/photos/{sha256}",
    params(("sha256" = String, Path, description = "SHA-256 of the bytes, in lower-case hexadecimal")),
    responses(
        (status = 200, description = "The bytes", content_type = "application/octet-stream"),
        (status = 400, description = "It is no SHA-256", body = ref("#/components/schemas/Refusal")),
        (status = 404, description = "No such photo, or its bytes aren't here", body = ref("#/components/schemas/Refusal")),
    )
)]
pub(super) async fn photo(State(desk): State<Desk>, Path(sha256): Path<String>) -> Result<Response, Fault> {
    let sha256 = known(sha256)?;
    let file = desk.readers.file();
    let bytes = desk.readers.read(move |keep| keep.photo(&sha256)).await;
    let Some(bytes) = bytes.map_err(|error| Fault::kept(&error, &file))? else {
        return Err(Fault::new(StatusCode::NOT_FOUND, Message::new("photo-not-here").with("file", file)));
    };
    let headers = [
        (header::CONTENT_TYPE, "application/octet-stream"),
        (header::CONTENT_DISPOSITION, "attachment"),
        (header::CACHE_CONTROL, "no-store"),
        (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
    ];
    Ok((headers, bytes).into_response())
}

/// Takes in the bytes of a photo that some revision names.
///
/// When the answer comes, they are synced to the disk.
#[utoipa::path(
    put,
    path = "/api/photos/{sha256}",
    params(("sha256" = String, Path, description = "SHA-256 of the bytes, in lower-case hexadecimal")),
    request_body(content_type = "application/octet-stream"),
    responses(
        (status = 204, description = "They are kept"),
        (status = 400, description = "It is no SHA-256", body = ref("#/components/schemas/Refusal")),
        (status = 404, description = "No revision names such a photo", body = ref("#/components/schemas/Refusal")),
        (status = 413, description = "It is too long", body = ref("#/components/schemas/Refusal")),
        (status = 422, description = "The bytes are not those of the hash", body = ref("#/components/schemas/Refusal")),
        (status = 503, description = "Another program is writing; again in a moment", body = ref("#/components/schemas/Refusal")),
        (status = 507, description = "The disk is full", body = ref("#/components/schemas/Refusal")),
    )
)]
pub(super) async fn put_photo(
    State(desk): State<Desk>,
    Path(sha256): Path<String>,
    body: Result<Bytes, BytesRejection>,
) -> Result<Response, Fault> {
    let file = desk.readers.file();
    let sha256 = known(sha256)?;
    let bytes = body.map_err(|_| Fault::kept(&KeepError::TooLong, &file))?;
    desk.writer.keep_photo(sha256, bytes.into()).await.map_err(|error| Fault::kept(&error, &file))?;
    Ok(StatusCode::NO_CONTENT.into_response())
}

fn known(sha256: String) -> Result<String, Fault> {
    if is_sha256(&sha256) {
        return Ok(sha256);
    }
    Err(Fault::new(StatusCode::BAD_REQUEST, Message::new("photo-not-a-hash").with("found", sha256)))
}
