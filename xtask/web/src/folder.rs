//! The folder: each file that may stay in a browser for ever carries a hash of what is in it, and the few that may not
//! name those.

use crate::bind::Bound;
use crate::{Done, icon};
use sha2::{Digest as _, Sha256};
use std::fmt::Write as _;
use std::fs;
use std::path::Path;

/// The stylesheets, in the order in which they count.
const STYLES: [&str; 6] = ["tokens.css", "ground.css", "parts.css", "pages.css", "read.css", "print.css"];

/// Each icon's name and side, and whether it reaches the edges.
const ICONS: [(&str, u32, bool); 3] =
    [("icon-192.png", 192, false), ("icon-512.png", 512, false), ("icon-full-512.png", 512, true)];

/// Makes the folder anew and says what is in it.
pub(crate) fn make(app: &Path, out: &Path, bound: &Bound) -> Done<Vec<String>> {
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

    let wasm = put(hashed("app_bg", "wasm", &bound.wasm), &bound.wasm)?;
    let script = bound.script.replace("app_bg.wasm", &wasm);
    let script = put(hashed("app", "js", script.as_bytes()), script.as_bytes())?;
    let start = read("web/start.js")?.replace("{app}", &script).replace("{wasm}", &wasm);
    let start = put(hashed("start", "js", start.as_bytes()), start.as_bytes())?;
    let mut style = String::new();
    for name in STYLES {
        style += &plain(&read(&format!("style/{name}"))?);
    }
    style += tautline_figures::STYLESHEET;
    let style = put(hashed("style", "css", style.as_bytes()), style.as_bytes())?;

    let demo = demo()?;
    put("demo.json".to_owned(), demo.as_bytes())?;
    put("icon.svg".to_owned(), read("web/icon.svg")?.as_bytes())?;
    for (name, size, full) in ICONS {
        put(name.to_owned(), &icon::png(size, full)?)?;
    }
    put("manifest.webmanifest".to_owned(), read("web/manifest.webmanifest")?.as_bytes())?;
    let page = read("web/index.html")?.replace("{start}", &start).replace("{style}", &style);
    put("index.html".to_owned(), page.replace("{app}", &script).as_bytes())?;

    // the worker names everything else, and its version is a hash of all of it: another build, another worker
    let mut all = Sha256::new();
    let mut names: Vec<&str> = made.iter().map(String::as_str).collect();
    names.sort_unstable();
    for name in &names {
        all.update(name.as_bytes());
        all.update(fs::read(out.join(name)).map_err(|why| format!("{name}: {why}"))?);
    }
    let listed = serde_json::to_string(&names).map_err(|why| why.to_string())?;
    let worker = read("web/worker.js")?
        .replace("{version}", &short(&all.finalize()))
        .replace("[/* files */]", &listed);
    fs::write(out.join("worker.js"), &worker).map_err(|why| format!("worker.js: {why}"))?;
    made.push("worker.js".to_owned());
    Ok(made)
}

/// The demo as the app takes it in: a list of names and texts.
fn demo() -> Done<String> {
    let files = tautline_demo::draw(tautline_demo::SEED).files;
    let pairs: Vec<[String; 2]> = files.into_iter().map(|file| [file.name, file.text]).collect();
    serde_json::to_string(&pairs).map_err(|why| why.to_string())
}

/// A stylesheet without its comments and the spaces before its lines.
fn plain(style: &str) -> String {
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
    use super::{hashed, plain};

    #[test]
    fn a_name_carries_what_is_in_the_file() {
        // SHA-256 of nothing begins with e3b0c442 98fc1c14 (FIPS 180-4 test values)
        assert_eq!(hashed("app_bg", "wasm", b""), "app-e3b0c44298fc1c14_bg.wasm");
        assert_eq!(hashed("style", "css", b""), "style-e3b0c44298fc1c14.css");
    }

    #[test]
    fn a_stylesheet_loses_what_no_browser_reads() {
        assert_eq!(plain("/* why */\na {\n  color: red;\n}\n/* open"), "a {\ncolor: red;\n}\n");
    }
}
