//! The demo: a small invented place with three visits, its goal, and what really grows there.
//!
//! Two stands are drawn from a seed, lines are laid across them and read as a crew would, so that the true cover
//! is known and can be set beside the estimate. What tells no story of its own stands ready beside this file.
//!
//! It is a room of its own because the command writes it to a folder and the app takes it in from its own files, and
//! both must get the same.
#![forbid(unsafe_code)]

mod ground;
mod reading;
mod sheets;
mod truth;

use ground::Ground;

/// The seed of the demo that the handbook pages show.
pub const SEED: u64 = 2026;

const PLANTS: (&str, &str) = ("plants-invented-codes.csv", include_str!("plants.csv"));
const PROTOCOL: (&str, &str) = ("live-canopy.toml", include_str!("live-canopy.toml"));

/// The demo as files, and what is known about it.
#[derive(Clone, Debug, PartialEq)]
pub struct Demo {
    /// What a notebook takes in, in the order of a folder.
    pub files: Vec<File>,
    /// What goes with it for people, in folders of its own: planted mistakes, what really grows there, and maps.
    pub beside: Vec<File>,
    /// What is in the folder, in words.
    pub readme: File,
    /// The site whose true cover is known.
    pub site: &'static str,
    /// Its true cover under the demo's protocol, year by year, as a share.
    pub known: Vec<(u16, f64)>,
}

/// One file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct File {
    /// Its name; with the folder that it lies in, if it lies in one.
    pub name: String,
    /// What is in it.
    pub text: String,
}

/// Where the true cover stands among the files beside the demo.
pub const TRUTH: &str = "truth/truth.csv";

/// Draws the demo; another seed, another stand.
///
/// # Example
/// ```
/// let demo = tautline_demo::draw(tautline_demo::SEED);
/// assert!(demo.files.iter().any(|file| file.name == "readings-2026.csv"));
/// assert!(demo.site.ends_with("(invented)"));
/// ```
pub fn draw(seed: u64) -> Demo {
    let ground = Ground::draw(seed);
    let mut files = vec![
        file("lines.csv", sheets::lines(&ground)),
        file("strata.csv", sheets::strata()),
        file(PLANTS.0, PLANTS.1),
        file(PROTOCOL.0, PROTOCOL.1),
        file("goals.csv", include_str!("goals.csv")),
        file("older-sheet.csv", include_str!("older-sheet.csv")),
    ];
    files.extend(
        ground::YEARS.iter().map(|year| {
            file(&format!("readings-{}.csv", year.number), sheets::readings(&ground, year, seed))
        }),
    );
    files.sort_by(|a, b| a.name.cmp(&b.name));
    let mut beside: Vec<File> = [
        PLANTS,
        PROTOCOL,
        ("with-mistakes.csv", include_str!("mistakes/with-mistakes.csv")),
        ("lines.csv", include_str!("mistakes/lines.csv")),
        ("without-names.csv", include_str!("mistakes/without-names.csv")),
        ("two-visits.csv", include_str!("mistakes/two-visits.csv")),
        ("written-again.csv", include_str!("mistakes/written-again.csv")),
        ("permission.csv", include_str!("mistakes/permission.csv")),
        ("README.txt", include_str!("mistakes/mistakes.txt")),
    ]
    .map(|(name, text)| file(&format!("mistakes/{name}"), text))
    .into();
    beside.push(file(TRUTH, truth::sheet(&ground)));
    beside.push(file("maps/boundary.geojson", include_str!("boundary.geojson")));
    beside.push(file("maps/roads.kml", include_str!("roads.kml")));
    Demo {
        files,
        beside,
        readme: file("README.txt", include_str!("readme.txt")),
        site: ground::SITE,
        known: truth::of_the_site(&ground),
    }
}

fn file(name: &str, text: impl Into<String>) -> File {
    File { name: name.to_owned(), text: text.into() }
}

#[cfg(test)]
mod tests;
