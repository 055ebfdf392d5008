//! The pictures of a page, each drawn for a wide page and for a narrow one.

pub(crate) mod cover;
pub(crate) mod curve;
pub(crate) mod gaps;
pub(crate) mod lines;

use crate::markup::picture;
use std::collections::BTreeMap;
use tautline_figures::{Frame, Palette, Share, Tone};
use tautline_survey::assess::Assessment;

/// How wide a picture is drawn for a page of a desk or a sheet, and for one of a phone.
const WIDE: u16 = 704;
const NARROW: u16 = 358;

/// The colour of each species, the same through the whole page.
pub(crate) struct Tones(BTreeMap<String, Tone>);

impl Tones {
    /// Colours in the order of the codes.
    pub(crate) fn of(assessments: &[&Assessment]) -> Self {
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

fn frame(id: &str, width: u16, title: &str, description: &str) -> Frame {
    Frame {
        title: title.to_owned(),
        description: description.to_owned(),
        ..Frame::new(id, width, Palette::screen())
    }
}

/// Draws one picture at both widths.
fn twice(id: &str, title: &str, description: &str, draw: impl Fn(&Frame) -> String) -> String {
    let drawn = |name: &str, width| draw(&frame(&format!("{id}-{name}"), width, title, description));
    picture(&drawn("wide", WIDE), &drawn("narrow", NARROW))
}

/// A share as a picture takes it.
fn share(value: f64) -> Share {
    Share::new(value).unwrap_or(Share::ZERO)
}
