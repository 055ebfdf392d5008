//! A number growing under the thumb: which keys make sense behind what is typed already.

use super::key::Key;
use super::setup::Setup;
use tautline_engine::length::Bare;

/// More digits than any tape has.
const MOST_DIGITS: usize = 9;

/// The text with one key more, or nothing where the key makes no sense there.
pub(super) fn grown(text: &str, key: &Key, setup: &Setup) -> Option<String> {
    let sign = if setup.comma { ',' } else { '.' };
    let has_fraction = text.contains('/');
    let has_decimals = text.contains(sign);
    match *key {
        Key::Digit(digit) if digit <= 9 => {
            let digits = text.chars().filter(char::is_ascii_digit).count();
            let longer = format!("{text}{digit}");
            let fits = if has_fraction { is_begun(&longer) } else { digits < MOST_DIGITS };
            fits.then_some(longer)
        }
        // a fraction typed as on paper: 10 1/2
        Key::Letter(sign @ (' ' | '/')) => {
            let fits = !has_fraction && !has_decimals && text.ends_with(|c: char| c.is_ascii_digit());
            let parts = !setup.fractions().is_empty() && (sign == '/' || !text.contains(' '));
            (fits && parts).then(|| format!("{text}{sign}"))
        }
        Key::Mark => {
            let fits = setup.has_decimals() && !has_fraction && !has_decimals;
            let nought = if text.is_empty() || text.ends_with('-') { "0" } else { "" };
            fits.then(|| format!("{text}{nought}{sign}"))
        }
        Key::FeetAndInches => {
            let fits = setup.unit == Bare::FeetAndInches && !text.is_empty();
            (fits && text.chars().all(|c| c.is_ascii_digit())).then(|| format!("{text}-"))
        }
        Key::Fraction(parts, of) => {
            if has_decimals || parts == 0 || u16::from(parts) >= of {
                return None;
            }
            let whole = without_fraction(text).trim_end();
            Some(match whole {
                "" => format!("{parts}/{of}"),
                feet if feet.ends_with('-') => format!("{feet}0 {parts}/{of}"),
                whole => format!("{whole} {parts}/{of}"),
            })
        }
        _ => None,
    }
}

/// Whether a denominator is one that a tape has, or the first figure of one.
fn is_begun(text: &str) -> bool {
    let of = text.rsplit_once('/').map_or("", |(_, of)| of);
    ["1", "2", "3", "4", "6", "8", "16", "32", "64"].contains(&of)
}

/// The text without the last thing typed, or nothing where nothing was typed.
pub(super) fn erased(text: &str) -> Option<String> {
    let mut left = without_fraction(text).to_owned();
    if left.len() == text.len() {
        left.pop()?;
    }
    Some(left)
}

fn without_fraction(text: &str) -> &str {
    if !text.contains('/') {
        return text;
    }
    text.rsplit_once(' ').map_or("", |(whole, _)| whole)
}
