//! Published numbers that cover is set against, as small readable files: the shipped ones, and a user's own.

use serde::Deserialize;
use tautline_engine::length::DecimalMark;
use tautline_survey::benchmark::{Benchmark, Scale};
use tautline_survey::goal::{self, Wanted};
use tautline_survey::message::Message;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    #[serde(default)]
    benchmark: Vec<Entry>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Entry {
    key: String,
    name: String,
    cover: String,
    #[serde(default)]
    published: String,
    plants: String,
    #[serde(default)]
    season: String,
    #[serde(default)]
    region: String,
    scale: String,
    #[serde(default)]
    rule: String,
    source: String,
    #[serde(default)]
    from_memory: bool,
}

/// The shipped ones.
pub fn published() -> Vec<Benchmark> {
    // a test holds that each of them is read
    read(include_str!("../benchmarks/published.toml")).unwrap_or_default()
}

/// Reads a file of benchmarks; every one names its plants, its scale and its source.
///
/// # Errors
/// what was found, and what would do
/// # Example
/// ```
/// let own = "[[benchmark]]\nkey = \"ours\"\nname = \"our pasture\"\ncover = \"at least 12 %\"\n\
///            plants = \"shrubs\"\nscale = \"stand\"\nsource = \"invented\"\n";
/// assert_eq!(tautline_exchange::benchmarks::read(own).unwrap()[0].key, "ours");
/// ```
pub fn read(text: &str) -> Result<Vec<Benchmark>, Message> {
    let file: File = toml::from_str(text)
        .map_err(|error| Message::new("benchmarks-not-read").with("why", error.message().to_owned()))?;
    file.benchmark.into_iter().map(one).collect()
}

fn one(entry: Entry) -> Result<Benchmark, Message> {
    let wrong = |code: &'static str, found: &str| {
        Message::new(code).with("key", entry.key.as_str()).with("found", found)
    };
    let Ok(Wanted::Cover(cover)) = goal::read(&entry.cover, DecimalMark::Point).map(|goal| goal.wanted)
    else {
        return Err(wrong("benchmark-cover", &entry.cover));
    };
    let scale = Scale::from_word(&entry.scale).ok_or_else(|| wrong("benchmark-scale", &entry.scale))?;
    for (name, text) in [("plants", &entry.plants), ("source", &entry.source)] {
        if text.trim().is_empty() {
            return Err(wrong("benchmark-part", name));
        }
    }
    Ok(Benchmark {
        cover,
        scale,
        key: entry.key,
        name: entry.name,
        published: entry.published,
        plants: entry.plants,
        season: entry.season,
        region: entry.region,
        rule: entry.rule,
        source: entry.source,
        from_memory: entry.from_memory,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use tautline_survey::goal::{Percent, Relation};

    /// Spring 15–25 %, winter 10 % or more (the caption that the file names); grasshopper sparrow below 10 % (Altman and
    /// Holmes 2000, appendix E1).
    #[test]
    fn the_published_numbers() {
        let all = published();
        let cover = |key: &str| all.iter().find(|one| one.key == key).map(|one| one.cover.clone()).unwrap();
        assert_eq!(cover("sage-grouse-spring"), Relation::Between(Percent(150_000), Percent(250_000)));
        assert_eq!(cover("sage-grouse-winter"), Relation::AtLeast(Percent(100_000)));
        assert_eq!(cover("grasshopper-sparrow-columbia"), Relation::AtMost(Percent(100_000)));
        let mut keys: Vec<&str> = all.iter().map(|one| one.key.as_str()).collect();
        keys.sort_unstable();
        keys.dedup();
        assert_eq!(keys.len(), 13);
        assert!(all.len() == 13 && all.iter().all(|one| !one.published.is_empty()));
    }

    #[test]
    fn what_is_not_understood_is_named() {
        let file = |cover: &str, scale: &str, source: &str| {
            read(&format!(
                "[[benchmark]]\nkey='k'\nname='n'\ncover='{cover}'\nplants='p'\nscale='{scale}'\nsource='{source}'\n"
            ))
        };
        assert!(file("at least 10 %", "stand", "invented").is_ok());
        let code = |found: Result<Vec<Benchmark>, Message>| found.unwrap_err().code;
        assert_eq!(code(file("plenty", "stand", "invented")), "benchmark-cover");
        assert_eq!(code(file("at least 10 %", "county", "invented")), "benchmark-scale");
        assert_eq!(code(file("at least 10 %", "stand", " ")), "benchmark-part");
        assert_eq!(code(read("[[benchmark]]\nkey = 1")), "benchmarks-not-read");
    }
}
