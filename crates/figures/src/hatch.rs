//! Patterns, so that colour is never the only thing that tells live, closed, dead and unread apart.

use crate::palette::{Colour, Palette};

/// What an area is hatched for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Hatch {
    /// A gap that the gap rule closed: slanted stripes in the species' colour.
    Closed(Colour),
    /// Dead canopy: crosses.
    Dead,
    /// Not read, or not known: slanted stripes the other way, far apart.
    Unknown,
    /// Foliage seen from above: leaves of one of four shapes, in the species' colour.
    Foliage(Colour, u8),
}

/// The id of the pattern inside the picture whose ids begin with `prefix`.
pub(crate) fn id(hatch: Hatch, prefix: &str) -> String {
    match hatch {
        Hatch::Closed(colour) => format!("{prefix}-closed-{}", colour as u8),
        Hatch::Dead => format!("{prefix}-dead"),
        Hatch::Unknown => format!("{prefix}-unknown"),
        Hatch::Foliage(colour, leaf) => format!("{prefix}-foliage-{}-{leaf}", colour as u8),
    }
}

/// The pattern's element.
pub(crate) fn pattern(hatch: Hatch, prefix: &str, palette: &Palette) -> String {
    let (side, lines, colour, width) = match hatch {
        Hatch::Closed(colour) => (5, "M-1 1L1 -1M0 5L5 0M4 6L6 4", colour, "1.3"),
        Hatch::Dead => (5, "M0 0L5 5M0 5L5 0", Colour::Dead, "0.8"),
        Hatch::Unknown => (8, "M-1 7L1 9M0 0L8 8M7 -1L9 1", Colour::Unknown, "1"),
        Hatch::Foliage(colour, leaf) => {
            let leaves = match leaf % 4 {
                0 => "M2 1V5M6.5 5V9M4 6V8M9 1V3",
                1 => "M0.5 1L2.5 4L4.5 1M5 5.5L7 8.5L9 5.5",
                2 => "M2.5 0.5V4.5M0.5 2.5H4.5M7 5V9M5 7H9",
                _ => "M0 2H5M5 6.5H10M1 9H4M7 1.5H9",
            };
            (10, leaves, colour, "1.5")
        }
    };
    let id = id(hatch, prefix);
    let ground = palette.attributes(Some(Colour::Ground), None);
    let line = palette.attributes(None, Some(colour));
    format!(
        "<pattern id=\"{id}\" width=\"{side}\" height=\"{side}\" patternUnits=\"userSpaceOnUse\">\
         <rect width=\"{side}\" height=\"{side}\"{ground}/>\
         <path d=\"{lines}\" fill=\"none\"{line} stroke-width=\"{width}\"/></pattern>\n"
    )
}
