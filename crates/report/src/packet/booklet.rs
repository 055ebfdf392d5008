//! The packet as data: what it says, in which order, in words and pictures that are finished.
//!
//! The page and the typeset packet are two ways to show one [`Booklet`], so neither can say what the other doesn't. As JSON
//! it is what a template of an office gets (`docs/print.md`).

use super::{Packet, cards, front, lines, rules, sheet};
use crate::document;
use serde::Serialize;
use tautline_survey::message::Message;
use tautline_words::Words;

/// The name and the number of the data's format. A field may be added within a number, none changed or taken away.
pub const FORMAT: &str = "tautline.packet";
/// See [`FORMAT`].
pub const VERSION: u32 = 1;

/// A whole packet.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Booklet {
    /// [`FORMAT`].
    pub format: &'static str,
    /// [`VERSION`].
    pub version: u32,
    /// The version of the software.
    pub software: &'static str,
    /// The language of the words, such as `en`.
    pub language: String,
    /// What the packet is called.
    pub title: String,
    /// That it holds places which others may not be told, if so.
    pub kept_back: Option<String>,
    /// How many lines of which length, and the seed.
    pub about: String,
    /// The site and its lines.
    pub map: Drawn,
    /// What to beware of.
    pub cautions: List,
    /// Whom to call.
    pub calls: Calls,
    /// Where the lines are.
    pub lines: Part,
    /// How a line is read.
    pub rules: Rules,
    /// What is taken along.
    pub equipment: List,
    /// Stakes that go out and come back.
    pub stakes: Part,
    /// A sheet for each line in the order of the walk, and a spare one.
    pub sheets: Vec<Sheet>,
    /// Photo points.
    pub photos: Part,
    /// How each line is found again.
    pub again: Cards,
    /// What stands at the foot of a piece of paper.
    pub sheet: document::Sheet,
}

/// A picture.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Drawn {
    /// What it is of, in the words that stand below it or that are heard in its place.
    pub title: String,
    /// What it shows, for somebody who doesn't see it.
    pub description: String,
    /// The picture as SVG.
    pub drawing: String,
}

/// Items under a heading.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct List {
    /// The heading.
    pub heading: String,
    /// The items.
    pub items: Vec<String>,
}

/// Whom to call, and room for what is known only on the day.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Calls {
    /// The heading.
    pub heading: String,
    /// What to do first.
    pub said: String,
    /// Who, and under which number; an empty one is written in.
    pub facts: Vec<Fact>,
}

/// Sentences and tables under a heading.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Part {
    /// The heading.
    pub heading: String,
    /// The sentences.
    pub said: Vec<String>,
    /// The tables.
    pub tables: Vec<Grid>,
}

/// The rules of reading.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Rules {
    /// The heading.
    pub heading: String,
    /// Rule by rule; one sentence where there is no protocol.
    pub said: Vec<String>,
    /// The rules that are drawn.
    pub drawings: Vec<Drawn>,
    /// The plants that may be met.
    pub plants: Option<Grid>,
}

/// A table whose first column names its rows; a cell without words is written in.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Grid {
    /// What it is.
    pub caption: String,
    /// The headings.
    pub columns: Vec<String>,
    /// The rows, each as long as the headings.
    pub rows: Vec<Vec<Option<String>>>,
}

/// A term and what is said of it; an empty one is written in.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Fact {
    /// The term.
    pub term: String,
    /// What is known.
    pub said: Option<String>,
}

impl Fact {
    pub(super) fn new(term: String, said: String) -> Self {
        Self { term, said: Some(said).filter(|said| !said.is_empty()) }
    }
}

/// A blank sheet.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Sheet {
    /// The line, or that it is a spare one.
    pub title: String,
    /// The head of a typed sheet as a code to scan; the spare sheet has none.
    pub code: Option<Drawn>,
    /// What is known of the line, and what is written on the day.
    pub facts: Vec<Fact>,
    /// What the table is.
    pub caption: String,
    /// The columns of either half.
    pub columns: Vec<Blank>,
    /// How many rows either half has.
    pub rows: usize,
    /// How lengths are written.
    pub foot: String,
}

/// A column that is written in.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Blank {
    /// What is written: `length`, with room for a whole and a part, `species`, `mark`, `height`.
    pub holds: &'static str,
    /// Its heading.
    pub text: String,
}

/// Cards under a heading.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Cards {
    /// The heading.
    pub heading: String,
    /// One for each line, in the order of the walk.
    pub cards: Vec<Card>,
}

/// How one line is found again.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Card {
    /// The line.
    pub title: String,
    /// Both ends, bearing, and room for witness marks.
    pub facts: Vec<Fact>,
}

/// What a packet says; `letters` is the family of the letters in its pictures.
pub(crate) fn told(packet: &Packet, letters: &'static str, words: &Words) -> Booklet {
    let title = words.say(&Message::new("packet-title").with("site", packet.layout.site.as_str()));
    Booklet {
        format: FORMAT,
        version: VERSION,
        software: env!("CARGO_PKG_VERSION"),
        language: words.language().to_owned(),
        // the map and the tables lead a crew there, whatever the cards keep back
        kept_back: packet.kept_back.then(|| words.word("holds-exact-places")),
        about: front::about(packet, words),
        map: front::map(packet, letters, words),
        cautions: front::cautions(packet, words),
        calls: front::calls(packet, words),
        lines: lines::part(packet.layout, words),
        rules: rules::part(packet, letters, words),
        equipment: cards::equipment(words),
        stakes: cards::stakes(packet, words),
        sheets: packet
            .read()
            .map(Some)
            .chain([None])
            .map(|line| sheet::of_line(packet, line, words))
            .collect(),
        photos: cards::photos(packet, words),
        again: cards::again(packet, words),
        sheet: document::Sheet { left: title.clone(), of: words.word("report-sheet-of") },
        title,
    }
}
