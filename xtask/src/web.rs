//! The app as a folder of files that any server can give out.

use std::path::{Path, PathBuf};

use crate::Outcome;
use crate::cargo::{cargo, output_of, root};

/// How the app is built.
enum Way {
    /// As it is given out.
    Whole,
    /// With the suite that every store passes, for trying a browser's disk.
    WithSuite,
    /// In a minute instead of many, for looking at: not optimised, not packed, not weighed.
    Quick,
}

/// Builds the app for the browser and makes the folder.
pub(crate) fn build() -> Outcome {
    folder_of(&Way::Whole)
}

/// The same with the suite that every store passes.
pub(crate) fn build_with_suite() -> Outcome {
    folder_of(&Way::WithSuite)
}

/// The same for looking at while one works on it.
pub(crate) fn build_quickly() -> Outcome {
    folder_of(&Way::Quick)
}

fn folder_of(way: &Way) -> Outcome {
    let (given, profile, name): (&[&str], _, _) = match way {
        Way::Whole => (&["--release"], "release", "web"),
        Way::WithSuite => (&["--release", "--features", "conformance"], "release", "web-conformance"),
        Way::Quick => (&["--profile", "quick"], "quick", "web-quick"),
    };
    let app = root().join("crates/app");
    let optimiser = root().join("tools/node-tools");
    let out = target().join(name);
    // what makes the folder is compiled meanwhile: the module's last crates keep few cores busy
    let (module, ready) = std::thread::scope(|both| {
        let ready = both.spawn(|| maker("build", profile, &[]));
        (module(given), ready.join().expect("asking cargo doesn't panic"))
    });
    ready?;
    let paths = [&module?, &app, &out, &optimiser].map(|path| path.display().to_string());
    let [module, app, out, optimiser] = &paths;
    let mut words = vec!["--", module, app, out];
    if !matches!(way, Way::Quick) {
        words.extend([optimiser.as_str(), "wasm-opt"]);
    }
    maker("run", profile, &words).map(|said| said.trim_end().to_owned())
}

/// The program that makes the folder out of the module: built or run, with whatever else cargo is to know.
fn maker(verb: &str, profile: &str, more: &[&str]) -> Outcome {
    let manifest = root().join("xtask/web/Cargo.toml").display().to_string();
    cargo(
        &[&[verb, "--quiet", "--locked", "--profile", profile, "--manifest-path", &manifest], more].concat(),
    )
}

/// Where everything else is built, too.
fn target() -> PathBuf {
    let named = std::env::var_os("CARGO_TARGET_DIR").map(PathBuf::from);
    named.map_or_else(|| root().join("target"), |named| root().join(named))
}

/// The module as the compiler leaves it.
fn module(given: &[&str]) -> Result<PathBuf, String> {
    let manifest = root().join("crates/app/Cargo.toml").display().to_string();
    let mut words = vec!["build", "--locked", "--manifest-path", &manifest, "--message-format", "json"];
    words.extend(given);
    let built = output_of(root().join("tools/wasm-cargo"), &words)?;
    let found = built.split('"').map(Path::new).find(|path| path.ends_with("tautline-app.wasm"));
    found.map(Path::to_owned).ok_or_else(|| "cargo built no tautline-app.wasm".to_owned())
}
