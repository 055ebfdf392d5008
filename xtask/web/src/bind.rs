//! The module, cut into what is loaded first and the rooms that are loaded when they are entered, and the JavaScript that a
//! browser needs to run them.

use crate::Done;
use std::fs;
use std::path::Path;
use std::process::Command;
use wasm_bindgen_cli_support::Bindgen;
use wasm_split_cli_support::{Options, transform};

/// What of WebAssembly the compiler uses and every browser of the last years knows; the optimiser may use no more.
const FEATURES: [&str; 7] = [
    "--enable-bulk-memory",
    "--enable-bulk-memory-opt",
    "--enable-multivalue",
    "--enable-mutable-globals",
    "--enable-nontrapping-float-to-int",
    "--enable-reference-types",
    "--enable-sign-ext",
];

/// The script that loads rooms, as the cutter and the scripts beside it name it.
pub(crate) const ROOMS: &str = "rooms.js";

/// What became of a module.
pub(crate) struct Bound {
    /// What is loaded first.
    pub(crate) wasm: Vec<u8>,
    /// The JavaScript beside it.
    pub(crate) script: String,
    /// The JavaScript that loads the rooms.
    pub(crate) rooms: String,
    /// The rooms and what some of them share, by the names that the script knows them by.
    pub(crate) parts: Vec<(String, Vec<u8>)>,
}

/// Cuts a module, binds what is loaded first, and optimises every part.
pub(crate) fn bind(module: &Path, out: &Path, optimiser: &[String]) -> Done<Bound> {
    let scratch = out.with_extension("scratch");
    let _ = fs::remove_dir_all(&scratch);
    let main = scratch.join("app.wasm");
    let cut = cut(module, &scratch, &main)?;
    let bound = scratch.join("bound");
    Bindgen::new()
        .input_path(&main)
        .out_name("app")
        .typescript(false)
        .keep_lld_exports(true) // the rooms share the table of functions
        .remove_name_section(true)
        .remove_producers_section(true)
        .web(true)
        .and_then(|bindgen| bindgen.generate(&bound))
        .map_err(|why| format!("{}: {why:#}", module.display()))?;
    if bound.join("snippets").exists() {
        return Err(
            "the module asks for files of JavaScript of its own, which nothing here carries along".to_owned()
        );
    }
    let text = |path: &Path| fs::read_to_string(path).map_err(|why| format!("{}: {why}", path.display()));
    let parts = cut.iter().map(|part| {
        let name = part.file_name().unwrap_or_default().to_string_lossy().into_owned();
        Ok((name, optimised(part, optimiser)?))
    });
    let done = Bound {
        wasm: optimised(&bound.join("app_bg.wasm"), optimiser)?,
        script: text(&bound.join("app.js"))?,
        rooms: text(&scratch.join(ROOMS))?,
        parts: parts.collect::<Done<_>>()?,
    };
    fs::remove_dir_all(&scratch).map_err(|why| format!("{}: {why}", scratch.display()))?;
    Ok(done)
}

/// Cuts the module where the app's rooms begin; the parts' paths.
fn cut(module: &Path, scratch: &Path, main: &Path) -> Done<Vec<std::path::PathBuf>> {
    let bytes = fs::read(module).map_err(|why| format!("{}: {why}", module.display()))?;
    let link = format!("./{ROOMS}");
    let mut options = Options::new(&bytes);
    options.output_dir = scratch;
    options.main_out_path = main;
    options.link_name = &link;
    options.main_module = "./app.js";
    let cut = transform(options).map_err(|why| format!("{}: {why:#}", module.display()))?;
    Ok(cut.split_modules)
}

/// A part's bytes, made small where there is an optimiser.
fn optimised(wasm: &Path, optimiser: &[String]) -> Done<Vec<u8>> {
    if let [program, more @ ..] = optimiser {
        let given = ["--strip-debug", "--strip-producers", "-Oz", "-o"];
        let status = Command::new(program).args(more).arg(wasm).args(FEATURES).args(given).arg(wasm).status();
        if !status.map_err(|why| format!("{program}: {why}"))?.success() {
            return Err(format!("{program} could not optimise {}", wasm.display()));
        }
    }
    fs::read(wasm).map_err(|why| format!("{}: {why}", wasm.display()))
}
