//! What doesn't come in: other names, other origins, what is too long, what is no message, what climbs out of the folder.

use crate::common::{Served, code, json};
use tautline_survey::sync::MOST_LINES;

/// A name of some other place that is made to lead to this computer, as in DNS rebinding.
#[test]
fn another_name_for_this_computer_is_not_answered_to() {
    let served = Served::new(None);
    for host in
        ["elsewhere.example", "elsewhere.example:80", "127.0.0.1", "127.0.0.1:1", "127.0.0.1.example", ""]
    {
        for path in ["/api/health", "/", "/api/revisions"] {
            let answered = served.call(&format!("GET {path}"), &[&format!("Host: {host}")], b"");
            assert_eq!((answered.status, code(&answered)), (421, "door-host".to_owned()), "{host} {path}");
        }
    }
    let port = served.address.port();
    let two =
        served.call("GET /api/health", &[&format!("Host: 127.0.0.1:{port}"), "Host: elsewhere.example"], b"");
    assert!(matches!(two.status, 400 | 421), "{two:?}");
    assert_eq!(served.call("GET /api/health", &[&format!("Host: localhost:{port}")], b"").status, 200);
}

#[test]
fn a_page_of_another_place_has_no_say() {
    let served = Served::new(None);
    for origin in ["https://elsewhere.example", "null", "http://127.0.0.1:1", "https://127.0.0.1:7361"] {
        for first in ["GET /api/revisions", "POST /api/sync", "OPTIONS /api/sync"] {
            let answered =
                served.call(first, &[&format!("Origin: {origin}"), "Content-Type: application/json"], b"{}");
            assert_eq!(
                (answered.status, code(&answered)),
                (403, "door-origin".to_owned()),
                "{first} {origin}"
            );
            assert!(!answered.headers.contains("access-control-allow"), "{answered:?}");
        }
    }
    for site in ["cross-site", "same-site"] {
        let answered = served.call("GET /api/revisions", &[&format!("Sec-Fetch-Site: {site}")], b"");
        assert_eq!(answered.status, 403);
        // a link that leads to the app from elsewhere is followed
        assert_eq!(served.call("GET /", &[&format!("Sec-Fetch-Site: {site}")], b"").status, 200);
    }
    let own = format!("Origin: http://127.0.0.1:{}", served.address.port());
    assert_eq!(served.call("GET /api/health", &[&own, "Sec-Fetch-Site: same-origin"], b"").status, 200);
}

/// A form on another page can send plain text without asking first; only JSON is taken, which it can't.
#[test]
fn what_a_form_can_send_is_not_taken() {
    let served = Served::new(None);
    for kind in ["text/plain", "application/x-www-form-urlencoded", "multipart/form-data", ""] {
        let answered = served.call("POST /api/sync", &[&format!("Content-Type: {kind}")], b"{}");
        assert_eq!((answered.status, code(&answered)), (415, "api-not-json".to_owned()), "{kind}");
    }
}

#[test]
fn what_is_no_message_is_refused_in_words() {
    let served = Served::new(None);
    let whole = |format: &str, version: u32, lines: &str| {
        format!(
            "{{\"format\":\"{format}\",\"version\":{version},\"device\":\"00000000-0000-7000-8000-000000000001\",\
             \"read\":null,\"held\":null,\"lines\":[{lines}]}}"
        )
    };
    for body in ["", "[]", "{}", "\u{fffd}", &whole("other", 1, ""), &whole("tautline.sync", 0, "")] {
        let answered = served.post("/api/sync", body);
        assert_eq!((answered.status, code(&answered)), (400, "sync-not-a-message".to_owned()), "{body}");
        assert!(json(&answered)["findings"][0]["text"].as_str().unwrap().contains("no message"));
    }
    let newer = served.post("/api/sync", &whole("tautline.sync", 2, ""));
    assert_eq!((newer.status, code(&newer)), (400, "sync-newer".to_owned()));
    let many = vec!["{}"; MOST_LINES + 1].join(",");
    let many = served.post("/api/sync", &whole("tautline.sync", 1, &many));
    assert_eq!((many.status, code(&many)), (400, "sync-too-many".to_owned()));
    let long = served.post("/api/sync", &" ".repeat(13 << 20));
    assert_eq!((long.status, code(&long)), (413, "api-too-long".to_owned()));
    // lines that are none are named, and nothing is kept of them
    let answered = served.post("/api/sync", &whole("tautline.sync", 1, "1,{},null"));
    assert_eq!(answered.status, 200);
    assert_eq!(json(&answered)["refused"].as_array().unwrap().len(), 3);
    assert_eq!(json(&served.get("/api/health"))["end"], serde_json::Value::Null);
}

#[test]
fn addresses_and_methods_that_there_are_not() {
    let served = Served::new(None);
    assert_eq!(code(&served.get("/api/other")), "api-unknown");
    assert_eq!(served.get("/api/sync").status, 405);
    assert_eq!(code(&served.call("DELETE /api/revisions", &[], b"")), "api-method");
    for number in ["x", "-1", "1.5", "9223372036854775808"] {
        assert_eq!(code(&served.get(&format!("/api/revisions?after={number}"))), "api-not-a-number");
    }
    assert_eq!(served.get("/none").status, 404);
}

#[test]
fn files_are_those_of_the_folder_alone() {
    let folder = tempfile::tempdir().unwrap();
    let app = folder.path().join("app");
    std::fs::create_dir(&app).unwrap();
    std::fs::write(folder.path().join("secret"), "secret").unwrap();
    for (name, text) in [
        ("index.html", "<!doctype html>"),
        ("app-0123456789abcdef.js", "plain"),
        ("app-0123456789abcdef.js.br", "packed"),
        ("app.wasm", "wasm"),
        ("app.webmanifest", "{}"),
        ("style.css", "css"),
        ("icon.svg", "<svg/>"),
    ] {
        std::fs::write(app.join(name), text).unwrap();
    }
    let served = Served::new(Some(app));
    for path in [
        "/../secret",
        "/%2e%2e/secret",
        "/..%2fsecret",
        "/%2e%2e%2fsecret",
        "/..\\secret",
        "/..%5csecret",
        "//../secret",
        "/./../secret",
        "/app.wasm/../../secret",
        "/%00",
        "/%ff",
        "/etc/passwd",
        "/index.html%00.js",
    ] {
        let answered = served.get(path);
        assert!(matches!(answered.status, 400 | 404), "{path} {answered:?}");
        assert!(!answered.body.windows(6).any(|part| part == b"secret"), "{path}");
    }
    let of = |path: &str, headers: &[&str]| served.call(&format!("GET {path}"), headers, b"");
    let kinds = [
        ("/", "text/html"),
        ("/app-0123456789abcdef.js", "text/javascript"),
        ("/app.wasm", "application/wasm"),
        ("/app.webmanifest", "application/manifest+json"),
        ("/style.css", "text/css"),
        ("/icon.svg", "image/svg+xml"),
    ];
    for (path, kind) in kinds {
        let answered = of(path, &[]);
        assert_eq!(answered.status, 200, "{path}");
        for header in [
            format!("content-type: {kind}"),
            "content-security-policy: default-src 'none'".to_owned(),
            "x-content-type-options: nosniff".to_owned(),
            "cross-origin-opener-policy: same-origin".to_owned(),
            // a photo is taken over the last one, a stake is found by its place; nothing here listens
            "permissions-policy: geolocation=(self), camera=(self), microphone=()".to_owned(),
        ] {
            assert!(answered.headers.contains(&header), "{path} lacks {header}: {}", answered.headers);
        }
    }
    let packed = of("/app-0123456789abcdef.js", &["Accept-Encoding: gzip, br"]);
    assert_eq!(packed.body, b"packed");
    assert!(packed.headers.contains("content-encoding: br") && packed.headers.contains("immutable"));
    assert_eq!(of("/app-0123456789abcdef.js", &[]).body, b"plain");
    assert!(of("/", &[]).headers.contains("cache-control: no-cache"));
    // under its other name the app leads to its first, or what a browser holds would be split
    let other = of("/", &[&format!("Host: localhost:{}", served.address.port())]);
    assert_eq!(other.status, 308);
    assert!(other.headers.contains(&format!("location: http://127.0.0.1:{}/", served.address.port())));
}
