//! The demo: a small invented place with three visits, its goal, and what really grows there.
//!
//! Two stands are drawn from a seed, lines are laid across them and read as a crew would, so that the true cover
//! is known and can be set beside the estimate. What tells no story of its own stands ready in `demo/`.

mod ground;
mod reading;
mod sheets;
mod truth;

use ground::Ground;
use std::fs;
use std::io::{self, Write};
use std::path::{Path, PathBuf};

/// The seed of the demo that the handbook pages show.
pub(crate) const SEED: u64 = 2026;

const PLANTS: (&str, &str) = ("plants-invented-codes.csv", include_str!("demo/plants.csv"));
const PROTOCOL: (&str, &str) = ("live-canopy.toml", include_str!("demo/live-canopy.toml"));

/// What was written.
#[derive(Debug)]
pub(crate) struct Written {
    /// What really grows there, in a folder of its own.
    pub(crate) truth: PathBuf,
    /// What is in the folder, in words.
    pub(crate) readme: PathBuf,
    /// The site whose true cover is known.
    pub(crate) site: &'static str,
    /// Its true cover under the demo's protocol, year by year, as a share.
    pub(crate) known: Vec<(u16, f64)>,
}

/// Writes the demo into a folder, which is made where it is missing.
///
/// # Errors
/// where a folder can't be made or a file can't be written; a file that is there already is left as it is and
/// refused
pub(crate) fn write(folder: &Path, seed: u64) -> io::Result<Written> {
    let ground = Ground::draw(seed);
    for (name, text) in [
        ("lines.csv", sheets::lines(&ground)),
        ("strata.csv", sheets::strata()),
        (PLANTS.0, PLANTS.1.to_owned()),
        (PROTOCOL.0, PROTOCOL.1.to_owned()),
        ("goals.csv", include_str!("demo/goals.csv").to_owned()),
        ("older-sheet.csv", include_str!("demo/older-sheet.csv").to_owned()),
    ] {
        create(folder, name, &text)?;
    }
    for year in &ground::YEARS {
        let name = format!("readings-{}.csv", year.number);
        create(folder, &name, &sheets::readings(&ground, year, seed))?;
    }
    let mistakes = folder.join("mistakes");
    for (name, text) in [
        PLANTS,
        PROTOCOL,
        ("with-mistakes.csv", include_str!("demo/mistakes/with-mistakes.csv")),
        ("lines.csv", include_str!("demo/mistakes/lines.csv")),
        ("without-names.csv", include_str!("demo/mistakes/without-names.csv")),
        ("two-visits.csv", include_str!("demo/mistakes/two-visits.csv")),
        ("written-again.csv", include_str!("demo/mistakes/written-again.csv")),
        ("README.txt", include_str!("demo/mistakes/mistakes.txt")),
    ] {
        create(&mistakes, name, text)?;
    }
    Ok(Written {
        truth: create(&folder.join("truth"), "truth.csv", &truth::sheet(&ground))?,
        readme: create(folder, "README.txt", include_str!("demo/readme.txt"))?,
        site: ground::SITE,
        known: truth::of_the_site(&ground),
    })
}

/// Writes a new file and makes its folder; never over one that is there.
fn create(folder: &Path, name: &str, text: &str) -> io::Result<PathBuf> {
    fs::create_dir_all(folder)?;
    let path = folder.join(name);
    let named = |error: io::Error| io::Error::new(error.kind(), format!("{}: {error}", path.display()));
    fs::File::create_new(&path).and_then(|mut file| file.write_all(text.as_bytes())).map_err(named)?;
    Ok(path)
}

#[cfg(test)]
mod tests;
