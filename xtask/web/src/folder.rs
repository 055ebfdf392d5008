//! The folder: each file that may stay in a browser for ever carries a hash of what is in it, and the few that may not
//! name those.

use crate::bind::{Bound, ROOMS};
use crate::{Done, icon};
use sha2::{Digest as _, Sha256};
use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::fs;
use std::path::Path;
use tautline_words::Words;

/// The stylesheets, in the order in which they count.
const STYLES: [&str; 11] = [
    "tokens.css",
    "ground.css",
    "parts.css",
    "pages.css",
    "read.css",
    "practice.css",
    "plan.css",
    "handbook.css",
    "follow.css",
    "desk.css",
    "print.css",
];

/// Each icon's name and side, and whether it reaches the edges.
const ICONS: [(&str, u32, bool); 3] =
    [("icon-192.png", 192, false), ("icon-512.png", 512, false), ("icon-full-512.png", 512, true)];

/// The texts of the screens that open first; the others go with the rooms.
const FIRST_WORDS: [&str; 4] = ["app", "read", "draft", "survey"];

/// What is in the folder, by when the worker fetches it.
pub(crate) struct Made {
    /// With the first load.
    pub(crate) first: Vec<String>,
    /// Once the app is open, or when a room is entered before.
    pub(crate) later: Vec<String>,
}

/// Makes the folder anew and says what is in it.
pub(crate) fn make(app: &Path, out: &Path, bound: &Bound) -> Done<Made> {
    let _ = fs::remove_dir_all(out);
    fs::create_dir_all(out).map_err(|why| format!("{}: {why}", out.display()))?;
    let mut made = Vec::new();
    let mut put = |name: String, bytes: &[u8]| -> Done<String> {
        fs::write(out.join(&name), bytes).map_err(|why| format!("{name}: {why}"))?;
        made.push(name.clone());
        Ok(name)
    };
    let read = |name: &str| {
        let path = app.join(name);
        fs::read_to_string(&path).map_err(|why| format!("{}: {why}", path.display()))
    };

    // the scripts name each other and the parts, so all of them carry one hash of the whole
    let hash = hash_of(bound);
    let stamped = |name: &str| match name.rsplit_once('.') {
        Some((stem, ending)) => format!("{stem}-{hash}.{ending}"),
        None => format!("{name}-{hash}"),
    };
    let mut plain: Vec<&str> = bound.parts.iter().map(|(name, _)| name.as_str()).collect();
    plain.extend(["app_bg.wasm", "app.js", ROOMS]);
    // only where a file is fetched: the module goes on knowing the script by its plain name
    let linked = |script: &str| {
        let places = ["from \"./", "new URL(\"./", "new URL('"];
        let pairs = plain.iter().flat_map(|name| {
            places.map(|place| (format!("{place}{name}"), format!("{place}{}", stamped(name))))
        });
        pairs.fold(script.to_owned(), |script, (from, to)| script.replace(&from, &to))
    };
    let wasm = put(stamped("app_bg.wasm"), &bound.wasm)?;
    let script = put(stamped("app.js"), linked(&bound.script).as_bytes())?;
    put(stamped(ROOMS), linked(&bound.rooms).as_bytes())?;
    let mut later = Vec::new();
    for (name, bytes) in &bound.parts {
        later.push(put(stamped(name), bytes)?);
    }
    let mut words = BTreeMap::new();
    for language in Words::LANGUAGES {
        let (first, rooms) = catalogue(language);
        let first = put(hashed(&format!("words-{language}"), "txt", first.as_bytes()), first.as_bytes())?;
        let rooms =
            put(hashed(&format!("words-{language}-rooms"), "txt", rooms.as_bytes()), rooms.as_bytes())?;
        later.push(rooms.clone());
        words.insert(language, [first, rooms]);
    }
    let english = words["en"][0].clone();
    let listed = serde_json::to_string(&words).map_err(|why| why.to_string())?;
    let start = read("web/start.js")?
        .replace("{app}", &script)
        .replace("{wasm}", &wasm)
        .replace("{/* words */}", &listed);
    let start = put(hashed("start", "js", start.as_bytes()), start.as_bytes())?;
    let mut style = String::new();
    for name in STYLES {
        style += &bare(&read(&format!("style/{name}"))?);
    }
    style += tautline_figures::STYLESHEET;
    let style = put(hashed("style", "css", style.as_bytes()), style.as_bytes())?;

    let demo = demo()?;
    later.push(put("demo.json".to_owned(), demo.as_bytes())?);
    later.push(put("handbook.json".to_owned(), handbook()?.as_bytes())?);
    put("icon.svg".to_owned(), read("web/icon.svg")?.as_bytes())?;
    for (name, size, full) in ICONS {
        put(name.to_owned(), &icon::png(size, full)?)?;
    }
    put("manifest.webmanifest".to_owned(), read("web/manifest.webmanifest")?.as_bytes())?;
    let page = read("web/index.html")?.replace("{start}", &start).replace("{style}", &style);
    let page = page.replace("{app}", &script).replace("{wasm}", &wasm).replace("{words}", &english);
    put("index.html".to_owned(), page.as_bytes())?;

    // the worker names everything else, and its version is a hash of all of it: another build, another worker
    let mut all = Sha256::new();
    let mut names: Vec<&str> = made.iter().map(String::as_str).collect();
    names.sort_unstable();
    for name in &names {
        all.update(name.as_bytes());
        all.update(fs::read(out.join(name)).map_err(|why| format!("{name}: {why}"))?);
    }
    let (later, first): (Vec<String>, Vec<String>) =
        made.iter().cloned().partition(|name| later.contains(name));
    let listed = |names: &[String]| serde_json::to_string(names).map_err(|why| why.to_string());
    let worker = read("web/worker.js")?
        .replace("{version}", &short(&all.finalize()))
        .replace("[/* first */]", &listed(&first)?)
        .replace("[/* later */]", &listed(&later)?);
    fs::write(out.join("worker.js"), &worker).map_err(|why| format!("worker.js: {why}"))?;
    made.push("worker.js".to_owned());
    Ok(Made { first: first.into_iter().chain(["worker.js".to_owned()]).collect(), later })
}

/// The demo as the app takes it in: a list of names and texts.
fn demo() -> Done<String> {
    let files = tautline_demo::draw(tautline_demo::SEED).files;
    let pairs: Vec<[String; 2]> = files.into_iter().map(|file| [file.name, file.text]).collect();
    serde_json::to_string(&pairs).map_err(|why| why.to_string())
}

/// The method handbook as the app fetches it: each page's words are those of its markup, and stand there alone.
fn handbook() -> Done<String> {
    let pages = tautline_handbook::pages().iter().cloned();
    let pages: Vec<_> = pages.map(|page| tautline_handbook::Page { text: String::new(), ..page }).collect();
    serde_json::to_string(&pages).map_err(|why| why.to_string())
}

/// The catalogue of a language without its comments: what the screens that open first say, and the rest.
fn catalogue(language: &str) -> (String, String) {
    let mut texts = (String::new(), String::new());
    for (name, text) in Words::files(language) {
        let to = if FIRST_WORDS.contains(name) { &mut texts.0 } else { &mut texts.1 };
        for line in text.lines().filter(|line| !line.starts_with('#') && !line.is_empty()) {
            to.push_str(line);
            to.push('\n');
        }
    }
    texts
}

/// A stylesheet without its comments and the spaces before its lines.
fn bare(style: &str) -> String {
    let mut kept = String::new();
    let mut rest = style;
    while let Some((before, after)) = rest.split_once("/*") {
        kept += before;
        rest = after.split_once("*/").map_or("", |(_, after)| after);
    }
    kept += rest;
    kept.lines()
        .map(str::trim)
        .filter(|line| !line.is_empty())
        .fold(String::new(), |text, line| text + line + "\n")
}

/// One hash of the module, its parts and its scripts.
fn hash_of(bound: &Bound) -> String {
    let mut all = Sha256::new();
    for bytes in [bound.wasm.as_slice(), bound.script.as_bytes(), bound.rooms.as_bytes()] {
        all.update(bytes);
    }
    for (name, bytes) in &bound.parts {
        all.update(name.as_bytes());
        all.update(bytes);
    }
    short(&all.finalize())
}

fn hashed(name: &str, ending: &str, bytes: &[u8]) -> String {
    let (stem, tail) =
        name.split_once('_').map_or((name, String::new()), |(stem, tail)| (stem, format!("_{tail}")));
    format!("{stem}-{}{tail}.{ending}", short(&Sha256::digest(bytes)))
}

fn short(hash: &[u8]) -> String {
    hash.iter().take(8).fold(String::new(), |mut text, byte| {
        // writing to a String can't fail
        let _ = write!(text, "{byte:02x}");
        text
    })
}

#[cfg(test)]
mod tests {
    use super::{bare, hashed};

    #[test]
    fn a_name_carries_what_is_in_the_file() {
        // SHA-256 of nothing begins with e3b0c442 98fc1c14 (FIPS 180-4 test values)
        assert_eq!(hashed("app_bg", "wasm", b""), "app-e3b0c44298fc1c14_bg.wasm");
        assert_eq!(hashed("style", "css", b""), "style-e3b0c44298fc1c14.css");
    }

    #[test]
    fn a_stylesheet_loses_what_no_browser_reads() {
        assert_eq!(bare("/* why */\na {\n  color: red;\n}\n/* open"), "a {\ncolor: red;\n}\n");
    }
}
