//! From a module that the compiler built for the browser to the folder that a server gives out.
//!
//! | what | module |
//! | --- | --- |
//! | JavaScript beside the module | `bind` |
//! | stylesheets, page, worker, demo, each under a name that carries a hash of what is in it | `folder` |
//! | the icons | `icon` |
//! | packing, and how much the first load transfers | `pack` |
//!
//! `tautline-web-build MODULE APP OUT [WASM-OPT …]`: the module, the app's room, the folder to make, and the optimiser's
//! command. Without the optimiser the module stays as it is and nothing is packed or weighed, which a run for trying things out may do.

mod bind;
#[cfg(test)]
mod contrast;
mod folder;
mod icon;
mod pack;

use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// What went wrong, in words for whoever builds.
type Done<T> = Result<T, String>;

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let [module, app, out, optimiser @ ..] = words.as_slice() else {
        eprintln!("tautline-web-build MODULE APP OUT [WASM-OPT …]");
        return ExitCode::FAILURE;
    };
    match build(&PathBuf::from(module), &PathBuf::from(app), &PathBuf::from(out), optimiser) {
        Ok(said) => {
            println!("{said}");
            ExitCode::SUCCESS
        }
        Err(why) => {
            eprintln!("{why}");
            ExitCode::FAILURE
        }
    }
}

fn build(module: &Path, app: &Path, out: &Path, optimiser: &[String]) -> Done<String> {
    let bound = bind::bind(module, out, optimiser)?;
    let made = folder::make(app, out, &bound)?;
    if optimiser.is_empty() {
        return Ok(out.display().to_string());
    }
    pack::pack(out, &made)
}
