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
}

/// The id of the pattern inside the picture whose ids begin with `prefix`.
pub(crate) fn id(hatch: Hatch, prefix: &str) -> String {
    match hatch {
        Hatch::Closed(colour) => format!("{prefix}-closed-{}", colour as u8),
        Hatch::Dead => format!("{prefix}-dead"),
        Hatch::Unknown => format!("{prefix}-unknown"),
    }
}

/// The pattern's element.
pub(crate) fn pattern(hatch: Hatch, prefix: &str, palette: &Palette) -> String {
    let (side, lines, colour, width) = match hatch {
        Hatch::Closed(colour) => (5, "M-1 1L1 -1M0 5L5 0M4 6L6 4", colour, "1.3"),
        Hatch::Dead => (5, "M0 0L5 5M0 5L5 0", Colour::Dead, "0.8"),
        Hatch::Unknown => (8, "M-1 7L1 9M0 0L8 8M7 -1L9 1", Colour::Unknown, "1"),
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
