//! Look-alike characters evened out, one for one, so that every place in the row stays where it was typed.

/// The row with full-width letters and digits as plain ones, every dash as `-` and every white space as a blank.
///
/// Marks that can't be seen are left as they are: leaving them out could join or part two numbers unnoticed.
pub(super) fn even(row: &[char]) -> Vec<char> {
    row.iter().map(|&c| plain(c)).collect()
}

fn plain(c: char) -> char {
    match c {
        '\u{ff01}'..='\u{ff5e}' => char::from_u32(u32::from(c) - 0xfee0).unwrap_or(c),
        '\u{2010}'..='\u{2015}' | '\u{2212}' | '\u{fe58}' | '\u{fe63}' => '-',
        c if c.is_whitespace() => ' ',
        c => c,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn look_alikes_keep_their_place() {
        let typed: Vec<char> = "ＡＴＣＡ\t１２—１４，５".chars().collect();
        assert_eq!(even(&typed).iter().collect::<String>(), "ATCA 12-14,5");
        assert_eq!(even(&['1', '\u{200b}', '2']), ['1', '\u{200b}', '2']);
    }
}
