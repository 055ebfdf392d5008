//! Asking cargo, and running other programs from the workspace's root.

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use serde_json::Value;

/// The folder that holds the workspace's `Cargo.toml`: of the clone that cargo runs us in, which isn't always the
/// one that we were built in.
pub(crate) fn root() -> PathBuf {
    let ours = std::env::var_os("CARGO_MANIFEST_DIR").unwrap_or_else(|| env!("CARGO_MANIFEST_DIR").into());
    Path::new(&ours).parent().expect("xtask lies one folder below the root").to_owned()
}

/// The program's standard output. What it says on the other stream, progress and complaints, goes to our own.
pub(crate) fn output_of(program: impl AsRef<std::ffi::OsStr>, words: &[&str]) -> Result<String, String> {
    let program = program.as_ref();
    let said = Command::new(program)
        .args(words)
        .current_dir(root())
        .stderr(Stdio::inherit())
        .output()
        .map_err(|trouble| format!("{} does not start: {trouble}", program.display()))?;
    if !said.status.success() {
        return Err(format!("{} {} failed", program.display(), words.join(" ")));
    }
    String::from_utf8(said.stdout).map_err(|_| format!("{} printed what is not UTF-8", program.display()))
}

/// The output of the cargo that runs us.
pub(crate) fn cargo(words: &[&str]) -> Result<String, String> {
    output_of(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()), words)
}

/// The packages of the lock file, as cargo describes them.
pub(crate) fn packages(more: &[&str]) -> Result<Vec<Value>, String> {
    let words = [&["metadata", "--locked", "--format-version", "1"], more].concat();
    let described: Value = serde_json::from_str(&cargo(&words)?).map_err(|trouble| trouble.to_string())?;
    described["packages"].as_array().cloned().ok_or_else(|| "cargo metadata names no packages".to_owned())
}

/// A text member of a package's description; empty where there is none.
pub(crate) fn text<'a>(package: &'a Value, member: &str) -> &'a str {
    package[member].as_str().unwrap_or_default()
}
