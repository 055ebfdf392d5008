//! Which known word a misspelt one was probably meant to be.

/// The known word that takes the fewest changes, if it takes no more than a third of its letters (at least two).
///
/// Letters left out, put in, changed, or swapped with their neighbour count as one change each.
///
/// # Source
/// optimal string alignment: Levenshtein 1966, with the swaps of Damerau 1964
/// # Example
/// ```
/// assert_eq!(tautline_survey::near::nearest("FUOR", &["FOUR", "SHAD"]), Some("FOUR"));
/// ```
pub fn nearest<'a>(found: &str, known: &[&'a str]) -> Option<&'a str> {
    // a word far longer than any key is no slip of the pen, and comparing it would cost for nothing
    if found.chars().count() > 40 {
        return None;
    }
    known
        .iter()
        .map(|&word| (changes(found, word), word))
        .filter(|(count, word)| *count <= (word.len() / 3).max(2))
        .min_by_key(|(count, _)| *count)
        .map(|(_, word)| word)
}

/// The known codes that a written one is nearest to, if a third of its letters or fewer (at least one) were changed, in
/// the order of the list.
///
/// # Source
/// as [`nearest`]
/// # Example
/// ```
/// let near = tautline_survey::near::nearest_codes("ATCX", &["ATCA", "ATCO", "KRLA"]);
/// assert_eq!(near, ["ATCA", "ATCO"]);
/// ```
pub fn nearest_codes<'a>(found: &str, known: &[&'a str]) -> Vec<&'a str> {
    let letters = found.chars().count();
    if letters > 40 {
        return Vec::new();
    }
    let away: Vec<(usize, &str)> = known.iter().map(|&code| (changes(found, code), code)).collect();
    let fewest = away.iter().map(|(count, _)| *count).min().unwrap_or(usize::MAX);
    let near = away.into_iter().filter(|(count, _)| *count == fewest && fewest <= (letters / 3).max(1));
    near.map(|(_, code)| code).collect()
}

/// How many letters must be left out, put in, changed or swapped to make one word of the other.
pub fn changes(a: &str, b: &str) -> usize {
    let (a, b): (Vec<char>, Vec<char>) = (a.chars().collect(), b.chars().collect());
    let mut before: Vec<usize> = Vec::new();
    let mut above: Vec<usize> = (0..=b.len()).collect();
    for i in 1..=a.len() {
        let mut row = vec![i];
        for j in 1..=b.len() {
            let changed = above[j - 1] + usize::from(a[i - 1] != b[j - 1]);
            let mut fewest = changed.min(above[j] + 1).min(row[j - 1] + 1);
            if i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1] {
                fewest = fewest.min(before[j - 2] + 1);
            }
            row.push(fewest);
        }
        before = core::mem::replace(&mut above, row);
    }
    above[b.len()]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slip_of_the_pen_is_recognised_and_a_stranger_is_not() {
        // kitten to sitting takes three changes: the textbook example
        assert_eq!(changes("kitten", "sitting"), 3);
        assert_eq!(changes("FUOR", "FOUR"), 1);
        assert_eq!(nearest("limt", &["limit", "equal"]), Some("limit"));
        assert_eq!(nearest("weather", &["limit", "equal"]), None);
    }
}
