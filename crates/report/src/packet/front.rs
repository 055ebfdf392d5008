//! What is looked at first: the map, cautions, and whom to call.

use super::Packet;
use super::booklet::{Calls, Drawn, Fact, List};
use crate::map::drawing;
use tautline_figures::map;
use tautline_figures::{Frame, Palette};
use tautline_survey::layout::{LayoutOutput, MapOutput};
use tautline_survey::message::Message;
use tautline_words::Words;

/// How many lines of which length, how many in reserve, and the seed.
pub(super) fn about(packet: &Packet, words: &Words) -> String {
    let layout = packet.layout;
    let about = Message::new("packet-about")
        .with("lines", layout.walk.len())
        .with("reserve", layout.lines.iter().filter(|line| line.reserve).count())
        .with("length", layout.line_length.as_str())
        .with("seed", layout.seed);
    words.say(&about)
}

/// What the trade cautions against before anybody goes out.
pub const CAUTIONS: [&str; 6] = [
    "caution-permission",
    "caution-stakes",
    "caution-weather",
    "caution-alone",
    "caution-animals",
    "caution-line",
];

/// The office's own cautions; those of the trade where there are none.
pub(super) fn cautions(packet: &Packet, words: &Words) -> List {
    let items = if packet.cautions.is_empty() {
        CAUTIONS.iter().map(|code| words.word(code)).collect()
    } else {
        packet.cautions.to_vec()
    };
    List { heading: words.word("heading-cautions"), items }
}

/// Whom a crew may have to call (common practice, no source).
const CALLS: [&str; 6] =
    ["call-emergency", "call-back-by", "call-office", "call-owner", "call-before-stakes", "call-way-out"];

/// Whom to call: the office's own, one a line as `who: number`; else room to write them in.
pub(super) fn calls(packet: &Packet, words: &Words) -> Calls {
    let own = |line: &String| match line.split_once(':') {
        Some((who, number)) => Fact::new(who.trim().to_owned(), number.trim().to_owned()),
        None => Fact::new(line.trim().to_owned(), String::new()),
    };
    let facts = if packet.calls.is_empty() {
        CALLS.map(|code| Fact::new(words.word(code), String::new())).to_vec()
    } else {
        packet.calls.iter().map(own).collect()
    };
    Calls { heading: words.word("packet-calls"), said: words.word("packet-calls-said"), facts }
}

/// How wide the map of a packet is drawn.
const WIDE: u16 = 720;

/// The map in the colours of print.
pub(super) fn map(packet: &Packet, letters: &'static str, words: &Words) -> Drawn {
    let frame = frame(packet.layout, Palette::print().with_font(letters), words);
    let drawing = map::draw(&drawing(packet.map, words), &frame);
    Drawn { title: frame.title, description: frame.description, drawing }
}

/// The map of a layout as it stands in the packet, for a screen so wide and in the screen's own colours.
pub fn map_of(layout: &LayoutOutput, map: &MapOutput, width: u16, words: &Words) -> String {
    let frame = Frame { width, ..frame(layout, Palette::screen(), words) };
    map::draw(&drawing(map, words), &frame)
}

fn frame(layout: &LayoutOutput, palette: Palette, words: &Words) -> Frame {
    let said = Message::new("packet-map-said")
        .with("site", layout.site.as_str())
        .with("lines", layout.walk.len())
        .with("order", layout.walk.clone());
    Frame {
        title: words.word("packet-map"),
        description: words.say(&said),
        mark: words.mark(),
        ..Frame::new("map", WIDE, palette)
    }
}
