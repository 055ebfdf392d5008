//! The module, cut into what is loaded first and the rooms that are loaded when they are entered, and the JavaScript that a
//! browser needs to run them.

use crate::Done;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::{Mutex, PoisonError};
use std::thread;
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
    let first = bound.join("app_bg.wasm");
    optimise(cut.iter().chain([&first]).map(PathBuf::as_path).collect(), optimiser)?;
    let bytes = |path: &Path| fs::read(path).map_err(|why| format!("{}: {why}", path.display()));
    let parts = cut.iter().map(|part| {
        let name = part.file_name().unwrap_or_default().to_string_lossy().into_owned();
        Ok((name, bytes(part)?))
    });
    let done = Bound {
        wasm: bytes(&first)?,
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

/// Makes parts small where there is an optimiser: one after the other on every processor.
fn optimise(parts: Vec<&Path>, optimiser: &[String]) -> Done<()> {
    let left = Mutex::new(parts);
    let next = || left.lock().unwrap_or_else(PoisonError::into_inner).pop();
    let work = || {
        while let Some(part) = next() {
            optimise_one(part, optimiser)?;
        }
        Ok(())
    };
    thread::scope(|scope| {
        let hands = thread::available_parallelism().map_or(1, usize::from);
        let hands: Vec<_> = (0..hands).map(|_| scope.spawn(work)).collect();
        hands
            .into_iter()
            .try_for_each(|hand| hand.join().unwrap_or_else(|_| Err("the optimiser's hand fell".to_owned())))
    })
}

fn optimise_one(part: &Path, optimiser: &[String]) -> Done<()> {
    let [program, more @ ..] = optimiser else { return Ok(()) };
    let given = ["--strip-debug", "--strip-producers", "-Oz", "-o"];
    let status = Command::new(program).args(more).arg(part).args(FEATURES).args(given).arg(part).status();
    if status.map_err(|why| format!("{program}: {why}"))?.success() {
        Ok(())
    } else {
        Err(format!("{program} could not optimise {}", part.display()))
    }
}
