//! The oldest compiler: no dependency may ask for a newer one than the workspace promises.

use serde_json::Value;

use crate::Outcome;
use crate::cargo::{packages, text};

/// Fails with every package of the lock file whose `rust-version` is above ours.
pub(crate) fn check() -> Outcome {
    let packages = packages(&[])?;
    let promised = packages
        .iter()
        .find(|package| text(package, "name") == "xtask")
        .map(|package| text(package, "rust_version"))
        .and_then(version)
        .ok_or("the workspace promises no rust-version")?;
    let newer: Vec<String> = packages.iter().filter_map(|package| too_new(package, promised)).collect();
    if newer.is_empty() {
        return Ok(format!(
            "{} packages, none asks for more than Rust {}.{}",
            packages.len(),
            promised.0,
            promised.1
        ));
    }
    Err(newer.join("\n"))
}

fn too_new(package: &Value, promised: (u32, u32)) -> Option<String> {
    let asked = version(text(package, "rust_version"))?;
    (asked > promised).then(|| {
        format!(
            "{} {} asks for Rust {}.{}",
            text(package, "name"),
            text(package, "version"),
            asked.0,
            asked.1
        )
    })
}

/// The first two numbers of a version.
fn version(text: &str) -> Option<(u32, u32)> {
    let mut numbers = text.split('.').map(str::parse);
    Some((numbers.next()?.ok()?, numbers.next()?.ok()?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn versions_compare_as_numbers() {
        assert!(version("1.100") > version("1.89.0"));
        assert_eq!(version(""), None);
    }

    #[test]
    fn a_package_that_asks_for_more_is_named() {
        let package = serde_json::json!({"name": "eager", "version": "2.0.0", "rust_version": "1.90"});
        assert_eq!(too_new(&package, (1, 89)).unwrap(), "eager 2.0.0 asks for Rust 1.90");
        assert_eq!(too_new(&package, (1, 90)), None);
    }
}
