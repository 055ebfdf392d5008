//! The module and the JavaScript that a browser needs to run it.

use crate::Done;
use std::fs;
use std::path::Path;
use std::process::Command;
use wasm_bindgen_cli_support::Bindgen;

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

/// What became of a module.
pub(crate) struct Bound {
    /// The module.
    pub(crate) wasm: Vec<u8>,
    /// The JavaScript beside it.
    pub(crate) script: String,
}

/// Binds a module and optimises it.
pub(crate) fn bind(module: &Path, out: &Path, optimiser: &[String]) -> Done<Bound> {
    let scratch = out.with_extension("scratch");
    let _ = fs::remove_dir_all(&scratch);
    let mut bindgen = Bindgen::new();
    let bound = bindgen.input_path(module).out_name("app").typescript(false).remove_name_section(true);
    bound
        .remove_producers_section(true)
        .web(true)
        .and_then(|bindgen| bindgen.generate(&scratch))
        .map_err(|why| format!("{}: {why:#}", module.display()))?;
    let wasm = scratch.join("app_bg.wasm");
    if let [program, more @ ..] = optimiser {
        let given = ["--strip-debug", "--strip-producers", "-Oz", "-o"];
        let status =
            Command::new(program).args(more).arg(&wasm).args(FEATURES).args(given).arg(&wasm).status();
        if !status.map_err(|why| format!("{program}: {why}"))?.success() {
            return Err(format!("{program} could not optimise the module"));
        }
    }
    let read = |name: &str| fs::read(scratch.join(name)).map_err(|why| format!("{name}: {why}"));
    let script = String::from_utf8(read("app.js")?).map_err(|why| format!("app.js: {why}"))?;
    if scratch.join("snippets").exists() {
        return Err(
            "the module asks for files of JavaScript of its own, which nothing here carries along".to_owned()
        );
    }
    let bound = Bound { wasm: read("app_bg.wasm")?, script };
    fs::remove_dir_all(&scratch).map_err(|why| format!("{}: {why}", scratch.display()))?;
    Ok(bound)
}
