//! The packet that a crew carries: map, route, lines with their bearings, the protocol in plain words, plants, sheets and cards.
//!
//! What it says is one [`booklet::Booklet`]; the page and the typeset packet (feature `pdf`) show it. All words come from the
//! catalogue; nothing is computed here.

pub mod booklet;
mod cards;
mod front;
mod html;
mod lines;
mod rules;
pub mod said;
mod sheet;

pub use crate::paper::Paper;
pub use front::{CAUTIONS, map_of};
pub use rules::drawn as drawn_rules;

use tautline_engine::length::Unit;
use tautline_survey::layout::{LaidLine, LayoutOutput, MapOutput};
use tautline_survey::place::Openness;
use tautline_survey::plan::PlannedLine;
use tautline_survey::plants::Plant;
use tautline_survey::protocol::Protocol;
use tautline_words::Words;

/// What a packet is made of.
#[derive(Clone, Copy, Debug)]
pub struct Packet<'a> {
    /// The lines.
    pub layout: &'a LayoutOutput,
    /// The site with its lines as a map.
    pub map: &'a MapOutput,
    /// The rules that lines are read under.
    pub protocol: Option<&'a Protocol>,
    /// The plants that may be met.
    pub plants: &'a [Plant],
    /// What is known of the site's lines beforehand: whose permission to enter they have.
    pub known: &'a [PlannedLine],
    /// The unit in which the tape is read.
    pub unit: Unit,
    /// The paper.
    pub paper: Paper,
    /// How much of the site's places is told on the cards by which lines are found again; they outlast the walk.
    pub openness: Openness,
    /// Others may not be told where the site's lines are: the packet, which crews need whole, says so of itself.
    pub kept_back: bool,
    /// The office's own cautions; those of the trade where there are none.
    pub cautions: &'a [String],
    /// Whom to call, one a row as `who: number`; room to write them in where there are none.
    pub calls: &'a [String],
}

impl<'a> Packet<'a> {
    /// The lines that are to be read, in the order in which they are walked.
    fn read(&self) -> impl Iterator<Item = &'a LaidLine> + use<'a> {
        walked(self.layout)
    }
}

fn walked(layout: &LayoutOutput) -> impl Iterator<Item = &LaidLine> {
    layout.walk.iter().filter_map(|name| layout.lines.iter().find(|line| line.line == *name))
}

/// The letters of the pictures on a printed page.
const LETTERS: &str = "Charter, Georgia, serif";

/// The packet as a page.
pub fn html(packet: &Packet, words: &Words) -> String {
    html::page(&booklet::told(packet, LETTERS, words), packet.paper)
}

/// What stands on that page, for a screen that shows it among other things, under [`style`].
pub fn body(packet: &Packet, words: &Words) -> String {
    html::body(&booklet::told(packet, LETTERS, words))
}

/// The rules of the page.
pub fn style() -> &'static str {
    include_str!("packet.css")
}

/// Where each line is and how it runs, as it stands in the packet.
pub fn lines_of(layout: &LayoutOutput, words: &Words) -> String {
    html::part(&lines::part(layout, words), "class=\"lines\" ")
}
