//! Which known word a misspelt one was probably meant to be.

/// The known word that takes the fewest changes, if it takes no more than a third of its letters (at least two).
///
/// # Source
/// edit distance after Levenshtein 1966, by rows
pub(super) fn nearest<'a>(found: &str, known: &[&'a str]) -> Option<&'a str> {
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

fn changes(a: &str, b: &str) -> usize {
    let b: Vec<char> = b.chars().collect();
    let mut row: Vec<usize> = (0..=b.len()).collect();
    for (i, from) in a.chars().enumerate() {
        let mut diagonal = row[0];
        row[0] = i + 1;
        for (j, to) in b.iter().enumerate() {
            let changed = diagonal + usize::from(from != *to);
            diagonal = row[j + 1];
            row[j + 1] = changed.min(row[j] + 1).min(diagonal + 1);
        }
    }
    row[b.len()]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slip_of_the_pen_is_recognised_and_a_stranger_is_not() {
        // kitten to sitting takes three changes: the textbook example
        assert_eq!(changes("kitten", "sitting"), 3);
        assert_eq!(nearest("limt", &["limit", "equal"]), Some("limit"));
        assert_eq!(nearest("weather", &["limit", "equal"]), None);
    }
}
