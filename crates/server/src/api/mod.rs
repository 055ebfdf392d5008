//! What is asked of the server and what it answers.

mod about;
mod lines;
mod photos;
mod sync;

use crate::fault::Fault;
use crate::readers::Readers;
use crate::writer::Writer;
use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::http::StatusCode;
use tautline_survey::message::Message;
use tautline_survey::photo::LONGEST as LONGEST_PHOTO;
use tautline_survey::sync::LONGEST;
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

pub(crate) use about::{Health, Versions};
pub(crate) use photos::Lacking;

/// At most so many bytes are read of one request: the longest revision, and what else a message holds.
pub(crate) const LONGEST_BODY: usize = LONGEST + (4 << 20);

/// What every request works on.
#[derive(Clone, Debug)]
pub(crate) struct Desk {
    pub(crate) readers: Readers,
    pub(crate) writer: Writer,
}

/// The interface with its description.
pub(crate) fn routes() -> OpenApiRouter<Desk> {
    // a photo is let in up to its own length, whatever the others are
    let photos = OpenApiRouter::new()
        .routes(routes!(photos::photo, photos::put_photo))
        .layer(DefaultBodyLimit::max(LONGEST_PHOTO));
    OpenApiRouter::new()
        .merge(photos)
        .routes(routes!(photos::lacking))
        .routes(routes!(sync::sync))
        .routes(routes!(lines::revisions))
        .routes(routes!(about::health))
        .routes(routes!(about::version))
        .routes(routes!(about::openapi))
}

/// The interface, ready to be asked.
pub(crate) fn router(desk: Desk) -> Router {
    let (router, _) = routes().split_for_parts();
    let unknown = || async { Fault::new(StatusCode::NOT_FOUND, Message::new("api-unknown")) };
    let method = || async { Fault::new(StatusCode::METHOD_NOT_ALLOWED, Message::new("api-method")) };
    router
        .route("/api/{*path}", axum::routing::any(unknown))
        .method_not_allowed_fallback(method)
        .layer(DefaultBodyLimit::max(LONGEST_BODY))
        .with_state(desk)
}
