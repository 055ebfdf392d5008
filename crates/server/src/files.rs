//! The built app as files, packed with brotli where a `.br` lies beside them.

use crate::fault::{Fault, said};
use axum::Router;
use axum::extract::Request;
use axum::http::{HeaderValue, StatusCode, header};
use axum::middleware::{Next, from_fn};
use axum::response::{Html, IntoResponse as _, Response};
use std::path::Path;
use tautline_survey::message::Message;
use tower_http::services::ServeDir;

/// The files of a folder; without one, a page that says how to get the app.
pub(crate) fn files(app: Option<&Path>) -> Router {
    let router = match app {
        Some(folder) => {
            let missing = axum::routing::any(|| async { not_there() });
            Router::new()
                .fallback_service(ServeDir::new(folder).precompressed_br().not_found_service(missing))
        }
        None => Router::new()
            .route("/", axum::routing::get(|| async { Html(without_app()) }))
            .fallback(|| async { not_there() }),
    };
    router.layer(from_fn(with_cache))
}

/// A file whose name carries a hash of what is in it stays for ever; any other is asked for anew each time.
async fn with_cache(request: Request, next: Next) -> Response {
    let hashed = is_hashed(request.uri().path());
    let mut response = next.run(request).await;
    let kept = if hashed && response.status().is_success() {
        "public, max-age=31536000, immutable"
    } else {
        "no-cache"
    };
    response.headers_mut().insert(header::CACHE_CONTROL, HeaderValue::from_static(kept));
    response
}

/// `app-0123456789abcdef.js`, `app-0123456789abcdef_bg.wasm`: eight or more hexadecimal digits after the last hyphen.
fn is_hashed(path: &str) -> bool {
    let name = path.rsplit('/').next().unwrap_or_default();
    let Some((_, end)) = name.rsplit_once('-') else { return false };
    let hash = end.split(['.', '_']).next().unwrap_or_default();
    hash.len() >= 8 && hash.bytes().all(|byte| byte.is_ascii_hexdigit())
}

fn not_there() -> Response {
    Fault::new(StatusCode::NOT_FOUND, Message::new("api-no-such-file")).into_response()
}

fn without_app() -> String {
    let text = said(&Message::new("serve-without-app"));
    format!(
        "<!doctype html><html lang=\"en\"><meta charset=\"utf-8\"><title>tautline</title><p>{text}</p></html>"
    )
}

#[cfg(test)]
mod tests {
    use super::is_hashed;

    #[test]
    fn a_hash_in_a_name_is_told_from_a_word() {
        assert!(is_hashed("/app-0123456789abcdef_bg.wasm"));
        assert!(is_hashed("/parts/style-0a1b2c3d.css"));
        for plain in ["/index.html", "/service-worker.js", "/app.js", "/app-v1.js", "/0a1b2c3d.css"] {
            assert!(!is_hashed(plain), "{plain}");
        }
    }
}
