//! The packet that a crew carries: map, route, lines with their bearings, the protocol in plain words, plants, sheets and cards.
//!
//! One page that stands alone, for paper first: each sheet and card begins on paper of its own. All words come from the
//! catalogue; nothing is computed here.

mod cards;
mod rules;
pub mod said;
mod sheet;

use crate::markup::{around, escape, text};
use tautline_engine::length::Unit;
use tautline_figures::map::{self, Map};
use tautline_figures::{Frame, Palette};
use tautline_survey::layout::{LaidLine, LayoutOutput, MapOutput};
use tautline_survey::message::{Message, Value};
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
}

/// The paper that a packet is printed on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Paper {
    /// 210 × 297 mm (ISO 216).
    #[default]
    A4,
    /// 8½ × 11 in (ANSI/ASME Y14.1).
    Letter,
}

/// The packet as a page.
///
/// # Errors
/// none; a line whose name is too long for a code to scan has a sheet without one
pub fn html(packet: &Packet, words: &Words) -> String {
    let title = words.say(&Message::new("packet-title").with("site", packet.layout.site.as_str()));
    let size = match packet.paper {
        Paper::A4 => "A4",
        Paper::Letter => "letter",
    };
    let style = format!("{}@page{{size:{size}}}", style());
    let head = format!(
        "<meta charset=\"utf-8\"/>\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n{}{}",
        text("title", &title),
        around("style", &style)
    );
    format!(
        "<!DOCTYPE html>\n<html lang=\"{}\">\n{}{}</html>\n",
        escape(words.language()),
        around("head", &head),
        around("body", &body(packet, words))
    )
}

/// What stands on that page, for a screen that shows it among other things, under [`style`].
pub fn body(packet: &Packet, words: &Words) -> String {
    let title = words.say(&Message::new("packet-title").with("site", packet.layout.site.as_str()));
    let mut body = around("section class=\"front\"", &front(packet, &title, words));
    body += &around("section", &lines_of(packet.layout, words));
    body += &around("section", &rules::section(packet, words));
    body += &cards::before(packet, words);
    body += &read(packet).map(|line| sheet::of_line(packet, Some(line), words)).collect::<String>();
    body += &sheet::of_line(packet, None, words);
    body += &cards::after(packet, words);
    around("main", &body)
}

/// The rules of the page.
pub fn style() -> &'static str {
    include_str!("packet.css")
}

/// The map of a layout as it stands in the packet, for a screen so wide and in the screen's own colours.
pub fn map_of(layout: &LayoutOutput, map: &MapOutput, width: u16, words: &Words) -> String {
    let frame = Frame { width, ..frame(layout, Palette::screen(), words) };
    map::draw(&drawn(layout, map, words), &frame)
}

/// The lines that are to be read, in the order in which they are walked.
fn read<'a>(packet: &Packet<'a>) -> impl Iterator<Item = &'a LaidLine> {
    walked(packet.layout)
}

fn walked(layout: &LayoutOutput) -> impl Iterator<Item = &LaidLine> {
    layout.walk.iter().filter_map(|name| layout.lines.iter().find(|line| line.line == *name))
}

/// Map and cautions: what is looked at first.
fn front(packet: &Packet, title: &str, words: &Words) -> String {
    let layout = packet.layout;
    let about = Message::new("packet-about")
        .with("lines", layout.walk.len())
        .with("reserve", layout.lines.iter().filter(|line| line.reserve).count())
        .with("length", layout.line_length.as_str())
        .with("seed", layout.seed);
    let cautions: String = if packet.cautions.is_empty() {
        CAUTIONS.iter().map(|code| text("li", &words.word(code))).collect()
    } else {
        packet.cautions.iter().map(|caution| text("li", caution)).collect()
    };
    // the map and the tables lead a crew there, whatever the cards keep back
    let exact = if packet.kept_back {
        text("p class=\"exact\"", &words.word("holds-exact-places"))
    } else {
        String::new()
    };
    text("h1", title)
        + &exact
        + &text("p", &words.say(&about))
        + &around(
            "figure",
            &map::draw(
                &drawn(layout, packet.map, words),
                &frame(layout, Palette::print().with_font(PRINTED), words),
            ),
        )
        + &text("h2", &words.word("heading-cautions"))
        + &around("ul class=\"cautions\"", &cautions)
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

/// The letters of a printed map.
const PRINTED: &str = "Charter, Georgia, serif";

fn frame(layout: &LayoutOutput, palette: Palette, words: &Words) -> Frame {
    let said = Message::new("packet-map-said")
        .with("site", layout.site.as_str())
        .with("lines", layout.walk.len())
        .with("order", layout.walk.clone());
    Frame {
        title: words.word("packet-map"),
        description: words.say(&said),
        mark: words.mark(),
        ..Frame::new("map", 720, palette)
    }
}

fn drawn(layout: &LayoutOutput, map: &MapOutput, words: &Words) -> Map {
    let place = |[east, north]: [f64; 2]| (east, north);
    let line = |name: &str| map.lines.iter().find(|line| line.line == name);
    let walk: Vec<_> = layout.walk.iter().filter_map(|name| line(name)).collect();
    let way = walk.windows(2).map(|pair| [place(pair[0].to), place(pair[1].from)]).collect();
    Map { way, ..crate::map::drawing(map, words) }
}

/// Where each line is and how it runs, in the order of the walk; then those in reserve in theirs.
pub fn lines_of(layout: &LayoutOutput, words: &Words) -> String {
    let headings = ["line", "stratum", "start", "start-utm", "end", "true", "compass"];
    let head: String =
        headings.map(|name| text("th scope=\"col\"", &words.word(&format!("column-{name}")))).concat();
    let head = around("thead", &around("tr", &head));
    let rows = |lines: Vec<&LaidLine>| -> String {
        lines.into_iter().map(|line| around("tr", &row(line, words))).collect()
    };
    let table = |caption: &str, lines: Vec<&LaidLine>| {
        if lines.is_empty() {
            return String::new();
        }
        let inner = text("caption", &words.word(caption)) + &head + &around("tbody", &rows(lines));
        around("table class=\"lines\" tabindex=\"0\"", &inner)
    };
    let bearings = match layout.declination {
        Some(found) => words.say(
            &Message::new("declination")
                .with("date", found.date.to_string())
                .with("degrees", Value::Number(found.degrees.abs(), 1))
                .with("side", words.word(if found.degrees < 0.0 { "west" } else { "east" }))
                .with("yearly", Value::Number(found.yearly, 2))
                .with("uncertainty", Value::Number(found.uncertainty, 1)),
        ),
        None => words.word("declination-no-date"),
    };
    text("h2", &words.word("packet-lines"))
        + &text("p", &bearings)
        + &text("p", &words.word("packet-slope"))
        + &table("heading-walk", walked(layout).collect())
        + &table("heading-reserve", layout.lines.iter().filter(|line| line.reserve).collect())
}

fn row(line: &LaidLine, words: &Words) -> String {
    let place = |latitude: f64, longitude: f64| {
        format!("{} {}", words.number(latitude, 6), words.number(longitude, 6))
    };
    let cells = [
        line.stratum.clone().unwrap_or_default(),
        place(line.start.latitude, line.start.longitude),
        line.start.utm.clone(),
        place(line.end.latitude, line.end.longitude),
        format!("{}°", line.true_bearing),
        line.magnetic_bearing.map_or(String::new(), |bearing| format!("{}°", words.number(bearing, 1))),
    ];
    text("th scope=\"row\"", &line.line) + &cells.map(|cell| text("td", &cell)).concat()
}

#[cfg(test)]
mod tests;
