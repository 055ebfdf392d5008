//! The engine's golden table: natively, in WebAssembly, and as kept in `testdata`, byte for byte.

use std::fs;
use std::path::{Path, PathBuf};

use crate::Outcome;
use crate::cargo::{cargo, output_of, root};

/// The table as this computer works it out.
pub(crate) fn print() -> Outcome {
    native().map(|table| table.trim_end().to_owned())
}

/// Fails with the first row in which native, WebAssembly and kept figures differ.
pub(crate) fn check() -> Outcome {
    let native = native()?;
    let kept =
        fs::read_to_string(kept_at()).map_err(|trouble| format!("{}: {trouble}", kept_at().display()))?;
    let browser = in_browser()?;
    let rows = native.lines().count();
    if rows == 0 {
        return Err("the golden table is empty: nothing was compared".to_owned());
    }
    let wrong: Vec<String> = [
        difference("native", &native, "WebAssembly", &browser),
        difference("kept", &kept, "native", &native),
    ]
    .into_iter()
    .flatten()
    .collect();
    if wrong.is_empty() {
        return Ok(format!("{rows} rows: native, WebAssembly and kept are the same, bit for bit"));
    }
    Err(format!(
        "{}\nA printed figure that moves on purpose is a change of its own: cargo run -p xtask -- golden --bless",
        wrong.join("\n")
    ))
}

/// Keeps the native table, if WebAssembly agrees with it.
pub(crate) fn bless() -> Outcome {
    let native = native()?;
    if let Some(wrong) = difference("native", &native, "WebAssembly", &in_browser()?) {
        return Err(wrong);
    }
    fs::write(kept_at(), &native).map_err(|trouble| trouble.to_string())?;
    Ok(format!("{} rows kept", native.lines().count()))
}

/// Builds the table's module for the browser and says where it lies.
pub(crate) fn build_for_browser() -> Result<PathBuf, String> {
    let built = output_of(
        wasm_cargo(),
        &["build", "--locked", "--release", "--package", "golden", "--lib", "--message-format", "json"],
    )?;
    built
        .split('"')
        .map(Path::new)
        .find(|path| path.file_name().is_some_and(|name| name == "golden.wasm"))
        .map(Path::to_owned)
        .ok_or_else(|| "cargo built no golden.wasm".to_owned())
}

fn native() -> Result<String, String> {
    cargo(&["run", "--quiet", "--locked", "--release", "--package", "golden"])
}

fn in_browser() -> Result<String, String> {
    let module = build_for_browser()?;
    let module = module.to_str().ok_or("the module's path is not UTF-8")?;
    output_of("node", &["tools/golden.mjs", module])
}

fn wasm_cargo() -> PathBuf {
    root().join("tools/wasm-cargo")
}

fn kept_at() -> PathBuf {
    root().join("testdata/golden/engine.txt")
}

/// The first row in which two tables differ, and how many do.
fn difference(one: &str, left: &str, other: &str, right: &str) -> Option<String> {
    if left == right {
        return None;
    }
    let rows = left.lines().count().max(right.lines().count());
    let row = |table: &'_ str, number: usize| table.lines().nth(number).unwrap_or("(no row)").to_owned();
    let differing: Vec<usize> = (0..rows).filter(|&number| row(left, number) != row(right, number)).collect();
    let Some(&first) = differing.first() else {
        return Some(format!("{one} and {other} differ in how their lines end"));
    };
    Some(format!(
        "{} of {rows} rows differ between {one} and {other}; the first is row {}:\n  {one}: {}\n  {other}: {}",
        differing.len(),
        first + 1,
        row(left, first),
        row(right, first)
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_differing_row_is_shown() {
        assert_eq!(difference("a", "x 1\ny 2\n", "b", "x 1\ny 2\n"), None);
        let found = difference("a", "x 1\ny 2\n", "b", "x 1\ny 3\nz 4\n").unwrap();
        assert!(
            found.starts_with("2 of 3 rows differ between a and b; the first is row 2:\n  a: y 2\n  b: y 3")
        );
        assert!(difference("a", "x 1\n", "b", "x 1").is_some());
    }
}
