//! The piece of a row round a character, short and safe enough to show.

use tautline_survey::finding::Excerpt;

/// What is shown of a row at most, in characters.
const WIDEST: usize = 90;

/// The piece of the row round the character counted from 1, with a visible sign for each that can't be printed.
pub(super) fn excerpt(row: &str, character: u32) -> Excerpt {
    let at = usize::try_from(character).unwrap_or(usize::MAX).saturating_sub(1);
    let chars: Vec<char> = row.trim_end().chars().take(at.saturating_add(WIDEST)).collect();
    let at = at.min(chars.len());
    let first = if at < WIDEST * 2 / 3 { 0 } else { at - WIDEST / 2 };
    let shown = chars.iter().skip(first).take(WIDEST).map(|&c| visible(c)).collect();
    Excerpt { text: shown, before: at - first }
}

fn visible(c: char) -> char {
    match c {
        '\t' => ' ',
        c if c.is_control() => '\u{fffd}',
        // marks that turn the direction of writing or can't be seen
        '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{feff}' => {
            '\u{fffd}'
        }
        c => c,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_row_is_cut_round_the_character() {
        let row = format!("{}X{}", "a".repeat(500), "b".repeat(500));
        let cut = excerpt(&row, 501);
        assert_eq!(cut.text.chars().nth(cut.before), Some('X'));
        assert!(cut.text.chars().count() <= WIDEST);
        assert_eq!(excerpt("ATCA\t1\u{1b}2", 7), Excerpt { text: "ATCA 1\u{fffd}2".into(), before: 6 });
        assert_eq!(excerpt("AB", 9).before, 2);
    }
}
