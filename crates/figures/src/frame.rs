//! What every picture is told besides its data: who it is, how wide it will stand, in which colours.

use crate::palette::Palette;
use tautline_engine::length::DecimalMark;

/// The frame of one picture.
///
/// # Units
/// `width` in CSS pixels: the width at which the picture is meant to be seen. Texts keep their size at every
/// width, so give 360 for a phone and 720 for a page, not one of them for both.
/// # Range
/// widths below 240 or above 2000 are drawn at that end
/// # Example
/// ```
/// use tautline_figures::{Frame, Palette};
/// let frame = Frame {
///     title: "Cover against the goal".to_owned(),
///     description: "Live canopy covers 17.6 % of the line, at least 15.2 %.".to_owned(),
///     ..Frame::new("cover", 360, Palette::screen())
/// };
/// assert_eq!(frame.id, "cover");
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Frame {
    /// Begins every id inside the picture, so give each picture on a page its own.
    pub id: String,
    /// The name of the picture, for those who hear it.
    pub title: String,
    /// What the picture shows, in a sentence or a few, for those who hear it.
    pub description: String,
    /// How wide it is meant to be seen.
    pub width: u16,
    /// Where its colours come from.
    pub palette: Palette,
    /// The decimal mark of axis numbers.
    pub mark: DecimalMark,
}

impl Frame {
    /// A frame whose title and description are still to be given.
    pub fn new(id: &str, width: u16, palette: Palette) -> Self {
        let (title, description) = (String::new(), String::new());
        Self { id: id.to_owned(), title, description, width, palette, mark: DecimalMark::Point }
    }
}
