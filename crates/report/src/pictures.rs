//! The pictures of a page, each drawn for a wide page and for a narrow one.

pub(crate) mod cover;
pub(crate) mod curve;
pub(crate) mod gaps;
pub(crate) mod lines;

use crate::document::Picture;
use crate::page::{Medium, Page};
use std::collections::BTreeMap;
use tautline_figures::{Frame, Palette, Share, Tone};
use tautline_survey::assess::Assessment;

/// How wide a picture is drawn for a page of a desk or a sheet, and for one of a phone.
const WIDE: u16 = 704;
const NARROW: u16 = 358;

/// The family of the letters in a printed picture, which the typesetter carries.
pub(crate) const PRINTED_FONT: &str = "Libertinus Serif";

/// The colour of each species, the same through the whole page.
pub(crate) struct Tones(BTreeMap<String, Tone>);

impl Tones {
    /// Colours in the order of the codes.
    pub(crate) fn of(assessments: &[Assessment]) -> Self {
        let lines = assessments.iter().flat_map(|assessment| &assessment.lines);
        let codes = lines.flat_map(|line| line.species.iter().map(|species| species.code.clone()));
        let mut tones: BTreeMap<String, Tone> = codes.map(|code| (code, Tone(0))).collect();
        for (number, tone) in (0..=u8::MAX).cycle().zip(tones.values_mut()) {
            *tone = Tone(number % 6);
        }
        Self(tones)
    }

    pub(crate) fn tone(&self, code: &str) -> Tone {
        self.0.get(code).copied().unwrap_or_default()
    }
}

/// One frame of a picture.
pub(crate) fn frame(
    id: &str,
    title: &str,
    description: &str,
    width: u16,
    palette: Palette,
    page: &Page,
) -> Frame {
    Frame {
        title: title.to_owned(),
        description: description.to_owned(),
        mark: page.words.mark(),
        ..Frame::new(id, width, palette)
    }
}

/// The colours and the letters of print.
pub(crate) fn printed() -> Palette {
    Palette::print().with_font(PRINTED_FONT)
}

/// The frames of one picture: on a screen for a wide and for a narrow page, in print one, in plain text none.
fn frames(id: &str, title: &str, description: &str, page: &Page) -> Vec<Frame> {
    let frame =
        |name: &str, width, palette| frame(&format!("{id}-{name}"), title, description, width, palette, page);
    match page.medium {
        Medium::Screen => {
            vec![frame("wide", WIDE, Palette::screen()), frame("narrow", NARROW, Palette::screen())]
        }
        Medium::Print => vec![frame("print", WIDE, printed())],
        Medium::Plain => Vec::new(),
    }
}

/// One picture, drawn for the medium.
pub(crate) fn drawn(
    id: &str,
    title: &str,
    description: &str,
    page: &Page,
    draw: impl Fn(&Frame) -> String,
) -> Picture {
    let drawings = frames(id, title, description, page).iter().map(draw).collect();
    Picture { title: title.to_owned(), description: description.to_owned(), drawings }
}

/// A share as a picture takes it.
pub(crate) fn share(value: f64) -> Share {
    Share::new(value).unwrap_or(Share::ZERO)
}
