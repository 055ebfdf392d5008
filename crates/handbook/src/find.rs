//! Pages that hold the words somebody looks for.

use crate::Page;

/// The pages in which every word occurs; those that have them in the title come first, else their order stays.
///
/// A word is found at the beginning of a word, whatever its capitals: `ratio` finds “ratios”. No words find every page.
///
/// # Example
/// ```
/// use tautline_handbook::{Page, find};
/// let page = |title: &str, text: &str| Page { title: title.into(), text: text.into(), ..Page::default() };
/// let pages = [page("Standard error", "Lines differ."), page("The interval", "The error times t.")];
/// let titles = |words| find(&pages, words).iter().map(|page| page.title.as_str()).collect::<Vec<_>>();
/// assert_eq!(titles("ERROR"), ["Standard error", "The interval"]);
/// assert_eq!(titles("error lines"), ["Standard error"]);
/// assert!(titles("rror").is_empty());
/// ```
pub fn find<'a>(pages: &'a [Page], words: &str) -> Vec<&'a Page> {
    let wanted: Vec<String> = words_of(words).collect();
    let mut found: Vec<(usize, &Page)> =
        pages.iter().filter_map(|page| Some((hits(page, &wanted)?, page))).collect();
    found.sort_by_key(|(hits, _)| core::cmp::Reverse(*hits));
    found.into_iter().map(|(_, page)| page).collect()
}

/// How many of the words stand in the title or the name; nothing where one stands nowhere.
fn hits(page: &Page, wanted: &[String]) -> Option<usize> {
    let heads: Vec<String> = words_of(&page.title).chain(words_of(&page.name)).collect();
    let mut rest: Option<Vec<String>> = None;
    let holds = |words: &[String], one: &String| words.iter().any(|word| word.starts_with(one.as_str()));
    let mut hits = 0;
    for one in wanted {
        if holds(&heads, one) {
            hits += 1;
        } else if !holds(rest.get_or_insert_with(|| words_of(&page.text).collect()), one) {
            return None;
        }
    }
    Some(hits)
}

/// The words of a text in small letters, cut at whatever is neither letter nor digit.
fn words_of(text: &str) -> impl Iterator<Item = String> {
    text.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()).map(str::to_lowercase)
}
