//! What the keys of a keyboard mean at a desk, typed as the sheet reads: a few letters of the species, enter, start,
//! dash, stop, enter. A number without a species goes on with the row above.

use super::LineDraft;
use super::key::Key;
use super::sheet::Expects;

/// What stands on a keyboard.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stroke {
    /// A character.
    Character(char),
    /// Enter.
    Enter,
    /// Backspace.
    Backspace,
    /// Escape.
    Escape,
}

/// What a stroke means here; `found` is the plant that the letters so far find first.
///
/// Letters that no plant has are kept as they are: the row is marked, not refused.
pub fn meaning(draft: &LineDraft, stroke: Stroke, found: Option<&str>) -> Option<Key> {
    let entry = &draft.sheet().entry;
    match stroke {
        Stroke::Backspace => return Some(Key::Erase),
        Stroke::Escape => return Some(Key::Leave),
        _ => {}
    }
    if entry.expects == Expects::Species {
        let letters = entry.letters.as_str();
        return match stroke {
            Stroke::Enter if letters.is_empty() => None,
            Stroke::Enter => Some(Key::Species(found.map_or_else(|| letters.to_uppercase(), str::to_owned))),
            // a code may hold digits, but none begins with one here: that is the next start
            Stroke::Character(c) if c.is_ascii_digit() && letters.is_empty() => digit(c),
            Stroke::Character(c) if c.is_alphanumeric() || (c == ' ' && !letters.is_empty()) => {
                Some(Key::Letter(c))
            }
            _ => None,
        };
    }
    match stroke {
        Stroke::Character('.' | ',') => Some(Key::Mark),
        Stroke::Character('-') if fits(draft, &Key::FeetAndInches) => Some(Key::FeetAndInches),
        Stroke::Enter | Stroke::Character('-') => Some(Key::Done),
        Stroke::Character(c @ (' ' | '/')) => Some(Key::Letter(c)),
        Stroke::Character('d' | 'D') => Some(Key::Dead(None)),
        Stroke::Character('#') => Some(Key::SamePlant(None)),
        Stroke::Character('\'') => Some(Key::FeetAndInches),
        Stroke::Character(c) => digit(c),
        Stroke::Backspace | Stroke::Escape => None,
    }
}

/// A dash parts feet from inches until both are there; then it ends the number.
fn fits(draft: &LineDraft, key: &Key) -> bool {
    draft.sheet().with(key, draft.setup()).is_some()
}

fn digit(c: char) -> Option<Key> {
    c.to_digit(10).and_then(|digit| u8::try_from(digit).ok()).map(Key::Digit)
}
