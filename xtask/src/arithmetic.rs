//! One arithmetic everywhere: nothing in the command may switch on the standard library's mathematics.
//!
//! Cargo joins the features that any crate of a build asks for. One that asks for `num-traits/std` (its
//! default) makes every user of `num-traits` take `exp` and `ln` from the standard library, whose last bit
//! differs between a computer and a browser.

use crate::Outcome;
use crate::cargo::cargo;

const SHIPPED: &[&str] = &["tautline-cli", "golden"];

/// Fails where `num-traits` is built with `std` in what we ship, on any platform.
pub(crate) fn check() -> Outcome {
    let mut found = Vec::new();
    for package in SHIPPED {
        let tree = cargo(&[
            "tree",
            "--locked",
            "--package",
            package,
            "--edges",
            "normal,build",
            "--target",
            "all",
            "--prefix",
            "none",
            "--format",
            "{p} [{f}]",
        ])?;
        let lines: Vec<&str> = tree.lines().filter(|line| line.starts_with("num-traits ")).collect();
        if let Some(line) = lines.iter().find(|line| asks_for_std(line)) {
            return Err(format!(
                "{package} is built with {line}.\nWho asks for it: cargo tree -p {package} -e normal,build,features -i num-traits"
            ));
        }
        if !lines.is_empty() {
            found.push(*package);
        }
    }
    if found.is_empty() {
        return Ok(format!("num-traits is no part of {}", SHIPPED.join(" or ")));
    }
    Ok(format!("num-traits is built without std in {}", found.join(" and ")))
}

fn asks_for_std(line: &str) -> bool {
    let features = line.split_once('[').map_or("", |(_, rest)| rest).split(']').next().unwrap_or_default();
    features.split(',').any(|feature| feature == "std")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn std_is_recognised_as_a_feature_and_not_as_part_of_a_name() {
        assert!(asks_for_std("num-traits v0.2.19 [default,std]"));
        assert!(!asks_for_std("num-traits v0.2.19 [libm,no_std]"));
        assert!(!asks_for_std("num-traits v0.2.19 []"));
    }
}
