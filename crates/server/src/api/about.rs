//! Whether the server is well, what it speaks, and what it answers to.

use super::Desk;
use crate::describe::description;
use crate::fault::{Fault, json};
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::Response;
use serde::Serialize;
use tautline_store::{Keep, SCHEMA_VERSION};
use tautline_survey::sync::{self, Place};

/// The version of the formats below.
const VERSION: u32 = 1;

/// What runs here, and which versions it speaks.
#[derive(Serialize, schemars::JsonSchema)]
pub(crate) struct Versions {
    /// `tautline.server`
    format: &'static str,
    /// The version of this format.
    version: u32,
    /// The program's own version.
    program: &'static str,
    /// The version of the messages.
    sync: u32,
    /// The version of the notebook's file.
    notebook: u32,
}

/// Whether the notebook can be read.
#[derive(Serialize, schemars::JsonSchema)]
pub(crate) struct Health {
    /// `tautline.health`
    format: &'static str,
    /// The version of this format.
    version: u32,
    /// Where the notebook's log ends; null where it is empty.
    end: Option<Place>,
}

/// Whether the notebook can be read.
#[utoipa::path(
    get,
    path = "/api/health",
    responses(
        (status = 200, description = "It can", body = ref("#/components/schemas/Health")),
        (status = 500, description = "It can't", body = ref("#/components/schemas/Refusal")),
    )
)]
pub(super) async fn health(State(desk): State<Desk>) -> Result<Response, Fault> {
    let end = desk.readers.read(Keep::end).await;
    let end = end.map_err(|error| Fault::kept(&error, &desk.readers.file()))?;
    Ok(json(StatusCode::OK, &Health { format: "tautline.health", version: VERSION, end }))
}

/// What runs here, and which versions it speaks.
#[utoipa::path(
    get,
    path = "/api/version",
    responses((status = 200, description = "The versions", body = ref("#/components/schemas/Versions")))
)]
pub(super) async fn version() -> Response {
    let own = Versions {
        format: "tautline.server",
        version: VERSION,
        program: env!("CARGO_PKG_VERSION"),
        sync: sync::VERSION,
        notebook: SCHEMA_VERSION,
    };
    json(StatusCode::OK, &own)
}

/// This description.
#[utoipa::path(
    get,
    path = "/api/openapi.json",
    responses((status = 200, description = "The interface by OpenAPI 3.1", content_type = "application/json"))
)]
pub(super) async fn openapi() -> Response {
    json(StatusCode::OK, &description())
}
