//! The pages in their order.

use crate::{Page, markdown};
use std::sync::OnceLock;

/// Each page's name and its Markdown.
macro_rules! sources {
    ($($name:literal)+) => {
        const SOURCES: &[(&str, &str)] = &[$(($name, include_str!(concat!("../../../docs/handbook/", $name, ".md"))),)+];
    };
}

sources! {
    "gap-rule" "canopy-cover" "sum-of-species" "composition" "dead-canopy" "gaps" "heights" "density"
    "site-cover" "standard-error" "strata" "plots" "interval" "nothing-found"
    "verdict" "lines-needed" "sequential-plan"
    "change" "smallest-change" "trend" "trend-without-a-model"
    "limits-of-agreement" "reliability" "habits" "grading"
    "placement" "bearings"
}

/// The page that names all the others, part by part.
const CONTENTS: &str = include_str!("../../../docs/handbook/README.md");

/// All pages, in the order of the handbook.
///
/// # Example
/// ```
/// let first = &tautline_handbook::pages()[0];
/// assert_eq!(first.name, "gap-rule");
/// assert!(first.text.contains("Worked example"));
/// ```
pub fn pages() -> &'static [Page] {
    static PAGES: OnceLock<Vec<Page>> = OnceLock::new();
    PAGES.get_or_init(|| {
        let parts = markdown::parts(CONTENTS);
        let part = |name: &str| parts.iter().find(|(page, _)| page == name).map(|(_, part)| part.clone());
        SOURCES
            .iter()
            .map(|(name, source)| markdown::page(name, part(name).unwrap_or_default(), source))
            .collect()
    })
}

/// The page of this name.
///
/// # Example
/// ```
/// assert!(tautline_handbook::named("verdict").is_some_and(|page| page.part == "The site"));
/// assert!(tautline_handbook::named("no such page").is_none());
/// ```
pub fn named(name: &str) -> Option<&'static Page> {
    pages().iter().find(|page| page.name == name)
}

/// A page as it is written, in Markdown.
pub fn source(name: &str) -> Option<&'static str> {
    SOURCES.iter().find(|(own, _)| *own == name).map(|(_, source)| *source)
}
