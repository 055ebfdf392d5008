//! Names, values and remarks, written so that they come back as they are.

use crate::sheet::even::even;
use crate::sheet::head::{Key, key_row};
use crate::sheet::line::told;
use crate::sheet::row::row;
use crate::sheet::scan::Scan;
use tautline_engine::length::{Bare, DecimalMark, Unit};
use tautline_survey::goal::Percent;
use tautline_survey::plan::Slope;

/// A species' name as it stands on a row: in brackets where it would be read as something else.
pub(super) fn species_name(species: &str) -> String {
    let plain = |text: &str| {
        let chars: Vec<char> = format!("{text} 1").chars().collect();
        let evened = even(&chars);
        let scan = Scan { chars: &evened, bare: Some(Bare::Unit(Unit::Metre)), mark: DecimalMark::Point };
        let found = row(&scan, false);
        let end = text.chars().count();
        evened[..end] == chars[..end]
            && !text.starts_with(['#', '(', '['])
            && found.slips.is_empty()
            && found.species == Some((0, end))
            && key_row(&evened).is_none()
            && told(&scan, (0, chars.len())) == Ok(None)
    };
    if plain(species) { species.to_owned() } else { format!("[{species}]") }
}

/// A name of a line, stratum, plot, pass or plant: in brackets where a comma or a number would be read as something else.
pub(super) fn bracketed(name: &str) -> String {
    let plain =
        !name.is_empty() && name.chars().all(|c| c.is_alphanumeric() || matches!(c, '-' | '_' | '.' | '/'));
    if plain && name.is_ascii() { name.to_owned() } else { format!("[{name}]") }
}

/// Whether a value comes back as it is from behind its key.
pub(super) fn is_value(value: &str) -> bool {
    !value.contains(['\n', '\r']) && value.trim() == value
}

pub(super) fn reads_as_condition(text: &str, name: &str, value: &str) -> bool {
    let chars: Vec<char> = text.chars().collect();
    let typed = |span: (usize, usize)| chars[span.0..span.1].iter().collect::<String>();
    is_value(value)
        && is_value(name)
        && !value.is_empty()
        && key_row(&even(&chars)).is_some_and(|found| {
            found.key == Key::Condition && typed(found.name) == name && typed(found.value) == value
        })
}

/// Whether a reason comes back from behind `not read:`.
pub(super) fn can_be_reason(why: &str) -> bool {
    is_value(why) && !why.is_empty() && !why.ends_with([')', '.', '!'])
}

/// A slope as it is read: `12.5 %`, `7 deg`.
pub(super) fn slope_text(slope: Slope) -> String {
    let (ten_thousandths, unit) = match slope {
        Slope::Grade(Percent(grade)) => (grade, "%"),
        Slope::Degrees(degrees) => (degrees, "deg"),
    };
    let decimals = format!("{:04}", ten_thousandths % 10_000);
    let decimals = decimals.trim_end_matches('0');
    let point = if decimals.is_empty() { "" } else { "." };
    format!("{}{point}{decimals} {unit}", ten_thousandths / 10_000)
}

pub(super) fn capital(word: &str) -> String {
    let mut chars = word.chars();
    chars.next().map_or_else(String::new, |first| first.to_uppercase().chain(chars).collect())
}
